"""Where the photo lies in the widget: scale and origin, and the way between the two frames.

Photo px: (0, 0) is the centre of the top-left pixel. Qt counts from the pixel's corner, so
the way to the widget adds half a pixel and the way back takes it off again. What is shown may
be bent (the surface seen from above) and turned by quarters; both are part of the way.
"""

from PySide6.QtCore import QPointF, QRectF, QSizeF
from PySide6.QtGui import QTransform

__all__ = ["Viewport"]

_MOST = 64.0  # widget px for each photo px


class Viewport:
    """Scale and origin of one photo in one widget; plain geometry, no widget needed."""

    def __init__(self) -> None:
        self.scale = 1.0
        self.origin = QPointF(0, 0)
        self.photo = QSizeF(0, 0)  # size of the picture that is shown, before it is turned
        self.bend = QTransform()  # from the photo to that picture, both counted from a corner
        self.turn = 0  # quarters clockwise
        self.widget = QSizeF(1, 1)
        self.fitted = True

    @property
    def plain(self) -> bool:
        """Whether the photo is shown as it is, neither bent nor turned."""
        return self.turn == 0 and self.bend.isIdentity()

    def to_px(self, where: QPointF) -> QPointF:
        """From the widget to photo px."""
        if self.plain:
            return (where - self.origin) / self.scale - QPointF(0.5, 0.5)
        return self.transform().inverted()[0].map(where)

    def to_widget(self, px: QPointF) -> QPointF:
        """From photo px to the widget."""
        if self.plain:
            return (px + QPointF(0.5, 0.5)) * self.scale + self.origin
        return self.transform().map(px)

    def to_picture(self, where: QPointF) -> QPointF:
        """From the widget to px of the picture that is shown, before it is turned."""
        return self.picture_transform().inverted()[0].map(where) - QPointF(0.5, 0.5)

    def transform(self) -> QTransform:
        """The same way for whole polygons in photo px."""
        return QTransform.fromTranslate(0.5, 0.5) * self.bend * self.picture_transform()

    def picture_transform(self) -> QTransform:
        """From the picture that is shown, counted from its corner, to the widget."""
        wide, high = self.photo.width(), self.photo.height()
        turned = (
            QTransform(),
            QTransform(0, 1, -1, 0, high, 0),
            QTransform(-1, 0, 0, -1, wide, high),
            QTransform(0, -1, 1, 0, 0, wide),
        )[self.turn]
        place = QTransform(self.scale, 0, 0, self.scale, self.origin.x(), self.origin.y())
        return turned * place

    def shifted(self, by: QPointF, size: QSizeF) -> "Viewport":
        """The same photo at the same scale in a widget of another size, moved in it."""
        other = Viewport()
        other.scale, other.turn, other.bend = self.scale, self.turn, self.bend
        other.photo, other.widget, other.origin = self.photo, size, self.origin + by
        return other

    def photo_rect(self) -> QRectF:
        """The picture's place in the widget."""
        return QRectF(self.origin, self._turned_size() * self.scale)

    def _turned_size(self) -> QSizeF:
        return self.photo.transposed() if self.turn % 2 else self.photo

    def fit(self) -> None:
        """Show the whole photo, with a little air."""
        self.fitted = True
        if self.photo.isEmpty():
            return
        self.scale = self._fit_scale()
        spare = self.widget - self._turned_size() * self.scale
        self.origin = QPointF(spare.width() / 2, spare.height() / 2)

    def _fit_scale(self) -> float:
        size = self._turned_size()
        return min(
            (self.widget.width() - 16) / size.width(),
            (self.widget.height() - 16) / size.height(),
            8.0,
        )

    def zoom(self, factor: float, about: QPointF) -> None:
        """Zoom so that the place under ``about`` stays where it is."""
        least = 0.5 * self._fit_scale()
        scale = max(least, min(_MOST, self.scale * factor))
        self.origin = about + (self.origin - about) * (scale / self.scale)
        self.scale = scale
        self.fitted = False
        self._hold()

    def pan(self, by: QPointF) -> None:
        """Move the photo by widget px; some of it always stays in sight."""
        self.origin += by
        self.fitted = False
        self._hold()

    def show(self, box_px: QRectF) -> None:
        """Bring a part of the photo into sight, moving no more than needed."""
        seen = QRectF(QPointF(0, 0), self.widget).adjusted(30, 30, -30, -30)
        box = self.transform().mapRect(box_px)
        if seen.contains(box):
            return
        if box.width() > seen.width() or box.height() > seen.height():
            want = min(seen.width() / box.width(), seen.height() / box.height())
            self.zoom(want, box.center())
            box = self.transform().mapRect(box_px)
        self.pan(seen.center() - box.center())

    def _hold(self) -> None:
        rect, edge = self.photo_rect(), 60.0
        x = min(max(rect.x(), edge - rect.width()), self.widget.width() - edge)
        y = min(max(rect.y(), edge - rect.height()), self.widget.height() - edge)
        self.origin = QPointF(x, y)
