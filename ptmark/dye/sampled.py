"""Pixels at even steps of the examined area, for what is told of all of it."""

from dataclasses import dataclass

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.photo import Photo
from ptmark.scale import CARD_HEIGHT_MM, CARD_WIDTH_MM, SurfaceMap

__all__ = ["SAMPLES", "Sample", "card_corners", "sampled"]

Array = npt.NDArray[np.float64]
Bytes = npt.NDArray[np.uint8]
Mask = npt.NDArray[np.bool_]

SAMPLES = 120_000


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Sample:
    """Every ``step``-th pixel of the examined area, the card left out.

    ``least`` and ``most`` are the smallest and the largest of each pixel's three values.
    """

    rgb: Bytes
    least: Bytes
    most: Bytes
    inside: Mask
    step: int
    photo_width: int

    @property
    def count(self) -> int:
        return max(1, int(np.count_nonzero(self.inside)))


def sampled(photo: Photo, surface: SurfaceMap | None, area_px: Array | None) -> Sample | None:
    """Take the sample; None where the area is next to nothing.

    Parameters
    ----------
    photo : Photo
    surface : SurfaceMap or None
        Tells where a scale card lies.
    area_px : ndarray of shape (N, 2) or None
        Examined area, px; the whole photo where None.
    """
    height, width = photo.rgb.shape[:2]
    low, high = np.array([0, 0]), np.array([width, height])
    if area_px is not None:
        low = np.clip(np.floor(area_px.min(axis=0)), 0, high).astype(int)
        high = np.clip(np.ceil(area_px.max(axis=0)) + 1, 0, high).astype(int)
    step = max(1, round(float(np.sqrt(np.prod(high - low) / SAMPLES))))
    rgb = np.ascontiguousarray(photo.rgb[low[1] : high[1] : step, low[0] : high[0] : step])
    if rgb.size < 300:
        return None
    inside = np.ones(rgb.shape[:2], np.uint8)
    if area_px is not None:
        inside[:] = 0
        cv2.fillPoly(inside, [np.round((area_px - low) / step).astype(np.int32)], 1)
    if surface is not None and surface.reference == "card":
        card = (card_corners(surface) - low) / step
        cv2.fillPoly(inside, [np.round(card).astype(np.int32)], 0)
    red, green, blue = (cv2.extractChannel(rgb, i) for i in range(3))
    return Sample(
        rgb=rgb,
        least=np.asarray(cv2.min(cv2.min(red, green), blue), np.uint8),
        most=np.asarray(cv2.max(cv2.max(red, green), blue), np.uint8),
        inside=inside > 0,
        step=step,
        photo_width=width,
    )


def card_corners(surface: SurfaceMap) -> Array:
    """The card's outer corners, px, shape (4, 2)."""
    right, low = CARD_WIDTH_MM, CARD_HEIGHT_MM
    return surface.to_px(np.array([[0.0, 0.0], [right, 0.0], [right, low], [0.0, low]]))
