"""Structure of a JPEG file, walked to its end marker.

Written from ITU-T T.81 (1992), annex B; profiles as ICC.1:2022, annex B, embeds them.
"""

import re

from ptmark.errors import PhotoError
from ptmark.photo._found import Found, check_size, damaged, truncated

__all__ = ["look"]

_FRAMES = frozenset(range(0xC0, 0xD0)) - {0xC4, 0xC8, 0xCC}
_NEXT = re.compile(rb"\xff[^\x00\xd0-\xd7\xff]")  # a marker that is no restart, inside a scan
_MOST_SCANS = 200  # a progressive photo has about ten; thousands only tie the machine up
_MODES = {1: "L", 3: "RGB", 4: "CMYK"}
# The ten coarsest waves of ITU-T T.81, table K.2 (colour), in the order of its zigzag.
_K2 = (17, 18, 18, 24, 21, 24, 47, 26, 26, 47)


def look(data: bytes) -> Found:
    """Find the picture, and that the file holds all of it.

    Decoders give a full-size picture of half a file without a word; here the end marker is
    looked for after every scan, past thumbnails and pictures that are appended.

    Raises
    ------
    PhotoError
        If the file ends early, contradicts itself, or the picture is too big.
    """
    frame, exif, icc = b"", b"", dict[int, bytes]()
    tables = dict[int, list[int]]()
    segments, ends = _segments(data)
    for marker, body in segments:
        if marker == 0xE1 and body[:6] == b"Exif\0\0" and not exif:
            exif = body[6:]
        elif marker == 0xE2 and body[:12] == b"ICC_PROFILE\0" and len(body) > 14:
            icc[body[12]] = body[14:]
        elif marker == 0xDB:
            tables |= _tables(body)
        elif marker in _FRAMES and not frame:
            frame = body
            if len(frame) < 6:
                raise damaged("its frame header is too short")
            check_size(*_size(frame))
    if not frame:
        raise damaged("it has no frame header")
    width, height = _size(frame)
    mode = _MODES.get(frame[5])
    if mode is None:
        raise damaged(f"it claims {frame[5]} colour channels")
    if frame[0] != 8:
        raise PhotoError(
            f"JPEG with {frame[0]} bits a channel is not read", mend="Save it as 8-bit JPEG"
        )
    return Found(
        format="JPEG",
        width=width,
        height=height,
        mode=mode,
        way="modes" if mode == "CMYK" else "direct",
        exif=exif,
        icc=b"".join(icc[number] for number in sorted(icc)),
        ends=tuple(ends),
        quality=_quality(frame, tables),
    )


def _size(frame: bytes) -> tuple[int, int]:
    return int.from_bytes(frame[3:5], "big"), int.from_bytes(frame[1:3], "big")


def _tables(body: bytes) -> dict[int, list[int]]:
    """Steps of the ten coarsest waves, by the number of the table (B.2.4.1)."""
    found, at = dict[int, list[int]](), 0
    while at < len(body):
        size, number = 1 + (body[at] >> 4), body[at] & 15
        steps = body[at + 1 : at + 1 + 64 * size]
        if len(steps) < 64 * size:
            break
        first = steps[: len(_K2) * size]
        found[number] = [
            int.from_bytes(first[i : i + size], "big") for i in range(0, len(first), size)
        ]
        at += 1 + 64 * size
    return found


def _quality(frame: bytes, tables: dict[int, list[int]]) -> float | None:
    """Quality by the steps of colour, as most encoders scale table K.2; None of grey.

    50 stands for the table as it is, q below it for 50/q times its steps, q above for
    2 - q/50 times (the scale of the Independent JPEG Group's encoder, its `jcparam.c`).
    """
    if frame[5] < 3 or len(frame) < 12:
        return None
    steps = tables.get(frame[11])
    if not steps:
        return None
    times = max(sum(steps) / sum(_K2), 1e-6)
    return min(100.0, 50 / times if times > 1 else 100 - 50 * times)


def _segments(data: bytes) -> tuple[list[tuple[int, bytes]], list[int]]:
    """Markers with their bodies, and the place of the marker that ends each scan."""
    found: list[tuple[int, bytes]] = []
    ends: list[int] = []
    at = 2
    while True:
        marker, at = _marker(data, at)
        if marker == 0xD9:
            if not ends:
                raise damaged("it ends without any picture data")
            return found, ends
        end = at + int.from_bytes(data[at : at + 2], "big")
        if end > len(data) - 2:
            raise truncated(len(data))
        if end < at + 2:
            raise damaged("one of its parts has no length")
        if marker == 0xDA:
            end = _after_scan(data, end)
            ends.append(end)
        else:
            found.append((marker, data[at + 2 : end]))
        if len(ends) > _MOST_SCANS:
            raise damaged(f"it claims more than {_MOST_SCANS} scans")
        at = end


def _marker(data: bytes, at: int) -> tuple[int, int]:
    """The next marker that begins a part or ends the picture, and where its body begins."""
    while True:
        at = data.find(b"\xff", at)
        while 0 <= at < len(data) and data[at] == 0xFF:
            at += 1
        if at < 0 or at >= len(data):
            raise truncated(len(data))
        if data[at] > 0x01 and not 0xD0 <= data[at] <= 0xD8:
            return data[at], at + 1


def _after_scan(data: bytes, at: int) -> int:
    after = _NEXT.search(data, at)
    if after is None:
        raise truncated(len(data))
    return after.start()
