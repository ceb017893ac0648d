"""What every step's page has: a title, a place for errors, and a column to put things in."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QScrollArea, QVBoxLayout, QWidget

from ptmark.errors import PtmarkError
from ptmark.window.bits import Notice
from ptmark.window.headings import Heading
from ptmark.window.roles import Role, tell_role
from ptmark.window.session import Session
from ptmark.window.words import tr

__all__ = ["StepPage"]


class StepPage(QScrollArea):
    """A page that scrolls; ``column`` takes its content, ``notice`` stands under the title."""

    def __init__(self, session: Session, title: str, place: str) -> None:
        super().__init__()
        self.session = session
        self._place = place
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAsNeeded)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        inner = QWidget()
        self.column = QVBoxLayout(inner)
        self.column.setContentsMargins(16, 12, 16, 16)
        self.column.setSpacing(8)
        self.setWidget(inner)
        tell_role(self, Role.Form)
        self.setAccessibleName(tr(title))
        self.column.addWidget(Heading(tr(title), larger=1.35))
        self.notice = Notice()
        self.column.addWidget(self.notice)
        session.trouble.connect(self._on_trouble)

    def _on_trouble(self, place: str, exc: PtmarkError | None) -> None:
        if place == self._place:
            self.notice.say_error(exc)
