"""One measured photo of a series, and several outlines measured as one."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import hypot

import cv2
import numpy as np
import numpy.typing as npt
import shapely

from ptmark.dye import EdgeQuality, LeftOut
from ptmark.measure import Conditions, Measurement, Quantity, measure_outline
from ptmark.scale import SurfaceMap
from ptmark.series.features import View

__all__ = ["Frame", "Seen", "is_least", "length_and_area"]

Array = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Seen:
    """An indication of one photo: its letter there, outline of shape (N, 2) px, values."""

    id: str
    outline_px: Array
    edge: EdgeQuality
    measurement: Measurement


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Frame:
    """A photo with its measured indications.

    ``minutes`` are those since the developer was dry (wet) or applied (dry); None where not
    known. ``left_out`` are the blobs that were not called. ``area_px`` is the examined area.
    """

    view: View
    surface: SurfaceMap
    seen: tuple[Seen, ...]
    left_out: tuple[LeftOut, ...] = ()
    minutes: float | None = None
    relief_mm: float | None = None
    area_px: Array | None = None

    @property
    def name(self) -> str:
        return self.view.name

    def shows(self, points_px: Array) -> bool:
        """Whether a place lies in the photo, beside the card and in the examined area."""
        edge = np.array(self.view.size) - 1
        if not ((points_px >= 0) & (points_px <= edge)).all():
            return False
        if self.surface.reference == "card":
            card = shapely.MultiPoint(self.surface.reference_px).convex_hull
            if card.intersects(shapely.MultiPoint(points_px).convex_hull):
                return False
        if self.area_px is None:
            return True
        polygon = self.area_px.astype(np.float32).reshape(-1, 1, 2)
        middle = points_px.mean(axis=0)
        at = (float(middle[0]), float(middle[1]))
        return cv2.pointPolygonTest(polygon, at, measureDist=False) >= 0


def is_least(parts: Sequence[Seen]) -> bool:
    """Whether the sizes of parts are the least that they can be: one may not be shown whole."""
    return any(one.measurement.least for one in parts)


def length_and_area(parts: Sequence[Seen], frame: Frame) -> tuple[Quantity, Quantity]:
    """Length from end to end of all parts, and their areas together.

    The parts' areas move together with the edge and the map, so that their contributions add
    up by name (JCGM 100:2008, 5.2.2, correlation 1).
    """
    if len(parts) == 1:
        return parts[0].measurement.length, parts[0].measurement.area
    every = np.concatenate([one.outline_px for one in parts]).astype(np.float32)
    around = cv2.convexHull(every).reshape(-1, 2).astype(np.float64)
    shifts = [one.edge.shift_px for one in parts]
    edge = replace(parts[0].edge, shift_px=max(shifts, key=abs))
    whole = measure_outline(around, frame.surface, edge, Conditions(relief_mm=frame.relief_mm))
    areas = [one.measurement.area for one in parts]
    names = {name for area in areas for name in area.budget}
    budget = {
        name: (hypot if name == "sampling" else _added)(
            *(area.budget.get(name, 0.0) for area in areas)
        )
        for name in sorted(names)
    }
    return whole.length, Quantity(sum(area.value for area in areas), budget, "mm2")


def _added(*parts: float) -> float:
    return sum(parts)
