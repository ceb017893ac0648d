"""Places that a photo tells in texts: XMP, whole or in pieces, IPTC-IIM, and ISO 6709."""

import re
import struct
from collections.abc import Iterator

__all__ = ["POINT", "XMP", "named_in_iptc", "pieces_of", "told", "told_in_pieces"]

# Coordinates of any name space, as cameras that fly have their own; names of towns and
# countries as in IPTC Photo Metadata Standard 2023.2 (from memory).
_TOLD = (
    rb"(?:[\w-]+:GPS\w+|(?:photoshop|Iptc4xmp(?:Core|Ext)):(?:City|State|Country(?:Code|Name)?"
    rb"|ProvinceState|Sublocation|WorldRegion|Location\w*))"
)
XMP = re.compile(
    rb"%b\s*=\s*(\"[^\"]*\"|'[^']*')|<(%b)(?:\s[^>]*)?>(.*?)</\2\s*>" % (_TOLD, _TOLD),
    re.S | re.I,
)
# XMP part 3, 1.1.3.1 (from memory): a packet in pieces, each after GUID, length and offset.
_PIECE = b"http://ns.adobe.com/xmp/extension/\0"
_IPTC = b"8BIM\x04\x04"
_PLACES_OF_IPTC = {26, 27, 90, 92, 95, 100, 101}  # IPTC-IIM 4.2, record 2
# ISO 6709, as the film that some phones append to a photo has it: +51.5000-000.1167/
POINT = re.compile(rb"[+-]\d{2}\.\d{3,}[+-]\d{3}\.\d{3,}(?:[+-]\d+(?:\.\d+)?)?/?")


def told(data: bytes) -> Iterator[tuple[int, int]]:
    """Where coordinates, and names of places in XMP, begin and end."""
    for said in (XMP, POINT):
        for found in said.finditer(data):
            yield found.span()


def pieces_of(data: bytes) -> list[tuple[int, int]]:
    """Where the pieces of a long XMP packet of a JPEG begin and end."""
    found, at = [], data.find(_PIECE)
    while at >= 0:
        (length,) = struct.unpack_from(">H", data, at - 2)
        found.append((at + len(_PIECE) + 40, min(at - 2 + length, len(data))))
        at = data.find(_PIECE, at + 1)
    return found


def told_in_pieces(data: bytes) -> Iterator[tuple[int, int]]:
    """What is said across the end of a piece."""
    pieces = pieces_of(data)
    for start, end in told(b"".join(data[first:last] for first, last in pieces)):
        before = 0
        for first, last in pieces:
            own = max(start - before, 0), min(end - before, last - first)
            if own[0] < own[1]:
                yield first + own[0], first + own[1]
            before += last - first


def named_in_iptc(data: bytes) -> Iterator[tuple[int, int]]:
    """Where texts of places begin and end in IPTC-IIM, in Photoshop's block 1028."""
    at = data.find(_IPTC)
    while at >= 0:
        begin = at + 6 + (data[at + 6] + 2) // 2 * 2  # behind its name, of an even length
        size = int.from_bytes(data[begin : begin + 4], "big")
        place, end = begin + 4, min(begin + 4 + size, len(data))
        while place + 5 <= end and data[place] == 0x1C:
            length = int.from_bytes(data[place + 3 : place + 5], "big")
            own = place + 5, min(place + 5 + length, end)
            if data[place + 1] == 2 and data[place + 2] in _PLACES_OF_IPTC:
                yield own
            place = own[1]
        at = data.find(_IPTC, at + 1)
