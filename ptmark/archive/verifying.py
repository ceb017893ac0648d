"""Reading everything again: whether records, rows, photos and the log are as they were made."""

import sqlite3
from collections.abc import Callable, Iterator
from contextlib import closing, suppress
from functools import partial
from typing import Any

from sqlalchemy import Connection, func, select, text

from ptmark.archive import beside, chain, checking
from ptmark.archive.checking import FileCheck
from ptmark.archive.comparing import check_words, differing, unseen_words
from ptmark.archive.derive import derived
from ptmark.archive.findings import Notes, Problem, Verified
from ptmark.archive.headed import noted_head
from ptmark.archive.named import NAMED, all_named, replayed
from ptmark.archive.opening import Archive
from ptmark.archive.proving import follow_proof, hash_of, hashed
from ptmark.archive.quickly import derived_quickly
from ptmark.archive.rereading import sha256_of
from ptmark.archive.rows import inflated, stored, table
from ptmark.archive.sealing import seal, seal_holds
from ptmark.archive.small import forget_deleted
from ptmark.archive.tails import TAILS, tails_hold
from ptmark.errors import PtmarkError
from ptmark.record.store import parsed

__all__ = ["Problem", "Verified", "verify"]

_NO_TEXT = text(
    "SELECT count(*) FROM sqlite_master WHERE typeof(type) <> 'text' OR typeof(name) <> 'text' "
    "OR typeof(tbl_name) <> 'text' OR typeof(sql) NOT IN ('text', 'null')"
)


def verify(
    archive: Archive,
    *,
    resume: bool = False,
    progress: Callable[[int, int], None] | None = None,
) -> Verified:
    """Read every record and photo again and compare them with all that is known of them.

    Small pictures of photos that were deleted by rule go from this user's cache.

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
        of the database's file that nothing reads, and those of the index of words that its
        own check lets pass, are compared where it was sealed and not written to since.
    """
    run = _Run(archive, progress, Notes(archive, resume=resume))
    steps = (run.database, run.numbers, run.log, run.contents, run.files, run.lines, run.store)
    with closing(run.judge):
        for step in steps:
            run.tried(step)
    if run.found.whole and archive.file is not None and run.sealed is None:
        with suppress(PtmarkError), archive.guarded():  # a read-only archive is not sealed
            seal(archive.engine, archive.file)
    run.notes.drop()
    with suppress(PtmarkError):  # only a cache
        forget_deleted(archive)
    return run.found


class _Run(FileCheck):
    def __init__(
        self, archive: Archive, progress: Callable[[int, int], None] | None, notes: Notes
    ) -> None:
        super().__init__(archive, progress, notes)
        self.sealed: bool | None = None
        self.judge = sqlite3.connect("")  # of JSON, not of the archive
        self._proofs: dict[str, str] = {}  # SHA-256 of each record's rows, where the log tells

    def database(self) -> None:
        """The file itself: structure, indexes, references, seal."""
        if self.archive.file is None:
            return
        with self.archive.guarded():
            self.sealed = seal_holds(self.archive.engine, self.archive.file)
        if self.sealed is False:
            self._say("changed", "database", "its file differs from what was sealed")
        with self.archive.reading() as conn:
            for (says,) in conn.execute(text("PRAGMA integrity_check")).all():
                if says != "ok":
                    self._say("damaged", "database", f"its own check says: {says}")
            for row in conn.execute(text("PRAGMA foreign_key_check")).all():
                self._say("damaged", "database", f"a row of {row[0]} points nowhere")
            if unseen_words(conn):
                self._say("damaged", "database", "searches miss words of its index")
            if conn.execute(_NO_TEXT).scalar_one():  # SQLite itself reads it all the same
                self._say("damaged", "database", "the definition of a table is no text")
        with self.archive.guarded():
            check_words(self.archive.engine)

    def numbers(self) -> None:
        """The ends of part and serial numbers, by which searches go."""
        with self.archive.reading() as conn:
            for name in TAILS:
                if not tails_hold(conn, name):
                    self._say("changed", name, "holds other ends than the numbers have")

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
        for record_id, files in self._known.items():
            if record_id not in known:
                self._say("missing", record_id, "the log has it, the database has not")
            elif known[record_id] != files[-1]:
                self._say("changed", record_id, "is not the state that the log tells")
        for record_id in known.keys() - self._known.keys():
            self._say("changed", record_id, "stands in the database, not in the log")

    def _lines(self, conn: Connection) -> Iterator[chain.Line]:
        seq, previous = 0, chain.FIRST
        noted = None if self.archive.file is None else noted_head(self.archive.file)
        for line in chain.lines(conn):
            holds = line.seq == seq + 1 and line.previous == previous
            if not holds or chain.link(line) != line.sha256:
                self._say("changed", "log", f"line {line.seq} does not fit the chain")
            seq, previous = line.seq, line.sha256
            beside.follow(self._known, line)
            if self.archive.file is not None:  # on a server its writer could tell any
                follow_proof(self._proofs, line)
            if noted is not None and noted[0] == seq and noted[1] != previous:
                self._say("changed", "log", f"line {seq} is not the one that was written")
            yield line
        if noted is not None and noted[0] > seq:
            says = f"ends at line {seq}, but {noted[0]} lines were written"
            self._say("missing", "log", says)

    def contents(self) -> None:
        """Records and photos in turns: threads hash a run of photos meanwhile."""
        left = [self.photos(), self.records()]
        while left:
            left = [one for one in left if self.tried(partial(_goes_on, one))]

    def records(self) -> Iterator[None]:
        """Every record's bytes against its hash, and its rows against those bytes."""
        inspection = table("inspection")
        chosen = select(inspection.c.id, inspection.c.record_id)
        chosen = chosen.order_by(inspection.c.id).limit(checking.CHUNK)
        while True:
            with self.archive.reading() as conn:
                after = chosen.where(inspection.c.id > self.notes.record)
                chunk = conn.execute(after).all()
                there = hashed(conn, chunk[0].id, chunk[-1].id) if chunk else {}
                right = [
                    self._record(conn, one, *there.get(one.id, ("", b""))) for one in chunk
                ]
            self.notes.note_right(filter(None, right))
            if chunk:
                self.notes.record = chunk[-1].id
            self.found.records += len(chunk)
            self._step()
            if len(chunk) < checking.CHUNK:
                return
            yield

    def _record(self, conn: Connection, one: Any, sha256: str, data: bytes) -> str:  # noqa: ANN401
        """Compare a record's file and rows; the rows' hash where it is to be noted as right."""
        told = self._proofs.get(one.record_id)
        self.found.bytes += len(data)
        if sha256 and (told == sha256 if told else sha256 in self.notes.right):
            return ""
        if not sha256:
            self._say("missing", one.record_id, "its file or its rows are not in the database")
        elif self._worked_out(conn, one, sha256, data) and not told:
            return sha256
        return ""

    def _worked_out(self, conn: Connection, one: Any, sha256: str, data: bytes) -> bool:  # noqa: ANN401
        """Whether the file is the one that was taken in, and the rows are those it gives."""
        record_id = one.record_id
        try:
            whole = inflated(data, record_id)
            if not self._expected(record_id, sha256_of(whole)):
                self._say("changed", record_id, "its file is not the one that was taken in")
                return False
            quick = derived_quickly(whole, self.judge)
            if quick is not None and hash_of(quick, data) == sha256:
                return True
            should = derived(parsed(whole, record_id), whole)
        except PtmarkError as exc:
            self._say("damaged", record_id, f"its file cannot be read ({exc.what})")
            return False
        wrong = differing(should, stored(conn, [one.id])[one.id])
        for name in wrong:
            self._say("changed", record_id, f"differs from its file in the {name}")
        return not wrong

    def _expected(self, record_id: str, sha256: str) -> bool:
        known = self._known.get(record_id, [])
        if [sha256] == known[-1:]:
            return True
        with self.archive.reading() as conn:  # taken in or revised since the log was read?
            now = beside.states(chain.lines(conn, record_id))
        return sha256 in now.get(record_id, [])[len(known) :]


def _goes_on(turns: Iterator[None]) -> bool:
    """Take a turn; whether there may be another."""
    for _ in turns:
        return True
    return False
