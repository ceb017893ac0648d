"""Places of a photo that something covers, that bear no developer or that are overexposed.

Where a glove, a tape or a magnet lies over a place, or the metal is bare, that nothing is
called there proves nothing. The other photo tells how the developer looks beside the place.
"""

from collections.abc import Callable

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.exposure import FULL
from ptmark.photo import srgb_to_linear
from ptmark.series.frame import Frame

__all__ = ["is_hidden", "is_washed_out"]

Array = npt.NDArray[np.float64]
Bytes = npt.NDArray[np.uint8]

# Common practice, no source: white balance and shade between two photos depart by less.
_COLOUR, _DARK = 0.3, 0.7  # of the log of light: of red or blue to green; of all
_SHARE = 0.25  # of the place
_CLIPPED = 0.5  # of the place, as of an examined area: what is overexposed there is not judged
_BESIDE_MM = (1.5, 6.0)  # from the place, beyond its bleeding
_FLOOR = 0.02  # of linear light, below which grain is all there is
_LEAST = 4  # pixels, of the pictures looked at
_APART = 5  # of them, between the places that tell how the light of the two photos differs


def is_hidden(
    frame: Frame, around_px: Array, other: Frame, to_other: Callable[[Array], Array]
) -> bool:
    """Whether a quarter of a place or more is of another colour, or far darker.

    Parameters
    ----------
    frame : Frame
        The photo that is asked.
    around_px : ndarray of shape (N, 2)
        Hull of the place in its px.
    other : Frame
        A photo that shows an indication there; the developer about it is what is expected,
        in the light and white balance of ``frame``, which the whole surface tells.
    to_other : callable
        From px of ``frame`` to px of ``other``, shape (N, 2).

    Returns
    -------
    bool
        False where that cannot be told. What is as white as developer is not seen.
    """
    if not frame.view.look.size * other.view.look.size:
        return False
    inside, step = _inside(frame, around_px), frame.view.look_step
    away = cv2.distanceTransform(1 - inside, cv2.DIST_L2, cv2.DIST_MASK_PRECISE)
    px_per_mm = 1 / (frame.surface.mm_per_px() * step)
    near, far = (away <= max(1, mm * px_per_mm) for mm in _BESIDE_MM)
    spread = np.zeros_like(near)
    spread[::_APART, ::_APART] = True
    place = _log(frame.view.look[inside > 0])
    beside = _other(other, to_other, _places(far & ~near, step))
    all_over = _places(spread & ~near, step)
    there = _other(other, to_other, all_over)
    shown = np.isfinite(there[:, 0])
    beside = beside[np.isfinite(beside[:, 0])]
    if min(len(place), len(beside), int(shown.sum())) < _LEAST:
        return False
    change = np.median(_log(_at(frame, all_over[shown])) - there[shown], axis=0)
    off = place - np.median(beside, axis=0) - change
    coloured = (np.abs(off[:, [0, 2]] - off[:, [1]]) > _COLOUR).any(axis=1)
    return float((coloured | (off.mean(axis=1) < -_DARK)).mean()) > _SHARE


def is_washed_out(frame: Frame, around_px: Array) -> bool:
    """Whether half of a place or more is so bright that pale dye does not show there.

    It is the green that tells, whose lack tells dye from white.
    """
    place = frame.view.look[_inside(frame, around_px) > 0]
    return len(place) > 0 and float((place[:, 1] >= FULL).mean()) >= _CLIPPED


def _inside(frame: Frame, around_px: Array) -> Bytes:
    """1 within a hull in px of the photo, in its small picture; shape (H, W)."""
    inside = np.zeros(frame.view.look.shape[:2], np.uint8)
    if inside.size:
        small = (around_px + 0.5) / frame.view.look_step - 0.5
        cv2.fillPoly(inside, [np.rint(small).astype(np.int32)], 1)
    return inside


def _places(mask: npt.NDArray[np.bool_], step: float) -> Array:
    """Middles of a mask's pixels in px of the photo, shape (N, 2)."""
    rows, columns = np.nonzero(mask)
    return np.asarray((np.column_stack([columns, rows]) + 0.5) * step - 0.5, np.float64)


def _at(frame: Frame, places_px: Array) -> Bytes:
    """Colours of a photo at places that it shows, shape (N, 3)."""
    look = frame.view.look
    small = np.floor((places_px + 0.5) / frame.view.look_step).astype(int)
    x, y = np.clip(small, 0, np.array(look.shape[1::-1]) - 1).T
    return np.asarray(look[y, x], np.uint8)


def _other(other: Frame, to_other: Callable[[Array], Array], places_px: Array) -> Array:
    """Log of light of the other photo at places of the first; not a number beside it."""
    there = to_other(places_px)
    lit = _log(_at(other, np.nan_to_num(there)))
    shown = ((there >= 0) & (there <= np.array(other.view.size) - 1)).all(axis=1)
    lit[~shown] = np.nan
    return lit


def _log(colours: Bytes) -> Array:
    return np.asarray(np.log(srgb_to_linear(colours) + _FLOOR), np.float64)
