"""The state of the archive: whether all is as it was made, and how long records are kept."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHBoxLayout,
    QHeaderView,
    QProgressBar,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from ptmark.window.archive.door import ArchiveDoor
from ptmark.window.archive.holds import HoldForm
from ptmark.window.archive.problems import Row, problem_rows
from ptmark.window.archive.standing import State, read_state
from ptmark.window.archive.taking_in import BundlesIn
from ptmark.window.bits import Notice, as_list, heading, key_button, plain, quiet
from ptmark.window.cells import Cell
from ptmark.window.edges import TableOf
from ptmark.window.glyphs import glyph_icon
from ptmark.window.words import tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.archive import Archive, Verified

__all__ = ["CheckPage"]

_KEY = "archive check"


class CheckPage(QWidget):
    """Reads every record and photo again when asked, and lists what is not as it was.

    Signals: ``opened(object)`` a hit to look at; ``left()``; ``grown()`` bundles were taken in.
    """

    opened = Signal(object)
    left = Signal()
    grown = Signal()

    def __init__(self, door: ArchiveDoor) -> None:
        super().__init__()
        self._door = door
        self.running = False
        self.where = plain()
        self.check_button = key_button(tr("Check everything"), "", self.check)
        self.resume_button = key_button(
            tr("Go on where it stopped"), "", lambda: self.check(resume=True)
        )
        self.stop_button = key_button(tr("Stop"), "", self.stop)
        self.progress = QProgressBar()
        self.progress.setRange(0, 1000)
        self.progress.setFormat("")
        self.progress.setAccessibleName(tr("How far the check is"))
        self.said = Notice()
        self.problems = _list(
            (tr("What"), tr("Record or photo"), tr("What was found")), tr("What was found")
        )
        self.problems.itemActivated.connect(self._on_activated)
        self.keeping = _list(
            (tr("Kind"), tr("Name"), tr("Which records"), tr("Kept for"), tr("Why")),
            tr("Rules and holds"),
        )
        self.keeping.itemSelectionChanged.connect(self._on_kept_chosen)
        self.holds = HoldForm(door)
        self.holds.changed.connect(self._on_held)
        self.holds.failed.connect(self._fail)
        self.bundles = BundlesIn(door)
        self.bundles.told.connect(self._on_taken)
        self.bundles.failed.connect(self._fail)
        self.due = plain()
        self.back_button = key_button(tr("Back"), "Escape", self._leave)
        self._lay_out()
        self._enable()

    def _lay_out(self) -> None:
        top = QHBoxLayout()
        top.addWidget(heading(tr("State of the archive")), 1)
        top.addWidget(self.bundles)
        top.addWidget(self.back_button)
        row = QHBoxLayout()
        for button in (self.check_button, self.resume_button, self.stop_button):
            row.addWidget(button)
        row.addWidget(self.progress, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 10, 16, 10)
        column.addLayout(top)
        column.addWidget(self.where)
        column.addLayout(row)
        column.addWidget(
            quiet(
                tr(
                    "Every record and every photo is read again and compared with what was "
                    "taken in; nothing is changed. It can be stopped and gone on with later."
                )
            )
        )
        column.addWidget(self.said)
        column.addWidget(self.problems, 3)
        self.problems.hide()
        column.addStretch(1)
        column.addWidget(heading(tr("How long records are kept")))
        column.addWidget(self.due)
        column.addWidget(self.keeping, 2)
        column.addWidget(self.holds)

    def _leave(self) -> None:
        self.stop()
        self.left.emit()

    # -- what is there ------------------------------------------------------------------------
    def begin(self) -> None:
        """Shown anew: read where the archive is, and its rules and holds."""
        self.check_button.setFocus()
        self._door.ask(
            "", lambda archive, _: read_state(archive), self._show, failed=self._fail
        )

    def _on_taken(self, said: str) -> None:
        self._on_held(said)
        self.grown.emit()

    def _on_held(self, said: str) -> None:
        self.said.say(said, "done")
        self._door.ask(
            "", lambda archive, _: read_state(archive), self._show, failed=self._fail
        )

    def _on_kept_chosen(self) -> None:
        row = self.keeping.currentRow()
        kind, name = (self.keeping.item(row, column) for column in (0, 1))
        if kind is not None and name is not None and kind.text() == tr("hold"):
            self.holds.choose(name.text())

    def _show(self, state: State) -> None:
        self.where.setText(tr("{0} records; {1}", state.records, state.where))
        self.keeping.setVisible(bool(state.rows))
        _fill(self.keeping, state.rows)
        self.holds.show_state(state.holds, may=state.may)
        if not state.rows:
            self.due.setText(
                tr(
                    "There is no rule and no hold, so nothing may ever be deleted. What the "
                    "contract and law ask for is set by: ptmark archive keep --rule NAME "
                    "--years N --reason TEXT, with the same filters as a search."
                )
            )
            return
        self.due.setText(
            tr(
                "{0} records may be deleted today by these rules. Deleting is done by: ptmark "
                "archive keep --delete; it is logged, and never takes what a hold or a signed "
                "retest needs.",
                state.due,
            )
        )

    # -- checking -----------------------------------------------------------------------------
    def check(self, *, resume: bool = False) -> None:
        """Read everything again; ``resume`` goes on where a stopped check came to."""
        if self.running:
            return
        self.running = True
        self.said.say("")
        self.problems.setRowCount(0)
        self.problems.hide()
        self.progress.setValue(0)
        self._enable()

        def work(archive: "Archive", token: Token) -> "tuple[Verified, list[Row]]":
            from ptmark.archive import verify

            def step(done: int, total: int) -> None:
                token.check()
                token.partial((done, total))

            found = verify(archive, resume=resume, progress=step)
            return found, problem_rows(archive, found)

        self._door.ask(
            tr("Checking the archive"),
            work,
            self._tell,
            failed=self._fail,
            partial=self._on_step,
            key=_KEY,
        )

    def stop(self) -> None:
        """Stop the check; what it has read need not be read again."""
        if self.running:
            self._door.cancel(_KEY)
            self.running = False
            self.said.say(tr("Stopped. “Go on where it stopped” reads the rest."))
            self._enable()

    def _on_step(self, got: tuple[int, int]) -> None:
        done, total = got
        self.progress.setValue(round(1000 * done / max(total, 1)))
        self.progress.setFormat(tr("{0} of {1} records and photos", done, total))

    def _on_activated(self, item: QTableWidgetItem) -> None:
        """Open the record that a problem is of."""
        first = self.problems.item(item.row(), 0)
        hit = None if first is None else first.data(Qt.ItemDataRole.UserRole)
        if hit is not None:
            self.opened.emit(hit)

    def _tell(self, got: "tuple[Verified, list[Row]]") -> None:
        found, rows = got
        self.running = False
        self.progress.setValue(1000)
        self._enable()
        read = tr("{0} records and {1} photos were read again.", found.records, found.photos)
        lost = [one for one in found.problems if one.kind != "orphaned"]
        if not found.problems:
            self.said.say(tr("{0} All are as they were taken in.", read), "done")
        elif not lost:
            told = tr(
                "{0} All are as they were taken in. What is listed below belongs to no record; "
                "that is no loss.",
                read,
            )
            self.said.say(told, "done")
        else:
            told = tr(
                "{0} {1} are missing or not as they were. Take them back from a second copy: "
                "ptmark archive repair --from FOLDER. Until then rely on none of them.",
                read,
                len(lost),
            )
            self.said.say(told)
        _fill(self.problems, [row[:3] for row in rows], signs=True)
        for number, row in enumerate(rows):
            item = self.problems.item(number, 0)
            if item is not None:
                item.setData(Qt.ItemDataRole.UserRole, row.hit)
        self.problems.setVisible(bool(rows))

    def _fail(self, exc: Exception) -> None:
        self.running = False
        self._enable()
        self.said.say_error(exc)

    def _enable(self) -> None:
        buttons = (self.check_button, self.resume_button, self.stop_button)
        had_focus = any(button.hasFocus() for button in buttons)
        for button in buttons:
            button.setEnabled(self.running == (button is self.stop_button))
        if had_focus:
            (self.stop_button if self.running else self.check_button).setFocus()


def _list(heads: tuple[str, ...], name: str) -> QTableWidget:
    table = TableOf(0, len(heads))
    table.setHorizontalHeaderLabels(heads)
    table.setAccessibleName(name)
    table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
    table.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
    as_list(table)
    head = table.horizontalHeader()
    head.setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
    head.setDefaultSectionSize(190)
    head.setStretchLastSection(True)
    return table


def _fill(
    table: QTableWidget, rows: "Sequence[tuple[str, ...]]", *, signs: bool = False
) -> None:
    table.setRowCount(len(rows))
    for number, row in enumerate(rows):
        for column, text in enumerate(row):
            item = Cell(text)
            item.setToolTip(text)
            if signs and column == 0:
                item.setIcon(glyph_icon("look", table.palette()))
            table.setItem(number, column, item)
