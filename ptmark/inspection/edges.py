"""The lines that rules go by, such as a free edge: from the photo to the surface, with U."""

from collections.abc import Sequence
from math import hypot, sqrt

import numpy as np
import numpy.typing as npt

from ptmark.inspection.state import Marked, State
from ptmark.measure import Measurement
from ptmark.measure.budget import OPERATOR_PX
from ptmark.scale import SurfaceMap

__all__ = ["edge_u_of", "edges_of"]

Array = npt.NDArray[np.float64]


def edges_of(state: State, surface: SurfaceMap) -> dict[str, tuple[Array, ...]]:
    """The marked lines by name, each of shape (N, 2), mm; straight between their points."""
    made: dict[str, tuple[Array, ...]] = {}
    for name, points in state.edges_px:
        line = surface.to_mm(np.array(points, dtype=float))
        made[name] = (*made.get(name, ()), line)
    return made


def edge_u_of(
    measured: Sequence[tuple[Marked, Measurement | None]], state: State, surface: SurfaceMap
) -> dict[str, float]:
    """How well each indication's distance to the marked lines is known, mm, k = 2, by letter.

    Of the shortest way to the lines of a name: the map's part, and the operator's hand at one
    point of the line; the outline's own part stands in its length's U. Of several names the
    largest is taken.
    """
    import shapely

    lines = [
        shapely.MultiLineString(list(named)) for named in edges_of(state, surface).values()
    ]
    made = {}
    for one, found in measured:
        if found is None or not lines:
            continue
        outline = shapely.Polygon(found.outline_mm)
        ways = [shapely.get_coordinates(shapely.shortest_line(outline, line)) for line in lines]
        made[one.id] = 2 * max(_u_of(way, surface) for way in ways)
    return made


def _u_of(way: Array, surface: SurfaceMap) -> float:
    """Standard uncertainty of the way from an outline to a line, both ends in mm, (2, 2)."""
    near, there = surface.to_px(way)
    picking = OPERATOR_PX["hand"] * surface.mm_per_px(there[None])
    apart = float(np.hypot(*(way[1] - way[0])))
    of_map = surface.distance_u(near, there) if apart > 0 else {}
    return hypot(picking, sqrt(sum(u**2 for u in of_map.values())))
