"""The same place in several photos: which outlines of one belong to which of another.

Everything is brought into the pixels of one photo, the base. Outlines that overlap there are
one place; one that overlaps nothing belongs to its nearest neighbour where the registration's
own uncertainty could have parted them.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot

import numpy as np
import numpy.typing as npt
import shapely
from shapely.geometry.base import BaseGeometry

from ptmark.series.frame import Frame, Seen
from ptmark.series.registration import Registration

__all__ = ["Place", "places_of"]

Array = npt.NDArray[np.float64]

_OVERLAP = 0.25  # of the smaller outline
_SURE = 2.0  # standard uncertainties
_LEAST_REACH_PX = 1.0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Place:
    """One place: its outlines in each photo (none, one, or several parts), and in the base.

    ``sure`` is False where another outline lay so near that it could as well belong here.
    ``around_px`` is the hull of all its outlines in px of the base, shape (N, 2).
    """

    parts: tuple[tuple[Seen, ...], ...]
    around_px: Array
    sure: bool = True


@dataclass(frozen=True, slots=True, eq=False)
class _Item:
    frame: int
    seen: Seen
    shape: BaseGeometry
    reach_px: float


def places_of(
    frames: Sequence[Frame], to_base: Sequence[Registration | None]
) -> tuple[Place, ...]:
    """Match the outlines of several photos by place.

    Parameters
    ----------
    frames : sequence of Frame
    to_base : sequence of Registration or None
        From each photo to the base; None for the base itself.

    Returns
    -------
    tuple of Place
        In reading order in the base: by row, then from left to right.
    """
    items = [
        item
        for number, (frame, leads) in enumerate(zip(frames, to_base, strict=True))
        for item in _items(number, frame, leads)
    ]
    linked, unsure = _links(items)
    places = []
    for group in _groups(len(items), linked):
        members = [items[index] for index in group]
        parts = tuple(
            tuple(one.seen for one in members if one.frame == number)
            for number in range(len(frames))
        )
        around = shapely.convex_hull(shapely.union_all([one.shape for one in members]))
        places.append(
            Place(
                parts=parts,
                around_px=shapely.get_coordinates(around),
                sure=not unsure.intersection(group),
            )
        )
    return tuple(sorted(places, key=lambda p: tuple(p.around_px.min(axis=0)[::-1])))


def _items(number: int, frame: Frame, leads: Registration | None) -> list[_Item]:
    made = []
    for seen in frame.seen:
        points, reach = seen.outline_px, 0.0
        if leads is not None:
            reach = _SURE * float(leads.u_px(points.mean(axis=0, keepdims=True))[0])
            points = leads.to_b(points)
        made.append(_Item(number, seen, shapely.make_valid(shapely.Polygon(points)), reach))
    return made


def _links(items: list[_Item]) -> tuple[list[tuple[int, int]], set[int]]:
    """Pairs of different photos that are one place, and the items that are not sure."""
    linked: list[tuple[int, int]] = []
    near: list[tuple[float, int, int]] = []
    for i, j in _within_reach(items):
        one, other = items[i], items[j]
        gap = one.shape.distance(other.shape)
        if gap > max(_LEAST_REACH_PX, hypot(one.reach_px, other.reach_px)):
            continue
        shared = one.shape.intersection(other.shape).area
        if shared >= _OVERLAP * min(one.shape.area, other.shape.area):
            linked.append((i, j))
        else:
            near.append((gap, i, j))
    overlapping = {
        (index, items[pair[1 - side]].frame)
        for pair in linked
        for side, index in enumerate(pair)
    }
    unsure: set[int] = set()
    for _, i, j in sorted(near):
        wants = ((i, items[j].frame), (j, items[i].frame))
        if any(want in overlapping for want in wants):
            continue  # its place in that photo is known already
        if sum(i in pair[1:] or j in pair[1:] for pair in near) > 1:
            unsure.update((i, j))
        linked.append((i, j))
        overlapping.update(wants)
    return linked, unsure


def _within_reach(items: list[_Item]) -> list[tuple[int, int]]:
    """Pairs of different photos that could touch, in order."""
    if not items:
        return []
    shapes = np.array([one.shape for one in items], object)
    farthest = max(_LEAST_REACH_PX, 1.5 * max(one.reach_px for one in items))
    pairs = shapely.STRtree(shapes).query(shapes, predicate="dwithin", distance=farthest)
    return sorted(
        (int(i), int(j)) for i, j in pairs.T if j < i and items[i].frame != items[j].frame
    )


def _groups(count: int, linked: list[tuple[int, int]]) -> list[list[int]]:
    """Connected components, each in order."""
    root = list(range(count))

    def find(index: int) -> int:
        while root[index] != index:
            root[index] = root[root[index]]
            index = root[index]
        return index

    for i, j in linked:
        root[find(i)] = find(j)
    groups: dict[int, list[int]] = {}
    for index in range(count):
        groups.setdefault(find(index), []).append(index)
    return list(groups.values())
