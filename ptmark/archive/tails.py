"""Ends of part and serial numbers, from each letter on, by which letters within find them.

``*0417`` and ``*04*`` ask for a beginning of one of them, which an index answers at one cost
however many numbers there are. The rows follow from the numbers and can be made again.
"""

from collections.abc import Iterator
from functools import lru_cache

from sqlalchemy import Connection, Dialect, Table, delete, func, insert, select

from ptmark.archive.models import TAIL_LETTERS, Base
from ptmark.archive.spelled import Spelled, put, spelled

__all__ = ["TAILS", "keep_tails", "mend_tails", "tail_rows", "tails_hold"]

TAILS = ("part_tail", "serial_tail")
_MANY = 2000  # numbers whose ends are written in one go


def keep_tails(conn: Connection, name: str, number: int, key: str) -> None:
    """Write the ends of a new part's or serial's key; ``number`` is its own in the database."""
    if rows := list(tail_rows(number, key)):
        put(conn, _adding(conn.dialect, f"{name}_tail"), rows)


def tail_rows(number: int, key: str) -> Iterator[dict[str, object]]:
    """The rows of a key's ends.

    Examples
    --------
    >>> [row["tail"] for row in tail_rows(1, "s-4")]
    ['s-4', '-4', '4']
    """
    plain = key.partition("\0")[0]  # SQLite reads no further in a text
    for place in range(len(plain)):
        yield {"tail": plain[place : place + TAIL_LETTERS], "owner": number, "place": place}


@lru_cache(8)
def _adding(dialect: Dialect, name: str) -> Spelled:
    return spelled(insert(_table(name)), dialect)


def tails_hold(conn: Connection, name: str) -> bool:
    """Whether the ends are those of the numbers that stand there, all of them and no others."""
    tail, own = _table(name), _table(name.removesuffix("_tail"))
    ends = func.substr(own.c.key, tail.c.place + 1, TAIL_LETTERS)
    joined = tail.outerjoin(own, own.c.id == tail.c.owner)
    wrong = select(tail.c.owner).select_from(joined).where(tail.c.tail.is_distinct_from(ends))
    if conn.execute(wrong.limit(1)).first() is not None:
        return False
    counted = select(tail.c.owner, func.count().label("rows"))
    counted = counted.add_columns(func.count(tail.c.place.distinct()).label("places"))
    there = counted.group_by(tail.c.owner).subquery()
    length = func.length(own.c.key)
    short = (func.coalesce(there.c.rows, 0) != length) | (
        func.coalesce(there.c.places, 0) != length
    )
    joined = own.outerjoin(there, there.c.owner == own.c.id)
    short_of = select(own.c.id).select_from(joined).where(short)
    return conn.execute(short_of.limit(1)).first() is None


def mend_tails(conn: Connection, name: str) -> None:
    """Make all of them again."""
    tail, own = _table(name), _table(name.removesuffix("_tail"))
    conn.execute(delete(tail))
    for chunk in conn.execute(select(own.c.id, own.c.key)).partitions(_MANY):
        rows = [row for number, key in chunk for row in tail_rows(number, key)]
        if rows:
            put(conn, _adding(conn.dialect, name), rows)


def _table(name: str) -> Table:
    return Base.metadata.tables[name]
