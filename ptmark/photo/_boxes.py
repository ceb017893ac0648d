"""Boxes of HEIC and AVIF files: their pictures' properties, and where the coded ones are kept.

ISO/IEC 14496-12:2022, 4.2 and 8.11, and ISO/IEC 23008-12, 9.3 (from memory).
"""

from collections.abc import Iterator

from ptmark.photo._found import truncated

__all__ = ["check_whole", "coded_parts", "properties"]

_FULL = 4  # bytes of version and flags


def check_whole(data: bytes) -> None:
    """Refuse a file that ends before its last box does."""
    at = 0
    while at < len(data):
        size, head = int.from_bytes(data[at : at + 4], "big"), 8
        if size == 1:
            size, head = int.from_bytes(data[at + 8 : at + 16], "big"), 16
        if size == 0:  # to the end of the file
            return
        if size < head or at + size > len(data):
            raise truncated(len(data))
        at += size


def properties(data: bytes) -> Iterator[tuple[bytes, bytes]]:
    """Kind and content of each property of the primary picture; none where none can be told."""
    inside = _in_meta(data)
    if b"pitm" not in inside or b"iprp" not in inside:
        return
    at, end = inside[b"pitm"]
    primary = int.from_bytes(data[at + _FULL : end], "big")
    held = dict(_boxes(data, *inside[b"iprp"]))
    every = list(_boxes(data, *held.get(b"ipco", (0, 0))))
    for item, number in _owned(data, *held.get(b"ipma", (0, 0))):
        if item == primary and 0 < number <= len(every):
            kind, (at, end) = every[number - 1]
            yield kind, data[at:end]


def coded_parts(data: bytes, kind: bytes) -> Iterator[bytes]:
    """The bytes of each picture of that kind: tiles, thumbnails, depth; none if none is told.

    ``kind`` is "hvc1" for HEVC, "av01" for AV1.
    """
    inside = _in_meta(data)
    if b"iloc" not in inside or b"iinf" not in inside:
        return
    coded = set(_items_of(data, inside[b"iinf"], kind))
    for item, start, end in _places(data, *inside[b"iloc"]):
        if item in coded:
            yield data[start:end]


def _in_meta(data: bytes) -> dict[bytes, tuple[int, int]]:
    meta = dict(_boxes(data, 0, len(data))).get(b"meta")
    return {} if meta is None else dict(_boxes(data, meta[0] + _FULL, meta[1]))


def _owned(data: bytes, start: int, end: int) -> Iterator[tuple[int, int]]:
    """Item, and the number from 1 of a property of it, as the association box has them."""
    wide = 2 if data[start : start + 1] == b"\0" else 4
    long = 2 if data[start + 3 : start + 4] > b"\0" and data[start + 3] & 1 else 1
    at = start + _FULL + 4
    while at + wide < end:
        item, count = int.from_bytes(data[at : at + wide], "big"), data[at + wide]
        at += wide + 1
        for place in range(at, min(at + count * long, end), long):
            number = int.from_bytes(data[place : place + long], "big")
            yield item, number & (0x7FFF if long == 2 else 0x7F)  # less the bit "essential"
        at += count * long


def _boxes(data: bytes, at: int, end: int) -> Iterator[tuple[bytes, tuple[int, int]]]:
    """Type, and start and end of what it holds, of the boxes in a stretch."""
    while at + 8 <= end:
        size, head = int.from_bytes(data[at : at + 4], "big"), 8
        if size == 1:
            size, head = int.from_bytes(data[at + 8 : at + 16], "big"), 16
        stop = end if size == 0 else min(at + size, end)
        if stop < at + head:
            return
        yield data[at + 4 : at + 8], (at + head, stop)
        at = stop


def _items_of(data: bytes, place: tuple[int, int], kind: bytes) -> Iterator[int]:
    """Ids of the items of a kind: 16 bits where an entry is of version 2, 32 in version 3."""
    start, end = place
    start += _FULL + (2 if data[start : start + 1] == b"\0" else 4)
    for _, (at, _) in _boxes(data, start, end):
        wide = 2 if data[at : at + 1] == b"\2" else 4
        after = at + _FULL + wide + 2  # the id, an index of protection, then the kind
        if data[after : after + 4] == kind:
            yield int.from_bytes(data[at + _FULL : at + _FULL + wide], "big")


def _places(data: bytes, start: int, end: int) -> Iterator[tuple[int, int, int]]:
    """Item, start and end in the file of each extent that is kept in the file itself."""
    if end < start + _FULL + 2:
        return
    version = data[start]
    at = start + _FULL + 2
    offset_size, length_size = divmod(data[at - 2], 16)
    base_size, index_size = divmod(data[at - 1], 16)
    if version == 0:
        index_size = 0

    def number(size: int) -> int:
        nonlocal at
        at += size
        return int.from_bytes(data[at - size : at], "big")

    for _ in range(number(4 if version == 2 else 2)):
        item = number(4 if version == 2 else 2)
        way = number(2) & 15 if version else 0
        number(2)  # which file; 0 is this one
        base = number(base_size)
        for _ in range(number(2)):
            number(index_size)
            offset, length = base + number(offset_size), number(length_size)
            if at > end:
                return
            if way == 0:
                yield item, offset, offset + length if length else len(data)
        if at > end:
            return
