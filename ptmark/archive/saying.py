"""From a query to what its SQL is spelled by: which members ask, how, and with what values."""

import re
from dataclasses import fields
from operator import attrgetter
from typing import Any
from unicodedata import category

from sqlalchemy import Dialect

from ptmark.archive.derive import fold
from ptmark.archive.query import Query
from ptmark.archive.worded import span_of

__all__ = ["NUMBERED", "said", "said_range"]

NUMBERED = ("part", "serial")
_PATTERNS = frozenset({"part", "serial", "examiner", "procedure", "kind", "criteria"})
_NAMES = tuple(one.name for one in fields(Query))
_SAID = attrgetter(*_NAMES)


def said(dialect: Dialect, query: Query) -> tuple[dict[str, str], dict[str, Any]]:
    """What a query asks and with what values, before the archive is looked at."""
    shape: dict[str, str] = {}
    values: dict[str, Any] = {}
    for name, asks in zip(_NAMES, _SAID(query), strict=True):
        if asks is None or asks == "":
            continue
        if name in _PATTERNS:
            if pattern := asks.strip() if name == "criteria" else fold(asks):
                shape[name] = _pattern(name, pattern, values)
        else:
            shape[name], values[name] = "exact", asks
    if "photo" in shape:
        values["photo"] = query.photo.strip().lower()
    if "words" in shape:
        words = _tokens(dialect, query.words)
        if dialect.name == "sqlite":
            shape["words"], values["words"] = f"dated {len(words)}", " ".join(words)
            values |= {f"word_{n}": one for n, one in enumerate(words)} | span_of(values)
        else:
            values["words"] = " & ".join(words)
    return shape, values


def _pattern(name: str, asks: str, values: dict[str, Any]) -> str:
    """How a text with ``*`` and ``?`` is looked for: what stands before them is a range."""
    if "*" not in asks and "?" not in asks:
        values[name] = asks
        return "exact"
    start = min(asks.find(mark) for mark in "*?" if mark in asks)
    values |= said_range(name, asks[:start])
    if asks[start:] == "*":
        return "range"
    marks = {"*": "%", "?": "_"} | {c: f"\\{c}" for c in "%_\\"}
    values[f"{name}_like"] = "".join(marks.get(c, c) for c in asks)
    if name not in NUMBERED or not asks.strip("*?"):
        return "like"
    values[f"{name}_runs"] = [one for one in re.split(r"[*?]", asks) if one]
    return "within"


def said_range(name: str, start: str) -> dict[str, str]:
    """The values by which all that begin so are a range."""
    return {f"{name}_from": start, f"{name}_to": f"{start}\U0010ffff"}


def _is_indexed(word: str) -> bool:
    """Whether a letter or digit stands in it (SQLite's documentation of FTS5, 4.3.1)."""
    return any(category(one)[0] in "LN" or category(one) == "Co" for one in word)


def _tokens(dialect: Dialect, asks: str) -> list[str]:
    """Whole words, each as the index of words takes it."""
    asks = asks.replace("\0", " ")  # which would end the statement
    # A word of signs alone is in no index: asked for beside others it would leave nothing.
    words = [(one.rstrip("*"), one.endswith("*")) for one in asks.split() if _is_indexed(one)]
    if dialect.name == "sqlite":
        quoted = ['"' + one.replace('"', '""') + '"' + "*" * more for one, more in words]
        return quoted or ['""']
    plain = ((one.replace("\\", "").replace("'", "''"), more) for one, more in words)
    return [f"'{one}'" + ":*" * more for one, more in plain]
