"""What was seen in one cell of the place map: its records, each with what it shows there."""

from typing import TYPE_CHECKING, Any

from PySide6.QtCore import Qt

from ptmark.window.archive.model import LONGEST, HitModel, Index, length_text
from ptmark.window.archive.table import HitTable
from ptmark.window.indications.kinds import kind_shown
from ptmark.window.words import tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.archive import Archive, Hit, Seen

__all__ = ["CellModel", "CellTable", "hits_of_cell", "told_cell"]

_SHOWS = {
    Qt.ItemDataRole.DisplayRole,
    Qt.ItemDataRole.ToolTipRole,
    Qt.ItemDataRole.AccessibleTextRole,
}
_PART, _COUNT = 0, 5  # columns that say the same in each row, or of the whole record


class CellModel(HitModel):
    """Hits with what each shows in the cell where others have their longest indication."""

    def __init__(self) -> None:
        super().__init__()
        self._here: dict[str, list[str]] = {}

    def show_cell(self, here: "list[Seen]", unit: str) -> None:
        """Take what lies in the cell; its records come with `begin`."""
        self.unit, self._here = unit, {}
        for one in here:
            told = (
                one.letter,
                kind_shown(one.kind),
                length_text(one.length_mm, one.length_u_mm, unit, least=one.least),
            )
            self._here.setdefault(one.record_id, []).append(" ".join(filter(None, told)))

    def headerData(  # noqa: N802 - Qt's name
        self, section: int, orientation: Qt.Orientation, role: int = 0
    ) -> Any:  # noqa: ANN401 - Qt's own
        across = orientation == Qt.Orientation.Horizontal
        if across and section == LONGEST and role == Qt.ItemDataRole.DisplayRole:
            return tr("Seen here")
        return super().headerData(section, orientation, role)

    def data(self, index: Index, role: int = 0) -> Any:  # noqa: ANN401 - Qt's own
        if index.column() != LONGEST:
            return super().data(index, role)
        if role in _SHOWS:
            return "; ".join(self._here.get(self.hits[index.row()].record_id, ()))
        return None if role == Qt.ItemDataRole.TextAlignmentRole else super().data(index, role)


class CellTable(HitTable):
    """Serial, day and what was seen, then the rest."""

    def __init__(self, model: CellModel) -> None:
        super().__init__(model)
        for column in (_PART, _COUNT):
            self.hideColumn(column)
        head = self.horizontalHeader()
        head.moveSection(head.visualIndex(LONGEST), 3)
        for column, width in ((1, 98), (LONGEST, 160)):
            head.resizeSection(column, width)


def told_cell(says: str, here: "list[Seen]", unit: str) -> str:
    """Where a cell lies and, in short, what is there."""
    longest = max(here, key=lambda one: one.length_mm or 0.0, default=None)
    if longest is None:
        return says
    least = any(one.least for one in here)  # which may be the longest
    length = length_text(longest.length_mm, longest.length_u_mm, unit, least=least)
    return f"{says}\n{tr('{0} indications, the longest {1}', len(here), length)}"


def hits_of_cell(archive: "Archive", token: Token, ids: list[str]) -> "list[Hit]":
    """The inspections of these records, newest first."""
    from ptmark.archive import Query, find

    hits: list[Hit] = []
    for one in ids:
        token.check()
        hits += find(archive, Query(record_id=one)).hits
    return sorted(hits, key=lambda hit: hit.examined_on, reverse=True)
