"""A decoded picture and what is known of it.

Pixel frame: the upright photo, x right, y down, (0, 0) the centre of the top-left pixel.
"""

import hashlib
import threading
from dataclasses import dataclass, field, replace
from pathlib import Path

import numpy as np
import numpy.typing as npt

from ptmark.errors import PhotoError
from ptmark.photo.camera import Camera
from ptmark.photo.camera_profile import CameraProfile
from ptmark.photo.color import srgb_to_linear

__all__ = ["Photo", "PhotoInfo"]


@dataclass(frozen=True, slots=True, kw_only=True)
class PhotoInfo:
    """A picture's facts, read without decoding its pixels.

    ``width`` and ``height`` are those of the upright picture, px. ``orientation`` is the EXIF
    value 1-8 that the stored pixels needed to stand upright (1 for HEIC, whose decoder has
    turned them already). ``focal_px`` is the focal length in px of the upright full-size
    picture, or None where EXIF does not tell it (from the 35 mm equivalent: diagonal rule,
    CIPA DCG-001). ``as_taken`` is False where EXIF tells another size than the picture has: it
    was resized, cropped or stretched. ``calibrated`` is the profile of its camera, where one
    fits. ``mode`` and
    ``bits`` are those of the file: "1", "L", "LA", "P", "RGB", "RGBA" or "CMYK", and bits a
    channel. ``profile`` names the colour space the file is in. ``frames`` counts the frames or
    pages, of which the first is shown. ``notes`` are whole sentences on what was done to the
    picture that a person should know.
    ``quality`` is that of a JPEG's colour, in the usual scale to 100.
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
    as_taken: bool = True
    camera: Camera = field(default_factory=Camera)
    calibrated: CameraProfile | None = None
    frames: int = 1
    notes: tuple[str, ...] = ()
    quality: float | None = None

    @property
    def megapixels(self) -> float:
        return self.width * self.height / 1e6


class Photo:
    """Upright sRGB pixels with their facts; read-only, and safe to share between threads.

    Attributes
    ----------
    info : PhotoInfo
    rgb : ndarray of shape (H, W, 3), uint8
        sRGB-coded, upright, RGB order, not writeable.
    see_through : ndarray of shape (H, W), uint8, or None
        1 where the file is not opaque, shown over white; None where it is all over.
    """

    def __init__(
        self,
        info: PhotoInfo,
        rgb: npt.NDArray[np.uint8],
        see_through: npt.NDArray[np.uint8] | None = None,
    ) -> None:
        rgb.flags.writeable = False
        self.info = info
        self.rgb = rgb
        self.see_through = see_through
        self._levels: dict[int, npt.NDArray[np.uint8]] = {1: rgb}
        self._lock = threading.Lock()

    def with_lens(self, profile: CameraProfile | None) -> "Photo":
        """The same pixels under another profile of the camera's lens, or none.

        Examples
        --------
        >>> photo = Photo.from_array(np.zeros((2, 3, 3), np.uint8))
        >>> photo.with_lens(None) is photo  # it has none
        True
        """
        if profile == self.info.calibrated:
            return self
        return Photo(replace(self.info, calibrated=profile), self.rgb, self.see_through)

    @classmethod
    def from_array(
        cls, rgb: npt.NDArray[np.uint8], *, name: str = "array", focal_px: float | None = None
    ) -> "Photo":
        """Make a photo of pixels that came from no file.

        Parameters
        ----------
        rgb : ndarray of shape (H, W, 3), uint8
            sRGB-coded, upright; copied.
        name : str
            Stands for the path.
        focal_px : float, px, optional
            Focal length as in `PhotoInfo`.

        Returns
        -------
        Photo
            Its SHA-256 is that of the pixel bytes.

        Raises
        ------
        PhotoError
            If the shape, the type or the size does not fit.

        Examples
        --------
        >>> photo = Photo.from_array(np.zeros((2, 3, 3), np.uint8), name="black")
        >>> photo.info.width, photo.info.height, photo.info.format
        (3, 2, 'array')
        """
        if rgb.ndim != 3 or rgb.shape[2] != 3 or rgb.dtype != np.uint8 or rgb.size == 0:
            raise PhotoError(
                f"pixels must have shape (H, W, 3) and type uint8, got {rgb.shape} {rgb.dtype}",
                where=name,
            )
        own = np.array(rgb, order="C")
        info = PhotoInfo(
            path=Path(name),
            sha256=hashlib.sha256(own.data).hexdigest(),
            bytes=own.nbytes,
            format="array",
            width=own.shape[1],
            height=own.shape[0],
            focal_px=focal_px,
        )
        return cls(info, own)

    def linear(self, box: tuple[int, int, int, int]) -> npt.NDArray[np.float32]:
        """Linear light of a crop, 0 to 1.

        Parameters
        ----------
        box : (x0, y0, x1, y1), px
            Left, top, right and bottom; right and bottom stand outside, as in a slice. What
            reaches beyond the photo is cut off.

        Returns
        -------
        ndarray of shape (h, w, 3), float32
            Pixel (0, 0) of the crop is pixel (max(x0, 0), max(y0, 0)) of the photo.

        Raises
        ------
        PhotoError
            If nothing of the box lies in the photo.
        """
        x0, y0, x1, y1 = box
        crop = self.rgb[max(y0, 0) : max(y1, 0), max(x0, 0) : max(x1, 0)]
        if crop.size == 0:
            raise PhotoError(
                f"the box {box} holds no pixel of the {self.info.width} x {self.info.height} "
                "photo",
                where=str(self.info.path),
            )
        return srgb_to_linear(crop)

    def reduced(self, factor: int) -> npt.NDArray[np.uint8]:
        """Area-reduced level, worked out once and kept.

        Parameters
        ----------
        factor : int
            1, 2, 4 or 8.

        Returns
        -------
        ndarray of shape (ceil(H / factor), ceil(W / factor), 3), uint8
            Each pixel is the mean of ``factor`` × ``factor`` coded pixels (of those there are,
            at the right and bottom border), so the full-size position of a pixel is
            ``x_full = (x + 0.5) * factor - 0.5``. Not writeable.

        Raises
        ------
        PhotoError
            If the factor is another.
        """
        if factor not in (1, 2, 4, 8):
            raise PhotoError(f"a level is reduced by 1, 2, 4 or 8, got {factor}")
        with self._lock:
            level = self._levels.get(factor)
            if level is None:
                level = _area_reduced(self.rgb, factor)
                level.flags.writeable = False
                self._levels[factor] = level
            return level


def _area_reduced(rgb: npt.NDArray[np.uint8], factor: int) -> npt.NDArray[np.uint8]:
    """Block means; the partial blocks at the right and bottom on their own."""
    import cv2

    height, width = rgb.shape[:2]
    rows, columns = height // factor, width // factor
    out = np.empty((-(-height // factor), -(-width // factor), 3), np.uint8)
    for y_in, y_out in _whole_and_rest(rows, factor):
        for x_in, x_out in _whole_and_rest(columns, factor):
            block, target = rgb[y_in, x_in], out[y_out, x_out]
            if block.size:
                size = (target.shape[1], target.shape[0])
                target[...] = cv2.resize(block, size, interpolation=cv2.INTER_AREA)
    return out


def _whole_and_rest(count: int, factor: int) -> tuple[tuple[slice, slice], tuple[slice, slice]]:
    """Where the whole blocks stand before and after reducing, and where what is left."""
    edge = count * factor
    return (slice(0, edge), slice(0, count)), (slice(edge, None), slice(count, None))
