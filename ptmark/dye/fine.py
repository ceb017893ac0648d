"""The sub-pixel outline of one blob, at full resolution, in its own box.

Frames: "crop" px count from the crop's top-left pixel centre; what leaves is in photo px.
"""

from dataclasses import dataclass

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.contrast import LocalWhite, dye_amount, local_white
from ptmark.dye.level import edge_share, plateau, thin_line_table
from ptmark.photo import srgb_to_linear

__all__ = ["Box", "Contour", "Crop", "contours", "look_closely"]

Float = npt.NDArray[np.float32]
Array = npt.NDArray[np.float64]
Mask = npt.NDArray[np.bool_]
Box = tuple[int, int, int, int]

_SMOOTH_PX = 0.6  # takes the grain down by half and widens an edge of 1.5 px by 8 %
_FIRST_RADIUS = 6
_SOBEL_VARIANCE = 1 / 3  # a central difference over two px widens an edge by this, px squared
_REACH_PX = 4.0  # how far a vertex may move from the mask's border
_STEP_PX = 0.25


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Crop:
    """One blob's box with its amount of dye and what a first contour at half contrast tells.

    ``seen_px`` is the width of the blob along its ridge (median) and ``blur_px`` the standard
    deviation of its edge, None where the blob is too thin to tell the two apart. ``grain`` is
    the spread of the developer round it from pixel to pixel.
    """

    origin: tuple[int, int]
    amount: Float
    near: Mask
    around: Mask
    white: LocalWhite
    mask: Mask
    grain: float
    seen_px: float
    blur_px: float | None
    peak: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Contour:
    """One closed outline in photo px with what its edge shows.

    ``left_outside`` is what is left of the level 2.5 blurs outside the edge: next to nothing
    at an edge, most of it in haze.
    """

    outline_px: Array
    shift_px: float
    noise_px: float
    contrast: float
    left_outside: float
    taken_light: Array  # shape (3,): share of R, G, B light that the core takes from the white
    area_px: float
    whole: bool


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
    amount = cv2.GaussianBlur(dye_amount(rgb, white), (0, 0), _SMOOTH_PX)
    rough = cv2.subtract(amount, cv2.GaussianBlur(amount, (0, 0), 3.0))
    step = max(1, round((around.size / 8000) ** 0.5))
    grain = _spread(rough[::step, ::step][around[::step, ::step]])
    inside = np.where(near, amount, np.float32(0)).astype(np.float32)
    peak = float(inside.max())
    if peak < max(0.02, 3 * grain):
        return None
    ridge = _plateau(inside, peak, grain, _FIRST_RADIUS)
    mask = inside > 0.5 * ridge
    seen, slope = _first_look(mask, inside, ridge)
    blur = _blur(seen, slope)
    if blur is not None and blur > _FIRST_RADIUS / 2.5:
        ridge = _plateau(inside, peak, grain, round(2.5 * blur) + 1)
        mask = inside > 0.5 * ridge
    return Crop(
        origin=origin,
        amount=inside,
        near=near,
        around=around,
        white=white,
        mask=mask,
        grain=grain,
        seen_px=seen,
        blur_px=blur,
        peak=peak,
    )


def _spread(values: Float) -> float:
    """Robust standard deviation."""
    if not values.size:
        return 1e-4
    return 1.4826 * float(np.median(np.abs(values - np.median(values)))) + 1e-4


def _plateau(inside: Float, peak: float, noise: float, radius: int) -> Float:
    """The local plateau, never below a quarter of the blob's peak or 3 sigma of the grain."""
    return np.maximum(plateau(inside, radius), np.float32(max(0.25 * peak, 3 * noise)))


def _ridge_width(mask: Mask, radius: int = 6) -> Float:
    """Width of the mask near each pixel, px: twice the largest inscribed distance close by."""
    distance = cv2.distanceTransform(mask.astype(np.uint8), cv2.DIST_L2, 5)
    kernel = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (2 * radius + 1, 2 * radius + 1))
    return np.maximum(2 * cv2.dilate(distance, kernel) - 1, 1).astype(np.float32)


def _first_look(mask: Mask, amount: Float, ridge: Float) -> tuple[float, float]:
    """Median width, px, and median edge slope as a share of the plateau per px."""
    border = mask & ~(cv2.erode(mask.astype(np.uint8), np.ones((3, 3), np.uint8)) > 0)
    if not border.any():
        return 1.0, 1.0
    right = cv2.Sobel(amount, cv2.CV_32F, 1, 0, scale=1 / 8)
    down = cv2.Sobel(amount, cv2.CV_32F, 0, 1, scale=1 / 8)
    slope = np.hypot(right[border], down[border]) / ridge[border]
    return float(np.median(_ridge_width(mask)[border])), float(np.median(slope))


def _blur(seen_px: float, slope: float) -> float | None:
    """Standard deviation of the edge from its slope; None where width and blur are one."""
    _, seen, _, product = thin_line_table(0.6)  # the plateau's smoothing at a usual blur
    widths = float(np.interp(seen_px * slope, product, seen))
    if widths < 3.0:
        return None
    return float(np.sqrt(max((seen_px / widths) ** 2 - _SOBEL_VARIANCE, 0.25)))


def contours(
    crop: Crop, rgb: npt.NDArray[np.uint8], seeds: Mask, photo_blur_px: float, least_px: float
) -> list[Contour]:
    """Closed outlines of a crop's blob, one for each part of at least ``least_px`` across.

    A part counts where it holds a pixel of ``seeds``. ``photo_blur_px`` is the edge's standard
    deviation elsewhere in the photo, for blobs too thin to show their own.
    """
    blur = crop.blur_px or photo_blur_px
    radius = max(4, round(2.5 * blur) + 1)
    ridge = _plateau(crop.amount, crop.peak, crop.grain, radius)
    share = edge_share(_ridge_width(crop.mask), blur).astype(np.float32)
    share = cv2.GaussianBlur(share, (0, 0), 2.0)
    level = crop.amount / (share * ridge)
    mask = ((level > 1) & crop.near).astype(np.uint8)
    found, _ = cv2.findContours(mask, cv2.RETR_EXTERNAL, cv2.CHAIN_APPROX_NONE)
    made = []
    for chain in found:
        points = chain.reshape(-1, 2)
        if np.ptp(points, axis=0).max() + 1 < least_px or not _holds(points, seeds):
            continue
        made.append(_contour(crop, rgb, points, level, share, ridge, 2.5 * blur))
    return made


def _holds(chain: npt.NDArray[np.int32], seeds: Mask) -> bool:
    x, y, width, height = cv2.boundingRect(chain.reshape(-1, 1, 2))
    filled = np.zeros((height, width), np.uint8)
    cv2.fillPoly(filled, [(chain - (x, y)).reshape(-1, 1, 2)], 1)
    return bool((seeds[y : y + height, x : x + width] & (filled > 0)).any())


def _contour(
    crop: Crop,
    rgb: npt.NDArray[np.uint8],
    chain: npt.NDArray[np.int32],
    level: Float,
    share: Float,
    ridge: Float,
    reach_px: float,
) -> Contour:
    columns, rows = chain[:, 0], chain[:, 1]
    span = max(3, round(0.8 * crop.seen_px))
    points, outward, slope = _to_level(chain, level, share[rows, columns], span)
    filled = np.zeros(level.shape, np.uint8)
    cv2.fillPoly(filled, [chain.reshape(-1, 1, 2)], 1)
    inside = crop.amount[filled > 0]
    contrast = float(
        np.partition(inside, int(0.9 * (len(inside) - 1)))[int(0.9 * (len(inside) - 1))]
    )
    core = (filled > 0) & (crop.amount > 0.7 * contrast)
    height, width = level.shape
    whole = bool(
        columns.min() > 0
        and rows.min() > 0
        and columns.max() < width - 1
        and rows.max() < height - 1
    )
    return Contour(
        outline_px=points + crop.origin,
        shift_px=0.2 / slope,
        noise_px=crop.grain
        / max(float(np.median((share * ridge)[rows, columns])) * slope, 1e-3),
        contrast=contrast,
        left_outside=float(
            np.mean(_sample(level, _smooth_ring(points, 3) + reach_px * outward))
        ),
        taken_light=_taken_light(rgb, core, _ring(filled, crop), crop.white),
        area_px=float(filled.sum()),
        whole=whole,
    )


def _ring(filled: npt.NDArray[np.uint8], crop: Crop) -> Mask:
    """Bare developer close round an outline, 5 to 10 px off."""
    wide = cv2.dilate(filled, np.ones((21, 21), np.uint8))
    return (wide > 0) & (cv2.dilate(filled, np.ones((11, 11), np.uint8)) == 0) & crop.around


def _taken_light(
    rgb: npt.NDArray[np.uint8], core: Mask, ring: Mask, white: LocalWhite
) -> Array:
    light = np.median(srgb_to_linear(rgb[core]).astype(np.float64), axis=0)
    near = white.color
    if np.count_nonzero(ring) >= 40:
        near = np.maximum(np.median(srgb_to_linear(rgb[ring]).astype(np.float64), axis=0), 0.01)
    return np.asarray(1 - light / near)


def _to_level(
    chain: npt.NDArray[np.int32], level: Float, share: Float, span: int
) -> tuple[Array, Array, float]:
    """Move a mask's border to where ``level`` crosses 1, along its own gradient.

    Parameters
    ----------
    chain : ndarray of shape (N, 2)
        Border pixels of the mask, crop px.
    level : ndarray of shape (H, W)
        Amount over ``share`` of the plateau.
    share : ndarray of shape (N,)
        That share at each border pixel.
    span : int
        Vertices to each side that tell a tip from a flank.

    Returns
    -------
    points, outward : ndarray of shape (N, 2)
        Crop px; unit normals.
    slope : float
        Fall of ``level`` per px there, mean over the outline.

    Notes
    -----
    Blur lowers a thin line's plateau and so puts half of it too far out at the flanks; along
    the line nothing is lowered, so that at a tip half the plateau is the edge.
    """
    smooth = cv2.GaussianBlur(level, (0, 0), 1.0)
    right = cv2.Sobel(smooth, cv2.CV_32F, 1, 0, scale=1 / 8)
    down = cv2.Sobel(smooth, cv2.CV_32F, 0, 1, scale=1 / 8)
    start = chain.astype(np.float64)
    columns, rows = chain[:, 0], chain[:, 1]
    outward = -np.column_stack([right[rows, columns], down[rows, columns]]).astype(np.float64)
    outward = _smooth_ring(outward, 2)
    outward /= np.maximum(np.linalg.norm(outward, axis=1, keepdims=True), 1e-9)
    offsets = np.arange(-2.0, _REACH_PX + 1e-9, _STEP_PX)
    values = _sample(level, start[:, None, :] + offsets[None, :, None] * outward[:, None, :])
    values *= ((share / 0.5) ** _tips(outward, span))[:, None]
    below = values < 1
    below[:, offsets < -_STEP_PX / 2] = False  # the border pixel itself lies inside
    first = np.where(below.any(axis=1), below.argmax(axis=1), 1)
    every = np.arange(len(chain))
    inner, outer = values[every, first - 1], values[every, first]
    part = np.clip((inner - 1) / np.maximum(inner - outer, 1e-6), 0, 1)
    moved = np.where(below.any(axis=1), offsets[first - 1] + part * _STEP_PX, 0.0)
    points = start + moved[:, None] * outward
    # across the smoothed outline: across the raw one the grain that placed each vertex would
    # make a soft edge look sharp
    base = _smooth_ring(points, 3)
    fall = float(np.mean(_sample(level, base - outward) - _sample(level, base + outward))) / 2
    return points, outward, max(fall, 0.01)


def _tips(outward: Array, span: int) -> npt.NDArray[np.float32]:
    """How much of a tip each vertex is: 0 on a flank, 1 where the outline turns right round."""
    if len(outward) < 2 * span + 2:
        return np.ones(len(outward), np.float32)
    turn = np.einsum(
        "ij,ij->i", np.roll(outward, span, axis=0), np.roll(outward, -span, axis=0)
    )
    return np.clip(-turn * 1.5, 0, 1).astype(np.float32)


def _sample(level: Float, places: Array) -> Float:
    """Bilinear values at places of shape (..., 2), crop px."""
    x, y = places[..., 0].astype(np.float32), places[..., 1].astype(np.float32)
    if x.ndim == 1:
        x, y = x[:, None], y[:, None]
    made = cv2.remap(level, x, y, cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE)
    return made.reshape(places.shape[:-1])  # type: ignore[return-value]


def _smooth_ring(values: Array, reach: int) -> Array:
    """Mean over 2 reach + 1 neighbours along a closed chain of shape (N, 2)."""
    if len(values) < 4 * reach + 4:
        return values
    total = values.copy()
    for step in range(1, reach + 1):
        total += np.roll(values, step, axis=0) + np.roll(values, -step, axis=0)
    return total / (2 * reach + 1)
