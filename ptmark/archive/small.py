"""The user's cache of small pictures: can be thrown away, and outlives no deletion by rule."""

import re
from contextlib import suppress
from pathlib import Path

from sqlalchemy import select

from ptmark.archive.opening import Archive
from ptmark.archive.rows import table
from ptmark.places import user_folder

__all__ = ["forget_deleted", "small_picture"]

_CHUNK = 500  # as many values as any database takes in one statement
_FILE = re.compile(r"\b([0-9a-f]{64})\.")


def small_picture(sha256: str) -> Path:
    """Where the small picture of a photo lies in the user's folder, once it was looked at."""
    return _folder() / f"{sha256}.jpg"


def _folder() -> Path:
    return user_folder() / "thumbnails"


def forget_deleted(archive: Archive) -> int:
    """Take small pictures of photos that this archive deleted out of this user's cache.

    Another user may have deleted them, or another machine. Other archives' pictures lie in
    the same cache: what this one never had is left alone.

    Returns
    -------
    int
        How many went. One that cannot be removed is tried again the next time.
    """
    names = sorted(one.stem for one in _folder().glob("*.jpg"))
    photo, audit = table("photo"), table("audit")
    strange = set(names)
    with archive.reading() as conn:
        for first in range(0, len(names), _CHUNK):
            chunk = names[first : first + _CHUNK]
            known = select(photo.c.sha256).where(photo.c.sha256.in_(chunk))
            strange -= set(conn.execute(known).scalars())
        if not strange:
            return 0  # as nearly always: the log is long
        told = conn.execute(select(audit.c.detail).where(audit.c.action == "deleted")).scalars()
        gone = strange & {sha256 for detail in told for sha256 in _FILE.findall(detail)}
    for sha256 in gone:
        with suppress(OSError):
            small_picture(sha256).unlink(missing_ok=True)
    return len(gone)
