"""The photo with its marks: zoom to the pointer, pan, and one tool at a time.

The view knows photo px and outlines; it knows no millimetres and no inspection.
"""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QPointF, QRectF, QSizeF, Qt, QTimer, Signal
from PySide6.QtGui import (
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPalette,
    QResizeEvent,
    QTransform,
    QWheelEvent,
)
from PySide6.QtWidgets import QWidget

from ptmark.window.focus_ring import paint_ring
from ptmark.window.roles import Role, tell_role
from ptmark.window.tools.edit import EditTool
from ptmark.window.tools.tool import Tool
from ptmark.window.view.curtain import Curtain
from ptmark.window.view.guides import Guides
from ptmark.window.view.levels import PhotoLevels
from ptmark.window.view.magnifier import paint_magnifier
from ptmark.window.view.marks import Mark, near
from ptmark.window.view.overlay import Overlay
from ptmark.window.view.view_keys import SAYS, ViewKeys
from ptmark.window.view.viewport import Viewport
from ptmark.window.words import tr

__all__ = ["PhotoView"]

_MIDDLE = Qt.MouseButton.MiddleButton
_LEFT = Qt.MouseButton.LeftButton


class PhotoView(QWidget):
    """Signals: ``mark_clicked(str)`` a name or "", ``pointed(object)`` px, None outside."""

    mark_clicked = Signal(str)
    pointed = Signal(object)
    own_ring = True

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.port = Viewport()
        self.levels: PhotoLevels | None = None
        self.tool: Tool | None = None
        self.marks: list[Mark] = []
        self.selected: frozenset[str] = frozenset()
        self.guides = Guides()
        self.keys: Callable[[QKeyEvent], bool] | None = None  # asked where no tool is at work
        self.pointer: QPointF | None = None
        self._pan_from: QPointF | None = None
        self._pressed = False
        self._hands = ViewKeys(self)
        self.curtain = Curtain(self)
        self.overlay, self._over_it = Overlay(), Overlay()
        self.beside: list[Mark] = []  # painted over the marks, and never clicked
        self._space = ""  # "", "down", or "panned"
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        tell_role(self, Role.Graphic)
        self.setAccessibleName(tr("Photo"))
        self.setAccessibleDescription(SAYS)
        self.setMinimumSize(320, 160)

    # -- what is shown ------------------------------------------------------------------------
    def set_levels(self, levels: PhotoLevels | None) -> None:
        """Show a photo; the same size again keeps zoom and place."""
        size = QSizeF(levels.width, levels.height) if levels else QSizeF(0, 0)
        bend = (levels.bend if levels else None) or QTransform()
        same = size == self.port.photo and bend == self.port.bend
        if self.levels is not None and self.levels is not levels:
            self.levels.show_only(None)
        self.levels, self.port.photo, self.port.bend = levels, size, bend
        if not same:
            self.port.fit()
        self._tell_tool()
        self.update()

    def set_tool(self, tool: Tool | None) -> None:
        """Give the pointer to a tool; None lets it select and pan again."""
        if self.tool is not None:
            self.tool.changed.disconnect(self.update)
        self.tool = tool
        if tool is not None:
            tool.changed.connect(self.update)
        self.setCursor(Qt.CursorShape.CrossCursor if tool else Qt.CursorShape.ArrowCursor)
        self._tell_tool()
        self.update()

    def show_marks(self, marks: list[Mark], selected: frozenset[str]) -> None:
        """Show these outlines."""
        self.marks, self.selected = marks, selected
        self.update()

    def show_beside(self, marks: list[Mark]) -> None:
        """Show these over the marks; they are only looked at."""
        self.beside = marks
        self.update()

    def bring(self, name: str) -> None:
        """Bring a mark into sight."""
        for mark in (*self.marks, *self.beside):
            if mark.name == name:
                self.port.show(mark.outline.boundingRect())
                self._moved()

    def fit(self) -> None:
        self.port.fit()
        self._moved()

    def turn(self) -> None:
        """Turn what is shown by a quarter, clockwise."""
        self.port.turn = (self.port.turn + 1) % 4
        self.fit()

    def zoom(self, factor: float) -> None:
        """Zoom about the pointer, or the middle where it is elsewhere."""
        middle = QRectF(self.rect()).center()
        self.port.zoom(factor, self.pointer if self.pointer else middle)
        self._moved()

    def pixel_for_pixel(self) -> None:
        self.zoom(1.0 / (self.port.scale * self.devicePixelRatioF()))

    def pan(self, by: QPointF) -> None:
        self.port.pan(by)
        self._moved()

    def point_at(self, where: QPointF) -> None:
        """Put the keyboard's pointer somewhere in the widget."""
        self.pointer = where
        self.pointed.emit(self.port.to_px(where))
        self.update()

    def _moved(self) -> None:
        self._tell_tool()
        self.update()

    def _tell_tool(self) -> None:
        if self.tool is not None:
            self.tool.px_per_screen = 1.0 / self.port.scale

    # -- painting -----------------------------------------------------------------------------
    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        painter = QPainter(self)
        painter.fillRect(event.rect(), self.palette().color(QPalette.ColorRole.Mid).darker(115))
        if self.levels is not None:
            self._paint_picture(painter, self.levels, QRectF(self.rect()))
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            self._paint_over(painter)
        if self.hasFocus():
            paint_ring(painter, QRectF(self.rect()), self.palette(), on_picture=True)

    def _paint_picture(self, painter: QPainter, levels: PhotoLevels, within: QRectF) -> None:
        """The part of a picture that lies within a part of the view."""
        port = self.port
        level = levels.for_scale(port.scale * self.devicePixelRatioF())
        levels.show_only(level)
        way = port.picture_transform()
        target = port.photo_rect() & within
        if target.isEmpty():
            return
        part = way.inverted()[0].mapRect(target)
        image, source = level.seen(part)
        smooth = port.scale * level.step_x < 6 or not levels.whole
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform, on=smooth)
        if port.turn:
            painter.setTransform(way)
            painter.drawImage(part, image, source)
            painter.resetTransform()
        else:
            painter.drawImage(target, image, source)

    def _paint_over(self, painter: QPainter) -> None:
        to_widget, view = self.port.transform(), QRectF(self.rect())
        if self.curtain.hides(self.levels):
            self.curtain.paint(painter, view, self._paint_picture)
        ratio = self.devicePixelRatioF()
        self.overlay.draw(painter, self.port, self.marks, self.selected, ratio, self.guides)
        self._over_it.draw(painter, self.port, self.beside, frozenset(), ratio)
        if self.overlay.rests or self._over_it.rests:
            QTimer.singleShot(0, self, self.update)
        self.guides.paint_bar(painter, self.port)
        if self.tool is not None:
            self.tool.paint(painter, to_widget)
            if (
                self.tool.wants_magnifier
                and self.pointer is not None
                and self.levels is not None
            ):
                at = self.port.to_picture(self.pointer)
                paint_magnifier(painter, self.levels, at, self.pointer, view, self.port)

    # -- pointer ------------------------------------------------------------------------------
    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        where = event.position()
        self.pointer = where
        if event.button() == _MIDDLE or (event.button() == _LEFT and self._space):
            self._pan_from = where
        elif self.tool is None and self._grabs_curtain(event):
            pass
        elif event.button() == _LEFT and self.levels is not None:
            self._pressed = True
            if self.tool is not None:
                self.tool.press(self.port.to_px(where))
            else:
                self._pan_from = where
                self.mark_clicked.emit(self._mark_at(self.port.to_px(where)))
        event.accept()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        where = event.position()
        self.pointer = where
        if self.curtain.held:
            self.curtain.drag(where, self.width())
        elif self._pan_from is not None:
            self._space = "panned" if self._space else ""
            self.port.pan(where - self._pan_from)
            self._pan_from = where
            self._moved()
        elif self.tool is not None and self.levels is not None:
            self.tool.move(self.port.to_px(where), held=self._pressed)
            self.update()
        self.pointed.emit(self.port.to_px(where))
        event.accept()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        if self._pan_from is None and self._pressed and self.tool is not None:
            self.tool.release(self.port.to_px(event.position()))
        self._pan_from, self._pressed, self.curtain.held = None, False, False
        event.accept()

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        if isinstance(self.tool, EditTool):
            self.tool.add(self.port.to_px(event.position()))
        elif self.tool is not None:
            self.tool.accept()
        event.accept()

    def wheelEvent(self, event: QWheelEvent) -> None:  # noqa: N802 - Qt's name
        self.port.zoom(1.0015 ** event.angleDelta().y(), event.position())
        self._moved()
        event.accept()

    def leaveEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        self.pointer = None
        self.pointed.emit(None)
        self.update()
        super().leaveEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        self.port.widget = QSizeF(self.size())
        if self.port.fitted:
            self.port.fit()
        self._tell_tool()
        super().resizeEvent(event)

    def _grabs_curtain(self, event: QMouseEvent) -> bool:
        grabbed = self.curtain.hides(self.levels) and event.button() == _LEFT
        return grabbed and self.curtain.grab(event.position(), self.width())

    def _mark_at(self, at: QPointF) -> str:
        """The mark under the pointer: the smallest that holds it, else the nearest line."""
        reach = 8.0 / self.port.scale
        marks = (m for m in self.marks if m.style != "area")  # would be hit everywhere
        hits = [m for m in marks if near(m.outline, at, reach)]
        hits.sort(
            key=lambda m: m.outline.boundingRect().width() * m.outline.boundingRect().height()
        )
        return hits[0].name if hits else ""

    # -- keyboard -----------------------------------------------------------------------------
    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        if event.key() == Qt.Key.Key_Space:
            self._space = self._space or "down"
        elif not self._hands.press(event):
            super().keyPressEvent(event)

    def keyReleaseEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        if event.key() != Qt.Key.Key_Space or event.isAutoRepeat():
            super().keyReleaseEvent(event)
            return
        moved, self._space = self._space == "panned", ""
        if moved:
            return
        if self.tool is not None:
            self._hands.pick_here()
        elif self.keys:
            self.keys(event)

    def focusNextPrevChild(self, forward: bool) -> bool:  # noqa: N802, FBT001 - Qt's
        """Tab goes to the tool's points while one is at work; Esc leaves the tool."""
        return False if self.tool is not None else super().focusNextPrevChild(forward)
