"""The worst rectangle: the most that any rectangle of limited sides and area can hold.

What counts: an indication is in the rectangle when, seen along each of the rectangle's two
directions, it reaches into it. One that the edge cuts counts whole; that is the stricter
reading of codes that do not say. Along a direction, an indication is the extent of its hull.

Why the search is exhaustive. In a frame turned by ``t`` each indication has extents
``[xl, xh]`` and ``[yl, yh]`` (`ptmark.criteria.turned`). A set fits at ``t`` when
``u = max(xl) - min(xh)`` and ``v = max(yl) - min(yh)`` (0 where negative) keep ``u <= long``,
``v <= short`` and ``u v <= area``: the rectangle from the smallest ``xh`` to the largest
``xl`` then reaches all. At a fixed turn every smallest ``xh``, largest ``xl`` and smallest
``yh`` is considered, so the answer is exact there. Over all turns the search halves ranges:
when the frame turns by at most ``d``, the difference of two points no farther than ``R`` apart
moves by at most ``e = 2 R sin(d / 2)`` along an axis, and so do ``u`` and ``v``. So a set that
fits anywhere within ``d`` of ``t`` fits at ``t`` with limits ``long + e``, ``short + e`` and
``area + e (u + v) + e^2``, where ``u + v`` is at most what the limits allow. A range is dropped
when even those limits hold too little; its halves look only at indications of sets that might
do. A range that moves nothing by more than the comparison band counts as found. Nothing is
sampled. Over a wide scene the search goes tile by tile: no two points of a set that fits are
farther apart than ``R``, so each such set lies whole in one of the tiles ``2 R`` wide that
step by ``R``.
"""

import heapq
from dataclasses import dataclass
from math import hypot, inf, pi, sin, sqrt

import numpy as np

from ptmark.criteria.geometry import Array, Indices
from ptmark.criteria.turned import Bounds, Turned

__all__ = ["Found", "worst_rectangle"]

_FIRST_RANGES = 8
_MOST_LOOKS = 20_000


@dataclass(frozen=True, slots=True, eq=False)
class Found:
    """The heaviest set met and its rectangle, shape (4, 2).

    ``proven`` is False where the search was cut short before a heavier one was ruled out.
    """

    total: float
    members: tuple[int, ...]
    corners: Array
    proven: bool = True


def worst_rectangle(
    hulls: list[Array], weights: Array, bounds: Bounds, *, enough: float = inf, band: float
) -> Found:
    """Find the heaviest set of indications that a rectangle within ``bounds`` reaches.

    Parameters
    ----------
    hulls : list of ndarray of shape (V, 2)
        At least one.
    weights : ndarray of shape (M,)
        What each indication adds, above zero.
    bounds : Bounds
        ``long >= short``.
    enough : float
        Stop at the first set as heavy as this, and rule out only sets as heavy as this;
        by default the heaviest of all is found.
    band : float
        Sides longer than allowed by no more than this fit.
    """
    across = max(hypot(*np.ptp(np.concatenate(hulls), axis=0)), band)  # sides beyond add none
    bounds = Bounds(min(bounds.long, across), min(bounds.short, across), bounds.area)
    reach = _reach(hulls, bounds)
    best = Found(0.0, (), np.empty((0, 2)))
    proven = True
    for tile in _tiles(hulls, reach):
        if weights[tile].sum() <= best.total:
            continue
        search = _Search([hulls[k] for k in tile], weights[tile], bounds, enough, band)
        found = search.run(best.total)
        proven &= found.proven
        if found.members:
            members = tuple(int(tile[k]) for k in found.members)
            best = Found(found.total, members, found.corners)
        if best.total >= enough - band:
            return best
    return Found(best.total, best.members, best.corners, proven=proven)


def _reach(hulls: list[Array], bounds: Bounds) -> float:
    """Farthest apart that two points of indications of one set can be, at any turn.

    Both indications reach into the rectangle; along an axis neither reaches farther out of it
    than its own extent, which is at most its diagonal.
    """
    low, high = _boxes(hulls)
    largest = float(np.hypot(*(high - low).T).max())
    diagonal = hypot(bounds.long, min(bounds.short, bounds.area / bounds.long))
    return diagonal + 2 * sqrt(2) * largest


def _boxes(hulls: list[Array]) -> tuple[Array, Array]:
    """Least and greatest x and y of each, shape (M, 2) each."""
    points, sizes = np.concatenate(hulls), np.array([len(hull) for hull in hulls])
    starts = np.cumsum(sizes) - sizes
    return np.minimum.reduceat(points, starts), np.maximum.reduceat(points, starts)


def _tiles(hulls: list[Array], reach: float) -> list[Indices]:
    """Positions of the indications that lie whole in each tile, the fullest tile first."""
    low, high = _boxes(hulls)
    low, high = low - low.min(axis=0), high - low.min(axis=0)
    home = np.floor(low / reach).astype(int)
    tiles: dict[tuple[int, int], set[int]] = {}
    for back in ((0, 0), (0, 1), (1, 0), (1, 1)):
        place = home - back
        inside = ((place >= 0) & (high <= (place + 2) * reach)).all(axis=1)
        for k in np.flatnonzero(inside).tolist():
            tiles.setdefault((int(place[k, 0]), int(place[k, 1])), set()).add(k)
    around = [(x, y) for x in (-1, 0, 1) for y in (-1, 0, 1) if (x, y) != (0, 0)]
    kept = {
        tuple(sorted(tile))
        for (x, y), tile in tiles.items()
        if not any(tile < tiles.get((x + i, y + j), set()) for i, j in around)
    }
    return [np.array(tile) for tile in sorted(kept, key=lambda tile: (-len(tile), tile))]


class _Search:
    def __init__(
        self, hulls: list[Array], weights: Array, bounds: Bounds, enough: float, band: float
    ) -> None:
        self._hulls, self._weights = hulls, weights
        self._points = np.concatenate(hulls)
        sizes = np.array([len(hull) for hull in hulls])
        self._starts = np.cumsum(sizes) - sizes
        self._bounds, self._enough, self._band = bounds, enough, band
        self._reach = _reach(hulls, bounds)

    def run(self, beat: float) -> Found:
        """Find the heaviest set above ``beat``; one with no members if there is none."""
        self._best = Found(beat, (), np.empty((0, 2)))
        turns = pi if self._bounds.long != self._bounds.short else pi / 2
        half = turns / (2 * _FIRST_RANGES)
        everyone = np.arange(len(self._hulls))
        self._take(0.0, everyone)
        if self._weights.sum() <= self._floor:
            return self._best
        queue: list[tuple[float, float, float, Indices]] = []
        for first in range(_FIRST_RANGES):
            self._look(queue, (2 * first + 1) * half, half, everyone)
        for _ in range(_MOST_LOOKS):
            if self._done or not queue or -queue[0][0] <= self._floor:
                return self._best
            _, turn, half, chosen = heapq.heappop(queue)
            for side in (-half / 2, half / 2):
                self._look(queue, turn + side, half / 2, chosen)
        best = self._best
        return Found(best.total, best.members, best.corners, proven=self._done)

    @property
    def _done(self) -> bool:
        return self._best.total >= self._enough - self._band

    @property
    def _floor(self) -> float:
        """Sets no heavier than this are of no interest."""
        if self._enough < inf:
            return max(self._best.total, self._enough - 2 * self._band)
        return self._best.total + self._band

    def _look(
        self,
        queue: list[tuple[float, float, float, Indices]],
        turn: float,
        half: float,
        chosen: Indices,
    ) -> None:
        """Queue a range of turns if it may hold a set of interest; take what its middle has."""
        if self._done:
            return
        moved = 2 * self._reach * sin(half / 2)
        wide = self._bounds.widened(moved + self._band)
        chosen = chosen[self._turned(turn, chosen).sieve(wide, self._floor)]
        if not len(chosen):
            return
        most, may = self._turned(turn, chosen).heaviest(wide, self._floor)
        if most <= self._floor:
            return
        self._take(turn, chosen[may], wide if moved <= self._band else None)
        if moved > self._band:
            heapq.heappush(queue, (-most, turn, half, chosen[may]))

    def _take(self, turn: float, chosen: Indices, bounds: Bounds | None = None) -> None:
        """Take the heaviest set at one turn where it beats the best."""
        bounds = bounds or self._bounds.widened(self._band)
        chosen = chosen[self._turned(turn, chosen).sieve(bounds, self._best.total)]
        if not len(chosen):
            return
        total, members = self._turned(turn, chosen).best(
            bounds, self._best.total, self._enough - self._band
        )
        if total > self._best.total:
            members = chosen[members]
            frame = self._turned(turn, members)
            self._best = Found(total, tuple(members.tolist()), frame.rectangle(turn))

    def _turned(self, turn: float, chosen: Indices) -> Turned:
        across = np.array([[np.cos(turn), -np.sin(turn)], [np.sin(turn), np.cos(turn)]])
        along = self._points @ across
        low = np.minimum.reduceat(along, self._starts)[chosen]
        high = np.maximum.reduceat(along, self._starts)[chosen]
        return Turned(low, high, self._weights[chosen])
