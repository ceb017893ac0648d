"""A pipe's silhouette found in the photo: a straight edge near a line, sub-pixel.

Light is taken linear and looked at across the line on many profiles. The edge is the line
along which light changes most, all the way in one sense; then each profile's steepest place
is measured and a line is fitted that bears profiles with something in the way.
"""

from dataclasses import dataclass
from typing import TYPE_CHECKING

import cv2
import numpy as np
import numpy.typing as npt

if TYPE_CHECKING:
    from ptmark.photo import Photo

__all__ = ["SeenEdge", "edge_near", "edges_beside"]

Array = npt.NDArray[np.float64]

_PROFILES = 240
_SIGMA_PX = 1.5  # of the Gaussian whose slope finds the edge: a sharp photo's own blur
# What a limb's shade, the developer's grain and a pipe that is not quite straight leave in the
# place of a fitted edge. Own estimate, no source.
_FLOOR_PX = 0.4
# An edge is clear where this share of its profiles shows it, and where it is this much
# stronger than the next one apart from it. Own choice, tried on rendered photos.
_LEAST_SHARE, _STRONGER = 0.6, 1.3
# Of its length at least this much has to lie in the picture.
_LEAST_SEEN = 0.4
_LEAST_STEP = 0.004  # of full scale a pixel, linear
_LUMA = np.array([0.2126, 0.7152, 0.0722], np.float32)  # IEC 61966-2-1
_TUKEY = 4.685  # biweight constant for 95 % efficiency (Huber and Ronchetti 2009, 4.8)


@dataclass(frozen=True, slots=True, eq=False)
class SeenEdge:
    """Two points of shape (2, 2) on an edge, px, whose offsets from it are independent.

    ``u_px`` is the standard uncertainty of either. Two such points lie one standard deviation
    of the profiles' places to either side of their mean.
    """

    points_px: Array
    u_px: float


def edge_near(photo: "Photo", ends: Array, reach_px: float) -> SeenEdge | None:
    """The edge within ``reach_px`` of a line with ends (2, 2); None where none is clear."""
    length = float(np.hypot(*(ends[1] - ends[0])))
    at = np.linspace(0.02, 0.98, min(_PROFILES, int(length))) * length
    off = np.arange(-np.ceil(reach_px) - 4, np.ceil(reach_px) + 5)
    slope = _slopes(photo, ends, at, off)
    ways = np.arange(-np.ceil(reach_px), np.ceil(reach_px) + 1)
    start, end = (each.ravel() for each in np.meshgrid(ways, ways, indexing="ij"))
    line = _strongest(slope, off, start, end, at / length)
    return None if line is None else _fitted(slope, off, at, line, ends, length)


def edges_beside(photo: "Photo", axis: Array) -> tuple[Array, Array] | None:
    """Rough ends (2, 2) of the edges to either side of a line along a pipe; None if unclear.

    Found on a reduced picture; the stronger edge has to stand out on each side, and the line
    to lie between them within a ratio of 1 to 2.
    """
    height, width = photo.rgb.shape[:2]
    length = float(np.hypot(*(axis[1] - axis[0])))
    at = np.linspace(0.02, 0.98, min(_PROFILES // 2, int(length))) * length
    step = max(1.0, float(np.hypot(width, height)) / 1200)
    across = _across(axis)
    found = []
    for side in (-1, 1):
        most = max(_room(end, side * across, width, height) for end in axis)
        ways = np.arange(0.05 * length, most - 3 * step, step)
        if len(ways) < 10:
            return None
        off = side * np.arange(ways[0] - 4 * step, most, step)
        off = off if side > 0 else off[::-1]
        slope = _slopes(photo, axis, at, off, sigma=_SIGMA_PX * step)
        start, end = (each.ravel() for each in np.meshgrid(ways, ways, indexing="ij"))
        alike = np.abs(np.log(end / start)) < 0.3
        line = _strongest(slope, off, side * start[alike], side * end[alike], at / length)
        if line is None:
            return None
        found.append(axis + np.outer(line, across))
    gaps = [abs(float((edge.mean(0) - axis.mean(0)) @ across)) for edge in found]
    return (found[0], found[1]) if 0.5 <= gaps[0] / gaps[1] <= 2 else None


def _across(ends: Array) -> Array:
    along = (ends[1] - ends[0]) / np.hypot(*(ends[1] - ends[0]))
    return np.array([-along[1], along[0]])


def _room(point: Array, way: Array, width: int, height: int) -> float:
    """How far one can go from a point before the picture ends, px."""
    ends = np.where(way > 0, np.array([width - 1, height - 1]) - point, -point)
    with np.errstate(divide="ignore", invalid="ignore"):
        steps = np.where(np.abs(way) > 1e-9, ends / way, np.inf)
    return float(steps.min())


def _slopes(
    photo: "Photo", ends: Array, at: Array, off: Array, *, sigma: float = _SIGMA_PX
) -> Array:
    """Change of linear light across the line, a px: (profiles, offsets), NaN outside."""
    along = (ends[1] - ends[0]) / np.hypot(*(ends[1] - ends[0]))
    across = _across(ends)
    places = ends[0] + at[:, None, None] * along + off[:, None] * across
    height, width = photo.rgb.shape[:2]
    low = np.maximum(np.floor(places.min(axis=(0, 1))).astype(int) - 2, 0)
    high = np.minimum(np.ceil(places.max(axis=(0, 1))).astype(int) + 3, [width, height])
    box = (int(low[0]), int(low[1]), int(high[0]), int(high[1]))
    light = photo.linear(box) @ _LUMA
    spacing = float(off[1] - off[0])
    if spacing > 1:
        light = cv2.GaussianBlur(light, (0, 0), spacing / 2).astype(np.float32)
    x, y = ((places[..., i] - low[i]).astype(np.float32) for i in (0, 1))
    strip = cv2.remap(light, x, y, cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE)
    wide = int(np.ceil(3 * sigma / spacing))
    t = np.arange(-wide, wide + 1) * spacing
    kernel = t * np.exp(-(t**2) / (2 * sigma**2))
    kernel = kernel / (kernel @ t)
    slope = cv2.filter2D(strip, -1, kernel[None], borderType=cv2.BORDER_REPLICATE)
    inside = (places >= 0).all(axis=2) & (places <= [width - 1, height - 1]).all(axis=2)
    return np.where(inside, slope, np.nan)


def _strongest(
    slope: Array, off: Array, start: Array, end: Array, share: Array
) -> Array | None:
    """Offsets at both ends of the line along which light changes most, if it is clear."""
    spacing = float(off[1] - off[0])
    seen_there = np.isfinite(slope)
    slope = np.where(seen_there, slope, 0.0)
    full = max(float(np.median(np.abs(slope).max(axis=1))), _LEAST_STEP)
    clipped = np.clip(slope / full, -1, 1)
    total, count = np.zeros(len(start)), np.zeros(len(start))
    for row, there, t in zip(clipped, seen_there, share, strict=True):
        at = np.rint((start * (1 - t) + end * t - off[0]) / spacing).astype(int)
        at = np.clip(at, 0, len(off) - 1)
        total += row[at]
        count += there[at]
    score = np.abs(total) / np.maximum(count, _LEAST_SEEN * len(share))
    best = int(score.argmax())
    apart = np.maximum(np.abs(start - start[best]), np.abs(end - end[best]))
    # Lines that cross the best one share a part of its edge.
    beside = (start - start[best]) * (end - end[best]) > 0
    others = beside & (apart > 5 * max(abs(spacing), _SIGMA_PX))
    if score[best] < _STRONGER * score[others].max(initial=0.0):
        return None
    line = np.array([start[best], end[best]])
    places = (line[0] * (1 - share) + line[1] * share - off[0]) / spacing
    at = np.clip(np.rint(places).astype(int), 0, len(off) - 1)
    rows = np.flatnonzero(seen_there[np.arange(len(share)), at])
    strong = slope[rows, at[rows]] * np.sign(total[best]) > max(0.3 * full, _LEAST_STEP)
    clear = len(rows) >= _LEAST_SEEN * len(share) and strong.mean() >= _LEAST_SHARE
    return line if clear else None


def _fitted(
    slope: Array, off: Array, at: Array, line: Array, ends: Array, length: float
) -> SeenEdge | None:
    """Robust line through each profile's steepest place near ``line``."""
    slope = np.nan_to_num(slope, nan=0.0)
    rough = line[0] + (line[1] - line[0]) * at / length
    near = np.abs(off[None] - rough[:, None]) <= 3
    sense = np.sign(np.where(near, slope, 0).sum())
    height = np.where(near, sense * slope, -np.inf)
    peak = np.clip(height.argmax(axis=1), 1, len(off) - 2)
    rows = np.arange(len(at))
    left, middle, right = (sense * slope[rows, peak + i] for i in (-1, 0, 1))
    bend = left - 2 * middle + right
    part = np.where(bend < 0, (left - right) / np.where(bend < 0, 2 * bend, 1.0), 0.0)
    place = off[peak] + np.clip(part, -1, 1)
    good = (middle > 0.4 * np.median(middle)) & (bend < 0)
    if good.sum() < 20:
        return None
    weight = good.astype(float)
    fit, spread = np.zeros(2), 1.0
    for _ in range(8):
        mean = (weight * at).sum() / weight.sum()
        rows_of = np.column_stack([np.ones_like(at), at - mean])
        root = np.sqrt(weight)
        fit = np.linalg.lstsq(rows_of * root[:, None], place * root, rcond=None)[0]
        left_over = place - rows_of @ fit
        spread = max(1.4826 * float(np.median(np.abs(left_over[good]))), 0.05)
        weight = good * np.clip(1 - (left_over / (_TUKEY * spread)) ** 2, 0, None) ** 2
    count = weight.sum()
    mean = (weight * at).sum() / count
    apart = float(np.sqrt((weight * (at - mean) ** 2).sum() / count))
    along = (ends[1] - ends[0]) / length
    t = np.array([mean - apart, mean + apart])
    points = (
        ends[0] + np.outer(t, along) + np.outer(fit[0] + fit[1] * (t - mean), _across(ends))
    )
    # Neighbouring profiles share pixels and grain: one in four is taken as independent.
    u = float(np.hypot(spread * np.sqrt(2 * 4 / count), _FLOOR_PX))
    return SeenEdge(points, u)
