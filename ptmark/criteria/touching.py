"""Pieces that touch, where the criteria judge each by its own length: they may be one.

A crack traced in two would pass where a whole one does not. Criteria that merge neighbours
take such pieces as one anyway.
"""

from collections.abc import Callable
from dataclasses import replace

from ptmark.criteria.case import Case
from ptmark.criteria.limits import tolerance_in
from ptmark.criteria.profile import Profile
from ptmark.criteria.result import SEVERITY, Finding
from ptmark.criteria.rules import Merge
from ptmark.criteria.wording import listed, named

__all__ = ["TOUCHING", "Pair", "as_one", "touching"]

TOUCHING = "touching"
_AT_A_TOUCH = Merge(id=TOUCHING, clause="", sure="verified", operator="<=", factor=0.0)
Pair = tuple[str, str]


def touching(case: Case) -> list[Pair]:
    """Pairs that for all that is known touch or overlap, and that the criteria judge apart."""
    if case.profile.merge is not None:
        return []
    view = case.worst if case.guarded else case.plain
    band = tolerance_in(case.unit)
    pairs, gaps = view.links(list(range(len(view.items))), band)
    items = view.items
    return [(items[i].ids[0], items[j].ids[0]) for i, j in sorted(pairs[gaps <= band].tolist())]


def as_one(
    case: Case, pairs: list[Pair], verdict: str, judge: Callable[[Profile], list[Finding]]
) -> list[Finding]:
    """Undecided findings where the pieces taken as one are judged more strictly than apart.

    Parameters
    ----------
    case : Case
    pairs : list of (str, str)
        From `touching`.
    verdict : str
        Of the pieces judged apart.
    judge : callable
        Judges the same scene by another profile.
    """
    if not pairs or verdict == "rejectable":
        return []
    made = judge(replace(case.profile, merge=_AT_A_TOUCH))
    stricter = max((SEVERITY.index(one.verdict) for one in made), default=0)
    if stricter <= SEVERITY.index(verdict):
        return []
    return [
        replace(
            one,
            rule=TOUCHING,
            clause="",
            verdict="undecided",
            says=f"For all that is known the outlines touch or overlap: {_told(pairs, one)}. "
            f"Trace as one what is one indication. Judged as one: {one.says}",
        )
        for one in made
        if SEVERITY.index(one.verdict) == stricter
    ]


def _told(pairs: list[Pair], finding: Finding) -> str:
    """The pairs that a finding is about; all where it names none of them."""
    own = [pair for pair in pairs if set(pair) <= set(finding.indications)]
    return listed([named(pair) for pair in own or pairs])
