"""Why the sizes of an indication are the least that they can be: not all of it is seen."""

from collections.abc import Mapping
from enum import StrEnum

__all__ = ["Least", "those"]

# One for all: a set of its own for each of ten thousand slows their reading by a fifth.
_NONE: frozenset["Least"] = frozenset()


class Least(StrEnum):
    """One reason; its text is the member by which a record's indication tells it.

    The photo's edge cuts the indication short, the developer about it is clipped to white,
    something may cover an end of it, or it stands in haze, rust, grain, a red reflection,
    beside paint or where the file lost its colour, so that its ends may not show. Such an
    indication is never acceptable. The order is that of exports' columns.
    """

    RUNS_OUT = "runs_out"
    OVEREXPOSED = "overexposed"
    COVERED = "covered"
    ENDS_UNSURE = "ends_unsure"


def those(told: Mapping[str, bool]) -> frozenset[Least]:
    """The reasons that hold, of those told of.

    Examples
    --------
    >>> [*those({Least.COVERED: True, Least.RUNS_OUT: False})]
    [<Least.COVERED: 'covered'>]
    """
    found = [Least(why) for why, holds in told.items() if holds]
    return frozenset(found) if found else _NONE
