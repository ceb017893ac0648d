"""Dye that touches something else or runs out of haze: the part that is surely dye."""

from collections.abc import Iterator
from dataclasses import replace
from typing import NamedTuple

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.about import widened, within_outline
from ptmark.dye.beside import mean_width
from ptmark.dye.broken import lies_on
from ptmark.dye.closeup import close_up_about
from ptmark.dye.coarse import CoarseLook
from ptmark.dye.contour import Contour, contours
from ptmark.dye.fine import look_closely
from ptmark.dye.judge import Sight, reason_against
from ptmark.dye.quick import middle, picked
from ptmark.dye.sheet import Crop, in_fine, lay_out
from ptmark.dye.tips import farthest
from ptmark.photo import Photo, srgb_to_linear

__all__ = ["ends_within", "parts_called", "whole_lines"]

Array = npt.NDArray[np.float64]
Bytes = npt.NDArray[np.uint8]
Float = npt.NDArray[np.float32]
Mask = npt.NDArray[np.bool_]

# Surely dye, pixel by pixel: far inside the judge's bounds, since where it goes on into the
# other thing the part has no edge of its own to tell by.
MOST_RED_TAKEN, LEAST_GREEN_TAKEN, MOST_BROWN = 0.48, 0.20, 1.45
# And of what the red leaves of the green light, in shade: half of the peak is sure, which goes
# on to a quarter.
LEAST_SHADED, OF_PEAK, GOES_ON = 0.20, 0.5, 0.5
LEAST_BLUE, MOST_BLUE, ROUNDED = 0.6, 1.12, 0.03  # of the green; share that JPEG may be off
DARKEST = 0.15  # of the developer's red light; less tells no colour
LEAST_WHITE = 0.01  # linear light of the developer; less is a black background
LEAST_CONTRAST = 0.25
LEAST_PIXELS, LEAST_SHARE = 40, 0.03  # of the whole: less is the blend at a finger's rim
UNSURE_PX = 2.0  # how far the outline may lie off there: as far as the part is widened
# Share of a part's dye that may be left 4 to 6 px beside it: 0.17 beside cracks that run out of
# a line of pale dye, 0.45 beside haze.
MOST_LEFT = 0.3
# A line of which a part surely is dye goes on where it is as narrow and keeps so much of the
# part's colour: 1.0 along thin developer in streaks, at most 0.65 along seepage or a run's rim.
AS_NARROW, AS_RED = 1.6, 0.75
LEAST_LIGHT = 0.55  # of the brightest developer beside a part; metal beyond its rim is darker
# How far beyond an end of a part it is asked whether what the part was found in goes on: past
# the blend, which is as wide as the part is widened. In 192 photos it does so of the two parts
# that are called: cracks that go on in a weld's toe, 3.9 mm of 10.1 and 10.3 of 12.5.
_BEYOND_PX = np.array([4.0, 6.0, 8.0])
_SMOOTH_PX = 1.0
_FIVE = np.ones((5, 5), np.uint8)  # widens by UNSURE_PX
_AS_FAR, _BESIDE, _BESIDE_PX = np.ones((9, 9), np.uint8), np.ones((13, 13), np.uint8), 6
_ABOUT = np.ones((41, 41), np.uint8)


def parts_called(
    photo: Photo, look: CoarseLook, left_out: list[Contour], photo_blur_px: float, sight: Sight
) -> list[Contour]:
    """Outlines of dye, if the judge calls them, in what is left out as haze or by its colour.

    Parameters
    ----------
    photo, look
        As for `ptmark.dye.closeup.close_up`.
    left_out : list of Contour
    photo_blur_px, sight
        As for all others of the photo.
    """
    found: list[Contour] = []
    parts = [_dye_parts(photo, look, one.outline_px) for one in left_out]
    for shaded in (False, True):
        rest = [
            crops[shaded]
            for one, crops in zip(left_out, parts, strict=True)
            if not any(lies_on(part.outline_px, one.outline_px) for part in found)
        ]
        within = [one for one in rest if one is not None]
        found += _judged(within, photo_blur_px, sight, shaded=shaded)
    return whole_lines(photo, look, left_out, found)


def whole_lines(
    photo: Photo, look: CoarseLook, left_out: list[Contour], parts: list[Contour]
) -> list[Contour]:
    """The parts that are called, with the whole line in place of those it goes on from."""
    whole = [one for one in left_out if _goes_on(photo, look, one, parts)]
    alone = [
        part
        for part in parts
        if not any(lies_on(part.outline_px, one.outline_px) for one in whole)
    ]
    return [*alone, *whole]


def ends_within(part: Contour, left_out: list[Contour]) -> bool:
    """Whether what a part was found in goes on beyond an end of it, so that it may, too."""
    first, second, length = farthest(part.outline_px)
    ends = part.outline_px[[first, second]]
    out = (ends[0] - ends[1]) / max(length, 1e-6)
    aside = mean_width(part.outline_px, part.area_px) / 2 * np.array([-out[1], out[0]])
    across = np.linspace(-aside, aside, 3)
    ahead = [
        [(end + far * way + across).tolist() for far in _BEYOND_PX]
        for end, way in zip(ends, (out, -out), strict=True)
    ]
    return any(
        all(any(_is_inside(at, one.outline_px) for at in row) for row in rows)
        for one in left_out
        if one is not part and lies_on(part.outline_px, one.outline_px)
        for rows in ahead
    )


def _is_inside(at: list[float], outline_px: Array) -> bool:
    rim = outline_px.astype(np.float32)
    return cv2.pointPolygonTest(rim, (at[0], at[1]), measureDist=False) > 0


class _Seen(NamedTuple):
    """An outline from nearby, and the share of the developer's light that is left in it."""

    crop: Crop
    share: Float


def _goes_on(photo: Photo, look: CoarseLook, whole: Contour, parts: list[Contour]) -> bool:
    """Whether a line of which parts are called is dye all along, by its colour alone.

    Where the developer beside it is thin in streaks, the light that it takes tells nothing.
    """
    own = [one for one in parts if lies_on(one.outline_px, whole.outline_px)]
    if not own:
        return False
    wide = max(mean_width(one.outline_px, one.area_px) for one in own)
    rest_px = whole.area_px - sum(one.area_px for one in own)
    if mean_width(whole.outline_px, whole.area_px) > AS_NARROW * wide or rest_px < wide**2:
        return False
    seen = _seen(photo, look, whole.outline_px)
    if seen is None:
        return False
    colour, crop = _colour_of_dye(seen.share), seen.crop
    inside, *of_parts = (
        within_outline(crop.fine(one.outline_px), colour.shape) for one in (whole, *own)
    )
    part = np.any(of_parts, axis=0)
    rest = (inside > 0) & (cv2.dilate(part.view(np.uint8), _FIVE) == 0)
    if not part.any() or not rest.any():
        return False
    return bool(np.median(colour[rest]) > AS_RED * np.median(colour[part]))


def _dye_parts(
    photo: Photo, look: CoarseLook, outline_px: Array
) -> tuple[Crop | None, Crop | None]:
    """Crop an outline with only what surely is dye to look at, by its light and by its colour.

    Colour alone tells of what is shaded: shade falls out of it. None where too little is dye.
    """
    seen = _seen(photo, look, outline_px)
    if seen is None:
        return None, None
    whole_px = cv2.contourArea(outline_px.astype(np.float32))
    colour = _colour_of_dye(seen.share)
    lit, shaded = (_dye_part(seen, colour, whole_px, shaded=one) for one in (False, True))
    return lit, shaded


def _dye_part(seen: _Seen, colour: Float, whole_px: float, *, shaded: bool) -> Crop | None:
    crop, share = seen
    near = in_fine(crop.near, crop.factor, crop.rgb.shape)
    if shaded:
        sure, goes_on = _dye_by_colour(np.where(near > 0, colour, 0))
    else:
        sure = goes_on = (near > 0) & _dye_by_light(share)
    enough = max(LEAST_PIXELS, LEAST_SHARE * whole_px / crop.step**2)
    if np.count_nonzero(sure) < enough:
        return None
    _, names, stats, _ = cv2.connectedComponentsWithStats(goes_on.view(np.uint8))
    large = np.bincount(names[sure], minlength=len(stats)) >= enough
    large[0] = False
    for name in np.flatnonzero(large).tolist():
        box = widened(stats[name, :4].tolist(), _BESIDE_PX)
        large[name] = _has_edge(names[box] == name, colour[box])
    if not large.any():
        return None
    part = large[names].view(np.uint8)
    near[cv2.dilate(part, _FIVE) == 0] = 0
    around = _of_one_light(crop, part) if shaded else crop.around
    return replace(crop, near=near, around=around, seeds=part, factor=1)


def _dye_by_light(share: Float) -> Mask:
    """What surely is dye by which light it takes."""
    red, green, blue = cv2.split(1 - share)
    takes_green = (green > LEAST_GREEN_TAKEN) & (red < MOST_RED_TAKEN * green)
    return np.asarray(takes_green & (blue + 0.8 * red < MOST_BROWN * green), bool)


def _dye_by_colour(colour: Float) -> tuple[Mask, Mask]:
    """What surely is dye by its colour alone, and as far as that goes on."""
    least = max(LEAST_SHADED, OF_PEAK * float(colour.max()))
    return colour > least, colour > GOES_ON * least


def _seen(photo: Photo, look: CoarseLook, outline_px: Array) -> _Seen | None:
    """An outline from nearby; None on black."""
    crop = close_up_about(photo, look, outline_px)
    bare = picked(crop.rgb, np.flatnonzero(crop.around > 0), 1000)
    white = srgb_to_linear(middle(bare))
    if white.max() < LEAST_WHITE:
        return None
    light = cv2.GaussianBlur(srgb_to_linear(np.ascontiguousarray(crop.rgb)), (0, 0), _SMOOTH_PX)
    return _Seen(crop, np.asarray(light / np.maximum(white, 0.01), np.float32))


def _colour_of_dye(share: Float) -> Float:
    """How much less green than red is left, of shares of the white's light of shape (H, W, 3).

    0 where the blue is not that of dye, or too little red is left to tell.
    """
    red, green, blue = cv2.split(share)
    lit = np.maximum(red, 0.02)
    green, blue = (np.asarray(1 - one / lit, np.float32) for one in (green, blue))
    other = (blue < LEAST_BLUE * green - ROUNDED) | (blue > MOST_BLUE * green + ROUNDED)
    green[(red < DARKEST) | other] = 0
    return green


def _has_edge(own: Mask, green: Float) -> bool:
    """Whether little dye is left beside where it falls to half: haze fades away."""
    half = own & (green > 0.5 * np.percentile(green[own], 90))
    core = half.view(np.uint8)
    beside = green[(cv2.dilate(core, _BESIDE) > 0) & (cv2.dilate(core, _AS_FAR) == 0)]
    return bool(not beside.size or np.median(beside) < MOST_LEFT * np.median(green[half]))


def _of_one_light(crop: Crop, part: Bytes) -> Bytes:
    """Where bare developer lies, without what is far darker than it is beside a part."""
    bare = crop.around > 0
    beside = bare & (cv2.dilate(part, _ABOUT) > 0)
    if np.count_nonzero(beside) < LEAST_PIXELS:
        return crop.around
    light = srgb_to_linear(np.asarray(cv2.cvtColor(crop.rgb, cv2.COLOR_RGB2GRAY), np.uint8))
    own = bare & (light > LEAST_LIGHT * np.percentile(light[beside], 80))
    return own.view(np.uint8) if np.count_nonzero(own) >= LEAST_PIXELS else crop.around


def _judged(
    parts: list[Crop], photo_blur_px: float, sight: Sight, *, shaded: bool
) -> Iterator[Contour]:
    """Outlines of parts that pass the judge too, the least sure of their place said."""
    for sheet in lay_out(parts):
        for one in contours(look_closely(sheet), photo_blur_px, sight.least_px / 2):
            red, green, _ = one.taken_light
            sure = one.contrast >= LEAST_CONTRAST and (shaded or red < MOST_RED_TAKEN * green)
            if sure and not reason_against(replace(one, cut=0.0), sight):
                yield replace(
                    one,
                    shift_px=one.shift_px + UNSURE_PX * one.cut,
                    end_shift_px=one.end_shift_px + UNSURE_PX * one.cut,
                )
