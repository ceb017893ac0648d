"""Read a file once, tell what it is by its content, and check it; nothing is decoded."""

import errno
import os
import stat
from dataclasses import dataclass
from pathlib import Path

from ptmark.errors import PhotoError
from ptmark.photo import _avif, _heic, _jpeg, _png, _tiff, _webp
from ptmark.photo._exif import Exif, read_exif
from ptmark.photo._found import COPY_AGAIN, Found
from ptmark.photo._ifd import byte_order
from ptmark.photo._to_srgb import Space, of_adobe_rgb, of_codes, of_profile

__all__ = ["File", "check_unchanged", "examine"]

_MOST_BYTES = 2 << 30  # 250 megapixels of 16-bit RGB, with room to spare
_OPENED = "JPEG, PNG, TIFF, WebP, HEIC and AVIF pictures are opened"
_KNOWN = {
    b"GIF8": "a GIF",
    b"BM": "a BMP",
    b"%PDF": "a PDF",
    b"PK\x03\x04": "a ZIP archive",
    b"II+\0": "a BigTIFF",
    b"MM\0+": "a BigTIFF",
}


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class File:
    """A file that was read and checked, not decoded."""

    path: Path
    data: bytes
    state: os.stat_result
    found: Found
    exif: Exif
    space: Space

    @property
    def orientation(self) -> int:
        return 1 if self.found.format == "HEIC" else self.exif.orientation


def examine(path: Path) -> File:
    """Read and check a file; PhotoError where it cannot be opened as a picture."""
    data, state = _read(path)
    found = _look(data)
    exif = read_exif(found.exif)
    return File(
        path=path, data=data, state=state, found=found, exif=exif, space=_space(found, exif)
    )


def _read(path: Path) -> tuple[bytes, os.stat_result]:
    try:
        state = path.stat()
        if stat.S_ISDIR(state.st_mode):
            raise PhotoError("it is a folder", mend="Choose a picture in it")
        if not stat.S_ISREG(state.st_mode):
            raise PhotoError("it is no ordinary file", mend="Choose a picture file")
        if state.st_size > _MOST_BYTES:
            raise PhotoError(
                f"the file has {state.st_size / 2**30:.1f} GiB; at most 2 GiB are opened",
                mend="Save the photo in a smaller form",
            )
        data = path.read_bytes()
    except FileNotFoundError as exc:
        raise PhotoError("there is no such file", mend="Check the name and the folder") from exc
    except PermissionError as exc:
        raise PhotoError(
            "the file may not be read", mend="Give yourself the right to read it"
        ) from exc
    except (OSError, ValueError) as exc:
        if isinstance(exc, OSError) and exc.errno == errno.ELOOP:
            raise PhotoError(
                "it is a link that leads back to itself",
                mend="Open the photo that it should lead to",
            ) from exc
        said = getattr(exc, "strerror", None) or exc
        raise PhotoError(
            f"the file cannot be read: {said}", mend="Check the drive and the name"
        ) from exc
    if not data:
        raise PhotoError("the file is empty", mend=COPY_AGAIN)
    return data, state


def _look(data: bytes) -> Found:
    """Tell the format by the content and read its structure."""
    if data[:3] == b"\xff\xd8\xff":
        return _jpeg.look(data)
    if data[:8] == _png.SIGNATURE:
        return _png.look(data)
    if byte_order(data):
        return _tiff.look(data)
    if data[:4] == b"RIFF" and data[8:12] == b"WEBP":
        return _webp.look(data)
    if _avif.is_avif(data):
        return _avif.look(data)
    if data[4:8] == b"ftyp" and data[8:12] in _heic.BRANDS:
        return _heic.look(data)
    kind = next((name for start, name in _KNOWN.items() if data.startswith(start)), "")
    raise PhotoError(
        f"the file is {kind} file, which is not opened" if kind else "the file is no picture",
        mend=f"{_OPENED}, whatever the file is called",
    )


def _space(found: Found, exif: Exif) -> Space:
    """Code points come before a profile (as in PNG, third edition), a profile before EXIF.

    HEIC is the other way round: its decoder fills in code points where the file has none. So
    is AVIF, of whose code points a profile leaves those of the coding alone (ISO/IEC 23000-22).
    """
    mode = {"1": "L", "L": "L", "LA": "L", "1A": "L", "CMYK": "CMYK"}.get(found.mode, "RGB")
    if found.coded is not None and not (found.format in {"HEIC", "AVIF"} and found.icc):
        return of_codes(*found.coded)
    if found.icc:
        return of_profile(found.icc, mode)
    if exif.adobe_rgb and mode == "RGB":
        return of_adobe_rgb()
    return Space()


def check_unchanged(file: File) -> None:
    """What was hashed must be what was decoded: the decoder may have read the file itself."""
    try:
        now = file.path.stat()
    except OSError:
        now = None
    if now is None or (now.st_size, now.st_mtime_ns) != (
        file.state.st_size,
        file.state.st_mtime_ns,
    ):
        raise PhotoError("the file changed while it was read", mend="Open it again")
