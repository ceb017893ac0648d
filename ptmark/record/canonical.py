"""One spelling for each JSON value, so that equal content has equal bytes and one hash.

RFC 8785 (JSON Canonicalization Scheme): keys sorted by their UTF-16 code units, no white
space, shortest number spelling as ECMAScript writes it, only the escapes JSON must have.
"""

import hashlib
import json
import math
from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from decimal import Decimal
from functools import lru_cache
from json.encoder import encode_basestring as _text

from ptmark.errors import RecordError

__all__ = ["canonical_json", "digest", "joined", "list_text", "spelled_once"]

_SIMPLE = b"0123456789.,[]-"  # no exponents, no words
_FLAT = bytes.maketrans(b"123456789", b"000000000")
_LONG = b"0" * 16  # digits in a row: beyond exact doubles
# Made once: a record has hundreds of lists.
_close = json.JSONEncoder(separators=(",", ":")).encode
_wide = json.JSONEncoder(ensure_ascii=False, allow_nan=False).encode
_LISTS: ContextVar[dict[int, tuple[object, str]] | None] = ContextVar("lists", default=None)
_NESTED = (dict, list, tuple)
_LARGEST = 2**53 - 1  # whole numbers beyond have no exact double (RFC 8785, 3.2.2.3 and app. D)


def canonical_json(value: object) -> bytes:
    """The value in RFC 8785's form, UTF-8.

    Raises
    ------
    RecordError
        If it holds what JSON cannot: NaN, a lone surrogate, a whole number beyond 2**53 - 1,
        a key that is no text, another type.

    Examples
    --------
    >>> canonical_json({"b": 1.0, "a": [4.50, 1e-7, True, None, "€"]}).decode()
    '{"a":[4.5,1e-7,true,null,"€"],"b":1}'
    """
    try:
        if not isinstance(value, _NESTED):
            return _plain(value).encode("utf-8")
        pieces: list[str] = []
        _write(value, pieces)
        return "".join(pieces).encode("utf-8")
    except (ValueError, TypeError, RecursionError) as exc:
        raise _none(exc) from exc


def joined(members: dict[str, bytes]) -> bytes:
    """An object in RFC 8785's form from its members' values, each in that form already."""
    try:
        heads = _spelled(tuple(members))
        return b"{%s}" % b"".join(head.encode("utf-8") + members[name] for name, head in heads)
    except (ValueError, TypeError) as exc:
        raise _none(exc) from exc


@contextmanager
def spelled_once() -> Iterator[None]:
    """Within this nothing may change, as what `list_text` spelled is not spelled again."""
    before = _LISTS.set({})
    try:
        yield
    finally:
        _LISTS.reset(before)


def list_text(value: object) -> str:
    """A list as a record's file has it, with spaces; a seal takes it from here."""
    text = _wide(value)
    if (known := _LISTS.get()) is not None:
        known[id(value)] = (value, text)  # kept, so that nothing else gets its number
    return text


def _none(why: Exception) -> RecordError:
    return RecordError(f"has no canonical JSON: {why}", where="record")


def digest(value: object) -> str:
    """SHA-256 of the canonical JSON, 64 hexadecimal digits."""
    return hashlib.sha256(canonical_json(value)).hexdigest()


def _write(value: object, pieces: list[str]) -> None:
    if isinstance(value, dict):
        pieces.append("{")
        for name, spelled in _spelled(tuple(value)):
            pieces.append(spelled)
            _write(value[name], pieces)
        pieces.append("}")
    elif isinstance(value, list | tuple):
        if (text := _numbers(value)) is not None:
            pieces.append(text)
            return
        pieces.append("[")
        for number, one in enumerate(value):
            if number:
                pieces.append(",")
            _write(one, pieces)
        pieces.append("]")
    else:
        pieces.append(_plain(value))


def _numbers(value: "list[object] | tuple[object, ...]") -> str | None:
    """A list of points as a whole, for speed; None where a number in it is not that simple."""
    if not value or not isinstance(value[0], list | tuple | float | int):
        return None
    known = (_LISTS.get() or {}).get(id(value))
    text = _close(value) if known is None else known[1].replace(", ", ",")
    plain = text.encode()  # its own searches take a tenth of what expressions do
    if plain.translate(None, _SIMPLE) or _LONG in plain.translate(_FLAT):
        return None
    if "-0.0," in text or "-0.0]" in text:
        return None
    return text.replace(".0,", ",").replace(".0]", "]")


def _plain(value: object) -> str:
    if type(value) is str:
        return _text(value)
    if value is None:
        return "null"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, float):
        return _float(value)
    if isinstance(value, int):
        if abs(value) > _LARGEST:
            raise ValueError(f"{value} is too large a whole number")
        return str(value)
    if isinstance(value, str):
        return _text(value)
    raise TypeError(f"{type(value).__name__} is no JSON value")


@lru_cache(1024)
def _spelled(names: tuple[str, ...]) -> list[tuple[str, str]]:
    """Keys in their order, each as it is written; the same few sets come all the time."""
    ordered = sorted(names, key=_units)
    return [(one, ("," if n else "") + _text(one) + ":") for n, one in enumerate(ordered)]


def _units(name: object) -> bytes:
    if not isinstance(name, str):
        raise TypeError(f"{name!r} is no key")
    return name.encode("utf-16-be")


def _float(value: float) -> str:
    """Number::toString of ECMA-262: the shortest digits, exponents below -6 and from 21 on."""
    if not math.isfinite(value):
        raise ValueError(f"{value} is no number")
    said = repr(value + 0.0)
    if "e" not in said:
        short = said.removesuffix(".0")
        return "0" if short == "-0" else short
    sign, figures, exponent = Decimal(said).normalize().as_tuple()
    digits = "".join(map(str, figures))
    point = len(digits) + int(exponent)  # digits stand before the point
    if -6 < point <= 0:
        text = "0." + "0" * -point + digits
    elif 0 < point <= 21:
        text = digits + "0" * (point - len(digits))
    else:
        mantissa = digits[0] + (f".{digits[1:]}" if len(digits) > 1 else "")
        text = f"{mantissa}e{point - 1:+d}"
    return f"-{text}" if sign else text
