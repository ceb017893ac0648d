"""What every tool has: it is given photo px and keys, and paints over the photo."""

from math import hypot

from PySide6.QtCore import QObject, QPointF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPolygonF, QTransform

from ptmark.window.palette import CYAN, DEEP_BLUE, HALO
from ptmark.window.view.marks import paint_outline
from ptmark.window.words import tr

__all__ = ["Tool", "distance", "paint_handles", "paint_line"]

_STEPS = {
    Qt.Key.Key_Left: QPointF(-1, 0),
    Qt.Key.Key_Right: QPointF(1, 0),
    Qt.Key.Key_Up: QPointF(0, -1),
    Qt.Key.Key_Down: QPointF(0, 1),
}


def distance(a: QPointF, b: QPointF) -> float:
    """Distance of two points in their own unit."""
    return hypot(a.x() - b.x(), a.y() - b.y())


class Tool(QObject):
    """Base of the tools.

    Signals: ``changed()`` asks for a repaint, ``finished(object)`` hands over the result,
    ``stopped()`` tells that the user left the tool, ``refused(object)`` a `PtmarkError`.
    ``px_per_screen`` is kept by the view: photo px for one screen px.
    """

    changed = Signal()
    finished = Signal(object)
    stopped = Signal()
    refused = Signal(object)

    wants_magnifier = True
    by_keys = tr("By keys: arrows steer, Space sets a point.")  # told with the first hint

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.px_per_screen = 1.0

    @property
    def reach_px(self) -> float:
        """How near the pointer must come to take hold of something, photo px."""
        return 10.0 * self.px_per_screen

    def hint(self) -> str:
        """What to do now, in one line."""
        return ""

    def press(self, at: QPointF) -> None:
        """The pointer goes down at photo px."""

    def move(self, at: QPointF, *, held: bool) -> None:
        """The pointer moves; ``held`` while it is down."""

    def release(self, at: QPointF) -> None:
        """The pointer goes up."""

    def accept(self) -> None:
        """Enter or a double click: that is all."""

    def back(self) -> None:
        """Backspace or Delete: take back the last step."""

    def key(self, event: QKeyEvent) -> bool:
        """Any other key; tells whether it was used."""
        return False

    def outline_now(self) -> list[tuple[float, float]]:
        """What is drawn so far, photo px, to be measured while it grows."""
        return []

    def paint(self, painter: QPainter, to_widget: QTransform) -> None:
        """Paint over the photo, in widget coordinates."""

    @staticmethod
    def step_of(event: QKeyEvent) -> QPointF | None:
        """The step of an arrow key in screen px, ten times as long with Shift."""
        step = _STEPS.get(Qt.Key(event.key()))
        if step is None:
            return None
        return step * 10 if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else step


def paint_handles(
    painter: QPainter, points: list[QPointF], active: int, *, radius: float = 4.5
) -> None:
    """Points that can be taken hold of, in widget coordinates."""
    for index, point in enumerate(points):
        painter.setPen(HALO)
        painter.setBrush(DEEP_BLUE if index == active else CYAN)
        size = radius + 2 if index == active else radius
        painter.drawEllipse(point, size, size)


def paint_line(
    painter: QPainter, to_widget: QTransform, points: list[QPointF], *, closed: bool, style: str
) -> None:
    """An open or closed line through photo px."""
    if len(points) > 1:
        paint_outline(painter, to_widget.map(QPolygonF(points)), style, closed=closed)
