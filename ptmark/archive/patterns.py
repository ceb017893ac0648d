"""What fits a text with ``*`` and ``?``: by ranges of an index, each at one cost."""

from functools import lru_cache

from sqlalchemy import CTE, ColumnElement, Dialect, bindparam, func, select

from ptmark.archive.fetching import fetch
from ptmark.archive.models import TAIL_LETTERS
from ptmark.archive.opening import Archive
from ptmark.archive.rows import table
from ptmark.archive.saying import NUMBERED, said_range
from ptmark.archive.spelled import Spelled, spelled

__all__ = ["MATCHED", "fits", "narrowest", "within"]

_COUNTED = 2000  # ends on which a whole pattern is tried
MATCHED = {"examiner": "examiner_key", "procedure": "procedure_key", "criteria": "profile"}


def fits(column: ColumnElement[str], name: str, how: str) -> list[ColumnElement[bool]]:
    """The conditions on a key; those of letters within it leave out what `within` asks."""
    if how == "exact":
        return [column == bindparam(name, type_=column.type)]
    found = [] if how == "within" else within(column, name)
    if how in {"like", "within"} or name == "kind":
        found.append(_like(column, name, how))
    return found


def within(column: ColumnElement[str], name: str) -> list[ColumnElement[bool]]:
    """That it begins with the letters before a pattern's first mark, or within it."""
    start, end = (bindparam(f"{name}_{one}", type_=column.type) for one in ("from", "to"))
    return [column >= start, column < end]


def _like(column: ColumnElement[str], name: str, how: str) -> ColumnElement[bool]:
    """By a pattern; of what has few values, those that fit are looked up first.

    A beginning of a kind is too: shapes and lengths are ranges of the index for one kind.
    """
    like = bindparam(f"{name}_like", type_=column.type)
    if name in NUMBERED:
        return column.like(like, escape="\\")
    values = _values(name)
    chosen = select(values.c.one)
    if how == "like":
        chosen = chosen.where(values.c.one.like(like, escape="\\"))
    return column.in_(chosen)


@lru_cache(8)  # one and the same, where a statement asks for it twice
def _values(name: str) -> CTE:
    """Each value once within the pattern's range: a step of the index each, not one a row."""
    place = table("indication" if name == "kind" else "inspection").alias()
    key = place.c["kind_key" if name == "kind" else MATCHED[name]]
    first = select(func.min(key).label("one")).where(*within(key, name))
    found = first.cte(f"{name}_values", recursive=True)
    later = (
        select(func.min(key))
        .where(key > found.c.one, key < bindparam(f"{name}_to", type_=key.type))
        .scalar_subquery()
    )
    return found.union_all(select(later).where(found.c.one.is_not(None)))


def narrowest(archive: Archive, name: str, runs: list[str]) -> tuple[dict[str, str], bool]:
    """The range of those letters of a pattern that stand in the fewest numbers.

    Also whether it is short enough for trying the whole pattern on all of it.
    """
    ends, fewest = _ends(archive.engine.dialect, name), _COUNTED + 1
    best: dict[str, str] = {}
    for run in runs:
        found = said_range(name, run[:TAIL_LETTERS])
        number = int(fetch(archive, ends, found | {"most": fewest})[0][0])
        if number < fewest or not best:
            best, fewest = found, number
    return best, fewest <= _COUNTED


@lru_cache(8)
def _ends(dialect: Dialect, name: str) -> Spelled:
    """How many ends begin so, counted to ``most``."""
    tail = table(f"{name}_tail").c
    some = select(tail.owner).where(*within(tail.tail, name)).limit(bindparam("most"))
    return spelled(select(func.count()).select_from(some.subquery()), dialect)
