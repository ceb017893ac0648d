"""What was saved can be dragged out, opened and printed, and is offered at the next start."""

import json

import pytest
from PySide6.QtCore import QPoint, Qt

from ptmark.places import user_folder
from ptmark.window import dialogs, saved_files
from ptmark.window.main_window import MainWindow


@pytest.fixture
def saved(opened, qtbot, tmp_path, monkeypatch):
    """The window once record, image and PDF are saved; gives their folder too."""
    path = tmp_path / "out" / "weld.json"
    path.parent.mkdir()
    monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_: path)
    opened.session.go("Record")
    with qtbot.waitSignal(opened.saving.saved):
        opened.record_step.save_all()
    return opened, path


def buttons(window, kind):
    """The buttons of a kind beside what was saved."""
    return window.record_step.saved.findChildren(kind)


def test_a_saved_file_is_dragged_out_and_printed(saved, qtbot, monkeypatch, tmp_path):
    window, path = saved
    dragged = []

    class Drag:
        def __init__(self, source):
            self.source = source

        def setMimeData(self, data):  # noqa: N802 - Qt's name
            self.data = data

        def exec(self, action):
            dragged.append((self.data.urls()[0].toLocalFile(), action))

    monkeypatch.setattr(saved_files, "QDrag", Drag)
    files = {one.path.suffix: one for one in buttons(window, saved_files.FileOut)}
    assert set(files) == {".json", ".png", ".pdf"}
    button = files[".pdf"]
    qtbot.mousePress(button, Qt.MouseButton.LeftButton, pos=QPoint(5, 5))
    qtbot.mouseMove(button, QPoint(40, 5))
    qtbot.mouseRelease(button, Qt.MouseButton.LeftButton, pos=QPoint(40, 5))
    assert dragged == [(str(path.with_suffix(".pdf")), Qt.DropAction.CopyAction)]
    assert path.with_suffix(".pdf").is_file()
    prints(window, path, qtbot, monkeypatch, tmp_path)


def prints(window, path, qtbot, monkeypatch, tmp_path):
    """The spooler gets the PDF, and what it refuses is told in place."""
    told = tmp_path / "told"
    spooler = tmp_path / "lp"
    spooler.write_text(f'#!/bin/sh\nprintf "%s\\n" "$@" >"{told}"\n')
    spooler.chmod(0o755)
    monkeypatch.setattr(saved_files.shutil, "which", lambda _: str(spooler))
    monkeypatch.setattr(dialogs, "ask_for_printer", lambda *_: ("shop", 2))
    (button,) = buttons(window, saved_files.PrintButton)
    button.click()
    qtbot.waitUntil(lambda: told.is_file() and told.read_text().count("\n") == 6)
    # lp(1): -d destination, -n copies, -- ends the options
    expected = ["-d", "shop", "-n", "2", "--", str(path.with_suffix(".pdf"))]
    assert told.read_text().split("\n")[:-1] == expected

    spooler.write_text('#!/bin/sh\necho "no such printer" >&2\nexit 1\n')
    button.click()
    qtbot.waitUntil(lambda: "no such printer" in window.record_step.saved.text.text())


def test_the_record_is_offered_at_the_next_start(saved, qtbot):
    window, path = saved
    qtbot.waitUntil((user_folder() / "recent.json").is_file)
    qtbot.waitUntil(lambda: not window.session.workers.any_running())
    assert json.loads((user_folder() / "recent.json").read_text()) == [str(path)]
    later = MainWindow()
    qtbot.addWidget(later)
    with qtbot.waitSignal(later.recent.changed) as got:
        later.recent.load()
    assert got.args[0] == [path]
    path.unlink()  # one that is gone is not offered
    with qtbot.waitSignal(later.recent.changed) as got:
        later.recent.load()
    assert got.args[0] == []
