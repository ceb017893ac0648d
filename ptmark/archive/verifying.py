"""Reading everything again: whether records, rows, photos and the log are as they were made."""

import hashlib
import json
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, func, select, text

from ptmark.archive import chain
from ptmark.archive.comparing import check_words, differing
from ptmark.archive.derive import derived
from ptmark.archive.findings import Notes, Problem, Verified
from ptmark.archive.named import NAMED, all_named, replayed
from ptmark.archive.opening import Archive
from ptmark.archive.rows import inflated, stored, table
from ptmark.archive.sealing import seal, seal_holds
from ptmark.archive.store import key_for
from ptmark.errors import PtmarkError
from ptmark.record.store import parsed

__all__ = ["Problem", "Verified", "known_files", "sha256_of", "verify"]

_CHUNK = 200
_HANDS = 2


def verify(
    archive: Archive,
    *,
    resume: bool = False,
    progress: Callable[[int, int], None] | None = None,
) -> Verified:
    """Read every record and photo again and compare them with all that is known of them.

    Parameters
    ----------
    archive : Archive
    resume : bool
        Go on where a run that was stopped had come to.
    progress : callable (done, total) or None
        Called after each chunk; counts records and photos.

    Returns
    -------
    Verified
        Every changed bit of a photo, a record, a row, an index or the log is a problem. Bits
        of the database's file that nothing reads are compared where it was sealed and not
        written to since.
    """
    run = _Run(archive, progress, Notes(archive, resume=resume))
    for step in (run.database, run.log, run.records, run.photos, run.store):
        try:
            step()
        except PtmarkError as exc:  # a damaged page stops one step, not the others
            run.found.problems.append(Problem("damaged", "database", exc.what))
    if run.found.whole and archive.file is not None:
        with suppress(PtmarkError), archive.guarded():  # a read-only archive is not sealed
            seal(archive.engine, archive.file)
    run.notes.drop()
    return run.found


def sha256_of(data: bytes) -> str:
    """Hexadecimal digits."""
    return hashlib.sha256(data).hexdigest()


def known_files(conn: Connection) -> dict[str, str]:
    """SHA-256 of every record's file by its id, as the log tells."""
    known: dict[str, str] = {}
    for line in chain.lines(conn):
        _follow(known, line)
    return known


def _follow(known: dict[str, str], line: chain.Line) -> None:
    if line.action in {"added", "revised"}:
        known[line.subject] = json.loads(line.detail)["sha256"]
    elif line.action == "deleted":
        known.pop(line.subject, None)


class _Run:
    def __init__(
        self, archive: Archive, progress: Callable[[int, int], None] | None, notes: Notes
    ) -> None:
        self.archive, self.notes, self.found = archive, notes, notes.found
        self._progress = progress
        self._total = 0
        self._known: dict[str, str] = {}  # record id: SHA-256 of its file, by the log
        self._needed: set[str] = set()

    def _say(self, kind: str, subject: str, says: str) -> None:
        problem = Problem(kind, subject, says)
        if problem not in self.found.problems:
            self.found.problems.append(problem)

    def _step(self) -> None:
        self.notes.keep()
        if self._progress is not None:
            self._progress(self.found.records + self.found.photos, self._total)

    def database(self) -> None:
        """The file itself: structure, indexes, references, seal."""
        if self.archive.file is None:
            return
        with self.archive.guarded():
            if seal_holds(self.archive.engine, self.archive.file) is False:
                self._say("changed", "database", "its file differs from what was sealed")
        with self.archive.reading() as conn:
            for (says,) in conn.execute(text("PRAGMA integrity_check")).all():
                if says != "ok":
                    self._say("damaged", "database", str(says))
            for row in conn.execute(text("PRAGMA foreign_key_check")).all():
                self._say("damaged", "database", f"a row of {row[0]} points nowhere")
            check_words(conn)

    def log(self) -> None:
        """The chain of the log, its end beside the database, and the small tables."""
        with self.archive.reading() as conn:
            replay = replayed(self._lines(conn))
            for name in NAMED:
                there = all_named(conn, name)
                if there != replay[name]:
                    self._say("changed", name, "differs from what the log holds")
            inspection, photo = table("inspection"), table("photo")
            known = dict(
                conn.execute(select(inspection.c.record_id, inspection.c.sha256)).all()
            )
            self._total = len(known)
            self._total += conn.execute(select(func.count()).select_from(photo)).scalar_one()
        for record_id, sha256 in self._known.items():
            if record_id not in known:
                self._say("missing", record_id, "the log has it, the database has not")
            elif known[record_id] != sha256:
                self._say("changed", record_id, "is not the state that the log tells")
        for record_id in known.keys() - self._known.keys():
            self._say("changed", record_id, "stands in the database, not in the log")

    def _lines(self, conn: Connection) -> Iterator[chain.Line]:
        seq, previous = 0, chain.FIRST
        noted = self._noted()
        for line in chain.lines(conn):
            holds = line.seq == seq + 1 and line.previous == previous
            if not holds or chain.link(line) != line.sha256:
                self._say("changed", "log", f"line {line.seq} does not fit the chain")
            seq, previous = line.seq, line.sha256
            _follow(self._known, line)
            if noted is not None and noted[0] == seq and noted[1] != previous:
                self._say("changed", "log", f"line {seq} is not the one that was written")
            yield line
        if noted is not None and noted[0] > seq:
            says = f"ends at line {seq}, but {noted[0]} lines were written"
            self._say("missing", "log", says)

    def _noted(self) -> tuple[int, str] | None:
        if self.archive.file is None:
            return None
        try:
            seq, sha256 = self.archive.file.with_suffix(".head").read_text("ascii").split()
            return int(seq), sha256
        except (OSError, ValueError):
            return None

    def records(self) -> None:
        """Every record's bytes against its hash, and its rows against those bytes."""
        inspection, document = table("inspection"), table("document")
        chosen = select(inspection.c.id, inspection.c.record_id, document.c.data)
        chosen = chosen.outerjoin(document, document.c.inspection_id == inspection.c.id)
        chosen = chosen.order_by(inspection.c.id).limit(_CHUNK)
        while True:
            with self.archive.reading() as conn:
                after = chosen.where(inspection.c.id > self.notes.record)
                chunk = conn.execute(after).all()
                rows = stored(conn, [one.id for one in chunk])
            for one in chunk:
                self._record(one.record_id, one.data, rows.get(one.id))
                self.notes.record = one.id
                self.found.records += 1
            self._step()
            if len(chunk) < _CHUNK:
                return

    def _record(self, record_id: str, data: bytes | None, rows: dict[str, Any] | None) -> None:
        if data is None or rows is None:
            self._say("missing", record_id, "its file or its rows are not in the database")
            return
        try:
            whole = inflated(data, record_id)
            self.found.bytes += len(whole)
            expected = self._known.get(record_id, rows["inspection"]["sha256"])
            if sha256_of(whole) != expected:
                self._say("changed", record_id, "its file is not the one that was taken in")
                return
            should = derived(parsed(whole, record_id), whole)
        except PtmarkError as exc:
            self._say("damaged", record_id, str(exc))
            return
        for name in differing(should, rows):
            self._say("changed", record_id, f"its {name} differs from its file")

    def photos(self) -> None:
        """Every photo's bytes against its name."""
        photo = table("photo")
        chosen = select(photo).order_by(photo.c.sha256).limit(_CHUNK)
        with ThreadPoolExecutor(_HANDS) as pool:
            while True:
                with self.archive.reading() as conn:
                    chunk = conn.execute(chosen.where(photo.c.sha256 > self.notes.photo)).all()
                for one, (says, size) in zip(chunk, pool.map(self._photo, chunk), strict=True):
                    self.found.photos += 1
                    self.found.bytes += size
                    self.notes.photo = one.sha256
                    if says:
                        kind, _, rest = says.partition(" ")
                        self._say(kind, one.sha256, rest)
                self._step()
                if len(chunk) < _CHUNK:
                    return

    def _photo(self, row: Any) -> tuple[str, int]:  # noqa: ANN401 - a row
        try:
            data = self.archive.store.read(key_for(row.sha256, row.suffix))
        except FileNotFoundError:
            return "missing is not in the store", 0
        except OSError as exc:
            return f"damaged cannot be read ({exc.strerror or exc})", 0
        if sha256_of(data) != row.sha256:
            return "changed is not the photo that was taken in", len(data)
        if len(data) != row.bytes:
            return "changed its row tells another size", len(data)
        return "", len(data)

    def store(self) -> None:
        """What lies in the store and no row tells of: an addition that was cut off."""
        photo = table("photo")
        with self.archive.reading() as conn:
            known = {
                key_for(*row) for row in conn.execute(select(photo.c.sha256, photo.c.suffix))
            }
        for key in self.archive.store.names():
            if key not in known:
                self._say("orphaned", Path(key).stem, "no record needs it")
        for name in self.archive.store.others():
            self._say("orphaned", "store", f"{name} is no photo")
