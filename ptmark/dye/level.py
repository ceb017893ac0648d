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

from ptmark.dye.quick import highest

__all__ = [
    "PLATEAU_SMOOTH_PX",
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


def width_doubt(seen_px: Table, blur_px: Table, by_px: Table) -> Table:
    """Shift of the flanks of lines, px, that stands for a blur known to within ``by_px``.

    Parameters
    ----------
    seen_px, blur_px, by_px : ndarray of shape (N,)
        Widths at half of the plateau, standard deviations of the blur, and the half-width of
        where those may lie (rectangular), px.

    Returns
    -------
    ndarray of shape (N,)
        A quarter of what lies between the widths by the least and the greatest blur: two
        flanks, each of which may lie so far in and so far out.
    """
    ways = (_true_width(seen_px, blur_px + side * by_px) for side in (-1, 1))
    return np.abs(np.subtract(*ways)) / 4


def _true_width(seen_px: Table, blur_px: Table) -> Table:
    """True widths of lines seen so wide, px."""
    widths = np.zeros(len(seen_px))
    for i, (seen, blur) in enumerate(zip(seen_px.tolist(), blur_px.tolist(), strict=True)):
        rounded = max(round(blur, 1), 0.3)
        true, as_seen, *_ = thin_line_table(PLATEAU_SMOOTH_PX / rounded)
        widths[i] = rounded * np.interp(seen / rounded, as_seen, true)
    return widths


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
