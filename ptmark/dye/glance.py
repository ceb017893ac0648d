"""A glance at a blob's colour on the reduced picture, before it is looked at closely.

The bounds are wider than those of the close look, which a hairline or a speck reaches only
there: on 12 photos of known truth (155 indications, from 30 % of full contrast) the least
green over red taken was 0.09 and the most red to green 0.5.
"""

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.coarse import Blob, CoarseLook
from ptmark.dye.dull import DULL, INKY, is_dull, is_shaded_dye
from ptmark.dye.quick import middle, picked
from ptmark.dye.reduced import shrunk
from ptmark.photo import Photo, srgb_to_linear

__all__ = ["outline_of", "reason_at_a_glance"]

LEAST_COLOUR = 0.045  # green taken less red taken, share of the white's light
MOST_RED_TAKEN = 0.8
LEAST_AROUND = 6
_RING = np.ones((9, 9), np.uint8)
_MARGIN = 5


def reason_at_a_glance(photo: Photo, look: CoarseLook, blob: Blob) -> str:
    """Why a blob cannot be dye; "" where it may be."""
    height, width = look.reach.shape
    x0, y0 = max(blob.box[0] - _MARGIN, 0), max(blob.box[1] - _MARGIN, 0)
    x1, y1 = min(blob.box[2] + _MARGIN, width), min(blob.box[3] + _MARGIN, height)
    own = np.zeros((y1 - y0, x1 - x0), np.uint8)
    cv2.drawContours(own, [blob.rim], 0, 1, cv2.FILLED, offset=(-x0, -y0))
    core = own & look.seeds[y0:y1, x0:x1]
    ring = (cv2.dilate(own, _RING) > 0) & (look.reach[y0:y1, x0:x1] == 0)
    left, top = look.origin
    crop = shrunk(photo, look.factor, (left + x0, top + y0, left + x1, top + y1))
    around = picked(crop, np.flatnonzero(ring), 300)
    if len(around) < LEAST_AROUND:
        return ""
    white = srgb_to_linear(middle(around))
    light = np.array(cv2.mean(srgb_to_linear(crop), core)[:3])
    red, green, blue = (1 - light / np.maximum(white, 0.01)).tolist()
    if red > MOST_RED_TAKEN * green and green > LEAST_COLOUR:
        if is_shaded_dye(red, green, blue):
            return ""
        if is_dull(red, green, blue):
            return DULL
        return INKY
    if green - red < LEAST_COLOUR:
        return f"too pale: {100 * max(green, 0.0):.0f} % of the green light taken"
    return ""


def outline_of(blob: Blob, look: CoarseLook) -> npt.NDArray[np.float64]:
    """The blob's border in photo px, as coarse as the look was; at least a triangle."""
    rim = blob.rim.reshape(-1, 2).astype(np.float64)
    if len(rim) < 3:  # a pixel or two: the box round them
        x0, y0, x1, y1 = blob.box
        rim = np.array([[x0, y0], [x1, y0], [x1, y1], [x0, y1]]) - 0.5
    return (rim + look.origin + 0.5) * look.factor - 0.5
