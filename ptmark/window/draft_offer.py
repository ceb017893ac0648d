"""Unfinished work that was left behind, offered back in place."""

from collections.abc import Callable
from datetime import datetime

from PySide6.QtCore import SignalInstance
from PySide6.QtWidgets import QWidget

from ptmark.window.autosave import Draft
from ptmark.window.bits import Notice
from ptmark.window.edges import Push
from ptmark.window.words import day, tr

__all__ = ["DraftBack", "DraftOffer"]


class DraftOffer(Notice):
    """One draft with its photo, its size and when it was last changed."""

    def __init__(
        self, draft: Draft, taken: SignalInstance, dismissed: SignalInstance, parent: QWidget
    ) -> None:
        super().__init__(parent)
        self.go_on = Push(tr("Go on with it"))
        self.go_on.setProperty("draft", "go on")
        self.go_on.clicked.connect(lambda: taken.emit(draft))
        discard = Push(tr("Discard it"))
        discard.clicked.connect(lambda: dismissed.emit(draft))
        for button in (self.go_on, discard):
            button.setMinimumHeight(30)
        self.offer(self.go_on, discard)
        said = tr("Unfinished {0}, last changed {1}.", *_told(draft))
        self.say(said, "")


class DraftBack(Notice):
    """One that was discarded, to be taken back."""

    def __init__(self, draft: Draft, back: Callable[[], None], parent: QWidget) -> None:
        super().__init__(parent)
        self.button = Push(tr("Bring it back"))
        self.button.clicked.connect(back)
        self.button.setMinimumHeight(30)
        self.offer(self.button)
        self.say(tr("Discarded: {0}, last changed {1}.", *_told(draft)), "")


def _told(draft: Draft) -> tuple[str, str]:
    """What it is of, in words, and when it was last changed."""
    when = datetime.fromtimestamp(draft.saved).astimezone().strftime("%Y-%m-%d %H:%M")
    count = tr("1 indication") if draft.marked == 1 else tr("{0} indications", draft.marked)
    photos = "" if draft.photo is None else draft.photo.name
    if draft.more:
        more = tr("1 more photo") if draft.more == 1 else tr("{0} more photos", draft.more)
        photos = tr("{0} and {1}", photos, more)
    what = f"{photos}, {count}" if photos else tr("no photo yet")
    part = tr("part {0}, ", draft.part) if draft.part else ""
    work = tr("work") if draft.record is None else tr("review of {0}", draft.record.name)
    return f"{work}: {part}{what}", day(when)
