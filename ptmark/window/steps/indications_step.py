"""Indications: look, take or drop, trace by hand, edit, and say what each one is."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QFormLayout,
    QGridLayout,
    QLineEdit,
    QWidget,
)

from ptmark.window.bench import Bench
from ptmark.window.bits import Choice, CommitEdit, heading, key_button, plain
from ptmark.window.indications.budget_bars import BudgetView
from ptmark.window.indications.drop_as import DropAs
from ptmark.window.indications.hands import Hands
from ptmark.window.indications.kinds import KINDS, kind_kept, kind_shown
from ptmark.window.indications.left_out import LeftOutList
from ptmark.window.indications.list_filter import ListFilter
from ptmark.window.indications.penetrant import PenetrantKind
from ptmark.window.indications.reshaper import Reshaper
from ptmark.window.indications.table import IndicationTable
from ptmark.window.looking import Looking
from ptmark.window.photos.same_as import SameAs
from ptmark.window.session import Session
from ptmark.window.steps.page import StepPage
from ptmark.window.wording import in_words, outside_in_words
from ptmark.window.words import tr

__all__ = ["IndicationsStep"]

_RELEVANCE = (tr("relevant as the criteria have it"), "non-relevant", "false")


class IndicationsStep(StepPage):
    """The third page."""

    def __init__(
        self, session: Session, bench: Bench, looking: Looking, hands: Hands, window: QWidget
    ) -> None:
        super().__init__(session, "Indications", "indications")
        self._hands = hands
        self._says = plain()
        self.column.addWidget(self._says)
        self.table = IndicationTable(session, hands)
        self.column.addWidget(ListFilter(session, self.table))
        self._add_buttons(bench, looking, window)
        self._add_reshaping(bench, window)
        # above what differs in height, so that it stays under the pointer
        self.left_out = LeftOutList(session, hands)
        self.left_out.shown_changed.connect(session.changed)
        self.column.addWidget(self.left_out)
        self._add_details(window)
        self.column.addStretch(1)
        session.changed.connect(self.refresh)
        session.judged.connect(self.refresh)
        session.selection_changed.connect(self.refresh)
        session.workers.changed.connect(self._say)
        self.refresh()

    def _add_buttons(self, bench: Bench, looking: Looking, window: QWidget) -> None:
        hands = self._hands
        self.take_button = key_button(
            tr("Take"), "Return", hands.take, tip=tr("Take the suggestion")
        )
        self.drop_button = key_button(
            tr("Drop"), "Del", hands.drop,
            tip=tr("Drop it from the verdict and go on; what was found stays told, what was "
                   "drawn by hand is deleted"),
        )  # fmt: skip
        self.take_all_button = key_button(
            tr("Take all"),
            "Shift+Return",
            hands.take_all,
            tip=tr("Take every suggestion not looked at"),
        )
        self.edit_button = key_button(tr("Edit points"), "E", bench.edit, window=window)
        self.look_button = key_button(
            tr("Look again"), "L", looking.suggest, window=window,
            tip=tr("Look for indications again; what you took or dropped stays"),
        )  # fmt: skip
        grid = QGridLayout()
        grid.setSpacing(6)
        rows = (
            (self.take_button, self.drop_button),
            (self.take_all_button, self.look_button),
        )
        for row, pair in enumerate(rows):
            for column, button in enumerate(pair):
                grid.addWidget(button, row, column)
        self.column.addLayout(grid)
        self.column.addWidget(self.edit_button)
        self.penetrant = PenetrantKind(self.session, looking)
        self.column.addWidget(self.penetrant)
        self.drop_as = DropAs(hands)
        self.column.addWidget(self.drop_as)
        self.column.addWidget(heading(tr("Trace by hand")))
        traces = QGridLayout()
        traces.setSpacing(6)
        self.trace_buttons = {}
        for column, (mode, text, key, tip) in enumerate(
            (
                ("edge", tr("Along edge"), "T", tr("Trace along the edge of the dye")),
                ("free", tr("Free"), "H", tr("Trace free hand, or by points")),
                ("points", tr("Points"), "O", tr("Trace point by point")),
            )
        ):
            trace = partial(bench.trace, mode)
            button = key_button(text, key, trace, tip=tip, window=window)
            self.trace_buttons[mode] = button
            traces.addWidget(button, 0, column)
        self.again_button = key_button(
            tr("Trace again"), "Shift+T", bench.trace_again, window=window,
            tip=tr("The same one once more, to tell how far your hand strays"),
        )  # fmt: skip
        traces.addWidget(self.again_button, 1, 0, 1, 3)
        self.column.addLayout(traces)

    def _add_reshaping(self, bench: Bench, window: QWidget) -> None:
        shaper = Reshaper(self.session, bench)
        row = QGridLayout()
        row.setSpacing(6)
        self.shape_buttons = {}
        for column, (name, text, key, call, tip) in enumerate(
            (
                (
                    "split",
                    tr("Split"),
                    "S",
                    shaper.split,
                    tr("Split it along a line across it"),
                ),
                ("join", tr("Join"), "J", shaper.join, tr("Make one outline of all selected")),
                ("smooth", tr("Smooth"), "M", shaper.smooth, tr("Take the hand's wobble out")),
                ("cut", tr("Cut off"), "X", shaper.cut, tr("Cut off what a loop encloses")),
            )
        ):
            button = key_button(text, key, call, tip=tip, window=window)
            self.shape_buttons[name] = button
            row.addWidget(button, 0, column)
        self.column.addWidget(heading(tr("Reshape what is selected")))
        self.column.addLayout(row)

    def _add_details(self, window: QWidget) -> None:
        self._title = heading("")
        self._numbers = plain()
        self._details = QWidget()
        form = QFormLayout(self._details)
        form.setContentsMargins(0, 0, 0, 0)
        self.kind = Choice(tr("Kind, as ISO 6520-1 names it"))
        self.kind.setEditable(True)
        self.kind.addItems(["", *(kind_shown(kind) for kind in KINDS)])
        self.kind.setItemData(0, tr("no kind named"), Qt.ItemDataRole.AccessibleTextRole)
        self.kind.activated.connect(lambda _: self._name_kind())
        self._kind_edit = QLineEdit()
        self._kind_edit.setAccessibleName(tr("Kind, as ISO 6520-1 names it"))
        self.kind.setLineEdit(self._kind_edit)
        self._kind_edit.editingFinished.connect(self._name_kind)
        self.relevance = Choice(tr("Relevance"))
        self.relevance.addItems(_RELEVANCE)
        self.relevance.activated.connect(self._set_relevance)
        self.reason, self.note = CommitEdit(), CommitEdit()
        self.reason.setPlaceholderText(tr("needed: until there is one, it is judged"))
        self.reason.setAccessibleName(tr("Reason why it is not relevant"))
        self.reason.committed.connect(
            lambda text: self._set(tr("give the reason for"), reason=text)
        )
        self.note.setAccessibleName(tr("Note"))
        self.note.committed.connect(lambda text: self._set(tr("note on"), note=text))
        for label, widget in (
            (tr("Kind"), self.kind),
            (tr("Relevance"), self.relevance),
            (tr("Reason"), self.reason),
            (tr("Note"), self.note),
        ):
            form.addRow(label, widget)
        self.budget = BudgetView(self.session)
        self.same_as = SameAs(self.session, window)
        for part in (self._title, self._numbers, self.budget, self._details, self.same_as):
            self.column.addWidget(part)

    def left_out_shown(self) -> Sequence[int]:
        """Numbers of the left-out blobs that the photo is to show."""
        return self.left_out.shown()

    def _set(self, what: str, **changes: str) -> None:
        one, inspection = self.session.one_selected, self.session.inspection
        if one is None or inspection is None:
            return
        if any(getattr(one, name) != value for name, value in changes.items()):
            inspection.edit(one.id, what, **changes)

    def _set_relevance(self, index: int) -> None:
        self._set(tr("set aside"), relevance="" if index == 0 else _RELEVANCE[index])

    def _say(self) -> None:
        state = self.session.state
        marked = state.marked if state else ()
        unseen = sum(m.standing == "suggested" for m in marked)
        if not self.session.has_photo:
            text = tr("Open a photo first; suggestions come by themselves.")
        elif self.session.workers.busy("look"):
            text = tr("Looking for indications …")
        elif not marked and not self.session.looked:
            text = tr("They were not looked for. Look again, or trace what you see.")
        elif not marked:
            text = tr("Nothing was found. Look yourself, and trace what you see.")
        elif unseen:
            text = tr(
                "{0} of {1} to look at: take or drop each. Arrow keys go on.",
                unseen,
                len(marked),
            )
        else:
            text = tr("All {0} looked at.", len(marked))
        self._says.setText(text + outside_in_words(state))

    def refresh(self) -> None:
        """Show what is selected and what can be done with it."""
        self._say()
        session, one = self.session, self.session.one_selected
        chosen = bool(session.selected)
        for widget in (self.take_button, self.drop_button, self.drop_as):
            widget.setEnabled(chosen)
        marked = session.state.marked if session.state else ()
        self.take_all_button.setEnabled(any(m.standing == "suggested" for m in marked))
        self.edit_button.setEnabled(one is not None)
        self.again_button.setEnabled(one is not None and one.edge.by_person)
        self.look_button.setEnabled(session.has_photo)
        for button in self.trace_buttons.values():
            button.setEnabled(session.has_photo)
        for name, button in self.shape_buttons.items():
            button.setEnabled(len(session.selected) > 1 if name == "join" else one is not None)
        self._title.setVisible(one is not None)
        self._numbers.setVisible(one is not None)
        self._details.setVisible(one is not None)
        made = session.judgement.measured.get(one.id) if one is not None else None
        self.budget.show_measurement(made)
        if one is not None:
            self._title.setText(tr("Indication {0}", one.id))
            self._numbers.setText(self._in_words(one.id, one.confidence))
            if not self._kind_edit.hasFocus() or self.kind.currentText() == "":
                self.kind.setCurrentText(kind_shown(one.kind))
            row = _RELEVANCE.index(one.relevance) if one.relevance in _RELEVANCE else 0
            self.relevance.setCurrentIndex(row)
            self.reason.setEnabled(bool(one.relevance))
            self.reason.show_text(one.reason)
            self.note.show_text(one.note)
        self.left_out.refresh()

    def _name_kind(self) -> None:
        self._set(tr("name"), kind=kind_kept(self.kind.currentText()))

    def _drawn(self, letter: str) -> str:
        """That a hand drew it, and what is known of that hand."""
        edge = self.session.inspection.marked(letter).edge if self.session.inspection else None
        if edge is None or not edge.traces_px:
            return tr("Drawn by hand.")
        if edge.operator_px is None:
            return tr("Drawn by hand, traced {0} times: too few yet.", len(edge.traces_px))
        return tr(
            "Drawn by hand, traced {0} times: its ends stray by {1:.1f} px.",
            len(edge.traces_px),
            edge.operator_px,
        )

    def _in_words(self, letter: str, confidence: float | None) -> str:
        made = self.session.judgement.measured.get(letter)
        how = (
            self._drawn(letter)
            if confidence is None
            else tr("Suggested, confidence {0:.2f}.", confidence)
        )
        if made is None:
            return how
        return f"{how} {in_words(made, self.session.unit)}"
