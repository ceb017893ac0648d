"""A camera's lens from several photos of one flat pattern: focal length, centre, radial terms.

Bundle adjustment of all photos together: each has its own pose, the lens is theirs in common
(Zhang 2000, "A flexible new technique for camera calibration", section 3; radial series of
Brown 1971). Sizes of the pattern do not matter, only that it is flat and its steps are even.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial

import numpy as np
import numpy.typing as npt

from ptmark.errors import ScaleError
from ptmark.scale.least_squares import minimise
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
MOST_TRIALS = 100
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
    starts = [_start(view, lens, focal_px) for view in views]
    focal = focal_px or float(np.median([one.pose.focal_px for one in starts]))
    bundle = _Bundle(views, lens, focal)
    at = _Together(tuple(_start(view, lens, focal) for view in views), 0.0)
    try:
        at = minimise(bundle.residuals, bundle.slopes, at, MOST_TRIALS)
        residuals, slopes = bundle.residuals(at), bundle.slopes(at)
        joint = np.linalg.inv(slopes.T @ slopes)
    except np.linalg.LinAlgError as exc:
        raise ScaleError("these photos do not tell the lens", where="calibration") from exc
    count = sum(view.seen_px.size for view in views)
    free = count - (slopes.shape[1] - _SHARED)
    noise2 = float(residuals[:count] @ residuals[:count]) / max(free, 1)
    shared = joint[:_SHARED, :_SHARED] * noise2
    state = at.states[0]
    fit = LensFit(
        lens=replace(lens, kappa=state.kappa, kappa_2=at.kappa_2),
        focal_px=state.pose.focal_px,
        focal_rel_u=float(np.sqrt(shared[0, 0])),
        centre=state.pose.centre,
        centre_u_px=float(np.sqrt(max(shared[1, 1], shared[2, 2]))),
        kappa_u=_radial_u(shared[3:, 3:]),
        residual_px=float(np.sqrt(2 * (residuals[:count] ** 2).mean())),
    )
    _check_fit(fit)
    return fit


@dataclass(frozen=True, slots=True, eq=False)
class _Together:
    """The poses of all photos and the lens that they share; its steps begin with the lens."""

    states: tuple[State, ...]
    kappa_2: float

    def stepped(self, step: Array) -> "_Together":
        own = step[_SHARED:].reshape(-1, 6)
        moved = zip(self.states, own, strict=True)
        return _Together(
            tuple(one.stepped(np.concatenate([six, step[:4]])) for one, six in moved),
            self.kappa_2 + float(step[4]),
        )


class _Bundle:
    """Residuals and slopes of all photos, and of what is loosely known beforehand."""

    def __init__(self, views: Sequence[View], lens: Lens, focal: float) -> None:
        self.views, self.lens, self.focal = views, lens, focal
        diagonal = 2 * lens.radius_px
        self.loose_u = np.array(
            [0.5, _CENTRE_U * diagonal, _CENTRE_U * diagonal, _RADIAL_U, _RADIAL_U]
        )

    def residuals(self, at: _Together) -> Array:
        state = at.states[0]
        focal = float(np.log(state.pose.focal_px / self.focal))
        away = state.pose.centre - np.asarray(self.lens.centre)
        loose = np.array([focal, *away, state.kappa, at.kappa_2]) / self.loose_u
        return np.concatenate([*(one.picks(state) for one, state in self._problems(at)), loose])

    def slopes(self, at: _Together) -> Array:
        width = _SHARED + 6 * len(self.views)
        blocks = []
        for i, (problem, state) in enumerate(self._problems(at)):
            own = problem.slopes(state)[: problem.points_px.size]
            block = np.zeros((len(own), width))
            block[:, :4] = own[:, 6:10]
            away = problem.points_px - np.asarray(self.lens.centre)
            r2 = (away**2).sum(axis=1, keepdims=True) / self.lens.radius_px**2
            block[:, 4] = -(away * r2**2).ravel()
            block[:, _SHARED + 6 * i :][:, :6] = own[:, :6]
            blocks.append(block)
        return np.vstack([*blocks, np.eye(_SHARED, width) / self.loose_u[:, None]])

    def _problems(self, at: _Together) -> Iterator[tuple[Problem, State]]:
        lens = replace(self.lens, kappa_2=at.kappa_2)
        for view, state in zip(self.views, at.states, strict=True):
            u_px = np.ones(len(view.plane))
            plain = Priors(self.focal, 1.0)
            yield Problem(view.seen_px, u_px, partial(_points, view), plain, lens), state


def _points(view: View, _own: Array) -> Array:
    return view.plane


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
