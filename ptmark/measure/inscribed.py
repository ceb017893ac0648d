"""The largest circles inside outlines, of many outlines at once.

A circle about a Delaunay triangle of an outline's samples is the largest up to the sampling;
a last exact step on the outline's own sides removes the sampling.
"""

from collections.abc import Sequence
from itertools import combinations

import numpy as np
import numpy.typing as npt

__all__ = ["largest_inside"]

Array = npt.NDArray[np.float64]
Index = npt.NDArray[np.intp]
Mask = npt.NDArray[np.bool_]

_MOST_TRIED = 6
_WORTH = 3e-4  # of the radius: smaller gains are not looked for
_APART = 0.3  # radii from those that were tried
_NEAREST = 7  # sides that a step may even out


def _falls(count: int) -> Array:
    """Of every three (i, j, k) of so many values: i less k, j less k, and k itself."""
    i, j, k = (
        np.eye(count)[list(one)].T for one in zip(*combinations(range(count), 3), strict=True)
    )
    return np.stack([i - k, j - k, k])


_FALLS = {n: _falls(n) for n in range(3, _NEAREST + 1)}


def largest_inside(
    outlines: Sequence[Array], centres: Array, radii: Array, of: Index
) -> tuple[Array, Array]:
    """Exact largest circles near the most promising ones.

    Parameters
    ----------
    outlines : sequence of R ndarray of shape (N, 2)
    centres, radii, of : ndarray of shape (T, 2), (T,) and (T,)
        Circles about triangles of samples, and which outline each belongs to, ascending.

    Returns
    -------
    centres, radii : ndarray of shape (R, 2) and (R,)
        Radius 0 where none of the circles has its centre inside.
    """
    sides, order = _Sides(outlines), np.lexsort((-radii, of))
    best, best_at = np.zeros(len(outlines)), np.zeros((len(outlines), 2))
    for count in (1, _MOST_TRIED - 1):  # the largest shows of most that no other is worth it
        one = _promising(sides, centres, radii, of, order, count)
        if not len(one):
            break
        at, radius = sides.grown(of[one], centres[one])
        rising = np.argsort(radius)
        own, at, radius = of[one][rising], at[rising], radius[rising]
        better = radius > best[own]
        best[own[better]], best_at[own[better]] = radius[better], at[better]
        # A circle through samples can only shrink when the sides between them count too.
        order = order[radii[order] > (best * (1 + _WORTH))[of[order]]]
        order = order[_apart(one, centres, radii, of, order, len(best))]
    return best_at, best


def _promising(
    sides: "_Sides", centres: Array, radii: Array, of: Index, order: Index, count: int
) -> Index:
    """The largest circles of each outline, some way apart, not more than ``count`` of each.

    Of those in ``order``: by outline, and falling.
    """
    taken = [order[:0]]
    tries = np.zeros(len(sides.real), np.intp)
    while len(order):
        own = of[order]
        first = np.flatnonzero(np.concatenate([[True], own[1:] != own[:-1]]))
        held = sides.hold(own[first], centres[order[first]])
        one = order[first[held]]
        taken.append(one)
        tries[of[one]] += 1
        kept = (tries < count)[own]
        kept[first] = False
        order = order[kept]
        order = order[_apart(one, centres, radii, of, order, len(tries))]
    return np.concatenate(taken)


def _apart(
    one: Index, centres: Array, radii: Array, of: Index, order: Index, number: int
) -> Mask:
    """Which circles in ``order`` lie away from ``one``, not more than one of each outline."""
    tried = np.full((number, 2), np.inf)
    tried[of[one]] = centres[one]
    away = centres[order] - tried[of[order]]
    return np.asarray(np.hypot(away[:, 0], away[:, 1]) >= _APART * radii[order])


class _Sides:
    """The sides of R outlines, as many columns S as the longest has; the others' lie far off.

    ``start`` and ``along`` of shape (2, R, S) are x and y of where each begins and leads.
    """

    def __init__(self, outlines: Sequence[Array]) -> None:
        counts = np.array([len(one) for one in outlines])
        self.real: Mask = np.arange(int(counts.max())) < counts[:, None]
        self.start = np.zeros((2, *self.real.shape))
        self.start[:, self.real] = np.concatenate(outlines).T
        self.start[:, ~self.real] = np.repeat(self.start[:, :, 0], (~self.real).sum(1), axis=1)
        ahead = np.concatenate([self.start[:, :, 1:], self.start[:, :, :1]], axis=2)
        self.along = ahead - self.start
        self.squared = np.maximum((self.along**2).sum(axis=0), 1e-300)

    def hold(self, own: Index, points: Array) -> Mask:
        """Whether outlines ``own`` hold points of shape (A, 2), one each (even-odd rule)."""
        x, y = self.start[:, own] - points.T[:, :, None]
        ahead_x, ahead_y = x + self.along[0, own], y + self.along[1, own]
        straddles = (y > 0) != (ahead_y > 0)
        cross = x * ahead_y - y * ahead_x
        crossed = straddles & ((cross > 0) == (ahead_y > y))
        return np.asarray(np.count_nonzero(crossed, axis=1) % 2 == 1)

    def grown(self, own: Index, at: Array) -> tuple[Array, Array]:
        """Move centres so that their distance to the nearest side grows to a local maximum.

        Each step solves the largest t with t <= d_i + u_i . s over the nearest sides exactly,
        by trying every three of them (at a maximum three sides touch, or two face to face).
        """
        at, moving = at.copy(), np.arange(len(own))
        distance, unit = self._touching(own, at)
        best = distance.min(axis=1)
        for _ in range(5):
            count = min(_NEAREST, distance.shape[1])
            near = np.argpartition(distance, count - 1, axis=1)[:, :count]
            rows = np.arange(len(moving))[:, None]
            reach = 0.5 * best[moving]
            step, found = _balanced(distance[rows, near], unit[:, rows, near], reach)
            trial = at[moving] + step
            distance, unit = self._touching(own[moving], trial)
            radius = distance.min(axis=1)
            better = found & (radius > best[moving])
            worth = better & (radius >= best[moving] * (1 + _WORTH))
            at[moving[better]], best[moving[better]] = trial[better], radius[better]
            moving, distance, unit = moving[worth], distance[worth], unit[:, worth]
            if not len(moving):
                break
        return at, best

    def _touching(self, own: Index, at: Array) -> tuple[Array, Array]:
        """Distance to every side, (A, S), and unit vectors from there to ``at``, (2, A, S).

        What is no side lies beyond every step's reach, and so is never evened out.
        """
        along = self.along[:, own]
        offset = at.T[:, :, None] - self.start[:, own]
        t = np.clip((offset * along).sum(axis=0) / self.squared[own], 0, 1)
        away = offset - t * along
        distance = np.hypot(away[0], away[1])
        unit = away / np.maximum(distance, 1e-300)
        distance[~self.real[own]] = 1e3 * distance.max()
        return distance, unit


def _balanced(distance: Array, unit: Array, reach: Array) -> tuple[Array, Mask]:
    """The step that evens out three sides and leaves no other nearer, of each of A places.

    Parameters
    ----------
    distance, unit : ndarray of shape (A, n) and (2, A, n)
        Of the nearest sides.
    reach : ndarray of shape (A,)
        The longest step allowed.

    Returns
    -------
    step : ndarray of shape (A, 2)
    found : ndarray of shape (A,)
        False where there is none.
    """
    falls = _FALLS[distance.shape[1]]
    (px, qx, x), (py, qy, y) = unit[0] @ falls, unit[1] @ falls
    dp, dq, far = distance @ falls
    cross = py * qx - px * qy
    usable = np.abs(cross) > 1e-6
    cross[~usable] = 1.0
    across, down = (dp * qy - dq * py) / cross, (dq * px - dp * qx) / cross
    radius = far + x * across + y * down
    others = distance[..., None] + unit[0][..., None] * across[:, None]
    others += unit[1][..., None] * down[:, None]
    kept = usable & (others.min(axis=1) >= radius - 1e-9 * np.abs(radius))
    kept &= across**2 + down**2 <= reach[:, None] ** 2
    best = np.where(kept, radius, -np.inf).argmax(axis=1)
    rows = np.arange(len(best))
    step = np.stack([across[rows, best], down[rows, best]], axis=1)
    return step, np.asarray(kept[rows, best])
