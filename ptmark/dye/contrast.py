"""How much dye a pixel shows, against the local white, in linear light.

The developer is white and the dye lies in it, so a pixel of the photo mixes the two:
``pixel = shade * ((1 - a) * white + a * dye)`` for each channel in linear light; ``a`` is the
amount of dye, 0 to about 1. Red dye passes red light and stops green and blue.
"""

from dataclasses import dataclass
from functools import lru_cache
from typing import TypeVar

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.quick import middle, pixels_at
from ptmark.dye.reduced import STRIP
from ptmark.dye.sheet import Sheet, blurred
from ptmark.photo import linear_to_srgb, srgb_to_linear

__all__ = [
    "DYE_STOPS",
    "LOG_LIGHT",
    "LUMA",
    "LocalWhite",
    "amount_of_ratio",
    "dye_amount",
    "local_white",
    "log_light",
    "log_ratio",
    "redness",
]

Float = npt.NDArray[np.float32]
Bytes = npt.NDArray[np.uint8]

# Share of each channel (R, G, B) that full dye takes away. Red penetrant dyes absorb at about
# 500 to 550 nm; common practice, no source. Only the course of half contrast from channel to
# channel depends on it, not the half level itself.
DYE_STOPS = np.array([0.35, 0.95, 0.90])
_RED_STOPPED, _GREEN_STOPPED, _ = DYE_STOPS.tolist()
_Light = TypeVar("_Light", float, Float)
LUMA = np.array([0.299, 0.587, 0.114])  # ITU-R BT.601, the luma of JPEG (JFIF 1.02)
_CODE = np.arange(256, dtype=np.uint8)
_LIGHT = srgb_to_linear(_CODE).astype(np.float64)
LOG_LIGHT = np.log(np.maximum(_LIGHT, 0.003)).astype(np.float32)  # of a luma or a channel
_FIT_POINTS, _FITTED, _LEAST_POINTS = 500, 400, 30
_LEAST_AMOUNT = -0.3
_BRIGHTEST = np.float32(1.23)  # light over the white's where luma tells of the least amount
_GREENEST = np.float32(1.6)  # green over red, of which grain still leaves some
CROSSOVER_PX = 3.0  # chroma of 4:2:0 is good to about 2 px; mottle is far coarser


def redness(rgb: Bytes) -> Float:
    """Log ratio of red to green light, shape (H, W): shade falls out, dye raises it.

    ``rgb`` of shape (H, W, 3), sRGB-coded.
    """
    made = np.empty(rgb.shape[:2], np.float32)
    light = np.empty((min(STRIP, len(rgb)), rgb.shape[1]), np.float32)
    for top in range(0, len(rgb), STRIP):  # fresh memory costs more
        strip = rgb[top : top + STRIP]
        red, green, _ = (np.asarray(one, np.uint8) for one in cv2.split(strip))
        log_ratio(red, green, made[top : top + STRIP], light[: len(strip)])
    return made


def log_ratio(red: Bytes, green: Bytes, made: Float, room: Float) -> None:
    """Fill an array of shape (H, W) with the `redness` of such codes of red and green.

    ``room`` is another of that shape to work in.
    """
    cv2.LUT(red, LOG_LIGHT, dst=made)
    cv2.subtract(made, cv2.LUT(green, LOG_LIGHT, dst=room), dst=made)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class LocalWhite:
    """The developer round each blob of a sheet: its colour, and its light and redness there.

    ``color`` of shape (N, 3) is its linear light, a row for each crop. ``redness`` is its log
    ratio of red to green light, a plane in each crop's room, and ``off`` how far the log of
    each pixel's light, as its luma has it, lies above the developer's, a plane too. Both have
    the sheet's shape (H, W) and are 0 outside the rooms.
    """

    color: npt.NDArray[np.float64]
    off: Float
    redness: Float


def local_white(sheet: Sheet) -> LocalWhite:
    """Fit the white of each crop of a sheet from its pixels that hold no dye.

    Returns
    -------
    LocalWhite
        Planes in log light, refitted twice without what lies off (2.5 robust sigma).
    """
    crops = sheet.crops
    spots = [_bare_spots(one.around) for one in crops]  # rows, columns
    pixels = np.stack([pixels_at(c.rgb, *at) for c, at in zip(crops, spots, strict=True)])
    ratio = LOG_LIGHT[pixels[..., 0]] - LOG_LIGHT[pixels[..., 1]]
    values = np.stack([log_light(pixels), ratio], axis=-1)
    shapes = np.array([one.around.shape for one in crops], float)
    at = np.stack(spots).transpose(0, 2, 1) / shapes[:, None] - 0.5
    design = np.concatenate([np.ones((*at.shape[:2], 1)), at], axis=-1)
    fits = _robust_planes(design, values).astype(np.float32)
    planes = np.zeros((2, *sheet.near.shape), np.float32)
    for fit, room, place in zip(fits[..., None, None], sheet.rooms, sheet.places, strict=True):
        level, by_row, by_column = fit
        down, across = (_share_along(*sides) for sides in zip(room, place, strict=True))
        both = planes[:, room[0], room[1]]
        np.add(level + by_row * down[:, None], by_column * across, out=both)
    color = _LIGHT[[middle(one) for one in pixels]]
    luma = cv2.cvtColor(sheet.rgb, cv2.COLOR_RGB2GRAY)
    off = cv2.subtract(cv2.LUT(luma, LOG_LIGHT), planes[0], dst=planes[0])
    off[sheet.number < 0] = 0
    return LocalWhite(color=np.maximum(color, 0.01), off=planes[0], redness=planes[1])


def _share_along(room: slice, place: slice) -> Float:
    """-0.5 to 0.5 along a crop's side, carried on into its mirrored border."""
    steps = np.arange(room.start - place.start, room.stop - place.start)
    return np.asarray(steps / (place.stop - place.start) - 0.5, np.float32)


def _bare_spots(around: Bytes) -> tuple[npt.NDArray[np.intp], npt.NDArray[np.intp]]:
    """Rows and columns of pixels of bare developer, spread over the crop.

    Always the same number, so that all crops are fitted at once.
    """
    step = max(1, int((around.size / _FIT_POINTS) ** 0.5))
    rows, columns = np.nonzero(around[::step, ::step])
    if len(rows) < _LEAST_POINTS:  # what is bare lies in few places: take every pixel of it
        step = 1
        rows, columns = np.nonzero(around)
    some = np.arange(_FITTED) * len(rows) // _FITTED
    return rows[some] * step, columns[some] * step


def _robust_planes(
    design: npt.NDArray[np.float64], values: npt.NDArray[np.float64]
) -> npt.NDArray[np.float64]:
    """Planes through N sets of values of shape (N, P, M): shape (N, 3, M), refitted twice."""
    half = design.shape[1] // 2
    weight = np.ones((*design.shape[:2], 1))
    fit = _planes(design, values, weight)
    for _ in range(2):
        off = np.abs(values - design @ fit)
        middles = np.partition(off, half, axis=1)[:, half : half + 1]
        near = off <= 3.7 * middles + 2.5e-4  # 2.5 robust sigma
        good = np.logical_and.reduce(np.split(near, near.shape[2], axis=2))
        enough = np.count_nonzero(good, axis=1, keepdims=True) >= _LEAST_POINTS
        weight = np.where(enough, good, weight)
        fit = _planes(design, values, weight)
    return fit


def _planes(
    design: npt.NDArray[np.float64],
    values: npt.NDArray[np.float64],
    weight: npt.NDArray[np.float64],
) -> npt.NDArray[np.float64]:
    weighted = (design * weight).transpose(0, 2, 1)
    normal = weighted @ design + 1e-9 * np.eye(3)
    return np.asarray(np.linalg.solve(normal, weighted @ values), np.float64)


def log_light(pixels: Bytes) -> npt.NDArray[np.float64]:
    """Log of the light that the luma of sRGB pixels of shape (..., 3) stands for."""
    return _log_luma_light(pixels @ LUMA)


def _log_luma_light(luma: npt.NDArray[np.floating]) -> npt.NDArray[np.float64]:
    """Log of the linear light that a neutral pixel of this luma (0 to 255) would have."""
    light = srgb_to_linear(np.asarray(luma, np.float32) / np.float32(255))
    return np.log(np.maximum(light, 0.003)).astype(np.float64)


def dye_amount(sheet: Sheet, white: LocalWhite) -> Float:
    """Amount of dye in each pixel of a sheet.

    JPEG keeps colour at half the resolution of luma, so luma places the edge; but mottle and
    shade darken luma too, so what changes slowly comes from the ratio of red to green, in
    which shade falls out: ``luma's + blur(ratio's - luma's)``.

    Returns
    -------
    ndarray of shape (H, W), float32
        0 on bare developer, 1 at full dye; linear in the mixture, not clipped.
    """
    sharp = _from_luma(sheet, white)
    # green over red against the white's; the amount has a pole at 2.7, which ink can reach
    steady = np.minimum(np.exp(white.redness - redness(sheet.rgb)), _GREENEST)
    slow = amount_of_ratio(steady)
    return np.asarray(sharp + blurred(slow - sharp, sheet.places, CROSSOVER_PX), np.float32)


def amount_of_ratio(steady: _Light) -> _Light:
    """Amount of dye that mixes in where green over red is ``steady`` times the white's."""
    amount: _Light = (1 - steady) / (_GREEN_STOPPED - _RED_STOPPED * steady)
    return amount


def _from_luma(sheet: Sheet, white: LocalWhite) -> Float:
    """Amount of dye from luma alone, undoing its course along the mixture."""
    ratio = np.minimum(np.exp(white.off), _BRIGHTEST)  # beyond, the polynomial runs away
    made = np.zeros_like(ratio)
    for log_white, room in zip(np.log(white.color).round(1).tolist(), sheet.rooms, strict=True):
        own, power = ratio[room], _course(*log_white)
        amount = power[4] * own + power[3]
        for coefficient in power[2::-1]:
            amount *= own
            amount += coefficient
        made[room] = amount
    return np.asarray(made, np.float32)


@lru_cache(maxsize=256)
def _course(*log_white: float) -> tuple[np.float32, ...]:
    """Powers of luma's light over the white's that give the amount of dye: five, from 0 up."""
    amount = np.linspace(_LEAST_AMOUNT, 1.05, 60)
    mixed = np.exp(log_white) * np.maximum(1 - np.outer(amount, DYE_STOPS), 1e-3)
    course = np.exp(_log_luma_light(linear_to_srgb(mixed.astype(np.float32)) @ LUMA * 255))
    course /= np.interp(0.0, amount, course)
    power = np.polynomial.polynomial.polyfit(course, amount, 4)
    return tuple(np.float32(one) for one in power)
