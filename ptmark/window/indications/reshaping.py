"""Split, join, smooth and cut outlines: plain geometry in photo px, no widget needed.

Each function gives closed outlines of shape (N, 2), px, or raises `OutlineError` with what to
do instead. Shapely works out what lies where.
"""

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from ptmark.errors import OutlineError
from ptmark.window.words import tr

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt
    from shapely import Polygon

    Array = npt.NDArray[np.float64]

__all__ = ["cut_away", "join_outlines", "smooth_outline", "split_outline"]

_LEAST_PX2 = 1.0  # a smaller piece is a crumb of the cut, no indication
_BRIDGE_PX = 1.0  # half the width of the bridge between outlines that do not touch
_KEEP, _BACK = 0.5, -0.53  # Taubin 1995: a step in, a larger one out, so that nothing shrinks


def split_outline(outline_px: "Array", line_px: Sequence[tuple[float, float]]) -> "list[Array]":
    """The parts on both sides of a line across the outline, the larger one first."""
    from shapely import LineString, ops

    parts: list[Any] = [
        part
        for part in ops.split(_polygon(outline_px), _longer(LineString(line_px))).geoms
        if part.area >= _LEAST_PX2
    ]
    if len(parts) < 2:
        raise OutlineError(
            tr("the line does not cross the outline"),
            mend=tr("draw it from one side of the outline to the other"),
        )
    parts.sort(key=lambda part: -part.area)
    return [_points(part) for part in parts]


def join_outlines(outlines_px: "Sequence[Array]") -> "Array":
    """One outline round all; what does not touch is bridged along the shortest way.

    The bridge is 2 px wide: it takes length and path over the gap, as where one indication
    was broken by a glare or a wipe, and leaves the greatest width as it is.
    """
    from shapely import LineString, ops, unary_union

    if len(outlines_px) < 2:
        raise OutlineError(tr("one outline cannot be joined"), mend=tr("select two or more"))
    whole: Any = unary_union([_polygon(one) for one in outlines_px])
    while whole.geom_type == "MultiPolygon":
        first, *rest = whole.geoms
        nearest = min(rest, key=first.distance)
        a, b = ops.nearest_points(first, nearest)
        bridge = LineString([a, b]).buffer(_BRIDGE_PX)
        whole = unary_union([whole, bridge])
    return _points(whole)


def smooth_outline(outline_px: "Array", reach_px: float) -> "Array":
    """The outline without what is finer than about ``reach_px``, its area kept.

    Points are spread evenly, then smoothed by G. Taubin's two-step filter (ICCV 1995, "Curve
    and surface smoothing without shrinkage"); the area is then made exact by scaling.
    """
    import numpy as np
    from shapely import Polygon, affinity

    shape = _polygon(outline_px)
    ring = shape.exterior
    step = max(reach_px / 4, ring.length / 4000)
    count = max(12, round(ring.length / step))
    along = np.linspace(0, ring.length, count, endpoint=False)
    points = np.array([ring.interpolate(at).coords[0] for at in along])
    for _ in range(50):
        for weight in (_KEEP, _BACK):
            middle = (np.roll(points, 1, axis=0) + np.roll(points, -1, axis=0)) / 2
            points = points + weight * (middle - points)
    made = Polygon(points)
    if not made.is_valid or made.area < _LEAST_PX2:
        raise OutlineError(
            tr("the outline is too fine to be smoothed"), mend=tr("edit its points")
        )
    grow = float(np.sqrt(shape.area / made.area))
    return _points(affinity.scale(made, grow, grow, origin="centroid"))


def cut_away(outline_px: "Array", loop_px: Sequence[tuple[float, float]]) -> "list[Array]":
    """What is left of an outline outside a loop, the largest piece first."""
    from shapely import Polygon, make_valid

    shape, loop = _polygon(outline_px), make_valid(Polygon(loop_px))
    left = shape.difference(loop)
    pieces = [p for p in getattr(left, "geoms", [left]) if p.area >= _LEAST_PX2]
    if not pieces:
        raise OutlineError(
            tr("nothing of the outline would be left"), mend=tr("delete the indication instead")
        )
    if left.equals(shape):
        raise OutlineError(
            tr("the loop lies beside the outline"), mend=tr("draw it round what is to go")
        )
    if any(piece.interiors for piece in pieces):
        raise OutlineError(
            tr("an outline cannot have a hole"),
            mend=tr("draw the loop over the outline's edge"),
        )
    pieces.sort(key=lambda piece: -piece.area)
    return [_points(piece) for piece in pieces]


def _polygon(outline_px: "Array") -> "Polygon":
    """A valid polygon; small loops where the hand crossed its own line are left off."""
    from shapely import Polygon, make_valid

    whole: Any = make_valid(Polygon(outline_px))
    parts = [p for p in getattr(whole, "geoms", [whole]) if p.geom_type == "Polygon"]
    largest = max(parts, key=lambda part: part.area, default=None)
    if largest is None or largest.area < 0.9 * sum(part.area for part in parts):
        raise OutlineError(tr("the outline crosses itself"), mend=tr("edit its points first"))
    return Polygon(largest.exterior)


def _longer(line: Any) -> Any:  # noqa: ANN401 - a LineString
    """The same line a little beyond both ends, so that it cuts where it only just touches."""
    from shapely import affinity

    grow = 1 + 2 / max(line.length, 1.0)
    return affinity.scale(line, grow, grow, origin="centroid")


def _points(shape: "Polygon") -> "Array":
    import numpy as np

    return np.array(shape.exterior.coords[:-1], float)
