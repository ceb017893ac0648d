"""Recent work: the records saved last, offered where work begins."""

import json
from pathlib import Path
from typing import Any

from PySide6.QtCore import QObject, Signal

from ptmark.files import write_whole
from ptmark.places import user_folder
from ptmark.window.saving import Saving
from ptmark.window.workers import Workers

__all__ = ["Recent"]

_MOST = 4


class Recent(QObject):
    """Remembers where records were saved.

    Signals: ``changed(object)`` with the paths that still are there, newest first.
    """

    changed = Signal(object)

    def __init__(self, workers: Workers, saving: Saving) -> None:
        super().__init__(saving)
        self._workers = workers
        saving.saved.connect(self._note)

    def load(self) -> None:
        """Read what was kept; a broken file offers nothing."""
        self._workers.start("", lambda _: _read(), self.changed.emit, key="recent")

    def _note(self, paths: list[Path]) -> None:
        new = [path.absolute() for path in paths if path.suffix.lower() == ".json"]
        if new:
            self._workers.start("", lambda _: _keep(new), self.changed.emit, key="recent")


def _file() -> Path:
    return user_folder() / "recent.json"


def _read() -> list[Path]:
    try:
        kept: Any = json.loads(_file().read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return []
    names = [one for one in kept if isinstance(one, str)] if isinstance(kept, list) else []
    return [Path(name) for name in names if Path(name).is_file()][:_MOST]


def _keep(new: list[Path]) -> list[Path]:
    paths = list(dict.fromkeys([*new, *_read()]))[:_MOST]
    write_whole(_file(), json.dumps([str(path) for path in paths], indent=1).encode())
    return paths
