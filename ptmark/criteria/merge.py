"""Neighbours that count as one indication (ISO 23277): gap against the smaller one's length.

The result cannot depend on the order of merging. Where two clusters may merge, so may any two
clusters that contain them: the gap of the larger ones is no greater, and no length is less
(the length of a cluster is end to end, the caliper of its union). Every order therefore ends
at the same clusters, and all pairs that may merge are merged at once, round after round.

Two clusters merge only within the reach of the shorter one, so every cluster but the longest
looks as far as its own length allows, and no pair is missed. Near pairs are merged before
farther ones are looked for, which spares long looks across crowds that become one anyway.
"""

from typing import Any

import numpy as np
import numpy.typing as npt

from ptmark.criteria.crowd import surely_one
from ptmark.criteria.geometry import Array, Indices, caliper_ends, hull_of, hulls_of
from ptmark.criteria.limits import all_hold, tolerance_in
from ptmark.criteria.rules import Merge

__all__ = ["merged"]


def merged(
    shapes: npt.NDArray[Any], lengths: Array, grow: Array, rule: Merge, unit: str
) -> list[tuple[int, ...]]:
    """Clusters of indices, each sorted, in the order of their first member.

    Parameters
    ----------
    shapes : ndarray of shape (M,)
        Outlines as shapely geometries, in ``unit``.
    lengths : ndarray of shape (M,)
        Length of each as taken here (with its uncertainty where the worst case is asked).
    grow : ndarray of shape (M,)
        How far each outline is widened all round; 0 for the plain reading, below 0 for the
        least.
    """
    if len(shapes) == 0:
        return []
    clusters = _Clusters(shapes, lengths, grow, rule, unit)
    clusters.settle()
    return clusters.listed()


class _Clusters:
    """Which cluster each indication belongs to, and how long that is end to end."""

    def __init__(
        self, shapes: npt.NDArray[Any], lengths: Array, grow: Array, rule: Merge, unit: str
    ) -> None:
        import shapely

        self._shapes, self._tree = shapes, shapely.STRtree(shapes)
        self._owner = surely_one(shapes, lengths, grow, rule.factor)
        self._length = lengths.astype(float).copy()
        self._horizon = max(float(np.median(lengths)), 1e-3)
        self._hulls = hulls_of(shapes)
        self._grow, self._rule, self._band = grow, rule, tolerance_in(unit)
        self._measure(np.flatnonzero(np.bincount(self._owner) > 1))

    def settle(self) -> None:
        """Merge until nothing merges.

        Whoever may have neighbours beyond what it has looked at looks again, up to the
        horizon; pairs once found are kept, so none needs to look twice the same way.
        """
        horizon = self._horizon
        looked = np.zeros(len(self._length))
        pairs, gaps = np.empty((0, 2), dtype=np.int64), np.empty(0)
        while True:
            reach = self._reach()
            looking = np.flatnonzero((reach > looked) & (looked < horizon))
            if len(looking):
                found, apart = self._near(looking, horizon)
                pairs, gaps = np.concatenate([pairs, found]), np.concatenate([gaps, apart])
                looked[looking] = horizon
            split = self._owner[pairs[:, 0]] != self._owner[pairs[:, 1]]
            pairs, gaps = pairs[split], gaps[split]
            if self._merge(pairs, gaps):
                continue
            if not (reach > horizon).any():
                return
            horizon *= 2

    def listed(self) -> list[tuple[int, ...]]:
        order = np.argsort(self._owner, kind="stable")
        cuts = np.flatnonzero(np.diff(self._owner[order])) + 1
        return [tuple(part.tolist()) for part in np.split(order, cuts)]

    def _reach(self) -> Array:
        """How far each looks for neighbours; the longest cluster leaves that to the others."""
        reach = (
            self._rule.factor * self._length + self._grow + self._grow.max() + 2 * self._band
        )
        reach[self._owner == self._owner[int(self._length.argmax())]] = 0.0
        return np.asarray(reach)

    def _near(self, looking: Indices, horizon: float) -> tuple[Indices, Array]:
        """Pairs of different clusters up to ``horizon`` apart, (P, 2), and their gaps."""
        import shapely

        shapes = self._shapes
        found = self._tree.query(shapes[looking], predicate="dwithin", distance=horizon)
        source, target = looking[found[0]], found[1]
        apart = self._owner[source] != self._owner[target]
        source, target = source[apart], target[apart]
        gaps = shapely.distance(shapes[source], shapes[target])
        gaps = np.maximum(gaps - self._grow[source] - self._grow[target], 0.0)
        return np.stack([source, target], axis=1).astype(np.int64), gaps

    def _merge(self, pairs: Indices, gaps: Array) -> bool:
        """Merge the clusters of the pairs that the rule merges; whether there were any."""
        smaller = self._length[pairs].min(axis=1)
        excess = gaps - self._rule.factor * smaller
        hit = all_hold(self._rule.operator, excess, self._band)
        if not hit.any():
            return False
        self._measure(np.array(_unite(self._owner, pairs[hit])))
        return True

    def _measure(self, roots: Indices) -> None:
        """Lengths end to end of the clusters that have just become what they are."""
        order = np.argsort(self._owner, kind="stable")
        begins = np.searchsorted(self._owner[order], roots, side="left")
        ends = np.searchsorted(self._owner[order], roots, side="right")
        for root, begin, end in zip(roots.tolist(), begins, ends, strict=True):
            members = order[begin:end]
            self._hulls[root] = hull_of(np.concatenate([self._hulls[k] for k in members]))
            end_to_end, _ = caliper_ends(self._hulls[root])
            grow = self._grow[members]
            more = 2 * (grow.max() if grow.max() > 0 else grow.min())
            self._length[members] = max(end_to_end + more, 0.0)


def _unite(owner: Indices, pairs: Indices) -> list[int]:
    """Give both clusters of each pair one owner, its first member; those that changed."""
    names = np.unique(owner[pairs])
    root = {name: name for name in names.tolist()}

    def top(name: int) -> int:
        while root[name] != name:
            root[name] = root[root[name]]
            name = root[name]
        return name

    for first, second in owner[pairs].tolist():
        one, other = top(first), top(second)
        root[max(one, other)] = min(one, other)
    renamed = np.arange(len(owner))
    renamed[names] = [top(name) for name in names.tolist()]
    owner[:] = renamed[owner]
    return sorted({top(name) for name in root})
