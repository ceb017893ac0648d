"""Rules in a file of one's own are found again when their record is gone on with."""

import json

import pytest

from ptmark.commands.line import run
from ptmark.criteria import load_profile, new_profile
from ptmark.criteria.rule_files import note_place, rules_again, why_stale
from ptmark.errors import CriteriaError
from ptmark.inspection import Inspection
from ptmark.inspection.draft import draft_of_record, restore_draft
from ptmark.inspection.saving import save_inspection
from ptmark.record import load_record
from ptmark.scale import CardReference


@pytest.fixture
def rules(tmp_path, monkeypatch):
    """A file of rules outside the user's folder, and that folder."""
    monkeypatch.setenv("PTMARK_HOME", str(tmp_path / "home"))
    path = tmp_path / "customer" / "drawing-12.toml"
    path.parent.mkdir()
    path.write_text(new_profile("drawing-12", "iso-23277-2"))
    return path


@pytest.fixture
def record(rules, photo_file, tmp_path):
    """A record that was judged by the file."""
    made = Inspection()
    made.open(photo_file)
    made.set_reference(CardReference())
    made.set_suggestions(made.look())
    made.change("choose the rules", profile=str(rules))
    save_inspection(tmp_path / "record.json", made, made.to_record())
    return load_record(tmp_path / "record.json")


def gone_on(record, photo):
    again = Inspection()
    restore_draft(again, json.loads(json.dumps(draft_of_record(record, [photo]))))
    return again


def test_going_on_judges_by_the_same_file_again(record, rules, photo_file):
    assert record.evaluation["profile"] == "drawing-12"  # no place of this machine in a record
    assert str(rules.parent) not in json.dumps(record.to_json())
    again = gone_on(record, photo_file)
    assert again.state.profile == str(rules)
    assert again.to_record().evaluation == record.evaluation
    assert why_stale(record.evaluation) == ""


def test_a_record_that_is_not_saved_leaves_no_note(rules, photo_file, tmp_path):
    made = Inspection()
    made.open(photo_file)
    made.set_reference(CardReference())
    made.change("choose the rules", profile=str(rules))
    assert made.to_record().evaluation is not None
    assert not (tmp_path / "home" / "rule-files").exists()


def test_a_changed_file_is_said_and_gone_on_with_as_it_is_now(
    record, rules, photo_file, tmp_path, capsys
):
    rules.write_text(rules.read_text().replace('"> 4 mm"', '"> 5 mm"'))
    assert gone_on(record, photo_file).state.profile == str(rules)
    assert f"'drawing-12' in {rules} have changed" in why_stale(record.evaluation)
    assert run(["record", str(tmp_path / "record.json")]) in {0, 1}
    assert "have changed since" in capsys.readouterr().out


def test_a_file_that_is_gone_is_said_with_its_place(record, rules, photo_file):
    rules.unlink()
    assert f"lay in {rules} and are not to be had" in why_stale(record.evaluation)
    again = gone_on(record, photo_file)
    with pytest.raises(CriteriaError, match=r"drawing-12\.toml"):
        assert again.profile


def test_the_file_goes_before_other_rules_of_its_name(rules):
    # ISO's own level 2, changed by the customer but not renamed
    text = rules.read_text().replace('"drawing-12"', '"iso-23277-2"').replace("4 mm", "3 mm")
    rules.write_text(text)
    own, shipped = load_profile(rules), load_profile("iso-23277-2")
    note_place(str(rules), own)
    judged = {"profile": own.name, "checksum": own.checksum}
    assert rules_again(judged) == str(rules)
    assert rules_again(judged | {"checksum": shipped.checksum}) == "iso-23277-2"
    rules.unlink()
    assert rules_again(judged) == "iso-23277-2"  # and the verdict is told to be stale
    assert "have changed" in why_stale(judged)


@pytest.mark.parametrize("checksum", ["", "../../x", "unknown", None])
def test_rules_that_never_were_a_file_here_go_by_their_name(rules, checksum):
    assert rules_again({"profile": "drawing-12", "checksum": checksum}) == "drawing-12"
    assert why_stale({"profile": "drawing-12", "checksum": checksum}) == ""


def test_a_broken_note_costs_no_more_than_choosing_again(rules):
    own = load_profile(rules)
    note_place(str(rules), own)
    (note,) = (rules.parents[1] / "home" / "rule-files").glob("*.json")
    for text in ("", "[]", '{"path": 3}', "{"):
        note.write_text(text)
        assert rules_again({"profile": own.name, "checksum": own.checksum}) == own.name


def test_a_house_profile_stays_known_by_its_name(rules, tmp_path):
    house = tmp_path / "home" / "criteria" / "drawing-12.toml"
    house.parent.mkdir(parents=True)
    house.write_text(rules.read_text())
    own = load_profile(house)
    note_place(str(house), own)
    assert rules_again({"profile": own.name, "checksum": own.checksum}) == "drawing-12"
