"""Colour-contrast pictures that have the same outlines as a fluorescent photo.

Where dye shines with amount ``a`` of the brightest there, the picture holds white of which
``a`` is taken by red dye. ``a`` is linear in light, so that half contrast lies in the same
place. One picture shows what shines green-yellow, another what shines in other colours.
"""

from collections.abc import Callable
from typing import Any

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.contrast import DYE_STOPS
from ptmark.photo import Photo, linear_to_srgb, srgb_to_linear

__all__ = [
    "MOST_BLUE",
    "MOST_RED",
    "VIOLET",
    "as_colour_contrast",
    "as_other_light",
    "brightest_green",
    "violet_over",
]

Float = npt.NDArray[np.float32]
Mask = npt.NDArray[np.bool_]
Planes = tuple[Float, Float, Float]
Held = Callable[[Planes, Mask, Float], tuple[Float, Float]]  # of light and gain: dye and ink

# Of the green light of what shines green-yellow (emission about 500 to 570 nm: common practice,
# no source), with room for the colour casts of phones.
MOST_BLUE, MOST_RED = 0.6, 1.2
# A phone may expose the violet that UV lamps leave to see as bright as a room. No developer
# is so violet: blue over green light, 1.6 times what the coolest daylight has.
VIOLET = 2.0
_GAIN, _GAIN_SHARE = 8.0, 0.03  # most; reach in shares of the photo's width
_LEAST_REACH = 13  # px of 1/8 size
_VEIL_SHARE = 0.08  # of the photo's width: wider than dye, narrower than a lamp's glare
_SHINES = 0.12  # amount above which the hue of what shines can be told
_LAMPS = 0.9  # share of a photo that holds no more of other light than lamps leave
_LEAST_OTHER = 0.06  # of the brightest green light: less is too faint, as with penetrant
_FLOOR = 0.02  # linear light that counts as full dye at least
_CLIPPED, _SURE = 0.95, 2.5  # so that white, of as much blue as green, is wholly ink
_WHITE, _MOST = 0.85, 1.04  # the gain is smoothed and so up to 4 % high
_STRIPS = 256


def as_colour_contrast(photo: Photo) -> Photo:
    """The colour-contrast picture of a fluorescent photo; what shines otherwise is ink in it.

    The gain follows the brightest light nearby, over a reach far wider than any edge, so that
    faint indications stand beside bright ones and each keeps its own half contrast.
    """
    small = brightest_green(photo)
    gain, ground = _gain(small, float(small.max())), _ground(photo)

    def held(planes: Planes, clipped: Mask, factor: Float) -> tuple[Float, Float]:
        amount = np.minimum((planes[1] - ground) * factor, _MOST)
        wrong = _other_light(planes) * factor
        wrong *= np.clip((amount - _SHINES) / _SHINES, 0, 1)
        wrong[~clipped] *= _SURE  # of what is clipped no hue is known
        return amount, np.clip(wrong, 0, 1)

    return _painted(photo, gain, held)


def as_other_light(photo: Photo) -> Photo | None:
    """The picture in which what shines bluish, white, orange or pink is dye; None of nothing.

    What is clipped, of which no hue is known, is left out of it.
    """
    half = srgb_to_linear(photo.reduced(2))
    red, green, blue = (np.asarray(one, np.float32) for one in cv2.split(half))
    blue -= cv2.resize(violet_over(photo), green.shape[::-1], interpolation=cv2.INTER_LINEAR)
    other = _other_light((red, green, blue))
    ground = np.float32(max(0.0, float(np.quantile(other[::4, ::4], _LAMPS))))
    small = _highest(np.maximum(other - ground, 0), 4)
    top, shines = float(small.max()), float(brightest_green(photo).max())
    if top < max(_FLOOR, _LEAST_OTHER * shines):
        return None
    gain = _gain(small, max(top, shines))

    def held(planes: Planes, clipped: Mask, factor: Float) -> tuple[Float, Float]:
        amount = np.clip((_other_light(planes) - ground) * factor, 0, _MOST)
        amount[clipped] = 0
        return amount, np.zeros_like(amount)

    return _painted(photo, gain, held)


def violet_over(photo: Photo) -> Float:
    """The blue light of UV lamps that lies over each place, at 1/8 size; 0 where none does."""
    small = photo.reduced(8)
    reach = max(_LEAST_REACH, round(_VEIL_SHARE * small.shape[1])) | 1
    level = srgb_to_linear(np.asarray(cv2.medianBlur(small, reach), np.uint8))
    green, blue = level[..., 1], level[..., 2]
    veil = np.where(blue > VIOLET * green, blue, 0.0).astype(np.float32)
    return np.asarray(cv2.GaussianBlur(veil, (0, 0), 2.0), np.float32)


def brightest_green(photo: Photo) -> Float:
    """The brightest green light of each 8 by 8 px, less what a single pixel adds.

    Not the mean, which falls below the plateau of a line narrower than that: what is cut off
    at it would put half contrast too far out.
    """
    green = cv2.GaussianBlur(cv2.extractChannel(photo.rgb, 1), (0, 0), 0.7)
    return np.asarray(srgb_to_linear(_highest(green, 8)), np.float32)


def _highest(plane: npt.NDArray[Any], side: int) -> npt.NDArray[Any]:
    """The highest value of each square of ``side`` px."""
    down, across = -plane.shape[0] % side, -plane.shape[1] % side
    whole = cv2.copyMakeBorder(plane, 0, down, 0, across, cv2.BORDER_REPLICATE)
    blocks = whole.reshape(whole.shape[0] // side, side, whole.shape[1] // side, side)
    return np.asarray(blocks.max(axis=(1, 3)))


def _ground(photo: Photo) -> np.float32:
    return np.float32(np.median(srgb_to_linear(photo.reduced(8))[..., 1]))


def _other_light(planes: Planes) -> Float:
    """Light beyond what a green-yellow glow of that green has; below 0 where there is less."""
    red, green, blue = planes
    return np.asarray(np.maximum(blue - MOST_BLUE * green, red - MOST_RED * green), np.float32)


def _painted(photo: Photo, gain: Float, held: Held) -> Photo:
    """Red dye and ink on white, by what ``held`` gives of some rows' light and gain."""
    violet, height = violet_over(photo), len(photo.rgb)
    out = np.empty_like(photo.rgb)
    code = (linear_to_srgb(np.linspace(0, 1, 4096, dtype=np.float32)) * 255).round()
    table = code.astype(np.uint8)
    for top in range(0, height, _STRIPS):
        rows = slice(top, min(top + _STRIPS, height))
        light = cv2.split(srgb_to_linear(photo.rgb[rows]))
        red, green, blue = (np.asarray(one, np.float32) for one in light)
        clipped = cv2.max(cv2.max(red, green), blue) >= _CLIPPED
        blue -= _enlarged(violet, rows, photo.rgb.shape[:2])
        amount, ink = held((red, green, blue), clipped, _enlarged(gain, rows, out.shape[:2]))
        for channel, stops in enumerate(DYE_STOPS):
            left = 1 - np.float32(stops) * amount
            if channel == 0:  # ink takes red as well
                left = left - 0.9 * ink
            level = np.clip(_WHITE * left * 4095, 0, 4095).astype(np.uint16)
            out[rows, :, channel] = table[level]
    return Photo(photo.info, out)


def _gain(small: Float, top: float) -> Float:
    """One over the brightest light nearby, at the size of ``small``; ``top`` is of all."""
    reach = max(_LEAST_REACH, round(_GAIN_SHARE * small.shape[1])) | 1
    near = cv2.dilate(small, np.ones((reach, reach), np.uint8))
    floor = max(_FLOOR, top / _GAIN)
    smooth = cv2.GaussianBlur(np.maximum(near, floor), (0, 0), reach / 4)
    return np.asarray(1 / np.maximum(smooth, floor), np.float32)


def _enlarged(small: Float, rows: slice, shape: tuple[int, ...]) -> Float:
    """What is known at 1/8 size, at full size for some rows of a photo of ``shape``."""
    height, width = shape
    down = (np.arange(rows.start, rows.stop) + 0.5) * (small.shape[0] / height) - 0.5
    across = (np.arange(width) + 0.5) * (small.shape[1] / width) - 0.5
    x, y = np.meshgrid(across.astype(np.float32), down.astype(np.float32))
    made = cv2.remap(small, x, y, cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE)
    return np.asarray(made, np.float32)
