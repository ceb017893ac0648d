"""Rings round indications that are thin on the screen, so that no mark hides the dye.

Where the outline is wide enough to see the dye inside, the outline itself is drawn.
"""

from collections.abc import Iterable
from math import hypot, log2, sqrt

from PySide6.QtCore import QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import QPainterPath, QPainterPathStroker, QPolygonF, QTransform

__all__ = ["Rings"]

_WIDE = 14.0  # screen px: from here on a line of 4.6 px leaves the dye in sight
_CLEAR = 5.0  # screen px between the dye and the ring
_SMOOTH = 0.2  # screen px: points that change a line by less only cost time to draw


class Rings:
    """Keeps the ring of every outline for about the scale it was last drawn at."""

    def __init__(self) -> None:
        self._kept: dict[int, tuple[QPolygonF, float, QPainterPath]] = {}

    def keep_only(self, outlines: Iterable[QPolygonF]) -> None:
        """Let go of the rings of all other outlines: those of the photos before."""
        here = {id(outline) for outline in outlines}
        for other in self._kept.keys() - here:
            del self._kept[other]

    def path(self, outline: QPolygonF, to_widget: QTransform) -> QPainterPath:
        """What to draw for an outline in photo px, in widget coordinates."""
        scale = _scale(to_widget, outline)
        step = 2 ** (round(2 * log2(scale)) / 2)  # one ring serves half an octave of zoom
        kept = self._kept.get(id(outline))
        if kept is None or kept[0] is not outline or kept[1] != step:
            kept = self._kept[id(outline)] = (outline, step, _ring(outline, step))
        return (QTransform.fromScale(1 / step, 1 / step) * to_widget).map(kept[2])


def _scale(to_widget: QTransform, outline: QPolygonF) -> float:
    """Widget px for each photo px amid the outline."""
    if to_widget.isAffine():
        return sqrt(abs(to_widget.determinant()))
    box = outline.boundingRect()
    small = to_widget.mapRect(QRectF(box.center(), QSizeF(1, 1)))
    return max(1e-3, sqrt(small.width() * small.height()))


def _ring(outline: QPolygonF, scale: float) -> QPainterPath:
    """The outline moved outwards on the screen, or as it is where it is wide enough."""
    points = _thinned([point * scale for point in outline.toList()])
    if len(points) > 2 and _mean_width(points) > _WIDE:
        return _smooth(QPolygonF(points))
    path = QPainterPath()
    path.addPolygon(QPolygonF(points))
    path.closeSubpath()
    stroker = QPainterPathStroker()
    stroker.setWidth(2 * _CLEAR)
    stroker.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    path.setFillRule(Qt.FillRule.WindingFill)
    band = stroker.createStroke(path)
    band.setFillRule(Qt.FillRule.WindingFill)
    whole = band.united(path).simplified()
    outer = max(whole.toSubpathPolygons(), key=_extent, default=None)
    if outer is None:
        return whole
    return _smooth(outer)


def _smooth(polygon: QPolygonF) -> QPainterPath:
    """A closed path through the points that its shape hangs on."""
    import cv2
    import numpy as np

    points = np.array([(p.x(), p.y()) for p in polygon.toList()], np.float32)
    few = cv2.approxPolyDP(points, _SMOOTH, closed=True)[:, 0]
    path = QPainterPath()
    path.addPolygon(QPolygonF([QPointF(x, y) for x, y in few.tolist()]))
    path.closeSubpath()
    return path


def _extent(polygon: QPolygonF) -> float:
    box = polygon.boundingRect()
    return box.width() * box.height()


def _thinned(points: list[QPointF]) -> list[QPointF]:
    """Leave out what stands nearer than a screen px to the point before."""
    kept = points[:1]
    for point in points[1:]:
        if hypot(point.x() - kept[-1].x(), point.y() - kept[-1].y()) >= 1.0:
            kept.append(point)
    return kept


def _mean_width(points: list[QPointF]) -> float:
    """Twice the area over the perimeter's half: w for a long strip of width w."""
    area = around = 0.0
    for a, b in zip(points, points[1:] + points[:1], strict=True):
        area += a.x() * b.y() - b.x() * a.y()
        around += hypot(a.x() - b.x(), a.y() - b.y())
    return abs(area) / around if around else 0.0
