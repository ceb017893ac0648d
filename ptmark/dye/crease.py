"""Pink in a crease: what makes it dark goes on beyond its ends, so it is no dye.

Shade in a fold, a toe or a scratch lends its sharp dark line to whatever pink lies in it, or to
a square of colour that JPEG left there. Dye that is redder than what lies on beyond its ends is
darker than that too: a share of full dye that raises the log of red over green by 0.2 takes
0.23 of the log light that luma shows (`ptmark.dye.contrast`).
"""

from math import log

import numpy as np
import numpy.typing as npt

from ptmark.dye.beside import mean_width
from ptmark.dye.beyond import Beyond, look_beyond
from ptmark.dye.contour import Contour
from ptmark.dye.contrast import LUMA
from ptmark.dye.tips import farthest
from ptmark.photo import Photo

__all__ = ["in_creases"]

Array = npt.NDArray[np.float64]

MOST_CONTRAST, MOST_WIDE_PX = 0.35, 14.0  # denser dye shows whatever it lies in
LEAST_RATIO = 2.5  # of length over width: of a round one no way leads on
# Log light against the darker side, and over that against both: less is no line but an edge.
LEAST_DARK, LEAST_LINE = 0.05, 0.5
# Of the core's darkness that is left beyond its ends, in each block and in most of them. Dye of
# 35 % in a toe as dark as 0.3 leaves 0.64 to 0.80, creases 0.84 and more, dye elsewhere at most
# 0.44.
GOES_ON, MOSTLY = 0.4, 0.8
# How much darker than beyond, over how much redder: 0.66 to 2.1 for dye in shade, at most 0.48
# for creases; and what is too little to tell.
LEAST_DARKER, UNTOLD = 0.5, 0.03
_GAP = 45  # px between an end and the next part of its line
_REACH = 75  # px round an outline that the look beyond its ends takes in


def in_creases(photo: Photo, called: list[Contour]) -> list[Contour]:
    """Which of all that is called are pale lines whose dark goes on beyond their ends.

    Where the photo's border or a dense line hides what lies beyond an end, that may be the rest
    of a crack, and the call stands; so does a pale line near to another that stands, which may
    be parts of one crack.
    """
    pale = [one for one in called if _is_line(one) and one.contrast < MOST_CONTRAST]
    if not pale:
        return []
    near = _neighbours(pale, called)
    found = [
        one
        for one in pale
        if _goes_on(photo, one, [two for two in near[one] if two not in pale])
    ]
    while stands := [
        one
        for one in found
        if any(two in pale and two not in found and _meets(one, two) for two in near[one])
    ]:
        found = [one for one in found if one not in stands]
    return found


def _meets(one: Contour, other: Contour) -> bool:
    """Whether another lies at an end of one."""
    first, last, _ = farthest(one.outline_px)
    return any(_is_near(end, other) for end in one.outline_px[[first, last]])


def _is_near(end: Array, other: Contour) -> bool:
    return bool((np.abs(other.outline_px - end).max(axis=1) < _GAP).any())


def _neighbours(pale: list[Contour], called: list[Contour]) -> dict[Contour, list[Contour]]:
    """For each pale one the others that lie within reach of its ends."""
    boxes = np.array([(c.outline_px.min(axis=0), c.outline_px.max(axis=0)) for c in called])
    near = {}
    for one in pale:
        low, high = one.outline_px.min(axis=0) - _REACH, one.outline_px.max(axis=0) + _REACH
        meets = ((boxes[:, 0] < high) & (boxes[:, 1] > low)).all(axis=1)
        near[one] = [called[i] for i in np.flatnonzero(meets) if called[i] is not one]
    return near


def _is_line(one: Contour) -> bool:
    width = mean_width(one.outline_px, one.area_px)
    return width < MOST_WIDE_PX and farthest(one.outline_px)[2] > LEAST_RATIO * width


def _goes_on(photo: Photo, one: Contour, others: list[Contour]) -> bool:
    """Whether the dark goes on beyond both ends, or beyond one and the other is hidden."""
    first, last, length = farthest(one.outline_px)
    hidden = 0
    for end in one.outline_px[[first, last]]:
        beyond = look_beyond(photo, one, end, length, others)
        if beyond is None:
            hidden += 1
            if not _is_hidden_by_round_ones(photo, end, others):
                return False
        elif not _is_as_dark(one, beyond):
            return False
    return hidden < 2


def _is_hidden_by_round_ones(photo: Photo, end: Array, others: list[Contour]) -> bool:
    """Whether neither the border nor a line lies near an end: pores hide no rest of a crack."""
    size = np.array(photo.rgb.shape[1::-1])
    if (end < _REACH).any() or (end >= size - _REACH).any():
        return False
    return not any(_is_line(one) and _is_near(end, one) for one in others)


def _is_as_dark(one: Contour, beyond: Beyond) -> bool:
    """Whether the dark goes on beyond an end, and no dye of that redness ends there."""
    dark, red = _core(one, beyond)
    no_darker = dark - beyond.mostly < max(LEAST_DARKER * (red - beyond.red), UNTOLD)
    goes_on = beyond.least > GOES_ON * dark and beyond.mostly > MOSTLY * dark
    line = beyond.line > max(LEAST_DARK, LEAST_LINE * beyond.inside)
    return goes_on and no_darker and line


def _core(one: Contour, beyond: Beyond) -> tuple[float, float]:
    """How dark and how red a core is; of one too pale to tell its hue its darkness alone."""
    red, green, _ = one.taken_light.tolist()
    if np.isnan(red):
        return beyond.inside, beyond.red
    luma = float(LUMA @ one.taken_light)
    return -log(max(1 - luma, 1e-3)), log(max(1 - red, 1e-3) / max(1 - green, 1e-3))
