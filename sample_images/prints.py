"""Flat things that lie on the plate: the scale card, the rule and the label.

Each is a grey picture (linear reflectance) with its size in mm, drawn at 50 px a mm.
"""

from dataclasses import dataclass
from pathlib import Path

import cv2
import numpy as np
import numpy.typing as npt
from PIL import Image, ImageDraw, ImageFont

PER_MM = 50
INK, PAPER, STEEL = 0.03, 0.80, 0.50
CARD_MM = (85.60, 53.98)  # ISO/IEC 7810:2019, ID-1
MARKER_MM, INSET_MM = 12.0, 4.0
RULE_MM, RULE_ZERO_MM, RULE_READS_MM = (160.0, 22.0), 5.0, 150
FONT = Path(__file__).resolve().parent.parent / "resources" / "fonts" / "DejaVuSans-Bold.ttf"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Print:
    """A picture of ``size`` mm whose top-left corner lies at ``at``, turned by ``turn`` deg."""

    picture: npt.NDArray[np.float32]
    size: tuple[float, float]
    at: tuple[float, float]
    turn: float

    def to_plate(self, points: npt.ArrayLike) -> npt.NDArray[np.float64]:
        """Bring points of shape (N, 2), mm on the print, to mm on the plate."""
        c, s = np.cos(np.radians(self.turn)), np.sin(np.radians(self.turn))
        turned = np.asarray(points, dtype=np.float64) @ np.array([[c, s], [-s, c]])
        return np.asarray(turned + self.at)


def card(at: tuple[float, float], turn: float) -> Print:
    """The scale card: four markers, a line of 80 mm between them, grey patches."""
    sheet = _sheet(CARD_MM, PAPER)
    markers = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_4X4_50)
    right, low = CARD_MM[0] - INSET_MM - MARKER_MM, CARD_MM[1] - INSET_MM - MARKER_MM
    side = round(MARKER_MM * PER_MM)
    for number, (x, y) in enumerate(
        [(INSET_MM, INSET_MM), (right, INSET_MM), (right, low), (INSET_MM, low)]
    ):
        cells = cv2.aruco.generateImageMarker(markers, number, side).astype(np.float32) / 255
        row, column = round(y * PER_MM), round(x * PER_MM)
        sheet[row : row + side, column : column + side] = INK + (PAPER - INK) * cells
    for mm in range(81):
        _bar(sheet, (2.8 + mm, 27.0), (0.15, 3.0 if mm % 10 == 0 else 1.5))
    _bar(sheet, (42.8, 27.0), (80.15, 0.15))
    for n, grey in enumerate((0.05, 0.2, 0.4, 0.6)):
        _bar(sheet, (27.5 + 10 * n, 43.0), (9.0, 8.0), grey)
    _write(sheet, (42.8, 9.5), "scale card", 3.4)
    _write(sheet, (42.8, 14.5), "85.60 × 53.98 mm", 2.4)
    return Print(picture=sheet, size=CARD_MM, at=at, turn=turn)


def rule(at: tuple[float, float], turn: float, rng: np.random.Generator) -> Print:
    """A brushed steel strip with a mark every mm and a figure every 10 mm."""
    sheet = _sheet(RULE_MM, STEEL)
    brush = rng.normal(0, 1, (sheet.shape[0] // 5, 1)).astype(np.float32)
    sheet *= 1 + 0.03 * cv2.resize(brush, (1, sheet.shape[0]), interpolation=cv2.INTER_LINEAR)
    for mm in range(RULE_READS_MM + 1):
        long = 9.0 if mm % 10 == 0 else 6.5 if mm % 5 == 0 else 4.5
        _bar(sheet, (RULE_ZERO_MM + mm, long / 2), (0.18, long))
        if mm % 10 == 0:
            _write(sheet, (RULE_ZERO_MM + mm, 12.0), str(mm), 3.2)
    _write(sheet, (RULE_ZERO_MM + 8, 17.5), "mm", 2.6)
    return Print(picture=sheet, size=RULE_MM, at=at, turn=turn)


def label(at: tuple[float, float], turn: float, lines: tuple[str, ...]) -> Print:
    """A paper label with a few lines of text."""
    size = (58.0, 5.0 + 6.5 * len(lines))
    sheet = _sheet(size, 0.7)
    for n, text in enumerate(lines):
        _write(sheet, (size[0] / 2, 5.8 + 6.5 * n), text, 3.9 if n == 0 else 3.1)
    return Print(picture=sheet, size=size, at=at, turn=turn)


def lettering(text: str, height: float) -> npt.NDArray[np.float32]:
    """Ink of a hand-lettered mark, 0 to 1, at 10 px a mm."""
    font = ImageFont.truetype(str(FONT), round(height * 10))
    left, top, right, bottom = font.getbbox(text)
    sheet = Image.new("L", (int(right - left) + 8, int(bottom - top) + 8), 0)
    ImageDraw.Draw(sheet).text((4 - left, 4 - top), text, font=font, fill=255)
    return np.asarray(np.asarray(sheet) / 255, dtype=np.float32)


def _sheet(size: tuple[float, float], tone: float) -> npt.NDArray[np.float32]:
    shape = (int(np.ceil(size[1] * PER_MM)), int(np.ceil(size[0] * PER_MM)))
    return np.full(shape, tone, dtype=np.float32)


def _bar(
    sheet: npt.NDArray[np.float32],
    centre: tuple[float, float],
    size: tuple[float, float],
    tone: float = INK,
) -> None:
    left, top = (round((c - s / 2) * PER_MM) for c, s in zip(centre, size, strict=True))
    wide, high = (round(s * PER_MM) for s in size)
    sheet[max(0, top) : top + high, max(0, left) : left + wide] = tone


def _write(
    sheet: npt.NDArray[np.float32], centre: tuple[float, float], text: str, height: float
) -> None:
    font = ImageFont.truetype(str(FONT), round(height * PER_MM))
    mask = Image.new("L", (sheet.shape[1], sheet.shape[0]), 0)
    spot = (centre[0] * PER_MM, centre[1] * PER_MM)
    ImageDraw.Draw(mask).text(spot, text, font=font, fill=255, anchor="mm")
    ink = np.asarray(mask, dtype=np.float32) / 255
    sheet += (INK - sheet) * ink
