"""What was seen of a part number over the years, and of a serial."""

from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

from sqlalchemy import Dialect, bindparam, func, select, text

from ptmark.archive.asking import chosen_hits
from ptmark.archive.derive import fold
from ptmark.archive.fetching import fetch
from ptmark.archive.finding import Hit, hits_of
from ptmark.archive.opening import Archive
from ptmark.archive.rows import table
from ptmark.archive.spelled import Spelled, spelled

__all__ = ["PartHistory", "Period", "part_history", "serial_history"]


_REJECTED = frozenset({"reject", "rework and retest"})


class Period(NamedTuple):
    """One year: counts, lengths in mm (None without any), share rejected by disposition.

    Longest and mean are the least that they can be where ``longest_least``.
    """

    year: str
    inspections: int
    indications: int
    rejected: int
    disposed: int
    longest_mm: float | None
    longest_u_mm: float | None
    longest_least: bool
    mean_mm: float | None

    @property
    def reject_rate(self) -> float | None:
        """Rejected or sent to rework, over all that were disposed of."""
        return self.rejected / self.disposed if self.disposed else None


@dataclass(frozen=True, slots=True, kw_only=True)
class PartHistory:
    """All inspections of a part number, oldest first, and the years."""

    part: str
    hits: list[Hit]
    periods: list[Period]


def part_history(archive: Archive, part: str) -> PartHistory:
    """The history of one part number, capitals aside; empty where it was never seen."""
    dialect, key = archive.engine.dialect, {"part": fold(part)}
    hits = hits_of(fetch(archive, _hits(dialect), key))
    sums = {row[0]: row[1:] for row in fetch(archive, _lengths(dialect), key)}
    by_year: dict[str, list[Hit]] = {}
    for hit in hits:
        by_year.setdefault(hit.examined_on[:4], []).append(hit)
    return PartHistory(
        part=part,
        hits=hits,
        periods=[
            _period(year, mine, *sums.get(year, (0, 0.0))) for year, mine in by_year.items()
        ],
    )


@lru_cache(8)
def _hits(dialect: Dialect) -> Spelled:
    """A part's inspections, oldest first."""
    one, there = table("inspection"), table("part")
    mine = chosen_hits().where(there.c.key == bindparam("part"))
    return spelled(mine.order_by(one.c.examined_on, one.c.id), dialect)


@lru_cache(8)
def _lengths(dialect: Dialect) -> Spelled:
    """For each year: how many lengths a part's indications have, and their sum."""
    one, there, rows = (table(name) for name in ("inspection", "part", "indication"))
    year = func.substr(one.c.examined_on, text("1"), text("4"))
    chosen = select(year, func.count(rows.c.length_mm), func.sum(rows.c.length_mm))
    chosen = chosen.join(there, there.c.id == one.c.part_id)
    chosen = chosen.join(rows, rows.c.inspection_id == one.c.id)
    chosen = chosen.where(there.c.key == bindparam("part"))
    return spelled(chosen.group_by(text("1")), dialect)


def _period(year: str, mine: list[Hit], lengths: int, total_mm: float | None) -> Period:
    indications = rejected = disposed = 0
    least = False
    longest_mm: float | None = None
    longest_u_mm: float | None = None
    for hit in mine:
        indications += hit.indications
        rejected += hit.disposition in _REJECTED
        disposed += hit.disposition != ""
        least = least or bool(hit.longest_least)
        if longest_mm is None or (hit.longest_mm or 0.0) > longest_mm:
            longest_mm, longest_u_mm = hit.longest_mm, hit.longest_u_mm
    return Period(
        year=year,
        inspections=len(mine),
        indications=indications,
        rejected=rejected,
        disposed=disposed,
        longest_mm=longest_mm,
        longest_u_mm=longest_u_mm,
        longest_least=least,
        mean_mm=total_mm / lengths if lengths and total_mm is not None else None,
    )


def serial_history(archive: Archive, part: str, serial: str) -> list[Hit]:
    """The inspections of one serial, oldest first; a retest names what it follows."""
    one, there, own = table("inspection"), table("part"), table("serial")
    chosen = chosen_hits().where(there.c.key == fold(part), own.c.key == fold(serial))
    with archive.reading() as conn:
        rows = conn.execute(chosen.order_by(one.c.examined_on, one.c.id))
        return hits_of(rows)
