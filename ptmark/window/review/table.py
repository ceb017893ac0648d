"""Both measurements in one table: lengths with ± U, difference, En, and what to look at."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QAbstractItemView, QHeaderView

from ptmark.window.bits import as_list
from ptmark.window.cells import Cell
from ptmark.window.edges import TableOf
from ptmark.window.glyphs import glyph_icon
from ptmark.window.words import format_length, number, tr

if TYPE_CHECKING:
    from ptmark.review import Compared, Comparison

__all__ = ["ReviewTable"]


class ReviewTable(TableOf):
    """One row for each indication of either; above 1, En has a sign and says so.

    Signals: ``chosen(int, str)`` a row's photo, numbered from 0, and a mark to look at.
    """

    chosen = Signal(int, str)

    def __init__(self) -> None:
        super().__init__(0, 5)
        self._marks: list[tuple[int, str]] = []
        self._shown: tuple[str, Sequence[Comparison]] = ("", ())
        self.currentCellChanged.connect(lambda row, *_: self._tell(row))
        self.setAccessibleName(tr("Both measurements, lengths with expanded uncertainty"))
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        as_list(self)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        head = self.horizontalHeader()
        head.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        head.setStretchLastSection(True)

    def show_photos(self, compared: "Sequence[Comparison]", unit: str) -> None:
        """Show the comparison of each photo of the record; lengths in this unit."""
        heads = (
            tr("Pair"),
            tr("First, {0}", unit),
            tr("Own, {0}", unit),
            tr("Difference"),
            "En",
        )
        self.setHorizontalHeaderLabels(heads)
        if (unit, compared) == self._shown:
            return
        self._shown = (unit, compared)
        self._marks = []
        self.setRowCount(0)
        for nth, one in enumerate(compared, start=1):
            where = tr("photo {0}: ", nth) if len(compared) > 1 else ""
            self._marks += [(nth - 1, tr("first {0}", pair.first)) for pair in one.pairs]
            self._marks += [(nth - 1, tr("first {0}", name)) for name in one.only_first]
            self._marks += [(nth - 1, str(other["id"])) for other in one.only_second]
            for pair in one.pairs:
                self._add(f"{where}{pair.first} = {pair.second}", pair.length, unit)
            for name in one.only_first:
                self._add_alone(f"{where}{name}", tr("first only"))
            for other in one.only_second:
                self._add_alone(f"{where}{other['id']}", tr("own only"))
        self.setFixedHeight(28 * (min(self.rowCount(), 8) + 1) + 24)

    def _tell(self, row: int) -> None:
        if 0 <= row < len(self._marks):
            self.chosen.emit(*self._marks[row])

    def _add(self, name: str, two: "Compared | None", unit: str) -> None:
        if two is None:
            self._put((name, tr("not measured"), "", "", ""), look=False)
            return
        over = two.en is not None and abs(two.en) > 1
        cells = (
            name,
            f"{_bare(two.first, unit)} ± {_bare(two.first_u, unit)}",
            f"{_bare(two.second, unit)} ± {_bare(two.second_u, unit)}",
            f"{'−' if two.difference < 0 else '+'}{_bare(abs(two.difference), unit)}",
            ""
            if two.en is None
            else f"{number(two.en, '.2f')}{tr(' above 1') if over else ''}",
        )
        self._put(cells, look=over)

    def _add_alone(self, name: str, who: str) -> None:
        self._put((name, who, "", "", tr("no match")), look=True)

    def _put(self, cells: Sequence[str], *, look: bool) -> None:
        row = self.rowCount()
        self.insertRow(row)
        for column, text in enumerate(cells):
            item = Cell(text)
            item.setFlags(item.flags() & ~Qt.ItemFlag.ItemIsEditable)
            if look and column == self.columnCount() - 1:
                item.setIcon(glyph_icon("look", self.palette()))
            self.setItem(row, column, item)


def _bare(mm: float, unit: str) -> str:
    return format_length(mm, unit).rpartition(" ")[0]
