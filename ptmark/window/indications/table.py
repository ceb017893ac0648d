"""The list of indications: sorted by any column, filtered, edited in place, copied."""

from PySide6.QtCore import QItemSelection, QItemSelectionModel, Qt
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence
from PySide6.QtWidgets import (
    QAbstractItemView,
    QCompleter,
    QHeaderView,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
    QWidget,
)

from ptmark.files import inert
from ptmark.units import MM_PER_IN
from ptmark.window.bits import as_list
from ptmark.window.edges import Framed, Line
from ptmark.window.indications.hands import Hands
from ptmark.window.indications.kinds import KINDS, kind_shown
from ptmark.window.indications.model import COLUMNS, Index, IndicationModel, ListOrder
from ptmark.window.keys import KEYS
from ptmark.window.session import Session
from ptmark.window.words import number, tr

__all__ = ["IndicationTable"]

_ROWS_SHOWN = 7
_KIND = COLUMNS.index(tr("Kind"))


class IndicationTable(Framed, QTableView):
    """The list; its selection and the photo's are one."""

    def __init__(self, session: Session, hands: Hands, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session, self._hands, self._echo = session, hands, False
        self.order = ListOrder(IndicationModel(session, self), self)
        self.setModel(self.order)
        as_list(self)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setEditTriggers(
            QAbstractItemView.EditTrigger.DoubleClicked
            | QAbstractItemView.EditTrigger.EditKeyPressed
        )
        self.setItemDelegateForColumn(_KIND, _KindDelegate(self))
        self.setWordWrap(False)
        self.setFixedHeight(28 * _ROWS_SHOWN + 48)
        self.setAccessibleName(tr("Indications"))
        head = self.horizontalHeader()
        head.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        head.moveSection(COLUMNS.index(tr("Verdict")), 1)  # in sight, however narrow the page
        head.setSortIndicatorClearable(True)
        head.setSortIndicator(-1, Qt.SortOrder.AscendingOrder)
        self.setSortingEnabled(True)
        session.listed = lambda: [row.id for row in self.order.shown]
        session.changed.connect(self._show_selection)
        session.selection_changed.connect(self._show_selection)
        self.order.layoutChanged.connect(self._show_selection)

    def want(self, name: str, value: str) -> None:
        """Filter; what no longer shows is no longer selected, so that no key can reach it."""
        self.order.want(name, value)
        there = {row.id for row in self.order.shown}
        self._session.select(*(name for name in self._session.selected if name in there))
        self._show_selection()

    def copy(self) -> None:
        """Put the selected rows, or all where none is, on the clipboard, tab-separated.

        Numbers have the language's sign: where the comma is usual, a spreadsheet takes 9.20
        for a date.
        """
        chosen = set(self._session.selected)
        rows = [row for row in self.order.shown if not chosen or row.id in chosen]
        measured, unit = self._session.judgement.measured, self._session.unit
        digits, per = (2, 1.0) if unit == "mm" else (3, MM_PER_IN)
        lengths = [f"{name}, {unit}" for name in ("Length", "U (k = 2)", "Path", "Width")]
        more = (f"U of path, {unit}", f"U of width, {unit}", "U of L/W")
        head = ("Indication", "Shape", *lengths, "L/W", "Verdict", "Kind", "Note", *more)
        lines = ["\t".join(head)]
        for row in rows:
            made = measured.get(row.id)
            sizes, around = ["", "", "", "", ""], ["", "", ""]
            if made is not None:
                length, path, width = made.length, made.path, made.width
                amounts = (length.value, length.expanded, path.value, width.value)
                sizes = [number(one / per, f".{digits}f") for one in amounts]
                sizes.append(number(made.ratio.value, ".2f"))
                around = [number(q.expanded / per, f".{digits}f") for q in (path, width)]
                around.append(number(made.ratio.expanded, ".2f"))
            words = (row.verdict, _safe(row.cells[_KIND]), _safe(row.cells[_KIND + 1]))
            lines.append("\t".join((row.id, row.shape, *sizes, *words, *around)))
        QGuiApplication.clipboard().setText("\n".join(lines) + "\n")

    def _show_selection(self) -> None:
        chosen, rows = QItemSelection(), []
        for at, row in enumerate(self.order.shown):
            if row.id in self._session.selected:
                rows.append(at)
                last = self.order.index(at, len(COLUMNS) - 1)
                chosen.select(self.order.index(at, 0), last)
        self._echo = True
        self.selectionModel().select(chosen, QItemSelectionModel.SelectionFlag.ClearAndSelect)
        if rows and self.state() != QAbstractItemView.State.EditingState:
            index, keep = (
                self.order.index(rows[-1], max(0, self.currentIndex().column())),
                QItemSelectionModel.SelectionFlag.NoUpdate,
            )
            self.selectionModel().setCurrentIndex(index, keep)
            self.scrollTo(self.order.index(rows[-1], 0))
        self._echo = False

    def selectionChanged(  # noqa: N802 - Qt's name
        self, selected: QItemSelection, deselected: QItemSelection
    ) -> None:
        super().selectionChanged(selected, deselected)
        if not self._echo:
            shown = self.order.shown
            rows = sorted(index.row() for index in self.selectionModel().selectedRows())
            self._session.select(*(shown[r].id for r in rows if r < len(shown)))

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        event = KEYS.as_usual(event)
        shift = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
        sideways = event.key() in {Qt.Key.Key_Left, Qt.Key.Key_Right}
        extends = shift and event.key() in {Qt.Key.Key_Up, Qt.Key.Key_Down}
        if self.state() == QAbstractItemView.State.EditingState:
            event.accept()  # Enter ended the editor and must not take the indication, too
        elif event.matches(QKeySequence.StandardKey.Copy):
            self.copy()
        elif extends or sideways or not self._hands.key(event):
            super().keyPressEvent(event)


class _KindDelegate(QStyledItemDelegate):
    """Completes the usual kinds; any other can be typed."""

    def createEditor(  # noqa: N802 - Qt's name
        self,
        parent: QWidget,
        option: QStyleOptionViewItem,
        index: Index,
    ) -> QWidget:
        edit = Line(parent)
        edit.setAccessibleName(tr("Kind, as ISO 6520-1 names it"))
        kinds = QCompleter([kind_shown(kind) for kind in KINDS], edit)
        kinds.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
        kinds.setCompletionMode(QCompleter.CompletionMode.InlineCompletion)
        edit.setCompleter(kinds)
        return edit


def _safe(text: str) -> str:
    """In one cell, and never taken for a formula by a spreadsheet."""
    return inert(" ".join(text.split()))
