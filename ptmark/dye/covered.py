"""Ends of indications at which the developer ends too: more may lie beneath what covers it.

A rule, a tape or a magnet laid over the end of a crack hides the rest of it, and so does metal
that bears no developer. The dye then ends where the white about it ends, all across the tip; of
what is as light as that the edge tells (`ptmark.dye.cut`).
"""

from collections.abc import Sequence
from typing import NamedTuple

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.about import pixels_about
from ptmark.dye.beside import evenly, moved_on, outward, signed_area
from ptmark.dye.cut import hints, is_cut
from ptmark.dye.remark import Remark
from ptmark.dye.sampled import card_corners
from ptmark.photo import Photo, srgb_to_linear
from ptmark.scale import SurfaceMap

__all__ = ["covered_remark", "ends_covered", "reach_card"]

Array = npt.NDArray[np.float64]

# Bounds of our own. Of 268 indications in 22 photos of known truth they name the one that a
# rule covers; shadows and the toes of welds stay quiet there and in the stress set.
APART = 0.30  # of the light, above grain and mottle and below steel beside developer
DYE = 0.15  # how much more red than green is left where other dye lies, blue no less than green
GOES_ON = 0.08  # the same beyond a stroke, which blurs it
DARK = 0.04  # linear light; below it grain is as strong as what is looked for
_WITHIN_PX = 2.0  # of the edge of the dye
_BESIDE_PX = (5.0, 8.0)  # from the edge of the dye to where the developer is looked at
_BEYOND_PX = (5.0, 9.0, 16.0, 26.0)  # and what follows; the dark toe of a weld is narrower
_FAN = np.radians([-35.0, 0.0, 35.0])
# The same places: how far ahead of a tip, and how far at a right angle to that, shape (12, 2).
_AHEAD_PX = np.array([(far * np.cos(a), far * np.sin(a)) for a in _FAN for far in _BEYOND_PX])
_TURNS_DEG = 100.0  # by which an outline turns within a tip
_WIDTHS = 1.5  # on either side of a tip that are its own
_LEAST_PX = 4  # of them
_LEAST_ROUND_PX = 30
_NEAR_CARD_MM, _NEAR_CARD_PX = 0.5, 4.0  # as far as its paper's edge is blurred
_HINT = 0.15  # of single pixels, half of APART: grain and the means of nine differ by less


class _Tip(NamedTuple):
    """A tip of an outline whose vertices ``ring``, shape (N, 2), lie a px apart."""

    whose: int  # of the outlines
    ring: Array
    place: Array  # all px of the photo
    left: Array
    right: Array
    ahead: Array  # unit vectors
    across: Array
    width: float  # px


def covered_remark(names: Sequence[str]) -> Remark | None:
    """What is to be said of indications whose `ends_covered`, by letter; None of none.

    Examples
    --------
    >>> covered_remark([]) is None
    True
    """
    if not names:
        return None
    return Remark(
        f"Ends where the developer ends, at a rule, a tape or bare metal: {', '.join(names)}. "
        "What lies beyond is not measured.",
        "Uncover and develop all of it, and take the photo again.",
    )


def ends_covered(photo: Photo, outlines_px: Sequence[Array]) -> list[bool]:
    """Whether each of outlines of shape (N, 2) px has a tip where the white round it ends.

    Sides of rounded outlines are not told, nor is anything where it is dark all about. Dye that
    glows lights up what is beyond it, so only what is darker covers it.
    """
    told = [False] * len(outlines_px)
    tips = [tip for k, outline in enumerate(outlines_px) for tip in _tips(k, outline)]
    if not tips:
        return told
    places, aheads = np.array([t.place for t in tips]), np.array([t.ahead for t in tips])
    hinted = hints(photo, places, aheads, np.array([t.width for t in tips]))
    for tip, dark, hint in zip(tips, _may_be_covered(photo, tips), hinted, strict=True):
        told[tip.whose] = (
            told[tip.whose]
            or (dark and _surely(photo, tip))
            or is_cut(photo, tip.place, tip.ahead, tip.width, hint)
        )
    return told


def _may_be_covered(photo: Photo, tips: Sequence[_Tip]) -> list[bool]:
    """Whether next to each tip's end the light is not that of its sides, by single pixels."""
    far = len(_BESIDE_PX) * 2
    seen = _pixels(
        photo, np.array([[*_sides(t), *_beyond(t)[:: len(_BEYOND_PX)]] for t in tips])
    )
    light = seen / np.maximum(np.median(seen[:, :far], axis=1, keepdims=True), 1e-3)
    apart = np.abs(light[:, far:] - 1).max(axis=2) > _HINT
    return [bool(one) for one in apart.all(axis=1)]


def _surely(photo: Photo, tip: _Tip) -> bool:
    """Whether a tip is covered by the light beside it, and by that of the developer all about.

    A dark toe may cross the one.
    """
    if not _is_covered(photo, tip):
        return False
    away = outward(tip.ring)
    beside = np.concatenate([tip.ring + far * away for far in _BESIDE_PX])
    developer = np.median(_light_at(photo, beside), axis=0)
    if developer.max() < DARK:
        return False
    dye = np.median(_light_at(photo, tip.ring - _WITHIN_PX * away), axis=0)
    return _is_covered(photo, tip, developer, glows=bool(dye[1] >= developer[1]))


def reach_card(surface: SurfaceMap, outlines_px: Sequence[Array]) -> list[bool]:
    """Whether outlines of shape (N, 2) px come up to the scale card, which may hide more."""
    if surface.reference != "card":
        return [False] * len(outlines_px)
    card = card_corners(surface).astype(np.float32)
    near = max(_NEAR_CARD_MM / surface.mm_per_px(), _NEAR_CARD_PX)
    low, high = card.min(axis=0) - near, card.max(axis=0) + near
    told = []
    for places in (one.astype(np.float32) for one in outlines_px):
        about = places[((places > low) & (places < high)).all(axis=1)].tolist()
        told.append(
            any(cv2.pointPolygonTest(card, one, measureDist=True) > -near for one in about)
        )
    return told


def _tips(whose: int, outline_px: Array) -> list[_Tip]:
    """Where an outline turns back within a reach on either side."""
    ring = evenly(outline_px)
    if len(ring) < _LEAST_ROUND_PX:
        return []
    area = signed_area(ring)
    ring = ring if area > 0 else ring[::-1]
    reach = max(_LEAST_PX, round(_WIDTHS * 2 * abs(area) / len(ring)))
    to, on = ring - moved_on(ring, -reach), moved_on(ring, reach) - ring
    cross = to[:, 0] * on[:, 1] - to[:, 1] * on[:, 0]
    turns = np.degrees(np.arctan2(cross, (to * on).sum(axis=1)))
    made: list[_Tip | None] = []
    while turns.max() > _TURNS_DEG:
        at = int(turns.argmax())
        made.append(_tip(whose, ring, at, reach))
        turns[np.arange(at - 2 * reach, at + 2 * reach + 1) % len(ring)] = 0
    return [one for one in made if one is not None]


def _tip(whose: int, ring: Array, at: int, reach: int) -> _Tip | None:
    """The tip at a vertex; None where it is none."""
    left, right = ring[at - 2 * reach], ring[(at + 2 * reach) % len(ring)]
    ahead, across = ring[at] - (left + right) / 2, right - left
    size, width = float(np.hypot(*ahead)), float(np.hypot(*across))
    if min(size, width) < 1:
        return None
    return _Tip(whose, ring, ring[at], left, right, ahead / size, across / width, width)


def _sides(tip: _Tip) -> Array:
    """Places on the developer to the left and to the right of a tip, px, shape (4, 2)."""
    far = np.outer(_BESIDE_PX, tip.across)
    return np.concatenate([tip.left - far, tip.right + far])


def _beyond(tip: _Tip) -> Array:
    """Places beyond a tip, px, shape (12, 2): each direction's from near to far."""
    ahead = tip.ahead
    return np.asarray(tip.place + _AHEAD_PX @ [ahead, (-ahead[1], ahead[0])])


def _is_covered(
    photo: Photo, tip: _Tip, developer: Array | None = None, *, glows: bool = False
) -> bool:
    """Whether a tip has developer on both sides, and none straight beyond it.

    Beyond what is narrow, a stroke of a pen, the dye that goes on tells as well.
    Without the ``developer``'s light that beside the tip counts, which a dark toe may cross.
    """
    sides = _sides(tip)
    light = _light_at(photo, np.concatenate([sides, _beyond(tip)]))
    usual = np.median(light[: len(sides)], axis=0) if developer is None else developer
    light /= np.maximum(usual, 1e-3)
    on_developer = bool((np.abs(light[: len(sides)] - 1) < APART).all())
    red, green, blue = light[len(sides) :].T
    other = 1 - light[len(sides) :]
    apart = (other if glows else np.abs(other)).max(axis=1) > APART
    shape = len(_FAN), len(_BEYOND_PX)
    more = np.where(green - blue < DYE, red - green, 0.0).reshape(shape)
    hides = apart.reshape(shape) & (more <= DYE)
    crossed = not glows and hides[:, 0].all() and (more[:, 1:] > GOES_ON).any()
    return on_developer and bool(crossed or hides.all())


def _light_at(photo: Photo, points: Array) -> Array:
    """Linear light about points of shape (N, 2) px, shape (N, 3): the mean of 3 x 3 px."""
    crop, low = pixels_about(photo, points, 2)
    x, y = (points - low).astype(np.float32).T
    soft = cv2.blur(crop, (3, 3))
    seen = cv2.remap(soft, x, y, cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE)
    return np.asarray(srgb_to_linear(np.asarray(seen, np.uint8).reshape(-1, 3)), np.float64)


def _pixels(photo: Photo, points: Array) -> Array:
    """Linear light of the pixels nearest to points of shape (..., 2) px, shape (..., 3)."""
    size = np.array(photo.rgb.shape[1::-1])
    x, y = np.moveaxis(np.clip(np.rint(points).astype(np.intp), 0, size - 1), -1, 0)
    return np.asarray(srgb_to_linear(photo.rgb[y, x]), np.float64)
