"""A first, close look at blobs, at full resolution, each in its own box on a sheet.

"Sheet" px count from the centre of the sheet's top-left pixel.
"""

from dataclasses import dataclass

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.contrast import dye_amount, local_white
from ptmark.dye.level import plateau, thin_line_table
from ptmark.dye.quick import highest, middle
from ptmark.dye.sheet import Sheet, blurred

__all__ = ["HAIR_THIN", "TELLING", "CloseLook", "look_closely", "ridge_width"]

Float = npt.NDArray[np.float32]
Array = npt.NDArray[np.float64]
Mask = npt.NDArray[np.bool_]

FIRST_RADIUS = 6
_SMOOTH_PX = 0.6  # takes the grain down by half and widens an edge of 1.5 px by 8 %
TELLING = 4.5  # blurs that a width must hold: below, width times slope hardly tells them apart
HAIR_THIN = 2.5  # blurs that the thinnest line is seen wide: 2.35 and the plateau's smoothing
_SOBEL_VARIANCE = 1 / 3  # a central difference over two px widens an edge by this, px squared
_NEAR_WHITE = 0.2  # log light; the developer's mottle stays within it, a leaf or pen does not
_MOST_SIDES = 30  # of a blob, kept for all of a photo's
_NINE = np.ones((3, 3), np.uint8)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CloseLook:
    """A sheet's amounts of dye and what first contours at half contrast tell.

    Of shape (H, W) are ``amount``, the dye where blobs may lie and 0 elsewhere, ``ridge``, the
    plateau taken within ``radius`` px and never under ``floor``, ``width``, the blobs' width
    near each pixel, px, and ``bare``, 1 where light is about the developer's. The others have a
    row for each of N crops: ``color`` of shape (N, 3) is the developer's, as in `LocalWhite`;
    ``seen_px`` is the width of the blob along its ridge (median), as far as the look goes,
    ``whole_px`` the same or of what reaches farther, ``blur_px`` the standard deviation of its
    edge, NaN where the blob is too thin to tell the two apart, ``grain`` the spread of the
    developer round it from pixel to pixel, ``peak`` the most dye of it, and the floor a
    quarter of that, or what stands clear of grain and mottle; ``sides`` are places on
    its rim, sheet px, as `ptmark.dye.moved.motion_of` takes them. A crop in which nothing
    stands out has no amount.
    """

    sheet: Sheet
    amount: Float
    color: Array
    bare: npt.NDArray[np.uint8]
    width: Float
    ridge: Float
    radius: npt.NDArray[np.intp]
    grain: Array
    seen_px: Array
    whole_px: Array
    blur_px: Array
    peak: Float
    floor: Float
    sides: tuple[Float, ...]


def look_closely(sheet: Sheet) -> CloseLook:
    """Take first contours at half contrast on a sheet."""
    white = local_white(sheet)
    amount = blurred(dye_amount(sheet, white), sheet.places, _SMOOTH_PX)
    rough = amount - blurred(amount, sheet.places, 3.0)
    spreads = np.array([_spreads(sheet, i, (rough, amount)) for i in range(len(sheet.crops))])
    grain, mottle = spreads.T
    amount *= sheet.near
    peak = np.array([amount[place].max() for place in sheet.places])
    clear = peak >= np.maximum(0.02, 3 * grain)
    for i in np.flatnonzero(~clear):
        amount[sheet.places[i]] = 0
    floors = np.maximum(np.maximum(0.25 * peak, 3 * grain), np.minimum(4 * mottle, 0.6 * peak))
    floor = np.where(clear, floors, 1).astype(np.float32)
    ridge = np.maximum(
        plateau(amount, FIRST_RADIUS),
        np.append(floor, np.float32(1)).take(sheet.number, mode="wrap"),
    )
    mask = amount > 0.5 * ridge
    width, deep = ridge_width(mask)
    seen, slope, sides = _first_look(sheet, mask, amount, ridge, width)
    most = [float(deep[place].max()) for place in sheet.places]
    whole = np.array([_whole_width(*one) for one in zip(seen.tolist(), most, strict=True)])
    blur = _blur(whole, slope)
    radius = np.full(len(sheet.crops), FIRST_RADIUS)
    for i in np.flatnonzero(blur > FIRST_RADIUS / 2.5):
        room, radius[i] = sheet.rooms[i], round(2.5 * blur[i]) + 1
        own = amount[room]
        ridge[room] = np.maximum(plateau(own, int(radius[i])), floor[i])
        width[room] = ridge_width(own > 0.5 * ridge[room])[0]
    return CloseLook(
        sheet=sheet,
        amount=amount,
        color=white.color,
        bare=(np.abs(white.off) < _NEAR_WHITE).view(np.uint8),
        width=width,
        ridge=ridge,
        radius=radius,
        grain=grain,
        seen_px=seen,
        whole_px=whole,
        blur_px=blur,
        peak=np.where(clear, peak, 0),
        floor=floor,
        sides=sides,
    )


def _spreads(sheet: Sheet, number: int, of: tuple[Float, ...]) -> Float:
    """Robust standard deviations of values on the bare developer of a crop."""
    rows, columns = sheet.places[number]
    around = sheet.crops[number].around
    step = max(1, round((around.size / 8000) ** 0.5))
    some = slice(rows.start, rows.stop, step), slice(columns.start, columns.stop, step)
    bare = np.flatnonzero(around[::step, ::step] > 0)
    if not len(bare):
        return np.full(len(of), 1e-4, np.float32)
    return np.array([_spread(one[some].take(bare)) for one in of], np.float32)


def _spread(values: Float) -> float:
    off = np.abs(values - middle(values))
    return float(np.float32(1.4826) * middle(off) + np.float32(1e-4))


def ridge_width(mask: Mask, radius: int = 6) -> tuple[Float, Float]:
    """Width of the mask near each pixel, px, and how deep in the mask each pixel lies.

    The width is twice the largest inscribed distance close by. From the middle pixel to the
    first outside it is half of an odd width and a half more, half of an even one: a quarter
    more on average.
    """
    distance = cv2.distanceTransform(mask.view(np.uint8), cv2.DIST_L2, 5)
    near = np.minimum(highest(distance, radius), max(mask.shape))  # all mask: no zero to reach
    return np.asarray(np.maximum(2 * near - 0.5, 1), np.float32), np.asarray(distance)


def _first_look(
    sheet: Sheet, mask: Mask, amount: Float, ridge: Float, width: Float
) -> tuple[Array, Array, tuple[Float, ...]]:
    """Median width, px, and median edge slope as a share of the plateau per px, for each crop.

    The slope is taken where the plateau is high: a pale stain that touches the blob is soft.
    Then some of the sides.
    """
    border = mask & (cv2.erode(mask.view(np.uint8), _NINE) == 0)
    right = cv2.Sobel(amount, cv2.CV_32F, 1, 0, scale=1 / 8)
    down = cv2.Sobel(amount, cv2.CV_32F, 0, 1, scale=1 / 8)
    at = np.flatnonzero(border)
    at = at[np.argsort(sheet.number.ravel()[at], kind="stable")]
    high, wide = ridge.ravel()[at], width.ravel()[at]
    slopes = np.stack([right.ravel()[at], down.ravel()[at]]) / high
    steep = np.hypot(slopes[0], slopes[1])
    count = len(sheet.crops)
    ends = np.searchsorted(sheet.number.ravel()[at], np.arange(count + 1))
    seen, slope = np.ones(count), np.ones(count)
    sides = [np.empty((5, 0), np.float32)] * count
    for i in np.flatnonzero(np.diff(ends)):
        own = slice(ends[i], ends[i + 1])
        seen[i] = middle(wide[own])
        deep = ends[i] + np.flatnonzero(high[own] > 0.5 * high[own].max())
        slope[i] = middle(steep[deep])
        some = deep[:: 1 + len(deep) // _MOST_SIDES]
        y, x = np.divmod(at[some], mask.shape[1])
        sides[i] = np.vstack([slopes[:, some], x, y, np.full(len(some), seen[i])]).astype(
            np.float32
        )
    return seen, slope, tuple(sides)


def _whole_width(seen_px: float, deep_px: float) -> float:
    """The width of a blob that reaches beyond where `ridge_width` looks: its greatest."""
    if seen_px < 2 * FIRST_RADIUS - 1:
        return seen_px
    return max(seen_px, 2 * deep_px - 0.5)


def _blur(seen_px: Array, slope: Array) -> Array:
    """Standard deviation of edges from their slope; NaN where width and blur are one."""
    _, seen, _, _, product = thin_line_table(0.6)  # the plateau's smoothing at a usual blur
    seen_px = np.minimum(seen_px, product[-1] / np.maximum(slope, 1e-9))  # wider tells no more
    widths = np.interp(seen_px * slope, product, seen)
    blur = np.sqrt(np.maximum((seen_px / widths) ** 2 - _SOBEL_VARIANCE, 0.25))
    return np.where(widths < TELLING, np.nan, blur)
