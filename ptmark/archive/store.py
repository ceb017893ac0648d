"""The photo store: every photo once, by the SHA-256 of its bytes, never written again.

A local folder by default; any store that fsspec reaches by URL. Keys are
``aa/bb/SHA256.suffix``, where aa and bb are the first four digits. The files of records lie
among them, the lines of the audit log beside them (`ptmark.archive.beside`).
"""

import hashlib
import os
import re
import threading
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from io import FileIO
from pathlib import Path
from typing import Any, Protocol

from ptmark.errors import ArchiveError
from ptmark.files import write_whole

__all__ = [
    "FolderStore",
    "RemoteStore",
    "Store",
    "is_content",
    "is_line",
    "key_for",
    "make_folder",
    "open_store",
    "suffix_of",
    "sync_folder",
]

_AT_ONCE = 2**18  # bytes; a smaller file is read whole
# Bytes of a piece: `hashlib.file_digest` takes a quarter of it, makes room for each file anew
# and so waits four times as often for the thread that meanwhile compares rows.
_PIECE = 2**20
_KEY = re.compile(r"[0-9a-f]{2}/[0-9a-f]{2}/([0-9a-f]{64})\.[a-z0-9]{1,8}")
_LINE = re.compile(r"log/\d{8}/\d{2}/\d{12}-[0-9a-f]{16}\.json")


def suffix_of(name: str) -> str:
    """The ending a photo is kept under: lower case letters and digits, else ``bin``."""
    plain = Path(name).suffix.lower().removeprefix(".")
    return plain if re.fullmatch(r"[a-z0-9]{1,8}", plain) else "bin"


def key_for(sha256: str, suffix: str) -> str:
    """Where a photo lies in the store."""
    return f"{sha256[:2]}/{sha256[2:4]}/{sha256}.{suffix}"


class Store(Protocol):
    """What the archive asks of a photo store; keys as `key_for` and `line_key` make them."""

    url: str

    def put(self, key: str, data: bytes, *, new: bool = False) -> None:
        """Keep the bytes durably; what lies there unharmed already is left alone.

        Of ``new`` ones it is known that nothing lies there: a far store is not asked.
        """

    def read(self, key: str) -> bytes:
        """The bytes; FileNotFoundError where there are none."""

    def digest(self, key: str) -> tuple[str, int]:
        """SHA-256 and number of the bytes; FileNotFoundError where there are none."""

    def has(self, key: str) -> bool:
        """Whether it is there."""

    def size(self, key: str) -> int:
        """How many bytes it has; FileNotFoundError where it is not there."""

    def names(self, below: str = "") -> Iterator[str]:
        """Every file, by key in order; also what is none of ours, see `is_content`."""

    def remove(self, key: str) -> None:
        """Take a photo away; nothing where it is not there."""

    def path(self, key: str) -> Path | None:
        """Its file, where the store is a local folder."""


class FolderStore:
    """Photos in a local folder: written beside, made durable, renamed, read-only."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.url = str(folder)
        self._own = threading.local()  # each thread's room for a piece of a file

    def put(self, key: str, data: bytes, *, new: bool = False) -> None:
        place = self.folder / key
        if place.is_file():
            if _same(place.read_bytes(), data):
                sync_folder(place.parent)  # another writer may have renamed it this very moment
                return
            place.chmod(0o644)  # a damaged one; some systems replace no read-only file
        make_folder(place.parent)
        write_whole(place, data)  # never unlinked first: another may have just put it
        place.chmod(0o444)

    def read(self, key: str) -> bytes:
        with self._open(key) as file:
            return file.readall()

    def digest(self, key: str) -> tuple[str, int]:
        with self._open(key) as file:
            if os.fstat(file.fileno()).st_size <= _AT_ONCE:
                data = file.readall()
                return hashlib.sha256(data).hexdigest(), len(data)
            found, size = hashlib.sha256(), 0
            piece = self._piece()
            while read := file.readinto(piece):
                found.update(piece[:read])
                size += read
            return found.hexdigest(), size

    def _piece(self) -> memoryview:
        if not hasattr(self._own, "piece"):
            self._own.piece = memoryview(bytearray(_PIECE))
        piece: memoryview = self._own.piece
        return piece

    def _open(self, key: str) -> FileIO:
        return FileIO(f"{self.folder}{os.sep}{key}")  # half the cost of a path's own

    def has(self, key: str) -> bool:
        return (self.folder / key).is_file()

    def size(self, key: str) -> int:
        return (self.folder / key).stat().st_size

    def names(self, below: str = "") -> Iterator[str]:
        yield from _below(str(self.folder / below), f"{below}/" if below else "")

    def remove(self, key: str) -> None:
        (self.folder / key).unlink(missing_ok=True)

    def path(self, key: str) -> Path | None:
        return self.folder / key


class RemoteStore:
    """Photos in a store that fsspec knows, such as ``s3://bucket/photos``.

    An object store shows an object only once it is whole and durable, so one put is enough.
    """

    def __init__(self, url: str, **options: Any) -> None:  # noqa: ANN401 - as fsspec takes them
        import fsspec  # type: ignore[import-untyped]

        self.url = url
        if url.startswith(("s3://", "s3a://")):  # else it asks for each one's size before it
            options = {"max_concurrency": 1, **options}
        try:
            self._files, self._root = fsspec.url_to_fs(url, **options)
        except (ImportError, ValueError) as exc:
            raise ArchiveError(
                f"no store can be reached: {exc}", where=url, mend="check the URL's scheme"
            ) from exc

    def put(self, key: str, data: bytes, *, new: bool = False) -> None:
        with suppress(FileNotFoundError):  # asked of the store itself: a listing may be stale
            if not new and _same(self.read(key), data):
                return
        with _as_system_error(self.url):
            self._files.pipe_file(self._at(key), data)

    def read(self, key: str) -> bytes:
        with _as_system_error(self.url):
            try:
                data: bytes = self._files.cat_file(self._at(key))
            except FileNotFoundError as found:  # the server's answer does not say what
                where = f"{self.url}/{key}"
                raise FileNotFoundError(2, "it is not there", where) from found
        return data

    def digest(self, key: str) -> tuple[str, int]:
        data = self.read(key)
        return hashlib.sha256(data).hexdigest(), len(data)

    def has(self, key: str) -> bool:
        self._files.invalidate_cache()
        with _as_system_error(self.url):
            return bool(self._files.exists(self._at(key)))

    def size(self, key: str) -> int:
        self._files.invalidate_cache()
        with _as_system_error(self.url):
            return int(self._files.size(self._at(key)))

    def names(self, below: str = "") -> Iterator[str]:
        self._files.invalidate_cache()
        with _as_system_error(self.url):
            found = sorted(self._files.find(self._at(below)))
        for one in found:
            yield one.removeprefix(self._root).lstrip("/")

    def remove(self, key: str) -> None:
        if self.has(key):
            with _as_system_error(self.url):
                self._files.rm_file(self._at(key))

    def path(self, key: str) -> Path | None:
        return None

    def _at(self, key: str) -> str:
        return f"{self._root.rstrip('/')}/{key}"


def _below(folder: str, start: str) -> Iterator[str]:
    """Files first, then those of each folder in it, by name; at half of `os.walk`'s cost."""
    try:
        with os.scandir(folder) as found:
            there = sorted((one.name, one.is_dir(follow_symlinks=False)) for one in found)
    except OSError:  # what cannot be listed will be missed where it is read
        return
    yield from (start + name for name, is_folder in there if not is_folder)
    for name, is_folder in there:
        if is_folder:
            yield from _below(f"{folder}{os.sep}{name}", f"{start}{name}/")


@contextmanager
def _as_system_error(url: str) -> Iterator[None]:
    """What a store's driver raises of its own kind, such as a lost network, as OSError."""
    try:
        yield
    except OSError as found:
        if not found.filename:  # a server's answer, which names no place
            found.strerror = found.strerror or str(found)
            found.filename = url
        raise
    except Exception as found:  # every driver of fsspec has errors of its own
        raise OSError(5, f"the store says: {found}", url) from found


def open_store(url: str) -> Store:
    """A folder's path or ``file:`` URL gives a `FolderStore`, any other URL a `RemoteStore`."""
    if "://" in url and not url.startswith("file://"):
        return RemoteStore(url)
    return FolderStore(Path(url.removeprefix("file://")).absolute())


def is_content(key: str) -> bool:
    """Whether it is the key of a photo or of a record's file."""
    return _KEY.fullmatch(key) is not None


def is_line(key: str) -> bool:
    """Whether it is the key of a line of the log."""
    return _LINE.fullmatch(key) is not None


def _same(there: bytes, data: bytes) -> bool:
    return hashlib.sha256(there).digest() == hashlib.sha256(data).digest()


def make_folder(folder: Path) -> None:
    """Make a folder and those above it, each durable in the one above."""
    if folder.is_dir():
        return
    make_folder(folder.parent)
    folder.mkdir(exist_ok=True)
    sync_folder(folder.parent)


def sync_folder(folder: Path) -> None:
    """Make names in a folder durable."""
    if os.name == "posix":
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
