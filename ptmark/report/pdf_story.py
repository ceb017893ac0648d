"""The story of an area over rework and retest: each test's photo side by side."""

from collections.abc import Sequence
from typing import Any

import numpy as np
import numpy.typing as npt
from reportlab.platypus import Flowable, PageBreak, Spacer

from ptmark.record import Record
from ptmark.report.pdf_photo import marked_picture
from ptmark.report.pdf_style import grid, heading, text
from ptmark.report.plate import draw_plate
from ptmark.report.wording import (
    STRICTEST,
    VERDICT_SIGN,
    called,
    disposition_words,
    measured,
    verdict_line,
)

__all__ = ["Earlier", "story"]

Pixels = npt.NDArray[np.uint8]
Earlier = tuple[Record, Pixels | None]

_MOST = 6


def story(
    record: Record, rgb: Pixels, earlier: Sequence[Earlier], room: tuple[float, float]
) -> list[Flowable]:
    """The story; nothing where the record is no retest. ``earlier`` oldest first."""
    link = record.retest_of
    if link is None:
        return []
    width, height = room
    made: list[Flowable] = [PageBreak(), *heading("The story of this area", top=0)]
    said = f"This is a retest of record {link['id']}, revision {link['revision']}, SHA-256 "
    made.append(text(f"{said}{link['sha256']}.", 7.5))
    if not earlier:
        return [*made, text(f"Its file ({link['file']}) was not at hand for this report.")]
    tests: list[Earlier] = [*earlier, (record, rgb)][-_MOST:]
    columns = min(3, len(tests))
    each = (width / columns - 8, 0.34 * height)
    cells: list[Any] = []
    for number, (one, pixels) in enumerate(tests):
        first = len(earlier) + 1 - len(tests) + number
        picture: list[Flowable] = [text("photo not at hand", 8, quiet=True)]
        if pixels is not None:
            shown = draw_plate(one, pixels, text_share=7.0 / each[0]).rgb
            picture = [marked_picture(shown, each)]
        cells.append([*picture, *_told(one, first)])
    rows = [
        [*cells[at : at + columns], *[""] * columns][:columns]
        for at in range(0, len(cells), columns)
    ]
    return [*made, Spacer(1, 4), grid(rows, [width / columns] * columns, head=0)]


def _told(one: Record, number: int) -> list[Flowable]:
    """One test in words."""
    when = one.fields.get("examination_date", "") or one.created[:10]
    name = "First test" if number == 0 else f"Retest {number}"
    rows = {row["id"]: row for view in one.views() for row in view.indications}
    count = len(rows)
    what = "no indications" if not count else f"{count} indication{'s' if count > 1 else ''}"
    longest = max(
        (row for row in rows.values() if row["length_mm"] is not None),
        key=lambda row: float(row["length_mm"]),
        default=None,
    )
    if longest is not None:
        size = measured(longest["length_mm"], longest["length_u_mm"])
        what += f", longest {longest['id']}: {size}"
    word = verdict_line(one)[0]
    lines = [
        text(f"{name}, {when}: {VERDICT_SIGN.get(word, '')} {word}", 8.5, bold=True),
        text(f"{what}.", 8),
        *(text(said, 8) for said in _standings(one)),
        text(f"Disposition: {disposition_words(one)}", 8),
    ]
    if rework := one.fields.get("rework", "").strip():
        lines.append(text(f"Rework: {rework}", 8))
    return [Spacer(1, 3), *lines]


def _standings(one: Record) -> list[str]:
    """Which letters stand how, the strictest first: what a rework is to take away."""
    stands = [pair for view in one.views() for pair in called(view).items()]
    told = []
    for word in (*STRICTEST, "non-relevant", "false"):
        letters = list(dict.fromkeys(letter for letter, stand in stands if stand == word))
        if letters:
            told.append(f"{word.capitalize()}: {', '.join(letters)}")
    return told
