"""Neighbours that surely merge, found all at once: a head start for `ptmark.criteria.merge`.

Only lower bounds of lengths and upper bounds of some gaps are looked at, so what is united here
is united by the rule too; since no order of merging can matter, the rest can go on from here.
The pairs are those of Delaunay triangulations, first of all centres, then of the centres of
ever longer clusters alone, so that long clusters meet across the short ones between them.
"""

import numpy as np
import numpy.typing as npt

from ptmark.criteria.apart import Apart
from ptmark.criteria.geometry import Array, Indices

__all__ = ["surely_one", "united"]

_FEWEST = 32  # a head start for fewer is not worth its set-up
_LEVEL = 3.0  # by how much the clusters of one triangulation are longer than the last one's


def surely_one(apart: Apart, lengths: Array, grow: Array, factor: float) -> Indices:
    """For each indication the first member of its cluster as far as that is plain.

    Parameters are those of `ptmark.criteria.merge.merged`; ``factor`` is the rule's, taken a
    little smaller, so that the comparison band need not be thought of here.
    """
    crowd = _Crowd(apart, lengths, grow, factor * (1 - 1e-4))
    if len(lengths) >= _FEWEST:
        crowd.unite()
    return crowd.owner


def united(owner: Indices, pairs: Indices) -> Indices:
    """The first member of each one's cluster, both clusters of each pair, (P, 2), made one."""
    label = np.arange(len(owner))
    while True:
        low, high = np.sort(label[owner[pairs]], axis=1).T
        apart = low < high
        if not apart.any():
            return np.asarray(label[owner])
        np.minimum.at(label, high[apart], low[apart])  # each cluster points to an earlier one
        while (label[label] < label).any():
            label = label[label]


class _Crowd:
    def __init__(self, apart: Apart, lengths: Array, grow: Array, factor: float) -> None:
        self.owner: Indices = np.arange(len(lengths))
        self._apart, self._single, self._grow, self._factor = apart, lengths, grow, factor

    def unite(self) -> None:
        """Unite level by level until only one cluster is long enough to meet another."""
        self._low, self._high = self._apart.extents
        centres, _, _ = self._apart.circles
        self._length = self._single
        pairs, gaps = np.empty((0, 2), dtype=np.int64), np.empty(0)
        level, looked = 0.0, -1
        while True:
            pool = np.flatnonzero(self._length >= level)
            if len(np.unique(self.owner[pool])) < 2 or len(pool) < 4:
                return
            if len(pool) != looked:
                found = pool[_neighbours(centres[pool])]
                found = found[self.owner[found[:, 0]] != self.owner[found[:, 1]]]
                pairs = np.concatenate([pairs, found])
                gaps = np.concatenate([gaps, self._gaps(found)])
                pairs, gaps = self._merge(pairs, gaps)
            looked = len(pool)
            level = max(level * _LEVEL, float(np.median(self._length)))

    def _gaps(self, pairs: Indices) -> Array:
        """Gaps of the pairs that may merge as they are; of the others no less than these."""
        least, gaps = self._apart.bounds(pairs)
        grow = self._grow[pairs].sum(axis=1)
        may = self._factor * self._length[pairs].min(axis=1)
        close = (least - grow < may) & (gaps - grow >= may)
        gaps[close] = self._apart.exact(pairs[close])
        return np.asarray(np.maximum(gaps - grow, 0.0))

    def _merge(self, pairs: Indices, gaps: Array) -> tuple[Indices, Array]:
        """Unite along the pairs until none is left that surely merges; the pairs left over."""
        while True:
            split = self.owner[pairs[:, 0]] != self.owner[pairs[:, 1]]
            pairs, gaps = pairs[split], gaps[split]
            hit = gaps < self._factor * self._length[pairs].min(axis=1)
            if not hit.any():
                return pairs, gaps
            self.owner = united(self.owner, pairs[hit])
            self._length = self._lengths()

    def _lengths(self) -> Array:
        """No more than the length end to end of the cluster that each belongs to."""
        order = np.argsort(self.owner, kind="stable")
        starts = np.flatnonzero(np.diff(self.owner[order], prepend=-1))
        low = np.minimum.reduceat(self._low[order], starts)
        high = np.maximum.reduceat(self._high[order], starts)
        grow = np.maximum.reduceat(self._grow[order], starts)
        least = np.minimum.reduceat(self._grow[order], starts)
        grow = np.where(grow > 0, grow, least)
        sizes = np.diff(starts, append=len(order))
        made = np.empty(len(order))
        ends = np.maximum((high - low).max(axis=1) + 2 * grow, 0.0)
        made[order] = np.repeat(ends, sizes)
        alone = np.zeros(len(order), dtype=bool)
        alone[order] = np.repeat(sizes == 1, sizes)
        return np.where(alone, self._single, made)


def _neighbours(points: Array) -> Indices:
    """Neighbours in a triangulation, (P, 2); of several in one place only one has any."""
    import shapely

    try:
        sides = shapely.delaunay_triangles(shapely.multipoints(points), only_edges=True)
    except shapely.GEOSException:  # a head start only: what is missed here is found later
        return np.empty((0, 2), dtype=np.int64)
    ends = _sortable(shapely.get_coordinates(sides))
    places, first = np.unique(_sortable(points), return_index=True)
    at = np.minimum(np.searchsorted(places, ends), len(places) - 1)
    known = (places[at] == ends).reshape(-1, 2).all(axis=1)
    return np.asarray(first[at].reshape(-1, 2)[known])


def _sortable(points: Array) -> npt.NDArray[np.complex128]:
    return np.ascontiguousarray(points).view(np.complex128).ravel()
