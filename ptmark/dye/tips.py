"""The tips of an outline: thin lines taper and fade, and their ends are less sure than flanks.

Places are in crop px, as in `ptmark.dye.contour`.
"""

from math import ceil

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.quick import ring_mean, sample

__all__ = ["fading", "farthest", "own_ridge"]

Float = npt.NDArray[np.float32]
Array = npt.NDArray[np.float64]

_FADES_PX = 6.0  # how far a tip may fade to either side of its end, twice that outwards
_STEP_PX = 0.5


def own_ridge(relative: Float, chain: npt.NDArray[np.int32], seen_px: float) -> Array:
    """The ridge beside each vertex over the plateau, at most 1, shape (N,).

    Where a thin line tapers, the plateau from farther inside stands above its own ridge: flanks
    sought at a high share of that would meet, and the tip be lost.
    """
    reach = ceil(seen_px / 2)
    kernel = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (2 * reach + 1, 2 * reach + 1))
    ridge = cv2.dilate(relative, kernel)[chain[:, 1], chain[:, 0]]
    return ring_mean(np.minimum(ridge, 1.0)[:, None].astype(np.float64), 3)[:, 0]


def fading(relative: Float, points: Array, target: Array) -> float:
    """Half the way on which the ends of the greatest length fade from 60 to 40 % contrast.

    ``relative`` is amount over plateau, ``points`` of shape (N, 2) the outline in crop px and
    ``target`` of shape (N,) the share at which each lies. Followed along the length, where a
    pale tip fades over more px than the normals reach.
    """
    ends = farthest(points)
    way = points[ends[1]] - points[ends[0]]
    size = float(np.hypot(*way))
    if size < 1.0:
        return 0.0
    along, steps = way / size, np.arange(-_FADES_PX, 2 * _FADES_PX, _STEP_PX)
    beside = np.array([-along[1], along[0]])
    total = 0.0
    for end, outward in zip(ends, (-along, along), strict=True):
        lines = [points[end] + steps[:, None] * outward + side * beside for side in (-1, 0, 1)]
        values = sample(relative, np.stack(lines)).max(axis=0) / target[end]
        gone = [_falls_below(values, level) for level in (1.2, 0.8)]
        total += max(gone[1] - gone[0], 0.0) * _STEP_PX
    return total / 4


def farthest(points: Array) -> tuple[int, int]:
    """Which two of the points, shape (N, 2), lie farthest apart."""
    hull = cv2.convexHull(points.astype(np.float32), returnPoints=False).ravel()
    away = points[hull][:, None, :] - points[hull][None, :, :]
    one, other = divmod(int(np.einsum("ijk,ijk->ij", away, away).argmax()), len(hull))
    return int(hull[one]), int(hull[other])


def _falls_below(values: Array, level: float) -> float:
    """Where a row of values first falls below a level after its peak, in steps."""
    start = int(np.argmax(values >= 1.2)) if (values >= 1.2).any() else 0
    below = values[start:] < level
    if not below.any():
        return float(len(values) - 1)
    i = start + int(np.argmax(below))
    if i == 0:
        return 0.0
    return i - 1 + float((values[i - 1] - level) / max(values[i - 1] - values[i], 1e-6))
