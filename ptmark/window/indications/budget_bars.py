"""What the uncertainty of one length is made of, as bars, and what would help, in words."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from ptmark.units import MM_PER_IN
from ptmark.window.bits import plain
from ptmark.window.palette import tone
from ptmark.window.roles import Role, tell_role
from ptmark.window.session import Session
from ptmark.window.words import from_core, number, tr

if TYPE_CHECKING:
    from ptmark.measure import Measurement

__all__ = ["BudgetBars", "BudgetView"]

_ROW, _BAR = 20, 9
_LEAST = 0.005  # of the variance; smaller parts are told together


class BudgetBars(QWidget):
    """One bar for each contribution to u, the greatest first; a bar's length is its u."""

    def __init__(self) -> None:
        super().__init__()
        self._rows: list[tuple[str, float, str]] = []
        tell_role(self, Role.Chart)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_budget(self, budget: dict[str, float], unit: str) -> None:
        """Show these standard uncertainties, mm, in the unit that the window shows."""
        per, digits = (1.0, 3) if unit == "mm" else (MM_PER_IN, 4)
        whole = sum(u * u for u in budget.values())
        parts = sorted(budget.items(), key=lambda item: -item[1])
        large = [(name, u) for name, u in parts if u * u >= _LEAST * whole]
        rest = sum(u * u for name, u in parts if (name, u) not in large) ** 0.5
        if rest > 0:
            large.append((tr("others"), rest))
        most = max((u for _, u in large), default=0.0)
        self._rows = [
            (tr(name), u / most, f"{number(u / per, f'.{digits}f')} {unit}")
            for name, u in large
            if u
        ]
        self.setFixedHeight(_ROW * len(self._rows))
        said = ", ".join(f"{name} {words}" for name, _, words in self._rows)
        self.setAccessibleName(tr("Contributions to the length's uncertainty: {0}", said))
        self.update()

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        return QSize(240, _ROW * len(self._rows))

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        metrics = painter.fontMetrics()
        names = max((metrics.horizontalAdvance(name) for name, _, _ in self._rows), default=0)
        words = max((metrics.horizontalAdvance(text) for _, _, text in self._rows), default=0)
        left, right = names + 12.0, self.width() - words - 10.0
        for at, (name, share, text) in enumerate(self._rows):
            row = QRectF(0, at * _ROW, self.width(), _ROW)
            side = Qt.AlignmentFlag.AlignVCenter
            painter.setPen(tone("", self.palette()))
            painter.drawText(row, side | Qt.AlignmentFlag.AlignLeft, name)
            painter.drawText(row, side | Qt.AlignmentFlag.AlignRight, text)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(tone("accent", self.palette()))
            top = row.top() + (_ROW - _BAR) / 2
            painter.drawRect(QRectF(left, top, max(1.0, share * (right - left)), _BAR))
        painter.end()


class BudgetView(QWidget):
    """The bars of the chosen indication, and what would make its length surer."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self._of: object = None
        self._chosen: object = None
        self.bars, self.hand, self.advice = BudgetBars(), plain(), plain()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.bars)
        column.addWidget(self.hand)
        column.addWidget(self.advice)

    def show_measurement(self, made: "Measurement | None") -> None:
        """Show this measurement's length budget; None hides all."""
        self.setVisible(made is not None)
        if made is None:
            return
        budget = dict(made.length.budget)
        self.bars.show_budget(budget, self._session.unit)
        chosen = self._session.one_selected
        if made is self._of and chosen is self._chosen:
            return
        self._of, self._chosen = made, chosen

        from ptmark.measure import advice, hand_words

        edge = chosen.edge if chosen else None
        hand = hand_words(edge.source, edge.operator_px, edge.operator_free) if edge else ""
        self.hand.setText(tr("picking: {0}.", from_core(hand)) if hand else "")
        self.hand.setVisible(bool(hand))
        surface = self._session.inspection.surface if self._session.inspection else None
        says = advice(budget, surface.reference if surface else "")
        self.advice.setText(tr("What would help most: {0}.", from_core(says)) if says else "")
