"""Scale: what fixes the millimetres, how far it can be trusted, and picking it by hand."""

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QButtonGroup, QFormLayout, QRadioButton, QWidget

from ptmark.errors import PtmarkError
from ptmark.units import parse_length
from ptmark.window.bench import Bench
from ptmark.window.bits import CommitEdit, Notice, heading, key_button, plain, quiet
from ptmark.window.camera_form import CameraForm
from ptmark.window.card_check import keep_check
from ptmark.window.card_out import CardOut
from ptmark.window.edges import OneOf
from ptmark.window.looking import Looking
from ptmark.window.references import (
    KINDS,
    SAYS,
    build_reference,
    offset_of,
    paired,
    parted,
    raised,
    take_apart,
    takes_another,
)
from ptmark.window.session import Session
from ptmark.window.steps.page import StepPage
from ptmark.window.steps.scale_words import scale_in_words
from ptmark.window.words import format_length, from_core, number, sentence, tr

if TYPE_CHECKING:
    from ptmark.scale import Reference

__all__ = ["ScaleStep"]

Points = list[tuple[float, float]]
_ANOTHER, _ONE_ONLY = tr("Add another reference"), tr("Use one reference only")


class ScaleStep(StepPage):
    """The second page."""

    def __init__(
        self, session: Session, bench: Bench, looking: Looking, window: QWidget
    ) -> None:
        super().__init__(session, "Scale", "scale")
        self._bench, self._looking = bench, looking
        self._points: Points | None = None
        self._seen: object = None  # the reference that the form shows
        self._asked: object = None  # the one that was asked for here
        self._of = ""  # SHA-256 of the photo that the points were picked in
        self._first: Reference | None = None  # where a second one is shown
        self._now = plain()
        self._cautions = Notice()
        for widget in (self._now, self._cautions, heading(tr("Reference in the photo"))):
            self.column.addWidget(widget)
        self._group = QButtonGroup(self)
        self.kinds: dict[str, QRadioButton] = {}
        for kind, (label, _) in KINDS.items():
            self.kinds[kind] = OneOf(label)
            self.kinds[kind].setMinimumHeight(26)
            self._group.addButton(self.kinds[kind])
            self.kinds[kind].clicked.connect(lambda _=False, k=kind: self.choose(k))
            self.column.addWidget(self.kinds[kind])
        self._says = quiet()
        self.column.addWidget(self._says)
        self._add_forms()
        self._add_offset()
        self.pick_button = key_button(tr("Pick the points"), "P", self._pick, window=self)
        self.use_button = key_button(tr("Use this scale"), "Ctrl+Return", self.use, window=self)
        self.another_button = key_button(_ANOTHER, "", self._another)
        self.clear_button = key_button(tr("Remove the scale"), "", self._clear)
        buttons = (self.pick_button, self.use_button, self.another_button, self.clear_button)
        for button in buttons:
            self.column.addWidget(button)
        self._add_relief()
        self.camera = CameraForm(session)
        self.column.addWidget(self.camera)
        self.column.addStretch(1)
        bench.picked.connect(self._on_picked)
        looking.card_looked_for.connect(self._on_card)
        session.changed.connect(self.refresh)
        session.judged.connect(self.refresh)
        self.kinds["card"].setChecked(True)
        self.refresh()

    def _add_forms(self) -> None:
        self.lengths: dict[str, list[CommitEdit]] = {}
        self._forms: dict[str, QWidget] = {}
        for kind, (_, labels) in KINDS.items():
            self._forms[kind] = self._form(kind, labels)
            self.column.addWidget(self._forms[kind])
        self.card_out = CardOut(self.session.workers)
        self.column.addWidget(self.card_out)

    def _form(self, kind: str, labels: list[str]) -> QWidget:
        form_widget = QWidget()
        form = QFormLayout(form_widget)
        form.setContentsMargins(0, 0, 0, 0)
        self.lengths[kind] = []
        for label in labels:
            edit = CommitEdit()
            edit.setPlaceholderText(
                tr("such as 150 mm or 6 in")
                if kind != "card"
                else tr("optional, such as 80.05 mm")
            )
            edit.setAccessibleName(label)
            edit.returnPressed.connect(self.use)
            edit.textChanged.connect(lambda _: self._enable())
            self.lengths[kind].append(edit)
            form.addRow(label, edit)
        return form_widget

    def _add_offset(self) -> None:
        self.offset = CommitEdit()
        self.offset.setPlaceholderText(tr("lies on the surface; else such as 1.5 mm above it"))
        self.offset.setAccessibleName(tr("Height of the reference above the surface"))
        self.offset.returnPressed.connect(self.use)
        self._raised = QWidget()
        form = QFormLayout(self._raised)
        form.setContentsMargins(0, 0, 0, 0)
        form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapAllRows)
        form.addRow(tr("Height of the reference above the surface"), self.offset)
        self.column.addWidget(self._raised)

    def _another(self) -> None:
        """Leave the reference as the first of two, or go back to it alone."""
        now = self.session.state.reference if self.session.state else None
        if self._first is not None:
            first, self._first = self._first, None
            if now is not None and parted(now)[0] is not None:
                self._looking.set_reference(first)
        elif takes_another(now):
            self._first, self._points = now, None
            self.offset.setText("")
            self.notice.say(tr("Choose the second reference: both are compared, then used."))
            self.notice.bring()
        self.refresh()

    def _add_relief(self) -> None:
        self.column.addWidget(heading(tr("Height of the indications above the surface")))
        self.relief = CommitEdit()
        self.relief.setPlaceholderText(tr("not given: 0 to 2 mm is assumed"))
        self.relief.setAccessibleName(tr("Height of the indications above the surface"))
        self.relief.committed.connect(self._on_relief)
        self.column.addWidget(self.relief)
        self.column.addWidget(
            quiet(
                tr("A weld crown lies nearer to the camera than the card and reads too long.")
            )
        )
        self.relief_notice = Notice()
        self.column.addWidget(self.relief_notice)

    @property
    def kind(self) -> str:
        """The kind of reference chosen on the page."""
        return next(k for k, button in self.kinds.items() if button.isChecked())

    def choose(self, kind: str) -> None:
        """Choose a kind of reference; all but the card go straight to picking."""
        self.kinds[kind].setChecked(True)
        self._points = None
        self.refresh()
        if kind == "card":
            self._bench.stop()
        else:
            self._pick()

    def _pick(self) -> None:
        if self.kind != "card":
            self._bench.pick(self.kind, self._points)

    def _on_picked(self, kind: str, points: Points | None) -> None:
        if kind == self.kind:
            first, self._points = self._points is None, points
            self._enable()
            edit = self.lengths[kind][0]
            if points is not None and (first or not edit.text().strip()):
                edit.setFocus()  # also where a length was typed before: it is of that reference
                edit.selectAll()

    def use(self) -> None:
        """Take the reference as picked and typed; what is wrong is said in place."""
        if not self.use_button.isEnabled():
            return
        try:
            texts = [edit.text() for edit in self.lengths[self.kind]]
            alone = build_reference(self.kind, self._points, texts)
            reference = paired(self._first, raised(alone, self.offset.text()))
        except PtmarkError as exc:
            self.notice.say_error(exc)
            self.notice.bring()
            return
        self._bench.stop()
        self._asked = reference
        self._looking.set_reference(reference)

    def _clear(self) -> None:
        self.session.change(tr("remove the scale"), reference=None)

    def _on_card(self, found: bool) -> None:  # noqa: FBT001 - a plain answer
        if not found:
            self.notice.say(
                tr(
                    "No scale card was found in this photo. Pick a reference "
                    "below: a rectangle, two lines or one line of known length "
                    "in the plane of the surface."
                )
            )

    def _on_relief(self, text: str) -> None:
        try:
            relief = _relief(text)
        except PtmarkError as exc:
            self.relief_notice.say_error(exc)
            return
        self.relief_notice.say("")
        self.session.change(tr("set the height"), relief_mm=relief)

    def _enable(self) -> None:
        kind = self.kind
        filled = all(edit.text().strip() for edit in self.lengths[kind])
        ready = kind == "card" or (self._points is not None and filled)
        self.use_button.setEnabled(self.session.has_photo and ready)

    def _follow(self) -> None:
        """Show a reference that was taken or brought back, so that it can be picked on."""
        state = self.session.state
        reference = state.reference if state else None
        photo = state.info.sha256 if state and state.info else ""
        if photo != self._of:  # points picked in one photo tell nothing of another
            self._of, self._seen, self._points = photo, None, None
        if reference is self._seen:
            return
        from ptmark.scale import CardReference

        if reference is self._asked and isinstance(reference, CardReference):
            keep_check(reference.check_mm)
        self._seen, self._first = reference, None
        if reference is not None:
            self._first, reference = parted(reference)
            kind, self._points, sizes = take_apart(reference)
            self.kinds[kind].setChecked(True)
            offset = offset_of(reference)
            self.offset.setText(f"{number(offset, 'g')} mm" if offset else "")
            for edit, size in zip(self.lengths[kind], sizes, strict=True):
                edit.setText("" if size is None else f"{number(size, 'g')} mm")
            if any(edit.hasFocus() for edit in self.lengths[kind]):
                self._bench.rest()  # in a line of text, keys would move among its words

    def refresh(self) -> None:
        """Show the scale that holds and the form of the chosen kind."""
        inspection = self.session.inspection
        self._follow()
        for kind, form in self._forms.items():
            form.setVisible(kind == self.kind)
        self._says.setText(SAYS[self.kind])
        self.card_out.setVisible("card" in self.kind)
        self.pick_button.setVisible(self.kind != "card")
        self.pick_button.setEnabled(self.session.has_photo)
        surface = inspection.surface if inspection else None
        self.clear_button.setEnabled(surface is not None)
        self._raised.setVisible(not self.kind.startswith("pipe"))
        self.another_button.setText(_ANOTHER if self._first is None else _ONE_ONLY)
        now = inspection.state.reference if inspection else None
        more = surface is not None and takes_another(now)
        self.another_button.setEnabled(self._first is not None or more)
        self._enable()
        if inspection is None or surface is None:
            refused = inspection.surface_error if inspection else None
            self._now.setText(tr("There is no scale yet: nothing is measured without one."))
            if refused is not None:
                self.notice.say_error(refused)
            self._cautions.say("")
            return
        reference = inspection.state.reference
        self._now.setText(scale_in_words(surface, reference, self.session.unit))
        from ptmark.scale import far_caution

        marked = {one.id: one.outline_px for one in inspection.counted}
        cautions = (*surface.cautions, far_caution(surface, marked))
        told = (from_core(one) for one in cautions if one)
        self._cautions.say("\n".join(sentence(one) for one in told))
        relief = inspection.state.relief_mm
        self.relief.show_text(
            "" if relief is None else format_length(relief, self.session.unit)
        )


def _relief(text: str) -> float | None:
    if not text.strip():
        return None
    if text.strip().rstrip("m").strip() in {"0", "0.0"}:
        return 0.0
    return parse_length(text, where=tr("Height"), default_unit="mm")
