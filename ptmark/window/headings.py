"""Headings of the pages, and the keys that go from one to the next.

A page is one run of Tab; who fills in the last part of a record would press it fifty times.
"""

from PySide6.QtCore import QObject, QPoint, Qt
from PySide6.QtWidgets import QLabel, QScrollArea, QWidget

from ptmark.window.aloud import say_aloud
from ptmark.window.keys import Shortcut
from ptmark.window.reading_order import in_order, reveal, stands
from ptmark.window.roles import Role, tell_role
from ptmark.window.words import tr

__all__ = ["Heading", "Headings"]


class Heading(QLabel):
    """Words over a part of a page, ``larger`` than its text by a factor."""

    def __init__(self, text: str, larger: float = 1.0) -> None:
        super().__init__()
        tell_role(self, Role.Heading)
        font = self.font()
        font.setPointSizeF(larger * font.pointSizeF())
        font.setBold(True)
        self.setFont(font)
        self.setText(text)

    def setText(self, text: str) -> None:  # noqa: N802 - Qt's name
        super().setText(text)
        self.setAccessibleName(text)


class Headings(QObject):
    """Goes by key to the first piece under the next heading, or the one before."""

    def __init__(self, window: QWidget) -> None:
        super().__init__(window)
        self._window = window
        Shortcut("F7", window, lambda: self.step(1), tr("Next heading"))
        Shortcut("Shift+F7", window, lambda: self.step(-1), tr("Heading before"))

    def step(self, by: int) -> None:
        """Give the focus to the part ``by`` headings on; after the last comes the first."""
        order = list(in_order(self._window))
        parts = _parts(order)
        if not parts:
            return
        now = _place(order, self._window.focusWidget())
        if by > 0:
            at = next((one for one in parts if one[0] > now), parts[0])
        else:
            at = next((one for one in reversed(parts) if one[0] < now), parts[-1])
        _, heading, first = at
        first.setFocus(Qt.FocusReason.TabFocusReason)
        _bring_up(heading)
        reveal(first)
        say_aloud(first, heading.text())


def _parts(order: list[QWidget]) -> list[tuple[int, Heading, QWidget]]:
    """Each heading that shows with the first piece under it and the place of that."""
    made, heading = [], None
    for at, one in enumerate(order):
        if isinstance(one, Heading):
            heading = one
        elif heading is not None and stands(one):
            made.append((at, heading, one))
            heading = None
    return made


def _bring_up(heading: Heading) -> None:
    """Scroll its page until it stands on top, so that what it is over can be seen."""
    page = heading.parentWidget()
    while page is not None:
        inner = page.widget() if isinstance(page, QScrollArea) else None
        if isinstance(page, QScrollArea) and inner is not None:
            page.verticalScrollBar().setValue(heading.mapTo(inner, QPoint(0, 0)).y())
        page = page.parentWidget()


def _place(order: list[QWidget], widget: QWidget | None) -> int:
    """Where what has the focus comes, by itself or as part of another; -1 for nowhere."""
    while widget is not None:
        if widget in order:
            return order.index(widget)
        widget = widget.parentWidget()
    return -1
