"""The marks as a picture with a margin round the view, which panning only moves."""

from PySide6.QtCore import QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import QPainter, QPixmap, QTransform

from ptmark.window.marks import Mark, paint_marks
from ptmark.window.rings import Rings
from ptmark.window.viewport import Viewport

__all__ = ["Overlay"]

_MARGIN = 240  # widget px on each side


class Overlay:
    """Paints the marks anew only where marks, selection, zoom or place call for it."""

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
    ) -> None:
        """Draw the marks where the photo lies now."""
        if not marks:
            return
        size = port.widget
        key = (selected, port.scale, ratio, size.width(), size.height(), port.turn, port.bend)
        shift = port.origin - self._at
        fits = min(shift.x(), shift.y()) >= -2 * _MARGIN and max(shift.x(), shift.y()) <= 0
        if marks is not self._marks or key != self._key or not fits or self._picture is None:
            self._marks, self._key = marks, key
            self._paint(port, ratio, painter)
            shift = port.origin - self._at
        if self._picture is not None:
            painter.drawPixmap(shift, self._picture)

    def _paint(self, port: Viewport, ratio: float, like: QPainter) -> None:
        """Paint the view and its margin."""
        size = port.widget + QSizeF(2 * _MARGIN, 2 * _MARGIN)
        picture = QPixmap(round(size.width() * ratio), round(size.height() * ratio))
        picture.setDevicePixelRatio(ratio)
        picture.fill(Qt.GlobalColor.transparent)
        self._at = port.origin + QPointF(_MARGIN, _MARGIN)
        way = port.transform() * QTransform.fromTranslate(_MARGIN, _MARGIN)
        painter = QPainter(picture)
        painter.setFont(like.font())
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        selected = self._key[0]
        if isinstance(selected, frozenset):
            view = QRectF(QPointF(0, 0), size)
            paint_marks(painter, way, self._marks, selected, view, self._rings)
        painter.end()
        self._picture = picture
        self.painted += 1
