"""What was left out for its colour, but has the colour of the dye that is called beside it.

A dark red dye, a phone's tone curve or a lamp poor in red makes all dye of a photo dull. Then
the faint ones fall below bounds of hue that hold for any photo, while those of full dye pass.
"""

from collections.abc import Sequence

import numpy as np
import numpy.typing as npt

from ptmark.dye.contour import Contour
from ptmark.dye.judge import CLEAR, WRONG_COLOUR, Sight, reason_against

__all__ = ["of_the_same_dye"]

Array = npt.NDArray[np.float64]

DENSE, LEAST_DENSE = 0.4, 3  # share of full dye, and how many that tell the photo's own hue
# How far red and blue, over green, may be off: 87 % of 528 true ones in 53 photos lie so near
# to their photo's median, of 48 other things that clear the grain none within 0.12 of both.
MOST_OFF = np.array([0.08, 0.06])


def of_the_same_dye(
    left_out: Sequence[tuple[Contour, str]], called: Sequence[Contour], sight: Sight
) -> list[Contour]:
    """Those left out for their colour, with their reasons, that are of the called ones' hue."""
    dense = [_hue(one) for one in called if one.contrast > DENSE]
    if len(dense) < LEAST_DENSE:
        return []
    own = np.median(dense, axis=0)
    return [
        one
        for one, why in left_out
        if why.startswith(WRONG_COLOUR)
        and one.contrast > CLEAR * one.grain
        and (np.abs(_hue(one) - own) < MOST_OFF).all()
        and not reason_against(one, sight, is_dye=True)
    ]


def _hue(one: Contour) -> Array:
    """Red and blue taken, over green."""
    red, green, blue = one.taken_light.tolist()
    return np.array([red / max(green, 1e-6), blue / max(green, 1e-6)])
