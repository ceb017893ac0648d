"""A photo's pixels in DICOM: the camera's own JPEG where it may stand as it is."""

import io
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np
import numpy.typing as npt

from ptmark.report.icc import srgb_profile
from ptmark.report.pages.photo import verified

if TYPE_CHECKING:
    from pydicom import Dataset

__all__ = ["put_pixels"]

_JPEG = "ISO_10918_1"  # PS3.3, C.7.6.1.1.5.1


def put_pixels(
    made: "Dataset",
    photo: dict[str, Any],
    rgb: npt.NDArray[np.uint8],
    original: Path | None,
) -> str:
    """Put the picture in, with what tells how to read it; gives the transfer syntax.

    Raises
    ------
    ReportError
        If ``original`` cannot be read, or its SHA-256 is not the record's.
    """
    from pydicom.encaps import encapsulate
    from pydicom.uid import ExplicitVRLittleEndian, JPEGBaseline8Bit

    made.Rows, made.Columns = rgb.shape[:2]
    made.SamplesPerPixel, made.PlanarConfiguration = 3, 0
    made.BitsAllocated = made.BitsStored = 8
    made.HighBit, made.PixelRepresentation = 7, 0
    made.ColorSpace = "SRGB"
    # PS3.3, C.11.15: a profile of the class of input devices.
    made.ICCProfile = srgb_profile()[:12] + b"scnr" + srgb_profile()[16:]
    lossy = photo["format"] in {"JPEG", "HEIC", "WebP", "AVIF"}
    made.LossyImageCompression = "01" if lossy else "00"
    if lossy:
        made.LossyImageCompressionRatio = f"{rgb.size / max(1, photo['bytes']):.4g}"
    if photo["format"] == "JPEG":
        made.LossyImageCompressionMethod = _JPEG
    data = None if original is None else verified(original, photo["sha256"])
    if data is not None and _as_it_is(data, photo):
        made.PhotometricInterpretation = "YBR_FULL_422"
        made.PixelData = encapsulate([data])
        made["PixelData"].VR = "OB"
        return str(JPEGBaseline8Bit)
    made.PhotometricInterpretation = "RGB"
    plain = rgb.tobytes()
    made.PixelData = plain + b"\0" * (len(plain) % 2)
    made["PixelData"].VR = "OB"
    return str(ExplicitVRLittleEndian)


def _as_it_is(data: bytes, photo: dict[str, Any]) -> bool:
    """Whether the file is an upright sRGB baseline JPEG whose colour is half as wide as light.

    PS3.5, 8.2.1 and PS3.3, C.8.12.1.1: of JPEG's colours a visible-light image takes
    YBR_FULL_422.
    """
    from PIL import JpegImagePlugin

    if not data.startswith(b"\xff\xd8\xff") or int(photo.get("orientation") or 1) != 1:
        return False
    if (photo.get("color_profile") or "sRGB") != "sRGB":
        return False
    with JpegImagePlugin.JpegImageFile(io.BytesIO(data)) as file:
        halved = [row[1] for row in file.layer] == [2, 1, 1]
        plain = not file.info.get("progressive") and file.info.get("adobe_transform", 1) == 1
        return bool(file.mode == "RGB" and halved and plain)
