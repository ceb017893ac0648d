"""What the next photo and the next part inherit, member by member and field by field.

What may be handed on is common practice, no source: an examination record belongs to one part,
so nothing that was read, timed, seen or decided on one may stand in another's.
"""

import shutil
from dataclasses import fields as members

import cv2
import numpy as np
import pytest

from ptmark.dye import EdgeQuality
from ptmark.inspection import Inspection, State
from ptmark.inspection.carrying import (
    NEXT_PART,
    SAME_PART_NUMBER,
    from_same_part_number,
    next_serial,
    same_number_again,
)
from ptmark.record import FIELDS
from ptmark.scale import LineReference

# Of one part and one examination alone. A new field of the record must be put in one of the
# lists before these tests pass again.
OF_ONE_PART = {
    "job_number", "part_name", "part_number", "drawing_number", "serial_number", "heat_number",
    "material", "dimensions", "thickness", "surface_condition", "production_stage",
    "weld_number", "examined_area", "location_datum", "location", "purpose", "deviations",
    "pre_cleaning", "surface_temperature", "penetration_start", "penetration_end",
    "penetration_time", "removal_drying", "developer_dry_at", "development_time", "first_look",
    "final_look", "illuminance", "uv_irradiance", "post_cleaning", "examination_date",
    "camera_set_up", "resolution_check", "photo_changes", "limits", "remarks", "rework",
    "retest_cycle", "retest_outcome", "reviewer", "reviewer_certificate", "review_date",
    "customer_witness",
}  # fmt: skip
# Of one piece or one day, so not even a later part of the same number has them.
OF_ONE_EXAMINATION = {
    "job_number", "part_number", "serial_number", "heat_number", "location", "deviations",
    "surface_temperature", "penetration_start", "penetration_end", "penetration_time",
    "developer_dry_at", "development_time", "illuminance", "uv_irradiance", "examination_date",
    "examiner", "remarks", "limits", "rework", "reviewer", "penetrant_batch", "developer_batch",
    "remover_batch", "thermometer", "light_meter",
}  # fmt: skip
HANDED_ON = {"profile", "decision_rule", "mode", "fields", "process", "carried", "info"}
PROCESS = {"practice": "ISO 3452-1", "limits": {"Drying": {"least": 5.0}}}


def test_every_field_is_decided():
    keys = {one.key for one in FIELDS}
    assert keys == NEXT_PART | OF_ONE_PART
    assert not NEXT_PART & OF_ONE_PART
    assert keys >= SAME_PART_NUMBER
    assert not SAME_PART_NUMBER & OF_ONE_EXAMINATION


@pytest.fixture
def full(photo_file):
    """An inspection in which no member of the state and no field is empty."""
    made = Inspection()
    made.open(photo_file)
    made.set_reference(LineReference(ends_px=((200.0, 200.0), (900.0, 210.0)), length_mm=60.0))
    made.add(
        np.array([[300.0, 450.0], [340.0, 450.0], [340.0, 470.0]]),
        EdgeQuality(shift_px=0.5, noise_px=0.2),
    )
    made.change(
        "fill in everything",
        area_px=((180.0, 240.0), (1100.0, 240.0), (1100.0, 600.0)),
        profile="iso-23277-2",
        decision_rule="simple",
        relief_mm=1.0,
        weld_px=((200.0, 300.0), (900.0, 300.0)),
        weld_length_mm=200.0,
        thickness_mm=12.0,
        diameter_mm=60.0,
        edges_px=(("edge", ((200.0, 300.0), (900.0, 300.0))),),
        process=PROCESS,
        fields={one.key: f"of the first part: {one.label}" for one in FIELDS},
        decision="reject",
        decision_reason="too long",
        retest_of={"id": "0" * 32},
        mode="colour contrast",
        sizes_from={"A": "0" * 64},
    )
    empty = State()
    unset = {
        m.name for m in members(State) if getattr(made.state, m.name) == getattr(empty, m.name)
    }
    assert unset <= {"before", "after", "carried"}
    return made


@pytest.fixture
def other_file(tmp_path):
    path = tmp_path / "other.png"
    cv2.imwrite(str(path), np.full((300, 400, 3), 235, np.uint8))
    return path


def assert_next_part(state):
    empty = State()
    for member in members(State):
        if member.name not in HANDED_ON:
            assert getattr(state, member.name) == getattr(empty, member.name), member.name
    assert set(state.fields) == NEXT_PART
    assert state.carried == NEXT_PART | {"profile"}
    assert (state.profile, state.decision_rule) == ("iso-23277-2", "simple")
    assert state.process == PROCESS  # as the procedure goes along


def test_another_photo_opened_is_the_next_part(full, other_file):
    full.open(other_file)
    assert_next_part(full.state)
    assert full.undo_name == ""
    record = full.to_record()
    assert not any(key in record.fields for key in OF_ONE_PART)
    assert not record.indications
    assert record.disposition["decision"] == ""


def test_the_next_part_can_be_begun_before_its_photo(full, other_file):
    full.next_part()
    assert full.photo is None
    assert full.surface is None
    assert_next_part(full.state)
    assert not full.begun
    timed = {**full.state.fields, "penetration_start": "09:00:00", "serial_number": "S2"}
    full.change("time the dwell", fields=timed)
    assert full.begun
    full.open(other_file)  # the photo of that very part
    assert full.state.fields["serial_number"] == "S2"
    assert full.state.fields["penetration_start"] == "09:00:00"


def test_another_photo_of_the_same_part_has_a_part_of_its_own(full, other_file):
    from ptmark.photo import open_photo

    full.photos.add(open_photo(other_file))
    state = full.state
    assert state.fields["serial_number"] == "of the first part: Serial number"
    assert (state.thickness_mm, state.relief_mm, state.diameter_mm) == (12.0, 1.0, 60.0)
    assert state.edges_px == ()  # its place in this photo is another
    assert (state.reference, state.area_px, state.marked, state.weld_px) == (
        None,
        None,
        (),
        None,
    )
    assert state.weld_length_mm is None  # it is another stretch of the weld


def test_the_second_of_the_same_part_number_keeps_what_was_typed(photo_file, tmp_path):
    last = {one.key: f"last: {one.label}" for one in FIELDS}
    offered = from_same_part_number(
        {"material": "1.4301", "procedure": "P-9"}, frozenset(), last
    )
    assert set(offered) == SAME_PART_NUMBER - {"material", "procedure"}
    offered = from_same_part_number({"procedure": "P-9"}, frozenset({"procedure"}), last)
    assert offered["procedure"] == "last: Procedure"


def test_what_was_carried_is_known_after_a_restart(full, other_file, tmp_path):
    from ptmark.inspection.draft import draft_to_json, restore_draft

    copy = tmp_path / "copy.png"
    shutil.copy(other_file, copy)
    full.open(copy)
    again = Inspection()
    restore_draft(again, draft_to_json(full))
    assert again.state.carried == NEXT_PART | {"profile"}


def test_the_same_number_again_takes_no_result_and_marks_the_serial_counted_on():
    before = {one.key: f"of the first part: {one.label}, 9" for one in FIELDS}
    serial = next_serial(before["serial_number"])
    assert serial == "of the first part: Serial number, 10"
    made = same_number_again({}, frozenset(), before, serial)
    assert set(made["fields"]) == SAME_PART_NUMBER | {"part_number", "serial_number"}
    assert made["fields"]["serial_number"] != before["serial_number"]
    assert made["carried"] == SAME_PART_NUMBER | {"serial_number"}
    alone = same_number_again({}, frozenset(), before, "")
    assert "serial_number" not in alone["fields"]


@pytest.mark.parametrize(
    ("serial", "after"),
    [("1", "2"), ("09", "10"), ("99", "100"), ("S-7", "S-8"), ("A", ""), ("7B", ""), ("", "")],
)
def test_a_serial_number_is_counted_on_by_its_last_digits(serial, after):
    assert next_serial(serial) == after
