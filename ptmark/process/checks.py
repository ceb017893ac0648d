"""What of the process a record must be cautioned about: dates, temperature, light and times.

The job's procedure governs; nothing here blocks. Each caution belongs to one field of the
record, beside which it is shown.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date

from ptmark.process.reading import AMBIGUOUS, celsius, irradiance, last_date, lux, minutes

__all__ = ["CHECKED", "CONDITIONS", "Conditions", "cautions"]

# Keys of `ptmark.record.FIELDS`, with their labels, which name the reason in the deviations.
_BATCHES = {
    "penetrant_batch": "Penetrant batch",
    "remover_batch": "Remover batch",
    "emulsifier_batch": "Emulsifier batch",
    "developer_batch": "Developer batch",
}
_INSTRUMENTS = {
    "thermometer": "Thermometer",
    "light_meter": "Light meter",
    "uv_meter": "UV-A meter",
    "length_instrument": "Scale or rule",
    "clock": "Timer",
}
_CERTIFICATES = {
    "examiner_certificate": "Examiner's certificate",
    "reviewer_certificate": "Reviewer's certificate",
}
_VISION = {"vision_check": "Vision check"}
_VISION_DAYS = 366  # near vision each year: ISO 9712, 7.4 (from memory)
_MEASURED = {
    "surface_temperature": "Surface temperature",
    "illuminance": "Illuminance",
    "uv_irradiance": "UV-A irradiance",
}
_TIMES = {"penetration_time": "Dwell time", "development_time": "Development time"}
CHECKED = {**_BATCHES, **_MEASURED, **_INSTRUMENTS, **_CERTIFICATES, **_VISION, **_TIMES}


@dataclass(frozen=True)
class Conditions:
    """Surface temperature (°C), least light and most ambient light (lx), least UV-A (W/m²).

    ``cold`` is said inside the window but below ``cold_below``, °C. ``on_temperature`` and
    ``on_light`` say where the figures are from and how sure they are.
    """

    temperature: tuple[float, float]
    outside: str
    light: float
    ambient: float
    uv: float
    on_temperature: str
    on_light: str
    cold_below: float = float("-inf")
    cold: str = ""


# ISO 3452-1 as ISO 3452-6 quotes it; parts 5 and 6, 500 lx and the UV figures from memory.
_ISO = Conditions(
    temperature=(10, 50),
    outside="ISO 3452-6 is for colder surfaces, ISO 3452-5 for hotter ones.",
    light=500,
    ambient=20,
    uv=10,
    on_temperature="ISO 3452-1",
    on_light="ISO 3059, second-hand",
)
# Second-hand; the doubled dwell is Table T-672 of the 2007 edition.
_ASME = Conditions(
    temperature=(5, 52),
    outside="Qualify the procedure by Appendix III.",
    light=1076,
    ambient=21.5,
    uv=10,
    on_temperature="ASME V, Article 6, T-652, second-hand",
    on_light="ASME V, Article 6, T-676, second-hand",
    cold_below=10,
    cold="Below 10 °C the least dwell is doubled (Table T-672, 2007 edition).",
)
# By the names of `LIMITS`. Common practice has no figures of its own here.
CONDITIONS = {
    "common practice": _ISO,
    "ASME V, welds and castings": _ASME,
    "ASME V, wrought": _ASME,
    "ISO 3452-1": _ISO,
}


def cautions(
    fields: Mapping[str, str], held: Conditions, *, fluorescent: bool, today: date
) -> dict[str, str]:
    """What to know of each field, by its key; no entry where there is nothing to say.

    Dates are held against the examination's own date where that can be read, else against
    ``today``.
    """
    examined = last_date(fields.get("examination_date", ""))
    day = examined if isinstance(examined, date) else today
    checks: dict[str, Callable[[str], str]] = {
        **dict.fromkeys(_BATCHES, lambda text: _batch(text, day)),
        **dict.fromkeys(_INSTRUMENTS, lambda text: _instrument(text, day)),
        **dict.fromkeys(_CERTIFICATES, lambda text: _certificate(text, day)),
        **dict.fromkeys(_TIMES, _time),
        "vision_check": lambda text: _vision(text, day),
        "surface_temperature": lambda text: _temperature(text, held),
        "illuminance": lambda text: _light(text, held, fluorescent=fluorescent),
        "uv_irradiance": lambda text: _uv(text, held),
    }
    found = {}
    for key, check in checks.items():
        text = fields.get(key, "").strip()
        if text and (said := check(text)):
            found[key] = said
    return found


def _batch(text: str, day: date) -> str:
    past, said = _past(text, day)
    return f"This batch expired on {past}, before the examination ({day})." if past else said


def _instrument(text: str, day: date) -> str:
    past, said = _past(text, day)
    return f"Calibration was due on {past}, before the examination ({day})." if past else said


def _certificate(text: str, day: date) -> str:
    past, said = _past(text, day)
    if past is None:
        return said
    return f"This certificate expired on {past}, before the examination ({day})."


def _past(text: str, day: date) -> tuple[date | None, str]:
    """The day that counts where it is past, and what is said where it cannot be read."""
    read = last_date(text)
    if isinstance(read, date):
        return (read if read < day else None), ""
    two_ways = "The date can be read two ways. Write it year-month-day."
    return None, two_ways if read == AMBIGUOUS else ""


def _vision(text: str, day: date) -> str:
    read = last_date(text)
    if isinstance(read, date) and (day - read).days > _VISION_DAYS:
        return (
            f"Checked on {read}, more than a year before the examination ({day}); near vision "
            "is checked each year (ISO 9712, from memory)."
        )
    return _past(text, date.min)[1]


def _time(text: str) -> str:
    if not any(map(str.isdigit, text)) or minutes(text):
        return ""
    return "Write it in minutes with the unit, such as 12 min, so that it can be checked."


def _temperature(text: str, held: Conditions) -> str:
    read, (least, most) = celsius(text), held.temperature
    if not read:
        return "Write the unit, °C or °F, so that it can be checked."
    window = _window(least, most, held.on_temperature)
    if min(read) < least:
        said = f"Too cold: {min(read):.3g} °C is below {window}."
        return f"{said} {held.outside}".rstrip()
    if max(read) > most:
        said = f"Too hot: {max(read):.3g} °C is above {window}."
        return f"{said} {held.outside}".rstrip()
    return held.cold if min(read) < held.cold_below else ""


def _window(least: float, most: float, clause: str) -> str:
    if math.isinf(least):
        return f"at most {most:g} °C ({clause})"
    if math.isinf(most):
        return f"at least {least:g} °C ({clause})"
    return f"{least:g} to {most:g} °C ({clause})"


def _light(text: str, held: Conditions, *, fluorescent: bool) -> str:
    read = lux(text)
    if not read:
        return "Write the unit, lx or fc, so that it can be checked."
    if fluorescent:
        if max(read) <= held.ambient + 0.05:  # 2 fc are 21.53 lx
            return ""
        return (
            f"Too bright: {max(read):.4g} lx of other light, {held.ambient:g} lx at most for "
            f"fluorescent penetrant ({held.on_light})."
        )
    if min(read) >= held.light:
        return ""
    return f"Too dark: {min(read):.4g} lx, at least {held.light:g} lx ({held.on_light})."


def _uv(text: str, held: Conditions) -> str:
    read = irradiance(text)
    if not read:
        return "Write the unit, µW/cm² or W/m², so that it can be checked."
    if min(read) >= held.uv:
        return ""
    return (
        f"Too weak: {100 * min(read):.4g} µW/cm², at least {100 * held.uv:g} µW/cm² "
        f"({held.on_light})."
    )
