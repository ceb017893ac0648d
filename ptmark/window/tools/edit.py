"""Editing the points of one outline by handles; its fine points follow softly."""

from math import cos, pi

from PySide6.QtCore import QObject, QPointF, Qt
from PySide6.QtGui import QKeyEvent, QPainter, QTransform

from ptmark.window.tools.tool import Tool, distance, paint_handles, paint_line
from ptmark.window.view.marks import gap_to_stretch
from ptmark.window.words import tr

__all__ = ["EditTool"]

_SPACING = 22.0  # screen px between handles


class EditTool(Tool):
    """Moves, adds and removes points; emits ``finished`` with the outline after each change.

    A suggested outline has a point every pixel or so. Handles stand on some of them; the
    points between a handle and its neighbours follow it by a raised cosine.
    """

    by_keys = ""  # its hint names them

    def __init__(
        self, outline: list[tuple[float, float]], parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        self.points = [QPointF(x, y) for x, y in outline]
        self.active = -1  # index into points
        self._from: list[QPointF] | None = None
        self._grabbed = QPointF()

    def hint(self) -> str:
        return tr(
            "Drag a handle; double-click or Insert adds one, Backspace removes one. "
            "Tab goes to the next, arrows move it. Esc ends."
        )

    def outline_now(self) -> list[tuple[float, float]]:
        return [(p.x(), p.y()) for p in self.points]

    def handles(self) -> list[int]:
        """Indices of the points that stand as handles at this zoom."""
        least = _SPACING * self.px_per_screen
        chosen: list[int] = []
        for index, point in enumerate(self.points):
            if index == self.active:
                while chosen and distance(self.points[chosen[-1]], point) < least / 2:
                    chosen.pop()
                chosen.append(index)
            elif not chosen or distance(self.points[chosen[-1]], point) >= least:
                chosen.append(index)
        if len(chosen) < 3:
            step = max(1, len(self.points) // 3)
            return sorted(
                {*range(0, len(self.points), step), *([self.active] * (self.active >= 0))}
            )
        return chosen

    def follow(self, outline: list[tuple[float, float]]) -> None:
        """Stand on this outline, as undo or redo has it."""
        points = [QPointF(x, y) for x, y in outline]
        if points != self.points and self._from is None:
            self.points, self.active = points, min(self.active, len(points) - 1)
            self.changed.emit()

    def press(self, at: QPointF) -> None:
        near = [(distance(at, self.points[i]), i) for i in self.handles()]
        gap, index = min(near, default=(float("inf"), -1))
        self.active = index if gap <= self.reach_px else -1
        if self.active >= 0:
            self._from, self._grabbed = list(self.points), QPointF(at)
        self.changed.emit()

    def move(self, at: QPointF, *, held: bool) -> None:
        if held and self._from is not None:
            self._shift(self._from, at - self._grabbed)
            self.changed.emit()

    def release(self, at: QPointF) -> None:
        moved = self._from is not None and distance(at, self._grabbed) > 0.01
        self._from = None
        if moved:
            self._tell()

    def accept(self) -> None:
        self.stopped.emit()

    def add(self, at: QPointF) -> None:
        """Put a point on the outline's nearest stretch."""
        best, where = float("inf"), 0
        for index, start in enumerate(self.points):
            end = self.points[(index + 1) % len(self.points)]
            gap = gap_to_stretch(at, start, end)
            if gap < best:
                best, where = gap, index + 1
        if best <= 2 * self.reach_px:
            self.points.insert(where, QPointF(at))
            self.active = where
            self._tell()

    def back(self) -> None:
        handles = self.handles()
        if self.active not in handles or len(handles) <= 3:
            return
        at = handles.index(self.active)
        before, after = handles[at - 1], handles[(at + 1) % len(handles)]
        if before < after:
            kept = self.points[: before + 1] + self.points[after:]
        else:  # the stretch runs over the list's end
            kept = self.points[after : before + 1]
        if len(kept) >= 3:
            self.points, self.active = kept, -1
            self._tell()

    def key(self, event: QKeyEvent) -> bool:
        handles = self.handles()
        if event.key() in {Qt.Key.Key_Tab, Qt.Key.Key_Backtab}:
            by = 1 if event.key() == Qt.Key.Key_Tab else -1
            at = handles.index(self.active) if self.active in handles else -1
            self.active = handles[(at + by) % len(handles)]
            self.changed.emit()
            return True
        if event.key() == Qt.Key.Key_Insert and self.active >= 0:
            after = self.points[(self.active + 1) % len(self.points)]
            self.add((self.points[self.active] + after) / 2)
            return True
        step = self.step_of(event)
        if step is not None and self.active >= 0:
            self._shift(list(self.points), step * self.px_per_screen)
            self._tell()
            return True
        return False

    def _shift(self, points: list[QPointF], by: QPointF) -> None:
        handles, count = self.handles(), len(points)
        at = handles.index(self.active)
        left = (self.active - handles[at - 1]) % count or 1
        right = (handles[(at + 1) % len(handles)] - self.active) % count or 1
        moved = list(points)
        for offset in range(-left + 1, right):
            share = offset / (right if offset > 0 else left)
            weight = 0.5 * (1 + cos(pi * share))
            index = (self.active + offset) % count
            moved[index] = points[index] + by * weight
        self.points = moved

    def _tell(self) -> None:
        self.changed.emit()
        self.finished.emit([(p.x(), p.y()) for p in self.points])

    def paint(self, painter: QPainter, to_widget: QTransform) -> None:
        paint_line(painter, to_widget, self.points, closed=True, style="taken")
        handles = self.handles()
        active = handles.index(self.active) if self.active in handles else -1
        paint_handles(
            painter, [to_widget.map(self.points[i]) for i in handles], active, radius=3.8
        )
