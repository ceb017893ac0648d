"""A pipe's two edges and a flat reference that lies on it, fitted together.

The reference's plane touches the pipe along a line, whose distance its scale tells in focal
lengths; the silhouette tells that of the axis in radii. So with the diameter both tell the
focal length, which is one of the unknowns, with what is known of it beforehand. Weighted least
squares with the covariance by source, as in `ptmark.scale.fit`.
"""

from dataclasses import dataclass, replace

import numpy as np
import numpy.typing as npt

from ptmark.scale.cylinder import Cylinder, cylinder_of, touched_by
from ptmark.scale.fit import Evidence
from ptmark.scale.least_squares import minimise
from ptmark.scale.maps import UNKNOWN_FOCAL_U
from ptmark.scale.pipe import DIAMETER_REL, UNKNOWN_PIPE_FOCAL_U, FoundEdges
from ptmark.scale.pipe_map import (
    MOVED_U,
    MOVED_WEIGHT,
    TOUCH_REL_U,
    MovedCylinder,
    principal_steps,
)
from ptmark.scale.plane import Pose, apply_homography, pose_from_homography
from ptmark.scale.problem import CAMERA_STEPS, Problem, State

__all__ = ["JointPipe", "fit_pipe", "touch_by_edges"]

Array = npt.NDArray[np.float64]

_RADIUS_U = DIAMETER_REL / np.sqrt(3)
# The own parameters of a pipe: turn (rad) and shift (mm) of the line where it is touched from
# where that was thought, and the radius's error in standard uncertainties.
_PIPE = 3
_ANY = (1e3, 1e6)
# A line picked along the pipe runs along it within this, rad. Common practice, no source.
_TURN_U = 0.02
# What numeric slopes step by: turns, shifts, focal, centre, kappa; then a pipe's own.
_STEPS = (*[1e-6] * 3, *[1e-4] * 3, 1e-6, 1e-3, 1e-3, 1e-6, 1e-6, 1e-4, 1e-3)
_OWN_STEP = 1e-4


@dataclass(frozen=True, slots=True, eq=False)
class JointPipe:
    """The cylinder that fits, and where it would be with each quantity off.

    ``chance`` is how often references that agree differ as much as these or more.
    ``log_focal_u`` as in `ptmark.scale.fit.PlaneFit`; ``centre`` of shape (2,), px.
    """

    body: Cylinder
    moved: tuple[MovedCylinder, ...]
    chance: float
    focal_px: float
    log_focal_u: float
    centre: Array


class _PipeProblem(Problem):
    """Residuals of a flat reference, of edges, and of what is known beforehand."""

    def __init__(
        self,
        told: Evidence,
        edges: FoundEdges,
        line_mm: Array,
        radius: float,
        touch_u: tuple[float, float],
    ) -> None:
        alone = told.problem
        self.told, self.edges, self.line, self.radius = told, edges, line_mm, radius
        priors = alone.priors
        focal_u = priors.log_focal_u
        if focal_u >= UNKNOWN_FOCAL_U:
            focal_u = max(focal_u, UNKNOWN_PIPE_FOCAL_U)
        sizes = [1.0] * len(told.sizes)
        own_u = (*touch_u, 1.0, *sizes, *priors.own_u)
        self.first = _PIPE + len(sizes)
        super().__init__(
            alone.points_px,
            alone.u_px,
            alone.model,
            replace(priors, own_u=own_u, log_focal_u=focal_u),
            alone.lens,
        )

    def start(self, pose: Pose) -> State:
        alone = self.told.state
        return State(pose, alone.kappa, np.concatenate([np.zeros(self.first), alone.own]))

    def body(self, state: State) -> Cylinder:
        """The cylinder of a state."""
        turn, aside, longer = state.own[:_PIPE]
        along = self.line[1] - self.line[0]
        cos, sin = np.cos(turn), np.sin(turn)
        along = np.array([[cos, -sin], [sin, cos]]) @ along / np.hypot(*along)
        middle = self.line.mean(axis=0) + aside * np.array([-along[1], along[0]])
        lens = self.lens_of(state)
        near = lens.undistort(self.points_px.mean(axis=0))
        pose, radius = state.pose, self.radius * (1 + longer * _RADIUS_U)
        ends = np.array([middle, middle + along])
        return touched_by(pose.to_mm(), pose.camera_mm, ends, radius, lens, near)

    def picks(self, state: State, plane: Array | None = None) -> Array:
        """Whitened residuals of the reference's points, then of the edges', shape (M + 4,)."""
        mine = state.own[self.first :]
        if plane is None:
            plain = self.told.problem.model(mine)
            plane = plain
            for size, off in zip(self.told.sizes, state.own[_PIPE : self.first], strict=True):
                plane = plane + off * (size(mine) - plain)
        flat = self.told.problem.picks(State(state.pose, state.kappa, mine), plane)
        beside = _beside_limb(self.body(state), self.edges.points_px) / self.edges.u_px
        return np.concatenate([flat, beside])

    def slopes(self, state: State) -> Array:
        """Derivative of the residuals by the local step, central differences."""
        sizes = np.full(CAMERA_STEPS + len(state.own), _OWN_STEP)
        sizes[: len(_STEPS)] = _STEPS
        columns = []
        for i, size in enumerate(sizes):
            step = np.zeros(len(sizes))
            step[i] = size
            up, down = (self.residuals(state.stepped(sign * step)) for sign in (1, -1))
            columns.append((up - down) / (2 * size))
        return np.column_stack(columns)


def _beside_limb(body: Cylinder, points_px: Array) -> Array:
    """How far points lie outside the edge that a cylinder shows, px, shape (N,)."""
    rays, back = body.rays(points_px), body.back
    aside, away = rays[:, :1], rays[:, 2:]
    slope = (away * back[0, :2] - aside * back[2, :2]) / (aside**2 + away**2)
    over = np.abs(np.arctan2(aside, away)).ravel() - np.arcsin(body.radius / body.distance)
    return np.asarray(over / np.hypot(slope[:, 0], slope[:, 1]))


def touch_by_edges(
    told: Evidence, edges: FoundEdges, radius: float, pose: Pose | None = None
) -> Array:
    """Where a plane touches the pipe that edges alone tell: two places on it, mm, (2, 2).

    The line of the cylinder whose outward normal is nearest to the plane's. ``pose`` is the
    plane's, where not as it was fitted alone.
    """
    state = told.state
    pose = pose or state.pose
    lens = told.problem.lens_of(state)
    given = [*edges.points_px.ravel(), np.log(pose.focal_px), *pose.centre, state.kappa, radius]
    body = cylinder_of(np.array(given), lens)
    f, (x, y) = pose.focal_px, pose.centre
    turn = body.back @ np.array([[f, 0, x], [0, f, y], [0, 0, 1.0]])
    axis, away = turn[1], turn[2]
    out = -pose.rotation[:, 2]
    out = out - (out @ axis) * axis
    middle = body.distance * away + radius * out / np.linalg.norm(out)
    at = np.array([middle - radius / 2 * axis, middle + radius / 2 * axis])
    seen = f * at[:, :2] / at[:, 2:] + pose.centre
    return apply_homography(pose.to_mm(), seen)


def fit_pipe(
    told: Evidence,
    edges: FoundEdges,
    radius: float,
    line_mm: Array | None = None,
) -> JointPipe:
    """Fit edges and reference together.

    Parameters
    ----------
    told : Evidence
        Of the flat reference's own plane.
    edges : FoundEdges
    radius : float
        mm, known to `DIAMETER_REL`.
    line_mm : ndarray of shape (2, 2)
        Two places on the plane, mm, of the line where it touches, if that is known beforehand
        (`TOUCH_REL_U`).

    Raises
    ------
    numpy.linalg.LinAlgError
        If they fix no pipe.
    """
    problem, state = _fitted(told, edges, radius, line_mm)
    slopes, left = problem.slopes(state), problem.residuals(state)
    joint = np.asarray(np.linalg.inv(slopes.T @ slopes), np.float64)
    before = told.problem.residuals(told.state)
    more = max(float(left @ left - before @ before), 0.0)
    parts = _parts(problem, slopes, joint)
    freedom = len(left) - slopes.shape[1]
    if freedom > 0 and left @ left > freedom:
        parts["map"] = parts["picking"] * (float(left @ left) / freedom - 1)
    moved = [
        MovedCylinder(name, MOVED_WEIGHT, problem.body(state.stepped(sign * MOVED_U * step)))
        for name, part in parts.items()
        for step in principal_steps(part)
        for sign in (1, -1)
    ]
    return JointPipe(
        problem.body(state),
        tuple(moved),
        _chance(more, tied=line_mm is not None),
        state.pose.focal_px,
        float(np.sqrt(joint[6, 6])),
        state.pose.centre,
    )


def _fitted(
    told: Evidence, edges: FoundEdges, radius: float, line_mm: Array | None
) -> tuple[_PipeProblem, State]:
    """The best of what is found from the focal length as fitted, shorter and longer.

    Where it was not known, an edge's slant and a short focal length show much the same.
    """
    alone = told.state.pose
    known = told.problem.priors.log_focal_u < UNKNOWN_FOCAL_U
    tries = []
    for factor in (1.0,) if known else (1.0, 0.55, 1.8):
        to_px = alone.to_px()
        pose = alone
        if factor != 1.0:
            pose = pose_from_homography(to_px, factor * alone.focal_px, alone.centre)
        line = touch_by_edges(told, edges, radius, pose) if line_mm is None else line_mm
        touch_u = _ANY if line_mm is None else (_TURN_U, TOUCH_REL_U * radius)
        problem = _PipeProblem(told, edges, line, radius, touch_u)
        state = minimise(problem.residuals, problem.slopes, problem.start(pose), 60)
        left = problem.residuals(state)
        tries.append((float(left @ left), problem, state))
    _, problem, state = min(tries, key=lambda one: one[0])
    return problem, state


def _parts(problem: _PipeProblem, slopes: Array, joint: Array) -> dict[str, Array]:
    """Covariance of the local step by source."""
    count = len(slopes) - len(problem.beforehand(problem.start(problem.told.state.pose)))
    touch, radius = count + 4, count + 6
    own = radius + len(problem.prior_u) - 6
    rows = {
        "picking": slopes[:count],
        "focal length": slopes[count : count + 1],
        "lens": slopes[count + 1 : touch],
        "touching line": slopes[touch:radius],
        "reference": slopes[radius:own],
        "tilt": slopes[own:],
    }
    return {name: joint @ (r.T @ r) @ joint for name, r in rows.items() if len(r)}


def _chance(more: float, *, tied: bool) -> float:
    """Share of a chi-squared beyond ``more`` (Abramowitz and Stegun, 1964, 26.4.5).

    Four places on edges are two more than the line of touch takes; where that was known
    beforehand all four count.
    """
    half = more / 2
    return float(np.exp(-half) * (1 + half * tied))
