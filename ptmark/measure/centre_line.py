"""The centre lines of outlines: the longest way through each one's medial axis.

The circles about neighbouring Delaunay triangles inside an outline have neighbouring centres;
joined they are the medial axis of the samples (Blum 1967), a tree for an outline without
holes.
"""

from math import hypot

import numpy as np
import numpy.typing as npt

__all__ = ["longest_ways"]

Array = npt.NDArray[np.float64]
Index = npt.NDArray[np.intp]


def longest_ways(triangles: Index, centres: Array, radii: Array, starts: Index) -> list[float]:
    """Length of the longest way along circles' centres, from edge to edge, in each tree.

    Neighbouring triangles' centres are joined; a way begins and ends with the radius of its
    last circle, so that a side branch of noise, whose circle is that much smaller, adds
    nothing.

    Parameters
    ----------
    triangles : ndarray of shape (T, 3)
        Their corners' numbers, ascending, of all outlines.
    centres, radii : ndarray of shape (T, 2) and (T,)
        Of the circles about them.
    starts : ndarray of shape (R,)
        The largest circle of each outline, whose tree is walked.

    Notes
    -----
    One walk out from the largest circle and one back: on the way back each node knows the
    longest way below it, and the two longest that meet in a node make the whole.
    """
    links = _links(triangles)
    above, walks = [-1] * len(triangles), []
    for start in starts.tolist():
        above[start] = start
        walk = [start]
        for node in walk:
            for near in links[node]:
                if near >= 0 and above[near] < 0:
                    above[near] = node
                    walk.append(near)
        walks.append(walk)
    x, y, radius = centres[:, 0].tolist(), centres[:, 1].tolist(), radii.tolist()
    below = radius.copy()
    found = []
    for walk in walks:
        longest = 2 * radius[walk[0]]
        for node in reversed(walk[1:]):
            up = above[node]
            length = below[node] + hypot(x[node] - x[up], y[node] - y[up])
            longest = max(longest, below[up] + length)
            below[up] = max(below[up], length)
        found.append(longest)
    return found


def _links(triangles: Index) -> list[list[int]]:
    """The neighbours of each triangle across its three sides; -1 where there is none."""
    sides = np.concatenate([triangles[:, [0, 1]], triangles[:, [1, 2]], triangles[:, [0, 2]]])
    keys = sides[:, 0] * (int(triangles.max(initial=0)) + 1) + sides[:, 1]
    order = np.argsort(keys, kind="stable")
    keys = keys[order]
    shared = np.flatnonzero(keys[1:] == keys[:-1])
    one, other = order[shared], order[shared + 1]
    across = np.full(len(keys), -1)
    across[one], across[other] = other % len(triangles), one % len(triangles)
    return np.asarray(across.reshape(3, -1).T).tolist()  # type: ignore[no-any-return]
