"""Edges, tables of limits, named kinds, rules that take others: by a profile of one's own."""

import numpy as np
import pytest

from ptmark.criteria import evaluate, load_profile, rule_kinds
from ptmark.errors import CriteriaError

HEAD = """\
name = "house"
title = "House rules"
edition = "1"
unit = "{unit}"
source = "drawing"
governs = "The contract governs."
[shape]
linear = "> 3"
clause = "1"
sure = "verified"
"""
MORE = 'clause = "2"\nsure = "verified"\n'
EDGE = (np.array([[0.0, -90.0], [0.0, 90.0]]),)


@pytest.fixture
def profile(tmp_path):
    def make(*rules, unit="mm"):
        path = tmp_path / "house.toml"
        tables = [f"[[rule]]\n{rule}\n{MORE}" for rule in rules]
        path.write_text(HEAD.format(unit=unit) + "".join(tables))
        return load_profile(path)

    return make


def size(name, limit, of="any", more=""):
    return f'id = "{name}"\nkind = "size"\nof = "{of}"\nreject = "{limit}"\n{more}'


def near(limit, of="any", more=""):
    return f'id = "near"\nkind = "edge"\nof = "{of}"\nreject = "{limit}"\n{more}'


def join(kind, rules, more="", name="it"):
    return f'id = "{name}"\nkind = "{kind}"\nrules = {list(rules)}\n{more}'.replace("'", '"')


# distance from an edge: common practice of drawings, no source


@pytest.mark.parametrize(
    ("limit", "distance", "verdict"),
    [
        ("< 3 mm", 2.999, "rejectable"),
        ("< 3 mm", 3.0, "acceptable"),
        ("<= 3 mm", 3.0, "rejectable"),
        ("<= 3 mm", 3.001, "acceptable"),
        ("< 3 mm", -1.0, "rejectable"),  # across the edge
    ],
)
@pytest.mark.parametrize("deg", [0, 57])
def test_distance_from_an_edge(limit, distance, verdict, deg, profile, build):
    rule = profile(near(limit))
    scene = build.scene(build.pore("A", 1.0 + distance, 7, 2.0))
    edges = {"edge": (build.turned(EDGE[0], deg),)}
    moved = build.moved(scene, deg)
    judged = evaluate(rule, build.scene(*moved.indications, edges=edges))
    assert judged.verdict == verdict
    assert judged.findings[0].value == pytest.approx(max(distance, 0.0), abs=1e-9)


def test_distance_in_inches_and_from_the_nearest_of_several_lines(profile, build):
    rule = profile(near("< 1/8 in"), unit="in")
    lines = (*EDGE, np.array([[20.0, -5.0], [20.0, 5.0]]))
    for gap, verdict in ((3.175, "acceptable"), (3.17, "rejectable")):
        scene = build.scene(build.pore("A", 20 - gap - 1, 0, 2.0), edges={"edge": lines})
        assert evaluate(rule, scene).verdict == verdict


def test_without_the_line_it_is_left_open_and_says_what_to_give(profile, build):
    rule = profile(near("< 3 mm", more='line = "keyway"\n'))
    scene = build.scene(build.pore("A", 9, 0, 2.0), edges={"edge": EDGE})
    judged = evaluate(rule, scene, "simple")
    assert judged.verdict == "undecided"
    assert "edges_mm" in judged.findings[0].says
    assert "keyway" in judged.findings[0].says
    assert evaluate(rule, build.scene()).verdict == "acceptable"


def test_the_edge_is_guarded_by_half_the_length_u(profile, build):
    # an outline that grows by U in length comes nearer by U / 2
    rule = profile(near("< 3 mm"))
    for u, verdict in ((0.0, "acceptable"), (0.19, "acceptable"), (0.21, "undecided")):
        scene = build.scene(build.pore("A", 4.1, 0, 2.0, length_u=u), edges={"edge": EDGE})
        judged = evaluate(rule, scene)
        assert judged.verdict == verdict
        assert evaluate(rule, scene, "simple").verdict == "acceptable"
    assert "0.10 mm or better" in judged.findings[0].says


# tables of limits


BANDS = (
    'id = "t"\nkind = "size"\nof = "any"\nby = "{by}"\nbands = [\n'
    '  {{ up_to = "<= 10 mm", reject = "> 2 mm" }},\n'
    '  {{ up_to = "< 25 mm", reject = ">= 3 mm" }},\n'
    '  {{ {last}reject = "> 4 mm" }},\n]\n'
)


@pytest.mark.parametrize("by", ["thickness", "diameter"])
@pytest.mark.parametrize(
    ("part", "d", "verdict"),
    [
        (10.0, 2.0, "acceptable"),
        (10.0, 2.01, "rejectable"),
        (10.01, 2.99, "acceptable"),
        (24.99, 3.0, "rejectable"),
        (25.0, 4.0, "acceptable"),
        (25.0, 4.01, "rejectable"),
        (None, 1.0, "undecided"),
    ],
)
def test_limits_by_bands(by, part, d, verdict, profile, build):
    rule = profile(BANDS.format(by=by, last=""))
    scene = build.scene(build.pore("A", 0, 0, d), **{f"{by}_mm": part})
    assert evaluate(rule, scene).verdict == verdict


def test_above_a_closed_table_it_is_left_open(profile, build):
    rule = profile(BANDS.format(by="thickness", last='up_to = "<= 40 mm", '))
    thick = build.scene(build.pore("A", 0, 0, 1.0), thickness_mm=40.1)
    judged = evaluate(rule, thick)
    assert judged.verdict == "undecided"
    assert "no band for a thickness of 40.10 mm" in judged.findings[0].says


# one named kind


def test_a_limit_for_one_named_kind(profile, build):
    rule = profile(size("crater", "> 4 mm", more='named = ["104"]\n'))
    for kind, verdict in (
        ("104", "rejectable"),
        ("Crater crack", "rejectable"),
        ("101", "acceptable"),
        ("", "acceptable"),
        ("cratter", "undecided"),
    ):
        scene = build.scene(build.bar("A", 0, 0, 4.1, 0.5, kind=kind))
        assert evaluate(rule, scene).verdict == verdict


# combinations


@pytest.mark.parametrize(
    ("x", "d", "both", "one"),
    [
        (3.0, 2.1, "rejectable", "rejectable"),
        (3.0, 1.9, "acceptable", "rejectable"),
        (30.0, 2.1, "acceptable", "rejectable"),
        (30.0, 1.9, "acceptable", "acceptable"),
    ],
)
def test_all_of_and_any_of_ask_it_of_one_indication(x, d, both, one, profile, build):
    parts = size("long", "> 2 mm"), near("< 5 mm")
    scene = build.scene(build.pore("A", x, 0, d), edges={"edge": EDGE})
    assert evaluate(profile(*parts, join("all-of", ["long", "near"])), scene).verdict == both
    assert evaluate(profile(*parts, join("any-of", ["long", "near"])), scene).verdict == one


def test_two_indications_do_not_make_one_that_meets_all(profile, build):
    parts = size("long", "> 2 mm"), near("< 5 mm")
    pair = build.scene(
        build.pore("A", 3, 0, 1.0), build.pore("B", 50, 0, 3.0), edges={"edge": EDGE}
    )
    one = profile(*parts, join("all-of", ["long", "near"]))
    assert evaluate(one, pair).verdict == "acceptable"
    scene = profile(*parts, join("all-of", ["long", "near"], 'about = "scene"\n'))
    assert evaluate(scene, pair).verdict == "rejectable"


def test_rules_taken_no_longer_judge_by_themselves(profile, build):
    rule = profile(
        size("long", "> 2 mm"), size("far", "> 9 mm"), join("all-of", ["long", "far"])
    )
    judged = evaluate(rule, build.scene(build.pore("A", 0, 0, 5.0)))
    assert judged.verdict == "acceptable"
    assert {one.rule for one in judged.findings} == {"it"}


@pytest.mark.parametrize(
    ("thickness", "verdict"),
    [(20.0, "rejectable"), (20.1, "acceptable"), (None, "undecided")],
)
def test_unless_the_part_is_thick(thickness, verdict, profile, build):
    part = 'id = "thick"\nkind = "part"\nby = "thickness"\nsize = "> 20 mm"\n'
    rule = profile(
        size("long", "> 2 mm"), part, join("unless", ["long"], 'unless = ["thick"]\n')
    )
    scene = build.scene(build.pore("A", 0, 0, 3.0), thickness_mm=thickness)
    assert evaluate(rule, scene).verdict == verdict
    short = build.scene(build.pore("A", 0, 0, 1.0), thickness_mm=thickness)
    assert evaluate(rule, short).verdict == "acceptable"


@pytest.mark.parametrize(
    ("d", "u", "simple", "guarded"),
    [
        (4.9, 0.05, "acceptable", "acceptable"),
        (4.9, 0.2, "acceptable", "undecided"),  # too small for certain no longer
        (5.1, 0.2, "rejectable", "rejectable"),
    ],
)
def test_an_exemption_counts_only_where_it_is_certain(d, u, simple, guarded, profile, build):
    # rejected when rounded, unless nearer than 5 mm: a larger distance is worse here
    lines = {"edge": EDGE}
    rule = profile(
        'id = "round"\nkind = "shape"\nof = "rounded"\n',
        near("< 5 mm"),
        join("unless", ["round"], 'unless = ["near"]\n'),
    )
    scene = build.scene(build.pore("A", d + 1.0, 0, 2.0, length_u=2 * u), edges=lines)
    assert evaluate(rule, scene, "simple").verdict == simple
    assert evaluate(rule, scene).verdict == guarded


def test_a_row_and_a_size_about_the_scene(profile, build):
    row = 'id = "row"\nkind = "row"\nof = "rounded"\nnumber = ">= 3"\ngap = "<= 2 mm"\n'
    rule = profile(row, size("long", "> 2.5 mm"), join("all-of", ["row", "long"]))
    short = build.row_of(3, 2.0, 1.0)
    assert evaluate(rule, short).verdict == "acceptable"
    both = build.scene(*short.indications, build.pore("X", 90, 0, 2.6))
    judged = evaluate(rule, both)
    assert judged.verdict == "rejectable"
    assert set(judged.findings[0].indications) == {"P0", "P1", "P2", "X"}


def test_joins_inside_joins(profile, build):
    rule = profile(
        size("long", "> 2 mm"),
        near("< 5 mm"),
        size("huge", "> 9 mm"),
        join("all-of", ["long", "near"], name="both"),
        join("any-of", ["both", "huge"]),
    )
    for x, d, verdict in (
        (3, 2.5, "rejectable"),
        (60, 2.5, "acceptable"),
        (60, 9.5, "rejectable"),
    ):
        scene = build.scene(build.pore("A", x, 0, d), edges={"edge": EDGE})
        assert evaluate(rule, scene).verdict == verdict


@pytest.mark.parametrize(
    ("rules", "says"),
    [
        ([join("any-of", ["b"], name="a"), join("any-of", ["a"], name="b")], "in a circle"),
        ([join("any-of", ["it"])], "in a circle"),
        ([size("long", "> 2 mm"), join("any-of", ["wrong"])], "no rule with the id 'wrong'"),
        ([size("long", "> 2 mm"), join("any-of", [])], "at least one other rule"),
        (['id = "p"\nkind = "part"\nby = "thickness"\nsize = "> 2 mm"\n'], "by itself"),
        (
            [
                'id = "row"\nkind = "row"\nof = "any"\nnumber = ">= 3"\ngap = "<= 2 mm"\n',
                size("long", "> 2 mm"),
                join("unless", ["long"], 'unless = ["row"]\n'),
            ],
            "cannot exempt",
        ),
        (
            [
                'id = "row"\nkind = "row"\nof = "any"\nnumber = ">= 3"\ngap = "<= 2 mm"\n',
                join("any-of", ["row"], 'about = "indication"\n'),
            ],
            "several indications at once",
        ),
        (['id = "t"\nkind = "size"\nof = "any"\nbands = []\n'], "1 to 50 tables"),
        ([size("t", "> 2 mm", more='by = "thickness"\n')], "no meaning without bands"),
        (
            [BANDS.format(by="thickness", last='up_to = "<= 20 mm", ')],
            "bands, row 3, up_to: must be above",
        ),
        ([BANDS.format(by="thickness", last='up_to = "<= 30 in", ')], "write it in mm"),
        ([near("> 3 mm")], "operator '>' makes no sense"),
    ],
)
def test_what_cannot_be_is_refused_with_its_line_and_a_mend(rules, says, profile):
    with pytest.raises(CriteriaError, match=says) as caught:
        profile(*rules)
    assert ", line " in caught.value.where
    assert caught.value.mend


def test_the_line_of_a_band_is_named(profile):
    with pytest.raises(CriteriaError, match="row 2, reject") as caught:
        profile(BANDS.format(by="thickness", last="").replace('">= 3 mm"', '">= 3 in"'))
    assert caught.value.where.endswith("line 18")


def test_a_form_can_list_every_kind_and_key():
    kinds = {kind.name: kind for kind in rule_kinds()}
    assert kinds["size"].parameter("reject").unit_in("in") == "in"
    assert kinds["frame"].parameter("reject").unit_in("mm", "number") == "1"
    assert kinds["window"].parameter("area").unit_in("mm") == "mm2"
    for kind in kinds.values():
        assert kind.says
        assert kind.title
        assert all(one.says for one in kind.parameters)
        assert len({one.name for one in kind.parameters}) == len(kind.parameters)
