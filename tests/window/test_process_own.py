"""A procedure's own limits take the standard's place, are kept, and the checks follow."""

from datetime import UTC, datetime
from threading import Thread

import pytest

from ptmark.errors import UsageError
from ptmark.files import write_whole
from ptmark.process import STAGES, TEMPERATURE, HeldAgainst, Limit
from ptmark.window.process.own import NO_LIMIT, OwnLimits, read_figure, with_pair

DWELL = STAGES[1]


@pytest.mark.parametrize(
    ("text", "name", "figure"),
    [
        ("15", "Drying", 15.0),
        ("2,5", "Drying", 2.5),
        ("", "Drying", None),
        ("None", "Drying", NO_LIMIT),
        ("-5", TEMPERATURE, -5.0),
        ("−5", TEMPERATURE, -5.0),
    ],
)
def test_figures_as_people_type_them(text, name, figure):
    assert read_figure(text, name) == figure


@pytest.mark.parametrize("text", ["-1", "ten", "nan", "1e999", "5 to 10", "5 °C"])
def test_what_is_no_figure_is_refused(text):
    with pytest.raises(UsageError, match="is no limit"):
        read_figure(text, "Drying")


def test_limits_are_kept_for_each_procedure(home):
    own = OwnLimits()
    own.put("P-7", with_pair({}, "Drying", (5.0, NO_LIMIT)))
    own.put("P-8", with_pair({}, "Drying", (None, 3.0)))
    with pytest.raises(UsageError, match="10 at least is over 5 at most"):
        with_pair(own.of("P-7"), "Penetrant dwell", (10.0, 5.0))
    own.save()
    again = OwnLimits()
    assert again.of("p-7 ") == {"Drying": {"least": 5.0, "most": None}}
    assert again.of("P-8") == {"Drying": {"most": 3.0}}
    again.put("P-7", with_pair(again.of("P-7"), "Drying", (None, None)))
    again.save()
    assert OwnLimits().of("P-7") == {}
    (home / "procedures.json").write_text('{"P-7": {"Drying": ["x", 1]}, "P": 3}')
    assert OwnLimits().of("P-7") == {}


def test_of_two_savings_at_once_what_was_put_last_is_kept(home, monkeypatch):
    own, others = OwnLimits(), []

    def overtaken(path, data):
        if not others:  # the first to write is held up until the next had its chance
            own.put("P-7", {"Drying": {"least": 15.0}})
            others.append(Thread(target=own.save))
            others[0].start()
            others[0].join(0.5)
        write_whole(path, data)

    monkeypatch.setattr("ptmark.window.process.own.write_whole", overtaken)
    own.put("P-7", {"Drying": {"least": 20.0}})
    own.save()
    others[0].join()
    assert OwnLimits().of("P-7") == {"Drying": {"least": 15.0}}


@pytest.fixture
def step(window):
    window.session.go("Record")
    step = window.record_step
    step.timers.log.clock = lambda: datetime(2026, 3, 2, 10, 30, 0, tzinfo=UTC)
    step.timers.own_form.turn_button.click()
    return step


def type_into(edit, text):
    edit.setText(text)
    edit.commit()


@pytest.mark.gui
def test_the_checks_follow_and_the_reason_goes_into_the_record(step, idle, home):
    session, timers = step.session, step.timers
    fields = {
        "procedure": "P-7",
        "penetration_start": "10:00:00",
        "penetration_end": "10:12:00",
        "penetration_time": "12 min",
        "surface_temperature": "12 °C",
    }
    session.fill_in("fill in", fields)
    row = timers.rows["Penetrant dwell"]
    assert timers.log.standing(DWELL) == "good"  # 12 min, common practice asks 10
    least, most = timers.own_form.edits["Penetrant dwell"]
    assert (least.placeholderText(), most.placeholderText()) == ("10", "none")
    type_into(least, "15")
    assert timers.log.held.limit(DWELL.name) == Limit(15.0, None)
    assert timers.log.standing(DWELL) == "early"
    assert "too early" in row.says.text()
    assert "At least 15\u00a0min" in row.says.text()
    assert "procedure (P-7): Penetrant dwell" in timers._source.text()
    assert not row.reason.isHidden()
    assert "not said why: Penetrant dwell." in step._missing.text.text()
    type_into(row.reason, "agreed for this alloy")
    assert "not said why" not in step._missing.text.text()
    assert session.state.fields["deviations"] == (
        "Penetrant dwell, 12.0 min against at least 15 min (procedure P-7): "
        "agreed for this alloy"
    )

    type_into(least, "20")  # what was said holds against the limit as it is now
    assert session.state.fields["deviations"] == (
        "Penetrant dwell, 12.0 min against at least 20 min (procedure P-7): "
        "agreed for this alloy"
    )
    type_into(least, "15")

    caution = timers.cautions.rows["surface_temperature"]
    assert caution.isHidden()
    type_into(timers.own_form.edits[TEMPERATURE][0], "15")
    assert caution.text.text().startswith(
        "Too cold: 12 °C is below 15 to 50 °C (procedure P-7)"
    )

    assert "not said why: Surface temperature." in step._missing.text.text()

    type_into(least, "much")
    assert "Penetrant dwell: “much” is no limit" in timers.own_form.notice.text.text()
    assert timers.log.held.limit(DWELL.name) == Limit(15.0, None)
    idle()
    assert OwnLimits().of("P-7")["Penetrant dwell"] == {"least": 15.0}

    session.fill_in("fill in", {"procedure": "P-9"})  # another one has limits of its own
    assert timers.log.standing(DWELL) == "good"
    assert caution.isHidden()
    assert least.text() == ""

    session.fill_in("fill in", {"procedure": "P-7"})  # what was typed for it is kept
    assert timers.log.held.limit(DWELL.name) == Limit(15.0, None)


@pytest.mark.gui
def test_practice_and_limits_are_undone_and_stand_in_the_record(step, idle, home):
    session, timers = step.session, step.timers
    fields = {"procedure": "P-7", "penetration_time": "12 min"}
    session.fill_in("fill in", fields)
    timers.practice.setCurrentIndex(timers.practice.findData("ISO 3452-1"))
    timers.practice.activated.emit(timers.practice.currentIndex())
    type_into(timers.own_form.edits["Penetrant dwell"][1], "8")
    process = {"practice": "ISO 3452-1", "limits": {"Penetrant dwell": {"most": 8.0}}}
    assert session.state.process == process
    told = HeldAgainst.read(process, fields)
    assert (told.limit(DWELL.name), told.whose(DWELL.name)) == (Limit(5, 8.0), "procedure P-7")
    session.undo()
    assert timers.log.held.limit(DWELL.name) == Limit(5, 60)  # ISO 3452-1, 8.4.2
    session.undo()
    assert timers.practice.currentData() == "common practice"
    session.redo()
    session.redo()
    assert session.state.process == process
