"""What lies on the photo under the outlines: area, reference, weld, finding, grid."""

from PySide6.QtGui import QColor, QPainter, QPainterPath, QPolygonF

from ptmark.window.palette import HALO
from ptmark.window.view.marks import paint_outline, paint_tag
from ptmark.window.view.surface_grid import SurfaceGrid
from ptmark.window.view.viewport import Viewport

__all__ = ["Guides"]


class Guides:
    """Polygons in photo px; what is None or empty is not painted.

    ``weld`` is the marked line, ``weld_says`` its length in words; ``edges`` are the lines of
    the part that rules go by, each with its name.
    """

    def __init__(self) -> None:
        self.area: QPolygonF | None = None
        self.reference: list[QPolygonF] = []
        self.sketch: QPolygonF | None = None
        self.weld: QPolygonF | None = None
        self.weld_says = ""
        self.edges: list[tuple[QPolygonF, str]] = []
        self.grid: SurfaceGrid | None = None

    def clear(self) -> None:
        """Nothing stands on a photo that is only just being opened."""
        self.__init__()  # type: ignore[misc]

    @property
    def content(self) -> tuple[object, ...]:
        """What there is to paint, to tell whether it has changed."""
        parts = (self.area, self.sketch, self.weld, self.weld_says, self.grid)
        return (*parts, tuple(self.reference), tuple(self.edges))

    def paint_bar(self, painter: QPainter, port: Viewport) -> None:
        """Paint the scale bar, which stays where it is in the view."""
        if self.grid is not None:
            painter.save()
            painter.setClipRect(port.photo_rect())
            self.grid.paint_bar(painter, port)
            painter.restore()

    def paint(self, painter: QPainter, port: Viewport) -> None:
        """Paint everything but the scale bar, the surface grid lowest."""
        to_widget = port.transform()
        if self.area is not None:
            self._paint_area(painter, port, to_widget.map(self.area))
        if self.grid is not None:
            painter.save()
            painter.setClipRect(port.photo_rect())
            self.grid.paint(painter, port)
            painter.restore()
        for part in self.reference:
            paint_outline(painter, to_widget.map(part), "taken", closed=part.size() > 2)
        if self.sketch is not None:
            closed = self.sketch.size() > 2
            paint_outline(painter, to_widget.map(self.sketch), "area", closed=closed)
        if self.weld is not None:
            line = to_widget.map(self.weld)
            paint_outline(painter, line, "weld", closed=False)
            paint_tag(painter, line.first(), self.weld_says)  # amid the weld it would hide dye

        for shape, says in self.edges:
            line = to_widget.map(shape)
            paint_outline(painter, line, "weld", closed=False)
            paint_tag(painter, line.first(), says)

    @staticmethod
    def _paint_area(painter: QPainter, port: Viewport, shape: QPolygonF) -> None:
        outside, inside = QPainterPath(), QPainterPath()
        outside.addRect(port.photo_rect())
        inside.addPolygon(shape)
        shade = QColor(HALO)
        shade.setAlpha(80)
        painter.fillPath(outside - inside, shade)
        paint_outline(painter, shape, "area")
