"""The tips of outlines: thin lines taper and fade, and their ends are less sure than flanks.

Places are in sheet px, as in `ptmark.dye.contour`.
"""

from math import ceil, sqrt

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.fine import CloseLook
from ptmark.dye.quick import highest, sample

__all__ = ["fading", "farthest", "own_ridge"]

Float = npt.NDArray[np.float32]
Array = npt.NDArray[np.float64]

_FADES_PX = 6.0  # how far a tip may fade to either side of its end, twice that outwards
_STEP_PX = 0.5


def own_ridge(relative: Float, close: CloseLook, crops: npt.NDArray[np.intp]) -> Float:
    """The ridge beside each pixel of these crops over the plateau, shape of ``relative``.

    Where a thin line tapers, the plateau from farther inside stands above its own ridge: flanks
    sought at a high share of that would meet, and the tip be lost.
    """
    ridge = np.empty_like(relative)
    for i in set(crops.tolist()):
        room = close.sheet.rooms[i]
        ridge[room] = highest(relative[room], ceil(float(close.seen_px[i]) / 2))
    return ridge


def fading(relative: Float, ends: Array, target: Array) -> Array:
    """Half the way on which ends of greatest lengths fade from 60 to 40 % contrast, shape (R,).

    ``relative`` is amount over plateau, ``ends`` of shape (R, 2, 2) the two ends of each
    outline in sheet px and ``target`` of shape (R, 2) the share at which each lies. Followed
    along the length, where a pale tip fades over more px than the normals reach.
    """
    way = ends - ends[:, ::-1]  # outwards at each end
    size = np.hypot(way[..., 0], way[..., 1])[..., None]
    outward = way / np.maximum(size, 1e-9)
    beside = np.stack([-outward[..., 1], outward[..., 0]], axis=-1)
    steps = np.arange(-_FADES_PX, 2 * _FADES_PX, _STEP_PX)[:, None, None]
    lines = [ends + steps[..., None] * outward + side * beside for side in (-1, 0, 1)]
    values = sample(relative, np.stack(lines)).max(axis=0) / target  # (steps, R, 2)
    gone = _falls_below(values, 0.8) - _falls_below(values, 1.2)
    return np.where(size[:, 0, 0] < 1, 0, np.maximum(gone, 0).sum(axis=1) * _STEP_PX / 4)


def farthest(points: Array) -> tuple[int, int, float]:
    """Which two of the points, shape (N, 2), lie farthest apart, and how far."""
    hull = cv2.convexHull(points.astype(np.float32), returnPoints=False).ravel()
    x, y = points[hull].T
    squares = (x[:, None] - x) ** 2 + (y[:, None] - y) ** 2
    one, other = divmod(int(squares.argmax()), len(hull))
    return int(hull[one]), int(hull[other]), sqrt(squares[one, other])


def _falls_below(values: Array, level: float) -> Array:
    """Where values of shape (N, …) first fall below a level after their peak, in steps."""
    count = len(values)
    high = values >= 1.2
    start = high.argmax(axis=0)  # 0 where none is
    below = (values < level) & (np.arange(count)[:, None, None] >= start)
    first = np.where(below.any(axis=0), below.argmax(axis=0), count - 1)
    before = np.maximum(first - 1, 0)
    inner, outer = (np.take_along_axis(values, one[None], 0)[0] for one in (before, first))
    place = first - 1 + (inner - level) / np.maximum(inner - outer, 1e-6)
    return np.where(below.any(axis=0), np.where(first > start, place, start), count - 1.0)
