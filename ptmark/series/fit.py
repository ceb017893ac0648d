"""Least squares for a homography between photos, and the covariance of its parameters."""

import numpy as np
import numpy.typing as npt

from ptmark.scale.plane import apply_homography

__all__ = ["covariance_of", "place_slopes", "refined"]

Array = npt.NDArray[np.float64]
Mask = npt.NDArray[np.bool_]


def place_slopes(h: Array, points: Array) -> Array:
    """Derivative of the mapped place by the first eight entries of ``h``, shape (N, 2, 8)."""
    w = points @ h[2, :2] + h[2, 2]
    mapped = apply_homography(h, points)
    rows = np.column_stack([points, np.ones(len(points))]) / w[:, None]
    slopes = np.zeros((len(points), 2, 8))
    slopes[:, 0, 0:3] = rows
    slopes[:, 1, 3:6] = rows
    slopes[:, :, 6:8] = -mapped[:, :, None] * rows[:, None, :2]
    return slopes


def refined(
    h: Array, source: Array, target: Array, inside: Mask, reach_px: float
) -> tuple[Array, Mask]:
    """Gauss-Newton on the misfit in the target; pairs within ``reach_px`` are chosen anew."""
    h = h / h[2, 2]
    for _ in range(4):
        if inside.sum() < 8:
            break
        slopes = place_slopes(h, source[inside]).reshape(-1, 8)
        off = (target[inside] - apply_homography(h, source[inside])).ravel()
        sizes = np.linalg.norm(slopes, axis=0)
        step = np.linalg.lstsq(slopes / sizes, off, rcond=None)[0] / sizes
        h = h + np.append(step, 0.0).reshape(3, 3)
        misfit = np.linalg.norm(target - apply_homography(h, source), axis=1)
        inside = misfit < reach_px
    return h, inside


def covariance_of(
    h: Array, source: Array, target: Array, *, least_px: float = 0.0
) -> tuple[Array, float]:
    """Covariance (8, 8) of the parameters, and the root mean square misfit of a pair, px.

    ``s**2 (J^T J)^-1`` with ``s**2`` the misfit's variance over ``2 N - 8`` degrees of freedom
    (JCGM 100:2008, H.3, for a linearised fit); ``s`` is at least ``least_px``.
    """
    slopes = place_slopes(h, source).reshape(-1, 8)
    off = (target - apply_homography(h, source)).ravel()
    freedom = max(len(off) - 8, 1)
    s = max(float(np.sqrt(off @ off / freedom)) if len(off) > 8 else 0.0, least_px)
    sizes = np.linalg.norm(slopes, axis=0)
    scaled = slopes / sizes
    covariance = s**2 * np.linalg.pinv(scaled.T @ scaled) / np.outer(sizes, sizes)
    return np.asarray(covariance), float(np.sqrt(off @ off / max(len(source), 1)))
