"""HEIC files: structure, header and pixels through pillow_heif.

Box structure from ISO/IEC 14496-12:2022, 4.2; rotation is a property of the picture there
(ISO/IEC 23008-12, irot and imir), which the decoder applies, and the EXIF orientation says
nothing more.
"""

from typing import Any

import numpy as np
import numpy.typing as npt

from ptmark.errors import PhotoError
from ptmark.photo._boxes import check_whole, coded_parts
from ptmark.photo._found import COPY_AGAIN, Found, check_size, damaged

__all__ = ["BRANDS", "decode", "look"]

BRANDS = frozenset((b"heic", b"heix", b"heim", b"heis", b"hevc", b"hevx", b"mif1", b"msf1"))


def look(data: bytes) -> Found:
    """Find the primary picture, and that the file holds all of it.

    Raises
    ------
    PhotoError
        If the file ends early, holds no HEIC picture, or is too big.
    """
    check_whole(data)
    heif = _open(data)
    if not all(_filled(part) for part in coded_parts(data, b"hvc1")):
        raise damaged("part of it is empty, as in a copy that was not finished")
    width, height = heif.size
    check_size(width, height)
    mode = {"RGBa": "RGBA"}.get(heif.mode, heif.mode)
    nclx = heif.info.get("nclx_profile") or {}
    return Found(
        format="HEIC",
        width=width,
        height=height,
        mode=mode,
        bits=int(heif.info.get("bit_depth", 8)),
        way="heif",
        exif=(heif.info.get("exif") or b"").removeprefix(b"Exif\0\0"),
        icc=heif.info.get("icc_profile") or b"",
        coded=(int(nclx["color_primaries"]), int(nclx["transfer_characteristics"]))
        if nclx
        else None,
        frames=len(heif),
        alpha=mode in ("RGBA", "LA"),
        multiplied=heif.mode == "RGBa",
    )


def decode(data: bytes) -> npt.NDArray[np.uint8]:
    """Pixels of the primary picture, upright, shape (H, W, channels) or (H, W)."""
    heif = _open(data)
    picture = heif[heif.primary_index]
    try:
        pixels = np.ascontiguousarray(picture)
    except (ValueError, RuntimeError, OSError, EOFError, SyntaxError) as exc:
        raise damaged(str(exc)) from exc
    if picture.mode == "LA":
        return np.ascontiguousarray(pixels[..., [0, 0, 0, 1]])
    return pixels


def _open(data: bytes) -> Any:  # noqa: ANN401 - pillow_heif ships no types
    import pillow_heif

    try:
        heif = pillow_heif.open_heif(data, convert_hdr_to_8bit=True)
    except (ValueError, RuntimeError, OSError, EOFError, SyntaxError) as exc:
        raise PhotoError(f"the HEIC picture cannot be read: {exc}", mend=COPY_AGAIN) from exc
    if len(heif) == 0:
        raise damaged("it holds no picture")
    return heif


def _filled(part: bytes) -> bool:
    """Whether a coded picture holds no gap: the decoder paints gaps over and says nothing.

    No NAL unit ends with a zero byte, nor holds three of them in a row (ITU-T H.265, 7.4.2);
    only the length before one begins with a few.
    """
    return not part.endswith(b"\0") and b"\0" * 8 not in part
