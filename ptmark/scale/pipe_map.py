"""The map from a photo to the unwrapped surface of a pipe, with its uncertainty."""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from ptmark.scale.cylinder import Cylinder
from ptmark.scale.surface import SurfaceMap

__all__ = [
    "MOVED_U",
    "MOVED_WEIGHT",
    "TOUCH_REL_U",
    "MovedCylinder",
    "PipeMap",
    "leaning_deg",
    "principal_steps",
    "touching_h",
]

Array = npt.NDArray[np.float64]

# Beyond this a pixel covers over twice the surface, and ever faster more.
MOST_TURNED_DEG = 60.0
# Each quantity is moved by this many standard uncertainties, up and down, with this weight:
# the three-point Gauss-Hermite rule, exact to the fifth degree (Abramowitz and Stegun, table
# 25.10), so that what is not linear in a badly known focal length counts too.
MOVED_U, MOVED_WEIGHT = float(np.sqrt(3)), 1 / 6

# Where a flat thing rests on a round one is seen to this share of the radius. Own estimate, no
# source.
TOUCH_REL_U = 0.05


@dataclass(frozen=True, slots=True, eq=False)
class MovedCylinder:
    """Where the pipe would be with one quantity off, its source and its weight."""

    source: str
    weight: float
    body: Cylinder


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class PipeMap(SurfaceMap):
    """Map from px to the unwrapped surface of a pipe, mm.

    ``h`` is the plane that touches the pipe along its line nearest to the camera. The
    uncertainty is that of ``moved``; ``covariance`` is empty.
    """

    cylinder: Cylinder
    moved: tuple[MovedCylinder, ...]

    @property
    def flat(self) -> bool:
        return False

    def to_mm(self, points_px: Array) -> Array:
        """Map points of shape (N, 2) from px to unwrapped mm."""
        places, _ = self.cylinder.meet(np.asarray(points_px, np.float64))
        return self.cylinder.unwrapped(places)

    def to_px(self, points_mm: Array) -> Array:
        """Map points of shape (N, 2) from unwrapped mm to px."""
        return self.cylinder.to_px(self.cylinder.wrapped(np.asarray(points_mm, np.float64)))

    def turned_deg(self, points_px: Array) -> Array:
        """Angle between surface normal and line of sight, shape (N,); 90 beside the pipe."""
        places, met = self.cylinder.meet(np.asarray(points_px, np.float64))
        angle = np.degrees(np.arccos(np.clip(self.cylinder.sight(places)[:, 2], -1, 1)))
        return np.where(met, angle, 90.0)

    def in_view(self, points_px: Array) -> bool:
        """Whether the surface turns away no more than `MOST_TURNED_DEG` at any point."""
        return bool((self.turned_deg(points_px) <= MOST_TURNED_DEG).all())

    def out_of_view(self, points_px: Array) -> tuple[str, str]:
        """Why an outline cannot be measured, and the mend."""
        most = float(self.turned_deg(points_px).max())
        says = (
            f"the pipe's surface turns away {most:.0f} degrees there, more than "
            f"{MOST_TURNED_DEG:.0f}"
            if most < 90
            else "the outline reaches beyond the pipe's edge"
        )
        return says, "take another photo from that side of the pipe"

    def lowered(self, outline_mm: Array, height_mm: float) -> Array:
        """Outline seen ``height_mm`` over the surface, along that higher surface."""
        places, _ = self.cylinder.meet(self.to_px(outline_mm), height_mm)
        return self.cylinder.unwrapped(places, height_mm)

    def jacobian(self, points_px: Array) -> Array:
        """Local derivative d(u, v)/d(x, y), mm/px, by differences: shape (N, 2, 2)."""
        points, step = np.asarray(points_px, np.float64), 0.05
        columns = [
            (self.to_mm(points + move) - self.to_mm(points - move)) / (2 * step)
            for move in (np.array([step, 0.0]), np.array([0.0, step]))
        ]
        return np.stack(columns, axis=2)

    def mm_per_px(self, at_px: Array | None = None) -> float:
        """Mean local scale; by default where the pipe is nearest, amid the picks."""
        if at_px is None:
            along = self.to_mm(self.reference_px)[:, 1].mean()
            at_px = self.to_px(np.array([[0.0, along]]))[0]
        slopes = self.jacobian(np.asarray(at_px, np.float64).reshape(1, 2))[0]
        return float(np.sqrt(abs(np.linalg.det(slopes))))

    def distances_u(self, ends_px: Array) -> dict[str, Array]:
        """Standard uncertainty in mm of unwrapped distances, by named source, each (K,).

        ``ends_px`` of shape (K, 2, 2). Root mean square departure over the moved cylinders of
        each source (JCGM 101:2008, with a quadrature in place of draws).
        """
        points = ends_px.reshape(-1, 2)

        def distance(body: Cylinder) -> Array:
            there = body.unwrapped(body.meet(points)[0])
            chord = there[1::2] - there[::2]
            return np.hypot(chord[:, 0], chord[:, 1])

        here = distance(self.cylinder)
        squares = {one.source: np.zeros(len(ends_px)) for one in self.moved}
        for one in self.moved:
            squares[one.source] += one.weight * (distance(one.body) - here) ** 2
        return {name: np.sqrt(square) for name, square in squares.items()}

    def view_slopes(self, ends_mm: Array) -> Array:
        """Slope of the line of sight along pairs of points, mm aside for each mm of height."""
        chord = ends_mm[:, 1] - ends_mm[:, 0]
        size = np.hypot(chord[:, 0], chord[:, 1])
        sight = self.cylinder.sight(self.cylinder.wrapped(ends_mm.mean(axis=1)))
        along = np.abs((sight[:, :2] * chord).sum(axis=1)) / np.where(size == 0, 1.0, size)
        return np.asarray(along / np.maximum(sight[:, 2], 1e-6))


def touching_h(body: Cylinder) -> Array:
    """Homography from undistorted px to the plane that touches along the nearest line."""
    near = body.distance - body.radius
    h = np.diag([near, near, 1.0]) @ body.back
    return np.asarray(h / h[2, 2])


def leaning_deg(body: Cylinder, centre: Array) -> float:
    """Angle between the axis and the picture's plane, ``centre`` the optical one, px."""
    optical = body.back @ [*centre, 1.0]
    return float(np.degrees(np.arcsin(min(1.0, abs(optical[1]) / np.linalg.norm(optical)))))


def principal_steps(matrix: Array) -> Array:
    """Independent steps of one standard uncertainty that make a covariance, shape (N, 9).

    Scaled to correlations first: the entries of a homography span seven decades.
    """
    size = np.sqrt(np.maximum(np.diag(matrix), 0.0))
    safe = np.where(size > 0, size, 1.0)
    values, vectors = np.linalg.eigh(matrix / np.outer(safe, safe))
    kept = values > 1e-12 * max(float(values[-1]), 0.0)
    return np.asarray((vectors[:, kept] * np.sqrt(values[kept])).T * size)
