"""A record's rows in the database against those that its file gives."""

import sqlite3
from contextlib import closing
from typing import Any

from sqlalchemy import Connection, Engine, exc, text

from ptmark.archive.derive import Derived, fold

__all__ = ["check_words", "differing", "unseen_words"]

_CHECK = "INSERT INTO words(words, rank) VALUES ('integrity-check', 1)"

_PAGES = (
    "SELECT id >> 37, id & 2147483647, substr(block, 3, 2), length(block) FROM words_data "
    "WHERE id >= 137438953472 AND (id >> 31) & 63 = 0 ORDER BY id"
)


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


def unseen_words(conn: Connection) -> int:
    """Pages of the index of words that no search steps to, which its own check lets pass.

    By FTS5's layout (comments at the head of ``fts5_index.c``): a page's number holds its
    segment's above bit 37, bit 31 and up tell a list of documents; bytes 2 and 3 tell where the
    list of words begins that start on it. ``words_idx`` names each such page but the first of
    a segment, where a search starts unasked.
    """
    seen = {tuple(row) for row in conn.execute(text("SELECT segid, pgno >> 1 FROM words_idx"))}
    pages = conn.execute(text(_PAGES)).all()
    found, before = 0, None
    for segment, page, begins, size in pages:
        if segment == before and int.from_bytes(begins, "big") < size:
            found += (segment, page) not in seen
        before = segment
    return found


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
