"""Reading one TOML table strictly: every key typed, none unknown, errors with line and key."""

from collections.abc import Callable
from typing import Any, TypeVar
from unicodedata import category

from ptmark.criteria.limits import Limit, parse_amount, parse_limit
from ptmark.criteria.toml_text import line_of, row_line
from ptmark.errors import CriteriaError

__all__ = ["Table"]

_T = TypeVar("_T")

_MOST = {"%": 100.0}
_MOST_OF_ALL = 1e6  # of any other unit: what is larger judges nothing


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
            line = row_line(self._text, line, place)
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
                key,
                f"must be a list of texts, got {value!r:.40}",
                f'write it as in {key} = ["…", "…"]',
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
            mend = f'write it as in {key} = ["148 {unit}", "105 {unit}"]'
            raise self.wrong(key, f"must hold {count} amounts, got {len(values)}", mend)
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
                key,
                "nothing is less than 0, so it could never be hit",
                f'write it as in {key} = "{example}"',
            )
        return limit

    def number_limit(self, key: str) -> Limit:
        limit = self.limit(key, "1")
        if limit.value != int(limit.value) or limit.least_number < 1:
            raise self.wrong(
                key,
                f"must be a whole number of indications, got {limit.value:g}",
                f'write it as in {key} = ">= 4"',
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
                key,
                f"must be text with its unit, got {value!r:.40}",
                f'write it as in {key} = "{example}"',
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
