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
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy as np
import numpy.typing as npt

from ptmark.criteria.geometry import (
    Array,
    calipers,
    gaps_within,
    grown,
    hulls_of,
    polygons,
)
from ptmark.criteria.kinds import covers, number_of
from ptmark.criteria.limits import per_mm
from ptmark.criteria.merge import merged
from ptmark.criteria.profile import Profile
from ptmark.criteria.scene import Judged

__all__ = ["LEAST", "PLAIN", "WORST", "Item", "View", "Views"]

PLAIN, WORST, LEAST = 0, 1, -1  # what is added to each length, in its U

_BENT = 1.02  # a traced centre line this much longer than the caliper is bent, not just rough


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Item:
    """One indication, or several merged into one; ``u`` and ``width_u`` are expanded, k = 2.

    ``length`` holds ``u`` in the worst reading and lacks it in the least. ``ratio`` is as
    measured in any reading.
    """

    ids: tuple[str, ...]
    ends: Array  # the two points of the outline farthest apart, shape (2, 2)
    length: float
    u: float
    ratio: float
    linear: bool
    rounded: bool
    relevant: bool
    kinds: tuple[str, ...] = ()  # ISO 6520-1 numbers, where the inspector has named it

    def is_of(self, shape: str, named: tuple[str, ...] = ()) -> bool:
        """Whether a rule for "linear", "rounded" or "any", and so named, looks at it."""
        if named and not any(covers(one, kind) for one in named for kind in self.kinds):
            return False
        return shape == "any" or (self.linear if shape == "linear" else self.rounded)


@dataclass(frozen=True, kw_only=True, eq=False)
class View:
    """All items of one reading, with their outlines and growth for the gaps."""

    items: tuple[Item, ...]
    shapes: npt.NDArray[Any]
    growth: Array
    unit: str

    @cached_property
    def by_ids(self) -> dict[tuple[str, ...], Item]:
        """Each item by the ids of its members."""
        return {item.ids: item for item in self.items}

    @cached_property
    def places(self) -> dict[str, int]:
        """Which item each indication belongs to."""
        return {name: k for k, item in enumerate(self.items) for name in item.ids}

    @cached_property
    def hulls(self) -> list[Array]:
        """Convex hull of each item, grown in the worst reading."""
        return grown(self.shapes, self.growth)

    def members(self, shape: str, named: tuple[str, ...] = ()) -> list[int]:
        """Indices of the relevant items that a rule for ``shape``, so named, looks at."""
        return [
            k for k, item in enumerate(self.items) if item.relevant and item.is_of(shape, named)
        ]

    def distances(self, lines: list[Array]) -> Array:
        """Distance from the edge of each item to the nearest of the lines; 0 on or across it.

        ``lines`` are arrays of shape (N, 2), N >= 2, in the unit of the view.
        """
        import shapely

        target = shapely.MultiLineString(lines)
        shapely.prepare(target)
        return np.maximum(shapely.distance(self.shapes, target) - self.growth, 0.0)

    def nearest(self, place: int, lines: list[Array]) -> Array:
        """The shortest way from an item as measured to the lines: its two ends, (2, 2)."""
        import shapely

        way = shapely.shortest_line(self.shapes[place], shapely.MultiLineString(lines))
        return np.asarray(shapely.get_coordinates(way))

    def links(self, chosen: list[int], reach: float) -> tuple[npt.NDArray[np.int64], Array]:
        """Pairs of positions in ``chosen`` with the gap of each; all gaps up to ``reach``."""
        growth = self.growth[chosen]
        widest = float(growth.max()) if len(chosen) else 0.0
        pairs, gaps = gaps_within(self.shapes[chosen], reach + growth + widest)
        return pairs, np.maximum(gaps - growth[pairs].sum(axis=1), 0.0)


class Views:
    """The readings of the same indications, each made when first asked for."""

    def __init__(self, profile: Profile, judged: Sequence[Judged]) -> None:
        self._base = _Base(profile, judged)
        self._made: dict[int, View] = {}

    def view(self, reading: int) -> View:
        """The reading `PLAIN`, `WORST` or `LEAST`."""
        if reading not in self._made:
            self._made[reading] = self._base.view(reading)
        return self._made[reading]


class _Base:
    """The indications as arrays in the unit of the profile."""

    def __init__(self, profile: Profile, judged: Sequence[Judged]) -> None:
        scale = per_mm(profile.unit)

        def column(name: str) -> Array:
            return np.array([getattr(one, name) for one in judged], dtype=float) * scale

        self.profile = profile
        self.ids = [one.id for one in judged]
        self.kinds = [number_of(one.kind) for one in judged]
        self.shapes = polygons([one.outline_mm * scale for one in judged])
        self.length, self.width = column("length"), column("width")
        path = column("path")
        self.span = np.where(path > _BENT * self.length, path, self.length)
        self.u, self.width_u = column("length_u"), column("width_u")

    def view(self, reading: int) -> View:
        u = reading * self.u
        clusters: list[tuple[int, ...]] = [(index,) for index in range(len(self.ids))]
        if self.profile.merge is not None:
            rule, unit = self.profile.merge, self.profile.unit
            clusters = merged(self.shapes, np.maximum(self.length + u, 0.0), u / 2, rule, unit)
        most = [max(self.u[k] for k in cluster) for cluster in clusters]
        growth = reading * np.array(most) / 2
        shapes = np.empty(len(clusters), dtype=object)
        shapes[:] = [self._shape(cluster) for cluster in clusters]
        taken = self._taken(reading)
        ends = self._ends(clusters, shapes)
        items = tuple(
            self._item(cluster, *ends[k], taken) for k, cluster in enumerate(clusters)
        )
        return View(items=items, shapes=shapes, growth=growth, unit=self.profile.unit)

    def _taken(self, reading: int) -> "_Taken":
        nothing = np.zeros_like(self.u)
        u, width_u = (self.u, self.width_u) if reading != PLAIN else (nothing, nothing)
        possible = self._long(self.span + u, np.maximum(self.width - width_u, 0.0))
        sure = self._long(np.maximum(self.span - u, 0.0), self.width + width_u)
        return _Taken(reading, u, width_u, possible, sure)

    def _shape(self, cluster: tuple[int, ...]) -> object:
        import shapely

        if len(cluster) == 1:
            return self.shapes[cluster[0]]
        return shapely.MultiPolygon(list(self.shapes[list(cluster)]))

    @cached_property
    def _own_ends(self) -> list[tuple[float, Array]]:
        return calipers(hulls_of(self.shapes))

    def _ends(
        self, clusters: list[tuple[int, ...]], shapes: npt.NDArray[Any]
    ) -> list[tuple[float, Array]]:
        """The caliper of each cluster and its ends; those of single ones are known."""
        several = [k for k, cluster in enumerate(clusters) if len(cluster) > 1]
        made = [self._own_ends[cluster[0]] for cluster in clusters]
        for k, found in zip(several, calipers(hulls_of(shapes[several])), strict=True):
            made[k] = found
        return made

    def _item(
        self, cluster: tuple[int, ...], end_to_end: float, ends: Array, taken: "_Taken"
    ) -> Item:
        first, chosen = cluster[0], list(cluster)
        u = self.u[first]
        length, span, width = self.length[first], self.span[first], self.width[first]
        possible, sure = bool(taken.possible[first]), bool(taken.sure[first])
        if len(cluster) > 1:
            length = span = end_to_end
            u, width = self.u[chosen].max(), self.width[chosen].max()
            more, less = taken.u[chosen].max(), taken.width_u[chosen].max()
            spans = np.maximum(np.array([span + more, span - more]), 0.0)
            whole = self._long(spans, np.maximum(np.array([width - less, width + less]), 0.0))
            possible = bool(whole[0] or taken.possible[chosen].any())
            sure = bool(whole[1] or taken.sure[chosen].any())
        length = max(float(length + taken.reading * u), 0.0)
        least = taken.reading == LEAST
        relevance = self.profile.relevance
        return Item(
            ids=tuple(self.ids[k] for k in cluster),
            ends=ends,
            length=length,
            u=float(u),
            ratio=float(span / width) if width > 0 else float("inf"),
            linear=sure if least else possible,
            rounded=not (possible if least else sure),
            relevant=relevance is None or relevance.relevant.hit(length),
            kinds=tuple(self.kinds[k] for k in cluster if self.kinds[k]),
        )

    def _long(self, spans: Array, widths: Array) -> npt.NDArray[np.bool_]:
        limit = self.profile.shape.linear
        pairs = zip(spans.tolist(), widths.tolist(), strict=True)
        return np.array([limit.hit_as_multiple(*pair) for pair in pairs], dtype=bool)


@dataclass(frozen=True, slots=True, eq=False)
class _Taken:
    """What one reading takes of each indication: its U, and how it may be shaped."""

    reading: int
    u: Array
    width_u: Array
    possible: npt.NDArray[np.bool_]  # linear at the longest and thinnest
    sure: npt.NDArray[np.bool_]  # linear even at the shortest and widest
