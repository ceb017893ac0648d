"""What the database holds, kept once more as plain files beside the photos.

Every state of a record that was ever taken in lies there as the file it was, and every line of
the audit log as JSON, both before the database commits: a database that is lost or broken can
be made again from them, and an older one that was put in its place is found out.
"""

import json
from collections.abc import Callable, Iterable, Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from itertools import chain
from typing import TypeVar

from sqlalchemy import Connection

from ptmark.archive.chain import Line, head
from ptmark.archive.store import Store, is_line, key_for
from ptmark.errors import ArchiveError

__all__ = [
    "file_key",
    "follow",
    "hands",
    "keep_line",
    "key_of_line",
    "line_bytes",
    "line_key",
    "line_of",
    "look_ahead",
    "seq_of",
    "states",
]


_told = json.JSONEncoder(separators=(",\n ", ": ")).encode  # a fifth of `indent`'s cost
_RUN = 8  # files one thread reads in turn
_T = TypeVar("_T")
_U = TypeVar("_U")


def file_key(sha256: str) -> str:
    """Where a record's file lies in the store."""
    return key_for(sha256, "json")


def line_key(line: Line) -> str:
    """Where a line of the log lies in the store, about a hundred in a folder.

    Its hash is part of the name: a writer that was cut off, and knows it not yet, may still be
    writing line 7 while the next one's line 7 is taken by the database. Which of them counts,
    the chain tells.
    """
    return key_of_line(line.seq, line.sha256)


def key_of_line(seq: int, sha256: str) -> str:
    """Where the line of this number and hash lies."""
    return f"{_folder(seq)}/{seq:012d}-{sha256[:16]}.json"


def _folder(seq: int) -> str:
    return f"log/{seq // 10**4:08d}/{seq // 100 % 100:02d}"


def seq_of(key: str) -> int:
    """The number of the line that lies there."""
    return int(key.rpartition("/")[2].partition("-")[0])


def line_bytes(line: Line) -> bytes:
    """A line as its file."""
    told = _told(line.to_row())
    return f"{{\n {told[1:-1]}\n}}".encode()


def line_of(data: bytes, where: str) -> Line:
    """The line in a file; ArchiveError where it holds none."""
    try:
        told = json.loads(data)
        line = Line(**{name: told[name] for name in Line.__slots__})
        whole = line_key(line) == where and isinstance(json.loads(line.detail), dict)
    except (ValueError, KeyError, TypeError) as found:
        raise ArchiveError(f"is no line of the log ({found!r})", where=where) from found
    if not whole:
        raise ArchiveError("is another line of the log, or tells nothing", where=where)
    return line


def look_ahead(store: Store, conn: Connection) -> tuple[str, list[str]]:
    """Lines that lie where the next ones will, looked for before the writer's turn.

    A store far away answers late, and all other writers wait in that turn. What comes there
    meanwhile, others wrote in their turns.
    """
    return _lines_in(store, _folder(head(conn)[0] + 2))


def _lines_in(store: Store, folder: str) -> tuple[str, list[str]]:
    return folder, list(filter(is_line, store.names(folder)))


def keep_line(
    store: Store, line: Line, noted: int = 0, ahead: tuple[str, list[str]] = ("", [])
) -> None:
    """Put a line beside the photos, in its writer's transaction.

    Parameters
    ----------
    store : Store
    line : Line
    noted : int
        Number of a line that is known to have been committed, beside the database.
    ahead : (str, list of str)
        As `look_ahead` gave it, if it did.

    Raises
    ------
    ArchiveError
        If the log there goes on further, or there is none: the database is not the one these
        files belong to, or their disk is away.
    """
    folder = _folder(line.seq + 1)
    _, there = ahead if ahead[0] == folder else _lines_in(store, folder)
    # One further line may be of a writer that was cut off, but not one that was noted.
    if noted >= line.seq or any(seq_of(key) > line.seq for key in there):
        raise ArchiveError(
            f"the database ends at line {line.seq - 1} of the log, but later lines lie beside "
            "the photos",
            where=store.url,
            mend="an older database was put in its place: ptmark archive rebuild",
        )
    log = store.path("log")
    if line.seq > 1 and log is not None and not log.is_dir():
        raise ArchiveError(
            "no line of the log lies beside the photos, where the database has some",
            where=store.url,
            mend="see that the disk of the photos is there; else: ptmark archive repair",
        )
    new = _folder(line.seq) == folder and line_key(line) not in there
    store.put(line_key(line), line_bytes(line), new=new)


def follow(known: dict[str, list[str]], line: Line) -> None:
    """Add what a line tells to the files of each record, the one that counts last."""
    if line.action in {"added", "revised"}:
        known.setdefault(line.subject, []).append(json.loads(line.detail)["sha256"])
    elif line.action == "deleted":
        known.pop(line.subject, None)


def states(lines: Iterable[Line]) -> dict[str, list[str]]:
    """SHA-256 of the files of each record that was not deleted, by the log."""
    known: dict[str, list[str]] = {}
    for line in lines:
        follow(known, line)
    return known


@contextmanager
def hands(store: Store) -> Iterator[Callable[[Callable[[_T], _U], Sequence[_T]], Iterator[_U]]]:
    """A `map` of threads to read a store with: two keep a disk busy, a far one answers late.

    What is handed over goes in runs, as handing over costs as much as reading a small file.
    """
    with ThreadPoolExecutor(2 if store.path("-") is not None else 16) as pool:

        def mapped(work: Callable[[_T], _U], given: Sequence[_T]) -> Iterator[_U]:
            runs = [given[n : n + _RUN] for n in range(0, len(given), _RUN)]
            return chain.from_iterable(pool.map(lambda run: [work(one) for one in run], runs))

        yield mapped
