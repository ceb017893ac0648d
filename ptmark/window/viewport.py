"""Where the photo lies in the widget: scale and origin, and the way between the two frames.

Photo px: (0, 0) is the centre of the top-left pixel. Qt counts from the pixel's corner, so
the way to the widget adds half a pixel and the way back takes it off again.
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
        self.photo = QSizeF(0, 0)
        self.widget = QSizeF(1, 1)
        self.fitted = True

    def to_px(self, where: QPointF) -> QPointF:
        """From the widget to photo px."""
        return (where - self.origin) / self.scale - QPointF(0.5, 0.5)

    def to_widget(self, px: QPointF) -> QPointF:
        """From photo px to the widget."""
        return (px + QPointF(0.5, 0.5)) * self.scale + self.origin

    def transform(self) -> QTransform:
        """The same way for whole polygons in photo px."""
        half = 0.5 * self.scale
        return QTransform(
            self.scale, 0, 0, self.scale, self.origin.x() + half, self.origin.y() + half
        )

    def photo_rect(self) -> QRectF:
        """The photo's place in the widget."""
        return QRectF(self.origin, self.photo * self.scale)

    def fit(self) -> None:
        """Show the whole photo, with a little air."""
        self.fitted = True
        if self.photo.isEmpty():
            return
        self.scale = self._fit_scale()
        spare = self.widget - self.photo * self.scale
        self.origin = QPointF(spare.width() / 2, spare.height() / 2)

    def _fit_scale(self) -> float:
        return min(
            (self.widget.width() - 16) / self.photo.width(),
            (self.widget.height() - 16) / self.photo.height(),
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
