"""The level at which an indication ends: half contrast, followed along the line.

A thin line is blurred below its own plateau by the lens, and half of what is left of it lies
too far out. A line of width w blurred by a Gaussian of standard deviation s keeps, at its true
edges, the share 0.5 erf(w / (sqrt 2 s)) / erf(w / (2 sqrt 2 s)) of its peak: one half where it
is wide, nearly all where it is hair-thin. (A box convolved with a Gaussian; own derivation,
checked numerically in the tests.)
"""

from functools import lru_cache
from math import erf, hypot, log, pi, sqrt

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.edge import LEVEL_DIVISOR
from ptmark.dye.quick import highest

__all__ = [
    "PLATEAU_SMOOTH_PX",
    "band_width",
    "crossing",
    "edge_share",
    "error_function",
    "plateau",
    "thin_line_table",
    "width_doubt",
]

Float = npt.NDArray[np.float32]
Table = npt.NDArray[np.float64]
PLATEAU_SMOOTH_PX = 1.0
_STEPS = 8  # to the last digit, for blurs of 0.3 px and more
MAX_SHARE = 0.85  # above it the contour would lie on the ridge, where noise decides
# How much too wide a mask may be, counted in pixels: from its middle one to the first beyond it
# is up to 0.7 px more than half of its width, twice that less the quarter px on either side.
_COUNTED_PX = 1.0
# A hairline under a blur of 2.5 px is seen 6 to 8 px wide. Wider ones, the only line looked at,
# had U of 1.5 mm at a width of 0.9 mm so, and their lengths twice theirs, for no better hold.
_NARROW_PX = 9.0
_ROUND = 0.8  # of the circle round it: an ellipse 1.25 times as long as wide
_HAIR = 0.1  # blurs: what is thinner looks the same


def error_function(values: npt.ArrayLike) -> Table:
    """Error function of each value; SciPy's takes longer to load than a photo to measure."""
    array = np.asarray(values, float)
    return np.fromiter(map(erf, array.ravel().tolist()), float, array.size).reshape(array.shape)


@lru_cache(maxsize=64)
def thin_line_table(smooth: float) -> tuple[Table, Table, Table, Table, Table]:
    """What is seen of blurred lines; all widths in standard deviations of the blur.

    Parameters
    ----------
    smooth : float
        Standard deviation of the plateau's own smoothing.

    Returns
    -------
    t, seen, flank, tip, product : ndarray of shape (N,)
        True width; width at half of the `plateau`; share of the plateau at the line's true
        flank and at its true end; seen width times edge slope over plateau, which tells t
        from what is seen.
    """
    t = np.geomspace(0.05, 40, 300)
    kept = error_function(t / (2 * sqrt(2) * hypot(1.0, smooth)))
    half = np.hypot(t / 2, sqrt(2 * log(2 * hypot(1.0, smooth))))  # exact at either end
    for _ in range(_STEPS):  # of Newton, on the logarithm: it is concave
        outer, inner = half + t / 2, half - t / 2
        value = 0.5 * (error_function(outer / sqrt(2)) - error_function(inner / sqrt(2)))
        falls = (np.exp(-(inner**2) / 2) - np.exp(-(outer**2) / 2)) / sqrt(2 * pi)
        half += np.log(2 * value / kept) * value / falls
    near, far = np.exp(-((half - t / 2) ** 2) / 2), np.exp(-((half + t / 2) ** 2) / 2)
    slope = (near - far) / sqrt(2 * pi)
    flank, tip = (0.5 * error_function(t / root) / kept for root in (sqrt(2), 2 * sqrt(2)))
    return t, 2 * half, flank, tip, 2 * half * slope / kept


def edge_share(seen_width_px: npt.ArrayLike, blur_px: npt.ArrayLike) -> tuple[Table, Table]:
    """Share of the `plateau` at which the true edge of a line lies, at most 0.85.

    Parameters
    ----------
    seen_width_px : array
        Width at half of the plateau, px.
    blur_px : array
        Standard deviation of the blur, px; of the same shape, or one for all.

    Returns
    -------
    flank, tip : arrays of the same shape
        Along the line's sides, and at its ends.
    """
    seen_px = np.asarray(seen_width_px, float)
    rounded = np.maximum(np.round(np.asarray(blur_px, float), 1), 0.3)
    blurs = np.broadcast_to(rounded, seen_px.shape)
    shares = np.empty((2, *seen_px.shape))
    for blur in np.unique(blurs).tolist():
        _, seen, flank, tip, _ = thin_line_table(PLATEAU_SMOOTH_PX / blur)
        here = blurs == blur
        shares[0, here] = np.interp(seen_px[here] / blur, seen, flank)
        shares[1, here] = np.interp(seen_px[here] / blur, seen, tip)
    return np.minimum(shares[0], MAX_SHARE), np.minimum(shares[1], MAX_SHARE)


def band_width(outline_px: Table) -> float:
    """Width of a band with round ends of an outline's area and rim, px; 0 of what is round.

    With rim P and area A of a band of width w, A = w P / 2 - pi w^2 / 4, however it is bent.
    """
    points = outline_px.astype(np.float32)
    rim, area = cv2.arcLength(points, closed=True), cv2.contourArea(points)
    if area > _ROUND * pi * cv2.minEnclosingCircle(points)[1] ** 2:
        return 0.0
    return (rim - sqrt(max(rim**2 - 4 * pi * area, 0.0))) / pi


def width_doubt(
    seen_px: Table, band_px: Table, blur_px: Table, by_px: Table, shift_px: Table
) -> Table:
    """Shift of the flanks of lines, px, that stands for what their blur leaves of their widths.

    Parameters
    ----------
    seen_px : ndarray of shape (N,)
        Widths of the masks at half of the plateau, px.
    band_px : ndarray of shape (N,)
        Those of the outlines, as `band_width` tells.
    blur_px, by_px : ndarray of shape (N,)
        Standard deviations of the blur, and the half-width of where those may lie
        (rectangular), px; the latter NaN where a line's own edge tells its blur.
    shift_px : ndarray of shape (N,)
        Of the flanks for a tenth of the contrast.

    Returns
    -------
    ndarray of shape (N,)
        By a blur that may be less or more, a quarter of what lies between the widths by
        either: two flanks, each of which may lie so far in and so far out. Where that reaches
        less far, that with which U of a narrow one reaches down to the width by the greatest
        blur, as by `MAX_SHARE` and about tips outlines are wider: of what is not round, also
        where the blur is known and it is seen no wider than the thinnest of lines. 0 where
        neither is so.
    """
    doubt = np.zeros(len(seen_px))
    for i in np.flatnonzero(~np.isnan(by_px)).tolist():
        seen, blur, by = float(seen_px[i]), float(blur_px[i]), float(by_px[i])
        if by > 0:
            ways = _true_width(seen, blur - by) - _true_width(seen, blur + by)
            doubt[i] = hypot(float(shift_px[i]), ways / 4)
        elif _true_width(seen - _COUNTED_PX / 2, blur) > _HAIR * blur:
            continue
        if band_px[i] < _NARROW_PX:
            down = float(band_px[i]) - _true_width(seen - _COUNTED_PX, blur + by)
            doubt[i] = max(doubt[i], down * LEVEL_DIVISOR / 4)
    return doubt


def _true_width(seen: float, blur: float) -> float:
    """True width of a line seen so wide, px."""
    rounded = max(round(blur, 1), 0.3)
    true, as_seen, *_ = thin_line_table(PLATEAU_SMOOTH_PX / rounded)
    return rounded * float(np.interp(seen / rounded, as_seen, true))


def plateau(amount: Float, radius: int) -> Float:
    """The indication's own plateau near each pixel: the local maximum, smoothed.

    ``amount`` of shape (H, W); ``radius`` in px is how far a pixel of the edge may lie from
    the ridge that it belongs to.
    """
    # Smoothed, a plateau falls at its rim: it is carried on so far that this lies outside.
    reach = radius + max(1, radius // 4)
    ridge = highest(cv2.GaussianBlur(amount, (0, 0), PLATEAU_SMOOTH_PX), reach)
    return cv2.GaussianBlur(ridge, (0, 0), max(1.0, radius / 2))  # type: ignore[return-value]


def crossing(values: Table, level: float) -> Table:
    """Where each row falls through a level, in columns; at its peak where it never does.

    Where grain makes it cross more than once, the mean of the first and the last. The end of a
    row is minus infinity: no value, and at least once.
    """
    above, columns, every = values >= level, np.arange(values.shape[1]), np.arange(len(values))
    top = values.argmax(axis=1)
    last = columns[-1] - above[:, ::-1].argmax(axis=1)
    first = (~above & (columns > top[:, None])).argmax(axis=1) - 1
    crossed = above[every, top]
    total = np.zeros(len(values))
    for one in (first, np.where(crossed, last, first)):
        inner, outer = values[every, one], values[every, one + 1]
        part = (inner - level) / np.maximum(inner - outer, 1e-6)
        total += one + np.minimum(np.maximum(part, 0), 1)
    return np.where(crossed, total / 2, top)
