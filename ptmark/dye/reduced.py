"""A photo made smaller, any box of it, for the coarse look and glances at its blobs."""

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.photo import Photo

__all__ = ["STRIP", "shrunk"]

Bytes = npt.NDArray[np.uint8]

STRIP = 64  # rows at a time, so that what is worked on stays in the cache


def shrunk(
    photo: Photo, factor: int, box: tuple[int, int, int, int], into: Bytes | None = None
) -> Bytes:
    """A box (x0, y0, x1, y1), coarse px, of the photo's reduced level.

    ``into``, an array of its shape, may be used for it, and is overwritten by the next then.
    By halving again and again where the photo's size allows, else all of it, which is kept.
    OpenCV halves so much faster that two halvings take a third of the time of one step by 4.
    Each rounds, so that a code may lie one off; red and green alike, which the ratio forgives.
    """
    height, width = photo.rgb.shape[:2]
    x0, y0, x1, y1 = box
    if factor == 1 or height % factor or width % factor:
        return photo.reduced(factor)[y0:y1, x0:x1]
    whole = photo.rgb[y0 * factor : y1 * factor, x0 * factor : x1 * factor]
    small = np.empty((y1 - y0, x1 - x0, 3), np.uint8) if into is None else into
    for top in range(0, len(small), STRIP):
        own = small[top : top + STRIP]
        strip = whole[top * factor : (top + STRIP) * factor]
        while strip.shape[1] > 2 * own.shape[1]:
            half = (strip.shape[1] // 2, strip.shape[0] // 2)
            strip = np.asarray(cv2.resize(strip, half, interpolation=cv2.INTER_AREA), np.uint8)
        cv2.resize(strip, (own.shape[1], own.shape[0]), dst=own, interpolation=cv2.INTER_AREA)
    return small
