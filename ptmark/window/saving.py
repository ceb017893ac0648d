"""Record, annotated image and PDF: written beside the window, each whole or not at all."""

import hashlib
from collections.abc import Sequence
from contextlib import ExitStack
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from ptmark.errors import PtmarkError, RecordError, UsageError
from ptmark.window.saved_names import beside
from ptmark.window.session import Session
from ptmark.window.words import tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.inspection import Inspection, State
    from ptmark.record import Record
    from ptmark.report.pages.story import Earlier

__all__ = ["Saving"]


@dataclass(frozen=True)
class _Home:
    """Where a piece of work has its record, and what the record is called inside.

    ``left`` is the hash of that file as this work read or wrote it.
    """

    work: Path
    path: Path | None
    record_id: str
    created: str
    left: str


class Saving(QObject):
    """Writes and signs.

    Signals: ``saved(object)`` with the list of paths; ``failed(object)`` with the error;
    ``asked(object, object)`` with the paths and what differs, where a signed record would
    change and nobody has said why; ``signed(str)`` with what to say of a new signature.
    """

    saved = Signal(object)
    failed = Signal(object)
    asked = Signal(object, object)
    signed = Signal(str)

    def __init__(self, session: Session) -> None:
        super().__init__(session)
        self._session = session
        self.kept: State | None = None  # the state that the last saved record holds
        self.written: list[Path] = []  # of the files last asked for, also where one failed
        self._home: _Home | None = None
        self._signed: State | None = None
        self._beside: dict[Path, list[Path]] = {}  # picture and PDF of each record saved here

    def _known(self) -> _Home | None:
        """The record of the work at hand: one a piece of work, whichever photo is shown."""
        home = self._home
        return home if home and home.work == self._session.autosave.path else None

    def belong_to(self, path: Path, record: "Record") -> None:
        """From now on the work at hand is that of this record."""
        work = self._session.autosave.path
        self._home = _Home(work, path, record.id, record.created, _hash(path))

    @property
    def record_id(self) -> str:
        """What the record of the work at hand is called inside; "" before it is saved."""
        home = self._known()
        return "" if home is None else home.record_id

    @property
    def saved_as(self) -> Path | None:
        """Where the record lies; None where it does not hold the work as it stands."""
        state, home = self._session.state, self._known()
        held = state is not None and state is self.kept
        return home.path if held and home is not None else None

    def propose(self) -> Path:
        """Where to save without being told: where its record lies, else beside the photo."""
        inspection, home = self._session.inspection, self._known()
        if home is not None and home.path is not None:
            return home.path
        if inspection is None or inspection.photo is None:
            return Path.home() / "inspection"
        path = inspection.photos.infos[0].path
        return path.with_name(f"{path.stem}-inspection")

    def names_for(self, record: Path) -> list[Path]:
        """The files that are saved together for a record's: itself, its picture, its PDF."""
        inspection = self._session.inspection
        photos = [one.path for one in inspection.photos.infos] if inspection else []
        made = self._beside[record] = beside(record, photos, self._beside.get(record, []))
        return [record, *made]

    def names_again(self) -> list[Path]:
        """The files that a person had saved together here; none before there are any."""
        home = self._known()
        if home is None or home.path is None or home.path not in self._beside:
            return []
        return self.names_for(home.path)

    def save(self, paths: Sequence[Path], by: str = "", why: str = "") -> None:
        """Write one file for each path, its kind told by its ending.

        ``by`` and ``why`` go into the new revision where that replaces a signed one.
        """
        session, inspection = self._session, self._session.inspection
        if inspection is None or inspection.photo is None:
            return
        twin, state = inspection.twin(), inspection.state
        work_of, known = session.autosave.path, self._known()
        # The record goes first: over a signed one it becomes a revision of its own, and the
        # report must tell of that one.
        ordered = sorted(paths, key=lambda path: path.suffix.lower() != ".json")
        is_record = ordered[0].suffix.lower() == ".json"
        self.written = written = []
        made: list[Record] = []

        def work(token: Token) -> "Record | list[str]":
            _refuse_changed(ordered[0], known)
            # All files of one inspection tell of one record, however often they are saved.
            record = twin.to_record(
                record_id=known.record_id if known else None,
                created=known.created if known else None,
            )
            if not why and (what := _changes_signed(ordered[0], record)):
                return what
            for number, path in enumerate(ordered):
                token.progress(number / len(paths))
                record = _write(record, twin, path, (by, why))
                made.append(record)
                written.append(path)
            return record

        def settle() -> None:
            """Remember the record that lies on disk now, also where a file after it failed."""
            for record in made[-1:]:
                self._lies(ordered[0], record, known, work_of)
                self.kept = state if is_record else self.kept

        def failed(exc: Exception) -> None:
            settle()
            self.failed.emit(exc)

        def done(got: "Record | list[str]") -> None:
            if isinstance(got, list):
                self.asked.emit(list(paths), got)
                return
            settle()
            self.saved.emit(list(paths))

        names = ", ".join(path.name for path in paths)
        session.workers.start(tr("Saving {0}", names), work, done, failed=failed, key="save")

    def _lies(self, path: Path, record: "Record", known: _Home | None, work: Path) -> None:
        """Know from now on where the record of a piece of work is."""
        if path.suffix.lower() == ".json":
            self._home = _Home(work, path, record.id, record.created, _hash(path))
        elif known is not None:
            self._home = known
        else:
            self._home = _Home(work, None, record.id, record.created, "")

    # -- signing ------------------------------------------------------------------------------
    @property
    def can_sign(self) -> bool:
        """Whether the record on disk holds the work as it stands, not signed yet."""
        state, home = self._session.state, self._known()
        held = state is not None and state is self.kept and state is not self._signed
        return held and home is not None and home.path is not None

    @property
    def is_signed(self) -> bool:
        """Whether the work as it stands was signed here."""
        return self._signed is not None and self._signed is self._session.state

    def sign(self, name: str, qualification: str) -> None:
        """Sign the saved record as its examiner."""
        state, home = self._session.state, self._known()
        if home is None or home.path is None or state is not self.kept:
            self.failed.emit(
                UsageError(
                    tr("the record is not saved as it stands"), mend=tr("save it, then sign")
                )
            )
            return
        path = home.path

        def done(said: str) -> None:
            self._signed = state
            self._home = replace(home, left=_hash(path))
            self.signed.emit(said)

        self._session.workers.start(
            tr("Signing {0}", path.name),
            lambda _token: _sign(path, home, name, qualification),
            done,
            failed=self.failed.emit,
            key="save",
        )


def _changes_signed(path: Path, record: "Record") -> list[str]:
    """What would differ from the signed or reviewed record there; nothing where none does."""
    from ptmark.record import follow, load_record

    if path.suffix.lower() != ".json" or not path.is_file():
        return []
    try:
        before = load_record(path)
    except RecordError:  # no record, or a damaged one: saving itself says whether it may go
        return []
    if before.id != record.id:
        return []
    after = follow(before, record)
    return [] if after.revision == before.revision else list((after.change or {})["what"])


def _hash(path: Path) -> str:
    """Of the file's bytes; "" where there is none."""
    return hashlib.sha256(path.read_bytes()).hexdigest() if path.is_file() else ""


def _refuse_changed(path: Path, home: _Home | None) -> None:
    """Keep what somebody else has written there meanwhile, as in another window."""
    if home is not None and path == home.path and _hash(path) not in ("", home.left):
        raise RecordError(
            tr("the record was changed since it was opened or saved here"),
            where=str(path),
            mend=tr("Save this work under another name, or open the record again"),
        )


def _sign(path: Path, home: _Home, name: str, qualification: str) -> str:
    from ptmark.record import Signer, fingerprint, key_of, save_record, sign_record
    from ptmark.review import sound_record

    _refuse_changed(path, home)
    who = Signer(role="examiner", name=name, qualification=qualification)
    record = save_record(path, sign_record(sound_record(path), who, key_of(name)))
    key = fingerprint(record.signatures[-1]["key"])
    return tr(
        "{0}, revision {1}: signed by {2}; key {3}", path.name, record.revision, name, key
    )


def _write(
    record: "Record", twin: "Inspection", path: Path, reason: tuple[str, str] = ("", "")
) -> "Record":
    """Write one file; the record as it stands on disk now."""
    from ptmark.inspection.retests import earlier_of
    from ptmark.inspection.saving import save_inspection
    from ptmark.report.annotate import write_images
    from ptmark.report.pages.whole import write_pdf
    from ptmark.report.table import write_csv

    ending = path.suffix.lower()
    if ending == ".json":
        return save_inspection(path, twin, record, by=reason[0], why=reason[1])
    if ending == ".pdf":
        more = twin.photos.opened()
        photo = next(more)
        place = photo.info.path
        with ExitStack() as held:
            earlier = earlier_of(record, path, photo=place) or _kept_before(record, place, held)
            write_pdf(path, record, photo.rgb, place, earlier=earlier, more=more)
    elif ending == ".csv":
        write_csv(path, record)
    else:
        write_images(path, record, twin.photos.opened())
    return record


def _kept_before(record: "Record", photo: Path, held: ExitStack) -> "list[Earlier]":
    """The tests before a retest as the archive has them; none where it cannot be read."""
    if record.retest_of is None:
        return []
    from ptmark.archive import open_archive
    from ptmark.window.archive.opened import earlier_in

    try:
        archive = held.enter_context(open_archive(read_only=True))
        return earlier_in(archive, record, photo, held)
    except PtmarkError:  # the report says that they were not at hand
        return []
