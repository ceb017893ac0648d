"""The pixels of a photo about an outline, and which of them lie within it."""

from collections.abc import Sequence

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.photo import Photo

__all__ = ["box_about", "pixels_about", "widened", "within_outline"]

Array = npt.NDArray[np.float64]
Bytes = npt.NDArray[np.uint8]
Ints = npt.NDArray[np.int_]


def box_about(points: Array, margin: int, size: npt.ArrayLike) -> tuple[Ints, Ints]:
    """Bounds (x, y), half open, of the pixels about points of shape (N, 2) px.

    Cut at the border of a picture of that ``size``, (width, height), and never empty.

    Examples
    --------
    >>> low, high = box_about(np.array([[2.5, 1.0], [3.2, 7.0]]), 2, (100, 8))
    >>> low.tolist(), high.tolist()
    ([0, 0], [7, 8])
    """
    size = np.asarray(size)
    low = np.clip(np.floor(points.min(axis=0)).astype(int) - margin, 0, size - 1)
    high = np.clip(np.ceil(points.max(axis=0)).astype(int) + margin + 1, low + 1, size)
    return low, high


def pixels_about(photo: Photo, points: Array, margin: int = 0) -> tuple[Bytes, Ints]:
    """Those pixels, shape (H, W, 3), and where their first lies, px of the photo as (x, y)."""
    low, high = box_about(points, margin, photo.rgb.shape[1::-1])
    return np.ascontiguousarray(photo.rgb[low[1] : high[1], low[0] : high[0]]), low


def widened(box: Sequence[int], margin: int) -> tuple[slice, slice]:
    """Rows and columns of a box (x, y, width, height), wider to each side by the margin.

    Beyond the far sides of a picture slices end by themselves.

    Examples
    --------
    >>> widened((2, 30, 4, 5), 3)
    (slice(27, 38, None), slice(0, 9, None))
    """
    x, y, width, height = box
    return (
        slice(max(y - margin, 0), y + height + margin),
        slice(max(x - margin, 0), x + width + margin),
    )


def within_outline(outline: Array, shape: tuple[int, ...]) -> Bytes:
    """1 within an outline of shape (N, 2), px of a crop of that shape (H, W, …), else 0."""
    inside = np.zeros(shape[:2], np.uint8)
    cv2.fillPoly(inside, [np.round(outline).astype(np.int32)], 1)
    return inside
