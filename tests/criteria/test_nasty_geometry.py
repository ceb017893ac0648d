"""Geometry that touches or crosses itself, through `ptmark evaluate`, against Shapely."""

import itertools
import json

import numpy as np
import pytest
import shapely

from ptmark.__main__ import main

TURNS = [0.0, 13.0, 45.0, 77.7]


def ring(x, y, d, sides=64):
    turn = np.arange(sides) * 2 * np.pi / sides
    return np.c_[np.cos(turn), np.sin(turn)] * d / 2 + [x, y]


def turned(points, deg, x=0.0, y=0.0):
    a = np.deg2rad(deg)
    spin = np.array([[np.cos(a), np.sin(a)], [-np.sin(a), np.cos(a)]])
    return np.asarray(points) @ spin + [x, y]


@pytest.fixture
def evaluated(tmp_path):
    def run(outlines, profile, decision="guarded", **more):
        listed = [
            {"id": f"P{k}", "outline_mm": np.asarray(one).tolist(), **more}
            for k, one in enumerate(outlines)
        ]
        source, out = tmp_path / "in.json", tmp_path / "out.json"
        source.write_text(json.dumps({"indications": listed}))
        words = ["evaluate", str(source), "--criteria", profile, "--decision", decision]
        assert main([*words, "--json", str(out)]) == 0
        return json.loads(out.read_text())["evaluation"]

    return run


def of_rule(evaluation, rule):
    return next(one["verdict"] for one in evaluation["findings"] if one["rule"] == rule)


@pytest.mark.parametrize("deg", TURNS)
def test_a_row_at_exactly_the_gap_far_from_the_origin(deg, evaluated):
    # ASME VIII-1 8-4(c): four or more with gaps of 1.5 mm or less; 1e-6 mm is read as equal
    for gap, verdict in (
        (1.5 - 1e-5, "rejectable"),
        (1.5, "rejectable"),
        (1.5 + 1e-5, "acceptable"),
    ):
        row = [turned(ring(k * (3 + gap), 0, 3), deg, 1e3, -2e3) for k in range(4)]
        assert evaluated(row, "asme-viii-1-app-8")["verdict"] == verdict


@pytest.mark.parametrize("deg", TURNS)
def test_a_window_filled_to_its_corners_at_any_turn(deg, evaluated):
    # B31.1: ten or more in 3870 mm2, no side above 150 mm
    high, d = 3870 / 150, 2.2
    for over, verdict in ((-1e-4, "rejectable"), (0.0, "rejectable"), (1e-4, "acceptable")):
        x, y = (150 + over + d) / 2, (high + d) / 2
        places = [(-x, -y), (x, -y), (x, y), (-x, y)]
        places += [(20.0 * k - 50, 2.0 * (-1) ** k) for k in range(6)]
        pores = [turned(ring(*at, d), deg, 500, 300) for at in places]
        assert of_rule(evaluated(pores, "asme-b31.1"), "window") == verdict


def crossed_by_one_line(outlines):
    """Whether a line crosses all, tried through every two vertices (Shapely)."""
    shapes = [shapely.Polygon(one) for one in outlines]
    points = np.concatenate(outlines)
    for a, b in itertools.combinations(range(len(points)), 2):
        way = points[b] - points[a]
        if np.hypot(*way) == 0:
            continue
        way = way / np.hypot(*way) * 100
        line = shapely.LineString([points[a] - way, points[a] + way])
        if max(shapely.distance(line, shapes)) < 1e-9:
            return True
    return False


@pytest.mark.parametrize("seed", range(12))
def test_zigzags_against_every_line_through_two_vertices(seed, evaluated):
    rng = np.random.default_rng(seed)
    outlines = [
        turned(ring(0, 0, 3, 8), rng.uniform(0, 90), 4.2 * k, rng.uniform(-1.9, 1.9))
        for k in range(4)
    ]
    shapes = [shapely.Polygon(one) for one in outlines]
    near = all(shapely.distance(*shapes[k : k + 2]) <= 1.5 for k in range(3))
    expected = "rejectable" if near and crossed_by_one_line(outlines) else "acceptable"
    assert of_rule(evaluated(outlines, "asme-viii-1-app-8"), "row") == expected


BOW = [[0, 0], [4, 4], [4, 0], [0, 3.9]]
ODD = {
    "crossing itself": BOW,
    "a star drawn in one": [[3 * np.cos(2.513 * k), 3 * np.sin(2.513 * k)] for k in range(5)],
    "going back on itself": [[0, 0], [5, 0], [3, 0], [5, 0], [5, 1], [0, 1]],
    "a hair": [[0, 0], [10, 0], [10, 1e-3], [0, 1e-3]],
    "thinner than light": [[0, 0], [5, 0], [5, 1e-9], [0, 1e-9]],
    "smaller than an atom": ring(0, 0, 1e-9),
    "small and far": ring(1e6, 1e6, 1e-9),
    "a kilometre": ring(0, 0, 1e6),
    "closed and doubled": np.repeat(ring(0, 0, 3, 16), 2, axis=0),
    "an L": [[0, 0], [5, 0], [5, 1], [1, 1], [1, 5], [0, 5]],
}


@pytest.mark.parametrize("profile", ["iso-23277-2", "asme-b31.1", "en-10228-2-class-3"])
def test_odd_outlines_are_measured_by_the_caliper_of_their_points(profile, evaluated):
    for name, points in ODD.items():
        made = evaluated([points], profile)
        corners = np.asarray(points, dtype=float)
        caliper = max(np.hypot(*(a - b)) for a, b in itertools.combinations(corners, 2))
        of_one = {"relevance", "linear", "rounded", "non-linear"}
        told = [
            one
            for one in made["findings"]
            if one["indications"] == ["P0"] and one["rule"] in of_one
        ]
        assert told, name
        assert all(one["value"] == pytest.approx(caliper, abs=2e-9) for one in told), name
    # all of them together, one upon another
    together = evaluated(list(ODD.values()), profile)
    assert together["verdict"] == "rejectable"


def test_the_same_outline_again_is_one_more_indication(evaluated):
    # what is listed twice counts twice, which is the stricter reading
    pore = ring(0, 0, 3)
    assert of_rule(evaluated([pore] * 4, "asme-viii-1-app-8"), "row") == "rejectable"
    assert of_rule(evaluated([pore] * 3, "asme-viii-1-app-8"), "row") == "acceptable"
    inner = [ring(0, 0, 4), ring(0.3, 0, 1.2), ring(0.3, 0, 0.4)]  # one inside another
    one = evaluated(inner, "iso-23277-2")
    assert one["verdict"] == "acceptable"
    (told,) = [f for f in one["findings"] if f["rule"] == "non-linear"]
    assert told["value"] == pytest.approx(4.0)


def test_uncertainty_decides_only_what_it_reaches(evaluated):
    u = {"length_u_mm": 0.1, "width_u_mm": 0.1}
    for d, verdict in ((4.9, "acceptable"), (4.91, "undecided"), (5.01, "rejectable")):
        assert evaluated([ring(0, 0, d)], "asme-viii-1-app-8", **u)["verdict"] == verdict
    plain = evaluated([ring(0, 0, 4.91)], "asme-viii-1-app-8", "simple", **u)
    assert plain["verdict"] == "acceptable"
