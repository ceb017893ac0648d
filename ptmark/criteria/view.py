"""The scene as one reading takes it: the plain one, or the worst that the uncertainty allows.

Plain: every length, width and gap as measured. Worst: every outline grown by half its
expanded uncertainty U all round, so that its length gains U and a gap loses half of each
neighbour's U; what may be relevant is relevant; what may be linear is linear and what may be
rounded is rounded, both at once. Every rule rejects more readily as members are added, sizes
grow and gaps shrink, so a rule that does not reject the worst reading rejects none between.

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
from ptmark.criteria.limits import per_mm
from ptmark.criteria.merge import merged
from ptmark.criteria.profile import Profile
from ptmark.criteria.scene import Judged

__all__ = ["Item", "View", "views_of"]

_BENT = 1.02  # a traced centre line this much longer than the caliper is bent, not just rough


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Item:
    """One indication, or several merged into one; ``u`` and ``width_u`` are expanded, k = 2.

    ``length`` holds ``u`` in the worst reading. ``ratio`` is measured, in either reading.
    """

    ids: tuple[str, ...]
    ends: Array  # the two points of the outline farthest apart, shape (2, 2)
    length: float
    u: float
    ratio: float
    linear: bool
    rounded: bool
    relevant: bool

    def is_of(self, shape: str) -> bool:
        """Whether a rule for "linear", "rounded" or "any" looks at it."""
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
    def hulls(self) -> list[Array]:
        """Convex hull of each item, grown in the worst reading; made when first asked for."""
        return grown(self.shapes, self.growth)

    def members(self, shape: str) -> list[int]:
        """Indices of the relevant items that a rule for ``shape`` looks at."""
        return [k for k, item in enumerate(self.items) if item.relevant and item.is_of(shape)]

    def links(self, chosen: list[int], reach: float) -> tuple[npt.NDArray[np.int64], Array]:
        """Pairs of positions in ``chosen`` with the gap of each; all gaps up to ``reach``."""
        growth = self.growth[chosen]
        widest = float(growth.max()) if len(chosen) else 0.0
        pairs, gaps = gaps_within(self.shapes[chosen], reach + growth + widest)
        return pairs, np.maximum(gaps - growth[pairs].sum(axis=1), 0.0)


def views_of(profile: Profile, judged: Sequence[Judged]) -> tuple[View, View]:
    """Take the plain and the worst reading of the same indications."""
    base = _Base(profile, judged)
    return base.view(worst=False), base.view(worst=True)


class _Base:
    """The indications as arrays in the unit of the profile."""

    def __init__(self, profile: Profile, judged: Sequence[Judged]) -> None:
        scale = per_mm(profile.unit)

        def column(name: str) -> Array:
            return np.array([getattr(one, name) for one in judged], dtype=float) * scale

        self.profile = profile
        self.ids = [one.id for one in judged]
        self.shapes = polygons([one.outline_mm * scale for one in judged])
        self.length, self.width = column("length"), column("width")
        path = column("path")
        self.span = np.where(path > _BENT * self.length, path, self.length)
        self.u, self.width_u = column("length_u"), column("width_u")

    def view(self, *, worst: bool) -> View:
        u = self.u if worst else np.zeros_like(self.u)
        width_u = self.width_u if worst else np.zeros_like(self.width_u)
        clusters: list[tuple[int, ...]] = [(index,) for index in range(len(self.ids))]
        if self.profile.merge is not None:
            rule, unit = self.profile.merge, self.profile.unit
            clusters = merged(self.shapes, self.length + u, u / 2, rule, unit)
        growth = np.array([max(u[k] for k in cluster) / 2 for cluster in clusters])
        shapes = np.empty(len(clusters), dtype=object)
        shapes[:] = [self._shape(cluster) for cluster in clusters]
        possible = self._long(self.span + u, np.maximum(self.width - width_u, 0.0))
        sure = self._long(self.span - u, self.width + width_u)
        taken = _Taken(u, width_u, possible, sure)
        ends = self._ends(clusters, shapes)
        items = tuple(
            self._item(cluster, *ends[k], taken) for k, cluster in enumerate(clusters)
        )
        return View(items=items, shapes=shapes, growth=growth, unit=self.profile.unit)

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
        u = max(self.u[k] for k in cluster)
        length, span, width = self.length[first], self.span[first], self.width[first]
        linear, sure = bool(taken.possible[first]), bool(taken.sure[first])
        more = taken.u[first]
        if len(cluster) > 1:
            length = span = end_to_end
            width, more = self.width[chosen].max(), taken.u[chosen].max()
            less = taken.width_u[chosen].max()
            spans, widths = (
                np.array([span + more, span - more]),
                np.array([width - less, width + less]),
            )
            whole = self._long(spans, np.maximum(widths, 0.0))
            linear = bool(whole[0] or taken.possible[chosen].any())
            sure = bool(whole[1] or taken.sure[chosen].any())
        relevance = self.profile.relevance
        return Item(
            ids=tuple(self.ids[k] for k in cluster),
            ends=ends,
            length=float(length + more),
            u=float(u),
            ratio=float(span / width) if width > 0 else float("inf"),
            linear=linear,
            rounded=not sure,
            relevant=relevance is None or relevance.relevant.hit(float(length + more)),
        )

    def _long(self, spans: Array, widths: Array) -> npt.NDArray[np.bool_]:
        limit = self.profile.shape.linear
        pairs = zip(spans.tolist(), widths.tolist(), strict=True)
        return np.array([limit.hit_as_multiple(*pair) for pair in pairs], dtype=bool)


@dataclass(frozen=True, slots=True, eq=False)
class _Taken:
    """What one reading takes of each indication: its U, and how it may be shaped."""

    u: Array
    width_u: Array
    possible: npt.NDArray[np.bool_]  # linear at the longest and thinnest
    sure: npt.NDArray[np.bool_]  # linear even at the shortest and widest
