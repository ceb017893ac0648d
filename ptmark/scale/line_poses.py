"""Poses of a plane by a line of known length on it: held square, or leaning."""

import numpy as np
import numpy.typing as npt

from ptmark.scale.maps import TILT_U_DEG
from ptmark.scale.plane import Lens, Pose, rotation_from_vector
from ptmark.scale.surface import Alternative

__all__ = ["leaning_maps", "leaning_pose", "turn_to", "upright_pose"]

Array = npt.NDArray[np.float64]

# A plane that leans more to begin with could have its horizon within a wide picture.
MOST_LEANING = np.radians(50.0)


def upright_pose(ends: Array, length_mm: float, focal: float, lens: Lens) -> Pose:
    """Camera square to the surface, x along the line."""
    along = ends[1] - ends[0]
    angle = float(np.arctan2(along[1], along[0]))
    depth = focal * length_mm / float(np.hypot(*along))
    centre = np.asarray(lens.centre)
    place = np.append((ends[0] - centre) * depth / focal, depth)
    return Pose(rotation_from_vector(np.array([0.0, 0.0, angle])), place, focal, centre)


def leaning_maps(ends: Array, plane: Array, upright: Pose) -> tuple[Alternative, ...]:
    """Maps of cameras held square by eye, about one that is, with the weights of the nodes."""
    nodes = ((-np.sqrt(3), 1 / 6), (0.0, 2 / 3), (np.sqrt(3), 1 / 6))
    tilt = np.radians(TILT_U_DEG)
    return tuple(
        Alternative(
            wx * wy, leaning_pose(ends, plane, upright, np.array([nx, ny, 0.0]) * tilt).to_mm()
        )
        for nx, wx in nodes
        for ny, wy in nodes
        if nx or ny
    )


def turn_to(normal: Array) -> Array:
    """The turn, as a vector, that takes the optical axis to a unit normal, or towards it."""
    axis = np.array([-normal[1], normal[0], 0.0])
    sine = float(np.hypot(normal[0], normal[1]))
    angle = min(float(np.arctan2(sine, normal[2])), MOST_LEANING)
    return np.asarray(axis * angle / sine) if sine else axis


def leaning_pose(ends: Array, plane: Array, upright: Pose, turn: Array) -> Pose:
    """Pose of the leaning plane whose line ends are seen at ``ends``."""
    rotation = rotation_from_vector(turn) @ upright.rotation
    rays = np.column_stack([(ends - upright.centre) / upright.focal_px, np.ones(2)])
    normal = rotation[:, 2]
    feet = rays / (rays @ normal)[:, None]  # where the rays meet the plane at unit height
    height = float(np.hypot(*(plane[1] - plane[0]))) / float(np.linalg.norm(feet[1] - feet[0]))
    seen = height * (feet - feet[0]) @ rotation[:, :2]
    angle = float(np.arctan2(seen[1, 1], seen[1, 0]))
    rotation = rotation @ rotation_from_vector(np.array([0.0, 0.0, angle]))
    return Pose(rotation, height * feet[0], upright.focal_px, upright.centre)
