"""Rules that look at one indication at a time: size, shape, named kind."""

from collections.abc import Callable
from dataclasses import replace

from ptmark.criteria.case import Case, Figures, conformity
from ptmark.criteria.kinds import covers, number_of
from ptmark.criteria.limits import Limit, per_mm
from ptmark.criteria.result import Finding
from ptmark.criteria.rules import KindRule, ShapeRule, SizeRule
from ptmark.criteria.view import Item
from ptmark.criteria.wording import amount, bound, counted, listed, measured

__all__ = ["by_kind", "by_shape", "by_size", "unknown_kinds"]


def by_size(case: Case, rule: SizeRule) -> list[Finding]:
    """Judge each relevant indication of the shape by its length."""
    limit = rule.reject
    if rule.thickness_share is not None:
        if case.scene.thickness_mm is None:
            says = "The limit depends on the thickness: give thickness_mm."
            return [case.finding(rule, "undecided", says)]
        share = rule.thickness_share * case.scene.thickness_mm * per_mm(case.unit)
        limit = Limit(limit.operator, min(limit.value, share), limit.unit)

    def finding(item: Item, verdict: str) -> Finding:
        plain = item.length if verdict != "worst" else item.length - item.u
        says = _size_says(case, rule, item, plain, limit, verdict)
        given = "undecided" if verdict == "worst" else verdict
        figures = Figures(plain, item.u, limit.value, case.unit)
        made = case.finding(rule, given, says, ids=item.ids, figures=figures, sketch=item.ends)
        return replace(made, conformity=conformity(plain, item.u, limit.value))

    return _each(case, rule.of, lambda item: limit.hit(item.length), finding) or [
        case.finding(
            rule,
            "acceptable",
            f"There is {_relevant(counted(0, rule.of))}; {bound(limit)} would be rejectable.",
            figures=Figures(0.0, 0.0, limit.value, case.unit),
        )
    ]


def by_shape(case: Case, rule: ShapeRule) -> list[Finding]:
    """Give each relevant indication of the shape the verdict of the rule."""
    relevance = case.profile.relevance
    floor = relevance.relevant.value if relevance else 0.0

    def finding(item: Item, verdict: str) -> Finding:
        length = item.length - (item.u if verdict == "worst" else 0.0)
        size = measured(length, item.u, case.unit, against=floor)
        name = " and ".join(item.ids)
        if verdict == "worst":
            why = _capital(_why(case, item, rule.of))
            says = f"{why}; {_relevant(rule.of)} indication is {rule.verdict}."
        else:
            says = (
                f"Indication {name} is {rule.of} ({item.ratio:.1f} times as long as wide), "
                f"{size} long: {rule.verdict} whatever its size."
            )
        given = "undecided" if verdict == "worst" else rule.verdict
        figures = Figures(length, item.u, floor, case.unit)
        return case.finding(rule, given, says, ids=item.ids, figures=figures, sketch=item.ends)

    return _each(case, rule.of, lambda _: True, finding) or [
        case.finding(
            rule,
            "acceptable",
            f"There is {_relevant(counted(0, rule.of))}.",
            figures=Figures(0.0, 0.0, floor, case.unit),
        )
    ]


def _each(
    case: Case,
    shape: str,
    rejects: Callable[[Item], bool],
    finding: Callable[[Item, str], Finding],
) -> list[Finding]:
    """One finding for each item of the shape, and one for each that only the worst rejects."""
    of_shape = {case.plain.items[k].ids: case.plain.items[k] for k in case.plain.members(shape)}
    rejected = {ids for ids, item in of_shape.items() if rejects(item)}
    gone = {one for ids in rejected for one in ids}
    doubtful: dict[tuple[str, ...], Item] = {}
    if case.guarded:
        for k in case.worst.members(shape):
            item = case.worst.items[k]
            if rejects(item) and not gone.issuperset(item.ids):
                doubtful[item.ids] = item
    made = []
    for ids, item in of_shape.items():
        if ids in doubtful:
            made.append(finding(doubtful.pop(ids), "worst"))
        else:
            made.append(finding(item, "rejectable" if ids in rejected else "acceptable"))
    return [*made, *(finding(item, "worst") for item in doubtful.values())]


def _size_says(
    case: Case, rule: SizeRule, item: Item, length: float, limit: Limit, verdict: str
) -> str:
    shape = "" if rule.of == "any" else f"{rule.of} "
    name = f"{shape}indication {' and '.join(item.ids)}"
    if len(item.ids) > 1:
        name += ", taken as one end to end,"
    size = measured(length, item.u, case.unit, against=limit.value)
    if verdict == "acceptable":
        return f"{_capital(name)} is {size} long, not {bound(limit)}."
    if verdict == "rejectable":
        return f"{_capital(name)} is {size} long, {bound(limit)}."
    doubts = case.doubts(item, rule.of)
    because = f" {_capital('; '.join(doubts))}." if doubts else ""
    if limit.hit(length):
        return f"{_capital(name)} would be {size} long, {bound(limit)}.{because}"
    margin = amount(limit.value - length, case.unit, apart_from=0.0)
    return (
        f"{_capital(name)} is {size} long and may be {bound(limit)}.{because} A length "
        f"known to ± {margin} or better would decide it."
    )


def _why(case: Case, item: Item, shape: str) -> str:
    return "; ".join(case.doubts(item, shape)) or f"{' and '.join(item.ids)} may be {shape}"


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
    made = [
        case.finding(
            rule,
            rule.verdict,
            f"Indication {one.id} is named {one.kind}: {rule.verdict} whatever its size.",
            ids=(one.id,),
            figures=Figures(one.length * scale, one.length_u * scale, 0.0, case.unit),
        )
        for one in case.judged
        if any(covers(listed_kind, number_of(one.kind)) for listed_kind in rule.kinds)
    ]
    kinds = listed([f"ISO 6520-1 {kind}" for kind in rule.kinds])
    return made or [
        case.finding(rule, "acceptable", f"No indication is named as one of: {kinds}.")
    ]


def unknown_kinds(case: Case, rule: KindRule) -> list[Finding]:
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
