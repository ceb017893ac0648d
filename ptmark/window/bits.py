"""Small pieces that every step uses: headings, notices, buttons that show their key."""

from PySide6.QtCore import QEvent, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QGuiApplication, QKeySequence, QPalette, QWheelEvent
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from ptmark.window.aloud import say_aloud
from ptmark.window.edges import DropDown, Line
from ptmark.window.glyphs import glyph_pixmap
from ptmark.window.headings import Heading
from ptmark.window.keys import key_button
from ptmark.window.palette import tone
from ptmark.window.words import from_core

__all__ = [
    "Choice",
    "CommitEdit",
    "Notice",
    "Quiet",
    "as_list",
    "heading",
    "key_button",
    "plain",
    "quiet",
    "scrolled",
    "stack",
]


def heading(text: str) -> Heading:
    """A heading inside a step."""
    label = Heading(text)
    label.setContentsMargins(0, 8, 0, 0)
    return label


def plain(text: str = "") -> QLabel:
    """Running text that wraps and can be copied."""
    label = QLabel(text)
    label.setWordWrap(True)
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    label.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
    label.setMinimumWidth(120)
    return label


class Quiet(QLabel):
    """Text in the quiet tone that follows the palette."""

    def __init__(self, text: str) -> None:
        super().__init__(text)
        self.tint()

    def tint(self) -> None:
        """Take the tone from the palette as it is now."""
        palette = QGuiApplication.palette()
        palette.setColor(QPalette.ColorRole.WindowText, tone("quiet", palette))
        self.setPalette(palette)


def as_list(table: QTableView, *, row_px: int = 28) -> None:
    """Make a table a list of whole rows: striped, without grid and row numbers."""
    table.setSelectionBehavior(QTableView.SelectionBehavior.SelectRows)
    table.setTabKeyNavigation(False)
    table.setShowGrid(False)
    table.setAlternatingRowColors(True)
    table.setIconSize(QSize(15, 15))
    table.verticalHeader().hide()
    table.verticalHeader().setDefaultSectionSize(row_px)
    table.horizontalHeader().setHighlightSections(False)


def stack(first: QWidget, *under: QWidget) -> QWidget:
    """Widgets under each other without gaps; the first takes the room there is."""
    made = QWidget()
    column = QVBoxLayout(made)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(0)
    column.addWidget(first, 1)
    for one in under:
        column.addWidget(one)
    return made


def scrolled(inner: QWidget) -> QScrollArea:
    """A widget behind scroll bars where there is less room than it needs."""
    made = QScrollArea()
    made.setWidgetResizable(True)
    made.setFrameShape(QFrame.Shape.NoFrame)
    made.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    made.setWidget(inner)
    return made


def quiet(text: str = "", *, wraps: bool = True) -> QLabel:
    """A remark, less loud than running text but still at WCAG AA contrast."""
    label = Quiet(text)
    label.setTextFormat(Qt.TextFormat.PlainText)
    if wraps:
        label.setWordWrap(True)
        label.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
    return label


class Notice(QFrame):
    """Something to know, in place: a sign, a sentence, at times a button or two."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFrameShape(QFrame.Shape.StyledPanel)
        self._sign = QLabel()
        self._sign.setFixedSize(QSize(20, 20))
        self.text = plain()
        row = QHBoxLayout(self)
        row.setContentsMargins(10, 8, 10, 8)
        side = QVBoxLayout()
        side.addWidget(self._sign)
        side.addStretch(1)
        row.addLayout(side)
        self._column = QVBoxLayout()
        self._column.addWidget(self.text)
        self._buttons = QHBoxLayout()
        self._buttons.addStretch(1)  # an empty row would hold the whole column narrow
        self._column.addLayout(self._buttons)
        row.addLayout(self._column, 1)
        self.hide()

    def say(self, text: str, sign: str = "look") -> None:
        """Show a sentence; nothing hides the notice."""
        new = text != self.text.text()
        self.text.setText(text)
        self.setAccessibleName(text)
        self._sign.setPixmap(glyph_pixmap(sign, self.palette(), 18))
        self.setVisible(bool(text))
        if new and self.isVisible():
            say_aloud(self, text)

    def say_error(self, exc: Exception | None) -> None:
        """Show what went wrong, where, and the mend; None hides the notice."""
        text = "" if exc is None else from_core(exc)
        new = text != self.text.text()
        self.say(text)
        if text and new:
            self.bring()

    def bring(self) -> None:
        """Scroll the page to it: what caused it may stand far below."""
        QTimer.singleShot(0, self, self._scroll_here)  # once it has its place

    def _scroll_here(self) -> None:
        page = self.parentWidget()
        while page is not None and not isinstance(page, QScrollArea):
            page = page.parentWidget()
        if page is not None and self.isVisible():
            page.ensureWidgetVisible(self)

    def put_under(self, widget: QWidget) -> None:
        """Put something that stays under the sentence and its buttons."""
        self._column.addWidget(widget)

    def offer(self, *buttons: QPushButton) -> None:
        """Put buttons under the sentence in place of those before."""
        while self._buttons.count():
            item = self._buttons.takeAt(0)
            if item is not None and (old := item.widget()) is not None:
                old.deleteLater()
        for button in buttons:
            self._buttons.addWidget(button)
        self._buttons.addStretch(1)


class Choice(DropDown):
    """A list to choose from that the wheel changes only once it has the focus.

    A page that scrolls under the pointer must not change a criterion on its way.
    """

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.setAccessibleDescription(name)  # on Linux the name spoken is the row that shows
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMinimumHeight(28)

    def wheelEvent(self, event: QWheelEvent) -> None:  # noqa: N802 - Qt's name
        if self.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()


class CommitEdit(Line):
    """A line of text that hands itself over when typing pauses.

    Signals: ``committed(str)`` 250 ms after the last key, or when the field is left. Undo is
    the window's: one undo for everything.
    """

    committed = Signal(str)

    def __init__(self, text: str = "", parent: QWidget | None = None) -> None:
        super().__init__(text, parent)
        self.setMinimumHeight(28)
        self._last = text
        self.tint()
        self._pause = QTimer(self, singleShot=True, interval=250)
        self._pause.timeout.connect(self.commit)
        self.textEdited.connect(lambda _: self._pause.start())
        self.editingFinished.connect(self.commit)

    def tint(self) -> None:
        """Give the hint inside the field the contrast of text, which Qt's own lacks."""
        palette = QGuiApplication.palette()
        palette.setColor(QPalette.ColorRole.PlaceholderText, tone("quiet", palette))
        self.setPalette(palette)

    def commit(self) -> None:
        """Hand over now, where something was typed."""
        self._pause.stop()
        if self.text() != self._last:
            self._last = self.text()
            self.committed.emit(self._last)

    def show_text(self, text: str) -> None:
        """Show what the state holds, unless the user is just typing something newer."""
        if not self._pause.isActive() and text != self._last:
            self._last = text
            self.setText(text)

    def event(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.ShortcutOverride and (
            event.matches(QKeySequence.StandardKey.Undo)  # type: ignore[attr-defined]
            or event.matches(QKeySequence.StandardKey.Redo)  # type: ignore[attr-defined]
        ):
            self.commit()
            event.ignore()
            return False
        if event.type() == QEvent.Type.ShortcutOverride and self._at_its_end(event):
            self.commit()
            event.ignore()  # no word is left to move over: the key of the next step goes on
            return False
        return super().event(event)

    def _at_its_end(self, event: QEvent) -> bool:
        onward = event.matches(QKeySequence.StandardKey.MoveToNextWord)  # type: ignore[attr-defined]
        back = event.matches(QKeySequence.StandardKey.MoveToPreviousWord)  # type: ignore[attr-defined]
        at = self.cursorPosition()
        return (onward and at == len(self.text())) or (back and at == 0)
