"""The map of a rectangle of known size, picked by its four corners."""

from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from ptmark.errors import ScaleError
from ptmark.scale.checks import check_length, check_points, check_scale, clockwise_corners
from ptmark.scale.fit import PlaneFit, fit_plane
from ptmark.scale.maps import (
    FOCAL_KNOWN,
    PICK_U_PX,
    SIZE_U_MM,
    camera_priors,
    fit_even_cropped,
    known_lens,
    looks_cropped,
    map_of,
    starting_pose,
)
from ptmark.scale.plane import apply_homography
from ptmark.scale.problem import Problem, State
from ptmark.scale.surface import Alternative, SurfaceMap

if TYPE_CHECKING:
    from ptmark.photo import Photo
    from ptmark.scale.reference import RectangleReference

__all__ = ["solve_rectangle"]

Array = npt.NDArray[np.float64]

# No photo for measuring is taken flatter than this, and five sigma in each of the two
# conditions that a rectangle puts on a camera is no chance.
MAX_TILT_DEG, MAX_CHI2 = 65.0, 50.0
# Sides exchanged have to fit this much worse, in chi-squared (three sigma), to be told apart.
TOLD_APART = 9.0
# Four corners leave two conditions that chance alone fails by more than this, in chi-squared,
# once in a hundred times; one where the focal length is not known.
CHANCE, CHANCE_OF_ONE = 9.2, 6.6
# How far beside a corner is picked, of a side: far more than a pick under the magnifier, and
# less than three corners put the fourth beside in a picture cropped by a third. No source.
BESIDE_OF_SIDE = 0.04
BESIDE = (
    "the four corners contradict each other: one of them was picked beside the rectangle, or "
    "the picture is cropped or stretched. Lengths are as unsure as U says; pick the corners "
    "again under the magnifier, or use the photo as the camera wrote it"
)


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
    plane = _plane(width, height)
    problem, start = _posed(corners, plane, photo)
    fit = fit_even_cropped(
        problem,
        start,
        perturbed=(
            lambda _own: plane * [1 + SIZE_U_MM / width, 1],
            lambda _own: plane * [1, 1 + SIZE_U_MM / height],
        ),
    )
    _check_sides(fit, width, height)
    says = ["corners picked anticlockwise: taken clockwise from the first"] if turned else []
    exchanged = _posed(corners, _plane(height, width), photo)
    chi2 = _chi2(problem, start)
    if width != height and _chi2(*exchanged) < chi2 + TOLD_APART:
        wrong = 100 * (max(width, height) / min(width, height) - 1)
        says.append(
            f"the corners as seen fit {height:g} x {width:g} mm as well as {width:g} x "
            f"{height:g} mm, or better: check that the width runs from the first corner to the "
            f"second. Exchanged, lengths are wrong by some {wrong:.0f} %"
        )
    others: dict[str, tuple[Alternative, ...]] = {}
    chance = CHANCE if problem.priors.log_focal_u < FOCAL_KNOWN else CHANCE_OF_ONE
    if chi2 > chance or looks_cropped(fit):
        says.append(BESIDE)
        others = {"map": _without_each(problem, start)}
    return map_of(fit, "rectangle", corners, tuple(says), others)


def _plane(width: float, height: float) -> Array:
    return np.array([[0.0, 0.0], [width, 0.0], [width, height], [0.0, height]])


def _posed(corners: Array, plane: Array, photo: "Photo") -> tuple[Problem, State]:
    """The equations of corners that lie so on the plane, and where to start."""
    problem = Problem(
        corners,
        np.full(4, PICK_U_PX),
        lambda _own: plane,
        camera_priors(photo),
        known_lens(photo),
    )
    start = starting_pose(corners, plane, photo)
    return problem, State(start, problem.priors.kappa, np.zeros(0))


def _chi2(problem: Problem, start: State) -> float:
    """How badly they fit under the camera as it is known; infinite where no plane does."""
    try:
        return fit_plane(problem, start).chi2
    except ScaleError:
        return np.inf


def _without_each(problem: Problem, start: State) -> tuple[Alternative, ...]:
    """The maps of each three corners, likelier where they put the fourth near its pick."""
    picks, plane = problem.points_px, problem.model(start.own)
    side = float(np.hypot(*(np.roll(picks, -1, axis=0) - picks).T).mean())
    made = []
    for one in range(4):
        try:
            fit = fit_plane(problem.subset(np.arange(4) != one), start)
        except ScaleError:
            continue
        there = fit.lens.distort(apply_homography(fit.pose.to_px(), plane[one : one + 1]))
        away = float(np.hypot(*(there - picks[one])[0])) / side / BESIDE_OF_SIDE
        made.append(Alternative(float(np.exp(-(away**2) / 2)) / 2, fit.pose.to_mm()))
    return tuple(made)


def _check_sides(fit: PlaneFit, width: float, height: float) -> None:
    """Refuse sides that no likely view of such a rectangle would show."""
    if fit.pose.tilt_deg > MAX_TILT_DEG or fit.chi2 > MAX_CHI2:
        raise ScaleError(
            f"{width:g} x {height:g} mm contradicts the rectangle as seen",
            where="scale",
            mend="check the two sides: width runs from the first corner to the second",
        )
