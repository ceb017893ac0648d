"""Medial axis of an outline: its largest inscribed circle and its centre line.

The outline is sampled closely and triangulated (Delaunay). The circle about a triangle holds
no other sample, so the largest one about a triangle inside the outline is, up to the sampling,
the largest inscribed circle; a last exact step on the outline's own sides removes the
sampling. Triangles inside, joined across shared sides, form a tree whose longest way is the
centre line.
"""

from dataclasses import dataclass
from itertools import combinations
from math import hypot

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.measure.centre_line import centre_line

__all__ = ["Medial", "ahead_of", "inscribed_radius", "medial_of"]

Array = npt.NDArray[np.float64]
Index = npt.NDArray[np.int64]

_SAMPLES = 100
_MOST_SAMPLES = 600
_MOST_TRIED = 6
_WORTH = 3e-4  # of the radius: smaller gains are not looked for


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
    found = _inscribed(outline, thickness)
    if found is None:
        return _sliver(outline, thickness)
    centre, radius, parts = found
    path = centre_line(*parts)
    steps = np.diff(path, axis=0)
    return Medial(centre, radius, path, float(np.hypot(steps[:, 0], steps[:, 1]).sum()))


def inscribed_radius(outline: Array) -> float:
    """Radius of the largest circle within, as `medial_of` has it, without the centre line."""
    thickness = _thickness(outline)
    found = _inscribed(outline, thickness)
    return thickness / 2 if found is None else found[1]


def _inscribed(
    outline: Array, thickness: float
) -> tuple[Array, float, tuple[Array, Index, Array, Array]] | None:
    """Centre, radius and what the centre line goes by; None where none can be found."""
    samples = _sampled(outline, thickness)
    triangles = _inner_triangles(samples)
    centres, radii = _circumcircles(samples, triangles)
    centre, radius = _largest_inside(outline, centres, radii)
    return None if radius == 0.0 else (centre, radius, (samples, triangles, centres, radii))


def _sliver(outline: Array, thickness: float) -> Medial:
    """Too thin to triangulate (under 1e-4 of its length): mean thickness, straight path."""
    away = ((outline[:, None] - outline[None]) ** 2).sum(axis=-1)
    ends = outline[list(np.unravel_index(int(np.argmax(away)), away.shape))]
    return Medial(ends.mean(axis=0), thickness / 2, ends, float(np.sqrt(away.max())))


def ahead_of(points: Array) -> Array:
    """Each point's successor round the outline (`numpy.roll`, ten times as fast)."""
    return np.concatenate([points[1:], points[:1]])


def _thickness(outline: Array) -> float:
    """Area over half the perimeter: about the mean thickness of a thin shape."""
    ahead = ahead_of(outline)
    step = ahead - outline
    perimeter = float(np.hypot(step[:, 0], step[:, 1]).sum())
    at, then = outline - outline[0], ahead - outline[0]
    twice = float(at[:, 0] @ then[:, 1] - at[:, 1] @ then[:, 0])
    return max(abs(twice) / perimeter, 1e-9 * perimeter)


def _sampled(outline: Array, thickness: float) -> Array:
    """Points along the outline, about half its thickness apart, at most a fixed number.

    The vertices are among them unless they lie closer than that.
    """
    step = ahead_of(outline) - outline
    lengths = np.hypot(step[:, 0], step[:, 1])
    perimeter = float(lengths.sum())
    spacing = max(min(thickness / 2, perimeter / _SAMPLES), perimeter / _MOST_SAMPLES)
    if len(outline) * spacing < perimeter:
        pieces = np.maximum(np.ceil(lengths / spacing).astype(int), 1)
        owner = np.repeat(np.arange(len(outline)), pieces)
        part = np.arange(int(pieces.sum())) - np.repeat(np.cumsum(pieces) - pieces, pieces)
        return np.asarray(outline[owner] + (part / pieces[owner])[:, None] * step[owner])
    at = np.concatenate([[0.0], np.cumsum(lengths)])
    wanted = np.arange(int(np.ceil(perimeter / spacing))) * spacing
    closed = np.vstack([outline, outline[:1]])
    return np.column_stack([np.interp(wanted, at, closed[:, i]) for i in (0, 1)])


def _inner_triangles(samples: Array) -> Index:
    """Delaunay triangles inside the outline, rows of ascending sample numbers."""
    low = samples.min(axis=0)
    size = float(np.ptp(samples, axis=0).max())
    # Subdiv2D keeps float32: a fixed frame of 1000 leaves 1e-7 of the size.
    placed = ((samples - low) * (1000 / size) + 10).astype(np.float32)
    plane = cv2.Subdiv2D((0, 0, 1021, 1021))
    plane.insert(placed)
    corners = np.asarray(plane.getTriangleList()).reshape(-1, 2)
    index = _numbers(placed, corners).reshape(-1, 3)
    index = np.sort(index[_framed(corners)], axis=1)
    a, b, c = (samples[index[:, i]] for i in range(3))
    turn = (b[:, 0] - a[:, 0]) * (c[:, 1] - a[:, 1]) - (b[:, 1] - a[:, 1]) * (c[:, 0] - a[:, 0])
    at = samples - samples[0]
    ahead = ahead_of(at)
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
    along = ahead_of(outline) - outline
    squared = np.maximum((along**2).sum(axis=1), 1e-300)
    best, best_at = 0.0, outline.mean(axis=0)
    tried: list[Array] = []
    for i in np.argsort(-radii):
        # A circle through samples can only shrink when the sides between them count too.
        if radii[i] <= best * (1 + _WORTH) or len(tried) == _MOST_TRIED:
            break
        if any(hypot(*(centres[i] - seen)) < 0.3 * radii[i] for seen in tried):
            continue
        if not _is_inside(outline, centres[i]):
            continue
        tried.append(centres[i])
        at, radius = _grown(centres[i], outline, along, squared)
        if radius > best:
            best, best_at = radius, at
    return best_at, best


def _is_inside(outline: Array, point: Array) -> bool:
    x, y = outline[:, 0] - point[0], outline[:, 1] - point[1]
    ahead_x, ahead_y = ahead_of(x), ahead_of(y)
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
    for _ in range(5):
        near = np.argpartition(distance, min(7, len(distance) - 1))[:7]
        step = _balanced(distance[near], unit[near], 0.5 * best)
        if step is None:
            break
        trial = at + step
        distance, unit = _touching(trial, start, along, squared)
        radius = float(distance.min())
        if radius <= best:
            break
        gain, at, best = radius / best - 1, trial, radius
        if gain < _WORTH:
            break
    return at, best


_TRIPLES = {n: np.array(list(combinations(range(n), 3))).T for n in range(3, 8)}


def _balanced(distance: Array, unit: Array, reach: float) -> Array | None:
    """The step that evens out three sides and leaves no other nearer; None if there is none."""
    triples = _TRIPLES[len(distance)]
    (x_i, x_j, x_k), (y_i, y_j, y_k) = unit[:, 0][triples], unit[:, 1][triples]
    d_i, d_j, d_k = distance[triples]
    px, py, dp = x_i - x_k, y_i - y_k, d_k - d_i
    qx, qy, dq = x_j - x_k, y_j - y_k, d_k - d_j
    cross = px * qy - py * qx
    usable = np.abs(cross) > 1e-6
    cross = np.where(usable, cross, 1.0)
    step = (np.array([dp * qy - dq * py, dq * px - dp * qx]) / cross).T
    radius = d_k + x_k * step[:, 0] + y_k * step[:, 1]
    others = distance + step @ unit.T
    kept = usable & (others.min(axis=1) >= radius - 1e-9 * np.abs(radius))
    kept &= (step**2).sum(axis=1) <= reach**2
    if not kept.any():
        return None
    return np.asarray(step[np.argmax(np.where(kept, radius, -np.inf))])
