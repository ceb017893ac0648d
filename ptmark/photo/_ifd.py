"""Tags of a TIFF structure, as TIFF files and EXIF blocks hold them; trusts no offset.

Written from TIFF 6.0 (1992), section 2, and CIPA DC-008 (Exif 2.32), 4.6.2.
"""

import struct
from typing import NamedTuple

__all__ = ["Entry", "byte_order", "first_ifd", "reach", "read_ifd"]

_SIZES = {1: 1, 2: 1, 3: 2, 4: 4, 5: 8, 6: 1, 7: 1, 8: 2, 9: 4, 10: 8, 11: 4, 12: 8}
_CODES = {1: "B", 3: "H", 4: "I", 6: "b", 8: "h", 9: "i", 11: "f", 12: "d"}
_MOST_VALUES = 2_000_000  # strips of a 250 megapixel picture with a row each are far fewer


class Entry(NamedTuple):
    """A tag: its numbers (rationals divided, nan over 0) or its raw text, and its place.

    ``place`` is where the four value bytes stand in the block, ``kind`` the TIFF type 1-12.
    """

    numbers: tuple[float, ...]
    raw: bytes
    kind: int
    place: int

    @property
    def first(self) -> float:
        return self.numbers[0] if self.numbers else float("nan")


def byte_order(block: bytes) -> str:
    """``<`` or ``>`` as `struct` takes it; "" where no classic TIFF header stands."""
    return {b"II*\0": "<", b"MM\0*": ">"}.get(bytes(block[:4]), "")


def first_ifd(block: bytes) -> dict[int, Entry]:
    """Tags of the first directory; empty where there is none."""
    order = byte_order(block)
    if not order or len(block) < 8:
        return {}
    return read_ifd(block, struct.unpack_from(order + "I", block, 4)[0])[0]


def read_ifd(block: bytes, offset: int) -> tuple[dict[int, Entry], int]:
    """Tags of the directory at an offset, and the offset of the next (0: none).

    Entries that point outside the block are left out.
    """
    order = byte_order(block)
    if not order or not 8 <= offset <= len(block) - 2:
        return {}, 0
    count = struct.unpack_from(order + "H", block, offset)[0]
    tags: dict[int, Entry] = {}
    for place in range(offset + 2, min(offset + 2 + 12 * count, len(block) - 11), 12):
        tag, kind, number = struct.unpack_from(order + "HHI", block, place)
        entry = _entry(block, order, kind, number, place + 8)
        if entry is not None:
            tags.setdefault(tag, entry)
    end = offset + 2 + 12 * count
    following = struct.unpack_from(order + "I", block, end)[0] if end + 4 <= len(block) else 0
    return tags, following


def reach(block: bytes, offset: int) -> int:
    """The end of the furthest value that the standard tags of a directory point to."""
    order = byte_order(block)
    count = struct.unpack_from(order + "H", block, offset)[0]
    ends: list[int] = [offset + 2 + 12 * count + 4]
    for place in range(offset + 2, min(offset + 2 + 12 * count, len(block) - 11), 12):
        tag, kind, number, at = struct.unpack_from(order + "HHII", block, place)
        size = _SIZES.get(kind, 0) * number
        if tag < 0x8000 and size > 4:  # private tags beyond may be what they like
            ends.append(at + size)
    return max(ends)


def _entry(block: bytes, order: str, kind: int, number: int, place: int) -> Entry | None:
    size = _SIZES.get(kind, 0) * number
    if not 0 < size <= len(block) or number > _MOST_VALUES:
        return None
    at = place if size <= 4 else struct.unpack_from(order + "I", block, place)[0]
    if at + size > len(block):
        return None
    if kind in (2, 7):
        return Entry((), bytes(block[at : at + size]), kind, place)
    if kind in (5, 10):
        parts = struct.unpack_from(f"{order}{2 * number}{'I' if kind == 5 else 'i'}", block, at)
        pairs = zip(parts[::2], parts[1::2], strict=True)
        return Entry(tuple(a / b if b else float("nan") for a, b in pairs), b"", kind, place)
    return Entry(
        struct.unpack_from(f"{order}{number}{_CODES[kind]}", block, at), b"", kind, place
    )
