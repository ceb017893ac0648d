"""A record that is opened again and saved as it is, is the same record, number for number."""

import json

import numpy as np
import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from ptmark.dye import EdgeQuality
from ptmark.inspection import Inspection
from ptmark.inspection.draft import draft_of_record, draft_to_json, restore_draft
from ptmark.photo import open_photo
from ptmark.record import Record, Signer, follow, load_record, save_record, sign_record
from ptmark.scale import CardReference

OUTLINE = np.array([[300.12345, 450.6], [340.251, 450.0], [341.9, 470.511], [310.0, 471.98]])


@pytest.fixture(scope="module")
def worked_on(photo_file, overview_file):
    """Two photos with everything in them that a person can give."""
    made = Inspection()
    made.open(overview_file)
    made.set_reference(CardReference())
    made.set_suggestions(made.look())
    made.photos.add(open_photo(photo_file))
    made.set_reference(CardReference())
    made.set_suggestions(made.look())
    edge = EdgeQuality(
        shift_px=0.512345678,
        noise_px=0.2,
        source="hand",
        end_shift_px=0.97654321,
        operator_px=1 / 3,
        operator_free=4,
        traces_px=(88.123456, 87.5, 89.0),
    )
    traced = made.add(OUTLINE, edge)
    made.edit(traced, kind="crack", note="beside the toe", relevance="non-relevant", reason="x")
    first, second, *_ = [m.id for m in made.state.marked]
    made.edit(first, standing="dropped", reason="a scratch, wiped off")
    made.change(
        "fill in",
        profile="iso-23277-2",
        decision_rule="simple",
        mode="colour contrast",
        relief_mm=25.4 / 64,
        thickness_mm=12.7,
        diameter_mm=168.3,
        edges_px=(("free edge", ((150.0, 250.5), (800.25, 240.0), (1400.0, 250.0))),),
        weld_px=((200.0, 300.25), (1300.0, 320.0)),
        area_px=((100.0, 100.0), (1500.0, 100.0), (1500.0, 1500.0)),
        fields={"part_number": "P-7 (invented)", "procedure": "P-1"},
        process={"practice": "ISO 3452-1", "limits": {"Drying": {"least": 5.0, "most": None}}},
        carried=frozenset({"procedure"}),
        decision="refer",
        decision_reason="a second look",
    )
    far = made.state.before[0].marked[0].id
    made.photos.turn_to(0)
    made.photos.same(far, second)
    made.photos.choose(second, 0)
    return made


def gone_on(record, inspection):
    """The record as a new inspection that goes on with it."""
    files = [info.path for info in inspection.photos.infos]
    again = Inspection()
    restore_draft(again, json.loads(json.dumps(draft_of_record(record, files))))
    return again


def test_opened_and_saved_it_is_the_same_record(worked_on, tmp_path):
    save_record(tmp_path / "record.json", worked_on.to_record())
    record = load_record(tmp_path / "record.json")
    again = gone_on(record, worked_on).to_record(record_id=record.id, created=record.created)
    assert again.to_json() == record.to_json()
    key = Ed25519PrivateKey.from_private_bytes(bytes(32))
    signed = sign_record(record, Signer(role="examiner", name="first"), key)
    assert follow(signed, again) is signed  # so no revision comes of it either


def test_what_a_person_gave_comes_back(worked_on):
    again = gone_on(worked_on.to_record(), worked_on)
    for old, new in zip(worked_on.state.photos, again.state.photos, strict=True):
        for name in ("area_px", "weld_px", "mode", "thickness_mm", "diameter_mm", "edges_px"):
            assert getattr(new, name) == getattr(old, name), name
        shared = ("profile", "decision_rule", "decision", "decision_reason", "retest_of")
        for name in (*shared, "fields", "carried", "sizes_from"):
            assert getattr(new, name) == getattr(old, name), name
        left, right = ({m.id: m for m in one.marked} for one in (old, new))
        assert left.keys() == right.keys()
        for name, one in left.items():
            assert np.array_equal(one.outline_px, right[name].outline_px)
            assert one.edge == right[name].edge
            assert (one.standing, one.reason) == (right[name].standing, right[name].reason)
    dropped = [m for one in again.state.photos for m in one.marked if m.standing == "dropped"]
    assert [m.reason for m in dropped] == ["a scratch, wiped off"]
    assert worked_on.haze is not None
    assert again.haze == pytest.approx(worked_on.haze, abs=5e-5)  # a record holds 4 decimals


def test_criteria_chosen_before_there_is_a_scale_come_back(photo_file):
    made = Inspection()
    made.open(photo_file)
    made.change("choose", profile="iso-23277-2x", decision_rule="simple")
    again = gone_on(made.to_record(), made)
    assert (again.state.profile, again.state.decision_rule) == ("iso-23277-2x", "simple")


def test_a_draft_keeps_what_the_look_left_out(worked_on):
    document = json.loads(json.dumps(draft_to_json(worked_on)))
    again = Inspection()
    restore_draft(again, document)
    assert draft_to_json(again) == document
    kept = worked_on.to_record(record_id="r", created="2026-01-02T03:04:05Z")
    assert again.to_record(record_id="r", created="2026-01-02T03:04:05Z") == kept


def test_records_without_these_members_keep_their_bytes(worked_on):
    """What was signed before they were there must hash as it did."""
    document = worked_on.to_record().to_json()
    del document["chosen"], document["process"]
    second = document["more_photos"][0]
    assert second.pop("given")["dropped"]
    for name in ("diameter_mm", "edges_mm"):
        assert second.pop(name)
    before = Record.from_json(document)
    assert before.to_json() == document
    assert [view.given for view in before.views()] == [None, None]
    gone_on(before, worked_on)
