"""Two pictures in one frame, parted by an upright line that is dragged or stepped along."""

from collections.abc import Callable

from PySide6.QtCore import QObject, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPen

from ptmark.window.palette import CYAN
from ptmark.window.view.levels import PhotoLevels

__all__ = ["Curtain"]

_REACH = 12.0  # px of the screen from the line at which it can be grabbed: a finger's width
_GROUND, _INK = QColor(12, 22, 44, 220), QColor(255, 255, 255)


class Curtain(QObject):
    """Hides the photo left of the line behind another picture of the same size.

    Signals: ``moved(float)`` the share of the view's width left of the line, 0 to 1.
    """

    moved = Signal(float)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.levels: PhotoLevels | None = None
        self.names = ("", "")  # left and right of the line
        self.share = 0.5
        self.held = False

    def hang(self, levels: PhotoLevels | None, names: tuple[str, str] = ("", "")) -> None:
        """Show this picture left of the line; None takes it away."""
        self.levels, self.names, self.held = levels, names, False

    def hides(self, shown: PhotoLevels | None) -> bool:
        """Whether it belongs over what is shown: the photo as it is, whole or reduced."""
        mine = self.levels
        if mine is None or shown is None or shown.bend is not None:
            return False
        return (mine.width, mine.height) == (shown.width, shown.height)

    def grab(self, where: QPointF, width: float) -> bool:
        """Take hold of the line where the pointer is on it."""
        self.held = self.levels is not None and abs(where.x() - self.share * width) <= _REACH
        return self.held

    def drag(self, where: QPointF, width: float) -> None:
        """Draw the line to the pointer."""
        self.put(where.x() / max(width, 1.0))

    def put(self, share: float) -> None:
        """Put the line at a share of the width."""
        share = min(max(share, 0.0), 1.0)
        if share != self.share:
            self.share = share
            self.moved.emit(share)

    def paint(
        self,
        painter: QPainter,
        view: QRectF,
        picture: Callable[[QPainter, PhotoLevels, QRectF], None],
    ) -> None:
        """Paint the other picture, the line and what stands on either side of it.

        ``picture`` paints levels into a part of the view.
        """
        if self.levels is None:
            return
        x = view.left() + self.share * view.width()
        left = QRectF(view.left(), view.top(), x - view.left(), view.height())
        if left.width() >= 1:
            picture(painter, self.levels, left)
        for width, color in ((4, _GROUND), (2, CYAN)):
            painter.setPen(QPen(color, width))
            painter.drawLine(QPointF(x, view.top()), QPointF(x, view.bottom()))
        painter.setBrush(_GROUND)
        painter.drawEllipse(QPointF(x, view.center().y()), 10, 10)
        handle = Qt.AlignmentFlag.AlignCenter
        painter.drawText(QRectF(x - 10, view.center().y() - 10, 20, 20), handle, "↔")
        for name, edge, side in zip(self.names, (x - 12, x + 12), (-1, 1), strict=True):
            self._label(painter, name, edge, side, view)

    def _label(
        self, painter: QPainter, name: str, edge: float, side: int, view: QRectF
    ) -> None:
        """A name beside the line, where there is room for it."""
        size = painter.fontMetrics().size(0, name)
        room = edge - view.left() if side < 0 else view.right() - edge
        if not name or room < size.width() + 16:
            return
        left = edge - size.width() - 12 if side < 0 else edge
        box = QRectF(left, view.top() + 10, size.width() + 12, size.height() + 6)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(_GROUND)
        painter.drawRoundedRect(box, 3, 3)
        painter.setPen(_INK)
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, name)
