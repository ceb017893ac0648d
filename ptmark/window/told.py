"""Says what nobody may be looking at: at the foot what was done, aloud a new verdict."""

from pathlib import Path

from PySide6.QtCore import QObject

from ptmark.window.aloud import say_aloud
from ptmark.window.parts import Parts
from ptmark.window.session import STEPS, Session
from ptmark.window.step_state import step_states
from ptmark.window.words import tr

__all__ = ["Told", "VerdictAloud"]


class Told(QObject):
    """Follows saving, keeping in the archive and the part that is begun."""

    def __init__(self, window: Parts) -> None:
        super().__init__(window)
        self._session, self._foot = window.session, window.foot
        self._saved = ""
        window.saving.saved.connect(self._on_saved)
        window.record_step.archive.told.connect(self._on_kept)
        window.part_form.again.taken.connect(self._tell)
        VerdictAloud(window.session, window)
        self._view, self._order = window.view, window.indications_step.table.order
        window.session.selection_changed.connect(self._on_selected)
        self._hint = ""
        window.bench.hint.connect(self._on_hint)

    def _on_saved(self, paths: list[Path]) -> None:
        names = ", ".join(path.name for path in paths)
        self._saved = tr("Saved {0} in {1}", names, paths[0].parent)
        self._say(self._saved)

    def _on_kept(self, said: str) -> None:
        before = self._foot.hint.text()
        self._say(f"{before}. {said}" if before == self._saved else said)

    def _on_selected(self) -> None:
        """Read the row where the keyboard is in the photo; in the list, moving reads it."""
        if self._view.hasFocus() and len(self._session.selected) == 1:
            rows = {row.id: row.spoken for row in self._order.model.rows}
            say_aloud(self._view, rows.get(self._session.selected[0], ""))

    def _on_hint(self, hint: str) -> None:
        """What a tool asks for next; it is told anew with every move of the pointer."""
        if hint != self._hint:
            say_aloud(self._view, hint)
        self._hint = hint

    def _say(self, said: str) -> None:
        if self._session.step != STEPS[-1]:  # that page tells it itself
            self._tell(said)

    def _tell(self, said: str) -> None:
        self._foot.say(said)
        say_aloud(self._foot, said)


class VerdictAloud(QObject):
    """Has the verdict spoken whenever it has become another, whichever step is shown."""

    def __init__(self, session: Session, parent: QObject) -> None:
        super().__init__(parent)
        self._session, self._by, self._said = session, parent, ""
        session.judged.connect(self._tell)
        session.photo_shown.connect(lambda _: self._forget())

    def _forget(self) -> None:
        self._said = ""  # the next part's verdict is told, also where it is the same

    def _tell(self) -> None:
        if self._session.workers.busy("look"):
            return  # one on nothing yet
        verdict = self._session.judgement.verdict or ""
        if verdict and verdict != self._said:
            said = tr("Verdict: {0}", step_states(self._session)["Verdict"][1])
            say_aloud(self._by, said)
        self._said = verdict
