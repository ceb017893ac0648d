"""Distances that map and relief make wrong all in one sense: what several indications span."""

from dataclasses import replace

import numpy as np
import pytest

from ptmark.criteria import evaluate, load_profile

R = 0.04  # as of a rule whose graduations cannot be read

HOUSE = """
name = "spans"
title = "Invented"
edition = "1"
unit = "mm"
source = "invented"
governs = "the contract"
[shape]
linear = "> 3"
clause = "1"
sure = "verified"
[[rule]]
id = "{kind}"
kind = "{kind}"
of = "any"
number = ">= 3"
gap = "<= 10 mm"
{more}
clause = "1"
sure = "verified"
"""
HOUSES = {
    "cluster": 'what = "length"\nreject = "> 30 mm"',
    "cluster-area": 'what = "area"\nreject = "> 100 mm2"',
    "row": 'reject = "> 30 mm"',
    "row-number": "",
}


@pytest.fixture
def house(tmp_path):
    def load(name):
        path = tmp_path / f"{name}.toml"
        path.write_text(HOUSE.format(kind=name.split("-")[0], more=HOUSES[name]))
        return load_profile(path)

    return load


def known(scene, share):
    """The scene with U of that share of every length and of every distance."""
    return replace(
        scene,
        indications=tuple(
            replace(one, length_u=share * one.length, near_u=(share,) * 6, far_u=share)
            for one in scene.indications
        ),
    )


def verdicts(profile, scene, build):
    """Guarded, and the code's plain reading of the scene longer and shorter by U."""
    guarded = evaluate(profile, known(scene, R)).verdict
    states = [build.moved(scene, scale=s) for s in (1 - R, 1 - R / 2, 1, 1 + R / 2, 1 + R)]
    return guarded, {evaluate(profile, state, "simple").verdict for state in states}


def test_neighbours_as_one_are_no_surer_than_one_as_long(build):
    # Simple scaling, JCGM 100:2008, 5.1.3: what is a share of each is that share of the whole.
    # ISO 23277 level 3, linear above 8 mm (facts: conflicting) of three taken as one.
    bars = [build.bar(name, x, 0, 2.0, 0.4) for name, x in (("A", 0), ("B", 2.9), ("C", 5.8))]
    made = evaluate(load_profile("iso-23277-3"), known(build.scene(*bars), R))
    (found,) = (one for one in made.findings if one.indications == ("A", "B", "C"))
    assert found.value == pytest.approx(7.8, abs=1e-3)
    assert found.u == pytest.approx(R * 7.8, abs=1e-3)
    assert made.verdict == "undecided"


def test_what_else_a_member_has_is_not_multiplied(build):
    own = {"length_u": 0.1, "near_u": (0.03,) * 6}
    bars = [build.bar(name, x, 0, 2.0, 0.4, **own) for name, x in (("A", 0), ("B", 2.5))]
    made = evaluate(load_profile("iso-23277-3"), build.scene(*bars))
    (found,) = (one for one in made.findings if one.indications == ("A", "B"))
    # GUM, 5.1.2: the share of 4.5 mm, and of 2 mm what is left of 0.1 mm without its share
    assert found.u == pytest.approx(np.sqrt((0.03 * 4.5) ** 2 + 0.1**2 - 0.06**2), abs=1e-4)


SPANS = [
    # EN 10228-2: above 10 on a frame of 148 by 105 mm (memory), its diagonal 181.5 mm
    ("en-10228-2-class-2", [(18.7 * k, 0) for k in range(11)], 3.5),
    # ASME B31.1: ten within 3870 mm2 with sides up to 150 mm (verified), its diagonal 152.2 mm
    ("asme-b31.1", [(17.6 * k, 0) for k in range(10)], 4.0),
    # API 1104: two pores in 300 mm of weld are left open (secondary)
    ("api-1104", [(0, 0), (304, 0)], 2.5),
]


@pytest.mark.parametrize(("name", "places", "size"), SPANS, ids=[one[0] for one in SPANS])
def test_frames_windows_and_stretches_reach_as_far_as_they_may(name, places, size, build):
    pores = [build.pore(f"P{k}", x, y, size) for k, (x, y) in enumerate(places)]
    scene = build.scene(*pores, thickness_mm=20.0)
    guarded, states = verdicts(load_profile(name), scene, build)
    assert "acceptable" in states
    assert len(states) > 1  # the border lies within U
    assert guarded == "undecided"


@pytest.mark.parametrize("name", HOUSES)
def test_no_true_scale_rejects_what_guarded_accepts(name, house, build):
    profile, rng, open_ = house(name), np.random.default_rng(5), 0
    for _ in range(12):
        pores, x, y = [], 0.0, 0.0
        for k in range(int(rng.integers(3, 6))):
            pores.append(build.pore(f"P{k}", x, y, float(rng.uniform(1.0, 4.0))))
            x, y = x + float(rng.uniform(8.0, 14.0)), y + float(rng.uniform(-2, 2))
        guarded, states = verdicts(profile, build.scene(*pores), build)
        open_ += len(states) > 1
        if guarded == "acceptable":
            assert states == {"acceptable"}
    assert open_ > 0


def test_gaps_of_an_overview_are_no_surer_than_its_own_outlines(build):
    # ASME VIII-1 App. 8: four in a line with gaps up to 1.5 mm (verified). The close-ups make
    # the sizes sure to 0.05 mm; where they lie, only the overview tells.
    row = build.row_of(4, 2.0, 1.7, length_u=0.05)
    far = tuple(replace(one, place_u=0.4) for one in row.indications)
    profile = load_profile("asme-viii-1-app-8")
    assert evaluate(profile, row).verdict == "acceptable"
    assert evaluate(profile, replace(row, indications=far)).verdict == "undecided"
