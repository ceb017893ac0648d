"""Keep in the archive: at the Record step, by a key, or on every save once it is ticked."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from PySide6.QtCore import QSignalBlocker, QTimer, Signal
from PySide6.QtWidgets import (
    QHBoxLayout,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from ptmark.errors import ArchiveError, PtmarkError
from ptmark.files import write_whole
from ptmark.places import user_folder
from ptmark.window.archive.before import RetestLine
from ptmark.window.archive.door import ArchiveDoor
from ptmark.window.bits import Notice, heading, key_button
from ptmark.window.edges import Tick
from ptmark.window.saving import Saving
from ptmark.window.session import Session
from ptmark.window.words import day, from_core, tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.archive import Added, Archive

__all__ = ["KeepForm"]


class _Kept(NamedTuple):
    added: "Added"
    part: str
    serial: str


class _Clash(NamedTuple):
    """Another state of the record is kept; ``sha256`` is its file's, "" where it is signed."""

    error: ArchiveError
    says: str
    sha256: str


class KeepForm(QWidget):
    """A button, a tick that the next start remembers, and what came of it, in place.

    Signals: ``kept(str)`` the id of a record that the archive has now; ``told(str)`` that in
    words.
    """

    kept = Signal(str)
    told = Signal(str)

    def __init__(
        self,
        session: Session,
        saving: Saving,
        save: Callable[[], None],
        window: QWidget,
    ) -> None:
        super().__init__()
        self._session, self._saving, self._save = session, saving, save
        self.door = ArchiveDoor(session)
        self._mine: dict[str, str] = {}  # record id: hash of the file that this window put in
        self._after_save = False
        self._folder: Path | None = None  # of the photos, where it was asked for
        self.keep_button = key_button(
            tr("Keep in the archive"),
            "Ctrl+K",
            self.keep,
            tip=tr("The record and its photos, found again by part number"),
            window=window,
        )
        self.always = Tick(tr("Keep every record that is saved"))
        self.always.setMinimumHeight(28)
        self.always.toggled.connect(self._remember)
        self.retest = RetestLine(session, self.door)
        self.said = Notice()
        row = QHBoxLayout()
        row.addWidget(self.keep_button)
        self._row = row
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(heading(tr("Archive")))
        column.addWidget(self.retest)
        column.addLayout(row)
        column.addWidget(self.always)
        column.addWidget(self.said)
        saving.saved.connect(self._on_saved)
        saving.failed.connect(lambda _: self._forget_wish())
        saving.asked.connect(lambda *_: self._forget_wish())
        session.ready.connect(self.refresh)
        session.changed.connect(self.refresh)
        session.photo_shown.connect(lambda _: self._begin())
        session.workers.start("", lambda _: _read_always(), self._show_always)

    def offer(self, button: QPushButton) -> None:
        """Put a button beside that for keeping."""
        self._row.addWidget(button)

    # -- keeping ------------------------------------------------------------------------------
    def keep(self) -> None:
        """Keep the record as it stands; what is not saved yet is saved first."""
        if not self._session.has_photo or self._session.reviewing:
            return
        path = self._saving.saved_as
        if path is not None:
            self._take_in(path)
            return
        self._after_save = True
        self._save()
        if not self._session.workers.busy("save"):
            self._forget_wish()  # the question where to save was left

    def _on_saved(self, paths: list[Path]) -> None:
        wished, self._after_save = self._after_save, False
        record = next((path for path in paths if path.suffix.lower() == ".json"), None)
        if record is not None and (wished or self.always.isChecked()):
            self._take_in(record)

    def _forget_wish(self) -> None:
        self._after_save = False

    def _take_in(self, path: Path, replaces: str = "") -> None:
        mine = dict(self._mine)
        photos = self._photos()

        def work(archive: "Archive", _token: Token) -> "_Kept | _Clash":
            return _add(archive, path, photos, replaces, mine)

        def done(got: "_Kept | _Clash") -> None:
            if isinstance(got, _Clash):
                self._say_clash(path, got)
            else:
                self._say_kept(got)

        self.said.say("")
        self.door.ask(
            tr("Keeping {0}", path.name), work, done, failed=self._say_error, key="archive keep"
        )

    def _begin(self) -> None:
        self.said.say("")
        self._folder = None

    def _photos(self) -> Path | None:
        if self._folder is not None:
            return self._folder
        inspection = self._session.inspection
        infos = inspection.photos.infos if inspection and inspection.photo else ()
        folders = {info.path.absolute().parent for info in infos}
        return folders.pop() if len(folders) == 1 else None

    # -- showing ------------------------------------------------------------------------------
    def refresh(self) -> None:
        """Show what is possible."""
        self.keep_button.setEnabled(self._session.has_photo and not self._session.reviewing)

    def _say_kept(self, got: _Kept) -> None:
        added, sign = got.added, "done"
        self._mine[added.record_id] = added.sha256
        what = tr(
            "Part number {0}, serial {1}",
            got.part or tr("not given"),
            got.serial or tr("not given"),
        )
        told = {
            "new": tr("{0}, revision {1}: kept with its photos.", what, added.revision),
            "revised": tr(
                "{0}, revision {1}: kept in the place of the earlier.", what, added.revision
            ),
            "there": tr("{0}, revision {1}: was kept already, the same.", what, added.revision),
            "later": tr(
                "{0}: a later revision, {1}, is kept already; it stays.", what, added.revision
            ),
        }
        if not got.part:
            sign, told[added.state] = "look", told[added.state] + _NO_PART
        self.said.offer()
        self.said.say(told[added.state], sign)
        self.told.emit(told[added.state])
        self.kept.emit(added.record_id)

    def _bring(self) -> None:
        """Bring what is said into sight, wherever the key was pressed."""
        self._session.go("Record")

        def scroll() -> None:
            page = self.parentWidget()
            while page is not None and not isinstance(page, QScrollArea):
                page = page.parentWidget()
            if page is not None:
                page.ensureWidgetVisible(self.said)

        QTimer.singleShot(0, self, scroll)  # once it has its place

    def _say_clash(self, path: Path, clash: _Clash) -> None:
        self._bring()
        self.said.say(clash.says)
        self.said.offer()
        if clash.sha256:
            self.said.offer(
                key_button(
                    tr("Put mine in its place"), "", lambda: self._take_in(path, clash.sha256)
                )
            )

    def _say_error(self, exc: Exception) -> None:
        from ptmark.window.dialogs import ask_for_folder

        self._bring()
        self.said.offer()
        self.said.say(
            from_core(exc) if isinstance(exc, PtmarkError) else tr("Not kept: {0}", exc)
        )
        path = self._saving.saved_as
        if path is None or "photo" not in str(exc):
            return

        def choose() -> None:
            self._folder = ask_for_folder(self, tr("Photos of the record"), path.parent)
            if self._folder is not None:
                self._take_in(path)

        self.said.offer(key_button(tr("Folder of the photos …"), "", choose))

    # -- the tick -----------------------------------------------------------------------------
    def _show_always(self, always: bool) -> None:  # noqa: FBT001 - a plain answer
        with QSignalBlocker(self.always):
            self.always.setChecked(always)

    def _remember(self, always: bool) -> None:  # noqa: FBT001 - Qt's signal
        def work(_token: Token) -> None:
            write_whole(_file(), json.dumps({"keep_every_save": always}).encode())

        self._session.workers.start("", work, failed=self._say_error)


_NO_PART = tr(" Without a part number it is found only by its other fields.")


def _add(
    archive: "Archive", path: Path, photos: Path | None, replaces: str, mine: dict[str, str]
) -> "_Kept | _Clash":
    from ptmark.archive import Query, add_record, find
    from ptmark.record import load_record

    record = load_record(path)
    fields = record.fields
    hits = find(archive, Query(record_id=record.id)).hits
    if hits and not replaces and mine.get(record.id) == hits[0].sha256:
        replaces = hits[0].sha256  # this very window put it there
    try:
        added = add_record(archive, path, photos, replaces=replaces)
    except ArchiveError as exc:
        if not hits or "another state" not in exc.what:
            raise
        one = hits[0]
        signed = (
            tr(", signed {0} times", one.signatures) if one.signatures else tr(", not signed")
        )
        says = tr(
            "The archive keeps another state of this record: revision {0} "
            "of {1}{2}, {3}, {4} indications. ",
            one.revision,
            day(one.examined_on),
            signed,
            one.verdict or tr("no verdict"),
            one.indications,
        )
        says += (
            tr(
                "A signed one is never replaced: save this one where the "
                "signed record lies, so that it becomes its next revision."
            )
            if one.signatures
            else tr("It stays until you say which one counts.")
        )
        return _Clash(exc, says, "" if one.signatures else one.sha256)
    return _Kept(added, fields.get("part_number", ""), fields.get("serial_number", ""))


def _file() -> Path:
    return user_folder() / "archive-window.json"


def _read_always() -> bool:
    try:
        told = json.loads(_file().read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return False
    return isinstance(told, dict) and told.get("keep_every_save") is True
