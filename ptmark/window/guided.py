"""The first pass on a sample: a card beside what it speaks of, that waits and can be left.

Nothing is blocked meanwhile. How far it came is kept, so that the next start can go on.
"""

import json
from pathlib import Path

from PySide6.QtCore import QEvent, QObject, QPoint, QRect, QSize, Qt, QTimer
from PySide6.QtGui import QGuiApplication, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QFrame, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from ptmark.files import write_whole
from ptmark.places import sample_images, user_folder
from ptmark.window.bits import plain, quiet
from ptmark.window.first_pass import PIECES
from ptmark.window.keys import KEYS, key_button
from ptmark.window.palette import tone
from ptmark.window.parts import Parts
from ptmark.window.words import tr

__all__ = ["GuidedPass"]

_WIDTH = 340
_GAP = 12
_FOLLOW_MS = 200  # the card follows what it stands beside, as pages scroll and sizes change


class GuidedPass(QObject):
    """Leads through `PIECES`; ``at`` is the piece at hand, None while it is left."""

    def __init__(self, window: Parts) -> None:
        super().__init__(window)
        self._window = window
        self.at: int | None = None
        self._was_done = False  # before the piece was shown
        self._far = _read()
        self.button = key_button(
            tr("Guided pass on a sample, three minutes"), "Shift+F1", self.turn, window=window,
            tip=tr("Three minutes on an invented sample photo"),
        )  # fmt: skip
        self._ring = _Ring(window)
        self.card = _Card(self, window)
        self._follow = QTimer(self, interval=_FOLLOW_MS)
        self._follow.timeout.connect(self._place)
        for signal in (window.session.changed, window.saving.saved):
            signal.connect(lambda *_: self._look())
        window.installEventFilter(self)
        window.empty.guide_row.addWidget(self.button)
        window.empty.guide_row.addStretch(1)
        self._name_button()

    @property
    def sample_is_there(self) -> bool:
        return _sample().is_file()

    def turn(self) -> None:
        """Begin, go on where it was left, or leave it."""
        if self.at is not None:
            self.leave()
            return
        self.at = self._far if self._far < len(PIECES) else 0
        window = self._window
        inspection = window.session.inspection
        if inspection is None or inspection.photo is None:
            window.open(_sample())
        self._show()

    def leave(self) -> None:
        """Put it away; the button takes it up again."""
        self.at = None
        self._follow.stop()
        self.card.hide()
        self._ring.hide()
        self._name_button()
        if self._far < len(PIECES):
            said = tr("‹Shift+F1› takes the guided pass up again.")
            self._window.foot.say(KEYS.told(said))

    def go(self, by: int) -> None:
        """The next piece, or the one before; behind the last one the pass is over."""
        if self.at is None:
            return
        self.at = max(0, self.at + by)
        self._far = self.at
        self._keep()
        if self.at >= len(PIECES):
            self.leave()
        else:
            self._show()

    def _show(self) -> None:
        if self.at is None:
            return
        piece, window = PIECES[self.at], self._window
        self._was_done = piece.done is not None and piece.done(window)
        window.session.go(piece.step)
        self.card.say(self.at)
        window.bring(piece.beside(window))
        _bring(piece.beside(window))
        self._name_button()
        self._follow.start()
        QTimer.singleShot(0, self, self._place)

    def _look(self) -> None:
        """Go on by itself once the person has done what a piece asks."""
        if self.at is None:
            return
        done = PIECES[self.at].done
        if done is not None and not self._was_done and done(self._window):
            self.go(1)

    def _place(self) -> None:
        """Stand beside what the piece speaks of, wherever there is room, and ring it."""
        if self.at is None:
            return
        beside, window = PIECES[self.at].beside(self._window), self._window
        if not beside.isVisible():
            self.card.hide()
            self._ring.hide()
            return
        seen = beside.visibleRegion().boundingRect()
        box = QRect(beside.mapTo(window, seen.topLeft()), seen.size())
        self._ring.setGeometry(box.adjusted(-3, -3, 3, 3))
        self._ring.show()
        self._ring.raise_()
        size = QSize(_WIDTH, self.card.heightForWidth(_WIDTH))
        self.card.setGeometry(QRect(place_beside(box, size, window.rect()), size))
        self.card.show()
        self.card.raise_()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 - Qt's name
        if event.type() == QEvent.Type.Resize:
            self._place()
        return super().eventFilter(watched, event)

    def _name_button(self) -> None:
        if self.at is not None:
            self.button.say(tr("Leave the guided pass"))
        elif 0 < self._far < len(PIECES):
            self.button.say(tr("Guided pass on a sample: go on at {0}", self._far + 1))
        else:
            self.button.say(tr("Guided pass on a sample, three minutes"))
        self.button.setEnabled(self.sample_is_there)

    def _keep(self) -> None:
        far = self._far

        def write(_token: object) -> None:
            write_whole(_file(), json.dumps({"at": far}).encode())

        self._window.session.workers.start("", write)


class _Card(QFrame):
    """The words of one piece, with the ways on, back and out."""

    def __init__(self, guide: GuidedPass, window: QWidget) -> None:
        super().__init__(window)
        self.setFrameShape(QFrame.Shape.StyledPanel)
        self.setAutoFillBackground(True)
        self._far, self._text = quiet(), plain()
        self.back_button = key_button(
            tr("Back"), "Alt+Left", lambda: guide.go(-1), window=window
        )
        self.next_button = key_button(
            tr("Next"), "Alt+Right", lambda: guide.go(1), window=window
        )
        self.leave_button = key_button(tr("Leave"), "", guide.leave)
        row = QHBoxLayout()
        for button in (self.back_button, self.next_button, self.leave_button):
            row.addWidget(button)
        column = QVBoxLayout(self)
        column.addWidget(self._far)
        column.addWidget(self._text)
        column.addLayout(row)
        self.hide()

    def say(self, at: int) -> None:
        """Show a piece."""
        text = KEYS.told(PIECES[at].says)
        self._far.setText(tr("Guided pass, {0} of {1}", at + 1, len(PIECES)))
        self._text.setText(text)
        self.setAccessibleName(text)
        self.back_button.setEnabled(at > 0)
        last = at == len(PIECES) - 1
        self.next_button.say(tr("Done") if last else tr("Next"))


class _Ring(QWidget):
    """A line round what the card speaks of; the pointer goes through it."""

    def __init__(self, window: QWidget) -> None:
        super().__init__(window)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.hide()

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        painter = QPainter(self)
        painter.setPen(QPen(tone("accent", QGuiApplication.palette()), 3))
        painter.drawRect(self.rect().adjusted(1, 1, -2, -2))


def place_beside(box: QRect, size: QSize, within: QRect) -> QPoint:
    """Where a card of this size stands beside a box: left, below, above, right, else inside."""
    x = min(max(box.left(), within.left() + _GAP), within.right() - size.width() - _GAP)
    y = min(max(box.top(), within.top() + _GAP), within.bottom() - size.height() - _GAP)
    for at in (
        QPoint(box.left() - size.width() - _GAP, y),
        QPoint(x, box.bottom() + _GAP),
        QPoint(x, box.top() - size.height() - _GAP),
        QPoint(box.right() + _GAP, y),
    ):
        if within.contains(QRect(at, size)):
            return at
    return QPoint(x + _GAP, y + _GAP)


def _bring(widget: QWidget) -> None:
    """Scroll the page that a widget stands on to it."""
    parent = widget.parentWidget()
    while parent is not None:
        if isinstance(parent, QScrollArea):
            parent.ensureWidgetVisible(widget, 0, 60)
        parent = parent.parentWidget()


def _sample() -> Path:
    return sample_images() / "rejectable.jpg"


def _file() -> Path:
    return user_folder() / "guided.json"


def _read() -> int:
    """How far it came; a broken file is as good as none."""
    try:
        at = json.loads(_file().read_text(encoding="utf-8"))["at"]
    except (OSError, ValueError, KeyError, TypeError):
        return 0
    return at if isinstance(at, int) and 0 <= at <= len(PIECES) else 0
