"""What a record tells of a process outside its limits, with the inspector's reasons."""

from collections.abc import Mapping
from datetime import date
from typing import Any

from ptmark.process.checks import CHECKED, cautions
from ptmark.process.held import PRACTICE, HeldAgainst
from ptmark.process.limits import STAGES, Stage, judge_time, limit_words, minutes_of

__all__ = ["deviation_parts", "process_told", "tells_fluorescent"]


def process_told(
    fields: Mapping[str, str],
    process: Mapping[str, Any] | None = None,
    *,
    made: date,
    fluorescent: bool = False,
) -> list[str]:
    """One caution for each field outside its limits, with the reason that was given.

    Parameters
    ----------
    fields, process : mappings
        Of `ptmark.record.Record`; the usual limits hold where it names no practice.
    made : date
        Of the record, which dates are held against where no examination date can be read.
    fluorescent : bool
        Whether the photo was looked at as one under UV-A; else as the fields tell.

    Examples
    --------
    >>> told = process_told({"development_time": "2 min"}, made=date(2026, 3, 2))
    >>> told[0].partition(";")[0]
    'Development: 2 min, at least 10 min (common practice, no source'
    """
    glows = fluorescent or tells_fluorescent(fields)
    held = HeldAgainst.read(process, fields)
    found = cautions(fields, held.conditions, fluorescent=glows, today=made)
    said = {CHECKED[key]: text for key, text in found.items()}
    for stage in STAGES:
        minutes, limit = minutes_of(fields, stage), held.limit(stage.name)
        if minutes is not None and judge_time(minutes, limit) in {"early", "late"}:
            said[stage.name] = (
                f"{minutes:g} min, {limit_words(limit)} ({_source(held, stage)})."
            )
    whys = deviation_parts(fields, whole=True)
    told = [_with_reason(name, text, whys.get(name, "")) for name, text in said.items()]
    return [*_unknown(held), *told]


def _source(held: HeldAgainst, stage: Stage) -> str:
    """Whose limit of a stage that is."""
    if stage.name in held.own:
        return held.whose(stage.name)
    sure = f"{held.practice}, no source" if held.practice == PRACTICE else held.practice
    return f"{sure}; the procedure governs"


def _unknown(held: HeldAgainst) -> list[str]:
    if not held.unknown:
        return []
    return [
        f"The limits of “{held.unknown}”, which the record names, are not known here: "
        f"held against {held.practice}."
    ]


def _with_reason(name: str, text: str, why: str) -> str:
    """``why`` is what stands behind the name among the deviations."""
    reason = why.removeprefix(": ").removeprefix(", ")
    return f"{name}: {text} Reason given: {reason}" if reason else f"{name}: {text}"


def tells_fluorescent(fields: Mapping[str, str]) -> bool:
    """Whether the fields are those of fluorescent penetrant."""
    told = fields.get("penetrant_type", "").lower()
    return "fluorescent" in told or bool(fields.get("uv_irradiance", "").strip())


def deviation_parts(fields: Mapping[str, str], *, whole: bool = False) -> dict[str, str]:
    """Deviations by stage or field, with what they were held against where ``whole``.

    What names none stands under "".
    """
    made: dict[str, str] = {}
    names, others = {*(stage.name for stage in STAGES), *CHECKED.values()}, []
    for part in fields.get("deviations", "").split("; "):
        head, _, reason = part.partition(": ")
        name = next((n for n in names if head == n or head.startswith(f"{n}, ")), "")
        if name:
            made[name] = part.removeprefix(name) if whole else reason
        elif part:
            others.append(part)
    return {"": "; ".join(others), **made} if others else made
