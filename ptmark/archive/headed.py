"""Beside the database: which line the log ends with, and whether the file is still the same."""

import os
from pathlib import Path

__all__ = ["file_number", "note_head", "noted_head"]


def file_number(file: Path) -> tuple[int, int] | None:
    """Device and number, which stay with a file wherever it goes; None where there is none."""
    try:
        found = file.stat()
    except OSError:
        return None
    return found.st_dev, found.st_ino


def note_head(file: Path, seq: int, sha256: str) -> None:
    """Note the end of the log beside the database.

    A database that lost its newest lines, or was swapped for an older one, is found out by
    it. Not flushed: after a loss of power it may lag behind, never run ahead.
    """
    try:
        handle = os.open(file.with_suffix(".head"), os.O_WRONLY | os.O_CREAT, 0o666)
    except OSError:
        return  # the database took the line, so this is only one check less
    try:
        os.write(handle, f"{seq:020d} {sha256}\n".encode())
    finally:
        os.close(handle)


def noted_head(file: Path) -> tuple[int, str] | None:
    """The end of the log as it was noted; None where that cannot be read."""
    try:
        seq, sha256 = file.with_suffix(".head").read_text("ascii").split()
        return int(seq), sha256
    except (OSError, ValueError):
        return None
