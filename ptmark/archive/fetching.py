"""Rows of a statement that is spelled, by the driver itself and on a connection kept for it."""

from typing import Any

from sqlalchemy import exc

from ptmark.archive.opening import Archive
from ptmark.archive.spelled import Spelled

__all__ = ["fetch"]


def fetch(archive: Archive, what: Spelled, values: dict[str, Any]) -> list[Any]:
    """The rows of one statement, which sees one state of the archive, by the driver itself."""
    try:
        return _fetched(archive, what, values)
    except Exception:
        with archive.guarded():  # only now: entering it costs as much as finding a row
            raise


def _fetched(archive: Archive, what: Spelled, values: dict[str, Any]) -> list[Any]:
    raw = archive.idle.pop() if archive.idle else archive.engine.raw_connection()
    try:
        cursor = raw.cursor()
        cursor.execute(what.sql, what.bound(values))
        rows: list[Any] = cursor.fetchall()  # type: ignore[assignment]
    except archive.engine.dialect.loaded_dbapi.Error as found:
        raw.close()
        raise exc.DBAPIError(what.sql, None, found) from found
    if archive.file is None:
        raw.close()  # a server's pool tests each connection before it is used
    else:
        archive.idle.append(raw)
    return rows
