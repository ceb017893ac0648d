"""The map from the photo to the examined surface, with its uncertainty.

Pixel frame as in `ptmark.photo`; surface frame in mm, origin and axis set by the reference.
"""

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from ptmark.photo import ends_at_border
from ptmark.scale.plane import Lens, apply_homography

if TYPE_CHECKING:
    from ptmark.scale.fit import Evidence

__all__ = ["Alternative", "Beside", "SurfaceMap"]

Array = npt.NDArray[np.float64]

_NO_LENS = Lens((0.0, 0.0), 1.0)


@dataclass(frozen=True, slots=True, eq=False)
class Alternative:
    """Another map that the evidence allows, with its weight (second moment about the map)."""

    weight: float
    h: Array


@dataclass(frozen=True, slots=True, eq=False)
class Beside:
    """A second reference that the map was fitted to as well, and how it agrees.

    ``reference_px`` of shape (N, 2); ``en`` is the largest of the comparisons, ``difference``
    how much longer the first reference's scale is there, relative.
    """

    reference: str
    reference_px: Array
    en: float
    difference: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SurfaceMap:
    """Plane homography from px to mm, with its covariance.

    Attributes
    ----------
    h : ndarray of shape (3, 3)
        ``[X, Y, 1] ~ h @ [x, y, 1]``, ``h[2, 2] == 1``; x, y in px, X, Y in mm.
    covariance : mapping of name to ndarray of shape (9, 9)
        Covariance of the first eight entries of ``h``, row by row, and of the lens term
        ``lens.kappa``, one matrix for each named source ("picking", "reference", "map",
        "tilt", "lens"); sources are independent.
    reference : str
        "card", "rectangle", "two lines", "line" or "pipe".
    reference_px : ndarray of shape (N, 2)
        The points that fixed it, px.
    residual_px : float
        Root mean square misfit of those points, px; 0 where nothing is left over.
    tilt_deg : float or None
        Angle between the optical axis and the surface normal; None where unknown.
    working_distance_mm : float or None
        Camera to surface along the optical axis; None where the focal length is unknown.
    focal_px : float or None
        Focal length used, px: from EXIF or, where the reference tells it, estimated.
    camera_mm : ndarray of shape (3,)
        Foot of the camera's perpendicular on the surface and its height over it, mm.
    camera_height_rel_u : float
        Relative standard uncertainty of that height.
    view_slope_u : float
        Standard uncertainty of the line of sight's slope, where the tilt is not measured.
    lens : Lens
        Radial correction applied to points before ``h``; ``kappa`` 0 where none is known.
    alternatives : mapping of name to tuple of Alternative
        Sources that are too far from linear for a covariance (an unknown tilt).
    cautions : tuple of str
        What the user should know of this map, each with its mend.
    reading : str
        What the reference itself showed, where it was read: "150 steps of mm".
    beside : Beside or None
        The second reference, where two were used; ``reference`` names the first.
    other_cards_px : tuple of ndarray of shape (N, 2)
        The markers' corners of each further scale card in the photo, which was not used.
    evidence : Evidence or None
        What was fitted, so that another reference can be fitted with it.
    frame_px : (int, int) or None
        Width and height of the photo; None where they are not known.
    displaced_u_mm : float
        Standard uncertainty of where dark edges lie in all of the photo, by which a card shows
        that they were moved; 0 where they lie as printed, or nothing tells.
    lying_u_mm : float
        Standard uncertainty of the reference's own height over the surface, where it has one
        that nobody gave: the thickness of a rule.
    """

    h: Array
    covariance: dict[str, Array]
    reference: str
    reference_px: Array
    residual_px: float = 0.0
    tilt_deg: float | None = None
    working_distance_mm: float | None = None
    focal_px: float | None = None
    camera_mm: Array = field(default_factory=lambda: np.array([0.0, 0.0, 250.0]))
    camera_height_rel_u: float = 0.35
    view_slope_u: float = 0.0
    lens: Lens = _NO_LENS
    alternatives: dict[str, tuple[Alternative, ...]] = field(default_factory=dict)
    cautions: tuple[str, ...] = ()
    reading: str = ""
    beside: Beside | None = None
    other_cards_px: tuple[Array, ...] = ()
    evidence: "Evidence | None" = None
    frame_px: tuple[int, int] | None = None
    displaced_u_mm: float = 0.0
    lying_u_mm: float = 0.0

    def to_mm(self, points_px: Array) -> Array:
        """Map points of shape (N, 2) from px to mm."""
        return apply_homography(self.h, self.lens.undistort(_points(points_px)))

    def to_px(self, points_mm: Array) -> Array:
        """Map points of shape (N, 2) from mm to px."""
        back = np.asarray(np.linalg.inv(self.h), dtype=np.float64)
        straight = apply_homography(back, _points(points_mm))
        return self.lens.distort(straight)

    def in_view(self, points_px: Array) -> bool:
        """Whether all points lie on the surface's near side of its horizon."""
        depth = self.lens.undistort(_points(points_px)) @ self.h[2, :2] + self.h[2, 2]
        at = self.lens.undistort(self.reference_px.mean(axis=0)) @ self.h[2, :2] + self.h[2, 2]
        return bool((depth * at > 0).all())

    def runs_out(self, outline_px: Array) -> bool:
        """Whether an outline of shape (N, 2) px ends at the photo's edge: more may follow."""
        if self.frame_px is None:
            return False
        return ends_at_border(outline_px, *self.frame_px)

    @property
    def flat(self) -> bool:
        """Whether the surface is a plane."""
        return True

    def out_of_view(self, points_px: Array) -> tuple[str, str]:
        """Why points that are not `in_view` cannot be measured, and the mend."""
        return (
            "an outline that reaches beyond the surface's horizon",
            "check the scale reference, or take a photo less aslant",
        )

    def lowered(self, outline_mm: Array, height_mm: float) -> Array:
        """Outline of shape (N, 2) mm that lies ``height_mm`` over the surface, as it is."""
        foot, camera = self.camera_mm[:2], float(self.camera_mm[2])
        return np.asarray(foot + (outline_mm - foot) * (1 - height_mm / camera))

    def jacobian(self, points_px: Array) -> Array:
        """Local derivative d(X, Y)/d(x, y), mm/px: shape (N, 2, 2) for points (N, 2)."""
        points = _points(points_px)
        straight = self.lens.undistort(points)
        w = straight @ self.h[2, :2] + self.h[2, 2]
        mapped = apply_homography(self.h, straight)
        plane = (self.h[None, :2, :2] - mapped[:, :, None] * self.h[None, 2:, :2]) / w[
            :, None, None
        ]
        return np.asarray(plane @ self.lens.jacobian(points))

    def mm_per_px(self, at_px: Array | None = None) -> float:
        """Mean local scale, sqrt of the local area factor; by default amid the reference."""
        at = self.reference_px.mean(axis=0) if at_px is None else np.asarray(at_px, float)
        return float(np.sqrt(abs(np.linalg.det(self.jacobian(at.reshape(1, 2))[0]))))

    def distance_u(self, a_px: Array, b_px: Array) -> dict[str, float]:
        """Standard uncertainty in mm that the map gives the distance a-b, by named source.

        ``a_px`` and ``b_px`` of shape (2,). As `distances_u`.
        """
        found = self.distances_u(np.array([[a_px, b_px]], np.float64))
        return {name: float(u[0]) for name, u in found.items()}

    def distances_u(self, ends_px: Array) -> dict[str, Array]:
        """The same of many distances: ends of shape (K, 2, 2), each source's of shape (K,).

        Picking of the ends themselves is not included. First-order propagation (JCGM 100:2008,
        5.2.2) of the nine parameters jointly; the alternatives by their root mean square
        departure. Coincident points give 0.
        """
        distance, gradient = self._distance_slopes(ends_px)
        found = {
            name: np.sqrt(np.maximum(((gradient @ matrix) * gradient).sum(axis=1), 0.0))
            for name, matrix in self.covariance.items()
        }
        straight = self.lens.undistort(ends_px).reshape(-1, 2)
        for name, others in self.alternatives.items():
            squares = np.zeros(len(ends_px))
            for other in others:
                seen = _lengths(apply_homography(other.h, straight))
                squares += other.weight * (seen - distance) ** 2
            found[name] = np.hypot(found.get(name, 0.0), np.sqrt(squares))
        return found

    def distance_slope(self, ends_px: Array) -> tuple[float, Array]:
        """Distance of two places, mm, and its derivative by the nine parameters, shape (9,)."""
        distance, slope = self._distance_slopes(np.asarray(ends_px)[None])
        return float(distance[0]), slope[0]

    def _distance_slopes(self, ends_px: Array) -> tuple[Array, Array]:
        """Those of K pairs of shape (K, 2, 2): shape (K,) and (K, 9); 0 where they coincide."""
        points = ends_px.reshape(-1, 2)
        straight = self.lens.undistort(points)
        across = apply_homography(self.h, straight)
        distance = _lengths(across)
        chord = across[1::2] - across[::2]
        way = chord / np.where(distance == 0, 1.0, distance)[:, None]
        slopes = self._parameter_slopes(points, straight, across)
        apart = slopes[1::2] - slopes[::2]
        return distance, way[:, :1] * apart[:, 0] + way[:, 1:] * apart[:, 1]

    def _parameter_slopes(self, points_px: Array, straight: Array, mapped: Array) -> Array:
        """Derivative of (X, Y) by the nine parameters, shape (N, 2, 9).

        ``straight`` are the points undistorted, ``mapped`` the same in mm.
        """
        w = (straight @ self.h[2, :2] + self.h[2, 2])[:, None]
        rows = np.hstack([straight, np.ones((len(straight), 1))]) / w
        slopes = np.zeros((len(straight), 2, 9))
        slopes[:, 0, 0:3] = rows
        slopes[:, 1, 3:6] = rows
        slopes[:, :, 6:8] = -mapped[:, :, None] * rows[:, None, :2]
        plane = (self.h[None, :2, :2] - mapped[:, :, None] * self.h[None, 2:, :2]) / w[
            :, :, None
        ]
        from_centre = points_px - np.asarray(self.lens.centre)
        r2 = (from_centre**2).sum(-1, keepdims=True) / self.lens.radius_px**2
        slopes[:, :, 8] = (plane @ (from_centre * r2)[:, :, None])[:, :, 0]
        return slopes

    def view_slopes(self, ends_mm: Array) -> Array:
        """Slope of the line of sight along pairs of points, mm aside for each mm of height.

        Ends of shape (K, 2, 2), slopes of shape (K,); 0 where the two coincide. Root mean
        square where the tilt is unknown: its standard uncertainty is added.
        """
        chord = ends_mm[:, 1] - ends_mm[:, 0]
        size = np.hypot(chord[:, 0], chord[:, 1])
        aside = (ends_mm.mean(axis=1) - self.camera_mm[:2]) / self.camera_mm[2]
        slope = (aside * chord).sum(axis=1) / np.where(size == 0, 1.0, size)
        return np.where(size == 0, 0.0, np.hypot(slope, self.view_slope_u))


def _points(points: npt.ArrayLike) -> Array:
    return np.asarray(points, dtype=np.float64)


def _lengths(ends: Array) -> Array:
    """Distances of pairs, one after the other in shape (2 K, 2): shape (K,)."""
    chord = ends[1::2] - ends[::2]
    return np.hypot(chord[:, 0], chord[:, 1])
