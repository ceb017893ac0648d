"""Measured values in words, in the unit the window shows."""

from typing import TYPE_CHECKING

from ptmark.units import MM_PER_IN
from ptmark.window.words import number, tr

if TYPE_CHECKING:
    from ptmark.inspection.state import State
    from ptmark.measure import Measurement, Quantity

__all__ = ["in_words", "outside_in_words", "plus_minus", "size_in_words"]


def plus_minus(quantity: "Quantity", unit: str, power: int = 1) -> str:
    """A length in mm, or an area in mm² (power 2), as ``value ± U`` in the unit, unnamed.

    U is expanded, k = 2.

    Examples
    --------
    >>> from ptmark.measure import Quantity
    >>> plus_minus(Quantity(12.7, {"edge": 0.127}), "in")
    '0.500 ± 0.010'
    >>> plus_minus(Quantity(6.4516, {"edge": 0.64516}), "in", 2)
    '0.01000 ± 0.00200'
    """
    per, digits = (1.0, 2) if unit == "mm" else (MM_PER_IN, 2 * power + 1)
    value, around = quantity.value / per**power, quantity.expanded / per**power
    return f"{number(value, f'.{digits}f')} ± {number(around, f'.{digits}f')}"


def size_in_words(made: "Measurement", unit: str) -> str:
    """Length and width with their uncertainty, short enough for the line at the foot."""
    length, width = plus_minus(made.length, unit), plus_minus(made.width, unit)
    if made.least:
        length, width = tr("at least {0}", length), tr("at least {0}", width)
    return tr("{0} {1} long, {2} {3} wide", length, unit, width, unit)


def in_words(made: "Measurement", unit: str) -> str:
    """Every quantity of one outline; what its uncertainty is made of stands in the bars."""
    size = size_in_words(made, unit)
    path = f"{plus_minus(made.path, unit)} {unit}"
    area = f"{plus_minus(made.area, unit, 2)} {unit}²"
    if made.least:
        path, area = tr("at least {0}", path), tr("at least {0}", area)
    return tr(
        "{0}, along its path {1}, area {2}. Standard uncertainties of the length, of which U "
        "is twice the root of the sum of squares:",
        size,
        path,
        area,
    )


def outside_in_words(state: "State | None") -> str:
    """What counts though it lies outside the examined area; nothing where all lies in it."""
    if state is None or state.area_px is None:
        return ""
    from ptmark.inspection.area import outside_area

    names = outside_area(state)
    if not names:
        return ""
    return tr(" Outside the examined area, and judged all the same: {0}.", ", ".join(names))
