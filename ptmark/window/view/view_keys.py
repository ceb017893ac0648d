"""The photo by keyboard: move, zoom, and a pointer that arrow keys steer while a tool works."""

from collections.abc import Callable
from typing import Protocol

from PySide6.QtCore import QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QKeyEvent

from ptmark.window.keys import KEYS
from ptmark.window.tools.tool import Tool
from ptmark.window.view.viewport import Viewport
from ptmark.window.words import tr

__all__ = ["SAYS", "ViewKeys"]

SAYS = tr(
    "Wheel or plus and minus zoom, F fits, 1 shows pixel for pixel, "
    "Ctrl, Shift and arrow keys move the photo."
)

_ENTER = {Qt.Key.Key_Return, Qt.Key.Key_Enter}
_PAN = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier
_BACK = {Qt.Key.Key_Backspace, Qt.Key.Key_Delete}


class Steered(Protocol):
    """What keys need of the photo's widget; it makes its own `ViewKeys`."""

    port: Viewport
    tool: Tool | None
    pointer: QPointF | None
    keys: Callable[[QKeyEvent], bool] | None

    def rect(self) -> QRect: ...
    def fit(self) -> None: ...
    def zoom(self, factor: float) -> None: ...
    def pixel_for_pixel(self) -> None: ...
    def pan(self, by: QPointF) -> None: ...
    def point_at(self, where: QPointF) -> None: ...


class ViewKeys:
    """Keys of one `PhotoView`."""

    def __init__(self, view: Steered) -> None:
        self._view = view

    def press(self, event: QKeyEvent) -> bool:
        """Use a key; tells whether it was used."""
        view, event = self._view, KEYS.as_usual(event)
        if self._photo_key(event):
            return True
        if view.tool is not None and self._tool_key(view.tool, event):
            return True
        return view.keys is not None and view.keys(event)

    def _photo_key(self, event: QKeyEvent) -> bool:
        view, key = self._view, event.key()
        step = Tool.step_of(event)
        if step is not None and event.modifiers() & _PAN == _PAN:
            view.pan(step * -4)  # Shift makes it ten times as long
        elif key == Qt.Key.Key_F:
            view.fit()
        elif key in {Qt.Key.Key_Plus, Qt.Key.Key_Equal}:
            view.zoom(1.25)
        elif key == Qt.Key.Key_Minus:
            view.zoom(0.8)
        elif key == Qt.Key.Key_1:
            view.pixel_for_pixel()
        else:
            return False
        return True

    def _tool_key(self, tool: Tool, event: QKeyEvent) -> bool:
        key = event.key()
        if key == Qt.Key.Key_Escape:
            tool.stopped.emit()
        elif key in _ENTER:
            tool.accept()
        elif key in _BACK:
            tool.back()
        elif tool.key(event):
            pass
        elif (step := Tool.step_of(event)) is not None:
            self._steer(tool, step)
        else:
            return False
        return True

    def _steer(self, tool: Tool, step: QPointF) -> None:
        """Move the pointer; at the rim the photo comes on under it."""
        view = self._view
        at = view.pointer or QRectF(view.rect()).center()
        box = QRectF(view.rect()).adjusted(2, 2, -2, -2)
        to = at + step
        to = QPointF(
            min(max(to.x(), box.left()), box.right()), min(max(to.y(), box.top()), box.bottom())
        )
        rest, photo = at + step - to, view.port.photo_rect()
        onward = QPointF(
            _within(rest.x(), photo.left() - box.left(), photo.right() - box.right()),
            _within(rest.y(), photo.top() - box.top(), photo.bottom() - box.bottom()),
        )
        if not onward.isNull():
            view.pan(-onward)
        view.point_at(to)
        tool.move(view.port.to_px(to), held=False)

    def pick_here(self) -> None:
        """Space: press the tool where the pointer stands."""
        view = self._view
        if view.tool is not None:
            where = view.pointer or QRectF(view.rect()).center()
            view.point_at(where)
            at = view.port.to_px(where)
            view.tool.press(at)
            view.tool.release(at)


def _within(by: float, least: float, most: float) -> float:
    """A step as far as there is photo beyond the rim on that side."""
    return min(max(by, min(least, 0.0)), max(most, 0.0))
