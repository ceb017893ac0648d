"""A steel rule that reads itself: its strokes are found, told apart, counted and fitted."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from ptmark.errors import ScaleError
from ptmark.scale.fit import PlaneFit, fit_plane
from ptmark.scale.glyphs import numerals_alternate
from ptmark.scale.graduations import (
    Graduation,
    by_end_digits,
    is_half_or_whole,
    likely_graduations,
)
from ptmark.scale.maps import PICK_U_PX, SIZE_U_MM, camera_priors, known_lens
from ptmark.scale.numerals import numeral_period
from ptmark.scale.plane import Pose
from ptmark.scale.problem import State
from ptmark.scale.rule_plane import RuleProblem, Seen, seen_of
from ptmark.scale.strip import Strip, strip_along
from ptmark.scale.strokes import Strokes, find_strokes, uncut
from ptmark.units import format_length

if TYPE_CHECKING:
    from ptmark.photo import Photo

__all__ = ["Reading", "fit_rule", "read_rule", "tells_plane"]

Array = npt.NDArray[np.float64]

# A camera over a rule leans this much about each axis at most times: says little, and keeps a
# short rule from telling a tilt that it does not show. Common practice, no source.
TILT_U = np.radians(15.0)
# Strokes stand square to the line of their ends within this, rad: engraving, and what a slanted
# light makes of a stroke. Common practice, no source.
SKEW_U = 6e-3
# The lens's second radial term, at the picture's corner. Common practice, no source.
KAPPA_2_U = 0.005
FAST_U = 0.01
# Beyond this the foreshortening's curve matters (cos 6° is 0.5 %), no photo for measuring is
# taken flatter, and a rule of which so much is out of place is none.
MAX_TURN_U, MAX_TILT_DEG, MIN_KEPT, MAX_PULL = np.radians(6.0), 65.0, 0.6, 5.0
# Strokes of blurred and of worn rules are seen within 0.75 px; other marks are less even.
MOST_NOISE_PX = 1.0
# By more than chance leaves, a fit may not have come down to the truth: it is tried again from
# a camera held square. From there alone those of rules at 19 and 48 degrees stopped short.
ASTRAY = 4.0
# Picks may miss their strokes by this share of a step besides their own noise.
_MISS = 0.3


@dataclass(frozen=True, slots=True, eq=False)
class Reading:
    """What a rule shows between two picks.

    ``count`` is the number of steps between them, with a fraction where they lie between
    strokes; ``graduation`` is None where neither strokes nor numerals tell it: a step is then
    what the typed length makes it. The picks are the last of ``seen``. ``likely``: all that
    strokes and numerals allow; of more than one, the typed length tells which.
    """

    strokes: Strokes
    seen: Seen
    count: float
    first: float
    step_mm: float
    graduation: Graduation | None
    likely: tuple[Graduation, ...] = ()

    @property
    def cautions(self) -> tuple[str, ...]:
        """That the typed length alone tells which graduation it is, where it does."""
        if len(self.likely) < 2:
            return ()
        names = ", ".join(one.name for one in self.likely)
        return (
            f"the strokes seen may be any of {names}: which they are is taken from the length "
            "as typed. Check it against the rule's numerals, or pick two strokes farther apart",
        )

    @property
    def says(self) -> str:
        """In words: "150 steps of mm between the ends"; empty where the unit is unread."""
        if self.graduation is None:
            return ""
        return f"{self.count:.1f} steps of {self.graduation.name} between the ends"


def tells_plane(fit: PlaneFit) -> bool:
    """Whether a rule's fit tells the tilt well enough for first-order uncertainties.

    Strokes that contradict the picks, the last of its points, or stand askew are not trusted.
    """
    return bool(
        fit.turn_u < MAX_TURN_U
        and fit.pose.tilt_deg < MAX_TILT_DEG
        and fit.kept.mean() >= MIN_KEPT
        and fit.kept[-1]
        and abs(fit.own[0]) < MAX_PULL * SKEW_U
        and np.median(fit.evidence.problem.u_px) < MOST_NOISE_PX
    )


def read_rule(photo: "Photo", ends: Array, length_mm: float) -> Reading | None:
    """Read the rule under a line with ends of shape (2, 2), px; None where none is seen.

    Raises
    ------
    ScaleError
        If the rule says another length than ``length_mm``.
    """
    strip = strip_along(photo, ends)
    strokes = find_strokes(strip)
    whole = None if strokes is None else uncut(strip, strokes)
    if strokes is not None and whole is None:
        strip = strip_along(photo, ends, wider=2)
        strokes = find_strokes(strip)
        whole = None if strokes is None else uncut(strip, strokes)
    if strokes is None:
        return None
    seen = seen_of(strip, strokes)
    if not seen.is_end.any() or (~seen.is_end).sum() < 9:
        return None
    first, last = _Numbered.of(seen).at(ends)
    count = last - first
    if not np.isfinite(count) or count < 3:
        return None
    likely = () if whole is None else _graduations(photo, strip, whole)
    slack = _MISS + 3 * np.sqrt(2) * PICK_U_PX / float(np.median(strokes.step_px))
    fits = [one for one in likely if abs(length_mm / one.step_mm - count) <= slack]
    if likely and not fits:
        raise _contradiction(count, likely, length_mm)
    told = fits[0] if fits else None
    step_mm = length_mm / count if told is None else told.step_mm
    seen = _with_picks(seen, ends, (first, last), length_mm / step_mm)
    return Reading(strokes, seen, count, first, step_mm, told, likely)


def _with_picks(seen: Seen, ends: Array, at: tuple[float, float], steps: float) -> Seen:
    """The same with the picks as a last pair, so many steps apart.

    Where strokes are seen at one end of the line only, it is the picks that hold the other. The
    one that lies nearer to the strokes takes its number from them.
    """
    number = seen.number[~seen.is_end]
    away = [max(number.min() - one, one - number.max(), 0.0) for one in at]
    first = at[0] if away[0] <= away[1] else at[1] - steps
    return Seen(
        np.concatenate([seen.pairs, ends[None]]),
        np.concatenate([seen.number, [[first, first + steps]]]),
        np.append(seen.is_end, False),
        np.append(seen.u_px, np.sqrt(2) * PICK_U_PX),
    )


def _graduations(photo: "Photo", strip: Strip, strokes: Strokes) -> tuple[Graduation, ...]:
    """What strokes and numerals allow."""
    numbered = numeral_period(photo, strip, strokes)
    likely = likely_graduations(strokes, numbered)
    if numbered and is_half_or_whole(strokes, numbered, likely):
        turns = numerals_alternate(photo, strip, strokes, numbered)
        return by_end_digits(alternate=turns)
    return likely


def _contradiction(
    count: float, likely: tuple[Graduation, ...], length_mm: float
) -> ScaleError:
    steps = round(count)
    unit = "in" if likely[0].name.endswith("in") else "mm"
    shown = " or ".join(one.name for one in likely)
    read = " or ".join(format_length(steps * one.step_mm, unit) for one in likely)
    given = format_length(length_mm, unit)
    return ScaleError(
        f"{given} given, but the rule shows {steps} steps of {shown} between the two "
        f"ends, {read}",
        where="scale",
        mend="check the length, its unit and the two ends; on a rule with other graduations "
        "take a card or a rectangle",
    )


@dataclass(frozen=True, slots=True, eq=False)
class _Numbered:
    """The projective map from px to stroke number, by normalised places and numbers.

    ``n (1 + c . p) = a . p`` is linear in a and c: least squares, normalised as in Hartley and
    Zisserman, Multiple View Geometry, 2004, section 4.4.
    """

    middle: Array
    size: float
    mean: float
    spread: float
    a: Array

    @classmethod
    def of(cls, seen: Seen) -> "_Numbered":
        strokes = ~seen.is_end
        points = seen.pairs[strokes].reshape(-1, 2)
        number = seen.number[strokes].ravel()
        middle, size = points.mean(axis=0), float(points.std())
        mean, spread = float(number.mean()), float(number.std())
        at, n = (points - middle) / size, (number - mean) / spread
        rows = np.column_stack([at, np.ones(len(at)), -n[:, None] * at])
        a = np.linalg.lstsq(rows, n, rcond=None)[0]
        return cls(middle, size, mean, spread, a)

    def at(self, places: Array) -> tuple[float, float]:
        """Stroke number at two places."""
        there = (places - self.middle) / self.size
        values = (there @ self.a[:2] + self.a[2]) / (1 + there @ self.a[3:])
        first, last = values * self.spread + self.mean
        return float(first), float(last)

    def normal(self, focal_px: float, centre: Array) -> Array:
        """Unit normal of the plane, away from the camera: its horizon is where numbers end."""
        slope = self.a[3:] / self.size
        rest = 1 + slope @ (centre - self.middle)
        across: Array = np.array([*(focal_px * slope), rest])
        return across * np.sign(rest) / float(np.linalg.norm(across))


def fit_rule(
    reading: Reading,
    photo: "Photo",
    start: Callable[[float, Array | None], Pose],
    focal_px: float | None = None,
) -> PlaneFit:
    """Fit the rule's plane: X along it from the first pick, Y = 0 where its strokes end.

    ``start`` gives the pose to start from by the focal length and the normal that the camera
    sees, away from it, or None where it is held square: how strokes crowd and converge tells
    which. ``focal_px``: a focal length to take for granted.

    Raises
    ------
    ScaleError
        If the strokes fix no plane.
    """
    seen, ends = reading.seen, reading.seen.is_end[:, None]
    along = (seen.number - reading.first) * reading.step_mm
    size_u = SIZE_U_MM / float(np.ptp(along))
    if reading.graduation is None:  # the picks alone tell the size of a step
        apart = seen.pairs[-1, 1] - seen.pairs[-1, 0]
        size_u = np.hypot(size_u, np.sqrt(2) * PICK_U_PX / np.hypot(*apart))
    longer = 1 + size_u

    def model(own: Array, size: float = 1.0) -> Array:
        return np.where(ends, own[0] * along, along) * size

    priors = camera_priors(photo, TILT_U, (SKEW_U, KAPPA_2_U))
    if focal_px is not None:
        priors = replace(priors, focal_px=focal_px, log_focal_u=FAST_U)
    lens = known_lens(photo)
    # A camera held fast first: focal length, centre and tilt make a narrow valley, and a way
    # down it that starts at one side stops short.
    fast = replace(priors, log_focal_u=FAST_U, centre_u=FAST_U / 10)
    problem = RuleProblem(seen, model, fast, lens)
    normal = _Numbered.of(seen).normal(priors.focal_px, np.asarray(lens.centre))
    leaning = start(priors.focal_px, normal)
    first = fit_plane(problem, State(leaning, priors.kappa, np.zeros(2)))
    if first.chi2 > ASTRAY * first.dof:
        upright = start(priors.focal_px, None)
        other = fit_plane(problem, State(upright, priors.kappa, np.zeros(2)))
        first = min(first, other, key=lambda fit: fit.chi2)
    return fit_plane(
        RuleProblem(_as_noisy_as_seen(seen, first), model, priors, lens),
        State(first.pose, first.lens.kappa, first.own),
        robust=True,
        perturbed=(lambda own: model(own, longer),),
    )


def _as_noisy_as_seen(seen: Seen, fit: PlaneFit) -> Seen:
    """The same with the noise of strokes, and of ends, that a first fit leaves."""
    u_px = seen.u_px.copy()
    strokes = ~seen.is_end
    strokes[-1] = False  # the picks
    for kind in (seen.is_end, strokes):
        if kind.sum() >= 5:
            left = fit.residuals_px[kind] / seen.u_px[kind, None]
            u_px[kind] *= max(1.48 * float(np.median(np.abs(left))), 1.0)
    return replace(seen, u_px=u_px)
