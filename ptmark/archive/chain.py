"""The audit log: every change of the archive, each line chained to the one before by hash."""

import hashlib
import json
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any

from sqlalchemy import Connection, Dialect, insert, select, text

from ptmark.archive.models import Base
from ptmark.archive.spelled import Spelled, answer, spelled
from ptmark.record.revisions import time_now

__all__ = ["FIRST", "LOCK", "Line", "append", "head", "lines", "link"]

FIRST = "0" * 64
LOCK = 0x70746D  # any number of ours: writers on a server take the chain's end in turn
_told = json.JSONEncoder(ensure_ascii=False, separators=(",", ":")).encode
_AUDIT = Base.metadata.tables["audit"]


@dataclass(frozen=True, slots=True)
class Line:
    """One line; ``detail`` is JSON text; ``sha256`` covers all else, ``previous`` included."""

    seq: int
    at: str
    who: str
    action: str
    subject: str
    detail: str
    previous: str
    sha256: str

    def to_row(self) -> dict[str, Any]:
        """As the database and the file beside the photos have it."""
        return {name: getattr(self, name) for name in Line.__slots__}


def link(line: Line) -> str:
    """The hash that a line should have."""
    told = [line.seq, line.at, line.who, line.action, line.subject, line.detail, line.previous]
    return hashlib.sha256(_told(told).encode("utf-8", "surrogatepass")).hexdigest()


def append(
    conn: Connection, who: str, action: str, subject: str, detail: dict[str, Any]
) -> Line:
    """Add a line in the writer's own transaction, last in it."""
    if conn.dialect.name == "postgresql":
        conn.execute(text("SELECT pg_advisory_xact_lock(:key)"), {"key": LOCK})
    seq, previous = head(conn)
    said = json.dumps(detail, ensure_ascii=False, sort_keys=True)
    bare = Line(seq + 1, time_now(), who, action, subject, said, previous, "")
    line = replace(bare, sha256=link(bare))
    answer(conn, _adding(conn.dialect), line.to_row())
    return line


@lru_cache(8)
def _adding(dialect: Dialect) -> Spelled:
    return spelled(insert(_AUDIT), dialect)


def head(conn: Connection) -> tuple[int, str]:
    """Number and hash of the last line; (0, `FIRST`) where there is none."""
    row = answer(conn, _last(conn.dialect), {}).first()
    return (0, FIRST) if row is None else (row.seq, row.sha256)


@lru_cache(8)
def _last(dialect: Dialect) -> Spelled:
    last = select(_AUDIT.c.seq, _AUDIT.c.sha256).order_by(_AUDIT.c.seq.desc())
    return spelled(last.limit(1), dialect)


def lines(conn: Connection, subject: str = "") -> Iterator[Line]:
    """The log in order, of one subject where given."""
    chosen = select(_AUDIT).order_by(_AUDIT.c.seq)
    if subject:
        chosen = chosen.where(_AUDIT.c.subject == subject)
    for row in conn.execute(chosen.execution_options(yield_per=1000)):
        yield Line(*row)
