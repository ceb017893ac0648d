"""A camera profile from photos of a calibration grid or of scale cards."""

import re
from collections.abc import Callable, Iterable, Sequence
from datetime import date
from pathlib import Path

import numpy as np

from ptmark.errors import ScaleError
from ptmark.photo import Camera, CameraProfile, Photo, PhotoInfo
from ptmark.scale.calibrate import LensFit, View, fit_lens
from ptmark.scale.calibration_grid import GRID, find_pattern

__all__ = ["calibrate_camera", "profile_of"]

# What a calibration on one day does not show: focusing and stabilising move the focal length
# by about one percent and the radial terms by some thousandths. Common practice, no source.
REFOCUS_U, RADIAL_DRIFT_U = 0.01, 0.002


def calibrate_camera(
    photos: Iterable[Photo],
    *,
    name: str = "",
    grid: tuple[int, int] = GRID,
    tell: Callable[[Path, bool], None] = lambda _path, _found: None,
) -> CameraProfile:
    """Make the profile of the one camera that took these photos; it is not kept here.

    Parameters
    ----------
    photos : iterable of Photo
        Taken one at a time; those that show no pattern are passed over.
    name : str
        Of the profile; by default from make, model and focal length.
    grid : (int, int)
        Inner corners of the chessboard, along and across.
    tell : callable
        Told of each photo whether a pattern was found in it.

    Raises
    ------
    ScaleError
        If the photos do not tell which camera took them, are of several cameras, zooms or
        sizes, or do not tell the lens (see `fit_lens`).
    """
    views: list[View] = []
    first: PhotoInfo | None = None
    for photo in photos:
        first = photo.info if first is None else first
        _check_same(first, photo.info)
        view = find_pattern(photo, grid)
        tell(photo.info.path, view is not None)
        if view is not None:
            views.append(_lying(view, photo.info))
    if first is None:
        raise ScaleError("no photos", where="calibration", mend="name the photos of the grid")
    long, short = max(first.width, first.height), min(first.width, first.height)
    fit = fit_lens(views, long, short, first.focal_px)
    return profile_of(fit, first.camera, name, (long, short), len(views))


def profile_of(
    fit: LensFit, camera: Camera, name: str, size: tuple[int, int], photos: int
) -> CameraProfile:
    """The profile of a fit; ``size`` is the pictures' long and short side, px."""
    diagonal = float(np.hypot(*size))
    away = float(np.hypot(*(fit.centre - np.asarray(fit.lens.centre)))) / np.sqrt(2)
    return CameraProfile(
        name=name or _name_of(camera),
        make=camera.make,
        model=camera.model,
        lens=camera.lens,
        focal_mm=camera.focal_mm,
        focal_35mm_mm=camera.focal_35mm_mm,
        digital_zoom=camera.digital_zoom,
        long_px=size[0],
        short_px=size[1],
        focal_px=round(fit.focal_px, 2),
        focal_rel_u=round(float(np.hypot(fit.focal_rel_u, REFOCUS_U)), 6),
        centre_u=round(max(float(np.hypot(away, fit.centre_u_px)) / diagonal, 1e-4), 6),
        kappa=round(fit.lens.kappa, 6),
        kappa_2=round(fit.lens.kappa_2, 6),
        kappa_u=round(float(np.hypot(fit.kappa_u, RADIAL_DRIFT_U)), 6),
        photos=photos,
        residual_px=round(fit.residual_px, 3),
        made=date.today().isoformat(),  # noqa: DTZ011 - the day where the user is
    )


def _check_same(first: PhotoInfo, one: PhotoInfo) -> None:
    """Refuse photos that no one profile could fit."""
    if not (one.camera.make or one.camera.model):
        raise ScaleError(
            "the photo does not tell which camera took it",
            where=one.path.name,
            mend="use the photos as the camera wrote them, not as a messenger sent them",
        )
    size = sorted((one.width, one.height))
    same = (first.camera.make, first.camera.model, first.camera.lens, first.camera.focal_mm)
    other = (one.camera.make, one.camera.model, one.camera.lens, one.camera.focal_mm)
    if same != other or size != sorted((first.width, first.height)):
        raise ScaleError(
            f"another camera, zoom or size than {first.path.name}",
            where=one.path.name,
            mend="calibrate each camera and each zoom on its own",
        )


def _lying(view: View, info: PhotoInfo) -> View:
    """The points with the picture's long side along x; radial terms do not mind the turn."""
    if info.width >= info.height:
        return view
    x, y = view.seen_px.T
    return View(np.column_stack([y, info.width - 1 - x]), view.plane)


def _name_of(camera: Camera) -> str:
    words: Sequence[str] = [camera.make, camera.model]
    if camera.focal_mm is not None:
        words = [*words, f"{camera.focal_mm:g}mm"]
    plain = re.sub(r"[^A-Za-z0-9.]+", "-", " ".join(words)).strip("-.").lower()
    return plain[:80] or "camera"
