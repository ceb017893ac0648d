"""The log read again from its lines beside the photos, where the database is made anew."""

import json
from contextlib import suppress
from dataclasses import replace

from ptmark.archive.beside import file_key, line_key, line_of, states
from ptmark.archive.chain import FIRST, Line, lines, link
from ptmark.archive.named import replayed
from ptmark.archive.opening import Archive
from ptmark.archive.rows import table
from ptmark.archive.store import Store, is_content, is_line
from ptmark.errors import ArchiveError, PtmarkError

__all__ = ["broken", "chained", "known_before", "read_lines", "untold"]


def read_lines(store: Store) -> tuple[list[Line], list[str]]:
    """The lines beside the photos, and the files of those that cannot be read."""
    found, damaged = [], []
    for key in filter(is_line, store.names("log")):
        try:
            found.append(_understood(line_of(store.read(key), key)))
        except (ArchiveError, ValueError, LookupError, TypeError):
            damaged.append(key)
        except OSError:
            if store.path(key) is None:  # a far store that is away, not a bad place on a disk
                raise
            damaged.append(key)
    return found, damaged


def _understood(line: Line) -> Line:
    """The line; one of Python's errors where what it tells cannot be taken in."""
    _files_of([line])
    for name, rows in replayed([line]).items():
        for row in rows.values():
            if set(row) != set(table(name).c.keys()):
                raise ValueError(name)
    return line


def known_before(before: Archive, found: list[Line], damaged: list[str]) -> list[Line]:
    """Lines that the store lost or that are damaged there, by the database that was there."""
    known = {line.sha256 for line in found}
    wanted = {line.previous for line in found} - known
    told = []
    with suppress(PtmarkError), before.reading() as conn:
        for line in reversed(list(lines(conn))):
            fits = line.sha256 in wanted or line_key(line) in damaged
            if fits and line.sha256 not in known and link(line) == line.sha256:
                told.append(line)
                wanted.add(line.previous)
    return told


def chained(found: list[Line]) -> list[Line]:
    """The lines that follow each other; in one place there may be those of cut-off writers.

    Where several lie at the end, one of them counts and nobody can tell which: the others are
    added after it, so that nothing that was acknowledged is lost.
    """
    places: dict[int, list[Line]] = {}
    for line in found:
        places.setdefault(line.seq, []).append(line)
    told: list[Line] = []
    for seq in sorted(places, reverse=True):
        wanted = told[-1].previous if told else ""
        told.append(next((one for one in places[seq] if one.sha256 == wanted), places[seq][0]))
    told.reverse()
    for line in places[max(places)][1:] if places else ():
        bare = replace(line, seq=told[-1].seq + 1, previous=told[-1].sha256)
        told.append(replace(bare, sha256=link(bare)))
    return told


def broken(told: list[Line]) -> list[int]:
    """Numbers of lines that are not what their hash says, or do not follow the one before."""
    previous, found = FIRST, []
    for line in told:
        if line.previous != previous or link(line) != line.sha256:
            found.append(line.seq)
        previous = line.sha256
    return found


def untold(store: Store, told: list[Line]) -> list[str]:
    """Records' files that no line tells of, nor was deleted with: a line that is lost may."""
    known = _files_of(told)
    for line in told:
        if line.action == "deleted":
            known.update(json.loads(line.detail).get("files", ()))
    own = (key for key in store.names() if is_content(key) and key.endswith(".json"))
    return [key for key in own if key not in known]


def _files_of(told: list[Line]) -> set[str]:
    """Where the files lie that lines tell of, of every state, deleted or not."""
    added = (states([line]).values() for line in told)
    return {file_key(sha256) for all_of in added for own in all_of for sha256 in own}
