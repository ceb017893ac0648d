"""How much dye a pixel shows, against the local white, in linear light.

The developer is white and the dye lies in it, so a pixel of the photo mixes the two:
``pixel = shade * ((1 - a) * white + a * dye)`` for each channel in linear light; ``a`` is the
amount of dye, 0 to about 1. Red dye passes red light and stops green and blue.
"""

from dataclasses import dataclass
from functools import lru_cache

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.quick import middle
from ptmark.photo import linear_to_srgb, srgb_to_linear

__all__ = ["DYE_STOPS", "LocalWhite", "dye_amount", "local_white", "log_light", "redness"]

Float = npt.NDArray[np.float32]
Bytes = npt.NDArray[np.uint8]
Mask = npt.NDArray[np.bool_]

# Share of each channel (R, G, B) that full dye takes away. Red penetrant dyes absorb at about
# 500 to 550 nm; common practice, no source. Only the course of half contrast from channel to
# channel depends on it, not the half level itself.
DYE_STOPS = np.array([0.35, 0.95, 0.90])
_LUMA = np.array([0.299, 0.587, 0.114])  # ITU-R BT.601, the luma of JPEG (JFIF 1.02)
_CODE = np.arange(256, dtype=np.uint8)
_LIGHT = srgb_to_linear(_CODE).astype(np.float64)
_LOG_LIGHT = np.log(np.maximum(_LIGHT, 0.003)).astype(np.float32)
_FIT_POINTS, _LEAST_POINTS = 500, 30
_STRIP = 64  # rows
CROSSOVER_PX = 3.0  # chroma of 4:2:0 is good to about 2 px; mottle is far coarser


def redness(rgb: Bytes) -> Float:
    """Log ratio of red to green light, shape (H, W): shade falls out, dye raises it.

    ``rgb`` of shape (H, W, 3), sRGB-coded.
    """
    made = np.empty(rgb.shape[:2], np.float32)
    for top in range(0, len(rgb), _STRIP):  # in the cache: fresh memory costs more
        strip = rgb[top : top + _STRIP]
        red, green = (cv2.LUT(cv2.extractChannel(strip, i), _LOG_LIGHT) for i in (0, 1))
        cv2.subtract(red, green, dst=made[top : top + _STRIP])
    return made


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class LocalWhite:
    """The developer round a blob: its colour, and its light and redness over the crop.

    ``log_light`` is the log of the light that its luma stands for, ``redness`` its log ratio of
    red to green light; both are planes of shape (H, W).
    """

    color: npt.NDArray[np.float64]  # shape (3,), linear light
    log_light: Float
    redness: Float


def local_white(rgb: Bytes, around: Mask) -> LocalWhite:
    """Fit the white of a crop from the pixels that hold no dye.

    Parameters
    ----------
    rgb : ndarray of shape (H, W, 3), uint8
        Crop, sRGB-coded.
    around : ndarray of shape (H, W), bool
        Pixels of bare developer; at least 12 of them.

    Returns
    -------
    LocalWhite
        Planes in log light, refitted twice without what lies off (2.5 robust sigma).
    """
    height, width = around.shape
    step = max(1, int((around.size / _FIT_POINTS) ** 0.5))
    rows, columns = np.nonzero(around[::step, ::step])
    if len(rows) < _LEAST_POINTS:  # what is bare lies in few places: take every pixel of it
        step = 1
        rows, columns = np.nonzero(around)
    pixels = rgb[rows * step, columns * step]
    ratio = _LOG_LIGHT[pixels[:, 0]] - _LOG_LIGHT[pixels[:, 1]]
    values = np.column_stack([log_light(pixels), ratio])
    x, y = columns * (step / width) - 0.5, rows * (step / height) - 0.5
    fit = _robust_plane(np.column_stack([np.ones(len(rows)), x, y]), values)
    across = np.arange(width, dtype=np.float32) / width - np.float32(0.5)
    down = np.arange(height, dtype=np.float32)[:, None] / height - np.float32(0.5)
    planes = [(c + a * across) + d * down for c, a, d in fit.T.astype(np.float32)]
    return LocalWhite(
        color=np.maximum(middle(_LIGHT[pixels]), 0.01),
        log_light=planes[0],
        redness=planes[1],
    )


def _robust_plane(
    design: npt.NDArray[np.float64], values: npt.NDArray[np.float64]
) -> npt.NDArray[np.float64]:
    """Planes through scattered values of shape (N, M): shape (3, M), refitted twice."""
    fit = np.zeros((3, values.shape[1]))
    chosen, kept = design, values
    for _ in range(3):
        normal = chosen.T @ chosen + 1e-9 * np.eye(3)
        fit = np.asarray(np.linalg.solve(normal, chosen.T @ kept), np.float64)
        off = np.abs(values - design @ fit)
        good = (off <= 3.7 * middle(off) + 2.5e-4).all(axis=1)  # 2.5 robust sigma
        if np.count_nonzero(good) < _LEAST_POINTS:
            break
        chosen, kept = design[good], values[good]
    return fit


def log_light(pixels: Bytes) -> npt.NDArray[np.float64]:
    """Log of the light that the luma of sRGB pixels of shape (N, 3) stands for, shape (N,)."""
    return _log_luma_light(pixels @ _LUMA)


def _log_luma_light(luma: npt.NDArray[np.floating]) -> npt.NDArray[np.float64]:
    """Log of the linear light that a neutral pixel of this luma (0 to 255) would have."""
    light = srgb_to_linear(np.asarray(luma, np.float32) / np.float32(255))
    return np.log(np.maximum(light, 0.003)).astype(np.float64)


def dye_amount(rgb: Bytes, white: LocalWhite) -> Float:
    """Amount of dye in each pixel of a crop.

    JPEG keeps colour at half the resolution of luma, so luma places the edge; but mottle and
    shade darken luma too, so what changes slowly comes from the ratio of red to green, in
    which shade falls out: ``luma's + blur(ratio's - luma's)``.

    Parameters
    ----------
    rgb : ndarray of shape (H, W, 3), uint8
    white : LocalWhite

    Returns
    -------
    ndarray of shape (H, W), float32
        0 on bare developer, 1 at full dye; linear in the mixture, not clipped.
    """
    sharp = _from_luma(rgb, white)
    steady = np.exp(white.redness - redness(rgb))  # green over red against the white's
    red, green = np.float32(DYE_STOPS[0]), np.float32(DYE_STOPS[1])
    slow = (1 - steady) / (green - red * steady)
    more = cv2.GaussianBlur(slow - sharp, (0, 0), CROSSOVER_PX)
    return np.asarray(sharp + more, np.float32)


def _from_luma(rgb: Bytes, white: LocalWhite) -> Float:
    """Amount of dye from luma alone, undoing its course along the mixture."""
    luma = cv2.cvtColor(rgb, cv2.COLOR_RGB2GRAY)
    ratio = np.exp(cv2.LUT(luma, _LOG_LIGHT) - white.log_light)
    power = _course(*np.round(np.log(white.color), 1).tolist())
    made = np.full_like(ratio, power[4])
    for coefficient in power[3::-1]:
        made *= ratio
        made += np.float32(coefficient)
    return np.asarray(made, np.float32)


@lru_cache(maxsize=256)
def _course(*log_white: float) -> npt.NDArray[np.float64]:
    """Powers of luma's light over the white's that give the amount of dye; shape (5,)."""
    amount = np.linspace(-0.3, 1.05, 60)
    mixed = np.exp(log_white) * np.maximum(1 - np.outer(amount, DYE_STOPS), 1e-3)
    course = np.exp(_log_luma_light(linear_to_srgb(mixed.astype(np.float32)) @ _LUMA * 255))
    course /= np.interp(0.0, amount, course)
    return np.asarray(np.polynomial.polynomial.polyfit(course, amount, 4))
