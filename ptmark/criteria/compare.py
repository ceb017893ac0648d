"""What differs between two profiles, rule by rule, each in its own units."""

from dataclasses import fields
from typing import NamedTuple

from ptmark.criteria.limits import Limit
from ptmark.criteria.profile import Profile
from ptmark.criteria.rules import Bands, JoinRule, Rule

__all__ = ["Difference", "amounts_of", "compare"]

_COMMON = {"id", "clause", "sure", "note"}


class Difference(NamedTuple):
    """One rule as each profile has it; "" where a profile does not have it."""

    rule: str
    first: str
    second: str


def compare(first: Profile, second: Profile) -> list[Difference]:
    """The rules that differ, in the order of the first profile, then what only the second has.

    Rules are matched by their id, amounts are never converted: two editions of a code hold
    figures, not conversions of each other.

    Examples
    --------
    >>> from ptmark.criteria import load_profile
    >>> found = compare(load_profile("iso-23277-1"), load_profile("iso-23277-2"))
    >>> found[0].rule, found[0].first, found[0].second
    ('linear', 'size: of linear, reject > 2 mm', 'size: of linear, reject > 4 mm')
    """
    own = {rule.id: _told(rule) for rule in first.all_rules}
    other = {rule.id: _told(rule) for rule in second.all_rules}
    return [
        Difference(name, own.get(name, ""), other.get(name, ""))
        for name in dict.fromkeys([*own, *other])
        if own.get(name) != other.get(name)
    ]


def _told(rule: Rule) -> str:
    """The kind of a rule and its amounts, without clause, sureness and note."""
    kind = type(rule).__name__.removesuffix("Rule").lower()
    return f"{kind}: {amounts_of(rule)}"


def amounts_of(rule: Rule) -> str:
    """The amounts of a rule in words, in the unit of its profile."""
    if isinstance(rule, JoinRule):
        return _joined(rule)
    parts = []
    for field in fields(rule):
        value = getattr(rule, field.name)
        silent = field.name in _COMMON or value is None or value == ()
        if not silent and (field.name, value) != ("verdict", "rejectable"):
            parts.append(f"{field.name.replace('_', ' ')} {_written(value)}")
    return ", ".join(parts)


def _joined(rule: JoinRule) -> str:
    kind = "all of" if rule.how == "all-of" else "any of"
    told = f"{kind} {', '.join(part.id for part in rule.rules)}"
    if rule.exempt:
        told += f", unless {', '.join(part.id for part in rule.exempt)}"
    told += "" if rule.each else ", about the scene"
    return told + ("" if rule.verdict == "rejectable" else f", verdict {rule.verdict}")


def _written(value: object) -> str:
    if isinstance(value, Limit):
        unit = "" if value.unit == "1" else f" {value.unit}"
        return f"{value.operator} {value.value:g}{unit}"
    if isinstance(value, Bands):
        rows = [
            (f"{_written(row.up_to)}: " if row.up_to else "above: ") + _written(row.reject)
            for row in value.rows
        ]
        return f"by {value.by} ({'; '.join(rows)})"
    if isinstance(value, tuple):
        numbers = all(isinstance(part, float) for part in value)
        return (" x " if numbers else ", ").join(_written(part) for part in value)
    return f"{value:g}" if isinstance(value, float) else str(value)
