"""Orientation, camera and focal length from EXIF; damaged data give less, never an error.

Tag numbers from CIPA DC-008-Translation-2019 (Exif 2.32), 4.6.
"""

import math
import re
from dataclasses import dataclass, field

from ptmark.photo._ifd import Entry, first_ifd, read_ifd
from ptmark.photo.camera import Camera

__all__ = ["Exif", "focal_px", "read_exif"]

_SAME_FOCAL = 0.2  # 135 frames of other shapes are compared by width or diagonal
_DIAGONAL_35MM = math.hypot(36, 24)  # 43.27 mm, the frame of 135 film
_UNIT_MM = {2: 25.4, 3: 10.0, 4: 1.0, 5: 0.001}  # 4 and 5: common practice, outside Exif


@dataclass(frozen=True, slots=True, kw_only=True)
class Exif:
    """The few facts that are used; ``pixels`` is the size the camera says it wrote, px.

    ``per_mm`` is the number of its pixels to a millimetre of the sensor, or None.
    ``adobe_rgb`` tells the colour space option of DCF 2.0 (interoperability index R03).
    """

    orientation: int = 1
    camera: Camera = field(default_factory=Camera)
    pixels: tuple[float, float] | None = None
    per_mm: float | None = None
    adobe_rgb: bool = False


def read_exif(block: bytes) -> Exif:
    """Read a TIFF-structured EXIF block, with or without the ``Exif`` marker before it."""
    block = block.removeprefix(b"Exif\0\0")
    tags = first_ifd(block)
    shot = _sub(block, tags, 0x8769)
    place = _sub(block, tags, 0x8825)
    interop = _sub(block, shot, 0xA005)
    turn = tags.get(0x0112)
    whole = int(turn.numbers[0]) if turn is not None and turn.kind in (1, 3, 4) else 1
    return Exif(
        orientation=whole if 1 <= whole <= 8 else 1,
        camera=Camera(
            make=_text(tags, 0x010F),
            model=_text(tags, 0x0110),
            lens=_text(shot, 0xA434),
            taken=_taken(shot),
            focal_mm=_number(shot, 0x920A),
            focal_35mm_mm=_number(shot, 0xA405),
            digital_zoom=_number(shot, 0xA404),
            has_location=0x0002 in place or 0x0004 in place,
        ),
        pixels=_pixels(shot),
        per_mm=_per_mm(shot),
        adobe_rgb=interop.get(0x0001, Entry((), b"", 2, 0)).raw[:3] == b"R03",
    )


def focal_px(exif: Exif, width: int, height: int) -> float | None:
    """Focal length in px of the whole picture as it is stored.

    Parameters
    ----------
    exif : Exif
    width, height : int, px
        Of the stored picture; turning it upright changes nothing.

    Returns
    -------
    float or None
        None where EXIF does not tell it or contradicts itself, or where the picture's shape
        shows that it was cut after the camera wrote it.

    Notes
    -----
    FocalLengthIn35mmFilm (0xA405) is the focal length that gives the same angle of view on
    135 film. The angle is that of the picture in the file, so a digital zoom is taken to be
    in it already and DigitalZoomRatio (0xA404) is not applied again; Exif 2.32 leaves this
    open (common practice, no source). Frames of other shapes are compared by the diagonal
    (CIPA DCG-001-2005, from memory): ``f_px = f_35 * hypot(w, h) / hypot(36, 24)``. Without
    it, FocalLength (0x920A) times FocalPlaneXResolution (0xA20E), scaled from the camera's
    size (0xA002) to the present one and times the digital zoom, which the sensor's own
    resolution does not hold. Where both are told they have to agree.

    Examples
    --------
    >>> round(focal_px(Exif(camera=Camera(focal_35mm_mm=27.0)), 4032, 3024), 1)
    3145.2
    """
    resized = 1.0
    if exif.pixels is not None:  # some programs swap its sides when they turn the pixels
        long, short = max(exif.pixels), min(exif.pixels)
        resized = max(width, height) / long
        if abs(math.log(long / short * min(width, height) / max(width, height))) > 0.02:
            return None
    camera = exif.camera
    by_sensor = by_angle = None
    if camera.focal_mm is not None and exif.per_mm is not None:
        by_sensor = camera.focal_mm * exif.per_mm * resized * (camera.digital_zoom or 1.0)
    if camera.focal_35mm_mm is not None:
        by_angle = camera.focal_35mm_mm * math.hypot(width, height) / _DIAGONAL_35MM
    if by_sensor is None or by_angle is None:
        return by_angle or by_sensor
    if exif.pixels is None:  # the sensor's resolution may be that of a larger picture
        return by_angle
    return by_angle if abs(math.log(by_angle / by_sensor)) < _SAME_FOCAL else None


def _sub(block: bytes, tags: dict[int, Entry], pointer: int) -> dict[int, Entry]:
    offset = _number(tags, pointer)
    return {} if offset is None else read_ifd(block, int(offset))[0]


def _number(tags: dict[int, Entry], tag: int) -> float | None:
    """A positive finite number; EXIF writes 0 for unknown."""
    value = tags[tag].first if tag in tags else math.nan
    return float(value) if math.isfinite(value) and value > 0 else None


def _text(tags: dict[int, Entry], tag: int) -> str:
    raw = tags[tag].raw.split(b"\0")[0] if tag in tags else b""
    try:
        text = raw.decode()
    except UnicodeDecodeError:
        text = raw.decode("latin-1")
    return "".join(c for c in text if c.isprintable()).strip()[:100]


def _taken(shot: dict[int, Entry]) -> str:
    found = re.fullmatch(r"(\d{4}):(\d\d):(\d\d) (\d\d:\d\d:\d\d)", _text(shot, 0x9003))
    if found is None or found[1] == "0000":
        return ""
    offset = re.fullmatch(r"[+-]\d\d:\d\d", _text(shot, 0x9011))
    return f"{found[1]}-{found[2]}-{found[3]}T{found[4]}{offset[0] if offset else ''}"


def _pixels(shot: dict[int, Entry]) -> tuple[float, float] | None:
    width, height = _number(shot, 0xA002), _number(shot, 0xA003)
    return None if width is None or height is None else (width, height)


def _per_mm(shot: dict[int, Entry]) -> float | None:
    resolution = _number(shot, 0xA20E)
    unit = _UNIT_MM.get(int(_number(shot, 0xA210) or 2))
    return None if resolution is None or unit is None else resolution / unit
