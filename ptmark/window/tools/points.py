"""Picking single points: those of a scale reference, a weld, a split, an examined area."""

from collections.abc import Sequence

from PySide6.QtCore import QObject, QPointF, Qt
from PySide6.QtGui import QKeyEvent, QPainter, QTransform

from ptmark.window.tools.tool import Tool, distance, paint_handles, paint_line
from ptmark.window.view.marks import gap_to_stretch
from ptmark.window.words import tr

__all__ = ["AreaTool", "PickTool"]

_ORDERS = {
    "line": (2, [tr("first end"), tr("second end")]),
    "lines": (
        4,
        [
            tr("first end of the first line"),
            tr("its second end"),
            tr("first end of the second line"),
            tr("its second end"),
        ],
    ),
    "pipe axis": (
        2,
        [tr("first point of a line along the pipe"), tr("second point, far along it")],
    ),
    "pipe rule": (2, [tr("first end"), tr("second end")]),
    "pipe rectangle": (
        6,
        [
            tr("top left corner"),
            tr("top right corner"),
            tr("bottom right corner"),
            tr("bottom left corner"),
            tr("first point of the line where it touches the pipe"),
            tr("second point of that line, far along the pipe"),
        ],
    ),
    "pipe card": (
        2,
        [
            tr("first point of the line where the card touches the pipe"),
            tr("second point of that line, far along the pipe"),
        ],
    ),
    "pipe": (
        4,
        [
            tr("first point on one outer edge"),
            tr("second point on that edge, far from it"),
            tr("first point on the other edge"),
            tr("second point on the other edge"),
        ],
    ),
    "rectangle": (
        4,
        [
            tr("top left corner"),
            tr("top right corner"),
            tr("bottom right corner"),
            tr("bottom left corner"),
        ],
    ),
    "weld": (2, [tr("end of the weld"), tr("other end of the weld")]),
    "split": (
        2,
        [tr("first end of a line across the outline"), tr("other end, beyond the outline")],
    ),
}


class _PointsTool(Tool):
    """Points that are placed, dragged, nudged and taken back."""

    def __init__(self, points: list[QPointF], most: int, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.points = list(points)
        self.most = most
        self.active = -1
        self._dragging = False

    def press(self, at: QPointF) -> None:
        self.active = self._near(at)
        self._dragging = self.active >= 0
        if not self._dragging and len(self.points) < self.most:
            self.points.append(QPointF(at))
            self.active, self._dragging = len(self.points) - 1, True
        self.changed.emit()

    def move(self, at: QPointF, *, held: bool) -> None:
        if held and self._dragging and 0 <= self.active < len(self.points):
            self.points[self.active] = QPointF(at)
            self.changed.emit()

    def release(self, at: QPointF) -> None:
        if self._dragging:
            self.move(at, held=True)
        self._dragging = False
        self.settled()

    def settled(self) -> None:
        """Called when a point has come to rest."""

    def back(self) -> None:
        if not self.points:
            self.stopped.emit()
            return
        self.points.pop(self.active if 0 <= self.active < len(self.points) else -1)
        self.active = -1
        self.changed.emit()
        self.settled()

    def key(self, event: QKeyEvent) -> bool:
        step = self.step_of(event)
        if event.key() in {Qt.Key.Key_Tab, Qt.Key.Key_Backtab} and self.points:
            by = 1 if event.key() == Qt.Key.Key_Tab else -1
            self.active = (self.active + 1 + by) % (len(self.points) + 1) - 1
            self.changed.emit()
            return True
        if step is not None and 0 <= self.active < len(self.points):
            self.points[self.active] += step * self.px_per_screen
            self.changed.emit()
            self.settled()
            return True
        return False

    def _near(self, at: QPointF) -> int:
        gaps = [distance(at, point) for point in self.points]
        if gaps and min(gaps) <= self.reach_px:
            return gaps.index(min(gaps))
        return -1


class PickTool(_PointsTool):
    """Picks as many points as its kind has; ``finished`` hands over all of them."""

    def __init__(
        self, kind: str, points: list[QPointF] | None = None, parent: QObject | None = None
    ) -> None:
        self.kind = kind
        most, self._names = _ORDERS[kind]
        super().__init__(points or [], most, parent)
        self._pointer: QPointF | None = None

    def hint(self) -> str:
        if len(self.points) < self.most:
            pick = tr("Pick the {0}.", self._names[len(self.points)])
            if self.active < 0:
                return pick
            return f"{pick} {tr('Arrow keys move the point just picked, Tab frees them.')}"
        return tr("Drag a point to move it, or Tab to it and use the arrow keys.")

    def move(self, at: QPointF, *, held: bool) -> None:
        self._pointer = QPointF(at)
        super().move(at, held=held)

    def settled(self) -> None:
        if len(self.points) == self.most:
            self.finished.emit([(p.x(), p.y()) for p in self.points])

    def paint(self, painter: QPainter, to_widget: QTransform) -> None:
        split = {"lines": 2, "pipe": 2, "pipe rectangle": 4}.get(self.kind, self.most)
        for part in (self.points[:split], self.points[split:]):
            closed = len(part) == 4
            paint_line(painter, to_widget, part, closed=closed, style="taken")
        if self._pointer is not None and self.most == 2 and len(self.points) == 1:
            way = [*self.points, self._pointer]  # where a click would put the line
            paint_line(painter, to_widget, way, closed=False, style="suggested")
        paint_handles(painter, [to_widget.map(p) for p in self.points], self.active)


class LineTool(_PointsTool):
    """Marks a line of two or more points; emits ``finished`` with them on Enter."""

    def __init__(self, what: str, parent: QObject | None = None) -> None:
        super().__init__([], 1000, parent)
        self._what = what

    def hint(self) -> str:
        if len(self.points) < 2:
            return tr("Click points along {0}, one after the other.", self._what)
        return tr("Enter ends the line; a point can be dragged.")

    def accept(self) -> None:
        if len(self.points) >= 2:
            self.finished.emit([(p.x(), p.y()) for p in self.points])

    def paint(self, painter: QPainter, to_widget: QTransform) -> None:
        paint_line(painter, to_widget, self.points, closed=False, style="weld")
        paint_handles(painter, [to_widget.map(p) for p in self.points], self.active)


class AreaTool(_PointsTool):
    """Marks out an area, or what is to be cut off; emits ``finished`` with its corners.

    One that is ``given`` is gone on with: its corners move, a click elsewhere puts one more on
    the side that is nearest.
    """

    def __init__(
        self,
        what: str = tr("the examined area"),
        given: Sequence[tuple[float, float]] = (),
        parent: QObject | None = None,
    ) -> None:
        super().__init__([QPointF(*corner) for corner in given], 10_000, parent)
        self._what = what
        self._given = bool(given)
        self._pointer: QPointF | None = None

    @property
    def _closed(self) -> bool:
        return self._given and len(self.points) >= 3

    def hint(self) -> str:
        if self._closed:
            return tr(
                "Drag a corner, or Tab to it and use the arrow keys; a click adds one, "
                "Backspace removes one. Enter takes it, Esc leaves it as it was."
            )
        count = len(self.points)
        if count == 0:
            return tr("Click points round {0}, one after the other.", self._what)
        if count < 3:
            return tr("Points: {0} of at least three. Backspace: one back.", count)
        return tr("Points: {0}. Enter, or a click on the first point, closes it.", count)

    def press(self, at: QPointF) -> None:
        if self._closed:
            if self._near(at) < 0:
                self.points.insert(self._side_near(at) + 1, QPointF(at))
            super().press(at)
        elif len(self.points) >= 3 and distance(at, self.points[0]) <= self.reach_px:
            self.accept()
        else:
            super().press(at)

    def _side_near(self, at: QPointF) -> int:
        """The number of the corner at which the nearest side begins."""
        ends = [*self.points[1:], self.points[0]]
        gaps = [gap_to_stretch(at, *side) for side in zip(self.points, ends, strict=True)]
        return gaps.index(min(gaps))

    def move(self, at: QPointF, *, held: bool) -> None:
        self._pointer = QPointF(at)
        super().move(at, held=held)
        self.changed.emit()

    def accept(self) -> None:
        if len(self.points) >= 3:
            self.finished.emit([(p.x(), p.y()) for p in self.points])

    def paint(self, painter: QPainter, to_widget: QTransform) -> None:
        leads_on = self._pointer is not None and self.points and not self._closed
        line = [*self.points, self._pointer] if self._pointer and leads_on else self.points
        paint_line(painter, to_widget, line, closed=len(line) > 2, style="area")
        paint_handles(painter, [to_widget.map(p) for p in self.points], self.active)
