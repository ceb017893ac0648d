"""Finds work that was left behind and offers it back, in place."""

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QVBoxLayout

from ptmark.window.autosave import Draft, left_behind
from ptmark.window.draft_offer import DraftOffer
from ptmark.window.empty_page import EmptyPage
from ptmark.window.session import Session
from ptmark.window.workers import Token

__all__ = ["DraftDesk"]


class DraftDesk(QObject):
    """Offers drafts on the empty page and, beside an open photo, at the photo step."""

    def __init__(self, session: Session, empty: EmptyPage, beside: QVBoxLayout) -> None:
        super().__init__(session)
        self._session, self._empty, self._beside = session, empty, beside
        empty.draft_dismissed.connect(self._discard)

    def look(self) -> None:
        """Look for drafts in a worker and offer them."""
        self._session.workers.start("", _look, self._offer, key="drafts")

    def _offer(self, drafts: list[Draft]) -> None:
        empty = self._empty
        empty.offer_drafts(drafts)
        while (item := self._beside.takeAt(0)) is not None:
            if (old := item.widget()) is not None:
                old.deleteLater()
        page = self._beside.parentWidget()
        if drafts and self._session.levels is not None and page is not None:
            offer = DraftOffer(drafts[0], empty.draft_taken, empty.draft_dismissed, page)
            self._beside.addWidget(offer)

    def _discard(self, draft: Draft) -> None:
        draft.path.unlink(missing_ok=True)
        draft.path.with_suffix(".lock").unlink(missing_ok=True)
        self.look()


def _look(_token: Token) -> list[Draft]:
    return left_behind()
