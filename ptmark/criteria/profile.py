"""An acceptance profile: made of its tables, checked, named by a checksum of its content."""

import hashlib
import json
import re
import tomllib
from dataclasses import dataclass
from typing import Any

from ptmark.criteria.joining import joined, with_parts
from ptmark.criteria.parse import Read, merge_of, relevance_of, rule_of, shape_of
from ptmark.criteria.rules import Merge, Relevance, Rule, ShapeTest
from ptmark.criteria.table import Table
from ptmark.errors import CriteriaError

__all__ = ["Profile", "profile_of"]

_TOLD = {
    "secondary": "seen only in secondary sources, not in the standard itself",
    "memory": "recalled from memory and not confirmed",
    "conflicting": "given differently by different sources",
}
_MOST_RULES = 200
_BASED = re.compile(r"^\s*base\s*=", re.MULTILINE)
# a value that is ? alone, or a limit or amount that has ? for its number
_UNFILLED = re.compile(r'[\s{\[]*[\w-]+\s*=[^#]*"\s*(?:[<>]=?\s*)?\?\s*(?:mm2?|in2?|%)?\s*"')


@dataclass(frozen=True, slots=True, kw_only=True)
class Profile:
    """One standard, edition and class as rules; every amount is in ``unit`` ("mm" or "in").

    ``rules`` are those that judge by themselves; a join holds the rules it takes.
    ``cautions`` open with the word that the contract's own edition governs, then say which
    figures are unsure. ``checksum`` is the SHA-256 of the canonical content, comments aside.
    """

    name: str
    title: str
    edition: str
    unit: str
    source: str
    cautions: tuple[str, ...]
    shape: ShapeTest
    relevance: Relevance | None
    merge: Merge | None
    rules: tuple[Rule, ...]
    checksum: str

    @property
    def all_rules(self) -> tuple[Rule, ...]:
        """Shape, relevance, merging and all rules, those taken by others behind these."""
        steps = (self.shape, self.relevance, self.merge)
        return (*(step for step in steps if step is not None), *with_parts(self.rules))


def profile_of(data: dict[str, Any], source: str, where: str) -> Profile:
    """Make a profile of the tables and the text they stand in, which errors are placed by."""
    _refuse_unfilled(source, where)
    top = Table(data, where=where, text=source)
    unit = top.choice("unit", ("mm", "in"))

    def table(key: str) -> Table:
        return Table(top.raw(key), where=where, text=source, header=f"[{key}]")

    fields = {key: top.text(key) for key in ("name", "title", "edition", "source")}
    governs, cautions = top.text("governs"), top.texts("cautions")
    shape = shape_of(table("shape"))
    relevance = relevance_of(table("relevance"), unit) if top.has("relevance") else None
    merge = merge_of(table("merge")) if top.has("merge") else None
    rules = _rules(top, unit, where, source)
    top.finish()
    steps = (shape, relevance, merge, *with_parts(rules))
    return Profile(
        **fields,
        unit=unit,
        cautions=(governs, *_unsure([step for step in steps if step]), *cautions),
        shape=shape,
        relevance=relevance,
        merge=merge,
        rules=rules,
        checksum=_checksum(data),
    )


def _refuse_unfilled(source: str, where: str) -> None:
    """Refuse a profile that has a ``?`` where a figure belongs, and name every such line."""
    found = [
        (number, line.split("=")[0].strip(" \t{["))
        for number, line in enumerate(source.splitlines(), start=1)
        if _UNFILLED.match(line)
    ]
    if found:
        named = ", ".join(f"{key} in line {number}" for number, key in found)
        raise CriteriaError(
            f"{found[0][1]}: to be filled in from the contract, as every ? is ({named})",
            where=f"{where}, line {found[0][0]}",
            mend="until then nothing is judged by this profile",
        )


def _rules(top: Table, unit: str, where: str, source: str) -> tuple[Rule, ...]:
    tables = top.raw("rule")
    if not isinstance(tables, list) or not 0 < len(tables) <= _MOST_RULES:
        raise top.wrong(
            "rule",
            f"there must be 1 to {_MOST_RULES} [[rule]] tables",
            "begin each rule with a line [[rule]]",
        )
    read: list[Read] = []
    places = _places(source)
    for nth, data in enumerate(tables):
        own = places.get(str(data.get("id")), -1) if places and isinstance(data, dict) else nth
        table = Table(data, where=where, text=source, header="[[rule]]", nth=own)
        one = rule_of(table, unit)
        if one.rule.id in {"shape", "relevance", "merge", *(other.rule.id for other in read)}:
            raise table.wrong(
                "id", f"'{one.rule.id}' is used twice", "give each rule an id of its own"
            )
        read.append(one)
    return joined(read)


def _places(source: str) -> dict[str, int]:
    """Which table of a text changes each rule, by id, where it is based on another; else {}."""
    if not _BASED.search(source):
        return {}
    return {str(rule["id"]): n for n, rule in enumerate(tomllib.loads(source).get("rule", []))}


def _unsure(steps: list[Rule]) -> list[str]:
    """One caution for each degree of unsureness, naming the rules and clauses it holds for."""
    told = []
    for degree, meaning in _TOLD.items():
        named = [f"{step.id} ({step.clause})" for step in steps if step.sure == degree]
        if named:
            told.append(f"Figures {meaning}; check them in the standard: {', '.join(named)}.")
    return told


def _checksum(data: dict[str, Any]) -> str:
    canonical = json.dumps(
        data, sort_keys=True, ensure_ascii=False, separators=(",", ":"), default=str
    )
    return hashlib.sha256(canonical.encode()).hexdigest()
