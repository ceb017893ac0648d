"""What a rule that looks at one indication asks of it, in any reading of the scene.

An answer is True, False, or None where the scene does not give what the rule needs; joins
follow Kleene's three-valued logic. In an exemption the readings change sides: the worst
reading of a rule takes the least one of what exempts from it, and the other way round.
"""

from collections.abc import Iterable

from ptmark.criteria.case import Case
from ptmark.criteria.kinds import covers
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
from ptmark.criteria.view import WORST, Item

__all__ = [
    "all_of",
    "any_of",
    "distance",
    "hits",
    "limit_of",
    "looked_at",
    "missing",
    "opposite",
]

Answer = bool | None


def all_of(answers: Iterable[Answer]) -> Answer:
    """True where all are, False where one is, else None (Kleene).

    Examples
    --------
    >>> all_of([True, None]), all_of([None, False]), any_of([None, True]), opposite(None)
    (None, False, True, None)
    """
    given = list(answers)
    return False if False in given else None if None in given else True


def any_of(answers: Iterable[Answer]) -> Answer:
    """True where one is, False where none is, else None (Kleene)."""
    given = list(answers)
    return True if True in given else None if None in given else False


def opposite(answer: Answer) -> Answer:
    """Not (Kleene)."""
    return None if answer is None else not answer


def looked_at(rule: Rule, item: Item) -> bool:
    """Whether the rule looks at the item at all."""
    if isinstance(rule, SingleRule):
        return item.relevant and item.is_of(rule.of, rule.named)
    return True


def hits(case: Case, rule: Rule, reading: int, place: int) -> Answer:
    """Whether the rule hits the item at a place of one reading."""
    item = case.views.view(reading).items[place]
    if not looked_at(rule, item):
        return False
    match rule:
        case SizeRule():
            limit = limit_of(case, rule)
            return None if isinstance(limit, str) else limit.hit(item.length)
        case EdgeRule():
            limit, apart = case.limit(rule.reject), distance(case, rule, reading, place)
            return None if isinstance(limit, str) or apart is None else limit.hit(apart)
        case KindRule():
            return any(covers(one, kind) for one in rule.kinds for kind in item.kinds)
        case PartRule():
            size = case.size_of_part(rule.by)
            return None if size is None else rule.size.hit(size)
        case JoinRule():
            return _joined(case, rule, reading, place)
    return True


def _joined(case: Case, rule: JoinRule, reading: int, place: int) -> Answer:
    parts = (hits(case, part, reading, place) for part in rule.rules)
    if rule.how == "all-of":
        return all_of(parts)
    answer = any_of(parts)
    if rule.how == "any-of" or answer is False:
        return answer
    exempt = any_of(_exempts(case, part, reading, place) for part in rule.exempt)
    return all_of([answer, opposite(exempt)])


def _exempts(case: Case, rule: Rule, reading: int, place: int) -> Answer:
    """Whether an exemption holds; of several items that an item may be, all must be exempt."""
    views = case.views
    other = views.view(-reading)
    places = {other.places[name] for name in views.view(reading).items[place].ids}
    answers = [hits(case, rule, -reading, one) for one in sorted(places)]
    return any_of(answers) if -reading == WORST else all_of(answers)


def limit_of(case: Case, rule: SizeRule) -> Limit | str:
    """The limit of a rule of size for this part, or what is missing to know it."""
    limit = case.limit(rule.reject)
    if isinstance(limit, str) or rule.thickness_share is None:
        return limit
    thickness = case.size_of_part("thickness")
    if thickness is None:
        return "The limit depends on the thickness: give thickness_mm."
    return Limit(limit.operator, min(limit.value, rule.thickness_share * thickness), limit.unit)


def distance(case: Case, rule: EdgeRule, reading: int, place: int) -> float | None:
    """Distance of an item to the line of the rule, in the unit of the profile, where given."""
    lines = case.lines(rule.line)
    if not lines:
        return None
    key = (rule.line, reading)
    if key not in case.known:
        case.known[key] = case.views.view(reading).distances(lines)
    return float(case.known[key][place])


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
                    f"The distance to '{rule.line}' is asked for: give edges_mm with a line "
                    "of that name."
                )
        case PartRule() if case.size_of_part(rule.by) is None:
            told.append(f"The {rule.by} of the part is asked for: give {rule.by}_mm.")
        case JoinRule():
            for part in (*rule.rules, *rule.exempt):
                told += missing(case, part)
    return list(dict.fromkeys(told))
