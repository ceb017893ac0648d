"""Finds work that was left behind and offers it back, in place."""

from PySide6.QtCore import QLockFile, QObject
from PySide6.QtWidgets import QVBoxLayout

from ptmark.window.autosave import Draft, left_behind, lock_of
from ptmark.window.draft_offer import DraftBack, DraftOffer
from ptmark.window.empty_page import EmptyPage
from ptmark.window.session import Session
from ptmark.window.workers import Token

__all__ = ["DraftDesk"]

_ASIDE = ".discarded"


class DraftDesk(QObject):
    """Offers drafts on the empty page and, beside an open photo, at the photo step."""

    def __init__(self, session: Session, empty: EmptyPage, beside: QVBoxLayout) -> None:
        super().__init__(session)
        self._session, self._empty, self._beside = session, empty, beside
        self._aside: list[tuple[Draft, QLockFile]] = []
        empty.draft_dismissed.connect(self._discard)

    def look(self) -> None:
        """Look for drafts in a worker and offer them."""
        self._session.workers.start("", _look, self._offer, key="drafts")

    def _offer(self, found: tuple[list[Draft], list[Draft]]) -> None:
        empty, (drafts, aside) = self._empty, found
        for draft in reversed(aside):
            self._hold(draft)
        back = self._aside[-1][0] if self._aside else None
        empty.offer_drafts(drafts, back, self._bring_back)
        while (item := self._beside.takeAt(0)) is not None:
            if (old := item.widget()) is not None:
                old.deleteLater()
        page = self._beside.parentWidget()
        if self._session.levels is None or page is None:
            return
        if back is not None:
            self._beside.addWidget(DraftBack(back, self._bring_back, page))
        if drafts:
            offer = DraftOffer(drafts[0], empty.draft_taken, empty.draft_dismissed, page)
            self._beside.addWidget(offer)

    def _discard(self, draft: Draft) -> None:
        """Put it aside: as long as the window is open, a wrong click can be taken back."""
        if self._hold(draft):  # else another window has gone on with it meanwhile
            draft.path.replace(draft.path.with_suffix(_ASIDE))
        self.look()

    def _hold(self, draft: Draft) -> bool:
        """Let no other window offer it; one that was killed holds what it put aside no more."""
        lock = lock_of(draft.path)
        held = lock.tryLock(0)
        if held:
            self._aside.append((draft, lock))
        return held

    def _bring_back(self) -> None:
        draft, lock = self._aside.pop()
        draft.path.with_suffix(_ASIDE).replace(draft.path)
        lock.unlock()
        self.look()

    def close(self) -> None:
        """Let go of what was discarded."""
        while self._aside:
            draft, lock = self._aside.pop()
            draft.path.with_suffix(_ASIDE).unlink(missing_ok=True)
            lock.unlock()


def _look(_token: Token) -> tuple[list[Draft], list[Draft]]:
    """The drafts left behind, and those put aside in a window that was killed."""
    return left_behind(), left_behind(_ASIDE)
