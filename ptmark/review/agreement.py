"""How well measurements agree: limits of agreement, repeatability, reproducibility."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import sqrt

import numpy as np

from ptmark.errors import RecordError

__all__ = ["Agreement", "Precision", "limits_of_agreement", "precision"]

_COVER = 1.96  # 95 % of a normal distribution lie within as many standard deviations


@dataclass(frozen=True, slots=True, kw_only=True)
class Agreement:
    """Differences of paired measurements: ``mean``, ``sd`` (n - 1), and where 95 % lie."""

    count: int
    mean: float
    sd: float

    @property
    def lower(self) -> float:
        """Lower limit of agreement."""
        return self.mean - _COVER * self.sd

    @property
    def upper(self) -> float:
        """Upper limit of agreement."""
        return self.mean + _COVER * self.sd


def limits_of_agreement(pairs: Sequence[tuple[float, float]]) -> Agreement:
    """Limits of agreement of paired measurements, second minus first.

    Mean difference ± 1.96 standard deviations of the differences [1]_.

    Raises
    ------
    RecordError
        If there are fewer than two pairs.

    References
    ----------
    .. [1] Bland and Altman, "Statistical methods for assessing agreement between two methods
       of clinical measurement", Lancet 1986, i, 307-310.
    """
    if len(pairs) < 2:
        raise RecordError(
            f"{len(pairs)} pairs tell nothing of agreement", where="study", mend="review more"
        )
    both = np.asarray(pairs, dtype=float)
    differ = both[:, 1] - both[:, 0]
    return Agreement(count=len(both), mean=float(differ.mean()), sd=float(differ.std(ddof=1)))


@dataclass(frozen=True, slots=True, kw_only=True)
class Precision:
    """Precision of one level: standard deviations of ISO 5725-2.

    ``repeatability`` within one operator, ``between`` operators, ``reproducibility`` of both;
    ``operators`` and ``results`` count what it rests on.
    """

    mean: float
    repeatability: float
    between: float
    operators: int
    results: int

    @property
    def reproducibility(self) -> float:
        """Root of the sum of both variances."""
        return sqrt(self.repeatability**2 + self.between**2)


def precision(groups: Mapping[str, Sequence[float]]) -> Precision:
    """Repeatability and reproducibility of one level by analysis of variance.

    Parameters
    ----------
    groups : mapping of str to sequence of float
        Results by operator; numbers of results may differ.

    Returns
    -------
    Precision
        By ISO 5725-2:1994, 7.4.5: the between variance is 0 where it would be negative.

    Raises
    ------
    RecordError
        If there are fewer than two operators, or none measured twice.
    """
    rows = [np.asarray(row, dtype=float) for row in groups.values() if len(row)]
    counts = np.array([len(row) for row in rows], dtype=float)
    total, operators = float(counts.sum()), len(rows)
    if operators < 2 or total <= operators:
        raise RecordError(
            f"{operators} operators with {int(total)} results give no precision",
            where="study",
            mend="let two operators measure at least, one of them twice",
        )
    means = np.array([row.mean() for row in rows])
    within = sum(float(((row - row.mean()) ** 2).sum()) for row in rows) / (total - operators)
    grand = float((counts * means).sum()) / total
    spread = float((counts * (means - grand) ** 2).sum()) / (operators - 1)
    size = (total - float((counts**2).sum()) / total) / (operators - 1)
    return Precision(
        mean=grand,
        repeatability=sqrt(within),
        between=sqrt(max(0.0, (spread - within) / size)),
        operators=operators,
        results=int(total),
    )
