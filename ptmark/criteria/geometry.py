"""Hulls, calipers and gaps of many outlines at once; any unit, the same in and out."""

from collections.abc import Sequence
from itertools import pairwise
from typing import Any

import numpy as np
import numpy.typing as npt

__all__ = [
    "Indices",
    "caliper_ends",
    "calipers",
    "gaps_within",
    "grown",
    "hull_of",
    "hulls_of",
    "polygons",
    "rings",
    "strung",
]

Array = npt.NDArray[np.float64]
Indices = npt.NDArray[np.int64]

_AT_ONCE = 200_000  # distances held at once, so that many hulls take little memory
_SIDES = 4  # segments a quarter turn of the circle that an outline is grown by
_OUTSIDE = 1.0 / np.cos(np.pi / (4 * _SIDES))  # makes that polygon enclose the circle


def polygons(outlines: Sequence[Array]) -> npt.NDArray[Any]:
    """Shapely polygons of outlines of shape (N, 2), N >= 3; an array of shape (M,)."""
    import shapely

    if not len(outlines):
        return np.empty(0, dtype=object)
    which = np.repeat(np.arange(len(outlines)), [len(outline) for outline in outlines])
    rings = shapely.linearrings(np.concatenate(outlines), indices=which)
    return np.asarray(shapely.polygons(rings), dtype=object)


def strung(groups: list[Array]) -> npt.NDArray[Any]:
    """One line through each group of points of shape (N, 2), N >= 2; an array of shape (M,).

    Its hull is that of the points, and it is made ten times as fast as a set of points.
    """
    import shapely

    which = np.repeat(np.arange(len(groups)), [len(group) for group in groups])
    return np.asarray(shapely.linestrings(np.concatenate(groups), indices=which), dtype=object)


def hull_of(points: Array) -> Array:
    """Vertices of the convex hull of points of shape (N, 2), not closed; shape (V, 2)."""
    import shapely

    # the hull of a line through points is theirs, and it is made ten times as fast as a set
    line = shapely.linestrings(points if len(points) > 1 else np.repeat(points, 2, axis=0))
    found = shapely.get_coordinates(shapely.convex_hull(line))
    return found[:-1] if len(found) > 2 else found


def hulls_of(shapes: npt.NDArray[Any]) -> list[Array]:
    """Vertices of the convex hull of each shape, not closed."""
    import shapely

    return rings(shapely.convex_hull(shapes))


def rings(hulls: npt.NDArray[Any]) -> list[Array]:
    """Vertices of convex shapes, not closed."""
    import shapely

    points, owner = shapely.get_coordinates(hulls, return_index=True)
    cuts = np.searchsorted(owner, np.arange(len(hulls) + 1)).tolist()
    return [
        points[begin : end - 1] if end - begin > 2 else points[begin:end]
        for begin, end in pairwise(cuts)
    ]


def grown(hulls: npt.NDArray[Any], by: Array) -> list[Array]:
    """Convex shapes widened by ``by`` all round, never by less: each holds the circle."""
    import shapely

    hulls, wide = hulls.copy(), by > 0
    hulls[wide] = shapely.buffer(hulls[wide], by[wide] * _OUTSIDE, quad_segs=_SIDES)
    return rings(hulls)


def caliper_ends(hull: Array) -> tuple[float, Array]:
    """Largest distance between two hull vertices, and the two of them, shape (2, 2)."""
    return calipers([hull])[0]


def calipers(hulls: list[Array]) -> list[tuple[float, Array]]:
    """`caliper_ends` of many hulls, those with the same number of vertices at once."""
    sizes = np.array([len(hull) for hull in hulls])
    made: list[tuple[float, Array]] = [(0.0, np.empty((0, 2)))] * len(hulls)
    for size in np.unique(sizes).tolist():
        alike = np.flatnonzero(sizes == size)
        step = max(_AT_ONCE // size**2, 1)
        for begin in range(0, len(alike), step):
            part = alike[begin : begin + step]
            points = np.stack([hulls[k] for k in part])
            found = points[np.arange(len(part))[:, None], _farthest(points)]
            lengths = np.hypot(*(found[:, 1] - found[:, 0]).T).tolist()
            for k, length, pair in zip(part.tolist(), lengths, found, strict=True):
                made[k] = length, pair
    return made


def _farthest(points: Array) -> Indices:
    """The two of each set of points, shape (B, N, 2), that lie farthest apart; (B, 2)."""
    count = points.shape[1]
    best, pair = np.full(len(points), -1.0), np.zeros((len(points), 2), dtype=np.int64)
    step = max(_AT_ONCE // count, 1)  # rows held against all, so that a large hull fits too
    for begin in range(0, count, step):
        rows = points[:, begin : begin + step, None]
        square = (rows[..., 0] - points[:, None, :, 0]) ** 2
        square += (rows[..., 1] - points[:, None, :, 1]) ** 2
        flat = square.reshape(len(points), -1)
        places = flat.argmax(axis=1)
        most = flat[np.arange(len(points)), places]
        more = most > best
        best[more] = most[more]
        first, second = np.divmod(places[more], count)
        pair[more] = np.stack([first + begin, second], axis=1)
    return pair


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

    wide = shapely.bounds(shapes) + reach[:, None] * [-1.0, -1.0, 1.0, 1.0]
    # a tree asked without a predicate goes by the boxes of what it is asked for
    found = shapely.STRtree(shapes).query(shapely.linestrings(wide.reshape(-1, 2, 2)))
    low, high = found.min(axis=0), found.max(axis=0)
    codes = np.unique(low[low != high] * len(shapes) + high[low != high])
    pairs = np.stack(np.divmod(codes, max(len(shapes), 1)), axis=1)
    gaps = shapely.distance(shapes[pairs[:, 0]], shapes[pairs[:, 1]])
    near = gaps <= reach[pairs].max(axis=1)
    return pairs[near], gaps[near]
