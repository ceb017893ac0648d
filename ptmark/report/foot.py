"""The strip below the photo: scale bar with where it holds, and what the lines mean."""

import numpy as np
import numpy.typing as npt

from ptmark.report.lettering import Band, font
from ptmark.report.palette import CYAN, DEEP_BLUE, NAVY, PALE, QUIET, SHADE
from ptmark.report.surface_scale import ScaleBar

__all__ = ["foot_band"]

_SIZE = 0.9
# Inked parts of a sample line, as shares of its length.
_LINES = (
    ("linear", (1.0,)),
    ("rounded", (0.22,) * 3),
    ("non-relevant or false", (0.06,) * 6),
    ("group that decided", (0.36,) * 2),
)
_COLORS = (("rejectable or undecided", DEEP_BLUE), ("other", CYAN))


def foot_band(
    width: int, unit: float, bar: ScaleBar | None, zoom: float, *, key: bool
) -> npt.NDArray[np.uint8]:
    """Draw the strip, shape (h, width, 3); ``zoom`` leads from photo px to picture px."""
    band = Band(width, unit, SHADE)
    band.skip(0.3)
    if bar is None:
        band.paragraph("No scale: nothing is measured.", color=QUIET)
    else:
        _bar(band, bar, zoom)
    if key:
        _key(band)
    band.skip(0.5)
    return band.picture()


def _bar(band: Band, bar: ScaleBar, zoom: float) -> None:
    x, y, long = band.pad, band.y + 0.35 * band.unit, bar.length_px * zoom
    thick = 0.42 * band.unit
    for part in range(4):
        color = NAVY if part % 2 == 0 else PALE
        band.box(x + long * part / 4, y, x + long * (part + 1) / 4, y + thick, color)
    low, high = (round(100 * (value - 1)) for value in bar.spread)
    says = f"{bar.length_mm:g} mm along the photo's width at the + ({bar.place})"
    if low or high:
        says += f"; the same length shows {low:+d} % to {high:+d} % at its edges"
    band.paragraph(says, x=x + long + band.unit, size=_SIZE)


def _key(band: Band) -> None:
    """Samples of line styles and colours, as many in a row as there is room for."""
    x = band.pad
    for text, inked in _LINES:
        x = _room(band, x, 2.4, text)
        _line(band, x, inked)
        x = band.put(x + 2.8 * band.unit, band.y, text, size=_SIZE) + 1.6 * band.unit
    for text, color in _COLORS:
        x = _room(band, x, 0.9, text)
        _color(band, x, color)
        x = band.put(x + 1.3 * band.unit, band.y, text, size=_SIZE) + 1.6 * band.unit
    band.skip(1.3)


def _room(band: Band, x: float, sample: float, text: str) -> float:
    """Where a sample and its text start: here, or on a new row where they do not fit."""
    wide = (sample + 0.4) * band.unit + font(_SIZE * band.unit).getlength(text)
    if x > band.pad and x + wide > band.width - band.pad:
        band.skip(1.3)
        return band.pad
    return x


def _line(band: Band, x: float, inked: tuple[float, ...]) -> None:
    long = 2.4 * band.unit
    for index, part in enumerate(inked):
        start = x + index * long / len(inked)
        top = band.y + 0.48 * band.unit
        band.box(start, top, start + part * long, top + 0.18 * band.unit, NAVY)


def _color(band: Band, x: float, color: tuple[int, int, int]) -> None:
    y, unit = band.y, band.unit
    band.box(x, y + 0.2 * unit, x + 0.9 * unit, y + 0.95 * unit, NAVY)
    band.box(x + 0.1 * unit, y + 0.3 * unit, x + 0.8 * unit, y + 0.85 * unit, color)
