"""Boxes and fields whose edge can be seen; Qt's own is 1.1 : 1 in the dark.

What tells a control apart needs 3 : 1 against what it stands on (WCAG 2.2, 1.4.11).
Use these in place of Qt's, and `Framed` before the class of a list, tree or table.
"""

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QLineEdit,
    QListWidget,
    QPlainTextEdit,
    QPushButton,
    QRadioButton,
    QStyle,
    QStyleOptionButton,
    QTableWidget,
    QTreeWidget,
    QWidget,
)

from ptmark.window.palette import tone

if TYPE_CHECKING:
    _Base = QWidget
else:
    _Base = object

__all__ = [
    "DropDown",
    "Framed",
    "Line",
    "ListOf",
    "Notes",
    "OneOf",
    "Push",
    "TableOf",
    "Tick",
    "TreeOf",
]


class Tick(QCheckBox):
    """A box to tick."""

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        super().paintEvent(event)
        _paint_edge(self, _indicator(self, QStyle.SubElement.SE_CheckBoxIndicator))


class OneOf(QRadioButton):
    """One of several that exclude each other."""

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        super().paintEvent(event)
        box = _indicator(self, QStyle.SubElement.SE_RadioButtonIndicator)
        _paint_edge(self, box, radius=box.width() / 2)


class Line(QLineEdit):
    """A line of text."""

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        super().paintEvent(event)
        _paint_edge(self, QRectF(self.rect()), radius=2)


class Push(QPushButton):
    """A button to press."""

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        super().paintEvent(event)
        _paint_edge(self, QRectF(self.rect()), radius=2)


class DropDown(QComboBox):
    """A choice that drops down."""

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        super().paintEvent(event)
        _paint_edge(self, QRectF(self.rect()), radius=2)


class Framed(_Base):
    """What scrolls within a frame; stands before Qt's class and is no widget by itself.

    As one it would be the class that Qt knows, and a table no table to a screen reader.
    """

    def event(self, event: QEvent) -> bool:
        used: bool = super().event(event)
        if event.type() == QEvent.Type.Paint:  # of the frame; what scrolls has its own
            _paint_edge(self, QRectF(self.rect()), radius=2)
        return used


class Notes(Framed, QPlainTextEdit):
    """Lines of text."""


class ListOf(Framed, QListWidget):
    """Lines to choose from."""


class TreeOf(Framed, QTreeWidget):
    """Lines under each other's heads."""


class TableOf(Framed, QTableWidget):
    """Rows and columns."""


def _indicator(button: QCheckBox | QRadioButton, which: QStyle.SubElement) -> QRectF:
    option = QStyleOptionButton()
    button.initStyleOption(option)
    return QRectF(button.style().subElementRect(which, option, button))


def _paint_edge(widget: QWidget, box: QRectF, *, radius: float = 1) -> None:
    """One px along the inside of a box; what is disabled keeps Qt's own edge."""
    if not widget.isEnabled():
        return
    painter = QPainter(widget)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(QPen(tone("edge", widget.palette()), 1))
    painter.drawRoundedRect(box.adjusted(0.5, 0.5, -0.5, -0.5), radius, radius)
