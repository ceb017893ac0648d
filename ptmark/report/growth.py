"""Bleed-out over time as a picture: measured points, joined and not fitted."""

from collections.abc import Callable

import numpy as np
import numpy.typing as npt

from ptmark.measure import Quantity
from ptmark.report.chart import Chart, Line, draw_chart
from ptmark.report.growth_data import MEASURED_ONLY
from ptmark.report.lettering import Band
from ptmark.report.palette import DEEP_BLUE, NAVY, PALE, PAPER, QUIET, SHADE, Ink
from ptmark.report.wording import AID
from ptmark.series import Curve, Growth, Reading

__all__ = ["MOST_CURVES", "curve_look", "growth_picture"]

Picture = npt.NDArray[np.uint8]

_WIDE, _HIGH, _UNIT = 1600, 760, 20.0
MOST_CURVES = 8  # more in one plot cannot be told apart
_STYLES = ("solid", "dashed", "dotted", "long")
_INKS = (Ink(DEEP_BLUE, PAPER), Ink((0, 118, 148), PAPER))  # cyan's darker sister, 5 : 1


def growth_picture(growth: Growth) -> Picture:
    """Length and area of each indication against minutes, shape (H, 1600, 3).

    Where there are more than eight curves, those that reached the greatest length are drawn;
    the data hold all.
    """
    by_size = sorted(growth.curves, key=lambda c: -max(r.length.value for r in c.readings))
    shown = by_size[:MOST_CURVES]
    choice = growth.choice.index
    charts = [
        Chart(
            title=title,
            lines=tuple(_line(curve, quantity, n) for n, curve in enumerate(shown)),
            span=(growth.window.first, growth.window.last),
            marked=None if choice is None else growth.frames[choice].minutes,
        )
        for title, quantity in (("Length, mm", _length), ("Area, mm²", _area))
    ]
    plots = [draw_chart(chart, _WIDE // 2, _HIGH, _UNIT) for chart in charts]
    return np.concatenate(
        [_head(growth), np.concatenate(plots, axis=1), _foot(growth, len(shown))]
    )


def _length(reading: Reading) -> Quantity:
    return reading.length


def _area(reading: Reading) -> Quantity:
    return reading.area


def _line(curve: Curve, quantity: Callable[[Reading], Quantity], number: int) -> Line:
    points = [
        (one.minutes, quantity(one).value, quantity(one).expanded) for one in curve.readings
    ]
    ink, style = curve_look(number)
    return Line(name=curve.id, points=np.array(points, np.float64), ink=ink, style=style)


def curve_look(number: int) -> tuple[Ink, str]:
    """Ink and line style of a curve; `MOST_CURVES` differ."""
    return _INKS[number % len(_INKS)], _STYLES[number // len(_INKS) % len(_STYLES)]


def _head(growth: Growth) -> Picture:
    band = Band(_WIDE, _UNIT, NAVY)
    band.skip(0.7)
    band.paragraph("Bleed-out over time", size=1.7, bold=True, color=PALE)
    band.skip(0.2)
    span = f"{growth.window.first:g} to {growth.window.last:g} min"
    band.paragraph(f"Shaded: the time to evaluate, {span}; {growth.window.source}.", color=PALE)
    index = growth.choice.index
    name = "No photo to evaluate" if index is None else f"Evaluate {growth.frames[index].name}"
    band.paragraph(f"{name}: {growth.choice.says}", bold=True, color=PALE)
    band.skip(0.5)
    return band.picture()


def _foot(growth: Growth, shown: int) -> Picture:
    band = Band(_WIDE, _UNIT, SHADE)
    band.skip(0.5)
    if shown < len(growth.curves):
        band.paragraph(
            f"The {shown} longest of {len(growth.curves)} indications are drawn; the data "
            "hold all.",
            bold=True,
        )
    band.paragraph(f"{MEASURED_ONLY} Bars: ± U (k = 2).", size=0.95)
    for curve in growth.curves:
        for note in curve.notes:
            band.paragraph(f"{curve.id}: {note}.", size=0.9)
    for name, why in growth.left_out:
        band.paragraph(f"! {name} is not in the plot: {why}.", size=0.9)
    for text in (*growth.cautions, *AID):
        band.paragraph(text, size=0.85, color=QUIET)
    band.skip(0.5)
    return band.picture()
