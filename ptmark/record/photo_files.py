"""The photos of a record in a folder, found by their content."""

import hashlib
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

__all__ = ["find_photo", "read_photo"]

_MOST_BYTES = 2 << 30  # no photo that can be opened is larger


def find_photo(folder: Path, name: str, sha256: str) -> Path | None:
    """The file in a folder that has this content: the one of this name first, else any."""
    for one in _candidates(folder, name):
        with suppress(OSError), one.open("rb") as file:  # what cannot be read may be another's
            if hashlib.file_digest(file, "sha256").hexdigest() == sha256:
                return one
    return None


def read_photo(folder: Path, name: str, sha256: str) -> tuple[Path, bytes] | None:
    """The file that `find_photo` finds, and its bytes as they were when they had this hash."""
    for one in _candidates(folder, name):
        with suppress(OSError):
            if one.stat().st_size <= _MOST_BYTES:
                data = one.read_bytes()
                if hashlib.sha256(data).hexdigest() == sha256:
                    return one, data
    return None


def _candidates(folder: Path, name: str) -> Iterator[Path]:
    named = folder / (Path(name).name or "-")
    if named.is_file():
        yield named
    files = sorted(one for one in folder.iterdir() if one.is_file()) if folder.is_dir() else []
    yield from (one for one in files if one != named)
