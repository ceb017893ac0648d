"""Checking house rules as far as they are written: each fault at its line, key and field."""

import re
from dataclasses import dataclass

from ptmark.criteria.house import HEAD, Place, ProfileDraft
from ptmark.criteria.house_words import explain
from ptmark.criteria.parameter import COMMON, Parameter
from ptmark.criteria.parse import Read, merge_of, relevance_of, rule_of, shape_of
from ptmark.criteria.profile import Profile, profile_of
from ptmark.criteria.rules import Rule
from ptmark.criteria.table import Table
from ptmark.errors import CriteriaError

__all__ = ["Checked", "Fault", "check_draft"]

_WHERE = "house rules"


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing that keeps the rules from being used: its field, its line, and the mend."""

    place: Place
    line: int
    what: str
    mend: str


@dataclass(frozen=True, slots=True)
class Checked:
    """What a draft comes to.

    ``text`` is the file as it would be written; ``profile`` is None as long as there are
    ``faults``; ``trial`` is there as soon as only words of the head are missing, to try the
    rules with, never to judge by. ``says`` explains, by table, every rule that can be read,
    in plain words made from its own figures.
    """

    text: str
    profile: Profile | None
    trial: Profile | None
    faults: tuple[Fault, ...]
    says: dict[str | int, str]


def check_draft(draft: ProfileDraft) -> Checked:
    """Check a draft: every field left open, the first fault of each rule, then the whole.

    The whole is read by the same code that reads a file, so a draft without faults is one
    that `ptmark.criteria.load_profile` takes, with the same checksum.
    """
    text, places = draft.written()
    lines = {place: line for line, place in reversed(places.items())}
    faults = [
        _fault(Place("", key), lines, "is still to be filled in", _mend_of(key))
        for key in HEAD
        if not draft.top.text(key).strip() or draft.top.text(key).strip() == "?"
    ]
    says: dict[str | int, str] = {}
    unit = "in" if draft.top.text("unit") == "in" else "mm"
    counted = 0
    for at, _ in draft.tables():
        nth = counted if isinstance(at, int) else 0
        counted += isinstance(at, int)
        found = _open_fields(draft, at, lines)
        if not found:
            try:
                says[at] = _said(draft, at, (text, unit, nth))
            except CriteriaError as exc:
                found = [_placed(exc, places)]
        faults += found
    profile = None
    words = {key: "…" for key in HEAD if key != "unit"} if faults else {}
    if all(fault.place.table == "" and fault.place.key != "unit" for fault in faults):
        try:
            profile = profile_of(draft.data() | words, text, _WHERE)
        except CriteriaError as exc:
            faults.append(_placed(exc, places))
    return Checked(text, None if faults else profile, profile, tuple(faults), says)


def _said(draft: ProfileDraft, at: str | int, context: tuple[str, str, int]) -> str:
    text, unit, nth = context
    header = "[[rule]]" if isinstance(at, int) else f"[{at}]"
    values = dict(draft.table(at).values)
    table = Table(values, where=_WHERE, text=text, header=header, nth=nth)
    if isinstance(at, int):
        return explain(rule_of(table, unit), unit)
    return explain(Read(_step_of(at, table, unit), table, {}), unit)


def _step_of(name: str, table: Table, unit: str) -> Rule:
    if name == "shape":
        return shape_of(table)
    return relevance_of(table, unit) if name == "relevance" else merge_of(table)


def _open_fields(draft: ProfileDraft, at: str | int, lines: dict[Place, int]) -> list[Fault]:
    """A fault for every key that must be there and is not, or holds a ``?``."""
    kind = draft.kind_of(at)
    if kind is None:
        return []
    table = draft.table(at)
    stands_for = {one.instead: one.name for one in kind.parameters if one.instead}
    found = []
    for one in (*kind.parameters, *COMMON):
        if one.name == "id" and not isinstance(at, int):
            continue
        value = table.values.get(one.name)
        missing = (
            value is None and one.required and stands_for.get(one.name) not in table.values
        )
        if missing or _is_open(value):
            found.append(
                _fault(Place(at, one.name), lines, "is still to be filled in", _how(one))
            )
    return found


def _is_open(value: object) -> bool:
    """Whether a value is, or holds, a ``?`` where a figure belongs."""
    if isinstance(value, str):
        return re.fullmatch(r"\s*(?:[<>]=?\s*)?\?\s*(?:mm2?|in2?|%)?\s*", value) is not None
    if isinstance(value, dict):
        return any(_is_open(one) for one in value.values())
    return isinstance(value, list) and any(_is_open(one) for one in value)


def _how(one: Parameter) -> str:
    return {
        "choice": f"choose one of: {', '.join(one.options)}",
        "kinds": "names or numbers of ISO 6520-1, with commas between them",
        "rules": "ids of other rules, with commas between them",
    }.get(one.holds, "take it from the drawing or the contract")


def _mend_of(key: str) -> str:
    return {
        "name": "small letters, digits, dots and hyphens; the file is called so too",
        "edition": "the drawing's or standard's revision that the figures were taken from",
        "source": "where the figures stand: number and revision of the drawing",
    }.get(key, "one line in your own words")


def _fault(place: Place, lines: dict[Place, int], what: str, mend: str) -> Fault:
    line = lines.get(place) or lines.get(Place(place.table)) or 1
    return Fault(place, line, what, mend)


def _placed(exc: CriteriaError, places: dict[int, Place]) -> Fault:
    """An error of the reader of files, with the field it is about."""
    found = re.search(r"line (\d+)$", exc.where)
    line = int(found[1]) if found else 1
    here = places.get(line, Place(""))
    named, _, what = exc.what.partition(": ")
    words = re.sub(r"\[+\w+\]+", "", named).replace(",", " ").split()
    if not what or not words:
        return Fault(Place(here.table), line, exc.what, exc.mend)
    return Fault(Place(here.table, words[0], here.row), line, what, exc.mend)
