"""The SQL that a query means: spelled once for each shape of query, then only run.

Where something fits few inspections, those are looked up; where it fits many, they are met on
the way through the dates (`paging`).
"""

from functools import lru_cache
from typing import Any

from sqlalchemy import (
    ARRAY,
    BigInteger,
    ColumnElement,
    Dialect,
    Join,
    Select,
    Table,
    any_,
    bindparam,
    func,
    literal_column,
    select,
    text,
)

from ptmark.archive.fetching import fetch
from ptmark.archive.lengths import OF_INDICATION, asked_of_one, unindexed, with_indication
from ptmark.archive.opening import Archive
from ptmark.archive.patterns import MATCHED, fits, narrowest, within
from ptmark.archive.query import Query
from ptmark.archive.rows import table
from ptmark.archive.saying import NUMBERED, said
from ptmark.archive.spelled import Spelled, spelled
from ptmark.archive.worded import (
    BY_WORDS,
    NUMBER,
    WORDS,
    has_each,
    is_dated,
    listed,
    with_words,
)

__all__ = [
    "COLUMNS",
    "EACH",
    "Shape",
    "asked",
    "chosen_hits",
    "conditions",
    "is_led",
    "leads",
    "numbers_of",
    "way_of",
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
    "longest_least",
    "examiner",
    "procedure",
    "profile",
    "retest_of",
    "sha256",
    "number",
)
_FEW = 2000  # as many are looked up one by one; more are met on the way through the dates
EACH = 100  # inspections are asked one by one for words of the index that lists by date
_LEADING = (*NUMBERED, "record_id", "photo")  # where one is given, few inspections fit
_EXACTLY = frozenset((name, "exact") for name in _LEADING)
_DECIDED = ("verdict", "disposition")
_EQUAL = (*_DECIDED, "record_id")
# What is asked, and how: exact, range, like, or within where letters of a number are known;
# "one" where one number alone is exactly so; "dated" and how many: words of an index by date.
# With a question mark behind its name: few or many; of dated words that do not lead: each is
# asked for, they are listed between two places, or all that have them are.
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
                shape[name], values[f"{name}_id"], led = "one", there[0][0], True
        elif shape.get(name) == "within":
            found, short = narrowest(archive, name, values[f"{name}_runs"])
            values |= found
            shape[f"{name}?"] = "" if short else "many"
    values["few"], fewest = _FEW + 1, 0
    for name, members in _groups(shape):
        asks = f"{name}?"
        if led or shape.get(asks) == "many":
            shape[asks] = "many"
            continue
        own = tuple((one, shape[one]) for one in members)
        there = fetch(archive, _probe(dialect, name, own), values)
        shape[asks] = "few" if len(there) <= _FEW else "many"
        if shape[asks] == "few":
            fewest = min(fewest or len(there), len(there))
        if dialect.name != "sqlite":
            values[f"{name}_few"] = list({row[0] for row in there})
    if is_dated(shape) and is_led(shape):
        shape["words?"] = "each" if fewest <= EACH else "listed"
    return tuple(shape.items()), values


def _groups(shape: dict[str, str]) -> list[tuple[str, list[str]]]:
    """What may fit few rows or many of a table beside the inspections'."""
    patterned = {"range", "like", "within"}
    names = (*NUMBERED, *MATCHED)
    found = [(name, [name]) for name in names if shape.get(name) in patterned]
    if mine := [name for name in OF_INDICATION if name in shape]:
        found.append(("indication", mine))
    return found + [("words", ["words"])] * (shape.get("words") == "exact")


@lru_cache(8)
def _spellings(dialect: Dialect, name: str) -> Spelled:
    """Whether one number alone has a key: its inspections lie in order then, unsorted."""
    return spelled(
        numbers_of(dialect, name, {name: "exact"}).limit(literal_column("2")), dialect
    )


@lru_cache(256)
def _probe(dialect: Dialect, name: str, own: Shape) -> Spelled:
    """What leads to inspections, as many as are few and one more."""
    found = numbers_of(dialect, name, dict(own))
    if name in NUMBERED:  # one part may have all the inspections there are
        one = table("inspection")
        found = found.join(one, one.c[f"{name}_id"] == table(name).c.id)
    return spelled(found.limit(bindparam("few")), dialect)


def numbers_of(dialect: Dialect, name: str, shape: dict[str, str]) -> Select[Any]:
    """Of parts or serials; of inspections with such an indication or such words."""
    if name == "words":
        return _worded(dialect, shape)
    if name == "indication":
        return with_indication(dialect, shape)
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


def is_led(shape: dict[str, str]) -> bool:
    """Whether something that fits few inspections leads to them."""
    return "few" in shape.values() or not _EXACTLY.isdisjoint(shape.items())


def leads(shape: dict[str, str]) -> list[tuple[str, ...]]:
    """What may lead through the dates: each has an index that lists its inspections by date."""
    found: list[tuple[str, ...]]
    found = [(name,) for name in NUMBERED if shape.get(name) == "one"]
    found += [(name,) for name in MATCHED if shape.get(name) == "exact"]
    if decided := tuple(name for name in _DECIDED if name in shape):
        found.append(decided)
    if is_dated(shape):
        found.append(BY_WORDS)
    return found or [()]


def conditions(
    dialect: Dialect, shape: dict[str, str], by: tuple[str, ...] | None = None
) -> list[ColumnElement[bool]]:
    """The conditions on `inspection`.

    Parameters
    ----------
    dialect : Dialect
    shape : dict
    by : tuple of str or None
        What may be looked up in an index: what leads through the dates, and the dates with it.
        None is nothing but what fits few. SQLite, which knows no sizes here, takes any other.
    """
    one, led = table("inspection").c, by is None or by == BY_WORDS
    plain = unindexed(one) if dialect.name == "sqlite" else one
    found: list[ColumnElement[bool]] = []
    for name in NUMBERED:
        if name in shape:
            own = plain if shape[name] == "one" and name not in (by or ()) else one
            found.append(_through(dialect, name, shape, own[f"{name}_id"]))
    for name in ("indication", "words"):
        if f"{name}?" in shape:  # words that lead are asked there
            found.append(_through(dialect, name, shape, one.id))
    for name in _EQUAL:
        if name in shape:
            own = one if name == "record_id" or name in (by or ()) else plain
            found.append(own[name] == bindparam(name))
    for name, column in MATCHED.items():
        if name in shape:
            own = one if shape.get(f"{name}?") == "few" or name in (by or ()) else plain
            found += fits(own[column], name, shape[name])
    day = (plain if led else one)["examined_on"]
    found += [day >= bindparam("since")] if "since" in shape else []
    found += [day <= bindparam("until")] if "until" in shape else []
    if "photo" in shape:
        photo = table("inspection_photo")
        mine = select(photo.c.inspection_id).where(photo.c.sha256 == bindparam("photo"))
        found.append(one.id.in_(mine))
    return found


def _through(
    dialect: Dialect,
    name: str,
    shape: dict[str, str],
    column: Any,  # noqa: ANN401 - a column
) -> ColumnElement[bool]:
    """By the numbers of what fits where they are few; else each one on the way is asked."""
    if shape.get(name) == "one":
        same: ColumnElement[bool] = column == bindparam(f"{name}_id")
        return same
    how, server = shape.get(f"{name}?", "all"), dialect.name != "sqlite"
    if name == "words" and not server:
        if how == "each":
            return has_each(shape)
        return listed(column, all_of_them=how == "all")
    if how == "few" and server:  # which guesses how many fit, and walked through all there are
        few = bindparam(f"{name}_few", type_=ARRAY(BigInteger))
        return column == any_(few)  # type: ignore[no-any-return]
    if how in {"few", "all"} or (server and name != "indication"):
        return column.in_(numbers_of(dialect, name, shape))  # type: ignore[no-any-return]
    there = table(name).alias()
    if name == "indication":
        own = there.c if server else unindexed(there.c)
        if shape.get("kind") == "exact" and not server:
            own["kind_key"] = there.c.kind_key
        asks = [there.c.inspection_id == column, *asked_of_one(own, shape)]
    else:
        asks = [there.c.id == column, *fits(there.c.key, name, shape[name])]
    return select(literal_column("1")).select_from(there).where(*asks).exists()


def _worded(dialect: Dialect, shape: dict[str, str]) -> Select[Any]:
    """The numbers of inspections with such words, by the index of words."""
    if is_dated(shape):
        return with_words().with_only_columns(NUMBER)
    wording = table("wording")
    vector: ColumnElement[Any] = literal_column("wording.vector")  # kept by the server itself
    fits = vector.op("@@")(func.to_tsquery(text("'simple'"), bindparam("words")))
    return select(wording.c.inspection_id).where(fits)


def way_of(by: tuple[str, ...] | None) -> Table | Join:
    """What is walked: the inspections, or what leads to them."""
    one = table("inspection")
    return WORDS.join(one, one.c.id == NUMBER) if by == BY_WORDS else one


def chosen_hits(by: tuple[str, ...] | None = None) -> Select[Any]:
    """The select whose rows are hits; joined to part and serial."""
    one, part, serial = table("inspection"), table("part"), table("serial")
    own = [one.c[name] for name in COLUMNS if name not in {"part", "serial", "number"}]
    columns = [own[0], part.c.number, serial.c.number, *own[1:], one.c.id]
    joined = way_of(by).join(part, part.c.id == one.c.part_id)
    return select(*columns).select_from(joined.join(serial, serial.c.id == one.c.serial_id))
