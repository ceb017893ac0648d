"""The equations of a plane seen by a camera: points and prior knowledge, each whitened.

A local step is 3 turns (rad), 3 shifts (mm), log focal length, 2 centre (px), kappa, and the
model's own parameters.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from ptmark.scale.plane import Lens, Pose, apply_homography

__all__ = [
    "CAMERA_STEPS",
    "CENTRE_U",
    "CROPPED_CENTRE_U",
    "Model",
    "Priors",
    "Problem",
    "State",
]

Array = npt.NDArray[np.float64]

# A phone's own correction leaves about one percent of radial distortion at the picture's
# corner. Common practice, no source.
KAPPA_U = 0.015
# Principal point against the picture's middle, in units of the diagonal: phone modules are
# centred to about one percent; in a cropped photo it may lie anywhere. Common practice, no
# source.
CENTRE_U, CROPPED_CENTRE_U = 0.01, 0.1
CAMERA_STEPS = 10  # 3 turns, 3 shifts, log focal, 2 centre, kappa


@dataclass(frozen=True, slots=True)
class Priors:
    """What is known of the camera before looking: standard uncertainties.

    ``log_focal_u`` relative focal length; ``tilt_u`` rad about each axis, None where the
    reference itself must tell the tilt; ``own_u`` of the model's own parameters;
    ``centre_u`` of the optical centre, in units of the picture's diagonal; ``kappa`` and
    ``kappa_u`` the lens term, 0 where no calibration tells it.
    """

    focal_px: float
    log_focal_u: float
    tilt_u: float | None = None
    own_u: tuple[float, ...] = ()
    centre_u: float = CENTRE_U
    kappa: float = 0.0
    kappa_u: float = KAPPA_U


# From the model's own parameters to points on the plane, shape (N, 2), mm; linear.
Model = Callable[[Array], Array]


@dataclass(slots=True, eq=False)
class State:
    """Pose, lens term and the model's own parameters."""

    pose: Pose
    kappa: float
    own: Array

    def stepped(self, step: Array) -> "State":
        return State(
            self.pose.stepped(step[:9]),
            self.kappa + float(step[9]),
            self.own + step[CAMERA_STEPS:],
        )


class Problem:
    """Residuals of points and priors, each whitened, as a function of a `State`."""

    def __init__(
        self, points_px: Array, u_px: Array, model: Model, priors: Priors, lens: Lens
    ) -> None:
        self.points_px, self.u_px = points_px, u_px
        self.model, self.priors, self.lens = model, priors, lens
        diagonal = 2 * lens.radius_px
        self.prior_u = np.array(
            [
                priors.log_focal_u,
                priors.centre_u * diagonal,
                priors.centre_u * diagonal,
                priors.kappa_u,
                *priors.own_u,
            ]
        )

    def subset(self, kept: npt.NDArray[np.bool_]) -> "Problem":
        """The same with some of the points only."""
        model = self.model
        return Problem(
            self.points_px[kept],
            self.u_px[kept],
            lambda own: model(own)[kept],
            self.priors,
            self.lens,
        )

    def lens_of(self, state: State) -> Lens:
        lens = self.lens
        return Lens(lens.centre, lens.radius_px, state.kappa, lens.kappa_2)

    def picks(self, state: State, plane: Array | None = None) -> Array:
        """Whitened residuals of the points, shape (2N,)."""
        at = self.model(state.own) if plane is None else plane
        seen = self.lens_of(state).undistort(self.points_px)
        return np.asarray(
            ((apply_homography(state.pose.to_px(), at) - seen) / self.u_px[:, None]).ravel()
        )

    def beforehand(self, state: State) -> Array:
        """Whitened departures from what is known beforehand."""
        pose = state.pose
        focal = np.log(pose.focal_px / self.priors.focal_px)
        centre = pose.centre - self.lens.centre
        bent = state.kappa - self.priors.kappa
        off: Array = np.array([focal, *centre, bent, *state.own]) / self.prior_u
        if self.priors.tilt_u is None:
            return off
        return np.concatenate([off, pose.rotation[2, :2] / self.priors.tilt_u])

    def residuals(self, state: State) -> Array:
        return np.concatenate([self.picks(state), self.beforehand(state)])

    def slopes(self, state: State) -> Array:
        """Derivative of the residuals by the local step of `Pose.stepped`, kappa and own."""
        pose, own = state.pose, state.own
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
        slopes = np.zeros((n, 2, CAMERA_STEPS + len(own)))
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
            slopes[:, :, CAMERA_STEPS + i] = (towards @ moved[:, :, None])[:, :, 0]
        picks = (slopes / self.u_px[:, None, None]).reshape(2 * n, -1)
        return np.vstack([picks, self._prior_slopes(state)])

    def _prior_slopes(self, state: State) -> Array:
        own = np.diag(1 / self.prior_u)
        rows = np.hstack([np.zeros((len(own), 6)), own])
        if self.priors.tilt_u is None:
            return rows
        column = state.pose.rotation
        tilt = np.zeros((2, rows.shape[1]))
        # rotation[2, :2] after a small turn w: (w x column)_z
        tilt[:, 0], tilt[:, 1] = column[1, :2], -column[0, :2]
        return np.vstack([rows, tilt / self.priors.tilt_u])
