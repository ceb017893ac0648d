"""Record: the fields a report needs, the disposition, and saving."""

from collections.abc import Callable
from functools import partial
from pathlib import Path

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QFormLayout, QHBoxLayout, QVBoxLayout, QWidget

from ptmark.errors import PtmarkError
from ptmark.window import dialogs
from ptmark.window.archive.keep import KeepForm
from ptmark.window.bits import Choice, CommitEdit, Notice, heading, key_button, plain, quiet
from ptmark.window.cautions import VERDICT_CAUTIONS, WORK_CAUTIONS
from ptmark.window.kept_fields import COUNTED, KeptNotice, mark_kept
from ptmark.window.last_of_part import LastOfPart, PartOffer
from ptmark.window.missing import Missing
from ptmark.window.part_again import PartAgain
from ptmark.window.process.timers import ProcessTimers
from ptmark.window.roles import Role, tell_role
from ptmark.window.saved_files import FileOut, PrintButton
from ptmark.window.saving import Saving
from ptmark.window.session import Session
from ptmark.window.sign_form import RevisionForm, SignForm
from ptmark.window.stale_notice import StaleNotice
from ptmark.window.steps.page import StepPage
from ptmark.window.words import from_core, inside, tr

__all__ = ["RecordStep"]

_DECISIONS = ("", "accept", "reject", "rework and retest", "refer")


class RecordStep(StepPage):
    """The fifth page."""

    def __init__(self, session: Session, saving: Saving, window: QWidget) -> None:
        super().__init__(session, "Record", "record")
        self.stale = StaleNotice(session)
        self.column.addWidget(self.stale)
        self.kept = KeptNotice(session)
        self.column.addWidget(self.kept)
        self._saving, self._window = saving, window
        self.fields: dict[str, CommitEdit] = {}
        self._told = ""  # of the record as it was last saved
        self._add_disposition()
        self._add_saving()
        self.timers = ProcessTimers(session, window)
        self.column.addWidget(self.timers)
        self._marks: dict[str, Callable[..., None]] = {}
        self._fields_column = QVBoxLayout()
        self.column.addLayout(self._fields_column)
        self.column.addStretch(1)
        self.column.addWidget(quiet(VERDICT_CAUTIONS))
        self.column.addWidget(quiet(WORK_CAUTIONS))
        session.ready.connect(self._build_fields)
        session.photo_shown.connect(lambda _: self._forget_saved())
        session.changed.connect(self.refresh)
        session.judged.connect(self.refresh)

    def _add_disposition(self) -> None:
        self.column.addWidget(heading(tr("Disposition")))
        self._verdict = plain()
        self.column.addWidget(self._verdict)
        self.decision = Choice(tr("Disposition"))
        for decision in _DECISIONS:
            self.decision.addItem(tr(decision or tr("not decided yet")), decision)
        self.decision.activated.connect(
            lambda _: self.session.change(tr("decide"), decision=self.decision.currentData())
        )
        self.reason = CommitEdit()
        self.reason.setAccessibleName(tr("Reason of the disposition"))
        self.reason.setPlaceholderText(tr("needed where it departs from the verdict"))
        self.reason.committed.connect(
            lambda text: self.session.change(tr("give the reason"), decision_reason=text)
        )
        form = QFormLayout()
        form.addRow(tr("Decision"), self.decision)
        form.addRow(tr("Reason"), self.reason)
        self.column.addLayout(form)
        self.departs = Notice()
        self.column.addWidget(self.departs)

    def _add_saving(self) -> None:
        self.column.addWidget(heading(tr("Save")))
        self._missing = Missing(self.fields, self._window)
        self.column.addWidget(self._missing)
        self.all_button = key_button(
            tr("Save record, image and PDF"), "Ctrl+S", self.save_all, window=self._window
        )
        self.column.addWidget(self.all_button)
        self.under_button = key_button(
            tr("Save under another name …"),
            "Ctrl+Shift+S",
            self.save_under,
            window=self._window,
        )
        self.under_button.hide()
        self.column.addWidget(self.under_button)
        row = QHBoxLayout()
        self.buttons = {}
        for kind, text, kinds in (
            ("record", tr("Record …"), tr("Record (*.json)")),
            ("image", tr("Image …"), tr("Annotated image (*.png *.jpg)")),
            ("pdf", "PDF …", tr("PDF (*.pdf)")),
            ("table", tr("Table …"), tr("Table (*.csv)")),
        ):
            ending = {"record": ".json", "image": ".png", "pdf": ".pdf", "table": ".csv"}[kind]
            button = key_button(text, "", partial(self._save_one, ending, kinds))
            self.buttons[kind] = button
            row.addWidget(button)
        self.column.addLayout(row)
        self.saved = Notice()
        self.column.addWidget(self.saved)
        self.revision = RevisionForm(self.session, self._saving)
        self.column.addWidget(self.revision)
        self.sign = SignForm(self.session, self._saving, self.settle)
        self.column.addWidget(self.sign)
        self.archive = KeepForm(self.session, self._saving, self.save_all, self._window)
        self.column.addWidget(self.archive)
        self.last_of_part = LastOfPart(self.session, self._saving, self.archive.door)
        self._saving.asked.connect(lambda *_: self._bring_revision())
        self._saving.saved.connect(self._on_saved)
        self._saving.failed.connect(self._on_failed)

    def _build_fields(self) -> None:
        from ptmark.record import FIELDS

        if self.fields:
            self.refresh()
            return
        form, group = QFormLayout(), ""
        for field in FIELDS:
            if field.group != group:
                group = field.group
                self._fields_column.addWidget(heading(tr(group)))
                form = self._add_form(tr(group))
            edit = CommitEdit()
            edit.setPlaceholderText(tr(field.hint))
            edit.setToolTip(tr(field.hint))
            edit.setAccessibleName(tr(field.label))
            edit.committed.connect(lambda text, f=field: self._fill_in(f.key, f.label, text))
            label = tr("{0}, needed", tr(field.label)) if field.needed else tr(field.label)
            form.addRow(label, edit)
            self.fields[field.key] = edit
            counted = field.key == COUNTED
            self._marks[field.key] = partial(mark_kept, form, edit, label, counted=counted)
            if field.key == "part_number":
                form.addRow(PartOffer(self.session, self.last_of_part))
                self.again = PartAgain(self.last_of_part)
                self.again.serial_asked.connect(self._ask_serial)
                form.addRow(self.again)
            if (caution := self.timers.cautions.beside(field.key)) is not None:
                form.addRow(caution)
        self.refresh()

    def _add_form(self, name: str) -> QFormLayout:
        """A part of the fields, told by its name to who is led into it."""
        part = QWidget()
        tell_role(part, Role.Grouping)
        part.setAccessibleName(name)
        form = QFormLayout(part)
        form.setContentsMargins(0, 0, 0, 0)
        # A label of its own line leaves the field room for the whole hint, in any language.
        form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapAllRows)
        self._fields_column.addWidget(part)
        return form

    def _fill_in(self, key: str, label: str, text: str) -> None:
        self.session.fill_in(tr("fill in {0}", inside(label)), {key: text})

    def _ask_serial(self) -> None:
        self.fields["serial_number"].setFocus()

    # -- saving -------------------------------------------------------------------------------
    def settle(self) -> None:
        for edit in (*self.fields.values(), self.reason):
            edit.commit()

    def save_all(self) -> None:
        """Write the three files beside each other; a name is asked for the first time only."""
        if not self.session.has_photo:
            return
        self.settle()
        if names := self._saving.names_again():
            self._saving.save(names)
        else:
            self.save_under()

    def save_under(self) -> None:
        """Ask for one name and write the three files."""
        self.settle()
        proposal = self._saving.propose().with_suffix(".json")
        path = dialogs.ask_where_to_save(self._window, proposal, tr("Record (*.json)"))
        if path is not None:
            self._saving.save(self._saving.names_for(path.with_suffix(".json")))

    def _save_one(self, ending: str, kinds: str) -> None:
        self.settle()
        proposal = self._saving.propose().with_suffix(ending)
        path = dialogs.ask_where_to_save(self._window, proposal, kinds)
        if path is not None:
            self._saving.save([path if path.suffix else path.with_suffix(ending)])

    def _forget_saved(self) -> None:
        self._told = ""
        self.saved.say("")

    def _on_saved(self, paths: list[Path]) -> None:
        names = ", ".join(path.name for path in paths)
        said = tr("Saved {0} in {1}", names, paths[0].parent)
        usual = [paths[0].with_suffix(path.suffix) for path in paths]
        left = [one.name for one in usual if one not in paths and one.exists()]
        if left:
            said += ". " + tr(
                "Left as they were, not being of this record: {0}.", ", ".join(left)
            )
        self.saved.say(said, "done")
        self._told = said if self._saving.saved_as in paths else ""
        self.under_button.setVisible(bool(self._saving.names_again()))
        prints = [path for path in paths if path.suffix.lower() == ".pdf"]
        self.saved.offer(
            *(FileOut(path) for path in paths),
            *(PrintButton(path, self.session, self._not_printed) for path in prints),
        )

    def _not_printed(self, exc: Exception) -> None:
        self.saved.say_error(exc)

    def _bring_revision(self) -> None:
        self.saved.say("")
        self.session.go("Record")
        self.ensureWidgetVisible(self.revision)

    def _on_failed(self, exc: Exception) -> None:
        self.saved.offer()
        self._told = ""
        said = from_core(exc) if isinstance(exc, PtmarkError) else tr("Not saved: {0}", exc)
        if self._saving.written:
            names = ", ".join(path.name for path in self._saving.written)
            said += "\n" + tr("Saved all the same: {0}.", names)
        self.saved.say(said)
        self.session.go("Record")  # wherever the key was pressed
        QTimer.singleShot(0, self, lambda: self.ensureWidgetVisible(self.saved))

    def _follow_saved(self) -> None:
        """Say where the work has gone on since it was saved, until undo leads back."""
        if self._told and self._saving.saved_as is None:
            self.saved.say(tr("Changed since it was saved. {0}", self._told))
        elif self._told:
            self.saved.say(self._told, "done")

    # -- showing ------------------------------------------------------------------------------
    def refresh(self) -> None:
        """Show fields, disposition and what is missing."""
        state = self.session.state
        if state is None:
            return
        for key, edit in self.fields.items():
            edit.show_text(state.fields.get(key, ""))
            self._marks[key](kept=key in state.carried)
        self.decision.setCurrentIndex(_DECISIONS.index(state.decision))
        self.reason.show_text(state.decision_reason)
        verdict = self.session.judgement.verdict or ""
        self._verdict.setText(
            tr("The verdict is: {0}.", tr(verdict)) if verdict else tr("No verdict yet.")
        )
        self._show_departs(verdict, state.decision, state.decision_reason)
        self._missing.show_missing(state.fields, self.timers.without_reason())
        self._follow_saved()
        self.sign.refresh()
        self.under_button.setVisible(bool(self._saving.names_again()))
        for button in (self.all_button, self.under_button, *self.buttons.values()):
            button.setEnabled(self.session.has_photo and not self.session.reviewing)

    def _show_departs(self, verdict: str, decision: str, reason: str) -> None:
        from ptmark.record import departs

        says = tr("This departs from the verdict; give the reason.")
        if not verdict:
            says = tr("There is no verdict that this follows from; give the reason.")
        self.departs.say(says if departs(verdict or None, decision, reason) else "")
