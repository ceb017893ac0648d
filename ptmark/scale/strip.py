"""A straightened strip of a photo along a line, and the dark strokes that cross it.

Strip frame: u along the line in px from its first end, v across it in px, positive to the
right of the way along (down for a line that runs right). One sample a pixel either way.
"""

from dataclasses import dataclass
from typing import TYPE_CHECKING

import cv2
import numpy as np
import numpy.typing as npt

if TYPE_CHECKING:
    from ptmark.photo import Photo

__all__ = ["BAND", "Dips", "Strip", "dips_of", "strip_along"]

Array = npt.NDArray[np.float64]
Float = npt.NDArray[np.float32]

BAND = 4  # rows averaged into one profile: thin against a stroke, enough against noise
# How far to look beyond the ends, and to either side, in line lengths; px bounds to the latter.
_BEYOND, _LEAST_BEYOND = 0.25, 300
_ASIDE, _LEAST_ASIDE, _MOST_ASIDE = 0.12, 120, 240
# A dip that counts: this share of the band's strongest ones, and of its noise.
_SHARE, _NOISE = 0.35, 4.0


@dataclass(frozen=True, slots=True, eq=False)
class Strip:
    """Grey values of shape (2 * half + 1, columns), NaN outside the photo; u of column 0."""

    grey: Float
    first_u: float
    half: int
    origin: Array
    along: Array
    across: Array

    def to_px(self, u: Array, v: Array) -> Array:
        """Photo px of places on the strip, shape (N, 2)."""
        u, v = np.broadcast_arrays(u, v)
        return np.asarray(self.origin + u[..., None] * self.along + v[..., None] * self.across)

    def band_v(self) -> Array:
        """Middle row of each band, v."""
        count = self.grey.shape[0] // BAND
        return np.arange(count) * BAND + (BAND - 1) / 2 - self.half

    def bands(self) -> Float:
        """Mean of each `BAND` rows, shape (bands, columns)."""
        count = self.grey.shape[0] // BAND
        rows = self.grey[: count * BAND].reshape(count, BAND, -1)
        return np.asarray(rows.mean(axis=1))

    def at(self, u: Array, v: Array) -> Array:
        """Grey at places of one shape, bilinear; NaN outside."""
        x = (u - self.first_u).astype(np.float32)
        y = np.broadcast_to(v + self.half, x.shape).astype(np.float32)
        got = cv2.remap(self.grey, x, y, cv2.INTER_LINEAR, borderValue=float("nan"))
        return np.asarray(got, np.float64).reshape(x.shape)


def strip_along(photo: "Photo", ends: Array, wider: int = 1) -> Strip:
    """The strip about a line with ends of shape (2, 2), px; ``wider`` times the usual width."""
    away = ends[1] - ends[0]
    length = float(np.hypot(*away))
    along = away / length
    across = np.array([-along[1], along[0]])
    half = wider * int(np.clip(_ASIDE * length, _LEAST_ASIDE, _MOST_ASIDE))
    beyond = int(max(_BEYOND * length, _LEAST_BEYOND))
    start = ends[0] - beyond * along - half * across
    size = (int(length) + 2 * beyond, 2 * half + 1)
    to_photo = np.column_stack([along, across, start])
    flags = cv2.INTER_LINEAR | cv2.WARP_INVERSE_MAP
    # Grey by luma: the green that carries most of it is the sharpest channel of a photo.
    colour = cv2.warpAffine(photo.rgb, to_photo, size, flags=flags)
    seen: Float = cv2.cvtColor(colour, cv2.COLOR_RGB2GRAY).astype(np.float32)
    corners = np.array([[u, v] for u in (0, size[0] - 1) for v in (0, size[1] - 1)], float)
    last = np.array([photo.info.width - 1, photo.info.height - 1])
    at = corners @ to_photo[:, :2].T + to_photo[:, 2]
    if not ((at >= 0) & (at <= last)).all():
        u, v = np.meshgrid(np.arange(size[0]), np.arange(size[1]))
        x, y = to_photo[:, :2] @ np.array([u.ravel(), v.ravel()]) + to_photo[:, 2:]
        inside = (x >= 0) & (y >= 0) & (x <= last[0]) & (y <= last[1])
        seen[~inside.reshape(seen.shape)] = np.nan
    return Strip(seen, float(-beyond), half, ends[0], along, across)


@dataclass(frozen=True, slots=True, eq=False)
class Dips:
    """Dark strokes of one profile: their places (column, sub-pixel) and depths, in order."""

    at: Array
    depth: Array


def dips_of(profile: Float) -> Dips:
    """Dark strokes that stand out of a profile of grey values."""
    nothing = Dips(np.zeros(0), np.zeros(0))
    sound = np.isfinite(profile)
    if sound.sum() < 16:
        return nothing
    first, last = np.flatnonzero(sound)[[0, -1]]
    part = np.nan_to_num(profile[first : last + 1], nan=float(np.nanmean(profile)))
    smooth = cv2.GaussianBlur(part[None], (0, 0), 0.8)[0].astype(np.float64)
    noise = 1.48 * float(np.median(np.abs(np.diff(part, 2)))) / np.sqrt(6)
    steps = np.flatnonzero(np.diff(smooth))  # level ground between strokes turns nowhere
    slope = np.sign(np.diff(smooth)[steps])
    turns = steps[1:][slope[1:] * slope[:-1] < 0]
    if len(turns) < 5:
        return nothing
    swing = np.abs(np.diff(smooth[turns]))
    least = max(_SHARE * float(np.percentile(swing, 90)), _NOISE * noise / 2)
    valleys, peaks = _zigzag(smooth, turns, least)
    if len(valleys) < 3:
        return nothing
    at, depth = _centres(smooth, valleys, peaks)
    return Dips(at + first, depth)


def _zigzag(smooth: Array, turns: npt.NDArray[np.int64], least: float) -> tuple[Array, Array]:
    """Valleys between peaks that are at least so much higher; one more peak than valleys."""
    kept: list[int] = [int(turns[0])]
    values = smooth[turns].tolist()
    rising, best, best_at = True, values[0], int(turns[0])
    kept.clear()
    for value, at in zip(values, turns.tolist(), strict=True):
        if (value > best) if rising else (value < best):
            best, best_at = value, at
        elif abs(value - best) >= least:
            kept.append(best_at)
            rising, best, best_at = not rising, value, at
    kept.append(best_at)  # even places are peaks, odd ones valleys
    if len(kept) % 2 == 0:
        kept.append(len(smooth) - 1)
    marks = np.array(kept)
    return marks[1::2], marks[0::2]


def _centres(smooth: Array, valleys: Array, peaks: Array) -> tuple[Array, Array]:
    """Centre of mass of each valley below half its depth, and the depth."""
    at, depth = np.empty(len(valleys)), np.empty(len(valleys))
    for i, bottom in enumerate(valleys.tolist()):
        left, right = int(peaks[i]), int(peaks[i + 1])
        level = (min(smooth[left], smooth[right]) + smooth[bottom]) / 2
        low, high = bottom, bottom
        while low > left and smooth[low - 1] < level:
            low -= 1
        while high < right and smooth[high + 1] < level:
            high += 1
        at[i] = _weighed(smooth, low, high, level)
        depth[i] = 2 * (level - smooth[bottom])
    return at, depth


def _weighed(smooth: Array, low: int, high: int, level: float) -> float:
    """Middle between the two places where the profile crosses the level, by interpolation."""
    begin = low - (level - smooth[low]) / max(smooth[low - 1] - smooth[low], 1e-9)
    end = high + (level - smooth[high]) / max(
        smooth[min(high + 1, len(smooth) - 1)] - smooth[high], 1e-9
    )
    if not (low - 1 <= begin <= low and high <= end <= high + 1):
        return (low + high) / 2
    return float((begin + end) / 2)
