"""The place where a photo was taken: read, and taken out of a copy that keeps its picture.

Tag numbers from CIPA DC-008-Translation-2019 (Exif 2.32), 4.6.6. A place is overwritten where
it stands, so that every other byte, the picture's above all, stays as it was. Makers' own notes
are secret formats that may hold a place: they are not read, and are blanked in such a copy.
"""

import re
import struct
import zlib
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass

from ptmark.errors import PhotoError
from ptmark.photo._ifd import byte_order, first_ifd, read_ifd
from ptmark.photo._told_places import (
    POINT,
    XMP,
    named_in_iptc,
    pieces_of,
    told,
    told_in_pieces,
)

__all__ = ["Location", "has_makers_note", "location_of", "places_named", "without_location"]

_HEADER = re.compile(rb"II\*\0|MM\0\*")
_GPS = 0x8825
_EXIF, _MAKERS_NOTE = 0x8769, 0x927C
# In XMP a place is "51,30.5N" or "51,30,30N" (its GPSCoordinate, from memory of XMP part 2);
# cameras that fly write degrees as a signed number.
_IN_XMP = re.compile(rb"GPS(Latitude|Longitude)\s*(?:=\s*[\"']|>)\s*([^\"'<]{1,40})", re.I)
_SEXAGESIMAL = re.compile(rb"(\d{1,3}),(\d{1,2}(?:\.\d+)?)(?:,(\d{1,2}(?:\.\d+)?))?\s*([NSEW])")
_DECIMAL = re.compile(rb"[+-]?\d{1,3}\.\d+")
_MOST_TEXT = 2**22  # bytes of a packed text that are unpacked
_SIZES = {1: 1, 2: 1, 3: 2, 4: 4, 5: 8, 6: 1, 7: 1, 8: 2, 9: 4, 10: 8, 11: 4, 12: 8}


@dataclass(frozen=True, slots=True)
class Location:
    """Degrees of WGS 84: north and east positive."""

    latitude: float
    longitude: float


def location_of(data: bytes) -> Location | None:
    """Where a photo says it was taken, in EXIF, else in XMP; None where it does not.

    A maker's own note is not read: `has_makers_note` tells that one may hold a place.
    """
    for one in (data, *_packed(data)):
        if (found := _in_exif(one) or _in_xmp(one)) is not None:
            return found
    return None


def places_named(data: bytes) -> list[str]:
    """Towns, regions and countries that a photo names, in XMP or IPTC-IIM; each once."""
    found = [data[start:end] for start, end in named_in_iptc(data)]
    for one in (data, *_packed(data)):
        if b"Iptc4xmp" in one or b"photoshop:" in one:  # as of coordinates, below
            said = (match for match in XMP.finditer(one) if b":GPS" not in match[0].upper())
            found += [match[1][1:-1] if match[1] else match[3] for match in said]
    texts = (re.sub(rb"<[^>]*>|\s+", b" ", one).decode("utf-8", "replace") for one in found)
    return list(dict.fromkeys(filter(None, (" ".join(one.split()) for one in texts))))


def has_makers_note(data: bytes) -> bool:
    """Whether a maker's own note that tells something stands in the photo."""
    return any(any(data[start:end]) for start, end in _makers_notes(data))


def _in_exif(data: bytes) -> Location | None:
    for start in _blocks(data):
        block = data[start:]
        tags = _place_tags(block)
        if tags is None or not {2, 4} <= tags.keys():
            continue
        north = _degrees(tags[2].numbers, tags[1].raw if 1 in tags else b"N", b"S")
        east = _degrees(tags[4].numbers, tags[3].raw if 3 in tags else b"E", b"W")
        if north is not None and east is not None:
            return Location(north, east)
    return None


def _in_xmp(data: bytes) -> Location | None:
    found: dict[bytes, float] = {}
    if b"GPSLat" not in data and b"GpsLat" not in data:  # looked for at a hundredth of the cost
        return None
    for name, said in _IN_XMP.findall(data):
        if (value := _spelled_degrees(said.strip())) is not None:
            found.setdefault(name.lower(), value)
    north, east = found.get(b"latitude"), found.get(b"longitude")
    return None if north is None or east is None else Location(north, east)


def _spelled_degrees(said: bytes) -> float | None:
    if (found := _SEXAGESIMAL.fullmatch(said)) is not None:
        parts = tuple(float(one or 0) for one in found.groups()[:3])
        return _degrees(parts, found[4], b"S" if found[4] in b"NS" else b"W")
    return float(said) if _DECIMAL.fullmatch(said) else None


def without_location(data: bytes, *, where: str = "photo") -> bytes:
    """A copy of the photo's bytes in which no place stands; the same bytes where none stood.

    A packed text of a PNG in which one stands is left out whole; all else keeps its length. A
    maker's own note becomes zeros, place or not.

    Parameters
    ----------
    data : bytes
        A photo's file: JPEG, PNG, WebP, TIFF, HEIC or AVIF.
    where : str
        Its name, for the error.

    Raises
    ------
    PhotoError
        If a place is still found afterwards.
    """
    out = bytearray(data)
    for start in _blocks(data):
        _blank(out, start)
    for start, end in _makers_notes(data):
        out[start:end] = bytes(end - start)
    for start, end in (*told(data), *named_in_iptc(data), *told_in_pieces(data)):
        out[start:end] = b" " * (end - start)
    made = _mended_png(out) if data.startswith(b"\x89PNG") else bytes(out)
    if _blocks(made) or XMP.search(made) or has_makers_note(made) or places_named(made):
        raise PhotoError("its place cannot be taken out", where=where, mend="leave it out")
    return made


def _blocks(data: bytes) -> list[int]:
    """Where TIFF structures with a place begin in the file."""
    found = []
    for one in _HEADER.finditer(data):
        if _place_tags(_block(data, one.start())) is not None:
            found.append(one.start())
    return found


def _makers_notes(data: bytes) -> list[tuple[int, int]]:
    """Where makers' own notes begin and end in the file."""
    found = []
    for one in _HEADER.finditer(data):
        block = _block(data, one.start())
        further = first_ifd(block).get(_EXIF)
        if further is None or not further.numbers:
            continue
        note = read_ifd(block, int(further.first))[0].get(_MAKERS_NOTE)
        if note is not None:
            size = len(note.raw) or len(note.numbers) * _SIZES[note.kind]
            order = byte_order(block) + "I"
            at = note.place if size <= 4 else struct.unpack_from(order, block, note.place)[0]
            found.append((one.start() + at, one.start() + at + size))
    return found


def _block(data: bytes, start: int) -> bytes:
    """A TIFF structure; a TIFF file itself may have its directories at the far end."""
    return data[start:] if start == 0 else data[start : start + 2**20]


def _place_tags(block: bytes) -> dict | None:  # type: ignore[type-arg]
    tags = first_ifd(block)
    if _GPS not in tags or not tags[_GPS].numbers:
        return None
    place = read_ifd(block, int(tags[_GPS].first))[0]
    return place or None


def _degrees(numbers: tuple[float, ...], side: bytes, minus: bytes) -> float | None:
    if not numbers:
        return None
    parts = [*numbers[:3], 0.0, 0.0][:3]
    value = parts[0] + parts[1] / 60 + parts[2] / 3600
    if value != value:  # noqa: PLR0124 - not a number, where EXIF divides by zero
        return None
    return -value if side[:1] == minus else value


def _blank(out: bytearray, start: int) -> None:
    """Overwrite the place's directory and every value it points to with zeros."""
    block = _block(bytes(out), start)
    order = byte_order(block)
    at = int(first_ifd(block)[_GPS].first)
    count = struct.unpack_from(order + "H", block, at)[0]
    for entry in range(at + 2, min(at + 2 + 12 * count, len(block) - 11), 12):
        _, kind, number, value = struct.unpack_from(order + "HHII", block, entry)
        size = _SIZES.get(kind, 0) * number
        if size > 4 and value + size <= len(block):
            out[start + value : start + value + size] = bytes(size)
        out[start + entry : start + entry + 12] = bytes(12)
    out[start + at : start + at + 2] = bytes(2)  # a directory of no entries


def _chunks(data: bytes) -> Iterator[tuple[int, int]]:
    """Where the chunks of a PNG begin, and where their data ends.

    ISO/IEC 15948, 5.3: a chunk is its length, type, data, and the CRC of type and data.
    """
    at = 8
    while at + 12 <= len(data):
        end = at + 8 + int(struct.unpack_from(">I", data, at)[0])
        if end + 4 > len(data):
            return
        yield at, end
        at = end + 4


def _mended_png(data: bytearray) -> bytes:
    """Checksums anew, and no packed text with a place."""
    out, last = bytearray(data[:8]), 8
    for at, end in _chunks(bytes(data)):
        last = end + 4
        if not _tells_place(bytes(data[at + 4 : at + 8]), bytes(data[at + 8 : end])):
            out += data[at:end] + struct.pack(">I", zlib.crc32(data[at + 4 : end]))
    return bytes(out + data[last:])


def _packed(data: bytes) -> Iterator[bytes]:
    """Texts of a PNG as they are when unpacked, and a packet of a JPEG that is in pieces."""
    if pieces := pieces_of(data):
        yield b"".join(data[first:last] for first, last in pieces)
    if data.startswith(b"\x89PNG"):
        for at, end in _chunks(data):
            yield from _texts(data[at + 4 : at + 8], data[at + 8 : end])


def _tells_place(kind: bytes, content: bytes) -> bool:
    """Whether a chunk of text holds a place, or a maker's own note that may."""
    return any(
        XMP.search(one) or POINT.search(one) or _blocks(one) or has_makers_note(one)
        for one in _texts(kind, content)
    )


def _texts(kind: bytes, content: bytes) -> list[bytes]:
    """What a chunk of text says, packed or written as hexadecimal digits."""
    if kind not in {b"tEXt", b"zTXt", b"iTXt"}:
        return []
    head, _, rest = content.partition(b"\0")
    texts = [rest]
    for start in {rest.find(b"\x78"), 1}:  # zlib's first byte; zTXt has one byte before it
        with suppress(zlib.error):
            texts.append(zlib.decompressobj().decompress(rest[max(start, 0) :], _MOST_TEXT))
    profile = re.search(rb"\n\s*\d+\n([0-9a-fA-F\s]+)$", texts[-1])  # as ImageMagick keeps EXIF
    if head.startswith(b"Raw profile type") and profile:
        with suppress(ValueError):
            texts.append(bytes.fromhex(profile[1].decode()))
    return texts
