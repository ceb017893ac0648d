"""Split, join, smooth and cut on the selected indications; each is one step of undo."""

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from ptmark.errors import OutlineError
from ptmark.window.bench import Bench
from ptmark.window.session import Session
from ptmark.window.tools.points import AreaTool, PickTool
from ptmark.window.words import tr

if TYPE_CHECKING:
    from ptmark.inspection.state import Array, Marked

__all__ = ["Reshaper"]

Points = list[tuple[float, float]]
_REACH = 6.0  # screen px: what the eye takes for a wobble of the hand


class Reshaper(QObject):
    """Puts reshaped outlines in place of the selected ones."""

    def __init__(self, session: Session, bench: Bench) -> None:
        super().__init__(session)
        self._session, self._bench = session, bench

    def split(self) -> None:
        """Ask for a line across the selected outline."""
        one = self._one()
        if one is not None:
            tool = PickTool("split")
            tool.finished.connect(lambda line: self._split(one, line))
            self._bench.start(tr("split {0}", one.id), tool)

    def cut(self) -> None:
        """Ask for a loop round what is to go."""
        one = self._one()
        if one is not None:
            tool = AreaTool(tr("what is to be cut off"))
            tool.finished.connect(lambda loop: self._cut(one, loop))
            self._bench.start(tr("cut {0}", one.id), tool)

    def join(self) -> None:
        """Make one outline of all selected ones; it keeps the first letter."""
        session = self._session
        state = session.state
        chosen = [m for m in state.marked if m.id in session.selected] if state else []
        session.attempt("indications", lambda: self._join(chosen))

    def smooth(self) -> None:
        """Take the wobble out of the selected outline."""
        one = self._one()
        if one is not None:
            self._session.attempt("indications", lambda: self._smooth(one))

    def _one(self) -> "Marked | None":
        one = self._session.one_selected
        if one is None and self._session.has_photo:
            self._session.say_trouble(
                "indications",
                OutlineError(
                    tr("no outline to work on"), mend=tr("Select one indication first.")
                ),
            )
        return one

    # -- what is done -------------------------------------------------------------------------
    def _split(self, one: "Marked", line: Points) -> None:
        from ptmark.window.indications.reshaping import split_outline

        self._bench.stop()
        self._session.attempt(
            "indications",
            lambda: self._replace("split", one, split_outline(one.outline_px, line)),
        )

    def _cut(self, one: "Marked", loop: Points) -> None:
        from ptmark.window.indications.reshaping import cut_away

        self._bench.stop()
        self._session.attempt(
            "indications", lambda: self._replace("cut", one, cut_away(one.outline_px, loop))
        )

    def _replace(self, what: str, one: "Marked", parts: "list[Array]") -> None:
        """The parts in place of one; the first keeps its letter, the others get free ones."""
        from ptmark.inspection.state import free_letter

        session = self._session
        if session.state is None:
            return
        marked, names = list(session.state.marked), [one.id]
        at = next(n for n, m in enumerate(marked) if m.id == one.id)
        marked[at] = replace(one, outline_px=parts[0], standing=_kept(one))
        for part in parts[1:]:
            name = free_letter({*session.state.letters, *names})
            marked.append(replace(one, id=name, outline_px=part, standing=_kept(one)))
            names.append(name)
        session.change(f"{what} {one.id}", marked=tuple(marked))
        session.select(*names)

    def _join(self, chosen: "list[Marked]") -> None:
        from ptmark.dye import EdgeQuality
        from ptmark.window.indications.reshaping import join_outlines

        session = self._session
        outline = join_outlines([one.outline_px for one in chosen])
        first, gone = chosen[0], {one.id for one in chosen[1:]}
        edge = EdgeQuality(  # no better than the worst of them
            shift_px=max(one.edge.shift_px for one in chosen),
            noise_px=max(one.edge.noise_px for one in chosen),
            source="hand",
            ends_unsure=any(one.edge.ends_unsure for one in chosen),
        )
        notes = "; ".join(dict.fromkeys(one.note for one in chosen if one.note))
        told = [one.confidence for one in chosen if one.confidence is not None]
        made = replace(
            first,
            outline_px=outline,
            edge=edge,
            note=notes,
            standing="taken",
            confidence=min(told, default=None),  # who joins suggestions has traced no end
        )
        state = session.state
        marked = tuple(
            made if m.id == first.id else m
            for m in (state.marked if state else ())
            if m.id not in gone
        )
        session.change(tr("join {0}", ", ".join(one.id for one in chosen)), marked=marked)
        session.select(first.id)

    def _smooth(self, one: "Marked") -> None:
        import numpy as np
        from shapely import LinearRing, points

        from ptmark.window.indications.reshaping import smooth_outline

        outline = smooth_outline(one.outline_px, _REACH * self._bench.px_per_screen)
        # How far the line was moved is how badly it was known.
        moved = LinearRing(one.outline_px).distance(points(outline))
        noise = float(np.sqrt(np.mean(np.square(moved))))
        edge = replace(
            one.edge, noise_px=float(np.hypot(one.edge.noise_px, noise)), source="hand"
        )
        marked = tuple(
            replace(one, outline_px=outline, edge=edge, standing=_kept(one))
            if m.id == one.id
            else m
            for m in (self._session.state.marked if self._session.state else ())
        )
        self._session.change(tr("smooth {0}", one.id), marked=marked)


def _kept(one: "Marked") -> str:
    """What a hand has changed was looked at; a dropped one stays dropped."""
    return "taken" if one.standing == "suggested" else one.standing
