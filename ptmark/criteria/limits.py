"""Limits as a profile writes them, such as ``> 5 mm``, and the one way to compare with them.

Lengths computed from an outline carry floating-point noise, so a value within `TOLERANCE_MM`
of a limit is read as equal to it: a 5 mm circle whose caliper comes out as 5.0000000001 mm is
not longer than 5 mm. A ratio of length to width is read as
equal within `RATIO_TOLERANCE`: the inscribed circle of a polygon of 32 points falls short of
that of the curve it was drawn along by up to 0.05 %, so 3.0 would else always read as above 3.
Every comparison of this room goes through `holds`.
"""

import re
from dataclasses import dataclass
from fractions import Fraction

import numpy as np
import numpy.typing as npt

from ptmark.units import MM_PER_IN

__all__ = [
    "Limit",
    "all_hold",
    "holds",
    "parse_amount",
    "parse_limit",
    "per_mm",
    "tolerance_in",
]

Array = npt.NDArray[np.float64]

TOLERANCE_MM = 1e-6
RATIO_TOLERANCE = 5e-4
_LONGEST = 60  # letters of an amount

_LIMIT = re.compile(r"^\s*(?P<operator>>=|<=|>|<)\s*(?P<amount>\S.*?)\s*$")
_N = "[0-9]+"  # not the digits of every script
_AMOUNT = re.compile(
    rf"^\s*(?P<number>[+-]?(?:{_N}\s+{_N}/{_N}|{_N}/{_N}|{_N}(?:\.{_N})?))"
    r"\s*(?P<unit>mm2|in2|mm|in|%)?\s*$"
)


def per_mm(unit: str) -> float:
    """How many of ``unit`` ("mm" or "in") one millimetre is; 25.4 mm to the inch is exact."""
    return 1.0 if unit == "mm" else 1.0 / MM_PER_IN


def tolerance_in(unit: str) -> float:
    """Width of the band read as equal, in ``unit``; pure numbers share the figure."""
    return TOLERANCE_MM * per_mm("in" if unit in {"in", "in2"} else "mm")


def holds(operator: str, excess: float, band: float) -> bool:
    """Whether ``excess operator 0`` holds, where an excess within ``band`` counts as 0."""
    match operator:
        case ">":
            return excess > band
        case ">=":
            return excess >= -band
        case "<":
            return excess < -band
        case _:
            return excess <= band


def all_hold(operator: str, excess: Array, band: Array | float) -> npt.NDArray[np.bool_]:
    """`holds` of many at once."""
    match operator:
        case ">":
            return np.asarray(excess > band)
        case ">=":
            return np.asarray(excess >= -band)
        case "<":
            return np.asarray(excess < -band)
        case _:
            return np.asarray(excess <= band)


@dataclass(frozen=True, slots=True)
class Limit:
    """An operator and an amount, in the unit of the profile ("1" for a pure number)."""

    operator: str
    value: float
    unit: str

    def hit(self, value: float) -> bool:
        """Whether ``value operator limit`` holds, equality within the tolerance."""
        return holds(self.operator, value - self.value, tolerance_in(self.unit))

    def hit_all(self, values: Array) -> npt.NDArray[np.bool_]:
        """`hit` of many values."""
        return all_hold(self.operator, values - self.value, tolerance_in(self.unit))

    def hit_as_multiples(self, values: Array, of: Array) -> npt.NDArray[np.bool_]:
        """Whether ``value operator limit x of`` holds, for arrays of one shape and unit."""
        return all_hold(self.operator, values - self.value * of, RATIO_TOLERANCE * values)

    @property
    def least_number(self) -> int:
        """The smallest whole number that hits a ``>`` or ``>=`` limit."""
        whole = round(self.value)
        return whole + 1 if self.operator == ">" else whole


def parse_amount(text: str) -> tuple[float, str]:
    """Read ``3/16 in`` or ``3870 mm2`` as a number and its unit ("1" where none is written).

    Raises
    ------
    ValueError
        If the text is no amount, has too many digits, or divides by zero.

    Examples
    --------
    >>> parse_amount("3/16 in"), parse_amount("2 1/2 in"), parse_amount("10")
    ((0.1875, 'in'), (2.5, 'in'), (10.0, '1'))
    """
    found = _AMOUNT.match(text)
    if found is None:
        raise ValueError(f"'{text}' is not an amount with a unit")
    if len(text) > _LONGEST:
        raise ValueError(f"'{text[:12]}…' has too many digits")
    try:
        number = float(sum(Fraction(part) for part in found["number"].split()))
    except ZeroDivisionError:
        raise ValueError(f"'{text}' divides by zero") from None
    return number, found["unit"] or "1"


def parse_limit(text: str) -> Limit:
    """Read ``> 1/16 in`` as a limit.

    Raises
    ------
    ValueError
        If there is no operator, or what follows it is no amount.

    Examples
    --------
    >>> parse_limit("> 1.5 mm"), parse_limit(">= 4")
    (Limit(operator='>', value=1.5, unit='mm'), Limit(operator='>=', value=4.0, unit='1'))
    """
    found = _LIMIT.match(text)
    if found is None:
        raise ValueError(f"'{text}' has no operator (>, >=, <, <=) before its amount")
    return Limit(found["operator"], *parse_amount(found["amount"]))
