"""What makes the figures of outlines uncertain (JCGM 100:2008), of many outlines at once.

Contributions are standard uncertainties by name, each an array over R outlines.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt

import numpy as np
import numpy.typing as npt

from ptmark.dye import EdgeQuality
from ptmark.dye.edge import LEVEL_DIVISOR
from ptmark.measure.figures import Figures
from ptmark.measure.quantity import Quantity
from ptmark.measure.relief import relief_u_mm
from ptmark.measure.width import (
    FILLED_PER_SHIFT,
    FILLED_U_BY_HAND,
    FILLED_U_PER_SHIFT,
    MOST_FILLED,
    blur_u,
)
from ptmark.scale import SurfaceMap

__all__ = ["OPERATOR_PX", "Edges", "quantities_of"]

Array = npt.NDArray[np.float64]
Budget = dict[str, Array]

LINEAR_RATIO = 3.0
# What interpolation between pixels leaves in the place of an edge, px. Common practice, no
# source.
SAMPLING_PX = 0.1
# How far an operator's point lies from the edge, px, by how the outline was made, where no
# repeat traces tell (`ptmark.measure.hand`). Common practice, no source.
OPERATOR_PX = {"suggested": 0.0, "snapped": 0.5, "hand": 1.5}

_EDGE_SIDE = ("edge", "sampling")  # of the outline's edge, not of the map
_COMMON = ("edge", "reference")  # move length and width together


@dataclass(frozen=True, slots=True, eq=False)
class Edges:
    """How well the edges of R outlines are known, mm, each of shape (R,).

    ``shift`` and ``end_shift`` are half the ways from 40 to 60 % contrast along the flanks and
    at the ends of the length, ``noise`` that of one vertex, ``operator`` that of a person's
    point. ``displaced_u`` is the standard uncertainty of all edges of the photo together, mm.
    """

    shift: Array
    end_shift: Array
    noise: Array
    operator: Array
    seen: npt.NDArray[np.bool_]
    displaced_u: float = 0.0

    @property
    def flank_u(self) -> Array:
        """Standard uncertainty of where a flank lies, mm, of each outline."""
        return np.hypot(self.shift / LEVEL_DIVISOR, self.displaced_u)

    @property
    def end_u(self) -> Array:
        """The same of an end of the length."""
        return np.hypot(self.end_shift / LEVEL_DIVISOR, self.displaced_u)

    @classmethod
    def of(
        cls, edges: Sequence[EdgeQuality], mm_per_px: Array, displaced_u: float = 0.0
    ) -> "Edges":
        """Those of outlines at whose places the scale is ``mm_per_px`` of shape (R,)."""
        shift = np.abs([one.shift_px for one in edges])
        # an end that tapers is less sure than the flanks, never surer
        ends = np.abs([one.end_shift_px or 0.0 for one in edges])
        noise = np.hypot([one.noise_px for one in edges], SAMPLING_PX)
        operator = np.array([_operator_px(one) for one in edges])
        seen = np.array([one.source != "hand" for one in edges])
        every = shift, np.maximum(shift, ends), noise, operator
        shift_mm, ends_mm, noise_mm, operator_mm = (one * mm_per_px for one in every)
        return cls(shift_mm, ends_mm, noise_mm, operator_mm, seen, displaced_u)


def _operator_px(edge: EdgeQuality) -> float:
    if edge.operator_px is not None:
        return edge.operator_px
    return OPERATOR_PX.get(edge.source, OPERATOR_PX["hand"])


@dataclass(frozen=True, slots=True, eq=False)
class Quantities:
    """Those of R outlines, each a list of so many.

    ``over`` is what the longer of length and path has over `LINEAR_RATIO` widths, mm.
    """

    length: list[Quantity]
    path: list[Quantity]
    width: list[Quantity]
    area: list[Quantity]
    ratio: list[Quantity]
    over: list[Quantity]


def quantities_of(
    found: Figures,
    edges: Edges,
    ends_px: Array,
    surface: SurfaceMap,
    height_mm: float | None,
) -> Quantities:
    """Figures with their budgets, as `ptmark.measure.measure_outline` tells them.

    ``ends_px`` of shape (R, 2, 2) are those of the length.
    """
    chords_px = surface.to_px(found.chords.reshape(-1, 2)).reshape(found.chords.shape)
    every_px = np.concatenate([ends_px[:, None], chords_px], axis=1)
    between = _between_ends(every_px, edges, surface, height_mm)
    length = {name: u[:, 0] for name, u in between.items()}
    length["edge"] = 2 * edges.end_u
    path = _along_path(length, found.path / found.length)
    width = {name: u[:, 1:].max(axis=1) for name, u in between.items()}
    blurred = blur_u(found.width, edges.shift)
    filling = edges.shift * found.crossing
    wider = np.minimum(FILLED_PER_SHIFT * filling, MOST_FILLED * found.width) * edges.seen
    filled = np.where(edges.seen, FILLED_U_PER_SHIFT, FILLED_U_BY_HAND) * filling
    width["edge"] = np.hypot(np.hypot(width["edge"], blurred), filled)
    straight = found.length >= found.path
    top = {name: np.where(straight, u, path[name]) for name, u in length.items()}
    across = np.maximum(found.width - wider, 1e-12)
    ratio = np.maximum(found.length, found.path) / across
    return Quantities(
        length=_told(found.length, length, "mm"),
        path=_told(found.path, path, "mm"),
        width=_told(found.width - wider, width, "mm"),
        area=_told(found.area, _of_area(found, length, edges, blurred), "mm2"),
        ratio=_told(ratio, _combined(top, width, 1 / across, -ratio / across), "1"),
        over=_told(
            (ratio - LINEAR_RATIO) * across, _combined(top, width, 1.0, -LINEAR_RATIO), "mm"
        ),
    )


def _between_ends(
    ends_px: Array, edges: Edges, surface: SurfaceMap, height_mm: float | None
) -> Budget:
    """Budgets of the distances between points on edges, mm: M of each of R outlines.

    ``ends_px`` of shape (R, M, 2, 2); gives shape (R, M).
    """
    shape, pairs = ends_px.shape[:2], ends_px.reshape(-1, 2, 2)
    budget = {name: u.reshape(shape) for name, u in surface.distances_u(pairs).items()}
    same = np.ones(shape)
    budget["edge"] = 2 * edges.flank_u[:, None] * same
    budget["sampling"] = sqrt(2) * edges.noise[:, None] * same
    picked = sqrt(2) * edges.operator[:, None] * same
    budget["picking"] = np.hypot(budget.get("picking", 0.0), picked)
    budget["relief"] = relief_u_mm(pairs, surface, height_mm).reshape(shape)
    return budget


def _along_path(length: Budget, winding: Array) -> Budget:
    """The same relative map along the path; the edge's share has two ends like the length's."""
    return {name: u if name in _EDGE_SIDE else u * winding for name, u in length.items()}


def _combined(
    top: Budget, width: Budget, by_top: Array | float, by_width: Array | float
) -> Budget:
    """That of a figure of max(length, path) and width, by its slopes over both.

    A wrong edge or reference size moves both the same way (fully correlated: the
    contributions add with their signs); the rest is taken as independent.
    """
    budget = {}
    for name, u in top.items():
        one, other = by_top * u, by_width * width[name]
        budget[name] = np.abs(one + other) if name in _COMMON else np.hypot(one, other)
    return budget


def _of_area(found: Figures, length: Budget, edges: Edges, blurred: Array) -> Budget:
    """The edge moves the whole rim; the map counts twice, once for each direction.

    ``blurred`` is the standard uncertainty of the width by the blur, mm; each flank has half.
    """
    twice = 2 * found.area / found.length
    budget = {name: twice * u for name, u in length.items() if name not in _EDGE_SIDE}
    budget["edge"] = found.rim * np.hypot(edges.flank_u, blurred / 2)
    budget["sampling"] = edges.noise * np.sqrt(found.rim_squares)
    return budget


def _told(values: Array, budget: Budget, unit: str) -> list[Quantity]:
    rows = np.stack(list(budget.values()), axis=1).tolist()
    return [
        Quantity(value, dict(zip(budget, row, strict=True)), unit)
        for value, row in zip(values.tolist(), rows, strict=True)
    ]
