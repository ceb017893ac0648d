"""Finding inspections and indications: newest first, page by page, each at one cost."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import repeat
from typing import Any, NamedTuple

from sqlalchemy import Connection, select

from ptmark.archive.asking import COLUMNS, asked
from ptmark.archive.fetching import fetch
from ptmark.archive.named import all_named, drop_named, set_named
from ptmark.archive.opening import Archive
from ptmark.archive.paging import counted, counting, paged
from ptmark.archive.query import Query, query_from_json, query_to_json
from ptmark.archive.rows import document_of, table
from ptmark.errors import ArchiveError
from ptmark.files import csv_text
from ptmark.record import Record
from ptmark.record.store import parsed

__all__ = [
    "COLUMNS",
    "Hit",
    "Page",
    "count",
    "count_some",
    "drop_search",
    "find",
    "find_all",
    "found_csv",
    "hits_of",
    "indications_of",
    "photos_in",
    "photos_of",
    "record_bytes",
    "record_of",
    "save_search",
    "saved_search",
    "saved_searches",
]


class Hit(NamedTuple):
    """One inspection found, in the order of `COLUMNS`; ``number`` is the archive's own."""

    record_id: str
    part: str
    serial: str
    examined_on: str
    revision: int
    signatures: int
    verdict: str
    disposition: str
    indications: int
    longest_mm: float | None
    longest_u_mm: float | None  # expanded, k = 2
    longest_least: int  # 1 where one of its indications may be longer
    examiner: str
    procedure: str
    profile: str
    retest_of: str | None
    sha256: str
    number: int

    def to_json(self) -> dict[str, Any]:
        """As plain data, in the order of `COLUMNS`."""
        return {**self._asdict(), "longest_least": bool(self.longest_least)}


@dataclass(frozen=True, slots=True)
class Page:
    """Some hits, newest first; ``after`` asks for the next page, None at the end.

    ``back_to`` is set where looking stopped before the page was full: all that was examined
    after that day is looked through, the rest is left to the next page.
    """

    hits: list[Hit]
    after: tuple[str, int] | None
    back_to: str = ""


def hits_of(rows: Iterable[Any]) -> list[Hit]:
    """Rows of `asking.chosen_hits` as hits."""
    return list(map(tuple.__new__, repeat(Hit), rows))  # a third of the cost of Hit._make


def find(
    archive: Archive,
    query: Query,
    *,
    after: tuple[str, int] | None = None,
    limit: int = 50,
    whole: bool = True,
) -> Page:
    """A page of the inspections that fit, newest examination first.

    Parameters
    ----------
    archive : Archive
    query : Query
    after : (date, number) or None
        ``after`` of the page before. What is added meanwhile moves no later page.
    limit : int
        Most hits on the page.
    whole : bool
        Look until the page is full or nothing is left, however far that is. Otherwise a page
        costs the same however large the archive is: where many fit each thing that is asked and
        hardly any all of them, it stops after a stretch of the dates and says so.
    """
    shape, values = asked(archive, query)
    values["limit"] = limit + 1
    if after is not None:
        values["day"], values["number"] = after
    rows, end = paged(archive, shape, values, later=after is not None, whole=whole)
    hits = hits_of(rows[:limit])
    if len(rows) > limit:
        return Page(hits, (hits[-1].examined_on, hits[-1].number))
    return Page(hits, end, "" if end is None else end[0])


def find_all(archive: Archive, query: Query) -> Iterator[Hit]:
    """Every inspection that fits, page after page."""
    page = find(archive, query, limit=500)
    yield from page.hits
    while page.after is not None:
        page = find(archive, query, after=page.after, limit=500)
        yield from page.hits


def count(archive: Archive, query: Query) -> int:
    """How many inspections fit; some tenths of a second where a million indications fit."""
    shape, values = asked(archive, query)
    return int(fetch(archive, counting(archive.engine.dialect, shape), values)[0][0])


def count_some(archive: Archive, query: Query, most: int) -> tuple[int, bool]:
    """How many inspections fit at least, at one cost however large the archive is.

    Returns
    -------
    (int, bool)
        Counted no further than one more than ``most``; True where no more fit than these.
    """
    shape, values = asked(archive, query)
    values["limit"] = most + 1
    return counted(archive, shape, values)


def found_csv(hits: "Iterator[Hit] | list[Hit]") -> str:
    """Hits as CSV (RFC 4180), lengths in mm."""
    return csv_text([COLUMNS, *(one.to_json().values() for one in hits)])


def record_bytes(archive: Archive, record_id: str) -> bytes:
    """A record's file, byte for byte as it was taken in.

    Raises
    ------
    ArchiveError
        If the archive has no such record.
    """
    with archive.reading() as conn:
        return document_of(conn, record_id)


def record_of(archive: Archive, record_id: str) -> Record:
    """A record as the archive keeps it.

    Raises
    ------
    ArchiveError
        If the archive has no such record.
    RecordError
        If what it keeps is none.
    """
    return Record.from_json(
        parsed(record_bytes(archive, record_id), record_id), where=record_id
    )


def indications_of(archive: Archive, record_id: str) -> list[dict[str, Any]]:
    """The rows of a record's indications, by letter; lengths and places in mm."""
    one, inspection = table("indication"), table("inspection")
    chosen = select(one).join(inspection, inspection.c.id == one.c.inspection_id)
    chosen = chosen.where(inspection.c.record_id == record_id).order_by(one.c.letter)
    with archive.reading() as conn:
        return [dict(row) for row in conn.execute(chosen).mappings()]


def photos_of(archive: Archive, record_id: str) -> list[dict[str, Any]]:
    """A record's photos: ``sha256``, ``name``, ``suffix``, ``bytes``, its own first."""
    with archive.reading() as conn:
        return photos_in(conn, record_id)


def photos_in(conn: Connection, record_id: str) -> list[dict[str, Any]]:
    """As `photos_of`, of the state that a connection sees."""
    link, photo, inspection = table("inspection_photo"), table("photo"), table("inspection")
    chosen = (
        select(photo.c.sha256, link.c.name, photo.c.suffix, photo.c.bytes)
        .join(link, link.c.sha256 == photo.c.sha256)
        .join(inspection, inspection.c.id == link.c.inspection_id)
        .where(inspection.c.record_id == record_id)
        .order_by(link.c.place)
    )
    return [dict(row) for row in conn.execute(chosen).mappings()]


def save_search(archive: Archive, name: str, query: Query) -> None:
    """Keep a query under a name; one of the same name is replaced."""
    set_named(archive, "saved_search", {"name": name, "query": query_to_json(query)})


def saved_searches(archive: Archive) -> dict[str, Query]:
    """All saved queries by name."""
    with archive.reading() as conn:
        rows = all_named(conn, "saved_search")
    return {name: query_from_json(row["query"]) for name, row in rows.items()}


def drop_search(archive: Archive, name: str) -> None:
    """Delete a saved query; ArchiveError where there is none of this name."""
    if not drop_named(archive, "saved_search", name):
        raise ArchiveError(f"no search is saved as '{name}'", mend="see archive find --list")


def saved_search(archive: Archive, name: str) -> Query:
    """A saved query; ArchiveError where there is none of this name."""
    try:
        return saved_searches(archive)[name]
    except KeyError:
        raise ArchiveError(
            f"no search is saved as '{name}'", mend="see archive find --list"
        ) from None
