"""Small pictures to open, made on the spot."""

import io
import struct
import zlib

import numpy as np
import pytest
from PIL import Image


@pytest.fixture(scope="session")
def scene():
    """A picture without any symmetry, smooth enough for lossy formats: shape (48, 80, 3)."""
    y, x = np.mgrid[0:48, 0:80]
    rgb = np.stack([40 + 2 * x, 60 + 3 * y, 230 - x - 2 * y], axis=-1)
    rgb[4:20, 6:22] = (200, 20, 30)
    rgb[30:34, 50:76] = (10, 20, 120)
    return rgb.astype(np.uint8)


@pytest.fixture
def keep(tmp_path):
    """Write bytes, or an image by Pillow, to a file; gives its path."""

    def write(what, name, **options):
        path = tmp_path / name
        if isinstance(what, Image.Image):
            what.save(path, **options)
        else:
            path.write_bytes(what)
        return path

    return write


@pytest.fixture(scope="session")
def jpeg_bytes(scene):
    out = io.BytesIO()
    Image.fromarray(scene).save(out, "JPEG", quality=95, subsampling=0)
    return out.getvalue()


@pytest.fixture(scope="session")
def png_of():
    """Put a PNG together chunk by chunk, for what no library writes."""

    def chunk(kind, body):
        return (
            struct.pack(">I", len(body))
            + kind
            + body
            + struct.pack(">I", zlib.crc32(kind + body))
        )

    def make(width, height, bits, colour, rows, *extra):
        header = struct.pack(">IIBBBBB", width, height, bits, colour, 0, 0, 0)
        more = b"".join(chunk(kind, body) for kind, body in extra)
        return (
            b"\x89PNG\r\n\x1a\n"
            + chunk(b"IHDR", header)
            + more
            + chunk(b"IDAT", zlib.compress(rows))
            + chunk(b"IEND", b"")
        )

    return make
