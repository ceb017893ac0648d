"""What a second person needs to measure a photo again: its scale, file and conditions."""

from typing import Any

from reportlab.platypus import Flowable

from ptmark.record import Record
from ptmark.report.pages.style import grid, heading, text
from ptmark.report.wording import EMPTY, measured, scale_line

__all__ = ["basis"]


def basis(record: Record, width: float) -> list[Flowable]:
    """Scale, photo and conditions: what a second person needs to measure again."""
    photo, scale, camera = record.photo, record.scale, record.photo.get("camera") or {}
    rows = [
        ("Scale", scale_line(record)),
        ("Scale as given", _given(scale["given"])),
        ("Misfit of the scale", measured(scale["residual_px"], unit="px")),
        ("Photo", f"{photo['file']}, {photo['width']} × {photo['height']} px"),
        (
            "Camera",
            " ".join(str(camera.get(k) or "") for k in ("make", "model", "lens")).strip(),
        ),
        ("Lens", _lens(scale.get("lens"))),
        ("Taken", str(camera.get("taken") or "")),
        ("Height above the surface", _relief(record.conditions["relief_mm"])),
        ("Background haze", measured(record.conditions["haze"], unit="(0 none, 1 full)")),
        ("Weld length", measured(record.weld_length_mm)),
        ("Thickness for the rules", measured(record.thickness_mm)),
        *(
            [("Diameter for the rules", measured(record.diameter_mm))]
            * bool(record.diameter_mm)
        ),
        *([("Lines for the rules", ", ".join(record.edges_mm or {}))] * bool(record.edges_mm)),
    ]
    cells = [[text(name, 8, quiet=True), said or EMPTY] for name, said in rows]
    return [
        *heading("Scale, photo and conditions"),
        grid(cells, [0.28 * width, 0.72 * width], head=0),
    ]


def _relief(relief_mm: float | None) -> str:
    return "not given; 0 to 2 mm assumed" if relief_mm is None else measured(relief_mm)


def _lens(known: dict[str, Any] | None) -> str:
    if known is None:
        return "not calibrated; what a phone's own correction leaves is in U"
    return f"calibrated {known['made']} from {known['photos']} photos: {known['name']}"


def _given(given: dict[str, Any] | None) -> str:
    if not given:
        return EMPTY
    return "; ".join(
        f"{name.replace('_', ' ')}: {_flat(value)}"
        for name, value in given.items()
        if value is not None
    )


def _flat(value: object) -> str:
    if isinstance(value, list):
        return "(" + ", ".join(_flat(one) for one in value) + ")"
    if isinstance(value, dict):
        return "(" + _given(value) + ")"
    return f"{value:g}" if isinstance(value, float) else str(value)
