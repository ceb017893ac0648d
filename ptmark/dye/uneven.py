"""Outlines most of which hold far less dye than the rest: a crack that touches a run's rim."""

from collections.abc import Sequence

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.about import pixels_about, within_outline
from ptmark.dye.contrast import redness
from ptmark.dye.quick import median, quantiles
from ptmark.dye.remark import Remark
from ptmark.photo import Photo

__all__ = ["is_uneven", "uneven_remark"]

# Of its reddest twentieth along the middle line, what half of it holds at most. True ones of
# photos of known truth have 0.63 and more, a crack on the rim of a run 0.29.
MOST = 0.5
_REDDEST = 0.95  # quantile
_LEAST_RED = 0.1  # of it, log of red over green; less tells nothing
_LEAST_LONG_PX = 30  # of the middle line
_NEXT, _CLEAR, _BESIDE = (np.ones((side, side), np.uint8) for side in (3, 7, 13))
_BESIDE_PX = 8


def uneven_remark(names: Sequence[str]) -> Remark | None:
    """What is to be said of outlines that are uneven (`is_uneven`), by letter; None of none.

    Examples
    --------
    >>> uneven_remark([]) is None
    True
    """
    if not names:
        return None
    return Remark(
        f"Mostly pale, with a part that holds twice the dye and more: {', '.join(names)}. A "
        "crack that touches the rim of a run or a stain is called as one with it.",
        "Look at the part, and trace the crack alone if the rest is none.",
    )


def is_uneven(photo: Photo, outline_px: npt.NDArray[np.float64]) -> bool:
    """Whether most of an outline's middle line is far paler than the rest; shape (N, 2) px."""
    crop, low = pixels_about(photo, outline_px, _BESIDE_PX)
    inside = within_outline(outline_px - low, crop.shape)
    framed = cv2.copyMakeBorder(inside, 1, 1, 1, 1, cv2.BORDER_CONSTANT)
    depth = cv2.distanceTransform(framed, cv2.DIST_L2, 3)[1:-1, 1:-1]
    line = (depth > 0) & (depth >= cv2.dilate(depth, _NEXT))
    beside = cv2.dilate(inside, _BESIDE) > cv2.dilate(inside, _CLEAR)
    if np.count_nonzero(line) < _LEAST_LONG_PX or not beside.any():
        return False
    red = cv2.GaussianBlur(redness(crop), (0, 0), 1.0)
    held = red[line] - median(red[beside])
    (reddest,) = quantiles(held, (_REDDEST,))
    return reddest > _LEAST_RED and float(median(held)) < MOST * reddest
