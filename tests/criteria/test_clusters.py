"""Clusters by their length and area, against Shapely and networks of all pairs."""

import itertools
import tomllib

import numpy as np
import pytest
import shapely

from ptmark.criteria import evaluate
from ptmark.criteria.profile import profile_of
from ptmark.errors import CriteriaError

HEAD = """\
name = "house"
title = "House rules, invented"
edition = "1"
unit = "{unit}"
source = "drawing"
governs = "The contract governs."
[shape]
linear = "> 3"
clause = "1"
sure = "verified"
[[rule]]
id = "cluster"
kind = "cluster"
clause = "2"
sure = "verified"
of = "any"
number = "{number}"
gap = "<= {gap} {unit}"
what = "{what}"
reject = "> {limit}"
"""


def rules(*, what, limit, number=">= 3", gap="2", unit="mm"):
    text = HEAD.format(what=what, limit=limit, number=number, gap=gap, unit=unit)
    return profile_of(tomllib.loads(text), text, "house")


def cluster_of(evaluation):
    (found,) = [one for one in evaluation.findings if one.rule == "cluster"]
    return found


@pytest.mark.parametrize("deg", [0.0, 33.3])
def test_length_and_area_at_below_and_above(deg, build):
    # three pores of 2 mm with gaps of exactly 2 mm: 10 mm end to end; the hull by Shapely
    row = build.row_of(3, 2.0, 2.0, deg)
    hull = shapely.convex_hull(
        shapely.union_all([shapely.Polygon(one.outline_mm) for one in row.indications])
    )
    for over, verdict in ((-1e-3, "rejectable"), (1e-3, "acceptable")):
        by_length = cluster_of(evaluate(rules(what="length", limit=f"{10 + over} mm"), row))
        assert by_length.verdict == verdict
        limit = f"{hull.area + over:.6f} mm2"
        by_area = cluster_of(evaluate(rules(what="area", limit=limit), row))
        assert by_area.verdict == verdict
        assert by_area.value == pytest.approx(hull.area)
    assert (
        cluster_of(evaluate(rules(what="length", limit="10 mm"), row)).verdict == "acceptable"
    )
    wider = build.row_of(3, 2.0, 2.0 + 1e-3, deg)
    assert cluster_of(evaluate(rules(what="length", limit="1 mm"), wider)).value == 0.0
    two = build.row_of(2, 2.0, 1.0, deg)
    assert cluster_of(evaluate(rules(what="length", limit="1 mm"), two)).verdict == "acceptable"


@pytest.mark.parametrize("seed", range(20))
def test_random_clusters_against_all_pairs(seed, build):
    rng = np.random.default_rng(seed)
    made = [build.pore(f"P{k}", *rng.uniform(0, 25, 2), rng.uniform(1, 3)) for k in range(12)]
    shapes = [shapely.Polygon(one.outline_mm) for one in made]
    of = list(range(12))
    for i, j in itertools.combinations(range(12), 2):
        if shapes[i].distance(shapes[j]) <= 2:
            of = [of[i] if one == of[j] else one for one in of]
    groups = [[shapes[k] for k in range(12) if of[k] == name] for name in set(of)]
    hulls = [shapely.union_all(one).convex_hull for one in groups if len(one) >= 3]
    areas = [hull.area for hull in hulls]
    found = cluster_of(evaluate(rules(what="area", limit="1 mm2"), build.scene(*made)))
    assert found.value == pytest.approx(max(areas, default=0.0))
    corners = [np.asarray(hull.exterior.coords) for hull in hulls]
    spans = [np.hypot(*(c[:, None] - c[None]).transpose(2, 0, 1)).max() for c in corners]
    found = cluster_of(evaluate(rules(what="length", limit="1 mm"), build.scene(*made)))
    assert found.value == pytest.approx(max(spans, default=0.0))


def test_uncertainty_joins_and_the_finding_says_so(build):
    row = build.row_of(3, 2.0, 2.05, length_u=0.1, width_u=0.1)
    found = cluster_of(evaluate(rules(what="length", limit="8 mm"), row))
    assert found.verdict == "undecided"
    assert "hang together by gaps of 2 mm or less" in found.says
    assert "would pass it" in found.says
    assert cluster_of(evaluate(rules(what="length", limit="8 mm"), row, "simple")).value == 0


def test_inches_and_faults():
    assert (
        rules(what="area", limit="0.05 in2", gap="1/16", unit="in").rules[0].reject.unit
        == "in2"
    )
    with pytest.raises(CriteriaError, match="needs the profile's unit mm2"):
        rules(what="area", limit="5 mm")
    with pytest.raises(CriteriaError, match="a cluster needs two or more"):
        rules(what="length", limit="5 mm", number=">= 1")
