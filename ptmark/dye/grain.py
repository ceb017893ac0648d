"""Whether a photo was smoothed: its grain is gone where it is flat, and detail with it.

Noise reduction and filters that keep edges leave flat places without grain, and what still
stands there stands alone: most pixels lie on their neighbours' mean, and few far off. They also
round off the thin ends of indications, which makes lengths too short.
"""

import cv2
import numpy as np

from ptmark.dye.corners import MOST_CUT, rounding_of_card
from ptmark.dye.quick import middle
from ptmark.dye.remark import Remark
from ptmark.photo import Photo
from ptmark.scale import SurfaceMap

__all__ = ["smoothed_remark"]

# Bounds of our own, in codes of the green: the median of what lies beside the mean of its
# neighbours, as a standard deviation, and its root mean square in the median patch. Smoothed
# by bilateral, median or non-local means filters: 0.00 to 0.09 and 0.18 to 0.23. Demo and truth
# photos 0.28 to 0.7; pictures of hardly any grain at JPEG quality 88 0.12 and more.
LEAST_SPREAD, LEAST_LEFT = 0.09, 0.15
# JPEG itself leaves little grain below; it costs no length, and where it costs more it is told.
LEAST_QUALITY = 80.0
_PATCHES, _SIDE, _RIM = 80, 24, 3
_LEAST_FLAT = 15  # patches
_FLAT, _LIGHT, _FULL = 40, 70, 250  # codes: range, least mean, most
_MEND = (
    "Use the photo as the camera wrote it, with beauty and noise filters off and more light on "
    "the surface."
)


def smoothed_remark(photo: Photo, surface: SurfaceMap | None = None) -> Remark | None:
    """What is to be said of a photo that was smoothed, by the card's corners or its grain.

    None where neither tells: corners are whole or no card's, grain is there or nothing flat.
    """
    known = surface is not None and surface.reference == "card"
    cut = rounding_of_card(photo, surface) if surface is not None and known else None
    if cut is not None and cut > MOST_CUT:
        return Remark(
            "The photo was smoothed or enlarged: corners of the card's squares are rounded by "
            f"{cut:.1f} pixels more than its blur makes them. Thin ends and faint indications "
            "go so too, so that lengths may come out too short by more than their U.",
            _MEND,
        )
    quality = photo.info.quality
    if quality is not None and quality < LEAST_QUALITY:
        return None
    spread, left = _grain(photo)
    if spread >= LEAST_SPREAD or left <= LEAST_LEFT:
        return None
    return Remark(
        "The photo shows no grain: it was smoothed, by noise reduction, a filter or strong "
        "compression, and thin ends and faint indications go with the grain, so that lengths "
        "may come out too short by more than their U.",
        _MEND,
    )


def _grain(photo: Photo) -> tuple[float, float]:
    """Robust and root mean square spread of flat places at the finest scale, codes."""
    height, width = photo.rgb.shape[:2]
    if min(height, width) < _SIDE:
        return LEAST_SPREAD, 0.0
    across = max(1, round((_PATCHES * width / height) ** 0.5))
    tops = np.linspace(0, height - _SIDE, max(1, _PATCHES // across)).astype(int)
    lefts = np.linspace(0, width - _SIDE, across).astype(int)
    green = photo.rgb[..., 1]
    patches = np.stack(
        [green[y : y + _SIDE, x : x + _SIDE] for y in tops.tolist() for x in lefts.tolist()]
    )
    low, high = patches.min(axis=(1, 2)), patches.max(axis=(1, 2))
    light = patches.mean(axis=(1, 2)) > _LIGHT
    flat = patches[light & (high < _FULL) & (high - low < _FLAT)].astype(np.float32)
    if len(flat) < _LEAST_FLAT:
        return LEAST_SPREAD, 0.0
    mean = cv2.GaussianBlur(flat.reshape(-1, _SIDE), (0, 0), 1.0).reshape(flat.shape)
    off = np.abs(flat - mean)[:, _RIM:-_RIM, _RIM:-_RIM]
    spread = 1.4826 * float(middle(off.ravel()))
    return spread, float(np.median(np.sqrt((off**2).mean(axis=(1, 2)))))
