"""A second copy, made while the archive is in use."""

import errno
import os
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

from ptmark.archive.beside import file_key, line_bytes, line_key, states
from ptmark.archive.chain import Line, lines
from ptmark.archive.headed import note_head
from ptmark.archive.opening import Archive
from ptmark.archive.rereading import sha256_of
from ptmark.archive.store import FolderStore, is_line, key_for, make_folder, sync_folder
from ptmark.errors import ArchiveError
from ptmark.files import open_alone

__all__ = ["back_up"]

_TURNS = 3


def back_up(archive: Archive, folder: Path) -> int:
    """Copy the archive as it stands at one moment; others may go on writing.

    The database is copied by SQLite's own backup into a file beside, then the photos it names,
    and only then does it take its name: a copy that is cut off leaves the last one whole.

    Parameters
    ----------
    archive : Archive
        On SQLite; of another database, its own tools make the copy.
    folder : Path
        Becomes, or is, an archive of its own; photos that are there already are not copied.

    Returns
    -------
    int
        Photos in the copy.

    Raises
    ------
    ArchiveError
        If a photo is missing or changed, the copy cannot be written, or another archive lies
        there: no record that only that one has may go with its database. Also while another
        copy is being made there.
    """
    if archive.file is None:
        raise ArchiveError(
            "only SQLite is copied here",
            where=archive.engine.url.render_as_string(hide_password=True),
            mend="let pg_dump copy the database, and then copy the photo store",
        )
    _refuse_what_is_there(archive, archive.file, folder)
    with archive.guarded(), _said_of_copy(folder), _alone(folder):
        _refuse_what_is_there(archive, archive.file, folder)  # another copy may have ended
        return _in_turns(archive, folder, _TURNS)


@contextmanager
def _alone(folder: Path) -> Iterator[None]:
    """Keep the folder from another copy: the older of two that end at once could stay there."""
    make_folder(folder)
    try:
        lock = open_alone(folder / "archive.copying")
    except BlockingIOError as found:
        raise ArchiveError(
            "another copy is being made there",
            where=str(folder),
            mend="wait until it ends, or choose another folder",
        ) from found
    with lock:
        yield


def _refuse_what_is_there(archive: Archive, file: Path, folder: Path) -> None:
    target = folder / "archive.sqlite"
    photos, own = folder / "photos", archive.store.path("")
    among = own is not None and folder.resolve().is_relative_to(own.resolve())
    if among or (target.exists() and target.samefile(file)):
        raise ArchiveError(
            "is the archive itself", where=str(folder), mend="choose another folder"
        )
    if own is not None and photos.exists() and photos.samefile(own):
        raise ArchiveError(
            "holds the archive's own photos: no second copy of them would be made",
            where=str(photos),
            mend="choose another folder",
        )
    if target.exists():
        _refuse_another(archive, target)
    else:
        _refuse_others_photos(archive, FolderStore(photos))


def _in_turns(archive: Archive, folder: Path, left: int) -> int:
    """The copy, begun anew where a deletion by rule took away what it was about to copy."""
    told: list[Line] = []
    try:
        with archive.guarded(), _said_of_copy(folder):
            return _copied(archive, folder, told)
    except ArchiveError:
        if left == 1 or not _deleted_since(archive, told):
            raise
    return _in_turns(archive, folder, left - 1)


def _copied(archive: Archive, folder: Path, told: list[Line]) -> int:
    """Make the copy; ``told`` takes the log as it was at that moment."""
    target, beside = folder / "archive.sqlite", folder / "archive.sqlite.part"
    beside.unlink(missing_ok=True)
    with (
        closing(archive.engine.raw_connection()) as here,
        closing(sqlite3.connect(beside)) as there,
    ):
        here.driver_connection.backup(there)  # type: ignore[union-attr]
        there.execute("PRAGMA journal_mode=DELETE")  # one file, no log beside it
        photos = there.execute("SELECT sha256, suffix FROM photo ORDER BY sha256").fetchall()
        told += _log(there)
    store = FolderStore(folder / "photos")
    for sha256, suffix in photos:
        key = key_for(sha256, suffix)
        store.put(key, _whole(archive, key, sha256))
    for sha256 in (one for own in states(told).values() for one in own):
        store.put(file_key(sha256), _whole(archive, file_key(sha256), sha256))
    for line in told:
        store.put(line_key(line), line_bytes(line))
    with beside.open("rb+") as made:
        os.fsync(made.fileno())
    for end in ("sqlite-wal", "sqlite-shm", "seal", "head"):
        (folder / f"archive.{end}").unlink(missing_ok=True)
    beside.replace(target)
    sync_folder(folder)
    if told:
        note_head(target, told[-1].seq, told[-1].sha256)
    return len(photos)


def _deleted_since(archive: Archive, told: list[Line]) -> bool:
    """Whether a rule took something away meanwhile, so that the copy lacks its photos."""
    with archive.reading() as conn:
        end = told[-1].seq if told else 0
        return any(line.action == "deleted" and line.seq > end for line in lines(conn))


@contextmanager
def _said_of_copy(folder: Path) -> Iterator[None]:
    """A full disk is that of the copy: nothing else is written to."""
    try:
        yield
    except (OSError, sqlite3.Error) as found:
        full = getattr(found, "sqlite_errorcode", None) == sqlite3.SQLITE_FULL
        if full or (isinstance(found, OSError) and found.errno == errno.ENOSPC):
            raise ArchiveError(
                "there is no room for the copy",
                where=str(folder),
                mend="make room, or choose another folder; the last copy there stands",
            ) from found
        raise


def _refuse_another(archive: Archive, there: Path) -> None:
    """Only an earlier copy is replaced: one whose whole log stands in this one's too."""
    with archive.reading() as conn:
        mine = {line.seq: line for line in lines(conn)}
    try:
        with closing(sqlite3.connect(f"{there.absolute().as_uri()}?mode=ro", uri=True)) as raw:
            earlier = all(mine.get(line.seq) == line for line in _log(raw))
    except sqlite3.Error as found:
        raise ArchiveError(
            f"holds a database that cannot be read ({found})",
            where=str(there),
            mend="choose another folder, or move that one away",
        ) from found
    if not earlier:
        raise _another(there)


def _refuse_others_photos(archive: Archive, there: FolderStore) -> None:
    """Where a database was lost, it is made again from the lines beside its photos alone."""
    with archive.reading() as conn:
        mine = {line_key(line) for line in lines(conn)}
    if any(is_line(key) and key not in mine for key in there.names("log")):
        raise _another(there.folder)


def _another(where: Path) -> ArchiveError:
    return ArchiveError(
        "holds another archive, or a copy that was written to since",
        where=str(where),
        mend="choose another folder; export and import carry records from one to another",
    )


def _log(raw: sqlite3.Connection) -> list[Line]:
    return [Line(*row) for row in raw.execute("SELECT * FROM audit ORDER BY seq")]


def _whole(archive: Archive, key: str, sha256: str) -> bytes:
    try:
        data = archive.store.read(key)
    except FileNotFoundError:
        data = b""
    if sha256_of(data) != sha256:
        raise ArchiveError(
            "a photo or a record's file is missing or changed",
            where=key,
            mend="repair the archive before copying it",
        )
    return data
