"""Pages and counts of a query: met on the way through the dates, a stretch at a time."""

from functools import lru_cache
from typing import Any, NamedTuple

from sqlalchemy import (
    BindParameter,
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
    EACH,
    Shape,
    chosen_hits,
    conditions,
    is_led,
    leads,
    numbers_of,
    way_of,
)
from ptmark.archive.fetching import fetch
from ptmark.archive.lengths import OF_INDICATION
from ptmark.archive.opening import Archive
from ptmark.archive.rows import table
from ptmark.archive.spelled import Spelled, spelled
from ptmark.archive.worded import (
    BY_WORDS,
    PLACE,
    day_and_number,
    is_dated,
    place_of,
    span_of,
    stepping_words,
    within_span,
)

__all__ = ["counted", "counting", "paged", "paging"]

_FAR = 2000  # inspections that are looked at, one after the other, for one page
_FAR_COUNTED = 8000
_FAR_LISTED = 8000  # of those with the words, where something else leads
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
    way = _way(archive, shape, values, later=later, far=_FAR, whole=whole)
    near = way.end is not None
    page = paging(dialect, way.shape, way.by, later=later, near=near)
    rows = fetch(archive, page, way.values)
    if way.end is None or len(rows) == values["limit"]:
        return rows, None
    return rows, (way.end[0], way.end[1] + 1)


def counted(archive: Archive, shape: Shape, values: dict[str, Any]) -> tuple[int, bool]:
    """How many there are at least, up to ``limit``, and whether these are all."""
    dialect, asks = archive.engine.dialect, dict(shape)
    for name in ("indication", "words"):
        alone = f"{name}?" in asks or (name == "words" and is_dated(asks))
        if alone and asks.keys() <= {*_OF[name], f"{name}?"}:
            found = fetch(archive, _counting_one(dialect, name, shape), values)
            return int(found[0][0]), int(found[0][0]) < values["limit"]
    way = _way(archive, shape, values, later=False, far=_FAR_COUNTED)
    near = way.end is not None
    some = _counting_some(dialect, way.shape, way.by, near=near)
    number = int(fetch(archive, some, way.values)[0][0])
    return number, not near and number < values["limit"]


class _Way(NamedTuple):
    """How inspections are met; ``end``: the one where a stretch stops, None at their end."""

    by: By
    shape: Shape
    values: dict[str, Any]
    end: Place | None


def _way(
    archive: Archive,
    shape: Shape,
    values: dict[str, Any],
    *,
    later: bool,
    far: int,
    whole: bool = False,
) -> _Way:
    """What leads to the inspections, and a stretch of ``far`` steps unless ``whole``."""
    dated = "first_place" in values  # words are asked, by an index that lists by date
    if dated:
        values = values | span_of(values, later=later)
    by, end = _leading(archive, shape, values, later=later, far=far)
    if dated and by != BY_WORDS:
        if "words?" not in dict(shape):
            more = _step(archive, shape, by, values | {"far": EACH}, later=later)
            shape += (("words?", "each" if more is None else "listed"),)
        if dict(shape)["words?"] == "listed":
            if first := _step(archive, shape, by, values | {"far": 0}, later=later):
                values["first_place"] = place_of(*first)
            far_listed = _step(archive, shape, BY_WORDS, values | {"far": _FAR_LISTED})
            end = max(filter(None, (end, far_listed)), default=None)
    if whole or end is None:
        return _Way(by, shape, values, None)
    bound = values | {"end_day": end[0], "end_number": end[1]}
    if dated:
        bound["last_place"] = min(values["last_place"], place_of(*end) - 1)
    return _Way(by, shape, bound, end)


def _leading(
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
        found = _step(archive, shape, by, values | {"far": far}, later=later)
        if found is None:
            return by, None
        best = min(best or (found, by), (found, by))
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


def _step(
    archive: Archive, shape: Shape, by: By, values: dict[str, Any], *, later: bool = False
) -> Place | None:
    """Day and number of the inspection ``far`` steps down a way; None in a shorter one."""
    dialect = archive.engine.dialect
    if by is None:
        return None
    if by == BY_WORDS:
        found = fetch(archive, stepping_words(dialect), values)
        return day_and_number(found[0][0]) if found else None
    step = _stepping(dialect, _led_by(shape, by), by, later=later)
    found = fetch(archive, step, values)
    return tuple(found[0]) if found else None


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
def paging(
    dialect: Dialect, shape: Shape, by: By, *, later: bool, near: bool = False
) -> Spelled:
    """A page, newest first, only before ``end_day`` and ``end_number`` where ``near``.

    Values ``limit`` and, for a later page, ``day`` and ``number``.
    """
    chosen = chosen_hits(by).where(*conditions(dialect, dict(shape), by))
    return spelled(_stretch(chosen, by, later=later, near=near), dialect)


def _stretch(
    chosen: Select[Any], by: By, *, later: bool, near: bool, sort: bool = True
) -> Select[Any]:
    """As many as ``limit`` of what is chosen, between the ends of a stretch."""
    limit: BindParameter[int] = bindparam("limit")
    if by == BY_WORDS:  # by place alone: SQLite walks no index where it has to compare more
        chosen = chosen.where(*within_span())
        return (chosen.order_by(PLACE) if sort else chosen).limit(limit)
    if near:
        chosen = chosen.where(_place() > _given("end_day", "end_number"))
    chosen = _in_order(chosen, later=later) if sort else _from(chosen, later=later)
    return chosen.limit(limit)


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
    asks = conditions(dialect, dict(shape), by)
    some = select(one.id).select_from(way_of(by)).where(*asks)
    return _number_of(_stretch(some, by, later=False, near=near, sort=False), dialect)


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
        asks |= {"words?": "all"} if is_dated(asks) else {}
    by = None if is_led(dict(shape)) else tuple(asks)
    chosen = select(func.count()).select_from(table("inspection"))
    return spelled(chosen.where(*conditions(dialect, asks, by)), dialect)


def _number_of(chosen: Select[Any], dialect: Dialect) -> Spelled:
    return spelled(select(func.count()).select_from(chosen.subquery()), dialect)
