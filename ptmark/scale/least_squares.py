"""Nonlinear least squares by the Levenberg-Marquardt method."""

from collections.abc import Callable
from typing import Protocol, Self, TypeVar

import numpy as np
import numpy.typing as npt

__all__ = ["Steps", "minimise"]

Array = npt.NDArray[np.float64]


class Steps(Protocol):
    """What is fitted: it can take a local step, shape (P,)."""

    def stepped(self, step: Array) -> Self: ...


S = TypeVar("S", bound=Steps)


def minimise(
    residuals_of: Callable[[S], Array], slopes_of: Callable[[S], Array], state: S, most: int
) -> S:
    """The state with the least sum of squared residuals, near the one to start from.

    ``residuals_of`` gives shape (N,), ``slopes_of`` its derivative by the local step, shape
    (N, P). Ends after ``most`` trials, or where a trial gains next to nothing (Levenberg 1944,
    Marquardt 1963).

    Raises
    ------
    numpy.linalg.LinAlgError
        If the slopes leave a step undetermined.
    """
    damping = 1e-6
    residuals = residuals_of(state)
    cost = float(residuals @ residuals)
    for _ in range(most):
        slopes = slopes_of(state)
        normal = slopes.T @ slopes
        damped = normal + damping * np.diag(np.diag(normal))
        step = -np.asarray(np.linalg.solve(damped, slopes.T @ residuals), np.float64)
        trial = state.stepped(step)
        after = residuals_of(trial)
        trial_cost = float(after @ after)
        if not trial_cost <= cost * (1 + 1e-12):
            damping *= 10
            if damping > 1e6:
                break
            continue
        gain, state, residuals, cost = cost - trial_cost, trial, after, trial_cost
        damping = max(damping / 10, 1e-9)
        if gain < 1e-7 * (1 + cost):
            break
    return state
