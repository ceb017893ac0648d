"""Plane geometry of one outline, in whatever unit its points have (mm on the surface).

Outlines are arrays of shape (N, 2), ``(x, y)``, simple polygons of either direction, not
closed by a repeated point. Every figure is unchanged by turning, shifting or mirroring.
"""

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.rings import Rings
from ptmark.errors import OutlineError
from ptmark.measure.medial import Medial, ahead_of, medial_of

__all__ = [
    "area_mm2",
    "as_outline",
    "caliper",
    "centroid",
    "hull",
    "inscribed_width",
    "path_length",
]

Array = npt.NDArray[np.float64]


def as_outline(points: npt.ArrayLike) -> Array:
    """The outline as float64 without repeated neighbours.

    Raises
    ------
    OutlineError
        If it has not the shape (N >= 3, 2), a coordinate is not finite, or it encloses nothing.
    """
    outline: Array = np.asarray(points, dtype=np.float64)
    if outline.ndim != 2 or outline.shape[1] != 2:
        raise OutlineError(f"an outline has shape (N, 2), got {outline.shape}")
    if not np.isfinite(outline).all():
        raise OutlineError("an outline has a coordinate that is no number")
    step = ahead_of(outline) - outline
    outline = outline[(step != 0).any(axis=1)]
    if len(outline) < 3:
        count = len(np.unique(np.asarray(points, dtype=np.float64), axis=0))
        raise OutlineError(f"an outline needs 3 different points, got {count}")
    size = (outline.max(axis=0) - outline.min(axis=0)).max()
    if area_mm2(outline) <= 1e-12 * size**2:
        raise OutlineError("an outline that encloses no area")
    return outline


def area_mm2(outline: Array) -> float:
    """Enclosed area (shoelace formula).

    Examples
    --------
    >>> area_mm2(np.array([[0.0, 0.0], [2.0, 0.0], [2.0, 3.0], [0.0, 3.0]]))
    6.0
    """
    return abs(_signed_area(outline))


def _signed_area(outline: Array) -> float:
    x, y = (outline - outline[0]).T
    return float(x @ ahead_of(y) - y @ ahead_of(x)) / 2


def centroid(outline: Array) -> tuple[float, float]:
    """Centre of the enclosed area."""
    x, y = centroids(outline, Rings([len(outline)]))[0].tolist()
    return x, y


def centroids(points: Array, rings: Rings) -> Array:
    """Centres of the areas that outlines enclose, shape (R, 2); the middle where there is none.

    ``points`` of shape (N, 2) are the outlines' in ``rings``.
    """
    origin = points[rings.starts]
    at = points - origin[rings.of]
    ahead = at[rings.beside(1)]
    cross = at[:, 0] * ahead[:, 1] - at[:, 1] * ahead[:, 0]
    total = rings.total(cross)[:, None]
    moments = rings.total((at + ahead) * cross[:, None])
    inner = moments / np.where(total == 0, 1.0, 3 * total)
    return np.asarray(origin + np.where(total == 0, rings.mean(at), inner))


def hull(points: Array) -> Array:
    """Convex hull of points of shape (N, 2), in order round it, shape (H, 2)."""
    return points[hull_index(points)]


def hull_index(points: Array) -> npt.NDArray[np.intp]:
    """Which of the points make the hull, in order round it, shape (H,)."""
    # OpenCV works in float32: shifted to the middle, its rounding may keep or lose a point
    # that stands out by 1e-7 of the size, which no length here can show.
    at = (points - points.mean(axis=0)).astype(np.float32)
    return np.asarray(cv2.convexHull(at, returnPoints=False), dtype=np.intp).ravel()


def caliper(outline: Array) -> tuple[float, tuple[Array, Array]]:
    """Largest distance between two points of the outline, and the two points.

    The farthest pair lies on the convex hull (Preparata and Shamos, Computational Geometry,
    1985, section 4.2.3); maximum Feret diameter in the words of ISO 13322-1.

    Examples
    --------
    >>> caliper(np.array([[0.0, 0.0], [3.0, 0.0], [3.0, 4.0], [0.0, 4.0]]))[0]
    5.0
    """
    distance, i, j = farthest_pair(outline)
    return distance, (outline[i], outline[j])


def farthest_pair(
    outline: Array, index: npt.NDArray[np.intp] | None = None
) -> tuple[float, int, int]:
    """Largest distance between two points, and which two; ``index`` is their `hull_index`."""
    index = hull_index(outline) if index is None else index
    x, y = outline[index].T
    squares = (x[:, None] - x) ** 2 + (y[:, None] - y) ** 2
    i, j = divmod(int(squares.argmax()), len(index))
    return float(np.sqrt(squares[i, j])), int(index[i]), int(index[j])


def inscribed_width(outline: Array, medial: Medial | None = None) -> float:
    """Diameter of the largest circle inside the outline."""
    found = medial_of(outline) if medial is None else medial
    return 2 * found.radius


def path_length(outline: Array, medial: Medial | None = None) -> float:
    """Length of the longest way along the centre line, from edge to edge."""
    found = medial_of(outline) if medial is None else medial
    return found.path_length


def inside(outline: Array, points: Array) -> npt.NDArray[np.bool_]:
    """Whether points of shape (M, 2) lie inside (even-odd rule), shape (M,)."""
    start, end = outline, ahead_of(outline)
    x, y = points[:, :1], points[:, 1:]
    straddles = (start[:, 1] > y) != (end[:, 1] > y)
    rise = np.where(end[:, 1] == start[:, 1], 1.0, end[:, 1] - start[:, 1])
    at = start[:, 0] + (y - start[:, 1]) / rise * (end[:, 0] - start[:, 0])
    return np.asarray((straddles & (x < at)).sum(axis=1) % 2 == 1)
