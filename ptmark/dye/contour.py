"""The sub-pixel outline of a blob, at half contrast, with what its edge shows.

"Crop" px count from the centre of the crop's top-left pixel; what leaves is in photo px.
"""

from dataclasses import dataclass
from math import ceil

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.edge import EdgeQuality
from ptmark.dye.fine import Crop, ridge_plateau
from ptmark.dye.hue import bare_ring, taken_light
from ptmark.dye.level import edge_share
from ptmark.dye.quick import middle, ring_mean, ring_pad, sample
from ptmark.dye.tips import fading, farthest, own_ridge

__all__ = ["Contour", "contours", "edge_of"]

Float = npt.NDArray[np.float32]
Array = npt.NDArray[np.float64]
Bytes = npt.NDArray[np.uint8]
Mask = npt.NDArray[np.bool_]

_OUT_PX, _MOST_IN_PX = 1.5, 4.0  # how far a vertex may move from the mask's border
_IN_SHARE = 0.35  # and inwards no further than this share of the width
_STEP_PX = 0.5
_LEAP_PX = 1.5
_LEAST_RADIUS = 3
_NINE = np.ones((3, 3), np.uint8)
_DENSE = 150  # vertices; a longer chain is told well by every second of them


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Contour:
    """One closed outline in photo px with what its edge shows.

    ``shift_px`` is half the way of the outline between 40 and 60 % of the contrast, the mean
    along it; ``end_shift_px`` the same for each end of its greatest length. ``left_outside``
    is what is left of the level 2.5 blurs outside: next to nothing at an edge, most of it in
    haze. ``taken_light`` is the share of R, G and B light that the core takes. ``cut`` is the
    share of the outline that lies where the look ended, not at an edge: haze goes on there.
    """

    outline_px: Array
    shift_px: float
    end_shift_px: float
    noise_px: float
    contrast: float
    left_outside: float
    taken_light: Array
    area_px: float
    cut: float


def edge_of(one: Contour, source: str) -> EdgeQuality:
    """The quality of a contour's edge, as it goes with the outline."""
    return EdgeQuality(
        shift_px=one.shift_px,
        noise_px=one.noise_px,
        source=source,
        end_shift_px=one.end_shift_px,
    )


def contours(
    crop: Crop, rgb: Bytes, seeds: Mask, photo_blur_px: float, least_px: float
) -> list[Contour]:
    """Closed outlines of a crop's blob, one for each part of at least ``least_px`` across.

    A part counts where it holds a pixel of ``seeds``. ``photo_blur_px`` is the edge's standard
    deviation elsewhere in the photo, for blobs too thin to show their own.
    """
    blur = crop.blur_px or photo_blur_px
    # As far as an edge lies from its ridge, no farther: at a tip that tapers a plateau taken
    # from farther inside would cut the tip off.
    radius = max(_LEAST_RADIUS, min(round(2.5 * blur), ceil(float(crop.width.max()) / 2)) + 1)
    ridge = crop.ridge
    if radius != crop.radius:
        ridge = ridge_plateau(crop.amount, crop.floor, radius)
    relative = crop.amount / ridge
    look = _Look(
        crop=crop,
        rgb=rgb,
        relative=relative,
        ridge=ridge,
        blur_px=blur,
    )
    mask = ((relative > 0.5) & crop.near).astype(np.uint8)
    found, _ = cv2.findContours(mask, cv2.RETR_EXTERNAL, cv2.CHAIN_APPROX_NONE)
    made = (
        _contour(look, points)
        for points in (np.asarray(chain, np.int32).reshape(-1, 2) for chain in found)
        if np.ptp(points, axis=0).max() + 1 >= least_px and _holds(points, seeds)
    )
    return [one for one in made if len(one.outline_px) >= 4]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Look:
    """What all contours of a crop share: amount over plateau, the plateau, its edges' blur."""

    crop: Crop
    rgb: Bytes
    relative: Float
    ridge: Float
    blur_px: float


def _holds(chain: npt.NDArray[np.int32], seeds: Mask) -> bool:
    x, y, width, height = cv2.boundingRect(chain.reshape(-1, 1, 2))
    filled = np.zeros((height, width), np.uint8)
    cv2.fillPoly(filled, [(chain - (x, y)).reshape(-1, 1, 2)], 1)
    return bool((seeds[y : y + height, x : x + width] & (filled > 0)).any())


def _contour(look: _Look, chain: npt.NDArray[np.int32]) -> Contour:
    crop = look.crop
    filled = np.zeros(look.relative.shape, np.uint8)
    cv2.fillPoly(filled, [chain.reshape(-1, 1, 2)], 1)
    chain = chain[:: 1 + (len(chain) > _DENSE) + (len(chain) > 6 * _DENSE)]
    cut = float(
        np.mean(cv2.erode(crop.near.view(np.uint8), _NINE)[chain[:, 1], chain[:, 0]] == 0)
    )
    outward = _normals(look.relative, chain)
    target = _target(look, chain, outward)
    points, low, high = _to_level(look, chain, outward, target)
    # across the smoothed outline: across the raw one the grain that placed each vertex would
    # make a soft edge look sharp
    base = ring_mean(points, 3)
    inner, outer = (sample(look.relative, base + side * outward) for side in (-1.0, 1.0))
    slope = max(float(np.mean((inner - outer) / target)) / 2, 0.01)
    left = sample(look.relative, base + 2.5 * look.blur_px * outward) / target
    inside = crop.amount[filled > 0]
    rank = int(0.9 * (len(inside) - 1))
    contrast = float(np.partition(inside, rank)[rank])
    core = (filled > 0) & (crop.amount > 0.7 * contrast)
    level = float(middle(look.ridge[chain[:, 1], chain[:, 0]] * target))
    return Contour(
        outline_px=_simple(points) + crop.origin,
        shift_px=0.2 / slope,
        end_shift_px=max(
            (_length(low) - _length(high)) / 4, fading(look.relative, points, target)
        ),
        noise_px=crop.grain / max(level * slope, 1e-3),
        contrast=contrast,
        left_outside=float(np.mean(left)),
        area_px=float(cv2.contourArea(points.astype(np.float32))),
        cut=cut,
        taken_light=taken_light(look.rgb, core, bare_ring(look.rgb, filled, crop), crop.white),
    )


def _normals(relative: Float, chain: npt.NDArray[np.int32]) -> Array:
    """Unit normals of shape (N, 2), outwards, down the smoothed contrast."""
    smooth = cv2.GaussianBlur(relative, (0, 0), 1.0)
    right = cv2.Sobel(smooth, cv2.CV_32F, 1, 0, scale=1 / 8)
    down = cv2.Sobel(smooth, cv2.CV_32F, 0, 1, scale=1 / 8)
    columns, rows = chain[:, 0], chain[:, 1]
    outward = -np.column_stack([right[rows, columns], down[rows, columns]]).astype(np.float64)
    outward = ring_mean(outward, 2)
    return np.asarray(
        outward / np.maximum(np.linalg.norm(outward, axis=1, keepdims=True), 1e-9)
    )


def _target(look: _Look, chain: npt.NDArray[np.int32], outward: Array) -> Array:
    """Share of the plateau at which each vertex lies, shape (N,).

    Blur lowers a thin line's plateau and so puts half of it too far out at the flanks; along
    the line nothing is lowered, so that at a tip half the plateau is the edge.
    """
    width = look.crop.width[chain[:, 1], chain[:, 0]].astype(np.float64)
    flank, end = edge_share(ring_mean(width[:, None], 3)[:, 0], look.blur_px)
    flank = flank * own_ridge(look.relative, chain, look.crop.seen_px)
    step = float(middle(np.abs(chain[1:] - chain[:-1]).max(axis=1).astype(np.float64)))
    span = max(3, round(0.8 * look.crop.seen_px / max(step, 1.0)))
    if len(outward) < 2 * span + 2:
        return flank
    padded = ring_pad(outward, span)
    before, after = padded[: len(outward)], padded[2 * span :]
    tip = np.clip(-1.5 * np.einsum("ij,ij->i", before, after), 0, 1)
    return np.asarray(flank + (end - flank) * tip)


def _to_level(
    look: _Look, chain: npt.NDArray[np.int32], outward: Array, target: Array
) -> tuple[Array, Array, Array]:
    """Move a mask's border along its normals to ``target`` of the plateau.

    Returns
    -------
    points : ndarray of shape (N, 2)
        Crop px, at the target.
    low, high : ndarray of shape (N / 2, 2)
        Every second one at 40 and at 60 hundredths, where the target is a half.
    """
    most_in = min(_MOST_IN_PX, max(1.0, _IN_SHARE * look.crop.seen_px))
    offsets = np.arange(-most_in, _OUT_PX + 1e-9, _STEP_PX)
    start = chain.astype(np.float64)
    lines = start[:, None, :] + offsets[None, :, None] * outward[:, None, :]
    values = sample(look.relative, lines) / target[:, None]

    def moved(step: int, level: float) -> Array:
        by = _crossing(values[::step], offsets, level)
        return _calm(start[::step] + by[:, None] * outward[::step])

    return moved(1, 1.0), moved(2, 0.8), moved(2, 1.2)


def _crossing(values: Array, offsets: Array, level: float) -> Array:
    """Offset at which each row falls through a level; that of its peak where it never does.

    Where grain makes it cross more than once, the mean of the first and the last.
    """
    above = values >= level
    count, every = values.shape[1], np.arange(len(values))
    top = values.argmax(axis=1)
    last = count - 1 - above[:, ::-1].argmax(axis=1)
    beyond = ~above & (np.arange(count) > top[:, None])
    first = np.where(beyond.any(axis=1), beyond.argmax(axis=1) - 1, last)
    places = []
    for one in (first, last):
        after = np.minimum(one + 1, count - 1)
        inner, outer = values[every, one], values[every, after]
        part = np.clip((inner - level) / np.maximum(inner - outer, 1e-6), 0, 1)
        places.append(offsets[one] + np.where(after > one, part, 0) * _STEP_PX)
    middle = (places[0] + places[1]) / 2
    return np.asarray(np.where(above.any(axis=1), middle, offsets[top]))


def _calm(points: Array) -> Array:
    """Put a vertex that leaps off its neighbours back between them."""
    padded = ring_pad(points, 1)
    between = (padded[:-2] + padded[2:]) / 2
    leaps = np.hypot(*(points - between).T) > _LEAP_PX
    return np.where(leaps[:, None], between, points)


def _simple(points: Array) -> Array:
    """The outline without crossings: where flanks of a thin line meet, its largest part."""
    import shapely

    if len(points) < 4 or shapely.is_valid(made := shapely.Polygon(points)):
        return points
    parts = [one for one in shapely.get_parts(made.buffer(0)) if one.area > 0]
    if not parts:
        return points[:0]
    largest = max(parts, key=lambda one: float(one.area))
    return np.asarray(shapely.get_coordinates(largest.exterior)[:-1], np.float64)


def _length(points: Array) -> float:
    """Greatest caliper of points of shape (N, 2)."""
    one, other = farthest(points)
    return float(np.hypot(*(points[one] - points[other])))
