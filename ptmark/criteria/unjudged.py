"""What no rule can judge, by whatever criteria: the verdict is undecided at the best."""

from ptmark.criteria.case import Case
from ptmark.criteria.limits import per_mm
from ptmark.criteria.result import Finding
from ptmark.criteria.rules import Rule
from ptmark.criteria.touching import TOUCHING
from ptmark.criteria.wording import amount
from ptmark.least import Least

__all__ = ["UNJUDGED", "not_judged"]

UNJUDGED = ("whole", "measured", "exposure", "colour", "searched", "detail", TOUCHING)

# The rule of each reason, and what is said; in the order in which they are told.
_LEAST = {
    Least.RUNS_OUT: (
        "whole",
        "Indication {name} ends at the photo's edge: it is at least {length} long. Take "
        "another photo that shows it whole.",
    ),
    Least.COVERED: (
        "whole",
        "Indication {name} ends where the developer ends, at a rule, a tape, the scale card or "
        "bare metal, and may go on there: it is at least {length} long. Uncover and develop "
        "all of it and take another photo; or, where you see that it ends there, trace it by "
        "hand.",
    ),
    Least.ENDS_UNSURE: (  # where pale dye is as red as what lies beside it
        "whole",
        "Indication {name} stands in haze, rust, a red reflection, beside paint or where the "
        "file lost its colour, so that its ends may not show: it is at least {length} long. "
        "Clean and test the part again and take another photo from nearby; or, where you see "
        "that it ends there, trace it by hand.",
    ),
    Least.OVEREXPOSED: (  # where white is clipped, the rims and tails of dye are white too
        "exposure",
        "Indication {name} lies on overexposed developer, which hides its rims and tails: it "
        "is at least {length} long. Take another photo with a lower exposure.",
    ),
}


def not_judged(case: Case) -> list[Finding]:
    """One finding for each indication and each fact of the photo that nothing can judge.

    Their rules are those of `UNJUDGED` but `TOUCHING`: "whole" (the photo's edge cuts an
    indication off, something may cover its end, or its ends may not show), "measured"
    (it could not be measured), "exposure" (it lies on overexposed developer, or most of the
    area is so), "colour" (a photo without colour, in which nothing is marked, cannot show that
    nothing is there), "searched" (places that were too many to be looked at, or a photo not
    looked over) and "detail" (a photo that was smoothed, or too coarse).
    """
    of_each = [*_not_whole(case), *_unmeasured(case)]
    of_photo = [*_overexposed(case), *_colourless(case), *_unlooked(case), *_unseen(case)]
    of_photo += [*_hazy(case), *_smoothed(case), *_coarse(case)]
    return [*of_each, *of_photo]


def _not_whole(case: Case) -> list[Finding]:
    """What may be any longer than what is seen of it."""
    per = per_mm(case.unit)
    return [
        _undecided(
            case,
            rule,
            says.format(name=one.id, length=amount(one.length * per, case.unit)),
            one.id,
        )
        for why, (rule, says) in _LEAST.items()
        for one in case.judged
        if why in one.least
    ]


def _overexposed(case: Case) -> list[Finding]:
    if not case.scene.overexposed:
        return []
    says = (
        "Most of the examined area is overexposed, and pale indications on it are lost. Take "
        "another photo with a lower exposure."
    )
    return [_undecided(case, "exposure", says)]


def _unmeasured(case: Case) -> list[Finding]:
    return [
        _undecided(
            case,
            "measured",
            f"Indication {name} was not measured, and so not judged: the surface turns away "
            "too far there. Take another photo from that side.",
            name,
        )
        for name in case.scene.unmeasured
    ]


def _colourless(case: Case) -> list[Finding]:
    scene = case.scene
    if not scene.colourless or scene.indications or scene.unmeasured:
        return []
    says = (
        "The photo holds no colour, so that nothing is marked in it tells nothing. Take it in "
        "colour, or trace what is there by hand."
    )
    return [_undecided(case, "colour", says)]


def _unlooked(case: Case) -> list[Finding]:
    scene = case.scene
    if scene.unlooked_part:
        says = (
            "Some of the examined area lay outside what was looked over, so that nothing "
            "marked there tells nothing. Look again."
        )
        return [_undecided(case, "searched", says)]
    if not scene.unlooked or scene.indications or scene.unmeasured:
        return []
    says = (
        "The photo was not looked over, so that nothing is marked in it tells nothing. Look "
        "for indications, or trace what is there by hand."
    )
    return [_undecided(case, "searched", says)]


def _unseen(case: Case) -> list[Finding]:
    if not case.scene.unseen:
        return []
    says = (
        f"Too many red places: {case.scene.unseen} of them were not looked at closely, and "
        "indications among them are not called. Mark a smaller examined area, or clean the "
        "part again and repeat the test."
    )
    return [_undecided(case, "searched", says)]


def _hazy(case: Case) -> list[Finding]:
    if not case.scene.dense_haze:
        return []
    says = (
        "Places with haze or glow as dense as an indication, with pink in a crease, of uneven "
        "colour, or as dense in much grain, which may hide one or be one: "
        f"{case.scene.dense_haze}. Clean the part again and repeat the test; where it is "
        "grain, take the photo again in more light."
    )
    return [_undecided(case, "searched", says)]


def _smoothed(case: Case) -> list[Finding]:
    """What filters cut off thin ends is not known, and no U holds it."""
    if not case.scene.smoothed:
        return []
    says = (
        "The photo was smoothed or enlarged, or sharpened so strongly that it may have been "
        "smoothed: thin ends and faint indications go so, and lengths are the least that they "
        "can be. Take another photo with beauty and noise filters off, and use it as the "
        "camera wrote it."
    )
    return [_undecided(case, "detail", says)]


def _coarse(case: Case) -> list[Finding]:
    """What is narrower than the pixels resolve is lost, however long it is."""
    if not case.scene.coarse:
        return []
    says = (
        "Too far, or a photo that was reduced: 1.5 mm is less than 10 pixels in the farthest "
        "part of the examined area, where thin and faint indications are lost, or their ends. "
        "Go closer, or take several photos in its place; in place of a copy that was sent or "
        "scaled, use the photo as the camera wrote it. As an overview beside close-ups, give "
        "each indication the letter that it has in one of these."
    )
    return [_undecided(case, "detail", says)]


def _undecided(case: Case, rule: str, says: str, *ids: str) -> Finding:
    return case.finding(Rule(id=rule, clause="", sure="verified"), "undecided", says, ids=ids)
