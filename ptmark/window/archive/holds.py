"""Setting a legal hold on what a search finds, and taking one away, each with its reason."""

from typing import TYPE_CHECKING, Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from ptmark.window.archive.door import ArchiveDoor
from ptmark.window.archive.saved import asked_in_words
from ptmark.window.bits import CommitEdit, key_button, plain
from ptmark.window.words import tr

if TYPE_CHECKING:
    from ptmark.archive import Archive, Query

__all__ = ["HoldForm"]


class HoldForm(QWidget):
    """Name and reason of a hold on what was found last; for whom the archive lets set one.

    Rules stay with the command line: a rule lets records be deleted, a hold only keeps them.

    Signals: ``changed(str)`` what was done; ``failed(object)`` an exception.
    """

    changed = Signal(str)
    failed = Signal(object)

    def __init__(self, door: ArchiveDoor) -> None:
        super().__init__()
        self._door = door
        self._query: Query | None = None
        self._holds: frozenset[str] = frozenset()
        self._may = False
        self.which = plain()
        self.name = CommitEdit()
        self.name.setPlaceholderText(tr("name of the hold"))
        self.name.setAccessibleName(tr("Name of the hold"))
        self.name.setMaxLength(80)
        self.name.setFixedWidth(220)
        self.reason = CommitEdit()
        self.reason.setPlaceholderText(tr("reason, such as the claim and its date"))
        self.reason.setAccessibleName(tr("Reason for setting the hold or taking it away"))
        self.set_button = key_button(tr("Set this hold"), "", self._set)
        self.release_button = key_button(tr("Take it away"), "", self._release)
        row = QHBoxLayout()
        row.addWidget(self.name)
        row.addWidget(self.reason, 1)
        row.addWidget(self.set_button)
        row.addWidget(self.release_button)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 4, 0, 0)
        column.addWidget(self.which)
        column.addLayout(row)
        for edit in (self.name, self.reason):
            edit.textChanged.connect(lambda _: self._enable())
        self._enable()

    def offer(self, query: "Query | None") -> None:
        """The search whose records a new hold would keep."""
        self._query = query

    def show_state(self, holds: "frozenset[str]", *, may: bool) -> None:
        """Names of the holds there are, and whether this login may change them."""
        self._holds, self._may = holds, may
        if not may:
            told = tr("Only who has the archive keeper's role may set a hold or take one away.")
        elif self._query is None:
            told = tr("To set a hold, first search for the records that it is to keep.")
        else:
            told = tr(
                "A new hold keeps what was searched for last, now and later: {0}.",
                asked_in_words(self._query),
            )
        self.which.setText(told)
        self._enable()

    def choose(self, name: str) -> None:
        """Put the name of a hold into its line."""
        self.name.setText(name)

    def _set(self) -> None:
        name, reason, query = self._said()

        def work(archive: "Archive", _token: object) -> None:
            from ptmark.archive import hold

            if query is not None:
                hold(archive, name, query, reason)

        self._ask(work, tr("The hold “{0}” is set.", name))

    def _release(self) -> None:
        name, reason, _ = self._said()

        def work(archive: "Archive", _token: object) -> None:
            from ptmark.archive import release

            release(archive, name, reason)

        self._ask(work, tr("The hold “{0}” is taken away; the log keeps it and why.", name))

    def _said(self) -> "tuple[str, str, Query | None]":
        return self.name.text().strip(), self.reason.text().strip(), self._query

    def _ask(self, work: Any, said: str) -> None:  # noqa: ANN401 - as the door takes it
        def done(_: object) -> None:
            for edit in (self.name, self.reason):
                edit.clear()
            self.name.setFocus()  # the button that had it is greyed out now
            self.changed.emit(said)

        self._door.ask("", work, done, failed=self.failed.emit, key="archive hold")

    def _enable(self) -> None:
        name, reason, query = self._said()
        ready = self._may and bool(name and reason)
        # One of the same name would be replaced, which is to let go of what it kept.
        self.set_button.setEnabled(ready and query is not None and name not in self._holds)
        self.release_button.setEnabled(ready and name in self._holds)
        for edit in (self.name, self.reason):
            edit.setEnabled(self._may)
