"""Measure outlines on a surface: every quantity of the report with its budget.

Outlines are arrays of shape (N, 2), ``(x, y)``, not closed by a repeated point. Those of a
photo are measured together: a call costs more than its work on one.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import isfinite

import numpy as np
import numpy.typing as npt

from ptmark.dye import EdgeQuality
from ptmark.dye.rings import Rings
from ptmark.errors import OutlineError
from ptmark.least import Least, those
from ptmark.measure.budget import Edges, quantities_of
from ptmark.measure.figures import figures_of
from ptmark.measure.geometry import as_outline
from ptmark.measure.quantity import COVERAGE_FACTOR, Quantity
from ptmark.measure.relief import flattened
from ptmark.scale import SurfaceMap

__all__ = ["Conditions", "Measurement", "measure_outline", "measure_outlines"]

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

    ``shape`` follows max(length, path) > 3 x width ("linear", else "rounded"); where either may
    be by its uncertainty, ``shape_sure`` is False and the stricter "linear" is given.
    ``ends_mm`` are the two points of the maximum caliper. ``least`` is why all sizes are the
    least that they can be; of what `ptmark.dye.exposure` and `ptmark.dye.covered` see in the
    photo, who holds it tells.
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
    least: frozenset[Least] = frozenset()


def measure_outline(
    outline_px: Array,
    surface: SurfaceMap,
    edge: EdgeQuality,
    conditions: Conditions | None = None,
) -> Measurement:
    """Measure an outline given in px.

    Parameters
    ----------
    outline_px : ndarray of shape (N, 2)
        Outline in px of the upright photo.
    surface : SurfaceMap
    edge : EdgeQuality
        How well the outline's place is known.
    conditions : Conditions, optional

    Raises
    ------
    OutlineError
        If the outline is no shape or reaches the surface's horizon, or the relief reaches
        the camera or is no number.

    Notes
    -----
    Contributions (JCGM 100:2008, 5.1.2), each a standard uncertainty of the figure in mm:
    the map's own ("picking", "reference", "map", "tilt", "lens") between the figure's two
    ends; "edge", both ends moving together by ``shift_px`` (for the length by
    ``end_shift_px``, where it was taken; for the width of crossing arms and of thin lines by
    more, see `ptmark.measure.width`); "sampling", the two ends' independent noise; "picking"
    also takes an operator's two ends; "relief", see `ptmark.measure.relief`.
    """
    return measure_outlines([outline_px], surface, [edge], conditions)[0]


def measure_outlines(
    outlines_px: Sequence[Array],
    surface: SurfaceMap,
    edges: Sequence[EdgeQuality],
    conditions: Conditions | None = None,
) -> list[Measurement]:
    """Measure outlines, each as `measure_outline` does.

    Raises
    ------
    OutlineError
        As there, if any of them cannot be measured.
    """
    if not len(outlines_px):
        return []
    shapes_px = [as_outline(one) for one in outlines_px]
    height = (conditions or Conditions()).relief_mm
    if height is not None and not isfinite(height):
        raise OutlineError(f"a relief of {height} mm is no height")
    every_px = np.concatenate(shapes_px)
    if not surface.in_view(every_px):
        beyond = next(one for one in shapes_px if not surface.in_view(one))
        what, mend = surface.out_of_view(beyond)
        raise OutlineError(what, mend=mend)
    rings = Rings([len(one) for one in shapes_px])
    every = flattened(surface.to_mm(every_px), surface, height)
    found = figures_of(every, rings, surface.camera_mm[:2])
    ends_px = every_px[found.ends]
    apart = ends_px[:, 1] - ends_px[:, 0]
    mm_per_px = found.length / np.maximum(np.hypot(apart[:, 0], apart[:, 1]), 1e-9)
    told = quantities_of(
        found, Edges.of(edges, mm_per_px, surface.displaced_u_mm), ends_px, surface, height
    )
    made = []
    for i, outline in enumerate(found.outlines):
        shape, sure = _class_of(told.over[i])
        one, other = every[found.ends[i]]
        least = those(
            {
                Least.RUNS_OUT: surface.runs_out(outlines_px[i]),
                Least.ENDS_UNSURE: edges[i].ends_unsure,
            }
        )
        made.append(
            Measurement(
                outline_mm=outline,
                length=told.length[i],
                path=told.path[i],
                width=told.width[i],
                area=told.area[i],
                ratio=told.ratio[i],
                centre_mm=_pair(found.centre[i]),
                ends_mm=(_pair(one), _pair(other)),
                shape=shape,
                shape_sure=sure,
                least=least,
            )
        )
    return made


def _class_of(over: Quantity) -> tuple[str, bool]:
    """Linear or rounded, and whether that is sure; the stricter where it is not.

    By the excess over three widths, not by the ratio, whose slope is far from straight where
    a thin line's width is hardly known.
    """
    sure = abs(over.value) > COVERAGE_FACTOR * over.u
    return "linear" if over.value > 0 or not sure else "rounded", sure


def _pair(point: Array) -> tuple[float, float]:
    return float(point[0]), float(point[1])
