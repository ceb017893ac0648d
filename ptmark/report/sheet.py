"""The record as a spreadsheet (Office Open XML): the same numbers, the same bytes each time."""

import io
import re
import zipfile
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from ptmark.least import Least
from ptmark.record import FIELDS, FIGURES, Record, least_of, process_cautions
from ptmark.report.table import save
from ptmark.report.verdict_words import verdict_line
from ptmark.report.wording import AID, called, criteria_line, decision_rule_words

if TYPE_CHECKING:
    from openpyxl.worksheet.worksheet import Worksheet

__all__ = ["sheet_bytes", "write_sheet"]

Row = list[object]

_EPOCH = (1980, 1, 1, 0, 0, 0)  # the earliest a ZIP can say


def write_sheet(path: Path, record: Record) -> None:
    """Write the spreadsheet.

    Raises
    ------
    ReportError
        If the file cannot be written.
    """
    save(path, sheet_bytes(record))


def sheet_bytes(record: Record) -> bytes:
    """The spreadsheet: indications, findings, uncertainty, fields; numbers stay numbers."""
    from openpyxl import Workbook

    book = Workbook()
    for sheet in list(book):
        book.remove(sheet)
    sheets = [
        ("Indications", _each(record, _indications)),
        ("Findings", _each(record, _findings)),
        *((f"Uncertainty{name}", _uncertainty(view)) for name, view in _named(record)),
        ("Record", _facts(record)),
    ]
    if record.more_photos:
        sheets.insert(1, ("Seen again", _seen_again(record)))
    for title, rows in sheets:
        _fill(book.create_sheet(title), rows)
    out = io.BytesIO()
    book.save(out)
    return _settled(out.getvalue(), record.created)


def _fill(sheet: "Worksheet", rows: list[Row]) -> None:
    from openpyxl.styles import Font

    for number, row in enumerate(rows, 1):
        for column, value in enumerate(row, 1):
            cell = sheet.cell(number, column)
            if isinstance(value, str):
                plain = "".join(c if c.isprintable() or c == "\n" else " " for c in value)
                cell.value = plain[:32_000]  # a cell holds 32 767 letters
                cell.data_type = "s"  # text that starts with = is no formula
            else:
                cell.value = value  # type: ignore[assignment]
            if number == 1:
                cell.font = Font(bold=True)
    sheet.freeze_panes = "A2"
    for column, name in enumerate(rows[0]):
        sheet.column_dimensions[chr(ord("A") + column)].width = max(11, len(str(name)) + 2)


def _each(record: Record, rows_of: Callable[[Record], list[Row]]) -> list[Row]:
    """The rows of every photo under one head; of several, the photo's number in front."""
    views = record.views()
    if len(views) == 1:
        return rows_of(record)
    made: list[Row] = [["photo", *rows_of(record)[0]]]
    for number, view in enumerate(views, 1):
        made += [[number, *row] for row in rows_of(view)[1:]]
    return made


def _seen_again(record: Record) -> list[Row]:
    """Sizes of what several photos show; the one of record is marked."""
    names = ("length_mm", "length_u_mm", "width_mm", "width_u_mm", "en")
    shown = record.rows()
    rows: list[Row] = [["id", "photo", "of_record", *names, *Least]]
    for one in (record.together or {"seen_again": ()})["seen_again"]:
        for size in one["sizes"]:
            held = "yes" if size["photo"] == one["of_record"] else ""
            least = least_of(shown[size["photo"], one["id"]]).values()
            own = (size[name] for name in names)
            rows.append([one["id"], size["photo"], held, *own, *least])
    return rows


def _indications(record: Record) -> list[Row]:
    stands = called(record)
    head: Row = ["id", "shape", "shape_sure", "kind", *FIGURES, "centre_x_mm", "centre_y_mm"]
    rows = [[*head, "verdict", "relevance", "reason", "note", *Least]]
    for one in record.indications:
        values = [one[name] for name in ("id", "shape", "shape_sure", "kind", *FIGURES)]
        texts = [stands[one["id"]], one["relevance"], one["reason"], one["note"]]
        centre = one["centre_mm"] or (None, None)
        rows.append([*values, *centre, *texts, *least_of(one).values()])
    return rows


def _findings(record: Record) -> list[Row]:
    names = ("rule", "clause", "value", "u", "limit", "unit", "verdict", "says")
    rows: list[Row] = [["indications", *names]]
    for one in record.evaluation["findings"] if record.evaluation else ():
        rows.append([", ".join(one["indications"]), *(one[name] for name in names)])
    return rows


def _uncertainty(record: Record) -> list[Row]:
    """Standard uncertainties of the length, mm, and U with k = 2."""
    parts = list(
        dict.fromkeys(name for one in record.indications for name in one["budget"] or ())
    )
    rows: list[Row] = [["id", *parts, "U (k = 2)"]]
    for one in record.indications:
        budget = one["budget"] or {}
        rows.append([one["id"], *(budget.get(name) for name in parts), one["length_u_mm"]])
    return rows


def _named(record: Record) -> list[tuple[str, Record]]:
    """Each photo with what its sheet's title ends in; its contributions are its own."""
    views = record.views()
    return [
        ("" if len(views) == 1 else f" photo {number}", view)
        for number, view in enumerate(views, 1)
    ]


def _photo_facts(name: str, view: Record) -> list[Row]:
    return [
        [f"Photo{name.removeprefix(' photo')}", view.photo["file"]],
        [f"Photo{name.removeprefix(' photo')} SHA-256", view.photo["sha256"]],
        [f"Scale{name}", view.scale["reference"]],
        [f"Millimetres per pixel{name}", view.scale["mm_per_px"]],
    ]


def _facts(record: Record) -> list[Row]:
    named = _named(record)
    rows: list[Row] = [
        ["what", "value"],
        ["Record", record.id],
        ["Revision", record.revision],
        ["Made", record.created],
        *(row for name, view in named for row in _photo_facts(name, view)),
        ["Criteria", criteria_line(record)],
        ["Decision rule", decision_rule_words(record)],
        ["Verdict", verdict_line(record)[0]],
        ["Disposition", record.disposition["decision"]],
        ["Reason", record.disposition["reason"]],
    ]
    rows += [
        [one.label, record.fields[one.key]] for one in FIELDS if record.fields.get(one.key)
    ]
    cautions = list((record.together or {"cautions": ()})["cautions"])
    cautions += [said for _, view in named for said in view.cautions]
    cautions += process_cautions(record)
    return rows + [["Caution", said] for said in dict.fromkeys((*cautions, *AID))]


def _settled(data: bytes, created: str) -> bytes:
    """The same file without the time of writing: the same record gives the same bytes."""
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(out, "w") as new:
        for entry in sorted(old.namelist()):
            content = old.read(entry)
            if entry == "docProps/core.xml":
                stamp = created[:19] + "Z"
                content = re.sub(rb">[\d-]+T[\d:.]+Z<", b">" + stamp.encode() + b"<", content)
            info = zipfile.ZipInfo(entry, _EPOCH)
            info.compress_type = zipfile.ZIP_DEFLATED
            new.writestr(info, content)
    return out.getvalue()
