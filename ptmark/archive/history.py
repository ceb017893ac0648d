"""What was seen of a part number over the years, of a serial, and where on the part."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import numpy.typing as npt
from sqlalchemy import Dialect, bindparam, func, select, text

from ptmark.archive.asking import chosen_hits
from ptmark.archive.derive import fold
from ptmark.archive.finding import Hit, hits_of
from ptmark.archive.named import all_named, set_named
from ptmark.archive.opening import Archive
from ptmark.archive.rows import table
from ptmark.archive.spelled import Spelled, fetch, spelled
from ptmark.errors import ArchiveError

__all__ = [
    "PartHistory",
    "Period",
    "PlaceMap",
    "Seen",
    "part_history",
    "place_map",
    "place_record",
    "serial_history",
]


_REJECTED = frozenset({"reject", "rework and retest"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Period:
    """One year: counts, lengths in mm (None without any), share rejected by disposition."""

    year: str
    inspections: int
    indications: int
    rejected: int
    disposed: int
    longest_mm: float | None
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


@dataclass(frozen=True, slots=True)
class Seen:
    """One indication on the part: centre and ends in mm of the part's frame."""

    record_id: str
    serial: str
    letter: str
    kind: str
    length_mm: float | None
    centre_mm: tuple[float, float]
    ends_mm: tuple[tuple[float, float], tuple[float, float]]


@dataclass(frozen=True, slots=True, eq=False)
class PlaceMap:
    """Where indications were seen.

    ``counts`` of shape (rows, columns), int: records with an indication that crosses the cell;
    cell (0, 0) begins at the box's (x0, y0), x along columns, y along rows. ``left_out`` are
    records whose place on the part is not known.
    """

    seen: list[Seen]
    counts: npt.NDArray[np.int64]
    box_mm: tuple[float, float, float, float]
    cell_mm: float
    records: int
    left_out: int


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
    longest_mm: float | None = None
    for hit in mine:
        indications += hit.indications
        rejected += hit.disposition in _REJECTED
        disposed += hit.disposition != ""
        if longest_mm is None or (hit.longest_mm or 0.0) > longest_mm:
            longest_mm = hit.longest_mm
    return Period(
        year=year,
        inspections=len(mine),
        indications=indications,
        rejected=rejected,
        disposed=disposed,
        longest_mm=longest_mm,
        mean_mm=total_mm / lengths if lengths and total_mm is not None else None,
    )


def serial_history(archive: Archive, part: str, serial: str) -> list[Hit]:
    """The inspections of one serial, oldest first; a retest names what it follows."""
    one, there, own = table("inspection"), table("part"), table("serial")
    chosen = chosen_hits().where(there.c.key == fold(part), own.c.key == fold(serial))
    with archive.reading() as conn:
        rows = conn.execute(chosen.order_by(one.c.examined_on, one.c.id))
        return hits_of(rows)


def place_record(
    archive: Archive, record_id: str, matrix: tuple[float, ...], why: str = ""
) -> None:
    """Say where a record's surface lies on the part.

    Parameters
    ----------
    archive : Archive
    record_id : str
    matrix : (a, b, c, d, e, f)
        X = a x + b y + c, Y = d x + e y + f; x, y mm of the record, X, Y mm of the part.
    why : str
        How it was found, such as by two holes.

    Raises
    ------
    ArchiveError
        If it has no area, or is not six finite numbers.
    """
    if len(matrix) != 6 or not np.isfinite(matrix).all():
        raise ArchiveError(f"{matrix} are not six numbers", where=record_id)
    a, b, c, d, e, f = matrix
    if abs(a * e - b * d) < 1e-9:
        raise ArchiveError(f"{matrix} maps the surface to a line", where=record_id)
    row = {"a": a, "b": b, "c": c, "d": d, "e": e, "f": f}
    set_named(archive, "placement", {"record_id": record_id, **row, "why": why})


def place_map(
    archive: Archive,
    part: str,
    *,
    datum: str = "",
    cell_mm: float = 1.0,
    box_mm: tuple[float, float, float, float] | None = None,
) -> PlaceMap:
    """Lay the indications of all serials of a part number over each other.

    Parameters
    ----------
    archive : Archive
    part : str
    datum : str
        Records that give this location datum are laid over each other as they are; the
        others need a placement (`place_record`). Without it, only placed ones count.
    cell_mm : float
    box_mm : (x0, y0, x1, y1) or None
        What part of the part's frame; all that was seen if None.

    Raises
    ------
    ArchiveError
        If the cells are not of a sensible size.
    """
    if not cell_mm > 0:
        raise ArchiveError(f"a cell of {cell_mm} mm is none", where="cell")
    one, there, own, rows = (
        table(name) for name in ("inspection", "part", "serial", "indication")
    )
    ends = (rows.c.x1_mm, rows.c.y1_mm, rows.c.x2_mm, rows.c.y2_mm)
    chosen = (
        select(one.c.record_id, own.c.number, one.c.datum, rows.c.letter, rows.c.kind)
        .add_columns(rows.c.length_mm, rows.c.x_mm, rows.c.y_mm, *ends)
        .join(there, there.c.id == one.c.part_id)
        .join(own, own.c.id == one.c.serial_id)
        .join(rows, rows.c.inspection_id == one.c.id)
        .where(there.c.key == fold(part), rows.c.x_mm.is_not(None), rows.c.relevance != "false")
        .order_by(one.c.id, rows.c.letter)
    )
    seen, records, lost = [], set(), set()
    with archive.reading() as conn:
        placed = all_named(conn, "placement")
        for row in conn.execute(chosen):
            mapped = placed.get(row.record_id)
            if mapped is None and (not datum or fold(row.datum) != fold(datum)):
                lost.add(row.record_id)
                continue
            matrix = (1, 0, 0, 0, 1, 0) if mapped is None else [mapped[k] for k in "abcdef"]
            points = np.array(row[6:12], dtype=float).reshape(3, 2)
            x, y = (
                points @ np.array([matrix[:2], matrix[3:5]]).T + [matrix[2], matrix[5]]
            ).T.tolist()
            records.add(row.record_id)
            places = list(zip(x, y, strict=True))
            seen.append(
                Seen(row[0], row[1], row[3], row[4], row[5], places[0], (places[1], places[2]))
            )
    box = box_mm or _box(seen, cell_mm)
    return PlaceMap(seen, _counts(seen, box, cell_mm), box, cell_mm, len(records), len(lost))


def _box(seen: list[Seen], cell: float) -> tuple[float, float, float, float]:
    points = np.array([p for one in seen for p in one.ends_mm] or [(0.0, 0.0)])
    low = np.floor(points.min(axis=0) / cell) * cell
    high = np.maximum((np.floor(points.max(axis=0) / cell) + 1) * cell, low + cell)
    return (*map(float, low), *map(float, high))  # type: ignore[return-value]


def _counts(
    seen: Iterable[Seen], box: tuple[float, float, float, float], cell: float
) -> npt.NDArray[np.int64]:
    """Records in each cell; an indication is sampled along its ends, four times a cell."""
    x0, y0, x1, y1 = box
    shape = (max(round((y1 - y0) / cell), 1), max(round((x1 - x0) / cell), 1))
    if shape[0] * shape[1] > 4_000_000:
        raise ArchiveError(f"{shape[1]} × {shape[0]} cells are too many", mend="larger cells")
    touched: set[tuple[str, int, int]] = set()
    for one in seen:
        first, last = np.array(one.ends_mm)
        count = int(np.hypot(*(last - first)) / cell * 4) + 2
        points = first + (last - first) * np.linspace(0, 1, count)[:, None]
        cells = np.floor((points - (x0, y0)) / cell).astype(int)
        inside = ((cells >= 0) & (cells < shape[::-1])).all(axis=1)
        touched |= {(one.record_id, int(row), int(col)) for col, row in cells[inside]}
    counts = np.zeros(shape, dtype=np.int64)
    for _, row, column in touched:
        counts[row, column] += 1
    return counts
