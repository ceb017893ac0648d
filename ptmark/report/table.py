"""The table of indications: rows for image and PDF, and the CSV file."""

from pathlib import Path
from typing import Any

from ptmark.errors import ReportError
from ptmark.files import csv_text, write_or_say
from ptmark.least import Least
from ptmark.record import FIGURES, Record, least_of, refuse_original
from ptmark.report.wording import EMPTY, VERDICT_SIGN, called, measured, shape_words, sized

__all__ = ["COLUMNS", "csv_bytes", "rows", "save", "write_csv"]

COLUMNS = (
    "",
    "Shape",
    "Length ± U, mm",
    "Path ± U, mm",
    "Width ± U, mm",
    "Ratio ± U",
    "Verdict",
)

_CSV = ("id", "shape", "shape_sure", "kind", *FIGURES)


def rows(record: Record) -> list[tuple[str, ...]]:
    """Text of the table, one row an indication, by `COLUMNS`; lengths in mm, U with k = 2."""
    stands = called(record)
    return [
        (
            one["id"],
            shape_words(one),
            sized(one, "length", unit=""),
            sized(one, "path", unit=""),
            sized(one, "width", unit=""),
            measured(one["ratio"], one["ratio_u"], unit=""),
            f"{VERDICT_SIGN.get(stands[one['id']], '')} {stands[one['id']] or EMPTY}".strip(),
        )
        for one in record.indications
    ]


def write_csv(path: Path, record: Record) -> None:
    """Write the table as CSV (RFC 4180, UTF-8), the record's own numbers, one row each.

    Raises
    ------
    ReportError
        If the file cannot be written.
    RecordError
        If one of the record's photos lies there.
    """
    refuse_original(path, record)
    save(path, csv_bytes(record))


def csv_bytes(record: Record) -> bytes:
    """The table as CSV, with the mark at the start by which spreadsheets know UTF-8.

    Of several photos, ``photo`` in front says which one a row is of; the columns at the end
    whether each reason holds why its sizes are the least (`Least`).
    """
    views = record.views()
    head = [*_CSV, "centre_x_mm", "centre_y_mm", "verdict", "relevance", "reason", "note"]
    head += Least
    table: list[list[Any]] = [head if len(views) == 1 else ["photo", *head]]
    for number, view in enumerate(views, 1):
        stands, first = called(view), [] if len(views) == 1 else [number]
        for one in view.indications:
            centre = one["centre_mm"] or ("", "")
            texts = (stands[one["id"]], one["relevance"], one["reason"], one["note"])
            row = [*first, *(one[name] for name in _CSV), *centre, *texts]
            table.append([*row, *least_of(one).values()])
    return csv_text(table).encode("utf-8-sig")


def save(path: Path, data: bytes) -> None:
    """Write a report's file whole; ReportError where the system refuses."""
    write_or_say(path, data, ReportError)
