"""Whether a blob is called, how sure, and if not, why.

Each reason is one sentence for the inspector, made from the blob's own numbers.
"""

from dataclasses import dataclass
from math import sqrt

import numpy as np

from ptmark.dye.beside import mean_width
from ptmark.dye.contour import Contour
from ptmark.dye.contrast import DYE_STOPS, LUMA
from ptmark.dye.dull import DULL, INKY, is_dull, is_shaded_dye
from ptmark.dye.haze import AS_DENSE, DENSE_HAZE, IN_GRAIN
from ptmark.dye.hue import FAINT_DYE, too_pale
from ptmark.dye.quick import between
from ptmark.photo import ends_at_border

__all__ = [
    "BROWN",
    "DARKER",
    "FROM_OUTSIDE",
    "HAIRLINE_PX",
    "HARDLY_REDDER",
    "NO_EDGE",
    "OF_STEP",
    "WHERE_PALE",
    "WRONG_COLOUR",
    "Sight",
    "confidence",
    "reason_against",
    "too_small",
    "wrong_colour",
]

# Dye takes green and blue about alike and leaves most of the red. Rust and heat tint take more
# blue than green and much red; blue pen takes most red; grey and black take all alike.
# Common practice, no source; the bounds are wide enough for orange-red and magenta-red dyes.
MOST_RED_TAKEN = 0.66  # at most 0.59 for 690 true ones of 5 px and more, 0.64 for narrower
# Where little stands clear of the grain (contrast over its spread) hue has to be that of dye
# without doubt: a pale shade in a weld's toe, with dye left in it, has 0.60 to 0.67.
RED_WHERE_DIM, DIM, CLEAR = 0.56, 6.0, 8.5
# And a fleck of so few px is grain below that: false ones had 6.1 and 6.2, in deep shade, of 15
# true ones below 50 px one of 34 px 6.4, the others 10.5 and more.
FLECK_PX = 30.0
# Dye of a faint indication that the grain keeps from being called: 10 cracks in 5 of 130 photos
# of the unseen set, and something else in 15 more of them; 0 in the 22 truth photos.
SEEN, SEEN_PX = 4.0, 25.0
LEAST_BLUE_TAKEN, MOST_BLUE_TAKEN = 0.55, 1.30
LEAST_BLUE_OF_RED = 1.0  # dye takes more blue than red, shade or not; violet ink does not
BLUE_ROUNDED = 0.03  # share of the white's light that JPEG's coarser blue may be off
LEAST_AGREEMENT = 0.55  # amount of dye by colour over that by contrast; 1 where it is dye
# From here on shade alone has darkened the red: dye in a dark wedge of shadows.
FULL_AGREEMENT = 0.80
# Light taken over what the colour alone would take; 1 for dye, at least 0.9 for 350 true ones.
# Strong JPEG leaves squares that are redder than the rest and hardly darker (0.4).
LEAST_DARK = 0.5
DARK = 0.2  # green taken: ink, not mottle
LEAST_COLOUR = 0.05  # green taken less red taken, share of the white's light
# What may be left of the contrast 2.5 blurs outside the edge, at the palest call, and how much
# more for each share of contrast above it: the paler, the sharper the edge has to be.
LEFT_WHERE_PALE, LEFT_PER_CONTRAST, PALEST = 0.05, 2.5, 0.12
HAIRLINE_PX = 5.0
# 95 % of 40 true ones under 2.5 px wide lie within 0.00 of that, of 140 up to 3.5 px within
# 0.12, of 3500 wider ones within 0.18 to 0.21: JPEG leaves narrow ones little of their colour.
BROWN_OF_NARROW = 0.05
# In photos of dull colours (half of their saturation) dye takes blue as 0.94 to 0.98 of green
# and is at most 1.51 brown; rust, fingers and tape take 1.09 times as much blue and more.
BROWN_OF_DULL, DULL_FROM, DULL_BLUE = 1.62, ((0.3, 0.45), (0.0, 1.0)), ((1.0, 1.05), (1.0, 0.0))
# How soft a hairline's edge may be, shift over width, and where nothing is left outside of it.
SOFTEST, CLEAN_SOFTEST, CLEAN_OUTSIDE = 0.35, 0.42, 0.1
# However soft, where it is so many times as long as wide and little is left outside: six left
# out as haze in 164 photos were so, all of them cracks; what was none had 0.36 left and more.
LEAST_LONG, LEFT_BESIDE_LINE = 8.0, 0.2
MOST_CUT_OF_HAIRLINE = 0.35  # at most 0.27 for 210 true ones
MOST_LEFT_BESIDE_HAIRLINE = 0.5  # at most 0.27 beside 75 true ones; more is a scrap of another
WRONG_COLOUR = "not dye-coloured"  # how reasons of colour begin
NO_EDGE = "no edge"  # and those of haze
FROM_OUTSIDE = "reaches in from the edge of the photo and is wide, like a glove or a cloth"
HARDLY_REDDER = "too pale: hardly redder than the developer beside it"
DARKER = "not dye-coloured: darker than its surroundings, hardly redder"
BROWN = "not dye-coloured: yellow or brown, like rust or heat tint"
_HAZE = "no edge: a pink haze that fades away, reclean and repeat if in doubt"
# How much of the outline may lie where the look ended (haze goes on there), in the same way: on
# ten hazy photos at most 0.03 of a true one's, at least 0.07 of a called patch of haze's.
CUT_WHERE_PALE, CUT_PER_CONTRAST, CUT_PALEST = 0.05, 1.2, 0.25
# And more, for each share of contrast above it, where the edge is as sharp as the photo's
# others, none where it is twice as soft: strong JPEG spreads colour outside sharp edges too.
LEFT_WHERE_SHARP, SHARP_FROM = 1.5, 0.15
_LUMA, _LUMA_OF_DYE = LUMA.tolist(), float(LUMA @ DYE_STOPS)
_RED_STOPPED, _GREEN_STOPPED, _ = DYE_STOPS.tolist()
# Of the photo's width, as 2 area / rim. Dye that the border cuts off has up to 0.01 (a bleed-
# out of 5 mm in a photo of 280 mm), red gloves of the stress set 0.05 and more.
WIDEST_FROM_OUTSIDE = 0.03
# JPEG makes squares that are redder by a step of its colour, and called where texture darkens
# them: of 40 with steps of 1.7 codes all but one rose by 1.1 to 1.5 steps and held 0.12 to 0.23
# of full dye; of 100 true ones of 0.3 that were called in such files none below 1.5. Of 250
# faint ones in 53 photos none is paler than 0.12; six squares were, 1.7 to 2.0 steps redder.
MOST_STEPS, WHERE_PALE = ((0.11, 0.16), (2.2, 1.5)), 0.25
# And of what is denser, but of less colour than its darkness asks for, like a black stroke in
# deep shade: within one square of JPEG's colour 1.5 to 1.7 steps, 2.0 and more for true ones;
# over more than one 0.5 at a part's edge, 1.4 for a true one in a crater's shade.
STEPS_IN_SQUARE, STEPS_IN_MORE, SQUARE_PX, DENSE = 1.75, 1.0, 18, 0.5
OF_STEP = "too pale: no redder than one step of the file's colour"
LEFT_PER_SOFTNESS = 0.1  # for each time that the edge is softer than the photo's usual one


@dataclass(frozen=True, slots=True, kw_only=True)
class Sight:
    """What bounds a call: least size, the photo's border, and how soft its edges mostly are.

    ``colour_step`` is the least step of a block's mean colour in the file, codes; 0 of none.
    """

    least_px: float
    least_mm: float | None
    photo_width: int
    photo_height: int
    usual_shift_px: float
    colour_step: float = 0.0


def reason_against(one: Contour, sight: Sight, *, is_dye: bool = False) -> str:
    """Why a contour is not called; "" where it is.

    Neither its hue nor whether it clears the grain is asked where it ``is_dye``.
    """
    if too_small(one, sight):
        size = f"{sight.least_px:.0f} px"
        if sight.least_mm is not None:
            size = f"{sight.least_mm:.1f} mm"
        return f"smaller than {size}: go closer to judge it"
    if _from_outside(one, sight):
        return FROM_OUTSIDE
    if not is_dye and (too_pale(one.contrast, one.grain) or _is_grain(one)):
        return IN_GRAIN if _is_faint_dye(one) else _pale(one)
    red, green, blue = one.taken_light.tolist()
    colour = "" if is_dye else wrong_colour(one)
    if colour and is_dull(red, green, blue) and not _no_edge(one, sight):
        return DULL
    if min(green, green - red) < LEAST_COLOUR:  # mottle can raise red and take no green
        return colour or HARDLY_REDDER if green > DARK else HARDLY_REDDER
    if one.red_codes < _least_steps(one) * sight.colour_step:
        return colour or OF_STEP
    return colour or _no_edge(one, sight)


def _pale(one: Contour) -> str:
    return f"too pale: {100 * one.contrast:.0f} % of full dye"


def _is_faint_dye(one: Contour) -> bool:
    """Whether what does not clear the grain is as long and as dense as a faint indication."""
    long = one.area_px > SEEN_PX * max(_width(one), 0.5)
    return long and one.contrast > max(FAINT_DYE, SEEN * one.grain)


def _is_grain(one: Contour) -> bool:
    """Whether it is a fleck as small and as pale as grain makes by itself here and there."""
    return one.area_px < FLECK_PX and one.contrast < CLEAR * one.grain


def _least_steps(one: Contour) -> float:
    """How many steps of the file's colour it has to be redder than the developer."""
    if one.contrast < WHERE_PALE:
        return between(one.contrast, *MOST_STEPS)
    red, green, _ = one.taken_light.tolist()
    if one.contrast > DENSE or _by_colour(red, green) > FULL_AGREEMENT * one.contrast:
        return 0.0
    in_square = float(np.ptp(one.outline_px, axis=0).max()) < SQUARE_PX
    return STEPS_IN_SQUARE if in_square else STEPS_IN_MORE


def _from_outside(one: Contour, sight: Sight) -> bool:
    """Whether it ends at the photo's border and is wider than dye would be."""
    wide = _width(one) > WIDEST_FROM_OUTSIDE * sight.photo_width
    return wide and ends_at_border(one.outline_px, sight.photo_width, sight.photo_height)


def too_small(one: Contour, sight: Sight) -> bool:
    """Whether an outline is so small that it would be a guess."""
    across = float(np.ptp(one.outline_px, axis=0).max())
    return across < sight.least_px or one.area_px < sight.least_px**2 / 4


def wrong_colour(one: Contour) -> str:
    """Why its colour is not that of dye; "" where it may be."""
    red, green, blue = one.taken_light.tolist()
    colour = _by_colour(red, green)
    clear = one.contrast / one.grain
    if clear > CLEAR and is_shaded_dye(red, green, blue):
        return ""
    most_red = between(clear, (DIM, CLEAR), (RED_WHERE_DIM, MOST_RED_TAKEN))
    shade = clear < CLEAR or colour < FULL_AGREEMENT * one.contrast
    if shade and red > most_red * green:
        return INKY
    if colour < LEAST_AGREEMENT * one.contrast:
        return DARKER
    luma = _LUMA[0] * red + _LUMA[1] * green + _LUMA[2] * blue
    if luma < LEAST_DARK * _LUMA_OF_DYE * colour:
        return "not dye-coloured: redder than its surroundings, hardly darker"
    if blue > MOST_BLUE_TAKEN * green or _too_brown(one):
        return BROWN
    if blue < max(LEAST_BLUE_TAKEN * green - BLUE_ROUNDED, LEAST_BLUE_OF_RED * red):
        return "not dye-coloured: it leaves blue, like violet ink"
    return ""


def _by_colour(red: float, green: float) -> float:
    """Amount of dye that the ratio of green to red alone tells of, as in `dye_amount`."""
    steady = max(1 - green, 0.0) / max(1 - red, 1e-3)
    return float((1 - steady) / max(_GREEN_STOPPED - _RED_STOPPED * steady, 1e-3))


def _too_brown(one: Contour) -> bool:
    return _brown(*one.taken_light.tolist()) > _most_brown(one)


def _most_brown(one: Contour) -> float:
    """Brown allowed: more where grain blurs a pale hue, and where thick dye stops red too.

    And where the blob is so narrow that JPEG leaves it little of its colour, or takes much of
    green and no more of blue, which rust never does: a photo of dull colours takes red as well.
    """
    _, green, blue = one.taken_light.tolist()
    allowed = between(green, (0.3, 0.5, 0.85, 0.95), (1.55, 1.46, 1.46, 1.65))
    dull = between(one.contrast, *DULL_FROM) * between(blue / max(green, 1e-6), *DULL_BLUE)
    allowed = max(allowed, BROWN_OF_DULL * dull)
    narrow = (HAIRLINE_PX / 2, HAIRLINE_PX)
    return allowed + between(_width(one), narrow, (BROWN_OF_NARROW, 0.0))


def _brown(red: float, green: float, blue: float) -> float:
    """How brown: rust takes more of both red and blue, for the green it takes, than dye."""
    return (blue + 0.8 * red) / max(green, 1e-6)


def _no_edge(one: Contour, sight: Sight) -> str:
    """Haze has no edge: it is pale, and most of it is left where an edge would have ended."""
    if one.shift_px > sqrt(one.area_px):
        return "no edge: it fades over a length like its own size"
    width = _width(one)
    softest = CLEAN_SOFTEST if one.left_outside < CLEAN_OUTSIDE else SOFTEST
    long = float(np.ptp(one.outline_px, axis=0).max()) > LEAST_LONG * width
    line = long and one.left_outside < LEFT_BESIDE_LINE
    sharp = (one.shift_px < softest * width or line) and one.cut < MOST_CUT_OF_HAIRLINE
    if width < HAIRLINE_PX and sharp and one.left_outside < MOST_LEFT_BESIDE_HAIRLINE:
        return ""  # a haze so narrow would be an edge
    if one.cut > CUT_WHERE_PALE + CUT_PER_CONTRAST * max(0.0, one.contrast - CUT_PALEST):
        return _HAZE if one.contrast < AS_DENSE else DENSE_HAZE
    softer = max(0.0, one.shift_px / sight.usual_shift_px - 1)
    allowed = LEFT_WHERE_PALE + LEFT_PER_CONTRAST * max(0.0, one.contrast - PALEST)
    allowed += LEFT_WHERE_SHARP * max(0.0, one.contrast - SHARP_FROM) * max(0.0, 1 - softer)
    if one.left_outside + LEFT_PER_SOFTNESS * softer > allowed:
        return _HAZE if one.contrast < AS_DENSE else DENSE_HAZE
    return ""


def _width(one: Contour) -> float:
    return mean_width(one.outline_px, one.area_px)


def confidence(one: Contour) -> float:
    """How sure a call is, 0 to 1: contrast over grain, hue and sharpness of the edge.

    A ranking, not a probability: the weakest of the three decides.
    """
    red, green, blue = one.taken_light.tolist()
    signal = min(1.0, one.contrast / max(12 * one.grain, 0.3))
    hue = min(
        1.0,
        (MOST_RED_TAKEN - red / max(green, 1e-6)) / 0.25,
        (_most_brown(one) - _brown(red, green, blue)) / 0.15,
    )
    edge = min(1.0, 3.0 / max(one.shift_px, 0.1))
    return float(min(1.0, max(0.02, min(signal, hue, edge))))
