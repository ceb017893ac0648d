"""What a rule's strokes are: millimetres, or which fraction, by which of them are longer."""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from ptmark.scale.strokes import Strokes
from ptmark.units import MM_PER_IN

__all__ = ["GRADUATIONS", "Graduation", "levels_of", "likely_graduations"]

Array = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Graduation:
    """One way to graduate a rule.

    ``levels`` counts at which strokes are longer than those between: every tenth longest,
    every fifth next. Common practice of rule makers, no source.
    """

    name: str
    step_mm: float
    levels: tuple[int, ...]


# Tenths of an inch are left out: they show the pattern of millimetres, and a centimetre rule
# read as inches would pass for them.
GRADUATIONS = (
    Graduation("mm", 1.0, (5, 10)),
    Graduation("1/2 mm", 0.5, (2, 10, 20)),
    Graduation("1/16 in", MM_PER_IN / 16, (2, 4, 8, 16)),
    Graduation("1/32 in", MM_PER_IN / 32, (2, 4, 8, 16, 32)),
    Graduation("1/64 in", MM_PER_IN / 64, (2, 4, 8, 16, 32, 64)),
)
_PERIODS = sorted({period for one in GRADUATIONS for period in one.levels})
# Longer means by more than this: rules step by a quarter or more, and strokes are followed to
# a tenth of a step.
_LONGER = 1.10


def levels_of(strokes: Strokes) -> tuple[int, ...]:
    """Periods at which strokes stand out as longer, ascending; empty where none do.

    A period counts where its strokes are longer than those of every other phase of the same
    period, so that it is not counted for what its multiples or divisors do.
    """
    found: list[int] = []
    phase_of: dict[int, int] = {}
    for period in _PERIODS:
        phase = _longest_phase(strokes, period)
        if phase is None:
            continue
        if all((phase - phase_of[p]) % p == 0 and period % p == 0 for p in found):
            found.append(period)
            phase_of[period] = phase
    return tuple(found)


def _longest_phase(strokes: Strokes, period: int) -> int | None:
    """The phase whose strokes are all longer than those of any other, if there is one."""
    groups = [strokes.lengths[strokes.number % period == phase] for phase in range(period)]
    if min(map(len, groups)) == 0 or max(map(len, groups)) < 2:
        return None
    middle = np.array([float(np.median(group)) for group in groups])
    first, second = np.argsort(-middle)[:2]
    low = np.sort(groups[first])[len(groups[first]) // 5]
    return int(first) if low >= _LONGER * middle[second] and len(groups[first]) > 1 else None


def likely_graduations(strokes: Strokes) -> tuple[Graduation, ...]:
    """The graduations that the strokes' lengths allow, likeliest first; empty where unread.

    A graduation is out where strokes stand out that it would not lengthen, or where its
    longest ones are not seen to, though three of them are there.
    """
    seen = levels_of(strokes)
    if not seen:
        return ()
    count = int(np.ptp(strokes.number)) + 1
    fits = [one for one in GRADUATIONS if set(seen) <= set(one.levels)]
    telling = [one for one in fits if _complete(one, seen, count)]
    return tuple(telling or fits)


def _complete(one: Graduation, seen: tuple[int, ...], count: int) -> bool:
    visible = [period for period in one.levels if count >= 2 * period + 1]
    return not visible or max(visible) <= max(seen)
