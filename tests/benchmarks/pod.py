"""Probability of detection against length from hits and misses.

The model of MIL-HDBK-1823A and ASTM E3023: logit POD = b0 + b1 ln(length), fitted by maximum
likelihood. a90 is the length found nine times in ten; a90/95 the upper 95 % bound of it, by the
likelihood ratio, which also holds where hits and misses do not overlap (editions' clauses not
at hand: method from memory).
"""

from dataclasses import dataclass, replace

import numpy as np
from scipy.optimize import brentq, minimize, minimize_scalar
from scipy.special import log_expit
from stress_scenes import Condition, lay, line

ONE_SIDED_95 = 2.7055  # chi-square with one degree of freedom at 0.90, from memory
STEEPEST = 60.0
SCALES, CONTRASTS = (0.04, 0.07, 0.10, 0.15), (1.0, 0.6, 0.3)


@dataclass(frozen=True)
class Pod:
    """Lengths in mm; NaN where all or none were found, infinity where there is no bound."""

    a50: float
    a90: float
    a90_95: float


def likelihood(b0, b1, x, hit):
    """Log likelihood of hits at ``x`` under the logistic model."""
    score = b0 + b1 * x
    return float(np.where(hit, log_expit(score), log_expit(-score)).sum())


def fit_logistic(x, hit):
    """b0 and b1 of greatest likelihood, x and hit of shape (N,)."""
    x, hit = np.asarray(x, float), np.asarray(hit, bool)
    middle, spread = x.mean(), max(x.std(), 1e-9)
    z = (x - middle) / spread

    def cost(b):
        return -likelihood(b[0], b[1], z, hit) / len(z)

    made = minimize(cost, [0.0, 1.0], method="L-BFGS-B", bounds=[(-500, 500)] * 2)
    slope = made.x[1] / spread
    return float(made.x[0] - slope * middle), float(slope)


def fit_pod(length_mm, hit):
    """Fit one sample of lengths, shape (N,), with whether each was found."""
    x, hit = np.log(np.asarray(length_mm, float)), np.asarray(hit, bool)
    if hit.all() or not hit.any():
        nothing = float("nan")
        return Pod(nothing, nothing, nothing)

    def best_at(log_a90):
        """Greatest likelihood among curves that reach 90 % at a length."""
        made = minimize_scalar(
            lambda b1: -likelihood(np.log(9) - b1 * log_a90, b1, x, hit),
            bounds=(0.1, STEEPEST),
            method="bounded",
        )
        return -made.fun

    grid = np.linspace(x.min() - 0.5, x.max() + 0.5, 30)
    top = grid[int(np.argmax([best_at(place) for place in grid]))]
    step = grid[1] - grid[0]
    peak = minimize_scalar(
        lambda place: -best_at(place), bounds=(top - step, top + step), method="bounded"
    )
    limit = -peak.fun - ONE_SIDED_95 / 2
    high = peak.x + 0.05
    while best_at(high) >= limit and high < peak.x + 5:
        high += 0.1
    bound = float("inf")
    if best_at(high) < limit:
        bound = float(np.exp(brentq(lambda place: best_at(place) - limit, peak.x, high)))
    b0, b1 = fit_logistic(x, hit)
    return Pod(float(np.exp(-b0 / b1)), float(np.exp(peak.x)), bound)


def sample(condition, seed, render, look, match):
    """Lengths and hits of one photo full of short cracks of every length."""

    def short_cracks(scene):
        wide, high = (s * scene.condition.mm_per_px for s in scene.size)
        pitch = max(5.0, np.sqrt(wide * high / 300))
        for x in np.arange(pitch, wide - pitch, pitch):
            for y in np.arange(pitch, high - pitch, pitch):
                length = float(np.exp(scene.rng.uniform(np.log(0.2), np.log(3.0))))
                width = float(np.clip(length / 4, 0.12, 0.35))
                at = np.array([x, y]) + scene.rng.uniform(-0.7, 0.7, 2)
                way = line(scene.rng, at, max(length - width, 0.01), scene.rng.uniform(0, 3.14))
                strength = scene.condition.strength[0]
                lay(scene, "crack", way, np.full(len(way), width / 2), strength, soft_mm=0.05)

    pixels, truths = render(condition, seed, short_cracks)
    index, false = match(truths, look(pixels, condition.mm_per_px).found)
    return [t.length_mm for t in truths], [n >= 0 for n in index], len(false)


def pod_table(look, match, *, photos):
    """a50, a90 and a90/95 in mm by scale and contrast, with the false calls on the way."""
    from stress_shop import render

    lines = [
        f"{'mm/px':>6}{'contrast':>10}{'cracks':>8}{'a50':>7}{'a90':>7}{'a90/95':>8}{'false/photo':>13}"
    ]
    for scale in SCALES:
        for contrast in CONTRASTS:
            plain = Condition(name="pod")
            condition = replace(plain, mm_per_px=scale, strength=(contrast, contrast))
            lengths, hits, false = [], [], 0
            for seed in range(photos):
                one = sample(condition, 5000 + seed, render, look, match)
                lengths, hits, false = lengths + one[0], hits + one[1], false + one[2]
            pod = fit_pod(lengths, hits)
            lines.append(
                f"{scale:>6.2f}{contrast:>10.1f}{len(hits):>8}{pod.a50:>7.2f}{pod.a90:>7.2f}"
                f"{pod.a90_95:>8.2f}{false / photos:>13.2f}"
            )
    return lines
