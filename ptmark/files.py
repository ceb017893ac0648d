"""Writing that a kill at any moment cannot halve, or by one at a time; and CSV."""

import csv
import errno
import io
import os
import sys
import tempfile
from collections.abc import Iterable
from pathlib import Path
from typing import IO

from ptmark.errors import PtmarkError

__all__ = ["csv_text", "inert", "open_alone", "write_or_say", "write_whole"]


def open_alone(path: Path) -> IO[bytes]:
    """Open a file to read and write for one at a time; a killed process's lock goes with it.

    Parameters
    ----------
    path : Path
        Made empty if missing; whoever comes while it is open is refused.

    Raises
    ------
    BlockingIOError
        If another has it, or the file system gives no lock.
    OSError
        As the system gave it, where the file cannot be opened.
    """
    file = path.open("r+b" if path.exists() else "x+b")
    try:
        if sys.platform == "win32":
            import msvcrt

            msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)
        else:
            import fcntl

            fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError as exc:
        file.close()
        raise BlockingIOError(exc.errno, exc.strerror, str(path)) from exc
    return file


def write_whole(path: Path, data: bytes) -> None:
    """Write a file so that its name always holds either the old bytes or the new, whole.

    Parameters
    ----------
    path : Path
        Target; its folder is made if missing.
    data : bytes
        The whole content.

    Raises
    ------
    OSError
        As the system gave it (disk full, no permission); the old file stands untouched. Also
        where a folder or a device lies there, which a rename would take away.
    """
    path = path.absolute()
    if path.exists() and not path.is_file():
        raise OSError(errno.EINVAL, "no ordinary file lies there", str(path))
    path.parent.mkdir(parents=True, exist_ok=True)
    handle, beside = tempfile.mkstemp(prefix=".", suffix=".part", dir=path.parent)
    try:
        with os.fdopen(handle, "wb") as out:
            out.write(data)
            out.flush()
            os.fsync(out.fileno())
        umask = os.umask(0)
        os.umask(umask)
        Path(beside).chmod(0o666 & ~umask)
        Path(beside).replace(path)
    except BaseException:
        Path(beside).unlink(missing_ok=True)
        raise
    if os.name == "posix":  # make the rename itself durable
        folder = os.open(path.parent, os.O_RDONLY)
        try:
            os.fsync(folder)
        finally:
            os.close(folder)


def write_or_say(path: Path, data: bytes, error: type[PtmarkError]) -> None:
    """As `write_whole`; where the system refuses, it is said as an error of this kind."""
    try:
        write_whole(path, data)
    except OSError as exc:
        mend = "choose another folder, or make room"
        if os.path.lexists(path):  # answers, too, where the folder may not be read
            mend = "choose another folder, or make room; the old file stands untouched"
        what = f"cannot be written ({exc.strerror or exc})"
        raise error(what, where=str(path), mend=mend) from exc


def csv_text(rows: Iterable[Iterable[object]], *, end: str = "\r\n") -> str:
    """Rows as CSV (RFC 4180, but for another ``end`` of its lines); None is an empty cell.

    Text is `inert`.

    Examples
    --------
    >>> csv_text([["A", None, -1.5], ["=1+1", "", 2]]).split()
    ['A,,-1.5', "'=1+1,,2"]
    """
    out = io.StringIO(newline="")
    written = csv.writer(out, lineterminator=end)
    written.writerows([[inert(c) if isinstance(c, str) else c for c in row] for row in rows])
    return out.getvalue()


def inert(text: str) -> str:
    """The text, with an apostrophe before what a spreadsheet would run as a formula."""
    return f"'{text}" if text.startswith(("=", "+", "-", "@", "\t", "\r")) else text
