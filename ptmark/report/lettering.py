"""Text on pictures: fonts, wrapping, and bands of text set line by line.

Sizes are px of the picture the text stands on.
"""

from dataclasses import dataclass, field
from functools import lru_cache
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from ptmark.places import resource
from ptmark.report.palette import INK, PAPER

if TYPE_CHECKING:
    from PIL.ImageFont import FreeTypeFont

__all__ = ["Band", "font", "plate_picture", "wrap"]

Color = tuple[int, int, int]
Picture = npt.NDArray[np.uint8]


@lru_cache(maxsize=64)
def font(size: float, *, bold: bool = False) -> "FreeTypeFont":
    """The shipped font at a size in px; the same letters on every machine."""
    from PIL import ImageFont

    name = "DejaVuSans-Bold.ttf" if bold else "DejaVuSans.ttf"
    # The basic layout needs no system library, so that every machine sets alike.
    return ImageFont.truetype(
        str(resource("fonts", name)), max(6, round(size)), layout_engine=ImageFont.Layout.BASIC
    )


def wrap(text: str, width: float, size: float, *, bold: bool = False) -> list[str]:
    """Break text into lines no wider than ``width`` px; a word too long is broken inside."""
    face = font(size, bold=bold)
    lines: list[str] = []
    for paragraph in text.splitlines() or [""]:
        line = ""
        for word in paragraph.split():
            longer = f"{line} {word}".strip()
            if face.getlength(longer) <= width:
                line = longer
                continue
            if line:
                lines.append(line)
            while face.getlength(word) > width and len(word) > 1:
                cut = _fitting(word, width, face)
                lines.append(word[:cut])
                word = word[cut:]  # noqa: PLW2901 - the rest of the same word
            line = word
        lines.append(line)
    return lines


def _fitting(word: str, width: float, face: "FreeTypeFont") -> int:
    cut = len(word) - 1
    while cut > 1 and face.getlength(word[:cut]) > width:
        cut -= 1
    return cut


def plate_picture(text: str, size: float, ground: Color, ink: Color) -> Picture:
    """A letter on its plate with a border in the ink, shape (h, w, 3)."""
    from PIL import Image, ImageDraw

    face = font(size, bold=True)
    pad, edge = 0.32 * size, max(1, round(0.09 * size))
    width, height = round(face.getlength(text) + 2 * pad), round(1.42 * size)
    image = Image.new("RGB", (width, height), ground)
    draw = ImageDraw.Draw(image)
    draw.rectangle((0, 0, width - 1, height - 1), outline=ink, width=edge)
    draw.text((width / 2, height / 2), text, fill=ink, font=face, anchor="mm")
    return np.array(image)


@dataclass(slots=True)
class Band:
    """A strip of text as wide as the picture, grown downwards and drawn once at the end.

    ``unit`` is the size of ordinary text; everything is set in multiples of it.
    """

    width: int
    unit: float
    ground: Color = PAPER
    y: float = 0.0
    _text: list[tuple[float, float, str, float, bool, Color]] = field(default_factory=list)
    _boxes: list[tuple[float, float, float, float, Color]] = field(default_factory=list)

    @property
    def pad(self) -> float:
        """The free margin left and right, px."""
        return 1.2 * self.unit

    def skip(self, units: float) -> None:
        """Leave room."""
        self.y += units * self.unit

    def put(
        self,
        x: float,
        y: float,
        text: str,
        *,
        size: float = 1.0,
        bold: bool = False,
        color: Color = INK,
    ) -> float:
        """Set one line with its top at y; returns the x where it ends. Does not move down."""
        self._text.append((x, y, text, size * self.unit, bold, color))
        return x + font(size * self.unit, bold=bold).getlength(text)

    def box(self, x0: float, y0: float, x1: float, y1: float, color: Color) -> None:
        """Fill a box under the text."""
        self._boxes.append((x0, y0, x1, y1, color))

    def paragraph(
        self,
        text: str,
        *,
        x: float | None = None,
        width: float | None = None,
        size: float = 1.0,
        bold: bool = False,
        color: Color = INK,
    ) -> None:
        """Set wrapped text and move down below it."""
        left = self.pad if x is None else x
        room = self.width - left - self.pad if width is None else width
        for line in wrap(text, room, size * self.unit, bold=bold):
            self.put(left, self.y, line, size=size, bold=bold, color=color)
            self.y += 1.35 * size * self.unit

    def picture(self) -> Picture:
        """The band as drawn, shape (h, width, 3)."""
        from PIL import Image, ImageDraw

        image = Image.new("RGB", (self.width, max(1, round(self.y))), self.ground)
        draw = ImageDraw.Draw(image)
        for x0, y0, x1, y1, color in self._boxes:
            draw.rectangle((round(x0), round(y0), round(x1), round(y1)), fill=color)
        for x, y, text, size, bold, color in self._text:
            draw.text((round(x), round(y)), text, fill=color, font=font(size, bold=bold))
        return np.array(image)
