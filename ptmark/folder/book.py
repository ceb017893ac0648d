"""The book of a run over many photos: what is finished, and its results.

Three files in one folder: ``results.jsonl`` (one JSON document a line, a photo each),
``table.csv`` (one row an indication) and ``finished.txt``, which holds for every finished photo
its SHA-256 and how long the other two were then. Results are made durable before the photo is
called finished, and what lies beyond the last finished photo is cut off on opening: a kill at
any moment costs the photos in work, no photo stands there twice and none is lost.
"""

import csv
import io
import os
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path
from time import monotonic
from types import TracebackType
from typing import IO

from ptmark.errors import RecordError, UsageError
from ptmark.files import open_alone
from ptmark.folder.job import Outcome
from ptmark.folder.table import COLUMNS

__all__ = ["Book"]

_HEAD = "ptmark finished photos 1"
_EVERY = 0.5  # s between two times of making results durable: a flush costs more than a line


class Book:
    """Opens a folder's book and goes on with it.

    Parameters
    ----------
    folder : Path
        Made if missing.
    settings : str
        `Asked.key` of the run; a book of other settings is refused.
    retry : bool
        Take photos that failed before as not finished. Their last line counts.

    Raises
    ------
    UsageError
        If the book belongs to other settings, is damaged, or is in use by another run.
    RecordError
        If the folder cannot be written, now or later: a full disk.
    """

    def __init__(self, folder: Path, settings: str, *, retry: bool = False) -> None:
        self._folder = folder
        self.results, self.table = folder / "results.jsonl", folder / "table.csv"
        self._waiting: list[tuple[str, str, str]] = []
        self._flushed = monotonic()
        with _writing(folder):
            folder.mkdir(parents=True, exist_ok=True)
            self._state = _locked(folder / "finished.txt")
            try:
                self._open(settings, retry=retry)
            except BaseException:
                self._state.close()
                raise

    def _open(self, settings: str, *, retry: bool) -> None:
        path = self._folder / "finished.txt"
        done, sizes, end = _read_state(self._state, path, settings)
        self._finished = {key: good for key, good in done.items() if good or not retry}
        self._lines = _opened(self.results, sizes[0])
        self._rows = _opened(self.table, sizes[1])
        self._state.truncate(end)
        self._state.seek(end)
        if end == 0:
            self._begin(settings)

    def _begin(self, settings: str) -> None:
        self._lines.truncate(0)
        self._rows.truncate(0)
        head = io.StringIO(newline="")
        csv.writer(head).writerow(COLUMNS)
        self._rows.write(head.getvalue().encode())
        self._sync(self._rows)
        start = f"{_HEAD}\t{settings}\t0\t{self._rows.tell()}\n"
        self._state.write(start.encode())
        self._sync(self._state)

    def __enter__(self) -> "Book":
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()

    def __len__(self) -> int:
        return len(self._finished)

    def has(self, key: str) -> bool:
        """Whether a photo of this content is finished."""
        return key in self._finished

    def failed(self, key: str) -> bool:
        """Whether a photo of this content is finished, but could not be measured."""
        return not self._finished.get(key, True)

    def write(self, outcome: Outcome) -> bool:
        """Add a photo; False where one of the same content stands there already."""
        if outcome.key in self._finished:
            return False
        with _writing(self._folder):
            self._lines.write(outcome.line)
            self._rows.write(outcome.table)
        word = "failed" if outcome.error else "measured"
        sizes = f"{self._lines.tell()}\t{self._rows.tell()}"
        self._waiting.append((outcome.key, word, sizes))
        self._finished[outcome.key] = not outcome.error
        if monotonic() - self._flushed > _EVERY:
            self.commit()
        return True

    def commit(self) -> None:
        """Make durable what was written: results first, then that they are finished."""
        if self._waiting:
            with _writing(self._folder):
                self._sync(self._lines)
                self._sync(self._rows)
                text = "".join("\t".join(one) + "\n" for one in self._waiting)
                self._state.write(text.encode())
                self._sync(self._state)
            self._waiting.clear()
        self._flushed = monotonic()

    def close(self) -> None:
        """Make durable and close."""
        try:
            self.commit()
        finally:
            with _writing(self._folder), ExitStack() as files:
                for file in (self._state, self._rows, self._lines):
                    files.callback(file.close)

    @staticmethod
    def _sync(file: IO[bytes]) -> None:
        file.flush()
        os.fsync(file.fileno())


@contextmanager
def _writing(folder: Path) -> Iterator[None]:
    """Say of what the system refuses where it was, and that nothing is lost."""
    try:
        yield
    except OSError as exc:
        raise RecordError(
            f"cannot be written ({exc.strerror or exc})",
            where=str(folder),
            mend="make room, or look at who may write there; the same command then goes on "
            "where it was",
        ) from exc


def _locked(path: Path) -> IO[bytes]:
    """Open the state file for this run alone."""
    try:
        return open_alone(path)
    except BlockingIOError as exc:
        raise UsageError(
            "another run is writing there",
            where=str(path.parent),
            mend="wait until it ends, or give another --out",
        ) from exc


def _read_state(
    file: IO[bytes], path: Path, settings: str
) -> tuple[dict[str, bool], tuple[int, int], int]:
    """Finished keys (True where measured), the lengths of the other two, and of the state."""
    data = file.read()
    end = data.rfind(b"\n") + 1  # a line cut short was not finished
    rows = [line.split("\t") for line in data[:end].decode("utf-8", "replace").splitlines()]
    if not rows:
        return {}, (0, 0), 0
    sound = all(len(row) == 4 and row[2].isdigit() and row[3].isdigit() for row in rows)
    if not sound or rows[0][0] != _HEAD:
        raise UsageError(
            "is no list of finished photos", where=str(path), mend="give another --out"
        )
    if rows[0][1] != settings:
        raise UsageError(
            "holds results of other settings, of another profile or version",
            where=str(path.parent),
            mend="give another --out, or the settings of before",
        )
    done = {row[0]: row[1] == "measured" for row in rows[1:]}
    return done, (int(rows[-1][2]), int(rows[-1][3])), end


def _opened(path: Path, size: int) -> IO[bytes]:
    """Open a results file at the end of what is finished; the rest is cut off."""
    file = path.open("r+b" if path.exists() else "x+b")
    there = file.seek(0, os.SEEK_END)
    if there < size:
        file.close()
        raise UsageError(
            f"is {there} bytes, shorter than the {size} that were finished",
            where=str(path),
            mend="it was changed by hand: give another --out",
        )
    file.truncate(size)
    file.seek(size)
    return file
