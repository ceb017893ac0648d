"""The list of indications: letter, shape, length ± U, width, ratio, verdict."""

from typing import Any

from PySide6.QtCore import (
    QAbstractTableModel,
    QItemSelection,
    QItemSelectionModel,
    QModelIndex,
    QPersistentModelIndex,
    QSize,
    Qt,
)
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from ptmark.units import MM_PER_IN
from ptmark.window.glyphs import glyph_icon
from ptmark.window.hands import Hands
from ptmark.window.judging import standing_of
from ptmark.window.palette import tone
from ptmark.window.session import Session
from ptmark.window.wording import plus_minus

__all__ = ["IndicationModel", "IndicationTable"]

_SEEN = {"suggested": "not looked at", "taken": "taken", "dropped": "dropped"}
Index = QModelIndex | QPersistentModelIndex
_HEADS = ("", "Shape", "Length ± U", "Width", "L/W", "Verdict")
_ROWS_SHOWN = 7
_NOTHING = QModelIndex()


class IndicationModel(QAbstractTableModel):
    """Rows in the order of the letters as they were given."""

    def __init__(self, session: Session, parent: QWidget) -> None:
        super().__init__(parent)
        self._session, self._window = session, parent
        session.changed.connect(self._reset)
        session.judged.connect(self._renew)

    def _reset(self) -> None:
        self.beginResetModel()
        self.endResetModel()

    def _renew(self) -> None:
        if self.rowCount():
            last = self.index(self.rowCount() - 1, len(_HEADS) - 1)
            self.dataChanged.emit(self.index(0, 0), last)
            self.headerDataChanged.emit(Qt.Orientation.Horizontal, 0, len(_HEADS) - 1)

    def rowCount(self, parent: Index = _NOTHING) -> int:  # noqa: N802 - Qt's name
        state = self._session.state
        return 0 if parent.isValid() or state is None else len(state.marked)

    def columnCount(self, parent: Index = _NOTHING) -> int:  # noqa: N802 - Qt's name
        return 0 if parent.isValid() else len(_HEADS)

    def headerData(  # noqa: N802 - Qt's name
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> Any:  # noqa: ANN401 - as Qt has it
        if orientation != Qt.Orientation.Horizontal:
            return None
        if role == Qt.ItemDataRole.DisplayRole:
            unit = f", {self._session.unit}" if section == 2 else ""
            return _HEADS[section] + unit
        return None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:  # noqa: ANN401
        state = self._session.state
        if state is None or not 0 <= index.row() < len(state.marked):
            return None
        one = state.marked[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return self._cells(one.id)[index.column()]
        if role == Qt.ItemDataRole.ToolTipRole:
            return self._tip(one.id)
        if role == Qt.ItemDataRole.ForegroundRole and one.standing == "dropped":
            return tone("quiet", self._window.palette())
        if role == Qt.ItemDataRole.DecorationRole:
            return self._sign(one.id, one.standing, index.column())
        if role == Qt.ItemDataRole.AccessibleTextRole and index.column() == 0:
            return f"{one.id}, {_SEEN[one.standing]}"
        return None

    def _sign(self, letter: str, standing: str, column: int) -> Any:  # noqa: ANN401
        """First column: looked at or not. Last column: the verdict."""
        palette = self._window.palette()
        if column == 0:
            sign = {"taken": "done", "suggested": ""}.get(standing)
            return None if sign is None else glyph_icon(sign, palette, 14)
        name = standing_of(letter, self._session.judgement) if column == 5 else ""
        return glyph_icon(name, palette, 16) if name and standing != "dropped" else None

    def _cells(self, letter: str) -> tuple[str, ...]:
        judgement = self._session.judgement
        made = judgement.measured.get(letter)
        verdict = self._verdict(letter)
        if made is None:
            return (
                letter,
                "",
                "no scale" if not judgement.refused else "no size",
                "",
                "",
                verdict,
            )
        digits, per = (2, 1.0) if self._session.unit == "mm" else (3, MM_PER_IN)
        length = plus_minus(made.length, self._session.unit)
        shape = made.shape if made.shape_sure else f"{made.shape} ?"
        width = f"{made.width.value / per:.{digits}f}"
        return letter, shape, length, width, f"{made.ratio.value:.1f}", verdict

    def _verdict(self, letter: str) -> str:
        inspection = self._session.inspection
        if inspection is None:
            return ""
        one = inspection.marked(letter)
        if one.standing == "dropped":
            return "dropped"
        if one.relevance and one.reason.strip():
            return one.relevance
        evaluation = self._session.judgement.evaluation
        if evaluation and evaluation.relevance.get(letter, "").startswith("not relevant"):
            return "not relevant"
        verdict = standing_of(letter, self._session.judgement)
        return verdict or ("to look at" if one.standing == "suggested" else "taken")

    def _tip(self, letter: str) -> str:
        judgement = self._session.judgement
        lines = [judgement.refused[letter]] if letter in judgement.refused else []
        if judgement.evaluation is not None:
            lines += [f.says for f in judgement.evaluation.findings if letter in f.indications]
            if relevance := judgement.evaluation.relevance.get(letter):
                lines.append(relevance)
        return "\n".join(dict.fromkeys(lines))


class IndicationTable(QTableView):
    """The list; its selection and the photo's are one."""

    def __init__(self, session: Session, hands: Hands, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session, self._hands, self._echo = session, hands, False
        self.setModel(IndicationModel(session, self))
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setTabKeyNavigation(False)
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setIconSize(QSize(15, 15))
        self.setFixedHeight(28 * _ROWS_SHOWN + 30)
        self.setAlternatingRowColors(True)
        self.setAccessibleName("Indications")
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(28)
        head = self.horizontalHeader()
        head.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        head.setSectionResizeMode(5, QHeaderView.ResizeMode.Stretch)
        head.setHighlightSections(False)
        session.changed.connect(self._show_selection)
        session.selection_changed.connect(self._show_selection)

    def _show_selection(self) -> None:
        state = self._session.state
        rows = [] if state is None else [
            i for i, m in enumerate(state.marked) if m.id in self._session.selected
        ]  # fmt: skip
        chosen = QItemSelection()
        for row in rows:
            chosen.select(self.model().index(row, 0), self.model().index(row, 5))
        self._echo = True
        self.selectionModel().select(chosen, QItemSelectionModel.SelectionFlag.ClearAndSelect)
        if rows:
            index, keep = (
                self.model().index(rows[-1], 0),
                QItemSelectionModel.SelectionFlag.NoUpdate,
            )
            self.selectionModel().setCurrentIndex(index, keep)
            self.scrollTo(index)
        self._echo = False

    def selectionChanged(  # noqa: N802 - Qt's name
        self, selected: QItemSelection, deselected: QItemSelection
    ) -> None:
        super().selectionChanged(selected, deselected)
        state = self._session.state
        if not self._echo and state is not None:
            rows = sorted(index.row() for index in self.selectionModel().selectedRows())
            self._session.select(*(state.marked[r].id for r in rows if r < len(state.marked)))

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        shift = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
        extends = shift and event.key() in {Qt.Key.Key_Up, Qt.Key.Key_Down}
        if extends or not self._hands.key(event):
            super().keyPressEvent(event)
