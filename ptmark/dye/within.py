"""Dye that stands out of something reddish: what lies beside it is taken for the developer.

A haze, the red reflection of something, rust or paint is one blob with the crack in it, and is
left out for what most of it shows. A crack there is narrow, and redder than both its sides.
"""

from collections.abc import Iterator
from typing import NamedTuple

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.about import widened
from ptmark.dye.broken import lies_on
from ptmark.dye.closeup import close_up_about
from ptmark.dye.coarse import CoarseLook
from ptmark.dye.contour import Contour, contours
from ptmark.dye.contrast import redness
from ptmark.dye.fine import look_closely
from ptmark.dye.judge import (
    BROWN,
    DARKER,
    FROM_OUTSIDE,
    HARDLY_REDDER,
    MOST_RED_TAKEN,
    NO_EDGE,
    Sight,
    reason_against,
)
from ptmark.dye.part import LEAST_WHITE
from ptmark.dye.quick import middle, picked
from ptmark.dye.sheet import Crop, in_fine, lay_out
from ptmark.photo import Photo, srgb_to_linear

__all__ = ["standing_out"]

Array = npt.NDArray[np.float64]
Bytes = npt.NDArray[np.uint8]
Float = npt.NDArray[np.float32]


_MAY_HOLD_DYE = NO_EDGE, HARDLY_REDDER, FROM_OUTSIDE, BROWN, DARKER


class _Scale(NamedTuple):
    """How wide what stands out may be, and how far off its surroundings begin and end, px."""

    widest: int
    clear: int
    beside: int


# The first for a wide haze; the second for a line of it, whose sides fall off at once. Own
# choice: full dye is up to 12 px wide in our renderings of hazes.
_SCALES = _Scale(24, 7, 30), _Scale(17, 4, 13)
# Rise of the log red to green ratio: a tenth of full dye has 0.09, haze's own grain 0.002 to
# 0.01. What holds no dye rises over six spreads too, and is left to the judge.
LEAST_RISE, SIGMAS, GOES_ON = 0.10, 6.0, 0.5
LEAST_PIXELS = 40
# Beside haze of half of full dye 40 % more stands out by 0.16 to 0.20.
LEAST_CONTRAST = 0.12
# What cracks in haze, reflections and rust gain from 40 to 60 % of their edge, a px: 0.28 and
# more, streaks in wiped haze 0.1. At most 0.19 of a crack's outline ends with the look, 0.23 to
# 1.0 of teeth of paint and of what was called in pictures without dye.
LEAST_STEEP, MOST_CUT = 0.2, 0.2
REDDEST_BESIDE = -0.5  # left outside: what lies beside a tooth of paint is redder than it
# Paint that reaches in: much redder than the developer and this wide; what is as long as that
# many widths runs out of it.
PAINT_RISE, PAINT_PX, LEAST_LONG = 0.5, 21, 4.0
_MUCH_REDDER = 0.5  # than the palest quarter beside it: another red thing
_SMOOTH_PX, _MEDIAN_STEP = 1.0, 4
_CODE, _LOW = 1 / 100, -0.64  # redness in 8 bit for the median
_NEAR = np.ones((9, 9), np.uint8)
_SQUARE = np.ones((11, 11), np.uint8)  # at half the size: wider than dye is there


def standing_out(
    photo: Photo,
    look: CoarseLook,
    left_out: list[tuple[Contour, str]],
    called: list[Contour],
    photo_blur_px: float,
    sight: Sight,
) -> list[Contour]:
    """Outlines of dye in what is left out, as its own surroundings and the judge tell it.

    Parameters
    ----------
    photo, look
        As for `ptmark.dye.closeup.close_up`.
    left_out : list of (Contour, str)
        What is not called, and why.
    called : list of Contour
        What is called already, and not found again.
    photo_blur_px, sight
        As for all others of the photo.
    """
    reddish = [
        (one.outline_px, whole, why == FROM_OUTSIDE)
        for one, why in left_out
        if why.startswith(_MAY_HOLD_DYE)
        and _holds_a_line(whole := close_up_about(photo, look, one.outline_px))
    ]
    found: list[Contour] = []
    for scale in _SCALES:
        crops = [
            crop
            for outline, whole, paint in reddish
            if not any(lies_on(one.outline_px, outline) for one in found)
            for crop in _narrow(whole, scale, paint=paint)
        ]
        for sheet in lay_out(crops):
            every = contours(
                look_closely(sheet), photo_blur_px, sight.least_px / 2, follow_tips=False
            )
            found += [one for one in every if _is_called(one, sight)]
    return [one for one in found if not _is_one_of(one, called)]


def _is_one_of(one: Contour, called: list[Contour]) -> bool:
    return any(lies_on(one.outline_px, other.outline_px) for other in called)


def _is_called(one: Contour, sight: Sight) -> bool:
    red, green, _ = one.taken_light.tolist()
    steep = one.contrast > max(LEAST_CONTRAST, LEAST_STEEP * one.shift_px)
    alone = one.left_outside > REDDEST_BESIDE and one.cut < MOST_CUT
    dye = red < MOST_RED_TAKEN * green
    return steep and alone and dye and not reason_against(one, sight)


def _holds_a_line(whole: Crop) -> bool:
    """Whether enough of a crop stands out of what is wider, by a look that costs little.

    At half the size, as much as `_narrow` asks at least: one of 107 in the truth photos does.
    """
    size = [max(1, side // 2) for side in whole.rgb.shape[1::-1]]
    red = redness(np.asarray(cv2.resize(whole.rgb, size, interpolation=cv2.INTER_AREA)))
    rise = cv2.morphologyEx(red, cv2.MORPH_TOPHAT, _SQUARE)
    near = cv2.resize(whole.near, size, interpolation=cv2.INTER_NEAREST) > 0
    return bool(np.count_nonzero(near & (rise > LEAST_RISE)) >= LEAST_PIXELS // 4)


def _narrow(whole: Crop, scale: _Scale, *, paint: bool) -> Iterator[Crop]:
    """Crops of what is narrow and redder than what lies on both sides, within one."""
    bare = np.flatnonzero(whole.around > 0)
    if srgb_to_linear(middle(picked(whole.rgb, bare, 1000))).max() < LEAST_WHITE:
        return
    red = redness(np.ascontiguousarray(whole.rgb))
    red = np.asarray(cv2.GaussianBlur(red, (0, 0), _SMOOTH_PX), np.float32)
    rise = red - _without_narrow(red, scale)
    near = in_fine(whole.near, whole.factor, whole.rgb.shape) > 0
    least = max(LEAST_RISE, SIGMAS * 1.4826 * float(middle(np.abs(rise[near]))))
    reach = (rise > GOES_ON * least).view(np.uint8)
    if paint:
        reach[_paint(red, float(middle(red.ravel()[bare]))) > 0] = 0
    seeds = (near & (rise > least)).view(np.uint8) & reach
    if np.count_nonzero(seeds) < LEAST_PIXELS:
        return
    _, names, stats, _ = cv2.connectedComponentsWithStats(reach)
    count = np.bincount(names[seeds > 0], minlength=len(stats))
    for name in np.flatnonzero(count >= LEAST_PIXELS).tolist():
        rows, columns = widened(stats[name, :4].tolist(), scale.beside)
        own = (names[rows, columns] == name).view(np.uint8)
        if paint and not _is_long(own):
            continue
        around = _beside(own, reach[rows, columns], red[rows, columns], scale)
        if np.count_nonzero(around) >= LEAST_PIXELS:
            yield Crop(
                rgb=whole.rgb[rows, columns],
                near=np.asarray(cv2.dilate(own, _NEAR), np.uint8),
                around=around,
                seeds=own & seeds[rows, columns],
                origin=(whole.origin[0] + columns.start, whole.origin[1] + rows.start),
                step=whole.step,
            )


def _without_narrow(red: Float, scale: _Scale) -> Float:
    """Redness without what is narrow: its median where wide, else opened."""
    if scale != _SCALES[0]:
        disc = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (scale.widest,) * 2)
        opened = cv2.morphologyEx(red, cv2.MORPH_OPEN, disc)
        return np.asarray(cv2.GaussianBlur(opened, (0, 0), 2.0), np.float32)
    coded = np.asarray(np.clip((red - _LOW) / _CODE, 0, 255), np.uint8)
    size = [max(1, side // _MEDIAN_STEP) for side in red.shape[::-1]]
    small = cv2.resize(coded, size, interpolation=cv2.INTER_AREA)
    small = cv2.medianBlur(small, 2 * scale.widest // _MEDIAN_STEP | 1)
    smooth = cv2.GaussianBlur(small.astype(np.float32), (0, 0), 1.5)
    wide = cv2.resize(smooth, red.shape[::-1], interpolation=cv2.INTER_LINEAR)
    return np.asarray(wide * np.float32(_CODE) + np.float32(_LOW), np.float32)


def _paint(red: Float, white: float) -> Bytes:
    """1 where something wide is much redder than the developer, and a blur round it."""
    disc = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (PAINT_PX, PAINT_PX))
    redder = (red > white + PAINT_RISE).view(np.uint8)
    return np.asarray(cv2.dilate(cv2.morphologyEx(redder, cv2.MORPH_OPEN, disc), _NEAR))


def _is_long(own: Bytes) -> bool:
    """Whether the one thing in a mask is a line."""
    rims, _ = cv2.findContours(own, cv2.RETR_EXTERNAL, cv2.CHAIN_APPROX_NONE)
    half = cv2.arcLength(rims[0], closed=True) / 2
    return bool(half**2 > LEAST_LONG * max(cv2.contourArea(rims[0]), half))


def _beside(own: Bytes, reach: Bytes, red: Float, scale: _Scale) -> Bytes:
    """1 on what lies beside what stands out, without other red things."""
    far, clear = (np.ones((2 * by + 1,) * 2, np.uint8) for by in (scale.beside, scale.clear))
    around = (cv2.dilate(own, far) > 0) & (cv2.dilate(reach, clear) == 0)
    if around.any():
        around &= red < np.quantile(red[around], 0.25) + _MUCH_REDDER
    return np.asarray(around, np.bool_).view(np.uint8)
