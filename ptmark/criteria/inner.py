"""Circles inside many outlines at once, nearly the largest: lower bounds of their widths.

A circle about any point inside, as far as the nearest side, lies inside; so whatever the search
ends at is a bound. It starts at the centroid and tries eight points about the best one, nearer
and nearer; a narrow ridge may end it early, which costs a closer look and nothing else.
"""

import numpy as np
import numpy.typing as npt

from ptmark.criteria.geometry import Array

__all__ = ["inner_radii"]

_ROUNDS = 16
_FIRST = 0.5  # of the first circle's radius: how far off the first points are tried
_TURN = np.arange(8) * np.pi / 4
_AROUND = [np.c_[np.cos(_TURN + t), np.sin(_TURN + t)] for t in (0.0, np.pi / 8)]
_AT_ONCE = 400_000  # points against sides, so that many outlines take little memory


def inner_radii(outlines: list[Array]) -> Array:
    """Radius of a circle inside each outline of shape (N, 2); 0 where its centroid is outside.

    Examples
    --------
    >>> square = np.array([[0.0, 0.0], [2.0, 0.0], [2.0, 2.0], [0.0, 2.0]])
    >>> inner_radii([square, square * [3.0, 1.0]]).tolist()
    [1.0, 1.0]
    """
    sizes = np.array([len(outline) for outline in outlines])
    found = np.zeros(len(outlines))
    order = np.argsort(sizes, kind="stable")
    while len(order):
        step = max(_AT_ONCE // (8 * int(sizes[order[0]])), 1)
        most = np.searchsorted(sizes[order], 2 * sizes[order[0]], side="right")
        part, order = order[: min(step, most)], order[min(step, most) :]
        widest = int(sizes[part].max())
        # an outline of fewer corners stands still at its last one
        places = np.minimum(np.arange(widest), sizes[part][:, None] - 1)
        found[part] = _search(
            np.stack([outlines[k][at] for k, at in zip(part, places, strict=True)])
        )
    return found


def _search(rings: Array) -> Array:
    """Radii for outlines with as many corners each, shape (B, N, 2)."""
    origin = rings.mean(axis=1, keepdims=True)
    rings = rings - origin
    ahead = np.roll(rings, -1, axis=1)
    cross = rings[..., 0] * ahead[..., 1] - rings[..., 1] * ahead[..., 0]
    centres = ((rings + ahead) * cross[..., None]).sum(axis=1) / (
        3 * np.where(cross.sum(axis=1) == 0, np.inf, cross.sum(axis=1))
    )[:, None]
    best = _radii(rings, ahead, centres[:, None])[:, 0]
    reach, rows = _FIRST * best, np.arange(len(rings))
    for nth in range(_ROUNDS):
        tried = centres[:, None] + reach[:, None, None] * _AROUND[nth % 2]
        radii = _radii(rings, ahead, tried)
        pick = radii.argmax(axis=1)
        better = radii[rows, pick] > best
        best = np.where(better, radii[rows, pick], best)
        centres = np.where(better[:, None], tried[rows, pick], centres)
        reach = np.where(better, reach, 0.6 * reach)
    return best


def _radii(rings: Array, ahead: Array, points: Array) -> Array:
    """Distance of points, (B, P, 2), to the nearest side; 0 for a point outside."""
    start, end = rings[:, None], ahead[:, None]
    along, offset = end - start, points[:, :, None] - start
    squared = np.maximum((along**2).sum(axis=-1), 1e-300)
    t = np.clip((offset * along).sum(axis=-1) / squared, 0.0, 1.0)
    away = offset - t[..., None] * along
    nearest = np.sqrt((away**2).sum(axis=-1).min(axis=-1))
    return np.where(_inside(offset, points[:, :, None] - end), nearest, 0.0)


def _inside(before: Array, after: Array) -> npt.NDArray[np.bool_]:
    """Whether points lie inside (even-odd rule), seen from both ends of each side."""
    straddles = (before[..., 1] < 0) != (after[..., 1] < 0)
    cross = before[..., 0] * after[..., 1] - before[..., 1] * after[..., 0]
    left = (cross > 0) == (after[..., 1] > before[..., 1])
    return np.asarray((straddles & left).sum(axis=-1) % 2 == 1)
