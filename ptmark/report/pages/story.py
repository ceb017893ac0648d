"""The story of an area over rework and retest: each test's photo side by side."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt
from reportlab.platypus import Flowable, PageBreak, Spacer

from ptmark.record import Record
from ptmark.report.pages.photo import marked_picture
from ptmark.report.pages.style import grid, heading, text
from ptmark.report.plate import draw_plate, frame_size
from ptmark.report.retest import retest_doubts
from ptmark.report.verdict_words import verdict_line
from ptmark.report.wording import STRICTEST, VERDICT_SIGN, called, disposition_words, sized

__all__ = ["Earlier", "story"]

Pixels = npt.NDArray[np.uint8]

_MOST = 6
_COLUMNS = 2


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Earlier:
    """A test before the retest: its upright photo, where at hand, and what came after.

    ``became`` says in words what became of its indications in the next test.
    """

    record: Record
    rgb: Pixels | None
    became: tuple[str, ...] = ()


def story(
    record: Record, rgb: Pixels, earlier: Sequence[Earlier], room: tuple[float, float]
) -> list[Flowable]:
    """The story; nothing where the record is no retest. ``earlier`` oldest first."""
    link = record.retest_of
    if link is None:
        return []
    width, height = room
    made: list[Flowable] = [PageBreak(), *heading("The story of this area", top=0)]
    if earlier:
        before = _known_as(earlier[-1].record)
        made.append(text(f"This is a retest of {before}.", 8.5, bold=True))
    said = f"The earlier record: {link['id']}, revision {link['revision']}, SHA-256 "
    made.append(text(f"{said}{link['sha256']}.", 7.5))
    if not earlier:
        return [*made, text(f"Its file ({link['file']}) was not at hand for this report.")]
    made.append(text(_HOW, 7.5, quiet=True))
    tests = [*earlier, Earlier(record=record, rgb=rgb)]
    each = (width / _COLUMNS - 8, 0.3 * height)
    cells: list[Any] = []
    for number, one in enumerate(tests):
        picture: list[Flowable] = [text("photo not at hand", 8, quiet=True)]
        if one.rgb is not None:
            picture = [marked_picture(_small_plate(one.record, one.rgb, each), each)]
        since = tests[number - 1].became if number else ()
        doubts = retest_doubts(tests[number - 1].record, one.record) if number else []
        look = [text(f"Look again: {doubt}", 8, bold=True) for doubt in doubts]
        cells.append([*picture, *_told(one.record, number, since), *look])
    cells = cells[-_MOST:]
    rows = [
        [*cells[at : at + _COLUMNS], *[""] * _COLUMNS][:_COLUMNS]
        for at in range(0, len(cells), _COLUMNS)
    ]
    return [*made, Spacer(1, 4), grid(rows, [width / _COLUMNS] * _COLUMNS, head=0)]


_HOW = (
    "Each test names its own indications; the same letter in two tests is not the same "
    "indication. Where the photos could be laid over each other, what became of each is told."
)


def _known_as(one: Record) -> str:
    """A record as people name it: part, serial and date."""
    part = one.fields.get("part_number", "").strip() or "a part without a number"
    serial = one.fields.get("serial_number", "").strip() or "not given"
    return f"{part}, serial {serial}, tested on {_tested_on(one)}"


def _tested_on(one: Record) -> str:
    return one.fields.get("examination_date", "") or one.created[:10]


def _small_plate(record: Record, rgb: Pixels, room: tuple[float, float]) -> Pixels:
    wide, high = frame_size(rgb)
    printed = min(room[0], room[1] * wide / high)
    return draw_plate(record, rgb, text_share=7.0 / printed, key=False).rgb


def _told(one: Record, number: int, since: Sequence[str]) -> list[Flowable]:
    """One test in words; ``since`` says what became of the test before."""
    name = "First test" if number == 0 else f"Retest {number}"
    rows = {row["id"]: row for view in one.views() for row in view.indications}
    count = len(rows)
    what = "No indications" if not count else f"{count} indication{'s' if count > 1 else ''}"
    longest = max(
        (row for row in rows.values() if row["length_mm"] is not None),
        key=lambda row: float(row["length_mm"]),
        default=None,
    )
    if longest is not None:
        size = sized(longest, "length")
        what += f", longest {longest['id']}: {size}"
    word = verdict_line(one)[0]
    lines = [
        text(f"{name}, {_tested_on(one)}: {VERDICT_SIGN.get(word, '')} {word}", 8.5, bold=True),
        text(f"{what}.", 8),
        *(text(said, 8) for said in _standings(one)),
        *([text("Since the test before:", 8, bold=True)] if since else []),
        *(text(f"• {said}", 8) for said in since),
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
