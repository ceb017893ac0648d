"""The five steps of the work, always in sight, each with what it has or misses."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QFont,
    QFontMetrics,
    QPainter,
    QPaintEvent,
    QPalette,
    QPen,
    QResizeEvent,
)
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QHBoxLayout, QSizePolicy, QWidget

from ptmark.window.glyphs import draw_glyph
from ptmark.window.keys import KEYS, Shortcut
from ptmark.window.palette import tone
from ptmark.window.words import tr

__all__ = ["StepStrip", "in_lines"]

_TONES = {"done": "acceptable", "acceptable": "acceptable", "undecided": "undecided",
          "rejectable": "rejectable", "look": "rejectable"}  # fmt: skip
_WIDE = 210  # px of a step, for what it has or lacks in one line
_SMALL = 0.88  # of the font, where there is little room


class _StepButton(QAbstractButton):
    own_ring = True

    def __init__(self, number: int, title: str) -> None:
        super().__init__()
        self.number, self.title, self.sign, self.line = number, tr(title), "", ""
        self.brief, self.rows = False, 1  # lines for what it has or lacks
        self.setCheckable(True)
        self.setAutoExclusive(True)  # spoken as one of several, not as a box to tick
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)

    def show_state(self, sign: str, line: str) -> None:
        self.sign, self.line = sign, line
        self.setAccessibleName(tr("Step {0}, {1}: {2}", self.number, self.title, line))
        self.setToolTip(f"{self.title}: {line} ({KEYS.shown(f'Ctrl+{self.number}')})")
        self.setAccessibleDescription(KEYS.shown(f"Ctrl+{self.number}"))
        self.update()

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        lines = self.fontMetrics().height() + self.rows * QFontMetrics(self._small()).height()
        return QSize(150, lines + (6 if self.brief else 18))

    def minimumSizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        return QSize(90 if self.brief else 110, self.sizeHint().height())

    def _small(self) -> QFont:
        """The font of the lines under the name."""
        font = self.font()
        if self.brief:
            font.setPointSizeF(_SMALL * font.pointSizeF())
        return font

    def _aside(self) -> int:
        return 26 if self.brief else 44  # px, beyond the sign

    def _wide(self) -> int:
        return self.width() - self._aside() - (1 if self.brief else 6)

    def shown(self) -> list[str]:
        """What it has or lacks, in the lines that show."""
        return in_lines(self.line, QFontMetrics(self._small()), self._wide(), self.rows)

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
        left = self._aside() - (23 if self.brief else 30)
        draw_glyph(painter, self.sign, QRectF(left, box.height() / 2 - 10, 20, 20), sign_tone)
        small, height = self._small(), self.fontMetrics().height()
        metrics = QFontMetrics(small)
        aside, wide, lines = self._aside(), self._wide(), self.shown()
        top = (box.height() - height - len(lines) * metrics.height()) / 2
        text = QRectF(aside, top, wide, height)
        font = painter.font()
        font.setBold(True)
        painter.setFont(font)
        painter.setPen(palette.color(QPalette.ColorRole.WindowText))
        gap = " " if self.brief else "  "
        self._paint_line(painter, text, f"{self.number}{gap}{self.title}")
        painter.setFont(small)
        painter.setPen(tone("quiet", palette))
        text.translate(0, height)
        for line in lines:
            self._paint_line(painter, text, line)
            text.translate(0, metrics.height())
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
        """Be as low as can be, what a step has or lacks in smaller letters."""
        for button in self.buttons.values():
            button.brief = brief
            button.updateGeometry()
            button.update()

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        rows = 1 if self.width() >= _WIDE * len(self.buttons) else 2
        for button in self.buttons.values():
            button.rows = rows
            button.updateGeometry()
        super().resizeEvent(event)

    def show_step(self, step: str) -> None:
        """Mark the step that is shown."""
        self.buttons[step].setChecked(True)

    def show_states(self, states: dict[str, tuple[str, str]]) -> None:
        """Show sign and line of every step."""
        for title, (sign, line) in states.items():
            self.buttons[title].show_state(sign, line)


def in_lines(text: str, metrics: QFontMetrics, wide: int, most: int) -> list[str]:
    """A text in at most so many lines of this width, px; the last is cut where it must be."""
    lines, words = [""], text.split()
    while words:
        longer = f"{lines[-1]} {words[0]}".strip()
        if len(lines) == most:
            rest = " ".join([lines[-1], *words]).strip()
            lines[-1] = metrics.elidedText(rest, Qt.TextElideMode.ElideRight, wide)
            break
        if lines[-1] and metrics.horizontalAdvance(longer) > wide:
            lines.append("")
        else:
            lines[-1] = longer
            words.pop(0)
    return lines
