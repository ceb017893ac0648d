"""Cells of tables that a screen reader has a word for, also where they are empty."""

from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QTableWidgetItem

from ptmark.window.words import tr

__all__ = ["EMPTY", "Cell"]

EMPTY = tr("empty")


class Cell(QTableWidgetItem):
    """One cell; without words it is spoken of as empty, else a reader falls silent at it."""

    def data(self, role: int) -> Any:  # noqa: ANN401 - as Qt has it
        own = super().data(role)
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return own or super().data(Qt.ItemDataRole.DisplayRole) or EMPTY
        return own
