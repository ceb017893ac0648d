"""What was left out for its colour, but has the colour of the dye that is called beside it.

A dark red dye, a phone's tone curve or a lamp poor in red makes all dye of a photo dull. Then
the faint ones fall below bounds of hue that hold for any photo, while those of full dye pass.
Narrow ones lose colour besides: JPEG and the camera blur it more than they blur light.
"""

from collections.abc import Sequence
from math import acos, degrees

import numpy as np
import numpy.typing as npt

from ptmark.dye.contour import Contour
from ptmark.dye.contrast import LUMA
from ptmark.dye.judge import CLEAR, WRONG_COLOUR, Sight, reason_against

__all__ = ["of_the_same_dye"]

Array = npt.NDArray[np.float64]

DENSE, LEAST_DENSE = 0.4, 2  # share of full dye, and how many that tell the photo's own colour
# Colour is what is taken of each light less the grey taken with it. What share of the dye's own
# is left of it, for as much grey, and how far it is turned, towards blue less than 0: 0.78 and
# -11 to 6 degrees for 98 % of 785 true ones 4 px wide and more that were called in 102 photos
# of two renderers, 0.59 and -28 to 12 for narrower ones. Of what was left out for its colour
# and lay on nothing true nothing comes so near: rust and heat tint are turned by 14.6 and more
# (90 of them), inks by -80, black things, shadows and toes have at most 0.68. The rest is
# redder and hardly darker, 1.9 and more.
SHARE_LEFT, TURNED_DEG = (0.7, 1.4), (-28.0, 12.0)


def of_the_same_dye(
    left_out: Sequence[tuple[Contour, str]], called: Sequence[Contour], sight: Sight
) -> list[Contour]:
    """Those left out for their colour, with their reasons, that are of the called ones' dye."""
    dense = [one.taken_light for one in called if one.contrast > DENSE]
    if len(dense) < LEAST_DENSE:
        return []
    own = np.median(dense, axis=0)
    return [
        one
        for one, why in left_out
        if why.startswith(WRONG_COLOUR)
        and one.contrast > CLEAR * one.grain
        and _is_of(own, one.taken_light)
        and not reason_against(one, sight, is_dye=True)
    ]


def _is_of(own: Array, taken: Array) -> bool:
    """Whether the light taken may be what dye that takes ``own`` leaves of its colour."""
    (dye, of_dye), (colour, of_colour) = _coloured(own), _coloured(taken)
    cosine = float(np.dot(dye / of_dye, colour / max(of_colour, 1e-9)))
    turned = degrees(acos(max(-1.0, min(1.0, cosine))))
    if colour[2] / max(of_colour, 1e-9) < dye[2] / of_dye:  # it takes less blue than the dye
        turned = -turned
    share = (of_colour / of_dye) * float(LUMA @ own) / max(float(LUMA @ taken), 1e-9)
    least, most = SHARE_LEFT
    return least < share < most and TURNED_DEG[0] < turned < TURNED_DEG[1]


def _coloured(taken: Array) -> tuple[Array, float]:
    """What of the light taken is colour, and its length."""
    colour = taken - float(LUMA @ taken)
    return colour, float(np.linalg.norm(colour))
