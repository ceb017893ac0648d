"""What the next start should find as it was left: criteria, decision rule, unit, folder."""

import json
from pathlib import Path
from typing import Any

from PySide6.QtCore import QObject

from ptmark.files import write_whole
from ptmark.places import user_folder
from ptmark.window.engine import load_engine
from ptmark.window.session import Session
from ptmark.window.workers import Token

__all__ = ["Memory"]

_KEPT = ("profile", "decision_rule")


class Memory(QObject):
    """Reads its file once at the start and writes it after a change, both beside the window.

    A file that is missing or broken is as good as none: every value has its default.
    """

    def __init__(self, session: Session) -> None:
        super().__init__(session)
        self._session = session
        self._now: dict[str, str] = {}
        self._loaded = self._writing = False
        session.changed.connect(self._note)
        session.judged.connect(self._note)

    def load(self) -> None:
        """Bring back what was kept; nothing that a person has chosen since is overruled."""
        self._session.workers.start("", lambda _: _read(), self._got)

    @property
    def folder(self) -> Path:
        """Where the last photo was opened."""
        kept = Path(self._now.get("folder", ""))
        return kept if self._now.get("folder") and kept.is_dir() else Path.home()

    def _got(self, kept: dict[str, str]) -> None:
        self._now = kept
        self._session.when_ready(self._apply)

    def _apply(self) -> None:
        from dataclasses import replace

        session, inspection, kept = self._session, self._session.inspection, self._now
        if kept.get("unit") == "in" and session.unit == "mm":
            session.turn_unit()
        if inspection and inspection.photo is None and not inspection.state.profile:
            values: dict[str, Any] = {name: kept[name] for name in _KEPT if kept.get(name)}
            state = replace(inspection.state, **values)
            session.by_itself(lambda: inspection.take_state(state))
        self._loaded = True

    def _note(self) -> None:
        session, inspection = self._session, self._session.inspection
        if inspection is None or not self._loaded:
            return
        now = {name: str(getattr(inspection.state, name)) for name in _KEPT}
        now["unit"] = session.unit
        photo = inspection.photo
        now["folder"] = str(photo.info.path.parent) if photo else self._now.get("folder", "")
        if now != self._now:
            self._now = now
            self._write()

    def _write(self) -> None:
        """One writer at a time, so that the last change is the one that stays."""
        if self._writing:
            return
        self._writing, now = True, self._now

        def work(_token: Token) -> None:
            write_whole(_file(), json.dumps(now).encode())

        def over(_: object = None) -> None:
            self._writing = False
            if now is not self._now:
                self._write()

        self._session.workers.start("", work, over, failed=over)  # only a convenience


def _file() -> Path:
    return user_folder() / "window.json"


def _read() -> dict[str, str]:
    load_engine()
    from ptmark.criteria import list_profiles

    try:
        kept: Any = json.loads(_file().read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return {}
    if not isinstance(kept, dict):
        return {}
    words = {name: value for name, value in kept.items() if isinstance(value, str)}
    if words.get("profile") not in list_profiles():
        words.pop("profile", None)
    if words.get("decision_rule") not in {"guarded", "simple"}:
        words.pop("decision_rule", None)
    return words
