"""Indications in a line: one straight line crosses all, each within the gap of another.

A row is a set of indications that one straight line crosses (their convex hulls, which is the
same for a line) and that hang together by gaps, edge to edge, no larger than the rule allows.

Why looking at finitely many lines is exact. A line with normal direction ``t`` crosses a hull
where its offset lies in ``[lo(t), hi(t)]``; all of a set are crossed where the largest ``lo``
is at most the smallest ``hi``. The directions where this holds are a closed set. Either it
holds for every direction; then at direction 0 the line through the largest ``lo`` crosses
all. Or the set has an end, where some ``lo_i = hi_j``: a common tangent that passes between i
and j. A row of ``n`` or more holds a row of exactly ``n`` (take leaves off a spanning tree),
whose members are at most ``n - 1`` links apart. So it is enough to try, for each indication,
direction 0 through its ``lo`` and the two inner tangents with each one up to ``n - 1`` links
away.
"""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from ptmark.criteria.geometry import Array

__all__ = ["Crossing", "Row", "connected", "inner_tangents", "longest_row", "within"]

_THOROUGH = 64  # above so many linked indications the first row found is reported


@dataclass(frozen=True, slots=True, eq=False)
class Row:
    """Positions of the members, along the line, and the line from first to last, (2, 2)."""

    members: tuple[int, ...]
    line: Array

    @classmethod
    def along(cls, hulls: list[Array], part: list[int], normal: Array, offset: float) -> "Row":
        """The row of ``part`` on the line of points ``p`` with ``p @ normal = offset``."""
        way = np.array([normal[1], -normal[0]])
        spans = {k: (hulls[k] @ way).min() for k in part}
        ends = (min(spans.values()), max(float((hulls[k] @ way).max()) for k in part))
        line = np.array([way * end + normal * offset for end in ends])
        return cls(tuple(sorted(part, key=lambda k: (spans[k], k))), line)


class Crossing:
    """Hull vertices of a few indications in one array, to hold them against lines at once."""

    def __init__(self, hulls: list[Array]) -> None:
        self._points = np.concatenate(hulls)
        self._starts = np.cumsum([0, *(len(hull) for hull in hulls[:-1])])

    def crossed(self, normal: Array, offset: float, band: float) -> list[int]:
        """Positions of the hulls that the line crosses."""
        along = self._points @ normal
        low = np.minimum.reduceat(along, self._starts)
        high = np.maximum.reduceat(along, self._starts)
        found: list[int] = np.flatnonzero(
            (low <= offset + band) & (high >= offset - band)
        ).tolist()
        return found


def longest_row(
    hulls: list[Array], links: npt.NDArray[np.int64], enough: int, band: float
) -> Row:
    """Find a row with ``enough`` members if there is one, else the longest that was met.

    Parameters
    ----------
    hulls : list of ndarray of shape (V, 2)
        At least one.
    links : ndarray of shape (P, 2)
        Pairs of positions whose gap the rule allows.
    enough : int
        The number that rejects, 2 or more.
    band : float
        A line this near to a hull crosses it.
    """
    near: list[set[int]] = [set() for _ in hulls]
    for first, second in links.tolist():
        near[first].add(second)
        near[second].add(first)
    best = Row((0,), hulls[0][[0, -1]])
    for start in range(len(hulls)):
        around = within(near, start, enough - 1)
        if len(around) <= len(best.members):
            continue
        best = _through(hulls, near, start, around, best, band)
        if len(best.members) >= enough and len(within(near, start, len(hulls))) > _THOROUGH:
            break
    return best


def within(near: list[set[int]], start: int, steps: int) -> list[int]:
    """Positions up to ``steps`` links from ``start``, itself first."""
    seen, edge = {start: None}, [start]
    for _ in range(steps):
        edge = [far for here in edge for far in sorted(near[here]) if far not in seen]
        edge = list(dict.fromkeys(edge))
        if not edge:
            break
        seen.update(dict.fromkeys(edge))
    return list(seen)


def _through(
    hulls: list[Array],
    near: list[set[int]],
    start: int,
    around: list[int],
    best: Row,
    band: float,
) -> Row:
    """The best row on the candidate lines of ``start``; ``best`` if none is longer."""
    local = Crossing([hulls[k] for k in around])
    lines = [(np.array([1.0, 0.0]), float(hulls[start][:, 0].min()))]
    for other in around[1:]:
        lines += inner_tangents(hulls[start], hulls[other])
    for normal, offset in lines:
        crossed = local.crossed(normal, offset, band)
        if len(crossed) <= len(best.members):
            continue
        for part in connected(near, [around[k] for k in crossed]):
            if len(part) > len(best.members):
                best = Row.along(hulls, part, normal, offset)
    return best


def inner_tangents(first: Array, second: Array) -> list[tuple[Array, float]]:
    """Normal and offset of the two lines that touch both and pass between them.

    They are the extreme directions of the differences of vertices, which all lie on one side
    of the origin where the hulls are apart; overlapping hulls have none.
    """
    apart = (second[None, :] - first[:, None]).reshape(-1, 2)
    middle = second.mean(axis=0) - first.mean(axis=0)
    turn = np.arctan2(
        middle[0] * apart[:, 1] - middle[1] * apart[:, 0],
        apart @ middle,
    )
    if turn.max() - turn.min() >= np.pi:
        return []
    lines = []
    for pick in (int(turn.argmin()), int(turn.argmax())):
        length = float(np.hypot(*apart[pick]))
        if length == 0.0:
            continue
        normal = np.array([-apart[pick, 1], apart[pick, 0]]) / length
        lines.append((normal, float(first[pick // len(second)] @ normal)))
    return lines


def connected(near: list[set[int]], chosen: list[int]) -> list[list[int]]:
    """Split ``chosen`` into the parts that hang together by links among themselves."""
    left, parts = set(chosen), []
    while left:
        part, edge = [], [left.pop()]
        while edge:
            here = edge.pop()
            part.append(here)
            reached = near[here] & left
            left -= reached
            edge += sorted(reached)
        parts.append(part)
    return parts
