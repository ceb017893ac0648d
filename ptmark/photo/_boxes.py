"""Where a HEIC file keeps its coded pictures (ISO/IEC 14496-12:2022, 8.11; from memory)."""

from collections.abc import Iterator

__all__ = ["coded_parts"]

_FULL = 4  # bytes of version and flags


def coded_parts(data: bytes) -> Iterator[bytes]:
    """The bytes of each HEVC picture: tiles, thumbnails, depth; none where none can be told."""
    meta = dict(_boxes(data, 0, len(data))).get(b"meta")
    if meta is None:
        return
    inside = dict(_boxes(data, meta[0] + _FULL, meta[1]))
    if b"iloc" not in inside or b"iinf" not in inside:
        return
    coded = set(_items_of(data, inside[b"iinf"], b"hvc1"))
    for item, start, end in _places(data, *inside[b"iloc"]):
        if item in coded:
            yield data[start:end]


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
