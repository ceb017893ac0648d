"""The five steps of the work, always in sight, each with what it has or misses."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPalette, QPen
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QHBoxLayout, QSizePolicy, QWidget

from ptmark.window.glyphs import draw_glyph
from ptmark.window.keys import KEYS, Shortcut
from ptmark.window.palette import tone
from ptmark.window.words import tr

__all__ = ["StepStrip"]

_TONES = {"done": "acceptable", "acceptable": "acceptable", "undecided": "undecided",
          "rejectable": "rejectable", "look": "rejectable"}  # fmt: skip


class _StepButton(QAbstractButton):
    def __init__(self, number: int, title: str) -> None:
        super().__init__()
        self.number, self.title, self.sign, self.line = number, tr(title), "", ""
        self.brief = False
        self.setCheckable(True)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)

    def show_state(self, sign: str, line: str) -> None:
        self.sign, self.line = sign, line
        self.setAccessibleName(tr("Step {0}, {1}: {2}", self.number, self.title, line))
        self.setToolTip(f"{self.title}: {line} ({KEYS.shown(f'Ctrl+{self.number}')})")
        self.update()

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        lines = 1 if self.brief else 2
        return QSize(150, lines * self.fontMetrics().height() + 20)

    def minimumSizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        return QSize(90 if self.brief else 110, self.sizeHint().height())

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        palette, box = self.palette(), QRectF(self.rect())
        accent = tone("accent", palette)
        if self.isChecked() or self.underMouse():
            painter.fillRect(box, palette.color(QPalette.ColorRole.Base))
        if self.isChecked():
            painter.fillRect(QRectF(0, box.height() - 3, box.width(), 3), accent)
        sign_tone = tone(_TONES.get(self.sign, "quiet"), palette)
        left = 3 if self.brief else 14
        draw_glyph(painter, self.sign, QRectF(left, box.height() / 2 - 10, 20, 20), sign_tone)
        height = self.fontMetrics().height()
        top = (box.height() - (height if self.brief else 2 * height + 2)) / 2
        aside = left + (23 if self.brief else 30)
        text = QRectF(aside, top, box.width() - aside - (1 if self.brief else 6), height)
        font = painter.font()
        font.setBold(True)
        painter.setFont(font)
        painter.setPen(palette.color(QPalette.ColorRole.WindowText))
        gap = " " if self.brief else "  "
        self._paint_line(painter, text, f"{self.number}{gap}{self.title}")
        if not self.brief:
            font.setBold(False)
            painter.setFont(font)
            painter.setPen(tone("quiet", palette))
            self._paint_line(painter, text.translated(0, height + 2), self.line)
        if self.number < 5 and not self.brief:
            self._paint_arrow(painter, box)
        if self.hasFocus():
            painter.setPen(QPen(accent, 2))
            painter.drawRect(box.adjusted(2, 2, -2, -2))

    def _paint_line(self, painter: QPainter, at: QRectF, words: str) -> None:
        elided = painter.fontMetrics().elidedText(
            words, Qt.TextElideMode.ElideRight, int(at.width())
        )
        painter.drawText(at, Qt.AlignmentFlag.AlignVCenter, elided)

    def _paint_arrow(self, painter: QPainter, box: QRectF) -> None:
        x, y = box.right() - 6, box.center().y()
        painter.setPen(QPen(tone("quiet", self.palette()), 1.2))
        painter.drawPolyline([QPointF(x - 4, y - 7), QPointF(x, y), QPointF(x - 4, y + 7)])


class StepStrip(QWidget):
    """Signals: ``chosen(str)`` with a step's name."""

    chosen = Signal(str)

    def __init__(self, steps: tuple[str, ...], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(tr("Steps of the work"))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        self._group = QButtonGroup(self)
        self.buttons: dict[str, _StepButton] = {}
        for number, title in enumerate(steps, 1):
            button = _StepButton(number, title)
            button.clicked.connect(lambda _=False, t=title: self.chosen.emit(t))
            Shortcut(f"Ctrl+{number}", self, button.click, title, button)
            self._group.addButton(button)
            self.buttons[title] = button
            row.addWidget(button)
        self.show_step(steps[0])

    def be_brief(self, brief: bool) -> None:  # noqa: FBT001 - on or off
        """Signs and names alone; what a step lacks stays in tip and spoken name."""
        for button in self.buttons.values():
            button.brief = brief
            button.updateGeometry()
            button.update()

    def show_step(self, step: str) -> None:
        """Mark the step that is shown."""
        self.buttons[step].setChecked(True)

    def show_states(self, states: dict[str, tuple[str, str]]) -> None:
        """Show sign and line of every step."""
        for title, (sign, line) in states.items():
            self.buttons[title].show_state(sign, line)
