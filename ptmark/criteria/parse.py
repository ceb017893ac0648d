"""From the tables of a profile to its typed rules, by `ptmark.criteria.vocabulary`."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any, NamedTuple

from ptmark.criteria.kinds import number_of
from ptmark.criteria.limits import Limit
from ptmark.criteria.parameter import COMMON, Parameter, RuleKind
from ptmark.criteria.rules import (
    Band,
    Bands,
    ClusterRule,
    EdgeRule,
    FrameRule,
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
    SizeRule,
    StretchRule,
    WindowRule,
)
from ptmark.criteria.table import Table
from ptmark.criteria.vocabulary import rule_kinds, step_kinds

__all__ = ["Read", "merge_of", "relevance_of", "rule_of", "shape_of"]

_MOST_BANDS = 50
_MOST_WIDTHS = 100  # beyond, a crack would count as rounded
_MAKES: dict[str, Callable[..., Rule]] = {
    "size": SizeRule,
    "shape": ShapeRule,
    "kind": KindRule,
    "edge": EdgeRule,
    "row": RowRule,
    "cluster": ClusterRule,
    "window": WindowRule,
    "frame": FrameRule,
    "stretch": StretchRule,
    "weld-share": ShareRule,
    "part": PartRule,
}


class Read(NamedTuple):
    """A rule as read; ``takes`` holds the keys of a join that list other rules by id."""

    rule: Rule
    table: Table
    takes: dict[str, tuple[str, ...]]
    about: str = ""


def shape_of(table: Table) -> ShapeTest:
    """Read ``[shape]``."""
    rule = ShapeTest(**_step(table, "shape", "mm"))
    if not 1 <= rule.linear.value <= _MOST_WIDTHS:
        raise table.wrong(
            "linear",
            f"a ratio below 1 or above {_MOST_WIDTHS} has no meaning, "
            f"got {rule.linear.value:g}",
            'write it as in linear = "> 3"',
        )
    return rule


def relevance_of(table: Table, unit: str) -> Relevance:
    """Read ``[relevance]``."""
    return Relevance(**_step(table, "relevance", unit))


def merge_of(table: Table) -> Merge:
    """Read ``[merge]``: ``gap = "< 1"`` times the smaller one's length."""
    read = _step(table, "merge", "mm")
    limit: Limit = read.pop("gap")
    return Merge(**read, operator=limit.operator, factor=limit.value)


def rule_of(table: Table, unit: str) -> Read:
    """Read one ``[[rule]]``.

    Raises
    ------
    CriteriaError
        If its kind or a key is unknown, an amount is missing, negative or in another unit.
    """
    kinds = {kind.name: kind for kind in rule_kinds()}
    kind = kinds[table.choice("kind", tuple(kinds))]
    read = _common(table) | _keys(table, kind, unit)
    table.finish()
    if kind.judges == "join":
        takes: dict[str, tuple[str, ...]] = {}
        for key in ("rules", "unless"):
            if key in read:
                takes[key] = read.pop(key)
        about = read.pop("about", "")
        return Read(JoinRule(**read, how=kind.name, rules=()), table, takes, about)
    _check(table, kind.name, read)
    if "thickness_share" in read:
        read["thickness_share"] /= 100
    return Read(_MAKES[kind.name](**read), table, {})


def _step(table: Table, name: str, unit: str) -> dict[str, Any]:
    kind = next(kind for kind in step_kinds() if kind.name == name)
    read = {"id": name} | _common(table, but=("id",)) | _keys(table, kind, unit)
    table.finish()
    return read


def _common(table: Table, but: tuple[str, ...] = ()) -> dict[str, Any]:
    return {
        one.name: _READ[one.holds](table, one, "1")
        for one in COMMON
        if one.name not in but and (one.required or table.has(one.name))
    }


def _keys(table: Table, kind: RuleKind, unit: str) -> dict[str, Any]:
    """What the table holds of the keys of a kind, by their names."""
    read: dict[str, Any] = {}
    stands_for = {one.instead: one for one in kind.parameters if one.instead}
    for one in kind.parameters:
        other = stands_for.get(one.name)
        if other is not None and table.has(other.name):
            if table.has(one.name):
                raise table.wrong(
                    other.name, f"stands in place of {one.name}", "give one of the two"
                )
            continue
        if one.required or table.has(one.name):
            wanted = one.unit_in(unit, read.get("what", "length"))
            read[one.name] = _READ[one.holds](table, one, wanted)
    if "bands" in read:
        by = read.pop("by", "thickness")
        reject = kind.parameter("reject")
        wanted = reject.unit_in(unit, read.get("what", "length"))
        rows = _rows(table, read.pop("bands"), unit, wanted, reject)
        read["reject"] = Bands(by=by, rows=rows)
    elif "by" in read and "bands" in {one.name for one in kind.parameters}:
        raise table.wrong("by", "has no meaning without bands", "take it out")
    return read


def _choice(table: Table, one: Parameter, _unit: str) -> str:
    return table.choice(one.name, one.options)


def _limit(table: Table, one: Parameter, unit: str) -> Limit:
    if unit == "1" and one.unit == "what":
        return table.number_limit(one.name)
    return table.limit(one.name, unit, one.operators)


def _named(table: Table, one: Parameter, _unit: str) -> tuple[str, ...]:
    kinds = table.texts(one.name)
    if not kinds:
        raise table.wrong(
            one.name,
            "must list at least one ISO 6520-1 name or number",
            'write it as in ["100", "401"]',
        )
    numbers = tuple(number_of(kind) for kind in kinds)
    if "" in numbers:
        raise table.wrong(
            one.name,
            f"'{kinds[numbers.index('')]}' is no ISO 6520-1 name or number",
            "give the number",
        )
    return numbers


def _ids(table: Table, one: Parameter, _unit: str) -> tuple[str, ...]:
    ids = table.texts(one.name)
    if not ids:
        raise table.wrong(
            one.name, "must list the id of at least one other rule", "name it in brackets"
        )
    return ids


_READ: dict[str, Callable[[Table, Parameter, str], Any]] = {
    "text": lambda table, one, _: table.text(one.name),
    "choice": _choice,
    "limit": _limit,
    "number": lambda table, one, _: table.number_limit(one.name),
    "amount": lambda table, one, unit: table.amount(one.name, unit),
    "amounts": lambda table, one, unit: table.amounts(one.name, unit, 2),
    "kinds": _named,
    "bands": lambda table, one, _: table.raw(one.name),
    "rules": _ids,
}


def _rows(
    table: Table, listed: object, unit: str, wanted: str, reject: Parameter
) -> tuple[Band, ...]:
    """Read ``bands``: tables of ``up_to`` and ``reject``, thin first; the last may be open."""
    if not isinstance(listed, list) or not 0 < len(listed) <= _MOST_BANDS:
        raise table.wrong(
            "bands",
            f"must be a list of 1 to {_MOST_BANDS} tables",
            'write it as in [{ up_to = "<= 10 mm", reject = "> 2 mm" }, { reject = "> 3 mm" }]',
        )
    rows: list[Band] = []
    for nth, data in enumerate(listed, start=1):
        inner = table.inner(data, "bands", nth)
        last = nth == len(listed)
        up_to = None
        if inner.has("up_to") or not last:
            up_to = inner.limit("up_to", unit, ("<", "<="))
        limit = _limit(inner, replace(reject, name="reject"), wanted)
        inner.finish()
        before = rows[-1].up_to if rows else None
        if up_to is not None and before is not None and up_to.value <= before.value:
            raise inner.wrong(
                "up_to", "must be above that of the band before", "list the thinnest band first"
            )
        rows.append(Band(up_to=up_to, reject=limit))
    return tuple(rows)


def _check(table: Table, kind: str, read: dict[str, Any]) -> None:
    """Refuse what no key by itself shows to be wrong; put sides in order."""
    if kind in {"row", "cluster"} and read["number"].least_number < 2:
        raise table.wrong(
            "number", f"a {kind} needs two or more", 'write it as in number = ">= 3"'
        )
    if kind == "window" and read["longest"] ** 2 < read["area"]:
        raise table.wrong(
            "longest",
            f"no rectangle with sides up to {read['longest']:g} has that area",
            "make the area smaller or the longest side longer",
        )
    if kind == "frame":
        read["sides"] = (max(read["sides"]), min(read["sides"]))
