"""Crops of many blobs side by side on one sheet, so that every step is taken once for all.

A blob is a few thousand pixels, on which a call costs more than its work.
"""

from dataclasses import dataclass
from math import isqrt

import cv2
import numpy as np
import numpy.typing as npt

__all__ = ["Crop", "Place", "Sheet", "blurred", "grouped", "in_fine", "laid", "lay_out"]

Bytes = npt.NDArray[np.uint8]
Float = npt.NDArray[np.float32]
Array = npt.NDArray[np.float64]
Place = tuple[slice, slice]  # rows and columns

# Between what may be dye in two crops: as far as a plateau is sought and smoothed, so that no
# blob knows of another. Where bare developer lies round it, a crop needs hardly any room more.
_APART, _LEAST_PAD = 10, 2
_MOST_PIXELS = 150_000  # a sheet: 36 bytes each are held at work, and more leave the cache
_WIDTHS = 1.0, 1.25, 1.6, 2.0  # of a sheet over a square's side: the one least empty is taken
_MOST_TALL = 4.0  # the tallest over the lowest crop of a sheet, so that little of it is empty


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

    def fine(self, points: Array) -> Array:
        """Points of shape (N, 2), photo px, in px of the crop."""
        return np.asarray((points + 0.5) / self.step - 0.5 - self.origin)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Sheet:
    """Crops with the pixels and masks of all of them, as in `Crop`.

    ``places`` are where the crops lie, ``rooms`` the same with empty borders; ``number`` of
    shape (H, W), int16, is the crop's place in ``crops`` within its room, -1
    outside all. Masks are 0 outside the places.
    """

    crops: tuple[Crop, ...]
    places: tuple[Place, ...]
    rooms: tuple[Place, ...]
    number: npt.NDArray[np.int16]
    rgb: Bytes
    near: Bytes
    around: Bytes
    seeds: Bytes

    def in_photo(self, number: int, points: npt.NDArray[np.number]) -> Array:
        """Sheet px of a crop, shape (N, 2), in photo px."""
        crop, (rows, columns) = self.crops[number], self.places[number]
        corner = np.array([columns.start, rows.start])
        return np.asarray((points - corner + crop.origin + 0.5) * crop.step - 0.5)


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
        height, width = crop.rgb.shape[:2]
        tallest = sheets[-1][0].rgb.shape[0] if sheets else 0
        if tallest > _MOST_TALL * height or not sheets or pixels > _MOST_PIXELS:
            sheets.append([])
            pixels = 0
        sheets[-1].append(crop)
        pixels += height * width
    return [tuple(one) for one in sheets]


def laid(crops: tuple[Crop, ...]) -> Sheet:
    """One sheet of these crops."""
    pads = [_pad(one) for one in crops]
    rooms, shape = _rooms(
        [
            (one.rgb.shape[0] + 2 * pad, one.rgb.shape[1] + 2 * pad)
            for one, pad in zip(crops, pads, strict=True)
        ]
    )
    rgb = np.zeros((*shape, 3), np.uint8)
    near, around, seeds = (np.zeros(shape, np.uint8) for _ in range(3))
    number = np.full(shape, -1, np.int16)
    places = []
    for i, (crop, room, pad) in enumerate(zip(crops, rooms, pads, strict=True)):
        place = tuple(slice(side.start + pad, side.stop - pad) for side in room)
        rgb[place] = crop.rgb
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


def blurred(values: Float, places: tuple[Place, ...], sigma_px: float) -> Float:
    """Gaussian blur within each place alone, its border mirrored; 0 outside of them."""
    made = np.zeros_like(values)
    for place in places:
        made[place] = cv2.GaussianBlur(values[place], (0, 0), sigma_px)
    return made


def _pad(crop: Crop) -> int:
    """Empty px round a crop that keep its blob away from others."""
    height, width = crop.rgb.shape[:2]
    x, y, across, down = (side * crop.factor for side in cv2.boundingRect(crop.near))
    return max(_LEAST_PAD, _APART - int(min(x, y, width - x - across, height - y - down)))


def _rooms(sizes: list[tuple[int, int]]) -> tuple[list[Place], tuple[int, int]]:
    """Rooms of these sizes, the tallest first, and the least shape tried that holds all."""
    square, widest = isqrt(sum(h * w for h, w in sizes)), max(w for _, w in sizes)
    tried = [_rooms_within(sizes, max(widest, int(square * by))) for by in _WIDTHS]
    return min(tried, key=lambda one: one[1][0] * one[1][1])


def _rooms_within(
    sizes: list[tuple[int, int]], most: int
) -> tuple[list[Place], tuple[int, int]]:
    """The same in rows at most so wide; what is lower goes into the gaps of rows above."""
    rooms: list[Place] = []
    gaps: list[tuple[int, int, int, int]] = []  # top, left, height and width
    bottom = across = 0
    for height, width in sizes:
        fits = (i for i, gap in enumerate(gaps) if height <= gap[2] and width <= gap[3])
        at = next(fits, None)
        if at is None:
            gaps.append((bottom, 0, height, most))
            bottom += height
        top, left, high, wide = gaps.pop(-1 if at is None else at)
        rooms.append((slice(top, top + height), slice(left, left + width)))
        gaps.append((top + height, left, high - height, width))
        gaps.append((top, left + width, high, wide - width))
        across = max(across, left + width)
    return rooms, (bottom, across)
