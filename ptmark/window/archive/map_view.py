"""The place map as one looks at it: cells over the part, one of them chosen by click or key."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QPoint, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QImage, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QToolTip, QWidget

from ptmark.window.palette import CYAN, HALO, tone
from ptmark.window.roles import Role, tell_role
from ptmark.window.words import tr

if TYPE_CHECKING:
    from ptmark.archive import PlaceMap

__all__ = ["MapView"]

_FOOT = 26.0  # px below the map, for its axis
_REACH = 8.0  # px from a click to the cell that is meant: cells can be smaller than a pointer
_STEPS = {
    Qt.Key.Key_Left: (0, -1),
    Qt.Key.Key_Right: (0, 1),
    Qt.Key.Key_Up: (-1, 0),
    Qt.Key.Key_Down: (1, 0),
}


class MapView(QWidget):
    """Draws the map as large as fits.

    Signals: ``chosen(int, int)`` row and column of a cell, by click or arrow keys;
    ``entered()`` Enter on it.
    """

    chosen = Signal(int, int)
    entered = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._places: PlaceMap | None = None
        self._picture = QImage()
        self.cell: tuple[int, int] | None = None
        self.setMinimumSize(160, 100)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        told = tr("Place map; arrow keys go from cell to cell, with Shift to the next find")
        tell_role(self, Role.Graphic)
        self.setAccessibleName(told)

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        return QSize(760, 520)

    def show_map(self, places: "PlaceMap | None", picture: QImage) -> None:
        """Show a map; ``picture`` is its box with cells and ground."""
        self._places, self._picture, self.cell = places, picture, None
        self.update()

    def choose(self, row: int, column: int) -> None:
        """Choose a cell of the map."""
        if self._places is None:
            return
        rows, columns = self._places.counts.shape
        self.cell = (min(max(row, 0), rows - 1), min(max(column, 0), columns - 1))
        self.update()
        self.chosen.emit(*self.cell)

    def says(self, row: int, column: int) -> str:
        """A cell in words: where it lies and how many records show something there."""
        if self._places is None:
            return ""
        cell, (x0, y0, *_) = self._places.cell_mm, self._places.box_mm
        x, y = x0 + column * cell, y0 + row * cell
        return tr(
            "x {0:g} to {1:g} mm, y {2:g} to {3:g} mm: {4} records",
            round(x, 6),
            round(x + cell, 6),
            round(y, 6),
            round(y + cell, 6),
            int(self._places.counts[row, column]),
        )

    # -- geometry -----------------------------------------------------------------------------
    def _box(self) -> QRectF:
        """Where the map is drawn."""
        size = self._picture.size()
        room = QRectF(self.rect()).adjusted(4, 4, -4, -_FOOT)
        if size.isEmpty() or room.isEmpty():
            return QRectF()
        factor = min(room.width() / size.width(), room.height() / size.height())
        wide, high = size.width() * factor, size.height() * factor
        return QRectF(room.left(), room.top(), wide, high)

    def cell_at(self, where: QPointF) -> tuple[int, int] | None:
        """Row and column under a place of the widget."""
        box = self._box()
        if self._places is None or not box.contains(where):
            return None
        rows, columns = self._places.counts.shape
        column = int((where.x() - box.left()) / box.width() * columns)
        row = int((where.y() - box.top()) / box.height() * rows)
        return min(row, rows - 1), min(column, columns - 1)

    def cell_meant(self, where: QPointF) -> tuple[int, int] | None:
        """The cell under a place, or one close to it that has something."""
        at = self.cell_at(where)
        if at is None or self._places is None or self._places.counts[at]:
            return at
        rows, columns = self._places.counts.nonzero()
        box, (high, wide) = self._box(), self._places.counts.shape
        right = (columns + 0.5) * box.width() / wide - (where.x() - box.left())
        down = (rows + 0.5) * box.height() / high - (where.y() - box.top())
        far = right**2 + down**2
        best = far.argmin()
        return (int(rows[best]), int(columns[best])) if far[best] <= _REACH**2 else at

    def next_seen(self, cell: tuple[int, int], step: tuple[int, int]) -> tuple[int, int]:
        """The nearest cell that way with something; the same one where there is none."""
        if self._places is None:
            return cell
        rows, columns = self._places.counts.nonzero()
        down, right = rows - cell[0], columns - cell[1]
        ahead = down * step[0] + right * step[1]
        aside = abs(down * step[1]) + abs(right * step[0])
        there = (ahead > 0) & (aside <= ahead)
        if not there.any():
            return cell
        best = (ahead + 2 * aside + 1e9 * ~there).argmin()
        return int(rows[best]), int(columns[best])

    def centre_of(self, row: int, column: int) -> QPoint:
        """The middle of a cell on the widget."""
        return self._rect(row, column).center().toPoint()

    def _rect(self, row: int, column: int) -> QRectF:
        box = self._box()
        if self._places is None:
            return QRectF()
        rows, columns = self._places.counts.shape
        wide, high = box.width() / columns, box.height() / rows
        return QRectF(box.left() + column * wide, box.top() + row * high, wide, high)

    # -- Qt -----------------------------------------------------------------------------------
    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        if self._places is None or self._picture.isNull():
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        box = self._box()
        painter.drawImage(box, self._picture)
        quiet = tone("quiet", self.palette())
        painter.setPen(QPen(quiet, 1.0))
        painter.drawRect(box)
        x0, y0, x1, y1 = self._places.box_mm
        foot = tr("x {0:g} to {1:g} mm, y {2:g} to {3:g} mm, down", x0, x1, y0, y1)
        painter.drawText(QPointF(box.left(), box.bottom() + 18), foot)
        if self.cell is not None:
            ring = self._rect(*self.cell).adjusted(-2, -2, 2, 2)
            for color, width in ((HALO, 5.0), (QColor(CYAN), 2.0)):
                painter.setPen(QPen(color, width))
                painter.drawRect(ring)

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        at = self.cell_meant(event.position())
        if at is not None and event.button() is Qt.MouseButton.LeftButton:
            self.choose(*at)
        event.accept()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        at = self.cell_at(event.position())
        QToolTip.showText(event.globalPosition().toPoint(), self.says(*at) if at else "", self)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.entered.emit()
            return
        step = _STEPS.get(Qt.Key(event.key()))
        if step is None or self._places is None:
            super().keyPressEvent(event)
            return
        row, column = self.cell or (-step[0], -step[1])
        if event.modifiers() & Qt.KeyboardModifier.ShiftModifier:
            self.choose(*self.next_seen((row, column), step))
        else:
            self.choose(row + step[0], column + step[1])
