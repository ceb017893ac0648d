"""sRGB code values, linear light and CIE L*a*b* (D65, 2° observer).

Code values and linear light run from 0 to 1 (or 0 to 255 for uint8 codes); the last axis of an
array of colours is R, G, B.
"""

from functools import cache
from typing import Any

import numpy as np
import numpy.typing as npt

__all__ = ["linear_to_lab", "linear_to_srgb", "srgb_to_linear"]

Floats = npt.NDArray[np.floating[Any]]

# IEC 61966-2-1 primaries and white to CIE XYZ in the usual seven digits (from memory; the tests
# hold them against published L*a*b* values)
_TO_XYZ = np.array(
    [
        [0.4124564, 0.3575761, 0.1804375],
        [0.2126729, 0.7151522, 0.0721750],
        [0.0193339, 0.1191920, 0.9503041],
    ]
)
_WHITE = _TO_XYZ.sum(axis=1)  # D65 as the matrix has it: 0.95047, 1, 1.08883
_EPSILON, _KAPPA = 216 / 24389, 24389 / 27  # CIE 15: the exact joint of cube root and line


def srgb_to_linear(
    srgb: npt.NDArray[np.uint8] | Floats,
) -> npt.NDArray[np.float32]:
    """Decode sRGB code values to linear light.

    Parameters
    ----------
    srgb : ndarray of any shape, uint8 (0 to 255) or float (0 to 1)

    Returns
    -------
    ndarray of the same shape, float32
        0 to 1.

    Notes
    -----
    ``c / 12.92`` up to 0.04045, else ``((c + 0.055) / 1.055) ** 2.4`` [1]_.

    References
    ----------
    .. [1] IEC 61966-2-1:1999.

    Examples
    --------
    >>> srgb_to_linear(np.array([0, 255], np.uint8)).tolist()
    [0.0, 1.0]
    """
    if srgb.dtype != np.uint8:
        return _decode(np.asarray(srgb)).astype(np.float32, copy=False)
    if srgb.ndim == 3 and srgb.size:
        import cv2  # its table runs four times as fast as NumPy's indexing

        return np.asarray(cv2.LUT(srgb, _table()), np.float32).reshape(srgb.shape)
    return _table()[srgb]


def linear_to_srgb(linear: Floats) -> npt.NDArray[np.float32]:
    """Encode linear light as sRGB code values from 0 to 1; what lies outside is clipped.

    Parameters
    ----------
    linear : ndarray of any shape, float
        0 to 1.

    Returns
    -------
    ndarray of the same shape, float32
        Times 255 and rounded, the 8-bit code.

    Notes
    -----
    The inverse of `srgb_to_linear`, its joint at 0.0031308 (IEC 61966-2-1:1999).
    """
    light = np.clip(linear, 0, 1)
    bent = 1.055 * np.power(light, 1 / 2.4) - 0.055
    return np.where(light <= 0.0031308, light * 12.92, bent).astype(np.float32, copy=False)


def linear_to_lab(linear: Floats) -> Floats:
    """CIE L*a*b* of linear sRGB light against the D65 white, 2° observer.

    Parameters
    ----------
    linear : ndarray of shape (..., 3), float32 or float64
        0 to 1.

    Returns
    -------
    ndarray of shape (..., 3), float64 for float64, else float32
        L* 0 to 100, a* and b*.

    Raises
    ------
    ValueError
        If the last axis does not hold three values.

    References
    ----------
    .. [1] CIE 15:2018 (CIE 1976 L*a*b*), with the exact constants 216/24389 and 24389/27.

    Examples
    --------
    >>> linear_to_lab(np.array([1.0, 1.0, 1.0])).round(4).tolist()
    [100.0, 0.0, 0.0]
    """
    if linear.ndim == 0 or linear.shape[-1] != 3:
        raise ValueError(f"colours need a last axis of 3, got shape {linear.shape}")
    kind = np.float64 if linear.dtype == np.float64 else np.float32
    ratio = linear @ (_TO_XYZ / _WHITE[:, np.newaxis]).T.astype(kind)
    bent = np.where(ratio > _EPSILON, np.cbrt(ratio), (_KAPPA * ratio + 16) / 116)
    x, y, z = bent[..., 0], bent[..., 1], bent[..., 2]
    return np.stack((116 * y - 16, 500 * (x - y), 200 * (y - z)), axis=-1).astype(kind)


def _decode(code: Floats) -> Floats:
    bent = np.power(np.maximum((code + 0.055) / 1.055, 0), 2.4)
    return np.where(code <= 0.04045, code / 12.92, bent)


@cache
def _table() -> npt.NDArray[np.float32]:
    table = _decode(np.arange(256) / 255).astype(np.float32)
    table.flags.writeable = False
    return table
