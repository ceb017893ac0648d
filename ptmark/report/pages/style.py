"""How the PDF is set: fonts embedded, paragraphs, tables that break over pages."""

from collections.abc import Sequence
from functools import cache
from typing import Any
from xml.sax.saxutils import escape

from reportlab.graphics.shapes import STATE_DEFAULTS
from reportlab.lib.colors import Color
from reportlab.lib.styles import ParagraphStyle
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.platypus import CondPageBreak, Flowable, Paragraph, Spacer, Table, TableStyle

from ptmark.places import resource
from ptmark.report.palette import INK, NAVY, QUIET, SHADE

__all__ = ["BOLD", "PLAIN", "color", "grid", "heading", "register_fonts", "text"]

PLAIN, BOLD = "ptmark-plain", "ptmark-bold"
_LONG = 900


def color(rgb: tuple[int, int, int]) -> Color:
    """An sRGB triple as the PDF takes it."""
    return Color(*(value / 255 for value in rgb))


@cache
def register_fonts() -> None:
    """Make the shipped fonts known; the letters used are embedded in each file."""
    for name, file in ((PLAIN, "DejaVuSans.ttf"), (BOLD, "DejaVuSans-Bold.ttf")):
        pdfmetrics.registerFont(TTFont(name, str(resource("fonts", file))))
    STATE_DEFAULTS["fontName"] = PLAIN  # a drawing names its font even where it has no text
    pdfmetrics.registerFontFamily(PLAIN, normal=PLAIN, bold=BOLD, italic=PLAIN, boldItalic=BOLD)


@cache
def _style(size: float = 8.5, *, bold: bool = False, quiet: bool = False) -> ParagraphStyle:
    """A paragraph style by size in points."""
    register_fonts()
    return ParagraphStyle(
        f"p{size}{bold}{quiet}",
        fontName=BOLD if bold else PLAIN,
        fontSize=size,
        leading=1.35 * size,
        textColor=color(QUIET if quiet else INK),
        splitLongWords=True,
        allowWidows=0,
        allowOrphans=0,
    )


def text(
    said: object, size: float = 8.5, *, bold: bool = False, quiet: bool = False
) -> Paragraph:
    """A paragraph of plain text: nothing in it is taken as markup, line ends are kept."""
    plain = "".join(c if c.isprintable() or c == "\n" else " " for c in str(said))
    return Paragraph(escape(plain).replace("\n", "<br/>"), _style(size, bold=bold, quiet=quiet))


def heading(said: str, *, top: float = 12) -> list[Flowable]:
    """A section's heading, never alone at a page's foot."""
    return [CondPageBreak(110), Spacer(1, top), text(said, 11.5, bold=True), Spacer(1, 3)]


def grid(
    rows: Sequence[Sequence[Any]], widths: Sequence[float], *, head: int = 1, size: float = 8.0
) -> Table:
    """A table whose head repeats on each page.

    Cells that are text become paragraphs, lists stand below each other; widths in points.
    """
    cells = [
        [
            cell if isinstance(cell, Flowable | list) else text(cell, size, quiet=number < head)
            for cell in row
        ]
        for number, row in enumerate(rows)
    ]
    # Only a row that may be longer than a page breaks inside.
    broken = int(any(_length(cell) > _LONG for row in rows for cell in row))
    made = Table(
        cells, colWidths=list(widths), repeatRows=head, splitInRow=broken, hAlign="LEFT"
    )
    made.setStyle(
        TableStyle(
            [
                ("FONTNAME", (0, 0), (-1, -1), PLAIN),
                ("VALIGN", (0, 0), (-1, -1), "TOP"),
                ("LEFTPADDING", (0, 0), (-1, -1), 3),
                ("RIGHTPADDING", (0, 0), (-1, -1), 3),
                ("TOPPADDING", (0, 0), (-1, -1), 1.6),
                ("BOTTOMPADDING", (0, 0), (-1, -1), 2.4),
                ("LINEBELOW", (0, 0), (-1, -1), 0.4, color(SHADE)),
                *([("BACKGROUND", (0, 0), (-1, head - 1), color(SHADE))] if head else []),
                *(
                    [("LINEBELOW", (0, head - 1), (-1, head - 1), 0.6, color(NAVY))]
                    if head
                    else []
                ),
            ]
        )
    )
    return made


def _length(cell: object) -> int:
    """Letters of a cell; of pictures none."""
    if isinstance(cell, list):
        return sum(_length(part) for part in cell)
    if isinstance(cell, Paragraph):
        return len(cell.getPlainText())
    return 0 if isinstance(cell, Flowable) else len(str(cell))
