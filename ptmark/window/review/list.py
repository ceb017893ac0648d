"""The worklist: the records of a folder and how each stands, none of their results."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QVBoxLayout,
    QWidget,
)

from ptmark.errors import PtmarkError
from ptmark.window.bits import Notice, as_list, heading, quiet
from ptmark.window.cells import Cell
from ptmark.window.edges import TableOf
from ptmark.window.glyphs import glyph_icon
from ptmark.window.words import from_core, tr

if TYPE_CHECKING:
    from ptmark.review import WorkItem

__all__ = ["ReviewList"]

_COLUMNS = (tr("Standing"), tr("Record"), tr("Part"), tr("Examiner"))
_WIDEST = 320  # px
_SIGNS = {
    "signed": "done",
    "returned": "look",
    "needs photo": "look",
    "not readable": "rejectable",
    "not signed": "undecided",
}


class ReviewList(QWidget):
    """Signals: ``chosen(object)`` a record's path."""

    chosen = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.items: list[WorkItem] = []
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 16, 24, 16)
        column.addWidget(heading(tr("Records to review")))
        self.says = quiet()
        column.addWidget(self.says)
        self.notice = Notice()
        column.addWidget(self.notice)
        self.table = _Rows(0, len(_COLUMNS))
        self.table.taken.connect(self._choose)
        column.addWidget(self.table, 1)
        column.addWidget(
            quiet(tr("Enter opens the record; results stay hidden until you measured."))
        )

    def show_items(self, items: "list[WorkItem]", folder: Path) -> None:
        """Show these rows; the one at hand stays at hand."""
        at = self.table.currentRow()
        self.items = items
        left = sum(one.standing == "to review" for one in items)
        if items:
            said = tr("{0}: {1} records, {2} to review", folder, len(items), left)
        else:
            said = tr("{0}: no record in it. Drop photos themselves, not their folder.", folder)
        self.says.setText(said)
        self.table.setRowCount(len(items))
        for row, one in enumerate(items):
            cells = (tr(one.standing), one.path.name, one.part, one.examiner)
            for column, text in enumerate(cells):
                item = Cell(text)
                item.setToolTip(f"{text}\n{from_core(one.says)}".strip())
                if column == 0:
                    sign = _SIGNS.get(one.standing, "")
                    item.setIcon(glyph_icon(sign, self.palette()))
                self.table.setItem(row, column, item)
        self.table.fit_columns()
        if items:
            first = next((i for i, o in enumerate(items) if o.standing == "to review"), 0)
            self.table.selectRow(at if 0 <= at < len(items) else first)

    def say_error(self, exc: PtmarkError | None) -> None:
        """Show why a record could not be opened."""
        self.notice.say_error(exc)

    def step(self, by: int) -> Path | None:
        """The next record to review, or the one before; round at the ends, None if none."""
        at, count = self.table.currentRow(), len(self.items)
        for turn in range(1, count + 1):
            row = (at + by * turn) % count
            if self.items[row].standing == "to review":
                self.table.selectRow(row)
                return self.items[row].path
        return None

    def _choose(self, row: int) -> None:
        if 0 <= row < len(self.items):
            self.chosen.emit(self.items[row].path)


class _Rows(TableOf):
    """Signals: ``taken(int)`` a row chosen by Enter or a double click."""

    taken = Signal(int)

    def __init__(self, rows: int, columns: int) -> None:
        super().__init__(rows, columns)
        self.setHorizontalHeaderLabels(_COLUMNS)
        self.setAccessibleName(tr("Records to review"))
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        as_list(self, row_px=30)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        head = self.horizontalHeader()
        head.setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        head.setStretchLastSection(True)
        self.cellDoubleClicked.connect(lambda row, _: self.taken.emit(row))

    def fit_columns(self) -> None:
        """Each column as wide as its longest text; a very long one ends in dots."""
        self.resizeColumnsToContents()
        for column in range(self.columnCount() - 1):
            self.setColumnWidth(column, min(self.columnWidth(column), _WIDEST))

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.taken.emit(self.currentRow())
        else:
            super().keyPressEvent(event)
