"""Reviewing in the window: records come in, the photo view and the steps do the measuring."""

from collections.abc import Sequence
from pathlib import Path
from typing import Any

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QStackedWidget

from ptmark.window import dialogs
from ptmark.window.autosave import Draft
from ptmark.window.bits import key_button
from ptmark.window.parts import Parts
from ptmark.window.review.away import PutAway
from ptmark.window.review.bar import HINTS, ReviewBar
from ptmark.window.review.case import ReviewCase
from ptmark.window.review.page import ReviewPage
from ptmark.window.review.pins import Pins
from ptmark.window.review.worklist import Worklist
from ptmark.window.words import tr

__all__ = ["ReviewDesk"]


class ReviewDesk(QObject):
    """Leads from a record, or a folder of them, to the review in its file.

    ``place`` is where the photo stands, ``panel`` where the steps' pages do.
    Signals: ``comes()`` a record, or the list of them, is about to be shown there;
    ``listed(bool)`` whether the list stands in the photo's place now.
    """

    comes = Signal()
    listed = Signal(bool)

    def __init__(self, window: Parts, place: QStackedWidget, panel: QStackedWidget) -> None:
        super().__init__(window)
        self._window, self._session = window, window.session
        self._place, self._panel = place, panel
        self._photos: Path | None = None  # a folder asked for
        self._away = PutAway(window)
        self._asked_for = Path()
        self.case = ReviewCase(window.session)
        self._worklist = Worklist(window.session, self)
        self.list = self._worklist.view
        self.page = ReviewPage(window.session, self.case, window)
        self._usual, self._usual_hint = window.record_step, window.foot.hints["Record"]
        ways = {
            "Review it blind": self.begin,
            "Go on with it as its examiner": self.go_on,
            "Done measuring": self.case.finish,
            "Earlier record": lambda: self.step(-1),
            "Next record": lambda: self.step(1),
            "Records": self.show_list,
            "Leave": self.leave,
        }
        self.bar = ReviewBar(self.case, window, ways)
        self._pins = Pins(window, self.case, self.page)
        place.addWidget(self.list)
        panel.addWidget(self.page)
        self._add_ways_in()
        self._connect()

    def _add_ways_in(self) -> None:
        row, window = self._window.empty.review_row, self._window
        for text, key, call in (
            (tr("Open a record …"), "Ctrl+R", self.ask_record),
            (tr("Review a folder of records …"), "Ctrl+Shift+R", self.ask_folder),
        ):
            row.addWidget(key_button(text, key, call, window=window))
        row.addStretch(1)

    def _connect(self) -> None:
        window, case, page = self._window, self.case, self.page
        case.changed.connect(self._on_changed)
        case.failed.connect(self._on_failed)
        case.decided.connect(self._on_decided)
        self.list.chosen.connect(self._choose)
        self._place.currentChanged.connect(
            lambda _: self.listed.emit(self._place.currentWidget() is self.list)
        )
        self._session.step_changed.connect(self._leave_list)  # a step is about the photo
        window.strip.chosen.connect(self._leave_list)
        self._worklist.counted.connect(self._on_listed)
        self._worklist.opened.connect(self.show_list)
        self._worklist.failed.connect(self._on_failed)
        page.pin_asked.connect(self._pins.pick)
        page.shown.connect(self._pins.bring)
        self.bar.told_at.connect(self._pins.bring_told)
        window.looking.opened.connect(case.prepare)
        window.turning.turned.connect(case.prepare)
        window.empty.draft_taken.connect(self.take_draft)
        window.saving.signed.connect(lambda _: case.settle())

    # -- coming in ----------------------------------------------------------------------------
    def take(self, paths: Sequence[Path]) -> None:
        """Take what was dropped: a record, a folder of records, or photos."""
        if len(paths) == 1:
            self.open(paths[0])
        else:
            self.close()
            self._window.turning.take(paths)

    def open(self, path: Path) -> None:
        """Open a photo, a record or a folder of records."""
        if path.is_dir():
            self.open_folder(path)
        elif path.suffix.lower() == ".json":
            self._open_record(path)
        else:
            self.close()
            self._window.looking.open(path)

    @property
    def _near(self) -> Path:
        """Where to begin looking for records."""
        return self._worklist.folder or self._window.memory.folder

    def ask_record(self) -> None:
        """Ask which record to open."""
        path = dialogs.ask_for_record(self._window, self._near)
        if path is not None:
            self._open_record(path)

    def ask_folder(self) -> None:
        """Ask for a folder of records."""
        folder = dialogs.ask_for_folder(self._window, tr("Records to review"), self._near)
        if folder is not None:
            self.open_folder(folder)

    def open_folder(self, folder: Path) -> None:
        """Make the worklist of a folder's records."""
        self._photos = None
        self._worklist.open(folder)

    def _on_listed(self, left: int, of: int) -> None:
        self.bar.listed = True
        self.bar.say_left(left, of)

    def _open_record(self, path: Path, folder: Path | None = None) -> None:
        self.comes.emit()
        self._end()
        self.bar.notice.say("")
        self.list.say_error(None)
        self._asked_for = path
        self.case.open(path, folder or self._photos)

    def _choose(self, path: Path) -> None:
        """Open a record of the list; the one that is being reviewed only comes back."""
        if self.case.reviews(path):
            self.comes.emit()
            self._leave_list()
            self._window.view.setFocus()
        else:
            self._open_record(path)

    # -- going through ------------------------------------------------------------------------
    def show_list(self) -> None:
        """Show the worklist."""
        self.comes.emit()
        self._place.setCurrentWidget(self.list)
        self.list.table.setFocus()

    def _leave_list(self) -> None:
        if self._place.currentWidget() is self.list:
            self._window.show_place()

    def step(self, by: int) -> None:
        """Open the next record that waits for a review."""
        path = self.list.step(by)
        if path is not None:
            self._choose(path)
        else:
            self.bar.notice.say(tr("No record in this folder waits for a review."), "done")
            self.show_list()

    def begin(self) -> None:
        """Measure the record's photos, blind; one begun goes on, seen is seen."""
        opened, session = self.case.opened, self._session
        if opened is None or session.inspection is None:
            return
        if opened.begun is not None and opened.begun.path.is_file():
            self.take_draft(opened.begun)
            said = tr("This review was begun before: it goes on where it was left.")
            self.bar.notice.say(said)
            return
        self._away.put_away()
        self.case.begin()
        self.page.begin()
        session.go("Photo")
        self._window.looking.open(opened.photos[0])
        self._window.turning.add(opened.photos[1:])

    def take_draft(self, draft: Draft) -> None:
        """Go on with work that was left behind; with a review where it was one."""
        self.close()
        looking = self._window.looking
        if draft.record is None:
            looking.go_on(draft.path)
            return
        self._away.put_away()
        self._asked_for, case = draft.record, self.case

        def begun() -> None:
            self.page.begin()
            looking.go_on(draft.path, case.finish if case.lifted else lambda: None)

        case.resume(draft.path, begun)

    def go_on(self) -> None:
        """Go on with the record as its examiner."""
        opened = self.case.opened
        if opened is None:
            return
        from ptmark.inspection.draft import draft_of_record
        from ptmark.record import load_record

        path, photos = opened.path, opened.photos

        def read() -> dict[str, Any]:
            return draft_of_record(load_record(path), photos)

        def then() -> None:
            record = load_record(path)
            self._window.saving.belong_to(path, record)
            self._session.stale.began_with(record.evaluation)
            self.case.go_on()

        self._window.looking.bring_back(read, then=then)

    def leave(self) -> None:
        """Close record and worklist."""
        self.close()
        self._worklist.close()
        self.bar.listed = False
        self.bar.refresh()
        self._leave_list()

    def close(self) -> None:
        """Close the record; what the reviewer measured is put away with it."""
        self._end()
        self.bar.notice.say("")
        self.bar.refresh()

    def _end(self) -> None:
        was = self._session.reviewing
        self._window.bench.stop()
        if was:
            self._session.autosave.flush()  # while the review is still known to it
        self.case.close()
        if was:
            self._away.begin_again()

    # -- what follows what --------------------------------------------------------------------
    def _on_changed(self) -> None:
        phase = self.case.phase
        reviewing = self._session.reviewing
        page = self.page if reviewing else self._usual
        self._window.foot.hints["Record"] = HINTS.get(phase, self._usual_hint)
        self._window.pages["Record"] = page
        if self._session.step == "Record":
            self._panel.setCurrentWidget(page)
            self._window.foot.show_step("Record")
        opened = self.case.opened
        waits = phase == "told" and opened is not None and opened.standing == "to review"
        if waits and self.bar.listed:
            self._session.when_ready(self.begin)  # chosen from the list: that is what for
            return
        if phase == "beside":
            self._session.go("Record")
        self._usual.refresh()
        self._pins.show()

    def _on_decided(self, said: str) -> None:
        self.bar.say_done(said)
        self._session.touched = False  # it is in the record now, no draft of it is wanted
        self._session.autosave.forget()
        self._worklist.renew()
        (self.bar.buttons["Next record"] if self.bar.listed else self.page.said).setFocus()

    def _on_failed(self, exc: Exception) -> None:
        if self.case.phase:
            return  # the page tells it
        self.bar.notice.say_error(exc)
        from ptmark.review import PhotoMissingError

        buttons = []
        if isinstance(exc, PhotoMissingError):
            buttons = [key_button(tr("Folder of the photos …"), "", self._ask_photos)]
        self.bar.notice.offer(*buttons)
        self.bar.refresh()
        if buttons:
            buttons[0].setFocus()  # all that is left to do

    def _ask_photos(self) -> None:
        start = self._asked_for.parent
        folder = dialogs.ask_for_folder(self._window, tr("Photos of the records"), start)
        if folder is not None:
            self._photos = folder
            self._open_record(self._asked_for, folder)
