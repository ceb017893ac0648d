"""Which places on the screen are taken: rectangles sorted into cells."""

from collections import defaultdict
from collections.abc import Iterator

from PySide6.QtCore import QRectF

__all__ = ["Crowd"]

_CELL = 64.0


class Crowd:
    """Rectangles that labels should keep clear of."""

    def __init__(self) -> None:
        self._cells: defaultdict[tuple[int, int], list[QRectF]] = defaultdict(list)

    def add(self, rect: QRectF) -> None:
        """Take a place."""
        for cell in _cells(rect):
            self._cells[cell].append(rect)

    def free(self, rect: QRectF) -> bool:
        """Whether a place touches none of those taken."""
        return not any(
            rect.intersects(other)
            for cell in _cells(rect)
            for other in self._cells.get(cell, ())
        )


def _cells(rect: QRectF) -> Iterator[tuple[int, int]]:
    for x in range(int(rect.left() // _CELL), int(rect.right() // _CELL) + 1):
        for y in range(int(rect.top() // _CELL), int(rect.bottom() // _CELL) + 1):
            yield x, y
