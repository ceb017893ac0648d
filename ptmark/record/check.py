"""A document against the published schema, with one clear error that names the field."""

import json
from collections.abc import Callable, Iterator
from functools import cache
from typing import TYPE_CHECKING, Any

import numpy as np

from ptmark.errors import RecordError
from ptmark.places import resource

if TYPE_CHECKING:
    from jsonschema import Draft202012Validator
    from jsonschema.exceptions import ValidationError
    from jsonschema_rs import Draft202012Validator as QuickValidator

__all__ = ["SCHEMA_NAME", "check_document", "record_schema"]

SCHEMA_NAME = "ptmark-record/3"
# Every version that was ever written opens; its schema stays as it was published.
_VERSIONS = {"ptmark-record/1": 1, "ptmark-record/2": 2, SCHEMA_NAME: 3}
_OUTLINES = ("outline_px", "outline_mm")
MAX_POINTS = 200_000  # as the schema has it


def record_schema(version: int = 3) -> dict[str, Any]:
    """The published JSON Schema (draft 2020-12) of a record's version, as a new dict."""
    text = resource("schema", f"record-{version}.schema.json").read_text(encoding="utf-8")
    schema: dict[str, Any] = json.loads(text)
    return schema


def check_document(document: object, *, where: str) -> None:
    """Check a record's JSON document against the published schema.

    Parameters
    ----------
    document : object
        As `json.loads` gave it.
    where : str
        The file, for the error.

    Raises
    ------
    RecordError
        If it is no record, of an unknown version, or a field does not fit; ``where`` names
        the file and the field.
    """
    if not isinstance(document, dict) or "schema" not in document:
        raise RecordError(
            "this is not an inspection record", where=where, mend="choose a record's JSON file"
        )
    if document["schema"] not in list(_VERSIONS):
        raise RecordError(
            f"unknown version {document['schema']!r}",
            where=f"{where}, schema",
            mend=f"this version reads {', '.join(_VERSIONS)}; a newer one may read this file",
        )
    if _accepted(document):
        return
    error = next(_errors(document), None)
    if error is not None:
        raise RecordError(
            _says(error),
            where=f"{where}, {_path(error)}",
            mend="correct that field, or take an earlier copy of the record",
        )


@cache
def _quick(version: int) -> "QuickValidator":
    from jsonschema_rs import Draft202012Validator

    return Draft202012Validator(record_schema(version))


def _accepted(document: dict[str, Any]) -> bool:
    """Whether it fits, in a hundredth of the time; where not, `_errors` has the last word."""
    try:
        return _quick(_VERSIONS[document["schema"]]).is_valid(document)
    except ValueError:  # a value that JSON has not, such as NaN
        return False


@cache
def _validator(version: int) -> "Draft202012Validator":
    from jsonschema import Draft202012Validator

    return Draft202012Validator(record_schema(version))


def _errors(document: dict[str, Any]) -> "Iterator[ValidationError]":
    """Errors, the one that stands deepest in the document first."""
    from jsonschema.exceptions import best_match

    validator = _validator(_VERSIONS[document["schema"]])
    found = best_match(validator.iter_errors(_shortened(document)))
    if found is not None:
        yield found


def _shortened(document: dict[str, Any]) -> dict[str, Any]:
    """The document with each long outline that is sound cut to its first points.

    Only for speed: a record holds 10⁵ coordinates, and the validator takes microseconds for
    each. An outline is cut only where numpy has checked all that the schema asks of it.
    """
    short = dict(document)
    for name in ("indications", "left_out"):
        short |= _each(document, name, _cut)
    return short | _each(document, "more_photos", _shortened)


def _each(
    document: dict[str, Any], name: str, to_do: Callable[[dict[str, Any]], dict[str, Any]]
) -> dict[str, Any]:
    rows = document.get(name)
    if not isinstance(rows, list):
        return {}
    return {name: [to_do(row) if isinstance(row, dict) else row for row in rows]}


def _cut(row: dict[str, Any]) -> dict[str, Any]:
    cut = dict(row)
    for name in _OUTLINES:
        if _is_outline(row.get(name)):
            cut[name] = row[name][:3]
    return cut


def _is_outline(points: object) -> bool:
    """Whether this is a list of pairs of plain numbers within the schema's range."""
    if not isinstance(points, list) or not all(isinstance(p, list) for p in points):
        return False
    if len(points) > MAX_POINTS or {len(p) for p in points} != {2}:
        return False
    flat = [v for p in points for v in p]
    if not {type(v) for v in flat} <= {int, float}:
        return False
    return bool((np.abs(np.array(flat, dtype=float)) <= 1e6).all())


def _path(error: "ValidationError") -> str:
    text = ""
    for part in error.absolute_path:
        text += f"[{part}]" if isinstance(part, int) else f".{part}" if text else str(part)
    return text or "top level"


def _says(error: "ValidationError") -> str:
    said = str(error.message)
    return said if len(said) <= 200 else f"{said[:120]} … {said[-60:]}"
