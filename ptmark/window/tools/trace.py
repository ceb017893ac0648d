"""Tracing an indication by hand: along the dye's edge, free hand, or point by point.

In each way a press and release at one place sets a point, and so does Space where the arrow
keys have brought the pointer. Free hand, what is drawn with the button held is all of it.
"""

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QObject, QPointF, QTimer
from PySide6.QtGui import QPainter, QTransform

from ptmark.errors import OutlineError
from ptmark.window.tools.tool import Tool, distance, paint_handles, paint_line
from ptmark.window.words import tr

__all__ = ["TraceTool"]

_HINTS = {
    "edge": tr("Click on the dye's edge and follow it; the line goes to the edge by itself."),
    "free": tr("Draw round the indication with the button held down, or click points."),
    "points": tr("Click points round the indication."),
}


class TraceTool(Tool):
    """Draws one closed outline; emits ``finished`` with its points as (x, y) photo px.

    ``tracer`` gives an object like `ptmark.dye.DyeTracer`; it is asked for only once the edge
    is followed. ``beside`` runs a first call elsewhere and a second one here after it; until
    then the line to the pointer is straight. Without it both run at once.
    """

    by_keys = tr("By keys: arrows steer, Space sets a point, Enter closes, Esc leaves.")

    def __init__(
        self,
        mode: str,
        tracer: Callable[[], Any],
        beside: Callable[[Callable[[], Any], Callable[[], None]], None] | None = None,
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self.mode = mode
        self._tracer, self._beside = tracer, beside or _at_once
        self.anchors: list[QPointF] = []
        self._parts: list[list[QPointF]] = []
        self._live: list[QPointF] = []
        self._goal: QPointF | None = None
        self._stroke: list[QPointF] = []  # free hand, while the button is held
        self._soon = QTimer(self, singleShot=True, interval=0)
        self._soon.timeout.connect(self._draw_live)

    def hint(self) -> str:
        if self.anchors and len(self._stroke) < 2:
            return tr(
                "Points: {0}. Enter, or a click on the first point, closes the outline. "
                "Backspace: one back.",
                len(self.anchors),
            )
        return _HINTS[self.mode]

    def line(self) -> list[QPointF]:
        """The points fixed so far."""
        return [point for part in self._parts for point in part]

    def outline_now(self) -> list[tuple[float, float]]:
        drawn = self._stroke if len(self._stroke) > 1 else (*self.line(), *self._live)
        return [(p.x(), p.y()) for p in drawn]

    def press(self, at: QPointF) -> None:
        if len(self.line()) >= 3 and distance(at, self.anchors[0]) <= self.reach_px:
            self.accept()
        else:
            self._place(at)
            self._stroke = [QPointF(at)] if self.mode == "free" else []
        self.changed.emit()

    def _place(self, at: QPointF) -> None:
        if self.mode == "edge":
            x, y = self._tracer().snap((at.x(), at.y()), max(4.0, 1.2 * self.reach_px))
            at = QPointF(x, y)
        if self.anchors and distance(at, self.anchors[-1]) < 0.5:
            return
        part = self._between(self.anchors[-1], at) if self.anchors else [QPointF(at)]
        self._parts.append(part)
        self.anchors.append(QPointF(at))
        self._live = []
        if self.mode == "edge":
            self._make_ready(at)

    def _make_ready(self, start: QPointF) -> None:
        """What paths from a place need first is paid by no click and by no move."""
        tracer, place = self._tracer(), (start.x(), start.y())
        if not tracer.ready(place):
            self._beside(lambda: tracer.prepare(place), self._draw_live)

    def _between(self, start: QPointF, end: QPointF) -> list[QPointF]:
        """The way from start (left out) to end."""
        if self.mode != "edge":
            return [QPointF(end)]
        try:
            path = self._tracer().path((start.x(), start.y()), (end.x(), end.y()))
        except OutlineError:  # the start lies beyond the photo, where no edge is
            return [QPointF(end)]
        return [QPointF(float(x), float(y)) for x, y in path[1:]]

    def move(self, at: QPointF, *, held: bool) -> None:
        if held and self.mode == "free":
            self._draw(at)
        elif self.anchors:
            self._goal = QPointF(at)
            self._soon.start()  # several moves in one turn of the loop cost one path

    def _draw(self, at: QPointF) -> None:
        if self._stroke and distance(at, self._stroke[-1]) > self.px_per_screen:
            self._stroke.append(QPointF(at))
            self.changed.emit()

    def _draw_live(self) -> None:
        if self._goal is None or not self.anchors:
            return
        start = self.anchors[-1]
        if self.mode == "edge" and not self._tracer().ready((start.x(), start.y())):
            self._live = [self._goal]
        else:
            self._live = self._between(start, self._goal)
        self.changed.emit()

    def release(self, at: QPointF) -> None:
        stroke, self._stroke = self._stroke, []
        if not any(distance(one, stroke[0]) > self.reach_px for one in stroke):
            return  # a click, by a hand that is never quite still
        self._clear()
        if len(stroke) >= 3:
            self.finished.emit([(p.x(), p.y()) for p in stroke])

    def accept(self) -> None:
        line = self.line()
        if len(line) < 3:
            return
        if self.mode == "edge":
            line += self._between(self.anchors[-1], self.anchors[0])[:-1]
        self._clear()
        self.finished.emit([(p.x(), p.y()) for p in line])

    def _clear(self) -> None:
        self.anchors, self._parts, self._live, self._goal = [], [], [], None
        self._stroke = []
        self.changed.emit()

    def back(self) -> None:
        if not self.anchors:
            self.stopped.emit()
            return
        self.anchors.pop()
        self._parts.pop()
        self._live = []
        if self.anchors and self.mode == "edge":
            self._make_ready(self.anchors[-1])
        self.changed.emit()

    def paint(self, painter: QPainter, to_widget: QTransform) -> None:
        fixed = self._stroke if len(self._stroke) > 1 else self.line()
        paint_line(painter, to_widget, fixed, closed=False, style="taken")
        if fixed and self._live and fixed is not self._stroke:
            live = [fixed[-1], *self._live]
            paint_line(painter, to_widget, live, closed=False, style="suggested")
        paint_handles(painter, [to_widget.map(p) for p in self.anchors], len(self.anchors) - 1)


def _at_once(work: Callable[[], Any], then: Callable[[], None]) -> None:
    work()
    then()
