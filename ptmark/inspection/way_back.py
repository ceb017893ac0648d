"""The way back: states before and after the present one, for undo and redo."""

from ptmark.inspection.state import State

__all__ = ["History"]


class History:
    """The states before and after the present one, each with the name of its change."""

    def __init__(self) -> None:
        self._before: list[tuple[str, State]] = []
        self._after: list[tuple[str, State]] = []

    def note(self, what: str, state: State) -> None:
        """Keep the state that a change is about to leave."""
        self._before.append((what, state))
        self._after.clear()

    def forget(self) -> None:
        """Start afresh."""
        self._before.clear()
        self._after.clear()

    @property
    def undo_name(self) -> str:
        """What undo would take back; "" where there is nothing."""
        return self._before[-1][0] if self._before else ""

    @property
    def redo_name(self) -> str:
        """What redo would bring back; "" where there is nothing."""
        return self._after[-1][0] if self._after else ""

    @property
    def leads(self) -> tuple[State | None, State | None]:
        """Where undo and redo would lead; None where there is nothing."""
        before = self._before[-1][1] if self._before else None
        return before, self._after[-1][1] if self._after else None

    def back(self, present: State) -> State:
        """The state before; the present one where there is none."""
        return _step(self._before, self._after, present)

    def forth(self, present: State) -> State:
        """The state after; the present one where there is none."""
        return _step(self._after, self._before, present)


def _step(
    source: list[tuple[str, State]], target: list[tuple[str, State]], present: State
) -> State:
    if not source:
        return present
    what, state = source.pop()
    target.append((what, present))
    return state
