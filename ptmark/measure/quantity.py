"""A value with its standard uncertainty and what it is made of (JCGM 100:2008)."""

from collections.abc import Callable
from dataclasses import dataclass, field
from math import hypot

import numpy as np
import numpy.typing as npt

__all__ = ["COVERAGE_FACTOR", "Quantity", "propagate"]

COVERAGE_FACTOR = 2.0  # k = 2, about 95 % (JCGM 100:2008, 6.3.3)

Array = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Quantity:
    """A measured value with independent named contributions.

    Attributes
    ----------
    value : float
        In ``unit``.
    budget : dict of str to float
        Standard uncertainty of each independent contribution, in ``unit``.
    unit : str
        "mm", "mm2" or "1".
    """

    value: float
    budget: dict[str, float] = field(default_factory=dict)
    unit: str = "mm"

    @property
    def u(self) -> float:
        """Combined standard uncertainty (JCGM 100:2008, 5.1.2)."""
        return hypot(*self.budget.values()) if self.budget else 0.0

    @property
    def expanded(self) -> float:
        """Expanded uncertainty U, k = 2."""
        return COVERAGE_FACTOR * self.u


def propagate(
    function: Callable[[Array], npt.ArrayLike], values: npt.ArrayLike, covariance: npt.ArrayLike
) -> tuple[Array, Array]:
    """Carry a covariance through a function, to first order.

    Parameters
    ----------
    function : callable
        From inputs of shape (N,) to outputs of shape (M,) or a single number.
    values : array_like of shape (N,)
        Estimates of the inputs.
    covariance : array_like of shape (N, N)
        Covariance of the inputs.

    Returns
    -------
    outputs : ndarray of shape (M,)
    covariance : ndarray of shape (M, M)

    Notes
    -----
    JCGM 100:2008, 5.2.2 equation (13) and H.2.3 in matrix form, ``J V J^T``.

    Examples
    --------
    >>> y, v = propagate(lambda x: x[0] * x[1], [3.0, 2.0], [[0.01, 0.0], [0.0, 0.04]])
    >>> y.round(6).tolist(), v.round(6).tolist()
    ([6.0], [[0.4]])
    """
    at = np.asarray(values, dtype=np.float64)
    spread = np.asarray(covariance, dtype=np.float64)
    slopes = _sensitivities(function, at, np.sqrt(np.diag(spread)))
    outputs = np.atleast_1d(np.asarray(function(at), dtype=np.float64))
    return outputs, np.asarray(slopes @ spread @ slopes.T)


def _sensitivities(
    function: Callable[[Array], npt.ArrayLike], values: npt.ArrayLike, u: npt.ArrayLike
) -> Array:
    """Sensitivity coefficients of a function, shape (M, N) (JCGM 100:2008, 5.1.3).

    Central differences over a hundredth of each standard uncertainty ``u`` of shape (N,);
    0 for an input that is known exactly.

    Examples
    --------
    >>> _sensitivities(lambda x: x[0] * x[1] ** 2, [2.0, 3.0], [0.1, 0.1]).round(6).tolist()
    [[9.0, 12.0]]
    """
    at, steps = np.asarray(values, dtype=np.float64), np.asarray(u, dtype=np.float64) / 100
    shifts = np.diag(steps)
    columns = []
    for shift, step in zip(shifts, steps, strict=True):
        change = np.subtract(function(at + shift), function(at - shift))
        columns.append(np.atleast_1d(change) / (2 * step if step else 1.0))
    return np.column_stack(columns)
