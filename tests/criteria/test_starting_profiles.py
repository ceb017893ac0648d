"""Templates that wait for the contract's figures, new profiles, what differs between two."""

import re

import pytest

from ptmark.criteria import compare, evaluate, list_templates, load_profile, new_profile
from ptmark.errors import CriteriaError
from ptmark.places import resource

FIGURE = re.compile(r'"(\s*(?:[<>]=?\s*)?)\?(\s*(?:mm2?|in2?|%)?\s*)"')


def filled(text):
    return FIGURE.sub(r'"\g<1>5\2"', text)


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


@pytest.mark.truth
def test_castings_call_three_widths_linear_and_leave_three_aligned_open(tmp_path, build):
    # ISO 4987:2020, 6.1.2 (verified): non-linear below three widths; aligned is three or more
    # with gaps under 2 mm
    text = filled(new_profile("own", "iso-4987-casting")).replace(">= 5 mm", ">= 1 mm")
    profile = load_profile(of(tmp_path, text))
    for gap, verdict in ((1.99, "undecided"), (2.0, "acceptable")):
        assert evaluate(profile, build.row_of(3, 2.0, gap)).verdict == verdict
    assert evaluate(profile, build.row_of(2, 2.0, 1.0)).verdict == "acceptable"
    shape = evaluate(profile, build.scene(build.bar("A", 0, 0, 4.5, 1.5))).shape["A"]
    assert shape.startswith("linear")


@pytest.mark.truth
@pytest.mark.parametrize(
    ("kind", "verdict"), [("101", "rejectable"), ("104", "undecided"), ("401", "undecided")]
)
def test_api_1104_leaves_to_the_interpreter_what_size_cannot_say(
    kind, verdict, tmp_path, build
):
    # API 1104, 9.5.2 (secondary): any other crack is rejected; crater cracks and incomplete
    # fusion have limits of length and sum
    profile = load_profile(of(tmp_path, filled(new_profile("own", "api-1104"))))
    named = build.scene(build.pore("A", 0, 0, 2.0, kind=kind), thickness_mm=100.0)
    assert evaluate(profile, named).verdict == verdict


def test_compare_names_each_rule_in_its_own_units():
    metric, inch = load_profile("asme-b31.1"), load_profile("asme-b31.1-us")
    found = {one.rule: one for one in compare(metric, inch)}
    assert found["relevance"].first.endswith("> 2 mm")
    assert found["relevance"].second.endswith("> 0.0625 in")
    assert "linear" not in found
    assert compare(metric, metric) == []
    only = [one for one in compare(metric, load_profile("asme-b31.3")) if not one.second]
    assert {"window", "crack"} == {one.rule for one in only}
