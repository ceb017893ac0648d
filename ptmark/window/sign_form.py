"""Signing the saved record as its examiner, and saying why a signed one changes."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtWidgets import QFormLayout, QHBoxLayout, QVBoxLayout, QWidget

from ptmark.errors import PtmarkError
from ptmark.window.bits import CommitEdit, Notice, heading, key_button, plain, quiet
from ptmark.window.saving import Saving
from ptmark.window.session import Session
from ptmark.window.signer import SignerFields
from ptmark.window.words import from_core, tr

__all__ = ["RevisionForm", "SignForm"]

_MOST = 8  # changed parts named; the record names all


class SignForm(QWidget):
    """Name, qualification, and the signature of what is saved."""

    def __init__(self, session: Session, saving: Saving, settle: Callable[[], None]) -> None:
        super().__init__()
        self._session, self._saving, self._settle = session, saving, settle
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(heading(tr("Sign as the examiner")))
        self.who = SignerFields("examiner")
        column.addWidget(self.who)
        self.undecided = Notice()
        column.addWidget(self.undecided)
        self.button = key_button(tr("Sign the saved record"), "", self.sign)
        column.addWidget(self.button)
        self.hint = quiet()
        column.addWidget(self.hint)
        self.said = Notice()
        column.addWidget(self.said)
        saving.signed.connect(self._on_signed)
        saving.saved.connect(lambda _: self.refresh())
        session.photo_shown.connect(lambda _: self.said.say(""))

    def sign(self) -> None:
        """Sign; who is not named is told here."""
        self._settle()
        try:
            name, qualification = self.who.who()
        except PtmarkError as exc:
            self.said.say_error(exc)
            self.who.name.setFocus()
            return
        self._saving.sign(name, qualification)

    def _on_signed(self, text: str) -> None:
        self.said.say(text, "done")
        self.refresh()

    def refresh(self) -> None:
        """Propose the examiner of the fields; say what signing waits for."""
        state = self._session.state
        if state is None:
            return
        fields = state.fields
        self.who.propose(fields.get("examiner", ""), fields.get("examiner_certificate", ""))
        ready = self._saving.can_sign
        self.button.setEnabled(ready)
        self.undecided.say(
            tr("No disposition is given yet: what is signed tells of none.")
            if ready and not state.decision
            else ""
        )
        self.hint.setText(
            tr(
                "The signature covers the record and its photos; a later "
                "change becomes a revision."
            )
            if ready
            else tr(
                "Signed as it stands. A PDF saved before does not show the signature: save "
                "it again."
            )
            if self._saving.is_signed
            else tr("Save the record first; what lies saved is what gets signed.")
        )


class RevisionForm(QWidget):
    """Who changes a signed record and why; what differs is found and named."""

    def __init__(self, session: Session, saving: Saving) -> None:
        super().__init__()
        self._session, self._saving = session, saving
        self._paths: list[Path] = []
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(heading(tr("A new revision of a signed record")))
        self.what = plain()
        column.addWidget(self.what)
        self.by, self.why = CommitEdit(), CommitEdit()
        self.by.setAccessibleName(tr("Changed by"))
        self.why.setAccessibleName(tr("Reason of the change"))
        form = QFormLayout()
        form.addRow(tr("Changed by"), self.by)
        form.addRow(tr("Why"), self.why)
        column.addLayout(form)
        row = QHBoxLayout()
        self.button = key_button(tr("Save the revision"), "", self.save)
        self.leave_button = key_button(tr("Leave it as signed"), "", self.hide)
        row.addWidget(self.button)
        row.addWidget(self.leave_button)
        column.addLayout(row)
        self.missing = Notice()
        column.addWidget(self.missing)
        self.why.returnPressed.connect(self.save)
        saving.asked.connect(self.ask)
        saving.saved.connect(lambda _: self.hide())
        session.photo_shown.connect(lambda _: self.hide())
        self.hide()

    def ask(self, paths: list[Path], what: list[str]) -> None:
        """Ask for name and reason, naming what differs."""
        self._paths = paths
        from ptmark.record import path_label

        named = ", ".join(path_label(path, from_core) for path in what[:_MOST])
        more = tr(" and {0} more", len(what) - _MOST) if len(what) > _MOST else ""
        self.what.setText(tr("Not saved yet. Changed since: {0}{1}.", named, more))
        self.missing.say("")
        self.why.show_text("")
        state = self._session.state
        if state is not None and not self.by.text():
            self.by.show_text(state.fields.get("examiner", ""))
        self.show()
        (self.why if self.by.text() else self.by).setFocus()

    def save(self) -> None:
        """Save with the reason; without one the signed record stays as it is."""
        by, why = self.by.text().strip(), self.why.text().strip()
        if not by or not why:
            self.missing.say(tr("Say who changes the record, and why."))
            return
        self._saving.save(self._paths, by, why)
