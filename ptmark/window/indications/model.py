"""The rows of the list of indications: words, sort keys, filters, and what can be edited."""

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import (
    QAbstractTableModel,
    QModelIndex,
    QPersistentModelIndex,
    QSortFilterProxyModel,
    Qt,
    QTimer,
)
from PySide6.QtWidgets import QWidget

from ptmark.least import Least
from ptmark.window.cells import EMPTY
from ptmark.window.glyphs import glyph_icon
from ptmark.window.indications.kinds import kind_kept, kind_shown
from ptmark.window.judging import standings
from ptmark.window.palette import tone
from ptmark.window.session import Session
from ptmark.window.wording import plus_minus
from ptmark.window.words import from_core, number, tr

if TYPE_CHECKING:
    from ptmark.inspection.state import Marked
    from ptmark.measure import Measurement

__all__ = ["COLUMNS", "VERDICTS", "IndicationModel", "ListOrder"]

Index = QModelIndex | QPersistentModelIndex
COLUMNS = (
    "",
    tr("Shape"),
    tr("Length ± U"),
    tr("Width ± U"),
    tr("L/W ± U"),
    tr("Verdict"),
    tr("Kind"),
    tr("Note"),
    tr("Path ± U"),
)
VERDICTS = (
    "rejectable",
    "undecided",
    "acceptable",
    "to look at",
    "taken",
    "not relevant",
    "non-relevant",
    "false",
    "dropped",
)
_VERDICT, _KIND, _NOTE = 5, 6, 7
_LENGTHS = (2, 3, 8)
_LEAST = {
    Least.OVEREXPOSED: tr("On overexposed developer: its sizes are the least it can have."),
    Least.ENDS_UNSURE: tr("Its ends may not show: its sizes are the least it can have."),
    Least.COVERED: tr("An end may be covered: its sizes are the least it can have."),
    Least.RUNS_OUT: tr("Ends at the photo's edge: its sizes are the least it can have."),
}
_SEEN = {"suggested": tr("not looked at"), "taken": tr("taken"), "dropped": tr("dropped")}
_NOTHING = QModelIndex()


@dataclass(frozen=True)
class Row:
    """One indication as the list has it; ``keys`` are what each column sorts by."""

    id: str
    standing: str
    cells: tuple[str, ...]
    keys: tuple[float | str, ...]
    shape: str
    verdict: str
    relevant: bool
    unit: str  # of the lengths; "" where there is none

    @property
    def spoken(self) -> str:
        """The row in one breath: what it is, its length with U, and how it stands."""
        size = f"{self.cells[2].replace('≥', tr('at least'))} {self.unit}".strip()
        verdict = "" if self.verdict == "to look at" else tr(self.verdict)  # as it stands
        told = (self.id, self.cells[1], size, _SEEN[self.standing], verdict)
        return ", ".join(dict.fromkeys(part for part in told if part))


class IndicationModel(QAbstractTableModel):
    """Rows in the order of the letters as they were given."""

    def __init__(self, session: Session, parent: QWidget) -> None:
        super().__init__(parent)
        self._session, self._window = session, parent
        self._rows: list[Row] | None = None
        session.changed.connect(self._reset)
        session.judged.connect(self._renew)

    def _reset(self) -> None:
        state = self._session.state
        names = [one.id for one in state.marked] if state else []
        if self._rows is not None and [row.id for row in self._rows] == names:
            self._renew()  # an editor that is open stays open
            return
        self.beginResetModel()
        self._rows = None
        self.endResetModel()

    def _renew(self) -> None:
        """Tell what is new; a cell that is being typed in is left alone."""
        before, self._rows = self._rows or [], None
        if not self.rows:
            return
        low = len(self.rows) - 1
        self.dataChanged.emit(self.index(0, 0), self.index(low, _VERDICT))
        self.dataChanged.emit(self.index(0, _NOTE + 1), self.index(low, _NOTE + 1))
        for at, (old, new) in enumerate(zip(before, self.rows, strict=False)):
            if old.cells[_KIND : _NOTE + 1] != new.cells[_KIND : _NOTE + 1]:
                self.dataChanged.emit(self.index(at, _KIND), self.index(at, _NOTE))
        self.headerDataChanged.emit(Qt.Orientation.Horizontal, 0, len(COLUMNS) - 1)

    @property
    def rows(self) -> list[Row]:
        """All rows, made anew after each change."""
        if self._rows is None:
            state = self._session.state
            stands = standings(self._session.judgement)
            marked = state.marked if state else ()
            self._rows = [self._row(n, one, stands) for n, one in enumerate(marked)]
        return self._rows

    def rowCount(self, parent: Index = _NOTHING) -> int:  # noqa: N802 - Qt's name
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = _NOTHING) -> int:  # noqa: N802 - Qt's name
        return 0 if parent.isValid() else len(COLUMNS)

    def headerData(  # noqa: N802 - Qt's name
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> Any:  # noqa: ANN401 - as Qt has it
        if orientation == Qt.Orientation.Horizontal and section == 0:
            return tr("Indication") if role == Qt.ItemDataRole.AccessibleTextRole else None
        if orientation != Qt.Orientation.Horizontal or role != Qt.ItemDataRole.DisplayRole:
            return None
        return COLUMNS[section] + (f", {self._session.unit}" if section in _LENGTHS else "")

    def flags(self, index: Index) -> Qt.ItemFlag:
        usual = super().flags(index)
        editable = index.column() in {_KIND, _NOTE}
        return usual | Qt.ItemFlag.ItemIsEditable if editable else usual

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:  # noqa: ANN401
        if not 0 <= index.row() < len(self.rows):
            return None
        row, column = self.rows[index.row()], index.column()
        if role in {Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.EditRole}:
            return row.cells[column]
        if role == Qt.ItemDataRole.UserRole:
            return row.keys[column]
        if role == Qt.ItemDataRole.ToolTipRole:
            return self._tip(row.id)
        if role == Qt.ItemDataRole.ForegroundRole and row.standing == "dropped":
            return tone("quiet", self._window.palette())
        if role == Qt.ItemDataRole.DecorationRole:
            return self._sign(row, column)
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return row.spoken if column == 0 else row.cells[column] or EMPTY
        return None

    def setData(  # noqa: N802 - Qt's name
        self,
        index: Index,
        value: Any,  # noqa: ANN401 - as Qt has it
        role: int = Qt.ItemDataRole.EditRole,
    ) -> bool:
        """Kind and note, typed in place; the change comes once the editor has closed."""
        inspection, column = self._session.inspection, index.column()
        if role != Qt.ItemDataRole.EditRole or inspection is None:
            return False
        row, text = self.rows[index.row()], str(value).strip()
        if column not in {_KIND, _NOTE} or text == row.cells[column]:
            return False
        what, member = (tr("name"), "kind") if column == _KIND else (tr("note on"), "note")
        kept = kind_kept(text) if column == _KIND else text
        change: dict[str, Any] = {member: kept}
        QTimer.singleShot(0, self, lambda: inspection.edit(row.id, what, **change))
        return True

    def _sign(self, row: Row, column: int) -> Any:  # noqa: ANN401
        """First column: looked at or not. Fifth column: the verdict."""
        palette = self._window.palette()
        if column == 0:
            sign = {"taken": "done", "suggested": ""}.get(row.standing)
            return None if sign is None else glyph_icon(sign, palette, 14)
        if column == _VERDICT and row.verdict in VERDICTS[:3]:
            return glyph_icon(row.verdict, palette, 16)
        return None

    def _row(self, number: int, one: "Marked", stands: dict[str, str]) -> Row:
        judgement = self._session.judgement
        made = judgement.measured.get(one.id)
        verdict = self._verdict(one, stands)
        numbers, words = self._sizes(made)
        shape = "" if made is None else made.shape
        said = tr(shape) if shape else ""
        sure = said if made is None or made.shape_sure else f"{said} ?"
        (length, width, ratio, path), kind = words, kind_shown(one.kind)
        cells = (one.id, sure, length, width, ratio, tr(verdict), kind, one.note, path)
        keys: tuple[float | str, ...] = (
            number,
            shape,
            *numbers[:3],
            VERDICTS.index(verdict),
            kind.casefold(),
            one.note.casefold(),
            numbers[3],
        )
        relevant = VERDICTS.index(verdict) < 5
        unit = "" if made is None else self._session.unit
        return Row(one.id, one.standing, cells, keys, shape, verdict, relevant, unit)

    def _sizes(self, made: "Measurement | None") -> tuple[tuple[float, ...], tuple[str, ...]]:
        """Length, width, ratio and path to sort by, and in words."""
        if made is None:
            why = tr("no size") if self._session.judgement.refused else tr("no scale")
            return (-1.0, -1.0, -1.0, -1.0), (why, "", "", "")
        unit, ratio = self._session.unit, made.ratio
        numbers = (made.length.value, made.width.value, made.ratio.value, made.path.value)
        least = "≥ " if made.least else ""
        return numbers, (
            least + plus_minus(made.length, unit),
            least + plus_minus(made.width, unit),
            f"{number(ratio.value, '.2f')} ± {number(ratio.expanded, '.2f')}",
            least + plus_minus(made.path, unit),
        )

    def _verdict(self, one: "Marked", stands: dict[str, str]) -> str:
        if one.standing == "dropped":
            return "dropped"
        if one.relevance and one.reason.strip():
            return one.relevance
        evaluation = self._session.judgement.evaluation
        if evaluation and evaluation.relevance.get(one.id, "").startswith("not relevant"):
            return "not relevant"
        return stands.get(one.id) or ("to look at" if one.standing == "suggested" else "taken")

    def _tip(self, letter: str) -> str:
        judgement = self._session.judgement
        lines = [judgement.refused[letter]] if letter in judgement.refused else []
        made = judgement.measured.get(letter)
        if judgement.evaluation is not None:
            lines += [f.says for f in judgement.evaluation.findings if letter in f.indications]
            if relevance := judgement.evaluation.relevance.get(letter):
                lines.append(relevance)
        least = frozenset() if made is None else made.least
        told = [says for why, says in _LEAST.items() if why in least]
        told += [from_core(line) for line in dict.fromkeys(lines)]
        return "\n".join(told)


class ListOrder(QSortFilterProxyModel):
    """The rows as sorted and filtered; "" in ``wanted`` lets all through."""

    def __init__(self, model: IndicationModel, parent: QWidget) -> None:
        super().__init__(parent)
        self.model = model
        self.wanted = {"shape": "", "relevance": "", "verdict": ""}
        self.setSortRole(Qt.ItemDataRole.UserRole)
        self.setSourceModel(model)

    def want(self, name: str, value: str) -> None:
        """Filter by shape ("linear", "rounded"), relevance ("yes", "no") or verdict."""
        self.wanted[name] = value
        self.invalidate()

    def filterAcceptsRow(self, source_row: int, source_parent: Index) -> bool:  # noqa: N802
        row = self.model.rows[source_row]
        shape, relevance, verdict = self.wanted.values()
        return (
            shape in {"", row.shape}
            and relevance in {"", "yes" if row.relevant else "no"}
            and verdict in {"", row.verdict}
        )

    @property
    def shown(self) -> list[Row]:
        """Rows from top to bottom as they show."""
        count = self.rowCount()
        return [self.model.rows[self.mapToSource(self.index(r, 0)).row()] for r in range(count)]
