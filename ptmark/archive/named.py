"""Small things with a name: saved searches, rules, holds, placements; all of them logged whole.

The log holds every row that was ever set, so that a changed bit in these tables is found by
replaying it.
"""

import json
from collections.abc import Iterable
from typing import Any

from sqlalchemy import Connection, delete, insert, select

from ptmark.archive.chain import Line
from ptmark.archive.opening import Archive
from ptmark.archive.rows import table

__all__ = ["NAMED", "all_named", "drop_named", "replayed", "set_named"]

NAMED = {"saved_search": "name", "rule": "name", "hold": "name", "placement": "record_id"}


def set_named(archive: Archive, name: str, row: dict[str, Any]) -> None:
    """Set a row; one of the same key is replaced."""
    one, key = table(name), NAMED[name]
    with archive.writing() as conn:
        conn.execute(delete(one).where(one.c[key] == row[key]))
        conn.execute(insert(one), row)
        archive.log(conn, f"set {name}", row[key], **row)


def drop_named(archive: Archive, name: str, key: str, why: str = "") -> bool:
    """Take a row away; False where there was none."""
    one = table(name)
    with archive.writing() as conn:
        gone = conn.execute(delete(one).where(one.c[NAMED[name]] == key)).rowcount > 0
        if gone:
            archive.log(conn, f"dropped {name}", key, why=why)
    return gone


def all_named(conn: Connection, name: str) -> dict[str, dict[str, Any]]:
    """All rows by their key."""
    one, key = table(name), NAMED[name]
    rows = conn.execute(select(one).order_by(one.c[key])).mappings()
    return {row[key]: dict(row) for row in rows}


def replayed(lines: Iterable[Line]) -> dict[str, dict[str, dict[str, Any]]]:
    """What the tables should hold, by the log."""
    found: dict[str, dict[str, dict[str, Any]]] = {name: {} for name in NAMED}
    for line in lines:
        verb, _, name = line.action.partition(" ")
        if name not in found:
            continue
        if verb == "set":
            found[name][line.subject] = json.loads(line.detail)
        elif verb == "dropped":
            found[name].pop(line.subject, None)
    return found
