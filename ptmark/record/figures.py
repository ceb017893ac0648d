"""An indication's measured values as the record writes them."""

from typing import Any

from ptmark.measure import Measurement, Quantity
from ptmark.record.plain import number, points

__all__ = ["FIGURES", "figures_json"]

# An indication's measured figures as the JSON names them, each with its expanded uncertainty.
FIGURES = (
    "length_mm",
    "length_u_mm",
    "path_mm",
    "path_u_mm",
    "width_mm",
    "width_u_mm",
    "area_mm2",
    "area_u_mm2",
    "ratio",
    "ratio_u",
)
_MEASURED = (
    "outline_mm",
    *FIGURES,
    "shape",
    "shape_sure",
    "centre_mm",
    "ends_mm",
    "budget",
    "width_budget",
)


def figures_json(made: Measurement | None) -> dict[str, Any]:
    """Measured values as the record holds them, None each where nothing could be measured."""
    if made is None:
        return dict.fromkeys(_MEASURED)
    values = (
        points(made.outline_mm, 3),
        *_pair(made.length),
        *_pair(made.path),
        *_pair(made.width),
        *_pair(made.area),
        *_pair(made.ratio),
        made.shape,
        bool(made.shape_sure),
        points([made.centre_mm], 4)[0],
        points(made.ends_mm, 4),
        _budget(made.length),
        _budget(made.width),
    )
    return dict(zip(_MEASURED, values, strict=True))


def _pair(quantity: Quantity) -> tuple[float | None, float | None]:
    return number(quantity.value, 4), number(quantity.expanded, 4)


def _budget(quantity: Quantity) -> dict[str, float | None]:
    return {name: number(u, 6) for name, u in quantity.budget.items()}
