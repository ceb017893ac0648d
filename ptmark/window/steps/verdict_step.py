"""Verdict: the criteria, the rule of decision, and every finding as it stands now."""

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QFormLayout,
    QFrame,
    QHBoxLayout,
    QLabel,
    QVBoxLayout,
    QWidget,
)

from ptmark.errors import PtmarkError
from ptmark.units import parse_length
from ptmark.window.bench import Bench
from ptmark.window.bits import CommitEdit, Notice, heading, key_button, plain, quiet
from ptmark.window.cautions import VERDICT_CAUTIONS
from ptmark.window.criteria_choice import CriteriaChoice
from ptmark.window.edges import OneOf
from ptmark.window.findings import Findings
from ptmark.window.glyphs import glyph_pixmap
from ptmark.window.kept_fields import mark_kept
from ptmark.window.palette import tone
from ptmark.window.part_lines import PartLines, asked_in
from ptmark.window.session import Session
from ptmark.window.stale_notice import StaleNotice
from ptmark.window.steps.page import StepPage
from ptmark.window.wording import outside_in_words
from ptmark.window.words import format_length, from_core, tr

if TYPE_CHECKING:
    from ptmark.criteria import Evaluation, Finding
    from ptmark.inspection.state import State

__all__ = ["VerdictStep"]


class VerdictStep(StepPage):
    """The fourth page.

    Signals: ``sketched()`` when another finding is to be shown on the photo; ``sketch`` holds
    its points in mm on the surface.
    """

    sketched = Signal()

    def __init__(self, session: Session, bench: Bench, window: QWidget) -> None:
        super().__init__(session, "Verdict", "verdict")
        self.sketch: tuple[tuple[float, float], ...] = ()
        self._add_choice(window)
        self._add_weld(bench, window)
        self.part_lines = PartLines(session, bench)
        self.column.addWidget(self.part_lines)
        self.stale = StaleNotice(session)
        self.column.addWidget(self.stale)
        self._add_banner()
        self.column.addWidget(heading(tr("Rule by rule")))
        self._found = Findings()
        self.findings = self._found.list
        self._found.chosen.connect(self._select)
        self.column.addWidget(self._found, 1)
        self._cautions = quiet()
        self.column.addWidget(self._cautions)
        self.column.addWidget(quiet(VERDICT_CAUTIONS))
        session.ready.connect(self.refresh)
        session.changed.connect(self.refresh)
        session.judged.connect(self.refresh)

    def _add_choice(self, window: QWidget) -> None:
        self.criteria = CriteriaChoice(self.session, window)
        self.profile = self.criteria.box
        self.column.addWidget(self.criteria)
        self.rules = {
            "guarded": OneOf(tr("The uncertainty counts: near the limit is undecided")),
            "simple": OneOf(tr("As the code reads: the measured value alone")),
        }
        group = QButtonGroup(self)
        for rule, button in self.rules.items():
            group.addButton(button)
            button.setMinimumHeight(26)
            button.clicked.connect(
                lambda _=False, r=rule: self.session.change(
                    tr("choose the decision rule"), decision_rule=r
                )
            )
            self.column.addWidget(button)
        self.sizes = {}
        self.form = form = QFormLayout()
        for name, label, hint in (
            ("weld_length_mm", tr("Length of weld"), "300 mm"),
            ("thickness_mm", tr("Thickness"), "12 mm"),
            ("diameter_mm", tr("Diameter of the part"), "60 mm"),
        ):
            edit = CommitEdit()
            edit.setPlaceholderText(tr("where a rule needs it, such as {0}", hint))
            edit.setAccessibleName(label)
            edit.committed.connect(lambda text, n=name, t=label: self._set_size(n, t, text))
            self.sizes[name] = edit
            form.addRow(label, edit)
        self.column.addLayout(form)
        self.size_notice = Notice()
        self.column.addWidget(self.size_notice)

    def _add_weld(self, bench: Bench, window: QWidget) -> None:
        self.weld_button = key_button(
            tr("Mark the weld"), "W", bench.mark_weld, window=window,
            tip=tr("Two points on the photo: the course of the weld, and its length"),
        )  # fmt: skip
        self.unmark_button = key_button(
            tr("Remove the line"),
            "",
            lambda: self.session.change(tr("unmark the weld"), weld_px=None),
        )
        row = QHBoxLayout()
        row.addWidget(self.weld_button)
        row.addWidget(self.unmark_button)
        self.column.addLayout(row)

    def _show_asked(self, state: "State") -> None:
        """Ask for what only few rules go by where these ask for it, or where it was given."""
        asked = asked_in(self.session)
        self.form.setRowVisible(
            self.sizes["diameter_mm"], state.diameter_mm is not None or asked.diameter
        )
        self.part_lines.show_lines(state, asked)

    def _show_weld(self, state: "State") -> None:
        self.weld_button.setEnabled(self.session.has_photo)
        self.unmark_button.setEnabled(state.weld_px is not None)
        inspection = self.session.inspection
        surface = inspection.surface if inspection else None
        length = None
        if state.weld_px is not None and surface is not None:
            from ptmark.inspection.handing_on import weld_of

            length, _ = weld_of(replace(state, weld_length_mm=None), surface)
        self.sizes["weld_length_mm"].setPlaceholderText(
            tr("{0}, from the marked line", format_length(length, self.session.unit))
            if length
            else tr("where a rule needs it, such as {0}", "300 mm")
        )

    def _add_banner(self) -> None:
        self.banner = QFrame()
        self.banner.setFrameShape(QFrame.Shape.StyledPanel)
        self.banner.setAutoFillBackground(True)
        row = QHBoxLayout(self.banner)
        self._sign = QLabel()
        self._sign.setFixedSize(40, 40)
        self.verdict = QLabel()
        font = self.verdict.font()
        font.setPointSizeF(font.pointSizeF() * 1.6)
        font.setBold(True)
        self.verdict.setFont(font)
        self._why = plain()
        column = QVBoxLayout()
        self._whole = plain()  # of several photos, where the verdict is of one
        column.addWidget(self.verdict)
        column.addWidget(self._why)
        column.addWidget(self._whole)
        row.addWidget(self._sign)
        row.addLayout(column, 1)
        self.column.addWidget(self.banner)

    def _set_size(self, name: str, label: str, text: str) -> None:
        try:
            value = parse_length(text, where=label, default_unit="mm") if text.strip() else None
        except PtmarkError as exc:
            self.size_notice.say_error(exc)
            return
        self.size_notice.say("")
        state = self.session.state
        carried = state.carried - {name} if state else frozenset()
        self.session.change(tr("set the {0}", label.lower()), carried=carried, **{name: value})

    def _select(self, finding: "Finding | None") -> None:
        shown = self._found.current  # the one chosen before, where the list was filled anew
        self.sketch = () if shown is None else shown.sketch
        if finding is not None:
            state = self.session.state
            there = {m.id for m in state.marked} if state else set()
            self.session.select(*(name for name in finding.indications if name in there))
        self.sketched.emit()

    def refresh(self) -> None:
        """Show the verdict as it stands."""
        state = self.session.state
        if state is None:
            return
        self.criteria.show_profile(state.profile)
        self.rules[state.decision_rule].setChecked(True)
        for name, edit in self.sizes.items():
            value = getattr(state, name)
            edit.show_text("" if value is None else format_length(value, self.session.unit))
            mark_kept(self.form, edit, edit.accessibleName(), kept=name in state.carried)
        self._show_weld(state)
        self._show_asked(state)
        self._show(self.session.judgement.evaluation)

    def _show(self, made: "Evaluation | None") -> None:
        self._whole.setText(self._set_words())
        self._whole.setVisible(bool(self._whole.text()))
        if made is None:
            state = self.session.state
            self._sign.setPixmap(glyph_pixmap("", self.palette(), 36))
            self.verdict.setText(tr("No verdict yet"))
            missing = [] if state and state.profile else [tr("the criteria")]
            inspection = self.session.inspection
            if inspection is None or inspection.surface is None:
                missing.append(tr("a scale"))
            trouble = self.session.judgement.trouble
            told = from_core(str(trouble)) if trouble else ""
            self._why.setText(
                tr("It needs {0}.", tr(" and ").join(missing)) if missing else told
            )
            self._found.show_all(None, None)
            self._cautions.setText("")
            return
        self._sign.setPixmap(glyph_pixmap(made.verdict, self.palette(), 36))
        self.verdict.setText(tr(made.verdict).capitalize())
        palette = self.verdict.palette()
        palette.setColor(self.verdict.foregroundRole(), tone(made.verdict, self.palette()))
        self.verdict.setPalette(palette)
        self._why.setText(self._reason(made))
        self.banner.setAccessibleName(
            tr("Verdict: {0}. {1}", tr(made.verdict), self._why.text())
        )
        self._cautions.setText("\n".join(map(from_core, made.cautions)))
        self._found.show_all(made, self.session.judgement.scene)

    def _set_words(self) -> str:
        """The verdict of all photos, where there are several; the page is of one."""
        made, inspection = self.session.judgement, self.session.inspection
        if inspection is None or len(made.by_photo) < 2:
            return ""
        which = tr(
            "This is photo {0} of {1}, judged ",
            inspection.photos.number + 1,
            len(made.by_photo),
        )
        which += tr("on its own surface.")
        if made.verdict is not None:
            return tr("{0} All photos together: {1}.", which, tr(made.verdict))
        missing = [str(n) for n, one in enumerate(made.by_photo, 1) if one is None]
        return tr(
            "{0} All together: no verdict, photo {1} is not judged.", which, ", ".join(missing)
        )

    def _reason(self, made: "Evaluation") -> str:
        marked = self.session.state.marked if self.session.state else ()
        unseen = sum(m.standing == "suggested" for m in marked)
        deciding = [f for f in made.findings if f.verdict == made.verdict]
        said = ""
        if made.verdict == "undecided":
            said = tr("Left open by: {0}.", _by_clause(deciding)) + self._helps(deciding)
        elif made.verdict != "acceptable":
            said = tr("Decided by: {0}.", _by_clause(deciding))
        elif not made.findings:
            said = tr("No relevant indication was found.")
        else:
            said = tr("Nothing is above a limit.")
        if unseen:
            said += tr(" {0} still to look at; the verdict counts them.", unseen)
        return said + outside_in_words(self.session.state)

    def _helps(self, findings: "list[Finding]") -> str:
        """What makes the length surer that is the least sure of those left open by their U."""
        from ptmark.measure import advice

        inspection, measured = self.session.inspection, self.session.judgement.measured
        names = {name for one in findings if one.u > 0 for name in one.indications}
        names &= measured.keys()
        if not names or inspection is None or inspection.surface is None:
            return ""
        name = max(sorted(names), key=lambda one: measured[one].length.expanded)
        says = from_core(advice(measured[name].length.budget, inspection.surface.reference))
        told = tr(" What would narrow the uncertainty of {0} most: {1}.", name, says)
        return told if says else ""


def _by_clause(findings: "list[Finding]") -> str:
    """Clauses of the criteria, or else what is said, with the letters each was applied to."""
    letters: dict[str, dict[str, None]] = {}
    for one in findings:
        told = from_core(one.clause or one.says).removesuffix(".")
        letters.setdefault(told, {}).update(dict.fromkeys(one.indications))
    return "; ".join(
        f"{clause} ({', '.join(names)})" if names else clause
        for clause, names in letters.items()
    )
