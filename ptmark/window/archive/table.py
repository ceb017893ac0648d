"""Inspections of the archive as a table."""

from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView

from ptmark.window.archive.model import HitModel
from ptmark.window.bits import as_list
from ptmark.window.words import tr

__all__ = ["HitTable"]

_WIDTHS = (112, 98, 92, 118, 130, 80, 134, 112, 96, 124, 146)  # px


class HitTable(QTableView):
    """One row for each; arrow keys go on, Enter opens."""

    def __init__(self, model: HitModel) -> None:
        super().__init__()
        self.setModel(model)
        self.setAccessibleName(tr("Inspections; Enter opens"))
        as_list(self)
        self.setWordWrap(False)  # a long name ends in dots; its tip has it whole
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        head = self.horizontalHeader()
        head.setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        for column, width in enumerate(_WIDTHS):
            head.resizeSection(column, width)
        head.setStretchLastSection(True)
