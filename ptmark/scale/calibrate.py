"""A camera's lens from several photos of one flat pattern: focal length, centre, radial terms.

Bundle adjustment of all photos together: each has its own pose, the lens is theirs in common
(Zhang 2000, "A flexible new technique for camera calibration", section 3; radial series of
Brown 1971). Sizes of the pattern do not matter, only that it is flat and its steps are even.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
import numpy.typing as npt

from ptmark.errors import ScaleError
from ptmark.scale.plane import (
    Lens,
    Pose,
    fit_homography,
    focal_from_homography,
    pose_from_homography,
)
from ptmark.scale.problem import Priors, Problem, State

__all__ = ["LensFit", "View", "fit_lens"]

Array = npt.NDArray[np.float64]

LEAST_VIEWS = 5
# Towards the corners the radial terms are most felt; a pattern that never came there cannot
# tell them.
LEAST_REACH = 0.6
# Points that lie this far off are no points of a flat pattern.
MOST_RESIDUAL_PX = 0.0006  # of the diagonal: 3 px at 12 megapixels
# A focal length less sure than this means that no photo was taken aslant.
MOST_FOCAL_U = 0.05
# Loose knowledge that only keeps the fit from running away: centre, in diagonals, radial terms.
_CENTRE_U, _RADIAL_U = 0.03, 0.3
_SHARED = 5  # log focal length, centre x and y, kappa, kappa_2


@dataclass(frozen=True, slots=True, eq=False)
class View:
    """One photo's points: ``seen_px`` and ``plane`` of shape (N, 2), any even unit."""

    seen_px: Array
    plane: Array


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class LensFit:
    """What the photos tell of the lens.

    Attributes
    ----------
    lens : Lens
    focal_px, focal_rel_u : float
    centre : ndarray of shape (2,)
        Optical centre, px.
    centre_u_px : float
        Larger standard uncertainty of its two coordinates.
    kappa_u : float
        Standard uncertainty of both radial terms together, as one of ``kappa``: the largest
        that any radius in the picture has.
    residual_px : float
        Root mean square misfit.
    """

    lens: Lens
    focal_px: float
    focal_rel_u: float
    centre: Array
    centre_u_px: float
    kappa_u: float
    residual_px: float


def fit_lens(
    views: Sequence[View], width: int, height: int, focal_px: float | None = None
) -> LensFit:
    """Fit one lens to the points of several photos.

    Parameters
    ----------
    views : sequence of View
        At least five, of pictures of the same size.
    width, height : int, px
    focal_px : float, optional
        Where to start, as EXIF tells it.

    Raises
    ------
    ScaleError
        If there are too few photos, they leave the corners out, none is taken aslant, or the
        points are not those of a flat pattern.
    """
    _check_views(views, width, height)
    lens = Lens.of_picture(width, height)
    states = [_start(view, lens, focal_px) for view in views]
    focal = focal_px or float(np.median([one.pose.focal_px for one in states]))
    states = [State(_start(view, lens, focal).pose, 0.0, np.zeros(0)) for view in views]
    states, kappa_2 = _minimise(_Bundle(views, lens, focal), states)
    bundle = _Bundle(views, lens, focal)
    residuals, slopes = bundle.linear(states, kappa_2)
    try:
        joint = np.linalg.inv(slopes.T @ slopes)
    except np.linalg.LinAlgError as exc:
        raise ScaleError("these photos do not tell the lens", where="calibration") from exc
    count = sum(view.seen_px.size for view in views)
    free = count - (slopes.shape[1] - _SHARED)
    noise2 = float(residuals[:count] @ residuals[:count]) / max(free, 1)
    shared = joint[:_SHARED, :_SHARED] * noise2
    pose = states[0].pose
    fit = LensFit(
        lens=replace(lens, kappa=states[0].kappa, kappa_2=kappa_2),
        focal_px=pose.focal_px,
        focal_rel_u=float(np.sqrt(shared[0, 0])),
        centre=pose.centre,
        centre_u_px=float(np.sqrt(max(shared[1, 1], shared[2, 2]))),
        kappa_u=_radial_u(shared[3:, 3:]),
        residual_px=float(np.sqrt(2 * (residuals[:count] ** 2).mean())),
    )
    _check_fit(fit)
    return fit


class _Bundle:
    """Residuals and slopes of all views; shared steps first, then six of pose for each."""

    def __init__(self, views: Sequence[View], lens: Lens, focal: float) -> None:
        self.views, self.lens, self.focal = views, lens, focal

    def linear(self, states: Sequence[State], kappa_2: float) -> tuple[Array, Array]:
        rows, blocks = [], []
        lens = replace(self.lens, kappa_2=kappa_2)
        for i, (view, state) in enumerate(zip(self.views, states, strict=True)):
            plane = view.plane
            problem = Problem(
                view.seen_px,
                np.ones(len(plane)),
                lambda _own, plane=plane: plane,  # type: ignore[misc]
                Priors(self.focal, 1.0),
                lens,
            )
            count = view.seen_px.size
            own = problem.slopes(state)[:count]
            block = np.zeros((count, _SHARED + 6 * len(self.views)))
            block[:, :4] = own[:, 6:10]
            away = (view.seen_px - np.asarray(lens.centre)) / lens.radius_px
            r4 = (away**2).sum(axis=1, keepdims=True) ** 2
            block[:, 4] = -(away * r4 * lens.radius_px).ravel()
            block[:, _SHARED + 6 * i : _SHARED + 6 * i + 6] = own[:, :6]
            rows.append(problem.picks(state))
            blocks.append(block)
        off, loose = self._beforehand(states[0], kappa_2)
        prior = np.zeros((_SHARED, blocks[0].shape[1]))
        prior[:, :_SHARED] = loose
        return np.concatenate([*rows, off]), np.vstack([*blocks, prior])

    def _beforehand(self, state: State, kappa_2: float) -> tuple[Array, Array]:
        """Loose priors as five more rows; weak beside hundreds of points."""
        diagonal = 2 * self.lens.radius_px
        u = np.array([0.5, _CENTRE_U * diagonal, _CENTRE_U * diagonal, _RADIAL_U, _RADIAL_U])
        focal = float(np.log(state.pose.focal_px / self.focal))
        away = state.pose.centre - np.asarray(self.lens.centre)
        return np.array([focal, *away, state.kappa, kappa_2]) / u, np.diag(1 / u)


def _minimise(bundle: _Bundle, states: list[State]) -> tuple[list[State], float]:
    """Levenberg-Marquardt over all photos."""
    kappa_2, damping = 0.0, 1e-4
    residuals, slopes = bundle.linear(states, kappa_2)
    cost = float(residuals @ residuals)
    for _ in range(60):
        normal = slopes.T @ slopes
        step = -np.linalg.solve(
            normal + damping * np.diag(np.diag(normal)), slopes.T @ residuals
        )
        trial = [
            one.stepped(np.concatenate([step[_SHARED + 6 * i :][:6], step[:4]]))
            for i, one in enumerate(states)
        ]
        off, moved = bundle.linear(trial, kappa_2 + float(step[4]))
        trial_cost = float(off @ off)
        if not trial_cost <= cost * (1 + 1e-12):
            damping *= 10
            if damping > 1e6:
                break
            continue
        gain, states, kappa_2 = cost - trial_cost, trial, kappa_2 + float(step[4])
        residuals, slopes, cost = off, moved, trial_cost
        damping = max(damping / 10, 1e-9)
        if gain < 1e-7 * (1 + cost):
            break
    return states, kappa_2


def _start(view: View, lens: Lens, focal_px: float | None) -> State:
    to_px = fit_homography(view.plane, view.seen_px)
    centre = np.asarray(lens.centre)
    usual = 1.2 * lens.radius_px
    focal = focal_px
    if focal is None:
        guess = focal_from_homography(to_px, centre)
        focal = usual if guess is None else float(np.clip(guess, usual / 3, usual * 5))
    pose: Pose = pose_from_homography(to_px, focal, centre)
    return State(pose, 0.0, np.zeros(0))


def _radial_u(covariance: Array) -> float:
    """Largest standard uncertainty of ``kappa + kappa_2 r²`` over the picture's radii."""
    rows = np.column_stack([np.ones(21), np.linspace(0.0, 1.0, 21) ** 2])
    return float(np.sqrt(np.einsum("ij,jk,ik->i", rows, covariance, rows).max()))


def _check_views(views: Sequence[View], width: int, height: int) -> None:
    if len(views) < LEAST_VIEWS:
        raise ScaleError(
            f"the pattern was found in {len(views)} photos, {LEAST_VIEWS} are needed",
            where="calibration",
            mend="photograph it flat and whole, sharp, from several sides",
        )
    middle = np.array([(width - 1) / 2, (height - 1) / 2])
    away = max(float(np.hypot(*(one.seen_px - middle).T).max()) for one in views)
    if away < LEAST_REACH * np.hypot(width, height) / 2:
        raise ScaleError(
            "the pattern never came near the corners of the picture",
            where="calibration",
            mend="take photos with the pattern in each corner, and filling the picture",
        )


def _check_fit(fit: LensFit) -> None:
    if fit.residual_px > MOST_RESIDUAL_PX * 2 * fit.lens.radius_px:
        raise ScaleError(
            f"the points lie {fit.residual_px:.1f} px off a flat pattern",
            where="calibration",
            mend="lay the pattern flat, on glass or a plate, and use one camera at one zoom",
        )
    if fit.focal_rel_u > MOST_FOCAL_U:
        raise ScaleError(
            "no photo is taken aslant, so the focal length stays open",
            where="calibration",
            mend="tilt the camera by some 30 degrees in half of the photos",
        )
