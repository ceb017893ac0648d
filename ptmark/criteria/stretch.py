"""The heaviest stretch of a line: the most that an interval of given length can reach."""

import numpy as np
import numpy.typing as npt

from ptmark.criteria.geometry import Array

__all__ = ["heaviest_stretch", "stretch_totals"]

_FEW = 64


def heaviest_stretch(
    low: Array, high: Array, weights: Array, stretch: float
) -> tuple[float, npt.NDArray[np.int64]]:
    """Sum of the weights that a stretch reaches at its worst place, and their positions.

    The stretch may start at the smallest ``high`` of what it reaches without losing any of
    it, so the starts to try are the ``high``. What it reaches from a start ``s`` is what has
    ``low <= s + stretch``, less what has ``high < s``.

    Parameters
    ----------
    low, high, weights : ndarray of shape (M,), M >= 1
        Extent of each along the line, and what it adds.

    Examples
    --------
    >>> from numpy import array
    >>> total, reached = heaviest_stretch(
    ...     array([0.0, 9.0, 30.0]), array([1.0, 10.0, 31.0]), array([1.0, 1.0, 1.0]), 20.0
    ... )
    >>> total, reached.tolist()
    (2.0, [0, 1])
    """
    totals = stretch_totals(low, high, weights, stretch)
    start = high[int(totals.argmax())]
    reached = np.flatnonzero((high >= start) & (low <= start + stretch))
    return float(weights[reached].sum()), reached


def stretch_totals(low: Array, high: Array, weights: Array, stretch: float) -> Array:
    """Sum of the weights reached from each start in ``high``; shape (M,)."""
    if len(low) <= _FEW:  # all against all is faster than sorting for a few
        reached = (high >= high[:, None]) & (low <= (high + stretch)[:, None])
        return np.asarray(reached @ weights)
    by_low, by_high = np.argsort(low), np.argsort(high)
    below = np.concatenate(([0.0], np.cumsum(weights[by_low])))
    passed = np.concatenate(([0.0], np.cumsum(weights[by_high])))
    begun = below[np.searchsorted(low[by_low], high + stretch, side="right")]
    ended = passed[np.searchsorted(high[by_high], high, side="left")]
    return begun - ended
