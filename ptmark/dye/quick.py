"""Small array helpers: a blob is a few hundred numbers, so calls cost more than the work."""

from functools import lru_cache
from math import prod
from typing import TypeVar

import cv2
import numpy as np
import numpy.typing as npt

__all__ = [
    "between",
    "fresh",
    "highest",
    "inside_polygon",
    "median",
    "middle",
    "picked",
    "pixels_at",
    "quantiles",
    "sample",
    "value_at",
]

Array = npt.NDArray[np.float64]

_Number = TypeVar("_Number", bound=np.number)

_ROW, _MOST_WIDE = 1024, 32_767  # OpenCV takes no side so wide
_PAGE = 2 << 20  # bytes of a large page on common processors


def fresh(shape: tuple[int, ...], kind: type[_Number]) -> npt.NDArray[_Number]:
    """Large array of whole large pages, not set: small ones take as long to get as to fill.

    NumPy asks for large pages where the system has them, but they begin where they can.
    """
    count = prod(shape) * np.dtype(kind).itemsize
    room = np.empty(-(-count // _PAGE) * _PAGE + _PAGE, np.uint8)
    start = -room.ctypes.data % _PAGE
    return room[start : start + count].view(kind).reshape(shape)


def middle(values: npt.NDArray[_Number]) -> npt.NDArray[_Number]:
    """Upper median along the first axis: one of the values, a tenth of np.median's cost."""
    half, ordered = len(values) // 2, values.copy()
    ordered.partition(half, axis=0)
    return np.asarray(ordered[half])


def median(values: npt.NDArray[_Number]) -> npt.NDArray[_Number]:
    """`numpy.median` of floats along the last axis, at a fifth of its cost for few of them.

    A row may hold NaN alone, or none.

    Examples
    --------
    >>> median(np.array([[3.0, 1.0, 7.0, 2.0], [5.0, 0.0, 1.0, 2.0]])).tolist()
    [2.5, 1.5]
    """
    ordered, half = np.sort(values, axis=-1), values.shape[-1] // 2
    if values.shape[-1] % 2:
        return np.asarray(ordered[..., half])
    return np.asarray((ordered[..., half - 1] + ordered[..., half]) / 2)


def value_at(
    share: float, codes: npt.NDArray[np.uint8], where: npt.NDArray[np.uint8] | None = None
) -> float:
    """`numpy.quantile` of codes, those where ``where`` is not 0, from their counts.

    Examples
    --------
    >>> codes = np.array([[10, 30, 20, 0]], np.uint8)
    >>> value_at(0.75, codes, np.array([[1, 1, 1, 0]], np.uint8))
    25.0
    """
    counts = cv2.calcHist([codes], [0], where, [256], [0, 256])
    up_to = np.cumsum(counts, dtype=np.int64)
    at = share * (up_to[-1] - 1)
    low, high = np.searchsorted(up_to, np.floor([at, at + 1]), side="right").tolist()
    return float(low + (high - low) * (at % 1))


def quantiles(values: npt.NDArray[np.float32], shares: tuple[float, ...]) -> list[float]:
    """`numpy.quantile` of some ten thousand numbers at a fifth of its cost.

    Examples
    --------
    >>> quantiles(np.array([[3, 1], [2, 5]], np.float32), (0.0, 0.5, 0.75, 1.0))
    [1.0, 2.5, 3.5, 5.0]
    """
    ordered = np.sort(values, axis=None)
    at = np.multiply(shares, len(ordered) - 1)
    low = at.astype(np.intp)
    high = np.minimum(low + 1, len(ordered) - 1)
    made: list[float] = (ordered[low] + (at - low) * (ordered[high] - ordered[low])).tolist()
    return made


def between(x: float, at: tuple[float, ...], values: tuple[float, ...]) -> float:
    """`numpy.interp` of one number, whose calls cost ten times as much."""
    if x <= at[0]:
        return values[0]
    for i in range(1, len(at)):
        if x <= at[i]:
            part = (x - at[i - 1]) / (at[i] - at[i - 1])
            return values[i - 1] + part * (values[i] - values[i - 1])
    return values[-1]


def picked(
    values: npt.NDArray[_Number], where: npt.NDArray[np.intp], most: int
) -> npt.NDArray[_Number]:
    """Every so many-th value of an array of shape (H, W, …) of those asked for by flat index.

    At least ``most`` where there are as many, less than twice that.
    """
    return pixels_at(values, *np.divmod(where[:: max(1, len(where) // most)], values.shape[1]))


def pixels_at(
    values: npt.NDArray[_Number], rows: npt.NDArray[np.intp], columns: npt.NDArray[np.intp]
) -> npt.NDArray[_Number]:
    """``values[rows, columns]`` of shape (H, W, C) in a fifth of the time: by whole pixels.

    The C values of a pixel have to lie side by side in memory.
    """
    whole = values.view(np.dtype((np.void, values.itemsize * values.shape[2])))[..., 0]
    return whole[rows, columns].view(values.dtype).reshape(len(rows), values.shape[2])


def highest(values: cv2.typing.MatLike, radius: int) -> npt.NDArray[np.float32]:
    """The highest value within ``radius`` px: dilated by OpenCV's ellipse, in half the time.

    An ellipse is the union of upright rectangles, by each of which OpenCV dilates quickly.
    """
    first, *others = _rectangles(radius)
    made = cv2.dilate(values, first)
    for one in others:
        cv2.max(made, cv2.dilate(values, one), dst=made)
    return np.asarray(made, np.float32)


@lru_cache(maxsize=64)
def _rectangles(radius: int) -> list[npt.NDArray[np.uint8]]:
    size = 2 * radius + 1
    widths = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (size, size)).sum(axis=1)
    return [np.ones((int((widths >= one).sum()), int(one)), np.uint8) for one in set(widths)]


def inside_polygon(points: Array, polygon: Array) -> npt.NDArray[np.bool_]:
    """Which points of shape (N, 2) lie inside a polygon of shape (M, 2), by crossing number."""
    x, y = points[:, :1], points[:, 1:]
    x0, y0 = polygon[:, 0], polygon[:, 1]
    x1, y1 = np.roll(x0, -1), np.roll(y0, -1)
    spans = (y0 > y) != (y1 > y)
    rise = np.where(y1 == y0, 1.0, y1 - y0)
    left_of = x < x0 + (y - y0) * (x1 - x0) / rise
    return np.asarray(np.count_nonzero(spans & left_of, axis=1) % 2 == 1)


def sample(values: npt.NDArray[np.float32], places: Array) -> Array:
    """Bilinear values at places of shape (..., 2), px of the array."""
    count = places[..., 0].size
    shape = (1, count) if count < _MOST_WIDE else (-(-count // _ROW), _ROW)
    x, y = (np.resize(one, shape) for one in places.reshape(-1, 2).T.astype(np.float32))
    made = cv2.remap(values, x, y, cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE)
    return made.ravel()[:count].reshape(places.shape[:-1]).astype(np.float64)
