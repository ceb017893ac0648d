"""Medial axes of outlines: the largest inscribed circle and the length of the centre line.

An outline is sampled closely and triangulated (Delaunay). The circle about a triangle holds
no other sample, so the largest one about a triangle inside the outline is, up to the sampling,
the largest inscribed circle; a last exact step on the outline's own sides removes the
sampling. Triangles inside, joined across shared sides, form a tree whose longest way is the
centre line. Outlines are taken many at once, since calls cost more than work.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.rings import Rings
from ptmark.measure.centre_line import longest_ways
from ptmark.measure.inscribed import largest_inside

__all__ = ["Medial", "ahead_of", "inscribed_radius", "medial_of", "medials"]

Array = npt.NDArray[np.float64]
Index = npt.NDArray[np.intp]

_SAMPLES = 100
_MOST_SAMPLES = 600


@dataclass(frozen=True, slots=True, eq=False)
class Medial:
    """Largest inscribed circle and centre line, in the outline's unit.

    Attributes
    ----------
    centre : ndarray of shape (2,)
    radius : float
    path_length : float
        Of the centre line, from edge to edge.
    """

    centre: Array
    radius: float
    path_length: float


def medial_of(outline: Array) -> Medial:
    """Find both for a simple outline of shape (N, 2)."""
    return medials([outline])[0]


def medials(
    outlines: Sequence[Array], paths: Sequence[float | None] | None = None
) -> list[Medial]:
    """Find both for simple outlines, each of shape (N, 2).

    ``paths`` are the lengths of centre lines that are known already, and so not walked again.
    """
    if not len(outlines):
        return []
    thickness, triangles, centres, radii, of = _net(outlines)
    at, radius = largest_inside(outlines, centres, radii, of)
    known: list[float | None] = [None] * len(outlines) if paths is None else list(paths)
    asked = np.flatnonzero(np.array([one is None for one in known]) & (radius > 0))
    walked = np.isin(of, asked)
    net = triangles[walked], centres[walked], radii[walked]
    largest = np.lexsort((-net[2], of[walked]))[np.searchsorted(of[walked], asked)]
    for i, way in zip(asked.tolist(), longest_ways(*net, largest), strict=True):
        known[i] = way
    return [
        _sliver(one, thickness[i])
        if way is None or not radius[i]
        else Medial(at[i], float(radius[i]), way)
        for i, (one, way) in enumerate(zip(outlines, known, strict=True))
    ]


def inscribed_radius(outline: Array) -> float:
    """Radius of the largest circle within, as `medial_of` has it, without the centre line."""
    thickness, _, centres, radii, of = _net([outline])
    radius = float(largest_inside([outline], centres, radii, of)[1][0])
    return radius or float(thickness[0]) / 2


def _net(outlines: Sequence[Array]) -> tuple[Array, Index, Array, Array, Index]:
    """Mean thickness of R outlines, and the circles about T triangles inside of them.

    Returns
    -------
    thickness : ndarray of shape (R,)
    triangles : ndarray of shape (T, 3)
        The numbers of their corners, ascending, each outline's own.
    centres, radii : ndarray of shape (T, 2) and (T,)
    of : ndarray of shape (T,)
        Which outline each belongs to, ascending.
    """
    thickness, sampled = _sampled(outlines)
    rings = Rings([len(one) for one in sampled])
    samples = np.concatenate(sampled)
    parts = [
        _triangles(one) + start
        for one, start in zip(sampled, rings.starts.tolist(), strict=True)
    ]
    triangles = np.concatenate(parts)
    # Samples run round the outline, so a triangle of ascending samples turns the outline's
    # way exactly when it lies inside.
    turns = rings.signed_area(samples)[rings.of]
    centres, radii, turn = _circumcircles(samples, triangles)
    inner = turn * turns[triangles[:, 0]] > 0
    triangles = triangles[inner]
    return thickness, triangles, centres[inner], radii[inner], rings.of[triangles[:, 0]]


def _sliver(outline: Array, thickness: float) -> Medial:
    """Too thin to triangulate (under 1e-4 of its length): mean thickness, straight path."""
    away = ((outline[:, None] - outline[None]) ** 2).sum(axis=-1)
    ends = outline[list(np.unravel_index(int(np.argmax(away)), away.shape))]
    return Medial(ends.mean(axis=0), float(thickness) / 2, float(np.sqrt(away.max())))


def ahead_of(points: Array) -> Array:
    """Each point's successor round the outline (`numpy.roll`, ten times as fast)."""
    return np.concatenate([points[1:], points[:1]])


def _sampled(outlines: Sequence[Array]) -> tuple[Array, list[Array]]:
    """Points along outlines, about half a thickness apart, at most a fixed number.

    The vertices are among them unless they lie closer than that. The thickness is the area
    over half the perimeter: about the mean one of a thin shape.
    """
    rings = Rings([len(one) for one in outlines])
    points = np.concatenate(outlines)
    step = points[rings.beside(1)] - points
    lengths = np.hypot(step[:, 0], step[:, 1])
    perimeter = rings.total(lengths)
    doubled = 2 * np.abs(rings.signed_area(points))
    thickness = np.maximum(doubled / perimeter, 1e-9 * perimeter)
    spacing = np.minimum(thickness / 2, perimeter / _SAMPLES)
    spacing = np.maximum(spacing, perimeter / _MOST_SAMPLES)
    pieces = np.maximum(np.ceil(lengths / spacing[rings.of]).astype(np.intp), 1)
    owner = np.repeat(np.arange(len(points)), pieces)
    part = np.arange(len(owner)) - np.repeat(np.cumsum(pieces) - pieces, pieces)
    made = points[owner] + (part / pieces[owner])[:, None] * step[owner]
    sampled = np.split(made, np.cumsum(rings.total(pieces).astype(np.intp))[:-1])
    along = rings.apart(lengths)
    closer = np.flatnonzero(rings.counts * spacing >= perimeter)  # the vertices lie so
    for i in closer.tolist():
        sampled[i] = _evenly(outlines[i], along[i], float(spacing[i]))
    return thickness, sampled


def _evenly(outline: Array, lengths: Array, spacing: float) -> Array:
    """Points along an outline whose sides have these lengths."""
    at = np.concatenate([[0.0], np.cumsum(lengths)])
    wanted = np.arange(int(np.ceil(at[-1] / spacing))) * spacing
    closed = np.vstack([outline, outline[:1]])
    return np.column_stack([np.interp(wanted, at, closed[:, i]) for i in (0, 1)])


def _triangles(samples: Array) -> Index:
    """Delaunay triangles, rows of ascending sample numbers."""
    low, high = samples.min(axis=0), samples.max(axis=0)
    # Subdiv2D keeps float32: a fixed frame of 1000 leaves 1e-7 of the size.
    scale = 1000 / float((high - low).max())
    placed = ((samples - low) * scale + 10).astype(np.float32)
    plane = cv2.Subdiv2D((0, 0, 1021, 1021))
    plane.insert(placed)
    corners = np.asarray(plane.getTriangleList()).reshape(-1, 6)
    framed = corners[((corners >= 0) & (corners <= 1021)).all(axis=1)]
    return np.sort(_numbers(placed, framed).reshape(-1, 3), axis=1)


def _numbers(placed: npt.NDArray[np.float32], corners: npt.NDArray[np.float32]) -> Index:
    """Which sample each triangle corner is (exact match of float32 pairs)."""
    keys = np.ascontiguousarray(placed).view(np.int64).ravel()
    order = np.argsort(keys)
    wanted = np.ascontiguousarray(corners, np.float32).view(np.int64).ravel()
    place = np.minimum(np.searchsorted(keys[order], wanted), len(keys) - 1)
    return np.asarray(order[place], dtype=np.intp)


def _circumcircles(samples: Array, triangles: Index) -> tuple[Array, Array, Array]:
    """Centres, radii, and four times each triangle's area, signed by the way it turns."""
    a, b, c = (samples[triangles[:, i]] for i in range(3))
    p, q = b - a, c - a
    cross = 2 * (p[:, 0] * q[:, 1] - p[:, 1] * q[:, 0])
    p2, q2 = (p**2).sum(axis=1), (q**2).sum(axis=1)
    safe = np.where(cross == 0, 1.0, cross)
    x = (q[:, 1] * p2 - p[:, 1] * q2) / safe
    y = (p[:, 0] * q2 - q[:, 0] * p2) / safe
    return np.asarray(a + np.column_stack([x, y])), np.hypot(x, y), cross
