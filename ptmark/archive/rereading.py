"""Files of the store read again: is each what it should be, and what does nothing tell of."""

import hashlib
from collections.abc import Iterator
from pathlib import Path

from sqlalchemy import select

from ptmark.archive import chain
from ptmark.archive.beside import file_key, key_of_line, line_bytes, line_key, seq_of
from ptmark.archive.findings import Problem
from ptmark.archive.opening import Archive
from ptmark.archive.rows import table
from ptmark.archive.store import Store, is_content, is_line, key_for

__all__ = ["content_says", "leftovers", "line_says", "sha256_of"]


def sha256_of(data: bytes) -> str:
    """Hexadecimal digits."""
    return hashlib.sha256(data).hexdigest()


def content_says(store: Store, key: str, sha256: str) -> tuple[str, str, int]:
    """Kind of a problem and what it says ("" for none), and how many bytes were read."""
    try:
        there, size = store.digest(key)
    except FileNotFoundError:
        return "missing", "is not in the store", 0
    except OSError as exc:
        return "damaged", f"cannot be read ({exc.strerror or exc})", 0
    if there != sha256:
        return "changed", "is not what was taken in", size
    return "", "", size


def line_says(store: Store, line: chain.Line) -> str:
    """What kind of problem a line of the log has beside the photos; "" for none."""
    try:
        there = store.read(line_key(line))
    except FileNotFoundError:
        return "missing"
    except OSError:
        return "damaged"
    return "" if there == line_bytes(line) else "changed"


def leftovers(archive: Archive, known: dict[str, list[str]]) -> Iterator[Problem]:
    """What lies in the store and nothing tells of, such as an addition that was cut off.

    Parameters
    ----------
    archive : Archive
    known : dict of str to list of str
        SHA-256 of the files of each record, by the log.
    """
    names = list(archive.store.names())  # before the log's end: others may go on writing
    audit, photo = table("audit"), table("photo")
    with archive.reading() as conn:
        keys = {key_of_line(*row) for row in conn.execute(select(audit.c.seq, audit.c.sha256))}
        end = len(keys)
        keys |= {key_for(*row) for row in conn.execute(select(photo.c.sha256, photo.c.suffix))}
    keys |= {file_key(one) for own in known.values() for one in own}
    further = 0
    for name in names:
        if name in keys:
            continue
        if is_line(name):
            further += seq_of(name) > end + 1
            if seq_of(name) <= end + 1:  # its writer was cut off
                yield Problem("orphaned", "log", f"{name} is not in the database")
        elif is_content(name):
            yield Problem("orphaned", Path(name).stem, "no record needs it")
        else:
            yield Problem("orphaned", "store", f"{name} is nothing of the archive's")
    if further:
        says = f"it goes on in {further + 1} lines beside the photos: rebuild the database"
        yield Problem("missing", "log", says)
