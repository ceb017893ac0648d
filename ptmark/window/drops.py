"""Photos, records and folders of records dropped on a window, or copied and pasted there."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QEvent, QMimeData, QObject, Qt
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QGuiApplication
from PySide6.QtWidgets import QWidget

from ptmark.endings import names_a_picture
from ptmark.errors import PtmarkError
from ptmark.window.keys import Shortcut
from ptmark.window.session import Session
from ptmark.window.words import tr

__all__ = ["Drops", "photos_of"]


class Drops(QObject):
    """Lets a widget take what is dropped or pasted; hands on photos, or one record or folder.

    What is none of these is let in too, so that it can be said why nothing comes of it.
    """

    def __init__(
        self, widget: QWidget, take: Callable[[list[Path]], None], session: Session
    ) -> None:
        super().__init__(widget)
        self._take, self._session = take, session
        widget.setAcceptDrops(True)
        widget.installEventFilter(self)
        Shortcut("Ctrl+V", widget, self._paste, tr("Open copied photos or a copied record"))

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 - Qt's name
        if isinstance(event, QDragEnterEvent) and _holds_any(event.mimeData()):
            event.acceptProposedAction()
            return True
        if isinstance(event, QDropEvent) and event.type() == QEvent.Type.Drop:
            event.setDropAction(Qt.DropAction.CopyAction)
            event.accept()
            self._take_in(event.mimeData())
            return True
        return super().eventFilter(watched, event)

    def _paste(self) -> None:
        data = QGuiApplication.clipboard().mimeData()
        if _holds_any(data):
            self._take_in(data)

    def _take_in(self, data: QMimeData) -> None:
        if paths := _photos_in(data) or _records_in(data)[:1]:
            self._take(paths)
        else:
            self._session.say_trouble("photo", _refusal(data))


def _holds_any(data: QMimeData) -> bool:
    return data.hasUrls() or data.hasImage()


def photos_of(event: QDropEvent) -> list[Path]:
    """The photos among what is dragged, by name, which is how a camera counts."""
    return _photos_in(event.mimeData())


def _photos_in(data: QMimeData) -> list[Path]:
    return sorted(path for path in _paths_of(data) if names_a_picture(path))


def _records_in(data: QMimeData) -> list[Path]:
    """The records, and folders that may hold some, among what is dragged or copied."""
    return [one for one in _paths_of(data) if one.suffix.lower() == ".json" or one.is_dir()]


def _refusal(data: QMimeData) -> PtmarkError:
    """Why nothing of what was dropped can be used."""
    names = ", ".join(path.name for path in _paths_of(data)[:3])
    if not names and data.hasImage() and not data.hasUrls():
        return PtmarkError(
            tr("a copied picture has no file: what the camera wrote into it is lost"),
            mend=tr("Copy the photo's file and paste that, or drop it here."),
        )
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


def _paths_of(data: QMimeData) -> list[Path]:
    return [Path(url.toLocalFile()) for url in data.urls() if url.isLocalFile()]
