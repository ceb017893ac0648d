"""What follows what: the card leads to a step, suggestions to the first one of them."""

from PySide6.QtCore import QObject

from ptmark.window.indications.hands import Hands
from ptmark.window.looking import Looking
from ptmark.window.saving import Saving
from ptmark.window.session import Session
from ptmark.window.view.photo_view import PhotoView

__all__ = ["Follows"]


class Follows(QObject):
    """Leads on where a person would go next."""

    def __init__(
        self, session: Session, looking: Looking, hands: Hands, saving: Saving, view: PhotoView
    ) -> None:
        super().__init__(session)
        self._session, self._hands, self._saving, self._view = session, hands, saving, view
        looking.suggested.connect(self.after_suggestions)
        looking.card_looked_for.connect(self._after_card)
        saving.saved.connect(lambda _: self._after_save())
        session.changed.connect(self._after_save)  # by undo, to what the record holds
        view.mark_clicked.connect(self._on_mark_clicked)

    def after_suggestions(self) -> None:
        """Choose the first indication that nobody has looked at, where they are looked at."""
        state = self._session.state
        unseen = [m.id for m in state.marked if m.standing == "suggested"] if state else []
        if unseen and self._session.step == "Indications":
            self._session.select(unseen[0])
            self._view.setFocus()

    def point(self, name: str, bring: bool) -> None:  # noqa: FBT001 - a signal's plain answer
        """Make a mark stand out in the photo beside what is selected; "" for none."""
        view, selected = self._view, frozenset(self._session.selected)
        view.show_marks(view.marks, selected | ({name} if name else frozenset()))
        if name and bring:
            view.bring(name)

    def _after_card(self, found: bool) -> None:  # noqa: FBT001 - a plain answer
        self._session.go("Indications" if found else "Scale")

    def _after_save(self) -> None:
        inspection = self._session.inspection
        if inspection is not None and self._saving.kept is inspection.state:
            self._session.autosave.forget()

    def _on_mark_clicked(self, name: str) -> None:
        if name.startswith("left "):
            self._hands.take_left_out(int(name.removeprefix("left ")))
        elif name:
            self._session.select(name)
            if self._session.step not in {"Verdict", "Record"}:
                self._session.go("Indications")
        else:
            self._session.select()
