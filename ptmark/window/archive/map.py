"""Where on a part indications were seen, and which records show them there."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from ptmark.errors import ArchiveError, PtmarkError
from ptmark.units import parse_length
from ptmark.window import dialogs
from ptmark.window.archive.door import ArchiveDoor
from ptmark.window.archive.map_cell import CellModel, CellTable, hits_of_cell, told_cell
from ptmark.window.archive.map_ground import (
    DRAWING,
    NOTHING,
    PHOTO,
    Ground,
    Made,
    corner_of,
    drawn,
    saved,
    why_empty,
)
from ptmark.window.archive.map_view import MapView
from ptmark.window.archive.model import HIT
from ptmark.window.archive.pair import Pair
from ptmark.window.bits import Choice, CommitEdit, Notice, heading, key_button, plain
from ptmark.window.session import Session
from ptmark.window.words import tr

if TYPE_CHECKING:
    from ptmark.archive import Archive

__all__ = ["MapPage"]

_SIDE = 430  # px of the column beside it
_MOST = 100  # records of one cell that are listed


class MapPage(QWidget):
    """The map on the left; what was chosen on it on the right.

    Signals: ``opened(object)`` a hit to look at; ``left()``.
    """

    opened = Signal(object)
    left = Signal()

    def __init__(self, session: Session, door: ArchiveDoor) -> None:
        super().__init__()
        self._session, self._door = session, door
        self._part = ""
        self._drawing: Path | None = None
        self._made: Made | None = None
        self.head = heading("")
        self.back_button = key_button(tr("Back"), "Escape", self.left.emit)
        self.datum = Choice(tr("Location datum of the records laid over each other"))
        self.datum.setSizeAdjustPolicy(Choice.SizeAdjustPolicy.AdjustToContents)
        self.datum.setMaximumWidth(420)
        self.datum.activated.connect(lambda _: self.draw())
        self.cell = CommitEdit("1 mm")
        self.ground = Choice(tr("What lies under the map"))
        for name, shown in (
            (PHOTO, tr("photo of the newest record")),
            (NOTHING, tr("nothing")),
            (DRAWING, tr("a drawing …")),
        ):
            self.ground.addItem(shown, name)
        self.ground.activated.connect(lambda _: self._on_ground())
        self.place = CommitEdit("0, 0")
        self.width_edit = CommitEdit("100 mm")
        for edit, name in (
            (self.cell, tr("Size of a cell")),
            (self.place, tr("Left top corner of the drawing on the part, x, y mm")),
            (self.width_edit, tr("Width of the drawing on the part")),
        ):
            edit.setAccessibleName(name)
            edit.setToolTip(name)
            edit.setMaximumWidth(110)
            edit.committed.connect(lambda _: self.draw())
        self.said = Notice()
        self.says = plain()
        self.view = MapView()
        self.view.chosen.connect(self._on_cell)
        self.view.entered.connect(self._to_table)
        self.of_cell = plain()
        self.model = CellModel()
        self.table = CellTable(self.model)
        self.table.activated.connect(lambda index: self.opened.emit(index.data(HIT)))
        self.save_button = key_button(tr("Save the map …"), "", self._save)
        self._lay_out()

    def _lay_out(self) -> None:
        top = QHBoxLayout()
        top.addWidget(self.head, 1)
        top.addWidget(self.save_button)
        top.addWidget(self.back_button)
        asks = QHBoxLayout()
        self._of_drawing: list[QWidget] = [
            QLabel(tr("Left top at x, y mm")),
            self.place,
            QLabel(tr("Width")),
            self.width_edit,
        ]
        for widget in (
            QLabel(tr("Datum")),
            self.datum,
            QLabel(tr("Cell")),
            self.cell,
            QLabel(tr("Under it")),
            self.ground,
            *self._of_drawing,
        ):
            asks.addWidget(widget)
        asks.addStretch(1)
        side = QWidget()
        beside = QVBoxLayout(side)
        beside.setContentsMargins(0, 0, 0, 0)
        beside.addWidget(self.of_cell)
        beside.addWidget(self.table, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 10, 16, 10)
        column.addLayout(top)
        column.addLayout(asks)
        column.addWidget(self.says)
        column.addWidget(self.said)
        column.addWidget(Pair(self.view, side, _SIDE), 1)

    # -- asking -------------------------------------------------------------------------------
    def show_part(self, part: str) -> None:
        """Read the datums of a part number, then draw by the one that most records give."""
        if part != self._part:  # else the drawing lies where it was laid
            self._part, self._drawing = part, None
            self.ground.setCurrentIndex(0)
        self.head.setText(tr("Where indications of part number {0} were seen", part))
        self._show_drawing_fields()
        self._clear()
        self.back_button.setFocus()

        def work(archive: "Archive", _token: object) -> dict[str, int]:
            from ptmark.archive import datums

            return datums(archive, part)

        self._door.ask(
            tr("Reading the places"),
            work,
            self._offer,
            failed=self._fail,
            key="archive map",
        )

    def _clear(self) -> None:
        from ptmark.archive import Page

        self.said.say("")
        self.says.setText("")
        self.of_cell.setText("")
        self._made = None
        self.view.show_map(None, QImage())
        self.model.begin(Page([], None))
        self.save_button.setEnabled(False)

    def _offer(self, found: dict[str, int]) -> None:
        self.datum.clear()
        for name, number in found.items():
            if name:
                self.datum.addItem(tr("{0} ({1} records)", name, number), name)
        self.datum.addItem(tr("only records placed by hand"), "")
        self.draw()

    def _on_ground(self) -> None:
        if self.ground.currentData() == DRAWING:
            self._drawing = dialogs.ask_for_photo(self, self._drawing or Path.home())
            if self._drawing is None:
                self.ground.setCurrentIndex(self.ground.findData(NOTHING))
        self._show_drawing_fields()
        self.draw()

    def _show_drawing_fields(self) -> None:
        shown = self.ground.currentData() == DRAWING
        for widget in self._of_drawing:
            widget.setVisible(shown)

    def _asked_ground(self) -> Ground:
        kind = str(self.ground.currentData())
        if kind != DRAWING or self._drawing is None:
            return Ground(kind)
        left, top = corner_of(self.place.text(), tr("Left top at x, y mm"))
        wide = parse_length(self.width_edit.text(), where=tr("Width"), default_unit="mm")
        if wide <= 0:
            raise ArchiveError(tr("a drawing has a width above 0"), where=tr("Width"))
        return Ground(kind, self._drawing, left, top, wide)

    def draw(self) -> None:
        """Draw the map as it is asked for now."""
        self._clear()
        part, datum = self._part, str(self.datum.currentData() or "")
        try:
            cell = parse_length(self.cell.text(), where=tr("Cell"), default_unit="mm")
            ground = self._asked_ground()
        except PtmarkError as exc:
            self.said.say_error(exc)
            return
        self._door.ask(
            tr("Drawing the map"),
            lambda archive, token: drawn(archive, token, part, datum, cell, ground),
            self._show,
            failed=self._fail,
            key="archive map",
        )

    def _fail(self, exc: Exception) -> None:
        self.said.say_error(exc)

    # -- showing ------------------------------------------------------------------------------
    def _show(self, made: Made) -> None:
        self._made, places = made, made.places
        if not places.seen:
            self.said.say(why_empty(places.left_out))
            return
        most = int(places.counts.max())
        said = tr(
            "{0} indications of {1} records; darkest: {2} records in a cell.",
            len(places.seen),
            places.records,
            most,
        )
        if places.left_out:
            said += " " + tr(
                "{0} records are left out: they give another datum, or none.", places.left_out
            )
        self.says.setText(f"{said} {made.says}".strip())
        self.view.show_map(places, made.picture)
        self.save_button.setEnabled(True)
        row, column = divmod(int(places.counts.argmax()), places.counts.shape[1])
        self.view.choose(row, column)
        self.view.setFocus()

    def _on_cell(self, row: int, column: int) -> None:
        if self._made is None:
            return
        from ptmark.archive import Page

        here = self._made.cells.get((row, column), [])
        unit = self._session.unit
        self.of_cell.setText(told_cell(self.view.says(row, column), here, unit))
        self.model.show_cell(here, unit)
        ids = list(dict.fromkeys(one.record_id for one in here))[:_MOST]
        self.model.begin(Page([], None))
        self._door.ask(
            "",
            lambda archive, token: hits_of_cell(archive, token, ids),
            lambda hits: self.model.begin(Page(hits, None)),
            failed=self._fail,
            key="archive cell",
        )

    def _to_table(self) -> None:
        """Go on to the records of the cell."""
        self.table.setFocus()
        if self.model.hits and not self.table.currentIndex().isValid():
            self.table.setCurrentIndex(self.model.index(0, 1))  # the first column is hidden

    def _save(self) -> None:
        made = self._made
        if made is None:
            return
        name = f"{self._part}-map.png".replace("/", "-")
        path = dialogs.ask_where_to_save(self, Path.home() / name, "PNG (*.png)")
        if path is None:
            return

        told = tr("Saved {0} in {1}", path.name, path.parent)
        self._door.ask(
            tr("Writing {0}", path.name),
            lambda _archive, _token: saved(made, path),
            lambda _: self.said.say(told, "done"),
            failed=self._fail,
        )
