"""Pictures in the PDF: the marked photo, and the unmarked one byte for byte."""

import hashlib
import io
from pathlib import Path

import cv2
import numpy as np
import numpy.typing as npt
from PIL.JpegImagePlugin import JpegImageFile
from reportlab.lib.utils import ImageReader
from reportlab.platypus import Flowable

from ptmark.errors import ReportError
from ptmark.record import Record
from ptmark.report.encoding import encoded

__all__ = ["Picture", "jpeg_picture", "marked_picture", "original_picture", "verified"]

Pixels = npt.NDArray[np.uint8]

# Corners of the upright picture (x right, y up, unit square) that the stored picture's
# lower left, lower right and upper left corners come to, by EXIF orientation.
# Source: Exif 2.32 (CIPA DC-008), tag Orientation: which side row 0 and column 0 stand for.
_TURNS = {
    1: ((0, 0), (1, 0), (0, 1)),
    2: ((1, 0), (0, 0), (1, 1)),
    3: ((1, 1), (0, 1), (1, 0)),
    4: ((0, 1), (1, 1), (0, 0)),
    5: ((1, 1), (1, 0), (0, 1)),
    6: ((0, 1), (0, 0), (1, 1)),
    7: ((0, 0), (0, 1), (1, 0)),
    8: ((1, 0), (1, 1), (0, 0)),
}


class _Jpeg(ImageReader):
    """A JPEG that goes into the file as it is: never decoded, of any size."""

    def _read_image(self, file: io.BytesIO) -> JpegImageFile:
        return JpegImageFile(file)  # `Image.open` refuses photos of a size that is usual here

    def getRGBData(self) -> bytes:  # noqa: N802 - reportlab's name; it takes it as identity
        self._dataA = None
        return bytes(self.fp.getvalue())


class Picture(Flowable):
    """A picture scaled to a width, turned upright by the page's matrix, never re-encoded."""

    def __init__(
        self,
        source: ImageReader,
        size_px: tuple[int, int],
        room: tuple[float, float],
        orientation: int = 1,
    ) -> None:
        super().__init__()
        self._source = source
        self._turn = _TURNS[orientation]
        self.hAlign = "CENTER"
        zoom = min(room[0] / size_px[0], room[1] / size_px[1])
        self.width, self.height = size_px[0] * zoom, size_px[1] * zoom

    def wrap(self, available_width: float, available_height: float) -> tuple[float, float]:
        del available_width, available_height
        return self.width, self.height

    def draw(self) -> None:
        (x0, y0), (x1, y1), (x2, y2) = self._turn
        wide, high = self.width, self.height
        self.canv.saveState()
        self.canv.transform(
            (x1 - x0) * wide,
            (y1 - y0) * high,
            (x2 - x0) * wide,
            (y2 - y0) * high,
            x0 * wide,
            y0 * high,
        )
        self.canv.drawImage(self._source, 0, 0, 1, 1)
        self.canv.restoreState()


def marked_picture(rgb: Pixels, room: tuple[float, float]) -> Picture:
    """The marked photo for print: at most 300 pixels to the inch of the page."""
    zoom = min(1.0, room[0] / 72 * 300 / rgb.shape[1])
    size = (max(1, round(rgb.shape[1] * zoom)), max(1, round(rgb.shape[0] * zoom)))
    shown = cv2.resize(rgb, size, interpolation=cv2.INTER_AREA) if zoom < 1 else rgb
    return jpeg_picture(np.asarray(shown, np.uint8), room)


def jpeg_picture(rgb: Pixels, room: tuple[float, float]) -> Picture:
    """A picture of ours for the page, as JPEG with full colour resolution."""
    size = (rgb.shape[1], rgb.shape[0])
    return Picture(_Jpeg(io.BytesIO(encoded(rgb, ".jpg"))), size, room)


def original_picture(
    record: Record, rgb: Pixels, original: Path | None, room: tuple[float, float]
) -> tuple[Picture, str]:
    """The unmarked photo, and one sentence that says how it is kept in the file.

    Raises
    ------
    ReportError
        If ``original`` cannot be read, or its SHA-256 is not the record's.
    """
    size = (int(record.photo["width"]), int(record.photo["height"]))
    data = None if original is None else verified(original, record.photo["sha256"])
    if data is not None and _plain_jpeg(data):
        says = "The camera's own file is embedded byte for byte"
        turn = int(record.photo.get("orientation", 1))
        if turn != 1:
            says += f"; the page turns it upright (EXIF orientation {turn})"
        return Picture(_Jpeg(io.BytesIO(data)), size, room, turn), f"{says}."
    from PIL import Image

    says = "Its pixels are embedded without loss, upright, as they were measured."
    return Picture(ImageReader(Image.fromarray(rgb)), size, room), says


def verified(path: Path, sha256: str) -> bytes:
    """The file's bytes; ReportError where it cannot be read or is another photo's."""
    try:
        data = path.read_bytes()
    except OSError as exc:
        raise ReportError(
            f"cannot be read ({exc.strerror or exc})",
            where=str(path),
            mend="put the original photo back, or make the report without it",
        ) from exc
    if hashlib.sha256(data).hexdigest() != sha256:
        raise ReportError(
            "is not the photo of this record: its SHA-256 differs",
            where=str(path),
            mend="give the file that was measured",
        )
    return data


def _plain_jpeg(data: bytes) -> bool:
    """Whether PDF viewers show this file as it is: a grey or colour JPEG of 8 bits."""
    if not data.startswith(b"\xff\xd8\xff"):
        return False
    at = 2
    while at + 9 < len(data) and data[at] == 0xFF:
        kind, size = data[at + 1], int.from_bytes(data[at + 2 : at + 4], "big")
        if kind in {0xC0, 0xC1, 0xC2}:  # baseline, extended, progressive Huffman
            return data[at + 4] == 8 and data[at + 9] in {1, 3}
        at += 1 if kind == 0xFF else 2 + size
    return False
