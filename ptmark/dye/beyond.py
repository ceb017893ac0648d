"""How a line goes on beyond an end of it: what lies there, along the way on which it leads.

The pixels along that way are laid straight in a strip, a column for each px along it, a row for
each px across. Blocks of columns are averaged, and in each the line is looked for near the row
in which it lay before.
"""

from collections.abc import Iterator
from itertools import islice
from math import ceil, isnan
from statistics import fmean, median
from typing import NamedTuple

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.contour import Contour
from ptmark.dye.contrast import LOG_LIGHT, redness
from ptmark.photo import Photo

__all__ = ["Beyond", "look_beyond"]

Array = npt.NDArray[np.float64]
Float = npt.NDArray[np.float32]
Ints = npt.NDArray[np.intp]
Mask = npt.NDArray[np.bool_]

# Along the way, px
_INSIDE = 24  # of the line, inside an end, that are looked at too
_LEAST_NEAR, _NEAR = 8, 30  # of the outline at an end that give its way
_CLEAR, _BLOCK = 3, 6  # how far beyond an end blocks begin, and their length
_BLOCKS, _TOLD, _LEAST_TOLD = 8, 4, 2  # looked at, the nearest of them that others leave bare
# Across it, px
_DRIFT, _MORE = 5, 4  # aside in which a line may lie, and from block to block
_BESIDE, _FAR = 8, 15  # from a line to the developer beside it
_ASIDE = _DRIFT + _MORE + _FAR  # to either side that are looked at
_ROWS = _FAR + _MORE, 2 * _ASIDE - _FAR - _MORE  # in which a line has all its sides
_OTHER = np.ones((7, 7), np.uint8)  # about other outlines, which hide what lies there


class Beyond(NamedTuple):
    """How dark a line is beyond an end, least and mostly, and how red; how dark it is inside.

    All against the developer beside it, log light; ``line`` against the darker side.
    """

    least: float
    mostly: float
    red: float
    inside: float
    line: float


def look_beyond(
    photo: Photo, one: Contour, end: Array, length: float, others: list[Contour]
) -> Beyond | None:
    """What lies beyond an end, along the way of two on which the dark goes on the most.

    One leads there from the outline's centre, one along what lies near the end. None where the
    photo's border or ``others`` hide it.
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


def _unit(way: Array) -> Array:
    return np.asarray(way / max(float(np.hypot(*way)), 1e-9))


def _along(
    photo: Photo, start: Array, way: Array, inside: int, others: list[Contour]
) -> Beyond | None:
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
    return Beyond(
        least=min(line.dark for line in told),
        mostly=median(line.dark for line in told),
        red=median(line.red for line in told),
        inside=core.dark,
        line=core.least,
    )


def _straightened(
    photo: Photo, start: Array, way: Array, long: int, others: list[Contour]
) -> tuple[Float, Mask] | None:
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


def _means(values: Float, seen: Mask, cuts: list[int]) -> list[Array]:
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
