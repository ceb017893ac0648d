"""Gaps between outlines, edge to edge, and chains of near neighbours.

All in mm on the surface.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot

import numpy as np
import numpy.typing as npt

from ptmark.errors import OutlineError
from ptmark.measure.geometry import as_outline, nearest_points
from ptmark.measure.quantity import Quantity

__all__ = ["Gap", "gaps_between", "grouped"]

Array = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True)
class Gap:
    """The gap between outlines ``first`` and ``second`` (their places in the list given).

    ``ends_mm`` are the nearest points, the first outline's own first.
    """

    first: int
    second: int
    gap: Quantity
    ends_mm: tuple[tuple[float, float], tuple[float, float]]


def gaps_between(
    outlines_mm: Sequence[Array],
    edge_u_mm: Sequence[float] | None = None,
    scale_rel_u: float = 0.0,
    within_mm: float = float("inf"),
) -> list[Gap]:
    """Every gap, edge to edge, not longer than ``within_mm``.

    Parameters
    ----------
    outlines_mm : sequence of ndarray of shape (N, 2)
    edge_u_mm : sequence of float, optional
        Standard uncertainty of the place of each outline's edge; 0 where not given. The two
        edges of a gap are independent.
    scale_rel_u : float
        Relative standard uncertainty of lengths from the map.
    within_mm : float
        Longer gaps are not looked at: bounding boxes decide first.

    Returns
    -------
    list of Gap
        In the order (0, 1), (0, 2), …, (1, 2), …

    Raises
    ------
    OutlineError
        If an outline cannot be measured, or the number of ``edge_u_mm`` does not fit.
    """
    shapes = [as_outline(outline) for outline in outlines_mm]
    edges = [0.0] * len(shapes) if edge_u_mm is None else list(edge_u_mm)
    if len(edges) != len(shapes):
        raise OutlineError(f"{len(edges)} edge uncertainties for {len(shapes)} outlines")
    boxes = [(shape.min(axis=0), shape.max(axis=0)) for shape in shapes]
    found = []
    for i, first in enumerate(shapes):
        for j in range(i + 1, len(shapes)):
            apart = np.maximum(boxes[i][0] - boxes[j][1], boxes[j][0] - boxes[i][1])
            if hypot(*np.maximum(apart, 0)) > within_mm:
                continue
            value, a, b = nearest_points(first, shapes[j])
            if value <= within_mm:
                budget = {"edge": hypot(edges[i], edges[j]), "map": value * scale_rel_u}
                ends = ((float(a[0]), float(a[1])), (float(b[0]), float(b[1])))
                found.append(Gap(first=i, second=j, gap=Quantity(value, budget), ends_mm=ends))
    return found


def grouped(gaps: Sequence[Gap], limit_mm: float) -> list[tuple[int, ...]]:
    """Chains of neighbours whose gaps are at most ``limit_mm``, each in ascending order.

    Outlines without a near neighbour are in no group.

    Examples
    --------
    >>> gap = lambda i, j, mm: Gap(
    ...     first=i, second=j, gap=Quantity(mm), ends_mm=((0.0, 0.0), (mm, 0.0))
    ... )
    >>> grouped([gap(0, 1, 1.0), gap(1, 4, 1.5), gap(2, 3, 1.6)], 1.5)
    [(0, 1, 4)]
    """
    leader: dict[int, int] = {}

    def find(item: int) -> int:
        while leader.setdefault(item, item) != item:
            item = leader[item]
        return item

    for each in gaps:
        if each.gap.value <= limit_mm:
            leader[find(each.second)] = find(each.first)
    chains: dict[int, list[int]] = {}
    for item in sorted(leader):
        chains.setdefault(find(item), []).append(item)
    return sorted(tuple(chain) for chain in chains.values() if len(chain) > 1)
