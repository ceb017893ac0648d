"""Says what nobody may be looking at: at the foot what was done, aloud a new verdict."""

from pathlib import Path

from PySide6.QtCore import QObject, QTimer
from PySide6.QtWidgets import QWidget

from ptmark.window.aloud import say_aloud
from ptmark.window.parts import Parts
from ptmark.window.photo_words import PhotoWords
from ptmark.window.session import STEPS, Session
from ptmark.window.step_state import step_states
from ptmark.window.words import tr

__all__ = ["Told", "VerdictAloud"]

_STANDS = {"suggested": tr("not looked at"), "taken": tr("taken"), "dropped": tr("dropped")}


class Told(QObject):
    """Follows saving, keeping in the archive and the part that is begun."""

    def __init__(self, window: Parts) -> None:
        super().__init__(window)
        self._session, self._foot = window.session, window.foot
        self._saved, self._saving = "", window.saving
        window.session.changed.connect(self._on_changed)
        window.saving.saved.connect(self._on_saved)
        window.record_step.archive.told.connect(self._on_kept)
        window.part_form.again.taken.connect(self._tell)
        VerdictAloud(window.session, window)
        self._view, self._order = window.view, window.indications_step.table.order
        window.session.selection_changed.connect(self._on_selected)
        StandingsAloud(window)
        PhotoWords(window)
        self._strip, self._hint, self._waits = window.strip, "", ""
        window.session.judged.connect(self._on_judged)
        window.session.step_changed.connect(self._on_step)
        window.looking.suggested.connect(self._on_suggested)
        window.bench.hint.connect(self._on_hint)

    def _on_saved(self, paths: list[Path]) -> None:
        names = ", ".join(path.name for path in paths)
        self._saved = tr("Saved {0} in {1}", names, paths[0].parent)
        self._say(self._saved)

    def _on_kept(self, said: str) -> None:
        before = self._foot.hint.text()
        self._say(f"{before}. {said}" if before == self._saved else said)

    def _on_step(self, step: str) -> None:
        """Which step it is now; where the keyboard stays in the photo nothing else tells."""
        say_aloud(self._view, self._strip.buttons[step].accessibleName())

    def _on_suggested(self) -> None:
        """How many were found, once it is no longer being looked for."""
        QTimer.singleShot(0, self, self._tell_found)

    def _tell_found(self) -> None:
        say_aloud(self._view, _found(self._session))

    def _on_selected(self) -> None:
        """Read the row where the keyboard is in the photo; in the list, moving reads it."""
        chosen, session = self._session.selected, self._session
        self._waits = ""
        if not self._view.hasFocus() or len(chosen) != 1:
            return
        has_scale = session.inspection is not None and session.inspection.surface is not None
        if has_scale and chosen[0] not in session.judgement.measured:
            self._waits = chosen[0]  # just drawn: its size comes in a moment
        else:
            rows = {row.id: row.spoken for row in self._order.model.rows}
            say_aloud(self._view, rows.get(chosen[0], ""))

    def _on_judged(self) -> None:
        if self._waits in self._session.judgement.measured:
            self._on_selected()

    def _on_hint(self, hint: str) -> None:
        """What a tool asks for next; it is told anew with every move of the pointer."""
        if not self._hint.startswith(hint):  # the first one tells the keys too
            say_aloud(self._view, hint)
        self._hint = hint

    def _say(self, said: str) -> None:
        if self._session.step != STEPS[-1]:
            self._tell(said)
        else:
            self._foot.say(said)  # that page has it spoken, but may be scrolled elsewhere

    def _on_changed(self) -> None:
        """What was saved is another now: no longer say that it is saved."""
        shown = self._foot.hint.text()
        if self._saved and shown.startswith(self._saved) and self._saving.saved_as is None:
            self._foot.say("")

    def _tell(self, said: str) -> None:
        self._foot.say(said)
        say_aloud(self._foot, said)


class StandingsAloud(QObject):
    """Has it spoken how an indication stands that was taken, dropped or deleted, or undone."""

    _MOST = 3  # of more only their number

    def __init__(self, window: Parts) -> None:
        super().__init__(window)
        self._session, self._view = window.session, window.view
        self._before: dict[str, str] = {}
        window.session.changed.connect(self._tell)
        window.session.photo_shown.connect(lambda _: self._tell(aloud=False))

    def _tell(self, *, aloud: bool = True) -> None:
        marked = self._session.state.marked if self._session.state else ()
        now = {one.id: one.standing for one in marked}
        before, self._before = self._before, now
        gone = [name for name in before if name not in now and before[name] != "suggested"]
        other = [name for name in before if name in now and now[name] != before[name]]
        if not aloud:
            return
        if len(gone) + len(other) > self._MOST:
            said = [_found(self._session)]
        else:
            said = [f"{name}: {_STANDS[now[name]]}." for name in other]
            said += [tr("{0}: deleted.", name) for name in gone]
        say_aloud(self._view, " ".join(said))


class VerdictAloud(QObject):
    """Has the verdict spoken whenever it has become another, whichever step is shown."""

    def __init__(self, session: Session, parent: QWidget) -> None:
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


def _found(session: Session) -> str:
    return tr("Indications: {0}.", step_states(session)["Indications"][1])
