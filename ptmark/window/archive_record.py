"""One record of the archive, only to look at: its report, its photos, and judging it again."""

from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QHBoxLayout,
    QVBoxLayout,
    QWidget,
)

from ptmark.errors import ArchiveError
from ptmark.window import dialogs
from ptmark.window.archive_changes import ChangesTable, judged_again
from ptmark.window.archive_door import ArchiveDoor
from ptmark.window.archive_pictures import photo_files
from ptmark.window.bits import Choice, Notice, heading, key_button, plain, quiet
from ptmark.window.levels import PhotoLevels, build_levels
from ptmark.window.photo_view import PhotoView
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.archive import Archive, Hit
    from ptmark.criteria import Change
    from ptmark.record import Record

__all__ = ["RecordPage"]

_SIDE = 400  # px wide


class _Opened(NamedTuple):
    record: "Record"
    told: str
    places: tuple[str, ...]  # photos that hold a place where they were taken


class RecordPage(QWidget):
    """Report picture on the left, facts and judging again on the right.

    Signals: ``left()``; ``retest_asked(object)`` a `Record`; ``history_asked(str, str)`` part
    and serial, "" for all serials.
    """

    left = Signal()
    retest_asked = Signal(object)
    history_asked = Signal(str, str)

    def __init__(self, door: ArchiveDoor) -> None:
        super().__init__()
        self._door = door
        self._hit: Hit | None = None
        self.record: Record | None = None
        self.view = PhotoView()
        self.view.setAccessibleName("Report of the record; wheel zooms, drag moves")
        self.photo = Choice("Photo of the record")
        self.photo.activated.connect(self._draw)
        self.facts = plain()
        self.location = Notice()
        self.said = Notice()
        self.retest_button = key_button(
            "Start a retest …", "", self._retest, tip="Opens its photo, linked to this record"
        )
        self.pdf_button = key_button("Report as PDF …", "", self._save_pdf)
        self.part_button = key_button("History of the part", "", lambda: self._history(""))
        self.serial_button = key_button(
            "History of the serial",
            "",
            lambda: self._history(self._hit.serial),  # type: ignore[union-attr]
        )
        self.back_button = key_button("Back", "Escape", self.left.emit)
        self.criteria = Choice("Judge again by")
        self.criteria.activated.connect(lambda _: self.judge())
        self.changes = ChangesTable()
        self.changed = plain()
        self._lay_out()

    def _lay_out(self) -> None:
        side = QWidget()
        side.setFixedWidth(_SIDE)
        column = QVBoxLayout(side)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.back_button)
        column.addWidget(self.facts)
        column.addWidget(self.location)
        column.addWidget(self.photo)
        for pair in (
            (self.retest_button, self.pdf_button),
            (self.part_button, self.serial_button),
        ):
            row = QHBoxLayout()
            for button in pair:
                row.addWidget(button)
            column.addLayout(row)
        column.addWidget(self.said)
        column.addWidget(heading("Judge again by other criteria"))
        column.addWidget(self.criteria)
        column.addWidget(self.changed)
        column.addWidget(self.changes, 1)
        column.addWidget(
            quiet("The record stays as it is. A verdict is an aid; the inspector decides.")
        )
        row = QHBoxLayout(self)
        row.setContentsMargins(16, 10, 16, 10)
        row.addWidget(self.view, 1)
        row.addWidget(side)
        QShortcut(
            QKeySequence("Escape"),
            self,
            self.left.emit,
            context=Qt.ShortcutContext.WidgetWithChildrenShortcut,
        )

    # -- opening ------------------------------------------------------------------------------
    def show_hit(self, hit: "Hit") -> None:
        """Read the record and draw its report."""
        self._hit, self.record = hit, None
        for notice in (self.said, self.location):
            notice.say("")
        self.view.set_levels(None)
        self.facts.setText("")
        self.changed.setText("")
        self.changes.setRowCount(0)
        self.photo.clear()
        self.photo.hide()
        self._enable(on=False)
        self.back_button.setFocus()
        self._door.ask(
            "Reading the record",
            lambda archive, _token: _read(archive, hit),
            self._show,
            failed=self._fail,
            key="archive record",
        )

    def _show(self, got: _Opened) -> None:
        self.record = got.record
        self.facts.setText(got.told)
        if got.places:
            self.location.say(
                f"Where it was taken stands in the photo: {'; '.join(got.places)}. An export "
                "can leave it out; the original keeps it."
            )
        views = got.record.views()
        for number in range(len(views)):
            self.photo.addItem(f"Photo {number + 1} of {len(views)}", number)
        self.photo.setVisible(len(views) > 1)
        self._offer_criteria()
        self._enable(on=True)
        self._draw(0)

    def _draw(self, number: int) -> None:
        record = self.record
        if record is None:
            return

        def work(archive: "Archive", token: Token) -> PhotoLevels:
            from ptmark.photo import open_photo
            from ptmark.report import annotated_image

            with photo_files(archive, [_photo_of(archive, record, number)]) as paths:
                rgb = open_photo(paths[0]).rgb
            token.check()
            return build_levels(annotated_image(record, rgb, number))

        self._door.ask(
            "Drawing the report",
            work,
            self.view.set_levels,
            failed=self._fail,
            key="archive record",
        )

    def _enable(self, *, on: bool) -> None:
        has_part = bool(self._hit and self._hit.part)
        self.retest_button.setEnabled(on)
        self.pdf_button.setEnabled(on)
        self.criteria.setEnabled(on)
        self.part_button.setEnabled(on and has_part)
        self.serial_button.setEnabled(on and has_part and bool(self._hit and self._hit.serial))

    def _fail(self, exc: Exception) -> None:
        self.said.say(str(exc))

    # -- deeds --------------------------------------------------------------------------------
    def _retest(self) -> None:
        if self.record is not None:
            self.retest_asked.emit(self.record)

    def _history(self, serial: str) -> None:
        if self._hit is not None:
            self.history_asked.emit(self._hit.part, serial)

    def _save_pdf(self) -> None:
        record = self.record
        if record is None:
            return
        name = f"{Path(str(record.photo['file'])).stem}-report.pdf"
        path = dialogs.ask_where_to_save(self, Path.home() / name, "PDF (*.pdf)")
        if path is None:
            return
        self._door.ask(
            f"Writing {path.name}",
            lambda archive, _token: _write_pdf(archive, record, path),
            lambda _: self.said.say(f"Saved {path.name} in {path.parent}", "done"),
            failed=self._fail,
            key="archive pdf",
        )

    # -- judging again ------------------------------------------------------------------------
    def _offer_criteria(self) -> None:
        from ptmark.criteria import list_profiles

        self.criteria.clear()
        self.criteria.addItem("Choose the criteria …", "")
        for name in list_profiles():
            self.criteria.addItem(name, name)

    def judge(self) -> None:
        """Judge by the chosen criteria and list what changes."""
        record, name = self.record, str(self.criteria.currentData() or "")
        self.changes.setRowCount(0)
        self.changed.setText("")
        if record is None or not name:
            return
        self._door.ask(
            "Judging again",
            lambda _archive, _token: judged_again(record, name),
            self._show_judged,
            failed=self._fail,
            key="archive judge",
        )

    def _show_judged(self, got: "tuple[str, list[tuple[str, Change]]]") -> None:
        title, rows = got
        self.changes.show_rows(rows)
        changed = sum(row.differs for _, row in rows)
        said = "nothing changes" if not changed else f"{changed} of {len(rows)} lines change"
        self.changed.setText(f"By {title}: {said}.")


def _read(archive: "Archive", hit: "Hit") -> _Opened:
    from ptmark.archive import indications_of, key_for, photos_of, record_bytes
    from ptmark.photo.location import location_of
    from ptmark.record import Record
    from ptmark.record.store import parsed
    from ptmark.window.archive_model import length_text

    document = parsed(record_bytes(archive, hit.record_id), hit.record_id)
    record = Record.from_json(document, where=hit.record_id)
    serial = f", serial {hit.serial}" if hit.serial else ""
    signed = f", signed {hit.signatures}×" if hit.signatures else ", not signed"
    lines = [
        f"{hit.part or 'No part number'}{serial}",
        f"Examined on {hit.examined_on}" + (f" by {hit.examiner}" if hit.examiner else ""),
        f"Revision {hit.revision}{signed}",
        f"Verdict: {hit.verdict or 'none'}; disposition: {hit.disposition or 'not decided'}",
    ]
    if hit.retest_of:
        lines.append(f"Retest of the record {hit.retest_of}")
    for row in indications_of(archive, hit.record_id):
        length = length_text(row["length_mm"], row["length_u_mm"], "mm")
        lines.append(f"{row['letter']}: {row['kind'] or row['shape']}, {length}")
    places = []
    for photo in photos_of(archive, hit.record_id):
        with archive.guarded():
            data = archive.store.read(key_for(photo["sha256"], photo["suffix"]))
        if (place := location_of(data)) is not None:
            name = photo["name"] or photo["sha256"][:12]
            places.append(f"{name} at {place.latitude:.5f}, {place.longitude:.5f}")
    return _Opened(record, "\n".join(lines), tuple(places))


def _photo_of(archive: "Archive", record: "Record", number: int) -> dict[str, object]:
    from ptmark.archive import photos_of

    sha256 = str(record.views()[number].photo["sha256"])
    for one in photos_of(archive, record.id):
        if one["sha256"] == sha256:
            return one
    raise ArchiveError("a photo of the record is not kept", where=sha256[:12])


def _write_pdf(archive: "Archive", record: "Record", path: Path) -> None:
    from ptmark.photo import open_photo
    from ptmark.report import write_pdf

    rows = [_photo_of(archive, record, number) for number in range(len(record.views()))]
    with photo_files(archive, rows) as paths:
        first = open_photo(paths[0])
        more = (open_photo(one) for one in paths[1:])
        write_pdf(path, record, first.rgb, paths[0], more=more)
