"""Neighbours that count as one indication (ISO 23277): gap against the smaller one's length.

The result cannot depend on the order of merging. Where two clusters may merge, so may any two
clusters that contain them: the gap of the larger ones is no greater, and no length is less
(the length of a cluster is end to end, the caliper of its union). Every order therefore ends
at the same clusters, and all pairs that may merge are merged at once, round after round.

Two clusters merge only within the reach of the shorter one, so every cluster but the longest
looks as far as its own length allows, and no pair is missed. Near pairs are merged before
farther ones are looked for, which spares long looks across crowds that become one anyway.
"""

from typing import Any

import numpy as np
import numpy.typing as npt

from ptmark.criteria.geometry import Array, Indices, caliper_ends, hull_of
from ptmark.criteria.limits import holds, tolerance_in
from ptmark.criteria.rules import Merge

__all__ = ["merged"]


def merged(
    shapes: npt.NDArray[Any], lengths: Array, grow: Array, rule: Merge, unit: str
) -> list[tuple[int, ...]]:
    """Clusters of indices, each sorted, in the order of their first member.

    Parameters
    ----------
    shapes : ndarray of shape (M,)
        Outlines as shapely geometries, in ``unit``.
    lengths : ndarray of shape (M,)
        Length of each as taken here (with its uncertainty where the worst case is asked).
    grow : ndarray of shape (M,)
        How far each outline is widened all round; 0 for the plain reading.
    """
    import shapely

    count = len(shapes)
    owner = np.arange(count)
    length = lengths.astype(float).copy()  # of the cluster that each one belongs to
    hulls = [shapely.get_coordinates(shape) for shape in shapely.convex_hull(shapes)]
    tree = shapely.STRtree(shapes)
    horizon = max(float(np.median(length)), 1e-3) if count else 1.0
    while True:
        pairs, farther = _mergeable(
            tree, owner, length, grow, horizon, rule, tolerance_in(unit)
        )
        if len(pairs) == 0:
            if not farther:
                break
            horizon *= 2
            continue
        changed = _unite(owner, pairs)
        for root in changed:
            members = np.flatnonzero(owner == root)
            hulls[root] = hull_of(np.concatenate([hulls[k] for k in members]))
            end_to_end, _ = caliper_ends(hulls[root])
            length[members] = end_to_end + 2 * grow[members].max()
    order = np.argsort(owner, kind="stable")
    cuts = np.flatnonzero(np.diff(owner[order])) + 1
    return [tuple(part.tolist()) for part in np.split(order, cuts)] if count else []


def _mergeable(
    tree: Any,  # noqa: ANN401 - shapely.STRtree, imported on first use
    owner: Indices,
    length: Array,
    grow: Array,
    horizon: float,
    rule: Merge,
    band: float,
) -> tuple[Indices, bool]:
    """Pairs of different clusters that merge, shape (P, 2), up to a gap of ``horizon``.

    Also whether some cluster might look beyond it.
    """
    import shapely

    if len(owner) < 2:
        return np.empty((0, 2), dtype=np.int64), False
    shapes = tree.geometries
    looking = np.flatnonzero(owner != owner[int(length.argmax())])
    if len(looking) == 0:
        return np.empty((0, 2), dtype=np.int64), False
    reach = rule.factor * length + grow + grow.max() + 2 * band
    farther = bool(reach[looking].max() > horizon)
    reach = np.minimum(reach, horizon)
    source, target = tree.query(shapes[looking], predicate="dwithin", distance=reach[looking])
    source = looking[source]
    apart = owner[source] != owner[target]
    source, target = source[apart], target[apart]
    gap = np.maximum(
        shapely.distance(shapes[source], shapes[target]) - grow[source] - grow[target], 0
    )
    excess = gap - rule.factor * np.minimum(length[source], length[target])
    hit = np.array([holds(rule.operator, value, band) for value in excess.tolist()], dtype=bool)
    return np.stack([source, target], axis=1)[hit].astype(np.int64), farther


def _unite(owner: Indices, pairs: Indices) -> list[int]:
    """Give both clusters of each pair one owner, its first member; those that changed."""
    names = np.unique(owner[pairs])
    root = {name: name for name in names.tolist()}

    def top(name: int) -> int:
        while root[name] != name:
            root[name] = root[root[name]]
            name = root[name]
        return name

    for first, second in owner[pairs].tolist():
        one, other = top(first), top(second)
        root[max(one, other)] = min(one, other)
    renamed = np.arange(len(owner))
    renamed[names] = [top(name) for name in names.tolist()]
    owner[:] = renamed[owner]
    return sorted({top(name) for name in root})
