"""Drafts: every change is written beside the window, and found again after a kill.

One JSON file for each piece of work under ``user_folder()/drafts``. A lock file beside it
says that a living process is at work on it; a draft whose lock is free was left behind.
"""

import json
import threading
import uuid
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QLockFile, QObject, QTimer, Signal

from ptmark.errors import RecordError
from ptmark.files import write_whole
from ptmark.places import user_folder
from ptmark.window.workers import Token, Workers

if TYPE_CHECKING:
    from ptmark.inspection import Inspection

__all__ = ["Autosave", "Draft", "left_behind", "lock_of"]

DELAY_MS = 200


@dataclass(frozen=True)
class Draft:
    """A draft found on disk; ``saved`` is seconds since 1970 as the file system has it.

    ``marked`` are the indications of all its photos, ``more`` how many of these it has beside
    ``photo``; ``record`` is the record under review where it holds an unfinished review.
    """

    path: Path
    saved: float
    photo: Path | None  # None before the first one
    marked: int
    part: str = ""
    record: Path | None = None
    more: int = 0


def _folder() -> Path:
    return user_folder() / "drafts"


def lock_of(path: Path) -> QLockFile:
    """The lock that says a living process is at work on a draft; not taken yet."""
    lock = QLockFile(str(path.with_suffix(".lock")))
    lock.setStaleLockTime(0)  # stale only once its process is gone
    return lock


def left_behind(ending: str = ".json") -> list[Draft]:
    """The drafts that no living process holds, newest first; what cannot be read is skipped.

    Those put aside have another ``ending``; their path is the one before that all the same.
    """
    found = []
    for path in _folder().glob(f"*{ending}"):
        lock = lock_of(path)
        if not lock.tryLock(0):
            continue
        lock.unlock()
        try:
            document = read_draft(path)
            photo = None if document["photo"] is None else Path(document["photo"]["path"])
            more = [*document.get("before", ()), *document.get("after", ())]
            marked = sum(len(one["marked"]) for one in (document, *more))
            named = ("part_number", "serial_number")
            part = " ".join(filter(None, (document["fields"].get(n) for n in named)))
            review = document.get("review")
            record = None if review is None else Path(review["record"])
        except (RecordError, KeyError, TypeError):
            continue
        saved = path.stat().st_mtime
        own = path.with_suffix(".json")
        found.append(Draft(own, saved, photo, marked, part, record, len(more)))
    return sorted(found, key=lambda draft: -draft.saved)


def read_draft(path: Path) -> dict[str, Any]:
    """The JSON document of a draft; RecordError where it cannot be read."""
    try:
        document = json.loads(path.read_text(encoding="utf-8"))
    except (OSError, ValueError) as exc:
        raise RecordError(f"cannot be read: {exc}", where=str(path)) from exc
    if not isinstance(document, dict):
        raise RecordError("holds no draft", where=str(path))
    return document


class Autosave(QObject):
    """Writes the draft after each change, at most 200 ms later and never twice at once.

    Signals: ``saved()`` once the newest change is on disk, ``failed(object)`` an error.
    """

    saved = Signal()
    failed = Signal(object)

    def __init__(self, workers: Workers, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._workers = workers
        self._timer = QTimer(self, singleShot=True, interval=DELAY_MS)
        self._timer.timeout.connect(self._write)
        self._inspection: Inspection | None = None
        self._held: Inspection | None = None
        self.about: list[Callable[[], dict[str, Any]]] = []  # members to write beside the work
        self._writing = False
        self._again = False
        self._lock: QLockFile | None = None
        self._guard = threading.Lock()
        self._serial = self._written = 0  # an older writer must never replace a newer one
        self.path = _folder() / f"{uuid.uuid4().hex}.json"

    def adopt(self, path: Path) -> None:
        """Go on with a draft found on disk."""
        self.flush()
        self._release()
        self._held = None
        self.path = path
        self._ready()

    def begin(self) -> None:
        """Start a draft of its own for the next piece of work; the one before stays on disk."""
        self.flush()
        self._release()
        self._held = None
        self.path = _folder() / f"{uuid.uuid4().hex}.json"

    def hold(self, inspection: "Inspection") -> None:
        """Keep the work as it is here in this draft, whatever becomes of it; write it now."""
        self._held = inspection
        self.note(inspection)
        self.flush()

    def note(self, inspection: "Inspection") -> None:
        """The inspection changed."""
        self._inspection = self._held or inspection
        if (
            not self._timer.isActive()
        ):  # the first change starts the clock; later ones ride along
            self._timer.start()

    def note_beside(self) -> None:
        """What stands beside the work changed: it is written where there is a draft."""
        if self._lock is not None and self._inspection is not None:
            self.note(self._inspection)

    def flush(self) -> None:
        """Write what is still waiting now, here: the window is about to close or move on."""
        if (self._timer.isActive() or self._again) and self._inspection is not None:
            self._timer.stop()
            self._again = False
            self._put(self._ready(), self._inspection.twin(), self._next(), self._told())

    def forget(self) -> None:
        """The work is kept elsewhere: take the draft away."""
        self._timer.stop()
        with self._guard:
            self._written = self._next()  # a writer under way finds itself outdated
            self.path.unlink(missing_ok=True)
        self._release()
        self._held = None

    def _told(self) -> dict[str, Any]:
        return {name: one for about in self.about for name, one in about().items()}

    def _next(self) -> int:
        self._serial += 1
        return self._serial

    def _put(self, path: Path, twin: "Inspection", serial: int, about: dict[str, Any]) -> None:
        from ptmark.inspection.draft import draft_to_json

        data = json.dumps(draft_to_json(twin) | about).encode()
        with self._guard:
            if serial > self._written:
                write_whole(path, data)
                self._written = serial

    def _release(self) -> None:
        if self._lock is not None:
            self._lock.unlock()
            self._lock = None

    def _ready(self) -> Path:
        if self._lock is None:
            self.path.parent.mkdir(parents=True, exist_ok=True)
            self._lock = lock_of(self.path)
            self._lock.tryLock(0)
        return self.path

    def _write(self) -> None:
        if self._inspection is None or not self._inspection.begun:
            return
        if self._writing:
            self._again = True
            return
        try:
            path = self._ready()
        except OSError as exc:
            self.failed.emit(exc)
            return
        self._writing, twin, serial = True, self._inspection.twin(), self._next()
        about = self._told()

        def work(_token: Token) -> None:
            self._put(path, twin, serial, about)

        self._workers.start("", work, lambda _: self._over(), failed=self._over)

    def _over(self, error: Exception | None = None) -> None:
        self._writing = False
        if error is not None:
            self.failed.emit(error)
        if self._again:
            self._again = False
            self._write()
        elif error is None:
            self.saved.emit()
