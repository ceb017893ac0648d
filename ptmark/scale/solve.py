"""From a scale reference to a `SurfaceMap`.

Card and rectangle: the plane's pose is fitted with what is known of the camera. Lines: see
`ptmark.scale.lines`.
"""

from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from ptmark.errors import ScaleError
from ptmark.scale.card import CHECK_MM, FoundCard, find_card, marker_corners_mm
from ptmark.scale.checks import check_length, check_points, check_scale, clockwise_corners
from ptmark.scale.fit import PlaneFit, Priors, fit_plane
from ptmark.scale.lines import PICK_U_PX, SIZE_U_MM, camera_priors, solve_line, solve_lines
from ptmark.scale.plane import Lens, Pose, fit_homography, focal_from_homography
from ptmark.scale.plane import pose_from_homography
from ptmark.scale.reference import (
    CardReference,
    LineReference,
    LinesReference,
    RectangleReference,
    Reference,
)
from ptmark.scale.surface import SurfaceMap

if TYPE_CHECKING:
    from ptmark.photo import Photo

__all__ = ["solve"]

Array = npt.NDArray[np.float64]


# Printed size without a measured check length: laser and ink printers keep 0.3 % of the length
# asked for (rectangular). Common practice, no source.
PRINT_U = 0.003 / np.sqrt(3)
# A calliper reading of the check length: graduation 0.05 mm, rectangular half-width.
CALLIPER_U = 0.05 / np.sqrt(3) / CHECK_MM
# Ink spreads: each edge of a printed square may lie this far out. Common practice, no source.
SPREAD_U_MM = 0.03
MAX_TILT_DEG = 65.0
# Known to a few percent the focal length is worth showing a working distance for.
FOCAL_KNOWN = 0.1


def solve(reference: Reference, photo: "Photo") -> SurfaceMap:
    """Make the map of a reference.

    Parameters
    ----------
    reference : Reference
        Points in px of the upright photo, lengths in mm.
    photo : Photo
        Its pixels are looked at for the card only.

    Raises
    ------
    ScaleError
        If the card is not found, or the picks or lengths are degenerate: coincident,
        collinear, crossing, outside the photo, no numbers, an absurd scale, or sides that
        contradict the rectangle as seen.
    """
    if isinstance(reference, CardReference):
        return _solve_card(reference, photo)
    if isinstance(reference, RectangleReference):
        return _solve_rectangle(reference, photo)
    if isinstance(reference, LinesReference):
        return solve_lines(reference, photo)
    if isinstance(reference, LineReference):
        return solve_line(reference, photo)
    raise ScaleError(f"{type(reference).__name__} is no scale reference", where="scale")


def _solve_card(reference: CardReference, photo: "Photo") -> SurfaceMap:
    found = find_card(photo)
    if found is None:
        raise ScaleError(
            "no scale card found",
            where=str(getattr(photo.info, "path", "")),
            mend="lay the card flat, unshaded and whole in the picture, or pick a rectangle "
            "or a line of known length",
        )
    correction = 1.0
    if reference.check_mm is not None:
        check_length(reference.check_mm, "the check length")
        correction = reference.check_mm / CHECK_MM
        if abs(correction - 1) > 0.1:
            raise ScaleError(
                f"a check length of {reference.check_mm:g} mm, where {CHECK_MM:g} mm is printed",
                where="scale",
                mend="measure the check length again, in mm",
            )
    plane = np.vstack([marker_corners_mm(i) for i in found.ids]) * correction
    outward = np.tile([[-1.0, -1.0], [1.0, -1.0], [1.0, 1.0], [-1.0, 1.0]], (len(found.ids), 1))
    seen, u_px = found.corners_px.reshape(-1, 2), found.u_px.ravel()
    size_u = PRINT_U if reference.check_mm is None else CALLIPER_U
    fit = fit_plane(
        seen,
        u_px,
        lambda own: plane + own[0] * outward,
        _start(seen, plane, photo),
        camera_priors(photo, extra_u=(SPREAD_U_MM,)),
        Lens.of_picture(photo.info.width, photo.info.height),
        robust=True,
        perturbed=(
            lambda _own: plane * [1 + size_u, 1],
            lambda _own: plane * [1, 1 + size_u],
        ),
    )
    if fit.kept.sum() < 6:
        raise ScaleError(
            "the card's markers contradict each other",
            where="scale",
            mend="lay the card flat and uncovered, or pick a rectangle by hand",
        )
    return _surface(fit, "card", seen, u_px, _card_cautions(found, fit))


def _card_cautions(found: FoundCard, fit: PlaneFit) -> tuple[str, ...]:
    says = []
    missing = 4 - len(found.ids)
    if missing:
        says.append(
            f"{missing} of the card's 4 markers not seen: the map is less sure away from the "
            "others. Uncover the card and photograph again where it matters"
        )
    dropped = int((~fit.kept).sum())
    if dropped:
        says.append(
            f"{dropped} of {len(fit.kept)} marker corners covered or out of place: left out"
        )
    return tuple(says)


def _solve_rectangle(reference: RectangleReference, photo: "Photo") -> SurfaceMap:
    check_length(reference.width_mm, "a width")
    check_length(reference.height_mm, "a height")
    corners, turned = clockwise_corners(check_points(reference.corners_px, photo))
    width, height = reference.width_mm, reference.height_mm
    side = (corners[1] - corners[0], corners[2] - corners[1])
    check_scale(width, float(np.hypot(*side[0])))
    check_scale(height, float(np.hypot(*side[1])))
    plane = np.array([[0.0, 0.0], [width, 0.0], [width, height], [0.0, height]])
    u_px = np.full(4, PICK_U_PX)
    fit = fit_plane(
        corners,
        u_px,
        lambda _own: plane,
        _start(corners, plane, photo),
        camera_priors(photo),
        Lens.of_picture(photo.info.width, photo.info.height),
        perturbed=(
            lambda _own: plane * [1 + SIZE_U_MM / width, 1],
            lambda _own: plane * [1, 1 + SIZE_U_MM / height],
        ),
    )
    _check_rectangle(fit, width, height)
    cautions = (
        ("corners picked anticlockwise: taken clockwise from the first",) if turned else ()
    )
    return _surface(fit, "rectangle", corners, u_px, cautions)


def _check_rectangle(fit: PlaneFit, width: float, height: float) -> None:
    """Refuse sides that no likely view of such a rectangle would show."""
    if fit.pose.tilt_deg > MAX_TILT_DEG or fit.chi2 > 60:
        raise ScaleError(
            f"{width:g} x {height:g} mm contradicts the rectangle as seen",
            where="scale",
            mend="check the two sides: width runs from the first corner to the second",
        )


def _start(seen: Array, plane: Array, photo: "Photo") -> Pose:
    """Pose to start from, of the plain homography of the points."""
    to_px = fit_homography(plane, seen)
    lens = Lens.of_picture(photo.info.width, photo.info.height)
    focal = photo.info.focal_px
    if focal is None:
        known = camera_priors(photo).focal_px
        guess = focal_from_homography(to_px, np.asarray(lens.centre))
        focal = known if guess is None else float(np.clip(guess, known / 2.5, known * 2.5))
    return pose_from_homography(to_px, focal, np.asarray(lens.centre))


def _surface(
    fit: PlaneFit, name: str, seen: Array, u_px: Array, cautions: tuple[str, ...]
) -> SurfaceMap:
    pose = fit.pose
    known = fit.log_focal_u < FOCAL_KNOWN
    misfit = fit.residuals_px[fit.kept]
    return SurfaceMap(
        h=pose.to_mm(),
        covariance=fit.covariance,
        reference=name,
        reference_px=seen,
        residual_px=float(np.sqrt((misfit**2).sum(axis=1).mean())),
        tilt_deg=pose.tilt_deg,
        working_distance_mm=pose.distance_mm if known else None,
        focal_px=pose.focal_px if known else None,
        camera_mm=pose.camera_mm,
        camera_height_rel_u=fit.height_rel_u,
        lens=fit.lens,
        cautions=cautions,
    )
