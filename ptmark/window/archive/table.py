"""Inspections of the archive as a table."""

from PySide6.QtCore import QItemSelectionModel
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView

from ptmark.window.archive.model import HitModel
from ptmark.window.bits import as_list
from ptmark.window.edges import Framed
from ptmark.window.words import tr

__all__ = ["HitTable"]

_WIDTHS = (112, 98, 92, 118, 130, 80, 134, 112, 96, 124, 146)  # px


class HitTable(Framed, QTableView):
    """One row for each; arrow keys go on, Enter opens.

    It goes along where one walks from record to record; several that are selected stay so.
    """

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
        self._hits = model
        model.walked.connect(self._go_along)

    def _go_along(self, row: int) -> None:
        now, chosen = self.currentIndex(), self.selectionModel()
        many = len({one.row() for one in chosen.selectedIndexes()}) > 1
        flags = QItemSelectionModel.SelectionFlag
        to = self._hits.index(row, max(now.column(), 0))
        how = flags.NoUpdate if many else flags.ClearAndSelect | flags.Rows
        chosen.setCurrentIndex(to, how)
