"""From a record to the next and the one before, in the order of the list it stands in."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from ptmark.window.archive.model import HitModel
from ptmark.window.bits import key_button, quiet
from ptmark.window.words import tr

if TYPE_CHECKING:
    from ptmark.archive import Hit

__all__ = ["Neighbours"]


class Neighbours(QWidget):
    """Two buttons with their keys, and which one of how many it is.

    Signals: ``chosen(object)`` the hit to look at.
    """

    chosen = Signal(object)

    def __init__(self, page: QWidget) -> None:
        super().__init__()
        self.among: HitModel | None = None
        self._hits: list[Hit] = []
        self._at = 0
        self.before_button = key_button(
            tr("Record before"), "Ctrl+Up", lambda: self._go(-1), window=page
        )
        self.next_button = key_button(
            tr("Record after"), "Ctrl+Down", lambda: self._go(1), window=page
        )
        self.place = quiet("")
        row = QHBoxLayout()
        for widget in (self.before_button, self.next_button):
            row.addWidget(widget)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addLayout(row)
        column.addWidget(self.place)

    def follow(self, hit: "Hit", model: HitModel | None) -> None:
        """Show where a hit stands in a list; None where it was opened from no list."""
        if self.among is not None:
            self.among.rowsInserted.disconnect(self._offer)
        self.among = model
        self._hits = [] if model is None else model.hits  # it grows as more are read
        ids = [one.record_id for one in self._hits]
        self._at = ids.index(hit.record_id) if hit.record_id in ids else 0
        self.setVisible(hit.record_id in ids)
        if model is not None:
            model.rowsInserted.connect(self._offer)
        self._offer()

    def _offer(self) -> None:
        there = len(self._hits)
        if self.among is not None and self._at == there - 1:
            self.among.fetchMore()  # where the list has not been read to its end
        more = self.among is not None and self.among.has_more
        self.before_button.setEnabled(self._at > 0)
        self.next_button.setEnabled(self._at < there - 1)
        self.place.setText(
            tr("{0} of more than {1}", self._at + 1, there)
            if more
            else tr("{0} of {1}", self._at + 1, there)
        )

    def _go(self, by: int) -> None:
        if self.among is not None:
            self.among.walked.emit(self._at + by)
        self.chosen.emit(self._hits[self._at + by])
