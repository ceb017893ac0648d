"""The hash of a record's rows, noted in the log when they are written.

Working rows out again from a record's file costs much more than comparing a hash. What has
another one, or none (lines of older versions), is worked out again. On a server each inspector
writes rows and lines with SQL of his own and could note the hash of rows that are not those of
the file: there none is noted, and what counts is only what the one who verifies worked out
before (`findings.Notes.right`).
"""

import hashlib
import json
from collections.abc import Sequence
from functools import lru_cache
from typing import Any

from sqlalchemy import Connection, Dialect, bindparam, select

from ptmark.archive.chain import Line
from ptmark.archive.derive import Derived, fold
from ptmark.archive.rows import table
from ptmark.archive.spelled import Spelled, all_rows, spelled

__all__ = ["follow_proof", "hash_of", "hashed", "proof"]

_OWN = ("wording", "revision", "inspection_photo", "indication")
_GROWN = {"inspection", "indication"}
_NUMBERS = {"id", "part_id", "serial_id", "inspection_id"}
# A flipped bit may make a text of other bytes than letters, which JSON has not.
_told = json.JSONEncoder(separators=(",", ":"), default=repr).encode


def proof(conn: Connection, number: int) -> dict[str, str]:
    """What the log tells of the rows of an inspection; nothing on a server."""
    if conn.dialect.name != "sqlite":
        return {}
    return {"rows": hashed(conn, number, number)[number][0]}


def follow_proof(known: dict[str, str], line: Line) -> None:
    """Add the hash that a line tells of its record's rows, or that it tells none."""
    if line.action in {"added", "revised", "repaired"}:
        known[line.subject] = json.loads(line.detail).get("rows", "")


def hashed(conn: Connection, first: int, last: int) -> dict[int, tuple[str, bytes]]:
    """SHA-256 over all rows of each inspection from one number to another, its file included.

    Parameters
    ----------
    conn : Connection
    first, last : int
        Numbers of inspections, both included.

    Returns
    -------
    dict of int to (str, bytes)
        Hexadecimal digits ("" where there is no file), and the file, deflated as it lies
        there. The numbers that the database gave, which a rebuilt one gives anew, have no
        part in it.
    """
    between = {"first": first, "last": last}
    heads = all_rows(conn, _between(conn.dialect, "inspection"), between)
    told: dict[int, list[Any]] = {row[0]: [_as_noted("inspection", row[1:])] for row in heads}
    for name in _OWN:
        for row in all_rows(conn, _between(conn.dialect, name), between):
            if row[0] in told:  # others point nowhere, which the database's own check tells
                told[row[0]].append((name, *_as_noted(name, row[1:])))
    kept = dict(all_rows(conn, _between(conn.dialect, "document"), between))
    return {number: _hash_of(own, kept.get(number)) for number, own in told.items()}


def hash_of(rows: Derived, file: bytes) -> str:
    """The hash that `hashed` gives where the database holds these rows and this file."""
    numbers = [rows.part, fold(rows.part), rows.serial, fold(rows.serial)]
    head = [*numbers, *map(rows.inspection.__getitem__, _columns("inspection"))]
    told: list[Any] = [_as_noted("inspection", head)]
    for name, many in (
        ("wording", [{"text": rows.text}]),
        ("revision", sorted(rows.revisions, key=lambda one: int(one["number"]))),
        ("inspection_photo", rows.photos),
        ("indication", sorted(rows.indications, key=lambda one: str(one["letter"]))),
    ):
        columns = _columns(name)
        rows_of = ([one[each] for each in columns] for one in many)
        told += ([name, *_as_noted(name, row)] for row in rows_of)
    return _hash_of(told, file)[0]


def _as_noted(name: str, row: Sequence[Any]) -> Sequence[Any]:
    """A row as it is hashed: without its last column where older versions had none.

    That one, ``longest_least`` or ``least``, tells something only where it is not 0; so the
    hashes of most rows stay those that their lines tell.
    """
    return row[:-1] if name in _GROWN and row[-1] == 0 else row


def _hash_of(rows: list[Any], file: object) -> tuple[str, bytes]:
    if not isinstance(file, bytes):
        return "", b""
    whole = hashlib.sha256(_told(rows).encode())
    whole.update(file)
    return whole.hexdigest(), file


@lru_cache(8)
def _columns(name: str) -> tuple[str, ...]:
    """Columns that have a part in the hash, in its order."""
    return tuple(one.name for one in table(name).c if one.name not in _NUMBERS)


@lru_cache(8)
def _between(dialect: Dialect, name: str) -> Spelled:
    """Rows of some inspections in one order, each with its inspection's number before it."""
    one, part, serial = table(name), table("part"), table("serial")
    if name == "inspection":
        number, own = one.c.id, (one.c[each] for each in _columns(name))
        chosen = select(number, part.c.number, part.c.key, serial.c.number, serial.c.key, *own)
        chosen = chosen.join(part, part.c.id == one.c.part_id)
        chosen = chosen.join(serial, serial.c.id == one.c.serial_id)
    else:
        number, chosen = one.c.inspection_id, select(*one.c)
    bounds = number.between(bindparam("first"), bindparam("last"))
    return spelled(chosen.where(bounds).order_by(*one.primary_key), dialect)
