"""AVIF files: structure, header and pixels through Pillow, where its build holds AVIF.

Turn and mirror are properties of the picture (ISO/IEC 23008-12, irot and imir), which Pillow
tells as the orientation in EXIF, whatever stood there: it is applied once, from there.
"""

import io
from typing import Any

import numpy as np
import numpy.typing as npt

from ptmark.errors import PhotoError
from ptmark.photo._boxes import check_whole, coded_parts, properties
from ptmark.photo._found import COPY_AGAIN, Found, check_size, damaged

__all__ = ["decode", "is_avif", "look"]

_BRANDS = frozenset((b"avif", b"avis"))
_GENERAL = frozenset((b"mif1", b"msf1", b"miaf"))
_GAP = bytes(16)  # entropy-coded data of flat and noisy pictures held 4 such bytes at most
_BROKEN = (OSError, SyntaxError, ValueError, EOFError, TypeError, RuntimeError)


def is_avif(data: bytes) -> bool:
    """Whether the file names itself AVIF: at once, or among what it is compatible with."""
    if data[4:8] != b"ftyp":
        return False
    end = min(int.from_bytes(data[:4], "big"), 256)
    others = {data[at : at + 4] for at in range(16, end, 4)}
    return data[8:12] in _BRANDS or (data[8:12] in _GENERAL and bool(others & _BRANDS))


def look(data: bytes) -> Found:
    """Find the primary picture, and that the file holds all of it.

    Raises
    ------
    PhotoError
        If the file ends early, holds no AVIF picture, is too big, or Pillow cannot read AVIF.
    """
    check_whole(data)
    image = _open(data)
    if any(part.endswith(_GAP) or _GAP in part for part in coded_parts(data, b"av01")):
        raise damaged("part of it is empty, as in a copy that was not finished")
    width, height = image.size
    check_size(width, height)
    own = list(properties(data))
    return Found(
        format="AVIF",
        width=width,
        height=height,
        mode=image.mode,
        bits=next((_bits(said) for kind, said in own if kind == b"pixi"), 8),
        way="avif",
        exif=(image.info.get("exif") or b"").removeprefix(b"Exif\0\0"),
        icc=image.info.get("icc_profile") or b"",
        coded=next((_codes(said) for kind, said in own if said[:4] == b"nclx"), None),
        frames=image.n_frames,
        alpha=image.mode == "RGBA",
    )


def decode(data: bytes) -> npt.NDArray[np.uint8]:
    """Pixels of the primary picture, not turned, shape (H, W, channels) or (H, W)."""
    image = _open(data)
    try:
        image.load()
    except _BROKEN as exc:
        raise damaged(str(exc)) from exc
    return np.array(image, np.uint8)


def _open(data: bytes) -> Any:  # noqa: ANN401 - Pillow's image
    from PIL import AvifImagePlugin

    if not AvifImagePlugin.SUPPORTED:
        raise PhotoError(
            "the file is an AVIF file, which the installed Pillow was built without",
            mend="Install Pillow from its own wheels, or save the photo as JPEG or PNG",
        )
    try:
        return AvifImagePlugin.AvifImageFile(io.BytesIO(data))
    except _BROKEN as exc:
        raise PhotoError(f"the AVIF picture cannot be read: {exc}", mend=COPY_AGAIN) from exc


def _bits(said: bytes) -> int:
    """Most bits of a channel: version and flags, how many channels, then each one's."""
    return max(said[5:], default=8)


def _codes(said: bytes) -> tuple[int, int]:
    """Colour primaries and transfer (ITU-T H.273)."""
    return int.from_bytes(said[4:6], "big"), int.from_bytes(said[6:8], "big")
