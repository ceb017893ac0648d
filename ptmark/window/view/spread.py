"""Marks and their letters laid out at one scale, wherever the photo lies in the view.

Places are widget px with the photo's origin at (0, 0), so that panning changes none of them. A
letter keeps the place it was given, and gets it when somebody first looks near it.
"""

from collections.abc import Iterator

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QPainterPath, QPen, QTransform

from ptmark.window.palette import CYAN, CYAN_PALE, DEEP_BLUE, GREY_BLUE, HALO
from ptmark.window.view.crowd import Crowd
from ptmark.window.view.marks import Mark, paint_path
from ptmark.window.view.rings import Rings

__all__ = ["Spread"]

_PEN = 12.0  # widget px that ring and pen reach beyond an outline's box, at most
_GAP, _HIGH = 6.0, 18.0  # of a letter's plate: from the outline, and its height
_NAMELESS = {"left out", "area", "weld"}
# Labels beside a review go below the outline, the usual letter stays free above it.
_FIRST_PLACE = {"first": 4, "remark": 5}


class Spread:
    """Paints any part of what lies over a photo; the selected ones last, letters on top.

    ``way`` leads from photo px to the widget, the photo's origin at (0, 0).
    """

    def __init__(
        self,
        marks: list[Mark],
        selected: frozenset[str],
        way: QTransform,
        rings: Rings,
        font: QFont,
    ) -> None:
        self._marks = sorted(marks, key=lambda m: m.name in selected)
        self._selected, self._way, self._rings = selected, way, rings
        self._fonts = {chosen: _font(font, bold=chosen) for chosen in (False, True)}
        self._boxes = [
            way.mapRect(m.box).adjusted(-_PEN, -_PEN, _PEN, _PEN) for m in self._marks
        ]
        self._paths: dict[int, QPainterPath] = {}
        self._letters: dict[int, QRectF] = {}
        self._crowd, widest = Crowd(), 0.0
        for mark, box in zip(self._marks, self._boxes, strict=True):
            if _has_letter(mark):
                self._crowd.add(box.adjusted(_GAP, _GAP, -_GAP, -_GAP))
                widest = max(widest, self._wide(mark))
        self._reach = widest + _GAP, _HIGH + _GAP  # of a letter beyond its outline's box

    def empty(self, part: QRectF) -> bool:
        """Whether nothing reaches into a part."""
        return not self._near(part)

    def pieces(self, painter: QPainter, part: QRectF) -> Iterator[None]:
        """Paint a part, which lies at the painter's (0, 0); pauses after each piece."""
        way = QTransform.fromTranslate(-part.x(), -part.y())
        near = self._near(part)
        for at in near:
            if self._boxes[at].intersects(part):
                mark = self._marks[at]
                chosen = mark.name in self._selected
                paint_path(painter, way.map(self._path(at)), mark.style, selected=chosen)
                yield
        for at in near:
            if _has_letter(self._marks[at]):
                place = self._letter(at)
                if place.adjusted(-2, -2, 2, 2).intersects(part):
                    self._paint_letter(painter, at, place.translated(-part.topLeft()))
                yield

    def _near(self, part: QRectF) -> list[int]:
        """Marks whose outline or letter may reach into a part."""
        wide, high = self._reach
        around = part.adjusted(-wide, -high, wide, high)
        return [at for at, box in enumerate(self._boxes) if box.intersects(around)]

    def _path(self, at: int) -> QPainterPath:
        if at not in self._paths:
            self._paths[at] = self._rings.path(self._marks[at].outline, self._way)
        return self._paths[at]

    def _wide(self, mark: Mark) -> float:
        _, sizes = self._fonts[mark.name in self._selected]
        return sizes.horizontalAdvance(mark.name) + 10

    def _letter(self, at: int) -> QRectF:
        """Where a letter stands: beside its outline, where it is free."""
        if at not in self._letters:
            mark = self._marks[at]
            box, wide = self._path(at).boundingRect(), self._wide(mark)
            first = _FIRST_PLACE.get(mark.style, 0)
            self._letters[at] = _free_place(box, wide, self._crowd, first)
            self._crowd.add(self._letters[at])
        return self._letters[at]

    def _paint_letter(self, painter: QPainter, at: int, place: QRectF) -> None:
        mark = self._marks[at]
        chosen = mark.name in self._selected
        painter.setFont(self._fonts[chosen][0])
        painter.setPen(QPen(CYAN if chosen else HALO, 1.4 if chosen else 0))
        painter.setBrush(DEEP_BLUE if chosen else HALO)
        painter.drawRoundedRect(place, 4, 4)
        painter.setPen(GREY_BLUE.lighter(130) if mark.style == "dropped" else CYAN_PALE)
        painter.drawText(place, Qt.AlignmentFlag.AlignCenter, mark.name)
        painter.setBrush(Qt.BrushStyle.NoBrush)


def _has_letter(mark: Mark) -> bool:
    return mark.told and mark.style not in _NAMELESS


def _font(like: QFont, *, bold: bool) -> tuple[QFont, QFontMetricsF]:
    font = QFont(like)
    font.setPixelSize(13)
    font.setBold(bold)
    return font, QFontMetricsF(font)


def _free_place(box: QRectF, wide: float, crowd: Crowd, first: int) -> QRectF:
    middle = box.center()
    places = [
        QPointF(box.right() + _GAP, box.top() - _HIGH),
        QPointF(box.left() - _GAP - wide, box.top() - _HIGH),
        QPointF(box.right() + _GAP, middle.y() - _HIGH / 2),
        QPointF(box.left() - _GAP - wide, middle.y() - _HIGH / 2),
        QPointF(box.right() + _GAP, box.bottom()),
        QPointF(box.left() - _GAP - wide, box.bottom()),
        QPointF(middle.x() - wide / 2, box.top() - _GAP - _HIGH),
        QPointF(middle.x() - wide / 2, box.bottom() + _GAP),
    ]
    ordered = places[first:] + places[:first]
    rects = (QRectF(p.x(), p.y(), wide, _HIGH) for p in ordered)
    usual = QRectF(ordered[0].x(), ordered[0].y(), wide, _HIGH)
    return next((r for r in rects if crowd.free(r)), usual)
