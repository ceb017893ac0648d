"""Where blobs lie: the plateau beside each pixel, and the parts of the mask at half of it."""

from collections.abc import Iterator
from math import ceil
from typing import NamedTuple

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.fine import CloseLook
from ptmark.dye.hue import core_contrast, is_hidden
from ptmark.dye.level import plateau

__all__ = ["Part", "part_within", "parts_of", "ridge_near", "stride_of"]

Float = npt.NDArray[np.float32]
Array = npt.NDArray[np.float64]
Ints = npt.NDArray[np.int32]
Bytes = npt.NDArray[np.uint8]

_LEAST_RADIUS = 3
_DENSE = 150  # vertices; a longer chain is told well by every second or third of them,
_SPARSE_PX = 6.0  # where its width is this or twice this: normals round a narrower tip need all


class Part(NamedTuple):
    """A part of the mask: its crop, its border of shape (N, 2), sheet px, and its pixels.

    ``contrast`` is its `core_contrast`; ``pale`` where that `is_hidden`.
    """

    number: int
    border: Ints
    pixels: int
    contrast: float
    pale: bool


def ridge_near(close: CloseLook, blur_px: Array, *, pale_too: bool) -> Float:
    """The plateau as far as an edge lies from its ridge, no farther.

    At a tip that tapers a plateau taken from farther inside would cut the tip off. Unless
    ``pale_too``, it is left as it is in crops that hold nothing but what `is_hidden`.
    """
    ridge = close.ridge.copy()
    for i, room in enumerate(close.sheet.rooms):
        peak, grain = float(close.peak[i]), float(close.grain[i])
        if not pale_too and is_hidden(peak, grain, close.amount[room].size):
            continue
        widest = ceil(float(close.width[close.sheet.places[i]].max()) / 2)
        radius = max(_LEAST_RADIUS, min(round(2.5 * blur_px[i]), widest) + 1)
        if radius != close.radius[i]:
            ridge[room] = np.maximum(plateau(close.amount[room], radius), close.floor[i])
    return ridge


def parts_of(close: CloseLook, relative: Float, least_px: Array) -> Iterator[Part]:
    """The parts at half contrast that hold a seed.

    ``relative`` is amount over plateau, ``least_px`` of shape (N,) how far a part of each crop
    has to reach at least, sheet px.
    """
    mask = (relative > 0.5).view(np.uint8) & close.sheet.near
    found, _ = cv2.findContours(mask, cv2.RETR_EXTERNAL, cv2.CHAIN_APPROX_NONE)
    for chain in found:
        border = np.asarray(chain, np.int32).reshape(-1, 2)
        x, y, width, height = cv2.boundingRect(border)
        number = int(close.sheet.number[border[0, 1], border[0, 0]])
        seeds = close.sheet.seeds[y : y + height, x : x + width]
        if max(width, height) < least_px[number] or not cv2.hasNonZero(seeds):
            continue
        filled = _filled(border)
        if cv2.hasNonZero(filled & seeds):
            yield _part(close, number, border, filled)


def part_within(close: CloseLook, number: int, outline: Array) -> Part:
    """What lies within one of several outlines of a mask, shape (N, 2), sheet px."""
    last = np.array(close.amount.shape[::-1]) - 1
    border = np.clip(np.round(outline), 0, last).astype(np.int32)
    return _part(close, number, border, _filled(border))


def _filled(border: Ints) -> Bytes:
    """1 within a border, in its box."""
    x, y, width, height = cv2.boundingRect(border)
    filled = np.zeros((height, width), np.uint8)
    cv2.drawContours(filled, [border], 0, 1, cv2.FILLED, offset=(-x, -y))
    return filled


def _part(close: CloseLook, number: int, border: Ints, filled: Bytes) -> Part:
    x, y, width, height = cv2.boundingRect(border)
    inside = close.amount[y : y + height, x : x + width][filled > 0]
    contrast = core_contrast(inside)
    pale = is_hidden(contrast, float(close.grain[number]), len(inside))
    return Part(number, border, len(inside), contrast, pale)


def stride_of(border: Ints) -> int:
    """Of how many vertices of a border of shape (N, 2) one is taken."""
    width = 2 * cv2.contourArea(border) / max(cv2.arcLength(border, closed=True), 1.0)
    by_count = 1 + (len(border) > _DENSE) + (len(border) > 6 * _DENSE)
    return min(by_count, 1 + int(width / _SPARSE_PX))
