"""Pages and counts of a query: met on the way through the dates, a stretch at a time."""

from functools import lru_cache
from typing import Any

from sqlalchemy import (
    ColumnElement,
    Dialect,
    Select,
    bindparam,
    func,
    literal_column,
    select,
    tuple_,
)
from sqlalchemy.sql.expression import Tuple

from ptmark.archive.asking import (
    Shape,
    chosen_hits,
    conditions,
    is_led,
    leads,
    numbers_of,
)
from ptmark.archive.lengths import OF_INDICATION
from ptmark.archive.opening import Archive
from ptmark.archive.rows import table
from ptmark.archive.spelled import Spelled, fetch, spelled

__all__ = ["counted", "counting", "paged", "paging"]

_FAR = 2000  # inspections that are looked at, one after the other, for one page
_FAR_COUNTED = 8000
_OF = {"indication": OF_INDICATION, "words": ("words",)}
Place = tuple[str, int]  # day and number of an inspection
By = tuple[str, ...] | None  # as in `asking.conditions`


def paged(
    archive: Archive, shape: Shape, values: dict[str, Any], *, later: bool, whole: bool
) -> tuple[list[Any], Place | None]:
    """The rows of a page, and where the next one begins if looking stopped before it was full.

    What fits many may still fit hardly any together, or lie in one year long past: then no
    more than a stretch of the dates is looked through, unless ``whole``.
    """
    dialect = archive.engine.dialect
    by, end = _way(archive, shape, values, later=later, far=_FAR)
    if whole or end is None:
        return fetch(archive, paging(dialect, shape, by, later=later), values), None
    bound = _bound(archive, shape, values, by, end, later=later)
    rows = fetch(archive, paging(dialect, shape, by, later=later, near=True), bound)
    return rows, (end[0], end[1] + 1) if len(rows) < values["limit"] else None


def counted(archive: Archive, shape: Shape, values: dict[str, Any]) -> tuple[int, bool]:
    """How many there are at least, up to ``limit``, and whether these are all."""
    dialect = archive.engine.dialect
    for name in ("indication", "words"):
        asks = {one for one, _ in shape}
        if f"{name}?" in asks and asks <= {*_OF[name], f"{name}?"}:
            found = fetch(archive, _counting_one(dialect, name, shape), values)
            return int(found[0][0]), int(found[0][0]) < values["limit"]
    by, end = _way(archive, shape, values, later=False, far=_FAR_COUNTED)
    near = end is not None
    if end is not None:
        values = _bound(archive, shape, values, by, end, later=False)
    some = _counting_some(dialect, shape, by, near=near)
    number = int(fetch(archive, some, values)[0][0])
    return number, not near and number < values["limit"]


def _way(
    archive: Archive, shape: Shape, values: dict[str, Any], *, later: bool, far: int
) -> tuple[By, Place | None]:
    """What leads to the inspections, and the one after ``far`` steps; None: none is left.

    Of several that may lead through the dates, the one whose steps go farthest back.
    """
    ways = _ways(shape)
    if not isinstance(ways, list):
        return ways, None
    best: tuple[Place, By] | None = None
    for by in ways:
        step = _stepping(archive.engine.dialect, _led_by(shape, by), by, later=later)
        found = fetch(archive, step, values | {"far": far})
        if not found:
            return by, None
        best = min(best or (tuple(found[0]), by), (tuple(found[0]), by))
    assert best is not None  # noqa: S101 - there is always a way
    return best[1], best[0]


@lru_cache(256)
def _ways(shape: Shape) -> list[tuple[str, ...]] | By:
    """What may lead through the dates; alone where hardly more is met than what fits."""
    asks = dict(shape)
    if is_led(asks):
        return None
    ways = leads(asks)
    all_fit = len(ways) == 1 and asks.keys() <= {*ways[0], "since", "until"}
    return ways[0] if all_fit else ways


def _bound(
    archive: Archive, shape: Shape, values: dict[str, Any], by: By, end: Place, *, later: bool
) -> dict[str, Any]:
    """The values with where a stretch ends; for words, between which numbers it lies.

    Records are mostly taken in as they are examined, so these are little more than its own.
    """
    bound = values | {"end_day": end[0], "end_number": end[1]}
    if by is not None and dict(shape).get("words?") == "many":
        span = _spanning(archive.engine.dialect, _led_by(shape, by), by, later=later)
        bound["lowest"], bound["highest"] = fetch(archive, span, bound)[0]
    return bound


def _led_by(shape: Shape, by: tuple[str, ...]) -> Shape:
    return tuple((name, how) for name, how in shape if name in {*by, "since", "until"})


@lru_cache(256)
def _stepping(dialect: Dialect, shape: Shape, by: tuple[str, ...], *, later: bool) -> Spelled:
    """Day and number of the inspection ``far`` steps down the dates; none in a short way."""
    one = table("inspection").c
    chosen = select(one.examined_on, one.id).where(*conditions(dialect, dict(shape), by))
    end = _in_order(chosen, later=later).limit(literal_column("1")).offset(bindparam("far"))
    return spelled(end, dialect)


@lru_cache(256)
def _spanning(dialect: Dialect, shape: Shape, by: tuple[str, ...], *, later: bool) -> Spelled:
    """The lowest and the highest number in a stretch."""
    number = table("inspection").c.id
    chosen = select(func.min(number), func.max(number))
    chosen = chosen.where(*conditions(dialect, dict(shape), by), *_ended(near=True))
    return spelled(_from(chosen, later=later), dialect)


@lru_cache(256)
def paging(
    dialect: Dialect, shape: Shape, by: By, *, later: bool, near: bool = False
) -> Spelled:
    """A page, newest first, only before ``end_day`` and ``end_number`` where ``near``.

    Values ``limit`` and, for a later page, ``day`` and ``number``.
    """
    asks = conditions(dialect, dict(shape), by, near=near)
    chosen = chosen_hits().where(*asks, *_ended(near=near))
    return spelled(_in_order(chosen, later=later).limit(bindparam("limit")), dialect)


def _ended(*, near: bool) -> list[ColumnElement[bool]]:
    return [_place() > _given("end_day", "end_number")] if near else []


def _in_order(chosen: Select[Any], *, later: bool) -> Select[Any]:
    """Newest first; of a later page those after ``day`` and ``number``."""
    one = table("inspection").c
    return _from(chosen, later=later).order_by(one.examined_on.desc(), one.id.desc())


def _from(chosen: Select[Any], *, later: bool) -> Select[Any]:
    return chosen.where(_place() < _given("day", "number")) if later else chosen


def _place() -> Tuple:
    one = table("inspection").c
    return tuple_(one.examined_on, one.id)


def _given(day: str, number: str) -> Tuple:
    kind = table("inspection").c.examined_on.type
    return tuple_(bindparam(day, type_=kind), bindparam(number))


@lru_cache(256)
def _counting_some(dialect: Dialect, shape: Shape, by: By, *, near: bool) -> Spelled:
    """How many there are, counted up to ``limit`` on the way that a page goes."""
    one = table("inspection").c
    asks = conditions(dialect, dict(shape), by, near=near)
    some = select(one.id).where(*asks, *_ended(near=near))
    return _number_of(some.limit(bindparam("limit")), dialect)


@lru_cache(256)
def _counting_one(dialect: Dialect, name: str, shape: Shape) -> Spelled:
    """How many have such words or such an indication, by their own index, up to ``limit``."""
    some = numbers_of(dialect, name, dict(shape)).distinct().limit(bindparam("limit"))
    return _number_of(some, dialect)


@lru_cache(256)
def counting(dialect: Dialect, shape: Shape) -> Spelled:
    """How many there are."""
    asks = dict(shape)
    if not is_led(asks):  # nothing is met on the way, so what fits is looked up once for all
        asks |= {name: "all" for name in asks if name.endswith("?")}
    by = None if is_led(dict(shape)) else tuple(asks)
    chosen = select(func.count()).select_from(table("inspection"))
    return spelled(chosen.where(*conditions(dialect, asks, by)), dialect)


def _number_of(chosen: Select[Any], dialect: Dialect) -> Spelled:
    return spelled(select(func.count()).select_from(chosen.subquery()), dialect)
