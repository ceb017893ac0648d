"""Measurements and verdict of the moment, worked out beside the window after every change."""

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from ptmark.errors import PtmarkError

if TYPE_CHECKING:
    from ptmark.criteria import Evaluation
    from ptmark.inspection import Inspection
    from ptmark.measure import Measurement

__all__ = ["Judgement", "judge", "standing_of"]


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


def standing_of(letter: str, judgement: Judgement) -> str:
    """The strictest verdict of the findings that name this indication, "" where none does."""
    if judgement.evaluation is None:
        return ""
    named = {f.verdict for f in judgement.evaluation.findings if letter in f.indications}
    return next((v for v in ("rejectable", "undecided", "acceptable") if v in named), "")
