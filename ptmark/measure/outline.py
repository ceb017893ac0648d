"""Measure one outline on a surface: every quantity of the report with its budget.

Outlines are arrays of shape (N, 2), ``(x, y)``, not closed by a repeated point.
"""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from ptmark.dye import EdgeQuality
from ptmark.measure.quantity import Quantity
from ptmark.scale import SurfaceMap

__all__ = ["Conditions", "Measurement", "measure_outline"]

Array = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True)
class Conditions:
    """What the user says of the surface.

    ``relief_mm`` is the height of the indications above the plane of the reference (a weld
    crown), None where not given: then 0 to 2 mm is assumed and said.
    """

    relief_mm: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Measurement:
    """One outline measured; lengths in mm on the surface.

    ``shape`` follows max(length, path) > 3 x width ("linear", else "rounded"); where the
    ratio's uncertainty straddles 3, ``shape_sure`` is False and the stricter "linear" is given.
    ``ends_mm`` are the two points of the maximum caliper.
    """

    outline_mm: Array
    length: Quantity
    path: Quantity
    width: Quantity
    area: Quantity
    ratio: Quantity
    centre_mm: tuple[float, float]
    ends_mm: tuple[tuple[float, float], tuple[float, float]]
    shape: str
    shape_sure: bool


def measure_outline(
    outline_px: Array,
    surface: SurfaceMap,
    edge: EdgeQuality,
    conditions: Conditions | None = None,
) -> Measurement:
    """Measure an outline given in px."""
    raise NotImplementedError
