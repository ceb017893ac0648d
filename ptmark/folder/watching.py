"""Which files of a folder are pictures, and which of those that arrive are whole."""

import os
from dataclasses import dataclass
from pathlib import Path
from time import monotonic

from ptmark.errors import PhotoError
from ptmark.photo import read_info

__all__ = ["ENDINGS", "Arrivals", "pictures_in"]

ENDINGS = (".jpg", ".jpeg", ".jpe", ".png", ".tif", ".tiff", ".webp", ".heic", ".heif")
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
        if path.suffix.lower() in ENDINGS
        and not path.name.startswith(".")
        and (path.is_file() or (path.is_symlink() and not path.exists()))
    )


@dataclass(slots=True)
class _Seen:
    stamp: tuple[int, int]
    still_since: float
    taken: bool = False


class Arrivals:
    """Tells of each picture once it is whole: it has stopped changing and it opens.

    A file that has stopped changing and does not open is told of after ``patience_s`` all the
    same, so that its error is said. A file that changes after it was told of is told again.
    """

    def __init__(self, folder: Path, *, patience_s: float = PATIENCE_S) -> None:
        self._folder, self._patience_s = folder, patience_s
        self._seen: dict[Path, _Seen] = {}

    def poll(self) -> list[Path]:
        """Look once; the pictures that have become whole since the last look."""
        now, whole = monotonic(), []
        there = pictures_in(self._folder)
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


def _opens(path: Path) -> bool:
    """Whether it opens; what ends in zeros has had its room made and is still being filled."""
    try:
        read_info(path)
        with path.open("rb") as file:
            file.seek(-min(_TAIL, path.stat().st_size), os.SEEK_END)
            return any(file.read(_TAIL))
    except (PhotoError, OSError):
        return False
