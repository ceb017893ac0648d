"""Outlines that did not come from a photo, and files that hold nonsense."""

import json

import numpy as np
import pytest

from ptmark.commands import criteria as criteria_command
from ptmark.commands import evaluate as evaluate_command
from ptmark.criteria import evaluate, load_profile, scene_from_json
from ptmark.errors import CriteriaError, PtmarkError


def document(build, *indications, **more):
    return {
        "indications": [
            {"id": one.id, "outline_mm": one.outline_mm.tolist()} for one in indications
        ],
        **more,
    }


@pytest.mark.truth
@pytest.mark.parametrize("deg", [0, 27.0, 90.0])
@pytest.mark.parametrize("x", [0.0, 431.7])
def test_five_millimetres_from_an_outline_are_five(build, deg, x):
    # App. 8, 8-4(b) (verified): 5 mm passes, more does not, wherever the outline lies
    for d, verdict in ((5.0, "acceptable"), (5.001, "rejectable")):
        made = build.moved(build.scene(build.pore("A", 0, 0, d)), deg, x, -x)
        scene = scene_from_json(document(build, *made.indications))
        assert scene.indications[0].length == pytest.approx(d, abs=1e-9)
        assert evaluate(load_profile("asme-viii-1-app-8"), scene).verdict == verdict


@pytest.mark.truth
@pytest.mark.parametrize("deg", [0, 27.0])
def test_three_widths_from_an_outline(build, deg):
    # App. 8, 8-3 (verified): linear is above three widths
    for length, verdict in ((4.4, "acceptable"), (4.5, "acceptable"), (4.6, "rejectable")):
        made = build.moved(build.scene(build.bar("A", 0, 0, length, 1.5)), deg, 50, 20)
        scene = scene_from_json(document(build, *made.indications))
        assert evaluate(load_profile("asme-viii-1-app-8"), scene).verdict == verdict


def test_a_bent_crack_is_linear_by_its_path(build):
    # a half ring, 2 mm in radius and 1 wide: 5 end to end, about 6.3 along its middle
    turn = np.linspace(0, np.pi, 60)
    half = np.c_[np.cos(turn), np.sin(turn)]
    outline = np.concatenate([half * 2.5, half[::-1] * 1.5])
    scene = scene_from_json(
        {"indications": [{"id": "A", "outline_mm": (outline * 0.8).tolist()}]}
    )
    assert evaluate(load_profile("asme-viii-1-app-8"), scene).shape["A"].startswith("linear")


def test_stated_figures_do_not_judge_but_a_contradiction_is_told(build):
    data = document(build, build.pore("A", 0, 0, 6.0))
    data["indications"][0] |= {"length_mm": 6.0, "width_mm": 5.97}
    assert scene_from_json(data).notes == ()
    data["indications"][0]["length_mm"] = 3.0
    result = evaluate(load_profile("asme-viii-1-app-8"), scene_from_json(data))
    assert result.verdict == "rejectable"
    assert any("states length_mm 3" in caution for caution in result.cautions)


def test_a_rounded_outline_is_judged_as_it_was_measured(build):
    # measured 5.0003 mm, written with an outline that reads 5.0000 in thousandths
    data = document(build, build.pore("A", 0, 0, 5.0))
    plain = evaluate(load_profile("asme-viii-1-app-8"), scene_from_json(data))
    assert plain.verdict == "acceptable"
    data["indications"][0]["length_mm"] = 5.0003
    stated = evaluate(load_profile("asme-viii-1-app-8"), scene_from_json(data))
    assert stated.verdict == "rejectable"


def test_uncertainty_kind_and_the_rest_are_read(build):
    data = document(build, build.pore("A", 0, 0, 3.0), thickness_mm=8, weld_length_mm=250.0)
    data["indications"][0] |= {
        "length_u_mm": 0.3,
        "width_u_mm": 0.2,
        "kind": 2011,
        "relevance": "false",
        "reason": "fibre",
        "budget": {"edge": 0.1},
        "runs_out": True,
        "overexposed": True,
        "covered": True,
        "ends_unsure": True,
    }
    scene = scene_from_json(data | {"photo": {}, "weld_direction_deg": -90})
    one = scene.indications[0]
    assert (one.length_u, one.width_u, one.kind) == (0.3, 0.2, "2011")
    assert (one.relevance, one.reason) == ("false", "fibre")
    assert one.least == {"runs_out", "overexposed", "covered", "ends_unsure"}
    assert (scene.thickness_mm, scene.weld_length_mm) == (8.0, 250.0)
    assert scene.weld_direction_deg == -90.0


SQUARE = [[0, 0], [1, 0], [1, 1], [0, 1]]


def test_what_a_photo_cannot_show_is_read():
    data = {"scale": {"reference": "pipe"}, "conditions": {"colourless": True, "unseen": 7}}
    data["conditions"] |= {"unlooked": True, "dense_haze": 2}
    listed = [{"id": "A", "outline_mm": SQUARE}, {"id": "B", "outline_mm": None}]
    scene = scene_from_json(data | {"indications": listed})
    assert ([one.id for one in scene.indications], scene.unmeasured) == (["A"], ("B",))
    assert scene.hidden == {"unseen": 7, "dense_haze": 2, "colourless": 1, "unlooked": 1}
    with pytest.raises(CriteriaError, match="used twice"):
        scene_from_json(data | {"indications": [listed[1], listed[1]]})
    with pytest.raises(CriteriaError, match="indication B"):  # without a scale it is a mistake
        scene_from_json({"indications": listed})


@pytest.mark.parametrize(
    ("data", "says"),
    [
        ([], "JSON object"),
        ({}, "list"),
        ({"indications": [3]}, "object"),
        ({"indications": [{"outline_mm": SQUARE}]}, "id must be text"),
        ({"indications": [{"id": "A"}]}, "outline_mm"),
        ({"indications": [{"id": "A", "outline_mm": [[0, 0], [1, 1]]}]}, "3 different points"),
        ({"indications": [{"id": "A", "outline_mm": [[0, 0], [1, 1], [2, 2]]}]}, "no area"),
        ({"indications": [{"id": "A", "outline_mm": [[0, "x"]]}]}, r"\[x, y\]"),
        (
            {"indications": [{"id": "A", "outline_mm": [[0, 0], [1, 0], [0, float("nan")]]}]},
            "A",
        ),
        ({"indications": [{"id": "A", "outline_mm": SQUARE}] * 2}, "used twice"),
        (
            {"indications": [{"id": "A", "outline_mm": SQUARE, "length_u_mm": -1}]},
            "zero or more",
        ),
        ({"indications": [{"id": "A", "outline_mm": SQUARE, "length_u_mm": "1"}]}, "a number"),
        ({"indications": [{"id": "A", "outline_mm": SQUARE, "kind": []}]}, "kind"),
        ({"indications": [{"id": "A", "outline_mm": SQUARE, "runs_out": 1}]}, "true or false"),
        (
            {"indications": [{"id": "A", "outline_mm": SQUARE, "overexposed": "no"}]},
            "overexposed",
        ),
        ({"indications": [], "thickness_mm": 0}, "above zero"),
    ],
)
def test_nonsense_is_refused_by_name(data, says):
    with pytest.raises(CriteriaError, match=says):
        scene_from_json(data)


def run(command, argv):
    import argparse

    parser = argparse.ArgumentParser()
    command.add_to(parser.add_subparsers())
    args = parser.parse_args(argv)
    return args.run(args)


def test_evaluate_writes_what_the_design_says(build, tmp_path, capsys):
    path, out = tmp_path / "in.json", tmp_path / "out.json"
    path.write_text(json.dumps(document(build, build.pore("A", 0, 0, 6.0))))
    argv = ["evaluate", str(path), "--criteria", "asme-b31.1", "--json", str(out)]
    assert run(evaluate_command, argv) == 0
    made = json.loads(out.read_text())["evaluation"]
    assert (made["profile"], made["decision_rule"], made["verdict"]) == (
        "asme-b31.1",
        "guarded",
        "rejectable",
    )
    keys = {"rule", "clause", "indications", "value", "u", "limit", "unit", "verdict", "says"}
    for finding in made["findings"]:
        assert keys <= finding.keys()
    printed = capsys.readouterr().out
    assert printed.startswith("REJECTABLE")
    assert "Caution: The edition named in the contract governs" in printed


@pytest.mark.parametrize(
    "text", ["", "{", "[1]", '{"indications": 1}', "[" * 100_000, "\udcff"]
)
def test_evaluate_refuses_with_one_error(text, tmp_path):
    path = tmp_path / "in.json"
    path.write_bytes(text.encode("utf-8", "surrogateescape"))
    with pytest.raises(PtmarkError):
        run(evaluate_command, ["evaluate", str(path), "--criteria", "asme-b31.1"])
    with pytest.raises(PtmarkError, match="cannot be read"):
        run(evaluate_command, ["evaluate", str(tmp_path / "no"), "--criteria", "asme-b31.1"])


def test_criteria_lists_shows_and_checks(tmp_path, capsys):
    assert run(criteria_command, ["criteria"]) == 0
    assert "iso-23277-2x" in capsys.readouterr().out
    assert run(criteria_command, ["criteria", "show", "asme-b31.1-us"]) == 0
    shown = capsys.readouterr().out
    assert "reject > 0.1875 in" in shown
    assert "Caution" in shown
    bad = tmp_path / "bad.toml"
    bad.write_text('unit = "ells"\n')
    with pytest.raises(CriteriaError, match="ells"):
        run(criteria_command, ["criteria", "check", str(bad)])
    with pytest.raises(PtmarkError, match="takes PROFILE"):
        run(criteria_command, ["criteria", "show"])
