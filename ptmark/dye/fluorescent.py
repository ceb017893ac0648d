"""Fluorescent photos (type I under UV-A: green-yellow on dark) by the same engine.

The photo is turned into the colour-contrast picture that has the same outlines
(`ptmark.dye.like_contrast`). What shines in another colour is listed with its reason, and so is
glow that has no edge.
"""

from collections.abc import Sequence
from dataclasses import replace
from weakref import WeakKeyDictionary

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.about import pixels_about, within_outline
from ptmark.dye.clipped import as_clipped
from ptmark.dye.coarse import CoarseLook, look_coarsely
from ptmark.dye.edge import EdgeQuality
from ptmark.dye.glow import background_glow, fades
from ptmark.dye.haze import GLOW, ODD_LIGHT
from ptmark.dye.judge import FROM_OUTSIDE, NO_EDGE, WRONG_COLOUR
from ptmark.dye.kind import recognise
from ptmark.dye.like_contrast import MOST_BLUE, MOST_RED, as_colour_contrast, as_other_light
from ptmark.dye.quality import holds_no_colour
from ptmark.dye.remark import Remark
from ptmark.dye.suggest import LeftOut, Suggestion, Suggestions, suggest
from ptmark.dye.trace import refine_outline
from ptmark.errors import PhotoError
from ptmark.photo import Photo, srgb_to_linear
from ptmark.scale import SurfaceMap

__all__ = [
    "find_indications",
    "in_colour_contrast",
    "lighting_remark",
    "look_ahead",
    "refine_in_mode",
]

Array = npt.NDArray[np.float64]

_KEPT: WeakKeyDictionary[Photo, Photo] = WeakKeyDictionary()  # gone with the photo
_LEAST_OTHER_PX = 10.0  # JPEG spreads the colour of a hot pixel over 8
_LEAST_OTHER = 0.3  # of the brightest nearby: less is where a haze of penetrant leaves it out
_TOO_FAINT = "too faint: shines less than 6 % of what is brightest near it"
_BLUISH = "not green-yellow: bluish or white, like lint, paper or a reflection"
_REDDISH = "not green-yellow: orange, pink or red, like ink"
_FADES = "no edge: a glow that fades away, remove the excess and repeat if in doubt"


def in_colour_contrast(photo: Photo, mode: str = "") -> Photo:
    """The picture that the engine and the tracing tools work on: the photo, or its like.

    ``mode`` is one of `ptmark.dye.kind.MODES`, or "" to recognise it.
    """
    if (mode or recognise(photo)) != "fluorescent":
        return photo
    made = _KEPT.get(photo)
    if made is None:
        made = _KEPT[photo] = as_colour_contrast(photo)
    return made


def look_ahead(photo: Photo, area_px: Array | None, mode: str = "") -> CoarseLook:
    """The part of `find_indications` that needs no scale, to be taken while that is found."""
    return look_coarsely(in_colour_contrast(photo, mode), area_px)


def find_indications(
    photo: Photo,
    surface: SurfaceMap | None,
    area_px: Array | None,
    mode: str = "",
    ahead: CoarseLook | None = None,
) -> Suggestions:
    """`suggest`, in the photo's own mode.

    Parameters
    ----------
    photo, surface, area_px
        As for `suggest`.
    mode : str
        One of `ptmark.dye.kind.MODES`, or "" to recognise it.
    ahead : CoarseLook, optional
        What `look_ahead` gave for the same photo, area and mode.

    Returns
    -------
    Suggestions
        In a fluorescent photo with reasons that speak of light instead of dye, and the glow of
        the background as its haze.

    Raises
    ------
    PhotoError
        If the photo holds no colour: nothing found would read as nothing there.
    """
    if holds_no_colour(photo):
        raise PhotoError(
            "the photo holds no colour, so dye cannot be found in it",
            where=str(photo.info.path),
            mend="take it in colour, or trace the indications by hand",
        )
    picture = in_colour_contrast(photo, mode)
    seen = suggest(picture, surface, area_px, ahead)
    if picture is photo:
        return seen
    fading = fades(photo, seen.found)
    found, glows = (
        [one for one, is_glow in zip(seen.found, fading, strict=True) if is_glow == kind]
        for kind in (False, True)
    )
    left_out = [_reworded(photo, one) for one in seen.left_out]
    left_out += [LeftOut(outline_px=o.outline_px, edge=o.edge, reason=GLOW) for o in glows]
    left_out += _of_other_light(photo, surface, area_px, [*seen.found, *seen.left_out])
    left_out = _in_odd_light(left_out, len(found))
    left_out.sort(key=lambda one: tuple(one.outline_px.min(axis=0)[::-1]))
    return Suggestions(
        found=tuple(_as_bright(photo, one) for one in found),
        left_out=tuple(left_out),
        haze=background_glow(photo, area_px),
    )


def refine_in_mode(
    photo: Photo, outline_px: Array, mode: str = ""
) -> tuple[Array, EdgeQuality]:
    """`refine_outline`, in the photo's own mode; ``mode`` as for `in_colour_contrast`."""
    picture = in_colour_contrast(photo, mode)
    refined, edge = refine_outline(picture, outline_px)
    return refined, edge if picture is photo else as_clipped(photo, refined, edge)


def _as_bright(photo: Photo, one: Suggestion) -> Suggestion:
    return replace(one, edge=as_clipped(photo, one.outline_px, one.edge))


def _of_other_light(
    photo: Photo,
    surface: SurfaceMap | None,
    area_px: Array | None,
    known: Sequence[Suggestion | LeftOut],
) -> list[LeftOut]:
    """What shines in another colour than penetrant, without what touches what is known."""
    import shapely

    picture = as_other_light(photo)
    if picture is None:
        return []
    tree = shapely.STRtree([shapely.Polygon(one.outline_px) for one in known])
    made = []
    for one in suggest(picture, surface, area_px).found:
        large = np.ptp(one.outline_px, axis=0).max() >= _LEAST_OTHER_PX
        if not large or one.contrast < _LEAST_OTHER:
            continue
        own = shapely.Polygon(one.outline_px)
        if not len(tree.query(own, predicate="intersects")):
            why = _hue_of(photo, one.outline_px)
            made.append(LeftOut(outline_px=one.outline_px, edge=one.edge, reason=why))
    return made


def _in_odd_light(left_out: list[LeftOut], found: int) -> list[LeftOut]:
    """Where more shines otherwise than green-yellow, the white balance may make it so."""
    other = [
        one
        for one in left_out
        if one.reason in (_BLUISH, _REDDISH)
        and np.ptp(one.outline_px, axis=0).max() >= _LEAST_OTHER_PX
    ]
    if len(other) <= found:
        return left_out
    odd = {id(one) for one in other}
    return [replace(one, reason=ODD_LIGHT) if id(one) in odd else one for one in left_out]


def _hue_of(photo: Photo, outline_px: Array) -> str:
    """How its light differs from penetrant's."""
    crop, low = pixels_about(photo, outline_px)
    inside = within_outline(outline_px - low, crop.shape)
    red, green, blue, _ = cv2.mean(srgb_to_linear(crop), inside)
    return _REDDISH if red - MOST_RED * green > blue - MOST_BLUE * green else _BLUISH


def _reworded(photo: Photo, one: LeftOut) -> LeftOut:
    words = one.reason
    if words.startswith("too pale"):
        words = _TOO_FAINT
    elif words.startswith(WRONG_COLOUR):
        words = _hue_of(photo, one.outline_px)
    elif words.startswith(NO_EDGE):
        words = _FADES
    elif words == FROM_OUTSIDE:  # no glove or cloth shines so: it may lie over indications
        words = GLOW
    return replace(one, reason=words)


def lighting_remark(mode: str) -> Remark | None:
    """The lighting that a fluorescent examination needs and no photo can prove.

    Figures: ASME V Article 6 T-676.4 (seen in a secondary source); ISO 3059 and
    ASTM E1417/E1417M (from memory). The contract's own edition governs.
    """
    if mode != "fluorescent":
        return None
    return Remark(
        "Fluorescent: the photo cannot show that the light was right. Usual limits are UV-A of "
        "at least 10 W/m2 (1000 uW/cm2) at the surface and white light of at most 20 lx there "
        "(2 fc); the standard of the contract governs.",
        "Measure both at the surface and write them into the record, let the eyes adapt to the "
        "dark, and keep unfiltered or damaged UV lamps away from eyes and skin.",
    )
