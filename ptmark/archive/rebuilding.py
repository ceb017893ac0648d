"""A database made again from the store alone: the log, records, photos, rules and holds."""

from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, insert, select

from ptmark.archive.beside import file_key, line_bytes, line_key, seq_of, states
from ptmark.archive.chain import Line, append, head
from ptmark.archive.derive import derived
from ptmark.archive.lines_beside import broken, chained, known_before, read_lines, untold
from ptmark.archive.named import replayed
from ptmark.archive.opening import Archive, open_archive, places_of
from ptmark.archive.rereading import sha256_of
from ptmark.archive.rows import document_of, note_photos, table, write_rows
from ptmark.archive.store import Store, is_content, key_for, suffix_of
from ptmark.archive.verifying import verify
from ptmark.errors import ArchiveError, PtmarkError
from ptmark.record.store import parsed

__all__ = ["Rebuilt", "rebuild"]

_MANY = 1000  # rows in one statement


@dataclass(slots=True)
class Rebuilt:
    """What was made again; ``aside`` is the database that was there before, if any.

    ``lost`` names records whose file is not whole in the store, nor in the database that was
    there; ``broken`` are numbers of lines that do not follow the one before; ``damaged`` are
    files of lines that cannot be read, left as they are, and ``untold`` records' files that
    none of the others tells of, told only where lines are wanting.
    """

    records: int = 0
    lines: int = 0
    aside: Path | None = None
    lost: list[str] = field(default_factory=list)
    broken: list[int] = field(default_factory=list)
    damaged: list[str] = field(default_factory=list)
    untold: list[str] = field(default_factory=list)


def rebuild(
    folder: Path | None = None, *, database: str = "", store: str = "", by: str = ""
) -> Rebuilt | None:
    """Make the database again from the files beside the photos.

    Parameters
    ----------
    folder, database, store, by
        As `open_archive` takes them.

    Returns
    -------
    Rebuilt or None
        None where the database is whole and knows all that lies there: nothing is changed then.
        A file that was there is put aside, not overwritten.

    Raises
    ------
    ArchiveError
        If no log lies beside the photos, a server's database is not empty, or the one there is
        of a newer version.
    """
    url, kept, file = places_of(folder, database, store)
    found, damaged = read_lines(kept)
    if not found:
        raise ArchiveError(
            f"cannot be read, and no other line of the log ({damaged[0]})"
            if damaged
            else "no log lies beside the photos",
            where=kept.url,
            mend="take the backup's folder",
        )
    end = max(seq_of(key) for key in [*map(line_key, found), *damaged])
    if file is None:
        with open_archive(database=database, store=kept.url, by=by) as archive:
            return None if _knows(archive, end) else _filled(archive, found, damaged)
    if file.is_file() and _is_whole(file, kept, end):
        return None
    made = file.with_name("rebuilt.sqlite")
    for one in _parts(made):
        one.unlink(missing_ok=True)
    with (
        open_archive(database=str(url.set(database=str(made))), store=kept.url, by=by) as new,
        _as_it_was(file, kept) as before,
    ):
        made_again = _filled(new, found, damaged, before)
    made_again.aside = _put_aside(file)
    for one in reversed(_parts(made)):  # the database itself last
        if one.exists():
            one.rename(file.with_name(one.name.replace("rebuilt", file.stem)))
    return made_again


def _parts(file: Path) -> list[Path]:
    """A database's file and those that go with it."""
    beside = [file.with_name(f"{file.name}-{end}") for end in ("wal", "shm")]
    return [file, *beside, file.with_suffix(".head"), file.with_suffix(".seal")]


def _is_whole(file: Path, store: Store, end: int) -> bool:
    with _as_it_was(file, store) as archive:
        return archive is not None and _knows(archive, end) and verify(archive).whole


@contextmanager
def _as_it_was(file: Path, store: Store) -> Iterator[Archive | None]:
    """The database that is there, for reading; None where it cannot be opened."""
    try:
        archive = open_archive(database=f"sqlite:///{file}", store=store.url, read_only=True)
    except ArchiveError as found:
        if "is newer than" in found.what:  # another ptmark's, which reads it
            raise
        yield None
        return
    with archive:
        yield archive


def _knows(archive: Archive, end: int) -> bool:
    try:
        with archive.reading() as conn:
            seq, _ = head(conn)
    except ArchiveError:
        return False
    return seq >= end - 1  # the last one may be a writer's that was cut off


def _put_aside(file: Path) -> Path | None:
    """Rename a database with its log, so that the new one does not take that for its own."""
    number = 1
    while (to := file.with_name(f"{file.stem}-broken-{number}{file.suffix}")).exists():
        number += 1
    for one in reversed(_parts(file)):
        if one.exists():
            one.rename(one.with_name(one.name.replace(file.stem, to.stem, 1)))
    return to if to.exists() else None


def _filled(
    archive: Archive, read: list[Line], damaged: list[str], before: Archive | None = None
) -> Rebuilt:
    if before is not None:
        read = read + known_before(before, read, damaged)
        damaged = sorted(set(damaged) - set(map(line_key, read)))
    told = chained(read)
    found = Rebuilt(lines=len(told), broken=broken(told), damaged=damaged)
    with archive.writing(alone=True) as conn:
        audit = table("audit")
        if conn.execute(select(audit.c.seq).limit(1)).first() is not None:
            raise ArchiveError(
                "the database is not empty",
                where=archive.engine.url.render_as_string(hide_password=True),
                mend="name an empty one with --database, then put it in the other's place",
            )
        for line in told:
            archive.store.put(line_key(line), line_bytes(line))
        _write_log(conn, told)
        for name, rows in replayed(told).items():
            if rows:
                conn.execute(insert(table(name)), list(rows.values()))
        endings = dict(_endings(archive.store))
        for record_id, files in states(told).items():
            data = _whole(archive, before, record_id, files[-1])
            if data:
                _write_record(archive, conn, record_id, data, endings)
                found.records += 1
            else:
                found.lost.append(record_id)
        if found.damaged or found.broken:
            found.untold = untold(archive.store, told)
        _stand_in(archive, conn, found.damaged)
        archive.log(conn, "rebuilt", "database", lines=len(told), records=found.records)
    return found


def _stand_in(archive: Archive, conn: Connection, damaged: list[str]) -> None:
    """Lines in place of damaged ones at the end, so that what is added comes after all."""
    for key in damaged:
        if seq_of(key) > head(conn)[0]:
            line = append(conn, archive.by, "rebuilt", "log", {"damaged": key})
            archive.store.put(line_key(line), line_bytes(line))


def _write_log(conn: Connection, told: list[Line]) -> None:
    """The lines as they are; on a server its rules are for new ones, in the writer's name."""
    audit = table("audit")
    rows = [line.to_row() for line in told]
    server = conn.dialect.name == "postgresql"
    if server:
        conn.exec_driver_sql("ALTER TABLE audit DISABLE TRIGGER USER")
    for first in range(0, len(rows), _MANY):
        conn.execute(insert(audit), rows[first : first + _MANY])
    if server:
        conn.exec_driver_sql("ALTER TABLE audit ENABLE TRIGGER USER")


def _endings(store: Store) -> Iterator[tuple[str, str]]:
    """Ending of each photo in the store, by its hash."""
    for key in store.names():
        sha256, _, suffix = key.rpartition("/")[2].partition(".")
        if is_content(key) and suffix != "json":
            yield sha256, suffix


def _whole(archive: Archive, before: Archive | None, record_id: str, sha256: str) -> bytes:
    """A record's file; from the database that was there, and put back, where it is lost."""
    with suppress(OSError):
        data = archive.store.read(file_key(sha256))
        if sha256_of(data) == sha256:
            return data
    if before is None:
        return b""
    with suppress(PtmarkError, ValueError):
        with before.reading() as conn:
            data = document_of(conn, record_id)
        if sha256_of(data) == sha256:
            archive.store.put(file_key(sha256), data)
            return data
    return b""


def _write_record(
    archive: Archive, conn: Connection, record_id: str, data: bytes, endings: dict[str, str]
) -> None:
    """Write a record's rows from its file."""
    rows = derived(parsed(data, record_id), data)
    note_photos(conn, [_photo(archive.store, one, endings) for one in rows.photos])
    write_rows(conn, rows, data)


def _photo(store: Store, one: dict[str, Any], endings: dict[str, str]) -> dict[str, Any]:
    sha256 = one["sha256"]
    if sha256 not in endings:  # lost: verifying will say so
        return {"sha256": sha256, "suffix": suffix_of(one["name"]), "bytes": 0}
    size = store.size(key_for(sha256, endings[sha256]))
    return {"sha256": sha256, "suffix": endings[sha256], "bytes": size}
