"""Measurements and verdict of the moment, worked out beside the window after every change."""

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from ptmark.errors import PtmarkError

if TYPE_CHECKING:
    from ptmark.criteria import Evaluation, Scene
    from ptmark.inspection import Inspection
    from ptmark.inspection.set_sizes import Sizes
    from ptmark.measure import Measurement

__all__ = ["STRICTEST", "Judgement", "judge", "standings"]

STRICTEST = ("rejectable", "undecided", "acceptable")


@dataclass(frozen=True)
class Judgement:
    """What follows from one state.

    ``measured`` by letter; ``refused`` gives, by letter, why an outline has no measurement;
    ``trouble`` is what kept the evaluation from being made. ``scene`` is what was judged.
    All of these are of the photo at hand; ``by_photo`` holds the verdict of each photo of the
    set, ``verdict`` that of the whole, ``seen_again`` what
    several photos show.
    """

    measured: "dict[str, Measurement]" = field(default_factory=dict)
    refused: dict[str, str] = field(default_factory=dict)
    evaluation: "Evaluation | None" = None
    trouble: PtmarkError | None = None
    scene: "Scene | None" = None
    by_photo: tuple[str | None, ...] = ()
    verdict: str | None = None
    seen_again: "dict[str, Sizes]" = field(default_factory=dict)


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
        scene = twin.scene() if twin.photo is not None and twin.surface is not None else None
        evaluation = twin.evaluation() if scene is not None else None
        whole = _of_set(twin, evaluation)
    except PtmarkError as exc:
        return Judgement(measured, refused, None, exc)
    return Judgement(measured, refused, evaluation, scene=scene, **whole)


def _of_set(twin: "Inspection", evaluation: "Evaluation | None") -> dict[str, Any]:
    """The members that tell of the whole set."""
    if len(twin.photos) < 2:
        verdict = None if evaluation is None else evaluation.verdict
        return {"by_photo": (verdict,), "verdict": verdict}
    from ptmark.record import worst_verdict

    results = twin.photos.results()
    verdicts = [None if one is None else one.verdict for one in results.evaluations(twin)]
    letters = [{m.id for m, _ in photo.measured} for photo in results.photos]
    return {
        "by_photo": tuple(verdicts),
        "verdict": worst_verdict(list(zip(verdicts, letters, strict=True))),
        "seen_again": results.seen_again,
    }


def standings(judgement: Judgement) -> dict[str, str]:
    """By letter, the strictest verdict of the findings that name an indication."""
    made: dict[str, str] = {}
    findings = judgement.evaluation.findings if judgement.evaluation else ()
    for finding in findings:
        for letter in finding.indications:
            before = made.get(letter, STRICTEST[-1])
            made[letter] = min(before, finding.verdict, key=STRICTEST.index)
    return made
