"""Photos, records and folders of records dropped on a window."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QWidget

from ptmark.endings import names_a_picture
from ptmark.errors import PtmarkError
from ptmark.window.session import Session
from ptmark.window.words import tr

__all__ = ["Drops", "photos_of", "records_of"]


class Drops(QObject):
    """Lets a widget take what is dropped; hands on photos, or one record or folder.

    What is none of these is let in too, so that it can be said why nothing comes of it.
    """

    def __init__(
        self, widget: QWidget, take: Callable[[list[Path]], None], session: Session
    ) -> None:
        super().__init__(widget)
        self._take, self._session = take, session
        widget.setAcceptDrops(True)
        widget.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 - Qt's name
        if isinstance(event, QDragEnterEvent) and event.mimeData().hasUrls():
            event.acceptProposedAction()
            return True
        if isinstance(event, QDropEvent) and event.type() == QEvent.Type.Drop:
            paths = photos_of(event) or records_of(event)[:1]
            event.setDropAction(Qt.DropAction.CopyAction)
            event.accept()
            if paths:
                self._take(paths)
            else:
                self._session.say_trouble("photo", _refusal(event))
            return True
        return super().eventFilter(watched, event)


def photos_of(event: QDropEvent) -> list[Path]:
    """The photos among what is dragged, by name, which is how a camera counts."""
    return sorted(path for path in _paths_of(event) if names_a_picture(path))


def records_of(event: QDropEvent) -> list[Path]:
    """The records, and folders that may hold some, among what is dragged."""
    return [one for one in _paths_of(event) if one.suffix.lower() == ".json" or one.is_dir()]


def _refusal(event: QDropEvent) -> PtmarkError:
    """Why nothing of what was dropped can be used."""
    names = ", ".join(path.name for path in _paths_of(event)[:3])
    if not names:
        return PtmarkError(
            tr("a picture on a web page is no original: it may have been made smaller"),
            mend=tr("Copy the camera's own file to this computer and drop that."),
        )
    return PtmarkError(
        tr("neither a photo nor a record"),
        where=names,
        mend=tr(
            "Drop photos (JPEG, PNG, TIFF, WebP, HEIC, AVIF), a record or a folder of records."
        ),
    )


def _paths_of(event: QDropEvent) -> list[Path]:
    return [Path(url.toLocalFile()) for url in event.mimeData().urls() if url.isLocalFile()]
