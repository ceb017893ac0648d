"""A first, close look at one blob, at full resolution, in its own box.

"Crop" px count from the centre of the crop's top-left pixel.
"""

from dataclasses import dataclass

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.contrast import LocalWhite, dye_amount, local_white
from ptmark.dye.level import plateau, thin_line_table
from ptmark.dye.quick import middle

__all__ = ["Crop", "look_closely", "ridge_plateau", "ridge_width"]

Float = npt.NDArray[np.float32]
Mask = npt.NDArray[np.bool_]

_SMOOTH_PX = 0.6  # takes the grain down by half and widens an edge of 1.5 px by 8 %
_FIRST_RADIUS = 6
_TELLING = 4.5  # blurs that a width must hold: below, width times slope hardly tells them apart
_SOBEL_VARIANCE = 1 / 3  # a central difference over two px widens an edge by this, px squared


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Crop:
    """One blob's box with its amount of dye and what a first contour at half contrast tells.

    ``seen_px`` is the width of the blob along its ridge (median) and ``blur_px`` the standard
    deviation of its edge, None where the blob is too thin to tell the two apart. ``grain`` is
    the spread of the developer round it from pixel to pixel, ``floor`` the least plateau: a
    quarter of the blob's peak, or what stands clear of grain and mottle. ``ridge`` is the
    plateau taken within ``radius`` px, ``width`` the blob's width near each pixel, px.
    """

    origin: tuple[int, int]
    amount: Float
    near: Mask
    around: Mask
    white: LocalWhite
    width: Float
    ridge: Float
    radius: int
    grain: float
    seen_px: float
    blur_px: float | None
    floor: float


def look_closely(
    rgb: npt.NDArray[np.uint8], origin: tuple[int, int], near: Mask, around: Mask
) -> Crop | None:
    """Take a first contour at half contrast in a crop.

    Parameters
    ----------
    rgb : ndarray of shape (H, W, 3), uint8
        Crop of the photo.
    origin : tuple of int
        Photo px of the crop's top-left pixel.
    near, around : ndarray of shape (H, W), bool
        Where the blob may lie; bare developer round it.

    Returns
    -------
    Crop or None
        None where nothing stands out.
    """
    white = local_white(rgb, around)
    smooth = cv2.GaussianBlur(dye_amount(rgb, white), (0, 0), _SMOOTH_PX)
    amount = np.asarray(smooth, np.float32)
    rough = np.asarray(amount - cv2.GaussianBlur(amount, (0, 0), 3.0), np.float32)
    step = max(1, round((around.size / 8000) ** 0.5))
    bare = around[::step, ::step]
    grain, mottle = (_spread(one[::step, ::step][bare]) for one in (rough, amount))
    inside = np.where(near, amount, np.float32(0)).astype(np.float32)
    peak = float(inside.max())
    if peak < max(0.02, 3 * grain):
        return None
    floor = max(0.25 * peak, 3 * grain, min(4 * mottle, 0.6 * peak))
    radius = _FIRST_RADIUS
    ridge = ridge_plateau(inside, floor, radius)
    mask = inside > 0.5 * ridge
    width = ridge_width(mask)
    seen, slope = _first_look(mask, inside, ridge, width)
    blur = _blur(_whole_width(mask, seen), slope)
    if blur is not None and blur > _FIRST_RADIUS / 2.5:
        radius = round(2.5 * blur) + 1
        ridge = ridge_plateau(inside, floor, radius)
        width = ridge_width(inside > 0.5 * ridge)
    return Crop(
        origin=origin,
        amount=inside,
        near=near,
        around=around,
        white=white,
        width=width,
        ridge=ridge,
        radius=radius,
        grain=grain,
        seen_px=seen,
        blur_px=blur,
        floor=floor,
    )


def _spread(values: Float) -> float:
    """Robust standard deviation."""
    if not values.size:
        return 1e-4
    return 1.4826 * float(middle(np.abs(values - middle(values)))) + 1e-4


def ridge_plateau(inside: Float, floor: float, radius: int) -> Float:
    """The local plateau, never below a floor: there the developer's mottle would be traced."""
    return np.maximum(plateau(inside, radius), np.float32(floor))


def ridge_width(mask: Mask, radius: int = 6) -> Float:
    """Width of the mask near each pixel, px: twice the largest inscribed distance close by.

    From the middle pixel to the first outside it is half of an odd width and a half more, half
    of an even one: a quarter more on average.
    """
    distance = cv2.distanceTransform(mask.astype(np.uint8), cv2.DIST_L2, 5)
    kernel = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (2 * radius + 1, 2 * radius + 1))
    near = np.minimum(
        cv2.dilate(distance, kernel), max(mask.shape)
    )  # all mask: no zero to reach
    return np.asarray(np.maximum(2 * near - 0.5, 1), np.float32)


def _first_look(mask: Mask, amount: Float, ridge: Float, width: Float) -> tuple[float, float]:
    """Median width, px, and median edge slope as a share of the plateau per px.

    The slope is taken where the plateau is high: a pale stain that touches the blob is soft.
    """
    border = mask & ~(cv2.erode(mask.astype(np.uint8), np.ones((3, 3), np.uint8)) > 0)
    if not border.any():
        return 1.0, 1.0
    right = cv2.Sobel(amount, cv2.CV_32F, 1, 0, scale=1 / 8)
    down = cv2.Sobel(amount, cv2.CV_32F, 0, 1, scale=1 / 8)
    high = ridge[border]
    slope = (np.hypot(right[border], down[border]) / high)[high > 0.5 * high.max()]
    return float(middle(width[border])), float(middle(slope))


def _whole_width(mask: Mask, seen_px: float) -> float:
    """The width of a blob that reaches beyond where `ridge_width` looks: its greatest."""
    if seen_px < 2 * _FIRST_RADIUS - 1:
        return seen_px
    deep = float(cv2.distanceTransform(mask.astype(np.uint8), cv2.DIST_L2, 5).max())
    return max(seen_px, 2 * min(deep, float(max(mask.shape))) - 0.5)


def _blur(seen_px: float, slope: float) -> float | None:
    """Standard deviation of the edge from its slope; None where width and blur are one."""
    _, seen, _, _, product = thin_line_table(0.6)  # the plateau's smoothing at a usual blur
    seen_px = min(seen_px, float(product[-1]) / max(slope, 1e-9))  # wider tells no more
    widths = float(np.interp(seen_px * slope, product, seen))
    if widths < _TELLING:
        return None
    return float(np.sqrt(max((seen_px / widths) ** 2 - _SOBEL_VARIANCE, 0.25)))
