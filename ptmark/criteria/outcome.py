"""What a rule about several indications found, and what would decide it where that is open."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from ptmark.criteria.case import Case
from ptmark.criteria.geometry import Array
from ptmark.criteria.limits import Limit
from ptmark.criteria.rules import ClusterRule, GroupRule, RowRule, StretchRule
from ptmark.criteria.view import View
from ptmark.criteria.wording import amount, bound, counted, listed, within

__all__ = ["NOTHING", "Outcome", "how_closely", "too_few", "what_decides"]

_MOST_HALVED = 100  # indications, of which it is told how closely they must be known
_HALVINGS = 5


@dataclass(frozen=True, slots=True, eq=False)
class Outcome:
    """What a rule found in one reading: an amount, the items, and what shows it."""

    value: float
    members: tuple[int, ...]
    place: str
    sketch: Array
    proven: bool = True
    sum_told: str = "together"
    after: str = ""  # what the amount is told of


NOTHING = Outcome(0.0, (), "", np.empty((0, 2)))


def too_few(case: Case, rule: GroupRule) -> str:
    """What there is too little of, where there are indications but none that count."""
    if not case.plain.members(rule.of, rule.named):
        return ""
    if isinstance(rule, StretchRule) and rule.counted is not None:
        return f"{counted(0, rule.of)} {bound(rule.counted)}"
    if isinstance(rule, ClusterRule | RowRule):
        number, gap = (bound(one, of_length=False) for one in (rule.number, rule.gap))
        return f"no group of {number} with gaps of {gap}"
    return ""


def what_decides(case: Case, shape: str, plain: Outcome, worst: Outcome) -> str:
    """Which sizes and gaps leave the worst reading open, in a sentence."""
    items = [case.most.items[k] for k in worst.members]
    if not worst.proven:
        return "The search for the worst place was cut short, so it is left open."
    known = {one for k in plain.members for one in case.plain.items[k].ids}
    added = [item for item in items if not known.issuperset(item.ids)]
    told = [doubt for item in items for doubt in case.doubts(item, shape)]
    if told:
        return f"What would decide it: {listed(list(dict.fromkeys(told)))}."
    names = listed([one for item in added or items for one in item.ids])
    what = "the sizes and gaps" if len(items) > 1 else "the size"
    return f"What would decide it: {what} of {names}, measured more closely."


def how_closely(
    case: Case, limit: Limit, worst: Outcome, look: Callable[[View], Outcome]
) -> str:
    """The share of every uncertainty that would pass the rule, in words; "" for a crowd."""
    if not worst.proven or len(case.judged) > _MOST_HALVED or limit.hit(look(case.plain).value):
        return ""
    passes, hits = 0.0, 1.0
    for _ in range(_HALVINGS):
        middle = (passes + hits) / 2
        seen = look(case.views.most(middle))
        if limit.hit(seen.value) or not seen.proven:
            hits = middle
        else:
            passes = middle
    if passes == 0.0:
        return " It lies so near to the limit that only another measurement can pass it."
    largest = max((case.most.items[k].u for k in worst.members), default=0.0)
    needed = within(passes * largest, case.unit)
    now = amount(largest, case.unit, apart_from=0.0)
    return f" Lengths known to ± {needed} in place of ± {now} would pass it."
