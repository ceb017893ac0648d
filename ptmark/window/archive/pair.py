"""A picture and what is told of it: beside each other, or above it where that is tall."""

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QWidget

__all__ = ["Pair"]

_NO_LIMIT = 16_777_215  # Qt's QWIDGETSIZE_MAX


class Pair(QWidget):
    """The picture takes what room there is; beside it, ``side`` is ``wide`` px wide."""

    def __init__(self, picture: QWidget, side: QWidget, wide: int) -> None:
        super().__init__()
        self._side, self._wide = side, wide
        self._row = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.addWidget(picture, 1)
        self._row.addWidget(side)
        self._turn(tall=False)

    @property
    def tall(self) -> bool:
        """Whether they stand one above the other."""
        return self._row.direction() is QBoxLayout.Direction.TopToBottom

    def _turn(self, *, tall: bool) -> None:
        ways = QBoxLayout.Direction
        self._row.setDirection(ways.TopToBottom if tall else ways.LeftToRight)
        self._row.setStretch(1, int(tall))
        self._side.setMinimumWidth(0 if tall else self._wide)
        self._side.setMaximumWidth(_NO_LIMIT if tall else self._wide)

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        super().resizeEvent(event)
        tall = event.size().height() > event.size().width()
        if tall is not self.tall:
            self._turn(tall=tall)
