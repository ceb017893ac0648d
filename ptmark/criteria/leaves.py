"""What a rule that looks at one indication asks of it, in any reading of the scene.

An answer is `YES`, `NO`, or `OPEN` where the scene does not give what the rule needs; joins
follow Kleene's three-valued logic, in which all of is the least, any of the greatest and not
the negative. In an exemption the readings change sides: the worst reading of a rule takes the
least one of what exempts from it, and the other way round.
"""

import numpy as np

from ptmark.criteria.case import NO, OPEN, YES, Answers, Case
from ptmark.criteria.geometry import Array
from ptmark.criteria.limits import Limit
from ptmark.criteria.rules import (
    EdgeRule,
    JoinRule,
    KindRule,
    PartRule,
    Rule,
    SingleRule,
    SizeRule,
)
from ptmark.criteria.view import MILDEST, PLAIN, WORST, Item

__all__ = ["answers", "distance", "limit_of", "looked_at", "missing"]


def looked_at(rule: Rule, item: Item) -> bool:
    """Whether the rule looks at the item at all."""
    if isinstance(rule, SingleRule):
        return item.relevant and item.is_of(rule.of, rule.named)
    return True


def answers(case: Case, rule: Rule, reading: int) -> Answers:
    """Whether the rule hits each item of one reading: `YES`, `NO` or `OPEN`, shape (M,)."""
    key = (rule.id, reading)
    if key not in case.answered:
        found = _answers(case, rule, reading)
        if isinstance(rule, SingleRule):
            view = case.views.single(reading)
            found = np.where(view.looked_at(rule.of, rule.named), found, NO)
        if reading == MILDEST:
            several = [item.parts > 1 for item in case.views.single(reading).items]
            found = np.where(several, NO, found)  # what a parting of many has is not looked at
        case.answered[key] = found
    return case.answered[key]


def _answers(case: Case, rule: Rule, reading: int) -> Answers:
    view = case.views.single(reading)
    count, known = len(view.items), None
    match rule:
        case SizeRule():
            limit = limit_of(case, rule)
            if not isinstance(limit, str):
                known = limit.hit_all(view.lengths)
        case EdgeRule():
            limit, apart = case.limit(rule.reject), _distances(case, rule, reading)
            if not isinstance(limit, str) and apart is not None:
                known = limit.hit_all(apart)
        case KindRule():
            known = view.named(rule.kinds)
        case PartRule():
            size = case.size_of_part(rule.by)
            if size is not None:
                known = np.full(count, rule.size.hit(size))
        case JoinRule():
            return _joined(case, rule, reading)
        case _:
            known = np.ones(count, dtype=bool)
    return np.full(count, OPEN) if known is None else np.where(known, YES, NO)


def _joined(case: Case, rule: JoinRule, reading: int) -> Answers:
    parts = [answers(case, part, reading) for part in rule.rules]
    if rule.how == "all-of":
        return np.asarray(np.min(parts, axis=0))
    hit = np.max(parts, axis=0)
    if rule.how == "any-of":
        return np.asarray(hit)
    opposite = {PLAIN: PLAIN, WORST: MILDEST, MILDEST: WORST}[reading]
    exempt = np.max([answers(case, part, opposite) for part in rule.exempt], axis=0)
    return np.asarray(np.minimum(hit, -exempt))


def limit_of(case: Case, rule: SizeRule) -> Limit | str:
    """The limit of a rule of size for this part, or what is missing to know it."""
    limit = case.limit(rule.reject)
    if isinstance(limit, str) or rule.thickness_share is None:
        return limit
    thickness = case.size_of_part("thickness")
    if thickness is None:
        return "The limit depends on the thickness of the part: give thickness_mm."
    return Limit(limit.operator, min(limit.value, rule.thickness_share * thickness), limit.unit)


def distance(case: Case, rule: EdgeRule, reading: int, place: int) -> float | None:
    """Distance of an item to the line of the rule, in the unit of the profile, where given."""
    found = _distances(case, rule, reading)
    return None if found is None else float(found[place])


def _distances(case: Case, rule: EdgeRule, reading: int) -> Array | None:
    lines = case.lines(rule.line)
    if not lines:
        return None
    key = (rule.line, reading)
    if key not in case.known:
        case.known[key] = case.views.single(reading).distances(lines)
    return case.known[key]


def missing(case: Case, rule: Rule) -> list[str]:
    """What the scene would have to give for the rule, each in a sentence."""
    told: list[str] = []
    match rule:
        case SizeRule():
            limit = limit_of(case, rule)
            told += [limit] if isinstance(limit, str) else []
        case EdgeRule():
            limit = case.limit(rule.reject)
            told += [limit] if isinstance(limit, str) else []
            if not case.lines(rule.line):
                told.append(
                    f"The distance to the line '{rule.line}' is asked for: mark that line, or "
                    "give it in edges_mm."
                )
        case PartRule() if case.size_of_part(rule.by) is None:
            told.append(f"The {rule.by} of the part is asked for: give {rule.by}_mm.")
        case JoinRule():
            for part in (*rule.rules, *rule.exempt):
                told += missing(case, part)
    return list(dict.fromkeys(told))
