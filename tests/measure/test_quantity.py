"""Uncertainty arithmetic against worked examples of JCGM 100:2008 and another package."""

import numpy as np
import pytest
import uncertainties
from uncertainties import umath

from ptmark.measure import Quantity
from ptmark.measure.quantity import propagate


@pytest.mark.truth
def test_end_gauge_of_gum_h1():
    """JCGM 100:2008, H.1: l = 50.000838 mm, u = 32 nm of 25, 9.7, 2.9 and 16.6 nm."""
    values = {
        "ls": (50.000623e6, 25.0),  # nm
        "d": (215.0, 9.7),
        "alpha_s": (11.5e-6, 1.2e-6),
        "theta": (-0.1, 0.41),
        "dalpha": (0.0, 0.58e-6),
        "dtheta": (0.0, 0.029),
    }

    def length(x):
        ls, d, alpha_s, theta, dalpha, dtheta = x
        return ls + d - ls * (dalpha * theta + alpha_s * dtheta)

    at = [value for value, _ in values.values()]
    parts = {}
    for i, (name, (_, u)) in enumerate(values.items()):
        alone = np.zeros((6, 6))
        alone[i, i] = u**2
        parts[name] = float(np.sqrt(propagate(length, at, alone)[1][0, 0]))
    result = Quantity(float(propagate(length, at, np.zeros((6, 6)))[0][0]), parts, "nm")
    assert result.value == pytest.approx(50.000838e6, abs=0.5)
    wanted = {"ls": 25, "d": 9.7, "alpha_s": 0, "theta": 0, "dalpha": 2.9, "dtheta": 16.6}
    for name, u in wanted.items():
        assert result.budget[name] == pytest.approx(u, abs=0.1)
    assert result.u == pytest.approx(32, abs=0.5)
    assert result.u**2 == pytest.approx(1002, rel=0.01)
    assert result.expanded == 2 * result.u


VOLT = [5.007, 4.994, 5.005, 4.990, 4.999]
AMPERE = [19.663e-3, 19.639e-3, 19.640e-3, 19.685e-3, 19.678e-3]
RADIAN = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433]


def impedance(x):
    v, i, phi = x
    return np.array([v * np.cos(phi) / i, v * np.sin(phi) / i, v / i])


@pytest.mark.truth
def test_correlated_impedance_of_gum_h2():
    """JCGM 100:2008, H.2, tables H.2 to H.4: R, X, Z with their u and correlations."""
    readings = np.array([VOLT, AMPERE, RADIAN])
    covariance = np.cov(readings) / len(VOLT)
    out, spread = propagate(impedance, readings.mean(axis=1), covariance)
    u = np.sqrt(np.diag(spread))
    np.testing.assert_allclose(out, [127.732, 219.847, 254.260], atol=0.0005)
    np.testing.assert_allclose(u, [0.071, 0.2956, 0.236], atol=0.0006)
    r = spread / np.outer(u, u)
    np.testing.assert_allclose([r[0, 1], r[0, 2], r[1, 2]], [-0.588, -0.485, 0.993], atol=0.001)


@pytest.mark.truth
def test_propagation_agrees_with_the_uncertainties_package():
    readings = np.array([VOLT, AMPERE, RADIAN])
    covariance = np.cov(readings) / len(VOLT)
    v, i, phi = uncertainties.correlated_values(readings.mean(axis=1), covariance)
    # The uncertainties package (analytic derivatives): independent reference.
    theirs = [v * umath.cos(phi) / i, v * umath.sin(phi) / i, v / i]
    _, ours = propagate(impedance, readings.mean(axis=1), covariance)
    np.testing.assert_allclose(ours, uncertainties.covariance_matrix(theirs), rtol=1e-6)


def test_inputs_known_exactly_take_no_part():
    _, spread = propagate(lambda x: x[0] ** 2 + x[1], [3.0, 7.0], [[0.04, 0.0], [0.0, 0.0]])
    assert spread[0, 0] == pytest.approx((6 * 0.2) ** 2, rel=1e-6)


def test_contributions_combine_in_quadrature_and_none_is_zero():
    assert Quantity(5.0, {"edge": 0.3, "map": 0.4}).u == pytest.approx(0.5)
    assert Quantity(5.0).u == 0.0
    assert Quantity(5.0).expanded == 0.0
