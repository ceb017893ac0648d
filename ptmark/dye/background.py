"""The background that red rises above: the developer's own ratio of red to green light."""

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.quick import quantiles
from ptmark.photo import srgb_to_linear

__all__ = ["SHRINK", "twice_background"]

Float = npt.NDArray[np.float32]
Bytes = npt.NDArray[np.uint8]
Mask = npt.NDArray[np.bool_]

SHRINK = 8
_LIGHT = srgb_to_linear(np.arange(256, dtype=np.uint8))
_STEP, _LOW = 1 / 200, -0.64  # background kept in 8 bit: 0.005 a step
# Coloured light puts the developer beyond what 8 bits hold: a photo whose middle is so far off,
# and of whose middle half all is so much alike, is told from there. Own choice: pictures of
# many colours spread 0.6 and more, photos of developer 0.1.
_FAR, _ALIKE = 0.4, 0.5
# Unless something as light is so much greener: red light tints all of it, a red bench does not.
_GREENER = 0.5
# Fall of the log ratio, in seeds, over four px of the background across the rim of what is
# wide: dye falls by four and more there, light that is warm on one side by a quarter.
_LEAST_FALL = 2
# Red light of blue or green tape and paint over the photo's: developer in a shadow keeps more.
_DARK_RED = 0.3
_THREE, _FIVE = np.ones((3, 3), np.uint8), np.ones((5, 5), np.uint8)


def twice_background(
    ratio: Float, red: Bytes, window: int, seed: float, inside: Bytes | None = None
) -> Float:
    """The background of a log ratio of red to green light, at 1/8 of its size.

    Red wider than half the window would become its own background, so what stands out in a
    first pass is filled with its surroundings and the background taken again.

    Parameters
    ----------
    ratio : ndarray of shape (H, W)
    red : ndarray of shape (H, W), uint8
        Codes of the red channel.
    window : int
        Side of the median's window, px of the result, odd and at most 255.
    seed : float
        Rise above the background that makes a blob.
    inside : ndarray of shape (H, W), uint8, optional
        1 in the examined area. What is far greener beyond it, like a blue bench, is filled as
        well: beside it the part's edge would stand out all round. So is anywhere what besides
        takes most of the red, like blue tape: the white along it would, and cracks in that.
    """
    size = (max(1, ratio.shape[1] // SHRINK), max(1, ratio.shape[0] // SHRINK))
    small = np.asarray(cv2.resize(ratio, size, interpolation=cv2.INTER_AREA), np.float32)
    low, overall, high = quantiles(small, (0.25, 0.5, 0.75))
    other = _takes_red(small, min(overall, 0.0) - 4 * seed, red)
    if inside is not None:
        own = cv2.resize(inside, size, interpolation=cv2.INTER_NEAREST) > 0
        usual = min(overall, float(np.median(small[own]))) if own.any() else overall
        other |= ~own & (small < usual - 4 * seed)
    alike = abs(overall) > _FAR and high - low < _ALIKE
    if alike and not _holds_white(small, overall, red, window):
        cast = np.float32(overall)
        return _background(small - cast, 0.0, window, seed, other) + cast
    return _background(small, overall, window, seed, other)


def _takes_red(small: Float, most: float, red: Bytes) -> Mask:
    """Where the log ratio is below ``most`` and hardly any red light is left."""
    greener = small < most
    if greener.any():
        light = cv2.LUT(
            cv2.resize(red, small.shape[::-1], interpolation=cv2.INTER_AREA), _LIGHT
        )
        greener &= light < _DARK_RED * np.median(light)
    return greener


def _holds_white(small: Float, overall: float, red: Bytes, window: int) -> bool:
    """Whether a photo mostly of one red holds developer that is not tinted by it.

    Dark places under red light are greener as well, for want of light.
    """
    greener = small < overall - _GREENER
    if np.count_nonzero(greener) < window**2:
        return False
    light = cv2.resize(red, small.shape[::-1], interpolation=cv2.INTER_AREA)
    return int(np.count_nonzero(light[greener] >= np.median(light))) >= window**2


def _background(small: Float, overall: float, window: int, seed: float, other: Mask) -> Float:
    """The same at that size; ``overall`` is the middle of all of it."""
    coded = _coded(small)
    middle = np.asarray(cv2.medianBlur(coded, window), np.uint8)
    background = _smooth(middle, window)
    red = small > np.maximum(background, overall) + 2 * seed
    wide = _steep(small, small > overall + 4 * seed, window, seed, other) | red | other
    if not wide.any():
        return background
    wide = cv2.dilate(wide.astype(np.uint8), np.ones((3, 3), np.uint8)) > 0
    filled = np.where(wide, np.float32(overall), small)
    weight = cv2.blur((~wide).astype(np.float32), (4 * window, 4 * window))
    mean = cv2.blur(np.where(wide, np.float32(0), small), (4 * window, 4 * window))
    near = weight > 0.05
    filled[wide & near] = (mean / np.maximum(weight, 1e-3))[wide & near]
    _take_again(middle, coded, _coded(filled), window)
    return _smooth(middle, window)


def _steep(small: Float, wide: Mask, window: int, seed: float, other: Mask) -> Mask:
    """What is wide, without large patches that fade away: they are of another light."""
    if np.count_nonzero(wide) < window**2:
        return wide
    count, names, stats, _ = cv2.connectedComponentsWithStats(wide.view(np.uint8))
    kept = wide.copy()
    for name in range(1, count):
        if stats[name, cv2.CC_STAT_AREA] < window**2:
            continue
        own = (names == name).view(np.uint8)
        inner = (own > 0) & (cv2.erode(own, _FIVE) == 0) & (cv2.erode(own, _THREE) > 0)
        outer = (cv2.dilate(own, _FIVE) > 0) & (cv2.dilate(own, _THREE) == 0) & ~other
        if inner.any() and outer.any():
            fall = np.median(small[inner]) - np.median(small[outer])
            kept[own > 0] = fall > _LEAST_FALL * seed
    return kept


def _coded(small: Float) -> Bytes:
    return np.asarray(np.clip((small - _LOW) / _STEP, 0, 255), np.uint8)


def _smooth(middle: Bytes, window: int) -> Float:
    smooth = cv2.GaussianBlur(middle.astype(np.float32), (0, 0), window / 4)
    return np.asarray(smooth * np.float32(_STEP) + np.float32(_LOW), np.float32)


def _take_again(middle: Bytes, before: Bytes, after: Bytes, window: int) -> None:
    """Bring the median up to date in place, as far as what is changed reaches."""
    left, top, wide, high = cv2.boundingRect((before != after).view(np.uint8))
    reach = window // 2
    rows = slice(max(top - reach, 0), top + high + reach)
    columns = slice(max(left - reach, 0), left + wide + reach)
    above, beside = max(rows.start - reach, 0), max(columns.start - reach, 0)
    known = after[above : rows.stop + reach, beside : columns.stop + reach]
    made = cv2.medianBlur(known, window)[rows.start - above :, columns.start - beside :]
    own = middle[rows, columns]
    own[...] = made[: own.shape[0], : own.shape[1]]
