"""Opening an archive: its database and its photo store, each by URL, without any set-up."""

import os
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from types import TracebackType
from typing import Any

from sqlalchemy import Connection, Engine, PoolProxiedConnection, create_engine, event, exc
from sqlalchemy.engine import URL

from ptmark.archive import chain, server
from ptmark.archive.beside import keep_line, look_ahead
from ptmark.archive.headed import file_number, note_head, noted_head
from ptmark.archive.migrating import NEWEST, at_version, migrate
from ptmark.archive.sealing import seal
from ptmark.archive.server import login_of, server_engine, snapshot, take_turn, tried_again
from ptmark.archive.store import Store, make_folder, open_store
from ptmark.errors import ArchiveError
from ptmark.places import user_folder

__all__ = ["Archive", "open_archive", "places_of"]

_SEALED_AT_ONCE = 32 * 2**20  # bytes; hashing them takes some tens of milliseconds
_NONE = "name its folder, or make a lost database again: ptmark archive rebuild"
_WAIT_MS = 30_000  # a writer waits this long for the one before it


class Archive:
    """An open archive; use it as a context manager, from any thread.

    Attributes
    ----------
    engine : sqlalchemy.Engine
    store : Store
        The photos.
    by : str
        Who works with it, for the audit log.
    file : Path or None
        The database's file, where it is SQLite.
    """

    def __init__(self, engine: Engine, store: Store, by: str, file: Path | None) -> None:
        self.engine, self.store, self.by, self.file = engine, store, by, file
        self.idle: list[PoolProxiedConnection] = []  # those of a file that reads left open
        self._wrote = False
        self._is: tuple[int, int] | None = None  # which file it is, by device and number

    def __enter__(self) -> "Archive":
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()

    def close(self) -> None:
        """Let go of the database; a small one that was written to is sealed."""
        while self.idle:
            self.idle.pop().close()
        if self._wrote and self.file is not None:
            with suppress(ArchiveError), self.guarded():
                if self.file.stat().st_size < _SEALED_AT_ONCE:
                    seal(self.engine, self.file)
        self.engine.dispose()

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """A connection that sees one state of the archive throughout."""
        with self.guarded(), self.engine.connect() as plain:
            conn = snapshot(plain)
            with conn.begin():
                yield conn

    @contextmanager
    def writing(self, *, alone: bool = False) -> Iterator[Connection]:
        """A transaction: durable when this ends, undone where an exception leaves it.

        On a server writers work side by side, but for one that asks to be ``alone``.
        """
        with self.guarded(), self.engine.connect() as plain:
            conn = plain.execution_options(write=True)
            with conn.begin():
                take_turn(conn, alone=alone)
                self.refuse_moved()
                yield conn
                end = None if self.file is None else chain.head(conn)
        self._wrote = True
        if self.file is not None and end is not None:
            note_head(self.file, *end)

    def is_moved(self) -> bool:
        """Once opened, a file is written to wherever it went, or although it was deleted."""
        if self.file is None:
            return False
        found = file_number(self.file)
        self._is = self._is or found
        return found is None or found != self._is

    def refuse_moved(self) -> None:
        """Let nothing be acknowledged that would lie in no archive afterwards."""
        if self.is_moved():
            raise ArchiveError(
                "was moved, replaced or taken away since it was opened",
                where=str(self.file),
                mend="see that its folder is there, and open it again",
            )

    def log(self, conn: Connection, action: str, subject: str, **detail: Any) -> None:  # noqa: ANN401 - JSON
        """Add to the audit log; last in a transaction, as on a server writers queue for it."""
        ahead = look_ahead(self.store, conn)
        line = chain.append(conn, self.by, action, subject, detail)
        noted = None if self.file is None else noted_head(self.file)
        keep_line(self.store, line, 0 if noted is None else noted[0], ahead)

    @contextmanager
    def guarded(self) -> Iterator[None]:
        """Errors of the database and the system as one of the family."""
        where = self.file or self.engine.url.render_as_string(hide_password=True)
        try:
            yield
        # A damaged name makes SQLite's own message undecodable, a damaged size asks for more
        # memory than there is.
        except (exc.DBAPIError, sqlite3.Error, UnicodeDecodeError, MemoryError) as found:
            plain = getattr(found, "orig", found)
            damaged = isinstance(plain, UnicodeDecodeError | MemoryError)
            said = "malformed" if damaged else str(plain).partition("\nCONTEXT")[0]
            raise ArchiveError(
                f"the database says: {said}",
                where=str(where),
                mend=_mend(said),
            ) from found
        except UnicodeEncodeError as found:
            raise ArchiveError(f"{found.object!r} is no text", mend="type it again") from found
        except OSError as found:
            place = str(found.filename or where)
            far = "://" in place
            ask = "see that the store can be reached" if far else "make room"
            raise ArchiveError(
                f"cannot be read or written ({found.strerror or found})",
                where=place,
                mend=f"{ask}, or ask for permission; what was kept before stands",
            ) from found


def _mend(said: str) -> str:
    if "full" in said:
        return "make room; what was kept before stands"
    if "locked" in said or "busy" in said:
        return "another program is writing: try again"
    if "readonly" in said or "read-only" in said or "read only" in said:
        return "ask for permission to write there"
    if any(one in said for one in ("permission denied", "the role of", "admin option")):
        return "ask who runs the server for the role"
    if "connection" in said:
        return "see that the server runs and can be reached, then try again"
    if "malformed" in said or "not a database" in said:
        return "take it back from the backup: ptmark archive repair --from FOLDER"
    return "see `ptmark archive verify`"


def open_archive(
    folder: Path | None = None,
    *,
    database: str = "",
    store: str = "",
    by: str = "",
    read_only: bool = False,
) -> Archive:
    """Open an archive; the default one is made where there is none yet.

    Parameters
    ----------
    folder : Path or None
        Holds ``archive.sqlite`` and ``photos``; ``archive`` in the user's folder if None.
    database : str
        SQLAlchemy's URL of another database, or PTMARK_ARCHIVE_DATABASE.
    store : str
        Folder or fsspec URL of another photo store, or PTMARK_ARCHIVE_STORE.
    by : str
        Who works with it; else the name of the account.
    read_only : bool
        Make and change nothing.

    Raises
    ------
    ArchiveError
        If it cannot be opened, is of a newer version, or does not exist and may not be made.
    """
    url, kept, file = places_of(folder, database, store)
    if file is not None:
        url = _sqlite(url, file, read_only=read_only)
    archive = Archive(_engine(url), kept, by or _account(), file)
    try:
        tried_again(lambda: _bring_up(archive, read_only=read_only))
        if not read_only:
            archive.refuse_moved()
    except BaseException:
        archive.close()
        raise
    return archive


def places_of(folder: Path | None, database: str, store: str) -> tuple[URL, Store, Path | None]:
    """Database, store and the database's file, if it is one, as `open_archive` finds them."""
    home = (folder or user_folder() / "archive").absolute()
    asked = "" if folder else os.environ.get("PTMARK_ARCHIVE_DATABASE", "")
    asked_store = "" if folder else os.environ.get("PTMARK_ARCHIVE_STORE", "")
    url = server.database_url(database or asked or f"sqlite:///{home / 'archive.sqlite'}")
    kept = open_store(store or asked_store or str(home / "photos"))
    file = Path(str(url.database)) if url.get_backend_name() == "sqlite" else None
    return url, kept, file


def _account() -> str:
    import getpass

    try:
        return getpass.getuser()
    except (OSError, KeyError):
        return "unknown"


def _sqlite(url: URL, file: Path, *, read_only: bool) -> URL:
    if not read_only:
        try:
            make_folder(file.parent)
        except OSError as found:
            raise ArchiveError(
                f"cannot be made ({found.strerror})",
                where=str(file.parent),
                mend="choose another",
            ) from found
        return url
    if not file.is_file():
        raise ArchiveError("there is no archive", where=str(file), mend=_NONE)
    query = {"mode": "ro", "uri": "true"}
    lone = not Path(f"{file}-wal").exists()
    if lone and not os.access(file.parent, os.W_OK):
        query["immutable"] = "1"  # a read-only medium: no lock can be had, and none is needed
    return url.set(database=f"file:{file}", query=query)


def _engine(url: URL) -> Engine:
    if url.get_backend_name() != "sqlite":
        return server_engine(url)
    engine = create_engine(url, connect_args={"timeout": _WAIT_MS / 1000})
    read_only = "mode" in url.query

    @event.listens_for(engine, "connect")
    def _connected(raw: Any, _record: object) -> None:  # noqa: ANN401 - the driver's
        raw.isolation_level = None  # transactions begin where we say
        pragmas = ["foreign_keys=ON", "synchronous=FULL", "cache_size=-65536"]
        pragmas += [] if read_only else ["journal_mode=WAL", "secure_delete=ON"]
        for pragma in pragmas:
            raw.execute(f"PRAGMA {pragma}")

    @event.listens_for(engine, "begin")
    def _begun(conn: Connection) -> None:
        # A writer takes its turn at once: two that read first would refuse each other later.
        write = conn.get_execution_options().get("write")
        conn.exec_driver_sql("BEGIN IMMEDIATE" if write else "BEGIN")

    return engine


def _bring_up(archive: Archive, *, read_only: bool) -> None:
    with archive.reading() as conn:
        version = at_version(conn)
        login = login_of(conn)
    if login:
        name = archive.by.removesuffix(f" ({login})")  # a try before may have named it
        archive.by = login if name in {login, _account()} else f"{name} ({login})"
    where = str(archive.file or "database")
    if version > NEWEST:
        raise ArchiveError(
            f"its version {version} is newer than {NEWEST}", where=where, mend="update ptmark"
        )
    if version == NEWEST:
        return
    if read_only:
        raise ArchiveError(
            f"its version {version or 'none'} is older than {NEWEST}",
            where=where,
            mend="run `ptmark archive verify` once: it brings it up to date",
        )
    with archive.guarded(), archive.engine.connect() as plain:
        conn = plain.execution_options(write=True)
        with conn.begin():
            take_turn(conn, alone=True)
            if at_version(conn) != NEWEST:  # another process may have been quicker
                if archive.file is not None:
                    archive.file.with_suffix(".seal").unlink(missing_ok=True)
                migrate(conn)
