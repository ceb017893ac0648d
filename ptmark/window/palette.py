"""Our colours: marks in deep blue and cyan with a dark halo, never red, pink or white."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QPalette, QPen

__all__ = [
    "CYAN",
    "CYAN_PALE",
    "DEEP_BLUE",
    "GREY_BLUE",
    "HALO",
    "is_dark",
    "round_pen",
    "tone",
]

HALO = QColor(4, 20, 48)
DEEP_BLUE = QColor(20, 66, 190)
CYAN = QColor(0, 205, 235)
CYAN_PALE = QColor(140, 232, 246)
GREY_BLUE = QColor(104, 138, 176)

# Text colours on a light and on a dark ground, each above 4.5 : 1 against that ground.
_TONES = {
    "acceptable": (QColor(0, 92, 90), QColor(105, 214, 200)),
    "rejectable": (QColor(116, 52, 0), QColor(255, 176, 92)),
    "undecided": (QColor(72, 60, 140), QColor(190, 180, 255)),
    "quiet": (QColor(84, 90, 98), QColor(170, 178, 188)),
    "edge": (QColor(116, 122, 130), QColor(140, 148, 158)),  # of a field or box; above 3 : 1
    "accent": (QColor(20, 66, 190), QColor(120, 200, 250)),
}


def is_dark(palette: QPalette) -> bool:
    """Whether the ground is dark, as the system's palette has it."""
    return palette.color(QPalette.ColorRole.Window).lightnessF() < 0.5


def tone(name: str, palette: QPalette) -> QColor:
    """A named text colour that fits the ground; unknown names give the plain text colour."""
    pair = _TONES.get(name)
    return (
        palette.color(QPalette.ColorRole.WindowText) if pair is None else pair[is_dark(palette)]
    )


def round_pen(color: QColor, width: float) -> QPen:
    """A solid pen with round ends and joins."""
    pen = QPen(color, width)
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    return pen
