"""Bleed-out over the photos of one inspection: the report's plot in a window of its own."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLayout, QVBoxLayout, QWidget

from ptmark.window.bits import plain
from ptmark.window.roles import Role, tell_role
from ptmark.window.session import Session
from ptmark.window.sketch_view import SketchView
from ptmark.window.words import from_core, tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.report.set_growth import Bleedout

__all__ = ["GrowthPage"]

_EDGE = 16  # px left round it; the title bar takes some of that


class GrowthPage(QWidget):
    """Shows `ptmark.report.set_growth` of the inspection as it stands when it is asked for."""

    def __init__(self, session: Session, parent: QWidget) -> None:
        super().__init__(parent, Qt.WindowType.Window)
        tell_role(self, Role.Window)
        self.setWindowTitle(tr("Bleed-out over time – ptmark"))
        self._session, self._over = session, parent
        self.plot, self.says = SketchView(300), plain()
        column = QVBoxLayout(self)
        column.setSizeConstraint(QLayout.SizeConstraint.SetNoConstraint)
        column.addWidget(self.plot, 1)
        column.addWidget(self.says)

    def ask(self) -> None:
        """Plot beside the window, then show."""
        inspection = self._session.inspection
        if inspection is None:
            return
        twin = inspection.twin()

        def work(_token: Token) -> "Bleedout":
            from ptmark.report.set_growth import bleedout

            return bleedout(twin.to_record())

        self._session.workers.start(
            tr("Plotting bleed-out"),
            work,
            self._show,
            failed=lambda exc: self._session.say_trouble("photo", exc),
            key="growth",
        )

    def _show(self, made: "Bleedout") -> None:
        says, state = from_core(made.says), self._session.state
        dry = state is not None and state.fields.get("developer_dry_at", "").strip()
        if made.picture is None and not dry:
            says += " " + tr("Press “Developer dry” in the process log, or type when it was.")
        self.plot.show_pixels(made.picture, says)
        self.says.setText(says)
        self._place(1000, 560 if made.picture is not None else 120)
        self.show()
        self.activateWindow()

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        if event.key() == Qt.Key.Key_Escape:
            self.close()
        else:
            super().keyPressEvent(event)

    def _place(self, wide: int, high: int) -> None:
        """In the middle of the window, but nowhere off the screen that it stands on."""
        room = self.screen().availableGeometry().adjusted(_EDGE, 2 * _EDGE, -_EDGE, -_EDGE)
        self.resize(min(wide, room.width()), min(high, room.height()))
        place = self.rect()
        place.moveCenter(self._over.frameGeometry().center())
        left = max(min(place.left(), room.right() - place.width()), room.left())
        top = max(min(place.top(), room.bottom() - place.height()), room.top())
        self.move(left, top)
