"""The map of a rectangle of known size, picked by its four corners."""

from typing import TYPE_CHECKING

import numpy as np

from ptmark.errors import ScaleError
from ptmark.scale.checks import check_length, check_points, check_scale, clockwise_corners
from ptmark.scale.fit import PlaneFit
from ptmark.scale.maps import (
    PICK_U_PX,
    SIZE_U_MM,
    camera_priors,
    fit_even_cropped,
    known_lens,
    map_of,
    starting_pose,
)
from ptmark.scale.problem import Problem, State
from ptmark.scale.surface import SurfaceMap

if TYPE_CHECKING:
    from ptmark.photo import Photo
    from ptmark.scale.reference import RectangleReference

__all__ = ["solve_rectangle"]

# No photo for measuring is taken flatter than this, and five sigma in each of the two
# conditions that a rectangle puts on a camera is no chance.
MAX_TILT_DEG, MAX_CHI2 = 65.0, 50.0


def solve_rectangle(reference: "RectangleReference", photo: "Photo") -> SurfaceMap:
    """Fit the rectangle's plane: x from the first corner to the second.

    Corners picked anticlockwise are taken clockwise from the same first corner, and said.

    Raises
    ------
    ScaleError
        If the corners or sides are degenerate, or contradict the rectangle as seen.
    """
    check_length(reference.width_mm, "a width")
    check_length(reference.height_mm, "a height")
    corners, turned = clockwise_corners(check_points(reference.corners_px, photo))
    width, height = reference.width_mm, reference.height_mm
    check_scale(width, float(np.hypot(*(corners[1] - corners[0]))))
    check_scale(height, float(np.hypot(*(corners[2] - corners[1]))))
    plane = np.array([[0.0, 0.0], [width, 0.0], [width, height], [0.0, height]])
    problem = Problem(
        corners,
        np.full(4, PICK_U_PX),
        lambda _own: plane,
        camera_priors(photo),
        known_lens(photo),
    )
    fit = fit_even_cropped(
        problem,
        State(starting_pose(corners, plane, photo), problem.priors.kappa, np.zeros(0)),
        perturbed=(
            lambda _own: plane * [1 + SIZE_U_MM / width, 1],
            lambda _own: plane * [1, 1 + SIZE_U_MM / height],
        ),
    )
    _check_sides(fit, width, height)
    said = ("corners picked anticlockwise: taken clockwise from the first",)
    return map_of(fit, "rectangle", corners, said if turned else ())


def _check_sides(fit: PlaneFit, width: float, height: float) -> None:
    """Refuse sides that no likely view of such a rectangle would show."""
    if fit.pose.tilt_deg > MAX_TILT_DEG or fit.chi2 > MAX_CHI2:
        raise ScaleError(
            f"{width:g} x {height:g} mm contradicts the rectangle as seen",
            where="scale",
            mend="check the two sides: width runs from the first corner to the second",
        )
