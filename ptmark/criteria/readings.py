"""The scene as one reading takes it: the plain one, or the worst that the uncertainty allows.

Plain: every length, width and gap as measured. Worst: every outline grown by half its
expanded uncertainty U all round, so that its length gains U and a gap loses half of each
neighbour's U; what may be relevant is relevant; what may be linear is linear and what may be
rounded is rounded, both at once. Every rule rejects more readily as members are added, sizes
grow and gaps shrink, so a rule that does not reject the worst reading rejects none between.
Least: the opposite of worst; what a rule hits even there it hits for certain, as an exemption
must before it may make a verdict milder.

Shape is judged by the length, or by the path along the centre line where that is longer by
more than the roughness of tracing it. Merged neighbours: length end to end; width that of the
widest member; linear where a member is, or where the end-to-end length makes it so. Amounts
are in the unit of the profile.
"""

from collections.abc import Sequence
from functools import cached_property
from typing import Any

import numpy as np
import numpy.typing as npt

from ptmark.criteria.apart import Apart
from ptmark.criteria.geometry import Array, Indices, calipers, polygons, rings
from ptmark.criteria.kinds import number_of
from ptmark.criteria.limits import per_mm
from ptmark.criteria.merge import merged
from ptmark.criteria.profile import Profile
from ptmark.criteria.scene import Judged
from ptmark.criteria.shaping import Shaping
from ptmark.criteria.view import PLAIN, Item, View

__all__ = ["Readings"]


class Readings:
    """The readings of the same indications, each made when first asked for."""

    def __init__(self, profile: Profile, judged: Sequence[Judged]) -> None:
        scale = per_mm(profile.unit)
        self._profile = profile
        self._ids = [one.id for one in judged]
        self._kinds = [number_of(one.kind) for one in judged]
        self._apart = Apart(polygons([one.outline_mm * scale for one in judged]))
        self._u = np.array([one.length_u for one in judged], dtype=float) * scale
        self._edge_u = np.array([one.edge_u for one in judged], dtype=float) * scale
        self._shaping = Shaping(judged, scale, profile.shape.linear)
        self._made: dict[float, View] = {}

    def view(self, reading: float) -> View:
        """The reading `PLAIN`, `WORST`, `LEAST`, or one that takes a share of every U.

        Where no U is given all are one.
        """
        if self._exact:
            reading = PLAIN
        if reading not in self._made:
            self._made[reading] = self._view(reading)
        return self._made[reading]

    @cached_property
    def _exact(self) -> bool:
        known = (self._u, self._edge_u, self._shaping.width_u)
        return not any(u.any() for u in known)

    def _view(self, reading: float) -> View:
        clusters = self._clusters(reading)
        most, edge_u = self._most(self._u, clusters), self._most(self._edge_u, clusters)
        width_u = self._most(self._shaping.width_u, clusters)
        shapes, hulls = self._united(clusters)
        ends = self._ends(clusters, hulls)
        taken = self._shaping.taken(reading)
        relevance = self._profile.relevance
        items = []
        for k, cluster in enumerate(clusters):
            shaped = taken.of(cluster, ends[k][0])
            length = max(shaped.length + reading * float(most[k]), 0.0)
            relevant = relevance is None or relevance.relevant.hit(length)
            items.append(
                Item(
                    ids=tuple(self._ids[one] for one in cluster),
                    ends=ends[k][1],
                    length=length,
                    u=float(most[k]),
                    edge_u=float(edge_u[k]),
                    width=shaped.width,
                    width_u=float(width_u[k]),
                    ratio=shaped.ratio,
                    linear=shaped.linear,
                    rounded=shaped.rounded,
                    relevant=relevant,
                    close=shaped.close,
                    kinds=tuple(self._kinds[one] for one in cluster if self._kinds[one]),
                )
            )
        return View(
            items=tuple(items),
            shapes=shapes,
            hull_shapes=hulls,
            growth=reading * most / 2,
            nearer=reading * (most / 2 + edge_u),
            unit=self._profile.unit,
            owner=_owner(clusters, len(self._ids)),
        )

    @staticmethod
    def _most(u: Array, clusters: list[tuple[int, ...]]) -> Array:
        """The largest of each cluster."""
        most = u[np.array([cluster[0] for cluster in clusters], dtype=np.int64)]
        for k in _several(clusters):
            most[k] = u[list(clusters[k])].max()
        return most

    def _clusters(self, reading: float) -> list[tuple[int, ...]]:
        if self._profile.merge is None:
            return [(index,) for index in range(len(self._ids))]
        u = reading * self._u
        lengths = np.maximum(self._shaping.length + u, 0.0)
        return merged(self._apart, lengths, u / 2, self._profile.merge, self._profile.unit)

    def _united(
        self, clusters: list[tuple[int, ...]]
    ) -> tuple[npt.NDArray[Any], npt.NDArray[Any]]:
        """One shape for each cluster, and its hull; those of single ones are known."""
        import shapely

        apart, first = self._apart, [cluster[0] for cluster in clusters]
        shapes, hulls = apart.shapes[first], apart.hull_shapes[first]
        several = _several(clusters)
        for k in several:
            shapes[k] = shapely.MultiPolygon(list(apart.shapes[list(clusters[k])]))
        hulls[several] = shapely.convex_hull(shapes[several])
        return shapes, hulls

    @cached_property
    def _own_ends(self) -> list[tuple[float, Array]]:
        return calipers(self._apart.hulls)

    def _ends(
        self, clusters: list[tuple[int, ...]], hulls: npt.NDArray[Any]
    ) -> list[tuple[float, Array]]:
        """The caliper of each cluster and its ends; those of single ones are known."""
        several = _several(clusters)
        made = [self._own_ends[cluster[0]] for cluster in clusters]
        for k, found in zip(several, calipers(rings(hulls[several])), strict=True):
            made[k] = found
        return made


def _several(clusters: list[tuple[int, ...]]) -> list[int]:
    """Which clusters have more than one member."""
    return [k for k, cluster in enumerate(clusters) if len(cluster) > 1]


def _owner(clusters: list[tuple[int, ...]], count: int) -> Indices:
    owner = np.empty(count, dtype=np.int64)
    for k, cluster in enumerate(clusters):
        owner[list(cluster)] = k
    return owner
