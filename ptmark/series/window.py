"""The time after developing in which an indication is judged, and the photo that falls in it.

Minutes count from when the developing time starts: when a wet developer is dry, when a dry one
is applied. The procedure's own window governs.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from ptmark.errors import UsageError
from ptmark.series.clock import minutes_since

__all__ = ["WINDOWS", "Choice", "Timed", "Window", "choose", "read_window", "timed"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Window:
    """From ``first`` to ``last`` minutes, both included, with the source and how sure it is."""

    first: float
    last: float
    source: str

    def holds(self, minutes: float) -> bool:
        """Whether a photo of that time is to be evaluated."""
        return self.first <= minutes <= self.last


WINDOWS = {
    "asme-v": Window(
        first=10, last=60, source="ASME BPVC V, T-676.1 (from a secondary source)"
    ),
    "iso-3452-1": Window(first=10, last=30, source="ISO 3452-1:2021, 8.6 (from memory)"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """Which photo is to be evaluated (its index, None where none is) and why, in a sentence."""

    index: int | None
    says: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Timed:
    """When each photo of a set was taken, min since the developer, and which is to evaluate."""

    minutes: tuple[float, ...]
    window: Window
    choice: Choice

    @property
    def is_series(self) -> bool:
        """Whether they follow the bleed-out: some lie in the time to evaluate, others do not.

        Overview and close-ups of one evaluation all lie within it.
        """
        held = [self.window.holds(minutes) for minutes in self.minutes]
        return any(held) and not all(held)


def timed(developed: str, taken: Sequence[tuple[str, str]], profile: str) -> Timed:
    """The times of a set, which as a record does not hold its procedure's own time to evaluate.

    Parameters
    ----------
    developed, taken
        As `minutes_since` takes them, which raises where they do not tell.
    profile : str
        Name of the criteria: those of ISO or EN go by ISO 3452-1, others by ASME V.
    """
    minutes = minutes_since(developed, taken)
    window = WINDOWS["iso-3452-1" if profile.startswith(("iso-", "en-")) else "asme-v"]
    return Timed(minutes=tuple(minutes), window=window, choice=choose(minutes, window))


def read_window(text: str) -> Window:
    """A window by its name or as minutes.

    Raises
    ------
    UsageError
        If it is neither.

    Examples
    --------
    >>> read_window("iso-3452-1").last, read_window("10-20").last
    (30, 20.0)
    """
    if text in WINDOWS:
        return WINDOWS[text]
    found = re.fullmatch(r"(\d+(?:\.\d+)?)-(\d+(?:\.\d+)?)", text.strip())
    if found is None or float(found[1]) >= float(found[2]):
        raise UsageError(
            f"'{text}' is no time window",
            where="--window",
            mend=f"write FIRST-LAST in minutes, or one of {', '.join(WINDOWS)}",
        )
    return Window(
        first=float(found[1]), last=float(found[2]), source="as given by the user's procedure"
    )


def choose(minutes: Sequence[float], window: Window) -> Choice:
    """The photo to be evaluated: the last one in the window.

    Bleed-out only grows, so the last photo in the window gives the strictest reading that the
    procedure allows. Common practice, no source: a standard names the window, not the photo.

    Examples
    --------
    >>> choose([2, 5, 12, 25, 70], WINDOWS["asme-v"]).index
    3
    >>> choose([2, 5], WINDOWS["asme-v"]).index is None
    True
    """
    span = f"{window.first:g} to {window.last:g} min"
    inside = [i for i, m in enumerate(minutes) if window.holds(m)]
    if inside:
        index = max(inside, key=lambda i: minutes[i])
        says = f"taken at {minutes[index]:g} min, the last photo within {span}"
        return Choice(index=index, says=f"{says}; {window.source}.")
    missed = "later" if minutes and max(minutes) < window.first else "within the window"
    says = f"no photo was taken within {span} ({window.source}); take one {missed}."
    return Choice(index=None, says=says)
