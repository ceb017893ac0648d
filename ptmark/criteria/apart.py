"""Gaps of many pairs of outlines between quick bounds; exact only where a comparison needs it.

The gap of two outlines is no less than that of their boxes or of their circumscribed circles,
and no more than the distance of two points inside them, less the circles about these points
that lie inside.
"""

import operator
from collections.abc import Sequence
from functools import cached_property
from typing import Any

import numpy as np
import numpy.typing as npt

from ptmark.criteria.geometry import Array, Indices, calipers, polygons, rings

__all__ = ["Apart"]

_DIRECTIONS = 16  # a caliper is at most 0.5 % longer than the largest extent along these
_SLACK = 1e-9  # of the distances, for rounding


class Apart:
    """Outlines as shapely geometries, shape (M,), in any unit."""

    def __init__(self, shapes: npt.NDArray[Any], outlines: Sequence[Array] = ()) -> None:
        self.shapes, self._outlines = shapes, outlines

    @classmethod
    def of(cls, outlines: Sequence[Array]) -> "Apart":
        """The geometries of outlines of shape (N, 2), N >= 3."""
        return cls(polygons(outlines), outlines)

    def is_of(self, outlines: Sequence[Array]) -> bool:
        """Whether it was made of these very arrays, and knows nothing of others."""
        own = self._outlines
        return len(own) == len(outlines) and all(map(operator.is_, own, outlines))

    @cached_property
    def boxes(self) -> Array:
        """Least x and y and greatest x and y of each, shape (M, 4)."""
        import shapely

        return np.asarray(shapely.bounds(self.shapes))

    @cached_property
    def sound(self) -> npt.NDArray[np.bool_]:
        """Which do not cross themselves."""
        import shapely

        return np.asarray(shapely.is_valid(self.shapes))

    @cached_property
    def circles(self) -> tuple[Array, Array, Array]:
        """A point of each, (M, 2), and radii about it: of a circle inside, of one around."""
        import shapely

        shapes, inner = self.shapes, np.zeros(len(self.shapes))
        centre = shapely.centroid(shapes)
        inside = self.sound & shapely.contains_properly(shapes, centre)
        corners, owner = shapely.get_coordinates(shapes, return_index=True)
        starts = np.searchsorted(owner, np.arange(len(shapes)))
        points = np.where(inside[:, None], shapely.get_coordinates(centre), corners[starts])
        inner[inside] = shapely.distance(centre[inside], shapely.boundary(shapes[inside]))
        away = np.hypot(*(corners - points[owner]).T)
        return points, inner, np.maximum.reduceat(away, starts)

    @cached_property
    def hull_shapes(self) -> npt.NDArray[Any]:
        """The convex hull of each."""
        import shapely

        return np.asarray(shapely.convex_hull(self.shapes), dtype=object)

    @cached_property
    def hulls(self) -> list[Array]:
        """The vertices of each hull, not closed."""
        return rings(self.hull_shapes)

    @cached_property
    def ends(self) -> list[tuple[float, Array]]:
        """The caliper of each and the two points that far apart, shape (2, 2)."""
        return calipers(self.hulls)

    @cached_property
    def extents(self) -> tuple[Array, Array]:
        """Least and greatest of each along some directions, shape (M, D) each."""
        points, _, starts = self._corners
        angles = np.arange(_DIRECTIONS) * np.pi / _DIRECTIONS
        along = np.stack([np.cos(angles), np.sin(angles)]).T @ points.T
        low = np.minimum.reduceat(along, starts, axis=1)
        return low.T, np.maximum.reduceat(along, starts, axis=1).T

    def across(self, ways: Array) -> Array:
        """How far each reaches square to its own direction of ``ways``, (M, 2); shape (M,)."""
        points, owner, starts = self._corners
        normal = np.stack([-ways[:, 1], ways[:, 0]], axis=1) / np.hypot(*ways.T)[:, None]
        along = ((points - points[starts][owner]) * normal[owner]).sum(axis=1)
        return np.asarray(
            np.maximum.reduceat(along, starts) - np.minimum.reduceat(along, starts)
        )

    @cached_property
    def _corners(self) -> tuple[Array, Indices, Indices]:
        """Vertices of all hulls, whose each is, and where those of each begin."""
        import shapely

        points, owner = shapely.get_coordinates(self.hull_shapes, return_index=True)
        return points, owner, np.searchsorted(owner, np.arange(len(self.shapes)))

    def near(self, some: Indices, others: Indices, reach: float) -> Indices:
        """Pairs of one of some with one of the others, boxes within reach; shape (P, 2)."""
        import shapely

        tree = shapely.STRtree(self.shapes[others])
        corners = (self.boxes[some] + [-reach, -reach, reach, reach]).reshape(-1, 2, 2)
        found = tree.query(shapely.linestrings(corners))  # by their boxes
        pairs = np.stack([some[found[0]], others[found[1]]], axis=1).astype(np.int64)
        return np.asarray(pairs[pairs[:, 0] != pairs[:, 1]])

    def bounds(self, pairs: Indices) -> tuple[Array, Array]:
        """The least and the most that the gap of each pair can be."""
        first, second = pairs.T
        points, inner, outer = self.circles
        centres = np.hypot(*(points[first] - points[second]).T)
        circles = centres * (1 - _SLACK) - outer[first] - outer[second]
        least = np.maximum(self.by_boxes(pairs), circles)
        most = centres * (1 + _SLACK) - inner[first] - inner[second]
        return np.asarray(least), np.maximum(most, 0.0)

    def by_boxes(self, pairs: Indices) -> Array:
        """The least that the gap of each pair can be, for all that their boxes tell."""
        first, second = pairs.T
        one, other = self.boxes[first], self.boxes[second]
        apart = np.maximum(np.maximum(one[:, :2] - other[:, 2:], other[:, :2] - one[:, 2:]), 0)
        return np.asarray(np.hypot(*apart.T) * (1 - _SLACK))

    def exact(self, pairs: Indices) -> Array:
        """The gap of each pair, edge to edge."""
        import shapely

        return np.asarray(shapely.distance(self.shapes[pairs[:, 0]], self.shapes[pairs[:, 1]]))
