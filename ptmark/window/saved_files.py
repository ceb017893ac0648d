"""What was saved, at hand: a click opens it, a drag takes it to another program."""

import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QMimeData, QPoint, Qt, QUrl
from PySide6.QtGui import QDesktopServices, QDrag, QMouseEvent
from PySide6.QtWidgets import QApplication

from ptmark.errors import UsageError
from ptmark.window import dialogs
from ptmark.window.edges import Push
from ptmark.window.session import Session
from ptmark.window.words import tr

__all__ = ["FileOut", "PrintButton"]


class FileOut(Push):
    """One file."""

    def __init__(self, path: Path) -> None:
        super().__init__(path.suffix[1:].upper())
        self.path, self._pressed = path, QPoint()
        self.setMinimumHeight(30)
        self.setAccessibleName(tr("Open {0}", path.name))
        self.setToolTip(tr("A click opens it; drag it to another program or folder"))
        self.clicked.connect(self._open)

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        self._pressed = event.position().toPoint()
        super().mousePressEvent(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        moved = (event.position().toPoint() - self._pressed).manhattanLength()
        held = event.buttons() & Qt.MouseButton.LeftButton
        if held and moved >= QApplication.startDragDistance():
            self.setDown(False)
            self._drag()
        else:
            super().mouseMoveEvent(event)

    def _drag(self) -> None:
        data = QMimeData()
        data.setUrls([QUrl.fromLocalFile(str(self.path))])
        drag = QDrag(self)
        drag.setMimeData(data)
        drag.exec(Qt.DropAction.CopyAction)  # the file stays where it was saved

    def _open(self) -> None:
        QDesktopServices.openUrl(QUrl.fromLocalFile(str(self.path)))


class PrintButton(Push):
    """Prints a PDF by the system's own spooler; where there is none, its viewer opens it."""

    def __init__(
        self, path: Path, session: Session, failed: Callable[[Exception], None]
    ) -> None:
        super().__init__(tr("Print …"))
        self.setAccessibleName(tr("Print {0}", path.name))
        self._path, self._session, self._failed = path, session, failed
        self.setMinimumHeight(30)
        self.clicked.connect(lambda _=False: self._print())

    def _print(self) -> None:
        spooler, path = shutil.which("lp"), self._path
        if spooler is None:
            QDesktopServices.openUrl(QUrl.fromLocalFile(str(path)))
            return
        asked = dialogs.ask_for_printer(self)
        if asked is None:
            return
        words = [spooler, "-d", asked[0], "-n", str(asked[1]), "--", str(path)]
        self._session.workers.start(
            tr("Printing {0}", path.name), lambda _: _spool(words), failed=self._failed
        )


def _spool(words: list[str]) -> None:
    done = subprocess.run(words, capture_output=True, text=True, check=False)  # noqa: S603
    if done.returncode:
        raise UsageError(
            tr("it was not printed: {0}", done.stderr.strip() or done.returncode),
            mend=tr("look at the printer, or open the file and print it there"),
        )
