"""The longest row: neighbours that one straight line crosses, judged by its length end to end.

What a row is and why finitely many lines are enough is said in `ptmark.criteria.rows`. Here
the whole of a row matters, not only as many members as are too many; the ends of its range
of directions are inner tangents of two members, which may lie any number of links apart. So
all pairs of a connected group are tried. In a group of more than `_MOST` only pairs a few
links apart are, which may find a row long enough, but not rule one out.
"""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from ptmark.criteria.geometry import Array, caliper_ends, hull_of
from ptmark.criteria.rows import Crossing, Row, connected, inner_tangents, within

__all__ = ["Aligned", "longest_aligned"]

_MOST = 100
_NEAR = 3  # links, in a group of more


@dataclass(frozen=True, slots=True, eq=False)
class Aligned:
    """The longest row met, its length end to end, and whether a longer one is ruled out."""

    length: float
    row: Row | None
    proven: bool


def longest_aligned(
    hulls: list[Array],
    links: npt.NDArray[np.int64],
    least: int,
    limit: float,
    band: float,
) -> Aligned:
    """Find the longest row of ``least`` members or more.

    Parameters are those of `ptmark.criteria.rows.longest_row`; in a large group the search
    may stop at a row longer than ``limit``, and groups no longer than it are not searched.
    """
    near: list[set[int]] = [set() for _ in hulls]
    for first, second in links.tolist():
        near[first].add(second)
        near[second].add(first)
    best, proven = Aligned(0.0, None, proven=True), True
    for group in connected(near, list(range(len(hulls)))):
        if len(group) < least:
            continue
        whole, _ = caliper_ends(hull_of(np.concatenate([hulls[k] for k in group])))
        large = len(group) > _MOST
        if whole <= best.length or (large and whole < limit - band):
            continue
        best = _in_group(hulls, near, group, least, limit if large else np.inf, band, best)
        proven &= not large or best.length > limit + band
    return Aligned(best.length, best.row, proven)


def _in_group(
    hulls: list[Array],
    near: list[set[int]],
    group: list[int],
    least: int,
    enough: float,
    band: float,
    best: Aligned,
) -> Aligned:
    crossing = Crossing([hulls[k] for k in group])
    for start in group:
        others = group if enough == np.inf else within(near, start, _NEAR)
        lines = [(np.array([1.0, 0.0]), float(hulls[start][:, 0].min()))]
        for other in others:
            if other > start:
                lines += inner_tangents(hulls[start], hulls[other])
        for normal, offset in lines:
            crossed = [group[k] for k in crossing.crossed(normal, offset, band)]
            if len(crossed) < least:
                continue
            for part in connected(near, crossed):
                if len(part) < least:
                    continue
                points = np.concatenate([hulls[k] for k in part])
                length, _ = caliper_ends(hull_of(points))
                if length > best.length:
                    row = Row.along(hulls, part, normal, offset)
                    best = Aligned(length, row, proven=True)
        if best.length > enough + band:
            break
    return best
