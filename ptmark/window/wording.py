"""Measured values in words, in the unit the window shows."""

from typing import TYPE_CHECKING

from ptmark.units import MM_PER_IN
from ptmark.window.words import number, tr

if TYPE_CHECKING:
    from ptmark.measure import Measurement, Quantity

__all__ = ["in_words", "plus_minus", "size_in_words"]


def plus_minus(quantity: "Quantity", unit: str) -> str:
    """A length in mm as ``value ± U`` in the unit, without its name; U is expanded, k = 2.

    Examples
    --------
    >>> from ptmark.measure import Quantity
    >>> plus_minus(Quantity(12.7, {"edge": 0.127}), "in")
    '0.500 ± 0.010'
    """
    per, digits = (1.0, 2) if unit == "mm" else (MM_PER_IN, 3)
    value, around = quantity.value / per, quantity.expanded / per
    return f"{number(value, f'.{digits}f')} ± {number(around, f'.{digits}f')}"


def size_in_words(made: "Measurement", unit: str) -> str:
    """Length and width with their uncertainty, short enough for the line at the foot."""
    length, width = plus_minus(made.length, unit), plus_minus(made.width, unit)
    if made.is_least:
        length, width = tr("at least {0}", length), tr("at least {0}", width)
    return tr("{0} {1} long, {2} {3} wide", length, unit, width, unit)


def in_words(made: "Measurement", unit: str) -> str:
    """Every quantity of one outline; what its uncertainty is made of stands in the bars."""
    per, digits = (1.0, 2) if unit == "mm" else (MM_PER_IN, 3)
    size, path = (
        size_in_words(made, unit),
        f"{number(made.path.value / per, f'.{digits}f')} {unit}",
    )
    area = f"{number(made.area.value / per**2, f'.{digits}f')} {unit}²"
    return tr(
        "{0}, along its path {1}, area {2}. Its length is uncertain by:", size, path, area
    )
