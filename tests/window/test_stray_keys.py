"""What is typed past a field does nothing on a page that nobody looks at."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

pytestmark = pytest.mark.gui

SMOOTH = Qt.Key.Key_M
PLAIN = (*(getattr(Qt.Key, f"Key_{letter}") for letter in "AEHJLMOPSTWXY"),)


def outline(window, letter):
    return window.session.inspection.marked(letter).outline_px.tolist()


def ready(qtbot, window, step):
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    window.session.select("A")
    window.session.go(step)
    window.view.setFocus()
    assert window.session.one_selected is not None


@pytest.mark.parametrize("step", ["Photo", "Scale", "Verdict", "Record"])
def test_a_letter_reshapes_no_outline_from_another_page(qtbot, opened, idle, step):
    ready(qtbot, opened, step)
    before = opened.session.state
    QTest.keyClick(opened.view, SMOOTH)
    idle()
    assert opened.session.state is before


def test_on_its_own_page_it_does(qtbot, opened, idle):
    ready(qtbot, opened, "Indications")
    before = outline(opened, "A")
    QTest.keyClick(opened.view, SMOOTH)
    idle()
    assert outline(opened, "A") != before


def test_no_letter_starts_a_tool_from_the_record(qtbot, opened, idle):
    ready(qtbot, opened, "Record")
    before = opened.session.state
    for key in PLAIN:
        QTest.keyClick(opened.view, key)
    idle()
    assert (opened.session.state, opened.bench.name) == (before, "")


def test_a_key_that_needs_ctrl_works_from_every_page(qtbot, opened, idle):
    ready(qtbot, opened, "Record")
    opened.session.change("choose the criteria", profile="iso-23277-2")
    QTest.keyClick(opened.view, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    idle()
    assert opened.session.state.profile == ""
