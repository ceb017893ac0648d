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
    JCGM 100:2008, 5.2.2 equation (13) and H.2.3 in matrix form, ``J V J^T``, with the
    sensitivities by central differences over one hundredth of each standard uncertainty.

    Examples
    --------
    >>> y, v = propagate(lambda x: x[0] * x[1], [3.0, 2.0], [[0.01, 0.0], [0.0, 0.04]])
    >>> y.round(6).tolist(), v.round(6).tolist()
    ([6.0], [[0.4]])
    """
    at = np.asarray(values, dtype=float)
    spread = np.asarray(covariance, dtype=float)
    steps = np.sqrt(np.diag(spread)) / 100
    outputs = np.atleast_1d(np.asarray(function(at), dtype=float))
    jacobian = np.zeros((len(outputs), len(at)))
    for i in np.flatnonzero(steps):
        shift = np.zeros(len(at))
        shift[i] = steps[i]
        up = np.atleast_1d(np.asarray(function(at + shift), dtype=float))
        down = np.atleast_1d(np.asarray(function(at - shift), dtype=float))
        jacobian[:, i] = (up - down) / (2 * steps[i])
    return outputs, np.asarray(jacobian @ spread @ jacobian.T)
