"""The photo by keyboard: move, zoom, and a pointer that arrow keys steer while a tool works."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QKeyEvent

from ptmark.window.keys import KEYS
from ptmark.window.tools.tool import Tool
from ptmark.window.words import tr

if TYPE_CHECKING:
    from ptmark.window.view.photo_view import PhotoView

__all__ = ["SAYS", "ViewKeys"]

SAYS = tr(
    "Wheel or plus and minus zoom, F fits, 1 shows pixel for pixel, "
    "Ctrl and arrow keys move the photo."
)

_ENTER = {Qt.Key.Key_Return, Qt.Key.Key_Enter}
_BACK = {Qt.Key.Key_Backspace, Qt.Key.Key_Delete}


class ViewKeys:
    """Keys of one `PhotoView`."""

    def __init__(self, view: "PhotoView") -> None:
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
        if step is not None and event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            view.pan(step * -40)
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
        view = self._view
        at = view.pointer or QRectF(view.rect()).center()
        box = QRectF(view.rect()).adjusted(2, 2, -2, -2)
        to = at + step
        to = QPointF(
            min(max(to.x(), box.left()), box.right()), min(max(to.y(), box.top()), box.bottom())
        )
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
