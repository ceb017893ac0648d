"""Millimetres inside, inches only at the edges.

A code's inch and millimetre figures are separate limits, never conversions of each other;
this module serves what people type and read, not the limits of a profile.
"""

import re
from fractions import Fraction

from ptmark.errors import UsageError

__all__ = ["MM_PER_IN", "format_length", "parse_length"]

MM_PER_IN = 25.4  # exact: international yard and pound agreement, 1959

_NUMBER = re.compile(
    r"(?:(?P<whole>\d+)\s+)?(?P<num>\d+)\s*/\s*(?P<den>\d+)|(?P<dec>\d*\.?\d+)"
)
_UNIT = re.compile(r"^(?P<number>.*?)\s*(?P<unit>mm|cm|in|\"|″)?$")
# One and a half to some, fifteen hundred to others. Inches are written to three places.
_THOUSANDS = re.compile(r"[1-9]\d{0,2},\d{3}\s*(mm|cm)?")


def parse_length(text: str, *, where: str = "length", default_unit: str = "") -> float:
    """Read a typed length in millimetres.

    Parameters
    ----------
    text : str
        Such as ``150mm``, ``150,5 mm``, ``6in``, ``1 1/2 in`` or ``3/16"``.
    where : str
        The field or option, for the error.
    default_unit : str
        Unit of a bare number; with "" a bare number is refused.

    Returns
    -------
    float
        The length in mm, above zero.

    Raises
    ------
    UsageError
        If the text is no positive length with a known unit, or its comma may part thousands.

    Examples
    --------
    >>> parse_length("150mm"), parse_length("1 1/2 in"), parse_length("85,6 mm")
    (150.0, 38.1, 85.6)
    >>> parse_length("0,500 mm"), parse_length("1,50 mm"), parse_length("1,125 in")
    (0.5, 1.5, 28.575)
    """
    mend = "write a length with its unit, such as 150mm or 6in"
    head = _UNIT.match(text.strip().replace(",", "."))
    unit = (head and head["unit"]) or default_unit
    number = _NUMBER.fullmatch(head["number"].strip()) if head else None
    if number is None or not unit:
        raise UsageError(f"'{text}' is not a length", where=where, mend=mend)
    if unit in {"mm", "cm"} and _THOUSANDS.fullmatch(text.strip()):
        raise UsageError(
            f"'{text}' is a thousand times more to those who part thousands by a comma",
            where=where,
            mend="leave the comma out, or write a point or one place more or less",
        )
    if number["dec"]:
        value = float(number["dec"])
    elif int(number["den"]) == 0:
        raise UsageError(f"'{text}' divides by zero", where=where, mend=mend)
    else:
        value = float(
            int(number["whole"] or 0) + Fraction(int(number["num"]), int(number["den"]))
        )
    mm = value * {"mm": 1.0, "cm": 10.0}.get(unit, MM_PER_IN)
    if not 0 < mm < float("inf"):
        raise UsageError(f"'{text}' is not above zero", where=where, mend=mend)
    return round(mm, 9)


def format_length(mm: float, unit: str = "mm", digits: int | None = None) -> str:
    """Write a length with its unit, in mm (2 places) or in (3 places).

    Examples
    --------
    >>> format_length(12.3456), format_length(12.7, "in")
    ('12.35 mm', '0.500 in')
    """
    if unit == "mm":
        return f"{mm:.{2 if digits is None else digits}f} mm"
    return f"{mm / MM_PER_IN:.{3 if digits is None else digits}f} in"
