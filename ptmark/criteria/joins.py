"""Rules that take others together: all of, any of, unless.

The plain reading alone can reject, as everywhere. An exemption makes a verdict milder, so in
guarded acceptance it counts only where it holds at the mildest, and guarded acceptance
stays no laxer than the plain one; what an exemption adds or takes away is the one place where
one more indication or a larger one may improve a verdict, since the rule's text says so.
"""

from collections.abc import Callable
from dataclasses import replace

import numpy as np

from ptmark.criteria.case import NO, OPEN, YES, Case, Figures
from ptmark.criteria.leaves import answers, distance, limit_of, looked_at, missing
from ptmark.criteria.result import SEVERITY, Finding
from ptmark.criteria.rules import (
    EdgeRule,
    JoinRule,
    KindRule,
    PartRule,
    Rule,
    SingleRule,
    SizeRule,
)
from ptmark.criteria.singles import only_worst
from ptmark.criteria.view import MILDEST, PLAIN, WORST, Item
from ptmark.criteria.wording import amount, bound, listed, measured, named, within

__all__ = ["by_join", "by_part"]

Judge = Callable[[Case, Rule], list[Finding]]
_HOW = {"all-of": "all of", "any-of": "one of", "unless": "one of"}


def by_join(case: Case, rule: JoinRule, judge: Judge) -> list[Finding]:
    """Judge by other rules together; ``judge`` gives the findings of one of them."""
    return _each(case, rule) if rule.each else [_scene(case, rule, judge)]


def _each(case: Case, rule: JoinRule) -> list[Finding]:
    """A finding for each indication that meets it or may, else one that says there is none."""
    made, certain = [], set()
    found = answers(case, rule, PLAIN)
    for k in np.flatnonzero(found != NO).tolist():
        ids = case.plain.items[k].ids
        made.append(_open(case, rule, ids) if found[k] == OPEN else _met(case, rule, k))
        certain.add(ids)
    if case.guarded:
        doubtful = only_worst(case, rule, certain)
        made += [_may_be(case, rule, k) for _, k in doubtful]
    return made or [case.finding(rule, "acceptable", f"No indication meets {_asked(rule)}.")]


def _asked(rule: JoinRule) -> str:
    parts = f"{_HOW[rule.how]}: {listed([part.id for part in rule.rules])}"
    if rule.how == "unless":
        parts += f", unless {listed([part.id for part in rule.exempt])}"
    return parts


def _open(case: Case, rule: JoinRule, ids: tuple[str, ...]) -> Finding:
    says = f"Indication {named(ids)} is left open. {' '.join(missing(case, rule))}"
    return case.finding(rule, "undecided", says, ids=ids)


def _met(case: Case, rule: JoinRule, place: int) -> Finding:
    item = case.plain.items[place]
    word = "rejectable" if rule.verdict == "rejectable" else "left open"
    told = " and ".join(_why(case, rule, PLAIN, place))
    says = f"Indication {named(item.ids)} meets {_asked(rule)} ({told}): {word}."
    figures = _figures(case, rule, PLAIN, place)
    return case.finding(
        rule, rule.verdict, says, ids=item.ids, figures=figures, sketch=item.ends
    )


def _may_be(case: Case, rule: JoinRule, place: int) -> Finding:
    item, doubts = case.single.items[place], _doubts(case, rule, place)
    says = (
        f"Indication {named(item.ids)} may meet {_asked(rule)}. "
        f"What would decide it: {'; '.join(doubts) or 'a closer measurement'}."
    )
    says = " ".join([says, *missing(case, rule)])
    figures = _figures(case, rule, WORST, place)
    return case.finding(
        rule, "undecided", says, ids=item.ids, figures=figures, sketch=item.ends
    )


def by_part(case: Case, rule: PartRule) -> list[Finding]:
    """Whether the part is of the size asked for, for a join to weigh."""
    size = case.size_of_part(rule.by)
    if size is None:
        return [case.finding(rule, "undecided", " ".join(missing(case, rule)))]
    wanted = bound(rule.size, of_length=False)
    told = amount(size, case.unit, apart_from=rule.size.value)
    hit = rule.size.hit(size)
    says = f"The {rule.by} of {told} is {'' if hit else 'not '}{wanted}."
    figures = Figures(size, 0.0, rule.size.value, case.unit)
    return [case.finding(rule, rule.verdict if hit else "acceptable", says, figures=figures)]


def _leaves(rule: Rule) -> list[Rule]:
    if not isinstance(rule, JoinRule):
        return [rule]
    return [leaf for part in (*rule.rules, *rule.exempt) for leaf in _leaves(part)]


def _why(case: Case, rule: JoinRule, reading: int, place: int) -> list[str]:
    """What the parts that were hit say of the item, each in a few words."""
    told = []
    for part in rule.rules:
        if answers(case, part, reading)[place] == YES:
            if isinstance(part, JoinRule):
                told += _why(case, part, reading, place)
            else:
                told.append(_said(case, part, place))
    return list(dict.fromkeys(told))


def _said(case: Case, rule: Rule, place: int) -> str:
    item = case.plain.items[place]
    match rule:
        case SizeRule():
            limit = limit_of(case, rule)
            if not isinstance(limit, str):
                size = amount(item.length, case.unit, apart_from=limit.value)
                return f"{size} long, {bound(limit)}"
        case EdgeRule():
            limit, apart = case.limit(rule.reject), distance(case, rule, PLAIN, place)
            if not isinstance(limit, str) and apart is not None:
                far = amount(apart, case.unit, apart_from=limit.value)
                return f"{far} from the {rule.line}, {bound(limit, of_length=False)}"
        case KindRule():
            return f"named {listed([f'ISO 6520-1 {kind}' for kind in item.kinds])}"
        case PartRule():
            part = case.size_of_part(rule.by) or 0.0
            told = amount(part, case.unit, apart_from=rule.size.value)
            return f"{rule.by} {told}, {bound(rule.size, of_length=False)}"
        case SingleRule() if rule.of != "any":
            return f"{rule.of}, {item.ratio_told}"
    return "relevant"


def _doubts(case: Case, rule: JoinRule, place: int) -> list[str]:
    """Which lengths and distances of the item leave it open, and how well known would do."""
    item = case.single.items[place]
    own = case.plain.by_ids.get(item.ids)
    if own is None:
        return case.doubts(item, "any")
    k = case.plain.places[item.ids[0]]
    told: list[str] = []
    for leaf in _leaves(rule):
        if looked_at(leaf, item):
            if isinstance(leaf, SingleRule):
                told += case.doubts(item, leaf.of)
            told += _margin(case, leaf, own, k)
    return list(dict.fromkeys(told))


def _margin(case: Case, leaf: Rule, own: Item, place: int) -> list[str]:
    """How well the amount of one part must be known, where its uncertainty spans the limit."""
    value: float | None
    if isinstance(leaf, SizeRule):
        limit, value, u, what = limit_of(case, leaf), own.length, own.u, "the length"
    elif isinstance(leaf, EdgeRule):
        apart = distance(case, leaf, PLAIN, place)
        limit, value, u = case.limit(leaf.reject), apart, own.apart_u
        what = f"the distance from the {leaf.line}"
    else:
        return []
    if isinstance(limit, str) or value is None or abs(value - limit.value) > u:
        return []
    size = measured(value, u, case.unit, against=limit.value)
    margin = within(abs(value - limit.value), case.unit)
    if limit.value in (value, round(value, 6)):
        return [f"{what} ({size}) measured again, since it lies on the limit ({leaf.id})"]
    return [f"{what} ({size}) known to ± {margin} or better ({leaf.id})"]


def _figures(case: Case, rule: JoinRule, reading: int, place: int) -> Figures:
    """The first size that is compared with a limit, else the length without one."""
    item = case.views.single(reading).items[place]
    length = item.length - reading * item.u
    for leaf in _leaves(rule):
        if isinstance(leaf, SizeRule) and looked_at(leaf, item):
            limit = limit_of(case, leaf)
            if not isinstance(limit, str):
                return Figures(length, item.u, limit.value, case.unit)
    return Figures(length, item.u, 0.0, case.unit)


def _scene(case: Case, rule: JoinRule, judge: Judge) -> Finding:
    """Judge the scene as a whole: each part by itself, then taken together."""
    parts = [_strictest(judge(case, _plainly(part))) for part in rule.rules]
    rank = min if rule.how == "all-of" else max
    verdict = rank((part.verdict for part in parts), key=SEVERITY.index)
    exempt = _exempted(case, rule) if rule.how == "unless" else NO
    told = []
    if verdict != "acceptable" and exempt != NO:
        told = [_exemption(case, rule, exempt)]
        verdict = "acceptable" if exempt == YES else "undecided"
    deciding = [part for part in parts if part.verdict != "acceptable"] or parts
    if verdict == "acceptable" and rule.how == "all-of":
        deciding = [part for part in parts if part.verdict == "acceptable"]
    if verdict == "rejectable":
        verdict = rule.verdict
        head = f"Met: {_asked(rule)}."
    elif verdict == "undecided":
        head = f"May be met: {_asked(rule)}."
    else:
        head = f"Not met: {_asked(rule)}."
    first = deciding[0]
    return replace(
        case.finding(
            rule,
            verdict,
            " ".join([head, *(part.says for part in deciding[:3]), *told]),
            ids=tuple(dict.fromkeys(name for part in deciding for name in part.indications)),
            figures=Figures(first.value, first.u, first.limit, first.unit),
        ),
        sketch=first.sketch,
    )


def _exemption(case: Case, rule: JoinRule, exempt: int) -> str:
    """Why an exemption for the scene holds or may hold, in a sentence."""
    names = listed([part.id for part in rule.exempt])
    if exempt == YES:
        return f"Exempt, since an indication meets {names}."
    lacking = [text for part in rule.exempt for text in missing(case, part)]
    if lacking:
        return f"Whether {names} exempts it is open. {' '.join(lacking)}"
    return f"An indication meets {names} as measured, but not for certain within U."


def _plainly(rule: Rule) -> Rule:
    """The same rule giving rejectable to what it hits, for another rule to weigh."""
    return replace(rule, verdict="rejectable")  # type: ignore[call-arg]


def _strictest(findings: list[Finding]) -> Finding:
    return max(findings, key=lambda finding: SEVERITY.index(finding.verdict))


def _exempted(case: Case, rule: JoinRule) -> int:
    """`YES` where an exemption surely holds for some indication, `OPEN` where it may."""
    plain = max(int(answers(case, part, PLAIN).max()) for part in rule.exempt)
    if plain != YES or not case.guarded:
        return plain
    return max(OPEN, *(_surely_somewhere(case, part) for part in rule.exempt))


def _surely_somewhere(case: Case, rule: Rule) -> int:
    """Whether some item of the worst reading is hit, whatever its parts are taken as."""
    found = answers(case, rule, MILDEST)
    whose = case.views.whose
    least = np.full(whose.max() + 1, YES)
    np.minimum.at(least, whose, found)
    return int(least.max())
