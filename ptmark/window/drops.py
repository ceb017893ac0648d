"""Photos dropped on a window."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QWidget

__all__ = ["PHOTO_ENDINGS", "Drops"]

PHOTO_ENDINGS = {".jpg", ".jpeg", ".png", ".tif", ".tiff", ".webp", ".heic", ".heif"}


class Drops(QObject):
    """Lets a widget take one dropped photo and hands its path on."""

    def __init__(self, widget: QWidget, take: Callable[[Path], None]) -> None:
        super().__init__(widget)
        self._take = take
        widget.setAcceptDrops(True)
        widget.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 - Qt's name
        if isinstance(event, QDragEnterEvent) and _photo_of(event) is not None:
            event.acceptProposedAction()
            return True
        if isinstance(event, QDropEvent) and event.type() == QEvent.Type.Drop:
            path = _photo_of(event)
            if path is not None:
                event.setDropAction(Qt.DropAction.CopyAction)
                event.accept()
                self._take(path)
                return True
        return super().eventFilter(watched, event)


def _photo_of(event: QDropEvent) -> Path | None:
    for url in event.mimeData().urls():
        path = Path(url.toLocalFile())
        if url.isLocalFile() and path.suffix.lower() in PHOTO_ENDINGS:
            return path
    return None
