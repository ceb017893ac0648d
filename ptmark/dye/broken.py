"""Pale parts of broken lines: where called parts lie in a line, what goes on between them.

Strong JPEG leaves a narrow pale part next to no colour, so that the look for redness passes it
by. Alone it could be a scratch or a shade; in the line of two called parts it is a part of it.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import combinations

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.beside import mean_width
from ptmark.dye.closeup import close_up_about
from ptmark.dye.coarse import CoarseLook
from ptmark.dye.contour import Contour, contours
from ptmark.dye.contrast import log_light, redness
from ptmark.dye.fine import look_closely
from ptmark.dye.judge import WHERE_PALE, Sight, too_small, wrong_colour
from ptmark.dye.quick import sample
from ptmark.dye.sheet import Crop, lay_out
from ptmark.dye.tips import farthest
from ptmark.photo import Photo

__all__ = ["lies_on", "parts_between"]

Array = npt.NDArray[np.float64]
Float = npt.NDArray[np.float32]
Ints = npt.NDArray[np.intp]
Mask = npt.NDArray[np.bool_]

LEAST_RATIO = 2.5  # of length over width, of parts that tell a direction
MOST_TURN = np.cos(np.radians(20.0))  # between neighbours, and of the way from one to the other
MOST_GAP = 3.0  # over the longer of the two parts
LEAST_DARK, LEAST_SIGMAS = 0.03, 3.5  # log light against both sides
# Rise of the log red to green ratio, over the dark and over what it is along as long pieces of
# the developer beside it: dye of 30 % keeps 0.1 to 0.5 under strong JPEG; a weld's toe, a
# scratch or a stamped number has up to 0.09.
LEAST_RED, RED_SIGMAS = 0.10, 3.0
LEAST_LONG_PX, LEAST_WIDE_PX, MOST_WIDE_PX = 10, 1.5, 7
_ASIDE_PX = np.arange(-14, 15)  # places across a way that are looked at
_FAR = np.abs(_ASIDE_PX) > 6  # of them: so far from the straight way no part lies
_CLEAR_PX = 2  # of the ends of called parts
_FLANK_PX = 4  # between a part's middle and the developer beside it
_ROUNDS = 3
_PIECE = 256  # of a way, px: the box round the whole of a slanted one is mostly something else


@dataclass(frozen=True, slots=True, eq=False)
class _Piece:
    """A called part: its two ends, shape (2, 2) photo px, and its length and width, px."""

    ends: Array
    length: float
    width: float


def parts_between(
    photo: Photo, look: CoarseLook, called: list[Contour], photo_blur_px: float, sight: Sight
) -> list[Contour]:
    """Outlines of what goes on in the line of called parts, and is none of them.

    Parameters
    ----------
    photo, look
        As for `ptmark.dye.closeup.close_up`.
    called : list of Contour
        All that is called so far.
    photo_blur_px, sight
        As for all others of the photo.
    """
    pieces = [piece for one in called if (piece := _piece(one.outline_px)) is not None]
    taken = [one.outline_px for one in called]
    found: list[Contour] = []
    for _ in range(_ROUNDS):
        crops = []
        for start, end in _ways(pieces):
            for line in _dark_lines(photo, start, end):
                if _is_looked_at(line, look) and not any(lies_on(line, o) for o in taken):
                    crops.append(_crop(photo, look, line))
                    taken.append(line)
        new = list(_outlined(crops, photo_blur_px, sight))
        found += new
        pieces += [piece for one in new if (piece := _piece(one.outline_px)) is not None]
        if not new:
            break
    return found


def _piece(outline: Array) -> _Piece | None:
    one, other, length = farthest(outline)
    width = mean_width(outline, cv2.contourArea(outline.astype(np.float32)))
    if length < LEAST_RATIO * width:
        return None
    return _Piece(outline[[one, other]], length, width)


def _ways(pieces: list[_Piece]) -> Iterator[tuple[Array, Array]]:
    """From end to end of neighbours in a line, and as far on beyond both."""
    for one, other in combinations(pieces, 2):
        apart = np.hypot(*np.moveaxis(one.ends[:, None] - other.ends, -1, 0))
        i, j = np.divmod(int(apart.argmin()), 2)
        gap, longer = float(apart[i, j]), max(one.length, other.length)
        if gap > MOST_GAP * longer:
            continue
        start, end = one.ends[i], other.ends[j]
        ways = start - one.ends[1 - i], end - start, other.ends[1 - j] - end
        along = [way / max(float(np.hypot(*way)), 1e-9) for way in ways]
        if gap < LEAST_LONG_PX:  # too near to tell its direction
            along[1] = along[0]
        if min(along[0] @ along[2], along[0] @ along[1], along[1] @ along[2]) < MOST_TURN:
            continue
        if gap >= LEAST_LONG_PX:
            yield start, end
        reach = min(gap + longer, MOST_GAP * longer)
        yield one.ends[1 - i], one.ends[1 - i] - reach * along[0]
        yield other.ends[1 - j], other.ends[1 - j] + reach * along[2]


def _dark_lines(photo: Photo, start: Array, end: Array) -> Iterator[Array]:
    """Middle lines, shape (N, 2) photo px, of what is narrow, dark and red along a way."""
    length = float(np.hypot(*(end - start)))
    along = (end - start) / max(length, 1e-9)
    across = np.array([-along[1], along[0]])
    steps = np.arange(_CLEAR_PX, length - _CLEAR_PX)
    if not len(steps):
        return
    places = start + steps[None, :, None] * along + _ASIDE_PX[:, None, None] * across
    low, high = _box(places)
    height, width = photo.rgb.shape[:2]
    if (low < 0).any() or high[0] > width or high[1] > height:
        return
    pieces = [_seen_at(photo, places[:, i : i + _PIECE]) for i in range(0, len(steps), _PIECE)]
    dark, red = (_against_sides(np.hstack(one)) for one in zip(*pieces, strict=True))
    for columns, own in _narrow_and_dark(dark):
        if not _is_red(red, dark, own):
            continue
        weight = np.where(own, dark, 0)[:, columns]
        total = np.maximum(weight.sum(axis=0), 1e-9)
        middle = (weight * _ASIDE_PX[:, None]).sum(axis=0) / total
        yield start + steps[columns, None] * along + middle[:, None] * across


def _narrow_and_dark(dark: Float) -> Iterator[tuple[slice, Mask]]:
    """Columns and pixels of each narrow dark line in a strip that ends within it."""
    grain = _spread(dark[_FAR])
    mask = (dark > max(LEAST_DARK, LEAST_SIGMAS * grain)).astype(np.uint8)
    mask[_FAR] = 0
    count, names, stats, _ = cv2.connectedComponentsWithStats(mask)
    for name in range(1, count):
        left, long = int(stats[name, cv2.CC_STAT_LEFT]), int(stats[name, cv2.CC_STAT_WIDTH])
        area = float(stats[name, cv2.CC_STAT_AREA])
        whole = left > 0 and left + long < dark.shape[1]  # else the tail of a called part
        narrow = LEAST_WIDE_PX * long <= area <= MOST_WIDE_PX * long
        if long >= LEAST_LONG_PX and narrow and whole:
            yield slice(left, left + long), names == name


def _is_red(red: Float, dark: Float, own: Mask) -> bool:
    """Whether a line's own pixels are redder than as long pieces of what lies beside it."""
    long = int(own.any(axis=0).sum())
    along_it = np.asarray(cv2.blur(red, (long, 1)), np.float32)[_FAR]
    rise = float(red[own].mean()) - float(np.median(along_it))
    noise = _spread(along_it)
    return rise >= max(LEAST_RED * float(dark[own].mean()), RED_SIGMAS * noise)


def _spread(values: Float) -> float:
    """Robust standard deviation."""
    return 1.4826 * float(np.median(np.abs(values - np.median(values))))


def _box(places: Array) -> tuple[Ints, Ints]:
    """Bounds (x, y), half open, 2 px round a lattice of places of shape (A, L, 2)."""
    corners = places[:: len(places) - 1, :: max(1, places.shape[1] - 1)].reshape(-1, 2)
    low, high = np.floor(corners.min(axis=0)), np.ceil(corners.max(axis=0))
    return low.astype(np.intp) - 2, high.astype(np.intp) + 3


def _seen_at(photo: Photo, places: Array) -> tuple[Array, Array]:
    """Darkness and redness on a lattice of shape (A, L, 2), photo px, clear of its border."""
    low, high = _box(places)
    rgb = np.ascontiguousarray(photo.rgb[low[1] : high[1], low[0] : high[0]])
    dark = sample(-log_light(rgb).astype(np.float32), places - low)
    return dark, sample(redness(rgb), places - low)


def _against_sides(strip: Array) -> Float:
    """Smoothed along and across, less the mean of what lies to both sides."""
    smooth = cv2.GaussianBlur(strip.astype(np.float32), (0, 0), sigmaX=2.0, sigmaY=0.8)
    sides = [np.roll(smooth, by, axis=0) for by in (-_FLANK_PX - 1, _FLANK_PX + 1)]
    # the less dark of the two would take the rim of a shadow for a line
    return np.asarray(np.minimum(smooth - sides[0], smooth - sides[1]), np.float32)


def lies_on(line: Array, other: Array) -> bool:
    """Whether most of a line's or an outline's points lie on an outline, or beside it."""
    some = line[:: max(1, len(line) // 8)].astype(np.float32)
    polygon = other.astype(np.float32)
    near = [
        cv2.pointPolygonTest(polygon, (float(x), float(y)), measureDist=True) > -_FLANK_PX
        for x, y in some
    ]
    return 2 * sum(near) > len(near)


def _is_looked_at(line: Array, look: CoarseLook) -> bool:
    """Whether any of it lies where the look is: an examined area may end before."""
    rim = look.nearest(line)
    return bool(((rim >= 0) & (rim < look.reach.shape[::-1])).all(axis=1).any())


def _crop(photo: Photo, look: CoarseLook, line: Array) -> Crop:
    crop = close_up_about(photo, look, line)
    points, masks = [np.round(crop.fine(line)).astype(np.int32)], []
    for thick in (2 * _FLANK_PX + 1, 2):
        drawn = np.zeros(crop.rgb.shape[:2], np.uint8)
        cv2.polylines(drawn, points, isClosed=False, color=1, thickness=thick)
        masks.append(drawn)
    return replace(crop, near=masks[0], seeds=masks[1], factor=1)


def _outlined(crops: list[Crop], photo_blur_px: float, sight: Sight) -> Iterator[Contour]:
    for sheet in lay_out(crops):
        for one in contours(look_closely(sheet), photo_blur_px, float(LEAST_LONG_PX)):
            if _piece(one.outline_px) is None or too_small(one, sight):
                continue
            # a paler one keeps too little of its colour to tell rust by
            if one.contrast < WHERE_PALE or not wrong_colour(one):
                yield one
