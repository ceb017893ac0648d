"""Equally spaced strokes along a line, each numbered and followed over its whole length.

Equal steps on a plane are seen as ``u(n) = (a + b n) / (1 + c n)`` along any line across them
(the projective map of a line; Hartley and Zisserman, Multiple View Geometry, 2004, section
2.5), and the number is a projective function of the place in the picture: linear equations.
"""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from ptmark.scale.strip import BAND, Dips, Strip, dips_of

__all__ = ["Strokes", "find_strokes", "uncut"]

Array = npt.NDArray[np.float64]
Index = npt.NDArray[np.int64]

MIN_STROKES = 15
# Neighbouring steps differ by less than this, and a stroke lies this near to where it is
# foreseen, in steps.
_ALIKE, _NEAR = 0.2, 0.25
MIN_STEP_PX = 4.0
# Engraved strokes lie this near to equal steps (median), are this share of those there should
# be, and are longer than a step; the grain of a surface is not.
_STRAY, _WHOLE, _LEAST_LONG = 0.06, 0.7, 1.2
_AT_END = 0.3  # of the strokes beyond a run are cut, where the photo's border ends the row
_FAINT = 0.4  # of a stroke's own depth: paler is not this stroke any more


@dataclass(frozen=True, slots=True, eq=False)
class Strokes:
    """Strokes in strip frame.

    Attributes
    ----------
    number : ndarray of shape (N,), int
        Consecutive where no stroke is missing; 0 is arbitrary.
    u : ndarray of shape (N, B)
        Place of each stroke in each band, px; NaN where it does not reach.
    v : ndarray of shape (B,)
        Middle of each band, px.
    step_px : ndarray of shape (N,)
        Local spacing.
    lengths : ndarray of shape (N,)
        Length in steps, freed of how near each stroke is.
    """

    number: Index
    u: Array
    v: Array
    step_px: Array
    lengths: Array


def uncut(strip: Strip, strokes: Strokes) -> Strokes | None:
    """The longest run of strokes that all end in sight; None where that tells too little.

    Which are longer is hidden where they go on beyond the strip or the photo. A border that
    meets the row aslant cuts most of those at its end; one along it cuts the long ones alone.
    """
    there, rows = np.isfinite(strokes.u), np.arange(len(strokes.u))
    first = np.argmax(there, axis=1)
    last = there.shape[1] - 1 - np.argmax(there[:, ::-1], axis=1)
    cut = np.zeros(len(rows), bool)
    for end, way in ((first, -1), (last, 1)):
        beyond = strip.at(strokes.u[rows, end], strokes.v[end] + 2 * way * BAND)
        cut |= np.isnan(beyond).ravel()
    if not cut.any():
        return strokes
    edges = np.concatenate([[-1], np.flatnonzero(cut), [len(cut)]])
    longest = int(np.argmax(np.diff(edges)))
    run = slice(int(edges[longest]) + 1, int(edges[longest + 1]))
    rest = np.delete(cut, run)
    if run.stop - run.start < max(MIN_STROKES, len(cut) / 2) or rest.mean() < _AT_END:
        return None
    return Strokes(
        strokes.number[run],
        strokes.u[run],
        strokes.v,
        strokes.step_px[run],
        strokes.lengths[run],
    )


def find_strokes(strip: Strip) -> Strokes | None:
    """The longest row of equally spaced strokes along a strip; None where there is none."""
    profiles = [dips_of(row) for row in strip.bands()]
    v = strip.band_v()
    chains = [_longest_run(dips) for dips in profiles]
    weight = [
        len(run) * float(np.median(dips.depth[run])) ** 0.25 if len(run) else 0.0
        for dips, run in zip(profiles, chains, strict=True)
    ]
    best = int(np.argmax(weight))
    if len(chains[best]) < MIN_STROKES - 2:
        return None
    number, model, depth = _chained(profiles[best], chains[best])
    if len(number) < max(MIN_STROKES, _WHOLE * (np.ptp(number) + 1)):
        return None
    u = np.full((len(number), len(v)), np.nan)
    lean = _lean(strip, best, number, model)
    for way in (1, -1):
        _follow(profiles, best, way, lean, number, model, depth, u)
    step = model.step(number)
    # Each against its neighbours, which a lens that bends the row does not disturb.
    off = np.abs(np.diff(u[:, best] - model.at(number), 2)) / (2 * step[1:-1])
    reach = np.isfinite(u).sum(axis=1) * BAND
    if np.nanmedian(off) > _STRAY or np.median(reach / step) < _LEAST_LONG:
        return None
    u += strip.first_u
    # Towards the camera steps along the rule grow with the square of nearness, strokes across
    # it with nearness itself.
    return Strokes(number, u, v, step, reach / np.sqrt(step * np.median(step)))


@dataclass(frozen=True, slots=True)
class _Steps:
    a: float
    b: float
    c: float

    def at(self, n: Index | Array) -> Array:
        return np.asarray((self.a + self.b * n) / (1 + self.c * n), np.float64)

    def step(self, n: Index | Array) -> Array:
        return np.asarray((self.b - self.a * self.c) / (1 + self.c * n) ** 2, np.float64)

    @classmethod
    def fit(cls, n: Array, u: Array) -> "_Steps":
        """Least squares of u + c n u = a + b n, then once more weighted to px."""
        weights = np.ones(len(n))
        if len(n) < 6:
            b, a = np.polyfit(n, u, 1)
            return cls(float(a), float(b), 0.0)
        a = b = c = 0.0
        for _ in range(2):
            rows = np.column_stack([np.ones_like(u), n, -n * u]) * weights[:, None]
            a, b, c = np.linalg.lstsq(rows, u * weights, rcond=None)[0]
            weights = 1 / np.maximum(np.abs(1 + c * n), 1e-3)
        return cls(float(a), float(b), float(c))


def _longest_run(dips: Dips) -> Index:
    """Indices of the longest run of dips with slowly changing gaps."""
    gaps = np.diff(dips.at)
    if len(gaps) < 3:
        return np.zeros(0, np.int64)
    ratio = gaps[1:] / gaps[:-1]
    alike = (np.abs(np.log(ratio)) < _ALIKE) & (gaps[1:] >= MIN_STEP_PX)
    edges = np.flatnonzero(np.diff(np.concatenate([[0], alike.view(np.int8), [0]])))
    starts, ends = edges[::2], edges[1::2]
    if len(starts) == 0:
        return np.zeros(0, np.int64)
    longest = int(np.argmax(ends - starts))
    return np.arange(starts[longest], ends[longest] + 2)


def _chained(dips: Dips, run: Index) -> tuple[Index, _Steps, Array]:
    """Numbers of all dips that continue a run to both sides, its model and their depths."""
    taken = dict(zip(range(len(run)), run.tolist(), strict=True))
    model = _Steps.fit(np.arange(len(run), dtype=float), dips.at[run])
    for way in (1, -1):
        missed, n = 0, max(taken) if way > 0 else min(taken)
        while missed < 3:
            n += way
            if 1 + model.c * n <= 0.1:
                break
            there, step = float(model.at(np.array([n]))[0]), float(model.step(np.array([n]))[0])
            i = int(np.argmin(np.abs(dips.at - there)))
            if step < MIN_STEP_PX or abs(dips.at[i] - there) > _NEAR * step:
                missed += 1
                continue
            missed, taken[n] = 0, i
            if len(taken) % 4 == 0:
                model = _fit_of(taken, dips)
    for _ in range(2):  # leave out what lies off the common steps
        model = _fit_of(taken, dips)
        off = {n: abs(dips.at[i] - model.at(np.array([n]))[0]) for n, i in taken.items()}
        worst = max(4 * 1.48 * float(np.median(list(off.values()))), 0.4)
        taken = {n: i for n, i in taken.items() if off[n] <= worst}
    number = np.array(sorted(taken), np.int64)
    return number, _fit_of(taken, dips), dips.depth[[taken[n] for n in number.tolist()]]


def _fit_of(taken: dict[int, int], dips: Dips) -> _Steps:
    n = np.array(list(taken), float)
    return _Steps.fit(n, dips.at[list(taken.values())])


def _lean(strip: Strip, band: int, number: Index, model: _Steps) -> float:
    """How far strokes move from one band to the next, px.

    By the two halves of a band: a stroke that moved by half a step or more between them would
    not have been seen in the whole of it.
    """
    rows = strip.grey[band * BAND : (band + 1) * BAND]
    upper, lower = (dips_of(half.mean(axis=0)).at for half in np.split(rows, 2))
    if min(len(upper), len(lower)) < MIN_STROKES:
        return 0.0
    foreseen, step = model.at(number), model.step(number)
    above, below = upper[_nearest(upper, foreseen)], lower[_nearest(lower, foreseen)]
    near = np.maximum(np.abs(above - foreseen), np.abs(below - foreseen)) < _NEAR * step
    return 2 * float(np.median((below - above)[near])) if near.sum() >= MIN_STROKES else 0.0


def _follow(
    profiles: list[Dips],
    best: int,
    way: int,
    lean: float,
    number: Index,
    model: _Steps,
    depth: Array,
    u: Array,
) -> None:
    """Write the strokes' columns band by band, away from the best one, while they go on."""
    foreseen, step = model.at(number), model.step(number)
    middle = (number - number.mean()) / max(float(np.ptp(number)), 1.0)
    slant = np.zeros(2)  # shift of a band to the last: constant, and along the row
    going = np.ones(len(number), bool)
    band = best
    while 0 <= band < len(profiles):
        dips = profiles[band]
        if len(dips.at) < 2:
            return
        expected = foreseen + slant[0] + slant[1] * middle
        near = _nearest(dips.at, expected)
        hit = np.abs(dips.at[near] - expected) <= _NEAR * step
        hit &= dips.depth[near] >= _FAINT * depth
        hit &= going
        if not (hit | going).any():
            return
        u[hit, band] = dips.at[near[hit]]
        shift = dips.at[near[hit]] - foreseen[hit]
        if hit.sum() >= 8:
            slant[1], slant[0] = np.polyfit(middle[hit], shift, 1)
        elif hit.any():
            slant[0] = float(np.median(shift - slant[1] * middle[hit]))
        going = going & (hit | _just_before(u, band, way))
        slant[0] += way * lean
        band += way


def _just_before(u: Array, band: int, way: int) -> npt.NDArray[np.bool_]:
    """Strokes seen in the band before: one band may be missed."""
    before = band - way
    if not 0 <= before < u.shape[1]:
        return np.zeros(len(u), bool)
    return np.asarray(np.isfinite(u[:, before]))


def _nearest(sorted_at: Array, wanted: Array) -> Index:
    right = np.clip(np.searchsorted(sorted_at, wanted), 1, len(sorted_at) - 1)
    left = right - 1
    nearer = np.abs(sorted_at[left] - wanted) <= np.abs(sorted_at[right] - wanted)
    return np.asarray(np.where(nearer, left, right))
