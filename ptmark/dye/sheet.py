"""Crops of many blobs side by side on one sheet, so that every step is taken once for all.

A blob is a few thousand pixels, on which a call costs more than its work.
"""

from dataclasses import dataclass
from math import isqrt

import cv2
import numpy as np
import numpy.typing as npt

__all__ = ["Crop", "Place", "Sheet", "grouped", "in_fine", "laid", "lay_out"]

Bytes = npt.NDArray[np.uint8]
Mask = npt.NDArray[np.bool_]
Place = tuple[slice, slice]  # rows and columns

# Round each crop its own border mirrored, as the filters go beyond it. Where bare developer
# ends a crop there is no dye on either side, so that no more is needed.
_PAD = 6
_MOST_PIXELS = 300_000  # a sheet, so that memory stays bounded
_MOST_TALL = 2.0  # the tallest over the lowest crop of a sheet, so that little of it is empty


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Crop:
    """One blob's box, in fine px: ``step`` full-size px each.

    ``near`` of shape (H, W) is 1 where the blob may lie, ``around`` on bare developer round
    it, ``seeds`` on what makes a part of it count. ``near`` and ``seeds`` are kept as coarsely
    as they were found, ``factor`` fine px each, rounded up. ``origin`` is the photo's fine px
    at the top left of ``rgb``, shape (H, W, 3).
    """

    rgb: Bytes
    near: Bytes
    around: Bytes
    seeds: Bytes
    origin: tuple[int, int] = (0, 0)
    step: int = 1
    factor: int = 1


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Sheet:
    """Crops with the pixels and masks of all of them, as in `Crop`.

    ``places`` are where the crops lie, ``rooms`` the same with their mirrored borders;
    ``number`` of shape (H, W), int32, is the crop's place in ``crops`` within its room, -1
    outside all. Masks are 0 outside the places.
    """

    crops: tuple[Crop, ...]
    places: tuple[Place, ...]
    rooms: tuple[Place, ...]
    number: npt.NDArray[np.int32]
    rgb: Bytes
    near: Bytes
    around: Bytes
    seeds: Bytes


def in_fine(mask: Bytes, factor: int, shape: tuple[int, ...]) -> Bytes:
    """A coarse mask in fine px, cut to the crop: coarse sizes are rounded up."""
    size = (mask.shape[1] * factor, mask.shape[0] * factor)
    fine = cv2.resize(mask, size, interpolation=cv2.INTER_NEAREST)
    return np.asarray(fine[: shape[0], : shape[1]], np.uint8)


def lay_out(crops: list[Crop]) -> list[Sheet]:
    """Lay crops on as few sheets as hold them well, the tallest first."""
    return [laid(one) for one in grouped(crops)]


def grouped(crops: list[Crop]) -> list[tuple[Crop, ...]]:
    """The crops of each sheet, before any sheet takes memory."""
    sheets: list[list[Crop]] = []
    pixels = 0
    for crop in sorted(crops, key=lambda one: -one.rgb.shape[0]):
        height, width = (side + 2 * _PAD for side in crop.rgb.shape[:2])
        tallest = sheets[-1][0].rgb.shape[0] + 2 * _PAD if sheets else 0
        if tallest > _MOST_TALL * height or not sheets or pixels > _MOST_PIXELS:
            sheets.append([])
            pixels = 0
        sheets[-1].append(crop)
        pixels += height * width
    return [tuple(one) for one in sheets]


def laid(crops: tuple[Crop, ...]) -> Sheet:
    """One sheet of these crops."""
    rooms, shape = _shelves([one.rgb.shape[:2] for one in crops])
    rgb = np.zeros((*shape, 3), np.uint8)
    near, around, seeds = (np.zeros(shape, np.uint8) for _ in range(3))
    number = np.full(shape, -1, np.int32)
    places = []
    for i, (crop, room) in enumerate(zip(crops, rooms, strict=True)):
        place = tuple(slice(side.start + _PAD, side.stop - _PAD) for side in room)
        rgb[room] = cv2.copyMakeBorder(crop.rgb, *(_PAD,) * 4, cv2.BORDER_REFLECT_101)
        near[place] = in_fine(crop.near, crop.factor, crop.rgb.shape)
        seeds[place] = in_fine(crop.seeds, crop.factor, crop.rgb.shape)
        around[place] = crop.around
        number[room] = i
        places.append((place[0], place[1]))
    return Sheet(
        crops=crops,
        places=tuple(places),
        rooms=tuple(rooms),
        number=number,
        rgb=rgb,
        near=near,
        around=around,
        seeds=seeds,
    )


def _shelves(sizes: list[tuple[int, ...]]) -> tuple[list[Place], tuple[int, int]]:
    """Rooms for crops of these sizes in rows, and the shape that holds them all."""
    padded = [(height + 2 * _PAD, width + 2 * _PAD) for height, width in sizes]
    most = max(isqrt(sum(h * w for h, w in padded)), *(w for _, w in padded))
    rooms: list[Place] = []
    top = left = tall = across = 0
    for height, width in padded:
        if left + width > most:
            top, left, tall = top + tall, 0, 0
        rooms.append((slice(top, top + height), slice(left, left + width)))
        left, tall = left + width, max(tall, height)
        across = max(across, left)
    return rooms, (top + tall, across)
