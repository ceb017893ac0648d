"""Hulls, calipers and gaps of many outlines at once; any unit, the same in and out."""

from typing import Any

import numpy as np
import numpy.typing as npt

__all__ = ["Indices", "caliper_ends", "gaps_within", "grown", "hull_of", "hulls_of", "polygons"]

Array = npt.NDArray[np.float64]
Indices = npt.NDArray[np.int64]

_SIDES = 4  # segments a quarter turn of the circle that an outline is grown by
_OUTSIDE = 1.0 / np.cos(np.pi / (4 * _SIDES))  # makes that polygon enclose the circle


def polygons(outlines: list[Array]) -> npt.NDArray[Any]:
    """Shapely polygons of outlines of shape (N, 2), N >= 3; an array of shape (M,)."""
    import shapely

    made = np.empty(len(outlines), dtype=object)
    made[:] = [shapely.Polygon(outline) for outline in outlines]
    return made


def hull_of(points: Array) -> Array:
    """Vertices of the convex hull of points of shape (N, 2), not closed; shape (V, 2)."""
    import shapely

    found = shapely.get_coordinates(shapely.convex_hull(shapely.MultiPoint(points)))
    return found[:-1] if len(found) > 2 else found


def hulls_of(shapes: npt.NDArray[Any]) -> list[Array]:
    """Vertices of the convex hull of each shape, not closed."""
    import shapely

    points, owner = shapely.get_coordinates(shapely.convex_hull(shapes), return_index=True)
    parts = np.split(points, np.flatnonzero(np.diff(owner)) + 1) if len(points) else []
    return [part[:-1] if len(part) > 2 else part for part in parts]


def grown(hulls: list[Array], by: Array) -> list[Array]:
    """Each hull widened by ``by`` all round, never by less: the corners enclose the circle."""
    import shapely

    shapes = np.array([shapely.MultiPoint(hull).convex_hull for hull in hulls], dtype=object)
    wide = np.flatnonzero(by > 0)
    if wide.size == 0:
        return hulls
    made = hulls_of(shapely.buffer(shapes[wide], by[wide] * _OUTSIDE, quad_segs=_SIDES))
    result = list(hulls)
    for index, hull in zip(wide, made, strict=True):
        result[index] = hull
    return result


def caliper_ends(hull: Array) -> tuple[float, Array]:
    """Largest distance between two hull vertices, and the two of them, shape (2, 2)."""
    apart = np.hypot(*(hull[:, None] - hull[None, :]).transpose(2, 0, 1))
    first, second = np.unravel_index(int(apart.argmax()), apart.shape)
    return float(apart[first, second]), hull[[first, second]]


def gaps_within(shapes: npt.NDArray[Any], reach: Array) -> tuple[Indices, Array]:
    """Pairs nearer than the reach of either, edge to edge; 0 where they touch or overlap.

    Parameters
    ----------
    shapes : ndarray of shape (M,)
        Shapely geometries.
    reach : ndarray of shape (M,)
        How far each one looks.

    Returns
    -------
    pairs : ndarray of shape (P, 2)
        Indices, the smaller first, sorted.
    gaps : ndarray of shape (P,)
    """
    import shapely

    tree = shapely.STRtree(shapes)
    found = tree.query(shapes, predicate="dwithin", distance=reach)
    pairs = np.unique(np.sort(found[:, found[0] != found[1]].T, axis=1), axis=0)
    if len(pairs) == 0:
        return np.empty((0, 2), dtype=np.int64), np.empty(0)
    return pairs.astype(np.int64), shapely.distance(shapes[pairs[:, 0]], shapes[pairs[:, 1]])
