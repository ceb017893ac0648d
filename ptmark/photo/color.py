"""sRGB code values and linear light.

Code values and linear light run from 0 to 1 (or 0 to 255 for uint8 codes); the last axis of an
array of colours is R, G, B.
"""

from functools import cache
from typing import Any

import numpy as np
import numpy.typing as npt

__all__ = ["linear_to_srgb", "srgb_to_linear"]

Floats = npt.NDArray[np.floating[Any]]


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


def _decode(code: Floats) -> Floats:
    bent = np.power(np.maximum((code + 0.055) / 1.055, 0), 2.4)
    return np.where(code <= 0.04045, code / 12.92, bent)


@cache
def _table() -> npt.NDArray[np.float32]:
    table = _decode(np.arange(256) / 255).astype(np.float32)
    table.flags.writeable = False
    return table
