"""A plane seen by a camera: pose, lens term and the homography they make.

Pixel frame of the upright photo; surface frame in mm with x right and y down in the plane, so
that z points away from the camera. The lens terms are a radial correction about the picture's
centre, ``undistorted = c + (p - c) * (1 + kappa * r**2 + kappa_2 * r**4)`` with r in units of
half the picture's diagonal (the even-order radial series of Brown 1971, first two terms).
"""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

__all__ = ["Lens", "Pose", "apply_homography", "fit_homography", "pose_from_homography"]

Array = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Lens:
    """Radial correction about ``centre`` (px), r in units of ``radius_px``."""

    centre: tuple[float, float]
    radius_px: float
    kappa: float = 0.0
    kappa_2: float = 0.0

    @classmethod
    def of_picture(cls, width: int, height: int) -> "Lens":
        centre = ((width - 1) / 2, (height - 1) / 2)
        return cls(centre, float(np.hypot(width, height)) / 2)

    @property
    def straight(self) -> bool:
        """Whether there is nothing to correct."""
        return self.kappa == 0.0 and self.kappa_2 == 0.0

    def undistort(self, points_px: Array) -> Array:
        """Straighten points of shape (..., 2), px."""
        if self.straight:
            return points_px
        from_centre = points_px - np.asarray(self.centre)
        r2 = (from_centre**2).sum(-1, keepdims=True) / self.radius_px**2
        return np.asarray(points_px + from_centre * (self.kappa + self.kappa_2 * r2) * r2)

    def distort(self, points_px: Array) -> Array:
        """Inverse of `undistort`: Newton's steps on the radius, where that grows outwards."""
        if self.straight:
            return points_px
        wanted = points_px - np.asarray(self.centre)
        target = np.sqrt((wanted**2).sum(-1, keepdims=True)) / self.radius_px
        radius = target
        k, k_2 = self.kappa, self.kappa_2
        for _ in range(4 if k_2 == 0.0 else 8):
            r2 = radius * radius  # no power above two: NumPy takes the logarithm for that
            off = radius * (1 + (k + k_2 * r2) * r2) - target
            radius = radius - off / (1 + (3 * k + 5 * k_2 * r2) * r2)
        r2 = radius * radius
        return np.asarray(self.centre + wanted / (1 + (k + k_2 * r2) * r2))

    def jacobian(self, points_px: Array) -> Array:
        """Derivative of `undistort` at points of shape (N, 2): shape (N, 2, 2)."""
        d = (points_px - np.asarray(self.centre)) / self.radius_px
        r2 = (d**2).sum(-1)[:, None, None]
        outer = d[:, :, None] * d[:, None, :]
        evenly = 1 + self.kappa * r2 + self.kappa_2 * r2**2
        along = 2 * self.kappa + 4 * self.kappa_2 * r2
        return np.asarray(evenly * np.eye(2) + along * outer)


@dataclass(frozen=True, slots=True, eq=False)
class Pose:
    """Rotation (3, 3), translation (3,) in mm, focal length and picture centre in px."""

    rotation: Array
    translation: Array
    focal_px: float
    centre: Array

    def to_px(self) -> Array:
        """Homography from plane (mm) to undistorted picture (px), shape (3, 3)."""
        made = self.rotation.copy()
        made[:, 2] = self.translation
        made[:2] *= self.focal_px  # the camera's matrix times these columns
        made[:2] += np.multiply.outer(self.centre, made[2])
        return made

    def to_mm(self) -> Array:
        """Homography from undistorted picture (px) to plane (mm), ``h[2, 2] == 1``."""
        h = np.linalg.inv(self.to_px())
        return np.asarray(h / h[2, 2])

    def to_mm_slopes(self) -> Array:
        """How `to_mm` and the log of the camera's height follow a step of `stepped`.

        Returns
        -------
        ndarray of shape (9, 9)
            A row for each entry of `to_mm` but the last, and the last row for the height.

        Notes
        -----
        With H the homography to the picture, M = inv(H): dM = -M dH M.
        """
        f, t, turned = self.focal_px, self.translation, self.rotation
        crosses = np.cross(np.eye(3)[:, None], turned.T[None]).transpose(0, 2, 1)
        to_k = np.array([[f, 0, self.centre[0]], [0, f, self.centre[1]], [0, 0, 1]])
        plane, d_plane, d_k = np.column_stack([turned[:, :2], t]), *np.zeros((2, 9, 3, 3))
        d_plane[:3, :, :2] = crosses[:, :, :2]
        d_plane[3:6, :, 2] = np.eye(3)
        d_plane[6, 2, 2], d_k[6, 0, 0], d_k[6, 1, 1] = t[2], f, f
        for i in (0, 1):
            d_plane[7 + i, i, 2], d_k[7 + i, i, 2] = -t[2] / f, 1
        back = np.linalg.inv(to_k @ plane)
        moved = -back @ (to_k @ d_plane + d_k @ plane) @ back
        h = back / back[2, 2]
        entries = (moved - h * moved[:, 2:, 2:]) / back[2, 2]
        height = (crosses[:, :, 2] @ t).tolist() + [0.0] * 6
        height = (height + turned[:, 2] @ d_plane[:, :, 2].T) / (turned[:, 2] @ t)
        return np.vstack([entries.reshape(9, 9)[:, :8].T, height])

    @property
    def tilt_deg(self) -> float:
        """Angle between the optical axis and the plane's normal."""
        return float(np.degrees(np.arccos(np.clip(abs(self.rotation[2, 2]), 0, 1))))

    @property
    def camera_mm(self) -> Array:
        """Foot of the camera's perpendicular (X, Y) and its height over the plane, mm."""
        t, r = self.translation, self.rotation
        return np.array([-r[:, 0] @ t, -r[:, 1] @ t, r[:, 2] @ t])

    @property
    def distance_mm(self) -> float:
        """Camera to plane along the optical axis, mm."""
        normal = self.rotation[:, 2]
        return float(normal @ self.translation / normal[2])

    def stepped(self, step: Array) -> "Pose":
        """Pose after a local step: 3 turns (rad), 3 shifts (mm), log focal, 2 centre (px).

        Depth follows the focal length and the plane's place the centre, so that the last three
        leave the picture of an upright plane unchanged: this keeps fits well conditioned.
        """
        zoom = float(np.exp(step[6]))
        moved = self.translation * [1.0, 1.0, zoom]
        moved[:2] -= step[7:9] * self.translation[2] / self.focal_px
        return Pose(
            rotation_from_vector(step[:3]) @ self.rotation,
            moved + step[3:6],
            self.focal_px * zoom,
            self.centre + step[7:9],
        )


def rotation_from_vector(vector: Array) -> Array:
    """Rotation matrix of a rotation vector, rad (Rodrigues' formula)."""
    angle = float(np.linalg.norm(vector))
    x, y, z = vector
    cross = np.array([[0.0, -z, y], [z, 0.0, -x], [-y, x, 0.0]])
    if angle < 1e-9:
        return np.asarray(np.eye(3) + cross + cross @ cross / 2)
    a, b = np.sin(angle) / angle, (1 - np.cos(angle)) / angle**2
    return np.asarray(np.eye(3) + a * cross + b * (cross @ cross))


def apply_homography(h: Array, points: Array) -> Array:
    """Map points of shape (N, 2) by a homography of shape (3, 3)."""
    mapped = points @ h[:, :2].T + h[:, 2]
    return np.asarray(mapped[:, :2] / mapped[:, 2:])


def fit_homography(source: Array, target: Array) -> Array:
    """Homography from four or more point pairs of shape (N, 2), least algebraic error.

    Normalised direct linear transform (Hartley and Zisserman, Multiple View Geometry, 2004,
    algorithm 4.2). Scaled to ``h[2, 2] == 1``.
    """
    (s, ts), (t, tt) = _normalised(source), _normalised(target)
    zero, one = np.zeros((len(s), 3)), np.ones((len(s), 1))
    s1 = np.hstack([s, one])
    rows = np.vstack(
        [np.hstack([s1, zero, -t[:, :1] * s1]), np.hstack([zero, s1, -t[:, 1:] * s1])]
    )
    h = np.linalg.svd(rows)[2][-1].reshape(3, 3)
    h = np.linalg.inv(tt) @ h @ ts
    return np.asarray(h / h[2, 2])


def _normalised(points: Array) -> tuple[Array, Array]:
    mean = points.mean(axis=0)
    scale = np.sqrt(2) / max(float(np.linalg.norm(points - mean, axis=1).mean()), 1e-12)
    turn = np.array([[scale, 0, -scale * mean[0]], [0, scale, -scale * mean[1]], [0, 0, 1]])
    return (points - mean) * scale, turn


def pose_from_homography(to_px: Array, focal_px: float, centre: Array) -> Pose:
    """Pose nearest to a plane-to-picture homography, for a known focal length.

    The two in-plane axes are made orthonormal by the polar decomposition (Zhang 2000,
    "A flexible new technique for camera calibration", section 3.1 and appendix C).
    """
    k_inv = np.array(
        [
            [1 / focal_px, 0, -centre[0] / focal_px],
            [0, 1 / focal_px, -centre[1] / focal_px],
            [0, 0, 1],
        ]
    )
    m = k_inv @ to_px
    m = m * (2 / (np.linalg.norm(m[:, 0]) + np.linalg.norm(m[:, 1])))
    if m[2, 2] < 0:
        m = -m
    r3 = np.cross(m[:, 0], m[:, 1])
    u, _, vt = np.linalg.svd(np.column_stack([m[:, 0], m[:, 1], r3]))
    rotation = u @ np.diag([1.0, 1.0, float(np.sign(np.linalg.det(u @ vt)))]) @ vt
    return Pose(rotation, m[:, 2], focal_px, centre)


def focal_from_homography(to_px: Array, centre: Array) -> float | None:
    """Focal length, px, from one plane's homography: square pixels, known centre.

    The two conditions on the image of the absolute conic (Zhang 2000, equations 3 and 4),
    by least squares. None where the plane lies too square to the axis to tell.
    """
    shift = np.array([[1, 0, -centre[0]], [0, 1, -centre[1]], [0, 0, 1]])
    (a, b, c) = (shift @ to_px)[:, :2]
    left = np.array([c[0] * c[1], c[0] ** 2 - c[1] ** 2])
    right = -np.array(
        [a[0] * a[1] + b[0] * b[1], a[0] ** 2 + b[0] ** 2 - a[1] ** 2 - b[1] ** 2]
    )
    bottom = float(left @ left)
    squared = float(left @ right) / bottom if bottom > 0 else -1.0
    return float(np.sqrt(squared)) if squared > 0 else None
