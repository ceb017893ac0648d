"""A decoded picture and what is known of it.

Pixel frame: the upright photo, x right, y down, (0, 0) the centre of the top-left pixel.
"""

from dataclasses import dataclass, field
from pathlib import Path

import numpy as np
import numpy.typing as npt

__all__ = ["Camera", "Photo", "PhotoInfo"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Camera:
    """What the EXIF data say of the exposure; every field may be None or empty.

    Lengths in mm; ``taken`` is ISO 8601 local time as the camera wrote it.
    """

    make: str = ""
    model: str = ""
    lens: str = ""
    taken: str = ""
    focal_mm: float | None = None
    focal_35mm_mm: float | None = None
    digital_zoom: float | None = None
    has_location: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class PhotoInfo:
    """A picture's facts, read without decoding its pixels.

    ``width`` and ``height`` are those of the upright picture, px. ``orientation`` is the EXIF
    value 1-8. ``focal_px`` is the focal length in px of the upright full-size picture, or None
    where EXIF does not tell it (from the 35 mm equivalent: diagonal rule, CIPA DCG-001).
    """

    path: Path
    sha256: str
    bytes: int
    format: str
    width: int
    height: int
    orientation: int = 1
    mode: str = "RGB"
    bits: int = 8
    profile: str = "sRGB"
    focal_px: float | None = None
    camera: Camera = field(default_factory=Camera)

    @property
    def megapixels(self) -> float:
        return self.width * self.height / 1e6


class Photo:
    """Upright sRGB pixels with their facts; read-only.

    Attributes
    ----------
    info : PhotoInfo
    rgb : ndarray of shape (H, W, 3), uint8
        sRGB-coded, upright, RGB order, not writeable.
    """

    def __init__(self, info: PhotoInfo, rgb: npt.NDArray[np.uint8]) -> None:
        rgb.flags.writeable = False
        self.info = info
        self.rgb = rgb
