"""Mending what verifying finds: rows from their records, the rest from a second copy."""

import sqlite3
from contextlib import closing, suppress
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, select

from ptmark.archive.beside import file_key, line_bytes, line_key, states
from ptmark.archive.chain import FIRST, Line, lines, link
from ptmark.archive.derive import derived
from ptmark.archive.findings import Verified
from ptmark.archive.named import NAMED, replayed
from ptmark.archive.opening import Archive, open_archive
from ptmark.archive.proving import proof
from ptmark.archive.rereading import line_says, sha256_of
from ptmark.archive.rows import document_of, note_photos, table, write_rows
from ptmark.archive.store import key_for
from ptmark.archive.tails import TAILS, mend_tails
from ptmark.archive.verifying import verify
from ptmark.errors import ArchiveError, PtmarkError
from ptmark.record.store import parsed

__all__ = ["repair"]

# One thing that cannot be mended keeps no other from it; verifying says it again.
_UNMENDED = (PtmarkError, ValueError, LookupError, TypeError)


def repair(archive: Archive, copy: Path | None = None) -> tuple[list[str], Verified]:
    """Mend what `verify` finds: rows from their records, the rest from a second copy.

    Parameters
    ----------
    archive : Archive
    copy : Path or None
        Folder of a second copy; without it only what the archive itself still holds is mended.

    Returns
    -------
    (list of str, Verified)
        What was mended, and what verifying finds afterwards.

    Raises
    ------
    ArchiveError
        If the database may only be read.
    """
    _refuse_read_only(archive)
    found = verify(archive)
    other = None if copy is None else open_archive(copy, read_only=True)
    mended = []
    try:
        subjects = dict.fromkeys(p.subject for p in found.problems if p.kind != "orphaned")
        for subject in sorted(subjects, key="log".__ne__):  # without it nothing is written
            with suppress(*_UNMENDED):
                if _mend(archive, other, subject):
                    mended.append(subject)
    finally:
        if other is not None:
            other.close()
    if any(p.subject == "database" for p in found.problems):
        with suppress(*_UNMENDED):
            mended += _rebuilt(archive)
    return mended, verify(archive)


def _refuse_read_only(archive: Archive) -> None:
    """Said before all is read; any other error is what is to be mended."""
    if archive.file is None:
        return
    with archive.guarded(), closing(sqlite3.connect(archive.file)) as raw:
        try:
            raw.execute("DELETE FROM hold WHERE 0")
        except sqlite3.Error as found:
            if found.sqlite_errorcode == sqlite3.SQLITE_READONLY:
                raise


def _mend(archive: Archive, other: Archive | None, subject: str) -> bool:
    if subject in {"database", "store"}:
        return False
    if subject == "log":
        return _mend_log(archive)
    if subject in NAMED:
        return _mend_named(archive, subject)
    if subject in TAILS:
        with archive.writing(alone=True) as conn:
            mend_tails(conn, subject)
            archive.log(conn, "repaired", subject)
        return True
    with archive.reading() as conn:
        photo = table("photo")
        row = conn.execute(select(photo).where(photo.c.sha256 == subject)).first()
        files = states(lines(conn, subject)).get(subject, [])
    if row is not None:
        return _mend_photo(archive, other, row)
    return bool(files) and _mend_record(archive, other, subject, files)


def _mend_log(archive: Archive) -> bool:
    """Lines beside the photos from a log that is whole in the database."""
    with archive.reading() as conn:
        told = _whole_log(conn)
    wrong = [line for line in told if line_says(archive.store, line)]
    with archive.guarded():
        for line in wrong:
            archive.store.put(line_key(line), line_bytes(line))
    return bool(wrong)


def _whole_log(conn: Connection) -> list[Line]:
    """The lines; ArchiveError where the chain is broken, for then nothing can rest on them."""
    told, previous = [], FIRST
    for line in lines(conn):
        if line.previous != previous or link(line) != line.sha256:
            raise ArchiveError(f"line {line.seq} does not fit the chain", where="log")
        previous = line.sha256
        told.append(line)
    return told


def _mend_named(archive: Archive, name: str) -> bool:
    one = table(name)
    with archive.writing() as conn:
        rows = list(replayed(_whole_log(conn))[name].values())
        conn.execute(one.delete())
        if rows:
            conn.execute(one.insert(), rows)
        archive.log(conn, "repaired", name)
    return True


def _mend_photo(archive: Archive, other: Archive | None, row: Any) -> bool:  # noqa: ANN401 - a row
    key = key_for(row.sha256, row.suffix)
    for source in (archive, other):
        if source is None:
            continue
        try:
            data = source.store.read(key)
        except OSError:
            continue
        if sha256_of(data) != row.sha256:
            continue
        archive.store.put(key, data)
        photo = table("photo")
        with archive.writing() as conn:
            mine = photo.c.sha256 == row.sha256
            conn.execute(photo.update().where(mine).values(bytes=len(data)))
            archive.log(conn, "repaired", row.sha256)
        return True
    return False


def _mend_record(
    archive: Archive, other: Archive | None, record_id: str, files: list[str]
) -> bool:
    whole = {sha256: _state(archive, other, record_id, sha256) for sha256 in files}
    for sha256, data in whole.items():
        if data:
            archive.store.put(file_key(sha256), data)
    newest = whole[files[-1]]
    if not newest:
        return False
    rows = derived(parsed(newest, record_id), newest)
    kept = [] if other is None else _photo_rows(other, rows.photos)
    for one in kept:
        key = key_for(one["sha256"], one["suffix"])
        if other is not None and not archive.store.has(key):
            data = _kept(other, key)  # that copy may be damaged too
            if sha256_of(data) == one["sha256"]:
                archive.store.put(key, data)
    inspection = table("inspection")
    with archive.writing(alone=True) as conn:
        if states(lines(conn, record_id)).get(record_id) != files:
            return False  # revised or deleted meanwhile: what was read before is not put back
        chosen = select(inspection.c.id).where(inspection.c.record_id == record_id)
        number = conn.execute(chosen).scalar()
        note_photos(conn, kept)
        number = write_rows(conn, rows, newest, number)
        archive.log(conn, "repaired", record_id, sha256=files[-1], **proof(conn, number))
    return all(whole.values())


def _state(archive: Archive, other: Archive | None, record_id: str, sha256: str) -> bytes:
    """A record's file from wherever it is whole; empty where it is not."""
    for one in (archive, other):
        if one is not None:
            for data in (_file(one, record_id), _kept(one, file_key(sha256))):
                if sha256_of(data) == sha256:
                    return data
    return b""


def _kept(archive: Archive, key: str) -> bytes:
    try:
        return archive.store.read(key)
    except OSError:
        return b""


def _file(archive: Archive, record_id: str) -> bytes:
    try:
        with archive.reading() as conn:
            return document_of(conn, record_id)
    except PtmarkError:
        return b""


def _photo_rows(other: Archive, photos: list[dict[str, Any]]) -> list[dict[str, Any]]:
    photo = table("photo")
    chosen = select(photo).where(photo.c.sha256.in_([one["sha256"] for one in photos]))
    with other.reading() as conn:
        return [dict(row) for row in conn.execute(chosen).mappings()]


def _rebuilt(archive: Archive) -> list[str]:
    """Write the database file anew from its content: indexes and what nothing reads."""
    if archive.file is None:
        return []
    with archive.guarded(), closing(sqlite3.connect(archive.file)) as raw:
        archive.file.with_suffix(".seal").unlink(missing_ok=True)
        raw.execute("REINDEX")
        raw.execute("INSERT INTO words(words) VALUES ('rebuild')")
        raw.commit()
        raw.execute("VACUUM")
    return ["database"]
