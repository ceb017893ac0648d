"""Measurements and verdict of the moment, worked out beside the window after every change."""

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from ptmark.errors import PtmarkError

if TYPE_CHECKING:
    from ptmark.criteria import Evaluation
    from ptmark.inspection import Inspection
    from ptmark.measure import Measurement

__all__ = ["Judgement", "judge", "standings"]

_STRICTEST = ("rejectable", "undecided", "acceptable")


@dataclass(frozen=True)
class Judgement:
    """What follows from one state.

    ``measured`` by letter; ``refused`` gives, by letter, why an outline has no measurement;
    ``trouble`` is what kept the evaluation from being made.
    """

    measured: "dict[str, Measurement]" = field(default_factory=dict)
    refused: dict[str, str] = field(default_factory=dict)
    evaluation: "Evaluation | None" = None
    trouble: PtmarkError | None = None


def judge(twin: "Inspection") -> Judgement:
    """Measure and evaluate a twin of the inspection; safe in a worker."""
    measured, refused = {}, {}
    for one in twin.state.marked:
        try:
            made = twin.measurement(one)
        except PtmarkError as exc:
            refused[one.id] = str(exc)
        else:
            if made is not None:
                measured[one.id] = made
    try:
        evaluation = twin.evaluation() if twin.photo is not None else None
    except PtmarkError as exc:
        return Judgement(measured, refused, None, exc)
    return Judgement(measured, refused, evaluation)


def standings(judgement: Judgement) -> dict[str, str]:
    """By letter, the strictest verdict of the findings that name an indication."""
    made: dict[str, str] = {}
    findings = judgement.evaluation.findings if judgement.evaluation else ()
    for finding in findings:
        for letter in finding.indications:
            before = made.get(letter, _STRICTEST[-1])
            made[letter] = min(before, finding.verdict, key=_STRICTEST.index)
    return made
