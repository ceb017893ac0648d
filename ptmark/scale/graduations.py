"""What a rule's strokes are: millimetres, or which fraction.

Told by which of them are longer, and by how many steps lie between the numerals.
"""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from ptmark.scale.strokes import Strokes
from ptmark.units import MM_PER_IN

__all__ = [
    "GRADUATIONS",
    "Graduation",
    "by_end_digits",
    "is_half_or_whole",
    "likely_graduations",
]

Array = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Graduation:
    """One way to graduate a rule.

    ``levels`` counts at which strokes are longer than those between: every tenth longest,
    every fifth next. ``numbered``: how many steps from numeral to numeral, at each centimetre
    or inch, or closer. ``alone``: those of them that tell the graduation without the strokes'
    lengths. Common practice of rule makers, no source.
    """

    name: str
    step_mm: float
    levels: tuple[int, ...]
    numbered: tuple[int, ...]
    alone: tuple[int, ...]


# Tenths of an inch are left out: they show the pattern of millimetres, and a centimetre rule
# read as inches would pass for them.
GRADUATIONS = (
    Graduation("mm", 1.0, (5, 10), (5, 10), (5, 10)),
    Graduation("1/2 mm", 0.5, (2, 10, 20), (10, 20), (20,)),
    Graduation("1/16 in", MM_PER_IN / 16, (2, 4, 8, 16), (4, 8, 16), (16,)),
    Graduation("1/32 in", MM_PER_IN / 32, (2, 4, 8, 16, 32), (4, 8, 16, 32), (32,)),
    Graduation("1/64 in", MM_PER_IN / 64, (2, 4, 8, 16, 32, 64), (8, 16, 32, 64), (64,)),
)
_PERIODS = sorted({period for one in GRADUATIONS for period in one.levels})
# Longer means by more than this: rules step by a quarter or more, and strokes are followed to
# a tenth of a step.
_LONGER = 1.10


def _levels_of(strokes: Strokes) -> dict[int, int]:
    """Periods at which strokes stand out as longer, ascending, with the phase of each.

    A period counts where its strokes are longer than those of every other phase of the same
    period, so that it is not counted for what its multiples or divisors do.
    """
    found: dict[int, int] = {}
    for period in _PERIODS:
        phase = _longest_phase(strokes, period)
        if phase is not None and all(
            period % p == 0 and (phase - at) % p == 0 for p, at in found.items()
        ):
            found[period] = phase
    return found


def _longest_phase(strokes: Strokes, period: int) -> int | None:
    """The phase whose strokes are all longer than those of any other, if there is one."""
    groups = [strokes.lengths[strokes.number % period == phase] for phase in range(period)]
    if min(map(len, groups)) == 0 or max(map(len, groups)) < 2:
        return None
    middle = np.array([float(np.median(group)) for group in groups])
    first, second = np.argsort(-middle)[:2]
    low = np.sort(groups[first])[len(groups[first]) // 5]
    return int(first) if low >= _LONGER * middle[second] and len(groups[first]) > 1 else None


def likely_graduations(strokes: Strokes, numbered: int | None = None) -> tuple[Graduation, ...]:
    """The graduations that strokes and numerals allow; empty where they tell none.

    Each level seen speaks for a graduation that has it and against one that has not; each
    level that should show and does not speaks against it; ``numbered``, the steps from numeral
    to numeral, counts twice as much either way. More than one stays where too little of a rule
    is seen to tell. Where all strokes are alike the numerals alone have to tell; not where
    wear hides which are longer.
    """
    seen = _levels_of(strokes)
    if not seen:
        alone = [one for one in GRADUATIONS if numbered in one.alone]
        return tuple(alone) if _are_alike(strokes) else ()
    score = {
        one: _score(strokes, seen, one) + _says(numbered, one.numbered) for one in GRADUATIONS
    }
    best = max(score.values())
    found = tuple(one for one, points in score.items() if points == best and best > 0)
    # Longer tens alone are those of millimetres or of half millimetres, and wear can hide every
    # second: the least level has to be seen, or numerals that no other graduation has.
    sure = all(one.levels[0] in seen or numbered in one.alone for one in found)
    return found if sure else ()


def is_half_or_whole(
    strokes: Strokes, numbered: int | None, likely: tuple[Graduation, ...]
) -> bool:
    """Whether what passes for mm, numbered at each 10, may be 1/2 mm, numbered at each 5.

    Both have ten steps between numerals, and longer tens, if any: only longer fives tell.
    """
    mm, half = GRADUATIONS[:2]
    both = numbered in mm.numbered and numbered in half.numbered
    return both and likely == (mm,) and mm.levels[0] not in _levels_of(strokes)


def by_end_digits(*, alternate: bool | None) -> tuple[Graduation, ...]:
    """Whole mm, or half where numerals end in turns (5 10 15); both where unclear (None)."""
    mm, half = GRADUATIONS[:2]
    if alternate is None:
        return (mm, half)
    return (half,) if alternate else (mm,)


def _are_alike(strokes: Strokes) -> bool:
    low, middle, high = np.percentile(strokes.lengths, [10, 50, 90])
    return bool(high < _LONGER * middle and middle < _LONGER * low)


def _says(numbered: int | None, among: tuple[int, ...]) -> int:
    if numbered is None:
        return 0
    return 2 if numbered in among else -2


def _score(strokes: Strokes, seen: dict[int, int], one: Graduation) -> int:
    shown = sum(1 if period in one.levels else -1 for period in seen)
    return shown - sum(
        period not in seen and _is_missed(strokes, seen, below, period)
        for below, period in zip((1, *one.levels), one.levels, strict=False)
    )


def _is_missed(strokes: Strokes, seen: dict[int, int], below: int, period: int) -> bool:
    """Whether strokes stand in a row of which one should be longer, but none is.

    Of ``period / below`` strokes that follow each other in the level below, one belongs to the
    level looked for.
    """
    if below != 1 and below not in seen:
        return False
    in_level = (strokes.number - seen.get(below, 0)) % below == 0
    number, lengths = strokes.number[in_level], strokes.lengths[in_level]
    run = period // below
    if len(number) < run:
        return False
    rows = np.lib.stride_tricks.sliding_window_view(lengths, run)
    whole = number[run - 1 :] - number[: len(number) - run + 1] == period - below
    alike = rows.max(axis=1) < _LONGER * rows.min(axis=1)
    return bool(whole.any() and alike[whole].mean() > 0.5)
