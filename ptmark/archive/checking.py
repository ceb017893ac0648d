"""Reading a store again: photos, records' files, lines of the log; and how a check goes on."""

from collections.abc import Callable, Iterator
from functools import partial
from typing import Any

from sqlalchemy import select

from ptmark.archive import beside, chain
from ptmark.archive.findings import Notes, Problem
from ptmark.archive.opening import Archive
from ptmark.archive.rereading import content_says, leftovers, line_says
from ptmark.archive.rows import table
from ptmark.archive.store import key_for
from ptmark.errors import PtmarkError

__all__ = ["CHUNK", "FileCheck"]

CHUNK = 200  # items between two notes of how far it came


class FileCheck:
    """What every step of a check needs, and the steps that read the store."""

    def __init__(
        self, archive: Archive, progress: Callable[[int, int], None] | None, notes: Notes
    ) -> None:
        self.archive, self.notes, self.found = archive, notes, notes.found
        self._progress = progress
        self._total = 0
        self._known: dict[str, list[str]] = {}  # SHA-256 of a record's files, by the log

    def tried(self, step: Callable[[], object]) -> object:
        """Do a step: a damaged page stops this one, not the others."""
        try:
            return step()
        except PtmarkError as exc:
            self._say("damaged", "database", exc.what)
        except (ValueError, LookupError, TypeError) as exc:  # what lies there is no JSON, say
            self._say("damaged", "database", repr(exc))
        return None

    def _say(self, kind: str, subject: str, says: str) -> None:
        problem = Problem(kind, subject, says)
        if problem not in self.found.problems:
            self.found.problems.append(problem)

    def _step(self) -> None:
        self.notes.keep()
        if self._progress is not None:
            self._progress(self.found.records + self.found.photos, self._total)

    def photos(self) -> Iterator[None]:
        """Every photo's bytes against its name; threads hash a run while this waits."""
        photo = table("photo")
        chosen = select(photo).order_by(photo.c.sha256).limit(CHUNK)
        with beside.hands(self.archive.store) as mapped:
            while True:
                with self.archive.reading() as conn:
                    chunk = conn.execute(chosen.where(photo.c.sha256 > self.notes.photo)).all()
                told = mapped(self._photo, chunk)
                yield
                for one, (kind, says, size) in zip(chunk, told, strict=True):
                    self.found.photos += 1
                    self.found.bytes += size
                    self.notes.photo = one.sha256
                    if kind and not (kind == "missing" and self._deleted(one.sha256)):
                        self._say(kind, one.sha256, says)
                self._step()
                if len(chunk) < CHUNK:
                    return

    def _photo(self, row: Any) -> tuple[str, str, int]:  # noqa: ANN401 - a row
        store, key = self.archive.store, key_for(row.sha256, row.suffix)
        kind, says, size = content_says(store, key, row.sha256)
        if not kind and size != row.bytes:
            return "changed", "its row tells another size", size
        return kind, says, size

    def _deleted(self, subject: str) -> bool:
        """Whether a rule took a photo or record away since the log was read."""
        photo = table("photo")
        with self.archive.reading() as conn:
            row = conn.execute(select(photo.c.sha256).where(photo.c.sha256 == subject)).first()
            return row is None and not beside.states(chain.lines(conn, subject))

    def files(self) -> None:
        """The records' files beside the photos, every state that was taken in."""
        owner = {sha256: name for name, own in self._known.items() for sha256 in own}
        left = sorted(one for one in owner if one > self.notes.file)
        with beside.hands(self.archive.store) as mapped:
            for first in range(0, len(left), CHUNK):
                chunk = left[first : first + CHUNK]
                told = mapped(self._file, chunk)
                for one, (kind, says, size) in zip(chunk, told, strict=True):
                    self.found.bytes += size
                    self.notes.file = one
                    if kind and not (kind == "missing" and self._deleted(owner[one])):
                        self._say(kind, owner[one], f"its file {one[:12]}… {says}")
                self._step()

    def _file(self, sha256: str) -> tuple[str, str, int]:
        return content_says(self.archive.store, beside.file_key(sha256), sha256)

    def lines(self) -> None:
        """The lines of the log beside the photos."""
        audit = table("audit")
        chosen = select(audit).order_by(audit.c.seq).limit(CHUNK)
        with beside.hands(self.archive.store) as mapped:
            while True:
                with self.archive.reading() as conn:
                    after = conn.execute(chosen.where(audit.c.seq > self.notes.line))
                    chunk = [chain.Line(*row) for row in after]
                told = mapped(partial(line_says, self.archive.store), chunk)
                for line, kind in zip(chunk, told, strict=True):
                    self.notes.line = line.seq
                    if kind:
                        self._say(kind, "log", f"line {line.seq} beside the photos is {kind}")
                self._step()
                if len(chunk) < CHUNK:
                    return

    def store(self) -> None:
        """What lies in the store and nothing tells of."""
        try:
            for one in leftovers(self.archive, self._known):
                self._say(one.kind, one.subject, one.says)
        except OSError as exc:
            self._say("damaged", "store", f"cannot be listed ({exc.strerror or exc})")
