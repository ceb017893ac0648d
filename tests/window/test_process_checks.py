"""Cautions on batches, instruments, temperature and light: when, in which words, and why."""

import json
from datetime import date

import pytest
from PySide6.QtCore import Qt

from ptmark.process import CHECKED, CONDITIONS, LIMITS, cautions
from ptmark.process.reading import AMBIGUOUS, celsius, irradiance, last_date, lux
from ptmark.record import FIELDS

TODAY = date(2026, 3, 2)


def said(key, text, practice="ISO 3452-1", *, fluorescent=False, **others):
    fields = {key: text, **others}
    return cautions(fields, CONDITIONS[practice], fluorescent=fluorescent, today=TODAY).get(
        key, ""
    )


def test_fields_and_practices_are_those_there_are():
    labels = {field.key: field.label for field in FIELDS}
    assert {key: labels[key] for key in CHECKED} == CHECKED
    assert set(CONDITIONS) == set(LIMITS)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("7731-B, 2026-05-01", date(2026, 5, 1)),
        ("7731-B exp. 2026-05", date(2026, 5, 31)),
        ("lot 88, 02/2028", date(2028, 2, 29)),
        ("made 01.03.2024, use by 01.03.2026", date(2026, 3, 1)),
        ("use by 28/02/2026", date(2026, 2, 28)),
        ("use by 02/28/2026", date(2026, 2, 28)),
        ("use by 31 May 2026", date(2026, 5, 31)),
        ("EXP MAY 2026", date(2026, 5, 31)),
        ("03/04/2026", AMBIGUOUS),
        ("LM-2024-11", None),
        ("batch 20241105", None),
        ("2026-13-40", None),
        ("", None),
    ],
)
def test_dates_are_read_as_they_are_written_on_cans(text, expected):
    assert last_date(text) == expected


def test_values_are_read_with_their_units():
    assert celsius("between 4 and 6 °C") == [6.0]
    assert celsius("4-6 °C") == [4.0, 6.0]
    assert celsius("−2,5°C, thermometer 3") == [-2.5]
    assert celsius("125 °F") == pytest.approx([51.667], abs=1e-3)
    assert lux("at least 50 fc") == pytest.approx([538.2], abs=0.1)
    assert irradiance("900 uW/cm2 and 11 W/m²") == [9.0, 11.0]
    assert celsius("LED 5000 K") == []


def test_a_certificate_that_expired_and_an_old_vision_check_are_told():
    # ISO 9712: certificates run out; near vision is checked each year (from memory)
    for key in ("examiner_certificate", "reviewer_certificate"):
        assert said(key, "ISO 9712 PT 2, no 4711, 2021-03-01 to 2026-03-02") == ""
        assert "expired on" in said(key, "PT 2, 2021-03-01 to 2026-03-01")
        assert said(key, "PT 2, 2026-03-01", examination_date="2026-02-27") == ""
        assert "two ways" in said(key, "PT 2, 03/04/2027")
        assert said(key, "PT 2, no date") == ""
    assert said("vision_check", "2025-03-02, colour and near") == ""
    assert "ISO 9712" in said("vision_check", "2025-02-27")
    assert "two ways" in said("vision_check", "03/04/2025")
    assert said("vision_check", "done") == ""


@pytest.mark.truth
@pytest.mark.parametrize(
    ("practice", "good", "cold", "hot"),
    [
        # ISO 3452-1, as ISO 3452-6:2020 quotes it: 10 to 50 °C.
        ("ISO 3452-1", ("10 °C", "50 °C"), "9.9 °C", "50.1 °C"),
        # ASME V, Article 6, T-652: 5 to 52 °C (40 to 125 F).
        ("ASME V, wrought", ("10 °C", "125 °F"), "4.9 °C", "126 °F"),
    ],
)
def test_temperature_is_held_against_the_standards_window(practice, good, cold, hot):
    key = "surface_temperature"
    assert [said(key, text, practice) for text in good] == ["", ""]
    assert said(key, cold, practice).startswith("Too cold")
    assert said(key, hot, practice).startswith("Too hot")
    assert said(key, f"{good[0]} to {hot}", practice).startswith("Too hot")
    assert "unit" in said(key, "20", practice)


def test_a_cold_surface_doubles_the_least_dwell_by_asme_only():
    # ASME V, Article 6, Table T-672 (2007 edition)
    key = "surface_temperature"
    assert "doubled" in said(key, "7 °C", "ASME V, welds and castings")
    assert said(key, "7 °C").startswith("Too cold")


@pytest.mark.truth
def test_light_is_held_against_the_standards_figures():
    # ISO 3059: 500 lx, fluorescent 20 lx at most and 10 W/m² (from memory); ASME V, Article 6,
    # T-676: 100 fc (1076 lx), fluorescent 2 fc at most and 1000 µW/cm².
    key = "illuminance"
    assert said(key, "500 lx") == ""
    assert said(key, "499 lx").startswith("Too dark")
    assert said(key, "500 lx", "ASME V, wrought").startswith("Too dark")
    assert said(key, "100 fc", "ASME V, wrought") == ""
    assert said(key, "20 lx", fluorescent=True) == ""
    assert said(key, "2 fc", "ASME V, wrought", fluorescent=True) == ""
    assert said(key, "21 lx", fluorescent=True).startswith("Too bright")
    assert said("uv_irradiance", "1000 µW/cm²") == ""
    assert said("uv_irradiance", "990 µW/cm²").startswith("Too weak")


def test_expiry_is_held_against_the_day_of_the_examination():
    key = "remover_batch"
    assert said(key, "B1, 2026-03-02") == ""  # the last day still counts
    assert "2026-03-01" in said(key, "B1, 2026-03-01")
    assert said(key, "B1, 2026-03-01", examination_date="2026-02-20") == ""
    assert "year-month-day" in said(key, "B1, 03/04/2026")
    assert "Calibration" in said("light_meter", "LM-2024-11, due 2026-02-28")


@pytest.mark.gui
def test_a_caution_stands_beside_its_field_and_takes_a_reason(qtbot, window, idle):
    step, session = window.record_step, window.session
    session.go("Record")
    row = step.timers.cautions.rows["surface_temperature"]
    edit = step.fields["surface_temperature"]
    assert row.isHidden()
    edit.setFocus()
    qtbot.keyClicks(edit, "3 °C")
    qtbot.keyClick(edit, Qt.Key.Key_Return)
    assert not row.isHidden()
    assert row.text.text().startswith("Too cold: 3 °C is below 10 to 50 °C")
    step.ensureWidgetVisible(row)
    idle()
    below = (
        row.mapTo(step, row.rect().topLeft()).y() - edit.mapTo(step, edit.rect().topLeft()).y()
    )
    assert 0 < below < 80
    assert "Surface temperature" in step.timers.cautions.summary.text()
    session.change("fill in", fields={**session.state.fields, "deviations": "none"})
    row.reason.setFocus()
    qtbot.keyClicks(row.reason, "winter; agreed by the customer")
    qtbot.keyClick(row.reason, Qt.Key.Key_Return)
    told = "Surface temperature: winter, agreed by the customer"
    assert session.state.fields["deviations"] == told
    session.undo()
    assert session.state.fields["deviations"] == "none"
    session.redo()
    step.timers.practice.setCurrentText("ASME V, wrought")
    step.timers.practice.activated.emit(step.timers.practice.currentIndex())
    assert "5 to 52 °C" in row.text.text()
    qtbot.keyClicks(edit, "x")  # nothing blocks; what cannot be read says so
    edit.clear()
    qtbot.keyClicks(edit, "20 °C")
    edit.commit()
    assert row.isHidden()


@pytest.mark.gui
def test_reasons_go_into_record_and_report(opened, idle, tmp_path, pages_of):
    session = opened.session
    session.change("fill in", fields={"penetrant_batch": "P9, 2020-01-31"})
    row = opened.record_step.timers.cautions.rows["penetrant_batch"]
    row.reason.setText("trial piece only")
    row.reason.commit()
    opened.saving.save([tmp_path / "one.json", tmp_path / "one.pdf"])
    idle()
    record = json.loads((tmp_path / "one.json").read_text(encoding="utf-8"))
    assert record["fields"]["deviations"] == "Penetrant batch: trial piece only"
    words = "\n".join(pages_of(tmp_path / "one.pdf"))
    assert "trial piece only" in " ".join(words.split())
