"""API 1104, 9.5 and 9.3.9, at, below and above each limit, in mm and in inches.

Figures: 9.4 seen for magnetic particles, the same for penetrant from secondary sources; the
share of the wall and that 9.5 takes over the relevance of 9.4.1.2 from memory.
"""

import pytest

from ptmark.criteria import evaluate, load_profile

IN = 25.4
E = 0.01
# relevance, crater crack, fusion in a stretch, the stretch, single pore; mm
FIGURES = {
    "api-1104": (1.6, 4.0, 25.0, 300.0, 3.0),
    "api-1104-us": (IN / 16, 5 * IN / 32, IN, 12 * IN, IN / 8),
}
SIDES = [(-E, "acceptable"), (0, "acceptable"), (E, "rejectable")]


@pytest.fixture(params=FIGURES)
def code(request):
    return load_profile(request.param), *FIGURES[request.param]


def judged(profile, build, *made, thickness=40.0, weld=1000.0):
    scene = build.scene(*made, thickness_mm=thickness, weld_length_mm=weld)
    return evaluate(profile, scene)


@pytest.mark.truth
@pytest.mark.parametrize(("over", "verdict"), SIDES)
@pytest.mark.parametrize("kind", ["104", "star crack"])
def test_crater_and_star_cracks_by_their_length(over, verdict, kind, code, build):
    profile, _, crater, *_ = code
    made = build.bar("A", 3, 4, crater + over, 0.4, deg=20, kind=kind)
    assert judged(profile, build, made).verdict == verdict


@pytest.mark.truth
@pytest.mark.parametrize("kind", ["crack", "101", "102", "105", "106", "1001", "toe crack"])
def test_any_other_crack_is_rejected_at_any_size(kind, code, build):
    profile, *_ = code
    result = judged(profile, build, build.bar("A", 0, 0, 0.5, 0.1, kind=kind))
    assert result.verdict == "rejectable"
    assert [one.rule for one in result.findings if one.verdict == "rejectable"] == ["crack"]


@pytest.mark.truth
@pytest.mark.parametrize(("over", "verdict"), SIDES)
def test_incomplete_fusion_summed_in_a_stretch(over, verdict, code, build):
    profile, _, _, most, stretch, _ = code
    each = (most + over) / 2
    far = stretch + each - 0.5  # their inner ends lie within the stretch
    pair = [build.bar(f"F{k}", far * k, 0, each, 0.5, kind="401") for k in range(2)]
    result = judged(profile, build, *pair, weld=5000.0)
    assert result.verdict == verdict
    apart = [build.bar(f"F{k}", (far + 1) * k, 0, each, 0.5, kind="401") for k in range(2)]
    assert judged(profile, build, *apart, weld=5000.0).verdict == "acceptable"


@pytest.mark.truth
@pytest.mark.parametrize(("over", "verdict"), SIDES)
def test_incomplete_fusion_as_a_share_of_the_weld(over, verdict, code, build):
    profile, *_ = code
    one = build.bar("F", 0, 0, 0.08 * 200 + over, 0.5, kind="lack of fusion")
    assert judged(profile, build, one, weld=200.0).verdict == verdict
    unknown = judged(profile, build, one, weld=None)
    assert unknown.verdict == "undecided"
    assert any("weld_length_mm" in finding.says for finding in unknown.findings)


@pytest.mark.truth
@pytest.mark.parametrize(("over", "verdict"), SIDES)
def test_a_single_pore(over, verdict, code, build):
    profile, *_, pore = code
    assert judged(profile, build, build.pore("P", 0, 0, pore + over)).verdict == verdict
    # a quarter of the wall where that is less
    thin = judged(profile, build, build.pore("P", 0, 0, 2.0 + over), thickness=8.0)
    assert thin.verdict == verdict
    # the wall unknown, what is larger than any wall allows is rejected, and no less is passed
    unknown = judged(profile, build, build.pore("P", 0, 0, pore + over), thickness=None)
    assert unknown.verdict == ("rejectable" if over > 0 else "undecided")
    small = judged(profile, build, build.pore("P", 0, 0, 2.0), thickness=None)
    assert small.verdict == "undecided"


@pytest.mark.truth
def test_what_size_cannot_say_is_left_to_the_interpreter(code, build):
    profile, relevant, _, _, stretch, _ = code
    line = judged(profile, build, build.bar("A", 0, 0, relevant + E, 0.2))
    assert line.verdict == "undecided"
    assert "interpreter" in " ".join(one.says for one in line.findings)
    assert judged(profile, build, build.bar("A", 0, 0, relevant, 0.2)).verdict == "acceptable"
    pair = [build.pore(f"P{k}", k * (stretch + 1), 0, 2.0) for k in range(2)]
    assert judged(profile, build, *pair).verdict == "undecided"
    pair[1] = build.pore("P1", stretch + 2 + E, 0, 2.0)
    assert judged(profile, build, *pair).verdict == "acceptable"


def test_no_weld_length_is_asked_for_where_no_fusion_is_named(code, build):
    profile, *_ = code
    one = build.pore("P", 0, 0, 2.0)
    assert judged(profile, build, one, weld=None).verdict == "acceptable"
