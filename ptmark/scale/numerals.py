"""How many steps of a rule lie between its numerals, found without reading a digit.

Numerals are groups of marks of one height that come again after as many steps each, beyond the
ends of the strokes. What they hold differs from one to the next; that they come again does not.
"""

from typing import TYPE_CHECKING

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.scale.strip import BAND, Strip
from ptmark.scale.strokes import Strokes

if TYPE_CHECKING:
    from ptmark.photo import Photo

__all__ = ["BEYOND", "longest_px", "numeral_period", "straightened"]

Array = npt.NDArray[np.float64]

PERIODS = (4, 5, 8, 10, 16, 20, 32, 64)
_FINE = 6  # samples to a step
# In lengths of the longest stroke: how far beyond it numerals are looked for, the height of the
# rows looked at together, and the width that profiles are smoothed by. Common practice of rule
# makers, no source.
BEYOND = 2.2
_HEIGHTS, _SMOOTH, _COARSE = (0.3, 0.6), 0.12, 0.15
# How alike a row and its copy one period on are, how alike each period is to the others, how
# many may be unlike (worn, or without a numeral), and how many have to be seen. Own choice, by
# what `tests/benchmarks/README.md` tells of grain.
_ALIKE, _EACH, _UNLIKE, _LEAST = 0.5, 0.3, 1 / 6, 3
# Numerals mark as much as strokes do; what blur and JPEG leave beside bare strokes, far less.
_LEAST_MARKED = 0.25
_ENOUGH = 2.0  # of likeness, over all rows: tips of strokes and grain reach one
_OFF = 0.03  # share of a period by which its lag may miss a whole number of steps
# The shortest lag that is as good as this share of the best is the period: worn numerals may
# come again better after two of theirs. Between true ones there is nothing: half a period on, a
# row is less alike than this (-0.2 to -0.5 where numerals were right).
_FIRST, _BETWEEN = 0.5, 0.1


def numeral_period(photo: "Photo", strip: Strip, strokes: Strokes) -> int | None:
    """Steps from numeral to numeral along a rule; None where none are made out.

    The autocorrelation of how much is marked, over rows of several heights on either side of
    the strokes; the period that most of the rows tell.
    """
    reach = np.isfinite(strokes.u)
    longest = longest_px(strokes)
    fine_px = float(np.median(strokes.step_px)) / _FINE
    size = longest / fine_px  # of the longest stroke, samples
    rows = reach.mean(axis=0) > 0.5
    least = _LEAST_MARKED * float(
        _marked(photo, strip, strokes, strokes.v[rows][:: max(1, round(fine_px / BAND))]).mean()
    )
    low, high = np.percentile(strokes.v[np.nonzero(reach)[1]], [0.5, 99.5])
    away = np.arange(BAND, BAND + BEYOND * longest, fine_px)
    told: dict[int, float] = {}
    for v in (low - away, high + away):
        marked = _marked(photo, strip, strokes, v)
        for height in _HEIGHTS:
            tall = max(3, round(height * size))
            seen = cv2.blur(marked, (1, tall))[tall // 2 :: max(1, tall // 2)]
            smooth = cv2.GaussianBlur(seen, (0, 0), sigmaX=_SMOOTH * size, sigmaY=1e-3)
            for profile in smooth.astype(np.float64):
                bottom, top = np.percentile(profile, [5, 95])
                period, alike = _period_of(profile) if top - bottom >= least else (0, 0.0)
                told[period] = told.get(period, 0.0) + alike
    told.pop(0, None)
    if not told:
        return None
    best = max(told, key=told.__getitem__)
    surely = told[best] >= max(_ENOUGH, 2 / 3 * sum(told.values()))
    return best if surely else None


def _marked(
    photo: "Photo", strip: Strip, strokes: Strokes, v: Array
) -> npt.NDArray[np.float32]:
    """How much is marked along the strokes' own lines at v: a column each part of a step."""
    grey = straightened(photo, strip, strokes, v, _FINE)
    coarse = max(3.0, _COARSE * longest_px(strokes) * _FINE / float(np.median(strokes.step_px)))
    fine = cv2.GaussianBlur(grey, (0, 0), 1.0)
    return np.asarray(np.abs(fine - cv2.GaussianBlur(grey, (0, 0), coarse)), np.float32)


def longest_px(strokes: Strokes) -> float:
    """Length of the longest strokes, px."""
    return float(np.percentile(np.isfinite(strokes.u).sum(axis=1), 95)) * BAND


def straightened(
    photo: "Photo", strip: Strip, strokes: Strokes, v: Array, fine: int
) -> npt.NDArray[np.float32]:
    """Grey along the strokes' own lines at ``v``, shape (V, N); ``fine`` columns to a step."""
    i, band = np.nonzero(np.isfinite(strokes.u))
    number = np.arange(strokes.number[0], strokes.number[-1], 1 / fine)
    u = _u_at(strokes, i, band, number, v)
    places = strip.to_px(u, np.broadcast_to(v[:, None], u.shape)).astype(np.float32)
    seen = cv2.remap(photo.rgb, places[..., 0], places[..., 1], cv2.INTER_LINEAR)
    return np.asarray(cv2.cvtColor(seen, cv2.COLOR_RGB2GRAY), np.float32)


def _u_at(
    strokes: Strokes, i: npt.NDArray[np.intp], band: npt.NDArray[np.intp], n: Array, v: Array
) -> Array:
    """Place u of strokes' lines, and of parts of steps between, at each v: shape (V, N).

    ``n (1 + c.p) = a.p`` is linear in a and c, as in `ptmark.scale.rule`; solved for u.
    """
    at = np.column_stack([strokes.u[i, band], strokes.v[band]])
    middle, scale = at.mean(axis=0), float(at.std())
    own = strokes.number[i].astype(float)
    mean, spread = own.mean(), float(own.std())
    p, q = (at - middle) / scale, (own - mean) / spread
    rows = np.column_stack([p, np.ones(len(p)), -q[:, None] * p])
    a = np.linalg.lstsq(rows, q, rcond=None)[0]
    want, down = (n - mean) / spread, ((v - middle[1]) / scale)[:, None]
    along = (want * (1 + a[4] * down) - a[1] * down - a[2]) / (a[0] - want * a[3])
    return np.asarray(along * scale + middle[0])


def _period_of(profile: Array) -> tuple[int, float]:
    """Period, in steps, and how alike its copies are; (0, 0.0) where there is none."""
    none = (0, 0.0)
    alike = _alike(profile)
    inner = alike[1:-1]
    peaks = 1 + np.flatnonzero((inner >= alike[:-2]) & (inner > alike[2:]) & (inner >= _ALIKE))
    peaks = peaks[peaks >= 3 * _FINE]
    if len(peaks) == 0:
        return none
    lag = int(peaks[np.argmax(alike[peaks] >= _FIRST * alike[peaks].max())])
    period = min(PERIODS, key=lambda one: abs(one * _FINE - lag))
    if abs(period * _FINE - lag) > max(_OFF * period * _FINE, 1):
        return none
    if period // 2 in PERIODS and alike[lag // 2] > _BETWEEN:
        return none
    cells = len(profile) // (period * _FINE)
    if cells < _LEAST:
        return none
    cell = profile[: cells * period * _FINE].reshape(cells, -1)
    each = np.array([_corr(one, cell.sum(axis=0) - one) for one in cell])
    if (each < _EACH).mean() > _UNLIKE:
        return none
    return period, float(np.median(each))


def _alike(profile: Array) -> Array:
    """Autocorrelation by lag, of what overlaps, up to half of the profile's length."""
    x = profile - profile.mean()
    count = len(x)
    power = np.abs(np.fft.rfft(x, 2 * count)) ** 2
    shared = np.fft.irfft(power)[: count // 2]
    energy = np.concatenate([[0.0], np.cumsum(x**2)])
    lags = np.arange(count // 2)
    head, tail = energy[count - lags], energy[-1] - energy[lags]
    return np.asarray(shared / np.sqrt(np.maximum(head * tail, 1e-12)))


def _corr(one: Array, other: Array) -> float:
    a, b = one - one.mean(), other - other.mean()
    return float(a @ b / max(float(np.sqrt((a @ a) * (b @ b))), 1e-12))
