"""How far something as narrow and dark as a line goes on beyond its end, without its colour."""

from collections.abc import Sequence
from math import inf

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.contrast import log_light
from ptmark.dye.quick import sample
from ptmark.photo import Photo

__all__ = ["dark_ahead", "lies_ahead"]

Array = npt.NDArray[np.float64]
Float = npt.NDArray[np.float32]

# Of 138 ends of thin lines in 61 photos (`tests/benchmarks/unseen.py`) what goes on is 0.23 to
# 0.86 as dark as the line beyond five that read short by 9 to 27 px, one of them in grooves
# half as dark, and at most 0.19 beyond the others, but for five beside other dye or a toe.
AS_DARK, LEAST_DARK, OVER_BESIDE = 0.21, 0.03, 2.0
_AHEAD_PX = np.arange(3.0, 19.0)
_TURNS = np.radians([-20.0, -10.0, 0.0, 10.0, 20.0])
_SHIFTS_PX, _BESIDE_PX = np.arange(-2.0, 3.0), np.array([-22.0, -16.0, 16.0, 22.0])
_ACROSS_PX, _MIDDLE, _SIDES = np.arange(-9.0, 10.0), slice(8, 11), (slice(4), slice(-4, None))
_LONG = 0.3  # share of the way that may be paler: grain
_SMOOTH_PX, _REACH_PX, _CLEAR_PX = 0.8, 50, 3.0
_STEP_PX, FARTHEST_PX = 8.0, 120.0


def dark_ahead(photo: Photo, end: Array, out: Array, own: float) -> float:
    """How far a dark line goes on beyond an end, px; 0 where none does.

    Infinite where its own end is not within `FARTHEST_PX` or the photo.

    Parameters
    ----------
    photo : Photo
    end, out : ndarray of shape (2,)
        Its place, photo px, and the unit vector along which it points.
    own : float
        How much darker the line is than its surroundings, log light.
    """
    size = np.array(photo.rgb.shape[1::-1])
    first = np.floor(end).astype(int)
    if (first < _REACH_PX).any() or (first + _REACH_PX > size).any():
        return 0.0
    reach = _REACH_PX + int(FARTHEST_PX)
    low, high = np.maximum(first - reach, 0), np.minimum(first + reach, size)
    rgb = np.ascontiguousarray(photo.rgb[low[1] : high[1], low[0] : high[0]])
    dark = np.asarray(-log_light(rgb), np.float32)
    dark = np.asarray(cv2.GaussianBlur(dark, (0, 0), _SMOOTH_PX), np.float32)
    at, way, gone = end - low, out, 0.0
    while gone <= FARTHEST_PX:
        ahead, turned = _darkest(dark, at, way, 0.0)
        if ahead < max(AS_DARK * own, LEAST_DARK):
            return gone
        if ahead < OVER_BESIDE * max(_darkest(dark, at, way, by)[0] for by in _BESIDE_PX):
            return gone
        at, way, gone = at + _STEP_PX * turned, turned, gone + _STEP_PX
        if (at < _REACH_PX).any() or (at + low + _REACH_PX > size).any():
            break
    return inf


def lies_ahead(end: Array, out: Array, dye: Sequence[Array]) -> bool:
    """Whether one of some outlines (N, 2), photo px, lies beyond an end.

    A line may bend back before its own.
    """
    return any(_is_ahead(end, out, one) for one in dye)


def _darkest(dark: Float, end: Array, out: Array, aside: float) -> tuple[float, Array]:
    """How dark the darkest narrow line ahead is, so far aside, and which way it goes."""
    along = np.stack([np.cos(_TURNS), np.sin(_TURNS)], axis=-1) @ np.array(
        [[out[0], out[1]], [-out[1], out[0]]]
    )
    across = np.stack([-along[:, 1], along[:, 0]], axis=-1)
    wide = _ACROSS_PX + _SHIFTS_PX[:, None] + aside  # (shifts, across)
    places = (
        end
        + _AHEAD_PX[:, None, None] * along[:, None, None, None]
        + wide[:, None, :, None] * across[:, None, None, None]
    )
    seen = sample(dark, places)  # turns, shifts, ahead, across
    sides = np.maximum(*(seen[..., side].mean(axis=-1) for side in _SIDES))
    rise = seen[..., _MIDDLE].mean(axis=-1) - sides
    of_each = np.quantile(rise, _LONG, axis=-1).max(axis=1)
    best = int(of_each.argmax())
    return float(of_each[best]), along[best]


def _is_ahead(end: Array, out: Array, outline: Array) -> bool:
    rim = outline.astype(np.float32)
    places = (end + _AHEAD_PX[2::5, None] * out).tolist()
    return any(
        cv2.pointPolygonTest(rim, (x, y), measureDist=True) > -_CLEAR_PX for x, y in places
    )
