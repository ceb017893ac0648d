"""A cylinder before a camera, and what places it: two seen edges, or a plane that touches it.

Its two silhouette edges are seen as two lines. Each line and the camera's centre span a plane
that touches the cylinder; the two planes meet along the axis's direction, and half the angle
between them, phi, puts the axis ``R / sin(phi)`` from the camera (a right triangle of radius
and line of sight). The edges are so always nearer to the camera than the axis: the visible
half is less than a half.

A flat reference that lies on the pipe touches it along one line: its plane, that line and the
radius place the axis too, and the plane's own map gives the lines of sight.

Unwrapped frame, mm: u = R theta along the circumference, 0 where the surface is nearest to
the camera, v along the axis. Unwrapping is an isometry onto the plane, so that lengths and
angles on the pipe are those of the unwrapped plane (isometries: do Carmo, Differential Geometry
of Curves and Surfaces, 1976, section 4-2; its geodesics, the straight lines there: 4-4; both
from memory).
"""

from dataclasses import dataclass, replace

import numpy as np
import numpy.typing as npt

from ptmark.scale.plane import Lens

__all__ = ["Cylinder", "cylinder_of", "touched_by"]

Array = npt.NDArray[np.float64]
Mask = npt.NDArray[np.bool_]


@dataclass(frozen=True, slots=True, eq=False)
class Cylinder:
    """A cylinder in the frame (aside, axis, away), right-handed, its origin the camera; mm.

    ``away`` points from the camera square to the axis, which is ``distance`` mm off.
    ``back`` of shape (3, 3) turns undistorted ``[x, y, 1]``, px, into lines of sight.
    """

    distance: float
    radius: float
    back: Array
    lens: Lens

    def rays(self, points_px: Array) -> Array:
        """Lines of sight, shape (N, 3)."""
        seen = self.lens.undistort(points_px)
        return np.asarray(seen @ self.back[:, :2].T + self.back[:, 2])

    def meet(self, points_px: Array, height: float = 0.0) -> tuple[Array, Mask]:
        """Where lines of sight first meet the surface, or one ``height`` mm over it.

        Returns the places (N, 3) in the frame (aside, axis, away) and whether each is met;
        one that passes by gives its nearest place.
        """
        ray, radius = self.rays(points_px), self.radius + height
        a = ray[:, 0] ** 2 + ray[:, 2] ** 2
        b = ray[:, 2] * self.distance
        under = b**2 - a * (self.distance**2 - radius**2)
        along = (b - np.sqrt(np.maximum(under, 0.0))) / a
        return ray * along[:, None], (under > 0) & (along > 0)

    def unwrapped(self, places: Array, height: float = 0.0) -> Array:
        """Places (N, 3) on the surface as (u, v), shape (N, 2)."""
        theta = np.arctan2(places[:, 0], self.distance - places[:, 2])
        return np.column_stack([(self.radius + height) * theta, places[:, 1]])

    def wrapped(self, points_mm: Array) -> Array:
        """Points (u, v) as places (N, 3)."""
        theta = points_mm[:, 0] / self.radius
        return np.column_stack(
            [
                self.radius * np.sin(theta),
                points_mm[:, 1],
                self.distance - self.radius * np.cos(theta),
            ]
        )

    def to_px(self, places: Array) -> Array:
        """Places (N, 3) as the camera sees them, px."""
        seen = places @ np.linalg.inv(self.back).T
        return self.lens.distort(np.asarray(seen[:, :2] / seen[:, 2:]))

    def sight(self, places: Array) -> Array:
        """Unit vectors to the camera as (along u, along v, outwards), shape (N, 3)."""
        out = np.column_stack([places[:, 0], places[:, 2] - self.distance])
        out = out / np.linalg.norm(out, axis=1, keepdims=True)  # of aside and away
        across = np.column_stack([-out[:, 1], out[:, 0]])
        back = -places / np.linalg.norm(places, axis=1, keepdims=True)
        flat = back[:, [0, 2]]
        return np.column_stack([(flat * across).sum(1), back[:, 1], (flat * out).sum(1)])


def cylinder_of(given: Array, lens: Lens) -> Cylinder:
    """Cylinder of the 13 quantities that a pipe's map rests on.

    ``given`` holds the four picks (8, px: two on one edge, two on the other), the log focal
    length, the optical centre (2, px), kappa and the radius (mm).
    """
    lens = replace(lens, kappa=float(given[11]))
    focal, centre = float(np.exp(given[8])), given[9:11]
    straight = (lens.undistort(given[:8].reshape(4, 2)) - centre) / focal
    a, b, c, d = np.column_stack([straight, np.ones(4)])
    amid = a + b + c + d
    normals = []
    for start, end in ((a, b), (c, d)):
        normal = np.cross(start, end)
        normals.append(normal / np.linalg.norm(normal) * np.sign(normal @ amid))
    middle = normals[0] + normals[1]  # towards the axis; its length is 2 sin(phi)
    away = middle / np.linalg.norm(middle)
    axis = np.cross(normals[0], normals[1])
    axis = axis / np.linalg.norm(axis)
    axis = axis * (np.sign(axis @ (b / b[2] - a / a[2])) or 1.0)
    turn = np.array([np.cross(axis, away), axis, away])
    back = turn @ np.array([[1, 0, -centre[0]], [0, 1, -centre[1]], [0, 0, focal]]) / focal
    radius = float(given[12])
    distance = 2 * radius / float(np.linalg.norm(middle))
    return Cylinder(distance, radius, back, lens)


def touched_by(
    h: Array, camera: Array, ends_mm: Array, radius: float, lens: Lens, near_px: Array
) -> Cylinder:
    """Cylinder that a plane touches along a line, behind the plane as the camera sees it.

    Parameters
    ----------
    h : ndarray of shape (3, 3)
        From undistorted px to the plane, mm.
    camera : ndarray of shape (3,)
        Foot of the camera's perpendicular on the plane and its height over it, mm.
    ends_mm : ndarray of shape (2, 2)
        Two points of the line.
    radius : float
    lens : Lens
    near_px : ndarray of shape (2,)
        Undistorted point that is in view.
    """
    axis = np.append(ends_mm[1] - ends_mm[0], 0.0)
    axis = axis / np.linalg.norm(axis)
    to_axis = np.array([*(ends_mm[0] - camera[:2]), camera[2] + radius])
    to_axis = to_axis - (to_axis @ axis) * axis
    distance = float(np.linalg.norm(to_axis))
    away = to_axis / distance
    turn = np.array([np.cross(axis, away), axis, away])
    from_camera = np.array([[1, 0, -camera[0]], [0, 1, -camera[1]], [0, 0, camera[2]]])
    back = turn @ from_camera @ h
    back = back * np.sign(h[2] @ [*near_px, 1.0])
    return Cylinder(distance, radius, back, lens)
