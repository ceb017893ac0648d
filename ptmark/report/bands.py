"""Header, table and verdict of the annotated image, each a band as wide as the picture."""

from math import ceil

import numpy as np
import numpy.typing as npt

from ptmark.record import Record, process_cautions
from ptmark.report.lettering import Band, wrap
from ptmark.report.palette import INK, NAVY, PALE, QUIET, SHADE
from ptmark.report.table import columns, rows
from ptmark.report.verdict_words import verdict_line
from ptmark.report.wording import (
    AID,
    EMPTY,
    VERDICT_SIGN,
    criteria_line,
    deciding,
    decision_rule_words,
    disposition_words,
    scale_line,
    table_note,
)

__all__ = ["head_band", "table_band", "verdict_band"]

Picture = npt.NDArray[np.uint8]


def head_band(record: Record, width: int, unit: float, number: int = 0) -> Picture:
    """Title, verdict and what was examined; ``number`` from 0 says which photo of the set."""
    view = record.views()[number]
    band = Band(width, unit, NAVY)
    band.skip(0.7)
    word, _ = verdict_line(record)
    sign = VERDICT_SIGN.get(word, "")
    band.put(band.pad, band.y, "Penetrant inspection", size=1.7, bold=True, color=PALE)
    verdict = f"{sign} {word.upper()}".strip()
    right = Band(width, unit).put(0, 0, verdict, size=1.7, bold=True)
    band.put(width - band.pad - right, band.y, verdict, size=1.7, bold=True, color=PALE)
    band.skip(2.6)
    _facts(band, _head_facts(record, number), columns=4)
    for name, text in (("Scale", scale_line(view)), ("Criteria", criteria_line(record))):
        band.put(band.pad, band.y, name, size=0.8, color=PALE)
        band.paragraph(text, x=band.pad + 4.4 * unit, size=0.95, color=(236, 242, 250))
    band.skip(0.5)
    return band.picture()


def _head_facts(record: Record, number: int) -> list[tuple[str, str]]:
    fields, views = record.fields, record.views()
    own = views[number].photo
    photo = f"{own['file']} ({own['sha256'][:12]})"
    if len(views) > 1:
        photo = f"{number + 1} of {len(views)}, {photo}"
    return [
        ("Part", fields.get("part_number", "")),
        ("Serial", fields.get("serial_number", "")),
        ("Weld", fields.get("weld_number", "")),
        (
            "Date",
            fields.get("examination_date", "") or f"{record.created[:10]} (of the record)",
        ),
        ("Procedure", fields.get("procedure", "")),
        ("Examiner", fields.get("examiner", "")),
        ("Disposition", record.disposition["decision"] or "not decided yet"),
        ("Photo", photo),
    ]


def _facts(band: Band, facts: list[tuple[str, str]], columns: int) -> None:
    """Small labels with their values below, in columns; long values wrap."""
    room = (band.width - 2 * band.pad) / columns
    for start in range(0, len(facts), columns):
        top, deepest = band.y, band.y
        for index, (name, text) in enumerate(facts[start : start + columns]):
            x = band.pad + index * room
            band.put(x, top, name, size=0.8, color=PALE)
            band.y = top + 1.05 * band.unit
            band.paragraph(
                text or EMPTY, x=x, width=room - band.unit, bold=True, color=(236, 242, 250)
            )
            deepest = max(deepest, band.y)
        band.y = deepest
        band.skip(0.45)


def table_band(record: Record, width: int, unit: float) -> Picture:
    """The table of indications, in two columns where it is long."""
    band = Band(width, unit)
    made = rows(record)
    band.skip(0.8)
    if not made:
        band.paragraph("No indications.", bold=True)
        band.skip(0.5)
        return band.picture()
    blocks = 2 if len(made) > 12 else 1
    room = (width - 2 * band.pad - (blocks - 1) * 1.5 * unit) / blocks
    per = ceil(len(made) / blocks)
    top, deepest = band.y, band.y
    for block in range(blocks):
        band.y = top
        x = band.pad + block * (room + 1.5 * unit)
        _block(band, x, room, made[block * per : (block + 1) * per], columns(record))
        deepest = max(deepest, band.y)
    band.y = deepest
    band.skip(0.35)
    band.paragraph(
        table_note(record),
        size=0.8,
        color=QUIET,
    )
    band.skip(0.3)
    return band.picture()


def _block(
    band: Band,
    x: float,
    room: float,
    made: list[tuple[str, ...]],
    heads: dict[str, float],
) -> None:
    shares = list(heads.values())
    starts = [x + room * sum(shares[:i]) for i in range(len(shares))]
    size = 0.92 if room > 44 * band.unit else 0.8
    band.box(
        x - 0.3 * band.unit,
        band.y - 0.15 * band.unit,
        x + room,
        band.y + 1.2 * band.unit,
        SHADE,
    )
    for start, name in zip(starts, heads, strict=True):
        band.put(start, band.y, name, size=0.8 * size, color=QUIET)
    band.skip(1.5)
    for row in made:
        top, lines = band.y, 1
        for index, (start, text) in enumerate(zip(starts, row, strict=True)):
            wide = room * shares[index] - 0.3 * band.unit
            bold = index in {0, len(row) - 1}
            set_ = wrap(text, wide, size * band.unit, bold=bold)
            lines = max(lines, len(set_))
            for number, line in enumerate(set_):
                band.put(
                    start, top + number * 1.2 * size * band.unit, line, size=size, bold=bold
                )
        band.y = top + (0.25 + 1.2 * lines) * size * band.unit
        band.box(
            x - 0.3 * band.unit,
            band.y - 0.12 * band.unit,
            x + room,
            band.y - 0.08 * band.unit,
            SHADE,
        )


def verdict_band(record: Record, width: int, unit: float, number: int = 0) -> Picture:
    """Verdict with the rules that decided, how uncertainty was taken, and the cautions.

    Of a set it is the set's, with what this photo, ``number`` from 0, says of its own.
    """
    view = record.views()[number]
    band = Band(width, unit, SHADE)
    band.skip(0.7)
    word, sentence = verdict_line(record)
    sign = VERDICT_SIGN.get(word, "")
    band.paragraph(f"{sign} {word.capitalize()}: {sentence}".strip(), size=1.25, bold=True)
    if record.more_photos:
        own, said = verdict_line(view)
        band.paragraph(f"This photo: {own}: {said}", size=0.95)
    if record.verdict is not None:
        band.paragraph(f"Decision rule: {decision_rule_words(record)}.", size=0.95)
    _deciding(band, record)
    band.paragraph(f"Disposition: {disposition_words(record)}", bold=True)
    band.skip(0.3)
    of_set = (record.together or {"cautions": ()})["cautions"]
    cautions = dict.fromkeys((*of_set, *view.cautions, *process_cautions(record)))
    for text in (*(f"! {one[:1].upper()}{one[1:]}" for one in cautions), *AID):
        band.paragraph(text, size=0.85, color=INK)
    band.paragraph(
        f"Record {record.id}, made {record.created}, {record.software}. Photo SHA-256 "
        f"{view.photo['sha256']}.",
        size=0.75,
        color=QUIET,
    )
    band.skip(0.6)
    return band.picture()


def _deciding(band: Band, record: Record) -> None:
    """The findings that decided; of an acceptable verdict those nearest to a limit."""
    found = deciding(record)
    acceptable = verdict_line(record)[0] == "acceptable"
    if acceptable and found:
        band.paragraph("Nearest to a limit:", size=0.95)
    most = 3 if acceptable else 8
    left = band.pad + 0.6 * band.unit
    for one in found[:most]:
        clause = f" ({one['clause']})" if one["clause"] else ""
        band.paragraph(f"• {one['says']}{clause}", x=left, size=0.95)
    if len(found) > most and not acceptable:
        band.paragraph(f"and {len(found) - most} more findings, in the report.", x=left)
