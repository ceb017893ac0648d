"""Open a picture file: check it, decode it, turn it upright, bring it to sRGB."""

import hashlib
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from pathlib import Path

import numpy as np
import numpy.typing as npt

from ptmark.endings import PICTURES
from ptmark.errors import PhotoError
from ptmark.photo._decode import Pixels, decode, decode_reduced
from ptmark.photo._exif import focal_px
from ptmark.photo._file import File, check_unchanged, examine
from ptmark.photo._found import Found
from ptmark.photo._to_srgb import to_srgb
from ptmark.photo._upright import over_white, upright
from ptmark.photo.camera_profile import CameraProfile, profile_for
from ptmark.photo.picture import Photo, PhotoInfo

__all__ = ["open_photo", "read_info", "read_preview"]

_SAME_SIZE = 0.01  # some write a few rows more or less than they say


def open_photo(path: Path) -> Photo:
    """Open a photo: upright, sRGB, 8 bit.

    Parameters
    ----------
    path : Path
        JPEG, PNG, TIFF, WebP, HEIC or AVIF, told by its content and not by its name; at most
        250 megapixels and 2 GiB.

    Returns
    -------
    Photo

    Raises
    ------
    PhotoError
        If the file is missing, a folder, unreadable, empty, truncated, damaged, too big, no
        picture, or changed while it was read. Size and format are checked before decoding.
    """
    path = Path(path)
    with _naming(path), ThreadPoolExecutor(1) as beside:
        file = examine(path)
        sha256 = beside.submit(_sha256, file.data)
        pixels = decode(path, file.data, file.found)
        rgb, see_through = _finish(pixels, file), _see_through(pixels, file)
        check_unchanged(file)
        return Photo(_info(file, sha256.result()), rgb, see_through)


def read_info(path: Path) -> PhotoInfo:
    """Facts of a picture without decoding its pixels; checks and errors as in `open_photo`."""
    path = Path(path)
    with _naming(path):
        file = examine(path)
        return _info(file, _sha256(file.data))


def read_preview(path: Path, max_side: int) -> npt.NDArray[np.uint8]:
    """A small upright sRGB picture for the first paint, by a reduced decode where there is one.

    Parameters
    ----------
    path : Path
    max_side : int, px
        The longer side of the result; a smaller picture is not enlarged.

    Returns
    -------
    ndarray of shape (h, w, 3), uint8

    Raises
    ------
    PhotoError
        As `open_photo`; also where ``max_side`` is below 1.
    """
    import cv2

    path = Path(path)
    with _naming(path):
        if max_side < 1:
            raise PhotoError(f"a preview needs at least 1 px a side, got {max_side}")
        file = examine(path)
        pixels = decode_reduced(path, file.data, file.found, max_side)
        rgb = _finish(decode(path, file.data, file.found) if pixels is None else pixels, file)
        check_unchanged(file)
        shrink = max_side / max(file.found.width, file.found.height)
        if shrink >= 1:
            return rgb
        height, width = (file.found.height, file.found.width)
        if file.orientation > 4:
            height, width = width, height
        size = (max(1, round(width * shrink)), max(1, round(height * shrink)))
        return np.asarray(cv2.resize(rgb, size, interpolation=cv2.INTER_AREA), np.uint8)


@contextmanager
def _naming(path: Path) -> Iterator[None]:
    """Give every error the file's name."""
    try:
        yield
    except PhotoError as exc:
        exc.where = exc.where or str(path)
        raise


def _finish(pixels: Pixels, file: File) -> npt.NDArray[np.uint8]:
    """Stored pixels to upright sRGB."""
    import cv2

    found, alpha = file.found, _alpha(pixels, file.found)
    if pixels.ndim == 3 and pixels.shape[2] == 4 and found.mode != "CMYK":
        pixels = cv2.cvtColor(pixels, cv2.COLOR_RGBA2RGB)
    rgb = to_srgb(pixels, file.space)
    if alpha is not None:
        rgb = over_white(rgb, alpha, multiplied=found.multiplied)
    return np.ascontiguousarray(upright(rgb, file.orientation))


def _alpha(pixels: Pixels, found: Found) -> Pixels | None:
    if not found.alpha or pixels.ndim != 3 or pixels.shape[2] != 4:
        return None
    return np.ascontiguousarray(pixels[..., 3])


def _see_through(pixels: Pixels, file: File) -> npt.NDArray[np.uint8] | None:
    """Where the picture is not opaque, upright; None where it is all over."""
    alpha = _alpha(pixels, file.found)
    if alpha is None:
        return None
    clear = (alpha < np.iinfo(alpha.dtype).max).view(np.uint8)
    return np.ascontiguousarray(upright(clear, file.orientation)) if clear.any() else None


def _info(file: File, sha256: str) -> PhotoInfo:
    found, turned = file.found, file.orientation > 4
    return PhotoInfo(
        path=file.path,
        sha256=sha256,
        bytes=len(file.data),
        format=found.format,
        width=found.height if turned else found.width,
        height=found.width if turned else found.height,
        orientation=file.orientation,
        mode=found.mode,
        bits=found.bits,
        profile=file.space.name,
        focal_px=focal_px(file.exif, found.width, found.height),
        as_taken=_as_taken(file),
        camera=file.exif.camera,
        calibrated=_calibrated(file),
        frames=found.frames,
        notes=_notes(file),
        quality=found.quality,
    )


def _as_taken(file: File) -> bool:
    """Whether the picture has about the size that EXIF says the camera wrote."""
    if file.exif.pixels is None:
        return True
    pairs = zip(
        sorted((file.found.width, file.found.height)), sorted(file.exif.pixels), strict=True
    )
    return all(abs(now / wrote - 1) < _SAME_SIZE for now, wrote in pairs)


def _calibrated(file: File) -> CameraProfile | None:
    """The profile of the camera, where the picture is as large as the camera wrote it."""
    found, wrote = file.found, file.exif.pixels
    size = sorted((found.width, found.height))
    if wrote is not None and sorted(wrote) != size:
        return None
    return profile_for(file.exif.camera, found.width, found.height)


def _notes(file: File) -> tuple[str, ...]:
    found, space = file.found, file.space
    named = PICTURES.get(file.path.suffix.lower(), found.format)
    said = {
        f"The name says {named}, the content is {found.format}.": named != found.format,
        f"The file holds {found.frames} frames or pages; the first is shown.": found.frames > 1,
        "Transparent parts are shown over white.": found.alpha,
        f"{found.bits} bits a channel were rounded to 8.": found.bits > 8,
        "CMYK without a colour profile: the colours are only roughly right.": (
            found.mode == "CMYK" and not space.profile
        ),
        space.note: bool(space.note),
    }
    return tuple(sentence for sentence, holds in said.items() if holds)


def _sha256(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()
