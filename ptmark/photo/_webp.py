"""Structure of a WebP file. Written from RFC 9649 (2024), section 2, and RFC 6386, 9.1."""

from ptmark.photo._found import Found, check_size, damaged, truncated

__all__ = ["look"]


def look(data: bytes) -> Found:
    """Find the picture, and that the file holds all of it.

    Raises
    ------
    PhotoError
        If the file ends early, contradicts itself, or the picture is too big.
    """
    end = 8 + int.from_bytes(data[4:8], "little")
    if end > len(data):
        raise truncated(len(data))
    chunks, frames = _chunks(data, end)
    if b"VP8X" in chunks:
        head = chunks[b"VP8X"]
        if len(head) < 10:
            raise damaged("its header is too short")
        alpha = bool(head[0] & 0x10)
        width = 1 + int.from_bytes(head[4:7], "little")
        height = 1 + int.from_bytes(head[7:10], "little")
    elif b"VP8L" in chunks:
        width, height, alpha = _lossless(chunks[b"VP8L"])
    else:
        width, height, alpha = _lossy(chunks.get(b"VP8 ", b""))
    check_size(width, height)
    if not (frames or b"VP8L" in chunks or b"VP8 " in chunks):
        raise damaged("it holds no picture data")
    return Found(
        format="WebP",
        width=width,
        height=height,
        mode="RGBA" if alpha else "RGB",
        way="whole" if alpha or frames else "direct",
        exif=chunks.get(b"EXIF", b"").removeprefix(b"Exif\0\0"),
        icc=chunks.get(b"ICCP", b""),
        frames=max(1, frames),
        alpha=alpha,
    )


def _chunks(data: bytes, end: int) -> tuple[dict[bytes, bytes], int]:
    """First chunk of each kind (of picture data the head), and the number of frames."""
    found: dict[bytes, bytes] = {}
    frames, at = 0, 12
    while at + 8 <= end:
        kind, length = data[at : at + 4], int.from_bytes(data[at + 4 : at + 8], "little")
        if at + 8 + length > end:
            raise damaged("a part of it reaches beyond its end")
        frames += kind == b"ANMF"
        kept = 16 if kind in (b"VP8 ", b"VP8L", b"ANMF", b"ALPH") else length
        found.setdefault(kind, data[at + 8 : at + 8 + min(kept, length)])
        at += 8 + length + length % 2
    return found, frames


def _lossless(head: bytes) -> tuple[int, int, bool]:
    if len(head) < 5 or head[0] != 0x2F:
        raise damaged("its header is no WebP header")
    packed = int.from_bytes(head[1:5], "little")
    return 1 + (packed & 0x3FFF), 1 + (packed >> 14 & 0x3FFF), bool(packed >> 28 & 1)


def _lossy(head: bytes) -> tuple[int, int, bool]:
    if len(head) < 10 or head[3:6] != b"\x9d\x01\x2a":
        raise damaged("its header is no WebP header")
    width, height = int.from_bytes(head[6:8], "little"), int.from_bytes(head[8:10], "little")
    return width & 0x3FFF, height & 0x3FFF, False
