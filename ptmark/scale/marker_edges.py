"""Corners of a black square on white, sub-pixel, from its four edges at half level.

The edge lies where linear light passes half way between the black of the square and the white
beside it; a line is fitted to each side and neighbours are intersected. A marker's inner bits
begin one module (a sixth of the side) inside, so no profile reaches further than that.
"""

import cv2
import numpy as np
import numpy.typing as npt

__all__ = ["refine_corners"]

Array = npt.NDArray[np.float64]

_PROFILES = 48
_STEPS = 40
_REACH_MODULES = 0.75  # inwards and outwards from the coarse side
# Printing, resampling and demosaicing leave this much in a fitted edge however many points
# it has. Common practice, no source.
_FLOOR_PX = 0.04

_LINEAR = (lambda s: np.where(s <= 0.04045, s / 12.92, ((s + 0.055) / 1.055) ** 2.4))(
    np.arange(256) / 255
).astype(np.float32)  # sRGB decoding, IEC 61966-2-1


def refine_corners(
    rgb: npt.NDArray[np.uint8], corners_px: Array, side_mm: float, quiet_mm: float
) -> tuple[Array, Array]:
    """Measure a square's corners on its edges.

    Parameters
    ----------
    rgb : ndarray of shape (H, W, 3), uint8
    corners_px : ndarray of shape (4, 2)
        Coarse corners, clockwise, good to about half a module.
    side_mm, quiet_mm : float
        The square's side and the white about it.

    Returns
    -------
    corners : ndarray of shape (4, 2)
        px; the coarse corner where a side gave no line.
    u : ndarray of shape (4,)
        Standard uncertainty of each coordinate, px.
    """
    module = float(np.linalg.norm(np.roll(corners_px, -1, 0) - corners_px, axis=1).mean()) / 6
    reach = max(min(_REACH_MODULES, 6 * quiet_mm / side_mm) * module, 2.0)
    lines = [None, None, None, None]
    corners = corners_px
    for _ in range(2):  # the second pass starts on the edge and needs no allowance
        patch, origin = _linear_patch(rgb, corners, reach + 2)
        lines = [
            _side(patch, corners[i] - origin, corners[(i + 1) % 4] - origin, reach)
            for i in range(4)
        ]
        corners = np.array(
            [_meet(lines[i - 1], lines[i], corners[i] - origin) + origin for i in range(4)]
        )
        reach = max(0.6 * reach, 2.0)
    coarse_u = 0.25 * module
    u = np.array(
        [
            coarse_u
            if lines[i] is None or lines[i - 1] is None
            else np.hypot(_FLOOR_PX, max(lines[i][2], lines[i - 1][2]))
            for i in range(4)
        ]
    )
    return corners, u


def _linear_patch(
    rgb: npt.NDArray[np.uint8], corners_px: Array, margin: float
) -> tuple[npt.NDArray[np.float32], Array]:
    """Linear green around the square, and the patch's first pixel."""
    height, width = rgb.shape[:2]
    low = np.clip(np.floor(corners_px.min(axis=0) - margin), 0, [width - 1, height - 1])
    high = np.clip(np.ceil(corners_px.max(axis=0) + margin) + 1, 1, [width, height])
    (x0, y0), (x1, y1) = low.astype(int), high.astype(int)
    return _LINEAR[rgb[y0:y1, x0:x1, 1]], low


def _side(
    patch: npt.NDArray[np.float32], start: Array, end: Array, reach: float
) -> tuple[Array, Array, float] | None:
    """Line (point, unit direction, u across at its ends) along one side; None if unclear."""
    along = end - start
    length = float(np.hypot(*along))
    along = along / length
    outward = np.array([along[1], -along[0]])  # clockwise in a frame with y down
    at = np.linspace(0.08, 0.92, _PROFILES) * length
    off = np.linspace(-reach, reach, max(_STEPS, int(2 * reach) + 1))
    x = start[0] + at[:, None] * along[0] + off * outward[0]
    y = start[1] + at[:, None] * along[1] + off * outward[1]
    height, width = patch.shape
    light = cv2.remap(
        patch,
        x.astype(np.float32),
        y.astype(np.float32),
        cv2.INTER_LINEAR,
        borderMode=cv2.BORDER_REPLICATE,
    )
    inside = ((x >= 0) & (x <= width - 1) & (y >= 0) & (y <= height - 1)).all(axis=1)
    edge, clear = _half_level(light, off)
    good = clear & inside
    if int(good.sum()) < 8:
        return None
    fitted = _robust_line(at[good], edge[good])
    if fitted is None:
        return None
    offset, slope, u = fitted
    point = start + offset * outward
    direction = along + slope * outward
    return point, direction / np.hypot(*direction), u


def _half_level(
    light: npt.NDArray[np.float32], off: Array
) -> tuple[Array, npt.NDArray[np.bool_]]:
    """Where each profile passes half way from dark to light, and whether it does so clearly."""
    tail = max(3, len(off) // 5)
    dark = np.median(light[:, :tail], axis=1)
    bright = np.median(light[:, -tail:], axis=1)
    # Light changes slowly along a side: one level for all, tilted with the side, is steadier.
    half = (_smooth(dark) + _smooth(bright)) / 2
    above = light >= half[:, None]
    first = np.argmax(above, axis=1)
    rows = np.arange(len(light))
    before = np.maximum(first - 1, 0)
    low, high = light[rows, before], light[rows, first]
    step = np.where(high > low, (half - low) / np.maximum(high - low, 1e-9), 0.0)
    edge = off[before] + step * (off[1] - off[0])
    contrast = bright - dark
    clear = (first > 0) & (contrast > 0.3 * np.median(contrast)) & (contrast > 0.02)
    return np.asarray(edge, float), clear


def _smooth(values: npt.NDArray[np.float32]) -> Array:
    """Robust straight line through the values."""
    at = np.linspace(-1, 1, len(values))
    keep = (
        np.abs(values - np.median(values))
        <= 3 * np.median(np.abs(values - np.median(values))) + 1e-6
    )
    slope, middle = (
        np.polyfit(at[keep], values[keep], 1) if keep.sum() > 2 else (0, values.mean())
    )
    return np.asarray(middle + slope * at, float)


def _robust_line(at: Array, off: Array) -> tuple[float, float, float] | None:
    """Offset at 0, slope and u of the ends, by Tukey's biweight from a median start."""
    middle = at.mean()
    x = at - middle
    half = len(x) // 2
    slope = float(
        (np.median(off[half:]) - np.median(off[:half]))
        / (np.median(x[half:]) - np.median(x[:half]))
    )
    offset = float(np.median(off - slope * x))
    weight = np.ones_like(x)
    for _ in range(6):
        rest = off - offset - slope * x
        scale = max(1.4826 * float(np.median(np.abs(rest))), 0.02)
        weight = np.clip(1 - (rest / (4.685 * scale)) ** 2, 0, None) ** 2
        total = weight.sum()
        if total < 6:
            return None
        mx, mo = weight @ x / total, weight @ off / total
        slope = float(weight @ ((x - mx) * (off - mo)) / (weight @ (x - mx) ** 2))
        offset = float(mo - slope * mx)
    rest = off - offset - slope * x
    spread = float(np.sqrt(weight @ rest**2 / total))
    # Neighbouring profiles share pixels: about one in two is independent.
    u_middle, u_slope = spread * np.sqrt(2 / total), spread * np.sqrt(2 / (weight @ x**2))
    u = float(np.hypot(u_middle, u_slope * max(abs(x[0]), abs(x[-1]))))
    return offset - slope * middle, slope, u


def _meet(
    first: tuple[Array, Array, float] | None,
    second: tuple[Array, Array, float] | None,
    coarse: Array,
) -> Array:
    """Where two lines cross; the coarse corner where one is missing or they run alike."""
    if first is None or second is None:
        return coarse
    (p, d, _), (q, e, _) = first, second
    cross = d[0] * e[1] - d[1] * e[0]
    if abs(cross) < 0.1:
        return coarse
    return np.asarray(p + d * (((q - p)[0] * e[1] - (q - p)[1] * e[0]) / cross))
