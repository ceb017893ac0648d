"""House rules being written: a profile as typed so far, to and from TOML with its comments.

A draft may be incomplete or wrong; `ptmark.criteria.house_check` says where. Values are held as
a profile writes them: text with its unit, lists of text, and tables of limits.
"""

import json
import re
import tomllib
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from ptmark.criteria.by_name import list_profiles, list_templates, read_profile
from ptmark.criteria.parameter import COMMON, RuleKind
from ptmark.criteria.vocabulary import rule_kinds, step_kinds
from ptmark.errors import CriteriaError
from ptmark.places import resource

__all__ = ["HEAD", "Place", "ProfileDraft", "TableDraft"]

HEAD = ("name", "title", "edition", "unit", "source", "governs")
STEPS = ("shape", "relevance", "merge")
_GOVERNS = (
    "The edition named in the contract governs, not this file; the certified inspector decides."
)
_KEY = re.compile(r"([\w-]+)\s*=")
_BEHIND = re.compile(r'[\w-]+\s*=\s*"(?:[^"\\]|\\.)*"\s*(#.*)$')  # a remark behind a value


@dataclass(frozen=True, slots=True)
class Place:
    """Where something stands: "" (the top), a step's name or a rule's number from 0; its key.

    ``row`` counts the rows of a table of limits from 1; 0 is the key itself.
    """

    table: str | int
    key: str = ""
    row: int = 0


@dataclass(slots=True)
class TableDraft:
    """The values of one table by key, and the comment lines that stand above each.

    The comments under "" stand above the table's own name.
    """

    values: dict[str, Any] = field(default_factory=dict)
    comments: dict[str, list[str]] = field(default_factory=dict)

    def text(self, key: str) -> str:
        """A value that is text; "" where it is missing or of another kind."""
        value = self.values.get(key, "")
        return value if isinstance(value, str) else ""

    def put(self, key: str, value: object) -> None:
        """Set a value; an empty one leaves the key out."""
        if value in ("", [], None):
            self.values.pop(key, None)
        else:
            self.values[key] = value


class ProfileDraft:
    """A profile being written.

    ``top`` holds what stands before the first table; ``steps`` the tables shape, relevance and
    merge, as far as there are; ``rules`` the rules in their order, each with its ``kind``.
    """

    def __init__(self) -> None:
        self.top = TableDraft({"unit": "mm", "governs": _GOVERNS})
        self.steps: dict[str, TableDraft] = {"shape": TableDraft()}
        self.rules: list[TableDraft] = []

    @classmethod
    def start(cls, name: str) -> "ProfileDraft":
        """Start from a shipped profile or template; figures are kept, name and title not.

        Raises
        ------
        CriteriaError
            If there is none of that name.
        """
        if name in list_templates():
            draft = cls.read(resource("criteria", "templates", f"{name}.toml"))
        elif name in list_profiles():
            draft = cls.read(resource("criteria", f"{name}.toml"))
        else:
            raise CriteriaError(
                f"there is no profile or template named '{name}'",
                where="criteria",
                mend="`ptmark criteria` lists them",
            )
        draft.top.put("name", "")
        draft.top.put("title", "")  # rules that were changed must not go by a standard's title
        return draft

    @classmethod
    def read(cls, path: Path) -> "ProfileDraft":
        """Read a file, laid over its base where it names one.

        Raises
        ------
        CriteriaError
            If the file cannot be read as TOML, or holds what no profile can.
        """
        data, text = read_profile(path)
        draft = cls()
        remarks = _remarks(text)
        based = "base" in tomllib.loads(text)  # its rules stand at other places in the base
        tables = {key: data[key] for key in STEPS if key in data}
        top = {key: data[key] for key in data if key not in {"rule", "base", *STEPS}}
        draft.top = _table(top, str(path), remarks.get(("", 0), {}))
        draft.steps = {
            key: _table(made, str(path), {} if based else remarks.get((f"[{key}]", 0), {}))
            for key, made in tables.items()
        }
        rules = data.get("rule", [])
        draft.rules = [
            _table(made, str(path), {} if based else remarks.get(("[[rule]]", nth), {}))
            for nth, made in enumerate(rules if isinstance(rules, list) else [])
        ]
        return draft

    def table(self, at: str | int) -> TableDraft:
        """The table of a place: the top, a step or a rule."""
        if isinstance(at, int):
            return self.rules[at]
        return self.top if at == "" else self.steps[at]

    def tables(self) -> list[tuple[str | int, TableDraft]]:
        """All tables but the top with where they stand, in the order of the file."""
        steps = [(key, self.steps[key]) for key in STEPS if key in self.steps]
        return [*steps, *enumerate(self.rules)]

    def kind_of(self, at: str | int) -> RuleKind | None:
        """What the vocabulary says of a table; None for the top and for unknown kinds."""
        if isinstance(at, int):
            wanted = self.rules[at].text("kind")
            return next((kind for kind in rule_kinds() if kind.name == wanted), None)
        return next((kind for kind in step_kinds() if kind.name == at), None)

    def add(self, kind: str) -> int:
        """Add an empty rule of a kind at the end; returns its number."""
        taken = {rule.text("id") for rule in self.rules}
        name, nth = kind, 2
        while name in taken or name in STEPS:
            name, nth = f"{kind}-{nth}", nth + 1
        self.rules.append(TableDraft({"id": name, "kind": kind}))
        return len(self.rules) - 1

    def move(self, nth: int, by: int) -> int:
        """Move a rule up or down; returns where it stands now."""
        to = min(max(nth + by, 0), len(self.rules) - 1)
        self.rules.insert(to, self.rules.pop(nth))
        return to

    def data(self) -> dict[str, Any]:
        """The tables as TOML would give them."""
        made: dict[str, Any] = dict(self.top.values)
        made |= {key: dict(self.steps[key].values) for key in STEPS if key in self.steps}
        return made | {"rule": [dict(rule.values) for rule in self.rules]}

    def written(self) -> tuple[str, dict[int, Place]]:
        """The TOML text, and what stands in each of its lines (from 1)."""
        lines: list[str] = []
        places: dict[int, Place] = {}
        _write(lines, places, "", self.top, (*HEAD, "cautions"))
        for at, table in self.tables():
            lines += ["", *table.comments.get("", [])]
            lines.append("[[rule]]" if isinstance(at, int) else f"[{at}]")
            places[len(lines)] = Place(at)
            kind = self.kind_of(at)
            own = [one.name for one in kind.parameters] if kind else []
            order = ("id", "kind", *own, *(one.name for one in COMMON))
            _write(lines, places, at, table, order)
        return "\n".join([*lines, ""]), places

    def __eq__(self, other: object) -> bool:
        return isinstance(other, ProfileDraft) and self.written() == other.written()

    __hash__ = None  # type: ignore[assignment] # it changes while it is written


def _write(
    lines: list[str],
    places: dict[int, Place],
    at: str | int,
    table: TableDraft,
    order: tuple[str, ...],
) -> None:
    """Write the keys of a table, those of ``order`` first, each under its comments."""
    keys = [key for key in dict.fromkeys(order) if key in table.values]
    for key in [*keys, *(key for key in table.values if key not in keys)]:
        lines += table.comments.get(key, [])
        for row, line in enumerate(_value_lines(key, table.values[key])):
            lines.append(line)
            places[len(lines)] = Place(at, key, row)


def _value_lines(key: str, value: Any) -> list[str]:  # noqa: ANN401 - text, texts or tables
    if isinstance(value, str):
        return [f"{key} = {_quoted(value)}"]
    if all(isinstance(one, str) for one in value) and key != "cautions":
        return [f"{key} = [{', '.join(_quoted(one) for one in value)}]"]
    inner = [_quoted(one) if isinstance(one, str) else _inline(one) for one in value]
    return [f"{key} = [", *(f"    {one}," for one in inner), "]"]


def _inline(row: dict[str, str]) -> str:
    return "{ " + ", ".join(f"{key} = {_quoted(value)}" for key, value in row.items()) + " }"


def _quoted(text: str) -> str:
    """A TOML basic string: JSON's escapes, and DEL, which JSON leaves and TOML forbids."""
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")


def _table(data: object, where: str, remarks: dict[str, list[str]]) -> TableDraft:
    """A table whose values are all such as a profile can hold."""
    if not isinstance(data, dict):
        raise CriteriaError("must be a table", where=where, mend="check the file by hand")
    for key, value in data.items():
        rows = value if isinstance(value, list) else []
        flat = [part for row in rows for part in (row.values() if _is_row(row) else [row])]
        if not isinstance(value, str | list) or not all(isinstance(one, str) for one in flat):
            raise CriteriaError(
                f"{key}: {value!r:.40} is no text", where=where, mend="write text in quotes"
            )
    return TableDraft(dict(data), remarks)


def _is_row(row: object) -> bool:
    return isinstance(row, dict)


def _remarks(text: str) -> dict[tuple[str, int], dict[str, list[str]]]:
    """Comment lines by table (its header and number from 0) and the key they stand above."""
    found: dict[tuple[str, int], dict[str, list[str]]] = {}
    seen: dict[str, int] = {}
    at, waiting = ("", 0), list[str]()
    for line in text.splitlines():
        bare = line.strip()
        key, header = _KEY.match(bare), bare.startswith("[")
        if bare.startswith("#"):
            waiting.append(bare)
        elif header and re.match(r"\[{1,2}[\w-]+\]{1,2}\s*(#.*)?$", bare):
            name = re.sub(r"\s|#.*", "", bare)
            at = (name, seen.get(name, 0))
            seen[name] = at[1] + 1
            _keep(found, at, "", waiting)
        elif key:
            behind = _BEHIND.match(bare)
            _keep(found, at, key[1], [*waiting, behind[1]] if behind else waiting)
        else:
            continue
        if not bare.startswith("#"):
            waiting = []
    return found


def _keep(
    found: dict[tuple[str, int], dict[str, list[str]]],
    at: tuple[str, int],
    key: str,
    lines: list[str],
) -> None:
    if lines:
        found.setdefault(at, {}).setdefault(key, []).extend(lines)
