"""The centre line of an outline: the longest way through its medial axis.

The circles about neighbouring Delaunay triangles inside an outline have neighbouring centres;
joined they are the medial axis of the samples (Blum 1967), a tree for an outline without
holes.
"""

from collections.abc import Sequence
from math import hypot

import numpy as np
import numpy.typing as npt

__all__ = ["centre_line"]

Array = npt.NDArray[np.float64]
Index = npt.NDArray[np.int64]


def centre_line(samples: Array, triangles: Index, centres: Array, radii: Array) -> Array:
    """Longest way along the circles' centres, from edge to edge, shape (P, 2).

    Neighbouring triangles' centres are joined; a way begins and ends with the radius of its
    last circle, so that a side branch of noise, whose circle is that much smaller, adds
    nothing.
    """
    count = len(samples)
    sides = np.vstack([triangles[:, [0, 1]], triangles[:, [1, 2]], triangles[:, [0, 2]]])
    keys = sides[:, 0] * count + sides[:, 1]
    order = np.argsort(keys, kind="stable")
    keys, owner = keys[order], (order % len(triangles))
    shared = np.flatnonzero(keys[1:] == keys[:-1])
    links: list[list[int]] = [[] for _ in range(len(triangles))]
    for i, j in zip(owner[shared].tolist(), owner[shared + 1].tolist(), strict=True):
        links[i].append(j)
        links[j].append(i)
    return _with_ends(centres, radii, _longest_way(centres, radii, links))


def _longest_way(centres: Array, radii: Array, links: Sequence[Sequence[int]]) -> list[int]:
    """Nodes of the longest way, its two last radii counted, through the largest circle's tree.

    One walk out from the largest circle and one back: on the way back each node knows the
    longest way below it, and the two longest that meet in a node make the whole.
    """
    x, y, radius = centres[:, 0].tolist(), centres[:, 1].tolist(), radii.tolist()
    start = int(np.argmax(radii))
    above = {start: start}
    order = [start]
    for node in order:
        for near in links[node]:
            if near not in above:
                above[near] = node
                order.append(near)
    below, child = radius.copy(), list(range(len(radius)))
    longest, meeting = 2 * radius[start], (start, start, start)
    for node in reversed(order[1:]):
        up = above[node]
        length = below[node] + hypot(x[node] - x[up], y[node] - y[up])
        if below[up] + length > longest:
            longest, meeting = below[up] + length, (node, up, child[up])
        if length > below[up]:
            below[up], child[up] = length, node
    one, middle, other = meeting
    if one == other == middle:
        return [middle]
    way = [*reversed(_down(child, one)), middle]
    return way if other == middle else [*way, *_down(child, other)]


def _down(child: Sequence[int], node: int) -> list[int]:
    """From a node to the end of the longest way below it."""
    way = [node]
    while child[node] != node:
        node = child[node]
        way.append(node)
    return way


def _with_ends(centres: Array, radii: Array, way: list[int]) -> Array:
    """The way with each end carried on to the edge."""
    inner = centres[way]
    first, last = radii[way[0]], radii[way[-1]]
    ahead = inner[0] - inner[min(2, len(inner) - 1)]
    behind = inner[-1] - inner[max(-3, -len(inner))]
    out = np.array([_unit(ahead, [1.0, 0.0]), _unit(behind, [-1.0, 0.0])])
    return np.vstack([inner[0] + first * out[0], inner, inner[-1] + last * out[1]])


def _unit(vector: Array, otherwise: Sequence[float]) -> Array:
    size = float(np.hypot(*vector))
    return vector / size if size > 0 else np.asarray(otherwise)
