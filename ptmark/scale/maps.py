"""What every solver shares: what is known of the camera, and the map of a fit."""

from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from ptmark.scale.fit import PlaneFit, fit_plane
from ptmark.scale.plane import (
    Lens,
    Pose,
    fit_homography,
    focal_from_homography,
    pose_from_homography,
)
from ptmark.scale.problem import CENTRE_U, CROPPED_CENTRE_U, Model, Priors, Problem, State
from ptmark.scale.surface import Alternative, SurfaceMap

if TYPE_CHECKING:
    from ptmark.photo import Photo

__all__ = [
    "FOCAL_KNOWN",
    "PICK_U_PX",
    "SIZE_U_MM",
    "TILT_U_DEG",
    "UNKNOWN_FOCAL_U",
    "camera_priors",
    "fit_even_cropped",
    "known_lens",
    "looks_cropped",
    "map_of",
    "starting_pose",
]

Array = npt.NDArray[np.float64]

# A point picked by hand under a magnifier. Common practice, no source.
PICK_U_PX = 1.2
# A rule's graduations or a plate's sides: within 0.1 mm, rectangular.
SIZE_U_MM = 0.1 / np.sqrt(3)
# A camera held square by eye: about each of two axes. Common practice, no source.
TILT_U_DEG = 10.0
# Focal length by EXIF: rounding, focusing and stabilising change it by some percent; without,
# a phone's main camera (26 mm equivalent) or one of its neighbours. Common practice, no source.
EXIF_FOCAL_U, UNKNOWN_FOCAL_U = 0.03, 0.35
MAIN_CAMERA_MM, FULL_FRAME_DIAGONAL_MM = 26.0, 43.27
CROPPED_CAUTION = (
    "the optical centre is not the picture's middle: it looks cropped, and tilt and working "
    "distance are less sure. Use the photo as the camera wrote it"
)
CROPPED_BY_LINE = (
    "the optical centre is not the picture's middle: it looks cropped or stretched, and "
    "lengths across a line may be wrong by more than their uncertainty. Use the photo as the "
    "camera wrote it, or lay a card beside the indications"
)
# A centre or focal length that moves by this many standard uncertainties is no chance.
_PULL = 2.0
# Known to a tenth the focal length is worth showing a working distance for.
FOCAL_KNOWN = 0.1


def camera_priors(
    photo: "Photo", tilt_u: float | None = None, own_u: tuple[float, ...] = ()
) -> Priors:
    """What is known of the camera before looking at the reference."""
    known, lens = photo.info.calibrated, known_lens(photo)
    if known is not None:
        return Priors(
            known.focal_px_at(photo.info.width, photo.info.height),
            known.focal_rel_u,
            tilt_u,
            own_u,
            known.centre_u,
            lens.kappa,
            known.kappa_u,
        )
    if photo.info.focal_px is not None:
        focal_u = EXIF_FOCAL_U if photo.info.as_taken else UNKNOWN_FOCAL_U
        return Priors(photo.info.focal_px, focal_u, tilt_u, own_u)
    diagonal = float(np.hypot(photo.info.width, photo.info.height))
    focal = diagonal * MAIN_CAMERA_MM / FULL_FRAME_DIAGONAL_MM
    return Priors(focal, UNKNOWN_FOCAL_U, tilt_u, own_u)


def known_lens(photo: "Photo") -> Lens:
    """The lens as its calibration tells it, straight where there is none."""
    lens, known = Lens.of_picture(photo.info.width, photo.info.height), photo.info.calibrated
    return lens if known is None else replace(lens, kappa=known.kappa, kappa_2=known.kappa_2)


def starting_pose(seen: Array, plane: Array, photo: "Photo") -> Pose:
    """Pose to start from, of the plain homography of four or more points."""
    lens, priors = known_lens(photo), camera_priors(photo)
    to_px = fit_homography(plane, lens.undistort(seen))
    centre = np.asarray(lens.centre)
    focal = known = priors.focal_px
    if priors.log_focal_u >= UNKNOWN_FOCAL_U:
        guess = focal_from_homography(to_px, centre)
        focal = known if guess is None else float(np.clip(guess, known / 2.5, known * 2.5))
    return pose_from_homography(to_px, focal, centre)


def fit_even_cropped(
    problem: Problem, start: State, *, robust: bool = False, perturbed: tuple[Model, ...] = ()
) -> PlaneFit:
    """Fit with the camera as it is known, and freely where that cannot be.

    A cropped photo has its optical centre away from its middle, and a focal length in px that
    its EXIF data no longer tell; the fit then pulls at them.
    """
    fit = fit_plane(problem, start, robust=robust, perturbed=perturbed)
    priors = problem.priors
    off_focal = abs(np.log(fit.pose.focal_px / priors.focal_px)) / priors.log_focal_u
    if _off_centre(fit) < _PULL and off_focal < _PULL:
        return fit
    free = replace(priors, centre_u=CROPPED_CENTRE_U, log_focal_u=UNKNOWN_FOCAL_U)
    wider = Problem(problem.points_px, problem.u_px, problem.model, free, problem.lens)
    return fit_plane(wider, start, robust=robust, perturbed=perturbed)


def _off_centre(fit: PlaneFit) -> float:
    """How far the optical centre lies from the picture's middle, in `CENTRE_U`."""
    away = fit.pose.centre - fit.lens.centre
    return float(np.hypot(*away) / (2 * fit.lens.radius_px * CENTRE_U))


def looks_cropped(fit: PlaneFit) -> bool:
    """Whether the optical centre is too far from the picture's middle for chance."""
    return _off_centre(fit) > _PULL


def map_of(
    fit: PlaneFit,
    reference: str,
    seen: Array,
    cautions: tuple[str, ...],
    alternatives: dict[str, tuple[Alternative, ...]] | None = None,
    *,
    tilt_measured: bool = True,
) -> SurfaceMap:
    """The map of a fit; its tilt is told only where the reference measures it."""
    pose, misfit = fit.pose, fit.residuals_px[fit.kept]
    known = tilt_measured and fit.log_focal_u < FOCAL_KNOWN
    if looks_cropped(fit):
        by_line = reference == "line"
        cautions = (*cautions, CROPPED_BY_LINE if by_line else CROPPED_CAUTION)
    return SurfaceMap(
        h=pose.to_mm(),
        covariance=fit.covariance,
        reference=reference,
        reference_px=seen,
        residual_px=float(np.sqrt((misfit**2).sum(axis=1).mean())),
        tilt_deg=pose.tilt_deg if tilt_measured else None,
        working_distance_mm=pose.distance_mm if known else None,
        focal_px=pose.focal_px if known else None,
        camera_mm=pose.camera_mm,
        camera_height_rel_u=fit.height_rel_u,
        view_slope_u=0.0 if tilt_measured else float(np.tan(np.radians(TILT_U_DEG))),
        lens=fit.lens,
        alternatives=alternatives or {},
        cautions=cautions,
        evidence=fit.evidence,
    )
