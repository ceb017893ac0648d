"""Templates that wait for the contract's figures, new profiles, what differs between two."""

import re
from dataclasses import replace

import numpy as np
import pytest

from ptmark.criteria import (
    compare,
    evaluate,
    list_templates,
    load_profile,
    new_profile,
    rule_kinds,
)
from ptmark.errors import CriteriaError
from ptmark.places import resource

FIGURE = re.compile(r'"(\s*(?:[<>]=?\s*)?)\?(\s*(?:mm2?|in2?|%)?\s*)"')


def filled(text):
    return FIGURE.sub(r'"\g<1>5\2"', text)  # 5 of whatever is asked for


def of(tmp_path, text):
    path = tmp_path / "own.toml"
    path.write_text(text, encoding="utf-8")
    return path


@pytest.mark.parametrize("start", ["", "iso-23277-2x", "asme-b31.1-us", *list_templates()])
def test_a_new_profile_is_valid_once_filled(start, tmp_path):
    text = new_profile("own", start)
    profile = load_profile(of(tmp_path, filled(text)))
    assert profile.name == "own"


@pytest.mark.parametrize("start", ["", *list_templates()])
def test_an_unfilled_one_is_refused_with_every_line(start, tmp_path):
    text = new_profile("own", start)
    open_lines = [
        k
        for k, line in enumerate(text.splitlines(), 1)
        if FIGURE.search(line) and not line.startswith("#")
    ]
    assert open_lines
    with pytest.raises(CriteriaError, match="to be filled in") as caught:
        load_profile(of(tmp_path, text))
    assert caught.value.where.endswith(f"line {open_lines[0]}")
    for line in open_lines:
        assert f"line {line}" in caught.value.what


def test_one_figure_left_is_enough_to_refuse(tmp_path):
    text = filled(new_profile("own", "aerospace-class"))
    left = text.replace('sides = ["5 in", "5 in"]', 'sides = ["5 in", "? in"]')
    assert left != text
    with pytest.raises(CriteriaError, match="sides"):
        load_profile(of(tmp_path, left))


@pytest.mark.parametrize("name", list_templates())
def test_a_template_is_no_profile(name):
    with pytest.raises(CriteriaError, match="template"):
        load_profile(name)
    text = resource("criteria", "templates", f"{name}.toml").read_text(encoding="utf-8")
    assert "?" in text
    assert "contract" in text


def test_a_question_in_words_is_no_open_figure(tmp_path):
    text = filled(new_profile("own")).replace('title = "5"', 'title = "Which class? Ask."')
    assert load_profile(of(tmp_path, text)).title == "Which class? Ask."


@pytest.mark.parametrize(
    ("name", "start"), [("Own", ""), ("../x", ""), ("", ""), ("x", "none")]
)
def test_names_that_cannot_be(name, start):
    with pytest.raises(CriteriaError):
        new_profile(name, start)


CASTING = {  # invented figures of one level, by wall: to 16 mm, to 50 mm, above
    "isolated": ('"> 6 mm"',),
    "linear": ('"> 2 mm"', '"> 4 mm"', '"> 6 mm"'),
    "linear-sum": ('"> 5 mm"', '"> 9 mm"', '"> 15 mm"'),
    "aligned": ('"> 8 mm"', '"> 10 mm"', '"> 12 mm"'),
}


@pytest.fixture(params=["iso-4987-casting", "en-1371-1-casting"])
def casting(request, tmp_path):
    parts = new_profile("own", request.param).replace('">= ? mm"', '">= 1 mm"').split("id = ")
    for k in range(1, len(parts)):
        for figure in CASTING.get(parts[k].split('"')[1], ()):
            parts[k] = parts[k].replace('"> ? mm"', figure, 1)
    return load_profile(of(tmp_path, "id = ".join(parts)))


@pytest.mark.truth
def test_castings_call_three_widths_linear(casting, build):
    # ISO 4987:2020, 6.1.2 (verified): non-linear below three widths
    told = evaluate(casting, build.scene(build.bar("A", 0, 0, 4.5, 1.5), thickness_mm=60.0))
    assert told.shape["A"].startswith("linear")


@pytest.mark.truth
@pytest.mark.parametrize(
    ("wall", "limit"), [(16.0, 8.0), (16.01, 10.0), (50.0, 10.0), (50.01, 12.0)]
)
@pytest.mark.parametrize(("over", "verdict"), [(0, "acceptable"), (0.02, "rejectable")])
def test_three_aligned_count_as_one_of_their_length(wall, limit, over, verdict, casting, build):
    # ISO 4987:2020, 6.1.2 (verified): three or more non-linear, gaps under 2 mm, count as one
    # of their overall length; wall bands from memory, limits invented
    d = (limit + over - 2 * 1.99) / 3
    row = replace(build.row_of(3, d, 1.99), thickness_mm=wall)
    found = [one for one in evaluate(casting, row).findings if one.rule == "aligned"]
    assert [one.verdict for one in found] == [verdict]
    assert found[0].value == pytest.approx(limit + over)
    apart = replace(build.row_of(3, d, 2.0), thickness_mm=wall)
    assert evaluate(casting, apart).verdict == "acceptable"
    assert (
        evaluate(casting, replace(build.row_of(2, 3.9, 1.0), thickness_mm=wall)).verdict
        == "acceptable"
    )


@pytest.mark.truth
@pytest.mark.parametrize(("wall", "one", "sum_"), [(16.0, 2, 5), (50.0, 4, 9), (80.0, 6, 15)])
def test_castings_linear_by_the_wall(wall, one, sum_, casting, build):
    for over, verdict in ((0, "acceptable"), (0.01, "rejectable")):
        long = build.scene(build.bar("A", 0, 0, one + over, 0.3), thickness_mm=wall)
        assert evaluate(casting, long).verdict == verdict
        each = (sum_ + over) / 3
        three = [build.bar(f"L{k}", 0, 20.0 * k, each, 0.3) for k in range(3)]
        both = evaluate(casting, build.scene(*three, thickness_mm=wall))
        assert [f.verdict for f in both.findings if f.rule == "linear-sum"] == [verdict]


def test_castings_without_a_wall_are_left_open_where_it_matters(casting, build):
    long = evaluate(casting, build.scene(build.bar("A", 0, 0, 1.5, 0.3)))
    assert long.verdict == "undecided"
    assert any("give thickness_mm" in one.says for one in long.findings)
    round_one = evaluate(casting, build.scene(build.pore("A", 0, 0, 7.0)))
    assert round_one.verdict == "rejectable"


@pytest.mark.parametrize(
    ("made", "verdict"),
    [
        # figures invented: nothing linear, rounded over 0.1 in, over 3 on 2 by 2 in, nearer
        # than 0.25 in to an edge; counted from 0.02 in
        (("pore", 20, 0, 2.54), "acceptable"),
        (("pore", 20, 0, 2.55), "rejectable"),
        (("pore", 6.35 + 1.0, 0, 2.0), "acceptable"),
        (("pore", 6.34 + 1.0, 0, 2.0), "rejectable"),
        (("bar", 20, 0, 0.508, 0.1), "acceptable"),
        (("bar", 20, 0, 0.52, 0.1), "rejectable"),
    ],
)
def test_a_class_table_filled_in(made, verdict, tmp_path, build):
    text = new_profile("own", "aerospace-class").replace('linear = "> ?"', 'linear = "> 3"')
    for old, new in (
        ('relevant = "> ? in"', 'relevant = "> 0.02 in"'),
        ('reject = "> ? in"', 'reject = "> 0.1 in"'),
        ('reject = "> ?"', 'reject = "> 3"'),
        ('"? in", "? in"', '"2 in", "2 in"'),
        ('number = ">= ?"', 'number = ">= 3"'),
        ('gap = "<= ? in"', 'gap = "<= 0.05 in"'),
        ('reject = "< ? in"', 'reject = "< 0.25 in"'),
    ):
        assert old in text
        text = text.replace(old, new)
    profile = load_profile(of(tmp_path, filled(text)))
    kind, x, y, *sizes = made
    one = getattr(build, kind)("A", x, y, *sizes)
    edge = np.array([[0.0, -50.0], [0.0, 50.0]])
    assert evaluate(profile, build.scene(one, edges={"edge": (edge,)})).verdict == verdict
    without = evaluate(profile, build.scene(one)).verdict
    assert without == ("undecided" if verdict == "acceptable" and kind == "pore" else without)


def test_compare_names_each_rule_in_its_own_units():
    metric, inch = load_profile("asme-b31.1"), load_profile("asme-b31.1-us")
    found = {one.rule: one for one in compare(metric, inch)}
    assert found["relevance"].first.endswith("> 2 mm")
    assert found["relevance"].second.endswith("> 0.0625 in")
    assert "linear" not in found
    assert compare(metric, metric) == []
    only = [one for one in compare(metric, load_profile("asme-b31.3")) if not one.second]
    assert {"window", "crack"} == {one.rule for one in only}


def test_the_blank_one_names_every_kind_and_its_keys():
    shared = {"named", "verdict", "bands", "by"}  # told once for all
    text = new_profile("own", "")
    for kind in rule_kinds():
        (line,) = [one for one in text.splitlines() if one.startswith(f"#   {kind.name} ")]
        for key in kind.parameters:
            assert key.name in shared or key.name in line, f"{kind.name}: {key.name}"
