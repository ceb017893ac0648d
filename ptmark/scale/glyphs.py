"""Whether every second numeral of a rule ends in another digit: 5 10 15 20, not 10 20 30 40.

Half millimetres numbered at each 5 and millimetres numbered at each 10 have ten steps from
numeral to numeral. No digit is read: the end digits are compared with each other.
"""

from dataclasses import dataclass
from itertools import combinations, pairwise
from typing import TYPE_CHECKING

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.scale.numerals import BEYOND, longest_px, straightened
from ptmark.scale.strip import BAND, Strip
from ptmark.scale.strokes import Strokes

if TYPE_CHECKING:
    from ptmark.photo import Photo

__all__ = ["numerals_alternate"]

Array = npt.NDArray[np.float64]
Float = npt.NDArray[np.float32]
# Of numeral n: its first and its last digit, as seen from left to right, and how many it has.
Ends = dict[int, tuple["_Glyph", "_Glyph", int]]

_LEAST_PX = 8  # high: smaller digits are too few pixels to tell apart
# Heights of digits by the longest stroke, how far one may be off the median, and gaps within a
# numeral, by that. Common practice of rule makers, no source.
_HIGH, _EVEN, _GAP = (0.2, 1.6), 0.25, 0.5
_WIDEST = 1.05  # of its height: a wider one is two digits that touch
_SIZE, _SHIFT = (20, 28), 2  # digits are compared at this size, moved by so much either way
_WIDTHS = 1.4  # digits whose widths differ by more are not one digit
# Correlation of the same digit, and by how much more than between others. Own choice: drawn in
# four fonts, tilted and blurred, 0 with 0 gives over 0.85, and 0 with 5 below 0.7.
_SAME, _APART = 0.8, 0.12
_LEAST = 4  # numerals that have to be seen


@dataclass(frozen=True, slots=True, eq=False)
class _Glyph:
    left: int
    right: int
    high: int
    mid_y: float
    seen: Float


def numerals_alternate(
    photo: "Photo", strip: Strip, strokes: Strokes, period: int
) -> bool | None:
    """Whether the last digits of numerals that stand ``period`` steps apart alternate.

    True where every second one ends alike and neighbours do not (5 10 15 20); False where all
    end alike (10 20 30), all begin alike and do not end in turns (10 11 12), or four in a row
    are single digits of which no two are alike (1 2 3 4); None where it is not clear. Digits
    may stand upright or upside down.
    """
    fine = max(6, round(float(np.median(strokes.step_px))))
    reach = np.isfinite(strokes.u)
    low, high = np.percentile(strokes.v[np.nonzero(reach)[1]], [0.5, 99.5])
    away = np.arange(BAND, BAND + BEYOND * longest_px(strokes), 1.0)
    told = [
        _judged(_ends_of(_digits(seen, longest_px(strokes)), period * fine, seen.shape[1]))
        for v in (low - away, high + away)
        for seen in (straightened(photo, strip, strokes, v, fine),)
    ]
    clear = {one for one in told if one is not None}
    return clear.pop() if len(clear) == 1 else None


def _digits(grey: Float, longest: float) -> list[_Glyph]:
    """Dark marks of one height in one row, from left to right."""
    ground = cv2.morphologyEx(grey, cv2.MORPH_CLOSE, np.ones((2 * int(0.3 * longest) + 1,) * 2))
    dark = cv2.GaussianBlur(ground, (0, 0), 2.0) - grey
    scaled = np.clip(dark, 0, 255).astype(np.uint8)
    level, _ = cv2.threshold(scaled, 0, 255, cv2.THRESH_OTSU)
    _, labels, stats, middles = cv2.connectedComponentsWithStats(
        (scaled > level).astype(np.uint8), connectivity=8
    )
    found = []
    for label in range(1, len(stats)):
        x, y, wide, high, _ = (int(value) for value in stats[label])
        fits = max(_LEAST_PX, _HIGH[0] * longest) <= high <= _HIGH[1] * longest
        if not fits or wide > _WIDEST * high:
            continue
        own = np.where(labels[y : y + high, x : x + wide] == label, 1.0, 0.0)
        shape = cv2.resize(own.astype(np.float32), _SIZE, interpolation=cv2.INTER_AREA)
        seen = np.asarray(shape, np.float32)
        found.append(_Glyph(x, x + wide, high, float(middles[label][1]), seen))
    if not found:
        return []
    tall = float(np.median([one.high for one in found]))
    row = float(np.median([one.mid_y for one in found]))
    even = [
        one
        for one in found
        if abs(one.high - tall) <= _EVEN * tall and abs(one.mid_y - row) <= tall / 2
    ]
    return sorted(even, key=lambda one: one.left)


def _ends_of(digits: list[_Glyph], period: int, width: int) -> Ends:
    """End digits of the numerals, by which numeral it is along the rule.

    Without those so near to the ends of what is seen that a digit may be cut off.
    """
    groups: list[list[_Glyph]] = []
    for one in digits:
        if groups and one.left - groups[-1][-1].right <= _GAP * one.high:
            groups[-1].append(one)
        else:
            groups.append([one])
    if not groups:
        return {}
    at = np.array([(group[0].left + group[-1].right) / 2 for group in groups]) / period
    phase = float(np.angle(np.exp(2j * np.pi * at).mean())) / (2 * np.pi)
    number = np.round(at - phase).astype(int).tolist()
    return {
        n: (group[0], group[-1], len(group))
        for n, group in zip(number, groups, strict=True)
        if number.count(n) == 1
        and group[0].left >= group[0].high
        and group[-1].right <= width - group[-1].high
    }


def _judged(ends: Ends) -> bool | None:
    if len(ends) < _LEAST or len({n % 2 for n in ends}) < 2:
        return None
    sides = [{n: one[0] for n, one in ends.items()}, {n: one[1] for n, one in ends.items()}]
    told = [_of_side(side) for side in sides]
    if True in told:
        return True
    # 100 105 110 begin alike: the other end must not come in turns, seen or hidden by wear.
    settled = (one is False or _are_unlike(side) for one, side in zip(told, sides, strict=True))
    if (False in told and all(settled)) or _are_single(ends):
        return False
    return None


def _of_side(digits: dict[int, _Glyph]) -> bool | None:
    """True where digits at one end alternate, False where all are alike."""
    same, cross = _likeness(digits, 0), _likeness(digits, 1)
    if len(same) < 2 or len(cross) < 2 or np.percentile(same, 25) < _SAME:
        return None
    if np.percentile(cross, 25) >= _SAME:
        return False
    return True if np.percentile(cross, 75) <= np.percentile(same, 25) - _APART else None


def _are_unlike(digits: dict[int, _Glyph]) -> bool:
    """Whether every second digit at one end is another one."""
    return bool(np.percentile(_likeness(digits, 0), 75) < _SAME)


def _likeness(digits: dict[int, _Glyph], odd: int) -> list[float]:
    """Of all pairs of digits an even, or odd, count of numerals apart."""
    return [
        _alike(digits[a], digits[b]) for a, b in combinations(digits, 2) if (a - b) % 2 == odd
    ]


def _are_single(ends: Ends) -> bool:
    """Whether four that follow each other are single digits, no two of them alike.

    Single ones that are left of 10 15 20 25 when the last are rubbed off hold two alike.
    """
    numbers = sorted(ends)
    for first in range(len(numbers) - _LEAST + 1):
        run = numbers[first : first + _LEAST]
        follow = all(b - a == 1 for a, b in pairwise(run))
        if follow and all(ends[n][2] == 1 for n in run):
            pairs = combinations(run, 2)
            if all(_alike(ends[a][1], ends[b][1]) < _SAME for a, b in pairs):
                return True
    return False


def _alike(one: _Glyph, other: _Glyph) -> float:
    """Greatest normalised correlation of two digits, moved against each other a little."""
    widths = (one.right - one.left) / one.high, (other.right - other.left) / other.high
    if max(widths) > _WIDTHS * min(widths):
        return 0.0
    edges = (_SHIFT,) * 4
    room = cv2.copyMakeBorder(one.seen, *edges, cv2.BORDER_CONSTANT, value=(0.0,))
    return float(cv2.matchTemplate(room, other.seen, cv2.TM_CCOEFF_NORMED).max())
