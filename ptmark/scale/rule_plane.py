"""The plane of a graduated rule, from its strokes alone.

A stroke is the line X = const of the plane, seen as a line. All of them together give X as a
projective function of the place in the picture; its denominator is the plane's horizon, so
spacing that changes along the rule tells the tilt about the axis across it, and strokes that
converge tell the tilt about the rule. The strokes' common ends lie on a line square to them
(Y = const), which ties the focal length where the rule is seen aslant.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from ptmark.scale.plane import Lens
from ptmark.scale.problem import Priors, Problem, State
from ptmark.scale.strip import BAND, Strip
from ptmark.scale.strokes import Strokes

__all__ = ["RuleProblem", "Seen", "seen_of"]

Array = npt.NDArray[np.float64]
Mask = npt.NDArray[np.bool_]

# Least that a stroke's middle, and its end, are out of place in a photo, px. What the strokes
# themselves show is taken where it is more. Common practice, no source.
STROKE_U_PX, END_U_PX = 0.06, 0.2


@dataclass(frozen=True, slots=True, eq=False)
class Seen:
    """Pairs of places, px: both of a stroke, or the ends of two strokes.

    ``pairs`` of shape (N, 2, 2); ``number`` of shape (N, 2), that of the stroke at each place;
    ``is_end`` of shape (N,); ``u_px`` of shape (N,).
    """

    pairs: Array
    number: Array
    is_end: Mask
    u_px: Array


def seen_of(strip: Strip, strokes: Strokes) -> Seen:
    """Two places on each stroke that hold all that its bands tell, and its end.

    A line fitted to equally good points is told by two independent places on it, one root mean
    square width to either side of the middle, each as good as half of the points.
    """
    whole = _without_end_bands(np.isfinite(strokes.u))
    kept = whole.sum(axis=1) >= 3
    u, there = strokes.u[kept], whole[kept]
    bands = there.sum(axis=1)
    v = np.where(there, strokes.v, 0.0)
    middle = v.sum(axis=1) / bands
    off = np.where(there, strokes.v - middle[:, None], 0.0)
    spread = np.sqrt((off**2).sum(axis=1) / bands)
    at = np.where(there, u, 0.0).sum(axis=1) / bands
    slope = (off * np.where(there, u, 0.0)).sum(axis=1) / (off**2).sum(axis=1)
    pairs = np.stack(
        [
            strip.to_px(at - slope * spread, middle - spread),
            strip.to_px(at + slope * spread, middle + spread),
        ],
        axis=1,
    )
    scatter = np.where(there, u - at[:, None] - slope[:, None] * off, 0.0)
    noise = np.sqrt((scatter**2).sum() / max(int((bands - 2).sum()), 1))
    u_px = np.hypot(STROKE_U_PX, noise * np.sqrt(2 / bands))
    number = strokes.number[kept].astype(float)
    ends, found = _ends(strip, strokes.step_px[kept], at, slope, middle, there)
    count = len(ends) // 2
    ends = ends[: 2 * count].reshape(count, 2, 2)
    return Seen(
        np.concatenate([pairs, ends]),
        np.concatenate(
            [np.column_stack([number, number]), number[found][: 2 * count].reshape(count, 2)]
        ),
        np.concatenate([np.zeros(len(pairs), bool), np.ones(count, bool)]),
        np.concatenate([u_px, np.full(count, END_U_PX)]),
    )


def _without_end_bands(there: Mask) -> Mask:
    """Bands that a stroke fills: in its first and last its middle row is not the band's."""
    padded = np.pad(there, ((0, 0), (1, 1)))
    return np.asarray(there & padded[:, :-2] & padded[:, 2:])


def _ends(
    strip: Strip, step: Array, at: Array, slope: Array, middle: Array, there: Mask
) -> tuple[Array, Mask]:
    """Ends of the strokes on the side where all end together, px, shape (M, 2), and whose."""
    if len(at) < 2:
        return np.zeros((0, 2)), np.zeros(len(at), bool)
    first = np.argmax(there, axis=1)
    last = there.shape[1] - 1 - np.argmax(there[:, ::-1], axis=1)
    # About a line of their own: one drawn over a rule carelessly is not along its edge.
    away = [side - np.polyval(np.polyfit(at, side, 1), at) for side in (first, last)]
    spread = [np.ptp(np.percentile(side, [10, 90])) for side in away]
    low_side = spread[0] <= spread[1]
    way = -1.0 if low_side else 1.0
    near = (first if low_side else last) * BAND + (BAND - 1) / 2 - strip.half
    # One profile a stroke, from well inside it to well beyond its end.
    run = np.arange(-3 * BAND, 4 * BAND + 1)
    v = near[:, None] + way * run
    u = at[:, None] + slope[:, None] * (v - middle[:, None])
    aside = step[:, None] / 2
    contrast = (strip.at(u - aside, v) + strip.at(u + aside, v)) / 2 - strip.at(u, v)
    full = np.median(contrast[:, : 2 * BAND], axis=1)
    below = contrast < full[:, None] / 2
    below[:, : 2 * BAND] = False
    found = below.any(axis=1) & (full > 0) & np.isfinite(contrast).all(axis=1)
    i = np.argmax(below, axis=1)
    rows = np.arange(len(i))
    here, before = contrast[rows, i], contrast[rows, i - 1]
    part = (before - full / 2) / np.where(before > here, before - here, 1.0)
    end_v = near + way * (run[i] - 1 + np.clip(part, 0, 1))
    end_u = at + slope * (end_v - middle)
    return strip.to_px(end_u[found], end_v[found]), found


class RuleProblem(Problem):
    """Residuals of strokes and ends: X, or Y, of each place against what it should be.

    Of the model's own parameters the last is the lens's next radial term, in r to the fourth:
    a rule is long and its strokes are sharp enough to show it.
    """

    def __init__(
        self, seen: Seen, model: Callable[[Array], Array], priors: Priors, lens: Lens
    ) -> None:
        super().__init__(seen.pairs[:, 0], seen.u_px, model, priors, lens)
        self.seen = seen

    def subset(self, kept: Mask) -> "RuleProblem":
        seen, model = self.seen, self.model
        part = Seen(seen.pairs[kept], seen.number[kept], seen.is_end[kept], seen.u_px[kept])
        return RuleProblem(part, lambda own: model(own)[kept], self.priors, self.lens)

    def picks(self, state: State, plane: Array | None = None) -> Array:
        """Whitened distances across the strokes, shape (2N,); ``plane`` of shape (N, 2), mm."""
        wanted = self.model(state.own) if plane is None else plane
        places = self.seen.pairs.reshape(-1, 2)
        from_centre = places - np.asarray(self.lens.centre)
        r2 = (from_centre**2).sum(axis=1, keepdims=True) / self.lens.radius_px**2
        straight = self.lens_of(state).undistort(places) + from_centre * state.own[-1] * r2**2
        h = state.pose.to_mm()
        w = straight @ h[2, :2] + h[2, 2]
        is_end = np.repeat(self.seen.is_end, 2)
        rows = h[is_end.astype(int)]
        value = ((straight * rows[:, :2]).sum(axis=1) + rows[:, 2]) / w
        slope = (rows[:, :2] - value[:, None] * h[2, :2]) / w[:, None]
        off = (value - wanted.ravel()) / np.hypot(slope[:, 0], slope[:, 1])
        return np.asarray(off / np.repeat(self.u_px, 2))

    def slopes(self, state: State) -> Array:
        """Derivative of the residuals by the local step, forward differences."""
        sizes = [1e-6] * 3 + [1e-4] * 3 + [1e-6, 1e-3, 1e-3, 1e-6] + [1e-6] * len(state.own)
        here, columns = self.picks(state), []
        for i, size in enumerate(sizes):
            step = np.zeros(len(sizes))
            step[i] = size
            columns.append((self.picks(state.stepped(step)) - here) / size)
        return np.vstack([np.column_stack(columns), self._prior_slopes(state)])
