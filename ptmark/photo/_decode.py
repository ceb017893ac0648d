"""Pixels as they are stored, by whichever decoder reads the format whole and fast.

OpenCV reads most, into memory given to it; Pillow the modes OpenCV does not know. Pillow's
format classes are used one by one: its general opener keeps a smaller limit of its own.
"""

import io
import warnings
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt

from ptmark.errors import PhotoError
from ptmark.photo import _avif, _heic
from ptmark.photo._found import COPY_AGAIN, Found, damaged
from ptmark.photo._tiff import read_plain, upright_tag

__all__ = ["decode", "decode_reduced"]

Pixels = npt.NDArray[Any]  # uint8 or uint16


def decode(path: Path, data: bytes, found: Found) -> Pixels:
    """Pixels of the first frame, not turned, in the file's own colours.

    Parameters
    ----------
    path : Path
        Of the file that ``data`` was read from.
    data : bytes
    found : Found

    Returns
    -------
    ndarray of shape (H, W) or (H, W, channels), uint8 or uint16
        Channels are RGB, RGBA, or CMYK by ``found.mode``; grey with alpha comes as RGBA.

    Raises
    ------
    PhotoError
        If the decoder gives nothing, another size, or runs out of memory.
    """
    try:
        pixels = _decode(path, data, found)
    except MemoryError as exc:
        raise PhotoError(
            f"there is not enough memory for {found.width} x {found.height} px",
            mend="Close other programs, or take the photo with fewer pixels",
        ) from exc
    if pixels.shape[:2] != (found.height, found.width):
        raise damaged(
            f"its header says {found.width} x {found.height} px, its data "
            f"{pixels.shape[1]} x {pixels.shape[0]}"
        )
    _check_filled(data, found, pixels)
    return pixels


def decode_reduced(path: Path, data: bytes, found: Found, most: int) -> Pixels | None:
    """Pixels at 1/8, 1/4 or 1/2 size, the smallest whose longer side is not below ``most``.

    None where the format or the size gives no such shortcut.
    """
    import cv2

    if found.format != "JPEG" or found.way != "direct":
        return None
    flags = {
        8: cv2.IMREAD_REDUCED_COLOR_8,
        4: cv2.IMREAD_REDUCED_COLOR_4,
        2: cv2.IMREAD_REDUCED_COLOR_2,
    }
    for factor, flag in flags.items():
        if max(found.width, found.height) >= most * factor:
            small = _imread(path, data, None, flag | cv2.IMREAD_IGNORE_ORIENTATION)
            return np.asarray(cv2.cvtColor(small, cv2.COLOR_BGR2RGB, small), np.uint8)
    return None


def _decode(path: Path, data: bytes, found: Found) -> Pixels:
    if found.way == "heif":
        return _heic.decode(data)
    if found.way == "avif":
        return _avif.decode(data)
    if found.way == "modes":
        return _by_modes(data, found)
    plain = found.way == "plain"
    pixels = read_plain(data, found) if plain else _by_opencv(path, data, found)
    if pixels.ndim == 3 and pixels.shape[2] == 2:  # grey with alpha
        pixels = np.ascontiguousarray(pixels[..., [0, 0, 0, 1]])
    if found.inverted:
        colours = pixels[..., :3] if pixels.ndim == 3 else pixels
        np.bitwise_not(colours, out=colours)
    return pixels


def _by_opencv(path: Path, data: bytes, found: Found) -> Pixels:
    import cv2

    if found.packed:  # OpenCV passes over damage in packed data; Pillow does not
        _load(data, found)
    stored = upright_tag(data) if found.format == "TIFF" else data
    if found.way == "direct":
        # NumPy's own memory comes in large pages, which makes the decode a third faster
        room = np.empty((found.height, found.width, 3), np.uint8)
        return _imread(path, data, room, cv2.IMREAD_COLOR_RGB | cv2.IMREAD_IGNORE_ORIENTATION)
    pixels = _imread(path, stored, None, cv2.IMREAD_UNCHANGED, from_file=stored is data)
    if pixels.ndim == 3:
        swap = cv2.COLOR_BGRA2RGBA if pixels.shape[2] == 4 else cv2.COLOR_BGR2RGB
        return np.asarray(cv2.cvtColor(pixels, swap, pixels))
    return pixels


def _imread(
    path: Path, data: bytes, room: Pixels | None, flags: int, *, from_file: bool = True
) -> Pixels:
    """Decode by OpenCV: from the file into given memory, or from the bytes where it must."""
    import cv2

    pixels = None
    try:
        if from_file and str(path).isascii():  # other names fail on some systems
            pixels = (
                cv2.imread(str(path), flags)
                if room is None
                else cv2.imread(str(path), room, flags)
            )
        if pixels is None:
            pixels = cv2.imdecode(np.frombuffer(data, np.uint8), flags)
    except cv2.error as exc:
        raise damaged(str(exc.err or exc)) from exc
    if pixels is None:
        raise damaged("its data cannot be decoded")
    return np.asarray(pixels)


def _check_filled(data: bytes, found: Found, pixels: Pixels) -> None:
    """Refuse a JPEG whose data end before its rows do, at a marker that stands too early.

    Decoders fill the rest with plain grey of 128 and say nothing. A picture may end so of its
    own; then data put in before the marker that ends a scan are left over and change nothing,
    where missing data would be taken from them.
    """
    import cv2

    if found.format != "JPEG" or (pixels[-8:, -8:] != 128).any():
        return
    begins = (0, *found.ends)
    scans = (data[at:end] for at, end in zip(begins, found.ends, strict=False))
    more = bytes(range(1, 200)).join((*scans, data[begins[-1] :]))
    small = cv2.IMREAD_REDUCED_GRAYSCALE_8 | cv2.IMREAD_IGNORE_ORIENTATION
    plain, probed = (
        cv2.imdecode(np.frombuffer(given, np.uint8), small) for given in (data, more)
    )
    if plain is None or probed is None or not np.array_equal(plain, probed):
        raise damaged("its data end before its last rows")


def _by_modes(data: bytes, found: Found) -> Pixels:
    image = _load(upright_tag(data) if found.format == "TIFF" else data, found)
    if image.mode in ("1", "P", "LA", "PA", "YCbCr"):
        plain = "RGBA" if found.alpha else "RGB"
        image = image.convert({"1": "L", "YCbCr": "RGB"}.get(image.mode, plain))
    if image.mode not in ("L", "RGB", "RGBA", "CMYK"):
        raise PhotoError(
            f"a {found.format} of mode {image.mode} is not read",
            mend="Save it as 8-bit RGB or grey",
        )
    return np.array(image, np.uint8)


def _load(data: bytes, found: Found) -> Any:  # noqa: ANN401 - Pillow's image
    from PIL import JpegImagePlugin

    reader = _tiff_reader() if found.format == "TIFF" else JpegImagePlugin.JpegImageFile
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # what they would tell is raised below or repaired
            image = reader(io.BytesIO(data))
            image.load()
    except (OSError, SyntaxError, ValueError, EOFError, TypeError, KeyError, IndexError) as exc:
        raise PhotoError(f"the picture cannot be decoded: {exc}", mend=COPY_AGAIN) from exc
    return image


@cache
def _tiff_reader() -> Any:  # noqa: ANN401 - a class of Pillow's
    """Pillow's TIFF class without the smaller limit that it checks once more while loading."""
    from PIL import Image, TiffImagePlugin

    class Reader(TiffImagePlugin.TiffImageFile):
        def load_prepare(self) -> None:
            if self._im is None:
                self.im = Image.new(self.mode, self.size).im
            super().load_prepare()

    return Reader
