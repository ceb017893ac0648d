"""How outlines stand on the photo: line style, colour, weight and a letter beside each.

Taken: solid cyan. Suggested: dashed. Dropped: thin, dotted, grey-blue. Selected: heavier,
deep blue inside. Another's outline beside a review: dash-dotted, deep blue inside. All but the
dropped ones have a dark halo, so that they show on white developer and on dark metal alike.
Points are px of the photo, (0, 0) a pixel's centre.
"""

from dataclasses import dataclass
from math import hypot

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontMetricsF,
    QPainter,
    QPainterPath,
    QPen,
    QPolygonF,
)

from ptmark.window.palette import CYAN, CYAN_PALE, DEEP_BLUE, GREY_BLUE, HALO, round_pen

__all__ = [
    "Mark",
    "gap_to_stretch",
    "near",
    "paint_outline",
    "paint_path",
    "paint_tag",
]


@dataclass(frozen=True)
class Mark:
    """One outline to paint.

    ``style`` is its standing, or "left out", "area" or "weld"; beside a review, "first" (an
    outline of the first inspector) or "remark" (a ring round a place). ``told`` is whether its
    name stands beside it.
    """

    name: str
    outline: QPolygonF
    style: str
    told: bool = True

    @property
    def box(self) -> QRectF:
        return self.outline.boundingRect()


_DASHES = {
    "suggested": [4.0, 3.0],
    "dropped": [1.0, 3.0],
    "left out": [1.0, 2.0],
    "area": [9.0, 4.0],
    "weld": [14.0, 4.0, 2.0, 4.0],
    "first": [8.0, 5.0, 2.0, 5.0],
}
_COLORS = {
    "dropped": GREY_BLUE,
    "left out": GREY_BLUE,
    "area": CYAN_PALE,
    "weld": CYAN_PALE,
    "first": CYAN_PALE,
    "remark": CYAN_PALE,
}


def paint_outline(
    painter: QPainter,
    shape: QPolygonF,
    style: str,
    *,
    selected: bool = False,
    closed: bool = True,
) -> None:
    """Draw a polygon in widget coordinates in the style of its standing."""
    path = QPainterPath()
    path.addPolygon(shape)
    if closed:
        path.closeSubpath()
    paint_path(painter, path, style, selected=selected)


def paint_path(
    painter: QPainter, path: QPainterPath, style: str, *, selected: bool = False
) -> None:
    """Draw a line in widget coordinates in the style of its standing."""
    width = 1.2 if style in {"dropped", "left out"} else 1.8
    if selected or style == "first":
        width = 3.0
    if style not in {"dropped", "left out"} or selected:
        painter.strokePath(path, _pen(HALO, width + 2.0, style))
    painter.strokePath(path, _pen(_COLORS.get(style, CYAN), width, style))
    if (selected and style == "taken") or style == "first":
        painter.strokePath(path, _pen(DEEP_BLUE, 1.2, style))


def _pen(color: QColor, width: float, style: str) -> QPen:
    pen = round_pen(color, width)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    dashes = _DASHES.get(style)
    if dashes:
        step = 2.0 / width  # a dash is told in pen widths; keep its length on the screen
        pen.setDashPattern([d * step for d in dashes])
    return pen


def near(outline: QPolygonF, at: QPointF, reach: float) -> bool:
    """Whether a point lies in an outline or within reach of its line; all in photo px."""
    box = outline.boundingRect().adjusted(-reach, -reach, reach, reach)
    if not box.contains(at):
        return False
    if outline.containsPoint(at, Qt.FillRule.OddEvenFill):
        return True
    points = outline.toList()
    return any(
        gap_to_stretch(at, start, end) <= reach
        for start, end in zip(points, points[1:] + points[:1], strict=True)
    )


def gap_to_stretch(at: QPointF, start: QPointF, end: QPointF) -> float:
    """Distance of a point from the stretch between two others."""
    way = end - start
    length2 = QPointF.dotProduct(way, way)
    share = 0.0 if length2 == 0 else QPointF.dotProduct(at - start, way) / length2
    foot = start + way * max(0.0, min(1.0, share))
    return hypot(at.x() - foot.x(), at.y() - foot.y())


def paint_tag(painter: QPainter, at: QPointF, text: str, leftmost: float | None = None) -> None:
    """A few words on a dark plate above a place in the widget.

    It is centred there, or begins at ``leftmost`` where it would reach beyond.
    """
    font = QFont(painter.font())
    font.setPixelSize(13)
    painter.setFont(font)
    size = QFontMetricsF(font).boundingRect(text)
    wide, high = size.width() + 12, 20.0
    left = at.x() - wide / 2
    left = left if leftmost is None else max(left, leftmost)
    box = QRectF(left, at.y() - high - 8, wide, high)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(HALO)
    painter.drawRoundedRect(box, 4, 4)
    painter.setPen(CYAN_PALE)
    painter.drawText(box, Qt.AlignmentFlag.AlignCenter, text)
    painter.setBrush(Qt.BrushStyle.NoBrush)
