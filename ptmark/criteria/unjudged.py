"""What no rule can judge, by whatever criteria: the verdict is undecided at the best."""

from ptmark.criteria.case import Case
from ptmark.criteria.limits import per_mm
from ptmark.criteria.result import Finding
from ptmark.criteria.rules import Rule
from ptmark.criteria.touching import TOUCHING
from ptmark.criteria.wording import amount
from ptmark.hides import Hides
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
        "Indication {name} stands in haze, rust, grain, a red reflection, beside paint or "
        "where the file lost its colour, so that its ends may not show: it is at least "
        "{length} long. Clean and test the part again and take another photo from nearby; or, "
        "where you see that it ends there, trace it by hand.",
    ),
    Least.OVEREXPOSED: (  # where white is clipped, the rims and tails of dye are white too
        "exposure",
        "Indication {name} lies on overexposed developer, which hides its rims and tails: it "
        "is at least {length} long. Take another photo with a lower exposure.",
    ),
}

# The same of what a photo cannot show.
_HIDES = {
    Hides.OVEREXPOSED: (
        "exposure",
        "Most of the examined area is overexposed, and pale indications on it are lost. Take "
        "another photo with a lower exposure.",
    ),
    Hides.COLOURLESS: (
        "colour",
        "The photo holds no colour, so that nothing is marked in it tells nothing. Take it in "
        "colour, or trace what is there by hand.",
    ),
    Hides.UNLOOKED_PART: (
        "searched",
        "Some of the examined area lay outside what was looked over, so that nothing "
        "marked there tells nothing. Look again.",
    ),
    Hides.UNLOOKED: (
        "searched",
        "The photo was not looked over, so that nothing is marked in it tells nothing. Look "
        "for indications, or trace what is there by hand.",
    ),
    Hides.UNSEEN: (
        "searched",
        "Too many red places: {count} of them were not looked at closely, and "
        "indications among them are not called. Mark a smaller examined area, or clean the "
        "part again and repeat the test.",
    ),
    Hides.DENSE_HAZE: (
        "searched",
        "Places with haze or glow as dense as an indication, with pink in a crease, of uneven "
        "colour, or as dense in much grain, which may hide one or be one: {count}. Clean the "
        "part again and repeat the test; where it is grain, take the photo again in more "
        "light.",
    ),
    Hides.UNKNOWN_KIND: (  # looked at for the wrong one, nothing is called at all
        "searched",
        "The photo does not tell whether the penetrant is fluorescent or of colour contrast: "
        "nothing in it is white in white light, or something glows in it beside what is white. "
        "Looked at for the wrong one, indications are not called. Choose the kind of penetrant "
        "and look again.",
    ),
    Hides.SMOOTHED: (  # what filters cut off thin ends is not known, and no U holds it
        "detail",
        "The photo was smoothed or enlarged, or sharpened so strongly that it may have been "
        "smoothed: thin ends and faint indications go so, and lengths are the least that they "
        "can be. Take another photo with beauty and noise filters off, and use it as the "
        "camera wrote it.",
    ),
    Hides.COMPRESSED: (
        "detail",
        "The file is compressed so strongly that thin and pale indications lose their colour "
        "in it and are not called, and edges shift. Use the photo as the camera wrote it, not "
        "a copy that was sent or saved smaller.",
    ),
    Hides.COARSE: (  # what is narrower than the pixels resolve is lost, however long it is
        "detail",
        "Too far, or a photo that was reduced: 1.5 mm is less than 10 pixels in the farthest "
        "part of the examined area, where thin and faint indications are lost, or their ends. "
        "Go closer, or take several photos in its place; in place of a copy that was sent or "
        "scaled, use the photo as the camera wrote it. As an overview beside close-ups, give "
        "each indication the letter that it has in one of these.",
    ),
}


def not_judged(case: Case) -> list[Finding]:
    """One finding for each indication and each fact of the photo that nothing can judge.

    Their rules are those of `UNJUDGED` but `TOUCHING`: "whole" (the photo's edge cuts an
    indication off, something may cover its end, or its ends may not show), "measured"
    (it could not be measured), "exposure" (it lies on overexposed developer, or most of the
    area is so), "colour" (a photo without colour, in which nothing is marked, cannot show that
    nothing is there), "searched" (places that were too many to be looked at, a photo not
    looked over, or one whose kind of penetrant is unknown) and "detail" (a photo that was
    smoothed, compressed strongly, or too coarse).
    """
    return [*_not_whole(case), *_unmeasured(case), *_hidden(case)]


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


def _hidden(case: Case) -> list[Finding]:
    """What the photo cannot show."""
    hidden, scene = case.scene.hidden, case.scene
    passed = set() if Hides.UNLOOKED_PART not in hidden else {Hides.UNLOOKED}
    if scene.indications or scene.unmeasured:
        passed |= {Hides.COLOURLESS, Hides.UNLOOKED}  # what is marked can be judged
    return [
        _undecided(case, rule, says.format(count=hidden[why]))
        for why, (rule, says) in _HIDES.items()
        if why in hidden and why not in passed
    ]


def _undecided(case: Case, rule: str, says: str, *ids: str) -> Finding:
    return case.finding(Rule(id=rule, clause="", sure="verified"), "undecided", says, ids=ids)
