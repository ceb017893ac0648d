"""Outlines drawn round a ring: filled they are a disc, and a ring crack passes as rounded."""

from collections.abc import Sequence

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye import Remark
from ptmark.dye.about import within_outline
from ptmark.photo import Photo

__all__ = ["hollow_remark", "is_hollow"]

# Own choices: of the colour's way from the surface to the outline's strongest tenth, the
# middle has to hold this much; a way of fewer code values than that is grain.
_CLEAN, _LEAST_CODES = 0.25, 30.0
_MIDDLE = 0.5  # of the greatest depth under the outline
_AROUND = 0.3  # of the outline's size, where the surface is looked at
_LEAST_DEPTH_PX = 4.0


def hollow_remark(names: Sequence[str]) -> Remark | None:
    """What is to be said of outlines that are hollow (`is_hollow`), by letter; None of none.

    Examples
    --------
    >>> hollow_remark([]) is None
    True
    """
    if not names:
        return None
    return Remark(
        f"Hollow: {', '.join(names)}. The outline's middle is as clean as the surface about "
        "it, but counts as dye: a ring or an arc is judged as a rounded indication.",
        "Draw along the dye and leave the clean middle out.",
    )


def is_hollow(photo: Photo, outline_px: npt.NDArray[np.float64]) -> bool:
    """Whether the middle of an outline of shape (N, 2), px, has the surface's colour.

    The surface's is the median about the outline; the dye's that of the tenth within which is
    farthest from it.
    """
    low, high = outline_px.min(axis=0), outline_px.max(axis=0)
    around = np.maximum(_AROUND * (high - low), 2 * _LEAST_DEPTH_PX)
    left, top = np.maximum(np.floor(low - around), 0).astype(int)
    right, bottom = np.ceil(high + around).astype(int) + 1
    seen = photo.rgb[top:bottom, left:right].astype(np.float32)
    inside = within_outline(outline_px - (left, top), seen.shape)
    depth = cv2.distanceTransform(np.pad(inside, 1), cv2.DIST_L2, 5)[1:-1, 1:-1]
    if depth.max() < _LEAST_DEPTH_PX or inside.all():
        return False
    surface = np.median(seen[inside == 0], axis=0)
    way = np.linalg.norm(cv2.GaussianBlur(seen, (0, 0), 1.0) - surface, axis=2)
    dye = float(np.percentile(way[inside > 0], 90))
    middle = float(np.median(way[depth >= _MIDDLE * depth.max()]))
    return dye > _LEAST_CODES and middle < _CLEAN * dye
