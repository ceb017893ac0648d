"""Which light a blob takes from the developer beside it: what tells dye from ink and rust."""

from math import erf, hypot, sqrt

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.contrast import LOG_LIGHT, LUMA
from ptmark.dye.fine import CloseLook
from ptmark.dye.quick import middle, picked
from ptmark.photo import linear_to_srgb, srgb_to_linear

__all__ = [
    "FAINT_DYE",
    "core_contrast",
    "is_hidden",
    "red_codes",
    "stands_out",
    "taken_light",
    "too_pale",
]

Array = npt.NDArray[np.float64]
Float = npt.NDArray[np.float32]
Bytes = npt.NDArray[np.uint8]
Mask = npt.NDArray[np.bool_]

LEAST_CONTRAST, LEAST_SIGNAL = 0.10, 6.0
# What grain, or the relief of a rough coat, hides in each pixel stands out by its size, as a
# mean does: contrast over the spread, times the root of its pixels. In 152 photos of the unseen
# set 11 faint cracks and pieces of them had 50 and more; what else was as dense as a faint
# indication, of the dye's own colour and in that much grain, at most 42. Their grain was 0.12
# of full dye and less; a cloth's red pattern has 0.16 and more.
FAINT_DYE, LEAST_IN_GRAIN, LEAST_OF_ALL, MOST_GRAIN = 0.25, 3.5, 46.0, 0.14
_REACH = 10  # px round an outline
_HALF = np.ones((_REACH + 1,) * 2, np.uint8)  # twice, as wide as the reach
_LEAST_BARE = 40  # pixels
# Blur that colour of half the resolution (JPEG's 4:2:0) has on top of luma's, standard
# deviation: fits the medians of 280 true outlines, 2 to 10 px wide, of our own renderings.
_COLOUR_BLUR_PX = 1.5
_RED_OF_JPEG = np.array([0.5, -0.4187, -0.0813])  # its Cr, of R, G and B codes (JFIF 1.02)
_TWO_LIGHTS = 0.35  # spread of log light, 10 to 90 %: more than mottle, a shadow's edge


def too_pale(contrast: float, grain: float) -> bool:
    """Whether so little dye is no call, and tells no hue; ``grain`` as in `CloseLook`."""
    return contrast < max(LEAST_CONTRAST, LEAST_SIGNAL * grain)


def stands_out(contrast: float, grain: float, pixels: float) -> bool:
    """Whether so many pixels stand out of grain that may hide each."""
    least = grain * max(LEAST_IN_GRAIN, LEAST_OF_ALL / sqrt(max(pixels, 1.0)))
    return grain < MOST_GRAIN and contrast > least


def is_hidden(contrast: float, grain: float, pixels: int) -> bool:
    """Whether so little dye is too pale, and does not stand out by its size either."""
    by_size = contrast > FAINT_DYE and stands_out(contrast, grain, pixels)
    return too_pale(contrast, grain) and not by_size


def core_contrast(inside: Float) -> float:
    """Amount of dye in a blob's core: nine tenths of it hold no more, 1 for full dye."""
    rank = int(0.9 * (len(inside) - 1))
    return float(np.partition(inside, rank)[rank])


def red_codes(taken: Array, white: Array) -> float:
    """How far JPEG's red difference (Cr) lies above the developer's, codes; NaN of NaN.

    Parameters
    ----------
    taken : ndarray of shape (3,)
        As from `taken_light`.
    white : ndarray of shape (3,)
        Linear light of the developer.

    Examples
    --------
    >>> round(red_codes(np.array([0.0, 0.2, 0.2]), np.full(3, 0.5)), 1)
    8.9
    """
    codes = 255 * linear_to_srgb(np.stack([white * (1 - taken), white])).astype(np.float64)
    return float(_RED_OF_JPEG @ (codes[0] - codes[1]))


def taken_light(
    close: CloseLook,
    number: int,
    border: npt.NDArray[np.int32],
    blur_px: float,
    contrast: float,
) -> Array:
    """The share of R, G and B light that a blob's core takes from the developer beside it.

    Parameters
    ----------
    close : CloseLook
    number : int
        The blob's crop.
    border : ndarray of shape (N, 2), int32
        The border of the blob's mask, sheet px.
    blur_px : float
        Standard deviation of its edge, sheet px.
    contrast : float
        Its `core_contrast`.

    Returns
    -------
    ndarray of shape (3,)
        NaN where it `is_hidden`.
    """
    x, y, width, height = cv2.boundingRect(border)
    rows, columns = close.sheet.places[number]
    box = (
        slice(max(y - _REACH, rows.start), min(y + height + _REACH, rows.stop)),
        slice(max(x - _REACH, columns.start), min(x + width + _REACH, columns.stop)),
    )
    amount, rgb = close.amount[box], close.sheet.rgb[box]
    filled = np.zeros(amount.shape, np.uint8)
    corner = (-box[1].start, -box[0].start)
    cv2.drawContours(filled, [border], 0, 1, cv2.FILLED, offset=corner)
    if is_hidden(contrast, float(close.grain[number]), cv2.countNonZero(filled)):
        return np.full(3, np.nan)
    core = (filled > 0) & (amount > 0.7 * contrast)
    beside = _bare_ring(filled, close.sheet.around[box], close.bare[box])
    width_px = 2 * np.count_nonzero(filled) / (cv2.arcLength(border, closed=True) + 4)
    taken = _taken(rgb, core, beside, close.color[number])
    return _undiluted(taken, width_px, blur_px)


def _undiluted(taken: Array, width_px: float, blur_px: float) -> Array:
    """The light taken with the colour that a narrow blob has lost to the developer beside it.

    A line of width w keeps the share erf(w / (2 sqrt 2 s)) of its peak under a blur s (as in
    `ptmark.dye.level`), and colour is blurred more than luma, which is left as it is.
    """
    luma = float(LUMA @ taken)
    kept = [
        erf(width_px / (2 * sqrt(2) * one))
        for one in (blur_px, hypot(blur_px, _COLOUR_BLUR_PX))
    ]
    return np.asarray(luma + (taken - luma) * kept[0] / kept[1], np.float64)


def _bare_ring(filled: Bytes, around: Bytes, bare: Bytes) -> Mask:
    """Bare developer close round an outline, 5 to 10 px off; other things left out.

    What is far from the fitted white is another thing, unless nearly all the ring is: then a
    shadow's edge runs here and the plane fits neither side.
    """
    narrow = cv2.dilate(filled, _HALF)
    ring = (cv2.dilate(narrow, _HALF) > narrow) & (around > 0)
    near = ring & (bare > 0)
    few = 2 * np.count_nonzero(near) <= np.count_nonzero(ring)
    return np.asarray(ring if few else near, np.bool_)


def _taken(rgb: Bytes, core: Mask, ring: Mask, white: Array) -> Array:
    """Share of R, G and B light that the core takes from the developer beside it."""
    bare = np.flatnonzero(ring)
    if len(bare) < _LEAST_BARE:
        return np.asarray(1 - _middle_light(rgb, np.flatnonzero(core)) / white)
    luma = cv2.cvtColor(picked(rgb, bare, 300)[None], cv2.COLOR_RGB2GRAY)[0]
    ranks = [int(0.1 * len(luma)), int(0.9 * len(luma))]
    low, high = LOG_LIGHT[np.partition(luma, ranks)[ranks]].tolist()
    if high - low > _TWO_LIGHTS:
        return _taken_in_two_lights(rgb, core, ring)
    beside = np.maximum(_middle_light(rgb, bare), 0.01)
    return np.asarray(1 - _middle_light(rgb, np.flatnonzero(core)) / beside)


def _taken_in_two_lights(rgb: Bytes, core: Mask, ring: Mask) -> Array:
    """The same where a shadow's edge crosses: each pixel against the developer near to it."""
    mask = ring.view(np.uint8)
    light = srgb_to_linear(np.asarray(cv2.bitwise_and(rgb, rgb, mask=mask), np.uint8))
    reach = max(4.0, 0.1 * max(ring.shape))
    where = np.flatnonzero(core)
    every = np.asarray(cv2.merge([light, mask.astype(np.float32)]), np.float32)
    near = picked(_wide_blur(every, reach), where, 1000)
    weight = near[:, 3]
    told = weight > 1e-4
    if not told.any():
        return np.zeros(3)
    beside = near[:, :3] / np.maximum(weight, 1e-6)[:, None]
    share = srgb_to_linear(picked(rgb, where, 1000)) / np.maximum(beside, 0.01)
    return np.asarray(1 - middle(share[told]), np.float64)


def _wide_blur(values: Float, sigma_px: float) -> Float:
    """Gaussian blur on pixels a quarter of it wide: averaging these widens it by 0.3 %."""
    height, width = values.shape[:2]
    step = max(1, int(sigma_px / 4))
    size = (-(-width // step), -(-height // step))
    small = cv2.resize(values, size, interpolation=cv2.INTER_AREA)
    blurred = cv2.GaussianBlur(small, (0, 0), sigma_px / step)
    return np.asarray(cv2.resize(blurred, (width, height)), np.float32)


def _middle_light(rgb: Bytes, where: npt.NDArray[np.intp]) -> Array:
    """Median linear light of the pixels asked for by their index, from a thousand of them."""
    some = middle(picked(rgb, where, 1000))
    return np.asarray(srgb_to_linear(some), np.float64)  # the curve keeps the order
