"""What judging a kept record again changes, as a table."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractItemView, QHeaderView

from ptmark.window.bits import as_list
from ptmark.window.cells import Cell
from ptmark.window.edges import TableOf
from ptmark.window.glyphs import glyph_icon
from ptmark.window.words import from_core, tr

if TYPE_CHECKING:
    from ptmark.criteria import Change
    from ptmark.record import Record

__all__ = ["ChangesTable", "judged_again"]


class ChangesTable(TableOf):
    """Verdict and indications, before and after."""

    def __init__(self) -> None:
        super().__init__(0, 4)
        self.setHorizontalHeaderLabels(
            (tr("What"), tr("Before"), tr("After"), tr("By the rule"))
        )
        self.setAccessibleName(tr("What changes by the other criteria"))
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        as_list(self)
        head = self.horizontalHeader()
        head.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        head.setStretchLastSection(True)

    def show_rows(self, rows: "list[tuple[str, Change]]") -> None:
        self.setRowCount(len(rows))
        for number, (where, row) in enumerate(rows):
            told = (row.what, row.before, row.after, row.rule_after)
            cells = [from_core(text) for text in told]
            cells[0] = where + cells[0]
            for column, text in enumerate(cells):
                item = Cell(text)
                if column == 0 and row.differs:
                    item.setIcon(glyph_icon("look", self.palette()))
                    item.setData(Qt.ItemDataRole.AccessibleTextRole, tr("{0}, changes", text))
                self.setItem(number, column, item)


def judged_again(record: "Record", name: str) -> "tuple[str, list[tuple[str, Change]]]":
    """Judge a record by another profile: its name, and what changes where."""
    from ptmark.criteria import changes, evaluation_to_json, load_profile
    from ptmark.record import evaluated_again

    profile, rows = load_profile(name), []
    for number, view, after in evaluated_again(record, profile):
        where = tr("photo {0}: ", number) if number else ""
        made = changes(view.evaluation, evaluation_to_json(after))
        rows += [(where, row) for row in made]
    return f"{from_core(profile.title)} ({from_core(profile.edition)})", rows
