"""Neighbours that count as one indication (ISO 23277): gap against the smaller one's length.

The result cannot depend on the order of merging. Where two clusters may merge, so may any two
clusters that contain them: the gap of the larger ones is no greater, and no length is less
(the length of a cluster is end to end, the caliper of its union). Every order therefore ends
at the same clusters, and all pairs that may merge are merged at once, round after round.
"""

from typing import Any

import numpy as np
import numpy.typing as npt

from ptmark.criteria.geometry import Array, caliper_ends, gaps_within, hull_of
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
    clusters: list[tuple[int, ...]] = [(index,) for index in range(len(shapes))]
    parts, single, widths = shapes, lengths, grow
    while len(clusters) > 1:
        joined = _joined(parts, single, widths, rule, unit)
        if joined is None:
            break
        clusters = [
            tuple(sorted(i for part in group for i in clusters[part])) for group in joined
        ]
        parts, single, widths = _measured(shapes, lengths, grow, clusters)
    return sorted(clusters)


def _measured(
    shapes: npt.NDArray[Any], lengths: Array, grow: Array, clusters: list[tuple[int, ...]]
) -> tuple[npt.NDArray[Any], Array, Array]:
    """Shape, end-to-end length and growth of each cluster."""
    import shapely

    parts = np.empty(len(clusters), dtype=object)
    single, widths = np.empty(len(clusters)), np.empty(len(clusters))
    for index, cluster in enumerate(clusters):
        chosen = list(cluster)
        widths[index] = grow[chosen].max()
        if len(chosen) == 1:
            parts[index], single[index] = shapes[chosen[0]], lengths[chosen[0]]
        else:
            parts[index] = shapely.MultiPolygon(list(shapes[chosen]))
            points = shapely.get_coordinates(parts[index])
            single[index] = caliper_ends(hull_of(points))[0] + 2 * widths[index]
    return parts, single, widths


def _joined(
    shapes: npt.NDArray[Any], lengths: Array, grow: Array, rule: Merge, unit: str
) -> list[list[int]] | None:
    """Groups of clusters that merge in this round, or None if no two do."""
    from scipy.sparse import coo_array
    from scipy.sparse.csgraph import connected_components

    band = tolerance_in(unit)
    reach = rule.factor * lengths + grow + float(grow.max()) + 2 * band
    pairs, gaps = gaps_within(shapes, reach)
    if len(pairs) == 0:
        return None
    smaller = np.minimum(lengths[pairs[:, 0]], lengths[pairs[:, 1]])
    excess = np.maximum(gaps - grow[pairs].sum(axis=1), 0.0) - rule.factor * smaller
    hit = np.array([holds(rule.operator, float(value), band) for value in excess])
    if not hit.any():
        return None
    ends = pairs[hit].T
    count = len(shapes)
    graph = coo_array((np.ones(ends.shape[1]), (ends[0], ends[1])), shape=(count, count))
    _, label = connected_components(graph, directed=False)
    order = np.argsort(label, kind="stable")
    return [list(part) for part in np.split(order, np.flatnonzero(np.diff(label[order])) + 1)]
