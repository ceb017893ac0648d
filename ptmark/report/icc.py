"""An sRGB colour profile made from the published figures, the same bytes each time.

Profile format: ICC.1:2001-04 (version 2.4), a three-component matrix profile for a display;
figures: IEC 61966-2-1:1999, its primaries seen under D50 as the profile connection space has it
(linear Bradford adaptation). No one's file is shipped, so there is no licence to carry.
"""

import struct
from functools import cache

import numpy as np

__all__ = ["srgb_profile", "usable_profile"]

# Columns of the sRGB to XYZ (D50) matrix, and D50 itself: ICC.1 and IEC 61966-2-1, from memory;
# the tests hold them against another maker's sRGB.
_PRIMARIES = {
    b"rXYZ": (0.43607, 0.22249, 0.01392),
    b"gXYZ": (0.38515, 0.71687, 0.09708),
    b"bXYZ": (0.14307, 0.06061, 0.71410),
}
_D50 = (0.96420, 1.0, 0.82491)
_STEPS = 1024  # of the tone curve
_CLASSES = {b"scnr", b"mntr", b"prtr", b"spac"}
_HEAD = 128


def _xyz(value: tuple[float, float, float]) -> bytes:
    return b"XYZ \0\0\0\0" + struct.pack(">3i", *(round(65536 * part) for part in value))


def _curve() -> bytes:
    coded = np.linspace(0, 1, _STEPS)
    light = np.where(coded <= 0.04045, coded / 12.92, ((coded + 0.055) / 1.055) ** 2.4)
    table = np.round(65535 * light).astype(">u2").tobytes()
    return b"curv\0\0\0\0" + struct.pack(">I", _STEPS) + table


@cache
def srgb_profile() -> bytes:
    """The profile's bytes."""
    name = b"sRGB IEC61966-2.1\0"
    described = b"desc\0\0\0\0" + struct.pack(">I", len(name)) + name + bytes(8 + 3 + 67)
    free = b"text\0\0\0\0No copyright, use freely\0"
    curve = _curve()
    tags = {b"desc": described, b"cprt": free, b"wtpt": _xyz(_D50)}
    tags |= {name: _xyz(value) for name, value in _PRIMARIES.items()}
    tags |= dict.fromkeys((b"rTRC", b"gTRC", b"bTRC"), curve)
    table, body, places = b"", b"", dict[bytes, int]()
    start = _HEAD + 4 + 12 * len(tags)
    for signature, data in tags.items():
        if data not in places:  # the three curves are one
            places[data] = start + len(body)
            body += data + bytes(-len(data) % 4)
        table += signature + struct.pack(">II", places[data], len(data))
    made = struct.pack(">I", len(tags)) + table + body
    head = struct.pack(">I4xI", _HEAD + len(made), 0x02400000) + b"mntrRGB XYZ "
    head += struct.pack(">6H", 2000, 1, 1, 0, 0, 0) + b"acsp" + bytes(28)
    head += struct.pack(">3i", *(round(65536 * part) for part in _D50))
    return head.ljust(_HEAD, b"\0") + made


def usable_profile(profile: bytes, components: int) -> bool:
    """Whether a picture's own profile may stand in a PDF/A file for so many components.

    By ISO 19005-2, 6.2.4.2 (from memory): input, display, output or colour space class, and the
    colour space of the picture.
    """
    if len(profile) < _HEAD or profile[36:40] != b"acsp":
        return False
    whole = int.from_bytes(profile[:4], "big") == len(profile)
    space = {1: b"GRAY", 3: b"RGB "}.get(components)
    return (
        whole
        and profile[12:16] in _CLASSES
        and profile[16:20] == space
        and profile[8] in {2, 4}
    )
