"""What has the colour of the dye that is called beside it, and what has another.

A dark red dye, a phone's tone curve or a lamp poor in red makes all dye of a photo dull. Then
the faint ones fall below bounds of hue that hold for any photo, while those of full dye pass.
Narrow ones lose colour besides: JPEG and the camera blur it more than they blur light. Where
grain, or a coat's rough relief, hides dye in each pixel, that colour tells it in many.
"""

from collections.abc import Sequence
from math import acos, degrees

import numpy as np
import numpy.typing as npt

from ptmark.dye.beside import mean_width
from ptmark.dye.contour import Contour
from ptmark.dye.contrast import LUMA
from ptmark.dye.hue import stands_out, too_pale
from ptmark.dye.judge import BROWN, CLEAR, WRONG_COLOUR, Sight, reason_against
from ptmark.dye.quick import between

__all__ = ["browner", "by_own_dye", "ends_may_not_show", "of_the_same_dye"]

Array = npt.NDArray[np.float64]

# Share of full dye, and how many of it tell the photo's own colour: of one colour whatever its
# share, as 23 photos have it, but for 12 degrees.
TELLING = ((0.4, 2), (0.2, 4))
# Colour is what is taken of each light less the grey taken with it. What share of the dye's own
# is left of it, for as much grey, and how far it is turned, towards blue less than 0: 0.78 and
# -11 to 6 degrees for 98 % of 785 true ones 4 px wide and more that were called in 102 photos
# of two renderers, 0.59 and -28 to 12 for narrower ones. Of what was left out for its colour
# and lay on nothing true nothing comes so near: rust and heat tint are turned by 14.6 and more
# (90 of them), inks by -80, black things, shadows and toes have at most 0.68. The rest is
# redder and hardly darker, 1.9 and more.
SHARE_LEFT, TURNED_DEG = (0.7, 1.4), (-28.0, 12.0)
# Of lines under 3 px wide half is left: 12 true ones of 152 photos have 0.51 to 0.67, and
# nothing else that has an edge.
LEFT_OF_NARROW, NARROW_PX = 0.5, (3.0, 4.0)
# And what is called, but turned so far and takes so much more blue than green, is rust, or a
# finger in the dark: 3 of 10 false calls in 172 photos. Of 1,602 true ones in these and 12 more
# none is turned by more than 15 degrees.
TURNED_BROWN_DEG, BROWN_BLUE = 17.0, 1.05


def by_own_dye(
    called: Sequence[Contour], left_out: Sequence[tuple[Contour, str]], sight: Sight
) -> tuple[list[Contour], list[Contour], list[tuple[Contour, str]]]:
    """What is called, those of it that were left out before, and what is left out, and why."""
    same, brown = of_the_same_dye(left_out, called, sight), browner(called)
    kept = [one for one in [*called, *same] if one not in brown]
    rest = [pair for pair in left_out if pair[0] not in same]
    return kept, same, [*rest, *((one, BROWN) for one in brown)]


def of_the_same_dye(
    left_out: Sequence[tuple[Contour, str]], called: Sequence[Contour], sight: Sight
) -> list[Contour]:
    """Those left out for their colour or as too pale, that are of the called ones' dye.

    ``left_out`` holds the reasons why they are.
    """
    own = _own_dye(called)
    if own is None:
        return []
    return [
        one
        for one, why in left_out
        if _is_told(one, why)
        and _is_of(own, one)
        and not reason_against(one, sight, is_dye=True)
    ]


def ends_may_not_show(one: Contour, same: Sequence[Contour]) -> bool:
    """Whether one of those is so narrow, or so lost in grain, that its ends may be, too."""
    if one not in same:
        return False
    narrow = mean_width(one.outline_px, one.area_px) < NARROW_PX[1]
    return narrow or too_pale(one.contrast, one.grain)


def browner(called: Sequence[Contour]) -> list[Contour]:
    """Those called that are browner than the photo's own dye."""
    own = _own_dye(called)
    if own is None:
        return []
    return [
        one
        for one in called
        if one.taken_light[2] > BROWN_BLUE * one.taken_light[1]
        and _beside(own, one.taken_light)[1] > TURNED_BROWN_DEG
    ]


def _own_dye(called: Sequence[Contour]) -> Array | None:
    """The light that the photo's dye takes; None where too little is called to tell."""
    for contrast, count in TELLING:
        of = [one.taken_light for one in called if one.contrast > contrast]
        if len(of) >= count:
            return np.asarray(np.median(of, axis=0))
    return None


def _is_told(one: Contour, why: str) -> bool:
    """Whether what is left out shows its colour, and may be called for it."""
    by_size = stands_out(one.contrast, one.grain, one.area_px)
    if why.startswith(WRONG_COLOUR):
        return by_size or one.contrast > CLEAR * one.grain
    return by_size and too_pale(one.contrast, one.grain) and not np.isnan(one.taken_light).any()


def _is_of(own: Array, one: Contour) -> bool:
    """Whether one may be dye that takes ``own``, by what is left of its colour."""
    share, turned = _beside(own, one.taken_light)
    least, most = SHARE_LEFT
    if one.contrast > CLEAR * one.grain:
        width = mean_width(one.outline_px, one.area_px)
        least = between(width, NARROW_PX, (LEFT_OF_NARROW, least))
    return least < share < most and TURNED_DEG[0] < turned < TURNED_DEG[1]


def _beside(own: Array, taken: Array) -> tuple[float, float]:
    """What share of a dye's colour is left in light taken, and how far that is turned."""
    (dye, of_dye), (colour, of_colour) = _coloured(own), _coloured(taken)
    cosine = float(np.dot(dye / of_dye, colour / max(of_colour, 1e-9)))
    turned = degrees(acos(max(-1.0, min(1.0, cosine))))
    if colour[2] / max(of_colour, 1e-9) < dye[2] / of_dye:  # it takes less blue than the dye
        turned = -turned
    share = (of_colour / of_dye) * float(LUMA @ own) / max(float(LUMA @ taken), 1e-9)
    return share, turned


def _coloured(taken: Array) -> tuple[Array, float]:
    """What of the light taken is colour, and its length."""
    colour = taken - float(LUMA @ taken)
    return colour, float(np.linalg.norm(colour))
