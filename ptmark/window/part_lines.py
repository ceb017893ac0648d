"""The lines of the part that rules go by, such as a free edge: asked for, marked, removed."""

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from ptmark.errors import PtmarkError
from ptmark.window.bench import Bench
from ptmark.window.bits import Choice, key_button, plain
from ptmark.window.session import Session
from ptmark.window.words import tr

if TYPE_CHECKING:
    from ptmark.criteria import Asked
    from ptmark.inspection.state import State

__all__ = ["PartLines", "asked_in"]


def asked_in(session: Session) -> "Asked":
    """What the chosen rules ask of the part; nothing where they cannot be used."""
    from ptmark.criteria import Asked, asked_of

    try:
        profile = session.inspection.profile if session.inspection else None
    except PtmarkError:
        profile = None
    if profile is None:
        return Asked(weld_length=False, thickness=False, diameter=False, lines=())
    return asked_of(profile)


class PartLines(QWidget):
    """Shows only where a rule measures distances to a line, or one is marked."""

    def __init__(self, session: Session, bench: Bench) -> None:
        super().__init__()
        self._session = session
        self.says = plain()
        self.which = Choice(tr("Line of the part"))
        self.mark_button = key_button(
            tr("Mark this line"), "", lambda: bench.mark_edge(self.which.currentData())
        )
        self.remove_button = key_button(tr("Remove its lines"), "", self._remove)
        self.which.activated.connect(lambda _: self._enable())
        row = QHBoxLayout()
        row.addWidget(self.which, 1)
        row.addWidget(self.mark_button)
        row.addWidget(self.remove_button)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.says)
        column.addLayout(row)

    def show_lines(self, state: "State", asked: "Asked") -> None:
        """Offer the lines that are asked for and those that are marked."""
        marked = [name for name, _ in state.edges_px]
        names = list(dict.fromkeys((*asked.lines, *marked)))
        self.setVisible(bool(names))
        chosen = self.which.currentData()
        self.which.clear()
        for name in names:
            self.which.addItem(tr("{0}: {1} marked", name, marked.count(name)), name)
        self.which.setCurrentIndex(max(0, self.which.findData(chosen)))
        missing = [name for name in asked.lines if name not in marked]
        self.says.setText(
            tr("The rules ask for the distance from: {0}.", ", ".join(missing))
            if missing
            else ""
        )
        self.says.setVisible(bool(missing))
        self._enable()

    def _enable(self) -> None:
        state = self._session.state
        name = self.which.currentData()
        self.mark_button.setEnabled(self._session.has_photo and bool(name))
        self.remove_button.setEnabled(state is not None and name in dict(state.edges_px))

    def _remove(self) -> None:
        state, name = self._session.state, self.which.currentData()
        if state is not None:
            kept = tuple(one for one in state.edges_px if one[0] != name)
            self._session.change(tr("remove a line of the part"), edges_px=kept)
