"""Corners of black squares on white, sub-pixel, from their edges at half level.

The edge lies where linear light passes half way between the black of the square and the white
beside it; a line is fitted to each side and neighbours are intersected. A marker's inner bits
begin one module (a sixth of the side) inside, so no profile reaches further than that. All
sides of all markers are worked at once: arrays run over sides S, profiles K and steps M.
"""

import numpy as np
import numpy.typing as npt

from ptmark.scale.layout import MARKER_INSET_MM, MARKER_MM

__all__ = ["refine_corners"]

Array = npt.NDArray[np.float64]
Mask = npt.NDArray[np.bool_]

UNCLEAR_PX = 1e3  # "uncertainty" of a corner one of whose sides gave no line
_PROFILES = 32
_STEPS = 33
_REACH_MODULES = min(0.75, 6 * MARKER_INSET_MM / MARKER_MM)
# Resampling and demosaicing leave this much in a fitted edge however many points it has.
# Common practice, no source.
_FLOOR_PX = 0.04
_MIN_CONTRAST = 0.02  # of full scale, linear
_TUKEY = 4.685  # biweight constant for 95 % efficiency (Huber and Ronchetti 2009, 4.8)


def _decoded() -> Array:
    coded = np.arange(256) / 255
    low, high = coded / 12.92, ((coded + 0.055) / 1.055) ** 2.4
    return np.where(coded <= 0.04045, low, high)  # sRGB, IEC 61966-2-1


_LINEAR = _decoded()


def refine_corners(rgb: npt.NDArray[np.uint8], quads_px: Array) -> tuple[Array, Array]:
    """Measure the corners of squares on their edges.

    Parameters
    ----------
    rgb : ndarray of shape (H, W, 3), uint8
    quads_px : ndarray of shape (Q, 4, 2)
        Coarse corners, clockwise, good to about half a module.

    Returns
    -------
    corners : ndarray of shape (Q, 4, 2)
        px; the coarse corner where a side gave no line.
    u : ndarray of shape (Q, 4)
        Standard uncertainty of each coordinate, px; `UNCLEAR_PX` where a side gave no line.
    """
    rgb = np.ascontiguousarray(rgb)  # no copy of a photo's own pixels
    side_px = np.linalg.norm(np.roll(quads_px, -1, 1) - quads_px, axis=2).mean(axis=1)
    reach = np.maximum(_REACH_MODULES * side_px / 6, 2.0)
    corners, u = quads_px, np.full(quads_px.shape[:2], UNCLEAR_PX)
    for _ in range(2):  # the second pass starts on the edge: shorter profiles see less else
        corners, u = _pass(rgb, corners, reach)
        reach = np.maximum(0.6 * reach, 2.0)
    return corners, u


def _pass(rgb: npt.NDArray[np.uint8], quads: Array, reach: Array) -> tuple[Array, Array]:
    start, end = quads.reshape(-1, 2), np.roll(quads, -1, 1).reshape(-1, 2)
    length = np.linalg.norm(end - start, axis=1)
    along = (end - start) / np.maximum(length, 1e-9)[:, None]
    outward = np.column_stack([along[:, 1], -along[:, 0]])  # clockwise, y down
    at = np.linspace(0.08, 0.92, _PROFILES) * length[:, None]  # (S, K)
    off = np.linspace(-1, 1, _STEPS) * np.repeat(reach, 4)[:, None]  # (S, M)
    light, inside = _light(rgb, start, along, outward, at, off)
    edge, clear = _half_level(light, off)
    offset, slope, u = _robust_lines(at, edge, clear & inside)
    point = start + offset[:, None] * outward
    direction = along + slope[:, None] * outward
    return _meet(point.reshape(-1, 4, 2), direction.reshape(-1, 4, 2), u.reshape(-1, 4), quads)


def _light(
    rgb: npt.NDArray[np.uint8],
    start: Array,
    along: Array,
    outward: Array,
    at: Array,
    off: Array,
) -> tuple[Array, Mask]:
    """Linear green on every profile, shape (S, K, M), bilinear; whether it is in the photo."""
    x = start[:, :1, None] + (at * along[:, :1])[:, :, None] + (off * outward[:, :1])[:, None]
    y = start[:, 1:, None] + (at * along[:, 1:])[:, :, None] + (off * outward[:, 1:])[:, None]
    height, width = rgb.shape[:2]
    inside = ((x >= 0) & (x <= width - 1) & (y >= 0) & (y <= height - 1)).all(axis=2)
    x, y = np.clip(x, 0, width - 1.001), np.clip(y, 0, height - 1.001)
    col, row = x.astype(np.intp), y.astype(np.intp)
    fx, fy = x - col, y - row
    at_green = row * rgb.strides[0] + col * rgb.strides[1] + rgb.strides[2]
    code, right, down = rgb.reshape(-1), rgb.strides[1], rgb.strides[0]
    here, beside, below, across = (
        _LINEAR.take(code.take(at_green + step)) for step in (0, right, down, down + right)
    )
    low, high = here + fx * (beside - here), below + fx * (across - below)
    return np.asarray(low + fy * (high - low)), np.asarray(inside)


def _half_level(light: Array, off: Array) -> tuple[Array, Mask]:
    """Where each profile passes half way from dark to light, and whether it does so clearly."""
    tail = _STEPS // 5
    dark, bright = _middle(light[..., :tail]), _middle(light[..., -tail:])
    # Light changes slowly along a side: levels from a stretch of it are steadier than one
    # profile's own.
    half = (_running(dark) + _running(bright)) / 2
    above = light >= half[..., None]
    first = np.maximum(np.argmax(above, axis=2), 1)[..., None]
    low = np.take_along_axis(light, first - 1, 2)[..., 0]
    high = np.take_along_axis(light, first, 2)[..., 0]
    part = np.clip((half - low) / np.maximum(high - low, 1e-9), 0, 1)
    spacing = (off[:, 1] - off[:, 0])[:, None]
    edge = off[:, :1] + (first[..., 0] - 1 + part) * spacing
    contrast = bright - dark
    clear = (contrast > 0.5 * _middle(contrast)[:, None]) & (contrast > _MIN_CONTRAST)
    return np.asarray(edge), np.asarray(clear & above.any(axis=2) & ~above[..., 0])


def _running(values: Array) -> Array:
    """Median of each value and four neighbours, shape (S, K)."""
    padded = np.concatenate([values[:, [0, 0]], values, values[:, [-1, -1]]], axis=1)
    windows = np.lib.stride_tricks.sliding_window_view(padded, 5, axis=1)
    return _middle(windows)


def _middle(values: Array) -> Array:
    """Median along the last axis; NumPy's own takes five times as long on so few."""
    ordered, half = np.sort(values, axis=-1), values.shape[-1] // 2
    if values.shape[-1] % 2:
        return np.asarray(ordered[..., half])
    return np.asarray((ordered[..., half - 1] + ordered[..., half]) / 2)


def _robust_lines(at: Array, off: Array, good: Mask) -> tuple[Array, Array, Array]:
    """Offset at 0, slope and u of the worse end for every side, each of shape (S,).

    Tukey's biweight from a repeated-median-like start (medians of the two halves).
    """
    enough = good.sum(axis=1) >= 8
    x = at - at.mean(axis=1, keepdims=True)
    masked = np.where(good, off, np.nan)
    masked[~enough] = 0.0
    half = _PROFILES // 2
    left, right = _median(masked[:, :half]), _median(masked[:, half:])
    slope = (right - left) / (x[:, half:].mean(axis=1) - x[:, :half].mean(axis=1))
    offset = _median(masked - slope[:, None] * x)
    weight, rest = good.astype(float), masked
    for _ in range(6):
        rest = np.where(good, off - offset[:, None] - slope[:, None] * x, np.nan)
        rest[~enough] = 0.0
        scale = np.maximum(1.4826 * _median(np.abs(rest)), 0.02)[:, None]
        rest = np.where(good, rest, 1e9)
        weight = np.clip(1 - (rest / (_TUKEY * scale)) ** 2, 0, None) ** 2 * good
        total = np.maximum(weight.sum(axis=1), 1e-9)
        mx, mo = (weight * x).sum(axis=1) / total, (weight * off).sum(axis=1) / total
        dx, do = x - mx[:, None], off - mo[:, None]
        slope = (weight * dx * do).sum(axis=1) / np.maximum((weight * dx**2).sum(axis=1), 1e-9)
        offset = mo - slope * mx
    total = weight.sum(axis=1)
    spread = np.sqrt((weight * np.where(weight > 0, rest, 0) ** 2).sum(axis=1) / (total + 1e-9))
    # Neighbouring profiles share pixels: about one in two is independent.
    lever = x[:, -1] ** 2 / np.maximum((weight * x**2).sum(axis=1), 1e-9)
    u = spread * np.sqrt(2 * (1 / np.maximum(total, 1e-9) + lever))
    u = np.where(enough & (total >= 6), np.hypot(u, _FLOOR_PX), UNCLEAR_PX)
    return offset - slope * at.mean(axis=1), slope, u


def _median(values: Array) -> Array:
    """Median along the last axis without the NaN, 0 where there is nothing else."""
    ordered, every = np.sort(values, axis=1), np.arange(len(values))
    count = values.shape[1] - np.count_nonzero(np.isnan(values), axis=1)
    low = ordered[every, np.maximum((count - 1) // 2, 0)]
    high = ordered[every, np.minimum(count // 2, np.maximum(count, 1) - 1)]
    return np.asarray(np.where(count > 0, (low + high) / 2, 0.0))


def _meet(point: Array, direction: Array, u: Array, coarse: Array) -> tuple[Array, Array]:
    """Where each side crosses the one before it, shape (Q, 4, 2), with its u, (Q, 4)."""
    p, d = np.roll(point, 1, 1), np.roll(direction, 1, 1)
    gap = point - p
    cross = d[..., 0] * direction[..., 1] - d[..., 1] * direction[..., 0]
    size = np.linalg.norm(d, axis=2) * np.linalg.norm(direction, axis=2)
    worse = np.maximum(u, np.roll(u, 1, 1))
    known = (worse < UNCLEAR_PX) & (np.abs(cross) > 0.1 * size)
    part = (gap[..., 0] * direction[..., 1] - gap[..., 1] * direction[..., 0]) / np.where(
        known, cross, 1.0
    )
    corners = np.where(known[..., None], p + d * part[..., None], coarse)
    return corners, np.where(known, worse, UNCLEAR_PX)
