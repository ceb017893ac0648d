"""Small signs drawn by shape, so that no verdict rests on colour or on a font.

Tick in a circle: acceptable, done. Cross in a square: rejectable. Question mark in a
diamond: undecided. Triangle with a stroke: look here. Empty circle: nothing yet.
"""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QIcon, QPainter, QPalette, QPixmap, QPolygonF

from ptmark.window.palette import round_pen, tone

__all__ = ["draw_glyph", "glyph_icon", "glyph_pixmap"]

_TONE_OF = {
    "acceptable": "acceptable",
    "done": "acceptable",
    "rejectable": "rejectable",
    "look": "rejectable",
    "undecided": "undecided",
}


def draw_glyph(painter: QPainter, name: str, box: QRectF, color: QColor) -> None:
    """Draw a sign into a square box."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.translate(box.topLeft())
    painter.scale(box.width() / 20, box.height() / 20)
    painter.setPen(round_pen(color, 2.0))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    _DRAW.get(name, _circle)(painter)
    painter.restore()


def _circle(painter: QPainter) -> None:
    painter.drawEllipse(QPointF(10, 10), 8, 8)


def _tick(painter: QPainter) -> None:
    _circle(painter)
    painter.drawPolyline([QPointF(6, 10.5), QPointF(9, 13.5), QPointF(14, 7)])


def _cross(painter: QPainter) -> None:
    painter.drawRect(QRectF(2.5, 2.5, 15, 15))
    painter.drawLine(QPointF(6.5, 6.5), QPointF(13.5, 13.5))
    painter.drawLine(QPointF(13.5, 6.5), QPointF(6.5, 13.5))


def _diamond(painter: QPainter) -> None:
    corners = [QPointF(10, 1), QPointF(19, 10), QPointF(10, 19), QPointF(1, 10)]
    painter.drawPolygon(QPolygonF(corners))
    painter.drawPolyline([QPointF(8, 8), QPointF(9, 6.5), QPointF(11.2, 6.5), QPointF(12, 8)])
    painter.drawPolyline([QPointF(12, 8), QPointF(10, 10.2), QPointF(10, 11.4)])
    painter.drawPoint(QPointF(10, 14.2))


def _triangle(painter: QPainter) -> None:
    painter.drawPolygon(QPolygonF([QPointF(10, 2), QPointF(18.5, 17.5), QPointF(1.5, 17.5)]))
    painter.drawLine(QPointF(10, 8), QPointF(10, 11.8))
    painter.drawPoint(QPointF(10, 14.6))


_DRAW = {
    "acceptable": _tick,
    "done": _tick,
    "rejectable": _cross,
    "undecided": _diamond,
    "look": _triangle,
}


def glyph_pixmap(
    name: str,
    palette: QPalette,
    size: int = 18,
    ratio: float = 2.0,
    *,
    on_highlight: bool = False,
) -> QPixmap:
    """A sign as a picture on a clear ground, in the tone that fits the palette."""
    color = tone(_TONE_OF.get(name, "quiet"), palette)
    if on_highlight:
        color = palette.color(QPalette.ColorRole.HighlightedText)
    pixmap = QPixmap(round(size * ratio), round(size * ratio))
    pixmap.setDevicePixelRatio(ratio)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    draw_glyph(painter, name, QRectF(0, 0, size, size), color)
    painter.end()
    return pixmap


def glyph_icon(name: str, palette: QPalette, size: int = 18) -> QIcon:
    """A sign as an icon, with a variant for a selected row."""
    icon = QIcon(glyph_pixmap(name, palette, size))
    chosen = glyph_pixmap(name, palette, size, on_highlight=True)
    icon.addPixmap(chosen, QIcon.Mode.Selected)
    return icon
