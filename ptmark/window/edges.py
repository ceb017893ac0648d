"""Boxes and fields whose edge can be seen; Qt's own is 1.1 : 1 in the dark.

What tells a control apart needs 3 : 1 against what it stands on (WCAG 2.2, 1.4.11).
"""

from PySide6.QtCore import QEvent, QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import (
    QCheckBox,
    QLineEdit,
    QPlainTextEdit,
    QRadioButton,
    QStyle,
    QStyleOptionButton,
    QWidget,
)

from ptmark.window.palette import tone

__all__ = ["Line", "Notes", "OneOf", "Tick"]


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


class Notes(QPlainTextEdit):
    """Lines of text."""

    def event(self, event: QEvent) -> bool:
        used = super().event(event)
        if event.type() == QEvent.Type.Paint:  # the frame's; the text has a widget of its own
            _paint_edge(self, QRectF(self.rect()), radius=2)
        return used


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
