"""Bleed-out over time as JSON-ready data and as CSV."""

from pathlib import Path
from typing import Any

import numpy as np

from ptmark.files import csv_text
from ptmark.report.table import save
from ptmark.report.wording import AID
from ptmark.series import Curve, Frame, Growth, Reading, Registration

__all__ = ["MEASURED_ONLY", "growth_json", "laid_over", "registration_json", "write_growth_csv"]

_LAID_BY = {
    "features": "the surface",
    "features and scales": "the surface and both scales",
    "marks": "picked marks",
    "card": "the scale card",
}
MEASURED_ONLY = "Measured points only; the lines join them and say nothing of the time between."


def growth_json(growth: Growth) -> dict[str, Any]:
    """The series as JSON-ready data; ``…_u_…`` is expanded, k = 2."""
    choice, base = growth.choice, growth.frames[growth.base]
    return {
        "window": {
            "first_min": growth.window.first,
            "last_min": growth.window.last,
            "source": growth.window.source,
        },
        "evaluate": {
            "file": None if choice.index is None else growth.frames[choice.index].name,
            "says": choice.says,
        },
        "base": base.name,
        "photos": [
            {
                "file": frame.name,
                "minutes": frame.minutes,
                "registration": None if lead is None else registration_json(lead, frame, base),
            }
            for frame, lead in zip(growth.frames, growth.to_base, strict=True)
        ],
        "left_out": [{"file": name, "reason": why} for name, why in growth.left_out],
        "indications": [_curve_json(growth, curve) for curve in growth.curves],
        "cautions": [*growth.cautions, MEASURED_ONLY, *AID],
    }


def registration_json(lead: Registration, start: Frame, end: Frame) -> dict[str, Any]:
    """A registration as JSON-ready data.

    ``u_px`` and ``u_mm`` are the largest standard uncertainties of where an indication of
    ``start`` lies in ``end``, in each coordinate; None where ``start`` has none.
    """
    places = start.view.about_px
    return {
        "by": lead.by,
        "homography": np.asarray(lead.h).tolist(),
        "inliers": lead.inliers,
        "matches": lead.matches,
        "residual_px": round(lead.residual_px, 3),
        "residual_mm": round(lead.residual_px * end.surface.mm_per_px(), 4),
        "u_px": round(float(lead.u_px(places).max()), 3) if len(places) else None,
        "u_mm": round(float(lead.u_mm(places, end.surface).max()), 4) if len(places) else None,
        "card": lead.card,
    }


def laid_over(lead: Registration) -> str:
    """How one photo was laid over another, in a reader's words.

    Examples
    --------
    >>> lead = Registration(
    ...     h=np.eye(3), covariance=np.eye(8), by="features", inliers=57, matches=61,
    ...     residual_px=0.84,
    ... )
    >>> laid_over(lead)
    'Laid over each other by the surface: 57 of 61 points agree, within 0.8 px on average.'
    """
    said = f"Laid over each other by {_LAID_BY[lead.by]}"
    if not lead.matches:  # by the card alone there is nothing to compare
        return f"{said}."
    return (
        f"{said}: {lead.inliers} of {lead.matches} points agree, "
        f"within {lead.residual_px:.1f} px on average."
    )


def _curve_json(growth: Growth, curve: Curve) -> dict[str, Any]:
    return {
        "id": curve.id,
        "readings": [_reading_json(growth, one) for one in curve.readings],
        "missing": [
            {"file": growth.frames[number].name, "reason": why}
            for number, why in curve.missing.items()
        ],
        "notes": list(curve.notes),
    }


def _reading_json(growth: Growth, one: Reading) -> dict[str, Any]:
    return {
        "file": growth.frames[one.photo].name,
        "minutes": one.minutes,
        "parts": list(one.parts),
        "length_mm": round(one.length.value, 4),
        "length_u_mm": round(one.length.expanded, 4),
        "area_mm2": round(one.area.value, 4),
        "area_u_mm2": round(one.area.expanded, 4),
        "is_least": one.is_least,
    }


_COLUMNS = (
    "file",
    "minutes",
    "parts",
    "length_mm",
    "length_u_mm",
    "area_mm2",
    "area_u_mm2",
    "is_least",
)


def write_growth_csv(path: Path, growth: Growth) -> None:
    """Write one row a measured point (RFC 4180, UTF-8), and one a photo that is left out.

    Raises
    ------
    ReportError
        If the file cannot be written.
    """
    table: list[list[Any]] = [["indication", *_COLUMNS, "left_out"]]
    for curve in growth.curves:
        for one in curve.readings:
            row = _reading_json(growth, one) | {"parts": "+".join(one.parts)}
            table.append([curve.id, *(row[name] for name in _COLUMNS), ""])
    gaps = [""] * (len(_COLUMNS) - 1)
    table += [["", name, *gaps, why] for name, why in growth.left_out]
    save(path, csv_text(table).encode("utf-8-sig"))
