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
_FAULT = 50.0  # one fault costs as much as a leader of 50 letters' heights


@dataclass(frozen=True, slots=True)
class Label:
    """A letter's plate ``(x0, y0, x1, y1)`` and its leader from the outline to the plate."""

    id: str
    plate: tuple[float, float, float, float]
    leader: tuple[tuple[float, float], tuple[float, float]]
    free: bool = True  # False where no free place was to be had


Shapes = npt.NDArray[np.object_]


@dataclass(frozen=True, slots=True)
class _Choice:
    """The places one letter may stand in, and what each hides of the outlines themselves."""

    plates: Shapes
    leaders: Shapes
    faults: npt.NDArray[np.int64]
    cost: npt.NDArray[np.float64]


@dataclass(slots=True)
class _Board:
    """What is already on the picture, each thing grown by the clearance."""

    gap: float
    fixed: list[BaseGeometry]
    things: list[BaseGeometry] = field(default_factory=list)

    def clear(self) -> None:
        self.things = list(self.fixed)

    def add(self, plate: BaseGeometry, leader: BaseGeometry) -> None:
        x0, y0, x1, y1 = plate.bounds
        self.things.append(
            shapely.box(x0 - self.gap, y0 - self.gap, x1 + self.gap, y1 + self.gap)
        )
        self.things.append(leader.buffer(self.gap, cap_style="square") if self.gap else leader)


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
    soft = Polygon() if avoid is None else avoid
    for squeeze in (1.0, 0.4, 0.1):
        clear = gap * squeeze
        choices = _choices(shapes, sizes, bounds, soft, clear)
        board = _Board(clear, [one.buffer(clear) for one in taken])
        order = _crowded_first(shapes)
        for _ in range(_ROUNDS):
            done, stuck = _round(board, choices, order, names)
            if stuck is None:
                return [done[index] for index in range(len(shapes))]
            if stuck == order[0]:
                break  # it finds no place even with nothing else about
            order = [stuck, *(index for index in order if index != stuck)]
    board = _Board(0.0, list(taken))
    choices = _choices(shapes, sizes, bounds, soft, 0.0)
    done, _ = _round(board, choices, _crowded_first(shapes), names, give_up=False)
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
    choices: list[_Choice],
    order: list[int],
    names: Sequence[str],
    *,
    give_up: bool = True,
) -> tuple[dict[int, Label], int | None]:
    done: dict[int, Label] = {}
    board.clear()
    for index in order:
        choice = choices[index]
        faults = choice.faults + _hits(choice.plates, board.things)
        faults += _hits(choice.leaders, board.things)
        best = int(np.argmin(np.round(choice.cost + _FAULT * faults, 6)))
        if faults[best] and give_up:
            return done, index
        plate, leader = choice.plates[best], choice.leaders[best]
        board.add(plate, leader)
        start, end = ((float(x), float(y)) for x, y in leader.coords)
        done[index] = Label(names[index], plate.bounds, (start, end), free=not faults[best])
    return done, None


def _choices(
    shapes: list[BaseGeometry],
    sizes: Sequence[tuple[float, float]],
    bounds: tuple[float, float, float, float],
    soft: BaseGeometry,
    gap: float,
) -> list[_Choice]:
    """All places of all letters, with what they cost before any letter stands."""
    walls = [shape.buffer(gap, quad_segs=3) for shape in shapes]
    filled = [_filled(shape) for shape in shapes]
    made = []
    for index, (shape, size) in enumerate(zip(shapes, sizes, strict=True)):
        plates, leaders = _candidates(shape, size, bounds)
        # A leader may cross what its own outline lies in or touches: there is no way round it.
        others = [
            wall
            for number, wall in enumerate(walls)
            if number != index and not filled[number].intersects(shape)
        ]
        cost = shapely.length(leaders) / size[1]
        if not soft.is_empty:
            cost = cost + 6.0 * shapely.intersects(plates, soft)
        faults = _hits(plates, walls) + _hits(leaders, others)
        made.append(_Choice(plates, leaders, faults, cost))
    return made


def _candidates(
    shape: BaseGeometry, size: tuple[float, float], bounds: tuple[float, float, float, float]
) -> tuple[Shapes, Shapes]:
    """Plates all round an outline and the shortest leader to each, as geometry arrays."""
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
    x0, y0, x1, y1 = bounds
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


def _filled(shape: BaseGeometry) -> BaseGeometry:
    """A shape without its holes."""
    parts = [
        Polygon(p.exterior) for p in getattr(shape, "geoms", [shape]) if hasattr(p, "exterior")
    ]
    return shapely.union_all(parts) if parts else shape


def _hits(made: Shapes, others: Sequence[BaseGeometry]) -> npt.NDArray[np.int64]:
    """How many of the others each geometry touches."""
    count = np.zeros(len(made), dtype=np.int64)
    if others:
        which, _ = shapely.STRtree(list(others)).query(made, predicate="intersects")
        np.add.at(count, which, 1)
    return count
