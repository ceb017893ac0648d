"""Items of one reading of the scene, and where they lie; amounts in the unit of the profile."""

from dataclasses import dataclass
from functools import cached_property
from typing import Any, NamedTuple

import numpy as np
import numpy.typing as npt

from ptmark.criteria.geometry import Array, Indices, gaps_within, grown
from ptmark.criteria.kinds import covers

__all__ = ["LEAST", "MILDEST", "PLAIN", "WORST", "Flags", "Item", "View"]

Flags = npt.NDArray[np.bool_]
PLAIN, WORST, LEAST = 0, 1, -1  # what is added to each length, in its U
MILDEST = -2  # the items of the worst reading, each as the least would take it


class Item(NamedTuple):
    """One indication, or several merged into one; ``u`` and ``width_u`` are expanded, k = 2.

    ``edge_u`` is that of the place of the scene's lines as seen from it, ``place_u`` that of
    the longest of its outlines, half of which is how far they may lie elsewhere.
    ``length`` holds ``u`` in the worst reading and lacks it in the least. ``ratio`` is as
    measured in any reading.
    """

    ids: tuple[str, ...]
    ends: Array  # the two points of the outline farthest apart, shape (2, 2)
    length: float
    u: float
    edge_u: float
    place_u: float
    width: float  # of the widest member, as measured in any reading
    width_u: float
    ratio: float  # the least it can be, where it was not ``close``
    linear: bool
    rounded: bool
    relevant: bool
    adds: float  # to a sum: its length, or more where it may count as several
    close: bool = True  # whether width and path were measured, not only bounded
    parts: int = 1  # how many it may count as (`ptmark.criteria.doubtful`)
    kinds: tuple[str, ...] = ()  # ISO 6520-1 numbers, where the inspector has named it

    @property
    def apart_u(self) -> float:
        """Expanded uncertainty of its distance to a line of the scene, k = 2."""
        return self.place_u / 2 + self.edge_u

    @property
    def ratio_told(self) -> str:
        """How many times as long as wide, in words."""
        about = "" if self.close else ("at least " if self.linear else "roughly ")
        return f"{about}{self.ratio:.2f} times as long as wide"

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
    hull_shapes: npt.NDArray[Any]  # convex hulls of the shapes
    growth: Array
    nearer: Array  # how much nearer to the scene's lines each is taken
    stretched: float  # how much farther distances across the scene are taken to reach
    unit: str
    owner: Indices  # the item that each indication belongs to

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
        return grown(self.hull_shapes, self.growth)

    def members(self, shape: str, named: tuple[str, ...] = ()) -> list[int]:
        """Indices of the relevant items that a rule for ``shape``, so named, looks at."""
        found: list[int] = np.flatnonzero(self.looked_at(shape, named)).tolist()
        return found

    def looked_at(self, shape: str, named: tuple[str, ...] = ()) -> Flags:
        """Which items are relevant and such as a rule for ``shape``, so named, looks at."""
        chosen = self._relevant
        if shape != "any":
            chosen = chosen & (self._linear if shape == "linear" else self._rounded)
        return chosen & self.named(named) if named else chosen

    def named(self, kinds: tuple[str, ...]) -> Flags:
        """Which items the inspector has named as one of these ISO 6520-1 numbers."""
        return np.array(
            [
                any(covers(one, kind) for one in kinds for kind in item.kinds)
                for item in self.items
            ],
            dtype=bool,
        )

    @cached_property
    def lengths(self) -> Array:
        """Length of each item."""
        return np.array([item.length for item in self.items], dtype=float)

    @cached_property
    def _relevant(self) -> Flags:
        return np.array([item.relevant for item in self.items], dtype=bool)

    @cached_property
    def _linear(self) -> Flags:
        return np.array([item.linear for item in self.items], dtype=bool)

    @cached_property
    def _rounded(self) -> Flags:
        return np.array([item.rounded for item in self.items], dtype=bool)

    def distances(self, lines: list[Array]) -> Array:
        """Distance from the edge of each item to the nearest of the lines; 0 on or across it.

        ``lines`` are arrays of shape (N, 2), N >= 2, in the unit of the view.
        """
        import shapely

        target = shapely.MultiLineString(lines)
        shapely.prepare(target)
        return np.maximum(shapely.distance(self.shapes, target) - self.nearer, 0.0)

    def nearest(self, place: int, lines: list[Array]) -> Array:
        """The shortest way from an item as measured to the lines: its two ends, (2, 2)."""
        import shapely

        way = shapely.shortest_line(self.shapes[place], shapely.MultiLineString(lines))
        return np.asarray(shapely.get_coordinates(way))

    def links(self, chosen: list[int], reach: float) -> tuple[npt.NDArray[np.int64], Array]:
        """Pairs of positions in ``chosen`` with the gap of each; all gaps up to ``reach``."""
        growth = self.growth[chosen]
        widest = float(growth.max()) if len(chosen) else 0.0
        wide = (reach + growth + widest) * max(self.stretched, 1.0)
        pairs, gaps = gaps_within(self.shapes[chosen], wide)
        gaps = gaps / self.stretched
        return pairs, np.maximum(gaps - growth[pairs].sum(axis=1), 0.0)
