"""A magnifier at the pointer: the photo's own pixels, enlarged, with a cross at the point."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPen

from ptmark.window.palette import CYAN, DEEP_BLUE, HALO
from ptmark.window.view.levels import PhotoLevels
from ptmark.window.view.viewport import Viewport

__all__ = ["paint_magnifier"]

_RADIUS = 74.0  # widget px
_AWAY = 96.0


def paint_magnifier(
    painter: QPainter,
    photo: PhotoLevels,
    at_px: QPointF,
    pointer: QPointF,
    view: QRectF,
    port: Viewport,
) -> None:
    """Paint the magnifier beside the pointer, and a ring round the pointer.

    ``at_px`` is the pointed place in px of the picture shown, ``pointer`` the same in the
    widget; the magnifier is turned as the view is and shows at least 6 times its scale and no
    less than 4 screen px for each photo px.
    """
    zoom = max(4.0, min(24.0, 6.0 * port.scale))
    centre = _beside(pointer, view)
    level = photo.levels[0]
    half = _RADIUS / zoom
    corner = at_px + QPointF(0.5, 0.5)  # Qt counts from the pixel's corner
    seen = QRectF(corner.x() - half, corner.y() - half, 2 * half, 2 * half)
    image, source = level.seen(seen)
    target = QRectF(centre.x() - _RADIUS, centre.y() - _RADIUS, 2 * _RADIUS, 2 * _RADIUS)
    painter.save()
    hole = QPainterPath()
    hole.addEllipse(target)
    painter.setClipPath(hole)
    painter.fillRect(target, HALO)
    painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform, on=False)
    painter.translate(centre)
    painter.rotate(90 * port.turn)
    painter.drawImage(target.translated(-centre), image, source)
    painter.resetTransform()
    _cross(painter, centre)
    painter.setClipping(False)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for color, wider in ((HALO, 3.0), (CYAN, 0.0)):
        painter.setPen(QPen(color, 2 + wider))
        painter.drawEllipse(target)
        painter.setPen(QPen(color, 1.2 + wider))
        painter.drawEllipse(pointer, 6, 6)
    painter.restore()


def _cross(painter: QPainter, centre: QPointF) -> None:
    for color, width in ((CYAN, 3.0), (DEEP_BLUE, 1.2)):
        painter.setPen(QPen(color, width))
        for dx, dy in ((1, 0), (-1, 0), (0, 1), (0, -1)):
            step = QPointF(dx, dy)
            painter.drawLine(centre + step * 6, centre + step * (_RADIUS - 10))


def _beside(pointer: QPointF, view: QRectF) -> QPointF:
    dx = _AWAY if pointer.x() + _AWAY + _RADIUS < view.right() else -_AWAY
    dy = -_AWAY if pointer.y() - _AWAY - _RADIUS > view.top() else _AWAY
    return pointer + QPointF(dx, dy)
