"""Fluorescent photos (type I under UV-A: green-yellow on dark) by the same engine.

The photo is turned into the colour-contrast picture that has the same outlines: where dye
shines with amount ``a`` of the brightest there, the picture holds white of which ``a`` is
taken by red dye. ``a`` is linear in the green light, so that half contrast lies in the same
place; what shines bluish or white is shown as ink, which the engine leaves alone.
"""

from dataclasses import replace
from weakref import WeakKeyDictionary

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.clipped import as_clipped
from ptmark.dye.coarse import CoarseLook, look_coarsely
from ptmark.dye.contrast import DYE_STOPS
from ptmark.dye.edge import EdgeQuality
from ptmark.dye.quality import holds_no_colour
from ptmark.dye.quick import value_at
from ptmark.dye.remark import Remark
from ptmark.dye.suggest import LeftOut, Suggestion, Suggestions, suggest
from ptmark.dye.trace import refine_outline
from ptmark.errors import PhotoError
from ptmark.photo import Photo, linear_to_srgb, srgb_to_linear
from ptmark.scale import SurfaceMap

__all__ = [
    "MODES",
    "as_colour_contrast",
    "find_indications",
    "in_colour_contrast",
    "lighting_remark",
    "look_ahead",
    "recognise",
    "refine_in_mode",
]

Array = npt.NDArray[np.float64]
Float = npt.NDArray[np.float32]

MODES = ("colour contrast", "fluorescent")
# A fluorescent photo's surroundings are dark; its indications green-yellow (emission about 500
# to 570 nm: common practice, no source), several times as bright, with little blue.
DARK, BRIGHT, LEAST_GREEN, MOST_BLUE, MOST_RED = 0.05, 4.0, 0.03, 0.6, 1.2
# A phone may expose the violet that UV lamps leave to see as bright as a room. No developer
# is so violet: blue over green light, 1.6 times what the coolest daylight has.
VIOLET = 2.0
# Penetrant left over shines all over the part: so green no developer in any light is (own
# choice; red and blue over green, and the most light of it). Colour casts of photos hold 0.7
# of blue and 0.8 of red.
_GREEN_ALL_OVER, _MOST_GREEN_LIGHT = (0.7, 0.5), 0.2
# Lit developer or a card is white (blue at most 1.5 of green, red at least 0.6) and takes more
# of a photo than the reflections under UV-A do. Common practice, no source.
_WHITE_BLUE, _WHITE_RED, _WHITE_SHARE = 1.5, 0.6, 0.02
_GLANCE = 40_000  # pixels looked at to tell a dark photo
_LEAST_SHINING = 12  # sampled pixels
_GAIN, _GAIN_SHARE = 8.0, 0.03  # most; reach in shares of the photo's width
_LEAST_REACH = 13  # px of 1/8 size
_VEIL_SHARE = 0.08  # of the photo's width: wider than dye, narrower than a lamp's glare
_SHINES = 0.12  # amount above which the hue of what shines can be told
_FLOOR = 0.02  # linear light that counts as full dye at least
_CLIPPED, _SURE = 0.95, 2.5  # so that white, of as much blue as green, is wholly ink
_WHITE, _MOST = 0.85, 1.04  # the gain is smoothed and so up to 4 % high
_STRIPS = 256
_KEPT: WeakKeyDictionary[Photo, Photo] = WeakKeyDictionary()  # gone with the photo
_RECOGNISED: WeakKeyDictionary[Photo, str] = WeakKeyDictionary()
_REASONS = (
    ("too pale", "too faint: shines less than 6 % of what is brightest near it"),
    ("not dye-coloured", "not green-yellow: bluish or white, like lint, paper or a reflection"),
    ("no edge", "no edge: a glow that fades away, remove the excess and repeat if in doubt"),
)


def recognise(photo: Photo) -> str:
    """Tell a fluorescent photo from one of colour contrast.

    Returns
    -------
    str
        "fluorescent" where the photo is dark or violet and holds green-yellow light; else
        "colour contrast".
    """
    kept = _RECOGNISED.get(photo)
    if kept is None:
        kept = _RECOGNISED[photo] = _recognised(photo)
    return kept


def _recognised(photo: Photo) -> str:
    step = max(1, round((photo.info.megapixels * 1e6 / _GLANCE) ** 0.5))
    some = np.ascontiguousarray(photo.rgb[::step, ::step])
    few = [np.asarray(cv2.extractChannel(some, i), np.uint8) for i in range(3)]
    brightest = np.asarray(cv2.max(cv2.max(*few[:2]), few[2]), np.uint8)
    middles = np.array([value_at(0.5, one) for one in (brightest, *few)])
    middle, reddest, ground, bluest = srgb_to_linear(middles / 255).tolist()
    most_red, most_blue = _GREEN_ALL_OVER
    green_all_over = reddest < most_red * ground and bluest < most_blue * ground
    dark = middle <= (_MOST_GREEN_LIGHT if green_all_over else DARK)
    if not (dark or bluest > VIOLET * ground) or _shows_white(srgb_to_linear(some)):
        return "colour contrast"
    half = np.ascontiguousarray(photo.rgb[::2, ::2])
    red, green, blue = cv2.split(srgb_to_linear(half))
    blue -= cv2.resize(_violet(photo), green.shape[::-1], interpolation=cv2.INTER_LINEAR)
    shining = (
        (green > max(LEAST_GREEN, BRIGHT * ground))
        & (blue < MOST_BLUE * green)
        & (red < MOST_RED * green)
    )
    enough = np.count_nonzero(shining) >= _LEAST_SHINING
    return "fluorescent" if enough else "colour contrast"


def _shows_white(some: Float) -> bool:
    """Whether pixels of shape (H, W, 3), linear, show something white in white light."""
    red, green, blue = some.reshape(-1, 3).T
    bright = green > max(LEAST_GREEN, 0.3 * float(np.quantile(green, 0.999)))
    white = bright & (blue < _WHITE_BLUE * green) & (red > _WHITE_RED * green)
    return bool(np.count_nonzero(white) > _WHITE_SHARE * len(green))


def _violet(photo: Photo) -> Float:
    """The blue light of UV lamps that lies over each place, at 1/8 size; 0 where none does."""
    small = photo.reduced(8)
    reach = max(_LEAST_REACH, round(_VEIL_SHARE * small.shape[1])) | 1
    level = srgb_to_linear(np.asarray(cv2.medianBlur(small, reach), np.uint8))
    green, blue = level[..., 1], level[..., 2]
    veil = np.where(blue > VIOLET * green, blue, 0.0).astype(np.float32)
    return np.asarray(cv2.GaussianBlur(veil, (0, 0), 2.0), np.float32)


def as_colour_contrast(photo: Photo) -> Photo:
    """The colour-contrast picture of a fluorescent photo, with the same outlines.

    The gain follows the brightest light nearby, over a reach far wider than any edge, so that
    faint indications stand beside bright ones and each keeps its own half contrast.
    """
    gain, violet = _gain(_brightest(photo)), _violet(photo)
    ground = np.float32(np.median(srgb_to_linear(photo.reduced(8))[..., 1]))
    height = len(photo.rgb)
    out = np.empty_like(photo.rgb)
    code = (linear_to_srgb(np.linspace(0, 1, 4096, dtype=np.float32)) * 255).round()
    table = code.astype(np.uint8)
    for top in range(0, height, _STRIPS):
        rows = slice(top, min(top + _STRIPS, height))
        red, green, blue = cv2.split(srgb_to_linear(photo.rgb[rows]))
        factor = _enlarged(gain, rows, photo.rgb.shape[:2])
        amount = np.minimum((green - ground) * factor, _MOST)
        brightest = cv2.max(cv2.max(red, green), blue)
        blue -= _enlarged(violet, rows, photo.rgb.shape[:2])
        wrong = np.maximum(blue - MOST_BLUE * green, red - MOST_RED * green) * factor
        wrong *= np.clip((amount - _SHINES) / _SHINES, 0, 1)
        wrong[brightest < _CLIPPED] *= _SURE  # of what is clipped no hue is known
        for channel, stops in enumerate(DYE_STOPS):
            left = 1 - np.float32(stops) * amount
            if channel == 0:  # ink takes red as well
                left = left - 0.9 * np.clip(wrong, 0, 1)
            level = np.clip(_WHITE * left * 4095, 0, 4095).astype(np.uint16)
            out[rows, :, channel] = table[level]
    return Photo(photo.info, out)


def _brightest(photo: Photo) -> Float:
    """The brightest green light of each 8 by 8 px, less what a single pixel adds.

    Not the mean, which falls below the plateau of a line narrower than that: what is cut off
    at it would put half contrast too far out.
    """
    green = cv2.GaussianBlur(cv2.extractChannel(photo.rgb, 1), (0, 0), 0.7)
    down, across = -green.shape[0] % 8, -green.shape[1] % 8
    whole = cv2.copyMakeBorder(green, 0, down, 0, across, cv2.BORDER_REPLICATE)
    blocks = whole.reshape(whole.shape[0] // 8, 8, whole.shape[1] // 8, 8)
    return np.asarray(srgb_to_linear(blocks.max(axis=(1, 3))), np.float32)


def _gain(small: Float) -> Float:
    """One over the brightest green light nearby, at the size of ``small``."""
    reach = max(_LEAST_REACH, round(_GAIN_SHARE * small.shape[1])) | 1
    top = cv2.dilate(small, np.ones((reach, reach), np.uint8))
    floor = max(_FLOOR, float(top.max()) / _GAIN)
    smooth = cv2.GaussianBlur(np.maximum(top, floor), (0, 0), reach / 4)
    return np.asarray(1 / np.maximum(smooth, floor), np.float32)


def in_colour_contrast(photo: Photo, mode: str = "") -> Photo:
    """The picture that the engine and the tracing tools work on: the photo, or its like.

    ``mode`` is one of `MODES`, or "" to recognise it.
    """
    if (mode or recognise(photo)) != "fluorescent":
        return photo
    made = _KEPT.get(photo)
    if made is None:
        made = _KEPT[photo] = as_colour_contrast(photo)
    return made


def _enlarged(gain: Float, rows: slice, shape: tuple[int, ...]) -> Float:
    """What is known at 1/8 size, at full size for some rows of a photo of ``shape``."""
    height, width = shape
    down = (np.arange(rows.start, rows.stop) + 0.5) * (gain.shape[0] / height) - 0.5
    across = (np.arange(width) + 0.5) * (gain.shape[1] / width) - 0.5
    x, y = np.meshgrid(across.astype(np.float32), down.astype(np.float32))
    made = cv2.remap(gain, x, y, cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE)
    return np.asarray(made, np.float32)


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
        One of `MODES`, or "" to recognise it.
    ahead : CoarseLook, optional
        What `look_ahead` gave for the same photo, area and mode.

    Returns
    -------
    Suggestions
        In a fluorescent photo without haze, which has no measure there, and with reasons that
        speak of light instead of dye.

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
    return Suggestions(
        found=tuple(_as_bright(photo, one) for one in seen.found),
        left_out=tuple(_reworded(one) for one in seen.left_out),
        haze=None,
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


def _reworded(one: LeftOut) -> LeftOut:
    for start, words in _REASONS:
        if one.reason.startswith(start):
            return replace(one, reason=words)
    return one


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
