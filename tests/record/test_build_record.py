import json
import re
import uuid
from dataclasses import replace
from datetime import UTC, datetime

import numpy as np
import pytest

from ptmark.dye import lighting_remark
from ptmark.errors import RecordError
from ptmark.photo import Camera
from ptmark.record import FIELDS, Record, build_record, completeness, record_text


def test_the_json_carries_what_the_measurement_says(record):
    crack = record.to_json()["indications"][0]
    # U = 2 * sqrt(0.03² + 0.04²) = 2 * 0.05, by hand
    assert (crack["length_mm"], crack["length_u_mm"]) == (8.0, 0.1)
    assert (crack["width_mm"], crack["width_u_mm"]) == (0.5, 0.04)
    assert crack["budget"] == {"edge": 0.03, "map": 0.04}
    assert (crack["shape"], crack["ratio"]) == ("linear", 16.0)
    assert crack["centre_px"] == [200.0, 100.0]
    assert np.allclose(crack["centre_mm"], [10.0, 5.0])
    assert crack["ends_px"] == [[280.0, 100.0], [120.0, 100.0]]
    assert len(crack["outline_px"]) == len(crack["outline_mm"]) == 24


def test_points_are_rounded_to_what_a_photo_can_tell(parts):
    entry = replace(
        parts["entries"][0], outline_px=np.array([[0.123456, -0.0001], [9, 9], [0, 9]])
    )
    made = build_record(**{**parts, "entries": [entry]}).indications[0]["outline_px"]
    assert json.dumps(made) == "[[0.12, 0.0], [9.0, 9.0], [0.0, 9.0]]"


def test_without_a_surface_lengths_are_null_and_said(parts):
    bare = [replace(e, measurement=None) for e in parts["entries"]]
    made = build_record(**{**parts, "surface": None, "entries": bare, "evaluation": None})
    assert made.scale["reference"] is None
    assert made.scale["given"] is not None
    first = made.indications[0]
    assert first["length_mm"] is first["outline_mm"] is first["shape"] is None
    assert first["centre_px"] == [200.0, 100.0]
    assert any("No scale" in said for said in made.cautions)


def test_infinite_values_become_unknown_not_invalid_json(parts):
    surface = replace(parts["surface"], tilt_deg=float("nan"), focal_px=float("inf"))
    scale = build_record(**{**parts, "surface": surface}).scale
    assert scale["tilt_deg"] is None
    assert scale["focal_px"] is None


def test_what_a_file_says_of_itself_cannot_stop_a_record(parts):
    camera = Camera(make="x" * 5000, taken="2026" * 50, focal_mm=float("nan"))
    info = replace(parts["info"], camera=camera, profile="p" * 900, format="F" * 99)
    made = build_record(**{**parts, "info": info, "haze": 1.00001})
    Record.from_json(json.loads(record_text(made)))
    assert made.conditions["haze"] == 1.0
    assert made.photo["camera"]["focal_mm"] is None


def test_cautions_gather_surface_profile_and_what_is_open(record):
    said = " | ".join(record.cautions)
    for part in (
        "rectangle is small",
        "invented",
        "looked at by a person: B",
        "not sure for B",
    ):
        assert part in said


@pytest.mark.parametrize(
    ("decision", "reason", "verdict", "told"),
    [
        ("accept", "", "rejectable", True),
        ("accept", "wiped off", "rejectable", False),
        ("accept", "", "acceptable", False),
        ("accept", "", "undecided", True),
        ("reject", "", "acceptable", True),
        ("rework and retest", "", "rejectable", False),
        ("refer", "", "rejectable", False),
        ("", "", "rejectable", False),
    ],
)
def test_a_disposition_that_departs_needs_a_reason(parts, decision, reason, verdict, told):
    evaluation = replace(parts["evaluation"], verdict=verdict)
    changed = {"decision": decision, "decision_reason": reason, "evaluation": evaluation}
    made = build_record(**{**parts, **changed})
    assert any("departs" in said for said in made.cautions) is told


def test_id_and_time_are_made_where_none_is_given(parts):
    before = datetime.now(UTC).replace(microsecond=0)
    made = build_record(**{**parts, "record_id": None, "created": None})
    after = datetime.now(UTC)
    assert uuid.UUID(made.id).version == 4
    assert before <= datetime.fromisoformat(made.created) <= after


def test_the_photo_is_named_without_its_folder(record):
    assert record.photo["file"] == "invented weld.jpg"


def test_one_letter_for_two_indications_is_refused(parts):
    twins = [replace(e, id="A") for e in parts["entries"]]
    with pytest.raises(RecordError, match="letter A"):
        build_record(**{**parts, "entries": twins})


def test_completeness_names_what_is_missing(record):
    missing = {one.key for one in completeness(record)}
    assert "part_number" not in missing
    assert {"examiner", "procedure", "examination_date"} <= missing  # a blank is not an answer
    filled = {one.key: "x" for one in FIELDS if one.needed}
    assert completeness(replace(record, fields=filled)) == []


def test_fields_have_stable_keys_in_the_six_groups():
    keys = [one.key for one in FIELDS]
    assert len(set(keys)) == len(keys)
    assert all(re.fullmatch(r"[a-z][a-z0-9_]*", key) for key in keys)
    groups = list(dict.fromkeys(one.group for one in FIELDS))
    assert groups == [
        "Part",
        "Procedure",
        "Penetrant system",
        "Process",
        "Examination",
        "Disposition",
    ]
    assert all(one.label and one.label[-1].isalnum() and one.hint for one in FIELDS)
    # What the header of the report shows must be a field.
    assert {"part_number", "serial_number", "weld_number", "examination_date"} <= set(keys)


@pytest.mark.parametrize(
    ("area", "standing", "told"),
    [
        (7.5 * 0.5 + np.pi * 0.25**2, "suggested", True),  # a stroke 8 mm long, 0.5 mm wide
        (np.pi / 4 * 8 * 0.5, "suggested", False),  # an ellipse: it tapers
        (7.5 * 0.5 + np.pi * 0.25**2, "taken", False),  # a person has looked at it
    ],
)
def test_one_width_from_end_to_end_is_told_until_looked_at(parts, area, standing, told):
    first = parts["entries"][0]
    made = replace(first.measurement, area=replace(first.measurement.area, value=area))
    entry = replace(first, standing=standing, measurement=made)
    cautions = build_record(**{**parts, "entries": [entry]}).cautions
    assert any("like a pen stroke or a thread: A." in one for one in cautions) is told


def test_under_uv_a_the_caution_speaks_of_what_glows_not_of_red_ink(parts):
    """Lint glows under UV-A, red ink does not: common practice, no source."""
    first = parts["entries"][0]
    stroke = replace(first.measurement.area, value=7.5 * 0.5 + np.pi * 0.25**2)
    entry = replace(
        first, standing="suggested", measurement=replace(first.measurement, area=stroke)
    )
    lit = [lighting_remark("fluorescent").says]
    said = " ".join(build_record(**{**parts, "entries": [entry], "remarks": lit}).cautions)
    assert "glow under UV-A" in said
    assert "Red ink" not in said
