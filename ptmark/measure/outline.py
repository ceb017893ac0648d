"""Measure one outline on a surface: every quantity of the report with its budget.

Outlines are arrays of shape (N, 2), ``(x, y)``, not closed by a repeated point.
"""

from dataclasses import dataclass
from math import hypot, isfinite, sqrt

import numpy as np
import numpy.typing as npt

from ptmark.dye import EdgeQuality
from ptmark.errors import OutlineError
from ptmark.measure.geometry import area_mm2, as_outline, centroid, farthest_pair
from ptmark.measure.quantity import COVERAGE_FACTOR, Quantity
from ptmark.measure.relief import flattened, relief_u_mm
from ptmark.measure.unfold import sound_medial
from ptmark.measure.width import FILLED_PER_SHIFT, blur_u, is_crossing, width_chords
from ptmark.scale import SurfaceMap

__all__ = ["LINEAR_RATIO", "Conditions", "Measurement", "measure_outline"]

Array = npt.NDArray[np.float64]

LINEAR_RATIO = 3.0
# The half-contrast level itself is known to about a tenth of the contrast: the shift between
# 40 and 60 % is the half-width of a rectangular distribution (JCGM 100:2008, 4.3.7).
LEVEL_DIVISOR = sqrt(3)
# What interpolation between pixels leaves in the place of an edge, px. Common practice, no
# source.
SAMPLING_PX = 0.1
# How far an operator's point lies from the edge, px, by how the outline was made, where no
# repeat traces tell (`ptmark.measure.hand`). Common practice, no source.
OPERATOR_PX = {"suggested": 0.0, "snapped": 0.5, "hand": 1.5}


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
    shape_px = as_outline(outline_px)
    height = (conditions or Conditions()).relief_mm
    if height is not None and not isfinite(height):
        raise OutlineError(f"a relief of {height} mm is no height")
    if not surface.in_view(shape_px):
        what, mend = surface.out_of_view(shape_px)
        raise OutlineError(what, mend=mend)
    outline = flattened(surface.to_mm(shape_px), surface, height)
    found_length, one, other = farthest_pair(outline)
    ends = (outline[one], outline[other])
    medial = sound_medial(outline, found_length)
    found_width = 2 * medial.radius
    ends_px = shape_px[[one, other]]
    local = found_length / max(float(np.hypot(*(ends_px[1] - ends_px[0]))), 1e-9)
    between = _between_ends(ends_px, surface, height, edge, local)
    if edge.end_shift_px is not None:  # an end that tapers is less sure than the flanks
        end_shift = max(abs(edge.end_shift_px), abs(edge.shift_px))
        between["edge"] = 2 * end_shift * local / LEVEL_DIVISOR
    length = Quantity(found_length, between)
    path = Quantity(medial.path_length, _scaled_map(between, medial.path_length / found_length))
    across = [
        _between_ends(surface.to_px(chord), surface, height, edge, local)
        for chord in width_chords(medial, ends, surface.camera_mm[:2])
    ]
    of_width = {name: max(one[name] for one in across) for name in across[0]}
    shift = abs(edge.shift_px) * local
    blurred = blur_u(found_width, shift)
    filled = FILLED_PER_SHIFT * shift * is_crossing(outline, medial)
    of_width["edge"] = hypot(of_width["edge"], blurred, filled)
    width = Quantity(found_width, of_width)
    ratio = _ratio(length, path, width)
    sure = abs(ratio.value - LINEAR_RATIO) > COVERAGE_FACTOR * ratio.u
    return Measurement(
        outline_mm=outline,
        length=length,
        path=path,
        width=width,
        area=_area(outline, length, edge, local, blurred),
        ratio=ratio,
        centre_mm=centroid(outline),
        ends_mm=(_pair(ends[0]), _pair(ends[1])),
        shape="linear" if ratio.value > LINEAR_RATIO or not sure else "rounded",
        shape_sure=sure,
    )


_EDGE_SIDE = ("edge", "sampling")  # of the outline's edge, not of the map
_COMMON = ("edge", "reference")  # move length and width together


def _between_ends(
    ends_px: Array, surface: SurfaceMap, height: float | None, edge: EdgeQuality, local: float
) -> dict[str, float]:
    """Budget of the distance between two edge points, mm."""
    budget = surface.distance_u(ends_px[0], ends_px[1])
    operator = edge.operator_px
    if operator is None:
        operator = OPERATOR_PX.get(edge.source, OPERATOR_PX["hand"])
    noise = hypot(edge.noise_px, SAMPLING_PX)
    budget["edge"] = 2 * abs(edge.shift_px) * local / LEVEL_DIVISOR
    budget["sampling"] = sqrt(2) * noise * local
    budget["picking"] = hypot(budget.get("picking", 0.0), sqrt(2) * operator * local)
    budget["relief"] = relief_u_mm(ends_px, surface, height)
    return budget


def _scaled_map(budget: dict[str, float], factor: float) -> dict[str, float]:
    """The same relative map along the path; the edge's share has two ends like the length's."""
    return {name: u if name in _EDGE_SIDE else u * factor for name, u in budget.items()}


def _ratio(length: Quantity, path: Quantity, width: Quantity) -> Quantity:
    """max(length, path) over width.

    A wrong edge or reference size moves both the same way (fully correlated: the
    contributions add with their signs); the rest is taken as independent.
    """
    top = length if length.value >= path.value else path
    across = max(width.value, 1e-12)
    value = top.value / across
    by_top, by_width = 1 / across, -value / across
    budget = {}
    for name in {**top.budget, **width.budget}:
        parts = by_top * top.budget.get(name, 0.0), by_width * width.budget.get(name, 0.0)
        budget[name] = float(abs(sum(parts)) if name in _COMMON else hypot(*parts))
    return Quantity(value, budget, "1")


def _area(
    outline: Array, length: Quantity, edge: EdgeQuality, local: float, blurred: float
) -> Quantity:
    """Area: the edge moves the whole rim; the map counts twice, once for each direction.

    ``blurred`` is the standard uncertainty of the width by the blur, mm; each flank has half.
    """
    value = area_mm2(outline)
    step = np.diff(outline, axis=0, append=outline[:1])
    pieces = np.hypot(step[:, 0], step[:, 1])
    rim = float(pieces.sum())
    noise = hypot(edge.noise_px, SAMPLING_PX) * local
    budget = {
        name: 2 * value * u / length.value
        for name, u in length.budget.items()
        if name not in _EDGE_SIDE
    }
    flank = abs(edge.shift_px) * local / LEVEL_DIVISOR
    budget["edge"] = rim * hypot(flank, blurred / 2)
    budget["sampling"] = noise * float(np.sqrt((pieces**2).sum()))
    return Quantity(value, budget, "mm2")


def _pair(point: Array) -> tuple[float, float]:
    return float(point[0]), float(point[1])
