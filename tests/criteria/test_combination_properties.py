"""What must hold for edges, tables, joins and rows by their length, on random scenes."""

from dataclasses import replace

import numpy as np
import pytest

from ptmark.criteria import evaluate, load_profile

ORDER = ("acceptable", "undecided", "rejectable")
PROFILE = """\
name = "house"
title = "House rules"
edition = "1"
unit = "mm"
source = "drawing"
governs = "The contract governs."
[shape]
linear = "> 3"
clause = "1"
sure = "verified"
[relevance]
relevant = "> 1 mm"
clause = "1"
sure = "verified"
{rules}
"""
RULE = '[[rule]]\nid = "{}"\nclause = "1"\nsure = "verified"\n{}\n'
PARTS = {
    "long": 'kind = "size"\nof = "any"\nreject = "> 3 mm"',
    "near": 'kind = "edge"\nof = "any"\nreject = "< 5 mm"',
    "line": 'kind = "shape"\nof = "linear"',
    "row": 'kind = "row"\nof = "any"\nnumber = ">= 3"\ngap = "<= 3 mm"',
    "row-length": 'kind = "row"\nof = "any"\nnumber = ">= 3"\ngap = "< 4 mm"\n'
    'reject = "> 9 mm"',
    "table": 'kind = "size"\nof = "any"\nbands = [{ up_to = "<= 9 mm", reject = "> 2 mm" }, '
    '{ reject = "> 3 mm" }]',
    "all": 'kind = "all-of"\nrules = ["long", "near"]',
    "any": 'kind = "any-of"\nrules = ["all", "line"]',
    "both": 'kind = "all-of"\nrules = ["row", "near"]',
    "but": 'kind = "unless"\nrules = ["long", "line"]\nunless = ["near"]',
}
TAKES = {
    "near": [],
    "row-length": [],
    "table": [],
    "all": ["long", "near"],
    "any": ["long", "near", "line", "all"],
    "both": ["row", "near"],
    "but": ["long", "line", "near"],
}


@pytest.fixture(params=TAKES)
def rule(request, tmp_path):
    names = [*TAKES[request.param], request.param]
    path = tmp_path / "house.toml"
    rules = "".join(RULE.format(name, PARTS[name]) for name in names)
    path.write_text(PROFILE.format(rules=rules))
    return request.param, load_profile(path)


def drawn(build, seed, u=None):
    rng = np.random.default_rng(seed)
    made = []
    for k in range(int(rng.integers(1, 8))):
        length = rng.uniform(0.8, 5)
        width = min(length, max(length * rng.uniform(0.1, 1), 0.1))
        own = float(rng.choice([0.0, 0.1, 0.6])) if u is None else u
        made.append(
            build.bar(
                f"I{k}",
                *rng.uniform(2, 22, 2),
                length,
                width,
                rng.uniform(0, 180),
                length_u=own,
                width_u=own / 2,
            )
        )
    edge = np.array([[0.0, -90.0], [0.0, 0.0], [0.0, 90.0]])
    return build.scene(*made, thickness_mm=9.0, edges={"edge": (edge,)})


def rank(profile, scene, decision="guarded"):
    return ORDER.index(evaluate(profile, scene, decision).verdict)


@pytest.mark.parametrize("seed", range(25))
def test_guarded_is_never_laxer_and_more_u_never_milder(rule, seed, build):
    _, profile = rule
    scene = drawn(build, seed)
    guarded, simple = rank(profile, scene), rank(profile, scene, "simple")
    assert guarded >= simple
    assert (guarded == 2) == (simple == 2)
    ranks = [rank(profile, drawn(build, seed, u=u)) for u in (0.0, 0.2, 0.6)]
    assert ranks == sorted(ranks)


@pytest.mark.parametrize("seed", range(25))
def test_turning_shifting_and_mirroring_change_nothing(rule, seed, build):
    _, profile = rule
    scene = drawn(build, seed)
    rng = np.random.default_rng(seed + 1000)
    deg, x, y = rng.uniform(0, 360), *rng.uniform(-300, 300, 2)
    mirror = bool(rng.integers(2))
    flip = np.array([-1.0 if mirror else 1.0, 1.0])
    edge = build.turned(scene.edges["edge"][0] * flip, deg, x, y)
    moved = replace(build.moved(scene, deg, x, y, mirror), edges={"edge": (edge,)})
    assert rank(profile, moved) == rank(profile, scene)


@pytest.mark.parametrize("seed", range(25))
def test_one_more_never_makes_it_milder_but_by_an_exemption(rule, seed, build):
    name, profile = rule
    scene = drawn(build, seed)
    fewer = replace(scene, indications=scene.indications[:-1])
    if fewer.indications:
        assert rank(profile, scene) >= rank(profile, fewer), name


def test_an_exemption_may_make_a_farther_one_worse(tmp_path, build):
    # the one place where the text of a rule says that more (nearness) is milder
    rules = "".join(RULE.format(name, PARTS[name]) for name in ("long", "line", "near", "but"))
    path = tmp_path / "house.toml"
    path.write_text(PROFILE.format(rules=rules))
    edge = {"edge": (np.array([[0.0, -90.0], [0.0, 90.0]]),)}
    verdicts = [
        evaluate(
            load_profile(path), build.scene(build.pore("A", x, 0, 4.0), edges=edge)
        ).verdict
        for x in (4.0, 40.0)
    ]
    assert verdicts == ["acceptable", "rejectable"]
