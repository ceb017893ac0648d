"""Marks and guides as a picture with a margin round the view, which panning only moves.

Before the view leaves the margin the next picture is painted, a little in each frame, so that
no frame has to wait for all of it.
"""

from collections.abc import Iterator
from time import perf_counter

from PySide6.QtCore import QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import QPainter, QPixmap

from ptmark.window.view.guides import Guides
from ptmark.window.view.marks import Mark, paint_marks
from ptmark.window.view.rings import Rings
from ptmark.window.view.viewport import Viewport

__all__ = ["Overlay"]

_MARGIN = 400  # widget px on each side; a wider one is painted anew less often, and longer
_BEGIN = 60  # widget px off its middle, beyond which the next picture is begun
_AHEAD = 280  # widget px that its middle lies ahead, the way the photo is being moved
_SHARE_S = 0.004  # of a frame's time for the next picture


class _Sheet:
    """One picture, painted piece by piece; ``at`` is the photo's origin within it."""

    def __init__(self, port: Viewport, ratio: float, like: QPainter, ahead: QPointF) -> None:
        self.size = port.widget + QSizeF(2 * _MARGIN, 2 * _MARGIN)
        off = QPointF(_MARGIN, _MARGIN) + ahead
        self.at = port.origin + off
        self.picture = QPixmap(
            round(self.size.width() * ratio), round(self.size.height() * ratio)
        )
        self.picture.setDevicePixelRatio(ratio)
        self.picture.fill(Qt.GlobalColor.transparent)
        self._port = port.shifted(off, self.size)
        self._font = like.font()
        # At work only within `go_on`: Qt wants a painter ended before its picture goes.
        self._painter = QPainter()
        self._rest: Iterator[None] = iter(())

    def shift(self, port: Viewport) -> QPointF:
        """Where it lies in the view now."""
        return port.origin - self.at

    def covers(self, port: Viewport) -> bool:
        """Whether it still fills the view."""
        at = self.shift(port)
        return min(at.x(), at.y()) >= -2 * _MARGIN and max(at.x(), at.y()) <= 0

    def off(self, port: Viewport) -> float:
        """How far the view is off its middle, widget px."""
        at = self.shift(port) + QPointF(_MARGIN, _MARGIN)
        return max(abs(at.x()), abs(at.y()))

    def begin(
        self, marks: list[Mark], selected: frozenset[str], guides: Guides | None, rings: Rings
    ) -> None:
        """Say what is to be painted."""

        def pieces() -> Iterator[None]:
            if guides is not None:
                guides.paint(self._painter, self._port)
                yield
            view, way = QRectF(QPointF(0, 0), self.size), self._port.transform()
            yield from paint_marks(self._painter, way, marks, selected, view, rings)

        self._rest = pieces()

    def go_on(self, seconds: float = float("inf")) -> bool:
        """Paint on for about so long; tells whether it is done."""
        until = perf_counter() + seconds
        self._painter.begin(self.picture)
        self._painter.setFont(self._font)
        self._painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        try:
            return all(perf_counter() < until for _ in self._rest)
        finally:
            self._painter.end()


class Overlay:
    """Paints anew only where marks, guides, selection, zoom or place call for it."""

    def __init__(self) -> None:
        self._rings = Rings()
        self._now: _Sheet | None = None
        self._next: _Sheet | None = None
        self._key: tuple[object, ...] = ()
        self._marks: list[Mark] = []
        self._origin = QPointF()  # of the photo, in the frame before
        self._off = 0.0
        self.painted = 0  # how often it was painted anew, for tests

    def draw(
        self,
        painter: QPainter,
        port: Viewport,
        marks: list[Mark],
        selected: frozenset[str],
        ratio: float,
        guides: Guides | None = None,
    ) -> None:
        """Draw the marks, and the guides under them, where the photo lies now."""
        below = guides.content if guides else ()
        if not marks and not any(below):
            return
        size = port.widget
        key = (
            selected, port.scale, ratio, size.width(), size.height(), port.turn, port.bend,
            *below,
        )  # fmt: skip
        if marks is not self._marks or key != self._key:
            self._marks, self._key = marks, key
            self._now = self._next = None

        step, self._origin = port.origin - self._origin, QPointF(port.origin)

        def begun(ahead: QPointF) -> _Sheet:
            sheet = _Sheet(port, ratio, painter, ahead)
            sheet.begin(marks, selected, guides, self._rings)
            return sheet

        if self._now is None or not self._now.covers(port):
            there = self._next is not None and self._next.covers(port)
            sheet = self._next if there and self._next is not None else begun(QPointF())
            self._take(sheet)
        elif self._next is not None or self._now.off(port) > max(_BEGIN, self._off):
            self._next = self._next or begun(_far(step))
            if self._next.go_on(_SHARE_S) and self._next.covers(port):
                self._take(self._next)
        self._off = 0.0 if self._now is None else self._now.off(port)
        if self._now is not None:
            painter.drawPixmap(self._now.shift(port), self._now.picture)

    def _take(self, sheet: _Sheet) -> None:
        """Show this one from now on, painted to its end."""
        sheet.go_on()
        self._now, self._next = sheet, None
        self.painted += 1


def _far(step: QPointF) -> QPointF:
    """A step made longer, so that it reaches `_AHEAD`."""
    length = max(abs(step.x()), abs(step.y()))
    return step * (_AHEAD / length) if length > 0 else QPointF()
