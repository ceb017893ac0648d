"""Reading one TOML table strictly: every key typed, none unknown, errors with line and key."""

import re
import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar
from unicodedata import category

from ptmark.criteria.limits import Limit, parse_amount, parse_limit
from ptmark.errors import CriteriaError

__all__ = ["Table", "line_of", "read_toml"]

_T = TypeVar("_T")

_MOST = {"%": 100.0}
_MOST_OF_ALL = 1e6  # of any other unit: what is larger judges nothing
_TOO_DEEP = re.compile(
    r"""(?<![\w"'-])(?:[\w"'-]++[ \t]*+\.[ \t]*+){30}"""
)  # each dot nests a table deeper
LARGEST_FILE = 262_144  # bytes; the largest shipped profile has about 4,000


def read_toml(path: Path) -> tuple[dict[str, Any], str]:
    """Read a profile file: its tables and its text.

    Raises
    ------
    CriteriaError
        If it is missing, no plain file, too large, not UTF-8 or not TOML.
    """
    where = str(path)
    data = _bytes(path, where)
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data[: error.start].count(b"\n") + 1
        raise CriteriaError(
            f"is not UTF-8 text (byte {error.start})",
            where=f"{where}, line {line}",
            mend="save it as plain text, encoded in UTF-8",
        ) from error
    deep = _TOO_DEEP.search(text)
    if deep is not None:
        line = text.count("\n", 0, deep.start()) + 1
        raise CriteriaError(
            f"{deep[0].partition('.')[0].strip()}: a key of so many parts has no meaning",
            where=f"{where}, line {line}",
            mend="take it out",
        )
    try:
        return tomllib.loads(text), text
    except RecursionError as error:
        raise CriteriaError(
            "is not valid TOML: brackets too deep", where=where, mend="take brackets out"
        ) from error
    except ValueError as error:  # tomllib's own kind, and numbers of too many digits
        raise _no_toml(where, text, str(error)) from error


def _bytes(path: Path, where: str) -> bytes:
    try:
        if not path.is_file():
            raise CriteriaError(
                "there is no such profile file",
                where=where,
                mend="`ptmark criteria` lists them",
            )
        with path.open("rb") as file:
            data = file.read(LARGEST_FILE + 1)
    except OSError as error:
        raise CriteriaError(
            f"cannot be read: {error.strerror}", where=where, mend="check the file's rights"
        ) from error
    if len(data) > LARGEST_FILE:
        raise _too_large(where, data)
    return data


def _too_large(where: str, data: bytes) -> CriteriaError:
    """Name the line in which the size passes what any profile needs, and its key."""
    lines = data.decode("utf-8", errors="replace").splitlines()
    keys = (re.match(r"\s*([\w-]+)\s*=", line) for line in reversed(lines))
    key = next((found[1] for found in keys if found), "")
    return CriteriaError(
        f"{f'{key}: ' if key else ''}from here on the file is larger than "
        f"{LARGEST_FILE // 1024} kB, so it is no profile",
        where=f"{where}, line {max(len(lines), 1)}",
        mend="take out what does not belong there, or start with `ptmark criteria new`",
    )


def _no_toml(where: str, text: str, said: str) -> CriteriaError:
    """Name the line, and the key that stands in it where one does."""
    found = re.search(r" \(at line (\d+), column \d+\)", said)
    lines = text.splitlines()
    number = int(found[1]) if found else max(len(lines), 1)
    line = lines[number - 1] if number <= len(lines) else ""
    key = re.match(r"\s*([\w-]+)\s*=", line)
    told = said[: found.start()] if found else said.replace(" (at end of document)", "")
    mend = 'write one key a line, its value in quotes: reject = "> 5 mm"'
    if "digits" in told:
        long = re.search(r"\d{4000}", text)
        number = text.count("\n", 0, long.start()) + 1 if long else number
        key = re.match(r"\s*([\w-]+)\s*=", lines[number - 1])
        told = "a number of too many digits"
    if told == "Cannot overwrite a value":
        told, mend = "the key is there twice", "leave one of the two"
    return CriteriaError(
        f"{f'{key[1]}: ' if key else ''}is not valid TOML: {told}",
        where=f"{where}, line {number}",
        mend=mend,
    )


def line_of(text: str, header: str, nth: int, key: str) -> int:
    """Line (from 1) of ``key`` under the ``nth`` (from 0) ``header``, or of the header.

    ``header`` is "" for the top, else such as ``[shape]`` or ``[[rule]]``. Line 1 if unknown.
    """
    found, seen, inside = 1, -1, header == ""
    for number, line in enumerate(text.splitlines(), start=1):
        bare = line.strip()
        if re.match(r"\[", bare):
            if inside:
                break
            compact = re.sub(r"\s|#.*", "", bare)
            seen += compact == header
            inside = compact == header and seen == nth
            found = number if inside else found
        elif inside and re.match(rf"[\"']?{re.escape(key)}[\"']?\s*=", bare):
            return number
    return found


def _row_line(text: str, line: int, place: int) -> int:
    """Line of the ``place``-th (from 1) brace from ``line`` on; ``line`` if there is none."""
    left = place
    for number, here in enumerate(text.splitlines()[line - 1 :], start=line):
        left -= here.count("{")
        if left <= 0:
            return number
    return line


class Table:
    """One table of a profile; `finish` refuses the keys that nobody asked for."""

    def __init__(
        self, data: object, *, where: str, text: str = "", header: str = "", nth: int = 0
    ) -> None:
        self._where, self._text, self._header, self._nth = where, text, header, nth
        self._asked: set[str] = set()
        self._row = ("", 0)  # key and place (from 1) of a table listed under that key
        if not isinstance(data, dict):
            raise self.wrong("", "must be a table", "its keys stand below its name in brackets")
        self._data: dict[str, Any] = data

    def wrong(self, key: str, what: str, mend: str = "") -> CriteriaError:
        """Build the error for ``key``, with its line and table."""
        outer, place = self._row
        line = line_of(self._text, self._header, self._nth, outer or key)
        name = " ".join(part for part in (self._header, outer, key) if part)
        if outer:
            line = _row_line(self._text, line, place)
            name = f"{self._header} {outer}, row {place}, {key}".rstrip(", ")
        return CriteriaError(f"{name}: {what}", where=f"{self._where}, line {line}", mend=mend)

    def inner(self, data: object, key: str, nth: int) -> "Table":
        """The ``nth`` table (from 1) of those listed under ``key``; errors name both."""
        if not isinstance(data, dict):
            raise self.wrong(key, f'row {nth} must be a table such as {{ reject = "> 2 mm" }}')
        made = Table(
            data, where=self._where, text=self._text, header=self._header, nth=self._nth
        )
        made._row = (key, nth)
        return made

    def has(self, key: str) -> bool:
        return key in self._data

    def raw(self, key: str) -> Any:  # noqa: ANN401 - whatever TOML holds
        self._asked.add(key)
        if key not in self._data:
            raise self.wrong(key, "is missing", f"add {key} = …")
        return self._data[key]

    def text(self, key: str, default: str | None = None) -> str:
        if default is not None and key not in self._data:
            return default
        value = self.raw(key)
        if not isinstance(value, str) or not value.strip():
            raise self.wrong(key, f"must be text, got {value!r:.40}", "write text in quotes")
        if any(category(sign) == "Cc" for sign in value if sign not in "\n\t"):
            raise self.wrong(
                key, f"has a sign that cannot be shown, {value!r:.40}", "take it out"
            )
        return value.strip()

    def texts(self, key: str) -> tuple[str, ...]:
        if key not in self._data:
            return ()
        value = self.raw(key)
        if not isinstance(value, list) or not all(isinstance(v, str) and v for v in value):
            raise self.wrong(
                key, f"must be a list of texts, got {value!r:.40}", f'{key} = ["…", "…"]'
            )
        return tuple(value)

    def choice(self, key: str, options: tuple[str, ...], default: str | None = None) -> str:
        value = self.text(key, default)
        if value not in options:
            raise self.wrong(key, f"'{value}' is unknown", f"use one of: {', '.join(options)}")
        return value

    def amount(self, key: str, unit: str) -> float:
        example = f"5{'' if unit == '1' else f' {unit}'}"
        return self._in_unit(key, *self._parsed(key, parse_amount, example), unit)

    def amounts(self, key: str, unit: str, count: int) -> tuple[float, ...]:
        values = self.texts(key)
        if len(values) != count:
            example = f'{key} = ["148 {unit}", "105 {unit}"]'
            raise self.wrong(key, f"must hold {count} amounts, got {len(values)}", example)
        try:
            return tuple(self._in_unit(key, *parse_amount(value), unit) for value in values)
        except ValueError as error:
            raise self.wrong(key, str(error), f'write each as "5 {unit}"') from error

    def limit(self, key: str, unit: str, operators: tuple[str, ...] = (">", ">=")) -> Limit:
        example = f"{operators[0]} 5{'' if unit == '1' else f' {unit}'}"
        limit = self._parsed(key, parse_limit, example)
        if limit.operator not in operators:
            raise self.wrong(
                key,
                f"operator '{limit.operator}' makes no sense here",
                f"use one of: {', '.join(operators)}",
            )
        self._in_unit(key, limit.value, limit.unit, unit, least=0.0)
        if limit.operator == "<" and limit.value == 0:
            raise self.wrong(
                key, "nothing is less than 0, so it could never be hit", f'{key} = "{example}"'
            )
        return limit

    def number_limit(self, key: str) -> Limit:
        limit = self.limit(key, "1")
        if limit.value != int(limit.value) or limit.least_number < 1:
            raise self.wrong(
                key,
                f"must be a whole number of indications, got {limit.value:g}",
                f'{key} = ">= 4"',
            )
        return limit

    def finish(self) -> None:
        """Refuse the first key that no reader asked for."""
        for key in self._data:
            if key not in self._asked:
                raise self.wrong(
                    key,
                    "is unknown here",
                    "take it out; `ptmark criteria new` explains the keys",
                )

    def _parsed(self, key: str, parse: Callable[[str], _T], example: str) -> _T:
        value = self.raw(key)
        if not isinstance(value, str):
            raise self.wrong(
                key, f"must be text with its unit, got {value!r:.40}", f'{key} = "{example}"'
            )
        try:
            return parse(value)
        except ValueError as error:
            raise self.wrong(key, str(error), f'write it as in {key} = "{example}"') from error

    def _in_unit(
        self, key: str, value: float, got: str, unit: str, least: float | None = None
    ) -> float:
        if got != unit:
            wanted = "no unit" if unit == "1" else f"the profile's unit {unit}"
            mend = "leave the unit out" if unit == "1" else f"write it in {unit}"
            has = "has no unit" if got == "1" else f"has unit '{got}'"
            raise self.wrong(key, f"{has}, but needs {wanted}", mend)
        if value < 0 or (least is None and value == 0):
            raise self.wrong(key, f"must be above zero, got {value:g}", "no limit is negative")
        most = _MOST.get(unit, _MOST_OF_ALL)
        if value > most:
            raise self.wrong(key, f"{value:g} is beyond all measure", f"{most:g} is the most")
        return value
