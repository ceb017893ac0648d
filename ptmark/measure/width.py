"""Where a width is taken, and how much wider blur makes the crossing of a crack's arms.

The width is the largest inscribed circle's diameter. Where three arms or more meet, the circle
sits in their crossing and touches the corners between them, and these are what blur fills: in
a corner of background of angle a the half-contrast line moves out along the bisector to where
the corner holds half of the blur, 0.5, 0.8 and 1.3 standard deviations for 120, 90 and 60
degrees (own derivation, a Gaussian over a wedge; checked numerically in the tests).
"""

import numpy as np
import numpy.typing as npt

from ptmark.measure.geometry import inside
from ptmark.measure.medial import Medial

__all__ = ["FILLED_PER_SHIFT", "across_width", "is_crossing", "width_chords"]

Array = npt.NDArray[np.float64]

# The crossing of a star of six arms, whose corners have 60 degrees, is wider by up to twice
# 1.3 blurs, and not at all where the dye itself fills its corners: rectangular from 0 to 2.6
# standard deviations, as its root mean square since nothing is corrected (JCGM 100:2008,
# F.2.4.5). An edge's ``shift_px``, a tenth of the contrast at a Gaussian edge, is a quarter of
# the blur: 0.1 sqrt(2 pi).
FILLED_PER_SHIFT = 2.6 / np.sqrt(3) / (0.1 * np.sqrt(2 * np.pi))
# Arms have parted this many radii from the crossing's middle. Own choice.
_PARTED = 1.8
_AROUND = np.column_stack(
    [f(np.linspace(0, 2 * np.pi, 72, endpoint=False)) for f in (np.cos, np.sin)]
)
# Rounder than this the narrowest direction is the one that the view shortens.
_ROUND = 1.25


def is_crossing(outline: Array, medial: Medial) -> bool:
    """Whether three arms or more leave the largest inscribed circle of an outline (N, 2)."""
    ring = medial.centre + _PARTED * medial.radius * _AROUND
    within = inside(outline, ring)
    return int(np.count_nonzero(within & ~np.roll(within, 1))) >= 3


def across_width(medial: Medial, ends: tuple[Array, Array], foot: Array) -> Array:
    """Two ends of the largest circle's diameter, shape (2, 2), where its width is judged.

    Square to the length, whose ``ends`` are given; of what is round, along the line of sight
    from the camera's ``foot``: there a slope makes it narrower or wider.
    """
    aside = medial.centre - foot
    if _is_round(medial, ends) and aside.any():
        return _chord(medial, aside)
    return _chord(medial, _square_to(ends))


def width_chords(medial: Medial, ends: tuple[Array, Array], foot: Array) -> list[Array]:
    """Every chord of the largest circle that its width may hang on, each of shape (2, 2).

    A map that leans the wrong way makes what is round oval, and the line of sight from a
    wrong foot runs along it anyhow: then the chord square to the length counts as well.
    """
    found = [across_width(medial, ends, foot)]
    return [*found, _chord(medial, _square_to(ends))] if _is_round(medial, ends) else found


def _is_round(medial: Medial, ends: tuple[Array, Array]) -> bool:
    return float(np.hypot(*(ends[1] - ends[0]))) < _ROUND * 2 * medial.radius


def _square_to(ends: tuple[Array, Array]) -> Array:
    along = ends[1] - ends[0]
    return np.array([-along[1], along[0]])


def _chord(medial: Medial, way: Array) -> Array:
    half = way / max(float(np.hypot(*way)), 1e-12) * medial.radius
    return np.array([medial.centre - half, medial.centre + half])
