"""Kinds of rule that no shipped profile uses yet, by a profile of one's own."""

import pytest

from ptmark.criteria import evaluate, list_profiles, load_profile
from ptmark.inspection import Inspection

HEAD = """\
name = "house"
title = "House rules"
edition = "1"
unit = "mm"
source = "drawing"
governs = "The contract governs."
[shape]
linear = "{linear}"
clause = "1"
sure = "verified"
[[rule]]
id = "it"
clause = "2"
sure = "verified"
"""


@pytest.fixture
def profile(tmp_path):
    def make(rule, linear="> 3"):
        path = tmp_path / "house.toml"
        path.write_text(HEAD.format(linear=linear) + rule)
        return load_profile(path)

    return make


@pytest.mark.truth
@pytest.mark.parametrize(("over", "verdict"), [(0, "acceptable"), (0.02, "rejectable")])
def test_share_of_the_weld(profile, build, over, verdict):
    # 8 % of the weld's length, as API 1104 has it for incomplete fusion (verified)
    share = profile('kind = "weld-share"\nof = "linear"\nreject = "> 8 %"\n')
    lines = [build.bar(f"L{k}", 0, 10.0 * k, 8.0 + over / 2, 0.3) for k in range(2)]
    judged = evaluate(share, build.scene(*lines, weld_length_mm=200.0))
    assert judged.verdict == verdict
    assert judged.findings[0].unit == "%"
    assert judged.findings[0].value == pytest.approx(8 + over / 2)


def test_share_of_an_unknown_weld_is_left_open(profile, build):
    share = profile('kind = "weld-share"\nof = "linear"\nreject = "> 8 %"\n')
    judged = evaluate(share, build.scene(build.bar("A", 0, 0, 1, 0.1)))
    assert judged.verdict == "undecided"
    assert "weld_length_mm" in judged.findings[0].says


def test_what_passes_at_any_length_is_told(profile, build):
    # a crack that no rule looks at: the codes here all judge both shapes (facts, 1.3, 2.2)
    seen = build.scene(build.bar("A", 0, 0, 40, 0.5), build.pore("B", 0, 9, 2))
    linear, rounded = (f"single {shape} indication" for shape in ("linear", "rounded"))

    def told(rule):
        said = evaluate(profile(rule), seen).cautions
        return [word for word in (linear, rounded) if any(word in one for one in said)]

    assert told('kind = "size"\nof = "rounded"\nreject = "> 3 mm"\n') == [linear]
    assert told('kind = "shape"\nof = "linear"\n') == [rounded]
    assert told('kind = "kind"\nkinds = ["100"]\n') == [linear, rounded]
    assert told('kind = "size"\nof = "any"\nnamed = ["401"]\nreject = "> 3 mm"\n') == [
        linear,
        rounded,
    ]
    assert told('kind = "row"\nof = "any"\nnumber = ">= 4"\ngap = "<= 2 mm"\n') == [
        linear,
        rounded,
    ]
    assert told('kind = "size"\nof = "any"\nreject = "> 3 mm"\n') == []
    frame = 'kind = "frame"\nof = "any"\nwhat = "length"\nreject = "> 9 mm"\n'
    assert told(frame + 'sides = ["148 mm", "105 mm"]\n') == []
    for name in list_profiles():
        judged = evaluate(load_profile(name), seen)
        assert not any("single" in one and "length of" in one for one in judged.cautions)


@pytest.mark.truth
@pytest.mark.parametrize(
    ("thickness", "d", "verdict"),
    [
        (8.0, 2.0, "acceptable"),  # a quarter of 8
        (8.0, 2.01, "rejectable"),
        (40.0, 3.0, "acceptable"),  # 3 is less than a quarter of 40
        (40.0, 3.01, "rejectable"),
        (None, 1.0, "undecided"),
    ],
)
def test_size_limited_by_a_share_of_the_thickness(profile, build, thickness, d, verdict):
    rule = 'kind = "size"\nof = "rounded"\nreject = "> 3 mm"\nthickness_share = "25 %"\n'
    one = build.scene(build.pore("A", 0, 0, d), thickness_mm=thickness)
    assert evaluate(profile(rule), one).verdict == verdict


@pytest.mark.truth
def test_a_profile_may_call_three_widths_linear(profile, build):
    # ISO 4987:2020, 6.1.2 (verified): non-linear below three widths, so 3 is linear
    rule = 'kind = "shape"\nof = "linear"\n'
    at, under = build.bar("A", 0, 0, 6, 2), build.bar("A", 0, 0, 5.99, 2)
    assert evaluate(profile(rule, ">= 3"), build.scene(at)).verdict == "rejectable"
    assert evaluate(profile(rule, ">= 3"), build.scene(under)).verdict == "acceptable"
    assert evaluate(profile(rule, "> 3"), build.scene(at)).verdict == "acceptable"


@pytest.mark.parametrize(
    ("deg", "verdict"), [(None, "rejectable"), (0, "rejectable"), (90, "acceptable")]
)
def test_stretch_runs_along_the_weld(profile, build, deg, verdict):
    # three pores 9 mm apart along x; for the weld along y they lie 40 mm apart along it
    rule = (
        'kind = "stretch"\nof = "rounded"\nwhat = "number"\nreject = "> 2"\nstretch = "20 mm"\n'
    )
    pores = [build.pore(f"P{k}", 9.0 * k, 40.0 * k if deg == 90 else 0, 1) for k in range(3)]
    judged = evaluate(profile(rule), build.scene(*pores, weld_direction_deg=deg))
    assert judged.verdict == verdict
    assert any("weld_direction_deg" in caution for caution in judged.cautions) == (deg is None)


def test_house_rules_changed_meanwhile_are_taken_up(tmp_path, monkeypatch):
    monkeypatch.setenv("PTMARK_HOME", str(tmp_path))
    own = tmp_path / "criteria" / "ours.toml"
    own.parent.mkdir()
    rule = 'kind = "weld-share"\nof = "linear"\nreject = "> {} %"\n'
    inspection = Inspection()
    limits = []
    for share in (8, 12.5):
        own.write_text(HEAD.format(linear="> 3") + rule.format(share))
        inspection.change("choose", profile="ours")
        limits.append(inspection.profile.rules[0].reject.value)
    assert limits == [8, 12.5]
