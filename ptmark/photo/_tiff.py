"""Structure of a TIFF file. Written from TIFF 6.0 (1992) and its Technical Notes 1 and 2."""

import struct
from typing import Any

import numpy as np
import numpy.typing as npt

from ptmark.errors import PhotoError
from ptmark.photo._found import Found, check_size, damaged, truncated
from ptmark.photo._ifd import Entry, byte_order, reach, read_ifd

__all__ = ["look", "read_plain", "upright_tag"]

_PACKED = {1, 5, 8, 32773, 32946}  # tiles unpacked, LZW, Deflate, PackBits, old Deflate
_MODES = {0: "L", 1: "L", 2: "RGB", 3: "P", 5: "CMYK", 6: "RGB"}
_WHOLE = {1: "B", 3: "H", 4: "I"}  # types of whole numbers, as struct takes them
_CHANNELS = {"L": 1, "P": 1, "RGB": 3, "CMYK": 4}
_SAVE_PLAIN = "Save it as 8- or 16-bit RGB or grey TIFF, or as PNG"


def look(data: bytes) -> Found:
    """Find the first page, and that the file holds all of it.

    Raises
    ------
    PhotoError
        If the file ends early, contradicts itself, holds what has no plain meaning as a photo
        (numbers without a white, raw sensor data, a thumbnail only), or is too big.
    """
    tags, following = _directory(data)
    width, height = _whole(tags, 0x0100, 0), _whole(tags, 0x0101, 0)
    check_size(width, height)
    _check_data(tags, len(data))
    mode, bits, alpha = _kind(tags)
    packing, way = _whole(tags, 0x0103, 1), "modes"
    if mode in ("L", "RGB"):
        if packing == 1 and _plain(tags, bits, alpha=alpha):
            way = "plain"
        elif packing in _PACKED and bits == 16:
            way = "whole"
    return Found(
        format="TIFF",
        width=width,
        height=height,
        mode=("1" if bits == 1 and mode == "L" else mode) + ("A" if alpha else ""),
        bits=8 if mode == "P" else bits,
        way=way,
        exif=data,
        icc=tags[0x8773].raw if 0x8773 in tags else b"",
        frames=1 + _later_pages(data, following),
        alpha=alpha,
        packed=packing != 1,
        multiplied=alpha and way != "modes" and _whole(tags, 0x0152, 0) == 1,
        inverted=way != "modes" and _whole(tags, 0x0106, 1) == 0,
    )


def read_plain(data: bytes, found: Found) -> npt.NDArray[Any]:
    """Unpacked pixels, strip by strip, shape (H, W) or (H, W, channels), uint8 or uint16.

    Raises
    ------
    PhotoError
        If the strips hold fewer rows than the header says.
    """
    tags, _ = _directory(data)
    kind = np.dtype(byte_order(data) + f"u{found.bits // 8}")
    row = found.width * _whole(tags, 0x0115, 1)
    rows = min(_whole(tags, 0x0116, found.height), found.height)
    flat = np.empty(found.height * row, kind.newbyteorder("="))
    done = 0
    for offset in tags[0x0111].numbers:
        count = min(rows * row, flat.size - done)
        if int(offset) + count * kind.itemsize > len(data):
            raise truncated(len(data))
        flat[done : done + count] = np.frombuffer(data, kind, count, int(offset))
        done += count
    if done < flat.size:
        raise damaged(f"its data end after row {done // row} of {found.height}")
    shape = (found.height, found.width, row // found.width)
    return flat.reshape(shape if shape[2] > 1 else shape[:2])


def upright_tag(data: bytes) -> bytes:
    """The same file with its orientation tag set to 1.

    Decoders differ in whether and how they heed the tag; with 1 they all give the pixels as
    they are stored.
    """
    order = byte_order(data)
    tags, _ = _directory(data)
    turn = tags.get(0x0112)
    if turn is None or turn.first == 1 or turn.kind not in _WHOLE:
        return data
    copy = bytearray(data)
    struct.pack_into(order + _WHOLE[turn.kind], copy, turn.place, 1)
    return bytes(copy)


def _directory(data: bytes) -> tuple[dict[int, Entry], int]:
    """The first directory, which must lie in the file whole, and the place of the next."""
    order = byte_order(data)
    if len(data) < 8:
        raise truncated(len(data))
    start = struct.unpack_from(order + "I", data, 4)[0]
    if start + 2 > len(data) or reach(data, start) > len(data):
        raise truncated(len(data))
    return read_ifd(data, start)


def _plain(tags: dict[int, Entry], bits: int, *, alpha: bool) -> bool:
    """Whether the pixels stand in the file as they are, in strips."""
    if bits not in (8, 16) or 0x0111 not in tags or _whole(tags, 0x010A, 1) != 1:
        return False
    return _whole(tags, 0x011C, 1) == 1 and (bits == 16 or not alpha)


def _whole(tags: dict[int, Entry], tag: int, default: int) -> int:
    """First of a tag's whole numbers (BYTE, SHORT or LONG)."""
    entry = tags.get(tag)
    return int(entry.numbers[0]) if entry is not None and entry.kind in _WHOLE else default


def _kind(tags: dict[int, Entry]) -> tuple[str, int, bool]:
    """Mode without alpha, bits a channel, and whether there is alpha."""
    depth = tags.get(0x0102)
    depths = set(depth.numbers) if depth is not None and depth.kind == 3 else {1}
    samples, photometric = _whole(tags, 0x0115, 1), _whole(tags, 0x0106, 1)
    mode = _MODES.get(photometric)
    bits = int(max(depths))
    if mode is None or 0xC612 in tags or _whole(tags, 0x00FE, 0) & 1:
        raise PhotoError(
            "it is a raw camera file or holds no plain picture first "
            f"(TIFF photometric {photometric})",
            mend="Develop it to JPEG, or to 8- or 16-bit RGB TIFF",
        )
    if _whole(tags, 0x0153, 1) != 1 or len(depths) > 1 or bits not in (1, 2, 4, 8, 16):
        raise PhotoError(
            f"its numbers ({bits} bits, TIFF sample format {_whole(tags, 0x0153, 1)}) have no "
            "plain meaning as a photo",
            mend=_SAVE_PLAIN,
        )
    if bits == 16 and (
        mode not in ("L", "RGB") or (samples > 1 and _whole(tags, 0x011C, 1) != 1)
    ):
        raise PhotoError("this kind of 16-bit TIFF is not read", mend=_SAVE_PLAIN)
    extra = samples - _CHANNELS[mode]
    if extra < 0 or extra > 1:
        raise PhotoError(f"its {samples} channels are not read", mend=_SAVE_PLAIN)
    return mode, bits, extra == 1 and _whole(tags, 0x0152, 0) in (1, 2)


def _check_data(tags: dict[int, Entry], length: int) -> None:
    """Every strip or tile must lie in the file."""
    for offsets, counts in ((0x0111, 0x0117), (0x0144, 0x0145)):
        if offsets in tags and counts in tags:
            places, sizes = tags[offsets], tags[counts]
            if {places.kind, sizes.kind} - {3, 4} or len(places.numbers) != len(sizes.numbers):
                raise damaged("its strips do not add up")
            if np.add(places.numbers, sizes.numbers, dtype=float).max() > length:
                raise truncated(length)
            return
    raise damaged("it does not say where its data stand")


def _later_pages(data: bytes, offset: int) -> int:
    """Pages after the first that are pictures of their own, not reduced copies."""
    seen: set[int] = set()
    pages = 0
    while offset and offset not in seen and len(seen) < 10_000:
        seen.add(offset)
        tags, offset = read_ifd(data, offset)
        pages += bool(tags) and not _whole(tags, 0x00FE, 0) & 1
    return pages
