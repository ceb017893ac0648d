"""Width and path of many outlines between quick bounds; measured closely only where it matters.

A close measurement takes about a thousandth of a second for each outline. Most shapes are
linear or rounded beyond doubt, for which bounds do. No inscribed circle is wider than the
outline is across any direction, nor has more area. The largest one is no narrower than the one
about the centroid, nor than the lesser root of Bonnesen's inequality r P >= A + pi r^2, which
the inradius of any simple closed curve keeps (Osserman 1979, "Bonnesen-style isoperimetric
inequalities", from memory).

A way along the centre line is no shorter than the caliper and no longer than half the
perimeter P, less what the widest circle takes. Proof: at a point of the medial axis with
radius r let each touching point lie at an angle pi/2 + f from the way ahead, so that
sin f = r' along the way. The two sides of the outline then grow by 2 g + pi r' for each step,
g = cos f + f sin f, turning of the way cancelling between them; behind the first circle and
before the last the outline is no shorter than the rest of these circles. In all P is at least
2 times the integral of g, plus pi (r1 + r2), while the way with its ends is its length l, plus
r1 + r2. With g - 1 >= r'^2 / 2 and a circle R met on the way, each side of it takes at least
h(l), the least of c r + (R - r)^2 / 2l over the end radius r, c = pi/2 - 1 (Jensen). That is
convex and falls with l, and l <= P/2 for both together, so they take 2 h(P/4) or more. Where R
lies on a branch that leaves a circle q of the way, the branch adds (1 + pi/2) (R - q) or more
to P/2, and h falls by c (R - q) at most.

The traced way differs from the exact one by its sampling: on 1,500 outlines with 2 % noise it
was up to 0.9 % longer than P/2, and 2 % are allowed. Where an outline is not bent, its way
is its caliper (`ptmark.measure.unfold`). Outlines that cross themselves have no bounds here.
"""

from collections.abc import Sequence

import numpy as np

from ptmark.criteria.apart import Apart
from ptmark.criteria.geometry import Array

__all__ = ["Rough", "longest_way", "measured_closely", "roughly"]

_UNBOUNDED = 1e6  # calipers; an infinite one could not be compared within a band
_TRACED = 0.02  # by which a traced way may be longer than the exact one
_SLACK = 1e-3  # by which the sampled centre line may depart from the exact one


class Rough:
    """Bounds of one outline's width and path in mm, and both once they are measured.

    ``stated_width`` and ``stated_path`` are what a file says; they go before the measured ones
    where they are the same figures, less coarsely rounded (`agreed`).
    """

    __slots__ = ("_exact", "_outline", "length", "most_path", "stated", "widths")

    def __init__(
        self,
        outline: Array,
        length: float,
        widths: tuple[float, float],
        most_path: float,
    ) -> None:
        self._outline, self.length = outline, length
        self.widths, self.most_path = widths, most_path
        self.stated: tuple[float | None, float | None] = (None, None)
        self._exact: tuple[float, float] | None = None

    def tighten(self, width: float) -> None:
        """Take note that a circle so wide lies inside."""
        least = min(width * (1 - _SLACK), self.widths[1])
        self.widths = max(self.widths[0], least), self.widths[1]

    @property
    def least_width(self) -> float:
        """The least that the width can come out as; what is stated may be rounded down."""
        stated = self.stated[0]
        return self.widths[0] if stated is None else min(self.widths[0], stated)

    @property
    def outline(self) -> Array:
        return self._outline

    def exact(self) -> tuple[float, float]:
        """Width and path, measured when first asked."""
        if self._exact is None:
            if self.most_path <= self.length:
                width, path = width_of(self._outline), self.length
            else:
                width, path = measured_closely(self._outline, self.length)
            self._exact = (
                agreed(self.stated[0], width, ROUNDING_MM),
                agreed(self.stated[1], path, ROUGHNESS * path),
            )
        return self._exact


ROUNDING_MM = 0.002  # outlines are written in thousandths of a millimetre
ROUGHNESS = 0.01  # of a path traced along a rounded outline


def agreed(stated: float | None, measured: float, within: float) -> float:
    """The stated figure where it agrees with the outline's, else the outline's."""
    return stated if stated is not None and abs(stated - measured) <= within else measured


def width_of(outline: Array) -> float:
    """Width of an outline whose way is its caliper."""
    from ptmark.measure.medial import inscribed_radius

    return 2 * inscribed_radius(outline - outline.mean(axis=0))  # far from 0 digits are few


def measured_closely(outline: Array, length: float) -> tuple[float, float]:
    """Width and path of an outline of a known length."""
    from ptmark.measure.unfold import sound_medial

    medial = sound_medial(outline - outline.mean(axis=0), length)  # as above
    return 2 * medial.radius, medial.path_length


def roughly(outlines: Sequence[Array], apart: Apart | None = None) -> list[Rough]:
    """Lengths of outlines exactly, widths and paths between bounds.

    ``apart`` holds their geometries, where these are made already.
    """
    import shapely

    from ptmark.measure.unfold import UNBENT

    apart = apart or Apart.of(outlines)
    shapes, hulls, sound = apart.shapes, apart.hull_shapes, apart.sound
    lengths = np.array([length for length, _ in apart.ends])
    areas = shapely.area(shapes)
    low, high = apart.extents
    extent = np.minimum((high - low).min(axis=1), apart.across(_ways(apart)))
    most = np.minimum(extent, 2 * np.sqrt(areas / np.pi))
    least = 2 * apart.circles[1]
    rim = shapely.length(shapes)
    least[sound] = np.maximum(least, _bonnesen(rim, areas))[sound]
    paths = np.where(sound, (1 + _TRACED) * longest_way(rim, least), _UNBOUNDED * lengths)
    unbent = sound & (areas > UNBENT * shapely.area(hulls))
    paths[unbent] = lengths[unbent]
    widest = np.where(sound, most * (1 + _SLACK), np.inf)
    widths = zip((least * (1 - _SLACK)).tolist(), widest.tolist(), strict=True)
    rows = zip(outlines, lengths.tolist(), widths, paths.tolist(), strict=True)
    return [Rough(*row) for row in rows]


def _ways(apart: Apart) -> Array:
    """From one end of each caliper to the other, shape (M, 2)."""
    ends = np.array([pair for _, pair in apart.ends])
    return np.asarray(ends[:, 1] - ends[:, 0])


def _bonnesen(perimeters: Array, areas: Array) -> Array:
    """The least diameter that the largest inscribed circle can have."""
    root = np.sqrt(np.maximum(perimeters**2 - 4 * np.pi * areas, 0.0))
    return np.asarray((perimeters - root) / np.pi)


def longest_way(perimeters: Array, widths: Array) -> Array:
    """The longest that a way along the centre line can be, where so wide a circle fits."""
    most, radii, share = perimeters / 4, widths / 2, np.pi / 2 - 1
    taken = np.where(
        share * most >= radii,
        radii**2 / (2 * np.maximum(most, 1e-300)),
        share * radii - share**2 * most / 2,
    )
    return np.asarray(perimeters / 2 - 2 * taken)
