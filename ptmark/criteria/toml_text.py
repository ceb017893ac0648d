"""A profile's text: read strictly as TOML, and where in it a key stands."""

import re
import tomllib
from itertools import islice
from pathlib import Path
from typing import Any

from ptmark.errors import CriteriaError

__all__ = ["line_of", "read_toml", "row_line"]

_TOO_DEEP = re.compile(
    r"""(?<![\w"'-])(?:[\w"'-]++[ \t]*+\.[ \t]*+){30}"""
)  # each dot nests a table deeper
_TOO_MANY = "brackets too deep"
_LARGEST_FILE = 262_144  # bytes; the largest shipped profile has about 4,000


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
        raise _no_toml(where, text, _TOO_MANY, _deepest_line(text)) from error
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
            data = file.read(_LARGEST_FILE + 1)
    except OSError as error:
        raise CriteriaError(
            f"cannot be read: {error.strerror}", where=where, mend="check the file's rights"
        ) from error
    if len(data) > _LARGEST_FILE:
        raise _too_large(where, data)
    return data


def _too_large(where: str, data: bytes) -> CriteriaError:
    """Name the line in which the size passes what any profile needs, and its key."""
    lines = data.decode("utf-8", errors="replace").splitlines()
    keys = (re.match(r"\s*([\w-]+)\s*=", line) for line in reversed(lines))
    key = next((found[1] for found in keys if found), "")
    return CriteriaError(
        f"{f'{key}: ' if key else ''}from here on the file is larger than "
        f"{_LARGEST_FILE // 1024} kB, so it is no profile",
        where=f"{where}, line {max(len(lines), 1)}",
        mend="take out what does not belong there, or start with `ptmark criteria new`",
    )


def _no_toml(where: str, text: str, said: str, number: int = 0) -> CriteriaError:
    """Name the line, and the key that stands in it where one does."""
    found = re.search(r" \(at line (\d+), column \d+\)", said)
    lines = text.splitlines()
    number = int(found[1]) if found else number or max(len(lines), 1)
    told = said[: found.start()] if found else said.replace(" (at end of document)", "")
    mend = 'write one key a line, its value in quotes: reject = "> 5 mm"'
    if "digits" in told:
        long = re.search(r"\d{4000}", text)
        number = text.count("\n", 0, long.start()) + 1 if long else number
        told = "a number of too many digits"
    if told == _TOO_MANY:
        mend = "take brackets out"
    if told == "Cannot overwrite a value":
        told, mend = "the key is there twice", "leave one of the two"
    key = _key_in(text, number)
    return CriteriaError(
        f"{f'{key}: ' if key else ''}is not valid TOML: {told}",
        where=f"{where}, line {number}",
        mend=mend,
    )


def _key_in(text: str, number: int) -> str:
    """The key that stands in a line (from 1); "" where there is none."""
    line = next(islice(text.splitlines(), number - 1, None), "")
    key = re.match(r"\s*([\w-]+)\s*=", line)
    return key[1] if key else ""


def _deepest_line(text: str) -> int:
    """The line (from 1) in which the most brackets are open; quotes are not looked at."""
    depth, most, found = 0, 0, 1
    for number, line in enumerate(text.splitlines(), start=1):
        for sign in line:
            depth += (sign in "[{") - (sign in "]}")
            if depth > most:
                most, found = depth, number
    return found


def line_of(text: str, header: str, nth: int, key: str) -> int:
    """Line (from 1) of ``key`` under the ``nth`` (from 0) ``header``, or of the header.

    ``header`` is "" for the top, else such as ``[shape]`` or ``[[rule]]``. Where it is not
    there, the table of that name in other brackets, else line 1.
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
    name = header.strip("[]") or key
    return found if found > 1 else _table_line(text, name)


def _table_line(text: str, name: str) -> int:
    """Line (from 1) of the first table of a name, in one or two brackets; 1 if none."""
    for number, line in enumerate(text.splitlines(), start=1):
        if re.sub(r"\s|#.*", "", line) in {f"[{name}]", f"[[{name}]]"}:
            return number
    return 1


def row_line(text: str, line: int, place: int) -> int:
    """Line of the ``place``-th (from 1) brace from ``line`` on; ``line`` if there is none."""
    left = place
    for number, here in enumerate(text.splitlines()[line - 1 :], start=line):
        left -= here.count("{")
        if left <= 0:
            return number
    return line
