"""Inspections of the archive as a table."""

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView

from ptmark.window.archive_model import HitModel

__all__ = ["HitTable"]

_WIDTHS = (130, 90, 100, 116, 128, 84, 86, 120, 110, 130, 150)  # px


class HitTable(QTableView):
    """One row for each; arrow keys go on, Enter opens."""

    def __init__(self, model: HitModel) -> None:
        super().__init__()
        self.setModel(model)
        self.setAccessibleName("Inspections; Enter opens")
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setTabKeyNavigation(False)
        self.setShowGrid(False)
        self.setAlternatingRowColors(True)
        self.setIconSize(QSize(15, 15))
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(28)
        head = self.horizontalHeader()
        head.setHighlightSections(False)
        head.setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        for column, width in enumerate(_WIDTHS):
            head.resizeSection(column, width)
        head.setStretchLastSection(True)
