"""Rules that look at one indication at a time: size, shape, edge distance, named kind."""

from collections.abc import Callable, Iterator

import numpy as np

from ptmark.criteria.case import NO, YES, Case, Figures, conformity
from ptmark.criteria.kinds import covers, name_of, number_of
from ptmark.criteria.leaves import answers, limit_of, missing
from ptmark.criteria.limits import Limit, per_mm
from ptmark.criteria.result import Finding
from ptmark.criteria.rules import EdgeRule, KindRule, Rule, ShapeRule, SingleRule, SizeRule
from ptmark.criteria.view import PLAIN, WORST, Item
from ptmark.criteria.wording import bound, counted, deciding, measured, named, of_kinds

__all__ = ["by_edge", "by_kind", "by_shape", "by_size", "only_worst", "unknown_kinds"]

_PASSED, _HIT, _WORST = "passed", "hit", "only the worst reading hits it"


def by_size(case: Case, rule: SizeRule) -> list[Finding]:
    """Judge each relevant indication of the shape by its length."""
    limit = limit_of(case, rule)
    if isinstance(limit, str):
        return case.left_open(rule, limit)
    least = {one.id for one in case.judged if one.least}

    def finding(how: str, place: int) -> Finding:
        item = case.views.single(_reading(how)).items[place]
        plain, open_ended = _plain(item, how), not least.isdisjoint(item.ids)
        says = _size_says(case, rule, item, limit, how, least=open_ended)
        figures = Figures(plain, item.u, limit.value, case.unit)
        verdict = _given(rule, how)
        return case.finding(
            rule,
            verdict,
            says,
            ids=item.ids,
            figures=figures,
            sketch=item.ends,
            probability=None if open_ended else conformity(plain, item.u, limit.value),
        )

    return _each(case, rule, finding) or [
        case.finding(
            rule,
            "acceptable",
            f"{_none(rule)}; {bound(limit)} would be {_word(rule)}.",
            figures=Figures(0.0, 0.0, limit.value, case.unit),
        )
    ]


def by_edge(case: Case, rule: EdgeRule) -> list[Finding]:
    """Judge each relevant indication of the shape by its distance to a line of the scene."""
    limit, lacking = case.limit(rule.reject), missing(case, rule)
    if isinstance(limit, str) or lacking:
        return case.left_open(rule, " ".join(lacking))

    def finding(how: str, place: int) -> Finding:
        item = case.views.single(_reading(how)).items[place]
        way = case.views.single(_reading(how)).nearest(place, case.lines(rule.line))
        plain = float(np.hypot(*(way[1] - way[0])))
        far = measured(plain, item.apart_u, case.unit, against=limit.value)
        head = f"Indication {named(item.ids)} lies {far} from the {rule.line}"
        wanted = bound(limit, of_length=False)
        if how == _WORST:
            doubts = case.doubts(item, rule.of)
            because = f" {_capital('; '.join(doubts))}." if doubts else ""
            says = f"{head}, which may be {wanted}." + because
            if not limit.hit(plain):
                says += " " + deciding("A distance", abs(plain - limit.value), case.unit)
        else:
            says = f"{head}, {'' if how == _HIT else 'not '}{wanted}."
        return case.finding(
            rule,
            _given(rule, how),
            says,
            ids=item.ids,
            figures=Figures(plain, item.apart_u, limit.value, case.unit),
            sketch=way,
        )

    return _each(case, rule, finding) or [
        case.finding(
            rule,
            "acceptable",
            f"{_none(rule)}.",
            figures=Figures(0.0, 0.0, limit.value, case.unit),
        )
    ]


def by_shape(case: Case, rule: ShapeRule) -> list[Finding]:
    """Give each relevant indication of the shape the verdict of the rule."""
    relevance = case.profile.relevance
    floor = relevance.relevant.value if relevance else 0.0

    def finding(how: str, place: int) -> Finding:
        item = case.views.single(_reading(how)).items[place]
        length = item.length - (item.u if how == _WORST else 0.0)
        size = measured(length, item.u, case.unit, against=floor)
        name = named(item.ids)
        if how == _WORST:
            why = _capital(_why(case, item, rule.of))
            says = f"{why}; {_relevant(rule.of)} indication is {_word(rule)}."
        else:
            says = (
                f"Indication {name} is {rule.of} ({item.ratio_told}), "
                f"{size} long: {_word(rule)} whatever its size."
            )
        figures = Figures(length, item.u, floor, case.unit)
        verdict = _given(rule, how)
        return case.finding(
            rule, verdict, says, ids=item.ids, figures=figures, sketch=item.ends
        )

    return _each(case, rule, finding) or [
        case.finding(
            rule,
            "acceptable",
            f"{_none(rule)}.",
            figures=Figures(0.0, 0.0, floor, case.unit),
        )
    ]


def _each(
    case: Case, rule: SingleRule, finding: Callable[[str, int], Finding]
) -> list[Finding]:
    """One finding for each item the rule looks at, and for each that only the worst one hits.

    ``finding`` is given how the item came out and its place in the reading that shows it.
    """
    plain = case.plain
    own = {plain.items[k].ids: k for k in plain.members(rule.of, rule.named)}
    found = answers(case, rule, PLAIN)
    hit = {ids for ids, k in own.items() if found[k] == YES}
    doubtful = dict(only_worst(case, rule, hit)) if case.guarded else {}
    made = []
    for ids, k in own.items():
        if ids in doubtful:
            made.append(finding(_WORST, doubtful.pop(ids)))
        else:
            made.append(finding(_HIT if ids in hit else _PASSED, k))
    return [*made, *(finding(_WORST, k) for k in doubtful.values())]


def only_worst(
    case: Case, rule: Rule, hit: set[tuple[str, ...]]
) -> Iterator[tuple[tuple[str, ...], int]]:
    """Items that the worst reading may hit and none of whose indications is hit for certain.

    What else an item may be (`Readings.single`) is told where the item itself is not, the least
    of its parts first.
    """
    gone = {one for ids in hit for one in ids}
    whose, told = case.views.whose, dict[int, list[set[str]]]()
    for k in np.flatnonzero(answers(case, rule, WORST) != NO).tolist():
        ids = case.single.items[k].ids
        own, known = set(ids), told.setdefault(int(whose[k]), [])
        if own <= gone or any(own <= one or one <= own for one in known):
            continue
        if case.views.may_be_one(k):
            known.append(own)
            yield ids, k


def _reading(how: str) -> int:
    return WORST if how == _WORST else PLAIN


def _given(rule: SingleRule, how: str) -> str:
    return {_WORST: "undecided", _HIT: rule.verdict}.get(how, "acceptable")


def _plain(item: Item, how: str) -> float:
    """The length as measured."""
    return item.length - (item.u if how == _WORST else 0.0)


def _size_says(
    case: Case, rule: SizeRule, item: Item, limit: Limit, how: str, *, least: bool
) -> str:
    length = _plain(item, how)
    shape = "" if rule.of == "any" else f"{rule.of} "
    name = f"{shape}indication {named(item.ids)}"
    if len(item.ids) > 1:
        name += ", taken as one end to end,"
    size = measured(length, item.u, case.unit, against=limit.value)
    if least:
        size = f"at least {size}"
    if how == _PASSED:
        return f"{_capital(name)} is {size} long, not {bound(limit)}."
    if how == _HIT:
        return f"{_capital(name)} is {size} long, {bound(limit)}."
    doubts = case.doubts(item, rule.of)
    because = f" {_capital('; '.join(doubts))}." if doubts else ""
    if limit.hit(length):
        return f"{_capital(name)} would be {size} long, {bound(limit)}." + because
    says = f"{_capital(name)} is {size} long and may be {bound(limit)}." + because
    if least:  # a surer measurement of what is seen decides nothing
        return says
    return says + " " + deciding("A length", limit.value - length, case.unit)


def _why(case: Case, item: Item, shape: str) -> str:
    return "; ".join(case.doubts(item, shape)) or f"{named(item.ids)} may be {shape}"


def _none(rule: SingleRule) -> str:
    return f"There is {_relevant(counted(0, rule.of))}{of_kinds(rule.named)}"


def _word(rule: SingleRule | KindRule) -> str:
    return "rejectable" if rule.verdict == "rejectable" else "left to the inspector"


def _relevant(text: str) -> str:
    return (
        text.replace("no ", "no relevant ", 1)
        if text.startswith("no ")
        else f"a relevant {text}"
    )


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def by_kind(case: Case, rule: KindRule) -> list[Finding]:
    """Judge the indications that the inspector has named as a listed kind, whatever size."""
    scale = per_mm(case.unit)
    meant = {
        kind
        for kind in {one.kind for one in case.judged}
        if any(covers(listed_kind, number_of(kind)) for listed_kind in rule.kinds)
    }
    made = [
        case.finding(
            rule,
            rule.verdict,
            f"Indication {one.id} is named {one.kind}: {_word(rule)} whatever its size.",
            ids=(one.id,),
            figures=Figures(one.length * scale, one.length_u * scale, 0.0, case.unit),
        )
        for one in case.judged
        if one.kind in meant
    ]
    names, numbers = " or ".join(map(name_of, rule.kinds)), ", ".join(rule.kinds)
    nothing = f"No indication is named {names} (ISO 6520-1 {numbers})."
    return made or [case.finding(rule, "acceptable", nothing)]


def unknown_kinds(case: Case, rule: Rule) -> list[Finding]:
    """Leave open each indication whose named kind is not known, rather than pass it over."""
    return [
        case.finding(
            rule,
            "undecided",
            f"Indication {one.id} is named '{one.kind}', which is no ISO 6520-1 name or number "
            "known here; name it by its number.",
            ids=(one.id,),
        )
        for one in case.judged
        if one.kind.strip() and not number_of(one.kind)
    ]
