"""The next start finds criteria, rule, unit and folder as they were left."""

import json
from pathlib import Path

import pytest

from ptmark.window.main_window import MainWindow

pytestmark = pytest.mark.gui


def start(qtbot):
    window = MainWindow()
    qtbot.addWidget(window)
    window.show()
    window.begin(None)
    qtbot.waitUntil(lambda: window.session.inspection is not None)
    qtbot.waitUntil(lambda: not window.session.workers.any_running())
    return window


def test_what_was_chosen_is_there_at_the_next_start(qtbot, home):
    first = start(qtbot)
    first.session.change("choose the criteria", profile="iso-23277-1", decision_rule="simple")
    first.session.turn_unit()
    qtbot.waitUntil(lambda: not first.session.workers.any_running())
    first.close()

    second = start(qtbot)
    state = second.session.state
    assert (state.profile, state.decision_rule) == ("iso-23277-1", "simple")
    assert second.session.unit == "in"
    assert second.session.inspection.undo_name == ""  # nobody did anything yet
    assert not second.session.touched


@pytest.mark.parametrize(
    "text", ["", "{", "[]", '{"profile": "gone-with-an-edition", "unit": 5, "folder": "/no"}']
)
def test_a_broken_memory_is_as_good_as_none(qtbot, home, text):
    home.mkdir()
    (home / "window.json").write_text(text)
    window = start(qtbot)
    assert window.session.state.profile == ""
    assert window.session.state.decision_rule == "guarded"
    assert window.session.unit == "mm"
    assert window.memory.folder == Path.home()


def test_the_folder_of_the_last_photo_is_kept(qtbot, opened, idle, home, scene_file):
    idle()
    kept = json.loads((home / "window.json").read_text())
    assert kept["folder"] == str(scene_file.parent)
    assert opened.memory.folder == scene_file.parent
