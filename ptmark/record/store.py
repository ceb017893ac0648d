"""Reading and writing a record's file: checked before it is written, never half-read."""

import errno
import json
import math
import re
from pathlib import Path
from typing import Any, NoReturn

from ptmark.errors import RecordError
from ptmark.files import write_or_say
from ptmark.record.canonical import list_text
from ptmark.record.check import check_document, record_schema
from ptmark.record.model import Record
from ptmark.record.revisions import follow, seal_of

__all__ = [
    "MAX_BYTES",
    "load_record",
    "parsed",
    "read_bytes",
    "record_schema",
    "record_text",
    "save_record",
    "set_out",
]

# 1000 indications of 1000 points each take about 40 MB; what is larger is no record of ours.
MAX_BYTES = 64 * 2**20
_dumps = json.JSONEncoder(ensure_ascii=False, allow_nan=False).encode
_FLAT = bytes.maketrans(b"123456789E", b"000000000e")
_LONG = 16  # members; a shorter list is sooner spelled twice
_LARGE = re.compile(rb"e\+?000+[\s,\]}]")
_SIGNED = b'"ptmark-signature/'  # stands in a file that holds any signature


def record_text(record: Record) -> str:
    """The record with its seal as JSON text: fixed key order, one member a line, LF at the end.

    Raises
    ------
    RecordError
        If the record does not fit its schema; nothing half-right leaves the house.
    """
    document = record.to_json()
    check_document(document, where="record")
    try:
        return set_out({**document, "seal": seal_of(document)})
    except (ValueError, TypeError) as exc:
        raise RecordError(f"cannot be written as JSON: {exc}", where="record") from exc


def save_record(path: Path, record: Record, *, by: str = "", why: str = "") -> Record:
    """Write a record so that its name always holds the old file or the new one, whole.

    Where the file already holds a signed record, this adds a revision to it: see `follow`.

    Parameters
    ----------
    path : Path
        Target; its folder is made if missing.
    record : Record
        Checked against the schema before the first byte is written.
    by, why : str
        Who changed a signed record, and for what reason.

    Returns
    -------
    Record
        As it was written.

    Raises
    ------
    RecordError
        If the record does not fit the schema, the file cannot be written, or it holds a
        signed record that is of another inspection or damaged.
    """
    if (before := _signed_before(path)) is not None:
        try:
            record = follow(before, record, by=by, why=why)
        except RecordError as exc:
            raise RecordError(exc.what, where=str(path), mend=exc.mend) from exc
    data = record_text(record).encode("utf-8")
    write_or_say(path, data, RecordError)
    return record


def _signed_before(path: Path) -> Record | None:
    """The record that lies there, where it or an earlier revision of it is signed."""
    if not path.is_file():
        return None
    data = read_bytes(path)
    if _SIGNED not in data:
        return None
    return Record.from_json(parsed(data, str(path)), where=str(path))


def load_record(path: Path) -> Record:
    """Read a record's file whole.

    Raises
    ------
    RecordError
        If the file cannot be read, is larger than `MAX_BYTES`, is not JSON (cut short,
        not UTF-8, a key twice, NaN), is of an unknown version, or does not fit the schema.
    """
    return Record.from_json(parsed(read_bytes(path), str(path)), where=str(path))


def read_bytes(path: Path) -> bytes:
    """The file's bytes; RecordError where it cannot be read or is too large."""
    try:
        with path.open("rb") as file:
            data = file.read(MAX_BYTES + 1)
    except OSError as exc:
        if exc.errno == errno.ELOOP:
            raise RecordError(
                "is a link that leads back to itself",
                where=str(path),
                mend="open the record that it should lead to",
            ) from exc
        raise RecordError(
            f"cannot be read ({exc.strerror or exc})",
            where=str(path),
            mend="check the name and that you may read it",
        ) from exc
    if len(data) > MAX_BYTES:
        raise RecordError(
            f"is larger than {MAX_BYTES // 2**20} MB, no record is",
            where=str(path),
            mend="choose a record's JSON file",
        )
    return data


def parsed(data: bytes, where: str) -> Any:  # noqa: ANN401 - whatever JSON holds
    """What the bytes say as strict JSON; RecordError where they are none."""
    mend = "the file is cut short or damaged: take an earlier copy of the record"
    try:
        return json.loads(
            data.decode("utf-8-sig"),
            parse_constant=_no_constant,
            parse_float=_finite if _may_be_too_large(data) else None,
            object_pairs_hook=_no_twin,
        )
    except UnicodeDecodeError as exc:
        raise RecordError(
            f"is not UTF-8 text (byte {exc.start})", where=where, mend=mend
        ) from exc
    except json.JSONDecodeError as exc:
        said = f"is not JSON: {exc.msg} (line {exc.lineno}, column {exc.colno})"
        raise RecordError(said, where=where, mend=mend) from exc
    except ValueError as exc:
        raise RecordError(f"is not strict JSON: {exc}", where=where, mend=mend) from exc
    except RecursionError as exc:
        raise RecordError("is nested too deeply", where=where, mend=mend) from exc


def _may_be_too_large(data: bytes) -> bool:
    """Whether a number may lie beyond a double: an exponent of three digits, or 300 digits."""
    flat = data.translate(_FLAT)
    return b"0" * 300 in flat or _LARGE.search(flat) is not None


def _no_constant(name: str) -> NoReturn:
    raise ValueError(f"{name} is no number")


def _finite(text: str) -> float:
    value = float(text)
    if not math.isfinite(value):
        raise ValueError(f"{text} is too large")
    return value


def _no_twin(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    made = dict(pairs)
    if len(made) != len(pairs):
        names = [name for name, _ in pairs]
        twin = next(name for name in names if names.count(name) > 1)
        raise ValueError(f"the key '{twin}' stands twice")
    return made


def _row(row: object) -> str:
    """A row as `_dumps` gives it, its long lists spelled apart, once for the seal too."""
    if not isinstance(row, dict) or not any(map(_is_long, row.values())):
        return _dumps(row)
    pieces, run = [], {}
    for name, value in row.items():
        if not _is_long(value):
            run[name] = value
            continue
        pieces += [_dumps(run)[1:-1]] if run else []
        pieces.append(f"{_dumps(name)}: {list_text(value)}")
        run = {}
    pieces += [_dumps(run)[1:-1]] if run else []
    return f"{{{', '.join(pieces)}}}"


def _is_long(value: object) -> bool:
    return isinstance(value, list) and len(value) > _LONG


def set_out(document: dict[str, Any]) -> str:
    """JSON text a person can skim and a version control can compare: one member a line."""
    lines = []
    for name, value in document.items():
        if isinstance(value, list) and value and isinstance(value[0], dict):
            rows = ",\n  ".join(_row(row) for row in value)
            text = f"[\n  {rows}\n ]"
        else:
            text = _dumps(value)
        lines.append(f" {_dumps(name)}: {text}")
    return "{\n" + ",\n".join(lines) + "\n}\n"
