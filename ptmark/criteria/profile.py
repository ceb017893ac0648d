"""An acceptance profile: loaded from TOML, checked, named by a checksum of its content."""

import hashlib
import json
import os
import re
import tomllib
from contextlib import suppress
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from ptmark.criteria.joining import joined, with_parts
from ptmark.criteria.parse import Read, merge_of, relevance_of, rule_of, shape_of
from ptmark.criteria.rules import Merge, Relevance, Rule, ShapeTest
from ptmark.criteria.table import Table
from ptmark.criteria.toml_text import read_toml
from ptmark.errors import CriteriaError
from ptmark.places import resource, user_folder

__all__ = [
    "Profile",
    "house_folder",
    "list_profiles",
    "list_templates",
    "load_profile",
    "profile_of",
    "profile_stamp",
    "read_profile",
]

_TOLD = {
    "secondary": "seen only in secondary sources, not in the standard itself",
    "memory": "recalled from memory and not confirmed",
    "conflicting": "given differently by different sources",
}
_MOST_RULES = 200
_BASED = re.compile(r"^\s*base\s*=", re.MULTILINE)
_NAME = re.compile(r"[\w][\w.-]{0,79}")
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


def list_profiles() -> list[str]:
    """Names of the shipped profiles, sorted."""
    return sorted(path.stem for path in resource("criteria").glob("*.toml"))


def list_templates() -> list[str]:
    """Names of the shipped templates, whose figures come from the contract; sorted."""
    found = resource("criteria", "templates").glob("*.toml")
    return sorted(path.stem for path in found if path.stem != "blank")


def house_folder() -> Path:
    """Folder of the user's own profiles, ``NAME.toml`` each; not created here."""
    return user_folder() / "criteria"


def load_profile(name_or_path: str | Path) -> Profile:
    """Load a shipped profile or one of the user's own by name, or any file ending in ``.toml``.

    Raises
    ------
    CriteriaError
        With file, line and key, if it cannot be used; if a name is unknown.

    Examples
    --------
    >>> load_profile("iso-23277-2").unit
    'mm'
    """
    text = str(name_or_path)
    if text in list_templates():
        raise CriteriaError(
            f"'{text}' is a template whose figures are to be filled in from the contract",
            where="criteria",
            mend=f"`ptmark criteria new NAME FILE.toml --from {text}` writes one to fill in",
        )
    if text in list_profiles():
        return _shipped(text)
    own = house_folder() / f"{text}.toml"
    if _NAME.fullmatch(text) and own.is_file():
        text = str(own)
    if not text.endswith(".toml"):
        raise CriteriaError(
            f"there is no profile named '{text}'",
            where="criteria",
            mend="`ptmark criteria` lists the names; a file of your own ends in .toml",
        )
    return profile_of(*read_profile(Path(text)), where=str(name_or_path))


@cache
def _shipped(name: str) -> Profile:
    """Load a shipped profile, once: these change with the program alone."""
    return profile_of(*read_profile(resource("criteria", f"{name}.toml")), where=name)


def read_profile(path: Path) -> tuple[dict[str, Any], str]:
    """Tables of a file, laid over the one it is based on, and its own text; not yet judged."""
    return _with_base(path, seen=())


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


def profile_stamp(name_or_path: str | Path) -> tuple[tuple[str, int, int], ...]:
    """Tell the state of a profile on disk: equal as long as it need not be loaded again.

    Names, times and sizes of the profiles in its folder, since it may be based on another; of
    the user's own where it is a name, with the time of the folder of those shipped, which
    change with the program alone.
    """
    text = str(name_or_path)
    if text.endswith(".toml"):
        return _files_in(Path(text).parent)
    shipped = resource("criteria")
    return ((shipped.name, shipped.stat().st_mtime_ns, 0), *_files_in(house_folder()))


def _files_in(folder: Path) -> tuple[tuple[str, int, int], ...]:
    found = []
    with suppress(OSError), os.scandir(folder) as files:
        for file in files:
            if file.name.endswith(".toml"):
                with suppress(OSError):  # gone since it was listed
                    state = file.stat()
                    found.append((file.name, state.st_mtime_ns, state.st_size))
    return tuple(sorted(found))


def _with_base(path: Path, seen: tuple[Path, ...]) -> tuple[dict[str, Any], str]:
    """Read a file and lay it over the profile named by ``base``, if it names one."""
    data, text = read_toml(path)
    if "base" not in data:
        return data, text
    top = Table(data, where=str(path), text=text)
    name = top.text("base")
    if path.resolve() in seen:
        raise top.wrong(
            "base", "the profiles are based on each other in a circle", "take one base out"
        )
    base = path.with_name(f"{name}.toml") if _NAME.fullmatch(name) else Path()
    if not base.is_file() and name in list_profiles():
        base = resource("criteria", f"{name}.toml")
    if not base.is_file():
        raise top.wrong(
            "base",
            f"there is no profile named '{name}' beside this file, nor among those shipped",
            "`ptmark criteria` lists the names",
        )
    under, _ = _with_base(base, (*seen, path.resolve()))
    return _laid_over(under, data, str(path), text), text


def _laid_over(
    under: dict[str, Any], data: dict[str, Any], where: str, text: str
) -> dict[str, Any]:
    below, own = under.get("rule", []), data.get("rule", [])
    below = below if isinstance(below, list) else []
    if not isinstance(own, list):
        raise Table(data, where=where, text=text).wrong(
            "rule", "must be [[rule]] tables", "begin each with a line [[rule]]"
        )
    rules = {str(rule.get("id")): rule for rule in below if isinstance(rule, dict)}
    named: set[str] = set()
    for nth, rule in enumerate(own):
        table = Table(rule, where=where, text=text, header="[[rule]]", nth=nth)
        if str(rule.get("id")) not in rules:
            raise table.wrong(
                "id",
                "overrides a rule that the base does not have",
                "give the id of one of its rules; `ptmark criteria show` lists them",
            )
        name = str(rule["id"])
        if name in named:
            raise table.wrong("id", f"overrides '{name}' twice", "leave one of the two")
        named.add(name)
        rules[name] |= rule
    merged = under | {key: value for key, value in data.items() if key != "base"}
    return merged | {"rule": list(rules.values())}


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
