"""The archive as the window holds it: opened once, in a worker, when it is first needed."""

import os
import threading
from collections.abc import Callable
from contextlib import suppress
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject

from ptmark.errors import ArchiveError, PtmarkError
from ptmark.places import user_folder
from ptmark.window.session import Session
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.archive import Archive

__all__ = ["ArchiveDoor", "has_archive"]


def has_archive() -> bool:
    """Whether there is an archive to be asked; one that was never needed is not made."""
    if os.environ.get("PTMARK_ARCHIVE_DATABASE"):
        return True
    return (user_folder() / "archive" / "archive.sqlite").is_file()


class ArchiveDoor(QObject):
    """Runs work on the archive beside the window.

    One that may only be read is opened for reading; what would write then says so itself.
    """

    def __init__(self, session: Session) -> None:
        super().__init__(session)
        self._workers = session.workers
        self._guard = threading.Lock()
        self._archive: Archive | None = None

    def ask(
        self,
        name: str,
        work: Callable[["Archive", Token], Any],
        done: Callable[[Any], None] | None = None,
        *,
        failed: Callable[[Exception], None] | None = None,
        partial: Callable[[Any], None] | None = None,
        key: str = "",
    ) -> None:
        """Run ``work`` with the open archive, as `Workers.start` runs it."""

        def run(token: Token) -> Any:  # noqa: ANN401 - whatever the work gives
            archive = self._opened()
            token.check()
            return work(archive, token)

        self._workers.start(name, run, done, failed=failed, partial=partial, key=key)

    def cancel(self, key: str) -> None:
        """Drop the work with this key."""
        self._workers.cancel(key)

    def close(self) -> None:
        """Let go of the archive; a small one that was written to is sealed by that."""
        with self._guard:
            if self._archive is not None:
                self._archive.close()
                self._archive = None

    def _opened(self) -> "Archive":
        from ptmark.archive import open_archive
        from ptmark.archive.small import forget_deleted

        with self._guard:
            if self._archive is not None and self._archive.is_moved():
                file = self._archive.file
                if file is None or not file.is_file():  # a new one there would look empty
                    self._archive.refuse_moved()
                self._archive.engine.dispose()
                self._archive = None
            if self._archive is None:
                try:
                    self._archive = open_archive()
                except ArchiveError as first:
                    try:
                        self._archive = open_archive(read_only=True)
                    except ArchiveError:
                        raise first from None
                with suppress(PtmarkError):  # only a cache
                    forget_deleted(self._archive)
            return self._archive
