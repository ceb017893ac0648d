"""How photo and page share the window: beside each other, one above the other, or in turns.

A wide window shows them side by side, a tall one the photo above the page. Where neither has
room, as on 1280 x 800 at 200 %, each in turn fills the window, and one key exchanges them.
"""

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, QSize, Qt
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QSplitter, QWidget

from ptmark.window.bits import key_button
from ptmark.window.headings import Headings
from ptmark.window.keys import KeyButton
from ptmark.window.parts import Parts
from ptmark.window.reading_order import in_reading_order, reveal
from ptmark.window.roles import Role, tell_handles, tell_role
from ptmark.window.session import STEPS
from ptmark.window.words import tr

if TYPE_CHECKING:
    from ptmark.window.review.bar import ReviewBar

__all__ = ["Arrangement", "way_for"]

_BESIDE = QSize(1180, 640)  # for the photo, its buttons and a page side by side
_TALL = 900  # px high, for half the window to the photo and a page under it
_PANEL = (468, 600)  # px wide: length, width and verdict of an indication, up to all columns
_PANEL_SHARE = 0.31  # of a wide window
_PHOTO_SHARE = 0.64  # of a tall window's height, with the buttons under the photo


def way_for(size: QSize) -> str:
    """What a window of this size, px, has room for: "beside", "under" or "turns"."""
    if size.width() >= _BESIDE.width() and size.height() >= _BESIDE.height():
        return "beside"
    if size.height() >= max(_TALL, size.width()):
        return "under"
    return "turns"


class Arrangement(QObject):
    """Arranges photo and page anew as the window changes its size.

    ``split`` holds both; ``bar`` shows under them while they take turns.
    """

    def __init__(self, window: Parts, photo: QWidget, page: QWidget) -> None:
        super().__init__(window)
        self._window, self._photo, self._page = window, photo, page
        self.way, self._alone = "beside", False
        self.headings = Headings(window)
        self._later: tuple[ReviewBar, ...] = ()
        self.split = QSplitter()
        self.split.addWidget(photo)
        self.split.addWidget(page)
        self.split.setStretchFactor(0, 1)
        tell_role(window, Role.Window)
        tell_handles(self.split)
        self.split.setChildrenCollapsible(False)
        self._panel = _PANEL[0]  # px, until somebody drags it
        self.split.setSizes([_BESIDE.width() - self._panel, self._panel])
        self.bar = QWidget()
        self.turn_button = key_button(
            tr("Photo and page exchange places"), "F6", self.turn, window=window
        )
        self.turn_button.say(tr("Page"), tr("Photo and page exchange places"))
        self._take, self._drop = KeyButton(tr("Take"), ""), KeyButton(tr("Drop"), "")
        self._take.clicked.connect(window.hands.take)
        self._drop.clicked.connect(window.hands.drop)
        self._next = KeyButton(tr("Next step"), "")
        self._next.clicked.connect(window.next_button.click)
        row = QHBoxLayout(self.bar)
        row.setContentsMargins(8, 3, 8, 3)
        row.addWidget(self.turn_button)
        for button in (self._take, self._drop):
            button.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
            row.addWidget(button, 1)
        row.addStretch(1)
        row.addWidget(self._next)
        self.bar.hide()
        self._back = False  # whether the page comes back once the tool is put away
        window.bench.switched.connect(self._on_tool)
        window.session.step_changed.connect(self._on_step)
        window.session.photo_shown.connect(self._on_photo)
        window.installEventFilter(self)
        self.split.installEventFilter(self)  # hidden while the archive is looked at

    @property
    def shows_photo(self) -> bool:
        """Whether the photo, or what stands in its place, is in sight."""
        return self.way != "turns" or not self._photo.isHidden()

    def turn(self) -> None:
        """Photo and page exchange places; beside each other, the keyboard goes over."""
        if self.way == "turns":
            self._show(photo=not self.shows_photo)
        elif self._has_focus():
            self._window.view.setFocus()
        else:
            self._enter_page()

    def _enter_page(self) -> None:
        """Give the keyboard to what had it last on the page, else to the first in it."""
        places = list(in_reading_order(self._page))
        held = self._page.focusWidget()
        if places:
            there = held if held in places else places[0]
            there.setFocus(Qt.FocusReason.TabFocusReason)
            reveal(there)

    def _has_focus(self) -> bool:
        return self._page.isAncestorOf(self._window.focusWidget())

    def bring(self, widget: QWidget) -> None:
        """Show what holds this widget."""
        if self.way == "turns" and not widget.isVisible():
            self._show(photo=not self._page.isAncestorOf(widget))

    def stand_alone(self, alone: bool) -> None:  # noqa: FBT001 - Qt's
        """What stands in the photo's place is no photo: the step's page has no part in it."""
        self._alone = alone
        if self.way != "turns":
            self._page.setVisible(not alone)
        elif alone:
            self._show(photo=True)

    def _on_photo(self, levels: object) -> None:
        if self.way == "turns" and levels is not None:
            self._show(photo=True)

    def _show(self, *, photo: bool) -> None:
        had_focus = self._window.focusWidget() is not None
        self._photo.setVisible(photo)
        self._page.setVisible(not photo)
        self._back = False
        self._follow()
        if photo and had_focus:
            self._window.view.setFocus()
        elif had_focus:
            self._enter_page()

    def _follow(self) -> None:
        self.turn_button.say(tr("Page") if self.shows_photo else tr("Photo"))
        for button in (self._take, self._drop):
            button.setVisible(self._window.session.step == "Indications" and self.shows_photo)
        self._next.setVisible(self._window.session.step != STEPS[-1])

    def _on_tool(self, name: str) -> None:
        """A tool works on the photo; what it gave goes on in the page that called it."""
        if self.way != "turns":
            return
        if name and not self.shows_photo:
            self._show(photo=True)
            self._back = True
        elif not name and self._back:
            self._show(photo=False)

    def _on_step(self, step: str) -> None:
        """What a step is about comes first: outlines on the photo, words on the page."""
        if self.way == "turns":
            self._show(photo=step in {"Photo", "Indications"})

    def fit(self, size: QSize) -> None:
        """Arrange for a window of this size."""
        way = way_for(size)
        if way == self.way:
            if way == "beside" and abs(self._page.width() - self._panel) <= 2:
                self._share(size.width())
            return
        self.way, turns = way, way == "turns"
        under = way == "under"
        self.split.setOrientation(
            Qt.Orientation.Vertical if under else Qt.Orientation.Horizontal
        )
        self._photo.setVisible(True)
        self._page.setVisible(not turns and not self._alone)
        if under:
            photo = round(size.height() * _PHOTO_SHARE)
            self.split.setSizes([photo, size.height() - photo])
        elif not turns:
            self._share(size.width())
        self.bar.setVisible(turns and not self.split.isHidden())
        self._window.next_row.setVisible(not turns)
        self.tell()
        self._follow()

    def _share(self, width: int) -> None:
        """A wide window has a wider page."""
        least, most = _PANEL
        self._panel = round(min(most, max(least, _PANEL_SHARE * width)))
        self.split.setSizes([width - self._panel, self._panel])

    def tell(self, *more: "ReviewBar") -> None:
        """Tell every part how much room there is, from now on also what was made later."""
        self._later += more
        window = self._window
        parts = (window.strip, window.empty, window.photos_strip, window.photo_row, window.foot)
        for one in parts:
            one.be_brief(self.way == "turns")
        for late in self._later:
            late.be_brief(self.way == "turns")

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 - Qt's name
        if watched is self.split:
            self.bar.setVisible(self.way == "turns" and not self.split.isHidden())
        elif event.type() == QEvent.Type.Resize:
            self.fit(self._window.size())
        return super().eventFilter(watched, event)
