"""The table of example indications: each one's size, place, turn, uncertainty and kind."""

import re
from dataclasses import replace
from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QHBoxLayout,
    QHeaderView,
    QTableWidget,
    QVBoxLayout,
    QWidget,
)

from ptmark.criteria.house_examples import EXAMPLES, Example
from ptmark.errors import PtmarkError, UsageError
from ptmark.inspection.state import free_letter
from ptmark.units import parse_length
from ptmark.window.bits import Notice, key_button, quiet
from ptmark.window.cells import Cell
from ptmark.window.edges import TableOf
from ptmark.window.indications.kinds import kind_kept, kind_shown
from ptmark.window.words import number, tr

__all__ = ["ExampleTable"]

_COLUMNS = ("length", "width", "x", "y", "turn_deg", "u", "kind")
_HEADS = ("", tr("Length"), tr("Width"), "x", "y", tr("Turned °"), "U", tr("Kind"))
_MOST = 50
_SHOWN = 7  # rows in sight at once


class ExampleTable(QWidget):
    """Signals: ``changed()`` when a person has changed, added or removed an example."""

    changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.rows: tuple[Example, ...] = EXAMPLES
        self.notice = Notice()
        self.table = self._made_table()
        self.add_button = key_button(tr("Add an example"), "", self._add)
        self.remove_button = key_button(tr("Remove it"), "", self._remove)
        keys = QHBoxLayout()
        keys.addWidget(quiet(tr("Examples, invented, in mm; change one and see.")), 1)
        keys.addWidget(self.add_button)
        keys.addWidget(self.remove_button)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addLayout(keys)
        column.addWidget(self.notice)
        column.addWidget(self.table)
        self._fill()

    def _made_table(self) -> QTableWidget:
        table = TableOf(0, len(_HEADS))
        table.setAccessibleName(tr("Example indications"))
        table.setHorizontalHeaderLabels(list(_HEADS))
        table.verticalHeader().hide()
        table.verticalHeader().setDefaultSectionSize(24)
        head = table.horizontalHeader()
        head.setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        head.setSectionResizeMode(0, QHeaderView.ResizeMode.ResizeToContents)
        table.setTabKeyNavigation(False)
        table.setFixedHeight(24 * (_SHOWN + 1) + 10)
        table.cellChanged.connect(self._change)
        return table

    def _fill(self) -> None:
        self.table.blockSignals(True)  # noqa: FBT003 - Qt takes it so
        self.table.setRowCount(len(self.rows))
        for row, one in enumerate(self.rows):
            name = Cell(one.id)
            name.setFlags(Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable)
            self.table.setItem(row, 0, name)
            for nth, key in enumerate(_COLUMNS, start=1):
                value = getattr(one, key)
                text = kind_shown(value) if isinstance(value, str) else number(value, "g")
                self.table.setItem(row, nth, Cell(text))
        self.table.blockSignals(False)  # noqa: FBT003 - Qt takes it so
        self.add_button.setEnabled(len(self.rows) < _MOST)
        self.remove_button.setEnabled(bool(self.rows))

    def _change(self, row: int, nth: int) -> None:
        item, key = self.table.item(row, nth), _COLUMNS[nth - 1]
        try:
            value = _read(item.text() if item else "", key)
        except PtmarkError as exc:
            self.notice.say_error(exc)
        else:
            self.notice.say("")
            rows = list(self.rows)
            changed: dict[str, Any] = {key: value}
            rows[row] = replace(rows[row], **changed)
            self._take(tuple(rows))
            return
        self._fill()

    def _add(self) -> None:
        """One more like the last, beside it."""
        last = self.rows[-1] if self.rows else EXAMPLES[0]
        beside = last.x + max(last.length, last.width) + 2.0
        name = free_letter({one.id for one in self.rows})
        self._take((*self.rows, replace(last, id=name, x=beside)))
        self.table.setCurrentCell(len(self.rows) - 1, 1)

    def _remove(self) -> None:
        """The chosen one, else the last."""
        row = self.table.currentRow()
        row = row if row >= 0 else len(self.rows) - 1
        self._take(tuple(one for nth, one in enumerate(self.rows) if nth != row))

    def _take(self, rows: tuple[Example, ...]) -> None:
        self.rows = rows
        self._fill()
        self.changed.emit()


def _read(text: str, key: str) -> float | str:
    """A kind in English; an angle; a length in mm: a size above zero, a place anywhere."""
    text = text.strip()
    if key == "kind":
        return kind_kept(text)
    if key == "turn_deg":
        if not re.fullmatch(r"-?\d{1,4}([.,]\d+)?\s*°?", text or "0"):
            raise UsageError(
                tr("'{0}' is no angle", text), where="°", mend=tr("a number such as 30")
            )
        return float((text or "0").rstrip("° ").replace(",", "."))
    if key in {"x", "y"} and text.startswith("-"):
        return -parse_length(text[1:], where=key, default_unit="mm")
    if key == "u" and text in {"", "0"}:
        return 0.0
    if key in {"x", "y"} and not text.strip(" 0.,"):
        return 0.0
    return parse_length(text, where=key, default_unit="mm")
