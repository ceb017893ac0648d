"""What fits a text with ``*`` and ``?``: by ranges of an index, each at one cost."""

from functools import lru_cache

from sqlalchemy import CTE, ColumnElement, Dialect, bindparam, func, literal_column, select

from ptmark.archive.models import TAIL_LETTERS
from ptmark.archive.opening import Archive
from ptmark.archive.rows import table
from ptmark.archive.saying import NUMBERED, said_range
from ptmark.archive.spelled import Spelled, fetch, spelled

__all__ = ["MATCHED", "fits", "narrowest", "within"]

_COUNTED = "20000"
MATCHED = {"examiner": "examiner_key", "procedure": "procedure_key", "criteria": "profile"}


def fits(column: ColumnElement[str], name: str, how: str) -> list[ColumnElement[bool]]:
    """The conditions on a key; those of letters within it leave out what `within` asks."""
    if how == "exact":
        return [column == bindparam(name, type_=column.type)]
    found = [] if how == "within" else within(column, name)
    if how in {"like", "within"}:
        found.append(_like(column, name))
    return found


def within(column: ColumnElement[str], name: str) -> list[ColumnElement[bool]]:
    """That it begins with the letters before a pattern's first mark, or within it."""
    start, end = (bindparam(f"{name}_{one}", type_=column.type) for one in ("from", "to"))
    return [column >= start, column < end]


def _like(column: ColumnElement[str], name: str) -> ColumnElement[bool]:
    """By a pattern; of what has few values, those that fit are looked up first."""
    like = bindparam(f"{name}_like", type_=column.type)
    if name in NUMBERED:
        return column.like(like, escape="\\")
    values = _values(name)
    return column.in_(select(values.c.one).where(values.c.one.like(like, escape="\\")))


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


def narrowest(archive: Archive, name: str, runs: list[str]) -> dict[str, str]:
    """The range of those letters of a pattern that stand in the fewest numbers."""
    found = [said_range(name, run[:TAIL_LETTERS]) for run in runs]
    if len(found) == 1:
        return found[0]
    ends = _ends(archive.engine.dialect, name)
    return min(found, key=lambda one: int(fetch(archive, ends, one)[0][0]))


@lru_cache(8)
def _ends(dialect: Dialect, name: str) -> Spelled:
    """How many ends begin so, counted as far as it costs no more than the search itself."""
    tail = table(f"{name}_tail").c
    some = select(tail.owner).where(*within(tail.tail, name)).limit(literal_column(_COUNTED))
    return spelled(select(func.count()).select_from(some.subquery()), dialect)
