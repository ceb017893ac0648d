"""Reading and writing a record's file: checked before it is written, never half-read."""

import json
import math
from pathlib import Path
from typing import Any, NoReturn

from ptmark.errors import RecordError
from ptmark.files import write_whole
from ptmark.record.check import check_document, record_schema
from ptmark.record.model import Record

__all__ = ["MAX_BYTES", "load_record", "record_schema", "record_text", "save_record"]

# 1000 indications of 1000 points each take about 40 MB; what is larger is no record of ours.
MAX_BYTES = 64 * 2**20


def record_text(record: Record) -> str:
    """The record as JSON text: fixed key order, one member a line, ends with a line feed.

    Raises
    ------
    RecordError
        If the record does not fit its schema; nothing half-right leaves the house.
    """
    document = record.to_json()
    check_document(document, where="record")
    try:
        return _laid_out(document)
    except (ValueError, TypeError) as exc:
        raise RecordError(f"cannot be written as JSON: {exc}", where="record") from exc


def save_record(path: Path, record: Record) -> None:
    """Write a record so that its name always holds the old file or the new one, whole.

    Parameters
    ----------
    path : Path
        Target; its folder is made if missing.
    record : Record
        Checked against the schema before the first byte is written.

    Raises
    ------
    RecordError
        If the record does not fit the schema, or the file cannot be written.
    """
    data = record_text(record).encode("utf-8")
    try:
        write_whole(path, data)
    except OSError as exc:
        raise RecordError(
            f"cannot be written ({exc.strerror or exc})",
            where=str(path),
            mend="choose another folder, or make room; the old file stands untouched",
        ) from exc


def load_record(path: Path) -> Record:
    """Read a record's file whole.

    Raises
    ------
    RecordError
        If the file cannot be read, is larger than `MAX_BYTES`, is not JSON (cut short,
        not UTF-8, a key twice, NaN), is of an unknown version, or does not fit the schema.
    """
    return Record.from_json(_parse(_read(path), str(path)), where=str(path))


def _read(path: Path) -> bytes:
    try:
        with path.open("rb") as file:
            data = file.read(MAX_BYTES + 1)
    except OSError as exc:
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


def _parse(data: bytes, where: str) -> Any:  # noqa: ANN401 - whatever JSON holds
    mend = "the file is cut short or damaged: take an earlier copy of the record"
    try:
        return json.loads(
            data.decode("utf-8-sig"),
            parse_constant=_no_constant,
            parse_float=_finite,
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


def _laid_out(document: dict[str, Any]) -> str:
    """JSON text a person can skim and a version control can compare: one member a line."""
    lines = []
    for name, value in document.items():
        if isinstance(value, list) and value and isinstance(value[0], dict):
            rows = ",\n  ".join(_dumps(row) for row in value)
            text = f"[\n  {rows}\n ]"
        else:
            text = _dumps(value)
        lines.append(f" {_dumps(name)}: {text}")
    return "{\n" + ",\n".join(lines) + "\n}\n"


def _dumps(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, allow_nan=False)
