"""A record's rows in the database: written, read back and taken away."""

import importlib
import zlib
from functools import lru_cache
from typing import Any

from sqlalchemy import (
    Connection,
    Dialect,
    Table,
    bindparam,
    delete,
    insert,
    select,
    text,
    update,
)

from ptmark.archive import models
from ptmark.archive.derive import Derived, fold
from ptmark.archive.spelled import Spelled, answer, put, spelled
from ptmark.archive.tails import keep_tails
from ptmark.errors import ArchiveError

__all__ = [
    "clear_rows",
    "document_of",
    "note_photos",
    "photo_rows",
    "stored",
    "table",
    "write_rows",
]

_WORDS = Spelled(
    "INSERT INTO words(rowid, text) SELECT place, text FROM places WHERE inspection_id = ?",
    ("id",),
    {},
)
_LEVEL = 4  # 6 takes 7 % less room and two and a half times as long
_CHILDREN = ("indication", "inspection_photo", "revision", "document", "wording")


def table(name: str) -> Table:
    """A table by its name."""
    return models.Base.metadata.tables[name]


def document_of(conn: Connection, record_id: str) -> bytes:
    """A record's file as it was given; ArchiveError where the archive has none."""
    inspection, document = table("inspection"), table("document")
    chosen = select(document.c.data).join(
        inspection, inspection.c.id == document.c.inspection_id
    )
    data = conn.execute(chosen.where(inspection.c.record_id == record_id)).scalar()
    if data is None:
        raise ArchiveError("is not in the archive", where=record_id, mend="see archive find")
    return inflated(data, record_id)


def inflated(data: bytes, where: str) -> bytes:
    """A document's bytes; ArchiveError where a changed bit keeps them from being read."""
    try:
        return zlib.decompress(data)
    except zlib.error as exc:
        raise ArchiveError(
            f"its bytes are damaged ({exc})", where=where, mend="repair it"
        ) from exc


def note_photos(conn: Connection, kept: list[dict[str, Any]]) -> None:
    """Rows of photos that are in the store; those that stand there already are left."""
    for one in sorted(kept, key=lambda one: str(one["sha256"])):  # one order: no deadlock
        answer(conn, _noting(conn.dialect), one)


@lru_cache(8)
def _noting(dialect: Dialect) -> Spelled:
    """A photo's row where there is none yet: two writers may meet the same new photo."""
    return spelled(_own_insert(dialect)(table("photo")).on_conflict_do_nothing(), dialect)


def _own_insert(dialect: Dialect) -> Any:  # noqa: ANN401 - each dialect's own type
    """A dialect's `insert`: only it can leave alone what is there."""
    return importlib.import_module(f"sqlalchemy.dialects.{dialect.name}").insert


def photo_rows(conn: Connection, photos: list[dict[str, Any]]) -> list[Any]:
    """The rows of those photos that the database knows."""
    known = _one(conn.dialect, "photo", ("sha256",))
    found = (answer(conn, known, {"sha256": one["sha256"]}).first() for one in photos)
    return [row for row in found if row is not None]


@lru_cache(8)
def _one(dialect: Dialect, name: str, by: tuple[str, ...]) -> Spelled:
    """A row by columns that are unique together."""
    one = table(name)
    return spelled(select(one).where(*(one.c[key] == bindparam(key) for key in by)), dialect)


def write_rows(conn: Connection, rows: Derived, data: bytes, number: int | None = None) -> int:
    """Write all rows of a record, in place of those of ``number`` where given."""
    part = _named(conn, "part", {"number": rows.part})
    serial = _named(conn, "serial", {"part_id": part, "number": rows.serial})
    inspection = table("inspection")
    own = rows.inspection | {"part_id": part, "serial_id": serial}
    if number is None:
        made = conn.execute(insert(inspection), own)
        number = int(made.inserted_primary_key[0])  # type: ignore[index]
    else:
        clear_rows(conn, number)
        conn.execute(update(inspection).where(inspection.c.id == number).values(own))
    key = {"inspection_id": number}
    for name, many in (
        ("document", [{"data": zlib.compress(data, _LEVEL)}]),
        ("wording", [{"text": rows.text}]),
        ("revision", rows.revisions),
        ("inspection_photo", rows.photos),
        ("indication", rows.indications),
    ):
        if many:
            put(conn, _adding(conn.dialect, name), [key | one for one in many])
    if conn.dialect.name == "sqlite":
        put(conn, _WORDS, [{"id": number}])
    return number


@lru_cache(32)
def _adding(dialect: Dialect, name: str) -> Spelled:
    return spelled(insert(table(name)), dialect)


def clear_rows(conn: Connection, number: int) -> None:
    """Take away all rows of an inspection but its own."""
    if conn.dialect.name == "sqlite":
        conn.execute(
            text(
                "INSERT INTO words(words, rowid, text) "
                "SELECT 'delete', place, text FROM places WHERE inspection_id = :id"
            ),
            {"id": number},
        )
    for name in _CHILDREN:
        one = table(name)
        conn.execute(delete(one).where(one.c.inspection_id == number))


def _named(conn: Connection, name: str, own: dict[str, Any]) -> int:
    """The number of a part or serial, made where there is none yet."""
    known = _one(conn.dialect, name, tuple(own))
    found = answer(conn, known, own).first()
    if found is not None:
        return int(found.id)
    key = fold(own["number"])
    made = answer(conn, _making(conn.dialect, name), own | {"key": key}).scalar()
    if made is None:  # on a server another writer met the same new one
        return int(answer(conn, known, own).one().id)
    keep_tails(conn, name, int(made), key)
    return int(made)


@lru_cache(8)
def _making(dialect: Dialect, name: str) -> Spelled:
    """A new part or serial, and the number it was given; none where it is there."""
    one = table(name)
    own = {"number", "key"} if name == "part" else {"part_id", "number", "key"}
    values = {key: bindparam(key, type_=one.c[key].type) for key in own}
    made = _own_insert(dialect)(one).values(values).on_conflict_do_nothing()
    return spelled(made.returning(one.c.id), dialect)


def stored(conn: Connection, numbers: list[int]) -> dict[int, dict[str, Any]]:
    """The rows of some inspections as `derive.derived` would make them, by their numbers."""
    inspection, part, serial = table("inspection"), table("part"), table("serial")
    chosen = (
        select(inspection, part.c.number.label("part"), serial.c.number.label("serial"))
        .add_columns(part.c.key.label("part_key"), serial.c.key.label("serial_key"))
        .join(part, part.c.id == inspection.c.part_id)
        .join(serial, serial.c.id == inspection.c.serial_id)
        .where(inspection.c.id.in_(numbers))
    )
    found: dict[int, dict[str, Any]] = {}
    for row in conn.execute(chosen).mappings():
        own = dict(row)
        heads = {name: own.pop(name) for name in ("part", "serial", "part_key", "serial_key")}
        for name in ("part_id", "serial_id"):
            own.pop(name)
        found[own.pop("id")] = {**heads, "inspection": own, "text": ""}
    for name, order in (("revision", "number"), ("inspection_photo", "place")):
        _add(conn, found, numbers, name, order)
    _add(conn, found, numbers, "indication", "letter")
    wording = table("wording")
    for number, said in conn.execute(
        select(wording).where(wording.c.inspection_id.in_(numbers))
    ):
        found[number]["text"] = said
    return found


def _add(
    conn: Connection,
    found: dict[int, dict[str, Any]],
    numbers: list[int],
    name: str,
    order: str,
) -> None:
    one = table(name)
    for number in numbers:
        if number in found:
            found[number][name] = []
    names = [column.name for column in one.c if column.name != "inspection_id"]
    chosen = select(one.c.inspection_id, *(one.c[each] for each in names))
    chosen = chosen.where(one.c.inspection_id.in_(numbers))
    for number, *own in conn.execute(chosen.order_by(one.c.inspection_id, one.c[order])):
        found[number][name].append(dict(zip(names, own, strict=True)))
