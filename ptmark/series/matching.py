"""Places of two photos that look alike, and which of them lie round the indications.

A rule, a label or the card may be moved between two photos, and their print is the plainest
texture there is: what is followed must lie round the indications, not on one side of them.
"""

from collections.abc import Sequence

import numpy as np
import numpy.typing as npt
import shapely

from ptmark.scale.plane import apply_homography
from ptmark.series.features import View

__all__ = ["alike", "near_indications", "surrounded"]

Array = npt.NDArray[np.float64]
Mask = npt.NDArray[np.bool_]

_RATIO = 0.85  # best match against second best (Lowe 2004, 7.1, takes 0.8 for plain features)
_NEAR_MM, _BESIDE_MM = 40.0, 8.0  # common practice, no source
_PATCH_MM = 15.0  # farther apart than the numerals of a rule. Common practice, no source.
_STRIP_MM = 15.0  # from a rule's middle to its edge, with room. Common practice, no source.
_LEAST_BESIDE = 5  # pairs; a plane through a line takes two for nothing
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


def surrounded(a: View, b: View, h: Array, from_a: Array, to_b: Array) -> bool:
    """Whether the pairs lie round the indications that both photos show, on one surface.

    True where neither photo has an indication. A rule and a label can be laid much alike
    beside two parts, and a plane through things in a line takes one or two strange pairs for
    nothing; so one patch of pairs must itself hold half of the indications, or some pairs must
    agree beside the largest patch, all that lies in line with it, and the next largest.
    """
    if not len(a.about_px) and not len(b.about_px):
        return True
    there = apply_homography(h, a.about_px)
    back = apply_homography(np.asarray(np.linalg.inv(h), np.float64), b.about_px)
    both = there[_in(b, there)], b.about_px[_in(a, back)]
    shared = [one for one in both if len(one)]
    around = shapely.MultiPoint(to_b).convex_hull.buffer(_BESIDE_MM / _mm_per_px(b))
    middles = [shapely.Point(one.mean(axis=0)) for one in shared]
    if not shared or not all(around.contains(middle) for middle in middles):
        return False
    patches = _patches(b, to_b)
    if any(_holds(patch, shared) for patch in patches):
        return True
    rest = to_b[_off_line(patches[0], to_b) > _STRIP_MM / _mm_per_px(b)]
    largest = len(_patches(b, rest)[0]) if len(rest) else 0
    return len(rest) - largest >= _LEAST_BESIDE


def _in(view: View, points: Array) -> Mask:
    return np.asarray(((points >= 0) & (points <= np.array(view.size) - 1)).all(axis=1))


def _patches(view: View, points: Array) -> list[Array]:
    """The points by patches that lie apart, the largest first, each of shape (N, 2) px."""
    marks = shapely.points(points)
    reach = _PATCH_MM / _mm_per_px(view) / 2
    grounds = shapely.get_parts(shapely.union_all(shapely.buffer(marks, reach, quad_segs=3)))
    at, which = shapely.STRtree(grounds).query(marks, predicate="intersects")
    made = [points[at[which == number]] for number in range(len(grounds))]
    return sorted(made, key=len, reverse=True)


def _off_line(patch: Array, points: Array) -> Array:
    """Distance of points to the line along a patch, px, shape (N,)."""
    middle = patch.mean(axis=0)
    across = np.linalg.svd(patch - middle)[2][-1]
    return np.asarray(np.abs((points - middle) @ across))


def _holds(patch: Array, about: Sequence[Array]) -> bool:
    """Whether half of each photo's indications lie within a patch."""
    hull = shapely.MultiPoint(patch).convex_hull
    return all(
        np.count_nonzero(shapely.intersects_xy(hull, *one.T)) * 2 >= len(one) for one in about
    )


def _mm_per_px(view: View) -> float:
    return _WIDTH_MM / view.size[0] if view.surface is None else view.surface.mm_per_px()
