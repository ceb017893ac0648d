"""The box of a blob at full resolution, or less where the box is very large.

"Fine" px are those of the crop: ``step`` full-size px each.
"""

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.coarse import Blob, CoarseLook
from ptmark.dye.sheet import Crop, in_fine
from ptmark.photo import Photo

__all__ = ["close_up"]

Bytes = npt.NDArray[np.uint8]

_MARGIN = 8  # coarse px of developer taken round a blob
_LEAST_AROUND = 30
_MOST_PIXELS = 1_000_000  # a box beyond it is a stain or a shadow: half the resolution will do
_SEVEN = np.ones((7, 7), np.uint8)


def close_up(photo: Photo, look: CoarseLook, blob: Blob, reach: Bytes) -> Crop:
    """Crop a blob from the photo, with bare developer round it.

    ``reach`` is the look's, widened so that no rim of dye is taken for bare developer.
    """
    x0, y0, x1, y1, around = _box(blob, reach)
    own = np.zeros((y1 - y0, x1 - x0), np.uint8)
    cv2.drawContours(own, [blob.rim], 0, 1, cv2.FILLED, offset=(-x0, -y0))
    near = np.asarray(cv2.dilate(own, _SEVEN), np.uint8)
    near[(own == 0) & (look.reach[y0:y1, x0:x1] > 0)] = 0
    step = 1
    while (x1 - x0) * (y1 - y0) * (look.factor // step) ** 2 > _MOST_PIXELS:
        if step == look.factor:
            break
        step *= 2
    factor = look.factor // step
    left, top = (x0 + look.origin[0]) * factor, (y0 + look.origin[1]) * factor
    picture = photo.rgb if step == 1 else photo.reduced(step)
    rgb = picture[top : top + (y1 - y0) * factor, left : left + (x1 - x0) * factor]
    return Crop(
        rgb=rgb,
        near=near,
        around=in_fine(around, factor, rgb.shape),
        seeds=look.seeds[y0:y1, x0:x1],
        origin=(left, top),
        step=step,
        factor=factor,
    )


def _box(blob: Blob, reach: Bytes) -> tuple[int, int, int, int, Bytes]:
    """Bounds with enough bare developer round the blob, and where that lies.

    Where all about is red, whatever is not the blob's own reach has to do.
    """
    height, width = reach.shape
    margin = _MARGIN
    while True:
        x0, y0 = max(blob.box[0] - margin, 0), max(blob.box[1] - margin, 0)
        x1, y1 = min(blob.box[2] + margin, width), min(blob.box[3] + margin, height)
        around = (reach[y0:y1, x0:x1] == 0).view(np.uint8)
        if np.count_nonzero(around) >= _LEAST_AROUND:
            return x0, y0, x1, y1, around
        if (x0, y0, x1, y1) == (0, 0, width, height):
            return x0, y0, x1, y1, np.ones_like(around)
        margin *= 3
