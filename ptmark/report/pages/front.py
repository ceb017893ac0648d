"""Page one of the PDF: what was examined, the verdict in words, the marked photo, the table."""

import numpy as np
import numpy.typing as npt
from reportlab.platypus import Flowable, Spacer, Table, TableStyle

from ptmark.record import FIELDS, Record, process_cautions
from ptmark.report.company import Company
from ptmark.report.pages.head import head
from ptmark.report.pages.photo import Picture, marked_picture
from ptmark.report.pages.style import BOLD, PLAIN, color, grid, heading, text
from ptmark.report.palette import NAVY, PALE, SHADE
from ptmark.report.plate import draw_plate, frame_size
from ptmark.report.set_words import photo_title
from ptmark.report.table import columns, rows
from ptmark.report.verdict_words import nothing_line, verdict_line
from ptmark.report.wording import (
    AID,
    EMPTY,
    VERDICT_SIGN,
    criteria_line,
    deciding,
    decision_rule_words,
    disposition_words,
    measured,
    plain_words,
    table_note,
)

__all__ = ["front", "photo_page"]

Pixels = npt.NDArray[np.uint8]

_FACTS = (
    "part_name",
    "part_number",
    "serial_number",
    "weld_number",
    "material",
    "thickness",
    "surface_condition",
    "examined_area",
    "procedure",
    "examination_date",
    "examiner",
    "job_number",
)
_LETTER_PT = 7.5  # size of text on the printed photo


def front(
    record: Record, rgb: Pixels, room: tuple[float, float], firm: Company | None = None
) -> list[Flowable]:
    """The flowables of page one; ``room`` is the page's free width and height in points."""
    width, height = room
    made: list[Flowable] = [
        head(record, width, firm),
        Spacer(1, 4),
        _verdict(record, width),
        Spacer(1, 5),
        _facts(record, width),
        Spacer(1, 5),
    ]
    share = 0.56
    if record.more_photos:
        made.append(text(photo_title(record, 0), 8.5, bold=True))
        share = 0.48
    view = record.views()[0]
    return [*made, _marked(view, rgb, (width, share * height)), *_table(view, width)]


def photo_page(
    record: Record, number: int, rgb: Pixels, room: tuple[float, float]
) -> list[Flowable]:
    """The page of a further photo of the set, ``number`` from 0: its verdict, marked, table."""
    width, height = room
    view = record.views()[number]
    word, sentence = verdict_line(view)
    said = f"{VERDICT_SIGN.get(word, '')} {word.capitalize()}: {sentence}".strip()
    named = [] if word == "acceptable" else deciding(view)[:3]
    return [
        *heading(photo_title(record, number), top=0),
        text(said, 9.5, bold=True),
        *(text(one["says"]) for one in named),
        Spacer(1, 5),
        _marked(view, rgb, (width, 0.62 * height)),
        *_table(view, width, explained=False),
    ]


def _table(record: Record, width: float, *, explained: bool = True) -> list[Flowable]:
    """The indications; what their figures mean stands under the first photo's alone."""
    if not record.indications:
        return [Spacer(1, 5), text(nothing_line(record))]
    made = heading("Indications", top=7)
    heads = columns(record)
    table = grid([tuple(heads), *rows(record)], [width * share for share in heads.values()])
    if not explained:
        return [*made, table]
    told = [text(plain_words(record), 8), text(table_note(record), 7, quiet=True)]
    return [*made, table, Spacer(1, 3), *told]


def _marked(record: Record, rgb: Pixels, room: tuple[float, float]) -> Picture:
    """The marked photo, its letters sized for the printed page."""
    frame_width, frame_height = frame_size(rgb)
    printed = min(room[0], room[1] * 0.92 * frame_width / frame_height)
    return marked_picture(draw_plate(record, rgb, text_share=_LETTER_PT / printed).rgb, room)


def _reserve(record: Record) -> list[Flowable]:
    """What the verdict must not be read without: outlines nobody looked at, and cautions."""
    views = record.views()
    standing = [one["standing"] for view in views for one in view.indications]
    made: list[Flowable] = []
    if unseen := standing.count("suggested"):
        told = f"{unseen} of {len(standing)} outlines are suggestions"
        made.append(text(f"{told} that nobody has looked at.", bold=True))
    said = {one for view in views for one in view.cautions}
    said |= set((record.together or {"cautions": ()})["cautions"])
    for view in views:
        said -= set((view.evaluation or {"cautions": ()})["cautions"])  # told of the criteria
    said |= set(process_cautions(record))
    if said:
        what = "1 caution" if len(said) == 1 else f"{len(said)} cautions"
        made.append(text(f"{what} of this record: see Cautions."))
    return made


def _verdict(record: Record, width: float) -> Table:
    """The verdict in words, with what it was judged by and what the inspector decided."""
    word, sentence = verdict_line(record)
    said = f"{VERDICT_SIGN.get(word, '')} {word.upper()}".strip()
    findings = [] if word == "acceptable" else deciding(record)
    named, more = findings[:3], len(findings) - 3
    lines = [
        text(sentence, 9.5, bold=True),
        *(text(f"• {one['says']}") for one in named),
        *([text(f"• and {more} more: see Findings.")] if more > 0 else []),
        *_reserve(record),
        Spacer(1, 4),
        text(f"Disposition: {disposition_words(record)}", bold=True),
        Spacer(1, 4),
        text(f"Criteria: {criteria_line(record)}", 7, quiet=True),
        text(f"Decision rule: {decision_rule_words(record)}", 7, quiet=True),
        text(AID[0], 7, quiet=True),
    ]
    size = 15 if len(said) < 14 else 12
    left = Table([[said]], colWidths=[0.28 * width])
    left.setStyle(
        TableStyle(
            [
                ("FONT", (0, 0), (-1, -1), BOLD, size),
                ("TEXTCOLOR", (0, 0), (-1, -1), color(PALE)),
                ("LEADING", (0, 0), (-1, -1), 1.2 * size),
                ("ALIGN", (0, 0), (-1, -1), "CENTER"),
            ]
        )
    )
    made = Table([[left, lines]], colWidths=[0.28 * width, 0.72 * width], hAlign="LEFT")
    made.setStyle(
        TableStyle(
            [
                ("FONTNAME", (0, 0), (-1, -1), PLAIN),
                ("BACKGROUND", (0, 0), (0, 0), color(NAVY)),
                ("BACKGROUND", (1, 0), (1, 0), color(SHADE)),
                ("VALIGN", (0, 0), (0, 0), "MIDDLE"),
                ("VALIGN", (1, 0), (1, 0), "TOP"),
                ("LEFTPADDING", (0, 0), (0, 0), 0),
                ("RIGHTPADDING", (0, 0), (0, 0), 0),
                ("LEFTPADDING", (1, 0), (1, 0), 7),
            ]
        )
    )
    return made


def _facts(record: Record, width: float, columns: int = 4) -> Table:
    labels = {one.key: one.label for one in FIELDS}
    told = dict(record.fields)
    if record.thickness_mm is not None and not told.get("thickness", "").strip():
        told["thickness"] = measured(record.thickness_mm)  # given for the rules alone
    cells: list[list[Flowable]] = [
        [text(labels[key], 6.5, quiet=True), text(_short(told.get(key, "")), 8.5)]
        for key in _FACTS
    ]
    made = [cells[start : start + columns] for start in range(0, len(cells), columns)]
    table = Table(made, colWidths=[width / columns] * columns, hAlign="LEFT")
    table.setStyle(
        TableStyle(
            [
                ("FONTNAME", (0, 0), (-1, -1), PLAIN),
                ("VALIGN", (0, 0), (-1, -1), "TOP"),
                ("LEFTPADDING", (0, 0), (-1, -1), 0),
                ("TOPPADDING", (0, 0), (-1, -1), 0),
                ("BOTTOMPADDING", (0, 0), (-1, -1), 2),
            ]
        )
    )
    return table


def _short(said: str) -> str:
    """A field's text as page one has room for it; the whole stands in the fields' list."""
    said = " ".join(said.split())
    return EMPTY if not said else said if len(said) <= 90 else f"{said[:88]} …"
