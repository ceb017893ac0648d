"""Registration where both photos have a scale: only a turn and a shift are left to find.

Two pairs fix it, so that far fewer need to agree than for a free homography: enough for a
surface that was cleaned and developed anew, where marks and the weld alone are alike.
"""

from dataclasses import replace
from typing import Any

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.measure.quantity import propagate
from ptmark.scale import SurfaceMap
from ptmark.scale.plane import fit_homography
from ptmark.series.features import View

__all__ = ["Motion", "find_motion", "map_of_motion"]

Array = npt.NDArray[np.float64]
Mask = npt.NDArray[np.bool_]
Motion = tuple[float, Array, Array, Array]  # angle, pivot in a, its place in b, (3, 3)

# With a reach of 0.6 mm one more of 500 chance pairs on 100 x 100 mm agrees with odds of
# 500 x pi x 0.36 / 10 000 = 0.06; ten agree by chance in no number of trials made here.
LEAST_PAIRS = 10
_REACH_MM = 0.6
_SCALE = 0.03  # scales that disagree by more are no scales of one surface
_TILT_KNOWN = ("card", "rectangle", "two lines")


def find_motion(a: View, b: View, from_a: Array, to_b: Array) -> tuple[Motion, Mask] | None:
    """The turn and shift that most pairs agree on, and which they are; None where too few do.

    Returns
    -------
    (angle in rad, pivot in mm of a, its place in mm of b, covariance of angle and place)
        ``there = R(angle) @ (here - pivot) + place``: least squares about the pairs' middle,
        which parts turn and shift (Kabsch 1976).
    """
    one, other = a.surface, b.surface
    if one is None or other is None or len(from_a) < LEAST_PAIRS:
        return None
    if one.reference not in _TILT_KNOWN or other.reference not in _TILT_KNOWN:
        return None
    if not (one.in_view(from_a) and other.in_view(to_b)):
        return None
    here, there = one.to_mm(from_a), other.to_mm(to_b)
    answer: tuple[Any, Any] = cv2.estimateAffinePartial2D(
        here, there, method=cv2.RANSAC, ransacReprojThreshold=_REACH_MM, maxIters=20000
    )
    found, kept = answer
    if found is None or abs(float(np.hypot(found[0, 0], found[1, 0])) - 1) > _SCALE:
        return None
    inside = np.asarray(kept).ravel() > 0
    motion = None
    for _ in range(3):
        if inside.sum() < LEAST_PAIRS:
            return None
        motion = _fitted(here[inside], there[inside])
        off = np.linalg.norm(there - _moved(motion[0], motion[1], motion[2], here), axis=1)
        inside = off < _REACH_MM
    return None if motion is None or inside.sum() < LEAST_PAIRS else (motion, inside)


def _fitted(here: Array, there: Array) -> Motion:
    pivot, place = here.mean(axis=0), there.mean(axis=0)
    p, q = here - pivot, there - place
    angle = float(np.arctan2((p[:, 0] * q[:, 1] - p[:, 1] * q[:, 0]).sum(), (p * q).sum()))
    off = there - _moved(angle, pivot, place, here)
    variance = float((off**2).sum() / (2 * len(here) - 3))
    spread = np.diag(
        [variance / float((p**2).sum()), variance / len(here), variance / len(here)]
    )
    return angle, pivot, place, spread


def _moved(angle: float, pivot: Array, place: Array, points: Array) -> Array:
    c, s = np.cos(angle), np.sin(angle)
    return np.asarray((points - pivot) @ np.array([[c, s], [-s, c]]) + place)


def map_of_motion(a: View, b: View, motion: Motion | None = None) -> tuple[Array, Array]:
    """Homography from a to b through both surfaces, px, and its covariance (8, 8).

    Without a motion both surfaces are taken as one frame. The covariance holds that of both
    maps and of the motion, as if independent.
    """
    one, other = a.surface, b.surface
    if one is None or other is None:
        raise ValueError("both photos need a surface")
    grid = _grid(a.size)
    angle, pivot, place, moved = motion or (0.0, np.zeros(2), np.zeros(2), np.zeros((3, 3)))

    def through(p: Array) -> Array:
        first, second = _with(one, p[:9]), _with(other, p[9:18])
        there = _moved(float(p[18]), pivot, p[19:], first.to_mm(grid))
        return fit_homography(grid, second.to_px(there)).ravel()[:8]

    values = np.concatenate([_parameters(one), _parameters(other), [angle], place])
    spread = np.zeros((21, 21))
    spread[:9, :9] = sum(one.covariance.values(), np.zeros((9, 9)))
    spread[9:18, 9:18] = sum(other.covariance.values(), np.zeros((9, 9)))
    spread[18:, 18:] = moved
    entries, covariance = propagate(through, values, spread)
    return np.append(entries, 1.0).reshape(3, 3), covariance


def _grid(size: tuple[int, int]) -> Array:
    x, y = np.meshgrid(np.linspace(0, size[0] - 1, 5), np.linspace(0, size[1] - 1, 5))
    return np.column_stack([x.ravel(), y.ravel()])


def _parameters(surface: SurfaceMap) -> Array:
    return np.append(surface.h.ravel()[:8], surface.lens.kappa)


def _with(surface: SurfaceMap, parameters: Array) -> SurfaceMap:
    return replace(
        surface,
        h=np.append(parameters[:8], 1.0).reshape(3, 3),
        lens=replace(surface.lens, kappa=float(parameters[8])),
    )
