"""Where to look: blobs redder than their surroundings, on a reduced picture.

Only the boxes that this pass gives are touched at full resolution later.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import log2

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.about import box_about, within_outline
from ptmark.dye.background import SHRINK, twice_background
from ptmark.dye.contrast import amount_of_ratio, log_ratio
from ptmark.dye.quick import fresh, quantiles, value_at
from ptmark.dye.reduced import STRIP, shrunk
from ptmark.memory import keep_freed_memory
from ptmark.photo import Photo

__all__ = ["Blob", "CoarseLook", "coarse_factor", "look_coarsely"]

Float = npt.NDArray[np.float32]
Bytes = npt.NDArray[np.uint8]
Ints = npt.NDArray[np.intp]

COARSE_MEGAPIXELS = 3.1  # about, by powers of two; 1.35 MP loses 2 % of the finds
# Rise of the log red/green ratio above the background. Dye of 30 % of full amount raises it by
# 0.25; a hairline of 4 px blurred to half of its contrast still by 0.1.
SEED, REACH = 0.075, 0.045
SEED_SIGMAS, REACH_SIGMAS = 5.0, 3.0
# Grain and mottle are told patch by patch: over all of the photo, paint, a bench or another
# light spreads the rise as well.
# A side in samples: of 16 they hold too little of mottle.
_PATCH, _LEAST_PATCHES = 32, 20
_MARGIN = 0.03  # of the photo's width, looked at around the examined area


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Blob:
    """A connected patch of the coarse look.

    ``rim`` of shape (N, 1, 2) is its border, ``box`` (x0, y0, x1, y1) its bounds, half open;
    both in px of the look's masks.
    """

    rim: npt.NDArray[np.int32]
    box: tuple[int, int, int, int]
    peak: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CoarseLook:
    """The blobs, the reddest first, with the masks that they stand in.

    ``reach`` is 1 where the picture is redder than its surroundings, ``seeds`` where that
    itself makes a blob, as it rises by ``least_rise``. ``factor`` is how many full-size px one
    coarse px spans, ``origin`` the coarse px at the top left of the masks. ``haze`` is the dye
    of the pinkest fifth of the background over its whitest fifth, as a share of full dye.
    """

    blobs: tuple[Blob, ...]
    reach: Bytes
    seeds: Bytes
    factor: int
    origin: tuple[int, int]
    haze: float
    least_rise: float = SEED

    def nearest(self, points: npt.NDArray[np.float64]) -> npt.NDArray[np.int32]:
        """The pixels of the masks nearest to points of shape (N, 2), photo px."""
        return np.round((points + 0.5) / self.factor - 0.5 - self.origin).astype(np.int32)


def look_coarsely(photo: Photo, area_px: npt.NDArray[np.float64] | None) -> CoarseLook:
    """Find red blobs inside the examined area (or the whole photo).

    A blob that reaches into the area is found whole, however far it lies beyond.
    """
    keep_freed_memory()
    factor = coarse_factor(photo)
    polygon = None if area_px is None else (area_px + 0.5) / factor - 0.5
    margin = round(_MARGIN * photo.rgb.shape[1] / factor)
    look = _look(photo, factor, polygon, margin)
    while polygon is not None and _goes_on(look, photo):
        margin *= 3
        look = _look(photo, factor, polygon, margin)
    return look


def coarse_factor(photo: Photo) -> int:
    """How many full-size px one of the coarse look spans: 1, 2, 4 or 8."""
    finer = log2(photo.info.megapixels / COARSE_MEGAPIXELS) / 2 + 0.25
    return int(2 ** min(3, max(0, int(finer))))


def _goes_on(look: CoarseLook, photo: Photo) -> bool:
    """Whether a blob ends at a side of what was looked at that is none of the photo's."""
    (left, top), (high, wide) = look.origin, look.reach.shape
    size = [-(-side // look.factor) for side in photo.rgb.shape[1::-1]]
    beyond = np.subtract(size, (left + wide, top + high))
    more = np.array([left, top, *beyond]) > 0
    return any((more & (np.array(one.box) == (0, 0, wide, high))).any() for one in look.blobs)


def _look(
    photo: Photo, factor: int, polygon: npt.NDArray[np.float64] | None, margin: int
) -> CoarseLook:
    """One look; ``polygon`` and ``margin``, how far to look beyond it, are in coarse px."""
    height, width = (-(-side // factor) for side in photo.rgb.shape[:2])
    x0, y0, x1, y1 = 0, 0, width, height
    inside = None
    if polygon is not None:
        low, high = box_about(polygon, margin, (width, height))
        (x0, y0), (x1, y1) = low.tolist(), high.tolist()
        if x1 - x0 < 3 or y1 - y0 < 3:
            nothing = np.zeros((1, 1), np.uint8)
            return CoarseLook(
                blobs=(),
                reach=nothing,
                seeds=nothing,
                factor=factor,
                origin=(x0, y0),
                haze=0.0,
            )
        inside = within_outline(polygon - low, (y1 - y0, x1 - x0))
    ratio, red = _ratio_and_red(photo, factor, (x0, y0, x1, y1))
    window = min(max(5, round(0.05 * width / SHRINK)) | 1, 255)  # OpenCV's widest median
    background = twice_background(ratio, red, window, SEED, inside)
    rise = _rise(ratio, background)
    weight = _trust(red)
    some = rise[::5, ::5] * cv2.LUT(np.ascontiguousarray(red[::5, ::5]), weight)
    noise = _grain(some if inside is None else np.where(inside[::5, ::5], some, np.inf))
    least = max(REACH, REACH_SIGMAS * noise), max(SEED, SEED_SIGMAS * noise)
    reach, seeds = _above(rise, _weighed(rise, red, weight), least)
    if inside is not None:
        seeds &= inside
    return CoarseLook(
        blobs=_blobs(rise, reach, seeds),
        reach=reach,
        seeds=seeds,
        factor=factor,
        origin=(x0, y0),
        haze=_haze(background, inside),
        least_rise=least[1],
    )


def _ratio_and_red(
    photo: Photo, factor: int, box: tuple[int, int, int, int]
) -> tuple[Float, Bytes]:
    """Redness and red codes of a box, coarse px; the picture they are of is never whole."""
    x0, y0, x1, y1 = box
    ratio = fresh((y1 - y0, x1 - x0), np.float32)
    red = fresh(ratio.shape, np.uint8)
    # one room for every strip: fresh memory would cost more than the work
    small = np.empty((STRIP, x1 - x0, 3), np.uint8)
    green, blue = (np.empty(small.shape[:2], np.uint8) for _ in range(2))
    light = np.empty(small.shape[:2], np.float32)
    for top in range(y0, y1, STRIP):
        low = min(top + STRIP, y1)
        strip = shrunk(photo, factor, (x0, top, x1, low), small[: low - top])
        rows, own = slice(top - y0, low - y0), slice(low - top)
        cv2.split(strip, [red[rows], green[own], blue[own]])
        log_ratio(red[rows], green[own], ratio[rows], light[own])
    return ratio, red


def _trust(red: Bytes) -> npt.NDArray[np.float32]:
    """Weight of the rise by red code, shape (256,): 1, less where dark and all grain.

    One step of an sRGB code moves the log of its light by 2.4 / (code + 14) (from the curve of
    IEC 61966-2-1), so below half the white's code the rise is weighed down in that measure.
    Dye leaves the red channel light, so that it keeps its weight.
    """
    white = value_at(0.5, np.ascontiguousarray(red[::8, ::8]))
    weight = np.minimum(1, (np.arange(256) + 14) / (0.5 * (white + 14)))
    return np.asarray(weight, np.float32)


def _grain(rise: Float) -> float:
    """Robust standard deviation of the rise within a patch, that of the middle one of all.

    Patches that hold an infinite value do not count; where few do, all is one.
    """
    side = min(_PATCH, *rise.shape)
    high, wide = (size // side for size in rise.shape)
    squares = rise[: high * side, : wide * side].reshape(high, side, wide, side)
    patches = squares.swapaxes(1, 2).reshape(-1, side**2)
    told = patches[np.isfinite(patches.sum(axis=1))]
    if len(told) < _LEAST_PATCHES:
        told = rise[np.isfinite(rise)][None]
    if not told.size:
        return 0.0
    off = np.abs(told - _middles(told)[:, None])
    return 1.4826 * float(np.median(_middles(off)))


def _middles(rows: Float) -> Float:
    half = rows.shape[1] // 2
    return np.asarray(np.partition(rows, half, axis=1)[:, half], np.float32)


def _weighed(rise: Float, red: Bytes, weight: npt.NDArray[np.float32]) -> Ints:
    """Weigh the rise in place, where it is high: lower it cannot be called anyway.

    Returns the flat index of where it was high.
    """
    flat, size = rise.ravel(), STRIP * rise.shape[1]
    strips = (flat[at : at + size] > REACH for at in range(0, flat.size, size))
    high = np.concatenate([i * size + np.flatnonzero(one) for i, one in enumerate(strips)])
    if high.size > rise.size // 8:
        rise *= cv2.LUT(red, weight)
    else:
        flat[high] = flat.take(high) * weight.take(red.take(high))
    return high


def _above(rise: Float, high: Ints, least: tuple[float, ...]) -> Bytes:
    """1 where the rise is above each of ``least``, which only those in ``high`` can be."""
    made = fresh((len(least), *rise.shape), np.uint8)
    made.fill(0)
    values = rise.ravel().take(high)
    for one, bound in zip(made, least, strict=True):
        one.ravel()[high[values > bound]] = 1
    return made


def _rise(ratio: Float, background: Float) -> Float:
    """How far the ratio stands above its background, smoothed; ``ratio`` is used up.

    From one array into the other: in place, OpenCV smooths a copy of its own.
    """
    size = (ratio.shape[1], ratio.shape[0])
    rise = fresh(ratio.shape, np.float32)
    cv2.resize(background, size, dst=rise, interpolation=cv2.INTER_LINEAR)
    cv2.subtract(ratio, rise, dst=ratio)
    return np.asarray(cv2.GaussianBlur(ratio, (5, 5), 0.8, dst=rise), np.float32)


def _blobs(rise: Float, reach: Bytes, seeds: Bytes) -> tuple[Blob, ...]:
    """Connected patches of ``reach`` that hold a pixel of ``seeds``, the reddest first.

    Borders are traced instead of labelling the picture: it is thirty times faster where most
    of it is white.
    """
    rims, _ = cv2.findContours(reach, cv2.RETR_EXTERNAL, cv2.CHAIN_APPROX_SIMPLE)
    if not rims or not cv2.countNonZero(seeds):
        return ()
    left, top, right, bottom = _bounds(rims)
    blobs = []
    for name in _seeded(seeds, left, top, right, bottom):
        x0, y0, x1, y1 = int(left[name]), int(top[name]), int(right[name]), int(bottom[name])
        rim = np.asarray(rims[name], np.int32)
        own = np.zeros((y1 - y0, x1 - x0), np.uint8)
        cv2.drawContours(own, [rim], 0, 1, cv2.FILLED, offset=(-x0, -y0))
        held_here = (own > 0) & (seeds[y0:y1, x0:x1] > 0)
        if held_here.any():
            peak = float(rise[y0:y1, x0:x1][held_here].max())
            blobs.append(Blob(rim=rim, box=(x0, y0, x1, y1), peak=peak))
    blobs.sort(key=lambda blob: (-blob.peak, blob.box))
    return tuple(blobs)


def _bounds(rims: Sequence[cv2.typing.MatLike]) -> tuple[Ints, ...]:
    """Left, top, right and bottom of each, half open."""
    every = np.concatenate(rims)[:, 0].astype(np.intp)
    starts = np.cumsum([0, *(len(rim) for rim in rims[:-1])])
    low, high = (way.reduceat(every, starts) for way in (np.minimum, np.maximum))
    return low[:, 0], low[:, 1], high[:, 0] + 1, high[:, 1] + 1


def _seeded(seeds: Bytes, *box: Ints) -> list[int]:
    """Which boxes (left, top, right, bottom) hold a seed, or may: one lies within 8 px."""
    rows, columns = np.divmod(np.flatnonzero(seeds.view(np.bool_)), seeds.shape[1])
    held = np.zeros([side // SHRINK + 1 for side in seeds.shape], np.uint8)
    held[rows // SHRINK, columns // SHRINK] = 1
    total = cv2.integral(held)
    left, top = box[0] // SHRINK, box[1] // SHRINK
    right, bottom = (box[2] - 1) // SHRINK + 1, (box[3] - 1) // SHRINK + 1
    count = total[bottom, right] - total[top, right] - total[bottom, left] + total[top, left]
    return np.flatnonzero(count > 0).tolist()


def _haze(background: Float, inside: Bytes | None) -> float:
    values = background
    if inside is not None:
        small = cv2.resize(
            inside, (background.shape[1], background.shape[0]), interpolation=cv2.INTER_NEAREST
        )
        values = background[small > 0]
    if not values.size:
        return 0.0
    white, pink = quantiles(values, (0.2, 0.8))
    return min(1.0, max(0.0, amount_of_ratio(float(np.exp(white - pink)))))
