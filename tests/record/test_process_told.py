"""What a record's fields tell of a process outside the usual limits."""

from dataclasses import replace
from datetime import date

import pytest

from ptmark.__main__ import main
from ptmark.commands.options import PRACTICES, read_fields
from ptmark.errors import UsageError
from ptmark.folder import Asked, take_asked
from ptmark.inspection import Inspection
from ptmark.process import process_told
from ptmark.record import build_record, load_record, process_cautions, save_record

MADE = date(2026, 3, 2)
# ISO 3059 asks for 500 lx (second-hand), 10 min of development are common practice, no source,
# a certificate holds to its last day.
POOR = {
    "illuminance": "200 lx",
    "development_time": "2 min",
    "examiner_certificate": "PT 2, 2026-03-01",
}
GOOD = {
    "illuminance": "750 lx",
    "development_time": "12 min",
    "penetration_time": "10 min",
    "examiner_certificate": "PT 2, 2026-03-02",
}


def named(told):
    return {one.partition(": ")[0] for one in told}


def test_light_time_and_certificate_are_told_each_by_its_field():
    assert named(process_told(POOR, made=MADE)) == {
        "Illuminance",
        "Development",
        "Examiner's certificate",
    }
    assert process_told(GOOD, made=MADE) == []
    assert process_told({}, made=MADE) == []


def test_dates_are_held_against_the_examination_else_against_the_record():
    day = {"examination_date": "2026-03-01"}
    assert "Examiner's certificate" not in named(process_told(POOR | day, made=MADE))


def test_a_reason_that_was_given_is_told_with_what_it_stood_against():
    why = "none; Illuminance: lamp broke; Development, 2.0 min against 1 to 5 min (own): agreed"
    light, time = process_told(
        {k: POOR[k] for k in ("illuminance", "development_time")} | {"deviations": why},
        made=MADE,
    )
    assert light.endswith("Reason given: lamp broke")
    assert time.endswith("Reason given: 2.0 min against 1 to 5 min (own): agreed")


@pytest.mark.parametrize(
    "mark", [{"penetrant_type": "fluorescent"}, {"uv_irradiance": "12 W/m²"}]
)
def test_other_light_is_too_bright_for_fluorescent_penetrant(mark):
    # ISO 3059: 20 lx at most (second-hand)
    fields = {"illuminance": "200 lx"}
    assert "Too bright" in process_told(fields | mark, made=MADE)[0]
    assert "Too dark" in process_told(fields, made=MADE)[0]
    assert "Too bright" in process_told(fields, made=MADE, fluorescent=True)[0]


def test_a_record_tells_its_fields_as_they_are_now(parts):
    record = build_record(**parts)
    poor = replace(record, fields=POOR, created="2026-03-02T08:00:00+00:00")
    assert named(process_cautions(poor)) >= {"Illuminance", "Examiner's certificate"}
    assert process_cautions(replace(poor, fields=GOOD)) == []


def test_a_record_is_held_against_the_practice_and_the_limits_that_it_names(parts):
    fields = {"procedure": "P-7", "development_time": "40 min", "penetration_time": "12 min"}
    record = replace(build_record(**parts), fields=fields)
    assert process_cautions(record) == []  # common practice has no most
    iso = replace(record, process={"practice": "ISO 3452-1"})
    assert process_cautions(iso) == [  # ISO 3452-1, 8.6: 10 to 30 min, second-hand
        "Development: 40 min, 10 to 30 min (ISO 3452-1; the procedure governs)."
    ]
    own = {"Penetrant dwell": {"least": 15.0}, "Development": {"most": None}}
    assert process_cautions(
        replace(record, process={"practice": "ISO 3452-1", "limits": own})
    ) == ["Penetrant dwell: 12 min, 15 to 60 min (procedure P-7)."]
    later = process_cautions(replace(record, process={"practice": "a later one"}))
    assert "“a later one”, which the record names, are not known here" in later[0]


@pytest.mark.parametrize("text", ["2", "0.5 h", "10:02"])
def test_a_time_without_minutes_asks_for_the_unit(text):
    (told,) = process_told({"development_time": text}, made=MADE)
    assert told.startswith("Development time: Write it in minutes with the unit")
    with pytest.raises(UsageError, match="no time in minutes") as refused:
        read_fields([f"development_time={text}"])
    assert "--field development_time" in str(refused.value)
    assert read_fields(["development_time=12min", "penetration_time=as the sheet says"])


def test_the_command_and_the_report_tell_the_same(parts, tmp_path, capsys):
    from dataclasses import replace
    from io import BytesIO

    from openpyxl import load_workbook

    from ptmark.__main__ import main
    from ptmark.record import save_record
    from ptmark.report.sheet import sheet_bytes

    made = replace(build_record(**parts), fields=POOR, created="2026-03-02T08:00:00+00:00")
    record = save_record(tmp_path / "r.json", made)
    told = process_cautions(record)
    assert len(told) == 3
    assert main(["record", str(tmp_path / "r.json")]) == 0
    shown = capsys.readouterr().out
    assert all(f"  caution: {one}" in shown for one in told)
    book = load_workbook(BytesIO(sheet_bytes(record)), read_only=True)
    cells = {cell for sheet in book for row in sheet.values for cell in row}
    assert set(told) <= cells


def test_the_command_line_names_the_practice_that_is_held_against(parts, tmp_path, capsys):
    fields = {"development_time": "40 min", "penetration_time": "12 min"}
    path = tmp_path / "r.json"
    save_record(path, replace(build_record(**parts), fields=fields))
    told = {}
    for practice in (*PRACTICES, ""):
        asked = ["--practice", practice] if practice else []
        assert main(["record", str(path), *asked]) == 0
        told[practice] = "Development: 40 min" in capsys.readouterr().out
    # at most 30 min by ISO 3452-1, 8.6, 1 h by ASME V, T-676 (both second-hand)
    assert told == {name: name == "iso-3452-1" for name in PRACTICES} | {"": True}
    assert load_record(path).process == {"practice": "ISO 3452-1"}
    taken = take_asked(Inspection(), Asked(practice="ASME V, wrought"))
    assert taken.state.process == {"practice": "ASME V, wrought"}
