"""Photos dropped on a window."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QWidget

__all__ = ["PHOTO_ENDINGS", "Drops", "photos_of"]

PHOTO_ENDINGS = {".jpg", ".jpeg", ".png", ".tif", ".tiff", ".webp", ".heic", ".heif"}


class Drops(QObject):
    """Lets a widget take dropped photos and hands their paths on."""

    def __init__(self, widget: QWidget, take: Callable[[list[Path]], None]) -> None:
        super().__init__(widget)
        self._take = take
        widget.setAcceptDrops(True)
        widget.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 - Qt's name
        if isinstance(event, QDragEnterEvent) and photos_of(event):
            event.acceptProposedAction()
            return True
        if isinstance(event, QDropEvent) and event.type() == QEvent.Type.Drop:
            paths = photos_of(event)
            if paths:
                event.setDropAction(Qt.DropAction.CopyAction)
                event.accept()
                self._take(paths)
                return True
        return super().eventFilter(watched, event)


def photos_of(event: QDropEvent) -> list[Path]:
    """The photos among what is dragged, by name, which is how a camera counts."""
    urls = event.mimeData().urls()
    paths = [Path(url.toLocalFile()) for url in urls if url.isLocalFile()]
    return sorted(path for path in paths if path.suffix.lower() in PHOTO_ENDINGS)
