"""The reviewer's page: what to do now, both side by side, remarks, the decision."""

from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from ptmark.errors import PtmarkError
from ptmark.window.bits import CommitEdit, Notice, heading, key_button, plain, quiet
from ptmark.window.cautions import VERDICT_CAUTIONS
from ptmark.window.edges import ListOf
from ptmark.window.review.case import ReviewCase
from ptmark.window.review.table import ReviewTable
from ptmark.window.review.work import Decision
from ptmark.window.session import Session
from ptmark.window.signer import SignerFields
from ptmark.window.steps.page import StepPage
from ptmark.window.words import from_core, tr
from ptmark.window.wrapped import wrap

__all__ = ["ReviewPage"]

_BLIND = tr(
    "Measure as if nobody had before you: set the scale with your own picks, trace or take "
    "the outlines, and leave out what is none. The first numbers, outlines and verdict are "
    "hidden until you are done; after that, your own count as they are now."
)


class ReviewPage(StepPage):
    """Stands in the place of the record's page.

    Signals: ``pin_asked()``; ``shown(int, str)`` a photo, numbered from 0, or -1 for the one at
    hand, and the name of a mark to bring into sight.
    """

    pin_asked = Signal()
    shown = Signal(int, str)

    def __init__(self, session: Session, case: ReviewCase, window: QWidget) -> None:
        super().__init__(session, "Review", "review")
        self._case = case
        self._at: tuple[float, float] | None = None
        self.says = plain()
        self.column.addWidget(self.says)
        self._add_both()
        self._add_remarks(window)
        self._add_decision(window)
        self.said = Notice()
        self.column.addWidget(self.said)
        self.column.addStretch(1)
        self.column.addWidget(quiet(VERDICT_CAUTIONS))
        case.changed.connect(self.refresh)
        case.failed.connect(self.say_error)
        case.decided.connect(lambda text: self.said.say(text, "done"))
        session.judged.connect(self.refresh)

    def _add_both(self) -> None:
        self.both = QWidget()
        column = QVBoxLayout(self.both)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(heading(tr("Both side by side")))
        self.table = ReviewTable()
        self.table.chosen.connect(self.shown.emit)
        column.addWidget(self.table)
        self.differ = Notice()
        column.addWidget(self.differ)
        self.verdicts = plain()
        column.addWidget(self.verdicts)
        column.addWidget(
            quiet(
                tr(
                    "In the photo: your outlines as you made them; the first's "
                    "dash-dotted, and named “first” where the two differ. En above 1: "
                    "they differ by more than their uncertainties together (ISO/IEC 17043)."
                )
            )
        )
        self.column.addWidget(self.both)

    def _add_remarks(self, window: QWidget) -> None:
        self.column.addWidget(heading(tr("Remarks")))
        self.list = ListOf()
        self.list.setAccessibleName(tr("Remarks; Delete takes one back"))
        self.list.setFixedHeight(84)
        wrap(self.list)
        self.list.currentRowChanged.connect(
            lambda row: self.shown.emit(-1, tr("remark {0}", row + 1))
        )
        self.column.addWidget(self.list)
        self.text = CommitEdit()
        self.text.setAccessibleName(tr("Remark"))
        self.text.setPlaceholderText(tr("What the examiner should do or look at"))
        self.text.returnPressed.connect(self.add_remark)
        self.column.addWidget(self.text)
        self.missing = Notice()
        self.column.addWidget(self.missing)
        row = QHBoxLayout()
        self.pin_button = key_button(
            tr("Place it …"),
            "Ctrl+M",
            self.pin_asked.emit,
            window=window,
            tip=tr("Click its place in the photo"),
        )
        self.add_button = key_button(tr("Add"), "Return", self.add_remark)
        self.unsay_button = key_button(tr("Take back"), "", self._unsay)
        for button in (self.pin_button, self.add_button, self.unsay_button):
            row.addWidget(button)
        self.column.addLayout(row)
        self.place = quiet()
        self.column.addWidget(self.place)

    def _add_decision(self, window: QWidget) -> None:
        self.column.addWidget(heading(tr("Decision")))
        self.who = SignerFields("reviewer")
        self.column.addWidget(self.who)
        self.unnamed = Notice()
        self.column.addWidget(self.unnamed)
        self.outcomes = {
            outcome: key_button(text, key, partial(self.enter, outcome), tip=tip, window=window)
            for outcome, text, key, tip in (
                ("signed", tr("Sign it"), "Alt+S", tr("Once measured, with your name and key")),
                ("returned", tr("Return it"), "Alt+R", tr("To the examiner, with the remarks")),
                (
                    "new photo asked",
                    tr("Ask for a new photo"),
                    "Alt+N",
                    tr("The reason is a remark"),
                ),
            )
        }
        for button in self.outcomes.values():
            self.column.addWidget(button)

    # -- deeds --------------------------------------------------------------------------------
    def begin(self) -> None:
        """A new record: nothing of the one before is left on the page."""
        for notice in (self.said, self.notice, self.unnamed):
            notice.say("")
        self.text.clear()
        self.set_place(None)
        self.refresh()

    def set_place(self, at: tuple[float, float] | None) -> None:
        """The place that the next remark is about, photo px."""
        self._at = at
        self.place.setText(
            "" if at is None else tr("The remark is about {0:.0f}, {1:.0f} px.", at[0], at[1])
        )

    def add_remark(self) -> None:
        """Add what is typed, at the place that was clicked."""
        if self.text.text().strip():
            self._case.remark(self.text.text(), self._at)
            self.text.clear()
            self.set_place(None)

    def _unsay(self) -> None:
        if self.list.currentRow() >= 0:
            self._case.unsay(self.list.currentRow())

    def enter(self, outcome: str) -> None:
        """Enter the review with this outcome; what is missing is told here.

        From another page its key only leads here: nothing is decided unseen.
        """
        if self._case.phase not in {"blind", "beside"}:
            return
        seen = self.session.step == "Record"
        if seen:
            self.add_remark()
        else:
            self.session.go("Record")
        for notice in (self.notice, self.missing, self.unnamed):
            notice.say("")
        try:
            name, qualification = self.who.who()
        except PtmarkError as exc:
            self.unnamed.say_error(exc)  # beside the field, which the page's top is far from
            self.who.name.setFocus()
            return
        remarks = self._case.remarks
        if outcome != "signed" and not remarks:
            self.missing.say(tr("Say here what is to be done, then choose that again."))
            self.ensureWidgetVisible(self.missing)
            self.text.setFocus()
            return
        if seen:
            decision = Decision(
                outcome=outcome, name=name, qualification=qualification, remarks=remarks
            )
            self._case.decide(decision)

    def say_error(self, exc: Exception) -> None:
        """Show what was refused, with its reason."""
        self.notice.say_error(exc)

    # -- showing ------------------------------------------------------------------------------
    def refresh(self) -> None:
        """Show what this phase has to show."""
        case, phase = self._case, self._case.phase
        if case.opened is None or phase not in {"blind", "beside", "decided"}:
            return
        self.says.setText(_BLIND if phase == "blind" else self._own_hand())
        self.both.setVisible(bool(case.compared))
        if case.compared:
            self._show_both()
        self._show_remarks()
        open_ = phase in {"blind", "beside"}
        for widget in (self.text, self.pin_button, self.add_button, self.unsay_button):
            widget.setEnabled(open_)
        for outcome, button in self.outcomes.items():
            button.setEnabled(open_ and (bool(case.compared) or outcome != "signed"))

    def _own_hand(self) -> str:
        state = self.session.state
        marked = [one for one in state.marked if one.standing != "dropped"] if state else []
        if unseen := sum(one.standing == "suggested" for one in marked):
            return tr(
                "Of your {0} outlines you took {1}: the others are the program beside itself, "
                "which checks its steadiness, not an eye. Look at them before you sign.",
                str(len(marked)),
                str(len(marked) - unseen),
            )
        sources = {one.edge.source for one in marked}
        if sources and sources <= {"suggested"}:
            return tr(
                "All your outlines were found by the program: that checks its steadiness, not "
                "an eye. Look at the part or its photo as well."
            )
        return tr("Measured. Changing your outlines now changes nothing in this comparison.")

    def _show_both(self) -> None:
        compared = self._case.compared
        self.table.show_photos(compared, self.session.unit)
        said = [from_core(text) for one in compared for text in one.disagreements]
        self.differ.say(
            "\n".join(said) if said else tr("The two agree within their uncertainties."),
            "look" if said else "done",
        )
        first, own = zip(*(one.verdicts for one in compared), strict=True)
        self.verdicts.setText(
            tr(
                "Verdict of the first: {0}; your own: {1}.",
                ", ".join(tr(v or "none") for v in first),
                ", ".join(tr(v or "none") for v in own),
            )
        )

    def _show_remarks(self) -> None:
        texts = [
            f"{number}  {one.text}" + ("" if one.at_px is None else tr("  (in the photo)"))
            for number, one in enumerate(self._case.remarks, start=1)
        ]
        if texts != [self.list.item(row).text() for row in range(self.list.count())]:
            self.list.clear()
            self.list.addItems(texts)
