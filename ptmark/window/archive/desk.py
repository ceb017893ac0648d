"""The archive in the window: takes the place of photo and steps while it is looked at."""

from collections.abc import Callable
from functools import cached_property, partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QWidget
from shiboken6 import isValid

from ptmark.window import dialogs
from ptmark.window.bits import key_button
from ptmark.window.parts import Parts
from ptmark.window.roles import Stack
from ptmark.window.words import tr

if TYPE_CHECKING:
    from ptmark.archive import Hit
    from ptmark.record import Record
    from ptmark.window.archive.check import CheckPage
    from ptmark.window.archive.found import FoundPage
    from ptmark.window.archive.history import HistoryPage
    from ptmark.window.archive.map import MapPage
    from ptmark.window.archive.model import HitModel
    from ptmark.window.archive.record import RecordPage

__all__ = ["ArchiveDesk"]

_CARRIED = ("Part", "Procedure")  # groups of fields that a retest shares with its record


class ArchiveDesk(QObject):
    """Shows the archive's pages one at a time; each goes back to the one before.

    ``usual`` is what stands there otherwise. A page is made when it is first looked at, so that
    the window need not wait for it.
    """

    def __init__(self, window: Parts, usual: QWidget) -> None:
        super().__init__(window)
        self._window, self._session, self._usual = window, window.session, usual
        self.door = window.record_step.archive.door
        self.pages = Stack()
        self.pages.hide()
        self._before: list[tuple[QWidget, Callable[[], None] | None]] = []
        self._content: dict[QWidget, Callable[[], None] | None] = {}  # puts it on its page
        self._held: dict[QWidget, QWidget] = {}  # what had the keyboard as a page was left
        self._retest: tuple[Record, Path] | None = None
        # Of the whole window: a button greyed out while it has the focus gives it away.
        self._escape = QShortcut(QKeySequence("Escape"), window, self._on_escape)
        self._escape.setEnabled(False)
        self._add_ways_in()
        self._connect()

    def _add_ways_in(self) -> None:
        window = self._window
        self.find_button = key_button(
            tr("Find in the archive …"), "Ctrl+F", self.open, window=window
        )
        row = window.empty.review_row
        row.insertWidget(max(row.count() - 1, 0), self.find_button)
        keep = window.record_step.archive
        keep.offer(
            key_button(
                tr("Find in it …"), "", self.open, tip=tr("Find in the archive (‹Ctrl+F›)")
            )
        )

    def _connect(self) -> None:
        window = self._window
        window.strip.chosen.connect(lambda _: self.leave())
        window.looking.opened.connect(self._on_opened)
        self._session.trouble.connect(self._on_trouble)
        self._session.photo_shown.connect(lambda _: self.leave())

    # -- the pages ----------------------------------------------------------------------------
    @cached_property
    def found(self) -> "FoundPage":
        """The search and what it found."""
        from ptmark.window.archive.found import FoundPage

        page = FoundPage(self._session, self.door)
        page.left.connect(self.leave)
        page.opened.connect(partial(self.show_record, among=page.model))
        page.check_asked.connect(self.show_check)
        self.pages.addWidget(page)
        return page

    @cached_property
    def check(self) -> "CheckPage":
        """The state of the archive."""
        from ptmark.window.archive.check import CheckPage

        page = CheckPage(self.door)
        page.left.connect(self.back)
        page.opened.connect(self.show_record)
        page.grown.connect(self.found.search)
        self.pages.addWidget(page)
        return page

    @cached_property
    def map(self) -> "MapPage":
        """Where on a part indications were seen."""
        from ptmark.window.archive.map import MapPage

        page = MapPage(self._session, self.door)
        page.left.connect(self.back)
        page.opened.connect(partial(self.show_record, among=page.model))
        self.pages.addWidget(page)
        return page

    @cached_property
    def record(self) -> "RecordPage":
        """One record."""
        from ptmark.window.archive.record import RecordPage

        page = RecordPage(self._session, self.door)
        page.left.connect(self.back)
        page.retest_asked.connect(self.ask_retest)
        page.history_asked.connect(self.show_history)
        page.map_asked.connect(self.show_map)
        page.beside_asked.connect(self._show_beside)
        page.before_asked.connect(self.show_record)
        self.pages.addWidget(page)
        return page

    @cached_property
    def history(self) -> "HistoryPage":
        """What was seen of a part number."""
        from ptmark.window.archive.history import HistoryPage

        page = HistoryPage(self._session, self.door)
        page.left.connect(self.back)
        page.opened.connect(partial(self.show_record, among=page.model))
        page.map_asked.connect(self.show_map)
        self.pages.addWidget(page)
        return page

    # -- coming and going ---------------------------------------------------------------------
    def open(self) -> None:
        """Show the search, or put the cursor back into its line."""
        self._window.record_step.settle()
        self._before = []
        self._show(self.found)
        self.found.begin()

    def leave(self) -> None:
        """Back to the work."""
        if not self.pages.isHidden():
            inside = self._has_focus()
            self.pages.hide()
            self._escape.setEnabled(False)
            self._window.photo_row.setEnabled(True)
            self._usual.show()
            self._window.foot.show_step(self._session.step if self._session.levels else "")
            if inside and not self._give_focus(self._usual):
                (self._window.view if self._session.levels else self._window).setFocus()

    def _has_focus(self) -> bool:
        return self.pages.isAncestorOf(self._window.focusWidget())

    def _give_focus(self, page: QWidget) -> bool:
        """Give the keyboard to what had it when a page was left; False where that is gone."""
        held = self._held.get(page)
        if held is None or not isValid(held) or not (held.isVisible() and held.isEnabled()):
            return False
        held.setFocus()
        return True

    def _on_escape(self) -> None:
        page: FoundPage | CheckPage | MapPage | RecordPage | HistoryPage
        page = self.pages.currentWidget()  # type: ignore[assignment] # no other is put there
        page.back_button.click()

    def back(self) -> None:
        """Back to the page before."""
        page, content = self._before.pop() if self._before else (self.found, None)
        inside = self._has_focus()
        self.pages.setCurrentWidget(page)
        if content is not None and content is not self._content.get(page):
            self._put(page, content)  # another record or part was looked at meanwhile
        if page is self.found:
            self.found.take_focus()
        elif inside:
            self._give_focus(page)

    def _show(self, page: QWidget, content: Callable[[], None] | None = None) -> None:
        now = self.pages.currentWidget()
        other = now is not page or content is not None  # as from a retest to the test before
        if not self.pages.isHidden() and now is not None and other:
            self._before.append((now, self._content.get(now)))
        left = self._usual if self.pages.isHidden() else now
        holds: QWidget | None = self._window.focusWidget()  # Qt's stubs leave out the none
        if left is not None and left is not page and holds is not None:
            self._held[left] = holds
        self._usual.hide()
        self.pages.setCurrentWidget(page)
        self.pages.show()
        self._escape.setEnabled(True)
        self._window.photo_row.setEnabled(False)  # else its keys undo the work unseen
        self._window.foot.show_step("")  # its keys do nothing here
        self._put(page, content)

    def _put(self, page: QWidget, content: Callable[[], None] | None) -> None:
        self._content[page] = content
        if content is not None:
            content()

    def show_record(self, hit: "Hit", among: "HitModel | None" = None) -> None:
        """Look at a record; ``among`` is the list it was opened from."""
        self._show(self.record, partial(self.record.show_hit, hit, among))

    def _show_beside(self, hit: "Hit") -> None:
        self._put(self.record, partial(self.record.show_hit, hit, self.record.neighbours.among))

    def show_history(self, part: str, serial: str) -> None:
        """Look at what was seen of a part number, or of one serial of it."""
        self._show(self.history, partial(self.history.show_part, part, serial))

    def show_map(self, part: str) -> None:
        """Look at where on a part number indications were seen."""
        self._show(self.map, partial(self.map.show_part, part))

    def show_check(self) -> None:
        """Look at the state of the archive."""
        self._show(self.check)
        self.check.holds.offer(self.found.found)
        self.check.begin()

    # -- a retest -----------------------------------------------------------------------------
    def ask_retest(self, record: "Record") -> None:
        """Ask for the photo of a retest and open it, linked to this record."""
        path = dialogs.ask_for_photo(self._window, self._window.memory.folder)
        if path is not None:
            self.begin_retest(record, path)

    def begin_retest(self, record: "Record", photo: Path) -> None:
        """Open a photo as the retest of this record: link, part, procedure and criteria."""
        self._window.open(photo)
        self._retest = (record, photo)

    def _on_trouble(self, place: str, exc: object) -> None:
        if place == "photo" and exc is not None:
            self._retest = None
            self.leave()

    def _on_opened(self) -> None:
        asked, self._retest = self._retest, None
        state = self._session.state
        if asked is None or state is None or state.info is None or state.info.path != asked[1]:
            return
        record = asked[0]
        from ptmark.criteria import list_profiles
        from ptmark.record import FIELDS, link_to

        shared = {one.key for one in FIELDS if one.group in _CARRIED} - {"deviations"}
        mine = {key: text for key, text in state.fields.items() if key not in shared}
        theirs = {key: text for key, text in record.fields.items() if key in shared}
        profile = str((record.evaluation or {}).get("profile", ""))
        self._session.change(
            tr("start the retest of {0}", record.id),
            fields={**mine, **theirs},
            carried=state.carried.union(theirs),
            process=record.process or {},
            retest_of=link_to(record, f"{record.id}.json"),
            profile=profile if profile in list_profiles() else state.profile,
        )
