"""The level at which an indication ends: half contrast, followed along the line.

A thin line is blurred below its own plateau by the lens, and half of what is left of it lies
too far out. A line of width w blurred by a Gaussian of standard deviation s keeps, at its true
edges, the share 0.5 erf(w / (sqrt 2 s)) / erf(w / (2 sqrt 2 s)) of its peak: one half where it
is wide, nearly all where it is hair-thin. (A box convolved with a Gaussian; own derivation,
checked numerically in the tests.)
"""

from functools import lru_cache
from math import hypot, pi, sqrt

import cv2
import numpy as np
import numpy.typing as npt

__all__ = ["PLATEAU_SMOOTH_PX", "edge_share", "plateau", "thin_line_table"]

Float = npt.NDArray[np.float32]
Table = npt.NDArray[np.float64]
PLATEAU_SMOOTH_PX = 1.0
MAX_SHARE = 0.85  # above it the contour would lie on the ridge, where noise decides


@lru_cache(maxsize=1)
def thin_line_table() -> tuple[Table, Table, Table]:
    """Blurred lines of true width ``t`` standard deviations of the blur.

    Returns
    -------
    t, seen, product : ndarray of shape (N,)
        True width and width at half of the seen peak, in standard deviations of the blur;
        seen width times edge slope over peak, which tells t from what is seen.
    """
    from scipy.special import erf

    t = np.geomspace(0.05, 40, 300)
    low, high = np.zeros_like(t), t / 2 + 6
    peak = erf(t / (2 * sqrt(2)))
    for _ in range(60):  # bisection for the half of the seen width
        middle = (low + high) / 2
        value = 0.5 * (erf((middle + t / 2) / sqrt(2)) - erf((middle - t / 2) / sqrt(2)))
        low, high = (
            np.where(value > peak / 2, middle, low),
            np.where(value > peak / 2, high, middle),
        )
    half = (low + high) / 2
    slope = (np.exp(-((half - t / 2) ** 2) / 2) - np.exp(-((half + t / 2) ** 2) / 2)) / sqrt(
        2 * pi
    )
    return t, 2 * half, 2 * half * slope / peak


def edge_share(seen_width_px: npt.ArrayLike, blur_px: float) -> Table:
    """Share of the `plateau` at which the true edge of a line lies, at most 0.85.

    Parameters
    ----------
    seen_width_px : array
        Width at half of the seen peak, px.
    blur_px : float
        Standard deviation of the blur, px.

    Notes
    -----
    The true edge keeps ``0.5 erf(w / (sqrt 2 s))``; the plateau is smoothed once more before
    its maximum is taken, so that it keeps ``erf(w / (2 sqrt 2 hypot(s, 1 px)))``.
    """
    from scipy.special import erf

    t, seen, _ = thin_line_table()
    blur = max(blur_px, 0.3)
    kept = erf(t * blur / (2 * sqrt(2) * hypot(blur, PLATEAU_SMOOTH_PX)))
    share = 0.5 * erf(t / sqrt(2)) / kept
    return np.minimum(
        np.interp(np.asarray(seen_width_px, float) / blur, seen, share), MAX_SHARE
    )


def plateau(amount: Float, radius: int) -> Float:
    """The indication's own plateau near each pixel: the local maximum, smoothed.

    ``amount`` of shape (H, W); ``radius`` in px is how far a pixel of the edge may lie from
    the ridge that it belongs to.
    """
    kernel = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (2 * radius + 1, 2 * radius + 1))
    ridge = cv2.dilate(cv2.GaussianBlur(amount, (0, 0), PLATEAU_SMOOTH_PX), kernel)
    return cv2.GaussianBlur(ridge, (0, 0), max(1.0, radius / 2))  # type: ignore[return-value]
