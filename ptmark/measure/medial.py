"""Medial axis of an outline: its largest inscribed circle and its centre line.

The outline is sampled closely and triangulated (Delaunay). The circle about a triangle holds
no other sample, so the largest one about a triangle inside the outline is, up to the sampling,
the largest inscribed circle; a last exact step on the outline's own sides removes the
sampling. Triangles inside, joined across shared sides, form a tree whose longest way is the
centre line (chordal axis: Prasad 1997, "Morphological analysis of shapes").
"""

from collections.abc import Sequence
from dataclasses import dataclass

import cv2
import numpy as np
import numpy.typing as npt

__all__ = ["Medial", "medial_of"]

Array = npt.NDArray[np.float64]
Index = npt.NDArray[np.int64]

_SAMPLES = 160
_MOST_SAMPLES = 900


@dataclass(frozen=True, slots=True, eq=False)
class Medial:
    """Largest inscribed circle and centre line, in the outline's unit.

    Attributes
    ----------
    centre : ndarray of shape (2,)
    radius : float
    path : ndarray of shape (P, 2)
        Centre line from edge to edge.
    path_length : float
    """

    centre: Array
    radius: float
    path: Array
    path_length: float


def medial_of(outline: Array) -> Medial:
    """Find both for a simple outline of shape (N, 2)."""
    thickness = _thickness(outline)
    samples = _sampled(outline, thickness)
    triangles = _inner_triangles(samples)
    centres, radii = _circumcircles(samples, triangles)
    centre, radius = _largest_inside(outline, centres, radii)
    path = _centre_line(samples, triangles)
    steps = np.diff(path, axis=0)
    return Medial(centre, radius, path, float(np.hypot(steps[:, 0], steps[:, 1]).sum()))


def _thickness(outline: Array) -> float:
    """Area over half the perimeter: about the mean thickness of a thin shape."""
    ahead = np.roll(outline, -1, axis=0)
    step = ahead - outline
    perimeter = float(np.hypot(step[:, 0], step[:, 1]).sum())
    at = outline - outline[0]
    twice = float(at[:, 0] @ np.roll(at[:, 1], -1) - at[:, 1] @ np.roll(at[:, 0], -1))
    return max(abs(twice) / perimeter, 1e-9 * perimeter)


def _sampled(outline: Array, thickness: float) -> Array:
    """Points along the outline, its vertices among them, no farther apart than a third of its
    thickness where the number of points allows."""
    step = np.roll(outline, -1, axis=0) - outline
    lengths = np.hypot(step[:, 0], step[:, 1])
    perimeter = float(lengths.sum())
    spacing = max(min(thickness / 3, perimeter / _SAMPLES), perimeter / _MOST_SAMPLES)
    pieces = np.maximum(np.ceil(lengths / spacing).astype(int), 1)
    owner = np.repeat(np.arange(len(outline)), pieces)
    part = np.arange(int(pieces.sum())) - np.repeat(np.cumsum(pieces) - pieces, pieces)
    return np.asarray(outline[owner] + (part / pieces[owner])[:, None] * step[owner])


def _inner_triangles(samples: Array) -> Index:
    """Delaunay triangles inside the outline, rows of ascending sample numbers."""
    low = samples.min(axis=0)
    size = float(np.ptp(samples, axis=0).max())
    # Subdiv2D keeps float32: a fixed frame of 1000 leaves 1e-7 of the size.
    placed = ((samples - low) * (1000 / size) + 10).astype(np.float32)
    _, first = np.unique(placed, axis=0, return_index=True)
    keep = np.sort(first)
    placed = placed[keep]
    plane = cv2.Subdiv2D((0, 0, 1021, 1021))
    plane.insert(placed)
    corners = np.asarray(plane.getTriangleList()).reshape(-1, 2)
    index = keep[_numbers(placed, corners)].reshape(-1, 3)
    index = np.sort(index[_framed(corners)], axis=1)
    a, b, c = (samples[index[:, i]] for i in range(3))
    turn = (b[:, 0] - a[:, 0]) * (c[:, 1] - a[:, 1]) - (b[:, 1] - a[:, 1]) * (c[:, 0] - a[:, 0])
    at = samples - samples[0]
    ahead = np.roll(at, -1, axis=0)
    way = np.sign(float((at[:, 0] * ahead[:, 1] - at[:, 1] * ahead[:, 0]).sum()))
    # Samples run round the outline, so a triangle of ascending samples turns the outline's
    # way exactly when it lies inside.
    return np.asarray(index[turn * way > 0])


def _framed(corners: npt.NDArray[np.float32]) -> npt.NDArray[np.bool_]:
    within = ((corners >= 0) & (corners <= 1021)).all(axis=1)
    return np.asarray(within.reshape(-1, 3).all(axis=1))


def _numbers(placed: npt.NDArray[np.float32], corners: npt.NDArray[np.float32]) -> Index:
    """Which sample each triangle corner is (exact match of float32 pairs)."""
    keys = np.ascontiguousarray(placed).view(np.int64).ravel()
    order = np.argsort(keys)
    wanted = np.ascontiguousarray(corners, np.float32).view(np.int64).ravel()
    place = np.minimum(np.searchsorted(keys[order], wanted), len(keys) - 1)
    return np.asarray(order[place], dtype=np.int64)


def _circumcircles(samples: Array, triangles: Index) -> tuple[Array, Array]:
    a, b, c = (samples[triangles[:, i]] for i in range(3))
    p, q = b - a, c - a
    cross = 2 * (p[:, 0] * q[:, 1] - p[:, 1] * q[:, 0])
    p2, q2 = (p**2).sum(axis=1), (q**2).sum(axis=1)
    x = (q[:, 1] * p2 - p[:, 1] * q2) / cross
    y = (p[:, 0] * q2 - q[:, 0] * p2) / cross
    return np.asarray(a + np.column_stack([x, y])), np.hypot(x, y)


def _largest_inside(outline: Array, centres: Array, radii: Array) -> tuple[Array, float]:
    """Exact largest circle near the most promising circumcircles."""
    start = outline
    along = np.roll(outline, -1, axis=0) - start
    squared = np.maximum((along**2).sum(axis=1), 1e-300)
    order = np.argsort(-radii)
    best, best_at = 0.0, outline.mean(axis=0)
    tried = 0
    for i in order:
        # A circle through samples can only shrink when the sides between them count too.
        if radii[i] <= best or tried >= 12:
            break
        if not _is_inside(outline, centres[i]):
            continue
        tried += 1
        at, radius = _grown(centres[i], start, along, squared)
        if radius > best:
            best, best_at = radius, at
    return best_at, best


def _is_inside(outline: Array, point: Array) -> bool:
    x, y = outline[:, 0] - point[0], outline[:, 1] - point[1]
    ahead_x, ahead_y = np.roll(x, -1), np.roll(y, -1)
    straddles = (y > 0) != (ahead_y > 0)
    cross = x * ahead_y - y * ahead_x
    return bool((straddles & ((cross > 0) == (ahead_y > y))).sum() % 2)


def _touching(at: Array, start: Array, along: Array, squared: Array) -> tuple[Array, Array]:
    """Distance to every side and the unit vectors from its nearest point, towards ``at``."""
    offset = at - start
    t = np.clip((offset * along).sum(axis=1) / squared, 0, 1)
    away = offset - t[:, None] * along
    distance = np.hypot(away[:, 0], away[:, 1])
    return distance, away / np.maximum(distance, 1e-300)[:, None]


def _grown(at: Array, start: Array, along: Array, squared: Array) -> tuple[Array, float]:
    """Move a centre so that its distance to the nearest side grows to a local maximum.

    Each step solves the largest t with t <= d_i + u_i . s over the nearest sides exactly, by
    trying every three of them (at a maximum three sides touch, or two face to face).
    """
    distance, unit = _touching(at, start, along, squared)
    best = float(distance.min())
    for _ in range(6):
        near = np.argsort(distance)[:9]
        near = near[distance[near] <= 1.6 * best]
        step = _balanced(distance[near], unit[near], 0.5 * best)
        if step is None:
            break
        trial = at + step
        distance, unit = _touching(trial, start, along, squared)
        radius = float(distance.min())
        if radius <= best * (1 + 1e-7):
            break
        at, best = trial, radius
    return at, best


_TRIPLES = {
    n: np.array([(i, j, k) for i in range(n) for j in range(i + 1, n) for k in range(j + 1, n)])
    for n in range(3, 10)
}


def _balanced(distance: Array, unit: Array, reach: float) -> Array | None:
    """The step that evens out three sides and leaves no other nearer; None if there is none."""
    n = len(distance)
    if n < 3:
        return None
    triples = _TRIPLES[n]
    matrix = np.concatenate([-unit[triples], np.ones((len(triples), 3, 1))], axis=2)
    determinant = np.linalg.det(matrix)
    usable = np.abs(determinant) > 1e-6
    if not usable.any():
        return None
    solved = np.linalg.solve(matrix[usable], distance[triples[usable]][..., None])[..., 0]
    step, radius = solved[:, :2], solved[:, 2]
    kept = (radius[:, None] <= distance + step @ unit.T + 1e-9 * radius[:, None]).all(axis=1)
    kept &= np.hypot(step[:, 0], step[:, 1]) <= reach
    if not kept.any():
        return None
    return np.asarray(step[kept][np.argmax(radius[kept])])


def _centre_line(samples: Array, triangles: Index) -> Array:
    """Longest way through the tree of inner triangles, shape (P, 2)."""
    count = len(samples)
    sides = np.vstack([triangles[:, [0, 1]], triangles[:, [1, 2]], triangles[:, [0, 2]]])
    keys = sides[:, 0] * count + sides[:, 1]
    owner = np.tile(np.arange(len(triangles)), 3)
    order = np.argsort(keys, kind="stable")
    keys, owner = keys[order], owner[order]
    shared = np.flatnonzero(keys[1:] == keys[:-1])
    doors = np.column_stack([keys[shared] // count, keys[shared] % count])
    middle = (samples[doors[:, 0]] + samples[doors[:, 1]]) / 2
    return _longest_way(samples, triangles, middle, owner[shared], owner[shared + 1])


def _longest_way(
    samples: Array, triangles: Index, middle: Array, one: Index, other: Index
) -> Array:
    """Breadth-first twice: from any door to the farthest tip, from there to the farthest."""
    rooms: list[list[int]] = [[] for _ in range(len(triangles))]
    for door, (i, j) in enumerate(zip(one.tolist(), other.tolist(), strict=True)):
        rooms[i].append(door)
        rooms[j].append(door)
    # Nodes: the doors, then one tip for every room with a single door.
    ears = [room for room, doors in enumerate(rooms) if len(doors) == 1]
    if not len(middle) or not ears:
        return _farthest_pair(samples)
    tips = [_apex(samples, triangles[room], middle[rooms[room][0]]) for room in ears]
    at = np.vstack([middle, np.array(tips)])
    links: list[list[int]] = [[] for _ in range(len(at))]
    for doors in rooms:
        for i, door in enumerate(doors):
            for next_door in doors[i + 1 :]:
                links[door].append(next_door)
                links[next_door].append(door)
    for tip, room in enumerate(ears, start=len(middle)):
        links[tip].append(rooms[room][0])
        links[rooms[room][0]].append(tip)
    first = _farthest(at, links, len(middle))[-1]
    way = _farthest(at, links, first)
    return np.asarray(at[way])


def _apex(samples: Array, triangle: Index, door: Array) -> Array:
    """The corner of an ear opposite its only door."""
    corners = samples[triangle]
    opposite = corners.sum(axis=0) - 2 * door
    return np.asarray(opposite)


def _farthest(at: Array, links: Sequence[Sequence[int]], start: int) -> list[int]:
    """Way from ``start`` to the node farthest along the links, by length."""
    x, y = at[:, 0].tolist(), at[:, 1].tolist()
    before = {start: start}
    length = {start: 0.0}
    stack = [start]
    end = start
    while stack:
        node = stack.pop()
        for near in links[node]:
            if near not in before:
                before[near] = node
                length[near] = (
                    length[node] + ((x[near] - x[node]) ** 2 + (y[near] - y[node]) ** 2) ** 0.5
                )
                if length[near] > length[end]:
                    end = near
                stack.append(near)
    way = [end]
    while way[-1] != start:
        way.append(before[way[-1]])
    return way[::-1]


def _farthest_pair(samples: Array) -> Array:
    """Fallback where there is no inner side: the two farthest samples."""
    away = ((samples[:, None] - samples[None]) ** 2).sum(axis=-1)
    i, j = np.unravel_index(int(np.argmax(away)), away.shape)
    return samples[[i, j]]
