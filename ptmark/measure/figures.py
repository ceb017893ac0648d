"""The figures of outlines on the surface, many at once, without their uncertainties."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from ptmark.dye.rings import Rings
from ptmark.measure.geometry import centroids, farthest_pair, hull_index
from ptmark.measure.unfold import UNBENT, sound_medials
from ptmark.measure.width import are_crossings, width_chords

__all__ = ["Figures", "figures_of"]

Array = npt.NDArray[np.float64]
Index = npt.NDArray[np.intp]


@dataclass(frozen=True, slots=True, eq=False)
class Figures:
    """Of R outlines with N vertices in all, mm on the surface.

    ``length``, ``path``, ``width``, ``area`` of shape (R,), ``centre`` (R, 2). ``ends`` of
    shape (R, 2) are the vertices between which the length was taken. ``chords`` of shape
    (R, 2, 2, 2) are one or two of the largest circle that the width may hang on, the one twice
    where there is no other. ``crossing`` of shape (R,) tells whether arms meet in it. ``rim``
    and ``rim_squares`` of shape (R,) are the sums of the sides and of their squares.
    """

    outlines: Sequence[Array]
    length: Array
    path: Array
    width: Array
    area: Array
    centre: Array
    ends: Index
    chords: Array
    crossing: npt.NDArray[np.bool_]
    rim: Array
    rim_squares: Array


def figures_of(points: Array, rings: Rings, foot: Array) -> Figures:
    """Figures of the outlines that points of shape (N, 2) make, mm.

    ``foot`` of shape (2,) is where the camera stands over the surface.
    """
    outlines = rings.apart(points)
    hulls = [hull_index(one) for one in outlines]
    pairs = [farthest_pair(one, hull) for one, hull in zip(outlines, hulls, strict=True)]
    length = np.array([one[0] for one in pairs])
    ends = np.array([one[1:] for one in pairs], np.intp) + rings.starts[:, None]
    area = np.abs(rings.signed_area(points))
    around = Rings([len(one) for one in hulls])
    hull_points = points[np.concatenate(hulls) + rings.starts[around.of]]
    unbent = area > UNBENT * np.abs(around.signed_area(hull_points))
    medials = sound_medials(outlines, length.tolist(), unbent.tolist())
    chords = [
        width_chords(medial, (one, other), foot)
        for medial, (one, other) in zip(medials, points[ends], strict=True)
    ]
    side = points[rings.beside(1)] - points
    squares = (side**2).sum(axis=1)
    return Figures(
        outlines=outlines,
        length=length,
        path=np.array([one.path_length for one in medials]),
        width=2 * np.array([one.radius for one in medials]),
        area=area,
        centre=centroids(points, rings),
        ends=ends,
        chords=np.array([(one[0], one[-1]) for one in chords]),
        crossing=are_crossings(outlines, medials),
        rim=rings.total(np.sqrt(squares)),
        rim_squares=rings.total(squares),
    )
