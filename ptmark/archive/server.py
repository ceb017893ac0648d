"""What a database server needs beyond a file: its engine, turns of writers, trying again.

Only PostgreSQL has turns and roles here. A writer shares the turn with other writers and holds
the end of the audit log alone from its line to its commit; a deletion or repair takes the whole
turn alone.
"""

import random
import time
from collections.abc import Callable
from typing import TypeVar

from sqlalchemy import Connection, Engine, create_engine, exc, text
from sqlalchemy.engine import URL, make_url

from ptmark.errors import ArchiveError

__all__ = [
    "database_url",
    "login_of",
    "refused",
    "server_engine",
    "snapshot",
    "take_turn",
    "tried_again",
]

_TURN = 0x70746E  # beside the number that the audit log's end is locked by
_TRIES = 8  # with the waits between them about 13 s: a server that restarts is back by then
_WAIT_S = 0.1
_LOST = ("08", "57P", "40001", "40P01", "23505")  # SQLSTATE, PostgreSQL 15 appendix A
_POOL = {"pool_size": 4, "max_overflow": 8, "pool_timeout": 30, "pool_recycle": 1800}
# A dead network is told within about a minute; a writer waits 30 s for those before it.
_REACH = {
    "application_name": "ptmark",
    "connect_timeout": 10,
    "keepalives_idle": 30,
    "keepalives_interval": 10,
    "keepalives_count": 3,
    "tcp_user_timeout": 30_000,
    "options": "-c lock_timeout=30s -c idle_in_transaction_session_timeout=5min",
}
_T = TypeVar("_T")


def database_url(text: str) -> URL:
    """A database's URL; ArchiveError, without the text and so no password, where it is none."""
    try:
        url = make_url(text)
        url.get_dialect()
    except exc.ArgumentError as found:
        raise ArchiveError(
            "names no database that can be reached",
            where="--database",
            mend="give a URL as postgresql://NAME@HOST/DATABASE",
        ) from found
    return url


def server_engine(url: URL) -> Engine:
    """An engine whose pool tests a connection before each use and replaces a dead one.

    Raises
    ------
    ArchiveError
        If the database's driver is not installed.
    """
    reach: dict[str, object] = {}
    if url.get_backend_name() == "postgresql":
        if url.drivername == "postgresql":
            url = url.set(drivername="postgresql+psycopg")
        reach = {name: one for name, one in _REACH.items() if name not in url.query}
    try:
        return create_engine(url, pool_pre_ping=True, connect_args=reach, **_POOL)
    except ImportError as found:
        raise ArchiveError(
            f"the database's driver is missing ({found})",
            where=url.render_as_string(hide_password=True),
            mend="pip install 'ptmark[server]'",
        ) from found


def snapshot(conn: Connection) -> Connection:
    """The connection, made to see one state throughout and to change nothing."""
    if conn.dialect.name != "postgresql":
        return conn
    return conn.execution_options(isolation_level="REPEATABLE READ", postgresql_readonly=True)


def take_turn(conn: Connection, *, alone: bool) -> None:
    """Wait for a turn that lasts to the end of the transaction; other writers share it.

    Parameters
    ----------
    conn : Connection
        In a transaction; nothing is done but on PostgreSQL.
    alone : bool
        Wait until no other writes, and keep others off.
    """
    if conn.dialect.name == "postgresql":
        shared = "" if alone else "_shared"
        conn.execute(text(f"SELECT pg_advisory_xact_lock{shared}(:key)"), {"key": _TURN})


def login_of(conn: Connection) -> str:
    """Who the server says is working; "" where it has no logins."""
    if conn.dialect.name != "postgresql":
        return ""
    return str(conn.execute(text("SELECT session_user")).scalar_one())


def tried_again(work: Callable[[], _T]) -> _T:
    """Do work that may be done twice, again where the server dropped it.

    Parameters
    ----------
    work : callable
        It must find out by itself what an earlier try did: whether a commit that was cut off
        took place, nobody can tell.

    Raises
    ------
    ArchiveError
        The last try's, or the first that trying again does not mend.
    """
    for turn in range(_TRIES - 1):
        try:
            return work()
        except ArchiveError as found:
            if not _dropped(found.__cause__):
                raise
        time.sleep(_WAIT_S * 2**turn * random.uniform(0.5, 1.0))  # noqa: S311 - apart, not secret
    return work()


def refused(cause: BaseException | None) -> bool:
    """Whether a server cannot keep a value: a NUL in a text, or a key too long for an index."""
    state = getattr(getattr(cause, "orig", None), "sqlstate", None)
    return isinstance(cause, exc.DataError) or state == "54000"  # program limit exceeded


def _dropped(cause: BaseException | None) -> bool:
    """Whether a server cut the connection, or undid the work for another writer's."""
    if not isinstance(cause, exc.DBAPIError) or not hasattr(cause.orig, "sqlstate"):
        return False  # a file's errors have no SQLSTATE
    state = getattr(cause.orig, "sqlstate", None) or ""
    refused = not state and isinstance(cause, exc.OperationalError)  # no connection at all
    return cause.connection_invalidated or refused or state.startswith(_LOST)
