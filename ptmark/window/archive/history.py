"""What was seen of a part number over the years, or of one serial with its retests."""

from typing import TYPE_CHECKING, NamedTuple

from PySide6.QtCore import QModelIndex, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from ptmark.window.archive.door import ArchiveDoor
from ptmark.window.archive.gallery import Gallery, read_glances
from ptmark.window.archive.model import HIT, HitModel
from ptmark.window.archive.plot import HistoryPlot
from ptmark.window.archive.table import HitTable
from ptmark.window.bits import Notice, heading, key_button, plain
from ptmark.window.session import Session
from ptmark.window.words import tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.archive import Archive, Hit, Period

__all__ = ["HistoryPage"]


class _Told(NamedTuple):
    hits: "list[Hit]"  # oldest first
    periods: "list[Period]"


class HistoryPage(QWidget):
    """The plot of the years above, the inspections below; Enter opens one.

    Signals: ``opened(object)`` a hit to look at; ``map_asked(str)`` a part number; ``left()``.
    """

    opened = Signal(object)
    map_asked = Signal(str)
    left = Signal()

    def __init__(self, session: Session, door: ArchiveDoor) -> None:
        super().__init__()
        self._session, self._door = session, door
        self.model = HitModel(self)
        self.head = heading("")
        self.says = plain()
        self.said = Notice()
        self.plot = HistoryPlot()
        self.table = HitTable(self.model)
        self.gallery = Gallery(self.model)  # of a serial: what came after what, as pictures
        self.gallery.setSelectionModel(self.table.selectionModel())
        self.gallery.hide()
        self.model.glances_asked.connect(lambda hits: read_glances(door, self.model, hits))
        self.back_button = key_button(tr("Back"), "Escape", self.left.emit)
        self._part, self._serial = "", ""
        self._rows: dict[tuple[str, str], int] = {}  # that were opened last
        self.map_button = key_button(
            tr("Place map"), "", lambda: self.map_asked.emit(self._part)
        )
        top = QHBoxLayout()
        top.addWidget(self.head, 1)
        top.addWidget(self.map_button)
        top.addWidget(self.back_button)
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 10, 16, 10)
        column.addLayout(top)
        column.addWidget(self.says)
        column.addWidget(self.said)
        column.addWidget(self.plot, 3)
        column.addWidget(self.gallery, 3)
        column.addWidget(self.table, 2)
        for view in (self.table, self.gallery):
            view.activated.connect(self._on_activated)

    def _on_activated(self, index: QModelIndex) -> None:
        self._rows[self._part, self._serial] = index.row()
        self.opened.emit(index.data(HIT))

    def show_part(self, part: str, serial: str) -> None:
        """Read the history of a part number, or of one serial of it."""
        from ptmark.archive import Page

        self._part, self._serial = part, serial
        self.head.setText(
            tr("Part number {0}", part) + (tr(", serial {0}", serial) if serial else "")
        )
        self.says.setText("")
        self.said.say("")
        self.plot.show_periods([], self._session.unit)
        self.model.begin(Page([], None))
        self.back_button.setFocus()

        def work(archive: "Archive", _token: Token) -> _Told:
            from ptmark.archive import part_history, serial_history

            if serial:
                return _Told(serial_history(archive, part, serial), [])
            told = part_history(archive, part)
            return _Told(told.hits, told.periods)

        self._door.ask(
            tr("Reading the history"),
            work,
            self._show,
            failed=self.said.say_error,
            key="archive history",
        )

    def _show(self, told: _Told) -> None:
        from ptmark.archive import Page

        self.model.unit = self._session.unit
        self.model.begin(Page(told.hits[::-1] if told.periods else told.hits, None))
        self.plot.setVisible(bool(told.periods))
        self.gallery.setVisible(not told.periods)
        self.plot.show_periods(told.periods, self._session.unit)
        retests = sum(hit.retest_of is not None for hit in told.hits)
        serials = len({hit.serial for hit in told.hits})
        found = sum(hit.indications for hit in told.hits)
        order = tr("newest first") if told.periods else tr("in the order they were examined")
        self.says.setText(
            tr(
                "Inspections: {0}; serials: {1}; indications: {2}; retests: {3}; {4}.",
                len(told.hits),
                serials,
                found,
                retests,
                order,
            )
        )
        if told.hits:
            row = self._rows.get((self._part, self._serial), 0)
            self.table.setCurrentIndex(self.model.index(min(row, len(told.hits) - 1), 0))
            self.table.setFocus()
