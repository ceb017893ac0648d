"""What a person does to indications: take, drop, add, edit, name, set aside."""

from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QKeyEvent

from ptmark.errors import OutlineError
from ptmark.window.session import Session
from ptmark.window.words import tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.dye import EdgeQuality
    from ptmark.inspection import Marked

__all__ = ["Hands"]

Points = list[tuple[float, float]]


class Hands(QObject):
    """Deeds on the indications of one session; each is one step of undo."""

    def __init__(self, session: Session) -> None:
        super().__init__(session)
        self._session = session

    # -- one key each -------------------------------------------------------------------------
    def take(self) -> None:
        """Take the selected suggestions and go to the next one not looked at."""
        after = self._after()
        self._replace("take", _taken)
        self._go_on(after)

    def drop(self) -> None:
        """Drop the selected ones; an outline drawn by hand is deleted instead."""
        after = self._after()
        self._replace(
            "drop", lambda one: replace(one, standing="dropped") if _suggested(one) else None
        )
        self._go_on(after)

    def drop_as(self, reason: str) -> None:
        """Drop the selected ones and say what they are; taken again, they lose the reason."""
        after = self._after()
        self._replace(
            "drop", lambda one: replace(one, standing="dropped", reason=reason, relevance="")
        )
        self._go_on(after)

    def _replace(self, what: str, new: "Callable[[Marked], Marked | None]") -> None:
        """Put something in place of each selected outline, all as one step of undo."""
        session = self._session
        if session.state is None or not session.selected:
            return
        marked, changed = [], False
        for one in session.state.marked:
            other = new(one) if one.id in session.selected else one
            same = other is not None and _decided(other) == _decided(one)
            changed = changed or not same
            if other is not None:
                marked.append(one if same else other)
        if changed:
            names = ", ".join(session.selected)
            session.change(f"{what} {names}", marked=tuple(marked))

    def take_all(self) -> None:
        """Take every suggestion not looked at yet, as one step."""
        state = self._session.state
        if state is None:
            return
        marked = tuple(
            replace(m, standing="taken") if m.standing == "suggested" else m
            for m in state.marked
        )
        if any(m.standing == "suggested" for m in state.marked):
            self._session.change(tr("take all suggestions"), marked=marked)

    def _after(self) -> list[str]:
        """The list's letters from the one after the selection round to it."""
        names, selected = self._session.order(), self._session.selected
        at = names.index(selected[-1]) + 1 if selected and selected[-1] in names else 0
        return names[at:] + names[:at]

    def _go_on(self, names: list[str]) -> None:
        """Select the first of these that was not looked at yet."""
        marked = self._session.state.marked if self._session.state else ()
        unseen = {one.id for one in marked if one.standing == "suggested"}
        ahead = next((name for name in names if name in unseen), None)
        if ahead is not None:
            self._session.select(ahead)

    def take_left_out(self, index: int) -> None:
        """Take back a blob that was left out."""
        inspection = self._session.inspection
        if inspection is not None and 0 <= index < len(inspection.left_out):
            take = inspection.take_left_out
            self._session.attempt("indications", lambda: self._session.select(take(index)))

    # -- outlines -----------------------------------------------------------------------------
    def add(self, points: Points, mode: str, px_per_screen: float) -> None:
        """Add a traced outline; its edge is judged in a worker."""

        def then(outline: Any, edge: "EdgeQuality") -> None:  # noqa: ANN401 - ndarray
            inspection = self._session.inspection
            if inspection is not None and self._session.attempt(
                "indications", lambda: self._session.select(inspection.add(outline, edge))
            ):
                self._session.go("Indications")

        self._refine(points, mode, px_per_screen, then)

    def trace_again(self, name: str, points: Points, mode: str, px_per_screen: float) -> None:
        """Take one more trace of an indication; it tells how far the hand strays."""

        def then(outline: Any, _edge: "EdgeQuality") -> None:  # noqa: ANN401 - ndarray
            from ptmark.inspection import trace_again

            inspection = self._session.inspection
            if inspection is not None:
                self._session.attempt(
                    "indications", lambda: trace_again(inspection, name, outline)
                )

        self._refine(points, mode, px_per_screen, then)

    def reshape(self, name: str, points: Points, px_per_screen: float) -> None:
        """Put an edited outline in place of the old one."""

        def then(outline: Any, edge: "EdgeQuality") -> None:  # noqa: ANN401 - ndarray
            inspection = self._session.inspection
            if inspection is not None:
                self._session.attempt(
                    "indications",
                    lambda: inspection.edit(
                        name, tr("edit the points of"), outline_px=outline, edge=edge
                    ),
                )

        self._refine(points, "points", px_per_screen, then)

    def _refine(self, points: Points, mode: str, px_per_screen: float, then: Any) -> None:  # noqa: ANN401
        session, inspection = self._session, self._session.inspection
        if inspection is None or inspection.photo is None:
            return
        photo, kind = inspection.photo, inspection.state.mode

        def work(_token: Token) -> "tuple[Any, EdgeQuality]":
            import numpy as np

            from ptmark.dye import refine_in_mode

            outline = np.array(points, float)
            if abs(_area(points)) < 1.0:
                raise OutlineError(
                    tr("the outline encloses less than one pixel"),
                    mend=tr("Draw round the indication."),
                )
            refined, edge = refine_in_mode(photo, outline, kind)
            if mode == "edge":
                return refined, replace(edge, source="snapped")
            # Own judgement: a hand on a pointer holds a line to about one pixel of the screen.
            return outline, replace(
                edge,
                shift_px=max(edge.shift_px, px_per_screen),
                noise_px=max(edge.noise_px, px_per_screen),
                source="hand",
            )

        def done(got: "tuple[Any, EdgeQuality]") -> None:
            now = session.inspection
            if now is not None and now.photo is photo:  # else it belongs to a photo gone by
                then(*got)

        session.workers.start(
            "",
            work,
            done,
            failed=lambda exc: session.say_trouble("indications", exc),
        )

    def key(self, event: QKeyEvent) -> bool:
        """The keys of the indications, wherever the list or the photo has the focus."""
        key, session = event.key(), self._session
        if session.state is None or not session.state.marked:
            return False
        shift = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
        if key in {Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space}:
            self.take_all() if shift else self.take()
        elif key in {Qt.Key.Key_Delete, Qt.Key.Key_Backspace} and not shift:
            self.drop()
        elif key in {Qt.Key.Key_Right, Qt.Key.Key_Down}:
            session.step_by(1)
        elif key in {Qt.Key.Key_Left, Qt.Key.Key_Up}:
            session.step_by(-1)
        elif key == Qt.Key.Key_Escape:
            session.select()
        else:
            return False
        return True


def _taken(one: "Marked") -> "Marked":
    reason = one.reason if one.relevance else ""  # what it was dropped as holds no longer
    return replace(one, standing="taken", reason=reason)


def _decided(one: "Marked") -> tuple[str, str, str]:
    return one.standing, one.relevance, one.reason


def _suggested(one: "Marked") -> bool:
    return one.confidence is not None


def _area(points: Points) -> float:
    """Signed area by the shoelace sum, px squared."""
    ahead = points[1:] + points[:1]
    return 0.5 * sum(x * v - u * y for (x, y), (u, v) in zip(points, ahead, strict=True))
