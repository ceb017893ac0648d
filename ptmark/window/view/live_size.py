"""Length and width while an outline is being drawn or edited."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from ptmark.errors import PtmarkError
from ptmark.window.session import Session
from ptmark.window.tools.tool import Tool
from ptmark.window.wording import size_in_words
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.measure import Measurement

__all__ = ["LiveSize"]


class LiveSize(QObject):
    """Measures what a tool has drawn so far, beside the window.

    Signals: ``said(str)`` the size in words, "" where there is none.
    """

    said = Signal(str)

    def __init__(self, session: Session) -> None:
        super().__init__(session)
        self._session = session
        self._tool: Tool | None = None
        self._soon = QTimer(self, singleShot=True, interval=50)
        self._soon.timeout.connect(self._measure)

    def watch(self, tool: Tool | None) -> None:
        """Measure this tool's outline from now on; None for no tool."""
        self._tool = tool
        self._session.workers.cancel("live")
        if tool is None:
            self._soon.stop()
            self.said.emit("")
        else:
            tool.changed.connect(self._later)

    def _later(self) -> None:
        if not self._soon.isActive():
            self._soon.start()

    def _measure(self) -> None:
        inspection, tool = self._session.inspection, self._tool
        points = tool.outline_now() if tool else []
        if inspection is None or inspection.surface is None or tool is None or len(points) < 3:
            self.said.emit("")
            return
        surface, relief, slack = (
            inspection.surface,
            inspection.state.relief_mm,
            tool.px_per_screen,
        )

        def work(token: Token) -> "Measurement | None":
            import numpy as np

            from ptmark.dye import EdgeQuality
            from ptmark.measure import Conditions, measure_outline

            token.check()
            edge = EdgeQuality(shift_px=slack, noise_px=slack, source="hand")
            try:
                outline = np.array(points, float)
                return measure_outline(outline, surface, edge, Conditions(relief_mm=relief))
            except PtmarkError:  # not an outline yet
                return None

        def done(made: "Measurement | None") -> None:
            self.said.emit(size_in_words(made, self._session.unit) if made else "")

        self._session.workers.start("", work, done, key="live")
