"""The work at hand makes room for a review, and what fits the next work comes back after it."""

from typing import TYPE_CHECKING

from ptmark.window.engine import load_engine
from ptmark.window.parts import Parts

if TYPE_CHECKING:
    from ptmark.inspection import State

__all__ = ["PutAway"]


class PutAway:
    """Holds what the work after the review begins with."""

    def __init__(self, window: Parts) -> None:
        self._window, self._session = window, window.session
        self._kept: State | None = None

    def put_away(self) -> None:
        """Make room: stop what is under way; the work's draft stays on disk."""
        inspection = self._session.inspection
        if inspection is not None:
            state, photo = inspection.state, inspection.photo
            self._kept = state if photo is None else state.for_next_part()
        self._session.autosave.begin()
        self._window.bench.stop()

    def begin_again(self) -> None:
        """Put the review's own work away, and begin with what was kept."""
        session = self._session
        for key in ("open", "look", "scale"):
            session.workers.cancel(key)
        session.autosave.begin()
        fresh = load_engine()()
        session.levels = None
        session.select()
        session.take_over(fresh)
        if (kept := self._kept) is not None:
            session.by_itself(lambda: fresh.take_state(kept))
        session.touched = False
        session.photo_shown.emit(None)
        self._window.drafts.look()
