"""What the list of indications shows: by shape, relevance and verdict."""

from functools import partial

from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from ptmark.window.bits import Choice, key_button, quiet
from ptmark.window.indications.model import VERDICTS
from ptmark.window.indications.table import IndicationTable
from ptmark.window.session import Session
from ptmark.window.words import tr

__all__ = ["ListFilter"]

_CHOICES = {
    "shape": ((tr("any shape"), ""), (tr("linear"), "linear"), (tr("rounded"), "rounded")),
    "relevance": (
        (tr("any relevance"), ""),
        (tr("relevant"), "yes"),
        (tr("not relevant"), "no"),
    ),
    "verdict": ((tr("any verdict"), ""), *((tr(name), name) for name in VERDICTS)),
}


class ListFilter(QWidget):
    """Three choices in a row; a selection on the photo that they hide sets them back."""

    def __init__(self, session: Session, table: IndicationTable) -> None:
        super().__init__()
        self._session, self._table = session, table
        self.choices: dict[str, Choice] = {}
        row = QHBoxLayout()
        row.setSpacing(6)
        for name, pairs in _CHOICES.items():
            choice = Choice(tr("Show only, by {0}", tr(name)))
            for text, value in pairs:
                choice.addItem(text, value)
            choice.activated.connect(partial(self._want, name))
            self.choices[name] = choice
            row.addWidget(choice, 1)
        self.hidden: QLabel = quiet()
        self.copy_button = key_button(
            tr("Copy as table"),
            "Ctrl+C",
            table.copy,
            tip=tr("Selected rows, or all, tab-separated"),
        )
        below = QHBoxLayout()
        below.addWidget(self.hidden, 1)
        below.addWidget(self.copy_button)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addLayout(row)
        column.addWidget(table)
        column.addLayout(below)
        session.selection_changed.connect(self._reveal)
        session.changed.connect(self._say)
        session.judged.connect(self._say)

    def _want(self, name: str, _row: int) -> None:
        self._table.want(name, self.choices[name].currentData())
        self._say()

    def _reveal(self) -> None:
        """What was chosen on the photo must show in the list."""
        there = {row.id for row in self._table.order.shown}
        if any(name not in there for name in self._session.selected):
            for name, choice in self.choices.items():
                choice.setCurrentIndex(0)
                self._table.order.want(name, "")
            self._say()

    def _say(self) -> None:
        order = self._table.order
        away = len(order.model.rows) - order.rowCount()
        self.hidden.setText(
            tr("{0} hidden by the filter; the verdict counts them.", away)
            if away
            else tr("Double-click or F2 edits kind and note; a head sorts.")
        )
        self.copy_button.setEnabled(order.rowCount() > 0)
