"""Turn stored pixels upright, and lay transparent ones over white."""

from typing import Any

import numpy as np
import numpy.typing as npt

__all__ = ["over_white", "upright"]

_STRIP = 512  # rows at a time


def upright(rgb: npt.NDArray[np.uint8], orientation: int) -> npt.NDArray[np.uint8]:
    """Apply the EXIF orientation.

    Parameters
    ----------
    rgb : ndarray of shape (H, W, 3), uint8
        Overwritten by mirrorings and the half turn.
    orientation : int
        1 to 8: the side on which row 0 and column 0 stand (CIPA DC-008-2019, tag 0x0112).

    Returns
    -------
    ndarray of shape (H, W, 3), or (W, H, 3) for 5 to 8, uint8, C-contiguous
    """
    import cv2

    if orientation in (2, 3, 4):
        return np.asarray(cv2.flip(rgb, {2: 1, 3: -1, 4: 0}[orientation], rgb), np.uint8)
    if orientation in (5, 6, 7, 8):
        turned = np.empty((rgb.shape[1], rgb.shape[0], 3), np.uint8)
        cv2.transpose(rgb, turned)
        flip = {6: 1, 7: -1, 8: 0}.get(orientation)
        if flip is not None:
            cv2.flip(turned, flip, turned)
        return turned
    return rgb


def over_white(
    rgb: npt.NDArray[np.uint8], alpha: npt.NDArray[Any], *, multiplied: bool
) -> npt.NDArray[np.uint8]:
    """Lay a picture over white by its alpha, in code values as screens do.

    Parameters
    ----------
    rgb : ndarray of shape (H, W, 3), uint8
        Overwritten.
    alpha : ndarray of shape (H, W), uint8 or uint16
        0 is clear.
    multiplied : bool
        Whether the colours were multiplied by their alpha already.
    """
    most = 255 if alpha.dtype == np.uint8 else 65535
    for top in range(0, rgb.shape[0], _STRIP):
        part = rgb[top : top + _STRIP]
        share = (alpha[top : top + _STRIP, :, np.newaxis] / most).astype(np.float32)
        colour = part.astype(np.float32)
        laid = colour + 255 * (1 - share) if multiplied else 255 - share * (255 - colour)
        part[...] = np.rint(np.minimum(laid, 255))
    return rgb
