"""Dates, temperatures and light levels read out of the free text of the record's fields."""

import calendar
import re
from datetime import date

__all__ = ["AMBIGUOUS", "celsius", "irradiance", "last_date", "lux", "minutes"]

AMBIGUOUS = "ambiguous"
_LUX_IN_FC = 10.764  # lumens per square foot: 1 ft = 0.3048 m
_MONTHS = {name.lower(): number for number, name in enumerate(calendar.month_abbr) if name}
_NUMBER = r"\d+(?:[.,]\d+)?"
# Not inside a number of an instrument or a batch, such as LM-2024-11.
_APART, _END = r"(?<![\w./-])", r"(?![\w/-]|\.\d)"
_YEAR_FIRST = re.compile(rf"{_APART}(\d{{4}})[-/.](\d{{1,2}})(?:[-/.](\d{{1,2}}))?{_END}")
_YEAR_LAST = re.compile(rf"{_APART}(\d{{1,2}})([-/.])(\d{{1,2}})\2(\d{{4}}){_END}")
_MONTH_YEAR = re.compile(rf"{_APART}(\d{{1,2}})[-/.](\d{{4}}){_END}")
_NAMED = re.compile(
    rf"(?:{_APART}(\d{{1,2}})\.? )?\b({'|'.join(_MONTHS)})[a-z]*\.? (\d{{4}})\b"
)


def last_date(text: str) -> date | str | None:
    """The latest date in a text; a month alone stands for its last day.

    A batch's date of making and an instrument's day of calibration come before the day that
    counts. `AMBIGUOUS` where day and month could be either; None where there is no date.

    Examples
    --------
    >>> last_date("LM-2024-11, calibrated 2025-05-02, due 2026-05-01")
    datetime.date(2026, 5, 1)
    >>> last_date("B 7731, 02/2027"), last_date("03/04/2026"), last_date("31.12.2026")
    (datetime.date(2027, 2, 28), 'ambiguous', datetime.date(2026, 12, 31))
    """
    found: list[date | None] = []
    for year, month, day in _YEAR_FIRST.findall(text):
        found.append(_day(year, month, day))
    for month, year in _MONTH_YEAR.findall(text):
        found.append(_day(year, month, ""))
    for day, month, year in _NAMED.findall(text.lower()):
        found.append(_day(year, str(_MONTHS[month]), day))
    for one, mark, two, year in _YEAR_LAST.findall(text):
        day_first = mark == "." or int(one) > 12 or one == two
        if not day_first and int(two) <= 12:
            return AMBIGUOUS
        found.append(_day(year, two, one) if day_first else _day(year, one, two))
    return max((one for one in found if one is not None), default=None)


def _day(year: str, month: str, day: str) -> date | None:
    try:
        last = calendar.monthrange(int(year), int(month))[1]
        return date(int(year), int(month), int(day or last))
    except ValueError:  # such as the 13th month: no date
        return None


def _values(text: str, units: str) -> list[tuple[float, str]]:
    """Numbers before one of the units, both ends of a range, each with the unit."""
    made = []
    number = rf"(?:(?<![\w.,-])[-−])?{_NUMBER}"
    span = rf"({number})(?:\s*(?:-|–|to|…)\s*({number}))?\s*({units})"
    for one, two, unit in re.findall(span, text, re.IGNORECASE):
        for value in (one, two):
            if value:
                made.append((float(value.replace(",", ".").replace("−", "-")), unit.lower()))
    return made


def celsius(text: str) -> list[float]:
    """Temperatures with a unit, in °C.

    Examples
    --------
    >>> celsius("18 to 22 °C"), celsius("50 °F"), celsius("-4,5 C"), celsius("21")
    ([18.0, 22.0], [10.0], [-4.5], [])
    """
    read = _values(text, r"°\s?[CF]\b|deg\.?\s?[CF]\b|[CF]\b")
    return [(v - 32) / 1.8 if unit.endswith("f") else v for v, unit in read]


def lux(text: str) -> list[float]:
    """Illuminances with a unit, in lx.

    Examples
    --------
    >>> lux("750 lx"), [round(v) for v in lux("100 fc at the weld")]
    ([750.0], [1076])
    """
    read = _values(text, r"lx\b|lux\b|fc\b|ft-?cd?\b")
    return [v * _LUX_IN_FC if unit.startswith("f") else v for v, unit in read]


def irradiance(text: str) -> list[float]:
    """UV-A irradiances with a unit, in W/m²; 1 W/m² is 100 µW/cm².

    Examples
    --------
    >>> irradiance("1500 µW/cm²"), irradiance("12 W/m2"), irradiance("1,2 mW/cm²")
    ([15.0], [12.0], [12.0])
    """
    read = _values(text, r"[µμu]W/cm(?:²|2)|mW/cm(?:²|2)|W/m(?:²|2)")
    part = {"m": 10.0, "w": 1.0}
    return [v * part.get(unit[0], 0.01) for v, unit in read]


def minutes(text: str) -> list[float]:
    """Times in minutes, each with the unit, in the order of the text.

    Examples
    --------
    >>> minutes("12 min"), minutes("air, 5,5 min; 2min (10:00 to 10:02)"), minutes("2")
    ([12.0], [5.5, 2.0], [])
    """
    found = re.findall(rf"({_NUMBER})\s?min", text)
    return [float(one.replace(",", ".")) for one in found]
