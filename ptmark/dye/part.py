"""Dye that touches something else: the part of a blob that is dye by its colour."""

from collections.abc import Iterator
from dataclasses import replace

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.closeup import close_up
from ptmark.dye.coarse import Blob, CoarseLook
from ptmark.dye.contour import Contour, contours
from ptmark.dye.fine import look_closely
from ptmark.dye.judge import Sight, reason_against
from ptmark.dye.quick import middle, picked
from ptmark.dye.sheet import Crop, in_fine, lay_out
from ptmark.photo import Photo, srgb_to_linear

__all__ = ["dye_part", "parts_called"]

Array = npt.NDArray[np.float64]
Bytes = npt.NDArray[np.uint8]

# Surely dye, pixel by pixel: far inside the judge's bounds, since where it goes on into the
# other thing the part has no edge of its own to tell by.
MOST_RED_TAKEN, LEAST_GREEN_TAKEN, MOST_BROWN = 0.48, 0.20, 1.45
LEAST_CONTRAST = 0.25
LEAST_PIXELS, LEAST_SHARE = 40, 0.03  # of the whole: less is the blend at a finger's rim
UNSURE_PX = 2.0  # how far the outline may lie off there: as far as the part is widened
_SMOOTH_PX = 1.0
_FIVE = np.ones((5, 5), np.uint8)  # widens by UNSURE_PX


def dye_part(photo: Photo, look: CoarseLook, outline_px: Array) -> Crop | None:
    """Crop an outline whose whole is no dye, with only what is dye by its colour to look at.

    Parameters
    ----------
    photo, look
        As for `ptmark.dye.closeup.close_up`.
    outline_px : ndarray of shape (N, 2)
        Photo px.

    Returns
    -------
    Crop or None
        None where too little of it is dye.
    """
    rim = np.round((outline_px + 0.5) / look.factor - 0.5 - look.origin).astype(np.int32)
    low, high = rim.min(axis=0), rim.max(axis=0) + 1
    blob = Blob(rim=rim[:, None], box=(*low.tolist(), *high.tolist()), peak=0.0)
    crop = close_up(photo, look, blob)
    bare = picked(crop.rgb, np.flatnonzero(crop.around > 0), 1000)
    white = srgb_to_linear(middle(bare))
    light = cv2.GaussianBlur(srgb_to_linear(np.ascontiguousarray(crop.rgb)), (0, 0), _SMOOTH_PX)
    red, green, blue = cv2.split(1 - light / np.maximum(white, 0.01))
    near = in_fine(crop.near, crop.factor, crop.rgb.shape)
    sure = (near > 0) & (green > LEAST_GREEN_TAKEN) & (red < MOST_RED_TAKEN * green)
    sure &= blue + 0.8 * red < MOST_BROWN * green
    _, names, stats, _ = cv2.connectedComponentsWithStats(sure.view(np.uint8))
    whole = cv2.contourArea(outline_px.astype(np.float32)) / crop.step**2
    large = stats[:, cv2.CC_STAT_AREA] >= max(LEAST_PIXELS, LEAST_SHARE * whole)
    large[0] = False
    if not large.any():
        return None
    part = large[names].view(np.uint8)
    near[cv2.dilate(part, _FIVE) == 0] = 0
    return replace(crop, near=near, seeds=part, factor=1)


def parts_called(parts: list[Crop], photo_blur_px: float, sight: Sight) -> Iterator[Contour]:
    """Outlines of parts that pass the judge too, the least sure of their place said.

    ``photo_blur_px`` and ``sight`` as for all others of the photo.
    """
    for sheet in lay_out(parts):
        for one in contours(look_closely(sheet), photo_blur_px, sight.least_px / 2):
            red, green, _ = one.taken_light
            sure = one.contrast >= LEAST_CONTRAST and red < MOST_RED_TAKEN * green
            if sure and not reason_against(replace(one, cut=0.0), sight):
                yield replace(
                    one,
                    shift_px=one.shift_px + UNSURE_PX * one.cut,
                    end_shift_px=one.end_shift_px + UNSURE_PX * one.cut,
                )
