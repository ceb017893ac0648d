"""What a check of the archive found, and how far it came."""

import hashlib
import json
import time
from collections.abc import Iterable
from contextlib import suppress
from dataclasses import asdict, dataclass, field
from typing import Any

from ptmark.archive.opening import Archive
from ptmark.files import write_whole
from ptmark.places import user_folder

__all__ = ["Notes", "Problem", "Verified"]

_NOTED = 2.0  # s between two times of noting how far it came


@dataclass(frozen=True, slots=True)
class Problem:
    """``kind`` "missing", "changed" or "damaged", and "orphaned", which is no loss.

    ``subject`` is a record's id, a photo's SHA-256, the name of a table that is checked as one,
    or "database", "log", "store".
    """

    kind: str
    subject: str
    says: str


@dataclass(slots=True)
class Verified:
    """What was read and what was found; all is well where `whole` is True."""

    records: int = 0
    photos: int = 0
    bytes: int = 0
    problems: list[Problem] = field(default_factory=list)

    @property
    def whole(self) -> bool:
        return all(one.kind == "orphaned" for one in self.problems)


class Notes:
    """How far a run came, in the user's folder, so that a stopped one can go on.

    Attributes
    ----------
    right : set of str
        Hashes of rows (`proving.hashed`) that were worked out once and found right: those of
        records whose line in the log tells none, as on a server. They stand here and not in the
        log: a copy that is verified must not get lines which the archive it was made from has
        not, and on a server another could have written them.
    """

    def __init__(self, archive: Archive, *, resume: bool) -> None:
        database = archive.file or archive.engine.url.render_as_string()
        where = f"{database} {archive.store.url}"  # the same whether it may be written or not
        name = hashlib.sha256(where.encode()).hexdigest()[:16]
        self._path = user_folder() / "verify" / f"{name}.json"
        self.record, self.photo, self.file, self.line = 0, "", "", 0
        self.found = Verified()
        self._at = time.monotonic()
        self._right = self._path.with_suffix(".rows")
        self.right: set[str] = set()
        with suppress(OSError, ValueError):  # without them all is worked out again
            self.right = set(self._right.read_text("ascii").split())
        if resume:
            with suppress(OSError, ValueError, LookupError, TypeError, AttributeError):
                self._go_on(json.loads(self._path.read_text("utf-8")))

    def _go_on(self, told: dict[str, Any]) -> None:
        problems = [Problem(**one) for one in told["found"].pop("problems")]
        found = Verified(**told["found"], problems=problems)
        record, photo, file, line = (told[key] for key in ("record", "photo", "file", "line"))
        self.record, self.photo, self.file, self.line = record, photo, file, line
        self.found = found

    def keep(self) -> None:
        if time.monotonic() - self._at > _NOTED:
            told = {name: getattr(self, name) for name in ("record", "photo", "file", "line")}
            told["found"] = asdict(self.found)
            with suppress(OSError):  # a full disk here keeps nobody from verifying there
                write_whole(self._path, json.dumps(told).encode())
            self._at = time.monotonic()

    def note_right(self, hashes: Iterable[str]) -> None:
        """Add to `right`, a line each; one that is cut off fits no rows."""
        told = "".join(f"{one}\n" for one in hashes)
        with suppress(OSError):
            if told:
                self._right.parent.mkdir(parents=True, exist_ok=True)
                with self._right.open("a", encoding="ascii") as file:
                    file.write(told)

    def drop(self) -> None:
        self._path.unlink(missing_ok=True)
