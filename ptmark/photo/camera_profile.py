"""What is known of one camera's lens from a calibration, kept for its next photos.

A profile belongs to a make, model, lens and focal length as EXIF names them, and to uncropped
pictures. The profiles lie as small JSON files in ``cameras`` of the user's folder.
"""

import json
import math
from dataclasses import asdict, dataclass, fields
from pathlib import Path
from typing import Any

from ptmark.errors import PhotoError
from ptmark.files import write_whole
from ptmark.photo.camera import Camera
from ptmark.places import user_folder

__all__ = [
    "CameraProfile",
    "load_profiles",
    "profile_for",
    "profiles_folder",
    "remove_profile",
    "save_profile",
]

# EXIF rounds focal lengths; a zoom step changes them by more than this. Common practice, no
# source.
_SAME_FOCAL = 0.005
_SAME_SHAPE = 0.005
_SIZE_LIMIT = 100_000


@dataclass(frozen=True, slots=True, kw_only=True)
class CameraProfile:
    """A calibrated lens.

    Attributes
    ----------
    name : str
        File name without its ending.
    make, model, lens : str
    focal_mm, focal_35mm_mm, digital_zoom : float or None
        As EXIF told them of the photos it was made from.
    long_px, short_px : int
        Sides of those photos.
    focal_px, focal_rel_u : float
        Focal length of a picture of that size, and its relative standard uncertainty.
    centre_u : float
        How far the optical centre may lie from the picture's middle about each axis, standard
        uncertainty in units of the diagonal; the offset that was found is in it.
    kappa, kappa_2, kappa_u : float
        Radial terms as in `ptmark.scale.plane.Lens`, r in units of half the diagonal, and the
        standard uncertainty of both together, as one of ``kappa``.
    photos : int
        How many photos it was made from.
    residual_px : float
        Root mean square misfit of their points.
    made : str
        Day, ISO 8601.
    """

    name: str
    make: str
    model: str
    lens: str
    focal_mm: float | None
    focal_35mm_mm: float | None
    digital_zoom: float | None
    long_px: int
    short_px: int
    focal_px: float
    focal_rel_u: float
    centre_u: float
    kappa: float
    kappa_2: float
    kappa_u: float
    photos: int
    residual_px: float
    made: str

    def fits(self, camera: Camera, width: int, height: int) -> bool:
        """Whether a photo of this size, px, was taken by this camera at this focal length."""
        long, short = max(width, height), min(width, height)
        return (
            (self.make, self.model, self.lens) == (camera.make, camera.model, camera.lens)
            and _alike(self.focal_mm, camera.focal_mm)
            and _alike(self.focal_35mm_mm, camera.focal_35mm_mm)
            and _alike(self.digital_zoom or 1.0, camera.digital_zoom or 1.0)
            and abs(math.log(long / short * self.short_px / self.long_px)) < _SAME_SHAPE
        )

    def focal_px_at(self, width: int, height: int) -> float:
        """Focal length, px, of a whole picture of another size."""
        return self.focal_px * max(width, height) / self.long_px

    def to_json(self) -> dict[str, Any]:
        """Plain data, as a file and a record keep it."""
        return asdict(self)

    @classmethod
    def from_json(cls, data: object) -> "CameraProfile":
        """Rebuild a profile; ValueError or TypeError where a member does not fit its kind."""
        return cls(**_checked(data))


def profiles_folder() -> Path:
    """Folder of the user's camera profiles; not created here."""
    return user_folder() / "cameras"


def load_profiles() -> list[CameraProfile]:
    """All profiles by name.

    Raises
    ------
    PhotoError
        If a file there is no camera profile; says which, and the mend.
    """
    folder = profiles_folder()
    return [_load(path) for path in sorted(folder.glob("*.json"))] if folder.is_dir() else []


def profile_for(camera: Camera, width: int, height: int) -> CameraProfile | None:
    """The profile that fits a photo, the newest where several do; None where none does.

    A damaged profile is passed over: it must not keep a photo from opening.
    """
    if not camera.make and not camera.model:
        return None
    folder, found = profiles_folder(), []
    for path in sorted(folder.glob("*.json")) if folder.is_dir() else []:
        try:
            one = _load(path)
        except PhotoError:
            continue
        if one.fits(camera, width, height):
            found.append(one)
    return max(found, key=lambda one: one.made, default=None)


def save_profile(profile: CameraProfile) -> Path:
    """Keep a profile under its name, in place of an earlier one; gives the file.

    Raises
    ------
    PhotoError
        If the name cannot be a file's, or the file cannot be written.
    """
    path = _path(profile.name)
    text = json.dumps(profile.to_json(), indent=1, ensure_ascii=False) + "\n"
    try:
        write_whole(path, text.encode())
    except OSError as exc:
        raise PhotoError(
            f"cannot keep the camera profile: {exc.strerror}",
            where=str(path),
            mend="make room there, or set PTMARK_HOME to a folder that can be written to",
        ) from exc
    return path


def remove_profile(name: str) -> None:
    """Delete a profile; PhotoError where there is none of that name."""
    path = _path(name)
    try:
        path.unlink()
    except OSError as exc:
        raise PhotoError(
            f"no camera profile '{name}'", where=str(path.parent), mend="ptmark camera list"
        ) from exc


def _alike(one: float | None, other: float | None) -> bool:
    if one is None or other is None:
        return one is other
    return abs(math.log(one / other)) < _SAME_FOCAL


def _path(name: str) -> Path:
    if not name or not all(c.isalnum() or c in " -_." for c in name) or name[0] in ". ":
        raise PhotoError(
            f"'{name}' cannot be a profile's name", mend="use letters, figures and hyphens"
        )
    return profiles_folder() / f"{name}.json"


def _load(path: Path) -> CameraProfile:
    try:
        data = json.loads(path.read_bytes()[:_SIZE_LIMIT])
        return CameraProfile(**(_checked(data) | {"name": path.stem}))
    except (OSError, ValueError, TypeError) as exc:
        raise PhotoError(
            f"this is no camera profile: {exc}",
            where=str(path),
            mend="remove it, and calibrate the camera again",
        ) from exc


def _checked(data: object) -> dict[str, Any]:
    """The members of a profile; ValueError or TypeError where one does not fit its kind."""
    if not isinstance(data, dict):
        raise TypeError("not a JSON object")
    kept: dict[str, Any] = {}
    for member in fields(CameraProfile):
        value = data.get(member.name)
        may_miss = member.name in {"focal_mm", "focal_35mm_mm", "digital_zoom"}
        if member.type is str:
            fit = isinstance(value, str)
        elif value is None:
            fit = may_miss
        else:
            fit = isinstance(value, (int, float)) and not isinstance(value, bool)
            fit = fit and math.isfinite(value)
        if not fit:
            raise ValueError(f"'{member.name}' is {value!r}")
        kept[member.name] = value
    sizes = ("long_px", "short_px", "focal_px", "focal_rel_u", "centre_u", "kappa_u")
    for name in sizes:
        if kept[name] <= 0:
            raise ValueError(f"'{name}' must be positive")
    if max(abs(kept["kappa"]), abs(kept["kappa_2"])) > 1:
        raise ValueError("a radial term beyond 1")
    return kept
