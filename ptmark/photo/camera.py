"""What a picture tells of the camera."""

from dataclasses import dataclass

__all__ = ["Camera"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Camera:
    """What the EXIF data say of the exposure; every field may be None or empty.

    Lengths in mm; ``taken`` is ISO 8601 local time as the camera wrote it, with its offset
    from UTC where it wrote one. ``has_location`` tells that a place is in the file; the place
    itself is never read.
    """

    make: str = ""
    model: str = ""
    lens: str = ""
    taken: str = ""
    focal_mm: float | None = None
    focal_35mm_mm: float | None = None
    digital_zoom: float | None = None
    has_location: bool = False
