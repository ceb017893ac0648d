"""The records of a folder that wait for a review: read beside the window, taken in turn."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from ptmark.window.engine import load_engine
from ptmark.window.review.list import ReviewList
from ptmark.window.session import Session
from ptmark.window.words import tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.review import WorkItem

__all__ = ["Worklist"]


class Worklist(QObject):
    """``view`` shows its rows; ``folder`` is that of the records, None while there is none.

    Signals: ``counted(int, int)`` how many wait for a review, of how many, each time it was
    read; ``opened()`` after that where the folder is a new one; ``failed(object)`` the error.
    """

    counted = Signal(int, int)
    opened = Signal()
    failed = Signal(object)

    def __init__(self, session: Session, parent: QObject) -> None:
        super().__init__(parent)
        self._session = session
        self.folder: Path | None = None
        self.view = ReviewList()

    def open(self, folder: Path) -> None:
        """List the records of a folder."""
        self.folder = folder
        self._read(folder, then_show=True)

    def renew(self) -> None:
        """Read the folder again: what was done with a record changes how it stands."""
        if self.folder is not None:
            self._read(self.folder, then_show=False)

    def close(self) -> None:
        """Let go of the folder."""
        self.folder = None

    def _read(self, folder: Path, *, then_show: bool) -> None:
        def work(token: Token) -> "list[WorkItem]":
            load_engine()
            from ptmark.review import worklist

            made = []
            for one in worklist(folder):
                token.check()
                made.append(one)
            return made

        def done(items: "list[WorkItem]") -> None:
            self.view.show_items(items, folder)
            self.counted.emit(sum(one.standing == "to review" for one in items), len(items))
            if then_show:
                self.opened.emit()

        self._session.workers.start(
            tr("Reading the records in {0}", folder.name),
            work,
            done,
            failed=self.failed.emit,
            key="worklist",
        )
