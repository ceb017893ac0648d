"""Which photos were looked over, and in which area: what was not tells nothing."""

from typing import Any

from ptmark.inspection.state import State

__all__ = ["Searched"]

Area = tuple[tuple[float, float], ...] | None  # corners in px; None for the whole photo


class Searched:
    """Remembers the last look at each photo, by its SHA-256."""

    def __init__(self) -> None:
        # whether it called any, and in which area and mode it looked
        self._known: dict[str, tuple[bool, Area, str]] = {}

    def copy(self) -> "Searched":
        """The same on its own."""
        other = Searched()
        other._known = dict(self._known)
        return other

    def note(self, sha256: str, state: State, *, called: bool = False) -> None:
        """Remember that a photo was looked over as its state has it."""
        self._known[sha256] = called, state.area_px, state.mode

    def whole(self, sha256: str, state: State) -> bool:
        """Whether a look stands behind what is marked, or behind nothing being marked.

        Nothing marked tells that none was seen only where the last look called none, in the
        area that is examined now: not once a look that called some was undone.
        """
        if sha256 not in self._known:
            return False
        called, _, mode = self._known[sha256]
        covered = not self.leaves_out(sha256, state)
        return bool(state.marked) or (not called and covered and mode == state.mode)

    def leaves_out(self, sha256: str, state: State) -> bool:
        """Whether some of the area that is examined now lay outside that of the last look."""
        known = self._known.get(sha256)
        return known is not None and not _covers(known[1], state.area_px)

    def to_json(self, sha256: str, state: State) -> dict[str, bool]:
        """What a draft keeps of it."""
        part = {"leaves_out": True} if self.leaves_out(sha256, state) else {}
        return {"looked": self.whole(sha256, state), **part}

    def restore(self, sha256: str, state: State, look: dict[str, Any]) -> None:
        """Take what a draft kept; older ones tell nothing, as all were looked over."""
        if look.get("looked", True):
            self.note(sha256, state)
        if look.get("leaves_out"):
            self._known[sha256] = True, (), state.mode


def _covers(looked: Area, now: Area) -> bool:
    """Whether one area holds another, to half a pixel."""
    if looked is None or looked == now:
        return True
    if now is None or len(looked) < 3:
        return False
    from shapely import Polygon

    return bool(Polygon(looked).buffer(0.5).covers(Polygon(now)))
