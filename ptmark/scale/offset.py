"""A reference that lies nearer the camera than the surface: a thick card, a card on a step.

The surface lies ``d`` behind the reference's plane and parallel to it. With the camera ``D``
above the reference's plane, a line of sight that meets that plane at ``X`` from the camera's
foot meets the surface at ``X (D + d) / D``: similar triangles. So lengths of the surface read
short by ``d / (D + d)`` in the reference's plane, the opposite of what a crown on it does.
"""

from dataclasses import replace
from math import hypot, isfinite

import numpy as np
import numpy.typing as npt

from ptmark.errors import ScaleError
from ptmark.scale.surface import Alternative, SurfaceMap

__all__ = ["offset_u_mm", "set_back"]

Array = npt.NDArray[np.float64]

# How well a thickness or a step is given: 0.1 mm, or a twentieth of it where that is more.
# Common practice, no source.
GIVEN_U_MM, GIVEN_REL_U = 0.1, 0.05


def offset_u_mm(offset_mm: float) -> float:
    """Standard uncertainty of a given offset, mm; 0 where none is given."""
    return max(GIVEN_U_MM, GIVEN_REL_U * abs(offset_mm)) if offset_mm else 0.0


def _check_offset(offset_mm: float, camera_mm: float) -> None:
    """Refuse an offset that is no number or not well short of the camera (ScaleError)."""
    if not (isfinite(offset_mm) and abs(offset_mm) < 0.5 * camera_mm):
        raise ScaleError(
            f"an offset of {offset_mm:g} mm, where the camera was {camera_mm:.0f} mm away",
            where="scale",
            mend="give how far the reference lies above the surface",
        )


def set_back(surface: SurfaceMap, offset_mm: float) -> SurfaceMap:
    """The map of the plane that lies ``offset_mm`` behind that of the reference.

    The offset's own uncertainty and that of the camera's height enter as "reference": both
    change one factor only, ``1 + d / D`` (JCGM 100:2008, 5.1.2).

    Raises
    ------
    ScaleError
        If the offset is no number, or not well short of the camera.
    """
    if not offset_mm:
        return surface
    foot, height = surface.camera_mm[:2], float(surface.camera_mm[2])
    _check_offset(offset_mm, height)
    ratio = offset_mm / height
    about = _about(foot, 1 + ratio)
    to_h = np.eye(9)
    to_h[:8, :8] = np.kron(about, np.eye(3))[:8, :8]
    covariance = {name: to_h @ part @ to_h.T for name, part in surface.covariance.items()}
    by_factor = (_about(foot, 2.0) - _about(foot, 1.0)) @ surface.h
    slope = np.append(by_factor.ravel()[:8], 0.0)
    factor_u = hypot(offset_u_mm(offset_mm) / height, ratio * surface.camera_height_rel_u)
    own = np.outer(slope, slope) * factor_u**2
    covariance["reference"] = covariance.get("reference", 0.0) + own
    evidence, far = surface.evidence, surface.working_distance_mm
    return replace(
        surface,
        h=about @ surface.h,
        covariance=covariance,
        camera_mm=np.array([*foot, height + offset_mm]),
        lying_u_mm=0.0,
        working_distance_mm=None if far is None else far * (1 + ratio),
        alternatives={
            name: tuple(Alternative(one.weight, about @ one.h) for one in others)
            for name, others in surface.alternatives.items()
        },
        evidence=None if evidence is None else replace(evidence, pull=to_h @ evidence.pull),
    )


def _about(foot: Array, factor: float) -> Array:
    """Scaling about a point of the plane, shape (3, 3)."""
    shift = (1 - factor) * foot
    return np.array([[factor, 0, shift[0]], [0, factor, shift[1]], [0, 0, 1.0]])
