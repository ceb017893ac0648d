"""Indications parted into clusters, for figures of all clusters at once."""

from functools import cached_property
from itertools import chain

import numpy as np
import numpy.typing as npt

from ptmark.criteria.geometry import Array, Indices

__all__ = ["Parted"]

Flags = npt.NDArray[np.bool_]


class Parted:
    """Clusters of indices; only `owner` asks that each index is in one of them.

    Examples
    --------
    >>> parted = Parted([(0, 2), (1,)])
    >>> parted.most(np.array([1.0, 2.0, 3.0])).tolist(), parted.owner.tolist()
    ([3.0, 2.0], [0, 1, 0])
    """

    def __init__(self, clusters: list[tuple[int, ...]]) -> None:
        self.clusters = clusters
        self.sizes = np.array([len(cluster) for cluster in clusters], dtype=np.int64)
        self._members = np.array(list(chain.from_iterable(clusters)), dtype=np.int64)
        self._starts = np.cumsum(self.sizes) - self.sizes

    @cached_property
    def first(self) -> Indices:
        """The first member of each cluster."""
        return np.asarray(self._members[self._starts])

    @cached_property
    def several(self) -> Indices:
        """Which clusters have more than one member."""
        return np.flatnonzero(self.sizes > 1)

    @cached_property
    def owner(self) -> Indices:
        """Which cluster each index belongs to."""
        owner = np.empty(self._members.max(initial=-1) + 1, dtype=np.int64)
        owner[self._members] = np.repeat(np.arange(len(self.sizes)), self.sizes)
        return owner

    def most(self, values: Array) -> Array:
        """The largest value in each cluster."""
        return np.asarray(np.maximum.reduceat(values[self._members], self._starts))

    def some(self, flags: Flags) -> Flags:
        """Whether any member of each cluster is flagged."""
        return np.asarray(np.logical_or.reduceat(flags[self._members], self._starts))

    def members(self, clusters: Indices) -> tuple[Indices, Indices]:
        """Members of some of the clusters, and which of these each belongs to."""
        chosen = [self.clusters[k] for k in clusters.tolist()]
        members = np.array(list(chain.from_iterable(chosen)), dtype=np.int64)
        return members, np.repeat(np.arange(len(clusters)), self.sizes[clusters])

    def gathered(self, own: list[tuple[str, ...]]) -> list[tuple[str, ...]]:
        """What the members of each cluster have of their own, in one."""
        return [
            own[cluster[0]]
            if len(cluster) == 1
            else tuple(chain.from_iterable(own[member] for member in cluster))
            for cluster in self.clusters
        ]
