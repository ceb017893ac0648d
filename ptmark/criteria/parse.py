"""From the tables of a profile to its typed rules."""

from collections.abc import Callable
from typing import Any

from ptmark.criteria.kinds import number_of
from ptmark.criteria.rules import (
    FrameRule,
    KindRule,
    Merge,
    Relevance,
    RowRule,
    Rule,
    ShapeRule,
    ShapeTest,
    ShareRule,
    SizeRule,
    StretchRule,
    WindowRule,
)
from ptmark.criteria.table import Table

__all__ = ["SURE", "merge_of", "relevance_of", "rule_of", "shape_of"]

SURE = ("verified", "secondary", "memory", "conflicting")
_SHAPES = ("linear", "rounded", "any")
_VERDICTS = ("rejectable", "undecided")
_WHAT = ("number", "length")


def _common(table: Table, name: str) -> dict[str, Any]:
    return {
        "id": name,
        "clause": table.text("clause"),
        "sure": table.choice("sure", SURE),
        "note": table.text("note", ""),
    }


def shape_of(table: Table) -> ShapeTest:
    """Read ``[shape]``."""
    rule = ShapeTest(**_common(table, "shape"), linear=table.limit("linear", "1"))
    if rule.linear.value < 1:
        raise table.wrong(
            "linear", f"a ratio below 1 has no meaning, got {rule.linear.value:g}"
        )
    table.finish()
    return rule


def relevance_of(table: Table, unit: str) -> Relevance:
    """Read ``[relevance]``."""
    rule = Relevance(**_common(table, "relevance"), relevant=table.limit("relevant", unit))
    table.finish()
    return rule


def merge_of(table: Table) -> Merge:
    """Read ``[merge]``: ``gap = "< 1"`` times the smaller one's length."""
    limit = table.limit("gap", "1", ("<", "<="))
    rule = Merge(**_common(table, "merge"), operator=limit.operator, factor=limit.value)
    table.finish()
    return rule


def _size(table: Table, unit: str, common: dict[str, Any]) -> Rule:
    share = table.amount("thickness_share", "%") / 100 if table.has("thickness_share") else None
    return SizeRule(
        **common,
        of=table.choice("of", _SHAPES),
        reject=table.limit("reject", unit),
        thickness_share=share,
    )


def _shape(table: Table, _unit: str, common: dict[str, Any]) -> Rule:
    verdict = table.choice("verdict", _VERDICTS, "rejectable")
    return ShapeRule(**common, of=table.choice("of", _SHAPES), verdict=verdict)


def _kind(table: Table, _unit: str, common: dict[str, Any]) -> Rule:
    kinds = table.texts("kinds")
    if not kinds:
        raise table.wrong("kinds", "must list at least one ISO 6520-1 name or number")
    numbers = tuple(number_of(kind) for kind in kinds)
    if "" in numbers:
        raise table.wrong(
            "kinds", f"'{kinds[numbers.index('')]}' is no ISO 6520-1 name or number"
        )
    verdict = table.choice("verdict", _VERDICTS, "rejectable")
    return KindRule(**common, kinds=numbers, verdict=verdict)


def _row(table: Table, unit: str, common: dict[str, Any]) -> Rule:
    number = table.number_limit("number")
    if number.least_number < 2:
        raise table.wrong("number", "a row needs two or more")
    gap = table.limit("gap", unit, ("<", "<="))
    return RowRule(
        **common,
        of=table.choice("of", _SHAPES),
        number=number,
        gap=gap,
        verdict=table.choice("verdict", _VERDICTS, "rejectable"),
    )


def _window(table: Table, unit: str, common: dict[str, Any]) -> Rule:
    area, longest = table.amount("area", f"{unit}2"), table.amount("longest", unit)
    if longest * longest < area:
        raise table.wrong("longest", f"no rectangle with sides up to {longest:g} has that area")
    return WindowRule(
        **common,
        of=table.choice("of", _SHAPES),
        number=table.number_limit("number"),
        area=area,
        longest=longest,
    )


def _frame(table: Table, unit: str, common: dict[str, Any]) -> Rule:
    what = table.choice("what", _WHAT)
    first, second = table.amounts("sides", unit, 2)
    reject = table.number_limit("reject") if what == "number" else table.limit("reject", unit)
    sides = (max(first, second), min(first, second))
    return FrameRule(
        **common, of=table.choice("of", _SHAPES), what=what, reject=reject, sides=sides
    )


def _stretch(table: Table, unit: str, common: dict[str, Any]) -> Rule:
    what = table.choice("what", _WHAT)
    reject = table.number_limit("reject") if what == "number" else table.limit("reject", unit)
    return StretchRule(
        **common,
        of=table.choice("of", _SHAPES),
        what=what,
        reject=reject,
        stretch=table.amount("stretch", unit),
        counted=table.limit("counted", unit) if table.has("counted") else None,
    )


def _share(table: Table, _unit: str, common: dict[str, Any]) -> Rule:
    return ShareRule(
        **common, of=table.choice("of", _SHAPES), reject=table.limit("reject", "%")
    )


_KINDS: dict[str, Callable[[Table, str, dict[str, Any]], Rule]] = {
    "size": _size,
    "shape": _shape,
    "kind": _kind,
    "row": _row,
    "window": _window,
    "frame": _frame,
    "stretch": _stretch,
    "weld-share": _share,
}


def rule_of(table: Table, unit: str) -> Rule:
    """Read one ``[[rule]]``.

    Raises
    ------
    CriteriaError
        If its kind or a key is unknown, an amount is missing, negative or in another unit.
    """
    kind = table.choice("kind", tuple(_KINDS))
    rule = _KINDS[kind](table, unit, _common(table, table.text("id")))
    table.finish()
    return rule
