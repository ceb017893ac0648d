"""Thin lines that the file's colours cut into pieces: what goes on from a called one's end.

JPEG keeps the colour of narrow pale dye in some of its squares and not in others. Where it is
lost, the rest of a line has little but its darkness, as ink has, and is a blob of its own.
"""

from collections.abc import Sequence
from dataclasses import replace
from math import hypot, inf
from typing import NamedTuple

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.about import within_outline
from ptmark.dye.ahead import dark_ahead, lies_ahead
from ptmark.dye.beside import mean_width
from ptmark.dye.contour import Contour
from ptmark.dye.contrast import log_light, redness
from ptmark.dye.dull import DULL, INKY
from ptmark.dye.edge import LEVEL_DIVISOR
from ptmark.dye.judge import HAIRLINE_PX, OF_STEP, Sight
from ptmark.dye.quick import sample
from ptmark.dye.tips import farthest
from ptmark.photo import Photo

__all__ = ["made_whole"]

Array = npt.NDArray[np.float64]
Float = npt.NDArray[np.float32]
Bytes = npt.NDArray[np.uint8]
Ints = npt.NDArray[np.int_]

# Bounds of our own, by 40 photos of one renderer and 22 of another: of thin pieces, called or
# left out so, seven pairs lie on one crack, with at most 13.9 px between their ends, turns of
# 35 and 24 degrees, and red at most 0.73 of green; parts of broken lines lie 19 px and more
# apart, and nothing else in line with one meets all. Nor does farther off, as far as the longer
# is long: all that is so in 83 photos is one part of a broken line.
MOST_APART_PX = 16.0  # a square of JPEG's colour at half the resolution
MOST_TURN = np.cos(np.radians([40.0, 30.0]))  # of the other piece, and of the way to its end
LEAST_RATIO = 1.5, 2.5  # of length over width, and of the longer of the two
MOST_TIMES = 2.0  # how much wider one may be than the other
MOST_RED_TAKEN = 0.78  # of green: more is ink
# So near they are one, as squares of 8 px lose their rims too; farther where what lies between
# is half as red as both: 1.6 times in a crack, 0.0 between parts of a broken one in a crease,
# which is half as dark as they are there. Or where it has lost its colour, but is as dark:
# 0.92 to 1.23 times in five cracks, at most 0.05 between parts of four broken lines.
TOUCHES_PX, AS_RED, LEAST_RED, AS_DARK, LEAST_DARK = 4.0, 0.5, 0.05, 0.75, 0.03
# Of two that are called and touch, with dye that is hardly there at a pinch between, as in two
# cracks of 172 photos. Across a pen's stroke nothing stands out of its sides.
WIDEST_PX = 12.0
PALE = 0.6  # of full dye; denser dye keeps its colour
# How far such a line may go on beyond its end, and beyond where its dark ends, half-widths of
# rectangles: in 22 the truth did by 7 px (13 once), else 10 px beyond that; 8 and 10 in others.
# With U of this share of the length no end shows: of 6 one lay 5.4 mm out of U, below 1 of 13.
ENDS_PX, DARK_ENDS_PX, MOST_UNSEEN = 5.0, 8.0, 0.6
_MAY_GO_ON = INKY, DULL, OF_STEP
_TIP_PX, _WIDTHS = 6.0, 3.0  # how much of a tip tells its direction
_ACROSS_PX, _MIDDLE, _SIDES = np.arange(-9.0, 10.0), slice(7, 12), (slice(3), slice(16, 19))
_REACH_PX, _SMOOTH_PX = 12, 1.0


class _Piece(NamedTuple):
    """A thin line: its two ends and the ways out of them, shape (2, 2), length, width, px."""

    one: Contour
    ends: Array
    out: Array
    length: float
    width: float


def made_whole(
    photo: Photo,
    called: Sequence[Contour],
    left_out: Sequence[tuple[Contour, str]],
    sight: Sight,
) -> tuple[list[Contour], list[Contour], list[tuple[Contour, str]]]:
    """What is called, the thin lines of which no end shows, and what is left out still.

    Thin lines that lost colour are made whole where they are one line, else called with the
    parts in line with them. Their ends' shift tells how far they may go on; of those that may
    so be far longer, or lead to another, no end shows.

    Parameters
    ----------
    photo : Photo
    called : sequence of Contour
    left_out : sequence of (Contour, str)
        What is not called, and why.
    sight : Sight
        As for all others of the photo.
    """
    rest = [one for one, why in left_out if why in _MAY_GO_ON and _is_reddish(one, sight)]
    own = [piece for one in called if (piece := _piece(one, WIDEST_PX)) is not None]
    pool = own + [piece for one in rest if (piece := _piece(one)) is not None]
    made, pool, gone = _lines(photo, own, pool)
    left = {id(one) for one in rest} - gone
    thin = [piece for piece in pool if piece.width < HAIRLINE_PX]
    lines = [piece for piece in thin if id(piece.one) not in left]
    near = (other for piece in lines for other in _near(piece, thin) if id(other.one) in left)
    parts = {id(other.one): other for other in near}
    wide = [one for one in pool if one.width >= HAIRLINE_PX and id(one.one) in made]
    made |= {name: part.one for name, part in parts.items()}
    every = [one.outline_px for one in called if id(one) not in gone]
    of_all = [*every, *(one.outline_px for one in made.values())]
    known: dict[int, Contour] = {}
    for piece in [*lines, *wide, *parts.values()]:
        name = id(piece.one)
        whole = name in made
        more = _unseen(photo, piece, of_all if whole else every, whole=whole)
        if more:
            made[name] = piece.one
        if 0 < 2 * more / LEVEL_DIVISOR < MOST_UNSEEN * piece.length:
            shift = hypot(piece.one.end_shift_px, more / 2)
            known[name] = replace(piece.one, end_shift_px=shift)
    gone |= made.keys()
    kept = [one for one in called if id(one) not in gone]
    least = [one for name, one in made.items() if name not in known]
    rest_out = [pair for pair in left_out if id(pair[0]) not in gone]
    return [*kept, *known.values()], least, rest_out


def _lines(
    photo: Photo, queue: list[_Piece], pool: list[_Piece]
) -> tuple[dict[int, Contour], list[_Piece], set[int]]:
    """Lines made of pieces, by id, the pool with these in place of those, and what is gone.

    Each begins with one of the queue.
    """
    queue = [*queue]
    gone: set[int] = set()
    made: dict[int, Contour] = {}
    while queue:
        piece = queue.pop(0)
        if id(piece.one) in gone:
            continue
        near = _near(piece, pool, MOST_APART_PX)
        other = next((one for one in near if _goes_on(photo, piece, one)), None)
        if other is None:
            continue
        whole = _joined(piece, other)
        pool = [one for one in pool if one is not piece and one is not other]
        for one in (piece, other):
            gone.add(id(one.one))
            made.pop(id(one.one), None)
        made[id(whole)] = whole
        again = _piece(whole, WIDEST_PX)
        if again is not None:
            queue.append(again)
            pool.append(again)
    return made, pool, gone


def _unseen(photo: Photo, piece: _Piece, dye: list[Array], *, whole: bool) -> float:
    """How much of a line may lie beyond its ends, px; infinite where no end shows.

    0 of one that was not made ``whole`` where it is no pale line that goes on dark beyond an
    end; where that leads to other dye it is known what goes on, but not whether it is one.
    """
    pale = piece.one.contrast <= PALE and piece.length >= LEAST_RATIO[1] * piece.width
    if not whole and not pale:
        return 0.0
    rim = piece.one.outline_px
    rgb, low = _about(photo, rim)
    own = _rise(np.asarray(-log_light(rgb), np.float32), rim - low)
    far = []
    for end, out in zip(piece.ends, piece.out, strict=True):
        gone = dark_ahead(photo, end, out, own)
        if gone and lies_ahead(end, out, dye):
            gone = inf if whole else 0.0
        far.append(gone)
    if not whole and not any(far):
        return 0.0
    return sum(one + DARK_ENDS_PX if one else ENDS_PX for one in far)


def _is_reddish(one: Contour, sight: Sight) -> bool:
    red, green, _ = one.taken_light.tolist()
    return red < MOST_RED_TAKEN * green and one.red_codes > sight.colour_step


def _piece(one: Contour, widest_px: float = HAIRLINE_PX) -> _Piece | None:
    """It, where it is a thin line."""
    width = mean_width(one.outline_px, cv2.contourArea(one.outline_px.astype(np.float32)))
    if width >= widest_px:
        return None
    *at, length = farthest(one.outline_px)
    if length < LEAST_RATIO[0] * width:
        return None
    ends = one.outline_px[at]
    away = np.hypot(*np.moveaxis(one.outline_px - ends[:, None], -1, 0))
    near = away <= _TIP_PX + _WIDTHS * width
    inner = np.stack([one.outline_px[own].mean(axis=0) for own in near])
    return _Piece(one, ends, _unit(ends - inner), length, width)


def _unit(ways: Array) -> Array:
    return np.asarray(ways / np.maximum(np.hypot(ways[..., :1], ways[..., 1:]), 1e-9))


def _near(piece: _Piece, pool: list[_Piece], most_px: float | None = None) -> list[_Piece]:
    """What of the pool goes on in the direction of a piece, the nearest first.

    At most so far from its end, or as far as the longer of the two is long.
    """
    ends = np.stack([one.ends for one in pool])  # (N, 2, 2)
    apart = np.hypot(*np.moveaxis(piece.ends[:, None] - ends[:, None], -1, 0))  # own, theirs
    own, theirs = np.divmod(apart.reshape(-1, 4).argmin(axis=1), 2)
    far = ends[np.arange(len(pool)), 1 - theirs]
    begin, out = piece.ends[own], piece.out[own]
    along = far - ends[np.arange(len(pool)), theirs]
    turns = [np.einsum("ij,ij->i", out, _unit(way)) for way in (along, far - begin)]
    longer = [max(piece.length, one.length) for one in pool]
    least = apart.reshape(-1, 4).min(axis=1)
    near = least <= (longer if most_px is None else most_px)
    told = np.flatnonzero(near & (turns > MOST_TURN[:, None]).all(axis=0))
    nearest = told[np.argsort(least[told], kind="stable")]  # or one between two would be left
    return [pool[at] for at in nearest.tolist() if _alike(piece, pool[at])]


def _alike(piece: _Piece, other: _Piece) -> bool:
    longer = max((piece, other), key=lambda one: one.length)
    narrow, wide = sorted((piece.width, other.width))
    straight = longer.length >= LEAST_RATIO[1] * longer.width
    return other is not piece and straight and wide <= MOST_TIMES * narrow


def _goes_on(photo: Photo, piece: _Piece, other: _Piece) -> bool:
    """Whether two pieces touch, or what lies between is about as red or as dark as they are."""
    import shapely

    between = shapely.get_coordinates(shapely.shortest_line(*_shapes(piece, other)))
    gap = float(np.hypot(*(between[1] - between[0])))
    wide = max(piece.width, other.width) >= HAIRLINE_PX
    if gap <= TOUCHES_PX and not wide:
        return True
    blunt = min(one.length / one.width for one in (piece, other)) < LEAST_RATIO[1]
    if wide and (gap > TOUCHES_PX or blunt):
        return False
    outlines = [one.one.outline_px for one in (piece, other)]
    rgb, low = _about(photo, np.concatenate(outlines))
    along = _unit(between[1] - between[0])
    across = np.array([-along[1], along[0]])
    way = between[0] - low + np.arange(max(gap, 1.0))[:, None, None] * along
    places = way + _ACROSS_PX[:, None] * across
    dark = np.asarray(-log_light(rgb), np.float32)
    for plane, share, least in ((redness(rgb), AS_RED, LEAST_RED), (dark, AS_DARK, LEAST_DARK)):
        smooth = np.asarray(cv2.GaussianBlur(plane, (0, 0), _SMOOTH_PX), np.float32)
        seen = sample(smooth, places)
        sides = np.maximum(*(seen[:, side].mean(axis=1) for side in _SIDES))
        rise = float(np.median(seen[:, _MIDDLE].max(axis=1) - sides))
        if rise > max(least, share * min(_rise(smooth, one - low) for one in outlines)):
            return True
    return False


def _about(photo: Photo, places: Array) -> tuple[Bytes, Ints]:
    """The pixels of a photo about some places, and where their first lies."""
    low = np.maximum(np.floor(places.min(axis=0)).astype(int) - _REACH_PX, 0)
    high = np.ceil(places.max(axis=0)).astype(int) + _REACH_PX
    return np.ascontiguousarray(photo.rgb[low[1] : high[1], low[0] : high[0]]), low


def _rise(red: Float, outline: Array) -> float:
    """How much redder, or darker, it is within an outline than about it, log light."""
    own = within_outline(outline, red.shape)
    near, far = (cv2.dilate(own, np.ones((size,) * 2, np.uint8)) for size in (9, 19))
    return float(np.median(red[own > 0]) - np.median(red[(far > 0) & (near == 0)]))


def _shapes(*pieces: _Piece) -> npt.NDArray[np.object_]:
    import shapely

    return np.array([shapely.make_valid(shapely.Polygon(one.one.outline_px)) for one in pieces])


def _joined(piece: _Piece, other: _Piece) -> Contour:
    """One line of two, whose edge is as sure as the less sure of them."""
    import shapely

    shapes = _shapes(piece, other)
    between = shapely.get_coordinates(shapely.shortest_line(*shapes))
    out = _unit(between[1] - between[0])
    reach = max(min(piece.width, other.width) / 2, 0.5)
    link = shapely.buffer(shapely.LineString(between + np.array([[-1], [1]]) * out), reach)
    parts = shapely.get_parts(shapely.union_all([*shapes, link]))
    largest = max(parts, key=shapely.area)
    outline = shapely.get_coordinates(shapely.get_exterior_ring(largest))[:-1]
    one, two = piece.one, other.one
    return replace(
        one,
        outline_px=outline,
        shift_px=max(one.shift_px, two.shift_px),
        end_shift_px=max(one.end_shift_px, two.end_shift_px),
        noise_px=max(one.noise_px, two.noise_px),
        doubt_px=max(one.doubt_px, two.doubt_px),
        area_px=float(shapely.area(largest)),
    )
