"""The fit of probability of detection that the stress set reports by."""

import importlib.util
import sys
from pathlib import Path

import numpy as np
import pytest
from scipy.optimize import minimize
from scipy.stats import chi2

_BENCHMARKS = Path(__file__).parents[1] / "benchmarks"


@pytest.fixture(scope="module")
def pod():
    sys.path.insert(0, str(_BENCHMARKS))
    try:
        spec = importlib.util.spec_from_file_location("pod", _BENCHMARKS / "pod.py")
        made = importlib.util.module_from_spec(spec)
        sys.modules["pod"] = made
        spec.loader.exec_module(made)
        yield made
    finally:
        sys.path.remove(str(_BENCHMARKS))
        for name in ("pod", "stress_scenes"):
            sys.modules.pop(name, None)


def sample(seed, count, b0=-2.0, b1=4.0):
    rng = np.random.RandomState(seed)
    length = np.exp(rng.uniform(np.log(0.3), np.log(6), count))
    return length, rng.uniform(size=count) < 1 / (1 + np.exp(-(b0 + b1 * np.log(length))))


@pytest.mark.truth
def test_logistic_fit_of_the_published_o_ring_data(pod):
    # Dalal, Fowlkes and Hoadley, J. Am. Stat. Assoc. 84 (1989): 23 flights, joint temperature
    # in degrees F against distress; maximum likelihood 15.043 - 0.2322 t (data from memory)
    t = [
        66,
        70,
        69,
        68,
        67,
        72,
        73,
        70,
        57,
        63,
        70,
        78,
        67,
        53,
        67,
        75,
        70,
        81,
        76,
        79,
        75,
        76,
        58,
    ]
    hit = [0, 1, 0, 0, 0, 0, 0, 0, 1, 1, 1, 0, 0, 1, 0, 0, 0, 0, 0, 0, 1, 0, 1]
    b0, b1 = pod.fit_logistic(t, hit)
    assert b0 == pytest.approx(15.043, abs=0.005)
    assert b1 == pytest.approx(-0.2322, abs=0.0001)


def test_a90_is_that_of_the_fitted_curve(pod):
    length, hit = sample(1, 400)
    b0, b1 = pod.fit_logistic(np.log(length), hit)
    made = pod.fit_pod(length, hit)
    assert made.a90 == pytest.approx(np.exp((np.log(9) - b0) / b1), rel=2e-3)
    assert made.a50 == pytest.approx(np.exp(-b0 / b1), rel=1e-6)
    assert made.a50 < made.a90 < made.a90_95


def test_bound_agrees_with_the_likelihood_ratio_worked_out_by_scipy(pod):
    length, hit = sample(2, 200)
    x = np.log(length)

    def cost(b):
        score = b[0] + b[1] * x
        return np.sum(np.logaddexp(0, np.where(hit, -score, score)))

    best = minimize(cost, [0, 1]).fun
    bound = np.log(pod.fit_pod(length, hit).a90_95)
    held = minimize(lambda b: cost([np.log(9) - b[0] * bound, b[0]]), [2.0]).fun
    # one-sided 95 %: twice the fall of the log likelihood is chi-square at 0.90
    assert 2 * (held - best) == pytest.approx(chi2.ppf(0.90, 1), abs=0.01)


@pytest.mark.slow
def test_bound_covers_the_true_a90_nineteen_times_in_twenty(pod):
    true = np.exp((np.log(9) + 2) / 4)
    above = [pod.fit_pod(*sample(seed, 300)).a90_95 >= true for seed in range(60)]
    assert 53 <= sum(above) <= 60  # binomial: 57 +- 2 x 1.7


def test_clean_separation_still_has_a_bound(pod):
    length = np.geomspace(0.3, 3, 60)
    made = pod.fit_pod(length, length > 1.0)
    assert 0.95 < made.a90 < 1.1
    assert made.a90 < made.a90_95 < 1.3


def test_all_found_or_none_found_gives_no_figure(pod):
    assert np.isnan(pod.fit_pod([1.0, 2.0], [True, True]).a90)
    assert np.isnan(pod.fit_pod([1.0, 2.0], [False, False]).a90)
