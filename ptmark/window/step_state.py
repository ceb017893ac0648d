"""What each step of the work has or misses, in a few words for the strip."""

from ptmark.window.session import Session
from ptmark.window.words import format_length, from_core, tr

__all__ = ["step_states"]


def step_states(session: Session) -> dict[str, tuple[str, str]]:
    """Sign and line for every step; signs as in `ptmark.window.glyphs`."""
    inspection = session.inspection
    if inspection is None or inspection.photo is None:
        return {
            "Photo": ("", tr("none yet")),
            "Scale": ("", tr("none yet")),
            "Indications": ("", tr("none yet")),
            "Verdict": ("", tr("none yet")),
            "Record": ("", tr("none yet")),
        }
    info = inspection.photo.info
    return {
        "Photo": ("done", _which(session) + tr("{0} × {1} px", info.width, info.height)),
        "Scale": _scale(session),
        "Indications": _indications(session),
        "Verdict": _verdict(session),
        "Record": _record(session),
    }


def _which(session: Session) -> str:
    if session.inspection is None or len(session.inspection.photos) < 2:
        return ""
    photos = session.inspection.photos
    return tr("{0} of {1}, ", photos.number + 1, len(photos))


def _scale(session: Session) -> tuple[str, str]:
    inspection = session.inspection
    surface = inspection.surface if inspection else None
    if surface is None:
        refused = inspection is not None and inspection.surface_error is not None
        return ("look", tr("refused")) if refused else ("look", tr("missing"))
    sign = "look" if surface.cautions else "done"
    name = from_core(surface.reference)
    if surface.beside is not None:
        name += tr(" and {0}", from_core(surface.beside.reference))
    digits = 4 if session.unit == "mm" else 5
    return sign, tr(
        "{0}, {1}/px", name, format_length(surface.mm_per_px(), session.unit, digits)
    )


def _indications(session: Session) -> tuple[str, str]:
    marked = session.state.marked if session.state else ()
    unseen = sum(m.standing == "suggested" for m in marked)
    taken = sum(m.standing == "taken" for m in marked)
    if session.workers.busy("look"):
        return "", tr("looking …")
    if not marked and not session.looked:
        return "look", tr("not looked for")
    if not marked:
        return "", tr("none found")
    if unseen:
        return "look", tr("{0} to look at, {1} taken", unseen, taken)
    return "done", tr("{0} taken", taken)


def _verdict(session: Session) -> tuple[str, str]:
    state, made = session.state, session.judgement.evaluation
    if state is None or not state.profile:
        return "look", tr("choose the criteria")
    if session.stale.why:
        return "look", tr("stale, judge again")
    if session.workers.busy("look"):
        return "", tr("looking …")  # one on nothing yet
    if len(session.judgement.by_photo) > 1:
        verdict = session.judgement.verdict
        return (
            (verdict, tr("{0}, all photos", tr(verdict)))
            if verdict
            else ("look", tr("not all judged"))
        )
    if made is None:
        return (
            "look",
            tr("needs a scale") if session.judgement.trouble is None else tr("cannot be made"),
        )
    return made.verdict, tr(made.verdict)


def _record(session: Session) -> tuple[str, str]:
    from ptmark.record import FIELDS

    state = session.state
    if state is None:
        return "", tr("none yet")
    if session.reviewing:
        return "", tr("your review")
    missing = [f for f in FIELDS if f.needed and not state.fields.get(f.key, "").strip()]
    if missing:
        return "look", tr("1 field missing") if len(missing) == 1 else tr(
            "{0} fields missing", len(missing)
        )
    if not state.decision:
        return "look", tr("disposition missing")
    return "done", tr(state.decision)
