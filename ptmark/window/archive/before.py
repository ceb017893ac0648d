"""The test before a retest, as a person knows it: part, serial, date and verdict."""

from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING, Any

from PySide6.QtWidgets import QHBoxLayout, QWidget

from ptmark.errors import PtmarkError
from ptmark.window.archive.door import ArchiveDoor, has_archive
from ptmark.window.bits import key_button, plain
from ptmark.window.session import Session
from ptmark.window.words import day, tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.archive import Archive, Hit

__all__ = ["RetestLine", "told_briefly", "told_hit"]

_Facts = tuple[str, str, str, str]  # part, serial, date, verdict


class RetestLine(QWidget):
    """Says what the work at hand is a retest of, with a button to take the link away."""

    def __init__(self, session: Session, door: ArchiveDoor) -> None:
        super().__init__()
        self._session, self._door = session, door
        self._asked: dict[str, Any] | None = None
        self.says = plain()
        self.unlink_button = key_button(tr("It is no retest"), "", self._unlink)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.says, 1)
        row.addWidget(self.unlink_button)
        session.ready.connect(self.refresh)
        session.changed.connect(self.refresh)
        self.hide()

    def refresh(self) -> None:
        """Follow the link; the record it leads to is looked up beside the window."""
        state = self._session.state
        link = state.retest_of if state else None
        self.setVisible(bool(link))
        if link == self._asked:
            return
        self._asked = link
        self._door.cancel("test before")
        if link is not None and state is not None:
            self.says.setText(tr("Retest of an earlier test."))
            self.says.setToolTip(tr("Record {0}, revision {1}", link["id"], link["revision"]))
            self._look(link, None if state.info is None else state.info.path.parent)

    def _look(self, link: dict[str, Any], folder: Path | None) -> None:
        def done(told: str) -> None:
            self.says.setText(tr("Retest of {0}.", told))

        def without(_: object) -> str:
            return _told_file(link, folder)

        def failed(_exc: Exception) -> None:  # its own page tells what is wrong with it
            self._session.workers.start("", without, done, key="test before")

        def work(archive: "Archive", token: Token) -> str:
            return _told_before(archive, link["id"]) or without(token)

        if has_archive():
            self._door.ask("", work, done, failed=failed, key="test before")
        else:
            self._session.workers.start("", without, done, key="test before")

    def _unlink(self) -> None:
        self._session.change(tr("take the link to the earlier record away"), retest_of=None)


def told_hit(hit: "Hit") -> str:
    """A record that the archive keeps, in the words that a person knows it by."""
    return _told(*_facts(hit))


def _told_before(archive: "Archive", record_id: str) -> str:
    """The same of the record with this id; "" where the archive has it not."""
    kept = _kept(archive, record_id)
    return "" if kept is None else _told(*kept)


def told_briefly(link: dict[str, Any], folder: Path | None) -> str:
    """Date and verdict of the test that a link leads to; "" where it is not at hand.

    ``folder`` is the photo's, where the earlier record may lie beside it.
    """
    from ptmark.archive import open_archive

    found = None
    if has_archive():
        with suppress(PtmarkError), open_archive(read_only=True) as archive:
            found = _kept(archive, link["id"])
    found = found or _beside(link, folder)
    return "" if found is None else f"{day(found[2])}, {_verdict(found[3])}"


def _kept(archive: "Archive", record_id: str) -> _Facts | None:
    from ptmark.archive import Query, find

    hits = find(archive, Query(record_id=record_id)).hits
    return _facts(hits[0]) if hits else None


def _facts(hit: "Hit") -> _Facts:
    return hit.part, hit.serial, hit.examined_on, hit.verdict


def _told_file(link: dict[str, Any], folder: Path | None) -> str:
    """The same of the record's file beside the photo; what the link knows where it is gone."""
    found = _beside(link, folder)
    name = Path(link["file"]).name
    return tr("a record that is not at hand ({0})", name) if found is None else _told(*found)


def _beside(link: dict[str, Any], folder: Path | None) -> _Facts | None:
    from ptmark.record import load_record

    try:
        record = load_record((folder or Path()) / Path(link["file"]).name)
    except PtmarkError:
        return None
    fields = record.fields
    on = fields.get("examination_date", "") or record.created[:10]
    part, serial = fields.get("part_number", ""), fields.get("serial_number", "")
    return part, serial, on, record.verdict or ""


def _told(part: str, serial: str, on: str, verdict: str) -> str:
    return tr(
        "{0}, serial {1}, tested on {2}: {3}",
        part or tr("no part number"),
        serial or tr("not given"),
        day(on),
        _verdict(verdict),
    )


def _verdict(word: str) -> str:
    return tr(word) if word else tr("no verdict")
