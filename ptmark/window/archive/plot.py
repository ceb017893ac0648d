"""Years of a part number as a plot: counts as bars, lengths and reject rate as lines.

Three bands under one another share the years, so that no axis stands for two quantities.
Series differ by filling, dash and shape of their points as well as by colour.
"""

import math
from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPaintEvent, QPalette, QPen
from PySide6.QtWidgets import QWidget

from ptmark.window.archive.model import length_text
from ptmark.window.palette import CYAN, DEEP_BLUE, is_dark, tone
from ptmark.window.words import format_length, tr

if TYPE_CHECKING:
    from ptmark.archive import Period

__all__ = ["HistoryPlot", "round_top"]

_LEFT, _RIGHT, _HEAD, _FOOT = 84.0, 16.0, 22.0, 24.0
_BANDS = 3
_TOPS = (1.0, 1.2, 1.6, 2.0, 2.4, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0)  # their halves are short too


def round_top(most_mm: float, unit: str) -> float:
    """The end of an axis, mm: a short number in ``unit`` that is no less than ``most_mm``.

    What was measured would stand there as a number without its uncertainty.
    """
    size = 25.4 if unit == "in" else 1.0
    most = most_mm / size or 1.0
    ten = 10.0 ** math.floor(math.log10(most))
    return size * ten * next(top for top in _TOPS if top * ten >= most * (1 - 1e-9))


class HistoryPlot(QWidget):
    """Draws the years; `describe` says the same in words."""

    def __init__(self) -> None:
        super().__init__()
        self._periods: list[Period] = []
        self._unit = "mm"
        self.setMinimumHeight(300)

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        return QSize(640, 380)

    def show_periods(self, periods: "list[Period]", unit: str) -> None:
        """Show these years."""
        self._periods, self._unit = periods, unit
        self.setAccessibleName(tr("Plot of the years. {0}", self.describe()))
        self.update()

    def _with_u(self, one: "Period") -> str:
        return length_text(
            one.longest_mm, one.longest_u_mm, self._unit, least=one.longest_least
        )

    def describe(self) -> str:
        """The plot in words."""
        said = []
        for one in self._periods:
            rate = one.reject_rate
            told = tr("no disposition") if rate is None else tr("rejected {0:.0%}", rate)
            longest = "" if one.longest_mm is None else tr(", longest {0}", self._with_u(one))
            said.append(
                tr(
                    "{0}: {1} inspections, {2} indications{3}, {4}",
                    one.year,
                    one.inspections,
                    one.indications,
                    longest,
                    told,
                )
            )
        return "; ".join(said)

    def rates_head(self) -> str:
        """What stands over the lowest band, and why it is empty where it is."""
        if all(one.reject_rate is None for one in self._periods):
            return tr("Rejected or sent to rework: no record tells its disposition yet")
        return tr("Rejected or sent to rework, share of those disposed of")

    # -- drawing ------------------------------------------------------------------------------
    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.fillRect(self.rect(), self.palette().color(QPalette.ColorRole.Base))
        if not self._periods:
            return
        high = (self.height() - _FOOT) / _BANDS
        boxes = [
            QRectF(
                _LEFT,
                number * high + _HEAD,
                max(self.width() - _LEFT - _RIGHT, 10.0),
                max(high - _HEAD - 12, 10.0),
            )
            for number in range(_BANDS)
        ]
        self._counts(painter, boxes[0])
        self._lengths(painter, boxes[1])
        self._rates(painter, boxes[2])
        painter.setPen(self._ink())
        for number, one in enumerate(self._periods):
            x = self._x(boxes[2], number)
            place = QRectF(x - 40, boxes[2].bottom() + 8, 80, 16)
            if self._step() == 1 or number % self._step() == 0:
                painter.drawText(place, Qt.AlignmentFlag.AlignCenter, one.year)

    def _step(self) -> int:
        """Every which year is named, so that the names do not run into each other."""
        room = max(self.width() - _LEFT - _RIGHT, 10.0) / 44
        return max(1, -(-len(self._periods) // max(int(room), 1)))

    def _ink(self) -> QColor:
        return self.palette().color(QPalette.ColorRole.Text)

    def _colors(self) -> tuple[QColor, QColor]:
        """Two that stand out from the ground: on a dark one the deep blue would not."""
        dark = is_dark(self.palette())
        return (QColor(120, 170, 255) if dark else DEEP_BLUE), (
            CYAN if dark else CYAN.darker(190)
        )

    def _x(self, box: QRectF, number: int) -> float:
        return box.left() + box.width() * (number + 0.5) / len(self._periods)

    def _ground(
        self,
        painter: QPainter,
        box: QRectF,
        title: str,
        most: float,
        say: Callable[[float], str],
    ) -> None:
        painter.setPen(self._ink())
        painter.drawText(QPointF(box.left(), box.top() - 7), title)
        quiet = tone("quiet", self.palette())
        for part in (0.0, 0.5, 1.0):
            y = box.bottom() - box.height() * part
            painter.setPen(QPen(quiet, 0.6))
            painter.drawLine(QPointF(box.left(), y), QPointF(box.right(), y))
            painter.setPen(quiet)
            flags = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
            painter.drawText(QRectF(0, y - 8, _LEFT - 6, 16), int(flags), say(most * part))

    def _counts(self, painter: QPainter, box: QRectF) -> None:
        most = max(max(one.inspections, one.indications) for one in self._periods) or 1
        most += most % 2
        title = tr("Inspections (filled) and indications (hatched)")
        self._ground(painter, box, title, most, lambda value: f"{value:g}")
        wide = min(box.width() / len(self._periods) * 0.32, 26.0)
        first, second = self._colors()
        for number, one in enumerate(self._periods):
            x = self._x(box, number)
            for left, value, brush, color in (
                (x - wide, one.inspections, QBrush(first), first),
                (x, one.indications, QBrush(second, Qt.BrushStyle.BDiagPattern), second),
            ):
                high = box.height() * value / most
                painter.setPen(QPen(color, 1.4))
                painter.setBrush(brush)
                painter.drawRect(QRectF(left, box.bottom() - high, wide, high))

    def _lengths(self, painter: QPainter, box: QRectF) -> None:
        longest = [one.longest_mm for one in self._periods]
        tops = [(one.longest_mm or 0.0) + (one.longest_u_mm or 0.0) for one in self._periods]
        most = round_top(max(tops), self._unit)
        title = tr("Lengths: longest ± U (solid, round points), mean (dashed, square points)")
        self._ground(painter, box, title, most, lambda mm: format_length(mm, self._unit))
        first, second = self._colors()
        painter.setPen(QPen(first, 1.4))
        for number, one in enumerate(self._periods):
            if one.longest_mm is not None and one.longest_u_mm is not None:
                x = self._x(box, number)
                ends = [
                    box.bottom() - box.height() * (one.longest_mm + by) / most
                    for by in (-one.longest_u_mm, one.longest_u_mm)
                ]
                painter.drawLine(QPointF(x, ends[0]), QPointF(x, ends[1]))
                for y in ends:
                    painter.drawLine(QPointF(x - 6, y), QPointF(x + 6, y))
        self._line(painter, box, [None if v is None else v / most for v in longest], first)
        means = [one.mean_mm for one in self._periods]
        self._line(
            painter, box, [None if v is None else v / most for v in means], second, dashed=True
        )
        for number, one in enumerate(self._periods):
            if one.longest_mm is not None and one.longest_least:  # as the list below says it
                y = box.bottom() - box.height() * one.longest_mm / most
                place = QRectF(self._x(box, number) + 8, y - 7, 13, 14)
                painter.fillRect(place, self.palette().color(QPalette.ColorRole.Base))
                painter.setPen(first)
                painter.drawText(place, Qt.AlignmentFlag.AlignCenter, "≥")

    def _rates(self, painter: QPainter, box: QRectF) -> None:
        self._ground(painter, box, self.rates_head(), 1.0, lambda share: f"{share:.0%}")
        rates = [one.reject_rate for one in self._periods]
        self._line(painter, box, rates, self._colors()[0])

    def _line(
        self,
        painter: QPainter,
        box: QRectF,
        shares: list[float | None],
        color: QColor,
        *,
        dashed: bool = False,
    ) -> None:
        """Years without a value break the line."""
        style = Qt.PenStyle.DashLine if dashed else Qt.PenStyle.SolidLine
        before: QPointF | None = None
        for number, share in enumerate(shares):
            if share is None:
                before = None
                continue
            at = QPointF(self._x(box, number), box.bottom() - box.height() * share)
            painter.setPen(QPen(color, 2.0, style))
            if before is not None:
                painter.drawLine(before, at)
            painter.setPen(QPen(color, 2.0))
            painter.setBrush(self.palette().color(QPalette.ColorRole.Base))
            if dashed:
                painter.drawRect(QRectF(at.x() - 4, at.y() - 4, 8, 8))
            else:
                painter.drawEllipse(at, 4.5, 4.5)
            before = at
