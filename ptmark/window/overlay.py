"""Marks and guides as a picture with a margin round the view, which panning only moves."""

from PySide6.QtCore import QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import QPainter, QPixmap

from ptmark.window.guides import Guides
from ptmark.window.marks import Mark, paint_marks
from ptmark.window.rings import Rings
from ptmark.window.viewport import Viewport

__all__ = ["Overlay"]

_MARGIN = 400  # widget px on each side; a wider one is painted anew less often, and longer


class Overlay:
    """Paints anew only where marks, guides, selection, zoom or place call for it."""

    def __init__(self) -> None:
        self._rings = Rings()
        self._picture: QPixmap | None = None
        self._key: tuple[object, ...] = ()
        self._marks: list[Mark] = []
        self._at = QPointF()  # the photo's origin within the picture
        self.painted = 0  # how often it was painted anew, for tests

    def draw(
        self,
        painter: QPainter,
        port: Viewport,
        marks: list[Mark],
        selected: frozenset[str],
        ratio: float,
        guides: Guides | None = None,
    ) -> None:
        """Draw the marks, and the guides under them, where the photo lies now."""
        below = guides.content if guides else ()
        if not marks and not any(below):
            return
        size = port.widget
        key = (
            selected, port.scale, ratio, size.width(), size.height(), port.turn, port.bend,
            *below,
        )  # fmt: skip
        shift = port.origin - self._at
        fits = min(shift.x(), shift.y()) >= -2 * _MARGIN and max(shift.x(), shift.y()) <= 0
        if marks is not self._marks or key != self._key or not fits or self._picture is None:
            self._marks, self._key = marks, key
            self._paint(port, ratio, painter, guides)
            shift = port.origin - self._at
        if self._picture is not None:
            painter.drawPixmap(shift, self._picture)

    def _paint(
        self, port: Viewport, ratio: float, like: QPainter, guides: Guides | None
    ) -> None:
        """Paint the view and its margin."""
        size = port.widget + QSizeF(2 * _MARGIN, 2 * _MARGIN)
        picture = QPixmap(round(size.width() * ratio), round(size.height() * ratio))
        picture.setDevicePixelRatio(ratio)
        picture.fill(Qt.GlobalColor.transparent)
        self._at = port.origin + QPointF(_MARGIN, _MARGIN)
        wide = port.shifted(QPointF(_MARGIN, _MARGIN), size)
        painter = QPainter(picture)
        painter.setFont(like.font())
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if guides is not None:
            guides.paint(painter, wide)
        selected = self._key[0]
        if isinstance(selected, frozenset):
            view = QRectF(QPointF(0, 0), size)
            paint_marks(painter, wide.transform(), self._marks, selected, view, self._rings)
        painter.end()
        self._picture = picture
        self.painted += 1
