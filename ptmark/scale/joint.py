"""Two references on one surface: their observations as one least squares problem.

The plane, focal length, optical centre and lens term are common. The first reference lies in
the surface's own frame; the second is turned and shifted in it. Either may lie some way nearer
the camera. A reference's own size and height are observations too: each of their errors is one
more unknown that is 0 with a standard uncertainty of 1, so that everything is weighed by its
covariance (JCGM 100:2008, F.1.2; generalised least squares).
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
import numpy.typing as npt

from ptmark.scale.fit import Evidence
from ptmark.scale.plane import Pose, rotation_from_vector
from ptmark.scale.problem import CAMERA_STEPS, Problem, State

__all__ = ["JointProblem", "Part"]

Array = npt.NDArray[np.float64]

# What is not known beforehand: the second reference's turn (rad) and place (mm).
ANY_TURN, ANY_PLACE_MM = 1e3, 1e6
PLACE = 3  # turn, x, y
# Cards cut from one print share its errors, those of two printers share none: half of the
# variance is taken as common. Own choice, no source.
COMMON_SHARE = 0.5


@dataclass(frozen=True, slots=True, eq=False)
class Part:
    """One reference: what it was fitted to alone, and how far nearer the camera it lies, mm."""

    evidence: Evidence
    offset_mm: float = 0.0
    offset_u_mm: float = 0.0


@dataclass(frozen=True, slots=True)
class _Error:
    """One unknown error, of standard uncertainty 1, with its ``weight`` by part.

    Of sizes, or of heights where ``size`` is None.
    """

    size: int | None
    weight: tuple[float, float]


def _errors(parts: Sequence[Part], *, alike: bool) -> list[_Error]:
    apart = np.sqrt(1 - COMMON_SHARE) if alike else 1.0
    found = []
    for i, part in enumerate(parts):
        found += [
            _Error(k, (apart * (i == 0), apart * (i == 1)))
            for k in range(len(part.evidence.sizes))
        ]
        if part.offset_u_mm:
            u = part.offset_u_mm
            found.append(_Error(None, (u * (i == 0), u * (i == 1))))
    if alike:
        both = float(np.sqrt(COMMON_SHARE))
        found += [_Error(k, (both, both)) for k in range(len(parts[0].evidence.sizes))]
    return found


class JointProblem(Problem):
    """Residuals of two references as a function of the surface's `State`.

    Its own parameters are the second's turn, x and y; the errors of sizes and heights; the
    first's own; the second's own. ``alike`` says that both are of one kind, with as many
    errors of size, half of which they share.
    """

    def __init__(self, first: Part, second: Part, *, alike: bool = False) -> None:
        self.parts = (first, second)
        self.errors = _errors(self.parts, alike=alike)
        one, other = first.evidence.problem, second.evidence.problem
        self.counts = [len(p.points_px) for p in (one, other)]
        begin = PLACE + len(self.errors)
        middle = begin + len(first.evidence.state.own)
        self.own = (slice(begin, middle), slice(middle, None))
        own_u = (ANY_TURN, ANY_PLACE_MM, ANY_PLACE_MM, *[1.0] * len(self.errors))
        tilts = {p.priors.tilt_u for p in (one, other)}
        priors = replace(
            one.priors,
            own_u=(*own_u, *one.priors.own_u, *other.priors.own_u),
            tilt_u=None if None in tilts else one.priors.tilt_u,
            log_focal_u=max(one.priors.log_focal_u, other.priors.log_focal_u),
            centre_u=max(one.priors.centre_u, other.priors.centre_u),
        )
        super().__init__(
            np.vstack([one.points_px, other.points_px]),
            np.concatenate([one.u_px, other.u_px]),
            self._planes,
            priors,
            one.lens,
        )

    def start(self, turn: float, place: Array) -> State:
        """Where to begin: the first's plane, the second placed by ``turn`` and x, y."""
        one, other = (part.evidence.state for part in self.parts)
        own = np.concatenate([[turn, *place], np.zeros(len(self.errors)), one.own, other.own])
        pose = one.pose
        # The first's own plane lies ``offset_mm`` before the surface.
        back = pose.translation + pose.rotation[:, 2] * self.parts[0].offset_mm
        return State(replace(pose, translation=back), one.kappa, own)

    def subset(self, kept: npt.NDArray[np.bool_]) -> "JointProblem":
        """The same; points were left out before, in each reference alone."""
        if not kept.all():
            raise ValueError("points are left out of each reference alone")
        return self

    def _plane(self, i: int, own: Array) -> Array:
        """Places of a part's points in its own frame, with its errors of size."""
        evidence, mine = self.parts[i].evidence, own[self.own[i]]
        plain = evidence.problem.model(mine)
        plane = plain
        for number, error in enumerate(self.errors):
            if error.size is not None and error.weight[i]:
                moved = evidence.sizes[error.size](mine) - plain
                plane = plane + own[PLACE + number] * error.weight[i] * moved
        return plane

    def _planes(self, own: Array) -> Array:
        return np.vstack([self._plane(0, own), self._plane(1, own)])

    def _lever(self, i: int, own: Array) -> Array:
        """Where a part's frame begins, in the surface's frame, mm."""
        heights = [
            own[PLACE + n] * e.weight[i] for n, e in enumerate(self.errors) if e.size is None
        ]
        nearer = self.parts[i].offset_mm + sum(heights)
        x, y = own[1:PLACE] if i else (0.0, 0.0)
        return np.array([x, y, -nearer])

    def _state(self, i: int, state: State) -> State:
        """The state of a part alone, its plane as seen by the camera."""
        pose, own = state.pose, state.own
        turned = pose.rotation
        if i:
            turned = turned @ rotation_from_vector(np.array([0.0, 0.0, own[0]]))
        there = pose.translation + pose.rotation @ self._lever(i, own)
        return State(
            Pose(turned, there, pose.focal_px, pose.centre), state.kappa, own[self.own[i]]
        )

    def picks(self, state: State, plane: Array | None = None) -> Array:
        """Whitened residuals of all points, the first's before the second's, shape (2N,)."""
        at = self._planes(state.own) if plane is None else plane
        split = np.split(at, [self.counts[0]])
        return np.concatenate(
            [
                part.evidence.problem.picks(self._state(i, state), split[i])
                for i, part in enumerate(self.parts)
            ]
        )

    def slopes(self, state: State) -> Array:
        """Derivative of the residuals by the local step, by the chain rule through each."""
        rows = [self._slopes(i, state) for i in (0, 1)]
        return np.vstack([*rows, self._prior_slopes(state)])

    def _slopes(self, i: int, state: State) -> Array:
        problem, count = self.parts[i].evidence.problem, 2 * self.counts[i]
        alone = self._state(i, state)
        by_part = problem.slopes(alone)[:count]
        made = by_part @ self._steps(i, state, alone)
        plane = self._plane(i, state.own)
        here = problem.picks(alone, plane)
        mine = state.own[self.own[i]]
        plain = problem.model(mine)
        for number, error in enumerate(self.errors):
            if error.size is not None and error.weight[i]:
                moved = self.parts[i].evidence.sizes[error.size](mine) - plain
                there = problem.picks(alone, plane + error.weight[i] * moved)
                made[:, CAMERA_STEPS + PLACE + number] = there - here
        return made

    def _steps(self, i: int, state: State, alone: State) -> Array:
        """Derivative of a part's local step by the joint one.

        A turn of the surface swings the part's origin about the surface's; zoom and centre
        move each origin by its own depth (`Pose.stepped`).
        """
        pose, own = state.pose, state.own
        steps = np.zeros((CAMERA_STEPS + len(alone.own), CAMERA_STEPS + len(own)))
        steps[:CAMERA_STEPS, :CAMERA_STEPS] = np.eye(CAMERA_STEPS)
        x, y, z = pose.rotation @ self._lever(i, own)
        steps[3:6, 0:3] = [[0, z, -y], [-z, 0, x], [y, -x, 0]]  # turn x lever
        deeper = pose.translation[2] - alone.pose.translation[2]
        steps[5, 6] = deeper
        steps[3, 7] = steps[4, 8] = -deeper / pose.focal_px
        if i:
            steps[0:3, CAMERA_STEPS] = pose.rotation[:, 2]
            steps[3:6, CAMERA_STEPS + 1 : CAMERA_STEPS + PLACE] = pose.rotation[:, :2]
        for number, error in enumerate(self.errors):
            if error.size is None:
                column = CAMERA_STEPS + PLACE + number
                steps[3:6, column] = -error.weight[i] * pose.rotation[:, 2]
        first = CAMERA_STEPS + (self.own[i].start or 0)
        count = len(alone.own)
        steps[CAMERA_STEPS:, first : first + count] = np.eye(count)
        return steps
