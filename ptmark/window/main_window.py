"""The window: the steps on top, the photo large, one panel that follows the step."""

from pathlib import Path

from PySide6.QtCore import QEvent, QSize, QTimer
from PySide6.QtGui import QCloseEvent, QKeyEvent
from PySide6.QtWidgets import QLayout, QVBoxLayout, QWidget

from ptmark.errors import PtmarkError
from ptmark.places import sample_images
from ptmark.window import dialogs
from ptmark.window.arrange import Arrangement
from ptmark.window.bench import Bench
from ptmark.window.bits import CommitEdit, Quiet, key_button, stack
from ptmark.window.draft_desk import DraftDesk
from ptmark.window.empty_page import EmptyPage
from ptmark.window.follows import Follows
from ptmark.window.foot import Foot
from ptmark.window.indications.hands import Hands
from ptmark.window.keys import KEYS, Shortcut
from ptmark.window.looking import Looking
from ptmark.window.memory import Memory
from ptmark.window.parts import Parts
from ptmark.window.photos.row import PhotoRow
from ptmark.window.photos.strip import PhotosStrip
from ptmark.window.reading_order import step_focus
from ptmark.window.recent import Recent
from ptmark.window.roles import Stack
from ptmark.window.saving import Saving
from ptmark.window.session import STEPS, Session
from ptmark.window.showing import Shown
from ptmark.window.step_state import step_states
from ptmark.window.step_strip import StepStrip
from ptmark.window.steps.photo_step import PhotoStep
from ptmark.window.view.levels import PhotoLevels
from ptmark.window.view.photo_view import PhotoView
from ptmark.window.view.seeing import Seeing
from ptmark.window.view.turning import Turning
from ptmark.window.view.two_photos import TwoPhotos
from ptmark.window.words import tr

__all__ = ["MainWindow"]


class MainWindow(Parts):
    """One window, one inspection.

    With ``rest_later`` only what shows at the start is made; `begin` makes the rest.
    """

    def __init__(self, *, rest_later: bool = False) -> None:
        super().__init__()
        self.setWindowTitle("ptmark")
        KEYS.load()
        self.session = Session(self)
        self.looking, self.hands = Looking(self.session), Hands(self.session)
        self.turning = Turning(self.session, self.looking)
        self.saving, self.memory = Saving(self.session), Memory(self.session)
        self.recent = Recent(self.session.workers, self.saving)
        self.view = PhotoView()
        self.view.keys = self._photo_key
        self.bench = Bench(self.session, self.view, self.hands)
        self._shown = Shown(self.session, self.view)
        self._follows = Follows(self.session, self.looking, self.hands, self.saving, self.view)
        self.seeing = Seeing(self.session, self.view, self._shown)
        self.strip = StepStrip(STEPS)
        self.empty = EmptyPage()
        self.foot = Foot(self.session.workers)
        self._build_photo_page()
        self.drafts = DraftDesk(self.session, self.empty, self.photo_step.offers)
        self._lay_out()
        self._connect()
        self._show_states()
        self.setMinimumSize(480, 320)
        self.resize(1280, 800)
        self.empty.open_button.setFocus()  # before anything is painted: else the first step
        if not rest_later:
            self.build_rest()

    def _build_photo_page(self) -> None:
        self.photos_strip = PhotosStrip(self.session, self.turning, self.memory, self)
        add, take_out = self.photos_strip.ask, self.turning.remove_this
        self.photo_step = PhotoStep(
            self.session, self.bench, self, self.ask_open, self.next_part, add, take_out
        )
        self.pages = {STEPS[0]: self.photo_step}

    def build_rest(self) -> None:
        """Make the pages of the other steps, the review and the archive."""
        if len(self.pages) > 1:
            return
        from ptmark.window.archive.desk import ArchiveDesk
        from ptmark.window.card_out import CardOut
        from ptmark.window.drops import Drops
        from ptmark.window.guided import GuidedPass
        from ptmark.window.next_photo import NextPhoto
        from ptmark.window.part_form import PartForm
        from ptmark.window.review.desk import ReviewDesk
        from ptmark.window.steps.indications_step import IndicationsStep
        from ptmark.window.steps.record_step import RecordStep
        from ptmark.window.steps.scale_step import ScaleStep
        from ptmark.window.steps.verdict_step import VerdictStep
        from ptmark.window.told import Told

        self.scale_step = ScaleStep(self.session, self.bench, self.looking, self)
        self.indications_step = IndicationsStep(
            self.session, self.bench, self.looking, self.hands, self
        )
        self.indications_step.left_out.pointed.connect(self._follows.point)
        self.verdict_step = VerdictStep(self.session, self.bench, self)
        self.record_step = RecordStep(self.session, self.saving, self)
        self.verdict_step.sketched.connect(self._show_marks)
        pages = (self.scale_step, self.indications_step, self.verdict_step, self.record_step)
        self.pages |= dict(zip(STEPS[1:], pages, strict=True))
        for page in pages:
            self._panel.addWidget(page)
        self.part_form = PartForm(self.session, self.record_step.last_of_part, self)
        self.photo_step.part_place.addWidget(self.part_form)
        self._told = Told(self)
        self.photo_step.put_after_open(NextPhoto(self).button)
        self.review = ReviewDesk(self, self._place, self._panel)
        self._column.insertWidget(1, self.review.bar)
        self.archive = ArchiveDesk(self, self.arrangement.split)
        self.review.comes.connect(self.archive.leave)
        self.review.listed.connect(self.arrangement.stand_alone)
        self._column.insertWidget(self._column.count() - 1, self.archive.pages, 1)
        self.guided = GuidedPass(self)
        self.empty.offer_card(CardOut(self.session.workers))
        self._drops = Drops(self, self.review.take, self.session)
        self.arrangement.tell(self.review.bar)

    def _lay_out(self) -> None:
        self._place = Stack()
        self._place.addWidget(self.empty)
        self._place.addWidget(self.view)
        self._panel = Stack()
        self._panel.addWidget(self.photo_step)
        self.next_button = key_button(tr("Next step"), "Ctrl+Right", self._next, window=self)
        self.next_row = stack(self.next_button)
        self.next_row.setContentsMargins(16, 4, 16, 10)
        side = stack(self._panel, self.next_row)
        side.setMinimumWidth(340)
        self.two_photos = TwoPhotos(self.session, self.view, self.memory, self)
        self.photo_row = PhotoRow(self.session, self.view, self.seeing, self)
        tip = tr("Another photo over it, by a slider")
        self.photo_row.add_way(tr("Compare"), "K", self.two_photos.turn, tip, self)
        photo = stack(self._place, self.two_photos, self.photos_strip, self.photo_row)
        self.arrangement = Arrangement(self, photo, side)
        self._column = column = QVBoxLayout(self)
        column.setSizeConstraint(QLayout.SizeConstraint.SetNoConstraint)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.strip)
        column.addWidget(self.arrangement.split, 1)
        column.addWidget(self.arrangement.bar)
        column.addWidget(self.foot)

    def _connect(self) -> None:
        session = self.session
        self.strip.chosen.connect(session.go)
        session.step_changed.connect(self._show_step)
        session.photo_shown.connect(self._show_photo)
        self._states_soon = QTimer(self, singleShot=True, interval=0)
        self._states_soon.timeout.connect(self._show_states)
        for signal in (session.changed, session.judged, session.workers.changed):
            signal.connect(self._states_soon.start)
        session.changed.connect(self._show_marks)
        session.selection_changed.connect(self._show_selection)
        session.ready.connect(self._show_states)
        session.stale.changed.connect(self._show_states)
        session.trouble.connect(self._on_trouble)
        self.bench.hint.connect(self.foot.say)
        self.bench.live.said.connect(self.foot.say_size)
        self.bench.switched.connect(lambda _: self._show_marks())
        session.autosave.failed.connect(
            lambda exc: self.foot.say(tr("The draft could not be written: {0}", exc))
        )
        self.looking.opened.connect(self.drafts.look)
        # another part, whatever was looked at before
        self.looking.opened.connect(self.view.fit)
        self.turning.starts.connect(self.bench.stop)
        self.view.pointed.connect(self.foot.say_place)
        self.seeing.changed.connect(self._show_marks)
        self.empty.open_asked.connect(self.ask_open)
        self.empty.sample_asked.connect(self.open)
        self.recent.changed.connect(self.empty.offer_recent)
        Shortcut("Ctrl+Left", self, lambda: self._next(-1), tr("Step before"))

    # -- starting -----------------------------------------------------------------------------
    def begin(self, photo: Path | None = None) -> None:
        """Load the engine beside the window; open a file, offer old work and the samples."""
        self.build_rest()
        if photo is not None:
            self.open(photo)  # first, so that the photo need not wait for the other rooms
        self.session.load()
        self.memory.load()
        self.recent.load()
        samples = sorted(sample_images().glob("*.jpg"))
        self.empty.offer_samples(samples)
        self.drafts.look()

    def open(self, path: Path) -> None:
        self.bench.stop()
        self.review.open(path)

    def next_part(self) -> None:
        """Put this inspection away and begin the next one, before there is a photo of it."""
        self.bench.stop()
        self.record_step.settle()
        self.looking.next_part()
        self.part_form.fields["part_number"].setFocus()

    def ask_open(self) -> None:
        if (path := dialogs.ask_for_photo(self, self.memory.folder)) is not None:
            self.open(path)

    # -- showing ------------------------------------------------------------------------------
    def _show_photo(self, levels: PhotoLevels | None) -> None:
        self.view.set_levels(levels)
        self.show_place()
        self.foot.show_step(self.session.step if levels else "")
        if levels is not None and not levels.whole:
            self.view.show_marks([], frozenset())
            self.view.guides.clear()

    def bring(self, widget: QWidget) -> None:
        self.arrangement.bring(widget)

    def show_place(self) -> None:
        self._place.setCurrentWidget(self.view if self.view.levels else self.empty)

    def _show_step(self, step: str) -> None:
        self.strip.show_step(step)
        left_behind = self._panel.isAncestorOf(self.focusWidget())
        self._panel.setCurrentWidget(self.pages[step])
        if left_behind and step == "Indications" and self.session.levels:
            self.view.setFocus()  # else the keys that the foot names would do nothing
        last = step == STEPS[-1]
        self.next_button.setVisible(not last)
        self.foot.show_step(step if self.session.levels else "")
        self._show_marks()
        if not self.session.selected:
            self._follows.after_suggestions()

    def _next(self, by: int = 1) -> None:
        at = STEPS.index(self.session.step) + by
        if 0 <= at < len(STEPS) and self.archive.pages.isHidden():  # no step is taken unseen
            self.session.go(STEPS[at])

    def _show_marks(self) -> None:
        step, page = self.session.step, self.indications_step
        left_out = page.left_out_shown() if step == "Indications" else ()
        sketch = self.verdict_step.sketch if step == "Verdict" else ()
        self._shown.put_on(self.bench.name, left_out, sketch)

    def _show_selection(self) -> None:
        self.view.show_marks(self.view.marks, frozenset(self.session.selected))
        if len(self.session.selected) == 1:
            self.view.bring(self.session.selected[0])

    def _show_states(self) -> None:
        self.strip.show_states(step_states(self.session))
        inspection = self.session.inspection
        photo = inspection.photo if inspection else None
        self.setWindowTitle(f"{photo.info.path.name} – ptmark" if photo else "ptmark")

    def _on_trouble(self, place: str, exc: PtmarkError | None) -> None:
        if place == "photo":
            self.empty.say_error(exc)
            if exc is not None:
                self.session.go("Photo")

    # -- Qt -----------------------------------------------------------------------------------
    def _photo_key(self, event: QKeyEvent) -> bool:
        """Keys of the indications work on the photo, where they are being looked at."""
        return self.session.step == "Indications" and self.hands.key(event)

    def focusNextPrevChild(self, forward: bool) -> bool:  # noqa: N802, FBT001 - Qt's
        return step_focus(self, forward=forward) or super().focusNextPrevChild(forward)

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        return QSize(1280, 800)

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        if event.type() == QEvent.Type.PaletteChange:
            for label in self.findChildren(Quiet):
                label.tint()
            for edit in self.findChildren(CommitEdit):
                edit.tint()
            self.session.judged.emit()  # signs and tones are drawn for the ground they stand on
        super().changeEvent(event)

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802 - Qt's name
        self.build_rest()  # where it is closed before it had begun
        self.record_step.settle()
        self.session.workers.shut_down()
        self.archive.door.close()
        self.session.autosave.flush()
        self.drafts.close()
        event.accept()
