"""The window's hold on one inspection: what is selected, which step is shown, what changed.

Everything a person decides goes through the `Inspection`; this object adds only what lives
as long as the window. `ptmark.inspection` loads in a worker once the window is painted.
"""

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject, Signal

from ptmark.errors import PtmarkError
from ptmark.window.autosave import Autosave
from ptmark.window.engine import load_engine
from ptmark.window.judging import Judgement, judge
from ptmark.window.stale import StaleWatch
from ptmark.window.view.levels import PhotoLevels
from ptmark.window.words import tr
from ptmark.window.workers import Token, Workers

if TYPE_CHECKING:
    from ptmark.inspection import Inspection, Marked, State
    from ptmark.photo import Photo, PhotoInfo

__all__ = ["STEPS", "Session"]

STEPS = ("Photo", "Scale", "Indications", "Verdict", "Record")


class Session(QObject):
    """One inspection in one window.

    Signals: ``changed()`` after every change of the state; ``judged()`` once measurements and
    verdict follow; ``photo_shown(object)`` with the `PhotoLevels`; ``selection_changed()``;
    ``step_changed(str)``; ``ready()`` when the engine is loaded; ``trouble(str, object)`` with
    the place ("photo", "scale", "indications", "verdict", "record") and the error, None to
    take it away again.
    """

    changed = Signal()
    judged = Signal()
    ready = Signal()
    photo_shown = Signal(object)
    selection_changed = Signal()
    step_changed = Signal(str)
    trouble = Signal(str, object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.workers = Workers(self)
        self.autosave = Autosave(self.workers, self)
        self.autosave.about.append(lambda: {"step": self.step})
        self.inspection: Inspection | None = None
        self.judgement = Judgement()
        self.levels: PhotoLevels | None = None
        self.selected: tuple[str, ...] = ()
        self.step = STEPS[0]
        self.unit = "mm"
        self.touched = False  # whether a person has done anything worth keeping
        self.reviewing = False  # whether this is a reviewer's own measurement of a record
        self.unseen: set[str] = set()  # photos, by SHA-256, where looking came to no end
        self.stale = StaleWatch(self, lambda: (self.inspection, self.judgement.evaluation))
        self.judged.connect(self.stale.look)
        self.limits_of: Callable[[str], Mapping[str, Any]] | None = None  # by procedure
        self.listed: Callable[[], list[str]] | None = None  # letters as the list shows them
        self.turner: Callable[[PhotoInfo, Callable[[Photo | None], None]], None] | None = None
        self._by_itself = False
        self._tracer: tuple[object, Any] | None = None
        self._waiting: list[Callable[[], None]] = []
        self.photo_shown.connect(self._forget_tracer)
        self.autosave.failed.connect(lambda exc: self.say_trouble("record", exc))

    # -- the engine ---------------------------------------------------------------------------
    def load(self) -> None:
        """Load the engine in a worker; it takes longer than the window."""

        def work(_token: Token) -> "Inspection":
            return load_engine()()

        self.workers.start(
            "", work, self.take_over, failed=lambda e: self.say_trouble("photo", e)
        )

    def take_over(self, inspection: "Inspection") -> None:
        """Work on this inspection from now on."""
        self.inspection = inspection
        inspection.listen(self._on_change)
        self.ready.emit()
        waiting, self._waiting = self._waiting, []
        for call in waiting:
            call()

    def when_ready(self, call: Callable[[], None]) -> None:
        """Do something as soon as the engine is loaded."""
        if self.inspection is None:
            self._waiting.append(call)
        else:
            call()

    @property
    def state(self) -> "State | None":
        return self.inspection.state if self.inspection else None

    @property
    def has_photo(self) -> bool:
        return self.inspection is not None and self.inspection.photo is not None

    @property
    def looked(self) -> bool:
        """Whether the photo at hand was looked over: none found means that none was seen."""
        inspection = self.inspection
        if inspection is None or inspection.photo is None:
            return False
        sha256 = inspection.photo.info.sha256
        seen = inspection.workings.searched.whole(sha256, inspection.state)
        return seen and sha256 not in self.unseen

    def tracer(self) -> Any:  # noqa: ANN401 - a DyeTracer, named once the engine is loaded
        """The edge tracer of the open photo, made on first use."""
        from ptmark.dye import DyeTracer, in_colour_contrast

        if self.inspection is None or self.inspection.photo is None:
            raise PtmarkError(tr("there is no photo yet"), mend=tr("open a photo first"))
        # a fluorescent photo's likeness, which looking for indications has made already
        picture = in_colour_contrast(self.inspection.photo, self.inspection.state.mode)
        if self._tracer is None or self._tracer[0] is not picture:
            self._tracer = (picture, DyeTracer(picture))
        return self._tracer[1]

    def _forget_tracer(self) -> None:
        """It holds the photo before: a whole picture."""
        self._tracer = None

    # -- change and what follows --------------------------------------------------------------
    def attempt(self, place: str, call: Callable[[], Any]) -> bool:
        """Carry out a change; what is refused is told at its place."""
        try:
            call()
        except PtmarkError as exc:
            self.say_trouble(place, exc)
            return False
        self.trouble.emit(place, None)
        return True

    def by_itself(self, call: Callable[[], Any]) -> None:
        """Make a change that nobody asked for; on its own it is not worth a draft."""
        before, self._by_itself = self._by_itself, True
        try:
            call()
        finally:
            self._by_itself = before

    def change(self, what: str, **changes: Any) -> None:  # noqa: ANN401 - members of State
        """One undoable change, left out where nothing would change."""
        if self.inspection is None:
            return
        state = self.inspection.state
        procedure = changes.get("fields", state.fields).get("procedure", "")
        if procedure != state.fields.get("procedure", "") and self.limits_of is not None:
            from ptmark.inspection.carrying import limits_follow

            changes.setdefault(
                "process", limits_follow(state.process, self.limits_of(procedure))
            )
        if any(getattr(state, name) != value for name, value in changes.items()):
            self.inspection.change(what, **changes)

    def fill_in(self, what: str, new: Mapping[str, str]) -> None:
        """Fill in fields of the record, by key; what is filled in is carried over no more."""
        if self.inspection is None:
            return
        from ptmark.inspection.carrying import filled

        state = self.inspection.state
        self.change(what, **filled(state.fields, state.carried, new))

    def say_trouble(self, place: str, exc: Exception) -> None:
        """Show an error beside what caused it."""
        if not isinstance(exc, PtmarkError):
            text = getattr(exc, "strerror", None) or f"{type(exc).__name__}: {exc}"
            exc = PtmarkError(str(text), where=str(getattr(exc, "filename", "") or ""))
        self.trouble.emit(place, exc)

    def turn_unit(self) -> None:
        """Show lengths in the other unit; the codes' limits keep their own."""
        self.unit = "in" if self.unit == "mm" else "mm"
        self.judged.emit()

    def undo(self) -> None:
        if self.inspection:
            self._step(self.inspection.needed[0], self.inspection.undo)

    def redo(self) -> None:
        if self.inspection:
            self._step(self.inspection.needed[1], self.inspection.redo)

    def _step(self, needed: "PhotoInfo | None", step: "Callable[[Photo | None], None]") -> None:
        """Step through what was done; to another photo of the set once it is decoded."""
        if needed is None or self.turner is None:
            self.attempt("photo", lambda: step(None))
        else:
            self.turner(needed, step)

    def _on_change(self) -> None:
        if self.inspection is None:
            return
        self.touched = self.touched or not self._by_itself
        if self.touched and self.inspection.begun:
            self.autosave.note(self.inspection)
        names = {m.id for m in self.inspection.state.marked}
        kept = tuple(name for name in self.selected if name in names)
        self.changed.emit()
        if kept != self.selected:
            self.select(*kept)
        self._judge()

    def judge_again(self) -> None:
        """Measure and judge by the rules as they are now, though nothing here has changed."""
        self._judge()

    def _judge(self) -> None:
        if self.inspection is None:
            return
        inspection, twin = self.inspection, self.inspection.twin()

        def work(token: Token) -> Judgement:
            made = judge(twin)
            token.check()
            return made

        def done(made: Judgement) -> None:
            inspection.learn(twin)
            self.judgement = made
            self.trouble.emit("verdict", made.trouble)
            self.judged.emit()

        failed: Callable[[Exception], None] = lambda e: self.say_trouble("verdict", e)  # noqa: E731
        self.workers.start("", work, done, failed=failed, key="judge")

    # -- step and selection -------------------------------------------------------------------
    def go(self, step: str) -> None:
        """Show a step."""
        if step != self.step:
            self.step = step
            self.autosave.note_beside()
            self.step_changed.emit(step)

    def select(self, *names: str) -> None:
        """Select indications by letter, in the list and on the photo alike."""
        if names != self.selected:
            self.selected = names
            self.selection_changed.emit()

    @property
    def one_selected(self) -> "Marked | None":
        """The selected outline where exactly one is."""
        if self.inspection is None or len(self.selected) != 1:
            return None
        return next((m for m in self.inspection.state.marked if m.id == self.selected[0]), None)

    def step_by(self, by: int) -> None:
        """Select the next or the previous indication."""
        names, last = self.order(), self.selected[-1] if self.selected else ""
        if names:
            at = names.index(last) if last in names else (-1 if by > 0 else 0)
            self.select(names[(at + by) % len(names)])

    def order(self) -> list[str]:
        """Letters from top to bottom of the list, without those it hides."""
        if self.listed is not None:
            return self.listed()
        return [m.id for m in self.inspection.state.marked] if self.inspection else []
