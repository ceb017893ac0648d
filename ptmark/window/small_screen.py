"""The whole window behind scroll bars, where the screen holds less than it needs.

As on 1280 x 800 at 200 %: nothing is squeezed or cut, and what has the focus comes into sight.
"""

from PySide6.QtCore import QSize
from PySide6.QtGui import QCloseEvent
from PySide6.QtWidgets import QFrame, QScrollArea, QWidget

__all__ = ["NEEDED", "SmallScreen", "shell_for"]

NEEDED = QSize(1180, 640)  # for photo, its buttons and a page beside each other


class SmallScreen(QScrollArea):
    """Scrolls a window; closing it closes that."""

    def __init__(self, window: QWidget) -> None:
        super().__init__()
        self._window = window
        window.setMinimumSize(NEEDED)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setWidgetResizable(True)
        self.setWidget(window)
        self.setWindowTitle(window.windowTitle())
        window.windowTitleChanged.connect(self.setWindowTitle)

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802 - Qt's name
        self._window.close()
        event.accept()


def shell_for(window: QWidget, room: QSize) -> QWidget:
    """What to show on a screen with this room, px: the window, or it behind scroll bars."""
    held = room.width() >= NEEDED.width() and room.height() >= NEEDED.height()
    if held:
        return window
    shell = SmallScreen(window)
    shell.resize(room)
    return shell
