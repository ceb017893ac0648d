"""Finding in the archive: the search line on top, what was found below, what to do with it."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHBoxLayout,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from ptmark.errors import PtmarkError
from ptmark.window.archive.door import ArchiveDoor
from ptmark.window.archive.export import HitsExport
from ptmark.window.archive.found_words import EMPTY, NOTHING, told_count
from ptmark.window.archive.further import Counted, look
from ptmark.window.archive.gallery import Gallery, read_glances
from ptmark.window.archive.model import HIT, HitModel
from ptmark.window.archive.order import NEWEST, OrderChoice, in_order
from ptmark.window.archive.saved import SavedSearches
from ptmark.window.archive.search import SearchBar, as_words
from ptmark.window.archive.table import HitTable
from ptmark.window.bits import Notice, key_button, plain, scrolled
from ptmark.window.roles import Stack
from ptmark.window.session import Session
from ptmark.window.words import tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.archive import Archive, Hit, Page, Query

__all__ = ["FoundPage"]

_PAGE = 60
_COUNTED = 1000  # further on it is asked for: some tenths of a second where very many fit


class FoundPage(QWidget):
    """Asks the archive while one types; pages come as one scrolls.

    Signals: ``opened(object)`` a hit to look at; ``left()``; ``check_asked()``.
    """

    opened = Signal(object)
    left = Signal()
    check_asked = Signal()

    def __init__(self, session: Session, door: ArchiveDoor) -> None:
        super().__init__()
        self._session, self._door = session, door
        self.model = HitModel(self)
        self.found: Query | None = None  # what is shown, as the archive was asked
        self._shown: tuple[Query, str, str] | None = None  # the same with order and unit
        self.bar = SearchBar()
        self.said, self.said_below = Notice(), Notice()
        self.count = plain()
        self.all_button = key_button(tr("Count all"), "", self.count_all)
        self.further_button = key_button(tr("Look further back"), "", self.model.fetchMore)
        self.order = OrderChoice()
        self.empty = _read_page(EMPTY)
        self.table = HitTable(self.model)
        self.gallery = Gallery(self.model)
        self.gallery.setSelectionModel(self.table.selectionModel())
        self.views = Stack()
        self.nothing = _read_page(NOTHING)
        for view in (self.gallery, self.table, self.empty, self.nothing):
            self.views.addWidget(view)
        self.turn_button = key_button(tr("As a table"), "Ctrl+T", self.turn_view, window=self)
        self.back_button = key_button(tr("Back to the work"), "Escape", self.left.emit)
        self.saved = SavedSearches(door)
        self.bar.row.insertWidget(1, self.saved.choice)
        self.bar.put_under_filters(self.saved)
        self.export = HitsExport(door)
        self.check_button = key_button(
            tr("State of the archive …"),
            "",
            self.check_asked.emit,
            tip=tr("Check records and photos; rules and holds"),
        )
        self.export.offer(None)
        self.turn_button.setEnabled(False)
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        told = QHBoxLayout()
        told.addWidget(self.count, 1)
        for button in (self.all_button, self.further_button):
            button.hide()
            told.addWidget(button)
        told.addWidget(self.order)
        told.addWidget(self.turn_button)
        told.addWidget(self.back_button)
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 10, 16, 10)
        column.addWidget(self.bar)
        column.addWidget(self.said)
        column.addLayout(told)
        column.addWidget(self.views, 1)
        column.addWidget(self.said_below)
        deeds = QHBoxLayout()
        deeds.addWidget(self.export)
        deeds.addStretch(1)
        deeds.addWidget(self.check_button)
        column.addLayout(deeds)

    def _connect(self) -> None:
        door = self._door
        self.bar.asked.connect(self.search)
        self.order.activated.connect(lambda _: self.search())
        self.saved.run.connect(self.bar.show_query)
        self.saved.wanted.connect(self._keep_search)
        self.saved.told.connect(lambda said: self.said.say(said, "done"))
        self.saved.failed.connect(self._fail)
        self.export.told.connect(lambda said: self.said_below.say(said, "done"))
        self.export.failed.connect(self.said_below.say_error)
        self.model.more_asked.connect(self._read_on)
        self.model.glances_asked.connect(lambda hits: read_glances(door, self.model, hits))
        self.table.selectionModel().selectionChanged.connect(self._on_selected)
        for view in (self.table, self.gallery):
            view.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
            view.activated.connect(lambda index: self.opened.emit(index.data(HIT)))
        self.bar.line.returnPressed.connect(self.take_focus)

    # -- asking -------------------------------------------------------------------------------
    def search(self) -> None:
        """Ask the archive for what line and filters say now."""
        self.said.say("")
        self.said_below.say("")
        self.all_button.hide()
        self.further_button.hide()
        try:
            asked, whole = self.bar.query(self._session.unit), self.bar.whole
        except PtmarkError as exc:
            self.said.say_error(exc)
            return
        self.saved.follow(asked)

        order = self.order.chosen

        def work(archive: "Archive", token: Token) -> Counted:
            from ptmark.archive import count_some

            query, page = asked, look(archive, asked, token, limit=_PAGE)
            if not page.hits and page.after is None and asked.part and not whole:
                token.check()
                query = as_words(asked)
                page = look(archive, query, token, limit=_PAGE)
            shown = in_order(archive, token, query, page, order, _COUNTED)
            token.partial((query, shown))
            there = len(shown.hits)
            if shown.back_to or (shown.after is None and there < _COUNTED):
                return Counted(there, query, back_to=shown.back_to)
            number, known = count_some(archive, query, _COUNTED)
            return Counted(max(number, there), query, known)

        self._door.ask(
            "",
            work,
            self._show_count,
            partial=self._show,
            failed=self._fail,
            key="archive find",
        )

    def count_all(self) -> None:
        """Count what is shown to its end."""
        query = self.found

        def work(archive: "Archive", _token: Token) -> Counted | None:
            from ptmark.archive import count

            return None if query is None else Counted(count(archive, query), query)

        def done(got: Counted | None) -> None:
            if got is not None and query is self.found:
                self._show_count(got)

        self.all_button.hide()
        self._door.ask("", work, done, failed=self._fail, key="archive count")

    def _keep_search(self) -> None:
        try:
            self.saved.keep(self.bar.query(self._session.unit))
        except PtmarkError as exc:
            self.said.say_error(exc)

    def _show(self, got: "tuple[Query, Page]") -> None:
        (self.found, page), unit = got, self._session.unit
        before, self._shown = self._shown, (self.found, self.order.chosen, unit)
        same = before == self._shown and bool(page.hits)
        if same and self.model.hits[: len(page.hits)] == page.hits:
            return  # nothing is new: list and selection stay where they are
        self.model.unit = unit
        self.model.begin(page)
        self._offer(page)
        if page.hits:
            self.table.setCurrentIndex(self.model.index(0, 0))

    def _offer(self, page: "Page") -> None:
        """What is there can be exported and looked at; nothing, once all was looked through."""
        some = bool(self.model.hits)
        self.export.offer(self.found if some else None)
        self.turn_button.setEnabled(some)
        instead = self.empty if self.bar.asks_nothing else self.nothing
        self.views.setCurrentWidget(self._view() if some or page.back_to else instead)

    def _show_count(self, got: Counted) -> None:
        order = self.order.currentText()
        if got.number > _COUNTED and self.order.chosen != NEWEST:
            order = tr("the newest {0:,} of them {1}", _COUNTED, order)
        self.all_button.setVisible(not got.known)
        self.further_button.setVisible(bool(got.back_to))
        line, filtered = self.bar.line.text().strip(), self.bar.filtered
        self.count.setText(told_count(got, line, filtered=filtered, order=order))

    def _read_on(self, after: tuple[str, int]) -> None:
        query = self.found

        def work(archive: "Archive", token: Token) -> "Page":
            from ptmark.archive import Query

            return look(archive, query or Query(), token, after=after, limit=_PAGE)

        def done(page: "Page") -> None:
            if query is None or query is not self.found:
                return
            self.model.add(page)
            if page.back_to or not self.further_button.isHidden():
                self._offer(page)
                known = page.after is None or bool(page.back_to)
                number = len(self.model.hits) + (not known)
                self._show_count(Counted(number, query, known, page.back_to))

        self._door.ask("", work, done, failed=self._fail, key="archive page")

    def _fail(self, exc: Exception) -> None:
        self.said.say_error(exc)

    # -- showing ------------------------------------------------------------------------------
    def turn_view(self) -> None:
        """Pictures in place of the table, or the other way round."""
        to_table = self.views.currentWidget() is self.gallery
        self.views.setCurrentWidget(self.table if to_table else self.gallery)
        name = tr("As pictures") if to_table else tr("As a table")
        self.turn_button.say(name)
        self._view().setFocus()

    def _view(self) -> QAbstractItemView:
        table = self.turn_button.accessibleName() == tr("As pictures")
        return self.table if table else self.gallery

    def take_focus(self) -> None:
        """Go on where one was: in the list, or in the line where nothing was found."""
        if self.model.hits:
            self._view().setFocus()
        else:
            self.bar.line.setFocus()

    @property
    def chosen(self) -> "Hit | None":
        """The hit that is selected."""
        index = self.table.currentIndex()
        return self.model.hits[index.row()] if index.isValid() else None

    def _on_selected(self) -> None:
        rows = {index.row() for index in self.table.selectionModel().selectedIndexes()}
        self.export.choose([self.model.hits[row] for row in sorted(rows)])

    def begin(self) -> None:
        """Shown anew: ask again, the line ready to type in."""
        self.bar.line.setFocus()
        self.bar.line.selectAll()
        self.saved.read()
        self.search()


def _read_page(text: str) -> QScrollArea:
    """What stands in place of finds where there are none; it scrolls where room is scarce."""
    label = plain(text)
    label.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
    label.setContentsMargins(24, 24, 24, 24)
    return scrolled(label)
