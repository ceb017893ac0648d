"""What the next part takes over is said, marked, and goes with one button."""

import pytest

from ptmark.inspection import Inspection
from ptmark.process import STAGES

pytestmark = pytest.mark.gui


@pytest.fixture
def step(qtbot, home, window):
    """A window on the part after one with procedure, examiner and serial number."""
    session = window.session
    fields = {"procedure": "P-7", "examiner": "N. N.", "serial_number": "S1"}
    session.change("fill in", fields=fields, profile="iso-23277-2")
    session.go("Record")
    assert not window.record_step.kept.isVisible()
    window.photo_step.next_part_button.click()
    session.go("Record")
    return window.record_step


def test_what_was_kept_is_named_and_marked(step):
    said = step.kept.text.text()
    assert "Criteria iso-23277-2, Procedure, Examiner" in said
    assert step.fields["serial_number"].text() == ""
    assert step.fields["examiner"].text() == "N. N."
    assert "kept" in step.fields["examiner"].accessibleDescription()
    assert step.fields["serial_number"].accessibleDescription() == ""


def test_typing_and_the_buttons_take_the_marks_away_and_undo_brings_them_back(step):
    session = step.session
    step.fields["examiner"].setText("O. O.")
    step.fields["examiner"].commit()
    assert session.state.carried == {"procedure", "profile"}
    step.kept.hold_button.click()
    assert not step.kept.isVisible()
    assert session.state.fields == {"procedure": "P-7", "examiner": "O. O."}
    session.undo()
    assert step.kept.isVisible()
    step.kept.empty_button.click()
    assert session.state.fields == {"examiner": "O. O."}
    assert session.state.profile == ""


def test_process_times_typed_before_the_photo_are_kept_in_a_draft(qtbot, step, home):
    session = step.session
    step.timers.log.begin(next(s for s in STAGES if s.start_field == "penetration_start"))
    qtbot.waitUntil(lambda: list((home / "drafts").glob("*.json")) != [])
    from ptmark.inspection.draft import restore_draft
    from ptmark.window.autosave import read_draft

    session.autosave.flush()
    again = Inspection()
    for draft in (home / "drafts").glob("*.json"):
        restore_draft(again, read_draft(draft))
        assert again.photo is None
        if "penetration_start" in again.state.fields:
            break
    assert again.state.fields["penetration_start"] == session.state.fields["penetration_start"]
    assert again.state.carried == session.state.carried
