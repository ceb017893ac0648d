"""The process log: times into the record's fields, limits, beep, sign and reason."""

import time
from datetime import UTC, datetime, timedelta

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from ptmark.process import LIMITS, STAGES, judge_time
from ptmark.record import FIELDS

KEY = Qt.Key
DRYING, DWELL, EVAPORATION, DEVELOPMENT = STAGES
ALT = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier


@pytest.mark.truth
@pytest.mark.parametrize(
    ("practice", "stage", "good", "early", "late"),
    [
        # common practice, no source: dwell at least 10 min, 1 to 2 min to evaporate,
        # development 10 min.
        ("common practice", DWELL, (10, 500), (9.9,), ()),
        ("common practice", EVAPORATION, (1, 2), (0.9,), (2.1,)),
        ("common practice", DEVELOPMENT, (10,), (9.9,), ()),
        # ASME V Article 6, Table T-672 (2007 edition): 5 min for welds and castings, 10 min
        # for wrought products; T-676.1: 10 to 60 min after the developer is dry.
        ("ASME V, welds and castings", DWELL, (5, 120), (4.9,), (121,)),
        ("ASME V, wrought", DWELL, (10,), (9.9,), (121,)),
        ("ASME V, wrought", DEVELOPMENT, (10, 60), (9.9,), (60.1,)),
        # ISO 3452-1, 8.4.2: 5 to 60 min; 8.6: 10 to 30 min.
        ("ISO 3452-1", DWELL, (5, 60), (4.9,), (60.1,)),
        ("ISO 3452-1", DEVELOPMENT, (10, 30), (9.9,), (30.1,)),
    ],
)
def test_limits_are_those_of_the_practice(practice, stage, good, early, late):
    limit = LIMITS[practice][1][stage.name]
    for minutes, expected in ((good, "good"), (early, "early"), (late, "late")):
        assert all(judge_time(m, limit) == expected for m in minutes)


def test_every_field_that_a_stage_writes_is_one_of_the_record():
    keys = {field.key for field in FIELDS}
    for stage in STAGES:
        used = {stage.start_field, stage.end_field, stage.time_field} - {""}
        assert used <= keys


class Wall:
    def __init__(self):
        self.now = datetime(2026, 3, 2, 10, 0, 0, tzinfo=UTC)
        self.at_home = False

    def __call__(self):
        return self.now.astimezone() if self.at_home else self.now

    def go_on(self, minutes):
        self.now += timedelta(minutes=minutes)


@pytest.fixture
def wall(window):
    made = Wall()
    window.record_step.timers.log.clock = made
    window.session.go("Record")
    return made


@pytest.fixture
def beeps(monkeypatch):
    heard = []
    monkeypatch.setattr(QApplication, "beep", lambda: heard.append(1))
    return heard


@pytest.mark.gui
def test_a_dwell_is_timed_by_keys_and_beeps_when_it_is_long_enough(qtbot, window, wall, beeps):
    timers, fields = window.record_step.timers, lambda: window.session.state.fields
    row = timers.rows[DWELL.name]
    qtbot.keyClick(window, KEY.Key_2, ALT)
    assert fields()["penetration_start"] == "10:00:00"
    timers._beat()
    wall.go_on(9)
    timers._beat()
    assert "9:00, too early" in row.says.text()
    assert row.sign.accessibleName() == "too early"
    assert beeps == []
    wall.go_on(1)
    timers._beat()
    timers._beat()
    assert "10:00, within the limits" in row.says.text()
    assert len(beeps) == 1  # once, not every second
    wall.go_on(0.5)
    qtbot.keyClick(window, KEY.Key_2, ALT)
    assert fields()["penetration_end"] == "10:10:30"
    assert fields()["penetration_time"] == "10.5 min"
    assert window.record_step.fields["penetration_time"].text() == "10.5 min"
    assert not timers._tick.isActive()
    window.session.undo()  # it runs again
    assert timers.log.begun_at(DWELL) is not None
    assert timers._tick.isActive()


@pytest.fixture
def in_berlin(monkeypatch):
    """Directive 2000/84/EC: on at 01:00 UTC of March's last Sunday, back of October's."""
    if not hasattr(time, "tzset"):
        pytest.skip("the zone of a process cannot be set here")
    with monkeypatch.context() as zone:
        zone.setenv("TZ", "CET-1CEST,M3.5.0,M10.5.0/3")
        time.tzset()
        yield
    time.tzset()


@pytest.mark.gui
@pytest.mark.truth
@pytest.mark.parametrize(
    ("begun", "told", "minutes"),
    [
        (datetime(2026, 3, 29, 0, 55, tzinfo=UTC), "01:55:00", 7),  # 02:00 becomes 03:00
        (datetime(2026, 10, 25, 0, 50, tzinfo=UTC), "02:50:00", 15),  # 03:00 becomes 02:00
        (datetime(2026, 10, 24, 23, 50, tzinfo=UTC), "01:50:00", 75),
        (datetime(2026, 10, 25, 1, 10, tzinfo=UTC), "02:10:00", 12),
        (datetime(2026, 7, 1, 21, 55, tzinfo=UTC), "23:55:00", 9),  # over midnight
        (datetime(2026, 3, 29, 21, 58, tzinfo=UTC), "23:58:00", 20),
    ],
)
def test_a_clock_put_on_or_back_makes_no_stage_longer(
    window, wall, in_berlin, begun, told, minutes
):
    log, fields = window.record_step.timers.log, lambda: window.session.state.fields
    wall.at_home = True
    wall.now = begun
    log.begin(DWELL)
    assert fields()["penetration_start"] == told
    wall.go_on(minutes)
    assert log.minutes(DWELL) == minutes
    log.end(DWELL)
    assert fields()["penetration_time"] == f"{minutes:.1f} min"


@pytest.mark.gui
def test_a_limit_is_not_broken_before_its_unit(window):
    said = [row.says.text() for row in window.record_step.timers.rows.values()]
    assert [text for text in said if text.endswith("\u00a0min.")]
    assert not [text for text in said if " min" in text]


def test_too_late_is_said_by_sign_words_and_beep_and_the_reason_is_kept(
    qtbot, window, wall, beeps
):
    timers, session = window.record_step.timers, window.session
    session.change("fill in", fields={"deviations": "agreed by letter"})
    row = timers.rows[EVAPORATION.name]
    assert not row.reason.isVisible()
    qtbot.keyClick(window, KEY.Key_3, ALT)
    timers._beat()
    for minutes in (1, 1.5):
        wall.go_on(minutes)
        timers._beat()
    assert len(beeps) == 2  # long enough, then too long
    qtbot.keyClick(window, KEY.Key_3, ALT)
    assert session.state.fields["removal_drying"] == "2.5 min (10:00:00 to 10:02:30)"
    assert "2:30, too late" in row.says.text()
    assert not row.reason.isHidden()
    row.reason.setFocus()
    qtbot.keyClicks(row.reason, "cold shop")
    qtbot.keyClick(row.reason, KEY.Key_Return)
    assert session.state.fields["deviations"] == (
        "agreed by letter; Evaporation, 2.5 min against 1 to 2 min (common practice): cold shop"
    )
    assert row.reason.text() == "cold shop"  # the reason alone is what a person edits
    row.reason.clear()
    qtbot.keyClicks(row.reason, "draught")
    qtbot.keyClick(row.reason, KEY.Key_Return)
    assert session.state.fields["deviations"] == (
        "agreed by letter; Evaporation, 2.5 min against 1 to 2 min (common practice): draught"
    )
    session.fill_in("fill in", {"deviations": "Evaporation: as older records have it"})
    assert row.reason.text() == "as older records have it"


@pytest.mark.gui
def test_other_limits_judge_the_same_times_anew(window, wall):
    timers = window.record_step.timers
    timers.log.begin(DEVELOPMENT)
    wall.go_on(40)
    timers.log.end(DEVELOPMENT)
    assert timers.log.standing(DEVELOPMENT) == "good"
    timers.practice.setCurrentText("ISO 3452-1")
    timers.practice.activated.emit(timers.practice.currentIndex())
    assert timers.log.standing(DEVELOPMENT) == "late"
    assert "8.6" in timers._source.text()


@pytest.mark.gui
def test_a_stage_over_midnight_and_one_typed_by_hand_are_read(window, wall):
    timers, session = window.record_step.timers, window.session
    wall.now = wall.now.replace(hour=0, minute=5)
    session.change("fill in", fields={"developer_dry_at": "23:50"})
    assert timers.log.minutes(DEVELOPMENT) == pytest.approx(15)
    session.change("fill in", fields={"penetration_time": "12,5 min"})
    assert timers.log.minutes(DWELL) == 12.5
    session.change("fill in", fields={"penetration_start": "about noon"})
    assert timers.log.begun_at(DWELL) is None


@pytest.mark.gui
def test_a_time_typed_by_hand_is_shown_but_never_beeps(qtbot, window, wall, beeps):
    timers, session = window.record_step.timers, window.session
    session.change("fill in", fields={"penetration_start": "09:55"})
    timers._beat()
    assert "too early" in timers.rows[DWELL.name].says.text()
    wall.go_on(6)
    timers._beat()
    assert "11:00, within the limits" in timers.rows[DWELL.name].says.text()
    assert beeps == []
    session.change("fill in", fields={})
    qtbot.keyClick(window, KEY.Key_2, ALT)  # by the button it beeps
    timers._beat()
    wall.go_on(10)
    timers._beat()
    assert len(beeps) == 1


@pytest.mark.gui
def test_drying_is_timed_beside_the_method_that_was_typed(qtbot, window, wall, beeps):
    session = window.session
    session.change("fill in", fields={"pre_cleaning": "solvent, soaked 5 min"})
    qtbot.keyClick(window, KEY.Key_1, ALT)
    assert session.state.fields["pre_cleaning"] == "solvent, soaked 5 min; begun 10:00:00"
    wall.go_on(12)
    qtbot.keyClick(window, KEY.Key_1, ALT)
    told = session.state.fields["pre_cleaning"]
    assert told == "solvent, soaked 5 min; 12.0 min (10:00:00 to 10:12:00)"
    assert "12:00, no limit" in window.record_step.timers.rows[DRYING.name].says.text()
    qtbot.keyClick(window, KEY.Key_1, ALT)  # afresh: the method stays, the time goes
    assert session.state.fields["pre_cleaning"] == "solvent, soaked 5 min; begun 10:12:00"
