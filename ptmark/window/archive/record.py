"""One record of the archive, only to look at: its report, its photos, and judging it again."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QHBoxLayout,
    QVBoxLayout,
    QWidget,
)

from ptmark.window import dialogs
from ptmark.window.archive.beside import Neighbours
from ptmark.window.archive.changes import ChangesTable, judged_again
from ptmark.window.archive.door import ArchiveDoor
from ptmark.window.archive.opened import Opened, photo_of, read_hit, told_places, write_report
from ptmark.window.archive.pair import Pair
from ptmark.window.archive.pictures import photo_files, read_original
from ptmark.window.bits import Choice, Notice, heading, key_button, plain, quiet, scrolled
from ptmark.window.criteria_choice import offer_profiles, shipped_profiles
from ptmark.window.session import Session
from ptmark.window.view.levels import PhotoLevels, build_levels
from ptmark.window.view.photo_view import PhotoView
from ptmark.window.words import tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.archive import Archive, Hit
    from ptmark.criteria import Change
    from ptmark.record import Record
    from ptmark.window.archive.model import HitModel

__all__ = ["RecordPage"]

_SIDE = 400  # px wide
_LEAST_VIEW = 160  # px, of the report's picture: a window of 640 px holds both


class RecordPage(QWidget):
    """Report picture on the left, facts and judging again on the right.

    Signals: ``left()``; ``retest_asked(object)`` a `Record`; ``history_asked(str, str)`` part
    and serial, "" for all serials; ``map_asked(str)`` the part; ``beside_asked(object)`` the
    hit that stands before or after this one in its list; ``before_asked(object)`` that of
    the test that this one is a retest of.
    """

    left = Signal()
    retest_asked = Signal(object)
    history_asked = Signal(str, str)
    map_asked = Signal(str)
    beside_asked = Signal(object)
    before_asked = Signal(object)

    def __init__(self, session: Session, door: ArchiveDoor) -> None:
        super().__init__()
        self._session, self._door = session, door
        self._hit: Hit | None = None
        self.record: Record | None = None
        self.view = PhotoView()
        self.view.setAccessibleName(tr("Report of the record; wheel zooms, drag moves"))
        self.photo = Choice(tr("Photo of the record"))
        self.photo.activated.connect(self._draw)
        self.facts = plain()
        self.proof, self.location = Notice(), Notice()
        self.said = Notice()
        self.retest_button = key_button(
            tr("Start a retest …"),
            "",
            self._retest,
            tip=tr("Opens its photo, linked to this record"),
        )
        self.pdf_button = key_button(tr("Report as PDF …"), "", self._save_pdf)
        self.original_button = key_button(
            tr("Original photo …"),
            "",
            self._save_original,
            tip=tr("Writes the photo shown byte for byte as it was taken in"),
        )
        self.part_button = key_button(tr("History of the part"), "", lambda: self._history(""))
        self.serial_button = key_button(
            tr("History of the serial"),
            "",
            lambda: self._history(self._hit.serial),  # type: ignore[union-attr]
        )
        self.map_button = key_button(
            tr("Place map of the part"),
            "",
            lambda: self.map_asked.emit(self._hit.part),  # type: ignore[union-attr]
        )
        self.before_button = key_button(tr("Open the test before it"), "", self._open_before)
        self.back_button = key_button(tr("Back"), "Escape", self.left.emit)
        self.neighbours = Neighbours(self)
        self.neighbours.chosen.connect(self.beside_asked.emit)
        self.criteria = Choice(tr("Judge again by"))
        self.criteria.activated.connect(lambda _: self.judge())
        self.changes = ChangesTable()
        self.changed = plain()
        self._lay_out()

    def _lay_out(self) -> None:
        self.view.setMinimumWidth(_LEAST_VIEW)
        inner = QWidget()
        side = scrolled(inner)
        column = QVBoxLayout(inner)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.back_button)
        column.addWidget(self.neighbours)
        column.addWidget(self.facts)
        column.addWidget(self.before_button)
        column.addWidget(self.proof)
        column.addWidget(self.location)
        column.addWidget(self.photo)
        for pair in (
            (self.retest_button, self.pdf_button),
            (self.part_button, self.serial_button),
            (self.map_button, self.original_button),
        ):
            row = QHBoxLayout()
            for button in pair:
                row.addWidget(button)
            column.addLayout(row)
        column.addWidget(self.said)
        column.addWidget(heading(tr("Judge again by other criteria")))
        column.addWidget(self.criteria)
        column.addWidget(self.changed)
        column.addWidget(self.changes, 1)
        caution = quiet(
            tr("The record stays as it is. A verdict is an aid; the inspector decides.")
        )
        caution.setMinimumHeight(2 * caution.fontMetrics().height())
        column.addWidget(caution)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(16, 10, 16, 10)
        whole.addWidget(Pair(self.view, side, _SIDE))

    # -- opening ------------------------------------------------------------------------------
    def show_hit(self, hit: "Hit", among: "HitModel | None" = None) -> None:
        """Read the record and draw its report; ``among`` is the list it was opened from."""
        self._hit, self.record = hit, None
        for notice in (self.said, self.proof, self.location):
            notice.say("")
        self.view.set_levels(None)
        self.facts.setText("")
        self.changed.setText("")
        self.changes.setRowCount(0)
        self.photo.clear()
        self.photo.hide()
        self._enable(on=False)
        self._follow(None)
        self.back_button.setFocus()
        self.neighbours.follow(hit, among)
        unit = self._session.unit
        self._door.ask(
            tr("Reading the record"),
            lambda archive, _token: read_hit(archive, hit, unit),
            self._show,
            failed=self._fail,
            key="archive record",
        )

    def _show(self, got: Opened) -> None:
        self.record = got.record
        self.facts.setText(got.told)
        self.proof.say(got.proof.told(), "done" if got.proof.holds else "look")
        self.location.say(told_places(got))
        self._follow(got.before)
        views = got.record.views()
        for number in range(len(views)):
            self.photo.addItem(tr("Photo {0} of {1}", number + 1, len(views)), number)
        self.photo.setVisible(len(views) > 1)
        self._offer_criteria()
        self._enable(on=True)
        if not any(one.wrong for one in got.proof.photos[:1]):  # else the proof tells of it
            self._draw(0)

    def _draw(self, number: int) -> None:
        record = self.record
        if record is None:
            return

        def work(archive: "Archive", token: Token) -> PhotoLevels:
            from ptmark.photo import open_photo
            from ptmark.report.annotate import annotated_image

            with photo_files(archive, [photo_of(archive, record, number)]) as paths:
                rgb = open_photo(paths[0]).rgb
            token.check()
            return build_levels(annotated_image(record, rgb, number))

        self._door.ask(
            tr("Drawing the report"),
            work,
            self.view.set_levels,
            failed=self._fail,
            key="archive record",
        )

    def _enable(self, *, on: bool) -> None:
        has_part = bool(self._hit and self._hit.part)
        self.retest_button.setEnabled(on)
        self.pdf_button.setEnabled(on)
        self.original_button.setEnabled(on)
        self.criteria.setEnabled(on)
        self.part_button.setEnabled(on and has_part)
        self.map_button.setEnabled(on and has_part)
        self.serial_button.setEnabled(on and has_part and bool(self._hit and self._hit.serial))

    def _fail(self, exc: Exception) -> None:
        self.said.say_error(exc)

    # -- deeds --------------------------------------------------------------------------------
    def _retest(self) -> None:
        if self.record is not None:
            self.retest_asked.emit(self.record)

    def _follow(self, before: "Hit | None") -> None:
        self._before = before
        self.before_button.setVisible(before is not None)

    def _open_before(self) -> None:
        self.before_asked.emit(self._before)

    def _history(self, serial: str) -> None:
        if self._hit is not None:
            self.history_asked.emit(self._hit.part, serial)

    def _save_pdf(self) -> None:
        record = self.record
        if record is None:
            return
        name = f"{Path(str(record.photo['file'])).stem}-report.pdf"
        path = dialogs.ask_where_to_save(self, Path.home() / name, tr("PDF (*.pdf)"))
        if path is None:
            return
        self._door.ask(
            tr("Writing {0}", path.name),
            lambda archive, _token: write_report(archive, record, path),
            lambda _: self.said.say(tr("Saved {0} in {1}", path.name, path.parent), "done"),
            failed=self._fail,
            key="archive pdf",
        )

    def _save_original(self) -> None:
        record, number = self.record, max(self.photo.currentIndex(), 0)
        if record is None:
            return
        name = Path(str(record.views()[number].photo["file"])).name
        kinds = f"*{Path(name).suffix} (*{Path(name).suffix})"
        path = dialogs.ask_where_to_save(self, Path.home() / name, kinds)
        if path is None:
            return

        def work(archive: "Archive", _token: Token) -> None:
            from ptmark.report.table import save

            save(path, read_original(archive, photo_of(archive, record, number)))

        self._door.ask(
            tr("Writing {0}", path.name),
            work,
            lambda _: self.said.say(tr("Saved {0} in {1}", path.name, path.parent), "done"),
            failed=self._fail,
            key="archive original",
        )

    # -- judging again ------------------------------------------------------------------------
    def _offer_criteria(self) -> None:
        offer_profiles(self.criteria, shipped_profiles())

    def judge(self) -> None:
        """Judge by the chosen criteria and list what changes."""
        record, name = self.record, str(self.criteria.currentData() or "")
        self.changes.setRowCount(0)
        self.changed.setText("")
        if record is None or not name:
            return
        self._door.ask(
            tr("Judging again"),
            lambda _archive, _token: judged_again(record, name),
            self._show_judged,
            failed=self._fail,
            key="archive judge",
        )

    def _show_judged(self, got: "tuple[str, list[tuple[str, Change]]]") -> None:
        title, rows = got
        self.changes.show_rows(rows)
        changed = sum(row.differs for _, row in rows)
        said = (
            tr("nothing changes")
            if not changed
            else tr("{0} of {1} lines change", changed, len(rows))
        )
        self.changed.setText(tr("By {0}: {1}.", title, said))
