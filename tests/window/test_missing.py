"""The way from one missing field of a record to the next, and what is told of saving."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from ptmark.record import FIELDS

pytestmark = pytest.mark.gui

NEEDED = [field.key for field in FIELDS if field.needed]


def at_record(qtbot, window):
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    window.session.go("Record")
    return window.record_step


def held(step):
    return next((key for key, edit in step.fields.items() if edit.hasFocus()), None)


def test_f8_leads_through_the_missing_fields_and_round_again(qtbot, opened):
    step = at_record(qtbot, opened)
    led = []
    for _ in range(len(NEEDED) + 1):
        QTest.keyClick(opened.focusWidget(), Qt.Key.Key_F8)
        led.append(held(step))
    assert led == [*NEEDED, NEEDED[0]]


def test_it_is_in_sight_and_what_is_filled_in_is_passed_over(qtbot, opened, idle):
    step = at_record(qtbot, opened)
    opened.session.fill_in("fill in", {NEEDED[1]: "as typed before"})
    idle()
    QTest.keyClick(opened.focusWidget(), Qt.Key.Key_F8)
    QTest.keyClicks(step.fields[NEEDED[0]], "DEMO-1")
    QTest.keyClick(opened.focusWidget(), Qt.Key.Key_F8)
    edit = step.fields[NEEDED[2]]
    assert held(step) == NEEDED[2]
    assert edit.visibleRegion().boundingRect() == edit.rect()
    assert opened.session.state.fields[NEEDED[0]] == "DEMO-1"


def test_with_nothing_missing_there_is_no_way_offered(qtbot, opened, idle):
    step = at_record(qtbot, opened)
    assert step._missing.button.isVisible()
    opened.session.fill_in("fill in", dict.fromkeys(NEEDED, "something"))
    idle()
    assert not step._missing.button.isVisible()


def test_on_the_record_s_page_too_the_foot_tells_what_was_saved_until_it_is_another(
    qtbot, opened, idle, tmp_path
):
    step = at_record(qtbot, opened)
    with qtbot.waitSignal(step._saving.saved):
        step._saving.save([tmp_path / "one.json"])
    idle()
    assert "Saved one.json" in opened.foot.hint.text()
    opened.session.change("give the reason", decision_reason="another")
    idle()
    assert "Saved" not in opened.foot.hint.text()
