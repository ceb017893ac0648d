"""Tips cut off at the edge of something as light as the developer: a white or light grey rule.

What its light does not tell, its edge does, straight on both sides of the tip, or the strokes
of its graduation that begin there.
"""

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.contrast import log_light
from ptmark.dye.quick import middle
from ptmark.photo import Photo, srgb_to_linear

__all__ = ["is_cut"]

Array = npt.NDArray[np.float64]
Float = npt.NDArray[np.float32]

# Bounds of our own. Of 863 tips in photos of known truth 99 % have steps of at most 0.05, one
# 0.07, and the one beneath a rule 0.37; light grey rules of four fifths make 0.18.
STEP = 0.10  # of the light, on both sides of the tip, in one sense
SHARP = 0.6  # share of it within 2 px to either side: a shade's is wider
FLAT, GRAIN = 0.35, 0.01  # share of the step that either side may change by itself, and grain
DARK = 0.80  # of the light between strokes, at most, that a stroke leaves
BARE = 0.87  # and at least what the developer before them leaves
STROKES, WIDEST_PX = 2, 6.0  # on either side
_HINT = 0.05
_SKEW = 6  # places next to the tip, where dye that meets an edge aslant lies before it
_TURNS = np.radians(np.arange(-48.0, 49.0, 4.0))  # of the edge from square to the tip's way
_DEEP_PX = np.arange(-22.0, 12.0)
_ZERO = 22  # the tip's own place in them
# Where a first look tells whether more is worth its time: behind the tip and beyond it.
_HINT_PX, _BEHIND, _SIDES = np.append(np.arange(-18.0, -8.0), np.arange(8.0, 12.0)), 10, 6
_NEAR_PX, _EDGE_PX, _FAR_PX, _EACH_PX = 5.0, 45.0, 80.0, 1.5  # to the sides


def is_cut(photo: Photo, tip: Array, ahead: Array, width_px: float) -> bool:
    """Whether a tip ends at a long straight edge, or where strokes of a rule begin.

    Parameters
    ----------
    photo : Photo
    tip, ahead : ndarray of shape (2,)
        Its place, photo px, and the unit vector along which it points.
    width_px : float
        Of the dye behind it.
    """
    aside = width_px / 2 + np.arange(_NEAR_PX, _FAR_PX, _EACH_PX)
    reach = float(np.hypot(aside[-1], -_DEEP_PX[0])) + 2
    low, high = np.floor(tip - reach).astype(int), np.ceil(tip + reach).astype(int) + 1
    if (low < 0).any() or (high > photo.rgb.shape[1::-1]).any():
        return False
    changes, marked = _hints(photo, tip, ahead, aside)
    if not (changes or marked):
        return False
    crop = np.ascontiguousarray(photo.rgb[low[1] : high[1], low[0] : high[0]])
    grey = np.asarray(cv2.cvtColor(crop, cv2.COLOR_RGB2GRAY), np.uint8)
    light, here = np.asarray(srgb_to_linear(grey), np.float32), tip - low
    near = aside[aside < width_px / 2 + _EDGE_PX][::2]
    if changes and _steps(_sampled(light, _places(ahead, near, _TURNS) + here)):
        return True
    return marked and _strokes(_sampled(light, _places(ahead, aside, _TURNS[::2]) + here))


def _places(ahead: Array, aside: Array, turns: Array, deep_px: Array = _DEEP_PX) -> Array:
    """Places about a tip, px, shape (turns, 2 sides, aside, deep, 2)."""
    across = np.array([-ahead[1], ahead[0]])
    along = np.cos(turns)[:, None] * across + np.sin(turns)[:, None] * ahead
    on = np.cos(turns)[:, None] * ahead - np.sin(turns)[:, None] * across
    sides = np.stack([-aside, aside])[None, :, :, None, None]
    deep = deep_px[:, None]
    return np.asarray(sides * along[:, None, None, None] + deep * on[:, None, None, None])


def _sampled(light: Float, places: Array) -> Float:
    x, y = np.moveaxis(places.reshape(-1, len(_DEEP_PX), 2).astype(np.float32), -1, 0)
    seen = cv2.remap(light, x, y, cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE)
    return np.asarray(seen, np.float32).reshape(places.shape[:-1])


def _hints(photo: Photo, tip: Array, ahead: Array, aside: Array) -> tuple[bool, bool]:
    """Whether the light changes near the tip, and strokes may lie beyond it."""
    square = np.zeros(1)
    near = _places(ahead, aside[:_SIDES], square, _HINT_PX)[0].reshape(-1, 2)
    across = _places(ahead, aside, square, _HINT_PX[_BEHIND : _BEHIND + 1])[0].reshape(-1, 2)
    x, y = np.rint(np.concatenate([near, across]) + tip).astype(np.intp).T
    seen = np.exp(log_light(photo.rgb[y, x]))
    sides = seen[: len(near)].reshape(-1, len(_HINT_PX))
    behind, beyond = (float(middle(np.ravel(one))) for one in np.split(sides, [_BEHIND], 1))
    row = seen[len(near) :]
    dark = np.count_nonzero(row < DARK * float(middle(row)))
    return abs(beyond - behind) > _HINT * behind, bool(dark > STROKES)


def _steps(seen: Float) -> bool:
    """Whether the light changes at the tip along a straight edge, sharply, on both sides."""
    light = np.median(seen, axis=2)  # turns, sides, deep
    usual = np.median(light[..., _ZERO - 14 : _ZERO - 4], axis=-1, keepdims=True)
    light /= np.maximum(usual, 1e-3)
    for at in range(_ZERO - 2, _ZERO + 3):
        before, after = light[..., at - 8 : at - 2], light[..., at + 3 : at + 9]
        step = after.mean(axis=-1) - before.mean(axis=-1)
        near = (light[..., at + 2] - light[..., at - 2]) * np.sign(step)
        size = np.abs(step).min(axis=1)
        even = np.maximum(_drift(before), _drift(after)) < FLAT * size + GRAIN
        alike = np.sign(step[:, 0]) == np.sign(step[:, 1])
        sharp = near.min(axis=1) > SHARP * size
        if (alike & sharp & even & (size > STEP)).any():
            return True
    return False


def _drift(side: Float) -> Float:
    """How far the light changes by itself before or after the edge, the more of both sides."""
    changes = np.abs(side[..., :3].mean(axis=-1) - side[..., 3:].mean(axis=-1))
    return np.asarray(changes.max(axis=1), np.float32)


def _strokes(seen: Float) -> bool:
    """Whether narrow dark strokes begin at the tip on both sides, and none lies before."""
    for at in range(_ZERO - 12, _ZERO + 3, 2):
        before, after = (
            one.mean(axis=-1) / np.maximum(_of_each_side(one), 1e-3)
            for one in (seen[..., at - 9 : at - 3], seen[..., at + 3 : at + 9])
        )
        dark = after < DARK
        begins = np.count_nonzero(dark[..., 1:] & ~dark[..., :-1], axis=-1)
        narrow = dark.sum(axis=-1) * _EACH_PX <= WIDEST_PX * np.maximum(begins, 1)
        bare = before[..., _SKEW:].min(axis=-1) > BARE
        if ((begins >= STROKES) & narrow & bare).all(axis=1).any():
            return True
    return False


def _of_each_side(light: Float) -> Float:
    """The median of each side of each turn, shape (turns, 2, 1)."""
    every = light.reshape(*light.shape[:2], -1)
    half = every.shape[2] // 2
    return np.asarray(np.partition(every, half, axis=2)[..., half : half + 1], np.float32)
