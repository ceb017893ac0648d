"""Taking a record in: photos first, then its rows in one transaction; durable at the end."""

from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, Dialect, bindparam, select

from ptmark.archive.beside import file_key
from ptmark.archive.derive import Derived, derived
from ptmark.archive.opening import Archive
from ptmark.archive.proving import proof
from ptmark.archive.rows import document_of, note_photos, photo_rows, table, write_rows
from ptmark.archive.server import refused, tried_again
from ptmark.archive.spelled import Spelled, answer, spelled
from ptmark.archive.store import key_for, suffix_of
from ptmark.errors import ArchiveError
from ptmark.record import Record, follow, read_photo, verify_document
from ptmark.record.store import parsed, read_bytes

__all__ = ["Added", "add_record"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Added:
    """What came of it: ``state`` "new", "revised", "there" (the same) or "later" (is kept).

    ``placed_otherwise`` where its bundle says that it lies elsewhere on the part than this
    archive, which keeps its own.
    """

    record_id: str
    revision: int
    sha256: str
    state: str
    placed_otherwise: bool = False


def add_record(
    archive: Archive, path: Path, photos: Path | None = None, *, replaces: str = ""
) -> Added:
    """Take a record's file and its photos in.

    Parameters
    ----------
    archive : Archive
    path : Path
        The record's file; kept byte for byte.
    photos : Path or None
        Folder of its photos; the record's own if None.
    replaces : str
        SHA-256 of the file that this one takes the place of. Needed only where that one is
        not signed: between signed ones the chain of revisions tells.

    Returns
    -------
    Added
        Record and photos are durable by then. Taking the same in again changes nothing.

    Raises
    ------
    ArchiveError
        If the record was tampered with, a photo is missing, or another state of the record
        is kept that this one does not follow: nobody's work is overwritten.
    RecordError
        If the file is no record.
    """
    data = read_bytes(path)
    document = parsed(data, str(path))
    record = Record.from_json(document, where=str(path))
    for one in verify_document(document, data, fits=True):
        if one.holds is False:
            says = f"{one.where} {one.says}"
            raise ArchiveError(says, where=str(path), mend="take a whole copy of the record")
    rows = derived(document, data)
    folder = photos or path.absolute().parent
    try:
        return tried_again(lambda: _take_in(archive, record, rows, data, folder, replaces))
    except ArchiveError as found:
        if not refused(found.__cause__):
            raise
        raise ArchiveError(
            f"holds a text that this server cannot keep: {found.what}",
            where=str(path),
            mend="take NUL characters out of its texts, and numbers or names of thousands of"
            " letters",
        ) from found


def _take_in(
    archive: Archive, record: Record, rows: Derived, data: bytes, folder: Path, replaces: str
) -> Added:
    kept = _keep_photos(archive, rows, folder)
    own = file_key(rows.inspection["sha256"])
    with archive.guarded():
        archive.store.put(own, data)
    with archive.writing() as conn:
        before = _kept(conn, record.id)
        state = "new" if before is None else _standing(conn, before, record, rows, replaces)
        if state in {"new", "revised"}:
            number = None if before is None else before.id
            _still_there(archive, [own, *(key_for(p["sha256"], p["suffix"]) for p in kept)])
            note_photos(conn, kept)
            number = write_rows(conn, rows, data, number)
            archive.log(
                conn,
                "added" if before is None else "revised",
                record.id,
                revision=record.revision,
                sha256=rows.inspection["sha256"],
                replaces=None if before is None else before.sha256,
                photos=[one["sha256"] for one in rows.photos],
                **proof(conn, number),
            )
    if before is not None and state == "later":
        return Added(
            record_id=record.id, revision=before.revision, sha256=before.sha256, state=state
        )
    sha256 = rows.inspection["sha256"]
    return Added(record_id=record.id, revision=record.revision, sha256=sha256, state=state)


def _keep_photos(archive: Archive, rows: Derived, folder: Path) -> list[dict[str, Any]]:
    """Put every photo of the record into the store; the rows of those that are new there."""
    with archive.reading() as conn:
        there = {row.sha256: row for row in photo_rows(conn, rows.photos)}
    kept = []
    for one in rows.photos:
        sha256 = one["sha256"]
        found = read_photo(folder, one["name"], sha256)
        if found is None and sha256 in there:
            continue
        if found is None:
            raise ArchiveError(
                f"the photo {one['name']} with SHA-256 {sha256[:12]}… is not there",
                where=str(folder),
                mend="give its folder with --photos",
            )
        file, data = found
        suffix = there[sha256].suffix if sha256 in there else suffix_of(file.name)
        with archive.guarded():
            archive.store.put(key_for(sha256, suffix), data)
        kept.append({"sha256": sha256, "suffix": suffix, "bytes": len(data)})
    return kept


def _still_there(archive: Archive, keys: list[str]) -> None:
    """Within the writer's turn: a deletion by rule may have taken a file since it was put."""
    for key in keys:
        if not archive.store.has(key):
            raise ArchiveError("was deleted meanwhile", where=key, mend="add the record again")


def _kept(conn: Connection, record_id: str) -> Any:  # noqa: ANN401 - a row, or None
    """The row of this record; on a server others wait until this writer is done with it."""
    return answer(conn, _known(conn.dialect), {"record_id": record_id}).first()


@lru_cache(8)
def _known(dialect: Dialect) -> Spelled:
    one = table("inspection")
    chosen = select(one.c.id, one.c.sha256, one.c.revision)
    chosen = chosen.where(one.c.record_id == bindparam("record_id"))
    return spelled(chosen.with_for_update(), dialect)


def _standing(
    conn: Connection,
    before: Any,  # noqa: ANN401 - a row
    record: Record,
    rows: Derived,
    replaces: str,
) -> str:
    """Whether the new file follows the one that is kept, is it, or came before it."""
    if before.sha256 == rows.inspection["sha256"]:
        return "there"
    kept = Record.from_json(parsed(document_of(conn, record.id), record.id), where=record.id)
    if before.sha256 == replaces and not kept.signatures and record.history == kept.history:
        return "revised"  # an open revision, by one who has seen what it takes the place of
    # `follow` gives back the very record it was given where that carries the other one.
    if follow(kept, record) is record:
        return "revised"
    if follow(record, kept) is kept:
        return "later"
    raise ArchiveError(
        f"another state is kept: revision {before.revision}, file {before.sha256[:12]}…",
        where=record.id,
        mend="look at both; what is not signed is replaced with --replaces and that hash"
        f" ({before.sha256})",
    )
