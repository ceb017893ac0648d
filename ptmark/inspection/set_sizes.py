"""Which photo's size of an indication counts where several photos of a set show it."""

from collections.abc import Sequence
from dataclasses import dataclass

from ptmark.en import en_number
from ptmark.measure import Measurement, Quantity
from ptmark.series import Timed

__all__ = ["Sizes", "sizes_of"]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Sizes:
    """An indication that several photos show.

    ``shown`` holds the photos' numbers, from 0, and what was measured there; ``of_record`` is
    the number of the photo whose size counts, None where none is measured; ``chosen`` tells
    whether the inspector chose it, else it is the one with the smallest uncertainty, or the
    longest where that one is contradicted (En above 1); of those that show it whole, where any
    does. Of photos that follow the bleed-out (``by_time``) it is the one to be evaluated, or of
    those within the time to evaluate the longest that contradicts it; ``early`` are those
    before it that show less, as bleed-out has it.
    """

    shown: tuple[tuple[int, Measurement | None], ...]
    of_record: int | None
    chosen: bool
    by_time: bool = False
    early: frozenset[int] = frozenset()

    @property
    def size(self) -> Measurement | None:
        return dict(self.shown)[self.of_record] if self.of_record is not None else None


def sizes_of(
    places: Sequence[tuple[int, Measurement | None]], chosen: int | None, times: Timed | None
) -> Sizes:
    """The size of record among an indication's ``places``, (photo from 0, what it measures)."""
    here = {number: made for number, made in places if made is not None}
    held = chosen if chosen in here else _of_record(here, times)
    early: list[int] = []
    if times is not None and held is not None:
        at, longest = times.minutes, here[held].length.value
        early = [n for n in here if at[n] < at[held] and here[n].length.value < longest]
    return Sizes(
        shown=tuple(places),
        of_record=held,
        chosen=chosen in here,
        by_time=times is not None,
        early=frozenset(early),
    )


def _of_record(here: dict[int, Measurement], times: Timed | None) -> int | None:
    """The number of the photo whose size counts."""
    due = {
        number: made
        for number, made in here.items()
        if times is None or times.window.holds(times.minutes[number])
    } or here
    whole = {number: made for number, made in due.items() if not made.least}
    measured = {number: made.length for number, made in (whole or due).items()}
    first = min(measured, key=lambda n: (measured[n].expanded, n), default=None)
    if times is not None and times.choice.index in measured:
        first = times.choice.index
    if first is None:
        return None
    # Where they contradict each other, the verdict must not hang on the shorter.
    apart = [n for n, one in measured.items() if _contradicts(one, measured[first])]
    return max([first, *apart], key=lambda n: measured[n].value)


def _contradicts(one: Quantity, other: Quantity) -> bool:
    en = en_number(one.value, one.expanded, other.value, other.expanded)
    return en is not None and en > 1
