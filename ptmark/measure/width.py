"""Where a width is taken, and how much wider blur makes the crossing of a crack's arms.

The width is the largest inscribed circle's diameter. Where three arms or more meet, the circle
sits in their crossing and touches the corners between them, and these are what blur fills: in
a corner of background of angle a the half-contrast line moves out along the bisector to where
the corner holds half of the blur, 0.5, 0.8 and 1.3 standard deviations for 120, 90 and 60
degrees (own derivation, a Gaussian over a wedge; checked numerically in the tests).
"""

from collections.abc import Sequence
from functools import lru_cache
from math import hypot

import numpy as np
import numpy.typing as npt

from ptmark.dye.level import error_function, thin_line_table
from ptmark.dye.rings import Rings
from ptmark.measure.geometry import inside
from ptmark.measure.medial import Medial

__all__ = [
    "FILLED_PER_SHIFT",
    "FILLED_U_BY_HAND",
    "FILLED_U_PER_SHIFT",
    "MOST_FILLED",
    "across_width",
    "are_crossings",
    "blur_u",
    "is_crossing",
    "width_chords",
]

Array = npt.NDArray[np.float64]

# The crossing of a star of six arms, whose corners have 60 degrees, is wider by up to twice
# 1.3 blurs, and not at all where the dye itself fills its corners: rectangular from 0 to 2.6
# standard deviations. Its middle is taken off the width, half its breadth over the root of 3 is
# left as uncertainty (JCGM 100:2008, 4.3.7 and F.2.4.5). An edge's ``shift_px``, a tenth of the
# contrast at a Gaussian edge, is a quarter of the blur: 0.1 sqrt(2 pi).
FILLED_PER_SHIFT = 1.3 / (0.1 * np.sqrt(2 * np.pi))
FILLED_U_PER_SHIFT = FILLED_PER_SHIFT / np.sqrt(3)
# A free hand's shift is no blur and its outline may follow the corners or not: not corrected.
FILLED_U_BY_HAND = 2 * FILLED_U_PER_SHIFT
MOST_FILLED = 0.5  # of the width
# How well the blur of one line's edges is known: in a photo it differs from edge to edge. Over
# the rendered photos of the coverage set 0.05 to 0.08 covers; no other source.
BLUR_REL_U = 0.05
_MOST_BLURS = 8.0  # thinner than 1.5 blurs the outline stays at the highest share there is
_USUAL_SMOOTH = 0.6  # the plateau's smoothing in blurs, at a usual blur
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


def are_crossings(
    outlines: Sequence[Array], medials: Sequence[Medial]
) -> npt.NDArray[np.bool_]:
    """`is_crossing` of many; most do not even leave the circle round it three times."""
    rings = Rings([len(one) for one in outlines])
    centres = np.array([one.centre for one in medials])[rings.of]
    reach = _PARTED * np.array([one.radius for one in medials])[rings.of]
    at, ahead = np.concatenate(outlines) - centres, rings.beside(1)
    along = at[ahead] - at
    squared = np.maximum((along**2).sum(axis=1), 1e-300)
    t = np.clip(-(at * along).sum(axis=1) / squared, 0, 1)
    near = at + t[:, None] * along
    beyond = np.hypot(at[:, 0], at[:, 1]) > reach
    side_beyond = np.hypot(near[:, 0], near[:, 1]) > reach
    leaves = rings.total(beyond & ~side_beyond[rings.beside(-1)]) >= 3
    return np.array(
        [
            bool(each) and is_crossing(outline, medial)
            for each, outline, medial in zip(leaves, outlines, medials, strict=True)
        ]
    )


def blur_u(width: npt.ArrayLike, shift: npt.ArrayLike) -> Array:
    """Standard uncertainty of lines' widths by their blur, in the unit of both.

    A line of a few blurs' width is seen wider than it is, and corrected by a blur that is not
    known exactly (`ptmark.dye.level`). Wide ones are not corrected.

    Parameters
    ----------
    width : array
        As measured.
    shift : array of the same shape
        How far the flanks move for a tenth of the contrast (``EdgeQuality.shift_px``).

    Notes
    -----
    With s the width seen and t the true one, both in blurs b, the width w = b t(s) at a given
    seen width b s, so dw / db = t - s dt/ds (JCGM 100:2008, 5.1.3).

    Examples
    --------
    A line of 10 blurs is not corrected; one of 2.5 is known to a fifth of a blur.

    >>> blur = 2.0
    >>> blur_u([10 * blur, 2.5 * blur], [0.25 * blur, 0.26 * blur]).round(2).tolist()
    [0.0, 0.38]
    """
    by_shift, by_width = _per_blur()
    widths = np.asarray(width, np.float64)
    ratio = widths / np.maximum(np.abs(shift), 1e-9)
    return np.asarray(BLUR_REL_U * widths * np.interp(ratio, by_shift, by_width))


@lru_cache(maxsize=1)
def _per_blur() -> tuple[Array, Array]:
    """Width over ``shift`` of lines, rising, and how a width follows its blur, relative."""
    t, seen, *_ = thin_line_table(_USUAL_SMOOTH)
    # A tenth of the contrast at a blurred line's flank (a box blurred by a Gaussian), in blurs.
    shift = 0.1 * np.sqrt(2 * np.pi) * error_function(t / np.sqrt(2)) / -np.expm1(-(t**2) / 2)
    follows = np.clip(seen * np.gradient(t, seen) - t, 0.0, _MOST_BLURS)
    return t / shift, follows / t


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
    return hypot(*(ends[1] - ends[0]).tolist()) < _ROUND * 2 * medial.radius


def _square_to(ends: tuple[Array, Array]) -> Array:
    along = ends[1] - ends[0]
    return np.array([-along[1], along[0]])


def _chord(medial: Medial, way: Array) -> Array:
    half = way * (medial.radius / max(hypot(*way.tolist()), 1e-12))
    return np.array([medial.centre - half, medial.centre + half])
