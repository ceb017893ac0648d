"""Where to look: blobs redder than their surroundings, on a reduced picture.

Only the boxes that this pass gives are touched at full resolution later.
"""

from dataclasses import dataclass
from math import log2

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.contrast import redness
from ptmark.photo import Photo

__all__ = ["Blob", "CoarseLook", "look_coarsely"]

Float = npt.NDArray[np.float32]

COARSE_MEGAPIXELS = 3.1  # about, by powers of two; 1.35 MP loses 2 % of the finds
# Rise of the log red/green ratio above the background. Dye of 30 % of full amount raises it by
# 0.25; a hairline of 4 px blurred to half of its contrast still by 0.1.
SEED, REACH = 0.075, 0.045
SEED_SIGMAS, REACH_SIGMAS = 5.0, 3.0
MAX_BLOBS = 400
_STEP, _LOW = 1 / 200, -0.64  # background kept in 8 bit: 0.005 a step
_SHRINK = 4


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Blob:
    """A connected patch of the coarse look; ``box`` (x0, y0, x1, y1), coarse px, half open."""

    label: int
    box: tuple[int, int, int, int]
    pixels: int
    peak: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CoarseLook:
    """The blobs with their label picture; ``seeds`` is 1 where the rise itself makes a blob.

    ``factor`` is how many full-size px one coarse px spans; ``origin`` is the coarse px at the
    top left of ``labels``; ``haze`` the background's log red/green ratio above the developer's
    own white, median over the examined area.
    """

    blobs: tuple[Blob, ...]
    labels: npt.NDArray[np.int32]
    seeds: npt.NDArray[np.uint8]
    factor: int
    origin: tuple[int, int]
    noise: float
    haze: float
    too_many: int = 0


def look_coarsely(photo: Photo, area_px: npt.NDArray[np.float64] | None) -> CoarseLook:
    """Find red blobs inside the examined area (or the whole photo)."""
    finer = log2(photo.info.megapixels / COARSE_MEGAPIXELS) / 2 + 0.25
    factor = 2 ** min(3, max(0, int(finer)))
    small = photo.reduced(factor)
    height, width = small.shape[:2]
    x0, y0, x1, y1 = 0, 0, width, height
    inside = None
    if area_px is not None:
        polygon = (area_px + 0.5) / factor - 0.5
        margin = round(0.03 * width)
        x0, y0 = np.maximum(np.floor(polygon.min(axis=0)).astype(int) - margin, 0).tolist()
        x1, y1 = np.ceil(polygon.max(axis=0)).astype(int) + margin + 1
        x1, y1 = min(int(x1), width), min(int(y1), height)
        if x1 - x0 < 3 or y1 - y0 < 3:
            return _nothing(factor, (x0, y0))
        inside = np.zeros((y1 - y0, x1 - x0), np.uint8)
        cv2.fillPoly(inside, [np.round(polygon - (x0, y0)).astype(np.int32)], 1)
    ratio = redness(small[y0:y1, x0:x1])
    rise, background = _rise(ratio, max(5, round(0.05 * width / _SHRINK)) | 1)
    sample = rise[::5, ::5] if inside is None else rise[::5, ::5][inside[::5, ::5] > 0]
    middle = float(np.median(sample)) if sample.size else 0.0
    noise = 1.4826 * float(np.median(np.abs(sample - middle))) if sample.size else 0.0
    seed, reach = max(SEED, SEED_SIGMAS * noise), max(REACH, REACH_SIGMAS * noise)
    high = rise > seed
    if inside is not None:
        high &= inside > 0
    blobs, labels, too_many = _blobs(rise, high, reach)
    return CoarseLook(
        blobs=blobs,
        labels=labels,
        seeds=high.view(np.uint8),
        factor=factor,
        origin=(x0, y0),
        noise=noise,
        haze=_haze(background, inside),
        too_many=too_many,
    )


def _nothing(factor: int, origin: tuple[int, int]) -> CoarseLook:
    return CoarseLook(
        blobs=(),
        labels=np.zeros((1, 1), np.int32),
        seeds=np.zeros((1, 1), np.uint8),
        factor=factor,
        origin=origin,
        noise=0,
        haze=0,
    )


def _rise(ratio: Float, window: int) -> tuple[Float, Float]:
    """How far the ratio stands above its background, and the background at 1/4 size.

    Red wider than half the window would become its own background, so what stands out in a
    first pass is filled with its surroundings and the background taken again.
    """
    size = (max(1, ratio.shape[1] // _SHRINK), max(1, ratio.shape[0] // _SHRINK))
    small = np.asarray(cv2.resize(ratio, size, interpolation=cv2.INTER_AREA), np.float32)
    background = _background(small, window)
    overall = float(np.median(small))
    red = small > np.maximum(background, overall) + 2 * SEED
    wide = (small > overall + 4 * SEED) | red
    if wide.any():
        wide = cv2.dilate(wide.astype(np.uint8), np.ones((5, 5), np.uint8)) > 0
        filled = np.where(wide, np.float32(overall), small)
        weight = cv2.blur((~wide).astype(np.float32), (4 * window, 4 * window))
        mean = cv2.blur(np.where(wide, np.float32(0), small), (4 * window, 4 * window))
        near = weight > 0.05
        filled[wide & near] = (mean / np.maximum(weight, 1e-3))[wide & near]
        background = _background(filled, window)
    full = cv2.resize(
        background, (ratio.shape[1], ratio.shape[0]), interpolation=cv2.INTER_LINEAR
    )
    rise = cv2.GaussianBlur(cv2.subtract(ratio, full), (0, 0), 0.8)
    return rise, background  # type: ignore[return-value]


def _background(small: Float, window: int) -> Float:
    coded = np.clip((small - _LOW) / _STEP, 0, 255).astype(np.uint8)
    middle = cv2.medianBlur(coded, min(window, 255)).astype(np.float32)
    smooth = cv2.GaussianBlur(middle, (0, 0), window / 4)
    return smooth * np.float32(_STEP) + np.float32(_LOW)  # type: ignore[no-any-return]


def _blobs(
    rise: Float, high: npt.NDArray[np.bool_], reach: float
) -> tuple[tuple[Blob, ...], npt.NDArray[np.int32], int]:
    """Connected patches above ``reach`` that hold a pixel of ``high``."""
    mask = cv2.threshold(rise, reach, 1, cv2.THRESH_BINARY)[1].astype(np.uint8)
    count, named, stats, _ = cv2.connectedComponentsWithStats(mask, connectivity=8)
    labels = np.asarray(named, np.int32)
    rows, columns = np.nonzero(high)
    peaks = np.zeros(count, np.float32)
    np.maximum.at(peaks, labels[rows, columns], rise[rows, columns])
    names = np.flatnonzero(peaks)
    names = names[names > 0]
    order = names[np.argsort(-peaks[names], kind="stable")]
    blobs = []
    for label in order[:MAX_BLOBS]:
        left, top, width, height, pixels = (int(v) for v in stats[label])
        blobs.append(
            Blob(
                label=int(label),
                box=(left, top, left + width, top + height),
                pixels=pixels,
                peak=float(peaks[label]),
            )
        )
    return tuple(blobs), labels, max(0, len(order) - MAX_BLOBS)


def _haze(background: Float, inside: npt.NDArray[np.uint8] | None) -> float:
    """Dye of the pinkest fifth of the background over its whitest fifth, as a share of full."""
    values = background
    if inside is not None:
        small = cv2.resize(
            inside, (background.shape[1], background.shape[0]), interpolation=cv2.INTER_NEAREST
        )
        values = background[small > 0]
    if not values.size:
        return 0.0
    white, pink = np.percentile(values, [20, 80])
    return float(min(1.0, max(0.0, (pink - white) / 2.0)))
