"""The tips of outlines: thin lines taper and fade, and their ends are less sure than flanks.

Places are in sheet px, as in `ptmark.dye.contour`.
"""

from math import ceil, sqrt

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.fine import CloseLook
from ptmark.dye.quick import highest, sample
from ptmark.dye.rings import Rings

__all__ = ["drawn_out", "fading", "farthest", "own_ridge"]

Float = npt.NDArray[np.float32]
Array = npt.NDArray[np.float64]

_FADES_PX = 6.0  # how far a tip may fade to either side of its end, twice that outwards
_STEP_PX = 0.5
# How a fading tip is followed, see `drawn_out`. Own choices, by tips of rendered photos that
# taper to a third of their width and others that do not.
_LAG = 2.25  # blurs farther in: 0.99 of the plateau of a line that ends sharply (Gaussian)
_LEAST_LEFT = 0.4  # of what is seen there, however steeply it falls
_SHARP = 0.3  # blurs between the earliest and the latest end of what ends sharply
_GRAINS = 3.0  # what is less may be grain
_GRAINY = 0.3, 0.9  # that over the level sought: nothing of an end is lost in grain, and a blur
_RISES = 0.15  # of what is seen at the end: something else begins there
_LONG = 2.0  # widths: what is shorter has a rim and no tips
_FOLLOWED_PX, _FINE_PX = 18.0, 0.25
_PAST_PX = np.arange(5.0)  # beyond the end: where no developer is seen, a cover may hide it


def own_ridge(relative: Float, close: CloseLook, crops: npt.NDArray[np.intp]) -> Float:
    """The ridge beside each pixel of these crops over the plateau, shape of ``relative``.

    Where a thin line tapers, the plateau from farther inside stands above its own ridge: flanks
    sought at a high share of that would meet, and the tip be lost.
    """
    ridge = np.empty_like(relative)
    for i in set(crops.tolist()):
        room = close.sheet.rooms[i]
        ridge[room] = highest(relative[room], ceil(float(close.seen_px[i]) / 2))
    return ridge


def fading(relative: Float, ends: Array, target: Array) -> Array:
    """Half the way on which ends of greatest lengths fade from 60 to 40 % contrast, shape (R,).

    ``relative`` is amount over plateau, ``ends`` of shape (R, 2, 2) the two ends of each
    outline in sheet px and ``target`` of shape (R, 2) the share at which each lies. Followed
    along the length, where a pale tip fades over more px than the normals reach.
    """
    way = ends - ends[:, ::-1]  # outwards at each end
    size = np.hypot(way[..., 0], way[..., 1])[..., None]
    outward = way / np.maximum(size, 1e-9)
    beside = np.stack([-outward[..., 1], outward[..., 0]], axis=-1)
    steps = np.arange(-_FADES_PX, 2 * _FADES_PX, _STEP_PX)[:, None, None]
    lines = [ends + steps[..., None] * outward + side * beside for side in (-1, 0, 1)]
    values = sample(relative, np.stack(lines)).max(axis=0) / target  # (steps, R, 2)
    gone = _falls_below(values, 0.8) - _falls_below(values, 1.2)
    return np.where(size[:, 0, 0] < 1, 0, np.maximum(gone, 0).sum(axis=1) * _STEP_PX / 4)


def drawn_out(
    close: CloseLook,
    points: Array,
    at: npt.NDArray[np.intp],
    rings: Rings,
    blur_px: Array,
    grain: Array,
) -> tuple[Array, Array]:
    """Outlines with the ends of their greatest lengths where fading tips end.

    A line that tapers or fades out has at its end less than half of the plateau farther in.
    It ends earliest at half of what is seen of it a few blurs farther in, latest at half of
    what that would come to if it fell on as before; where it goes under in grain first, it may
    go on by its slope, but no farther than those blurs. The end is put midway, and half of what
    lies between is its doubt; where grain comes near the level sought, a blur more.

    Parameters
    ----------
    close : CloseLook
    points : ndarray of shape (N, 2)
        Outlines at half of the plateau, in ``rings``.
    at : ndarray of shape (R, 2)
        Which of them are the ends.
    blur_px, grain : ndarray of shape (R,)
        Standard deviations of the blur along the line, px, and of the grain. Tips are not
        followed where that blur is 0.

    Returns
    -------
    points : ndarray of shape (N, 2)
    doubt : ndarray of shape (R,)
        Half-width of where an end may lie, the mean of both ends, px.
    """
    if not blur_px.any():
        return points, np.zeros(len(at))
    tips, outlines = points[at], rings.apart(points)
    inner = np.array(
        [
            [own[np.hypot(*(own - tip).T) <= reach].mean(axis=0) for tip in pair]
            for own, pair, reach in zip(outlines, tips, 3 * blur_px + 3, strict=True)
        ]
    )
    outward = tips - inner
    outward /= np.maximum(np.hypot(outward[..., :1], outward[..., 1:]), 1e-9)
    beside = np.stack([-outward[..., 1], outward[..., 0]], axis=-1)
    steps = np.arange(-2 * _LAG * float(blur_px.max()) - 1, _FOLLOWED_PX, _FINE_PX)
    lines = [tips + steps[:, None, None, None] * outward + side * beside for side in (-1, 0, 1)]
    values = sample(close.amount, np.stack(lines)).max(axis=0)  # (steps, R, 2)
    first, last, level = _ends_of(
        values, int((steps < 0).sum()), blur_px[:, None], grain[:, None]
    )
    between = np.maximum(last - first - _SHARP * blur_px[:, None], 0)
    none, whole = _GRAINY
    lost = np.clip((_GRAINS * grain[:, None] / level - none) / (whole - none), 0, 1)
    doubt = np.hypot(between / 2, lost * blur_px[:, None])
    x, y = (tips[:, 0] - tips[:, 1]).T
    line = x**2 + y**2 > _LONG * np.abs(rings.signed_area(points))
    past = last + 2 * blur_px[:, None] + _PAST_PX[:, None, None]
    bare = sample(close.bare.astype(np.float32), tips + past[..., None] * outward).mean(axis=0)
    free = line[:, None] & (bare > 0.5)
    by = (first + between / 2) * free
    made = points.copy()
    for i, (start, count) in enumerate(zip(rings.starts, rings.counts, strict=True)):
        own = slice(start, start + count)
        for k in np.flatnonzero(by[i]):
            away = np.hypot(*(points[own] - tips[i, k]).T)
            share = np.maximum(1 - away / (1.5 * blur_px[i]), 0)
            made[own] += share[:, None] * by[i, k] * outward[i, k]
    return made, (doubt * free).mean(axis=1)


def _ends_of(
    values: Array, start: int, blur_px: Array, grain: Array
) -> tuple[Array, Array, Array]:
    """Earliest and latest end of profiles, shape (S, R, 2), px outwards from step ``start``.

    Then the level sought at that step.
    """
    lag = _LAG * blur_px / _FINE_PX
    one, two = (_farther_in(values, by * lag)[start:] for by in (1, 2))
    seen = values[start:]
    lost = seen < _GRAINS * grain
    lowest = np.minimum.accumulate(seen, axis=0)
    rises = seen > lowest + np.maximum(_RISES * seen[0], _GRAINS * grain)
    risen = _first(rises)
    levels = one / 2, np.clip(2 * one - two, _LEAST_LEFT * one, one) / 2
    stops = [_first((seen < level) | lost) for level in levels]
    first, latest = (
        np.where(risen < stop, 0, np.maximum(stop - 0.5, 0) * _FINE_PX) for stop in stops
    )
    at = np.minimum(stops[1], len(seen) - 1).astype(np.intp)[None]
    here, before, level = (np.take_along_axis(of, at, 0)[0] for of in (seen, one, levels[1]))
    goes_on = np.clip(here / np.maximum(before - here, 1e-6), 0, 1) * _LAG * blur_px
    latest = latest + np.where((here >= level) & (latest > 0), goes_on, 0)
    return first, np.maximum(first, latest), np.maximum(levels[0][0], 1e-6)


def _first(told: npt.NDArray[np.bool_]) -> Array:
    """Where each column is first true, in steps; their number where it never is."""
    return np.where(told.any(axis=0), told.argmax(axis=0), len(told)).astype(np.float64)


def _farther_in(values: Array, by: Array) -> Array:
    """Values of shape (S, R, 2) so many steps before, shape (R, 1)."""
    places = np.maximum(np.arange(len(values))[:, None, None] - by[None], 0)
    low = np.broadcast_to(np.floor(places).astype(np.intp), values.shape)
    part = places - low
    high = np.minimum(low + 1, len(values) - 1)
    inner, outer = (np.take_along_axis(values, one, 0) for one in (low, high))
    return np.asarray(inner + part * (outer - inner))


def farthest(points: Array) -> tuple[int, int, float]:
    """Which two of the points, shape (N, 2), lie farthest apart, and how far."""
    hull = cv2.convexHull(points.astype(np.float32), returnPoints=False).ravel()
    x, y = points[hull].T
    squares = (x[:, None] - x) ** 2 + (y[:, None] - y) ** 2
    one, other = divmod(int(squares.argmax()), len(hull))
    return int(hull[one]), int(hull[other]), sqrt(squares[one, other])


def _falls_below(values: Array, level: float) -> Array:
    """Where values of shape (N, …) first fall below a level after their peak, in steps."""
    count = len(values)
    high = values >= 1.2
    start = high.argmax(axis=0)  # 0 where none is
    below = (values < level) & (np.arange(count)[:, None, None] >= start)
    first = np.where(below.any(axis=0), below.argmax(axis=0), count - 1)
    before = np.maximum(first - 1, 0)
    inner, outer = (np.take_along_axis(values, one[None], 0)[0] for one in (before, first))
    place = first - 1 + (inner - level) / np.maximum(inner - outer, 1e-6)
    return np.where(below.any(axis=0), np.where(first > start, place, start), count - 1.0)
