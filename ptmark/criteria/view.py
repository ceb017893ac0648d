"""The scene as one reading takes it: the plain one, or the worst that the uncertainty allows.

Plain: every length, width and gap as measured. Worst: every outline grown by half its
expanded uncertainty U all round, so that its length gains U and a gap loses half of each
neighbour's U; what may be relevant is relevant; what may be linear is linear and what may be
rounded is rounded, both at once. Every rule rejects more readily as members are added, sizes
grow and gaps shrink, so a rule that does not reject the worst reading rejects none between.

Merged neighbours: length end to end; width that of the widest member; linear where a member
is, or where the end-to-end length makes it so. Amounts are in the unit of the profile.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt

from ptmark.criteria.geometry import (
    Array,
    caliper_ends,
    gaps_within,
    grown,
    hull_of,
    hulls_of,
    polygons,
)
from ptmark.criteria.limits import per_mm
from ptmark.criteria.merge import merged
from ptmark.criteria.profile import Profile
from ptmark.criteria.scene import Judged

__all__ = ["Item", "View", "views_of"]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Item:
    """One indication, or several merged into one; ``u`` and ``width_u`` are expanded, k = 2.

    ``length`` holds ``u`` in the worst reading. ``ratio`` is measured, in either reading.
    """

    ids: tuple[str, ...]
    hull: Array
    ends: Array  # shape (2, 2), of the largest distance
    length: float
    u: float
    ratio: float
    linear: bool
    rounded: bool
    relevant: bool

    def is_of(self, shape: str) -> bool:
        """Whether a rule for "linear", "rounded" or "any" looks at it."""
        return shape == "any" or (self.linear if shape == "linear" else self.rounded)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class View:
    """All items of one reading, with their outlines and growth for the gaps."""

    items: tuple[Item, ...]
    shapes: npt.NDArray[Any]
    growth: Array
    unit: str

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
        self.hulls = hulls_of(self.shapes)
        self.length, self.width = column("length"), column("width")
        self.span = np.maximum(self.length, column("path"))
        self.u, self.width_u = column("length_u"), column("width_u")

    def view(self, *, worst: bool) -> View:
        u = self.u if worst else np.zeros_like(self.u)
        clusters: list[tuple[int, ...]] = [(index,) for index in range(len(self.ids))]
        if self.profile.merge is not None:
            rule, unit = self.profile.merge, self.profile.unit
            clusters = merged(self.shapes, self.length + u, u / 2, rule, unit)
        growth = np.array([u[list(cluster)].max() / 2 for cluster in clusters])
        raw = [self._hull(cluster) for cluster in clusters]
        items = tuple(
            self._item(cluster, hull, wide, worst=worst)
            for cluster, hull, wide in zip(clusters, raw, grown(raw, growth), strict=True)
        )
        shapes = np.empty(len(clusters), dtype=object)
        shapes[:] = [self._shape(cluster) for cluster in clusters]
        return View(items=items, shapes=shapes, growth=growth, unit=self.profile.unit)

    def _hull(self, cluster: tuple[int, ...]) -> Array:
        if len(cluster) == 1:
            return self.hulls[cluster[0]]
        return hull_of(np.concatenate([self.hulls[index] for index in cluster]))

    def _shape(self, cluster: tuple[int, ...]) -> object:
        import shapely

        if len(cluster) == 1:
            return self.shapes[cluster[0]]
        return shapely.MultiPolygon(list(self.shapes[list(cluster)]))

    def _item(self, cluster: tuple[int, ...], raw: Array, hull: Array, *, worst: bool) -> Item:
        chosen = list(cluster)
        end_to_end, ends = caliper_ends(raw)
        alone = len(chosen) == 1
        length = float(self.length[chosen[0]]) if alone else end_to_end
        span = float(self.span[chosen[0]]) if alone else length
        width = float(self.width[chosen].max())
        u, width_u = float(self.u[chosen].max()), float(self.width_u[chosen].max())
        more, less = (u, width_u) if worst else (0.0, 0.0)
        linear = self._long(span + more, max(width - less, 0.0)) or any(
            self._long(self.span[k] + more, max(self.width[k] - less, 0.0)) for k in chosen
        )
        surely = self._long(span - more, width + less) or any(
            self._long(self.span[k] - more, self.width[k] + less) for k in chosen
        )
        taken = length + more
        relevance = self.profile.relevance
        return Item(
            ids=tuple(self.ids[k] for k in chosen),
            hull=hull,
            ends=ends,
            length=taken,
            u=u,
            ratio=span / width if width > 0 else float("inf"),
            linear=linear,
            rounded=not surely,
            relevant=relevance is None or relevance.relevant.hit(taken),
        )

    def _long(self, span: float, width: float) -> bool:
        return self.profile.shape.linear.hit_as_multiple(span, width, self.profile.unit)
