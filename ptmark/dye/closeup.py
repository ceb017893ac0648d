"""The box of a blob at full resolution, or less where the box is very large.

"Fine" px are those of the crop: ``step`` full-size px each.
"""

from math import pi, sqrt

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.coarse import Blob, CoarseLook
from ptmark.dye.quick import middle
from ptmark.dye.sheet import Crop, in_fine
from ptmark.photo import Photo

__all__ = ["close_up", "close_up_about"]

Array = npt.NDArray[np.float64]
Bytes = npt.NDArray[np.uint8]

_MARGIN = 8  # coarse px of developer taken round a blob
_LEAST_AROUND = 30
_MOST_PIXELS = 1_000_000  # a box beyond it is a stain or a shadow: half the resolution will do
# In photos so large that a coarse px spans so many, soft edges keep this standard deviation in
# fine px: that of cracks in photos of 12 megapixels. On truth photos enlarged to 48 megapixels
# lengths and widths came out nearer to the truth so than at full size.
_LARGE, _SOFT = 4, 1.4
_FEW = 20  # pixels that grain may make darker or steeper than the blob is
_SEVEN = np.ones((7, 7), np.uint8)
# Codes of red over the lit developer's: an eighth of its light, and a quarter. Hard shadows
# leave a third and more. Where less than a fifth of the bare places is so dark it does no
# harm; where more than three in four are, red there lies on black. Own choice.
_BENCH, _IN_LIGHT, _FEWEST, _MOST_TIMES = 0.38, 0.52, 5, 4
_RIM = 2  # coarse px round what is red where a rim of dye may lie
_FIVE = np.ones((2 * _RIM + 1,) * 2, np.uint8)


def close_up(photo: Photo, look: CoarseLook, blob: Blob) -> Crop:
    """Crop a blob from the photo, with bare developer round it."""
    x0, y0, x1, y1, around = _box(blob, look.reach)
    own = np.zeros((y1 - y0, x1 - x0), np.uint8)
    cv2.drawContours(own, [blob.rim], 0, 1, cv2.FILLED, offset=(-x0, -y0))
    near = np.asarray(cv2.dilate(own, _SEVEN), np.uint8)
    near[(own == 0) & (look.reach[y0:y1, x0:x1] > 0)] = 0
    left, top = (x0 + look.origin[0]) * look.factor, (y0 + look.origin[1]) * look.factor
    rgb = photo.rgb[top:, left:][: (y1 - y0) * look.factor, : (x1 - x0) * look.factor]
    around = _without_bench(rgb[:: look.factor, :: look.factor, 0], own, around)
    step = _step(rgb, look, near, around)
    factor, left, top = look.factor // step, left // step, top // step
    if step > 1:
        rgb = _made_smaller(rgb, step)
    return Crop(
        rgb=rgb,
        near=near,
        around=in_fine(around, factor, rgb.shape),
        seeds=look.seeds[y0:y1, x0:x1],
        origin=(left, top),
        step=step,
        factor=factor,
    )


def close_up_about(photo: Photo, look: CoarseLook, points: Array) -> Crop:
    """The same of an outline or a line of shape (N, 2), photo px."""
    rim = look.nearest(points)
    low, high = rim.min(axis=0), rim.max(axis=0) + 1
    blob = Blob(rim=rim[:, None], box=(*low.tolist(), *high.tolist()), peak=0.0)
    return close_up(photo, look, blob)


def _without_bench(red: Bytes, own: Bytes, around: Bytes) -> Bytes:
    """The bare places without those as dark as a bench beyond the part's edge or a hole.

    They are no developer, and along an edge they are half of what lies round a crack. Dye
    leaves red light: where the blob itself is dark in red, it lies in the dark and they stay.
    """
    bare = np.sort(red[around > 0], kind="stable")  # by counts, where they are bytes
    lit = int(bare[9 * len(bare) // 10])
    if bare[len(bare) // _FEWEST] >= _BENCH * lit or middle(red[own > 0]) < _IN_LIGHT * lit:
        return around
    dark = red < _BENCH * lit
    beside = (own == 0) & (cv2.dilate(own, _FIVE) > 0)
    if 2 * np.count_nonzero(dark & beside) > np.count_nonzero(beside):
        return around  # red on black, as of a display
    kept = around & (cv2.dilate(dark.view(np.uint8), _FIVE) == 0)
    enough = max(_LEAST_AROUND, len(bare) / _MOST_TIMES)
    return kept if np.count_nonzero(kept) >= enough else around


def _made_smaller(rgb: Bytes, step: int) -> Bytes:
    """Means of ``step`` x ``step`` px; the photo's last px are repeated to fill up a block.

    Were they left out, what the photo cuts off would end up to ``step - 1`` px inside it and be
    taken for whole; so it ends that much outside.
    """
    width, height = -(-rgb.shape[1] // step), -(-rgb.shape[0] // step)
    below, beside = height * step - rgb.shape[0], width * step - rgb.shape[1]
    whole = cv2.copyMakeBorder(rgb, 0, below, 0, beside, cv2.BORDER_REPLICATE)
    small = cv2.resize(whole, (width, height), interpolation=cv2.INTER_AREA)
    return np.asarray(small, np.uint8)


def _step(rgb: Bytes, look: CoarseLook, near: Bytes, around: Bytes) -> int:
    """How many full-size px a fine px shall span, a power of two.

    What a large photo shows softly is told as well by fewer pixels: its edges keep the blur
    that those of a photo of 12 megapixels have.
    """
    step, pixels = 1, rgb.shape[0] * rgb.shape[1]
    while pixels > _MOST_PIXELS * step**2 and step < look.factor:
        step *= 2
    if step == 1 and look.factor >= _LARGE:
        softness = _softness(rgb, *(in_fine(m, look.factor, rgb.shape) for m in (near, around)))
        while softness > _SOFT * 2 * step and step < look.factor:
            step *= 2
    return step


def _softness(rgb: Bytes, near: Bytes, around: Bytes) -> float:
    """About the standard deviation of a blob's sharpest edges, px; less where grain is strong.

    A Gaussian edge of standard deviation s and height c is c / (sqrt(2 pi) s) steep.
    """
    luma = cv2.cvtColor(rgb, cv2.COLOR_RGB2GRAY)
    sobel = (cv2.convertScaleAbs(one, alpha=0.25) for one in cv2.spatialGradient(luma))
    steep = cv2.max(*sobel)  # twice the slope
    last = cv2.countNonZero(near) - 1
    few = min(_FEW, last)
    white = _ranked(luma, around, cv2.countNonZero(around) // 2)
    height = white - _ranked(luma, near, few)
    slope = _ranked(steep, near, last - few) / 2
    return height / (sqrt(2 * pi) * max(slope, 0.5))


def _ranked(codes: cv2.typing.MatLike, where: Bytes, rank: int) -> float:
    """The code of that rank, from 0, of those where ``where`` is not 0, from their counts."""
    counts = cv2.calcHist([codes], [0], where, [256], [0, 256])
    return float(np.searchsorted(np.cumsum(counts), rank, side="right"))


def _box(blob: Blob, reach: Bytes) -> tuple[int, int, int, int, Bytes]:
    """Bounds with enough bare developer round the blob, and where that lies.

    Where all about is red, whatever is not the blob's own reach has to do.
    """
    height, width = reach.shape
    margin = _MARGIN
    while True:
        x0, y0 = max(blob.box[0] - margin, 0), max(blob.box[1] - margin, 0)
        x1, y1 = min(blob.box[2] + margin, width), min(blob.box[3] + margin, height)
        around = _bare(reach, x0, y0, x1, y1)
        if np.count_nonzero(around) >= _LEAST_AROUND:
            return x0, y0, x1, y1, around
        if (x0, y0, x1, y1) == (0, 0, width, height):
            return x0, y0, x1, y1, np.ones_like(around)
        margin *= 3


def _bare(reach: Bytes, x0: int, y0: int, x1: int, y1: int) -> Bytes:
    """1 in a box where nothing red lies, nor a rim of dye round it."""
    left, top = max(x0 - _RIM, 0), max(y0 - _RIM, 0)
    wide = cv2.dilate(reach[top : y1 + _RIM, left : x1 + _RIM], _FIVE)
    own = wide[y0 - top :, x0 - left :][: y1 - y0, : x1 - x0]
    return np.asarray(own == 0).view(np.uint8)
