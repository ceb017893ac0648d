"""Structure of a PNG file, walked to its end chunk with every checksum compared.

Written from the W3C recommendation "Portable Network Graphics", third edition, clauses 5, 11.
"""

import struct
import zlib

from ptmark.photo._found import Found, check_size, damaged, truncated

__all__ = ["SIGNATURE", "look"]

SIGNATURE = b"\x89PNG\r\n\x1a\n"
_MODES = {0: "L", 2: "RGB", 3: "P", 4: "LA", 6: "RGBA"}
_MOST_PROFILE = 8 << 20  # a compressed profile may not blow up


def look(data: bytes) -> Found:
    """Find the picture, and that the file holds all of it, unchanged.

    Raises
    ------
    PhotoError
        If the file ends early, a checksum differs, or the picture is too big.
    """
    chunks = _chunks(data)
    header = chunks.get(b"IHDR", b"")
    if len(header) != 13:
        raise damaged("it does not begin with a header")
    width, height, bits, colour = struct.unpack(">IIBB", header[:10])
    mode = _MODES.get(colour)
    if mode is None or bits not in (1, 2, 4, 8, 16):
        raise damaged(f"it claims colour type {colour} with {bits} bits")
    if b"IDAT" not in chunks:
        raise damaged("it holds no picture data")
    alpha = mode in ("LA", "RGBA") or b"tRNS" in chunks
    coded = chunks.get(b"cICP", b"")
    frames = chunks.get(b"acTL", b"")
    return Found(
        format="PNG",
        width=width,
        height=height,
        mode="1" if mode == "L" and bits == 1 else mode,
        bits=8 if mode == "P" else bits,
        way="whole" if alpha or bits == 16 or frames else "direct",
        exif=chunks.get(b"eXIf", b""),
        icc=_profile(chunks.get(b"iCCP", b"")),
        coded=(coded[0], coded[1]) if len(coded) == 4 else None,
        frames=max(1, int.from_bytes(frames[:4], "big")) if frames else 1,
        alpha=alpha,
    )


def _chunks(data: bytes) -> dict[bytes, bytes]:
    """First chunk of each kind; picture data are checked but not copied."""
    found: dict[bytes, bytes] = {}
    view = memoryview(data)
    at = len(SIGNATURE)
    while at + 12 <= len(data):
        length, kind = struct.unpack_from(">I4s", data, at)
        if at + 12 + length > len(data):
            raise truncated(len(data))
        body = view[at + 8 : at + 8 + length]
        checksum = struct.unpack_from(">I", data, at + 8 + length)[0]
        if zlib.crc32(view[at + 4 : at + 8 + length]) == checksum:
            if kind == b"IHDR" and length == 13:  # before the rest is walked
                check_size(*struct.unpack(">II", body[:8]))
            found.setdefault(kind, b"" if kind in (b"IDAT", b"fdAT") else bytes(body))
        elif kind[:1].isupper():  # a damaged extra is left out, as the recommendation has it
            raise damaged(f"the checksum of its {kind.decode('latin-1')} part differs")
        if kind == b"IEND":
            return found
        at += 12 + length
    raise truncated(len(data))


def _profile(chunk: bytes) -> bytes:
    _, _, packed = chunk.partition(b"\0")
    try:
        return zlib.decompressobj().decompress(packed[1:], _MOST_PROFILE)
    except zlib.error:
        return b""
