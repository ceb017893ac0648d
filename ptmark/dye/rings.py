"""Closed chains of vertices, many of them one after the other in one array."""

from collections.abc import Iterator

import numpy as np
import numpy.typing as npt

from ptmark.dye.beside import signed_area

__all__ = ["Rings", "without_crossings"]

Array = npt.NDArray[np.float64]
Ints = npt.NDArray[np.intp]

# Of an outline's largest part, and px squared: less is a scrap between its vertices. A line
# that hangs on a wide haze is no scrap, however small a share of it.
_LEAST_SHARE, _LEAST_PART, _MOST_SCRAP = 0.1, 25.0, 100.0
# From how far out on a way is a hair, and half of its width, which is unknown.
_LEAST_HAIR_PX, _HAIR_PX = 1.0, 0.25


class Rings:
    """How vertices of shape (N, …) make closed chains.

    ``counts`` and ``starts`` of shape (R,) say how long each chain is and where it begins,
    ``of`` of shape (N,) which chain a vertex belongs to.
    """

    def __init__(self, counts: npt.ArrayLike) -> None:
        self.counts = np.asarray(counts, np.intp)
        self.starts = np.cumsum(self.counts) - self.counts
        self.of = np.repeat(np.arange(len(self.counts)), self.counts)
        self._first = self.starts[self.of]
        self._at = np.arange(len(self.of)) - self._first
        self._round = self.counts[self.of]

    def beside(self, by: int | Ints) -> Ints:
        """Index of the vertex so many places on, round the chain, shape (N,)."""
        return np.asarray(self._first + (self._at + by) % self._round, np.intp)

    def smooth(self, values: Array, reach: int) -> Array:
        """Mean over 2 reach + 1 neighbours; chains too short for that keep their values."""
        total = values.copy()
        for by in range(1, reach + 1):
            total += values.take(self.beside(by), axis=0)  # rows so in a tenth of the time
            total += values.take(self.beside(-by), axis=0)
        total /= 2 * reach + 1
        short = self._round < 4 * reach + 4
        total[short] = values[short]
        return total

    def calm(self, points: Array, leap_px: float) -> Array:
        """Put vertices of shape (N, 2) that leap off their neighbours back between them."""
        before, after = (points.take(self.beside(by), axis=0) for by in (-1, 1))
        between = (before + after) / 2
        leaps = np.hypot(*(points - between).T) > leap_px
        return np.where(leaps[:, None], between, points)

    def total(self, values: npt.NDArray[np.generic]) -> Array:
        """Sum along each chain, shape (R, …)."""
        return np.asarray(np.add.reduceat(values.astype(np.float64, copy=False), self.starts))

    def mean(self, values: npt.NDArray[np.generic]) -> Array:
        """Mean along each chain, shape (R, …)."""
        return (self.total(values).T / self.counts).T

    def signed_area(self, points: Array) -> Array:
        """Area that each chain of points of shape (N, 2) encloses, signed by its way round."""
        x, y = (points - points[self._first]).T
        ahead = self.beside(1)
        return self.total(x * y[ahead] - y * x[ahead]) / 2

    def every_second(self) -> tuple[Ints, "Rings"]:
        """Index of every second vertex of each chain, and the chains that these make."""
        index = np.flatnonzero(self._at % 2 == 0)
        return index, Rings((self.counts + 1) // 2)

    def apart(self, values: Array) -> list[Array]:
        """The chains one by one."""
        ends = (self.starts + self.counts).tolist()
        return [values[a:b] for a, b in zip(self.starts.tolist(), ends, strict=True)]


def without_crossings(
    outlines: list[Array], *, hairs: bool = True
) -> list[tuple[int, Array, float]]:
    """Outlines of shape (N, 2) that do not cross themselves: else their parts.

    The flanks of a thin line may meet, and what lies on either side of there is as real. Of
    each the largest part comes first, then others but for scraps; none of what encloses
    nothing. What an outline goes out to from a part, and comes back from, stays with it as a
    hair, if ``hairs`` are kept.

    Returns
    -------
    list of (number, outline, share)
        Which outline it is of, and the share that it has of the area of its parts.
    """
    import shapely

    made = [[one] for one in outlines]
    told = np.array([i for i, one in enumerate(outlines) if len(one) >= 4], np.intp)
    if len(told):
        rings = Rings([len(outlines[i]) for i in told])
        every = np.concatenate([outlines[i] for i in told])
        shapes = shapely.polygons(shapely.linearrings(every, indices=rings.of))
        crossed = ~shapely.is_valid(shapes)
        mended = shapely.buffer(np.asarray(shapes)[crossed], 0)
        parts, of = shapely.get_parts(mended, return_index=True)
        areas = shapely.area(parts)
        for n, i in enumerate(told[crossed].tolist()):
            own = np.flatnonzero((of == n) & (areas > 0))
            own = own[np.argsort(-areas[own], kind="stable")]
            largest = areas[own].max(initial=0)
            scrap = min(max(_LEAST_PART, _LEAST_SHARE * largest), _MOST_SCRAP)
            own = own[areas[own] >= min(largest, scrap)]
            made[i] = _rims(outlines[i], parts[own], hairs=hairs)
    return [(i, *one) for i, whole in enumerate(made) for one in _with_shares(whole)]


def _rims(outline: Array, parts: npt.NDArray[np.object_], *, hairs: bool) -> list[Array]:
    """Rims of polygons, parts of an outline, with its ways out of each and back as hairs.

    Where a line is thinner than its flanks are sure, they cross, and nothing is left of it
    between them: its end would be cut off as far as it is so thin.
    """
    import shapely

    made = list(parts)
    for n, ways in _ways_out(outline, parts).items() if hairs else ():
        every = shapely.multilinestrings([shapely.LineString(way) for way in ways])
        hair = shapely.buffer(every, _HAIR_PX, quad_segs=1)
        made[n] = max(shapely.get_parts(shapely.union(made[n], hair)), key=shapely.area)
    return [shapely.get_coordinates(shapely.get_exterior_ring(one))[:-1] for one in made]


def _ways_out(outline: Array, parts: npt.NDArray[np.object_]) -> dict[int, list[Array]]:
    """Ways, shape (M, 2), on which an outline leaves a part and comes back to it, by part."""
    import shapely

    if not len(parts):
        return {}
    corners, of = shapely.get_coordinates(parts, return_index=True)
    kept, vertices = (one.view(complex).ravel() for one in (corners, outline.copy()))
    sorting = np.argsort(kept, kind="stable")
    at = sorting[np.searchsorted(kept[sorting], vertices, side="right") - 1]
    part = np.where(kept[at] == vertices, of[at], -1)
    first = int((part >= 0).argmax())
    order = np.append(np.roll(np.arange(len(outline)), -first), first)
    on = np.flatnonzero(part[order] >= 0)
    found: dict[int, list[Array]] = {}
    for n in np.flatnonzero(np.diff(on) > 1).tolist():
        way = order[on[n] : on[n + 1] + 1]
        own, points = int(part[way[0]]), outline[way]
        if own != part[way[-1]]:
            continue
        if shapely.distance(shapely.points(points), parts[own]).max() > _LEAST_HAIR_PX:
            found.setdefault(own, []).append(points)
    return found


def _with_shares(parts: list[Array]) -> Iterator[tuple[Array, float]]:
    areas = [abs(signed_area(one)) for one in parts]
    for one, area in zip(parts, areas, strict=True):
        yield one, area / sum(areas) if len(parts) > 1 else 1.0
