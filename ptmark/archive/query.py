"""What is looked for, and its SQL: part, serial, dates, verdict, kind, lengths, words."""

import json
from dataclasses import asdict, dataclass, fields
from typing import Any

from sqlalchemy import (
    Column,
    ColumnElement,
    Connection,
    Select,
    and_,
    exists,
    func,
    select,
    text,
)

from ptmark.archive.derive import fold
from ptmark.archive.rows import table
from ptmark.errors import ArchiveError

__all__ = ["Query", "conditions", "query_from_json", "query_to_json"]

_FEW = 200  # parts: fewer are looked up one by one, more are met on the way through the dates


@dataclass(frozen=True, slots=True, kw_only=True)
class Query:
    """Which inspections; empty members ask nothing.

    ``part``, ``serial``, ``examiner`` and ``procedure`` take ``*`` for any letters and ``?``
    for one, and do not tell capitals apart. Dates are year-month-day, both ends included.
    ``kind``, ``shape`` and the lengths (mm) ask for one indication that has all of them.
    ``words`` are whole words, all of them; a last ``*`` takes the beginning of one.
    """

    part: str = ""
    serial: str = ""
    since: str = ""
    until: str = ""
    verdict: str = ""
    disposition: str = ""
    examiner: str = ""
    procedure: str = ""
    criteria: str = ""
    kind: str = ""
    shape: str = ""
    shortest_mm: float | None = None
    longest_mm: float | None = None
    words: str = ""
    photo: str = ""
    record_id: str = ""


def query_to_json(query: Query) -> str:
    """A query as JSON text, only what it asks."""
    return json.dumps({k: v for k, v in asdict(query).items() if v not in ("", None)})


def query_from_json(said: str) -> Query:
    """A query from its JSON text.

    Raises
    ------
    ArchiveError
        If it asks for something there is not.
    """
    known = {one.name for one in fields(Query)}
    told = json.loads(said)
    if not isinstance(told, dict) or not told.keys() <= known:
        raise ArchiveError(
            f"'{said}' is no query", mend=f"it may ask {', '.join(sorted(known))}"
        )
    return Query(**told)


def conditions(conn: Connection, query: Query) -> list[ColumnElement[bool]]:
    """The conditions on `inspection` that a query means."""
    one = table("inspection")
    found: list[ColumnElement[bool]] = []
    for name, asked in (("part", query.part), ("serial", query.serial)):
        if asked:
            found.append(_through(conn, name, asked, one.c[f"{name}_id"]))
    for name in ("verdict", "disposition", "record_id"):
        if asked := getattr(query, name):
            found.append(one.c[name] == asked)
    texts = (
        (one.c.examiner_key, fold(query.examiner)),
        (one.c.procedure_key, fold(query.procedure)),
        (one.c.profile, query.criteria.strip()),
    )
    found += [_like(column, asked) for column, asked in texts if asked]
    found += [one.c.examined_on >= query.since] if query.since else []
    found += [one.c.examined_on <= query.until] if query.until else []
    if (asks := _indication(query)) is not None:
        found.append(asks)
    if query.words:
        found.append(_words(conn, query.words))
    if query.photo:
        photo = table("inspection_photo")
        mine = photo.c.inspection_id == one.c.id
        found.append(exists().where(mine, photo.c.sha256 == query.photo.lower()))
    return found


def _through(
    conn: Connection, name: str, asked: str, column: Column[Any]
) -> ColumnElement[bool]:
    """Parts or serials by their number: the few there are, or all of them by a condition."""
    there = table(name)
    fits = _like(there.c.key, fold(asked))
    few = conn.execute(select(there.c.id).where(fits).limit(_FEW + 1)).scalars().all()
    if len(few) <= _FEW:
        return column.in_(few)
    return exists().where(there.c.id == column, fits)


def _like(column: ColumnElement[str], asked: str) -> ColumnElement[bool]:
    """A folded text with ``*`` and ``?``; what stands before the first is a range of keys."""
    start = min((asked.find(mark) for mark in "*?" if mark in asked), default=-1)
    if start < 0:
        return column == asked
    head = asked[:start]
    found = []
    if head:
        found = [column >= head, column < head + "\U0010ffff"]
    if asked[start:] != "*":
        pattern = "".join(
            {"*": "%", "?": "_"}.get(c, f"\\{c}" if c in "%_\\" else c) for c in asked
        )
        found.append(column.like(pattern, escape="\\"))
    return and_(*found) if found else column.is_not(None)


def _indication(query: Query) -> ColumnElement[bool] | None:
    """That there is one indication with all that is asked of one; None where nothing is."""
    one = table("indication")
    asked: list[ColumnElement[bool]] = []
    if query.kind:
        asked.append(_like(one.c.kind_key, fold(query.kind)))
    if query.shape:
        asked.append(one.c.shape == query.shape)
    if query.shortest_mm is not None:
        asked.append(one.c.length_mm >= query.shortest_mm)
    if query.longest_mm is not None:
        asked.append(one.c.length_mm <= query.longest_mm)
    if not asked:
        return None
    return exists().where(one.c.inspection_id == table("inspection").c.id, *asked)


def _words(conn: Connection, said: str) -> ColumnElement[bool]:
    inspection = table("inspection")
    if conn.dialect.name == "sqlite":
        parts = []
        for word in said.split():
            plain = word.rstrip("*").replace('"', '""')
            if plain:
                parts.append(f'"{plain}"' + ("*" if word.endswith("*") else ""))
        rowid: Select[Any] = (
            select(text("rowid")).select_from(text("words")).where(text("words MATCH :said"))
        )
        return inspection.c.id.in_(rowid.params(said=" ".join(parts) or '""'))
    wording = table("wording")
    vector = func.to_tsvector(text("'simple'"), wording.c.text)
    tokens = " & ".join(_lexeme(word) for word in said.split() if word.strip("*"))
    fits = vector.op("@@")(func.to_tsquery(text("'simple'"), tokens))
    return inspection.c.id.in_(select(wording.c.inspection_id).where(fits))


def _lexeme(word: str) -> str:
    plain = word.rstrip("*").replace("\\", "").replace("'", "''")
    return f"'{plain}'" + (":*" if word.endswith("*") else "")
