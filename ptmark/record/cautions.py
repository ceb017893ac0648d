"""What a reader should know of a record before relying on it."""

from collections.abc import Sequence

from ptmark.criteria import Evaluation
from ptmark.record.entry import Entry
from ptmark.scale import SurfaceMap, far_caution

__all__ = ["DEPARTS", "cautions_of", "departs"]

DEPARTS = "The disposition departs from the verdict and gives no reason."


def cautions_of(
    surface: SurfaceMap | None,
    entries: Sequence[Entry],
    evaluation: Evaluation | None,
    disposition: tuple[str, str],
    remarks: Sequence[str] = (),
) -> list[str]:
    """Everything a reader should know of this record before relying on it, each once."""
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
    bare = [one.id for one in entries if one.relevance and not one.reason.strip()]
    if bare:
        said.append(f"Set aside without a reason: {', '.join(bare)}. Give the reason.")
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


def departs(verdict: str | None, decision: str, reason: str) -> bool:
    """Whether a disposition departs from the verdict and gives no reason."""
    away = (decision == "accept" and verdict != "acceptable") or (
        decision in {"reject", "rework and retest"} and verdict == "acceptable"
    )
    return away and not reason.strip()
