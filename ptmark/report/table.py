"""The table of indications: rows for image and PDF, and the CSV file."""

from pathlib import Path
from typing import Any

from ptmark.errors import ReportError
from ptmark.files import csv_text, write_or_say
from ptmark.least import Least
from ptmark.record import FIGURES, Record, least_of, refuse_original
from ptmark.report.wording import (
    EMPTY,
    VERDICT_SIGN,
    called,
    judged_in,
    measured,
    shape_words,
    sized,
)

__all__ = ["columns", "csv_bytes", "rows", "save", "write_csv"]

_IN_MM = {
    "": 0.06,
    "Shape": 0.17,
    "Length ± U, mm": 0.16,
    "Path ± U, mm": 0.15,
    "Width ± U, mm": 0.15,
    "Ratio ± U": 0.14,
    "Verdict": 0.17,
}
# Of a code in inches the length is told as the code's limits are, and in mm as it was measured.
_IN_INCHES = {
    "": 0.04,
    "Shape": 0.115,
    "Length ± U, in": 0.155,
    "Length ± U, mm": 0.155,
    "Path ± U, mm": 0.14,
    "Width ± U, mm": 0.14,
    "Ratio ± U": 0.13,
    "Verdict": 0.125,
}

_CSV = ("id", "shape", "shape_sure", "kind", *FIGURES)


def columns(record: Record) -> dict[str, float]:
    """Heads of the table's columns and each one's share of the width."""
    return _IN_INCHES if judged_in(record) == "in" else _IN_MM


def rows(record: Record) -> list[tuple[str, ...]]:
    """Text of the table, one row an indication, by `columns`; U with k = 2."""
    stands = called(record)
    inches = judged_in(record) == "in"
    return [
        (
            one["id"],
            shape_words(one),
            *([sized(one, "length", "in", named=False)] if inches else []),
            *(sized(one, what, named=False) for what in ("length", "path", "width")),
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
