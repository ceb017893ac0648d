"""Where on a part indications were seen: records of many serials laid over each other."""

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt
from sqlalchemy import func, select

from ptmark.archive.derive import fold
from ptmark.archive.named import all_named, set_named
from ptmark.archive.opening import Archive
from ptmark.archive.rows import table
from ptmark.errors import ArchiveError

__all__ = [
    "PlaceMap",
    "Seen",
    "datums",
    "place_map",
    "place_record",
    "placements",
    "seen_by_cell",
]


@dataclass(frozen=True, slots=True)
class Seen:
    """One indication on the part: centre and ends in mm of the part's frame.

    Its length is the least that it can be where ``least``.
    """

    record_id: str
    serial: str
    letter: str
    kind: str
    length_mm: float | None
    length_u_mm: float | None
    centre_mm: tuple[float, float]
    ends_mm: tuple[tuple[float, float], tuple[float, float]]
    least: bool


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


def placements(archive: Archive) -> dict[str, tuple[float, ...]]:
    """The six numbers of `place_record` by record; records laid by their datum have none."""
    with archive.reading() as conn:
        rows = all_named(conn, "placement")
    return {name: tuple(row[key] for key in "abcdef") for name, row in rows.items()}


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
    tips = (rows.c.x1_mm, rows.c.y1_mm, rows.c.x2_mm, rows.c.y2_mm)
    chosen = (
        select(one.c.record_id, own.c.number, one.c.datum, rows.c.letter, rows.c.kind)
        .add_columns(rows.c.length_mm, rows.c.length_u_mm, rows.c.x_mm, rows.c.y_mm, *tips)
        .add_columns(rows.c.least)
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
            points = np.array(row[7:13], dtype=float).reshape(3, 2)
            x, y = (
                points @ np.array([matrix[:2], matrix[3:5]]).T + [matrix[2], matrix[5]]
            ).T.tolist()
            records.add(row.record_id)
            places = list(zip(x, y, strict=True))
            ends = (places[1], places[2])
            facts = (row[0], row[1], row[3], row[4], row[5], row[6])
            seen.append(Seen(*facts, places[0], ends, bool(row.least)))
    box = box_mm or _box(seen, cell_mm)
    return PlaceMap(seen, _counts(seen, box, cell_mm), box, cell_mm, len(records), len(lost))


def _box(seen: list[Seen], cell: float) -> tuple[float, float, float, float]:
    points = np.array([p for one in seen for p in one.ends_mm] or [(0.0, 0.0)])
    low = np.floor(points.min(axis=0) / cell) * cell
    high = np.maximum((np.floor(points.max(axis=0) / cell) + 1) * cell, low + cell)
    return (*map(float, low), *map(float, high))  # type: ignore[return-value]


def seen_by_cell(places: PlaceMap) -> dict[tuple[int, int], list[Seen]]:
    """The indications that cross each cell of the map, by its row and column."""
    found: dict[tuple[int, int], list[Seen]] = {}
    for one in places.seen:
        for at in _crossed(one, places.box_mm, places.cell_mm):
            found.setdefault(at, []).append(one)
    return found


def datums(archive: Archive, part: str) -> dict[str, int]:
    """The location datums of a part number's records, "" for none, and how many give each."""
    one, there = table("inspection"), table("part")
    chosen = select(one.c.datum, func.count()).join(there, there.c.id == one.c.part_id)
    chosen = chosen.where(there.c.key == fold(part)).group_by(one.c.datum)
    found: dict[str, int] = {}
    spelled_as: dict[str, str] = {}
    with archive.reading() as conn:
        for datum, number in conn.execute(chosen.order_by(func.count().desc(), one.c.datum)):
            name = spelled_as.setdefault(fold(datum), datum)
            found[name] = found.get(name, 0) + int(number)
    return found


def _counts(
    seen: Iterable[Seen], box: tuple[float, float, float, float], cell: float
) -> npt.NDArray[np.int64]:
    """Records in each cell."""
    x0, y0, x1, y1 = box
    shape = (max(round((y1 - y0) / cell), 1), max(round((x1 - x0) / cell), 1))
    if shape[0] * shape[1] > 4_000_000:
        raise ArchiveError(f"{shape[1]} × {shape[0]} cells are too many", mend="larger cells")
    touched: set[tuple[str, int, int]] = set()
    for one in seen:
        touched |= {(one.record_id, row, column) for row, column in _crossed(one, box, cell)}
    counts = np.zeros(shape, dtype=np.int64)
    for _, row, column in touched:
        if row < shape[0] and column < shape[1]:
            counts[row, column] += 1
    return counts


def _crossed(
    one: Seen, box: tuple[float, float, float, float], cell: float
) -> set[tuple[int, int]]:
    """Row and column of the cells an indication crosses; sampled four times a cell."""
    first, last = np.array(one.ends_mm)
    count = int(np.hypot(*(last - first)) / cell * 4) + 2
    points = first + (last - first) * np.linspace(0, 1, count)[:, None]
    cells = np.floor((points - box[:2]) / cell).astype(int)
    return {(int(row), int(column)) for column, row in cells[(cells >= 0).all(axis=1)]}
