"""Which files of a folder are pictures, and which of those that arrive are whole."""

import os
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from time import monotonic

from ptmark.endings import names_a_picture
from ptmark.errors import PhotoError
from ptmark.photo import read_info

__all__ = ["Arrivals", "folders_below", "pictures_in"]

# A file that has stopped growing but does not open may be a copy that stalled.
PATIENCE_S = 30.0
_TAIL = 64  # bytes


def pictures_in(folder: Path) -> list[Path]:
    """Files with a picture's ending, by name; hidden ones and folders below are left alone.

    A link that leads nowhere is one of them: a photo is missing there, which is to be said.
    """
    return sorted(
        path
        for path in folder.iterdir()
        if names_a_picture(path)
        and not path.name.startswith(".")
        and (path.is_file() or (path.is_symlink() and not path.exists()))
    )


def folders_below(folder: Path) -> list[str]:
    """Names of the folders right below that hold pictures, which `pictures_in` leaves alone."""
    found = []
    for below in sorted(folder.iterdir()):
        with suppress(OSError):
            if below.is_dir() and not below.name.startswith(".") and pictures_in(below):
                found.append(below.name)
    return found


@dataclass(slots=True)
class _Seen:
    stamp: tuple[int, int]
    still_since: float
    taken: bool = False


class Arrivals:
    """Tells of each picture once it is whole: it has stopped changing and it opens.

    A file that has stopped changing and does not open is told of after ``patience_s`` all the
    same, so that its error is said. A file that changes after it was told of is told again.
    ``away`` says why the folder could not be looked into the last time, "" where it could: a
    share that is gone for a while comes back.
    """

    def __init__(self, folder: Path, *, patience_s: float = PATIENCE_S) -> None:
        self._folder, self._patience_s = folder, patience_s
        self._seen: dict[Path, _Seen] = {}
        self.away = ""

    def poll(self) -> list[Path]:
        """Look once; the pictures that have become whole since the last look."""
        now, whole = monotonic(), []
        try:
            there = pictures_in(self._folder)
        except OSError as exc:
            self.away = exc.strerror or str(exc)
            return []
        self.away = ""
        for path in there:
            try:
                stat = path.stat()
            except OSError:
                continue  # gone again
            stamp = (stat.st_size, stat.st_mtime_ns)
            seen = self._seen.get(path)
            if seen is None or seen.stamp != stamp:
                self._seen[path] = _Seen(stamp, now)
            elif not seen.taken and (
                now - seen.still_since >= self._patience_s or _opens(path)
            ):
                seen.taken = True
                whole.append(path)
        self._seen = {path: self._seen[path] for path in there if path in self._seen}
        return whole

    def tell_again(self, path: Path) -> None:
        """Tell of a picture once more, as if it had come anew."""
        self._seen.pop(path, None)


def _opens(path: Path) -> bool:
    """Whether it opens; what ends in zeros has had its room made and is still being filled."""
    try:
        read_info(path)
        with path.open("rb") as file:
            file.seek(-min(_TAIL, path.stat().st_size), os.SEEK_END)
            return any(file.read(_TAIL))
    except (PhotoError, OSError):
        return False
