"""Pages and counts of a query: met on the way through the dates, as far as that is short."""

from functools import lru_cache
from typing import Any

from sqlalchemy import Dialect, Select, bindparam, func, literal_column, select, tuple_
from sqlalchemy.sql.expression import Tuple

from ptmark.archive.asking import (
    OF_INDICATION,
    Shape,
    chosen_hits,
    conditions,
    is_led,
    worded,
)
from ptmark.archive.opening import Archive
from ptmark.archive.rows import table
from ptmark.archive.spelled import Spelled, fetch, spelled

__all__ = ["counting", "counting_some", "looked_up", "paged", "paging"]

# So many inspections for each one of a page are asked on the way through the dates; being asked
# for words costs as much as twenty others.
_FAR = {"words": 4, "others": 80}


def paged(archive: Archive, shape: Shape, values: dict[str, Any], *, later: bool) -> list[Any]:
    """The rows of a page: looked for near the newest first, then by all that fits.

    What fits many may lie far down the dates, where asking each one on the way would take
    longer than looking up once all that fits.
    """
    dialect, asks = archive.engine.dialect, dict(shape)
    if "many" in asks.values() and dialect.name == "sqlite":
        far = _FAR["words" if asks.get("words?") == "many" else "others"] * values["limit"]
        end = fetch(archive, _bounding(dialect, shape, later=later), values | {"far": far})
        if end:
            bound = dict(zip(("end_day", "end_number"), end[0], strict=True))
            near = _paging(dialect, shape, later=later, near=True)
            rows = fetch(archive, near, values | bound)
            if len(rows) == values["limit"]:
                return rows
            shape = looked_up(shape)
    return fetch(archive, paging(dialect, shape, later=later), values)


def looked_up(shape: Shape, *names: str) -> Shape:
    """The shape by which what fits many is looked up once, of some names where told."""
    mine = {f"{name}?" for name in names}
    return tuple(
        (name, "all" if how == "many" and (name in mine or not mine) else how)
        for name, how in shape
    )


def paging(dialect: Dialect, shape: Shape, *, later: bool) -> Spelled:
    """A page, newest first; values ``limit`` and, for a later page, ``day`` and ``number``."""
    return _paging(dialect, shape, later=later, near=False)


@lru_cache(256)
def _paging(dialect: Dialect, shape: Shape, *, later: bool, near: bool) -> Spelled:
    """No further than ``end_day`` and ``end_number`` where ``near``."""
    asks = dict(shape)
    chosen = chosen_hits().where(*conditions(dialect, asks, led=is_led(asks)))
    if near:
        chosen = chosen.where(_place() >= _given("end_day", "end_number"))
    return spelled(_in_order(chosen, later=later).limit(bindparam("limit")), dialect)


@lru_cache(256)
def _bounding(dialect: Dialect, shape: Shape, *, later: bool) -> Spelled:
    """Day and number of the inspection ``far`` steps down the dates; none in a short way."""
    one, asks = table("inspection").c, dict(shape)
    own = {name: how for name, how in shape if not _is_grouped(name, asks)}
    chosen = select(one.examined_on, one.id).where(*conditions(dialect, own, led=False))
    end = _in_order(chosen, later=later).limit(literal_column("1")).offset(bindparam("far"))
    return spelled(end, dialect)


def _is_grouped(name: str, asks: dict[str, str]) -> bool:
    return name.endswith("?") or f"{name}?" in asks or name in OF_INDICATION


def _in_order(chosen: Select[Any], *, later: bool) -> Select[Any]:
    """Newest first; of a later page those after ``day`` and ``number``."""
    one = table("inspection").c
    if later:
        chosen = chosen.where(_place() < _given("day", "number"))
    return chosen.order_by(one.examined_on.desc(), one.id.desc())


def _place() -> Tuple:
    one = table("inspection").c
    return tuple_(one.examined_on, one.id)


def _given(day: str, number: str) -> Tuple:
    kind = table("inspection").c.examined_on.type
    return tuple_(bindparam(day, type_=kind), bindparam(number))


@lru_cache(256)
def counting_some(dialect: Dialect, shape: Shape) -> Spelled:
    """How many there are, counted up to ``limit`` on the way that a page goes."""
    asks = dict(shape)
    one = table("inspection")
    if asks.keys() == {"words", "words?"}:  # all that the index of words is asked
        some = worded(dialect)
    else:
        some = select(one.c.id).where(*conditions(dialect, asks, led=is_led(asks)))
    some = some.limit(bindparam("limit"))
    return spelled(select(func.count()).select_from(some.subquery()), dialect)


@lru_cache(256)
def counting(dialect: Dialect, shape: Shape) -> Spelled:
    """How many there are."""
    asks, led = dict(shape), is_led(dict(shape))
    if not led:  # nothing is met on the way, so what fits is looked up once for all
        asks |= {name: "few" for name in asks if name.endswith("?")}
    chosen = select(func.count()).select_from(table("inspection"))
    return spelled(chosen.where(*conditions(dialect, asks, led=led)), dialect)
