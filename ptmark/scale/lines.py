"""One or two lines of known length as a scale.

One line fixes scale along itself but not tilt; two at right angles tell how much the surface
is foreshortened but not to which side it leans. What they leave open is taken from how a
camera is held by hand, and stays in the budget as "tilt".
"""

from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from ptmark.errors import ScaleError
from ptmark.scale.checks import check_length, check_line, check_points
from ptmark.scale.fit import PlaneFit, fit_plane
from ptmark.scale.line_poses import leaning_maps, leaning_pose, turn_to, upright_pose
from ptmark.scale.maps import (
    PICK_U_PX,
    SIZE_U_MM,
    TILT_U_DEG,
    camera_priors,
    known_lens,
    map_of,
)
from ptmark.scale.plane import Lens, Pose, apply_homography, rotation_from_vector
from ptmark.scale.problem import Priors, Problem, State
from ptmark.scale.rule import Reading, fit_rule, read_rule, tells_plane
from ptmark.scale.surface import Alternative, SurfaceMap

if TYPE_CHECKING:
    from ptmark.photo import Photo
    from ptmark.scale.reference import LineReference, LinesReference

__all__ = ["solve_line", "solve_lines"]

Array = npt.NDArray[np.float64]

LINE_CAUTION = (
    "one line fixes the scale but not the tilt, which is taken as less than 20 degrees: "
    "lengths away from it, and lengths along the tilt, are less sure. Take the photo from "
    "straight above, or lay a card or a rectangle beside the indications"
)
FOCAL_CAUTION = (
    "the strokes tell the tilt only with the focal length, which is not known: lengths away "
    "from the rule are less sure. Use the photo as the camera wrote it, take it from straight "
    "above, or lay a card beside the indications"
)
UNREAD_CAUTION = (
    "no graduations could be read along the line: its length is taken as typed. Check it "
    "against the numerals; pick two strokes of a rule where it is sharp, evenly lit and not "
    "worn, or lay a card beside it"
)
NOT_AS_TAKEN = (
    "the picture has not the size that its camera wrote: it was resized, cropped or stretched, "
    "and lengths across a line may be wrong by more than their uncertainty. Use the photo as "
    "the camera wrote it, or lay a card beside the indications"
)
NO_SHAPE_OF_CAMERAS = (
    "the picture has not the shape of those that cameras write: it looks cropped or stretched, "
    "and lengths across a line may be wrong by more than their uncertainty. Use the photo as "
    "the camera wrote it, or lay a card beside the indications"
)
# Graduations lie a rule's thickness over the surface, 0 to 1 mm (rectangular), which is not
# corrected: the second moment about 0. Common practice of rule makers, no source.
THICK_U_MM = 1.0 / np.sqrt(3)
# Beyond this a camera is not held square by eye: lengths by one that is taken so are off by
# more than they state, and a rule that shows so much must tell all of it.
MOST_SQUARE_DEG = 2 * TILT_U_DEG
# Long side over short of the pictures of cameras and phones. Common practice, no source.
SHAPES = (1.0, 5 / 4, 4 / 3, 3 / 2, 16 / 10, 16 / 9, 18 / 9, 19.5 / 9, 20 / 9)
SAME_SHAPE = 0.008
LINES_CAUTION = "two lines tell the tilt faintly: a card or a rectangle is surer"


def solve_line(reference: "LineReference", photo: "Photo") -> SurfaceMap:
    """Map of one line: x along it, origin at its first end.

    Where the line runs along a graduated rule, the rule reads itself and tells its plane.
    Otherwise the tilt is unknown: nine poses about the upright one (a three-point
    Gauss-Hermite rule in each of two tilts, exact to the fifth degree) that keep the line's
    length are the alternatives of the map, so that both the slope of scale away from the line
    and the foreshortening, which has no first-order term, enter the budget.

    Raises
    ------
    ScaleError
        If the line is degenerate, or a rule under it shows another length.
    """
    check_length(reference.length_mm, "a line")
    ends = check_points(reference.ends_px, photo)
    check_line(ends, reference.length_mm)
    lens = known_lens(photo)
    priors = camera_priors(photo, np.radians(TILT_U_DEG))
    start = upright_pose(ends, reference.length_mm, priors.focal_px, lens)
    plane = np.array([[0.0, 0.0], [reference.length_mm, 0.0]])
    reading = read_rule(photo, ends, reference.length_mm)
    if reading is not None:
        made = _of_strokes(reading, photo, ends, plane, priors)
        if made is not None:
            return replace(made, reading=reading.says, lying_u_mm=THICK_U_MM)
    made = _of_length(ends, reference.length_mm, priors, start, lens, reading)
    says = (*made.cautions, *_of_size(photo))
    return replace(made, cautions=says, lying_u_mm=THICK_U_MM)


def _of_strokes(
    reading: Reading, photo: "Photo", ends: Array, plane: Array, priors: Priors
) -> SurfaceMap | None:
    """Map of a rule whose strokes tell its plane; None where they do not.

    Where they tell it but for the focal length, which trades for tilt, the map is that of the
    likeliest focal length, and those of a three-point Gauss-Hermite rule are its alternatives.

    Raises
    ------
    ScaleError
        If they show that the camera is not held square, but not how it is.
    """
    lens = known_lens(photo)

    def start(focal_px: float, normal: Array | None) -> Pose:
        upright = upright_pose(ends, float(plane[1, 0]), focal_px, lens)
        if normal is None:
            return upright
        return leaning_pose(ends, plane, upright, turn_to(normal))

    fit = fit_rule(reading, photo, start)
    least_tilt = fit.pose.tilt_deg - np.degrees(fit.turn_u)
    says = (*_of_rule(reading), *_of_size(photo))
    if reading.graduation is not None or least_tilt > TILT_U_DEG:
        if tells_plane(fit):
            return map_of(fit, "line", ends, says)
        off = np.sqrt(3) * priors.log_focal_u
        nodes = [priors.focal_px * float(np.exp(one)) for one in (0.0, -off, off)]
        best, *rest = [fit_rule(reading, photo, start, focal_px) for focal_px in nodes]
        if tells_plane(best):
            others = tuple(Alternative(1 / 6, one.pose.to_mm()) for one in rest)
            best = replace(best, height_rel_u=fit.height_rel_u, evidence=fit.evidence)
            says = (FOCAL_CAUTION, *says)
            return map_of(best, "line", ends, says, {"tilt": others}, tilt_measured=False)
    if least_tilt > MOST_SQUARE_DEG:
        raise ScaleError(
            f"the rule looks tilted by some {fit.pose.tilt_deg:.0f} degrees, and its strokes "
            "tell that too faintly to measure by",
            where="scale",
            mend="take the photo from straight above, or lay a card or a rectangle beside the "
            "indications",
        )
    return None


def _of_size(photo: "Photo") -> tuple[str, ...]:
    """That the picture is not as its camera wrote it, by its EXIF data or else its shape."""
    info = photo.info
    if not info.as_taken:
        return (NOT_AS_TAKEN,)
    if info.focal_px is not None:
        return ()
    shape = max(info.width, info.height) / min(info.width, info.height)
    usual = any(abs(shape / one - 1) < SAME_SHAPE for one in SHAPES)
    return () if usual else (NO_SHAPE_OF_CAMERAS,)


def _of_length(
    ends: Array,
    length_mm: float,
    priors: Priors,
    start: Pose,
    lens: Lens,
    reading: Reading | None,
) -> SurfaceMap:
    """Map of a line of which nothing but its length is known."""
    plane = np.array([[0.0, 0.0], [length_mm, 0.0]])
    longer = plane * (1 + SIZE_U_MM / length_mm)
    problem = Problem(ends, np.full(2, PICK_U_PX), lambda _own: plane, priors, lens)
    fit = fit_plane(
        problem, State(start, priors.kappa, np.zeros(0)), perturbed=(lambda _own: longer,)
    )
    linear = {name: part for name, part in fit.covariance.items() if name != "tilt"}
    alternatives = {"tilt": leaning_maps(ends, plane, fit.pose)}
    made = map_of(
        replace(fit, covariance=linear),
        "line",
        ends,
        (LINE_CAUTION, *_of_rule(reading)),
        alternatives,
        tilt_measured=False,
    )
    return made if reading is None else replace(made, reading=reading.says)


def _of_rule(reading: Reading | None) -> tuple[str, ...]:
    """What to know of the length, by what a rule under the line shows."""
    if reading is None or reading.graduation is None:
        return (UNREAD_CAUTION,)
    return reading.cautions


def solve_lines(reference: "LinesReference", photo: "Photo") -> SurfaceMap:
    """Map of two lines at right angles: x along the first, origin at its first end.

    Their lengths and right angle tell the foreshortening; which side leans away is told only
    by perspective, faintly. Both leanings are fitted; the likelier is the map, the other its
    alternative, weighted by likelihood.

    Raises
    ------
    ScaleError
        If a line is degenerate, or the two run alike.
    """
    check_length(reference.first_mm, "the first line")
    check_length(reference.second_mm, "the second line")
    first = check_points(reference.first_px, photo)
    second = check_points(reference.second_px, photo)
    check_line(first, reference.first_mm, "the first line")
    check_line(second, reference.second_mm, "the second line")
    a, b = first[1] - first[0], second[1] - second[0]
    sine = float((a[0] * b[1] - a[1] * b[0]) / (np.hypot(*a) * np.hypot(*b)))
    if abs(sine) < 0.5:
        raise ScaleError(
            f"the lines meet at {np.degrees(np.arcsin(abs(sine))):.0f} degrees as seen",
            where="scale",
            mend="take two lines at right angles on the part",
        )
    lens = known_lens(photo)
    priors = camera_priors(photo, np.radians(TILT_U_DEG), (1e6, 1e6))
    up = np.sign(sine)
    lengths = np.array([reference.first_mm, reference.second_mm])

    def model(own: Array, sizes: Array = lengths) -> Array:
        return np.array([[0.0, 0.0], [sizes[0], 0.0], own, [own[0], own[1] + up * sizes[1]]])

    points = np.vstack([first, second])
    upright = upright_pose(first, reference.first_mm, priors.focal_px, lens)
    problem = Problem(points, np.full(4, PICK_U_PX), model, priors, lens)
    perturbed = (
        lambda own: model(own, lengths + np.array([SIZE_U_MM, 0.0])),
        lambda own: model(own, lengths + np.array([0.0, SIZE_U_MM])),
    )
    fits = []
    for lean in ((0.3, 0.0), (-0.3, 0.0), (0.0, 0.3), (0.0, -0.3)):
        turned = rotation_from_vector(np.array([*lean, 0.0])) @ upright.rotation
        start = Pose(turned, upright.translation, upright.focal_px, upright.centre)
        own = apply_homography(start.to_mm(), second[:1])[0]
        fits.append(fit_plane(problem, State(start, priors.kappa, own), perturbed=perturbed))
    best, *rest = sorted(fits, key=lambda fit: fit.chi2)
    alternatives = _other_leaning(best, rest)
    return map_of(
        best,
        "two lines",
        points,
        (LINES_CAUTION, *_of_size(photo)),
        alternatives,
        tilt_measured=False,
    )


def _other_leaning(best: PlaneFit, rest: list[PlaneFit]) -> dict[str, tuple[Alternative, ...]]:
    """The likeliest of the other minima that leans another way, if any, by its likelihood."""
    for fit in rest:
        apart = np.hypot(*(fit.pose.rotation[2, :2] - best.pose.rotation[2, :2]))
        if apart > np.radians(1.0):
            likelihood = float(np.exp(-(fit.chi2 - best.chi2) / 2))
            weight = likelihood / (1 + likelihood)
            return {"tilt": (Alternative(weight, fit.pose.to_mm()),)}
    return {}
