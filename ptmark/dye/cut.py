"""Tips cut off at the edge of something as light as the developer: a white or light grey rule.

What its light does not tell, its edge does, straight on both sides of the tip, or the strokes
of its graduation that begin there.
"""

from typing import NamedTuple

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.contrast import LUMA
from ptmark.dye.quick import median
from ptmark.photo import Photo, srgb_to_linear

__all__ = ["Hint", "hints", "is_cut"]

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
_WINDOW = 6  # of them taken together before and after an edge
# Where a first look tells whether more is worth its time: behind the tip and beyond it.
_HINT_PX, _BEHIND = np.append(np.arange(-18.0, -8.0), np.arange(8.0, 12.0)), 10
_NEAR_PX, _EDGE_PX, _FAR_PX, _EACH_PX = 5.0, 45.0, 80.0, 1.5  # to the sides
_ASIDE_PX = np.arange(_NEAR_PX, _FAR_PX, _EACH_PX)
_NEAREST = np.r_[0:6, len(_ASIDE_PX) : len(_ASIDE_PX) + 6]  # of both sides
_DARKEST = 0.003  # linear light told from none


class Hint(NamedTuple):
    """Whether more than a first look at a tip is worth its time."""

    changes: bool  # the light, near the tip
    marked: bool  # strokes may lie beyond it


def hints(photo: Photo, tips: Array, aheads: Array, widths_px: Array) -> list[Hint]:
    """What a first look at tips tells, of all at once.

    Parameters
    ----------
    photo : Photo
    tips, aheads : ndarray of shape (N, 2)
        Their places, photo px, and the unit vectors along which they point.
    widths_px : ndarray of shape (N,)
        Of the dye behind them.
    """
    across = np.stack([-aheads[:, 1], aheads[:, 0]], axis=1)[:, None, None]
    aside = widths_px[:, None] / 2 + _ASIDE_PX
    sides = np.concatenate([-aside, aside], axis=1)[:, :, None, None]
    row = np.array([_HINT_PX[_BEHIND]])
    near = _ahead_of(tips, aheads, sides[:, _NEAREST] * across, _HINT_PX)
    far = _ahead_of(tips, aheads, sides * across, row)
    size = np.array(photo.rgb.shape[1::-1])
    at = np.concatenate([near.reshape(len(tips), -1, 2), far.reshape(len(tips), -1, 2)], axis=1)
    x, y = np.moveaxis(np.clip(np.rint(at).astype(np.intp), 0, size - 1), -1, 0)
    luma = np.rint(photo.rgb[y, x] @ LUMA).astype(np.uint8)
    seen = np.maximum(srgb_to_linear(luma), _DARKEST)
    by_depth = seen[:, : near[0].size // 2].reshape(len(tips), -1, len(_HINT_PX))
    behind, beyond = (
        median(one.reshape(len(tips), -1)) for one in np.split(by_depth, [_BEHIND], axis=2)
    )
    strokes = seen[:, near[0].size // 2 :]
    dark = strokes < DARK * median(strokes)[:, None]
    changes = np.abs(beyond - behind) > _HINT * behind
    marked = np.count_nonzero(dark, axis=1) > STROKES
    return [Hint(bool(c), bool(m)) for c, m in zip(changes, marked, strict=True)]


def _ahead_of(tips: Array, aheads: Array, aside: Array, deep_px: Array) -> Array:
    """Places ``aside`` of each tip's way, shape (N, sides, 1, 2), at depths along it."""
    return np.asarray(
        tips[:, None, None] + aside + deep_px[:, None] * aheads[:, None, None], np.float64
    )


def is_cut(photo: Photo, tip: Array, ahead: Array, width_px: float, hint: Hint) -> bool:
    """Whether a tip ends at a long straight edge, or where strokes of a rule begin.

    Parameters
    ----------
    photo : Photo
    tip, ahead : ndarray of shape (2,)
        Its place, photo px, and the unit vector along which it points.
    width_px : float
        Of the dye behind it.
    hint : Hint
        What `hints` tells of it.
    """
    if not any(hint):
        return False
    aside = width_px / 2 + _ASIDE_PX
    reach = float(np.hypot(aside[-1], -_DEEP_PX[0])) + 2
    low, high = np.floor(tip - reach).astype(int), np.ceil(tip + reach).astype(int) + 1
    if (low < 0).any() or (high > photo.rgb.shape[1::-1]).any():
        return False
    crop = np.ascontiguousarray(photo.rgb[low[1] : high[1], low[0] : high[0]])
    grey = np.asarray(cv2.cvtColor(crop, cv2.COLOR_RGB2GRAY), np.uint8)
    light, here = np.asarray(srgb_to_linear(grey), np.float32), tip - low
    near = aside[aside < width_px / 2 + _EDGE_PX][::2]
    if hint.changes and _steps(_sampled(light, here, ahead, near, _TURNS)):
        return True
    return hint.marked and _strokes(_sampled(light, here, ahead, aside, _TURNS[::2]))


def _sampled(light: Float, tip: Array, ahead: Array, aside: Array, turns: Array) -> Float:
    """Light about a tip, shape (turns, 2 sides, aside, deep)."""
    across = np.array([-ahead[1], ahead[0]])
    along = np.cos(turns)[:, None] * across + np.sin(turns)[:, None] * ahead
    on = np.cos(turns)[:, None] * ahead - np.sin(turns)[:, None] * across
    sides = np.concatenate([-aside, aside])
    x, y = (
        (at + sides[:, None] * to[:, None, None]).astype(np.float32)
        + (_DEEP_PX * deep[:, None, None]).astype(np.float32)
        for at, to, deep in zip(tip, along.T, on.T, strict=True)
    )
    x, y = x.reshape(-1, len(_DEEP_PX)), y.reshape(-1, len(_DEEP_PX))
    seen = cv2.remap(light, x, y, cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE)
    return np.asarray(seen, np.float32).reshape(len(turns), 2, -1, len(_DEEP_PX))


def _steps(seen: Float) -> bool:
    """Whether the light changes at the tip along a straight edge, sharply, on both sides."""
    light = _of_each_side(seen)[:, :, 0]  # turns, sides, deep
    usual = median(light[..., _ZERO - 14 : _ZERO - 4])[..., None]
    light /= np.maximum(usual, 1e-3)
    at = np.arange(_ZERO - 2, _ZERO + 3)
    half = _means(light, _WINDOW // 2)
    before, after = half[..., [at - 8, at - 5]], half[..., [at + 3, at + 6]]
    step = after.mean(axis=2) - before.mean(axis=2)  # turns, sides, at
    near = (light[..., at + 2] - light[..., at - 2]) * np.sign(step)
    size = np.abs(step).min(axis=1)
    drift = np.maximum(np.ptp(before, axis=2), np.ptp(after, axis=2)).max(axis=1)
    alike = np.sign(step[:, 0]) == np.sign(step[:, 1])
    sharp = near.min(axis=1) > SHARP * size
    return bool((alike & sharp & (drift < FLAT * size + GRAIN) & (size > STEP)).any())


def _strokes(seen: Float) -> bool:
    """Whether narrow dark strokes begin at the tip on both sides, and none lies before."""
    light = _means(seen, _WINDOW)
    light /= np.maximum(_of_each_side(light), 1e-3)
    first = np.arange(_ZERO - 12, _ZERO + 3, 2)
    before, after = light[..., first - 9], light[..., first + 3]  # turns, sides, aside, first
    dark = after < DARK
    begins = np.count_nonzero(dark[:, :, 1:] & ~dark[:, :, :-1], axis=2)
    narrow = dark.sum(axis=2) * _EACH_PX <= WIDEST_PX * np.maximum(begins, 1)
    bare = before[:, :, _SKEW:].min(axis=2) > BARE
    return bool(((begins >= STROKES) & narrow & bare).all(axis=1).any())


def _means(values: Float, count: int) -> Float:
    """Means of so many neighbours along the last axis, in a tenth of `mean`'s time."""
    left = values.shape[-1] - count + 1
    total = values[..., :left].copy()
    for by in range(1, count):
        total += values[..., by : by + left]
    total /= count
    return total


def _of_each_side(light: Float) -> Float:
    """The median over the places aside, shape (turns, 2, 1, windows)."""
    half = light.shape[2] // 2
    return np.asarray(np.partition(light, half, axis=2)[:, :, half : half + 1], np.float32)
