"""What each step of the work has or misses, in a few words for the strip."""

from ptmark.units import format_length
from ptmark.window.session import Session

__all__ = ["step_states"]

_REFERENCES = {
    "card": "card",
    "rectangle": "rectangle",
    "two lines": "two lines",
    "line": "line",
    "pipe": "pipe",
}


def step_states(session: Session) -> dict[str, tuple[str, str]]:
    """Sign and line for every step; signs as in `ptmark.window.glyphs`."""
    inspection = session.inspection
    if inspection is None or inspection.photo is None:
        return {
            "Photo": ("", "none yet"),
            "Scale": ("", "none yet"),
            "Indications": ("", "none yet"),
            "Verdict": ("", "none yet"),
            "Record": ("", "none yet"),
        }
    info = inspection.photo.info
    return {
        "Photo": ("done", _which(session) + f"{info.width} × {info.height} px"),
        "Scale": _scale(session),
        "Indications": _indications(session),
        "Verdict": _verdict(session),
        "Record": _record(session),
    }


def _which(session: Session) -> str:
    if session.inspection is None or len(session.inspection.photos) < 2:
        return ""
    photos = session.inspection.photos
    return f"{photos.number + 1} of {len(photos)}, "


def _scale(session: Session) -> tuple[str, str]:
    inspection = session.inspection
    surface = inspection.surface if inspection else None
    if surface is None:
        refused = inspection is not None and inspection.surface_error is not None
        return ("look", "refused") if refused else ("look", "missing")
    sign = "look" if surface.cautions else "done"
    name = _REFERENCES.get(surface.reference, surface.reference)
    if surface.beside is not None:
        name += f" and {surface.beside.reference}"
    digits = 4 if session.unit == "mm" else 5
    return sign, f"{name}, {format_length(surface.mm_per_px(), session.unit, digits)}/px"


def _indications(session: Session) -> tuple[str, str]:
    marked = session.state.marked if session.state else ()
    unseen = sum(m.standing == "suggested" for m in marked)
    taken = sum(m.standing == "taken" for m in marked)
    if session.workers.busy("look"):
        return "", "looking …"
    if not marked:
        return "", "none found"
    if unseen:
        return "look", f"{unseen} to look at, {taken} taken"
    return "done", f"{taken} taken"


def _verdict(session: Session) -> tuple[str, str]:
    state, made = session.state, session.judgement.evaluation
    if state is None or not state.profile:
        return "look", "choose the criteria"
    if len(session.judgement.by_photo) > 1:
        verdict = session.judgement.verdict
        return (verdict, f"{verdict}, all photos") if verdict else ("look", "not all judged")
    if made is None:
        return (
            "look",
            "needs a scale" if session.judgement.trouble is None else "cannot be made",
        )
    return made.verdict, made.verdict


def _record(session: Session) -> tuple[str, str]:
    from ptmark.record import FIELDS

    state = session.state
    if state is None:
        return "", "none yet"
    if session.reviewing:
        return "", "your review"
    missing = [f for f in FIELDS if f.needed and not state.fields.get(f.key, "").strip()]
    if missing:
        return "look", f"{len(missing)} field{'s' * (len(missing) > 1)} missing"
    if not state.decision:
        return "look", "disposition missing"
    return "done", state.decision
