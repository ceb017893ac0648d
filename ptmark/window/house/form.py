"""The window in which house rules are written: parts, fields, and what they say at once."""

from pathlib import Path

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QSplitter,
    QVBoxLayout,
    QWidget,
)

from ptmark.criteria import list_profiles, list_templates
from ptmark.criteria.house import ProfileDraft
from ptmark.criteria.house_check import Checked, check_draft
from ptmark.criteria.house_folder import house_files, save_house
from ptmark.errors import PtmarkError
from ptmark.window.bits import Choice, Notice, key_button, scrolled
from ptmark.window.house.list import PartList
from ptmark.window.house.part import PartFields, part_title
from ptmark.window.house.preview import HousePreview
from ptmark.window.reading_order import step_focus
from ptmark.window.roles import Role, tell_handles, tell_role
from ptmark.window.session import Session
from ptmark.window.words import from_core, tr

__all__ = ["HouseForm"]


class HouseForm(QWidget):
    """A window of its own beside the main one; what is written stays while it is closed.

    Signals: ``saved(object)`` with the path of the file.
    """

    saved = Signal(object)

    def __init__(self, session: Session, parent: QWidget) -> None:
        super().__init__(parent, Qt.WindowType.Window)
        tell_role(self, Role.Window)
        self.setWindowTitle(tr("Rules for a drawing"))
        self._session = session
        self.draft = ProfileDraft()
        self._file: Path | None = None
        self._checked: Checked = check_draft(self.draft)
        self._build()
        self.take(ProfileDraft.start("iso-23277-2"), None)
        self.resize(QSize(1240, 740).boundedTo(self.screen().availableSize()))

    def focusNextPrevChild(self, forward: bool) -> bool:  # noqa: N802, FBT001 - Qt's
        return step_focus(self, forward=forward) or super().focusNextPrevChild(forward)

    # -- laying out ---------------------------------------------------------------------------
    def _build(self) -> None:
        self.fields = PartFields()
        self.fields.edited.connect(self._check)
        self.parts = PartList()
        self.parts.chosen.connect(self._show_part)
        self.parts.changed.connect(self._check)
        self.preview = HousePreview(self._session)
        split = QSplitter()
        for part in (self.parts, self.fields, self.preview):
            split.addWidget(part)
        tell_handles(split)
        split.setSizes([330, 480, 430])
        split.setChildrenCollapsible(False)
        self.notice = Notice()
        self.save_button = key_button(
            tr("Save and use"), "Ctrl+S", self.save, window=self,
            tip=tr("Write the file and choose these rules for this inspection"),
        )  # fmt: skip
        self.close_button = key_button(tr("Close"), "Esc", self.close, window=self)
        foot = QHBoxLayout()
        foot.addWidget(self.notice, 1)
        foot.addWidget(self.close_button)
        foot.addWidget(self.save_button)
        column = QVBoxLayout(self)
        column.addLayout(self._head())
        column.addWidget(scrolled(split), 1)
        column.addLayout(foot)

    def _head(self) -> QHBoxLayout:
        self.start = Choice(tr("Start from"))
        self._fill_start()
        self.start_button = key_button(tr("Start anew from it"), "", self._start_anew)
        self.decision = Choice(tr("Decision rule"))
        for choice in (self.start, self.decision):  # no wider than the window has room for
            choice.setSizeAdjustPolicy(
                Choice.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
            )
        self.decision.addItem(
            tr("The uncertainty counts: near the limit is undecided"), "guarded"
        )
        self.decision.addItem(tr("As the code reads: the measured value alone"), "simple")
        self.decision.activated.connect(lambda _: self._try())
        row = QHBoxLayout()
        row.addWidget(QLabel(tr("Start from")))
        row.addWidget(self.start, 2)
        row.addWidget(self.start_button)
        row.addSpacing(16)
        row.addWidget(QLabel(tr("Decision rule")))
        row.addWidget(self.decision, 2)
        return row

    def _fill_start(self) -> None:
        self.start.clear()
        self.start.addItem(tr("Nothing: blank rules"), "")
        for path in house_files():
            self.start.addItem(tr("{0} (your own)", path.stem), path)
        for name in list_templates():
            self.start.addItem(tr("{0} (to be filled in)", name), name)
        for name in list_profiles():
            self.start.addItem(name, name)

    # -- what is written ----------------------------------------------------------------------
    def take(self, draft: ProfileDraft, file: Path | None) -> None:
        """Write on at this draft; ``file`` is what it was read from and may replace."""
        self.draft, self._file = draft, file
        state = self._session.state
        if state is not None:
            self.decision.setCurrentIndex(self.decision.findData(state.decision_rule))
        self.parts.fill(draft, "")
        self._check()

    def open_file(self, path: Path) -> None:
        """Write on at one of the user's own profiles."""
        try:
            self.take(ProfileDraft.read(path), path)
        except PtmarkError as exc:
            self.notice.say_error(exc)

    def _start_anew(self) -> None:
        chosen = self.start.currentData()
        try:
            if isinstance(chosen, Path):
                self.open_file(chosen)
            else:
                self.take(ProfileDraft.start(chosen) if chosen else ProfileDraft(), None)
        except PtmarkError as exc:
            self.notice.say_error(exc)

    def save(self) -> None:
        """Write the file, whole or not at all, and choose it for this inspection."""
        self._check()
        try:
            path = save_house(self._checked, over=self._file)
        except PtmarkError as exc:
            self.notice.say_error(exc)
            self._show_first_fault()
            return
        except OSError as exc:
            self.notice.say(
                tr("{0}: {1}. Make room or mend its rights.", path_of(exc), exc.strerror)
            )
            return
        self._file = path
        self._session.change(
            tr("choose the criteria"),
            profile=str(path),
            decision_rule=self.decision.currentData(),
        )
        self._session.judge_again()
        self._fill_start()
        self.saved.emit(path)
        self.notice.say(tr("Saved and chosen: {0}. {1}", path.name, self._named()), "done")

    def _named(self) -> str:
        made = self._checked.profile
        return tr("SHA-256 of its content: {0} …", made.checksum[:16]) if made else ""

    # -- following what is typed --------------------------------------------------------------
    def _show_part(self) -> None:
        self.fields.show_part(self.draft, self.parts.at)
        self.fields.show_checked(self._checked)

    def _check(self) -> None:
        self._checked = check_draft(self.draft)
        self.fields.show_checked(self._checked)
        self.parts.label(self._checked)
        faults = len(self._checked.faults)
        if faults:
            first = self._checked.faults[0]
            where = part_title(self.draft, first.place.table)
            more = tr(" and {0} more", faults - 1) if faults > 1 else ""
            self.notice.say(f"{where}, {first.place.key}: {from_core(first.what)}{more}.")
        else:
            self.notice.say(tr("Complete. {0}", self._named()), "done")
        self._try()

    def _try(self) -> None:
        self.preview.show_rules(self._checked.trial, self.decision.currentData())

    def _show_first_fault(self) -> None:
        if self._checked.faults:
            place = self._checked.faults[0].place
            self.parts.choose(place.table)
            if place.key in self.fields.fields:
                field = self.fields.fields[place.key]
                field.begin()
                self.fields.ensureWidgetVisible(field)


def path_of(exc: OSError) -> str:
    """The file that an error of the system is about."""
    return str(exc.filename or tr("The file"))
