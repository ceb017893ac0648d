"""Neighbours that count as one indication (ISO 23277): gap against the smaller one's length.

The result cannot depend on the order of merging. Where two clusters may merge, so may any two
clusters that contain them: the gap of the larger ones is no greater, and no length is less
(the length of a cluster is end to end, the caliper of its union). Every order therefore ends
at the same clusters, and all pairs that may merge are merged at once, round after round.

Two clusters merge only within the reach of the shorter one, so every cluster but the longest
looks as far as its own length allows, and no pair is missed. Near pairs are merged before
farther ones are looked for, which spares long looks across crowds that become one anyway.
"""

from dataclasses import dataclass
from itertools import pairwise
from typing import Any

import numpy as np
import numpy.typing as npt

from ptmark.criteria.apart import Apart
from ptmark.criteria.crowd import surely_one, united
from ptmark.criteria.geometry import Array, Indices, calipers, hulls_of, strung
from ptmark.criteria.limits import all_hold, tolerance_in
from ptmark.criteria.rules import Merge

__all__ = ["merged"]

_FEW = 32  # of which all pairs are looked at once


def merged(
    shapes: npt.NDArray[Any] | Apart,
    lengths: Array,
    grow: Array,
    rule: Merge,
    unit: str,
    begun: Indices | None = None,
) -> list[tuple[int, ...]]:
    """Clusters of indices, each sorted, in the order of their first member.

    Parameters
    ----------
    shapes : ndarray of shape (M,)
        Outlines as shapely geometries, in ``unit``; or these with their quick bounds.
    lengths : ndarray of shape (M,)
        Length of each as taken here (with its uncertainty where the worst case is asked).
    grow : ndarray of shape (M,)
        How far each outline is widened all round; 0 for the plain reading, below 0 for the
        least.
    begun : ndarray of shape (M,)
        Whose members surely become one, where that is known: a number for each, the same for
        those of one cluster. So it is of any reading with lengths and growth no larger.
    """
    if len(lengths) == 0:
        return []
    apart = shapes if isinstance(shapes, Apart) else Apart(shapes)
    if len(lengths) <= _FEW and _none_near(apart, lengths, grow, rule.factor, unit):
        return [(index,) for index in range(len(lengths))]
    if begun is None:
        begun = surely_one(apart, lengths, grow, rule.factor)
    clusters = _Clusters(apart, lengths, grow, rule, unit)
    clusters.become(begun)
    clusters.settle()
    return clusters.listed()


def _none_near(apart: Apart, lengths: Array, grow: Array, factor: float, unit: str) -> bool:
    """Whether the boxes of any two lie too far apart for them to merge."""
    pairs = _every_pair(len(lengths))
    reach = factor * lengths[pairs].min(axis=1) + grow[pairs].sum(axis=1)
    return bool((apart.by_boxes(pairs) > reach + 2 * tolerance_in(unit)).all())


def _every_pair(count: int) -> Indices:
    return np.stack(np.triu_indices(count, 1), axis=1)


class _Clusters:
    """Which cluster each indication belongs to, and how long that is end to end.

    A cluster goes by its first member, at whose place its hull and its growth are kept.
    """

    def __init__(
        self, apart: Apart, lengths: Array, grow: Array, rule: Merge, unit: str
    ) -> None:
        self._apart = apart
        self._owner: Indices = np.arange(len(lengths))
        self._length = lengths.astype(float)
        few = len(lengths) <= _FEW
        self._horizon = np.inf if few else max(float(np.median(lengths)), 1e-3)
        self._hulls = list(apart.hulls)
        self._grow, self._rule, self._band = grow, rule, tolerance_in(unit)
        self._most, self._least = grow.astype(float), grow.astype(float)

    def become(self, owner: Indices) -> None:
        """Unite the clusters that get the same owner, any number, and measure those anew."""
        firsts = np.unique(self._owner)
        _, first, named = np.unique(owner[firsts], return_index=True, return_inverse=True)
        into = firsts[first][named]
        order = np.argsort(into, kind="stable")
        sizes = np.bincount(into)[into[order]]
        parts = firsts[order[sizes > 1]]
        renamed = np.arange(len(self._owner))
        renamed[firsts] = into
        self._owner = renamed[self._owner]
        if len(parts):
            self._measure(parts, renamed[parts])

    def _measure(self, parts: Indices, into: Indices) -> None:
        """Lengths end to end of the clusters that those of ``parts`` have become, in order."""
        starts = np.flatnonzero(np.diff(into, prepend=-1))
        cuts = [*starts.tolist(), len(parts)]
        hulls = [self._hulls[part] for part in parts.tolist()]
        found = hulls_of(strung([np.concatenate(hulls[i:j]) for i, j in pairwise(cuts)]))
        roots = into[starts]
        self._most[roots] = most = np.maximum.reduceat(self._most[parts], starts)
        self._least[roots] = least = np.minimum.reduceat(self._least[parts], starts)
        for root, hull in zip(roots.tolist(), found, strict=True):
            self._hulls[root] = hull
        lengths = self._length.copy()
        ends = np.array([length for length, _ in calipers(found)])
        lengths[roots] = np.maximum(ends + 2 * np.where(most > 0, most, least), 0.0)
        self._length = lengths[self._owner]

    def settle(self) -> None:
        """Merge until nothing merges.

        Whoever may merge with something beyond what it has looked at looks again, up to the
        horizon. A pair merges only within the reach of both, so it is enough that a pair is
        found once both have looked that far; pairs once found are kept.
        """
        horizon = self._horizon
        looked = np.zeros(len(self._length))
        known = _Pairs.none()
        while True:
            reach = self._reach()
            looking = np.flatnonzero((reach > looked) & (looked < horizon))
            if len(looking):
                before = looked.copy()
                looked[looking] = horizon
                known = known.with_more(self._near(looking, before, looked, horizon))
            known = known.kept(self._owner[known.ids[:, 0]] != self._owner[known.ids[:, 1]])
            if self._merge(known):
                continue
            longest = self._owner == self._owner[int(self._length.argmax())]
            if not (reach[~longest] > horizon).any():
                return
            horizon *= 2

    def listed(self) -> list[tuple[int, ...]]:
        order = np.argsort(self._owner, kind="stable")
        cuts = (np.flatnonzero(np.diff(self._owner[order])) + 1).tolist()
        members = order.tolist()
        return [tuple(members[i:j]) for i, j in pairwise([0, *cuts, len(members)])]

    def _reach(self) -> Array:
        """How far apart each may lie from another and still merge with it."""
        return np.asarray(
            self._rule.factor * self._length + self._grow + self._grow.max() + 2 * self._band
        )

    def _near(self, looking: Indices, before: Array, looked: Array, horizon: float) -> "_Pairs":
        """Pairs of different clusters of which both have now looked as far as their gap."""
        pairs = self._within(looking, np.flatnonzero(looked > before[looking].min()), horizon)
        pairs = pairs[self._owner[pairs[:, 0]] != self._owner[pairs[:, 1]]]
        least, most = self._apart.bounds(pairs)
        had = before[pairs].min(axis=1)
        new = (least <= looked[pairs].min(axis=1)) & ((most > had) | (had == 0))
        grow = self._grow[pairs].sum(axis=1)
        return _Pairs(pairs[new], (least - grow)[new], (most - grow)[new])

    def _within(self, looking: Indices, seen: Indices, horizon: float) -> Indices:
        """Pairs of one that looks with one that is seen, boxes within the horizon; (P, 2).

        The longest cluster is looked at by the others, so that its members, often most of
        all, are not held against each other.
        """
        if np.isinf(horizon):
            return _every_pair(len(self._owner))
        longest = self._owner == self._owner[int(self._length.argmax())]
        mine, its = looking[~longest[looking]], looking[longest[looking]]
        others = seen[~longest[seen]]
        return np.concatenate(
            [self._apart.near(mine, seen, horizon), self._apart.near(others, its, horizon)]
        )

    def _merge(self, known: "_Pairs") -> bool:
        """Merge the clusters of the pairs that the rule merges; whether there were any.

        Exact gaps are taken only of pairs whose bounds leave it open, and only once no other
        pair merges.
        """
        may = self._length[known.ids].min(axis=1) * self._rule.factor
        hit = all_hold("<", np.maximum(known.most, 0.0) - may, self._band)
        if not hit.any():
            open_ = np.maximum(known.least, 0.0) <= may + self._band
            open_ &= known.least < known.most
            if not open_.any():
                return self._unite(known, known.exactly() & self._holds(known, may))
            gaps = self._apart.exact(known.ids[open_])
            gaps = gaps - self._grow[known.ids[open_]].sum(axis=1)
            known.least[open_] = known.most[open_] = gaps
            hit = known.exactly() & self._holds(known, may)
        return self._unite(known, hit)

    def _holds(self, known: "_Pairs", may: Array) -> npt.NDArray[np.bool_]:
        excess = np.maximum(known.most, 0.0) - may
        return all_hold(self._rule.operator, excess, self._band)

    def _unite(self, known: "_Pairs", hit: npt.NDArray[np.bool_]) -> bool:
        if not hit.any():
            return False
        self.become(united(self._owner, known.ids[hit]))
        return True


@dataclass(slots=True, eq=False)
class _Pairs:
    """Pairs of indications, (P, 2), and the least and most their gap can be, growth off."""

    ids: Indices
    least: Array
    most: Array

    @classmethod
    def none(cls) -> "_Pairs":
        return cls(np.empty((0, 2), dtype=np.int64), np.empty(0), np.empty(0))

    def with_more(self, more: "_Pairs") -> "_Pairs":
        return _Pairs(
            np.concatenate([self.ids, more.ids]),
            np.concatenate([self.least, more.least]),
            np.concatenate([self.most, more.most]),
        )

    def kept(self, chosen: npt.NDArray[np.bool_]) -> "_Pairs":
        return _Pairs(self.ids[chosen], self.least[chosen], self.most[chosen])

    def exactly(self) -> npt.NDArray[np.bool_]:
        """Which gaps are known exactly."""
        return np.asarray(self.least == self.most)
