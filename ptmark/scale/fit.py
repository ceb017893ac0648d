"""Fit a plane's pose to picked points, with what is known beforehand of the camera.

Weighted least squares with prior knowledge as further observations; the covariance is split
by source so that each can be named in a budget (JCGM 100:2008, 5.2 and F.1.2).
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from ptmark.errors import ScaleError
from ptmark.scale.plane import Lens, Pose, apply_homography

__all__ = ["KAPPA_U", "Model", "PlaneFit", "Priors", "fit_plane"]

Array = npt.NDArray[np.float64]

# A phone's own correction leaves about one percent of radial distortion at the picture's
# corner. Common practice, no source.
KAPPA_U = 0.015
# Principal point against the picture's middle, in units of the diagonal. Common practice, no
# source: phone modules are centred to about one percent.
CENTRE_U = 0.01
_CAMERA = 10  # 3 turns, 3 shifts, log focal, 2 centre, kappa


@dataclass(frozen=True, slots=True)
class Priors:
    """What is known of the camera before looking: standard uncertainties.

    ``log_focal_u`` relative focal length; ``tilt_u`` rad about each axis, None where the
    reference itself must tell the tilt; ``extra_u`` of the model's own further parameters.
    """

    focal_px: float
    log_focal_u: float
    tilt_u: float | None = None
    extra_u: tuple[float, ...] = ()


# From the model's own parameters to points on the plane, shape (N, 2), mm; linear.
Model = Callable[[Array], Array]


@dataclass(frozen=True, slots=True, eq=False)
class PlaneFit:
    """A fitted plane: parameters' covariance by source, misfit and what was left out."""

    pose: Pose
    lens: Lens
    extra: Array
    covariance: dict[str, Array]  # (9, 9) over h and kappa
    residuals_px: Array  # (N, 2)
    kept: npt.NDArray[np.bool_]  # (N,)
    chi2: float
    dof: int
    log_focal_u: float
    height_rel_u: float


@dataclass(slots=True, eq=False)
class _State:
    pose: Pose
    kappa: float
    extra: Array

    def stepped(self, step: Array) -> "_State":
        return _State(
            self.pose.stepped(step[:9]),
            self.kappa + float(step[9]),
            self.extra + step[_CAMERA:],
        )


class _Problem:
    """Residuals of points and priors, each whitened, as a function of a `_State`."""

    def __init__(
        self, points_px: Array, u_px: Array, model: Model, priors: Priors, lens: Lens
    ) -> None:
        self.points_px, self.u_px = points_px, u_px
        self.model, self.priors, self.lens = model, priors, lens
        diagonal = 2 * lens.radius_px
        self.prior_u = np.array(
            [
                priors.log_focal_u,
                CENTRE_U * diagonal,
                CENTRE_U * diagonal,
                KAPPA_U,
                *priors.extra_u,
            ]
        )

    def picks(self, state: _State, plane: Array | None = None) -> Array:
        """Whitened residuals of the points, shape (2N,)."""
        at = self.model(state.extra) if plane is None else plane
        seen = Lens(self.lens.centre, self.lens.radius_px, state.kappa).undistort(
            self.points_px
        )
        return np.asarray(
            ((apply_homography(state.pose.to_px(), at) - seen) / self.u_px[:, None]).ravel()
        )

    def beforehand(self, state: _State) -> Array:
        """Whitened departures from what is known beforehand."""
        pose = state.pose
        off = (
            np.array(
                [
                    np.log(pose.focal_px / self.priors.focal_px),
                    *(pose.centre - self.lens.centre),
                    state.kappa,
                    *state.extra,
                ]
            )
            / self.prior_u
        )
        if self.priors.tilt_u is None:
            return off
        return np.concatenate([off, pose.rotation[2, :2] / self.priors.tilt_u])

    def residuals(self, state: _State) -> Array:
        return np.concatenate([self.picks(state), self.beforehand(state)])

    def slopes(self, state: _State) -> Array:
        """Derivative of the residuals by the local step of `Pose.stepped`, kappa and own."""
        pose, own = state.pose, state.extra
        plane = self.model(own)
        turned = plane @ pose.rotation[:, :2].T
        seen = turned + pose.translation
        n, depth = len(plane), seen[:, 2]
        towards = np.zeros((n, 2, 3))  # picture by camera frame
        towards[:, 0, 0] = towards[:, 1, 1] = pose.focal_px / depth
        towards[:, :, 2] = -pose.focal_px * seen[:, :2] / depth[:, None] ** 2
        moves = np.zeros((n, 3, 9))  # camera frame by step
        x, y, z = turned.T
        moves[:, 0, 1], moves[:, 0, 2] = z, -y
        moves[:, 1, 0], moves[:, 1, 2] = -z, x
        moves[:, 2, 0], moves[:, 2, 1] = y, -x
        moves[:, :, 3:6] = np.eye(3)
        moves[:, 2, 6] = pose.translation[2]
        moves[:, 0, 7] = moves[:, 1, 8] = -pose.translation[2] / pose.focal_px
        slopes = np.zeros((n, 2, _CAMERA + len(own)))
        slopes[:, :, :9] = towards @ moves
        slopes[:, :, 6] += pose.focal_px * seen[:, :2] / depth[:, None]
        slopes[:, :, 7:9] += np.eye(2)
        from_centre = self.points_px - np.asarray(self.lens.centre)
        slopes[:, :, 9] = -from_centre * (
            (from_centre**2).sum(axis=1, keepdims=True) / self.lens.radius_px**2
        )
        for i in range(len(own)):
            step = np.zeros(len(own))
            step[i] = 1.0  # models are linear in their own parameters
            moved = (self.model(own + step) - plane) @ pose.rotation[:, :2].T
            slopes[:, :, _CAMERA + i] = (towards @ moved[:, :, None])[:, :, 0]
        picks = (slopes / self.u_px[:, None, None]).reshape(2 * n, -1)
        return np.vstack([picks, self._prior_slopes(state)])

    def _prior_slopes(self, state: _State) -> Array:
        own = np.diag(1 / self.prior_u)
        rows = np.hstack([np.zeros((len(own), 6)), own])
        if self.priors.tilt_u is None:
            return rows
        column = state.pose.rotation
        tilt = np.zeros((2, rows.shape[1]))
        # rotation[2, :2] after a small turn w: (w x column)_z
        tilt[:, 0], tilt[:, 1] = column[1, :2], -column[0, :2]
        return np.vstack([rows, tilt / self.priors.tilt_u])


def fit_plane(
    points_px: Array,
    u_px: Array,
    model: Model,
    start: Pose,
    priors: Priors,
    lens: Lens,
    *,
    robust: bool = False,
    perturbed: tuple[Model, ...] = (),
    extra: Array | None = None,
) -> PlaneFit:
    """Fit pose, focal length, centre, lens term and the model's own parameters.

    Parameters
    ----------
    points_px : ndarray of shape (N, 2)
        Seen points.
    u_px : ndarray of shape (N,)
        Standard uncertainty of each coordinate, px.
    model : callable
        Gives the same points on the plane, mm.
    start, priors, lens
        Where to start and what is known beforehand.
    robust : bool
        Leave out points that contradict the others.
    perturbed : tuple of callable
        The model with its points moved by one standard uncertainty of each source of the
        reference's own size; propagated as "reference".
    extra : ndarray, optional
        Start of the model's own parameters.

    Raises
    ------
    ScaleError
        If the points fix no plane.
    """
    n_extra = len(priors.extra_u)
    state = _State(start, 0.0, np.zeros(n_extra) if extra is None else extra)
    kept = np.ones(len(points_px), bool)
    if robust:
        state, kept = _without_outliers(points_px, u_px, model, state, priors, lens)
    problem = _subset(kept, points_px, u_px, model, priors, lens)
    state = _minimise(problem, state, np.ones(2 * int(kept.sum())))
    slopes = problem.slopes(state)
    try:
        joint = np.linalg.inv(slopes.T @ slopes)
    except np.linalg.LinAlgError as exc:
        raise ScaleError("these points fix no plane", where="scale") from exc
    residuals = problem.residuals(state)
    n_picks = 2 * int(kept.sum())
    shifts = [
        joint
        @ slopes[:n_picks].T
        @ (problem.picks(state, moved(state.extra)[kept]) - residuals[:n_picks])
        for moved in perturbed
    ]
    parts = _split(joint, slopes, n_picks, 4 + n_extra)
    parts["reference"] = sum((np.outer(s, s) for s in shifts), np.zeros_like(joint))
    chi2, dof = float(residuals @ residuals), len(residuals) - slopes.shape[1]
    if dof > 0 and chi2 > dof:
        parts["map"] = parts["picking"] * (chi2 / dof - 1)
    to_h = _homography_slopes(state, slopes.shape[1])
    full = _Problem(points_px, np.ones(len(points_px)), model, priors, lens)
    height = _height_slopes(state, slopes.shape[1])
    return PlaneFit(
        state.pose,
        Lens(lens.centre, lens.radius_px, state.kappa),
        state.extra,
        {name: to_h @ part @ to_h.T for name, part in parts.items()},
        full.picks(state).reshape(-1, 2),
        kept,
        chi2,
        dof,
        float(np.sqrt(joint[6, 6])),
        float(np.sqrt(height @ joint @ height) / abs(state.pose.camera_mm[2])),
    )


def _subset(
    kept: npt.NDArray[np.bool_],
    points_px: Array,
    u_px: Array,
    model: Model,
    priors: Priors,
    lens: Lens,
) -> _Problem:
    return _Problem(points_px[kept], u_px[kept], lambda own: model(own)[kept], priors, lens)


def _minimise(problem: _Problem, state: _State, weights: Array) -> _State:
    """Levenberg-Marquardt with fixed weights on the picks."""
    damping = 1e-6
    n_prior = len(problem.beforehand(state))
    scale = np.concatenate([np.sqrt(weights), np.ones(n_prior)])
    residuals = problem.residuals(state) * scale
    for _ in range(60):
        slopes = problem.slopes(state) * scale[:, None]
        normal = slopes.T @ slopes
        step = -np.linalg.solve(
            normal + damping * np.diag(np.diag(normal)), slopes.T @ residuals
        )
        trial = state.stepped(step)
        after = problem.residuals(trial) * scale
        if not np.isfinite(after).all() or after @ after > residuals @ residuals * (1 + 1e-12):
            damping = max(damping * 10, 1e-6)
            if damping > 1e8:
                break
            continue
        gain = residuals @ residuals - after @ after
        state, residuals, damping = trial, after, damping / 10
        if gain < 1e-7 * (1 + after @ after):
            break
    return state


def _without_outliers(
    points_px: Array, u_px: Array, model: Model, state: _State, priors: Priors, lens: Lens
) -> tuple[_State, npt.NDArray[np.bool_]]:
    """Reweighted fit that bears points far off (Cauchy weights), then a plain 5-sigma cut."""
    problem = _Problem(points_px, u_px, model, priors, lens)
    weights = np.ones(2 * len(points_px))
    spread = 1.0
    for _ in range(8):
        state = _minimise(problem, state, weights)
        off = problem.picks(state).reshape(-1, 2)
        size = np.hypot(off[:, 0], off[:, 1])
        spread = max(1.0, 1.2 * float(np.median(size)))
        weights = np.repeat(1 / (1 + (size / (2 * spread)) ** 2) ** 2, 2)
    return state, size <= 5 * spread


def _split(joint: Array, slopes: Array, n_picks: int, n_camera: int) -> dict[str, Array]:
    """Covariance of the step by source: picks, lens (focal, centre, kappa), tilt."""
    blocks = {
        "picking": slopes[:n_picks],
        "lens": slopes[n_picks : n_picks + n_camera],
        "tilt": slopes[n_picks + n_camera :],
    }
    return {name: joint @ (rows.T @ rows) @ joint for name, rows in blocks.items() if len(rows)}


def _homography_slopes(state: _State, n: int) -> Array:
    """Derivative of (h, kappa) by the local step, shape (9, n)."""
    slopes = np.zeros((9, n))
    slopes[8, 9] = 1.0
    for i, size in enumerate([1e-6] * 3 + [1e-4] * 3 + [1e-6] + [1e-3] * 2):
        step = np.zeros(9)
        step[i] = size
        up, down = state.pose.stepped(step).to_mm(), state.pose.stepped(-step).to_mm()
        slopes[:8, i] = ((up - down) / (2 * size)).ravel()[:8]
    return slopes


def _height_slopes(state: _State, n: int) -> Array:
    slopes = np.zeros(n)
    for i, size in enumerate([1e-6] * 3 + [1e-4] * 3):
        step = np.zeros(9)
        step[i] = size
        up, down = state.pose.stepped(step).camera_mm, state.pose.stepped(-step).camera_mm
        slopes[i] = (up[2] - down[2]) / (2 * size)
    return slopes
