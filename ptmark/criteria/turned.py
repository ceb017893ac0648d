"""The worst rectangle whose sides lie along the axes of one turned frame."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from math import inf

import numpy as np
import numpy.typing as npt

from ptmark.criteria.geometry import Array, Indices
from ptmark.criteria.stretch import heaviest_stretch, stretch_totals

__all__ = ["Bounds", "Turned"]

_STEP = 1.3  # from one rectangle's width to the next, in covering what the bounds allow
_CROWD = 400  # above so many the sieve, cubic in their number, costs more than it spares

_Floor = Callable[[], float]


@dataclass(frozen=True, slots=True)
class Bounds:
    """What a rectangle must keep: its two sides and its area."""

    long: float
    short: float
    area: float = inf

    def widened(self, by: float) -> "Bounds":
        """Bounds that a set keeps at a turn where its extents differ by at most ``by``."""
        sum_most = self.long + min(self.short, self.area / self.long)
        return Bounds(self.long + by, self.short + by, self.area + by * sum_most + by * by)

    def cover(self) -> list[tuple[float, float]]:
        """Widths and heights of rectangles that hold every rectangle within the bounds."""
        covers: list[tuple[float, float]] = []
        width = min(self.long, self.area / self.short)
        while True:
            covers.append((width, self.height(width / _STEP) if covers else self.short))
            if width >= self.long:
                return covers
            width = min(width * _STEP, self.long)

    def height(self, width: float) -> float:
        """The largest second side beside a first of ``width``."""
        return min(self.short, self.area / width) if width > 0 else self.short


class Turned:
    """Extents of indications along the two axes of a frame.

    Parameters
    ----------
    low, high : ndarray of shape (M, 2)
        Extent of each along the first and the second axis.
    weights : ndarray of shape (M,)
    """

    def __init__(self, low: Array, high: Array, weights: Array) -> None:
        self._low, self._high, self._weights = low, high, weights

    def best(self, bounds: Bounds, floor: float, enough: float) -> tuple[float, Indices]:
        """The heaviest set above ``floor`` with its positions; (floor, none) without one.

        It may stop at the first one of ``enough``.
        """
        total, members = floor, np.empty(0, dtype=np.int64)

        def beaten() -> float:
            return total

        for reached, height in self._columns(bounds, beaten):
            mass, inside = heaviest_stretch(
                self._low[reached, 1], self._high[reached, 1], self._weights[reached], height
            )
            if mass > total:
                total, members = mass, reached[inside]
            if total >= enough:
                break
        return total, members

    def heaviest(self, bounds: Bounds, floor: float) -> tuple[float, npt.NDArray[np.bool_]]:
        """Weight of the heaviest set above ``floor``, and which belong to any such set."""
        most, may = floor, np.zeros(len(self._weights), dtype=bool)
        for reached, height in self._columns(bounds, lambda: floor):
            low, high = self._low[reached, 1], self._high[reached, 1]
            totals = stretch_totals(low, high, self._weights[reached], height)
            most = max(most, float(totals.max()))
            for start in high[totals > floor]:
                may[reached[(high >= start) & (low <= start + height)]] = True
        return most, may

    def sieve(self, bounds: Bounds, floor: float) -> npt.NDArray[np.bool_]:
        """Which may belong to a set above ``floor``; may keep too many, never too few.

        The sides that the bounds allow are covered by a few rectangles, each of them tried at
        every smallest ``xh`` with every smallest ``yh``. Crowds are let through unlooked at.
        """
        count = len(self._weights)
        if count > _CROWD:
            return np.ones(count, dtype=bool)
        may = np.zeros(count, dtype=bool)
        starts, low = self._high, self._low
        from_here = self._high[None] >= starts[:, None]
        for width, height in bounds.cover():
            reach = low[None] <= (starts + np.array([width, height]))[:, None]
            inside = (from_here & reach).astype(np.float64)
            across, along = inside[:, :, 0], inside[:, :, 1]
            above = (across * self._weights) @ along.T > floor
            if above.any():
                may |= ((above.astype(np.float64) @ along) * across).any(axis=0)
        return may

    def rectangle(self, turn: float) -> Array:
        """Corners of the smallest rectangle that reaches all, in the unturned frame, (4, 2)."""
        start, end = self._high.min(axis=0), self._low.max(axis=0)
        near, far = np.minimum(start, end), np.maximum(start, end)
        corners = np.array([near, (far[0], near[1]), far, (near[0], far[1])])
        back = np.array([[np.cos(turn), np.sin(turn)], [-np.sin(turn), np.cos(turn)]])
        return np.asarray(corners @ back)

    def _columns(self, bounds: Bounds, floor: _Floor) -> Iterator[tuple[Indices, float]]:
        """Columns that may hold a set above ``floor()``: whom they reach, and their height.

        For each smallest ``xh`` the largest ``xl`` is bisected: columns from the i-th to the
        j-th largest ``xl`` reach no more than the widest at the height of the narrowest.
        """
        low, high, weights = self._low[:, 0], self._high[:, 0], self._weights
        most = stretch_totals(low, high, weights, bounds.long)
        for anchor in np.argsort(-most, kind="stable"):
            if most[anchor] <= floor():
                return
            start = high[anchor]
            reached = np.flatnonzero((high >= start) & (low <= start + bounds.long))
            reached = reached[np.argsort(low[reached], kind="stable")]
            widths = np.maximum(low[reached] - start, 0.0)
            yield from self._cuts(reached, widths, bounds, floor)

    def _cuts(
        self, reached: Indices, widths: Array, bounds: Bounds, floor: _Floor
    ) -> Iterator[tuple[Indices, float]]:
        flat = bounds.area / bounds.short
        first = max(int(np.searchsorted(widths, flat, side="right")) - 1, 0)
        spans = [(first, len(reached) - 1)]
        while spans:
            begin, end = spans.pop()
            part, height = reached[: end + 1], bounds.height(float(widths[begin]))
            low, high = self._low[part, 1], self._high[part, 1]
            if stretch_totals(low, high, self._weights[part], height).max() <= floor():
                continue
            if begin == end:
                yield part, height
            else:
                middle = (begin + end) // 2
                spans += [(begin, middle), (middle + 1, end)]
