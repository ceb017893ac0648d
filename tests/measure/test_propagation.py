"""The whole model of a length against GTC and against Monte Carlo.

The model, written anew: two ends are mapped by ``(h p) / w`` after a radial term, and the edge,
the photo's grain and the operator move them along the length.
"""

from math import hypot, log10, sqrt

import GTC
import numpy as np
import pytest

from ptmark.dye import EdgeQuality
from ptmark.measure import Conditions, measure_outline
from ptmark.scale import SurfaceMap
from ptmark.scale.plane import Lens

FLAT = Conditions(relief_mm=0.0)
CENTRE, RADIUS = (1000.0, 750.0), 1250.0
H = np.array([[0.052, 0.004, 3.0], [-0.003, 0.049, -2.0], [1.1e-5, -2.3e-5, 1.0]])
BOX = np.array([[1300.0, 400.0], [1560.0, 520.0], [1548.0, 546.0], [1288.0, 426.0]])
EDGE = EdgeQuality(shift_px=0.6, noise_px=0.3, source="hand")


def covariance():
    """Of eight entries of h and the lens, all correlated, from a fixed seed."""
    size = np.array([5e-5, 4e-5, 0.05, 4e-5, 5e-5, 0.05, 4e-8, 4e-8, 2e-3])
    mixed = np.random.default_rng(11).normal(size=(9, 9))
    spread = mixed @ mixed.T
    spread /= np.sqrt(np.outer(np.diag(spread), np.diag(spread)))
    return spread * np.outer(size, size)


def surface():
    return SurfaceMap(
        h=H,
        covariance={"map": covariance()},
        reference="card",
        reference_px=np.array([[200.0, 200.0], [1400.0, 900.0]]),
        camera_mm=np.array([40.0, 30.0, 200.0]),
        camera_height_rel_u=0.0,
        lens=Lens(CENTRE, RADIUS, kappa=0.01),
    )


def mapped(point, h, bend):
    """One end in mm; works on numbers, arrays and GTC's uncertain numbers."""
    x, y = point[0] - CENTRE[0], point[1] - CENTRE[1]
    factor = 1 + bend * (x**2 + y**2) / RADIUS**2
    x, y = CENTRE[0] + x * factor, CENTRE[1] + y * factor
    w = h[6] * x + h[7] * y + 1
    return (h[0] * x + h[1] * y + h[2]) / w, (h[3] * x + h[4] * y + h[5]) / w


def length(ends, h, bend, root):
    (ax, ay), (bx, by) = (mapped(end, h, bend) for end in ends)
    return root((bx - ax) ** 2 + (by - ay) ** 2)


def aside(local):
    """What edge, grain and operator add: standard uncertainties in mm, by the model's words.

    The edge: both ends at once, rectangular; each end's grain with a tenth of a px of sampling,
    and its 1.5 px of a free hand.
    """
    ends = sqrt(2) * local
    return 2 * 0.6 * local / sqrt(3), ends * hypot(0.3, 0.1), ends * 1.5


def stated():
    found = measure_outline(BOX, surface(), EDGE, FLAT)
    one, other = np.unravel_index(
        np.argmax(((BOX[:, None] - BOX) ** 2).sum(-1)), (len(BOX), len(BOX))
    )
    return found.length, BOX[[one, other]]


@pytest.mark.truth
def test_length_propagates_as_gtc_does():
    """GTC (Measurement Standards Laboratory of New Zealand), JCGM 100:2008, 5.2.2."""
    ours, ends = stated()
    kept, names = covariance(), [*H.ravel()[:8], 0.01]
    parts = GTC.multiple_ureal(
        [float(v) for v in names], [float(v) for v in np.sqrt(np.diag(kept))], np.inf
    )
    for i in range(9):
        for j in range(i):
            GTC.set_correlation(
                float(kept[i, j] / sqrt(kept[i, i] * kept[j, j])), parts[i], parts[j]
            )
    plain = length(ends, parts[:8], parts[8], GTC.sqrt)
    local = plain.x / float(np.hypot(*(ends[1] - ends[0])))
    whole = plain + sum(GTC.ureal(0.0, u) for u in aside(local))
    assert ours.value == pytest.approx(whole.x, rel=1e-9)
    assert ours.budget["map"] == pytest.approx(plain.u, rel=1e-6)
    assert ours.u == pytest.approx(whole.u, rel=1e-6)


@pytest.mark.truth
def test_length_propagates_as_monte_carlo_does():
    """JCGM 101:2008, 8.1 and 7.9.2: within half of the last of two significant digits."""
    ours, ends = stated()
    rng, draws = np.random.default_rng(5), 400_000
    drawn = rng.multivariate_normal([*H.ravel()[:8], 0.01], covariance(), draws).T
    plain = length(ends, drawn[:8], drawn[8], np.sqrt)
    local = ours.value / float(np.hypot(*(ends[1] - ends[0])))
    edge, grain, hand = aside(local)
    whole = (
        plain
        + rng.uniform(-1, 1, draws) * edge * sqrt(3)
        + rng.normal(0, grain, draws)
        + rng.normal(0, hand, draws)
    )
    tolerance = 0.5 * 10.0 ** (int(np.floor(log10(ours.u))) - 1)
    assert abs(float(whole.std()) - ours.u) <= tolerance
    low, high = np.quantile(whole, [0.02275, 0.97725])  # 95.45 %, k = 2
    assert abs((ours.value - ours.expanded) - low) <= 2 * tolerance
    assert abs((ours.value + ours.expanded) - high) <= 2 * tolerance
