"""The pages after the first: findings, uncertainty, scale and photo, fields, cautions."""

from collections import Counter
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt
from reportlab.platypus import CondPageBreak, Flowable, KeepTogether, PageBreak, Spacer

from ptmark.record import FIELDS, Record, completeness, process_cautions
from ptmark.report.closeup import close_ups
from ptmark.report.pages.basis import basis
from ptmark.report.pages.budget import budget_chart
from ptmark.report.pages.keeping import keeping, review_overlays
from ptmark.report.pages.photo import jpeg_picture, original_picture
from ptmark.report.pages.sketches import sketches
from ptmark.report.pages.story import Earlier, story
from ptmark.report.pages.style import grid, heading, text
from ptmark.report.wording import (
    AID,
    CONTRIBUTIONS,
    EMPTY,
    SAFETY,
    STRICTEST,
    VERDICT_SIGN,
    conformity_words,
    criteria_line,
    decision_rule_words,
    limit_words,
    measured,
    plain_words,
)

__all__ = ["cautions", "filled_in", "measured_pages", "rest", "unmarked"]

Pixels = npt.NDArray[np.uint8]

_CELL = 120  # a field longer than this, in letters, is set across the page


def rest(
    record: Record,
    rgb: Pixels,
    original: Path | None,
    room: tuple[float, float],
    earlier: Sequence[Earlier] = (),
) -> list[Flowable]:
    """The flowables after page one; ``room`` is the page's free width and height in points."""
    width = room[0]
    return [
        *measured_pages(record, rgb, width),
        *cautions(record),
        *basis(record, width),
        *filled_in(record, width),
        *keeping(record, review_overlays(record, rgb), width),
        *story(record, rgb, earlier, room),
        PageBreak(),
        *unmarked(record, rgb, original, room),
    ]


def measured_pages(record: Record, rgb: Pixels, width: float) -> list[Flowable]:
    """What one photo gave: close-ups, findings, how sure, how taken."""
    return [
        *_close_ups(record, rgb, width),
        *_findings(record, width),
        *sketches(record, width),
        *_uncertainty(record, width),
        *_taken(record, width),
    ]


_MOST_CLOSE_UPS = 24


def _close_ups(record: Record, rgb: Pixels, width: float) -> list[Flowable]:
    """Each indication large, three in a row."""
    made = close_ups(record, rgb, _MOST_CLOSE_UPS)
    if not made:
        return []
    room = (width / 3 - 6, width / 4)
    cells: list[Any] = [[jpeg_picture(one.rgb, room), text(one.caption, 7)] for one in made]
    rows = [[*cells[at : at + 3], "", ""][:3] for at in range(0, len(cells), 3)]
    said = "The measured outline as a hairline, just outside it where the indication is thin; "
    said += "pixels enlarged as they are."
    left = len(record.indications) - len(made)
    if left > 0:
        said += f" The {left} further indications are in the table."
    widths = [width / 3] * 3
    first = [
        *heading("Close-ups")[1:],
        text(said, 7, quiet=True),
        grid(rows[:1], widths, head=0),
    ]
    more = [grid(rows[1:], widths, head=0)] if rows[1:] else []
    return [KeepTogether(first), *more]


def _findings(record: Record, width: float) -> list[Flowable]:
    made = heading("Findings, rule by rule")
    evaluation = record.evaluation
    if evaluation is None:
        return [*made, text("No criteria were applied.")]
    rows: list[list[Any]] = [
        ["Rule and what it says", "Clause", "Value ± U", "Limit", "Verdict"]
    ]
    for one in sorted(evaluation["findings"], key=lambda f: STRICTEST.index(f["verdict"])):
        rows.append(_finding_row(one))
    if len(rows) == 1:
        made.append(text("No rule applied to what was found."))
    else:
        made.append(grid(rows, [width * s for s in (0.42, 0.17, 0.17, 0.09, 0.15)]))
    checked = f"Profile {evaluation['profile']}, SHA-256 {evaluation['checksum']}."
    return [
        *made,
        Spacer(1, 3),
        text(
            f"Criteria: {criteria_line(record)}. Decision rule: {decision_rule_words(record)}."
        ),
        text(checked, 7, quiet=True),
    ]


def _finding_row(one: dict[str, Any]) -> list[Any]:
    said = [
        text(one["rule"].capitalize(), 8, bold=True),
        text(one["says"], 8),
    ]
    if one.get("conformity") is not None:
        chance = conformity_words(one["conformity"])
        said.append(text(f"probability of conformity: {chance}", 7, quiet=True))
    limit = limit_words(one["limit"], one["unit"])
    value = measured(one["value"], one["u"], one["unit"])
    if " is at least " in one["says"] or " be at least " in one["says"]:
        value = f"≥ {value}"
    if not one["value"] and not one["limit"]:  # told by a name, or by where it ends
        value = limit = EMPTY
    elif not one["value"] and not one["indications"] and one["unit"] != "1":
        value = EMPTY  # nothing was there to be measured
    verdict = f"{VERDICT_SIGN[one['verdict']]} {one['verdict']}"
    return [said, one["clause"], value, limit, text(verdict, 8, bold=True)]


def _uncertainty(record: Record, width: float) -> list[Flowable]:
    made = heading("How sure the numbers are")
    rated = [one for one in record.indications if one["budget"]]
    if not rated:
        return [*made, text("Nothing was measured.")]
    said = (
        f"{plain_words(record)} The parts below are standard uncertainties of the length in "
        "mm; combined in quadrature and doubled (k = 2) they give U."
    )
    made += [text(said), Spacer(1, 3)]
    names = list(dict.fromkeys(name for one in rated for name in one["budget"]))
    rows: list[list[Any]] = [["", *names, "U (k = 2)"]]
    for one in rated:
        parts = [one["budget"].get(name) for name in names]
        shown = [EMPTY if part is None else f"{part:.4f}" for part in parts]
        rows.append([one["id"], *shown, f"{one['length_u_mm']:.4f}"])
    share = 0.93 / (len(names) + 1)
    made.append(grid(rows, [0.07 * width, *([share * width] * (len(names) + 1))], size=7.5))
    meant = "; ".join(
        f"{name}: {CONTRIBUTIONS[name]}" for name in names if name in CONTRIBUTIONS
    )
    told = [Spacer(1, 2), text(f"{meant}.", 7, quiet=True)] if meant else []
    return [*made, *told, *budget_chart(record, width)]


def _taken(record: Record, width: float) -> list[Flowable]:
    """How each indication was taken, what the inspector said of it, and what was left out."""
    evaluation = record.evaluation or {"relevance": {}, "shape": {}}
    rows: list[list[Any]] = [["", "Relevance", "Shape", "The inspector's word"]]
    for one in record.indications:
        name = one["id"]
        own = ": ".join(said for said in (one["relevance"], one["reason"]) if said)
        words = [said for said in (own, one["note"]) if said]
        relevance = evaluation["relevance"].get(name, EMPTY)
        shape = evaluation["shape"].get(name, EMPTY)
        rows.append([name, relevance, shape, "\n".join(words) or EMPTY])
    made: list[Flowable] = []
    if any(cell != EMPTY for row in rows[1:] for cell in row[1:]):
        table = grid(rows, [width * s for s in (0.06, 0.33, 0.41, 0.2)], size=7.5)
        made += [*heading("How each was taken"), table]
    if record.left_out:
        # A reason's figures stand behind a colon; they are each blob's own.
        counts = Counter(str(one["reason"]).partition(":")[0] for one in record.left_out)
        said = "; ".join(f"{reason} ({count})" for reason, count in counts.most_common())
        what = "spot was" if len(record.left_out) == 1 else "spots were"
        made += [
            *heading("Left out"),
            text(f"{len(record.left_out)} {what} not called: {said}."),
        ]
    return made


def cautions(record: Record) -> list[Flowable]:
    """Everything a reader should know first: of the set, each photo, the criteria, the work."""
    views = record.views()
    rated = [view.evaluation["cautions"] for view in views if view.evaluation is not None]
    profile = list(dict.fromkeys(said for some in rated for said in some))
    named = [("this record" if len(views) == 1 else "photo 1", record.cautions)]
    named += [(f"photo {number}", view.cautions) for number, view in enumerate(views[1:], 2)]
    if record.together is not None:
        named.insert(0, ("the set", record.together["cautions"]))
    made = heading("Cautions")
    for title, lines in (
        *((f"Of {of}", [one for one in said if one not in profile]) for of, said in named),
        ("Of the process", process_cautions(record)),
        ("Of the criteria", profile),
        ("Of the verdict", AID),
        ("Of the work", SAFETY),
    ):
        if lines:
            made += [CondPageBreak(50), Spacer(1, 3), text(title, 8.5, bold=True)]
            made += [text(f"• {line[:1].upper()}{line[1:]}") for line in lines]
    return made


def filled_in(record: Record, width: float) -> list[Flowable]:
    """Everything a person filled in, by groups; what was left empty is named at the end."""
    made = heading("Examination record")
    missing = [one.label for one in completeness(record)]
    if missing:
        made += [text(f"Still missing: {', '.join(missing)}.", bold=True), Spacer(1, 2)]
    known = {one.key for one in FIELDS}
    extra = [(key.replace("_", " "), key, "Other") for key in record.fields if key not in known]
    entries = [(one.label, one.key, one.group) for one in FIELDS] + extra
    empty = []
    for group in dict.fromkeys(group for _, _, group in entries):
        told = [
            (label, record.fields.get(key, "").strip())
            for label, key, part in entries
            if part == group
        ]
        filled = [(label, said) for label, said in told if said]
        if left := ", ".join(label for label, said in told if not said):
            empty.append(f"{group}: {left}.")
        if not filled:
            continue
        cells: list[list[Flowable]] = [
            [text(label, 7, quiet=True), text(said, 8)]
            for label, said in filled
            if len(said) <= _CELL
        ]
        rows = [[*cells[at : at + 4], "", "", ""][:4] for at in range(0, len(cells), 4)]
        made += [CondPageBreak(50), Spacer(1, 4), text(group, 9, bold=True)]
        if rows:
            made.append(grid(rows, [width / 4] * 4, head=0))
        for label, said in filled:
            if len(said) > _CELL:
                made += [Spacer(1, 2), text(label, 7, quiet=True), text(said, 8)]
    if empty:
        made += [CondPageBreak(50), Spacer(1, 5), text("Not stated", 9, bold=True)]
        made += [text(said, 7, quiet=True) for said in empty]
    return made


def unmarked(
    record: Record, rgb: Pixels, original: Path | None, room: tuple[float, float]
) -> list[Flowable]:
    """The photo as it was taken, on a page of its own."""
    told = []
    if original is not None and (record.photo.get("camera") or {}).get("has_location"):
        told.append("The camera stored the place where it was taken; it stays in the file.")
    if (profile := record.photo.get("color_profile") or "sRGB") != "sRGB":
        told.append(f"Its colours are those of {profile}, as the file says to its viewer.")
    picture, says = original_picture(record, rgb, original, (room[0], room[1] - 95))
    return [
        *heading("The photo, unmarked", top=0),
        text(f"{record.photo['file']}. {says}"),
        *(text(line, 7.5) for line in told),
        text(f"SHA-256 {record.photo['sha256']}", 7.5),
        Spacer(1, 6),
        picture,
    ]
