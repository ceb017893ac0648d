"""Pixels at even steps of the examined area, for what is told of all of it."""

from dataclasses import dataclass
from functools import cached_property
from weakref import WeakKeyDictionary

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.photo import Photo
from ptmark.scale import CARD_HEIGHT_MM, CARD_WIDTH_MM, SurfaceMap

__all__ = ["SAMPLES", "Sample", "card_corners", "sampled"]

Array = npt.NDArray[np.float64]
Bytes = npt.NDArray[np.uint8]
Planes = tuple[Bytes, Bytes, Bytes]

SAMPLES = 120_000
_LEAST = 100  # pixels, below which nothing is told
_KEPT: WeakKeyDictionary[Photo, tuple[tuple[int, ...], Planes]] = WeakKeyDictionary()


@dataclass(frozen=True, kw_only=True, eq=False)
class Sample:
    """Every ``step``-th pixel of the examined area, the card left out.

    ``planes`` are their red, green and blue codes, each of shape (H, W); ``inside`` is 1 where
    they count.
    """

    planes: Planes
    inside: Bytes
    step: int
    photo_width: int

    @cached_property
    def least(self) -> Bytes:
        """The smallest of each pixel's three values."""
        red, green, blue = self.planes
        return np.asarray(cv2.min(cv2.min(red, green), blue), np.uint8)

    @cached_property
    def most(self) -> Bytes:
        """The largest of each pixel's three values."""
        red, green, blue = self.planes
        return np.asarray(cv2.max(cv2.max(red, green), blue), np.uint8)

    @cached_property
    def count(self) -> int:
        """How many count, at least 1."""
        return max(1, cv2.countNonZero(self.inside))


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
    planes = _planes(photo, (*low.tolist(), *high.tolist(), step))
    red = planes[0]
    inside = np.ones(red.shape, np.uint8)
    if area_px is not None:
        inside[:] = 0
        cv2.fillPoly(inside, [np.round((area_px - low) / step).astype(np.int32)], 1)
    if surface is not None and surface.reference == "card":
        card = (card_corners(surface) - low) / step
        cv2.fillPoly(inside, [np.round(card).astype(np.int32)], 0)
    if red.size < _LEAST or not cv2.countNonZero(inside):
        return None
    return Sample(planes=planes, inside=inside, step=step, photo_width=photo.rgb.shape[1])


def _planes(photo: Photo, grid: tuple[int, ...]) -> Planes:
    """Red, green and blue at a grid (x0, y0, x1, y1, step), kept for what is asked next."""
    kept = _KEPT.get(photo)
    if kept is None or kept[0] != grid:
        left, top, right, bottom, step = grid
        rows, columns = slice(top, bottom, step), slice(left, right, step)
        # plane by plane: NumPy takes twice as long to copy three bytes at a time
        red, green, blue = (np.ascontiguousarray(photo.rgb[rows, columns, i]) for i in range(3))
        kept = _KEPT[photo] = (grid, (red, green, blue))
    return kept[1]


def card_corners(surface: SurfaceMap) -> Array:
    """The card's outer corners, px, shape (4, 2)."""
    right, low = CARD_WIDTH_MM, CARD_HEIGHT_MM
    return surface.to_px(np.array([[0.0, 0.0], [right, 0.0], [right, low], [0.0, low]]))
