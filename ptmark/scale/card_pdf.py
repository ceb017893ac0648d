"""The scale card as a PDF to print: markers, graduations, check length, grey patches.

Card frame as in `ptmark.scale.layout`: mm, y down from the card's top left. PDF counts y
up from the page's bottom in points of 1/72 in.
"""

from pathlib import Path
from typing import TYPE_CHECKING

import cv2

from ptmark.errors import ScaleError
from ptmark.scale.layout import (
    CARD_HEIGHT_MM,
    CARD_WIDTH_MM,
    CHECK_MM,
    MARKER_MM,
    SETS,
    marker_corners_mm,
    set_ids,
)

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas

__all__ = ["PAPERS", "PT", "save_canvas", "write_card_pdf"]

PT = 72 / 25.4  # PDF points, ISO 32000-1, 8.3.2.3
PAPERS = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}  # mm: ISO 216, ANSI/ASME Y14.1
_COLUMNS, _ROWS, _GAP_MM, _TOP_MM = 2, 3, 6.0, 62.0
_MODULES = 6  # DICT_4X4: four bits and a border on each side
_GREYS = (1.0, 0.75, 0.5, 0.25)
_PAGE_SAYS = (
    "Scale cards for photos of penetrant indications",
    "1. Print at 100 % (actual size, no fitting to the page) on matt white paper or card.",
    f"2. Measure a card's check length with callipers: {CHECK_MM:.2f} mm from the left edge of",
    "    the mark at 0 to the left edge of the mark at 80. Enter what you measured.",
    "3. Cut along the thin grey line. Keep the white about each black square.",
    "4. Lay the card flat in the plane of the indication, beside it, whole and unshaded.",
    "5. Discard a card that is creased, stained with dye or worn.",
)
_CARD_SAYS = (
    "Scale card 85.60 x 53.98 mm, ISO/IEC 7810 ID-1",
    "Print at 100 %. Check 0 to 80: left edge to",
    "left edge. Lay in the plane of the indication.",
)


class _Card:
    """Draws in the card frame of one card on the page."""

    def __init__(self, canvas: "Canvas", left_mm: float, top_mm: float) -> None:
        self.canvas, self.left_mm, self.top_mm = canvas, left_mm, top_mm

    def x(self, x_mm: float) -> float:
        return (self.left_mm + x_mm) * PT

    def y(self, y_mm: float) -> float:
        return (self.top_mm - y_mm) * PT

    def box(self, x_mm: float, y_mm: float, wide: float, high: float, grey: float) -> None:
        self.canvas.setFillGray(grey)
        self.canvas.rect(
            self.x(x_mm), self.y(y_mm + high), wide * PT, high * PT, stroke=0, fill=1
        )

    def says(self, x_mm: float, y_mm: float, text: str, points: float = 4.6) -> None:
        self.canvas.setFillGray(0)
        self.canvas.setFont("Helvetica", points)
        self.canvas.drawCentredString(self.x(x_mm), self.y(y_mm), text)


def write_card_pdf(path: str | Path, paper: str = "A4", number: int = 1) -> None:
    """Write a page of scale cards; the same bytes every time.

    Parameters
    ----------
    path : path
        File to write, replaced where it exists.
    paper : str
        "A4" or "Letter".
    number : int
        Set of the cards, from 1: cards of two sets can lie in one photo.

    Raises
    ------
    ScaleError
        If the paper or the set is unknown or the file cannot be written.
    """
    if paper not in PAPERS:
        raise ScaleError(
            f"no paper '{paper}'", where="paper", mend=f"choose {' or '.join(PAPERS)}"
        )
    if not 1 <= number <= SETS:
        raise ScaleError(f"no set {number}", where="set", mend=f"choose 1 to {SETS}")
    from reportlab.pdfgen.canvas import Canvas

    width, height = PAPERS[paper]
    canvas = Canvas(
        str(path), pagesize=(width * PT, height * PT), invariant=1, pageCompression=1
    )
    canvas.setTitle("Scale card")
    canvas.setAuthor("ptmark")
    _instructions(canvas, height)
    left = (width - _COLUMNS * CARD_WIDTH_MM - (_COLUMNS - 1) * _GAP_MM) / 2
    for row in range(_ROWS):
        for column in range(_COLUMNS):
            card = _Card(
                canvas,
                left + column * (CARD_WIDTH_MM + _GAP_MM),
                height - _TOP_MM - row * (CARD_HEIGHT_MM + _GAP_MM),
            )
            _draw(card, number)
    save_canvas(canvas, path, "the card")


def save_canvas(canvas: "Canvas", path: str | Path, what: str) -> None:
    """Write a page to its file; ScaleError where the system refuses."""
    try:
        canvas.save()
    except OSError as exc:
        raise ScaleError(
            f"cannot write {what}: {exc.strerror}",
            where=str(path),
            mend="choose a folder that can be written to",
        ) from exc


def _instructions(canvas: "Canvas", height_mm: float) -> None:
    for i, line in enumerate(_PAGE_SAYS):
        canvas.setFont("Helvetica-Bold" if i == 0 else "Helvetica", 12 if i == 0 else 9)
        canvas.drawString(18 * PT, (height_mm - 15 - 6 * i - (2 if i else 0)) * PT, line)


def _draw(card: _Card, number: int) -> None:
    card.canvas.setStrokeGray(0.6)
    card.canvas.setLineWidth(0.1 * PT)
    card.canvas.rect(
        card.x(0), card.y(CARD_HEIGHT_MM), CARD_WIDTH_MM * PT, CARD_HEIGHT_MM * PT, fill=0
    )
    for marker in set_ids(number):
        _marker(card, marker)
    _graduations(card)
    _patches(card)
    says = _CARD_SAYS if number == 1 else (f"Set {number}. {_CARD_SAYS[0]}", *_CARD_SAYS[1:])
    for i, line in enumerate(says):
        card.says(CARD_WIDTH_MM / 2, 42.0 + 3.0 * i, line)


def _marker(card: _Card, marker: int) -> None:
    """One black square, then its white modules as one path (no seams between them)."""
    x, y = (float(v) for v in marker_corners_mm(marker)[0])
    card.box(x, y, MARKER_MM, MARKER_MM, 0.0)
    dictionary = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_4X4_50)
    modules = cv2.aruco.generateImageMarker(dictionary, marker, _MODULES)
    size = MARKER_MM / _MODULES
    white = card.canvas.beginPath()
    for row in range(_MODULES):
        for column in range(_MODULES):
            if modules[row, column]:
                white.rect(
                    card.x(x + column * size),
                    card.y(y + (row + 1) * size),
                    size * PT,
                    size * PT,
                )
    card.canvas.setFillGray(1.0)
    card.canvas.drawPath(white, stroke=0, fill=1)


def _graduations(card: _Card) -> None:
    """A mark each mm, their left edges 1 mm apart, so that ink spread does not count."""
    left, low, wide = (CARD_WIDTH_MM - CHECK_MM) / 2, 29.0, 0.2
    for i in range(int(CHECK_MM) + 1):
        high = (
            6.0
            if i in (0, int(CHECK_MM))
            else 4.0
            if i % 10 == 0
            else 3.0
            if i % 5 == 0
            else 2.0
        )
        card.box(left + i, low - high, wide, high, 0.0)
        if i % 10 == 0:
            card.says(left + i, low + 2.4, str(i), 5.0)
    card.says(CARD_WIDTH_MM / 2, low + 5.2, "check length 80.00 mm, left edge to left edge")


def _patches(card: _Card) -> None:
    """White and greys between the upper markers, clear of the white the markers need."""
    side, gap = 9.0, 1.6
    left = (CARD_WIDTH_MM - len(_GREYS) * side - (len(_GREYS) - 1) * gap) / 2
    for i, grey in enumerate(_GREYS):
        x = left + i * (side + gap)
        card.box(x, 5.0, side, side, grey)
        card.canvas.setLineWidth(0.1 * PT)
        card.canvas.rect(card.x(x), card.y(5.0 + side), side * PT, side * PT, fill=0)
        card.says(x + side / 2, 17.0, f"{grey * 100:.0f} %", 4.0)
