"""The SQL that a query means: spelled once for each shape of query, then only run.

Where something fits few rows, those lead to the inspections; where it fits many, they are met
on the way through the dates. Either way a page costs the same however large the archive is.
"""

from functools import lru_cache
from typing import Any

from sqlalchemy import (
    Column,
    ColumnElement,
    Dialect,
    Select,
    bindparam,
    exists,
    func,
    literal_column,
    select,
    text,
)

from ptmark.archive.opening import Archive
from ptmark.archive.patterns import MATCHED, fits, narrowest, within
from ptmark.archive.query import Query
from ptmark.archive.rows import table
from ptmark.archive.saying import NUMBERED, said
from ptmark.archive.spelled import Spelled, fetch, spelled

__all__ = [
    "COLUMNS",
    "OF_INDICATION",
    "Shape",
    "asked",
    "chosen_hits",
    "conditions",
    "is_led",
    "worded",
]

COLUMNS = (
    "record_id",
    "part",
    "serial",
    "examined_on",
    "revision",
    "signatures",
    "verdict",
    "disposition",
    "indications",
    "longest_mm",
    "longest_u_mm",
    "examiner",
    "procedure",
    "profile",
    "retest_of",
    "sha256",
    "number",
)
# As many are looked up one by one; more are met on the way through the dates. A part has many
# inspections, each of which would have to be read and sorted.
_FEW = {"part": 100} | dict.fromkeys(
    ("serial", "indication", "words", "examiner", "procedure", "criteria"), 2000
)
_LEADING = (*NUMBERED, "record_id", "photo")  # where one is given, few inspections fit
_EXACTLY = frozenset((name, how) for name in _LEADING for how in ("exact", "one"))
OF_INDICATION = ("kind", "shape", "shortest_mm", "longest_mm")
_EQUAL = ("verdict", "disposition", "record_id")
# What is asked, and how: exact, range, like, or within where letters of a number are known;
# "one" where one number alone is exactly so. With a question mark behind its name: few or many.
Shape = tuple[tuple[str, str], ...]


def asked(archive: Archive, query: Query) -> tuple[Shape, dict[str, Any]]:
    """A query's shape and values; the archive tells where few rows fit."""
    dialect = archive.engine.dialect
    shape, values = said(dialect, query)
    led = is_led(shape)
    for name in NUMBERED:
        if shape.get(name) == "exact":
            there = fetch(archive, _spellings(dialect, name), values)
            if len(there) == 1:
                shape[name], values[f"{name}_id"] = "one", there[0][0]
        elif shape.get(name) == "within":
            values |= narrowest(archive, name, values[f"{name}_runs"])
    for name, members in _groups(shape):
        if led:
            shape[f"{name}?"] = "many"
            continue
        own = tuple((one, shape[one]) for one in members)
        there = fetch(archive, _probe(dialect, name, own), values)
        shape[f"{name}?"] = "few" if len(there) <= _FEW[name] else "many"
    if shape.get("words") == "range" and not led:  # no index knows these by a letter
        shape["words?"] = "few" if shape["words?"] == "few" else "all"
    return tuple(shape.items()), values


def _groups(shape: dict[str, str]) -> list[tuple[str, list[str]]]:
    """What may fit few rows or many of a table beside the inspections'."""
    patterned = {"range", "like", "within"}
    names = (*NUMBERED, *MATCHED)
    found = [(name, [name]) for name in names if shape.get(name) in patterned]
    if mine := [name for name in OF_INDICATION if name in shape]:
        found.append(("indication", mine))
    return found + [("words", ["words"])] * ("words" in shape)


@lru_cache(8)
def _spellings(dialect: Dialect, name: str) -> Spelled:
    """Whether one number alone has a key: its inspections lie in order then, unsorted."""
    return spelled(_numbers(dialect, name, {name: "exact"}).limit(literal_column("2")), dialect)


@lru_cache(256)
def _probe(dialect: Dialect, name: str, own: Shape) -> Spelled:
    """The numbers of what fits, as many as are few and one more."""
    most: ColumnElement[int] = literal_column(str(_FEW[name] + 1))
    return spelled(_numbers(dialect, name, dict(own)).limit(most), dialect)


def _numbers(dialect: Dialect, name: str, shape: dict[str, str]) -> Select[Any]:
    """Of parts or serials; of inspections with such an indication or such words."""
    if name == "words":
        return worded(dialect)
    if name == "indication":
        one = table("indication")
        return select(one.c.inspection_id).where(*_indication(one.c, shape))
    if name in MATCHED:
        one = table("inspection")
        return select(one.c.id).where(*fits(one.c[MATCHED[name]], name, shape[name]))
    there = table(name)
    chosen = select(there.c.id).where(*fits(there.c.key, name, shape[name]))
    if shape[name] != "within":
        return chosen
    tail = table(f"{name}_tail")
    chosen = chosen.select_from(tail.join(there, there.c.id == tail.c.owner))
    return chosen.where(*within(tail.c.tail, name))


def _indication(columns: Any, shape: dict[str, str]) -> list[ColumnElement[bool]]:  # noqa: ANN401 - columns
    found: list[ColumnElement[bool]] = []
    if "kind" in shape:
        found += fits(columns["kind_key"], "kind", shape["kind"])
    if "shape" in shape:
        found.append(columns["shape"] == bindparam("shape"))
    if "shortest_mm" in shape:
        found.append(columns["length_mm"] >= bindparam("shortest_mm"))
    if "longest_mm" in shape:
        found.append(columns["length_mm"] <= bindparam("longest_mm"))
    return found


def conditions(
    dialect: Dialect, shape: dict[str, str], *, led: bool
) -> list[ColumnElement[bool]]:
    """The conditions on `inspection`; ``led`` to them by one that fits few."""
    one = table("inspection").c
    plain = _plain(one) if dialect.name == "sqlite" else one
    own = plain if led else one
    found: list[ColumnElement[bool]] = []
    for name in NUMBERED:
        if name in shape:
            found.append(_through(dialect, name, shape, one[f"{name}_id"]))
    for name in ("indication", "words"):
        if f"{name}?" in shape:
            found.append(_through(dialect, name, shape, one.id))
    for name in _EQUAL:
        if name in shape:
            found.append((one if name == "record_id" else own)[name] == bindparam(name))
    for name, column in MATCHED.items():
        if name in shape:
            # An index of many would have them all sorted by date.
            known = {"few": one, "many": plain}.get(shape.get(f"{name}?", ""), own)
            found += fits(known[column], name, shape[name])
    found += [own["examined_on"] >= bindparam("since")] if "since" in shape else []
    found += [own["examined_on"] <= bindparam("until")] if "until" in shape else []
    if "photo" in shape:
        photo = table("inspection_photo")
        mine = select(photo.c.inspection_id).where(photo.c.sha256 == bindparam("photo"))
        found.append(one.id.in_(mine))
    return found


def is_led(shape: dict[str, str]) -> bool:
    """Whether something that fits few inspections leads to them."""
    return "few" in shape.values() or not _EXACTLY.isdisjoint(shape.items())


def _plain(columns: Any) -> Any:  # noqa: ANN401 - columns
    """Columns that no index goes by: SQLite would take any of them before what leads."""
    return {one.name: func.coalesce(one, None) for one in columns}


def _through(
    dialect: Dialect, name: str, shape: dict[str, str], column: Column[Any]
) -> ColumnElement[bool]:
    """By the numbers of what fits where they are few; else each one on the way is asked.

    Asked by itself, or for all of them whether it is among what fits, looked up once.
    """
    if shape.get(name) == "one":
        return column == bindparam(f"{name}_id")
    how = shape.get(f"{name}?", "few")
    if how == "few" or dialect.name != "sqlite":
        return column.in_(_numbers(dialect, name, shape))
    if how == "all":
        return func.coalesce(column, None).in_(_numbers(dialect, name, shape))
    if name == "words":
        return text(  # type: ignore[return-value]
            "EXISTS (SELECT 1 FROM words WHERE words MATCH :words AND rowid = inspection.id)"
        )
    there = table(name).alias()
    if name == "indication":
        own = _indication(_plain(there.c), shape)
        return exists().where(there.c.inspection_id == column, *own)
    return exists().where(there.c.id == column, *fits(there.c.key, name, shape[name]))


def worded(dialect: Dialect) -> Select[Any]:
    """The numbers of inspections with such words, by the index of words."""
    if dialect.name == "sqlite":
        return (
            select(text("rowid")).select_from(text("words")).where(text("words MATCH :words"))
        )
    wording = table("wording")
    vector = func.to_tsvector(text("'simple'"), wording.c.text)
    fits = vector.op("@@")(func.to_tsquery(text("'simple'"), bindparam("words")))
    return select(wording.c.inspection_id).where(fits)


def chosen_hits() -> Select[Any]:
    """The select whose rows are hits; joined to part and serial."""
    one, part, serial = table("inspection"), table("part"), table("serial")
    own = [one.c[name] for name in COLUMNS if name not in {"part", "serial", "number"}]
    columns = [own[0], part.c.number, serial.c.number, *own[1:], one.c.id]
    joined = one.join(part, part.c.id == one.c.part_id)
    return select(*columns).select_from(joined.join(serial, serial.c.id == one.c.serial_id))
