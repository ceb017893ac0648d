"""The index of words of a file: numbered so that it lists records as pages do, newest first.

A word that half of all records have is then walked only as far as a page needs, as an index of
a column would be. Each text's number in it, its place, is spelled from the day of examination
and the inspection's number, and rises from the newest to the oldest (`places`, a view that
migration 0011 makes).
"""

import re
from functools import lru_cache
from typing import Any

from sqlalchemy import (
    ColumnElement,
    Dialect,
    Select,
    and_,
    bindparam,
    column,
    func,
    literal_column,
    select,
    table,
    text,
)

from ptmark.archive.spelled import Spelled, spelled

__all__ = [
    "BY_WORDS",
    "NUMBER",
    "PLACE",
    "WORDS",
    "day_and_number",
    "has_each",
    "is_dated",
    "listed",
    "place_of",
    "span_of",
    "stepping_words",
    "with_words",
    "within_span",
]

BY_WORDS = ("words",)
WORDS = table("words", column("rowid"))
PLACE: ColumnElement[int] = WORDS.c.rowid
_NUMBERS, _LAST_DAY = 2**32, 99999999
NUMBER: ColumnElement[int] = literal_column(
    f"{_NUMBERS - 1} - (words.rowid & {_NUMBERS - 1})"  # of the inspection
)
_FITS: ColumnElement[bool] = literal_column("words").op("MATCH")(bindparam("words"))
_PLACE_OF_ONE = (
    f"({_LAST_DAY} - CAST(replace(inspection.examined_on, '-', '') AS INTEGER)) * {_NUMBERS}"
    f" + {_NUMBERS - 1} - inspection.id"
)
_DAY = re.compile(r"(\d{4})-(\d{2})-(\d{2})", re.ASCII)


def place_of(day: str, number: int) -> int:
    """The place of an inspection in the index of words.

    Examples
    --------
    >>> place_of("2026-01-02", 7) < place_of("2026-01-02", 6) < place_of("2026-01-01", 8)
    True
    >>> day_and_number(place_of("2026-01-02", 7))
    ('2026-01-02', 7)
    """
    return (_LAST_DAY - int(day.replace("-", ""))) * _NUMBERS + _NUMBERS - 1 - number


def day_and_number(place: int) -> tuple[str, int]:
    """The day of examination and the inspection's number that a place tells."""
    left, rest = divmod(place, _NUMBERS)
    day = f"{_LAST_DAY - left:08d}"
    return f"{day[:4]}-{day[4:6]}-{day[6:]}", _NUMBERS - 1 - rest


def span_of(values: dict[str, Any], *, later: bool = False) -> dict[str, int]:
    """Between which places all lies that dates leave, and what an earlier page showed."""
    since, until = (_DAY.fullmatch(values.get(name) or "") for name in ("since", "until"))
    first = place_of(until[0], _NUMBERS - 1) if until else 0
    if later:
        first = max(first, place_of(values["day"], values["number"]) + 1)
    last = place_of(since[0] if since else "0000-00-00", 0)
    return {"first_place": first, "last_place": last}


def is_dated(shape: dict[str, str]) -> bool:
    """Whether words are asked of an index that lists records by date; a server's does not."""
    return shape.get("words", "").startswith("dated")


def with_words() -> Select[Any]:
    """All places between ``first_place`` and ``last_place`` that have the words."""
    return select(PLACE).select_from(WORDS).where(*within_span())


def within_span() -> list[ColumnElement[bool]]:
    """That a text has the words and lies between ``first_place`` and ``last_place``."""
    return [_FITS, PLACE.between(bindparam("first_place"), bindparam("last_place"))]


@lru_cache(8)
def stepping_words(dialect: Dialect) -> Spelled:
    """The place ``far`` steps down those that have the words."""
    one = with_words().order_by(PLACE).limit(literal_column("1"))
    return spelled(one.offset(bindparam("far")), dialect)


def listed(number: ColumnElement[int], *, all_of_them: bool) -> ColumnElement[bool]:
    """Whether an inspection is one of those with the words, which are listed once for all."""
    if all_of_them:
        return number.in_(select(NUMBER).select_from(WORDS).where(_FITS))
    found = with_words().with_only_columns(NUMBER)
    return func.coalesce(number, None).in_(found)


def has_each(shape: dict[str, str]) -> ColumnElement[bool]:
    """Whether an inspection that was met has each of the words; some 35 microseconds each.

    One by one: asked for two together, the index looks on to the next text that has both,
    however far that is.
    """
    asked = range(int(shape["words"].removeprefix("dated ")))
    one = "EXISTS (SELECT 1 FROM words WHERE words MATCH :word_{0} AND rowid = {1})"
    return and_(*(text(one.format(n, _PLACE_OF_ONE)) for n in asked))
