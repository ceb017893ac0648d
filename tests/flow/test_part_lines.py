"""A part's edge and diameter: from photo or options to the verdict, the record and back."""

import json

import pytest

from ptmark.__main__ import main
from ptmark.criteria import SEVERITY, load_profile
from ptmark.folder import Asked
from ptmark.folder.job import inspected
from ptmark.inspection import Inspection
from ptmark.inspection.draft import draft_of_record, draft_to_json, restore_draft
from ptmark.record import Record
from ptmark.record.together import evaluated_again
from ptmark.review import BlindReview

# conftest draws the 4 mm disc about (60, 30) mm at 12 px/mm, counted from the pixel's corner:
# its nearest point lies 3 mm from a line at x = 65 mm.
EDGE = ("edge", ((65 * 12 - 0.5, 100.0), (65 * 12 - 0.5, 600.0)))
HEAD = """\
name = "house"
title = "House rules, invented"
edition = "1"
unit = "mm"
source = "drawing, invented"
governs = "The contract governs."
[shape]
linear = "> 3"
clause = "1"
sure = "memory"
"""
NEAR = """
[[rule]]
id = "near"
kind = "edge"
clause = "2"
sure = "memory"
of = "rounded"
reject = "< {limit} mm"
line = "{line}"
"""
BY_DIAMETER = """
[[rule]]
id = "table"
kind = "size"
clause = "3"
sure = "memory"
of = "rounded"
by = "diameter"
bands = [{ up_to = "<= 50 mm", reject = "> 3 mm" }, { reject = "> 6 mm" }]
"""


@pytest.fixture
def rules(tmp_path):
    def write(limit="2", line="edge"):
        path = tmp_path / f"house-{limit}-{line}.toml"
        path.write_text(HEAD + NEAR.format(limit=limit, line=line) + BY_DIAMETER)
        return str(path)

    return write


def worst(evaluation, rule):
    told = [one for one in evaluation.findings if one.rule == rule]
    return max(told, key=lambda one: SEVERITY.index(one.verdict))


def judged(photo_file, rules, **more):
    return inspected(photo_file, Asked(profile=rules, **more))


def test_without_them_both_rules_say_what_they_need(photo_file, rules):
    found = judged(photo_file, rules()).evaluation()
    for rule, needed in (("near", "mark that line"), ("table", "diameter")):
        finding = worst(found, rule)
        assert finding.verdict == "undecided"
        assert needed in finding.says
    assert found.verdict == "undecided"


def test_edge_and_diameter_are_judged_with_their_uncertainty(photo_file, rules):
    made = judged(photo_file, rules(), edges_px=(EDGE,), diameter_mm=60.0)
    near = min(
        (one for one in made.evaluation().findings if one.rule == "near"),
        key=lambda one: one.value,
    )
    assert near.value == pytest.approx(3.0, abs=0.15)
    # the hand alone: 1.5 px at 12 px/mm, k = 2, is 0.25 mm; half the outline's U comes on top
    assert 0.25 < near.u < 0.6
    assert near.verdict == "acceptable"
    assert worst(made.evaluation(), "table").verdict == "acceptable"  # 4 mm, limit 6
    narrow = judged(photo_file, rules(), edges_px=(EDGE,), diameter_mm=40.0)
    assert worst(narrow.evaluation(), "table").verdict == "rejectable"  # limit 3
    close = judged(photo_file, rules("2.9"), edges_px=(EDGE,), diameter_mm=60.0)
    doubtful = worst(close.evaluation(), "near")
    assert doubtful.verdict == "undecided"
    assert "would decide it" in doubtful.says


def test_another_line_is_known_by_its_name(photo_file, rules):
    bolt = ("bolt hole", EDGE[1])
    assert worst(judged(photo_file, rules(line="bolt hole"), edges_px=(EDGE,)).evaluation(),
                 "near").verdict == "undecided"  # fmt: skip
    made = judged(photo_file, rules("4", "bolt hole"), edges_px=(EDGE, bolt))
    assert worst(made.evaluation(), "near").verdict == "rejectable"


def test_record_draft_and_rejudging_keep_them(photo_file, rules):
    made = judged(photo_file, rules("4"), edges_px=(EDGE,), diameter_mm=60.0)
    record = Record.from_json(json.loads(json.dumps(made.to_record().to_json())))
    assert record.diameter_mm == 60.0
    assert list(record.edges_mm) == ["edge"]
    ((_, _, again),) = evaluated_again(record, load_profile(rules("4")))
    first, second = worst(made.evaluation(), "near"), worst(again, "near")
    assert first.verdict == second.verdict == "rejectable"
    assert second.value == pytest.approx(first.value, abs=2e-3)  # outlines are written to 1 µm
    assert second.u == pytest.approx(first.u, abs=2e-3)
    for document in (draft_of_record(record, [photo_file]), draft_to_json(made)):
        back = Inspection()
        restore_draft(back, json.loads(json.dumps(document)))
        back.change("by its file", profile=rules("4"))  # a record keeps the rules' name only
        assert back.state.edges_px == (EDGE,)
        assert back.state.diameter_mm == 60.0
        assert back.evaluation() == made.evaluation()
    blind = BlindReview(record)
    assert blind.edges_px == (EDGE,)
    assert blind.diameter_mm == 60.0


def test_a_record_without_them_is_written_as_before(photo_file):
    document = inspected(photo_file, Asked(profile="iso-23277-2")).to_record().to_json()
    assert not {"diameter_mm", "edges_mm"} & set(document)
    assert all("edge_u_mm" not in one for one in document["indications"])


def test_options_of_the_command_line(photo_file, tmp_path, rules, capsys):
    out = tmp_path / "r.json"
    points = ",".join(f"{v:g}" for point in EDGE[1] for v in point)
    words = ["measure", str(photo_file), "--criteria", rules("4"), "--json", str(out)]
    assert main([*words, "--diameter", "60mm", "--edge", points]) == 0
    record = json.loads(out.read_text())
    assert record["evaluation"]["verdict"] == "rejectable"
    assert record["diameter_mm"] == 60
    assert main([*words, "--edge", f"={points}"]) == 1
    assert "no name" in capsys.readouterr().err
    assert main([*words, "--edge", "1,2"]) == 1
