"""House rules as they are written: to TOML and back, each fault at its line and field."""

import hashlib
import json
import re
import tomllib
from dataclasses import replace
from pathlib import Path

import pytest

from ptmark.commands.line import run
from ptmark.criteria import (
    evaluate,
    evaluation_to_json,
    list_profiles,
    list_templates,
    load_profile,
    rule_kinds,
)
from ptmark.criteria.house import Place, ProfileDraft
from ptmark.criteria.house_check import check_draft
from ptmark.criteria.house_examples import EXAMPLES, Example, example_scene
from ptmark.criteria.house_folder import house_files, save_house
from ptmark.criteria.rule_files import why_stale
from ptmark.errors import CriteriaError
from ptmark.record import load_record, save_record


def filled() -> ProfileDraft:
    draft = ProfileDraft.start("iso-23277-2")
    draft.top.put("name", "drawing-4711")
    draft.top.put("title", "Drawing 4711, note 3")
    return draft


@pytest.mark.parametrize("name", list_profiles())
def test_a_shipped_profile_written_out_again_says_the_same(name, tmp_path):
    draft = ProfileDraft.start(name)
    assert draft.top.text("title") == ""  # a changed copy must not go by the standard's title
    draft.top.put("name", load_profile(name).name)
    draft.top.put("title", load_profile(name).title)
    checked = check_draft(draft)
    assert checked.faults == ()
    path = tmp_path / f"{name}.toml"
    path.write_text(checked.text, encoding="utf-8")
    again = load_profile(path)
    assert again.checksum == checked.profile.checksum == load_profile(name).checksum
    assert again.rules == load_profile(name).rules
    assert len(checked.says) == len(draft.tables())  # every rule is explained


def test_the_checksum_is_that_of_the_canonical_content():
    checked = check_draft(filled())
    plain = json.dumps(
        tomllib.loads(checked.text), sort_keys=True, ensure_ascii=False, separators=(",", ":")
    )
    assert checked.profile.checksum == hashlib.sha256(plain.encode()).hexdigest()


@pytest.mark.parametrize("name", list_templates())
def test_a_template_names_every_open_figure_at_its_own_line(name):
    checked = check_draft(ProfileDraft.start(name))
    assert checked.profile is None
    lines = checked.text.splitlines()
    told = {fault.line for fault in checked.faults}
    wanted = {
        n for n, line in enumerate(lines, 1) if re.match(r'[a-z_]+ = "([<>]=? )?\?', line)
    }
    assert wanted
    assert wanted <= told
    assert all(fault.mend for fault in checked.faults)


@pytest.mark.parametrize(
    ("key", "value", "said"),
    [
        ("reject", "> 4 in", "has unit 'in'"),
        ("reject", "> -4 mm", "must be above zero"),
        ("reject", "4 mm", "no operator"),
        ("reject", "< 4 mm", "makes no sense here"),
        ("of", "square", "'square' is unknown"),
        ("colour", "red", "is unknown here"),
        ("thickness_share", "5 mm", "needs"),
    ],
)
def test_a_fault_is_told_at_its_rule_key_and_line(key, value, said):
    draft = filled()
    nth = next(n for n, rule in enumerate(draft.rules) if rule.text("kind") == "size")
    draft.rules[nth].put(key, value)
    checked = check_draft(draft)
    assert checked.profile is None
    (fault,) = checked.faults
    assert fault.place == Place(nth, key)
    assert said in fault.what
    assert checked.text.splitlines()[fault.line - 1].startswith(f"{key} =")


def test_faults_of_several_rules_are_told_at_once():
    draft = filled()
    draft.rules[0].put("clause", "")
    draft.rules[1].put("sure", "perhaps")
    draft.top.put("edition", "?")
    places = {fault.place for fault in check_draft(draft).faults}
    assert places == {Place("", "edition"), Place(0, "clause"), Place(1, "sure")}


def test_two_rules_of_one_id_and_a_circle_of_rules_are_told_at_their_rule():
    draft = filled()
    draft.rules[1].put("id", draft.rules[0].text("id"))
    (fault,) = check_draft(draft).faults
    assert fault.place == Place(1, "id")

    draft = filled()
    for name, other in (("one", "two"), ("two", "one")):
        nth = draft.add("any-of")
        for key, value in (
            ("id", name),
            ("rules", [other]),
            ("clause", "1"),
            ("sure", "memory"),
        ):
            draft.rules[nth].put(key, value)
    (fault,) = check_draft(draft).faults
    assert isinstance(fault.place.table, int)
    assert fault.place.table >= len(draft.rules) - 2
    assert "rules" in checked_line(draft, fault.line)


def checked_line(draft, line):
    return check_draft(draft).text.splitlines()[line - 1]


def test_a_fault_in_a_table_of_limits_names_its_row():
    draft = filled()
    nth = next(n for n, rule in enumerate(draft.rules) if rule.text("kind") == "size")
    draft.rules[nth].put("reject", "")
    rows = [{"up_to": "<= 10 mm", "reject": "> 2 mm"}, {"reject": "> 3 in"}]
    draft.rules[nth].put("bands", rows)
    (fault,) = check_draft(draft).faults
    assert (fault.place.table, fault.place.key, fault.place.row) == (nth, "bands", 2)
    rows[1]["reject"] = "> 3 mm"
    checked = check_draft(draft)
    assert checked.faults == ()
    assert "10 mm or less: more than 2 mm; above that: more than 3 mm" in checked.says[nth]


def test_comments_stay_above_what_they_were_written_to_and_move_with_their_rule(tmp_path):
    path = tmp_path / "own.toml"
    text = check_draft(filled()).text
    text = "# from the order\n" + text.replace("[shape]", "# see note 3\n[shape]", 1)
    first, second = text.split("[[rule]]", 2)[1:][0], "[[rule]]"
    text = text.replace(second + first, "# as agreed\n" + second + first, 1)
    text = text.replace('unit = "mm"', 'unit = "mm"  # not inches')
    path.write_text(text)
    draft = ProfileDraft.read(path)
    draft.move(0, 1)
    made = check_draft(draft).text.splitlines()
    assert made[0] == "# from the order"
    assert made[made.index("# see note 3") + 1] == "[shape]"
    assert made[made.index("# not inches") + 1] == 'unit = "mm"'
    at = made.index("# as agreed")
    assert made[at + 1] == "[[rule]]"
    assert made[at + 2] == f'id = "{draft.rules[1].text("id")}"'


def test_what_is_written_can_hold_any_text(tmp_path):
    draft = filled()
    draft.top.put("title", 'A "drawing" \\ 5 µm\tDEL\x7f [#1]')
    checked = check_draft(draft)
    assert tomllib.loads(checked.text)["title"] == draft.top.text("title")


def test_every_kind_of_rule_can_be_added_and_names_what_is_open():
    draft = filled()
    for kind in rule_kinds():
        nth = draft.add(kind.name)
        keys = {f.place.key for f in check_draft(draft).faults if f.place.table == nth}
        wanted = {one.name for one in kind.parameters if one.required}
        assert keys == wanted | {"clause", "sure"}
        draft.rules.pop()


def test_saving_keeps_to_the_users_folder_and_never_replaces_another(tmp_path, monkeypatch):
    monkeypatch.setenv("PTMARK_HOME", str(tmp_path))
    path = save_house(check_draft(filled()))
    assert path == tmp_path / "criteria" / "drawing-4711.toml"
    assert house_files() == [path]
    assert load_profile(path).name == "drawing-4711"
    with pytest.raises(CriteriaError, match="there already"):
        save_house(check_draft(filled()))
    assert save_house(check_draft(filled()), over=path) == path
    for name, said in (("../x", "no name"), ("iso-23277-2", "shipped"), ("a/b", "no name")):
        draft = filled()
        draft.top.put("name", name)
        with pytest.raises(CriteriaError, match=said):
            save_house(check_draft(draft))
    draft = filled()
    draft.top.put("edition", "")
    with pytest.raises(CriteriaError, match="1 open or wrong"):
        save_house(check_draft(draft))


def test_examples_have_the_length_and_area_they_state():
    """A stretch with round ends: area (L - W) W + pi W^2 / 4, elementary geometry."""
    import numpy as np
    import shapely

    one = Example(id="A", length=6.0, width=2.0, x=10.0, y=5.0, turn_deg=30.0)
    (made,) = example_scene((one,)).indications
    shape = shapely.Polygon(made.outline_mm)
    assert shape.area == pytest.approx(4 * 2 + np.pi, rel=0.01)
    hull = shapely.minimum_rotated_rectangle(shape).exterior.coords
    sides = sorted(np.hypot(*np.diff(np.array(hull), axis=0).T))
    assert sides[-1] == pytest.approx(6.0, rel=0.01)
    assert (shape.centroid.x, shape.centroid.y) == pytest.approx((10.0, 5.0))


def test_examples_are_judged_by_the_rules_of_iso_23277():
    """ISO 23277:2015, table 1, level 2: linear over 4 mm, rounded over 6 mm not accepted."""
    checked = check_draft(filled())
    made = evaluate(checked.profile, example_scene(EXAMPLES))
    verdicts = {f.indications: f.verdict for f in made.findings if f.value}
    assert verdicts[("A",)] == "rejectable"
    assert made.verdict == "rejectable"


def test_records_tell_where_the_rules_have_changed_since(tmp_path, monkeypatch, capsys):
    monkeypatch.setenv("PTMARK_HOME", str(tmp_path))
    written = Path(__file__).parents[1] / "record" / "written" / "record-2.json"
    path = save_house(check_draft(filled()))
    assert load_profile("drawing-4711").name == "drawing-4711"  # by name, as a record has it
    record = load_record(written)
    made = evaluate(load_profile("drawing-4711"), example_scene(EXAMPLES))
    ours = tmp_path / "ours.json"
    save_record(ours, replace(record, evaluation=evaluation_to_json(made)))
    assert run(["record", str(ours)]) in {0, 1}
    assert "stale" not in capsys.readouterr().out

    path.write_text(path.read_text().replace('"> 4 mm"', '"> 5 mm"'))
    assert run(["record", str(ours)]) in {0, 1}
    assert "the rules 'drawing-4711' have changed since" in capsys.readouterr().out
    assert run(["report", str(ours), "--csv", str(tmp_path / "ours.csv")]) == 0
    assert "have changed since" in capsys.readouterr().err

    path.unlink()  # rules that are gone say nothing of a record that names its own checksum
    assert why_stale(load_record(ours).evaluation) == ""


def test_own_rules_are_listed_by_the_command(tmp_path, monkeypatch, capsys):
    monkeypatch.setenv("PTMARK_HOME", str(tmp_path))
    save_house(check_draft(filled()))
    assert run(["criteria", "list"]) == 0
    assert "drawing-4711" in capsys.readouterr().out
    assert run(["criteria", "check", "drawing-4711"]) == 0
