"""What is asked of one indication: kind, shape and how long it is or may be.

A length that is the least it can be (it runs out of the photo, is covered, unsure at its ends
or lies in what is overexposed) fits every range that it or more would lie in: asked for 5 mm
and more, one of at least 2 mm is found, as it may be that long; asked for no more than 5 mm,
one of at least 7 mm is not.
"""

from typing import Any

from sqlalchemy import (
    ColumnElement,
    Dialect,
    Select,
    bindparam,
    func,
    literal_column,
    or_,
    select,
    union_all,
)

from ptmark.archive.patterns import fits
from ptmark.archive.rows import table

__all__ = ["OF_INDICATION", "asked_of_one", "unindexed", "with_indication"]

OF_INDICATION = ("kind", "shape", "shortest_mm", "longest_mm")


def with_indication(dialect: Dialect, shape: dict[str, str]) -> Select[Any]:
    """The numbers of inspections with such an indication.

    Those that are so long and those that may be are looked up apart, each in its own index:
    SQLite, which knows no sizes, would take one of all lengths for the few that may be longer.
    """
    one = table("indication").c
    chosen = select(one.inspection_id).where(*_besides(one, shape))
    if "shortest_mm" not in shape:
        return chosen
    given: ColumnElement[float] = bindparam("shortest_mm")
    own = one if dialect.name != "sqlite" else unindexed(one) | {"kind_key": one.kind_key}
    longer = select(one.inspection_id).where(_is_least(one), own["length_mm"] < given)
    longer = longer.where(*_besides(own, shape))
    both = union_all(chosen.where(one.length_mm >= given), longer).subquery()
    return select(both.c.inspection_id)


def asked_of_one(columns: Any, shape: dict[str, str]) -> list[ColumnElement[bool]]:  # noqa: ANN401 - columns
    """The same asked of each indication of an inspection that is met."""
    found = _besides(columns, shape)
    if "shortest_mm" in shape:
        so_long = columns["length_mm"] >= bindparam("shortest_mm")
        found.append(or_(so_long, _is_least(columns)))
    return found


def unindexed(columns: Any) -> dict[str, ColumnElement[Any]]:  # noqa: ANN401 - columns
    """Columns that no index goes by."""
    return {one.name: func.coalesce(one, None) for one in columns}


def _is_least(columns: Any) -> ColumnElement[bool]:  # noqa: ANN401 - columns
    """Spelled out, as an index is made of those alone."""
    found: ColumnElement[bool] = columns["least"] == literal_column("1")
    return found


def _besides(columns: Any, shape: dict[str, str]) -> list[ColumnElement[bool]]:  # noqa: ANN401 - columns
    """All but how long it is at least."""
    found: list[ColumnElement[bool]] = []
    if "kind" in shape:
        found += fits(columns["kind_key"], "kind", shape["kind"])
    if "shape" in shape:
        found.append(columns["shape"] == bindparam("shape"))
    if "longest_mm" in shape:
        found.append(columns["length_mm"] <= bindparam("longest_mm"))
    return found
