"""Which kind of penetrant a photo shows: red on white, or what glows under UV-A on dark.

In colour contrast the ground is developer that white light lights, and nothing on it is
lighter; under UV-A the ground is dark or violet, and what counts glows on it. Where a photo
shows neither, or signs of both, its kind is not known until a person tells it.
"""

from weakref import WeakKeyDictionary

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.about import box_about, within_outline
from ptmark.dye.coarse import coarse_factor
from ptmark.dye.like_contrast import MOST_BLUE, MOST_RED, violet_over
from ptmark.dye.remark import Remark
from ptmark.photo import Photo, srgb_to_linear

__all__ = ["MODES", "kind_remark", "kind_unknown", "recognise"]

Array = npt.NDArray[np.float64]
Float = npt.NDArray[np.float32]
Mask = npt.NDArray[np.bool_]
Bytes = npt.NDArray[np.uint8]
Ints = npt.NDArray[np.int_]

MODES = ("colour contrast", "fluorescent")
# A fluorescent photo's surroundings are dark; its indications several times as bright.
DARK, BRIGHT, LEAST_GREEN = 0.05, 4.0, 0.03
# Where it is not dark, as a phone may expose the violet that UV lamps leave to see, or
# penetrant left over, as bright as a room: red and blue over green that photos in white light
# have, with room for casts (0.8 to 1.25 and 0.65 to 1.24). Violet and penetrant lie beyond.
_RED, _BLUE = (0.7, 1.35), (0.65, 1.35)
# Lit developer or a card is white (blue at most 1.5 of green, red at least 0.6) and takes more
# of a photo than the reflections under UV-A do. Common practice, no source.
_WHITE_BLUE, _WHITE_RED, _WHITE_SHARE = 1.5, 0.6, 0.02
_LEAST_WHITE_BLUE = 0.4
_GLANCE = 40_000  # pixels looked at to tell a dark photo
_LEAST_SHINING = 12  # sampled pixels
# Of a photo taken for colour contrast: what is so many times as green as the area's ground, and
# adds to it less than half of the blue that white would, glows: nothing on developer is so much
# lighter than it. Red dye on a dark bench is redder than any glow.
_GLOWS, _OF_BLUE, _LEAST_RED_DYE = 3.0, 0.5, 2.0
# Beside white in white light a yellow tape or rule shines over a dark bench as well, but has
# less green than the white (0.65 to 0.94 of its brightest in 60 drawn photos) and is redder
# than penetrant that is no brighter; green tape has less than this share of it.
_AS_WHITE, _TAPE_RED, _TAPE_GREEN = 1.0, 0.7, 0.4
_MOST_SHINING = 0.1  # of a photo; penetrant that counts takes less, a lit part more
_UNKNOWN = Remark(
    "The photo does not tell whether the penetrant is fluorescent or of colour contrast, and "
    "looked at for the wrong one, indications are not called.",
    "Choose the kind of penetrant and look again, or take the photo with the white balance set "
    "to the light in use.",
)
_RECOGNISED: WeakKeyDictionary[Photo, str] = WeakKeyDictionary()  # gone with the photo
_TOLD: WeakKeyDictionary[Photo, tuple[object, bool]] = WeakKeyDictionary()  # by its last area


def recognise(photo: Photo) -> str:
    """Tell a fluorescent photo from one of colour contrast.

    Returns
    -------
    str
        "fluorescent" where the photo is dark, or in no light that rooms have, and holds
        green-yellow light several times as bright; else "colour contrast".
    """
    kept = _RECOGNISED.get(photo)
    if kept is None:
        kept = _RECOGNISED[photo] = _recognised(photo)
    return kept


def kind_unknown(photo: Photo, area_px: Array | None = None) -> bool:
    """Whether what `recognise` tells of a photo is not to be relied on.

    Parameters
    ----------
    photo : Photo
    area_px : ndarray of shape (N, 2), optional
        Examined area, px; the whole photo where None.

    Returns
    -------
    bool
        True where it is taken for colour contrast though nothing in it is white in white
        light, or something glows on what is no lit developer; or for fluorescent though more
        of it shines than penetrant does.
    """
    key = None if area_px is None else area_px.tobytes()
    kept = _TOLD.get(photo)
    if kept is None or kept[0] != key:
        kept = _TOLD[photo] = key, _unknown(photo, area_px)
    return kept[1]


def kind_remark(photo: Photo, mode: str, area_px: Array | None) -> Remark | None:
    """What is to be said where the kind was not chosen (``mode`` is "") and is unknown."""
    return None if mode or not kind_unknown(photo, area_px) else _UNKNOWN


def _unknown(photo: Photo, area_px: Array | None) -> bool:
    light = _glance(photo)
    middle, *ground = _ground(light)
    if recognise(photo) == "fluorescent":
        return bool(_shining(photo, ground[1]).mean() > _MOST_SHINING)
    white = _whites(light)
    shows_white = _is_shown(white)
    if not shows_white and not (middle > DARK and _ordinary(*ground)):
        return True
    inside = _inside(light.shape[:2], photo, area_px)
    if not inside.any():
        return False
    own = np.median(light[inside], axis=0)
    return _glows(photo, area_px, own, light[white] if shows_white else None)


def _recognised(photo: Photo) -> str:
    light = _glance(photo)
    middle, *ground = _ground(light)
    if (middle > DARK and _ordinary(*ground)) or _is_shown(_whites(light)):
        return "colour contrast"
    shining = _shining(photo, ground[1])
    enough = np.count_nonzero(shining) >= _LEAST_SHINING
    return "fluorescent" if enough else "colour contrast"


def _glance(photo: Photo) -> Float:
    """Some of the photo's pixels, linear, shape (H, W, 3)."""
    step = max(1, round((photo.info.megapixels * 1e6 / _GLANCE) ** 0.5))
    return srgb_to_linear(np.ascontiguousarray(photo.rgb[::step, ::step]))


def _ground(light: Float) -> list[float]:
    """The middle of the brightest of each pixel's three, and of red, green and blue."""
    return [float(np.median(one)) for one in (light.max(axis=2), *cv2.split(light))]


def _shining(photo: Photo, ground: float) -> Mask:
    """Of every second pixel and row, what shines green-yellow over green of ``ground``."""
    half = np.ascontiguousarray(photo.rgb[::2, ::2])
    red, green, blue = cv2.split(srgb_to_linear(half))
    blue -= cv2.resize(violet_over(photo), green.shape[::-1], interpolation=cv2.INTER_LINEAR)
    shining = green > max(LEAST_GREEN, BRIGHT * ground)
    return np.asarray(shining & (blue < MOST_BLUE * green) & (red < MOST_RED * green), bool)


def _ordinary(red: float, green: float, blue: float) -> bool:
    """Whether a ground of that light is white in a light that rooms have."""
    return (
        _RED[0] * green < red < _RED[1] * green and _BLUE[0] * green < blue < _BLUE[1] * green
    )


def _whites(light: Float) -> Mask:
    """What of linear pixels of shape (H, W, 3) is white in white light, or lit by it."""
    red, green, blue = cv2.split(light)
    bright = green > max(LEAST_GREEN, 0.3 * float(np.quantile(green, 0.999)))
    white = bright & (blue < _WHITE_BLUE * green) & (red > _WHITE_RED * green)
    return np.asarray(white & (blue > _LEAST_WHITE_BLUE * green), bool)  # else penetrant


def _is_shown(white: Mask) -> bool:
    return bool(np.count_nonzero(white) > _WHITE_SHARE * white.size)


def _inside(shape: tuple[int, ...], photo: Photo, area_px: Array | None) -> Mask:
    """The examined area in a grid of ``shape`` over the photo."""
    if area_px is None:
        return np.ones(shape, bool)
    height, width = photo.rgb.shape[:2]
    return within_outline(area_px * (shape[1] / width, shape[0] / height), shape) > 0


def _glows(photo: Photo, area_px: Array | None, ground: Float, white: Float | None) -> bool:
    """Whether something in the area adds green to its ground, and less blue than white.

    ``white`` holds the pixels, shape (N, 3), that are white in white light; None without any.
    """
    least = max(LEAST_GREEN, _GLOWS * float(ground[1]))
    if least >= 1:
        return False
    step = coarse_factor(photo)
    low, pixels = _sampled(photo, area_px, step)
    red, green, blue = cv2.split(pixels)
    most_red, most_blue = _most(least, ground, white)
    glows = (red < cv2.LUT(green, most_red)) & (blue < cv2.LUT(green, most_blue))
    if area_px is not None:
        inside = within_outline((area_px - low) / (step, 2 * step), glows.shape)
        glows &= inside > 0
    return bool(np.count_nonzero(glows) * step**2 >= 2 * _LEAST_SHINING)


def _most(least: float, ground: Float, white: Float | None) -> tuple[Bytes, Bytes]:
    """For each code of green the codes of red and blue that what glows lies under.

    By tables: what they ask of light is asked of every pixel of the photo.
    """
    light = srgb_to_linear(np.arange(256, dtype=np.uint8)).astype(np.float64)
    tone = ground if white is None else np.median(white, axis=0)
    of_red, of_blue = (float(one) / max(float(tone[1]), 1e-4) for one in tone[::2])
    blue = float(ground[2]) + _OF_BLUE * of_blue * (light - float(ground[1]))
    red = _LEAST_RED_DYE * light
    if white is not None:
        brightest = float(np.quantile(white[:, 1], 0.95))
        tape = np.where(light < _TAPE_GREEN * brightest, 0.0, _TAPE_RED * of_red * light)
        red = np.where(light > _AS_WHITE * brightest, red, np.minimum(red, tape))
    red[light <= least] = 0.0
    codes = [np.searchsorted(light, one).clip(0, 255).astype(np.uint8) for one in (red, blue)]
    return codes[0], codes[1]


def _sampled(photo: Photo, area_px: Array | None, step: int) -> tuple[Ints, Bytes]:
    """Where the area's box begins, (x, y) px, and of it some of every second row's pixels."""
    size = np.array(photo.rgb.shape[1::-1])
    low, high = (0 * size, size) if area_px is None else box_about(area_px, 0, size)
    cut = photo.rgb[low[1] : high[1] : 2 * step, low[0] : high[0] : step]
    return low, np.ascontiguousarray(cut)
