"""What stands where the photo will be: open or drop one, try a sample, go on with old work."""

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from ptmark.errors import PtmarkError
from ptmark.window.autosave import Draft
from ptmark.window.bits import Notice, quiet
from ptmark.window.draft_offer import DraftBack, DraftOffer
from ptmark.window.edges import Push
from ptmark.window.keys import KeyButton
from ptmark.window.language_choice import LanguageChoice
from ptmark.window.words import tr

if TYPE_CHECKING:
    from ptmark.window.card_out import CardOut

__all__ = ["EmptyPage"]

_MOST_DRAFTS = 3


class EmptyPage(QScrollArea):
    """Invites to begin.

    Signals: ``open_asked()``, ``sample_asked(object)`` the path of a photo or record,
    ``draft_taken(object)`` and ``draft_dismissed(object)`` a `Draft`.
    """

    open_asked = Signal()
    sample_asked = Signal(object)
    draft_taken = Signal(object)
    draft_dismissed = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        inner = QWidget()
        self.setWidget(inner)
        self._column = column = QVBoxLayout(inner)
        column.setSpacing(12)
        column.addStretch(2)
        head = QLabel(tr("Measure, judge and document penetrant indications from a photo"))
        font = head.font()
        font.setPointSizeF(font.pointSizeF() * 1.5)
        font.setBold(True)
        head.setFont(font)
        head.setWordWrap(True)
        column.addWidget(head)
        column.addWidget(
            quiet(
                tr(
                    "Photograph the developed part square on, evenly lit, with "
                    "the scale card or a rule lying in the plane of the surface. "
                    "Then drop the photo here."
                )
            )
        )
        self.open_button = KeyButton(tr("Open a photo …"), "Ctrl+O")
        self.open_button.setMinimumHeight(40)
        self.open_button.setMaximumWidth(320)
        self.open_button.clicked.connect(self.open_asked)
        column.addWidget(self.open_button)
        self.notice = Notice()
        column.addWidget(self.notice)
        self._drafts = QVBoxLayout()  # where the smallest screen shows them: they are work
        column.addLayout(self._drafts)
        self.review_row = QHBoxLayout()  # the review's own ways in
        column.addLayout(self.review_row)
        self.guide_row = QHBoxLayout()  # the guided pass, for who is here for the first time
        column.addLayout(self.guide_row)
        self._card_place = QVBoxLayout()
        column.addLayout(self._card_place)
        self._samples = QVBoxLayout()
        column.addLayout(self._samples)
        self._recent = QHBoxLayout()
        column.addLayout(self._recent)
        column.addStretch(3)
        self.language = LanguageChoice()
        column.addWidget(self.language)
        self.be_brief(brief=False)

    def be_brief(self, brief: bool) -> None:  # noqa: FBT001 - on or off
        """Narrow margins, and keys in the tips alone."""
        self._column.setContentsMargins(*((16, 8, 16, 8) if brief else (60, 24, 60, 24)))
        for button in self.findChildren(KeyButton):
            button.be_brief(brief)

    def offer_card(self, card: "CardOut") -> None:
        """Offer the scale card to print, which is needed before the first photo."""
        card.button.setMaximumWidth(self.open_button.maximumWidth())
        self._card_place.addWidget(card)

    def offer_samples(self, photos: list[Path]) -> None:
        """Offer the rendered demo photos."""
        if not photos:
            return
        self._samples.addWidget(quiet(tr("Or try it on a sample, rendered and invented:")))
        row = QHBoxLayout()
        for path in photos[:4]:
            button = Push(tr(path.stem.replace("-", " ").replace("_", " ").capitalize()))
            button.setAccessibleName(tr("Try the sample photo {0}", path.stem))
            button.setMinimumHeight(32)
            button.clicked.connect(lambda _=False, p=path: self.sample_asked.emit(p))
            row.addWidget(button)
        row.addStretch(1)
        self._samples.addLayout(row)

    def offer_recent(self, records: list[Path]) -> None:
        """Offer the records saved last, newest first."""
        while (item := self._recent.takeAt(0)) is not None:
            if (old := item.widget()) is not None:
                old.deleteLater()
        if records:
            self._recent.addWidget(quiet(tr("Saved last:"), wraps=False))
        for path in records:
            button = Push(path.stem)
            button.setAccessibleName(tr("Open the record {0}", path.name))
            button.setToolTip(str(path))
            button.setMinimumHeight(32)
            button.clicked.connect(lambda _=False, p=path: self.sample_asked.emit(p))
            self._recent.addWidget(button)
        self._recent.addStretch(1)

    def offer_drafts(
        self, drafts: list[Draft], back: Draft | None, bring_back: Callable[[], None]
    ) -> None:
        """Offer unfinished work, newest first, above it what was just discarded."""
        while (item := self._drafts.takeAt(0)) is not None:
            if (old := item.widget()) is not None:
                old.deleteLater()
        if back is not None:
            self._drafts.addWidget(DraftBack(back, bring_back, self))
        for draft in drafts[:_MOST_DRAFTS]:
            self._drafts.addWidget(
                DraftOffer(draft, self.draft_taken, self.draft_dismissed, self)
            )
        if len(drafts) > _MOST_DRAFTS:
            more = len(drafts) - _MOST_DRAFTS
            self._drafts.addWidget(quiet(tr("and {0} older", more)))

    def draft_buttons(self) -> list[QPushButton]:
        """The buttons that go on with a draft, newest first."""
        return [b for b in self.findChildren(QPushButton) if b.property("draft") == "go on"]

    def say_error(self, exc: PtmarkError | None) -> None:
        """Show why a photo could not be opened."""
        self.notice.say_error(exc)
