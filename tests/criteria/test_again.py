"""A verdict by other rules: what changes, what is stale, and how findings look."""

import csv
import json
import xml.etree.ElementTree as ET
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from ptmark.commands.line import run
from ptmark.criteria import (
    changes,
    evaluate,
    evaluation_to_json,
    is_stale,
    load_profile,
    scene_from_json,
)
from ptmark.criteria.rule_files import note_place
from ptmark.record import load_record, save_record
from ptmark.report.sketch import finding_picture, finding_svg

WRITTEN = Path(__file__).parents[1] / "record" / "written"


def told(name, scene):
    return evaluation_to_json(evaluate(load_profile(name), scene))


@pytest.mark.truth
def test_changes_between_levels(build):
    # ISO 23277 Table 1 (memory): linear up to 2 mm at level 1, 4 mm at level 2
    scene = build.scene(build.bar("A", 0, 0, 3, 0.3), build.bar("B", 50, 0, 1.5, 0.2))
    rows = changes(told("iso-23277-2", scene), told("iso-23277-1", scene))
    assert [(row.what, row.before, row.after) for row in rows] == [
        ("verdict", "acceptable", "rejectable"),
        ("A", "acceptable", "rejectable"),
        ("B", "acceptable", "acceptable"),
    ]
    assert "linear" in rows[1].rule_after
    assert rows[0].differs
    assert not rows[2].differs


def test_a_first_verdict_changes_from_not_judged(build):
    rows = changes(None, told("iso-23277-2", build.scene(build.pore("A", 0, 0, 1))))
    assert {row.before for row in rows} == {"not judged"}


def test_an_edited_profile_makes_a_verdict_stale(tmp_path, build):
    path = tmp_path / "own.toml"
    path.write_text('base = "iso-23277-2"\nname = "own"\n')
    made = evaluation_to_json(evaluate(load_profile(path), build.scene()))
    path.write_text('# a comment\nbase = "iso-23277-2"\nname = "own"\n')
    assert not is_stale(made, load_profile(path))
    path.write_text(
        'base = "iso-23277-2"\nname = "own"\n[[rule]]\nid = "linear"\nreject = "> 1 mm"\n'
    )
    assert is_stale(made, load_profile(path))
    assert is_stale({}, load_profile(path))


def test_an_inspection_sees_an_edited_profile(tmp_path):
    from ptmark.inspection import Inspection

    path = tmp_path / "own.toml"
    path.write_text('base = "iso-23277-2"\nname = "own"\n')
    held = Inspection()
    held.change("profile", profile=str(path))
    first = held.profile
    assert held.profile is first
    path.write_text(
        'base = "iso-23277-2"\nname = "own"\n[[rule]]\nid = "linear"\nreject = "> 1 mm"\n'
    )
    assert held.profile.checksum != first.checksum


def test_sketch_shows_line_window_and_gaps(build):
    row = build.row_of(4, 2.0, 1.0)
    result = evaluate(load_profile("asme-viii-1-app-8"), row)
    finding = next(one for one in result.findings if one.rule == "row")
    svg = finding_svg(finding, row.indications)
    assert svg == finding_svg(finding, row.indications)
    root = ET.fromstring(svg)  # noqa: S314 - our own
    lines = [e for e in root.iter() if e.tag.endswith("polyline")]
    # 4 outlines, 3 gaps, the line twice (halo and core) and the scale bar
    assert len(lines) == 4 + 3 + 2 + 1
    gaps = [e for e in lines if e.get("stroke-width") == "3"][:3]
    ends = [np.array([p.split(",") for p in e.get("points").split()], float) for e in gaps]
    outline = next(e for e in lines if e.get("stroke-width") == "2")
    across = np.array([p.split(",") for p in outline.get("points").split()], float)
    mm = np.ptp(across[:, 0]) / 2.0  # units a mm: each pore is 2 mm across
    assert [np.hypot(*(b - a)) / mm for a, b in ends] == pytest.approx([1.0] * 3, abs=0.01)
    assert {e.get("stroke") for e in lines}.isdisjoint({"#ff0000", "#ffffff", "#ffc0cb"})


def test_picture_and_empty_frame(build):
    pores = build.row_of(10, 3.0, 3.0)
    result = evaluate(load_profile("asme-b31.1"), pores)
    finding = next(one for one in result.findings if one.rule == "window")
    picture = finding_picture(finding, pores.indications)
    assert picture.shape == (450, 600, 3)
    assert picture.dtype == np.uint8
    assert (picture == finding_picture(finding, pores.indications)).all()
    assert len(np.unique(picture.reshape(-1, 3), axis=0)) > 3
    nothing = evaluate(load_profile("asme-b31.1"), build.scene()).findings[0]
    assert finding_svg(nothing, ()).count("polyline") == 0
    assert len(np.unique(finding_picture(nothing, ()).reshape(-1, 3), axis=0)) == 1


def test_names_cannot_break_the_drawing(build):
    odd = build.scene(build.pore('<A&"', 0, 0, 9.0))
    finding = evaluate(load_profile("iso-23277-1"), odd).findings[-1]
    ET.fromstring(finding_svg(finding, odd.indications))  # noqa: S314 - our own


def test_evaluate_writes_sketches(tmp_path):
    square = [[0, 0], [9, 0], [9, 9], [0, 9]]
    path = tmp_path / "in.json"
    path.write_text(json.dumps({"indications": [{"id": "A", "outline_mm": square}]}))
    words = ["evaluate", str(path), "--criteria", "iso-23277-2"]
    assert run([*words, "--sketches", str(tmp_path / "s")]) == 0
    drawn = list((tmp_path / "s").glob("*.svg"))
    assert len(drawn) == 1
    ET.fromstring(drawn[0].read_text())  # noqa: S314 - our own


def test_rejudge_a_folder(tmp_path, capsys):
    from shutil import copy

    records = sorted(WRITTEN.glob("*.json"))
    assert records
    for path in records:
        copy(path, tmp_path / path.name)
    before = {path.name: path.read_bytes() for path in tmp_path.glob("*.json")}
    table = tmp_path / "out.csv"
    words = ["rejudge", str(tmp_path), "--criteria", "iso-23277-1", "--csv", str(table)]
    assert run(words) == 0
    judged = sum(len(load_record(path).views()) for path in records)  # each of its photos
    assert f"{judged} judged" in capsys.readouterr().out
    rows = list(csv.DictReader(table.read_text().splitlines()))
    assert sum(row["what"] == "verdict" for row in rows) == judged
    assert before == {path.name: path.read_bytes() for path in tmp_path.glob("*.json")}
    assert run([*words[:4], "--part", "no such part"]) == 1
    assert "no record" in capsys.readouterr().err


def test_rejudge_goes_on_past_a_file_that_is_no_record(tmp_path, capsys):
    (tmp_path / "x.json").write_text("{}")
    assert run(["rejudge", str(tmp_path), "--criteria", "iso-23277-1"]) == 1
    assert "x.json: not judged" in capsys.readouterr().out
    assert run(["rejudge", str(tmp_path / "x.json"), "--criteria", "iso-23277-1"]) == 1


def written(folder, name, part, scale):
    """A record of the written one's indications, as large as asked for, judged by level 3."""
    record = load_record(WRITTEN / "record-1.json")
    made = []
    for one in record.indications:
        points = (np.array(one["outline_mm"]) * scale).tolist()
        kept = {k: v for k, v in one.items() if k not in {"length_mm", "path_mm", "width_mm"}}
        sizes = {k: one[k] * scale for k in ("length_mm", "path_mm", "width_mm")}
        made.append(kept | sizes | {"outline_mm": points, "relevance": "", "reason": ""})
    whole = replace(
        record, id=name, indications=made, fields={**record.fields, "part_number": part}
    )
    scene = scene_from_json(whole.to_json())
    told_by = evaluation_to_json(evaluate(load_profile("iso-23277-3"), scene))
    save_record(folder / f"{name}.json", replace(whole, evaluation=told_by))


@pytest.mark.truth
def test_rejudge_many_records_of_one_part_gives_a_table(tmp_path, capsys):
    # ISO 23277 Table 1 (conflicting secondary sources): linear 8 mm at level 3, 2 mm at level
    # 1; the linear indication of the written record is 8 mm long
    for k, scale in enumerate((0.2, 0.24, 0.3, 0.9, 1.5)):
        written(tmp_path, f"a{k}", "P-7", scale)
    written(tmp_path, "b0", "P-8", 0.9)
    before = {path.name: path.read_bytes() for path in tmp_path.glob("*.json")}
    words = ["rejudge", str(tmp_path), "--criteria", "iso-23277-1", "--part", "P-7"]
    table, evaluations = tmp_path / "out.csv", tmp_path / "out.txt"
    assert run([*words, "--csv", str(table), "--json", str(evaluations)]) == 0
    said = capsys.readouterr().out
    assert "5 judged" in said
    assert "b0" not in said
    rows = list(csv.DictReader(table.read_text().splitlines()))
    verdicts = [(row["before"], row["after"]) for row in rows if row["what"] == "verdict"]
    assert {row["part_number"] for row in rows} == {"P-7"}
    counted = {pair: verdicts.count(pair) for pair in verdicts}
    order = ("acceptable", "undecided", "rejectable")
    shown = [line.split() for line in said.splitlines() if line.split()[1:] and line[:1] != " "]
    for was in {pair[0] for pair in verdicts}:
        wanted = [was, *(str(counted.get((was, now), 0)) for now in order)]
        assert wanted in shown
    moved = sum(was != now for was, now in verdicts)
    assert moved >= 2
    assert f"the verdict of {moved} changes" in said
    kept = json.loads(evaluations.read_text())["records"]
    assert [one["after"]["verdict"] for one in kept] == [now for _, now in verdicts]
    assert before == {path.name: path.read_bytes() for path in tmp_path.glob("*.json")}


def test_rejudge_without_rules_takes_those_that_each_record_names(tmp_path, capsys):
    # linear 8 mm at level 3; the written record's is 8 mm long, here 1.5 times that
    written(tmp_path, "a", "P-7", 1.5)
    path = tmp_path / "a.json"
    before = path.read_bytes()
    assert run(["rejudge", str(path), "--csv", str(tmp_path / "out.csv")]) == 0
    said = capsys.readouterr().out
    third = load_profile("iso-23277-3")
    assert said.startswith("Each record by the rules that it names, as they stand now")
    assert f"a.json, by {third.title} ({third.edition}): rejectable, as before\n" in said
    assert "the verdict of 0 changes" in said
    rows = csv.DictReader((tmp_path / "out.csv").read_text().splitlines())
    assert {row["criteria"] for row in rows} == {"iso-23277-3"}
    assert path.read_bytes() == before


def test_rejudge_by_a_record_s_own_rules_says_where_they_have_changed(tmp_path, capsys):
    own = tmp_path / "own.toml"
    own.write_text('base = "iso-23277-3"\nname = "own"\n')
    note_place(str(own), load_profile(own))
    written(tmp_path, "a", "P-7", 0.9)
    whole = load_record(tmp_path / "a.json")
    told_by = evaluation_to_json(evaluate(load_profile(own), scene_from_json(whole.to_json())))
    save_record(tmp_path / "a.json", replace(whole, evaluation=told_by))
    own.write_text(
        'base = "iso-23277-3"\nname = "own"\n[[rule]]\nid = "linear"\nreject = "> 1 mm"\n'
    )
    assert run(["rejudge", str(tmp_path / "a.json")]) == 0
    said = capsys.readouterr().out
    assert "acceptable -> rejectable by linear" in said
    assert "the verdict in the record is stale" in said
    own.unlink()
    assert run(["rejudge", str(tmp_path / "a.json")]) == 1
    said = capsys.readouterr().err
    assert "its rules 'own' are not to be had here" in said
    assert "--criteria" in said


def test_rejudge_a_record_that_was_never_judged_asks_for_rules(tmp_path, capsys):
    whole = load_record(WRITTEN / "record-1.json")
    save_record(tmp_path / "a.json", replace(whole, id="a", evaluation=None))
    assert run(["rejudge", str(tmp_path / "a.json")]) == 1
    assert "names no rules. name them with --criteria" in capsys.readouterr().err
    assert run(["rejudge", str(tmp_path)]) == 1  # in a folder it is passed over, and said
    assert "a.json: not judged: was not judged yet" in capsys.readouterr().out
    assert run(["rejudge", str(tmp_path), "--criteria", "iso-23277-1"]) == 0
