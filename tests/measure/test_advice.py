"""The one thing that would reduce an uncertainty most."""

from math import hypot

import numpy as np
import pytest

from ptmark.dye import EdgeQuality
from ptmark.measure import Conditions, Quantity, advice, dominant, measure_outline, shares


def test_shares_are_those_of_the_variance():
    """JCGM 100:2008, H.1 (end gauge): 25, 9.7, 2.9 and 16.6 nm; u_c**2 = 1002 nm**2."""
    end_gauge = {"standard": 25.0, "difference": 9.7, "expansion": 2.9, "temperature": 16.6}
    found = shares(end_gauge)
    assert sum(found.values()) == pytest.approx(1.0, abs=1e-5)
    assert found["standard"] == pytest.approx(625 / 1002, abs=1e-3)
    assert list(found) == ["standard", "temperature", "difference", "expansion"]


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("sampling", "go closer"),
        ("relief", "crown's height"),
        ("tilt", "card beside"),
        ("reference", "callipers"),
        ("picking", "magnifier"),
        ("lens", "middle of the picture"),
        ("map", "flat"),
        ("edge", "focus"),
    ],
)
def test_every_name_of_a_budget_has_its_mend(name, says):
    budget = {"sampling": 0.01, "edge": 0.01, "relief": 0.01} | {name: 0.05}
    assert dominant(budget) == name
    assert says in advice(budget)
    share = 100 * (0.05 / hypot(*budget.values())) ** 2
    assert f"{share:.0f} %" in advice(budget)


@pytest.mark.parametrize(
    ("name", "reference", "says", "never"),
    [
        ("reference", "card", "check length", "longer"),
        ("reference", "rectangle", "measure the reference", "card"),
        ("reference", "pipe", "outside diameter", "card"),
        ("reference", "rectangle on a pipe", "outside diameter", "card"),
        ("picking", "card", "beside the indication", "magnifier"),
        ("picking", "two lines", "magnifier", "card"),
        ("picking", "pipe", "background", "magnifier"),
        ("focal length", "pipe", "lay the card on the pipe", "calibrate"),
        ("focal length", "card on a pipe", "calibrate", "lay the card"),
        ("lens", "line", "calibrate the camera", "card"),
    ],
)
def test_the_mend_fits_the_reference(name, reference, says, never):
    """Only what can be done with that reference is advised."""
    said = advice({name: 1.0}, reference)
    assert says in said
    assert never not in said


def test_measured_budgets_use_no_other_names(flat_map, shapes):
    """What measuring names, the advice knows."""
    spread = dict.fromkeys(("picking", "reference", "map", "tilt", "lens"), np.eye(9) * 1e-12)
    surface = flat_map(covariance=spread)
    outline = (shapes["box"](12.0, 1.5) + np.array([40.0, 30.0])) * 20.0
    found = measure_outline(outline, surface, EdgeQuality(shift_px=0.5, noise_px=0.1))
    for name in found.length.budget:
        assert advice({name: 1.0}), name


@pytest.mark.parametrize("budget", [{}, {"edge": 0.0}, dict.fromkeys("abcd", 1.0)])
def test_nothing_to_say(budget):
    assert advice(budget) == ""


def test_even_budgets_have_no_single_mend():
    assert advice(dict.fromkeys(("edge", "sampling", "relief", "lens"), 1.0)) == ""


def test_relief_given_takes_its_place(flat_map, shapes):
    """Following the advice makes the value surer: the crown's height is given."""
    outline = (shapes["box"](12.0, 1.5) + np.array([40.0, 30.0])) * 20.0
    edge = EdgeQuality(shift_px=0.05, noise_px=0.05)
    surface = flat_map(camera_mm=(10.0, 10.0, 120.0))
    unsaid = measure_outline(outline, surface, edge).length
    assert isinstance(unsaid, Quantity)
    assert "crown's height" in advice(unsaid.budget)
    said = measure_outline(outline, surface, edge, Conditions(relief_mm=1.0)).length
    assert said.u < unsaid.u
