"""What a reader should know of a record before relying on it."""

from collections.abc import Mapping, Sequence
from datetime import date
from math import pi
from typing import Any

import numpy as np

from ptmark.criteria import Evaluation
from ptmark.criteria.wording import listed
from ptmark.dye import lighting_remark
from ptmark.least import Least
from ptmark.process import process_told
from ptmark.record.entry import Entry
from ptmark.record.model import Record
from ptmark.scale import SurfaceMap, far_caution

__all__ = ["DEPARTS", "cautions_of", "departs", "process_cautions"]

# Area over that of a stroke as long and wide with round ends. Red pens and threads of the
# stress set have 0.91 to 0.99, its hairlines of one width 0.86 to 0.96, most cracks that taper
# up to 0.89.
AS_DRAWN, LINEAR = 0.90, 3.0
MOST_RIM = 1.2  # over the stroke's own: stars have 1.3 to 1.8, strokes at most 1.0

_REASON = 500  # letters told of it

# Of what the sizes are the least that they can be, in the order in which it is told.
_LEAST = {
    Least.RUNS_OUT: "Ends at the photo's edge: {names}. Its sizes are the least that they can "
    "be; take another photo that shows it whole.",
    Least.COVERED: "An end may be covered: {names}. Its sizes are the least that they can be; "
    "uncover and develop all of it, and take another photo.",
    Least.ENDS_UNSURE: "Stands in haze, rust, grain, a red reflection, beside paint or where "
    "the file lost its colour, so that its ends may not show: {names}. Its sizes are the least "
    "that they can be; clean and test the part again, go closer, or trace it by hand where you "
    "see that it ends.",
    Least.OVEREXPOSED: "On overexposed developer: {names}. Its sizes are the least that they "
    "can be; take another photo with a lower exposure.",
}

DEPARTS = "The disposition departs from the verdict and gives no reason."


def cautions_of(
    surface: SurfaceMap | None,
    entries: Sequence[Entry],
    evaluation: Evaluation | None,
    disposition: tuple[str, str],
    remarks: Sequence[str] = (),
    dropped: Sequence[Mapping[str, Any]] = (),
) -> list[str]:
    """Everything a reader should know of this record before relying on it, each once.

    ``dropped`` is what a person dropped, as `Record.given` holds it.
    """
    said: list[str] = []
    if surface is None:
        said.append("No scale is set: nothing is measured and no verdict can be given.")
    elif evaluation is None:
        said.append("No acceptance criteria are chosen: there is no verdict.")
    open_ = [one.id for one in entries if one.standing == "suggested"]
    if open_:
        said.append(
            f"Not yet looked at by a person: {', '.join(open_)}. The verdict counts them; "
            "take or drop each."
        )
    said += _drawn_caution(entries, fluorescent=_fluorescent(remarks))
    if evaluation is None:  # else the verdict says so itself
        said += _least_cautions(entries)
    bare = [one.id for one in entries if one.relevance and not one.reason.strip()]
    if bare:
        said.append(f"Set aside without a reason: {', '.join(bare)}. Give the reason.")
    said += _dropped_cautions(dropped)
    unsure = [one.id for one in entries if one.measurement and not one.measurement.shape_sure]
    if unsure:
        said.append(
            f"Linear or rounded is not sure for {', '.join(unsure)}: judged as the stricter."
        )
    missing = [one.id for one in entries if surface is not None and one.measurement is None]
    if missing and evaluation is None:  # else the verdict says so itself
        said.append(
            f"Not measured: {', '.join(missing)}. The surface turns away too far there; take "
            "another photo from that side."
        )
    far = far_caution(surface, {one.id: one.outline_px for one in entries})
    if far:
        said.append(far)
    if departs(None if evaluation is None else evaluation.verdict, *disposition):
        said.append(DEPARTS)
    said += remarks
    said += list(surface.cautions) if surface else []
    said += list(evaluation.cautions) if evaluation else []
    return list(dict.fromkeys(said))


def _dropped_cautions(dropped: Sequence[Mapping[str, Any]]) -> list[str]:
    """What was called and taken out again, by reason: nothing else in a report tells of it."""
    by_reason: dict[str, list[str]] = {}
    for one in dropped:
        by_reason.setdefault(one["reason"].strip(), []).append(one["id"])
    said = []
    for given, names in by_reason.items():
        told, reason = listed(names), given[:_REASON]
        if reason:
            said.append(f"Dropped by a person and not judged: {told}. Reason: {reason.strip()}")
        else:
            said.append(f"Dropped without a reason and not judged: {told}. Give the reason.")
    return said


def _least_cautions(entries: Sequence[Entry]) -> list[str]:
    """What makes sizes the least that they can be."""
    said = []
    for why, says in _LEAST.items():
        made = ((one.id, one.measurement) for one in entries)
        names = [name for name, one in made if one is not None and why in one.least]
        if names:
            said.append(says.format(names=", ".join(names)))
    return said


def _fluorescent(remarks: Sequence[str]) -> bool:
    """Whether the photo was looked at as one under UV-A, which its remarks then say."""
    lighting = lighting_remark("fluorescent")
    return lighting is not None and lighting.says in remarks


def _drawn_caution(entries: Sequence[Entry], *, fluorescent: bool) -> list[str]:
    drawn = [one.id for one in entries if one.standing == "suggested" and _as_drawn(one)]
    names = ", ".join(drawn)
    if not drawn:
        return []
    if fluorescent:  # lint as a false indication under UV-A: common practice, no source
        return [
            f"Of one width with blunt ends, like a thread or a highlighter's stroke: {names}. "
            "Lint, paper and highlighter ink glow under UV-A as penetrant does: look at the "
            "part, and drop what is none."
        ]
    return [
        f"Of one width with blunt ends, like a pen stroke or a thread: {names}. "
        "Red ink has the colour of dye: look at the part, and drop what is none."
    ]


def _as_drawn(one: Entry) -> bool:
    """Whether an outline has one width from end to end; a crack can have it too."""
    made = one.measurement
    if made is None:
        return False
    path, width = made.path.value, made.width.value
    stroke = (path - width) * width + pi / 4 * width**2
    sides = made.outline_mm - np.roll(made.outline_mm, 1, axis=0)
    rim = float(np.hypot(sides[:, 0], sides[:, 1]).sum())
    branches = rim > MOST_RIM * (2 * (path - width) + pi * width)
    return path > LINEAR * width and made.area.value > AS_DRAWN * stroke and not branches


def departs(verdict: str | None, decision: str, reason: str) -> bool:
    """Whether a disposition departs from the verdict and gives no reason."""
    away = (decision == "accept" and verdict != "acceptable") or (
        decision in {"reject", "rework and retest"} and verdict == "acceptable"
    )
    return away and not reason.strip()


def process_cautions(record: Record) -> list[str]:
    """What its fields tell of a process outside its limits, as they are now."""
    remarks = [said for view in record.views() for said in view.cautions]
    return process_told(
        record.fields,
        record.process,
        made=date.fromisoformat(record.created[:10]),
        fluorescent=_fluorescent(remarks),
    )
