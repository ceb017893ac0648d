"""Fit a plane's pose to picked points, with what is known beforehand of the camera.

Weighted least squares with prior knowledge as further observations; the covariance is split
by source so that each can be named in a budget (JCGM 100:2008, 5.2 and F.1.2).
"""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from ptmark.errors import ScaleError
from ptmark.scale.least_squares import minimise
from ptmark.scale.plane import Lens, Pose
from ptmark.scale.problem import CAMERA_STEPS, Model, Problem, State

__all__ = ["Evidence", "PlaneFit", "fit_plane"]

Array = npt.NDArray[np.float64]
Mask = npt.NDArray[np.bool_]

_OUTLIER_SIGMA = 5.0
_SETTLED_SIGMA = 0.1  # of every point: more rounds of weighing move none across the cut


@dataclass(frozen=True, slots=True, eq=False)
class Evidence:
    """What a plane was fitted to, so that it can be fitted together with more.

    ``problem`` holds the kept points; ``sizes`` is the model with each independent error of
    the reference's own size at one standard uncertainty. ``pull`` of shape (9, 4) is how the
    map's parameters follow a standard error of what is known of the camera beforehand: focal
    length, centre x and y, lens term.
    """

    problem: Problem
    state: State
    sizes: tuple[Model, ...]
    pull: Array


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class PlaneFit:
    """A fitted plane.

    Attributes
    ----------
    pose, lens
        The plane and the lens term that fit.
    own : ndarray
        The model's own parameters.
    covariance : mapping of name to ndarray of shape (9, 9)
        Over the eight entries of ``pose.to_mm()`` and kappa, by source.
    residuals_px : ndarray of shape (N, 2)
        Model minus seen, of every point.
    kept : ndarray of shape (N,)
        False for points left out because they contradict the others.
    chi2, dof : float, int
        Weighted sum of squares, priors included, and its degrees of freedom.
    log_focal_u, height_rel_u : float
        Relative standard uncertainty of focal length and of the camera's height.
    turn_u : float
        Largest standard uncertainty of the tilt about any axis in the picture, rad.
    evidence : Evidence
        What it was fitted to.
    """

    pose: Pose
    lens: Lens
    own: Array
    covariance: dict[str, Array]
    residuals_px: Array
    kept: Mask
    chi2: float
    dof: int
    log_focal_u: float
    height_rel_u: float
    turn_u: float
    evidence: Evidence


def fit_plane(
    problem: Problem, start: State, *, robust: bool = False, perturbed: tuple[Model, ...] = ()
) -> PlaneFit:
    """Fit pose, focal length, centre, lens term and the model's own parameters.

    Parameters
    ----------
    problem : Problem
    start : State
        Where to start; within some tens of degrees of tilt.
    robust : bool
        Leave out points that contradict the others.
    perturbed : tuple of callable
        The model with its points moved by one standard uncertainty of each source of the
        reference's own size; propagated as "reference".

    Raises
    ------
    ScaleError
        If the points fix no plane.
    """
    state, kept = start, np.ones(len(problem.points_px), dtype=bool)
    if robust:
        state, kept = _without_outliers(problem, start)
    used = problem.subset(kept)
    try:
        state = _minimise(used, state)
        slopes = used.slopes(state)
        joint = np.asarray(np.linalg.inv(slopes.T @ slopes), np.float64)
    except np.linalg.LinAlgError as exc:
        raise ScaleError("these points fix no plane", where="scale") from exc
    residuals = used.residuals(state)
    chi2, dof = float(residuals @ residuals), len(residuals) - slopes.shape[1]
    parts = _parts(used, state, slopes, joint)
    for moved in perturbed:
        change = used.picks(state, moved(state.own)[kept]) - used.picks(state)
        shift = joint @ slopes[: len(change)].T @ change
        parts["reference"] = parts.get("reference", 0.0) + np.outer(shift, shift)
    if dof > 0 and chi2 > dof:
        parts["map"] = parts["picking"] * (chi2 / dof - 1)
    to_h = np.zeros((9, len(joint)))
    *to_h[:8, :9], height = state.pose.to_mm_slopes()
    to_h[8, 9] = 1.0
    return PlaneFit(
        pose=state.pose,
        lens=used.lens_of(state),
        own=state.own,
        covariance={name: to_h @ part @ to_h.T for name, part in parts.items()},
        residuals_px=problem.picks(state).reshape(-1, 2) * problem.u_px[:, None],
        kept=kept,
        chi2=chi2,
        dof=dof,
        log_focal_u=float(np.sqrt(joint[6, 6])),
        height_rel_u=float(np.sqrt(height @ joint[:9, :9] @ height)),
        turn_u=float(np.sqrt(np.linalg.eigvalsh(joint[:2, :2])[-1])),
        evidence=Evidence(
            used,
            state,
            tuple(_kept(moved, kept) for moved in perturbed),
            to_h @ joint @ slopes[_camera_rows(used)].T,
        ),
    )


def _kept(model: Model, kept: Mask) -> Model:
    return lambda own: model(own)[kept]


def _camera_rows(problem: Problem) -> slice:
    """The residuals of what is known of the camera beforehand."""
    picks = 2 * len(problem.points_px)
    return slice(picks, picks + CAMERA_STEPS - 6)


def _minimise(
    problem: Problem, state: State, weights: Array | float = 1.0, most: int = 60
) -> State:
    """Levenberg-Marquardt with fixed weights on the points."""
    scale = np.ones(len(problem.residuals(state)))
    scale[: 2 * len(problem.points_px)] = np.sqrt(weights)
    return minimise(
        lambda at: problem.residuals(at) * scale,
        lambda at: problem.slopes(at) * scale[:, None],
        state,
        most,
    )


def _without_outliers(problem: Problem, state: State) -> tuple[State, Mask]:
    """Reweighted fit that bears points far off (Cauchy weights), then a plain cut."""
    off = problem.picks(state).reshape(-1, 2)
    for _ in range(10):
        size = np.hypot(off[:, 0], off[:, 1])
        spread = max(1.0, 1.2 * float(np.median(size)))
        weights = np.repeat(1 / (1 + (size / (2 * spread)) ** 2) ** 2, 2)
        state = _minimise(problem, state, weights, most=3)
        before, off = off, problem.picks(state).reshape(-1, 2)
        if np.abs(off - before).max() < _SETTLED_SIGMA:
            break
    size = np.hypot(off[:, 0], off[:, 1])
    return state, size <= _OUTLIER_SIGMA * max(1.0, 1.2 * float(np.median(size)))


def _parts(problem: Problem, state: State, slopes: Array, joint: Array) -> dict[str, Array]:
    """Covariance of the local step by source; the parts add up to ``joint``."""
    camera = _camera_rows(problem)
    own = camera.stop + len(state.own)
    blocks = {
        "picking": slopes[: camera.start],
        "lens": slopes[camera],
        "reference": slopes[camera.stop : own],
        "tilt": slopes[own:],
    }
    return {name: joint @ (rows.T @ rows) @ joint for name, rows in blocks.items() if len(rows)}
