"""Places of two photos that look alike, and which of them lie round the indications.

A rule, a label or the card may be moved between two photos, and their print is the plainest
texture there is: what is followed must lie round the indications, not on one side of them.
"""

import numpy as np
import numpy.typing as npt
import shapely

from ptmark.series.features import View

__all__ = ["alike", "near_indications", "surrounded"]

Array = npt.NDArray[np.float64]
Mask = npt.NDArray[np.bool_]

_RATIO = 0.85  # best match against second best (Lowe 2004, 7.1, takes 0.8 for plain features)
_NEAR_MM, _BESIDE_MM = 40.0, 8.0  # common practice, no source
_WIDTH_MM = 250.0  # what a photo without a scale is taken to show


def alike(a: View, b: View) -> tuple[Array, Array]:
    """Mutual best matches that beat the second best: places in a and in b, shape (N, 2) px."""
    if min(len(a.points_px), len(b.points_px)) < 2:
        return np.zeros((0, 2)), np.zeros((0, 2))
    likeness = a.descriptors @ b.descriptors.T  # of length 1: squared distance 2 - 2 likeness
    best, rows = likeness.argmax(axis=1), np.arange(len(likeness))
    mutual = likeness.argmax(axis=0)[best] == rows
    first = 2 - 2 * likeness[rows, best]
    likeness[rows, best] = -1.0
    second = 2 - 2 * likeness.max(axis=1)
    chosen = rows[mutual & (first < _RATIO**2 * second)]
    from_a, to_b = a.points_px[chosen], b.points_px[best[chosen]]
    # One place may give several points of other turns and sizes: it counts once.
    _, once = np.unique(np.rint(np.hstack([from_a, to_b])), axis=0, return_index=True)
    return from_a[once], to_b[once]


def near_indications(a: View, b: View, from_a: Array, to_b: Array) -> Mask:
    """Which pairs lie near an indication of either photo, shape (N,)."""
    return _near(a, from_a) | _near(b, to_b)


def _near(view: View, points: Array) -> Mask:
    if not len(view.about_px):
        return np.zeros(len(points), bool)
    reach = _NEAR_MM / _mm_per_px(view)
    apart = points[:, None] - view.about_px[None]
    return np.asarray((np.hypot(apart[..., 0], apart[..., 1]) < reach).any(axis=1))


def surrounded(a: View, b: View, from_a: Array, to_b: Array) -> bool:
    """Whether the pairs lie round the indications in both photos; True where there are none."""
    return _round(a, from_a) and _round(b, to_b)


def _round(view: View, points: Array) -> bool:
    if not len(view.about_px):
        return True
    around = shapely.MultiPoint(points).convex_hull.buffer(_BESIDE_MM / _mm_per_px(view))
    return bool(around.contains(shapely.Point(view.about_px.mean(axis=0))))


def _mm_per_px(view: View) -> float:
    return _WIDTH_MM / view.size[0] if view.surface is None else view.surface.mm_per_px()
