"""A rule in plain words, made from its own figures."""

from ptmark.criteria.limits import Limit
from ptmark.criteria.parse import Read
from ptmark.criteria.rules import (
    Band,
    Bands,
    ClusterRule,
    EdgeRule,
    FrameRule,
    GroupRule,
    JoinRule,
    KindRule,
    Merge,
    PartRule,
    Relevance,
    RowRule,
    Rule,
    ShapeRule,
    ShapeTest,
    ShareRule,
    SingleRule,
    SizeRule,
    StretchRule,
    WindowRule,
)
from ptmark.criteria.wording import bound

__all__ = ["explain"]


def explain(read: Read, unit: str) -> str:
    """Say what a rule of a profile in ``unit`` ("mm" or "in") does, in one sentence.

    Examples
    --------
    >>> from ptmark.criteria.limits import Limit
    >>> rule = SizeRule(id="a", clause="1", sure="memory", of="linear",
    ...                 reject=Limit(">", 2.0, "mm"))
    >>> explain(Read(rule, None, {}), "mm")
    'Rejectable: each linear indication longer than 2 mm.'
    """
    rule = read.rule
    if isinstance(rule, ShapeTest):
        wide = f"{rule.linear.value:g} widths"
        more = (
            f"longer than {wide}" if rule.linear.operator == ">" else f"{wide} long or longer"
        )
        return f"Linear is what is {more}; all else is rounded."
    if isinstance(rule, Relevance):
        return f"Judged is only what is {bound(rule.relevant)}; anything else is not relevant."
    if isinstance(rule, Merge):
        times = "the length" if rule.factor == 1 else f"{rule.factor:g} times the length"
        return (
            "Two neighbours count as one where the gap is "
            f"{'smaller' if rule.operator == '<' else 'no larger'} than {times} of the "
            "smaller one."
        )
    if isinstance(rule, PartRule):
        return f"Holds for parts whose {rule.by} is {_amount(rule.size)}; judges nothing alone."
    verdict = getattr(rule, "verdict", "rejectable").capitalize()
    return f"{verdict}: {_judged(read, rule, unit)}."


def _judged(read: Read, rule: Rule, unit: str) -> str:
    if isinstance(rule, JoinRule):
        return _joined(read, rule)
    if isinstance(rule, KindRule):
        named = _listed(rule.kinds)
        return f"each indication named {named} (ISO 6520-1), any size, relevant or not"
    if isinstance(rule, SingleRule):
        return _single(rule)
    if isinstance(rule, GroupRule):
        return _group(rule, unit)
    return rule.id


def _single(rule: SingleRule) -> str:
    one = f"each {_shape(rule.of)}indication{_named(rule.named)}"
    if isinstance(rule, SizeRule):
        share = ""
        if rule.thickness_share is not None:
            share = f", or than {100 * rule.thickness_share:g} % of the thickness if less"
        return f"{one} {_size(rule.reject)}{share}"
    if isinstance(rule, EdgeRule):
        return f"{one} whose distance from the line '{rule.line}' is {_bounded(rule.reject)}"
    if isinstance(rule, ShapeRule):
        return f"{one} that is relevant, whatever its size"
    return one


def _group(rule: GroupRule, unit: str) -> str:
    many = f"{_shape(rule.of)}indications{_named(rule.named)}"
    if isinstance(rule, RowRule):
        long = "" if rule.reject is None else f", where the row is {_size(rule.reject)}"
        return (
            f"{_number(rule.number)} {many} that one straight line crosses, each next one "
            f"{_amount(rule.gap)} away, edge to edge{long}"
        )
    if isinstance(rule, ClusterRule):
        what = "length end to end" if rule.what == "length" else "hull"
        return (
            f"{_number(rule.number)} {many} that hang together by gaps of "
            f"{_amount(rule.gap)}, edge to edge, where their {what} is {_bounded(rule.reject)}"
        )
    if isinstance(rule, WindowRule):
        return (
            f"{_number(rule.number)} {many} in any rectangle of up to {rule.area:g} {unit}2 "
            f"with no side above {rule.longest:g} {unit}, at its worst place and turn"
        )
    if isinstance(rule, FrameRule):
        side, other = rule.sides
        where = f"on a frame of {side:g} by {other:g} {unit}, at its worst place and turn"
        return f"{_summed(rule.what, many)} {_bounded(rule.reject)} {where}"
    if isinstance(rule, StretchRule):
        only = "" if rule.counted is None else f" (counting those {bound(rule.counted)})"
        where = f"in any {rule.stretch:g} {unit} of weld"
        return f"{_summed(rule.what, many)} {_bounded(rule.reject)} {where}{only}"
    if isinstance(rule, ShareRule):
        return f"lengths of {many} that add up to {_bounded(rule.reject)} of the weld's length"
    return many


def _joined(read: Read, rule: JoinRule) -> str:
    ids = _listed(read.takes.get("rules", ()), "or" if rule.how != "all-of" else "and")
    about = " of one and the same indication" if read.about == "indication" else ""
    if rule.how == "all-of":
        return f"whatever meets all of {ids}{about}"
    if rule.how == "any-of":
        return f"whatever meets {ids}{about}"
    return (
        f"whatever meets {ids}, unless it meets {_listed(read.takes.get('unless', ()), 'or')}"
    )


def _shape(of: str) -> str:
    return "" if of == "any" else f"{of} "


def _named(kinds: tuple[str, ...]) -> str:
    return f" named {_listed(kinds)}" if kinds else ""


def _listed(words: tuple[str, ...], link: str = "or") -> str:
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {link} {words[-1]}"


def _number(limit: Limit) -> str:
    return f"{limit.least_number} or more"


def _summed(what: str, many: str) -> str:
    return f"{many} whose {'number' if what == 'number' else 'summed length'} is"


def _size(reject: Limit | Bands) -> str:
    return f"longer than {_banded(reject)}" if isinstance(reject, Bands) else bound(reject)


def _bounded(reject: Limit | Bands) -> str:
    return _banded(reject) if isinstance(reject, Bands) else _amount(reject)


def _banded(bands: Bands) -> str:
    return f"the limit for its {bands.by} ({'; '.join(_band(one) for one in bands.rows)})"


def _band(one: Band) -> str:
    up_to = "above that" if one.up_to is None else _amount(one.up_to)
    return f"{up_to}: {_amount(one.reject)}"


def _amount(limit: Limit) -> str:
    """A limit in words where no length is meant by itself."""
    text = f"{limit.value:g}" + ("" if limit.unit == "1" else f" {limit.unit}")
    return {
        ">": f"more than {text}",
        ">=": f"{text} or more",
        "<": f"less than {text}",
        "<=": f"{text} or less",
    }[limit.operator]
