"""Matrix and curves of an embedded RGB profile. Written from ICC.1:2022."""

import struct
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import numpy.typing as npt

__all__ = ["Matrix", "description", "device", "has_tables", "read_matrix"]

Array = npt.NDArray[np.float64]
_PARAMETERS = (1, 3, 4, 5, 7)  # of the parametric curve types 0 to 4


@dataclass(frozen=True, slots=True, eq=False)
class Matrix:
    """Device RGB to the profile connection space: three curves, then a matrix.

    Attributes
    ----------
    to_xyz : ndarray of shape (3, 3)
        Columns are the XYZ (D50) of the red, green and blue primary.
    curves : three ndarrays of shape (65536,)
        Linear light at the code values ``i / 65535``.
    """

    to_xyz: Array
    curves: tuple[Array, Array, Array]


def device(profile: bytes) -> str:
    """Colour space of the device side: "RGB", "GRAY", "CMYK" …; "" where it is no profile."""
    if len(profile) < 132 or profile[36:40] != b"acsp":
        return ""
    return profile[16:20].decode("latin-1").strip()


def description(profile: bytes) -> str:
    """The profile's own name; "" where it gives none."""
    body = _tags(profile).get(b"desc", b"")
    if body[:4] == b"mluc" and len(body) >= 28:
        length, offset = struct.unpack_from(">II", body, 20)
        name = body[offset : offset + length].decode("utf-16-be", "replace")
    elif body[:4] == b"desc" and len(body) >= 12:
        name = body[12 : 12 + struct.unpack_from(">I", body, 8)[0]].decode("latin-1")
    else:
        name = ""
    return "".join(c for c in name if c.isprintable()).strip()[:80]


def has_tables(profile: bytes) -> bool:
    """Whether the profile works by tables, which come before its matrix."""
    return not {b"A2B0", b"A2B1"}.isdisjoint(_tags(profile))


def read_matrix(profile: bytes) -> Matrix | None:
    """Matrix and curves; None where one is missing, damaged or beyond all sense."""
    tags = _tags(profile)
    try:
        columns = [_xyz(tags[name]) for name in (b"rXYZ", b"gXYZ", b"bXYZ")]
        red, green, blue = (_curve(tags[name]) for name in (b"rTRC", b"gTRC", b"bTRC"))
    except (KeyError, ValueError, struct.error):
        return None
    to_xyz = np.column_stack(columns)
    if not np.isfinite(to_xyz).all() or abs(np.linalg.det(to_xyz)) < 1e-6:
        return None
    return Matrix(to_xyz, (red, green, blue))


def _tags(profile: bytes) -> dict[bytes, bytes]:
    if not device(profile):
        return {}
    count = min(struct.unpack_from(">I", profile, 128)[0], (len(profile) - 132) // 12)
    found = {}
    for index in range(count):
        name, offset, length = struct.unpack_from(">4sII", profile, 132 + 12 * index)
        found[name] = profile[offset : offset + length]
    return found


def _xyz(body: bytes) -> Array:
    if body[:4] != b"XYZ ":
        raise ValueError("no XYZ type")
    return np.array(struct.unpack_from(">3i", body, 8), float) / 65536


@lru_cache(maxsize=8)  # the three curves are mostly one, and the next photo's are the same
def _curve(body: bytes) -> Array:
    code = np.linspace(0.0, 1.0, 65536)
    if body[:4] == b"para":
        return _parametric(code, body)
    if body[:4] != b"curv":
        raise ValueError("no curve type")
    count = struct.unpack_from(">I", body, 8)[0]
    if count == 0:
        return code
    values: Array = np.frombuffer(body, ">u2", count, 12).astype(float)
    if count == 1 and values[0] == 0:
        raise ValueError("a curve without slope")
    if count == 1:
        return np.asarray(code ** float(values[0] / 256))
    return np.interp(code, np.linspace(0.0, 1.0, count), values / 65535)


def _parametric(code: Array, body: bytes) -> Array:
    """ICC.1:2022, parametricCurveType; the names are those of its table."""
    kind = struct.unpack_from(">H", body, 8)[0]
    if kind >= len(_PARAMETERS):
        raise ValueError("no known parametric curve")
    given = [n / 65536 for n in struct.unpack_from(f">{_PARAMETERS[kind]}i", body, 12)]
    g, a, b, c, d, e, f = given + [1.0, 1.0, 0.0, 0.0, 0.0, 0.0, 0.0][len(given) :]
    if kind in (1, 2):
        if a == 0:
            raise ValueError("a curve without slope")
        e = f = c if kind == 2 else 0.0
        c, d = 0.0, -b / a
    if not 0.05 <= g <= 20:
        raise ValueError("a curve that no picture is coded by")
    bent = np.power(np.maximum(a * code + b, 0), g) + e
    curve: Array = np.clip(np.where(code >= d, bent, c * code + f), 0, 1)
    return curve
