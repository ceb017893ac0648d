"""Where the letters stand: beside their indications, hiding none, leaders never crossing.

Each letter may stand in many places round its outline; they are tried from the nearest
outwards and the first that is free is taken. Where one letter finds no place, it is given the
first choice and all are placed again. No chance is involved: same outlines, same places.
Coordinates are px of the picture the labels are drawn on.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np
import numpy.typing as npt
import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

__all__ = ["Label", "place_labels"]

_TURNS = np.deg2rad(np.arange(24) * 15.0 - 60.0)  # up and to the right first
_REACH = np.array([0.6, 1.0, 1.6, 2.4, 3.4, 4.8, 6.6, 9.0, 12.0, 16.0, 22.0, 30.0, 42.0, 60.0])
_ROUNDS = 25


@dataclass(frozen=True, slots=True)
class Label:
    """A letter's plate ``(x0, y0, x1, y1)`` and its leader from the outline to the plate."""

    id: str
    plate: tuple[float, float, float, float]
    leader: tuple[tuple[float, float], tuple[float, float]]
    free: bool = True  # False where no free place was to be had


@dataclass(slots=True)
class _Board:
    """What is already on the picture."""

    shapes: list[BaseGeometry]
    bounds: tuple[float, float, float, float]
    soft: BaseGeometry
    gap: float
    plates: list[BaseGeometry] = field(default_factory=list)
    leaders: list[BaseGeometry] = field(default_factory=list)


def place_labels(
    outlines: Sequence[BaseGeometry],
    names: Sequence[str],
    sizes: Sequence[tuple[float, float]],
    bounds: tuple[float, float, float, float],
    *,
    gap: float,
    taken: Sequence[BaseGeometry] = (),
    avoid: BaseGeometry | None = None,
) -> list[Label]:
    """Place a letter beside each outline.

    Parameters
    ----------
    outlines : sequence of polygons
        What must not be hidden, its mark included; px.
    names : sequence of str
        The letters, one an outline.
    sizes : sequence of (width, height)
        Of each plate, px.
    bounds : (x0, y0, x1, y1)
        Where plates may stand, px.
    gap : float
        Least clearance between a plate or leader and anything else, px.
    taken : sequence of geometries
        What else must not be covered.
    avoid : geometry or None
        What should rather not be covered, such as the scale reference.

    Returns
    -------
    list of Label
        In the order of ``outlines``. Where no free place exists at all, the one that hides
        least is taken and the label says so.
    """
    shapes = [shapely.make_valid(shape) for shape in outlines]
    order = _crowded_first(shapes)
    soft = Polygon() if avoid is None else avoid
    for squeeze in (1.0, 0.4, 0.1):
        for _ in range(_ROUNDS):
            board = _Board(shapes, bounds, soft, gap * squeeze, plates=list(taken))
            done, stuck = _round(board, order, names, sizes)
            if stuck is None:
                return [done[index] for index in range(len(shapes))]
            order = [stuck, *(index for index in order if index != stuck)]
    board = _Board(shapes, bounds, soft, 0.0, plates=list(taken))
    done, _ = _round(board, _crowded_first(shapes), names, sizes, give_up=False)
    return [done[index] for index in range(len(shapes))]


def _crowded_first(shapes: Sequence[BaseGeometry]) -> list[int]:
    if not shapes:
        return []
    centres = np.array([shape.centroid.coords[0] for shape in shapes])
    far = np.linalg.norm(centres[:, None] - centres[None], axis=-1)
    near = np.sort(far, axis=1)[:, 1:6].sum(axis=1)
    return [int(i) for i in np.lexsort((np.arange(len(shapes)), np.round(near, 3)))]


def _round(
    board: _Board,
    order: list[int],
    names: Sequence[str],
    sizes: Sequence[tuple[float, float]],
    *,
    give_up: bool = True,
) -> tuple[dict[int, Label], int | None]:
    done: dict[int, Label] = {}
    for index in order:
        plates, leaders = _candidates(board, index, sizes[index])
        faults = _faults(board, index, plates, leaders)
        best = _best(board, plates, leaders, faults, sizes[index])
        if faults[best] and give_up:
            return done, index
        plate, leader = plates[best], leaders[best]
        board.plates.append(plate)
        board.leaders.append(leader)
        start, end = ((float(x), float(y)) for x, y in leader.coords)
        done[index] = Label(names[index], plate.bounds, (start, end), free=not faults[best])
    return done, None


def _candidates(
    board: _Board, index: int, size: tuple[float, float]
) -> tuple[npt.NDArray[np.object_], npt.NDArray[np.object_]]:
    """Plates all round an outline and the shortest leader to each, as geometry arrays."""
    shape = board.shapes[index]
    points = shapely.get_coordinates(shape.convex_hull)
    middle = points.mean(axis=0)
    ways = np.stack([np.cos(_TURNS), np.sin(_TURNS)], axis=1)
    extent = ((points - middle) @ ways.T).max(axis=0)
    half = np.abs(ways) @ (np.array(size) / 2)
    far = extent + half
    centres = np.concatenate(
        [middle + ways * (far + step * size[1])[:, None] for step in _REACH]
        + [_along(points, size, step) for step in _REACH[:6]]
    )
    low, high = centres - np.array(size) / 2, centres + np.array(size) / 2
    x0, y0, x1, y1 = board.bounds
    inside = (low >= (x0, y0)).all(axis=1) & (high <= (x1, y1)).all(axis=1)
    if not inside.any():
        low = np.clip(low, (x0, y0), np.maximum((x1, y1) - np.array(size), (x0, y0)))
        high, inside = low + np.array(size), np.ones(len(low), dtype=bool)
    low, high = low[inside], high[inside]
    plates = shapely.box(low[:, 0], low[:, 1], high[:, 0], high[:, 1])
    return plates, shapely.shortest_line(shape, plates)


def _along(
    points: npt.NDArray[np.float64], size: tuple[float, float], step: float
) -> np.ndarray:
    """Places beside single points of a long outline, left, right, above and below."""
    some = points[:: max(1, len(points) // 6)]
    reach = np.array(size) / 2 + step * size[1]
    ways = np.array([[1, 0], [0, -1], [-1, 0], [0, 1]]) * reach
    return (some[:, None] + ways[None]).reshape(-1, 2)


def _faults(
    board: _Board,
    index: int,
    plates: npt.NDArray[np.object_],
    leaders: npt.NDArray[np.object_],
) -> npt.NDArray[np.int64]:
    """How many things each candidate would hide or cross."""
    shape = board.shapes[index]
    # A leader may cross what its own outline lies in or touches: there is no way round it.
    others = [
        other
        for number, other in enumerate(board.shapes)
        if number != index and not _filled(other).intersects(shape)
    ]
    faults = _hits(plates, board.shapes, board.gap) + _hits(leaders, others, board.gap)
    faults += _hits(plates, board.plates, board.gap) + _hits(plates, board.leaders, board.gap)
    faults += _hits(leaders, board.plates, board.gap) + _hits(leaders, board.leaders, board.gap)
    return faults


def _filled(shape: BaseGeometry) -> BaseGeometry:
    """A shape without its holes."""
    parts = [
        Polygon(p.exterior) for p in getattr(shape, "geoms", [shape]) if hasattr(p, "exterior")
    ]
    return shapely.union_all(parts) if parts else shape


def _hits(
    made: npt.NDArray[np.object_], others: Sequence[BaseGeometry], gap: float
) -> npt.NDArray[np.int64]:
    count = np.zeros(len(made), dtype=np.int64)
    if others:
        tree = shapely.STRtree(list(others))
        which, _ = tree.query(made, predicate="dwithin", distance=gap)
        np.add.at(count, which, 1)
    return count


def _best(
    board: _Board,
    plates: npt.NDArray[np.object_],
    leaders: npt.NDArray[np.object_],
    faults: npt.NDArray[np.int64],
    size: tuple[float, float],
) -> int:
    cost = shapely.length(leaders) / size[1] + 50.0 * faults
    if not board.soft.is_empty:
        cost = cost + 6.0 * shapely.intersects(plates, board.soft)
    return int(np.argmin(np.round(cost, 6)))
