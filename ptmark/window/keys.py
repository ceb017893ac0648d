"""Every key of the window: what it does, whether a person changed it, and how it is shown.

A key is known by the usual one, so that a change holds in every language. The keys that the
photo and the lists read themselves (`HERE`) keep reading the usual ones: `Keys.as_usual` turns
the person's key into it on the way in.
"""

import json
import re
import weakref
from collections.abc import Callable
from dataclasses import dataclass
from threading import Lock
from typing import Any

from PySide6.QtCore import QEvent, QKeyCombination, QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent, QKeySequence, QShortcut
from PySide6.QtWidgets import QScrollArea, QStackedWidget, QWidget
from shiboken6 import isValid

from ptmark.errors import UsageError
from ptmark.files import write_whole
from ptmark.places import user_folder
from ptmark.window.edges import Push
from ptmark.window.words import tr

__all__ = ["HERE", "KEYS", "Deed", "KeyButton", "Keys", "Shortcut", "key_button"]

# Usual key and what it does, where the photo or a list has the focus.
HERE = (
    ("Return", tr("Take the indication; end what is drawn")),
    ("Shift+Return", tr("Take all indications")),
    ("Del", tr("Drop the indication; take back a point")),
    ("Esc", tr("Select nothing; put the tool away")),
    ("F", tr("Fit the photo")),
    ("1", tr("Show pixel for pixel")),
    ("+", tr("Nearer")),
    ("-", tr("Farther")),
    ("Ctrl+Shift+Left", tr("See more to the left")),
    ("Ctrl+Shift+Right", tr("See more to the right")),
    ("Ctrl+Shift+Up", tr("See more above")),
    ("Ctrl+Shift+Down", tr("See more below")),
    ("Ins", tr("Add a point to an outline")),
)
_TOKEN = re.compile("‹([^›]+)›")


@dataclass
class Deed:
    """What a key does; ``widget`` has it or shows it, None for those of `HERE`."""

    usual: str
    label: str
    widget: "weakref.ref[QWidget] | None" = None

    @property
    def gone(self) -> bool:
        if self.widget is None:
            return False
        widget = self.widget()
        return widget is None or not isValid(widget)

    @property
    def where(self) -> str:
        """The page it stands on, by its name; else that it works all over the window."""
        widget = self.widget() if self.widget else None
        if widget is None:
            return tr("photo and lists")
        while (parent := widget.parentWidget()) is not None:
            widget = parent
            if isinstance(widget, QScrollArea) and widget.accessibleName():
                return widget.accessibleName()
        return tr("whole window")


class Keys(QObject):
    """The keys in use.

    Signals: ``changed()`` when a person has changed one.
    """

    changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._own: dict[str, str] = {}
        self._writing = Lock()
        self._deeds: list[Deed] = []

    def load(self) -> None:
        """Read what a person has changed; a broken file changes nothing."""
        try:
            kept: Any = json.loads(_file().read_text(encoding="utf-8"))
        except (OSError, ValueError):
            kept = {}
        own = kept.items() if isinstance(kept, dict) else ()
        self._own = {str(k): str(v) for k, v in own if QKeySequence(str(v)).count() == 1}
        self.changed.emit()

    def save(self) -> None:
        """Write it, one at a time: a small file, but for a worker all the same."""
        with self._writing:
            write_whole(_file(), json.dumps(self._own, indent=1).encode())

    def add(self, deed: Deed) -> None:
        """Know of one more."""
        self._deeds = [one for one in self._deeds if not one.gone]
        self._deeds.append(deed)

    def deeds(self) -> list[Deed]:
        """All that keys do, once each, in the order in which they were made known."""
        made = {one.usual: one for one in self._deeds if not one.gone}
        return [*made.values(), *(Deed(usual, label) for usual, label in HERE)]

    def of(self, usual: str) -> str:
        """The key in place of the usual one, in the portable spelling."""
        return self._own.get(usual, usual)

    def shown(self, usual: str) -> str:
        """The same as the system writes it."""
        text = QKeySequence(self.of(usual)).toString(QKeySequence.SequenceFormat.NativeText)
        return text.replace("Return", tr("Enter"))

    def told(self, text: str) -> str:
        """A text with ``‹Ctrl+S›`` and the like replaced by the key that is in use."""
        return _TOKEN.sub(lambda found: self.shown(found[1]), text)

    def is_own(self, usual: str) -> bool:
        """Whether a person has changed it."""
        return usual in self._own

    def put(self, usual: str, key: str) -> None:
        """Use another key.

        Raises
        ------
        UsageError
            If it is no single key, or something else has it.
        """
        sequence = QKeySequence(key)
        if sequence.count() != 1:
            raise UsageError(tr("that is no key"), mend=tr("press the key that is to be used"))
        key = sequence.toString()
        for deed in self.deeds():
            if deed.usual != usual and QKeySequence(self.of(deed.usual)) == sequence:
                raise UsageError(
                    tr("{0} is the key of “{1}” already", self.shown(deed.usual), deed.label),
                    mend=tr("press another one, or change that one first"),
                )
        self._own.pop(usual, None)
        if QKeySequence(usual) != sequence:
            self._own[usual] = key
        self.changed.emit()

    def reset_all(self) -> None:
        """Use every usual key again."""
        self._own.clear()
        self.changed.emit()

    def as_usual(self, event: QKeyEvent) -> QKeyEvent:
        """A key press as the usual one that it stands for; a given-up one as no key at all."""
        pressed = _pressed(event)
        for usual, _ in HERE:
            if usual in self._own and QKeySequence(self._own[usual]) in pressed:
                return _event(event, _combination(usual))
        for usual, _ in HERE:
            if usual in self._own and QKeySequence(usual) in pressed:
                return _event(event, QKeyCombination(Qt.Key.Key_unknown))
        return event


def _pressed(event: QKeyEvent) -> list[QKeySequence]:
    """What was pressed; Shift may be part of typing a sign, and the keypad is no other key."""
    key = Qt.Key(event.key())
    key = Qt.Key.Key_Return if key == Qt.Key.Key_Enter else key
    held = event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier
    ways = [held]
    if event.text() and not event.text().isalnum() and event.text().isprintable():
        ways.append(held & ~Qt.KeyboardModifier.ShiftModifier)
    return [QKeySequence(QKeyCombination(way, key)) for way in ways]


def _combination(usual: str) -> QKeyCombination:
    made: QKeyCombination = QKeySequence(usual)[0]  # type: ignore[index]  # Qt has it
    return made


def _event(event: QKeyEvent, key: QKeyCombination) -> QKeyEvent:
    return QKeyEvent(
        QEvent.Type(event.type()), key.key(), key.keyboardModifiers(), "", event.isAutoRepeat()
    )


def _file() -> Any:  # noqa: ANN401 - a Path
    return user_folder() / "keys.json"


KEYS = Keys()


class Shortcut(QShortcut):
    """A key of a whole window that follows what a person has changed."""

    def __init__(
        self,
        usual: str,
        window: QWidget,
        call: Callable[[], object],
        label: str,
        shown_by: QWidget | None = None,
    ) -> None:
        super().__init__(QKeySequence(KEYS.of(usual)), window)
        self._usual = usual
        self.activated.connect(call)
        KEYS.add(Deed(usual, label, weakref.ref(shown_by or window)))
        KEYS.changed.connect(self._follow)

    def _follow(self) -> None:
        self.setKey(QKeySequence(KEYS.of(self._usual)))


class KeyButton(Push):
    """A button with its key on it, whatever that is now."""

    def __init__(self, text: str, key: str, tip: str = "") -> None:
        super().__init__()
        self._words, self._key, self._tip = text, key, tip
        self._brief = False
        self.setMinimumHeight(30)
        KEYS.changed.connect(self._follow)
        self._follow()

    def say(self, text: str, tip: str | None = None) -> None:
        """Another text, and another tip where one is given."""
        self._words, self._tip = text, self._tip if tip is None else tip
        self._follow()

    def be_brief(self, brief: bool) -> None:  # noqa: FBT001 - on or off
        """Show the key in the tip alone, where there is little room."""
        self._brief = brief
        self._follow()

    def _follow(self) -> None:
        shown, text = KEYS.shown(self._key) if self._key else "", self._words
        self.setText(f"{text}  ({shown})" if shown and not self._brief else text)
        self.setAccessibleName(text)
        tip = KEYS.told(self._tip)
        self.setToolTip(f"{tip or text} ({shown})" if shown else tip)
        told = [part for part in (tip if tip != text else "", shown) if part]
        self.setAccessibleDescription(", ".join(told))  # else the tip, with its name once more


def key_button(
    text: str,
    key: str,
    call: Callable[[], object],
    *,
    tip: str = "",
    window: QWidget | None = None,
) -> KeyButton:
    """A button with its key on it; with ``window`` the key works in the whole window.

    One without Ctrl or Alt works as long as the page that the button stands on shows: what is
    typed past a field would else reshape outlines on a page that nobody looks at.
    """
    button = KeyButton(text, key, tip)
    button.clicked.connect(lambda _=False: call())

    def press() -> None:
        if button.isEnabled() and (_is_held(KEYS.of(key)) or _page_shows(button)):
            button.click()

    if window is not None and key:
        Shortcut(key, window, press, text, button)
    return button


def _is_held(key: str) -> bool:
    """Whether Ctrl or Alt belongs to it, which nobody holds while typing a text."""
    held = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier
    return bool(_combination(key).keyboardModifiers() & held)


def _page_shows(widget: QWidget) -> bool:
    """Whether each page that it stands on is the one turned up, be the pages shown or not."""
    while (parent := widget.parentWidget()) is not None:
        if isinstance(parent, QStackedWidget) and parent.currentWidget() is not widget:
            return False
        widget = parent
    return True
