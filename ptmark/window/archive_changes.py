"""What judging a kept record again changes, as a table."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableWidget, QTableWidgetItem

from ptmark.window.glyphs import glyph_icon

if TYPE_CHECKING:
    from ptmark.criteria import Change

__all__ = ["ChangesTable"]


class ChangesTable(QTableWidget):
    """Verdict and indications, before and after."""

    def __init__(self) -> None:
        super().__init__(0, 4)
        self.setHorizontalHeaderLabels(("What", "Before", "After", "By the rule"))
        self.setAccessibleName("What changes by the other criteria")
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setTabKeyNavigation(False)
        self.setShowGrid(False)
        self.setAlternatingRowColors(True)
        self.setIconSize(QSize(15, 15))
        self.verticalHeader().hide()
        head = self.horizontalHeader()
        head.setHighlightSections(False)
        head.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        head.setStretchLastSection(True)

    def show_rows(self, rows: "list[tuple[str, Change]]") -> None:
        self.setRowCount(len(rows))
        for number, (where, row) in enumerate(rows):
            cells = (f"{where}{row.what}", row.before, row.after, row.rule_after)
            for column, text in enumerate(cells):
                item = QTableWidgetItem(text)
                if column == 0 and row.differs:
                    item.setIcon(glyph_icon("look", self.palette()))
                    item.setData(Qt.ItemDataRole.AccessibleTextRole, f"{text}, changes")
                self.setItem(number, column, item)
