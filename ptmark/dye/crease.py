"""Pink in a crease: what makes it dark goes on beyond its ends, so it is no dye.

Shade in a fold, a toe or a scratch lends its sharp dark line to whatever pink lies in it, or to
a square of colour that JPEG left there. Dye that is redder than what lies on beyond its ends is
darker than that too: a share of full dye that raises the log of red over green by 0.2 takes
0.23 of the log light that luma shows (`ptmark.dye.contrast`).
"""

from collections.abc import Iterator
from itertools import islice
from math import ceil, isnan, log
from statistics import fmean, median
from typing import NamedTuple

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.beside import mean_width
from ptmark.dye.contour import Contour
from ptmark.dye.contrast import LOG_LIGHT, LUMA, redness
from ptmark.dye.tips import farthest
from ptmark.photo import Photo

__all__ = ["in_creases"]

Array = npt.NDArray[np.float64]
Float = npt.NDArray[np.float32]
Ints = npt.NDArray[np.intp]

MOST_CONTRAST, MOST_WIDE_PX = 0.35, 14.0  # denser dye shows whatever it lies in
LEAST_RATIO = 2.5  # of length over width: of a round one no way leads on
# Log light against the darker side, and over that against both: less is no line but an edge.
LEAST_DARK, LEAST_LINE = 0.05, 0.5
# Of the core's darkness that is left beyond its ends, in each block and in most of them. Dye of
# 35 % in a toe as dark as 0.3 leaves 0.64 to 0.80, creases 0.84 and more, dye elsewhere at most
# 0.44.
GOES_ON, MOSTLY = 0.4, 0.8
# How much darker than beyond, over how much redder: 0.66 to 2.1 for dye in shade, at most 0.48
# for creases; and what is too little to tell.
LEAST_DARKER, UNTOLD = 0.5, 0.03
_BLOCK, _CLEAR = 6, 3  # px along, and how far beyond an end they begin
_BLOCKS, _TOLD, _LEAST_TOLD = 8, 4, 2  # looked at, the nearest of them that others leave bare
_INSIDE, _LEAST_NEAR, _NEAR = 24, 8, 30  # px inside an end, and of outline that give its way
_DRIFT, _MORE = 5, 4  # px aside in which a line may lie, and from block to block
_BESIDE, _FAR = 8, 15  # px from a line to the developer beside it
_ASIDE = _DRIFT + _MORE + _FAR  # px to either side that are looked at
_ROWS = _FAR + _MORE, 2 * _ASIDE - _FAR - _MORE  # in which a line has all its sides
_GAP = 45  # px between an end and the next part of its line
_REACH = 75  # px round an outline that the look beyond its ends takes in
_OTHER = np.ones((7, 7), np.uint8)


def in_creases(photo: Photo, called: list[Contour]) -> list[Contour]:
    """Which of all that is called are pale lines whose dark goes on beyond their ends.

    Where the photo's border or a dense line hides what lies beyond an end, that may be the rest
    of a crack, and the call stands; so does a pale line near to another that stands, which may
    be parts of one crack.
    """
    pale = [one for one in called if _is_line(one) and one.contrast < MOST_CONTRAST]
    if not pale:
        return []
    near = _neighbours(pale, called)
    found = [
        one
        for one in pale
        if _goes_on(photo, one, [two for two in near[one] if two not in pale])
    ]
    while stands := [
        one
        for one in found
        if any(two in pale and two not in found and _meets(one, two) for two in near[one])
    ]:
        found = [one for one in found if one not in stands]
    return found


def _meets(one: Contour, other: Contour) -> bool:
    """Whether another lies at an end of one."""
    first, last, _ = farthest(one.outline_px)
    return any(_is_near(end, other) for end in one.outline_px[[first, last]])


def _is_near(end: Array, other: Contour) -> bool:
    return bool((np.abs(other.outline_px - end).max(axis=1) < _GAP).any())


def _neighbours(pale: list[Contour], called: list[Contour]) -> dict[Contour, list[Contour]]:
    """For each pale one the others that lie within reach of its ends."""
    boxes = np.array([(c.outline_px.min(axis=0), c.outline_px.max(axis=0)) for c in called])
    near = {}
    for one in pale:
        low, high = one.outline_px.min(axis=0) - _REACH, one.outline_px.max(axis=0) + _REACH
        meets = ((boxes[:, 0] < high) & (boxes[:, 1] > low)).all(axis=1)
        near[one] = [called[i] for i in np.flatnonzero(meets) if called[i] is not one]
    return near


def _is_line(one: Contour) -> bool:
    width = mean_width(one.outline_px, one.area_px)
    return width < MOST_WIDE_PX and farthest(one.outline_px)[2] > LEAST_RATIO * width


class _Beyond(NamedTuple):
    """How dark a line is beyond an end, least and mostly, and how red; how dark it is inside.

    All against the developer beside it, log light; ``line`` against the darker side.
    """

    least: float
    mostly: float
    red: float
    inside: float
    line: float


def _goes_on(photo: Photo, one: Contour, others: list[Contour]) -> bool:
    """Whether the dark goes on beyond both ends, or beyond one and the other is hidden."""
    first, last, length = farthest(one.outline_px)
    hidden = 0
    for end in one.outline_px[[first, last]]:
        beyond = _beyond(photo, one, end, length, others)
        if beyond is None:
            hidden += 1
            if not _is_hidden_by_round_ones(photo, end, others):
                return False
        elif not _is_as_dark(one, beyond):
            return False
    return hidden < 2


def _is_hidden_by_round_ones(photo: Photo, end: Array, others: list[Contour]) -> bool:
    """Whether neither the border nor a line lies near an end: pores hide no rest of a crack."""
    size = np.array(photo.rgb.shape[1::-1])
    if (end < _REACH).any() or (end >= size - _REACH).any():
        return False
    return not any(_is_line(one) and _is_near(end, one) for one in others)


def _is_as_dark(one: Contour, beyond: _Beyond) -> bool:
    """Whether the dark goes on beyond an end, and no dye of that redness ends there."""
    dark, red = _core(one, beyond)
    no_darker = dark - beyond.mostly < max(LEAST_DARKER * (red - beyond.red), UNTOLD)
    goes_on = beyond.least > GOES_ON * dark and beyond.mostly > MOSTLY * dark
    line = beyond.line > max(LEAST_DARK, LEAST_LINE * beyond.inside)
    return goes_on and no_darker and line


def _core(one: Contour, beyond: _Beyond) -> tuple[float, float]:
    """How dark and how red a core is; of one too pale to tell its hue its darkness alone."""
    red, green, _ = one.taken_light.tolist()
    if np.isnan(red):
        return beyond.inside, beyond.red
    luma = float(LUMA @ one.taken_light)
    return -log(max(1 - luma, 1e-3)), log(max(1 - red, 1e-3) / max(1 - green, 1e-3))


def _unit(way: Array) -> Array:
    return np.asarray(way / max(float(np.hypot(*way)), 1e-9))


def _beyond(
    photo: Photo, one: Contour, end: Array, length: float, others: list[Contour]
) -> _Beyond | None:
    """What lies beyond an end, along the way of two on which the dark goes on the most.

    One leads there from the outline's centre, one along what lies near the end.
    """
    near = np.hypot(*(one.outline_px - end).T) < max(_LEAST_NEAR, min(_NEAR, length / 2))
    middle = one.outline_px[near].mean(axis=0)
    inside = ceil(min(_INSIDE, length / 2))
    ways = _unit(middle - one.outline_px.mean(axis=0)), _unit(end - middle)
    starts = [middle + ((end - middle) @ way - inside) * way for way in ways]
    seen = [
        _along(photo, start, way, inside, others)
        for start, way in zip(starts, ways, strict=True)
    ]
    return max((each for each in seen if each is not None), default=None)


def _along(
    photo: Photo, start: Array, way: Array, inside: int, others: list[Contour]
) -> _Beyond | None:
    """What lies ``inside`` px and more from a start, along a way; None where that is hidden."""
    first = inside + _CLEAR
    cuts = [0, max(inside - 1, 1), *range(first, first + _BLOCK * (_BLOCKS + 1), _BLOCK)]
    strip = _straightened(photo, start, way, cuts[-1], others)
    if strip is None:
        return None
    own, _, *blocks = _means(*strip, cuts)
    core = _line(own, _ASIDE, _DRIFT)
    if core is None:
        return None
    told = list(islice(_followed(blocks, core.row), _TOLD))
    if len(told) < _LEAST_TOLD:
        return None
    return _Beyond(
        least=min(line.dark for line in told),
        mostly=median(line.dark for line in told),
        red=median(line.red for line in told),
        inside=core.dark,
        line=core.least,
    )


def _straightened(
    photo: Photo, start: Array, way: Array, long: int, others: list[Contour]
) -> tuple[Float, npt.NDArray[np.bool_]] | None:
    """Log light and redness along a way, shape (2, wide, long), and where nothing hides them.

    None where the way leaves the photo.
    """
    aside, wide = np.array([-way[1], way[0]]), 2 * _ASIDE + 1
    corner = start - _ASIDE * aside
    corners = corner + np.array([[0, 0], [long, 0], [0, wide], [long, wide]]) @ [way, aside]
    low = np.floor(corners.min(axis=0)).astype(np.intp) - 1
    high = np.ceil(corners.max(axis=0)).astype(np.intp) + 2
    if (low < 0).any() or (high > photo.rgb.shape[1::-1]).any():
        return None
    rgb = np.ascontiguousarray(photo.rgb[low[1] : high[1], low[0] : high[0]])
    light = cv2.LUT(cv2.cvtColor(rgb, cv2.COLOR_RGB2GRAY), LOG_LIGHT)
    planes = cv2.merge([light, redness(rgb), _bare(others, low, light.shape)])
    to_photo = np.column_stack([way, aside, corner - low])
    flags = cv2.INTER_LINEAR | cv2.WARP_INVERSE_MAP
    *values, bare = cv2.split(cv2.warpAffine(planes, to_photo, (long, wide), flags=flags))
    return np.stack(values), bare > 1 - 1e-3


def _means(values: Float, seen: npt.NDArray[np.bool_], cuts: list[int]) -> list[Array]:
    """The mean row by row between cuts, shape (2, wide) each; NaN where most is hidden."""
    sums = np.add.reduceat(np.where(seen, values, 0), cuts[:-1], axis=2)
    count = np.add.reduceat(seen.astype(np.intp), cuts[:-1], axis=1)
    means = np.where(2 * count >= np.diff(cuts), sums / np.maximum(count, 1), np.nan)
    return list(np.moveaxis(means, 2, 0))


def _followed(blocks: list[Array], row: int) -> Iterator["_Line"]:
    """The line in each of the blocks (`_means`) that tell it, followed from a row on."""
    for rows in blocks:
        line = _line(rows, min(max(row, _ROWS[0]), _ROWS[1]), _MORE)
        if line is not None:
            yield line
            row = line.row


def _bare(others: list[Contour], corner: Ints, shape: tuple[int, ...]) -> Float:
    """0 on and beside other outlines in a box of the photo, else 1."""
    bare = np.ones(shape, np.float32)
    for one in others:
        points = np.round(one.outline_px - corner).astype(np.int32)
        cv2.fillPoly(bare, [points], 0)
    return np.asarray(cv2.erode(bare, _OTHER), np.float32)


class _Line(NamedTuple):
    """How much darker a line is than its sides and the darker, how much redder; its row."""

    dark: float
    least: float
    red: float
    row: int


def _line(rows: Array, centre: int, drift: int) -> _Line | None:
    """The darkest line near a row; None where other things hide it.

    ``rows`` of shape (2, N) are log light and redness, NaN where they are hidden.
    """
    light, red = rows
    smooth = (light[:-2] + light[1:-1] + light[2:]) / 3
    near = smooth[centre - drift - 1 : centre + drift]
    if np.isnan(near).any():
        return None
    row = centre - drift + int(near.argmin())
    sides = slice(row - _FAR, row - _BESIDE), slice(row + _BESIDE + 1, row + _FAR + 1)
    levels = [level for side in sides if not isnan(level := float(light[side].mean()))]
    hues = [hue for side in sides if not isnan(hue := float(red[side].mean()))]
    if not levels:
        return None
    low, hue = float(smooth[row - 1]), float(red[row - 1 : row + 2].mean())
    return _Line(fmean(levels) - low, min(levels) - low, hue - fmean(hues), row)
