"""Record, annotated image and PDF: written beside the window, each whole or not at all."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from ptmark.window.session import Session
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.inspection import Inspection, State
    from ptmark.record import Record

__all__ = ["Saving"]


class Saving(QObject):
    """Signals: ``saved(object)`` with the list of paths; ``failed(object)`` with the error."""

    saved = Signal(object)
    failed = Signal(object)

    def __init__(self, session: Session) -> None:
        super().__init__(session)
        self._session = session
        self.kept: State | None = None  # the state that the last saved record holds
        self._written: tuple[object, str, str] | None = None  # work, id and time of its record

    def propose(self) -> Path:
        """Where to save without being told: beside the photo, named after it."""
        inspection = self._session.inspection
        if inspection is None or inspection.photo is None:
            return Path.home() / "inspection"
        path = inspection.photos.infos[0].path
        return path.with_name(f"{path.stem}-inspection")

    def save(self, paths: Sequence[Path]) -> None:
        """Write one file for each path, its kind told by its ending."""
        session, inspection = self._session, self._session.inspection
        if inspection is None or inspection.photo is None:
            return
        twin, state = inspection.twin(), inspection.state
        work_of = session.autosave.path  # one a piece of work, whichever photo is shown
        known = self._written if self._written and self._written[0] == work_of else None

        def work(token: Token) -> "Record":
            # All files of one inspection tell of one record, however often they are saved.
            record = twin.to_record(
                record_id=known[1] if known else None, created=known[2] if known else None
            )
            # The record goes first: over a signed one it becomes a revision of its own, and
            # the report must tell of that one.
            ordered = sorted(paths, key=lambda path: path.suffix.lower() != ".json")
            for number, path in enumerate(ordered):
                token.progress(number / len(paths))
                record = _write(record, twin, path)
            return record

        def done(record: "Record") -> None:
            self._written = (work_of, record.id, record.created)
            if any(path.suffix.lower() == ".json" for path in paths):
                self.kept = state
            self.saved.emit(list(paths))

        names = ", ".join(path.name for path in paths)
        session.workers.start(
            f"Saving {names}", work, done, failed=self.failed.emit, key="save"
        )


def _write(record: "Record", twin: "Inspection", path: Path) -> "Record":
    """Write one file; the record as it stands on disk now."""
    from ptmark.record import save_record
    from ptmark.report import write_csv, write_images, write_pdf

    ending = path.suffix.lower()
    if ending == ".json":
        return save_record(path, record)
    if ending == ".pdf":
        more = twin.photos.opened()
        photo = next(more)
        write_pdf(path, record, photo.rgb, photo.info.path, more=more)
    elif ending == ".csv":
        write_csv(path, record)
    else:
        write_images(path, record, twin.photos.opened())
    return record
