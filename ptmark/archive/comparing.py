"""A record's rows in the database against those that its file gives."""

import sqlite3
from contextlib import closing
from typing import Any

from sqlalchemy import Engine, exc, text

from ptmark.archive.derive import Derived, fold

__all__ = ["check_words", "differing"]

_CHECK = "INSERT INTO words(words, rank) VALUES ('integrity-check', 1)"


def check_words(engine: Engine) -> None:
    """The index of words against its texts; it raises where they differ, and writes nothing.

    The check has the form of a write, so it waits for its turn: a reader that turned writer
    would be told that the database is locked as soon as another wrote meanwhile.
    """
    try:
        if "mode" not in engine.url.query:
            with engine.connect() as plain:
                conn = plain.execution_options(write=True)
                with conn.begin() as held:
                    conn.execute(text(_CHECK))
                    held.rollback()
            return
    except exc.OperationalError as found:
        if getattr(found.orig, "sqlite_errorcode", None) != sqlite3.SQLITE_READONLY:
            raise
    with engine.connect() as conn, closing(sqlite3.connect("")) as copy:
        conn.connection.driver_connection.backup(copy)  # type: ignore[union-attr]
        copy.execute(_CHECK)


def differing(should: Derived, rows: dict[str, Any]) -> list[str]:
    """Names of what stands otherwise in the database."""
    pairs: dict[str, tuple[object, object]] = {
        "part number": ([should.part, fold(should.part)], [rows["part"], rows["part_key"]]),
        "serial number": (
            [should.serial, fold(should.serial)],
            [rows["serial"], rows["serial_key"]],
        ),
        "inspection": (should.inspection, rows["inspection"]),
        "revisions": (should.revisions, rows["revision"]),
        "photos": (should.photos, rows["inspection_photo"]),
        "indications": (
            sorted(should.indications, key=lambda one: str(one["letter"])),
            sorted(rows["indication"], key=lambda one: str(one["letter"])),
        ),
        "text": (should.text, rows["text"]),
    }
    return [name for name, (one, other) in pairs.items() if one != other]
