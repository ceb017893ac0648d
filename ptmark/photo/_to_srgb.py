"""From the colour space a picture is in to sRGB, 8 bit, in strips.

Relative colorimetric: white stays white, and what sRGB cannot hold is clipped to its border,
channel by channel in linear light.
"""

import io
import os
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from functools import cache
from typing import Any

import numpy as np
import numpy.typing as npt

from ptmark.errors import PhotoError
from ptmark.photo._icc import Matrix, description, device, has_tables, read_matrix
from ptmark.photo.color import linear_to_srgb, srgb_to_linear

__all__ = ["Space", "of_adobe_rgb", "of_codes", "of_profile", "to_srgb"]

Array = npt.NDArray[np.float64]
Pixels = npt.NDArray[Any]  # uint8 or uint16
Convert = Callable[[Pixels, npt.NDArray[np.uint8]], None]  # a strip, and where it goes
_STRIP = 1 << 16  # pixels at a time, so that a strip stays in the cache from step to step

# CIE xy of red, green, blue by the code point of the primaries (ITU-T H.273, from memory)
_PRIMARIES = {
    1: ("sRGB", ((0.640, 0.330), (0.300, 0.600), (0.150, 0.060))),
    9: ("BT.2020", ((0.708, 0.292), (0.170, 0.797), (0.131, 0.046))),
    12: ("Display P3", ((0.680, 0.320), (0.265, 0.690), (0.150, 0.060))),
}
_ADOBE = ((0.640, 0.330), (0.210, 0.710), (0.150, 0.060))  # Adobe RGB (1998), from memory
_UNREAD = "The embedded colour profile could not be read and was left out."
_D65 = (0.3127, 0.3290)
# sRGB primaries relative to D50, as the ICC's own sRGB profiles hold them
_SRGB_D50 = np.array(
    [
        [0.4360747, 0.3850649, 0.1430804],
        [0.2225045, 0.7168786, 0.0606169],
        [0.0139322, 0.0971045, 0.7141733],
    ]
)


@dataclass(frozen=True, slots=True, eq=False)
class Space:
    """A colour space: by curves and a matrix to linear sRGB, or by a profile's tables.

    With neither the picture is sRGB already.
    """

    name: str = "sRGB"
    curves: tuple[Array, Array, Array] | None = None
    matrix: Array | None = None
    profile: bytes = b""
    mode: str = "RGB"
    note: str = ""


def of_profile(profile: bytes, mode: str) -> Space:
    """The space of an embedded profile, for a picture of this mode ("RGB", "L" or "CMYK").

    A profile that cannot be used leaves sRGB, with a note that says so.
    """
    fits = {"RGB": "RGB", "L": "GRAY", "CMYK": "CMYK"}[mode]
    if device(profile) != fits:
        return Space(
            note="The embedded colour profile does not fit the picture and was left out."
        )
    name = description(profile) or "unnamed profile"
    if mode == "RGB" and not has_tables(profile):
        matrix = read_matrix(profile)
        return Space(note=_UNREAD) if matrix is None else _of_matrix(name, matrix)
    if _tables(profile, mode) is None:
        return Space(note=_UNREAD)
    return Space(name, profile=profile, mode=mode)


def of_codes(primaries: int, transfer: int) -> Space:
    """The space of ITU-T H.273 code points, as PNG (cICP), HEIC and AVIF (nclx) carry them.

    Raises
    ------
    PhotoError
        For the high dynamic range transfers 16 (PQ) and 18 (HLG): they have no fixed white.
    """
    if transfer in (16, 18):
        raise PhotoError(
            "the picture is coded for high dynamic range (PQ or HLG), which has no fixed white",
            mend="Take it without HDR, or save it as an ordinary photo",
        )
    if primaries == 1 or primaries not in _PRIMARIES:
        return Space()
    name, corners = _PRIMARIES[primaries]
    curve = srgb_to_linear(np.linspace(0.0, 1.0, 65536)).astype(float)
    return Space(name, (curve, curve, curve), _from_primaries(corners))


def of_adobe_rgb() -> Space:
    """Adobe RGB (1998), which cameras may name in EXIF without a profile (DCF 2.0)."""
    curve = np.power(np.linspace(0.0, 1.0, 65536), 563 / 256)
    return Space("Adobe RGB (1998)", (curve, curve, curve), _from_primaries(_ADOBE))


def to_srgb(pixels: Pixels, space: Space) -> npt.NDArray[np.uint8]:
    """Convert a whole picture.

    Parameters
    ----------
    pixels : ndarray of shape (H, W), (H, W, 3) or (H, W, 4: CMYK), uint8 or uint16
        Overwritten where that saves memory.
    space : Space

    Returns
    -------
    ndarray of shape (H, W, 3), uint8
    """
    import cv2

    if pixels.dtype == np.uint16 and space.matrix is None:
        nearest = np.rint(np.arange(65536) / 257).astype(np.uint8)
        pixels = np.asarray(cv2.LUT(pixels, nearest), np.uint8).reshape(pixels.shape)
    if space.mode == "L" and pixels.ndim == 3:  # grey that the decoder spread to three channels
        pixels = cv2.extractChannel(pixels, 0)
    elif pixels.ndim == 2 and space.mode != "L":
        pixels = cv2.cvtColor(pixels, cv2.COLOR_GRAY2RGB)
    if space.matrix is None and not space.profile and pixels.shape[2] == 3:
        return np.asarray(pixels, np.uint8)
    in_place = pixels.dtype == np.uint8 and pixels.shape[2:] == (3,) and pixels.flags.writeable
    out = (
        np.asarray(pixels, np.uint8) if in_place else np.empty((*pixels.shape[:2], 3), np.uint8)
    )
    _convert(pixels, out, space)
    return out


def _convert(pixels: Pixels, out: npt.NDArray[np.uint8], space: Space) -> None:
    """Strip by strip, in as many bands at once as there are processors, up to four."""
    height, width = pixels.shape[:2]
    rows = max(1, _STRIP // width)

    def band(first: int, last: int) -> None:
        by_matrix = space.matrix is not None
        convert = _by_matrix(pixels.dtype, space) if by_matrix else _by_tables(space)
        for top in range(first, last, rows):
            end = min(top + rows, last)
            convert(pixels[top:end], out[top:end])

    workers = min(4, os.cpu_count() or 1, -(-height // rows))
    edges = [height * n // workers for n in range(workers + 1)]
    with ThreadPoolExecutor(workers) as pool:
        list(pool.map(band, edges[:-1], edges[1:]))


def _of_matrix(name: str, found: Matrix) -> Space:
    matrix = np.linalg.solve(_SRGB_D50, found.to_xyz)
    matrix /= matrix.sum(axis=1, keepdims=True)  # rounding in the profile must not tint white
    space = Space(name, found.curves, matrix)
    return Space() if _is_srgb(space) else space


def _is_srgb(space: Space) -> bool:
    """Whether converting would change no colour of a coarse grid by more than one code."""
    steps = np.linspace(0, 255, 9).round().astype(np.uint8)
    grid = np.stack(np.meshgrid(steps, steps, steps), axis=-1).reshape(27, 27, 3)
    moved = np.empty_like(grid)
    _by_matrix(grid.dtype, space)(grid, moved)
    return bool(np.abs(moved.astype(int) - grid).max() <= 1)


def _from_primaries(corners: tuple[tuple[float, float], ...]) -> Array:
    """Linear light of D65 primaries to linear sRGB."""
    mixed = np.linalg.solve(_rgb_to_xyz(_PRIMARIES[1][1]), _rgb_to_xyz(corners))
    return np.asarray(mixed, np.float64)


def _rgb_to_xyz(corners: tuple[tuple[float, float], ...]) -> Array:
    """SMPTE RP 177-1993: columns scaled so that they sum to the white."""
    columns = np.array([(x / y, 1.0, (1 - x - y) / y) for x, y in corners]).T
    white = np.array([_D65[0] / _D65[1], 1.0, (1 - sum(_D65)) / _D65[1]])
    scale: Array = np.linalg.solve(columns, white)
    return columns * scale


def _by_matrix(kind: "np.dtype[Any]", space: Space) -> Convert:
    import cv2

    assert space.curves is not None and space.matrix is not None  # noqa: S101, PT018 - for mypy
    step = 1 if kind == np.uint16 else 257
    curves = np.stack([curve[::step] for curve in space.curves], axis=-1)[np.newaxis]
    light = np.rint(curves * 65535).astype(np.uint16)
    pairs = None
    if (light == light[..., :1]).all():  # one table for all channels takes half the time
        light = np.ascontiguousarray(light[..., 0])
        if kind == np.uint8:  # and half of that again where it holds two values in a row
            in_a_row = np.arange(65536, dtype=np.uint16).view(np.uint8)
            pairs = light[0, in_a_row].view(np.int32)
    matrix, codes = space.matrix.astype(np.float32), _encoding()

    # In 16 bits OpenCV rounds, and clips at both ends, three times as fast as in floats; a step
    # of linear light there is at most 0.05 of an 8-bit code. Kept memory halves the time again.
    first = second = np.empty(0, np.uint16)

    def convert(strip: Pixels, out: npt.NDArray[np.uint8]) -> None:
        nonlocal first, second
        if first.shape != strip.shape:
            first, second = np.empty(strip.shape, np.uint16), np.empty(strip.shape, np.uint16)
        if pairs is None or strip.size % 2:
            cv2.LUT(strip, light, first)
        else:
            cv2.LUT(
                strip.reshape(1, -1).view(np.uint16), pairs, first.reshape(1, -1).view(np.int32)
            )
        cv2.transform(first, matrix, second)
        cv2.LUT(second, codes, out)

    return convert


@cache
def _encoding() -> npt.NDArray[np.uint8]:
    return np.rint(linear_to_srgb(np.arange(65536) / 65535) * 255).astype(np.uint8)


def _by_tables(space: Space) -> Convert:
    from PIL import Image, ImageCms

    mode = space.mode if space.profile else "CMYK"
    transform = _tables(space.profile, mode) if space.profile else None

    def convert(strip: Pixels, out: npt.NDArray[np.uint8]) -> None:
        size = (strip.shape[1], strip.shape[0])
        part = Image.frombuffer(mode, size, np.ascontiguousarray(strip), "raw", mode, 0, 1)
        done = (
            part.convert("RGB")
            if transform is None
            else ImageCms.applyTransform(part, transform)
        )
        out[...] = np.asarray(done, np.uint8)

    return convert


def _tables(profile: bytes, mode: str) -> Any:  # noqa: ANN401 - Pillow's transform
    from PIL import ImageCms

    try:
        return ImageCms.buildTransform(
            ImageCms.ImageCmsProfile(io.BytesIO(profile)),
            ImageCms.createProfile("sRGB"),
            mode,
            "RGB",
            renderingIntent=ImageCms.Intent.RELATIVE_COLORIMETRIC,
        )
    except (ImageCms.PyCMSError, OSError, ValueError):
        return None
