"""Developer so bright that the photo clips it: the edges of dye on it cannot be placed.

Where white is clipped, what the dye takes of the light shows only where it takes much of it:
tails and rims are white too, and the half of the contrast that is seen lies too far inside.
How far nothing in the photo tells, so what is measured there is the least that it can be.
"""

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.beside import evenly, outward, signed_area
from ptmark.dye.sampled import Sample, sampled
from ptmark.photo import Photo

__all__ = ["FULL", "clipped_share", "is_overexposed", "overexposed_share"]

Array = npt.NDArray[np.float64]

FULL = 252  # an 8-bit value that no longer tells how bright it was

# Bounds of our own. The truth photos exposed 1.3 to 2.8 times as long, in three casts of light:
# 0.74 of 353 lengths covered above the bound, 0.99 of 186 below it. It is the green that tells:
# red is white's as much as the dye's, and blue alone still clipped did no harm.
_BESIDE_PX = (5.0, 8.0)
_MOST_CLIPPED = 0.9  # of what lies beside an outline


def is_overexposed(photo: Photo, outline_px: Array) -> bool:
    """Whether the developer beside an outline of shape (N, 2) px is clipped all round."""
    if not _clipped_near(photo, outline_px):
        return False
    ring = evenly(outline_px)
    ring = ring if signed_area(ring) > 0 else ring[::-1]
    away = outward(ring)
    at = np.concatenate([np.round(ring + far * away).astype(int) for far in _BESIDE_PX])
    height, width = photo.rgb.shape[:2]
    inside = ((at >= 0) & (at < (width, height))).all(axis=1)
    if not inside.any():
        return False
    x, y = at[inside].T
    green = photo.rgb[y, x, 1]
    return bool(np.mean(green >= FULL) > _MOST_CLIPPED)


def _clipped_near(photo: Photo, outline_px: Array) -> bool:
    """Whether any of every third pixel of the outline's box is: it mostly is not."""
    low = np.maximum(np.floor(outline_px.min(axis=0) - max(_BESIDE_PX)), 0).astype(int)
    high = np.ceil(outline_px.max(axis=0) + max(_BESIDE_PX)).astype(int) + 1
    return bool((photo.rgb[low[1] : high[1] : 3, low[0] : high[0] : 3, 1] >= FULL).any())


def overexposed_share(photo: Photo, area_px: Array | None) -> float:
    """Share of the examined area, or of the photo, in which pale dye cannot show."""
    sample = sampled(photo, None, area_px)
    return 0.0 if sample is None else clipped_share(sample)


def clipped_share(sample: Sample) -> float:
    """Share of a sample in which the green is clipped, whose lack tells dye from white."""
    clipped = (sample.planes[1] >= FULL) & sample.inside
    return cv2.countNonZero(clipped) / sample.count
