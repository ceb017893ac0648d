"""A grid and a scale bar that lie on the surface and follow its perspective."""

from math import ceil, floor, log10
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor, QPainter, QPolygonF

from ptmark.units import MM_PER_IN
from ptmark.window.palette import CYAN_PALE, HALO, round_pen
from ptmark.window.view.marks import paint_tag
from ptmark.window.view.viewport import Viewport
from ptmark.window.words import format_length, tr

if TYPE_CHECKING:
    from ptmark.scale import SurfaceMap

__all__ = ["SurfaceGrid", "round_step"]

_APART = 56.0  # screen px between lines, at least
_MOST = 80  # lines each way
_POINTS = 17  # along a line: perspective keeps it straight, a lens need not
_BAR = 130.0  # screen px, about the bar's length


def round_step(least: float) -> float:
    """The smallest of 1, 2, 5 times a power of ten that is no less than this.

    Examples
    --------
    >>> round_step(0.3), round_step(1.0), round_step(21.0)
    (0.5, 1.0, 50.0)
    """
    decade = 10.0 ** floor(log10(least) + 1e-9)
    return next(m * decade for m in (1.0, 2.0, 5.0, 10.0) if m * decade >= least * (1 - 1e-9))


class SurfaceGrid:
    """Painted by `Guides`; lengths are round in the unit that the window shows."""

    def __init__(self, surface: "SurfaceMap", unit: str) -> None:
        self._surface, self._unit = surface, unit
        self.step_mm = 0.0  # as last painted

    def paint(self, painter: QPainter, port: Viewport) -> None:
        """Paint the part that shows."""
        seen = self._in_sight(port)
        if seen is None:
            return
        left, top, right, bottom = seen
        per = 1.0 if self._unit == "mm" else MM_PER_IN
        scale = self._surface.mm_per_px() / port.scale  # mm for each screen px
        self.step_mm = round_step(_APART * scale / per) * per
        while max(right - left, bottom - top) > _MOST * self.step_mm:
            self.step_mm = round_step(self.step_mm / per * 1.01) * per
        way, step = port.transform(), self.step_mm
        line, halo = QColor(CYAN_PALE), QColor(HALO)
        line.setAlpha(150)
        halo.setAlpha(70)
        shapes = [
            way.map(self._between(*ends))
            for ends in (
                *(
                    ((x * step, top), (x * step, bottom))
                    for x in _whole(left / step, right / step)
                ),
                *(
                    ((left, y * step), (right, y * step))
                    for y in _whole(top / step, bottom / step)
                ),
            )
        ]
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for color, width in ((halo, 2.6), (line, 1.0)):
            painter.setPen(round_pen(color, width))
            for shape in shapes:
                painter.drawPolyline(shape)

    def _in_sight(self, port: Viewport) -> tuple[float, float, float, float] | None:
        """Box in mm of what the view shows of the surface, kept well short of its horizon."""
        import numpy as np

        view = QRectF(0, 0, port.widget.width(), port.widget.height()) & port.photo_rect()
        if view.isEmpty():
            return None
        steps, back = [i / 8 for i in range(9)], port.transform().inverted()[0]
        places = [
            back.map(QPointF(view.x() + view.width() * a, view.y() + view.height() * b))
            for a in steps
            for b in steps
        ]
        points = np.array([(place.x(), place.y()) for place in places])
        if not self._surface.in_view(points):
            points = points[[self._surface.in_view(point[None]) for point in points]]
        scales = np.sqrt(np.abs(np.linalg.det(self._surface.jacobian(points))))
        kept = self._surface.to_mm(points[scales < 3 * self._surface.mm_per_px()])
        if not len(kept):
            return None
        (left, top), (right, bottom) = np.min(kept, axis=0), np.max(kept, axis=0)
        return float(left), float(top), float(right), float(bottom)

    def _between(self, start: tuple[float, float], end: tuple[float, float]) -> QPolygonF:
        import numpy as np

        curved = self._surface.lens.kappa or not self._surface.flat
        count = _POINTS if curved else 2
        shares = np.linspace(0, 1, count)[:, None]
        points: Any = np.array(start) * (1 - shares) + np.array(end) * shares
        return QPolygonF([QPointF(x, y) for x, y in self._surface.to_px(points).tolist()])

    def paint_bar(self, painter: QPainter, port: Viewport) -> None:
        """A bar of round length near the lower left, along the surface as it lies there."""
        import numpy as np

        per = 1.0 if self._unit == "mm" else MM_PER_IN
        about = _BAR * self._surface.mm_per_px() / port.scale / per
        view = QRectF(0, 0, port.widget.width(), port.widget.height()) & port.photo_rect()
        corner = port.to_px(view.bottomLeft() + QPointF(28, -26))
        beside = port.to_px(view.bottomLeft() + QPointF(28 + _BAR, -26))
        pair = np.array([[corner.x(), corner.y()], [beside.x(), beside.y()]])
        if not self._surface.in_view(pair):
            return
        start, toward = self._surface.to_mm(pair)
        reach = float(np.hypot(*(toward - start)))
        length = round_step(max(min(about, reach / per), 1e-6) / 2) * per
        end = start + (toward - start) * (length / reach)
        middle = (start + end) / 2
        points = [QPointF(x, y) for x, y in self._surface.to_px(np.array([start, middle, end]))]
        a, m, b = (port.to_widget(point) for point in points)
        for color, width in ((HALO, 8.0), (CYAN_PALE, 4.0)):
            painter.setPen(round_pen(color, width))
            painter.drawLine(a, b)
        painter.setPen(round_pen(HALO, 2.0))
        painter.drawLine(m - QPointF(0, 4), m + QPointF(0, 4))
        digits = 0 if length / per >= 1 else 2 if self._unit == "mm" else 3
        step_digits = 0 if self.step_mm / per >= 1 else 2 if self._unit == "mm" else 3
        bar = format_length(length, self._unit, digits)
        grid = format_length(self.step_mm, self._unit, step_digits)
        paint_tag(painter, m, tr("{0}, grid {1}", bar, grid), view.left() + 8)


def _whole(low: float, high: float) -> range:
    return range(ceil(low), floor(high) + 1)
