"""Outlines that cross themselves: their rim, and a medial axis that can be trusted.

A traced or jagged outline may cross itself; inside and outside then swap along it, and the way
through its middle breaks off. The rim of everything it encloses has one inside.
"""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import numpy.typing as npt

from ptmark.measure.geometry import area_mm2, hull
from ptmark.measure.medial import Medial, medial_of, medials

__all__ = ["UNBENT", "sound_medial", "sound_medials"]

Array = npt.NDArray[np.float64]

# A way inside joins the two farthest points, so it cannot be shorter than their distance; up
# to this share is the sampling's, below it the outline is taken to cross itself.
_BROKEN = 0.97
# Where an outline crosses itself its pieces touch in a point: joined over this share of the
# length, too little for a width to show.
_BRIDGE = 1e-3
# What fills this share of its hull has no bend. A centre line runs into corners, which makes
# that of a rectangle up to 8 % longer than its diagonal; a band three widths long, bent along
# an arc, fills less than 0.96 of its hull before its way is 1 % longer than the straight one.
UNBENT = 0.97


def sound_medial(outline: Array, length: float) -> Medial:
    """Medial axis of an outline of shape (N, 2) whose largest caliper is ``length``.

    Its path never comes out below ``length``, and not above it where nothing is bent.
    """
    unbent = area_mm2(outline) > UNBENT * area_mm2(hull(outline))
    return sound_medials([outline], [length], [unbent])[0]


def sound_medials(
    outlines: Sequence[Array], lengths: Sequence[float], unbent: Sequence[bool]
) -> list[Medial]:
    """The same of outlines that fill more than `UNBENT` of their hull, or do not."""
    straight = [at if is_so else None for at, is_so in zip(lengths, unbent, strict=True)]
    found = medials(outlines, straight)
    for i, (outline, length) in enumerate(zip(outlines, lengths, strict=True)):
        one = found[i]
        if one.path_length < _BROKEN * length:
            rim = _rim(outline, length)
            one = medial_of(rim) if len(rim) else one  # all may be thinner than a bridge
        path_length = length if unbent[i] else max(one.path_length, length)
        found[i] = replace(one, path_length=path_length)
    return found


def _rim(outline: Array, length: float) -> Array:
    """Rim of what an outline encloses, pieces that touch in a point joined; may be empty."""
    import shapely

    lines = shapely.get_parts(shapely.node(shapely.linearrings(outline)))
    pieces = shapely.get_parts(shapely.polygonize(lines))
    bridge = _BRIDGE * length
    joined = shapely.buffer(shapely.buffer(shapely.union_all(pieces), bridge), -bridge)
    parts = shapely.get_parts(joined)
    if not len(parts):
        return np.empty((0, 2))
    largest = parts[int(np.argmax(shapely.area(parts)))]
    return np.asarray(shapely.get_coordinates(shapely.get_exterior_ring(largest))[:-1])
