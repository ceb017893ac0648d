"""Saving: one record for all files, told in place when it fails, the old file untouched."""

import json

import pytest

from ptmark.dye import LeftOut
from ptmark.window import dialogs

pytestmark = [pytest.mark.gui, pytest.mark.slow]


def save(qtbot, window, paths):
    with qtbot.waitSignal(window.saving.saved, timeout=30_000):
        window.saving.save(paths)


def test_saved_again_it_is_the_same_record(qtbot, opened, idle, tmp_path):
    first, again = tmp_path / "a.json", tmp_path / "b.json"
    save(qtbot, opened, [first])
    opened.session.change("decide", decision="refer")
    idle()
    save(qtbot, opened, [again])
    one, two = json.loads(first.read_text()), json.loads(again.read_text())
    assert one["id"] == two["id"]
    assert (one["disposition"]["decision"], two["disposition"]["decision"]) == ("", "refer")


def test_a_folder_in_the_way_is_said_in_place(qtbot, opened, idle, tmp_path, monkeypatch):
    target = tmp_path / "taken.json"
    target.mkdir()
    monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_: target)
    opened.session.go("Record")
    with qtbot.waitSignal(opened.saving.failed, timeout=30_000):
        opened.record_step.save_all()
    assert opened.record_step.saved.isVisible()
    assert "taken.json" in opened.record_step.saved.text.text()


def test_what_was_typed_last_is_in_the_file(qtbot, opened, idle, tmp_path, monkeypatch):
    """Ctrl+S right after the last key: nothing waits for the pause."""
    edit = opened.record_step.fields["part_number"]
    edit.setFocus()
    qtbot.keyClicks(edit, "LATE-1")
    monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_: tmp_path / "late.json")
    with qtbot.waitSignal(opened.saving.saved, timeout=30_000):
        opened.record_step.save_all()
    assert json.loads((tmp_path / "late.json").read_text())["fields"]["part_number"] == "LATE-1"


def test_leaving_the_dialog_saves_nothing(opened, monkeypatch, tmp_path):
    monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_: None)
    opened.record_step.save_all()
    assert not opened.session.workers.busy("save")


def test_a_left_out_blob_comes_back_with_one_click(qtbot, opened, idle):
    inspection = opened.session.inspection
    gone = inspection.state.marked[0]
    inspection.left_out = (
        LeftOut(outline_px=gone.outline_px + 300.0, edge=gone.edge, reason="too pale"),
    )
    page = opened.indications_step
    page.refresh()
    page.left_out.switch.click()
    group = page.left_out.tree.topLevelItem(0)
    assert group.text(0) == "1 ×  too pale"
    assert list(page.left_out_shown()) == [0]
    count = len(inspection.state.marked)
    page.left_out.tree.itemClicked.emit(group.child(0), 0)
    assert len(inspection.state.marked) == count + 1
    assert opened.session.one_selected.standing == "taken"
    opened.session.undo()
    assert len(inspection.state.marked) == count


def test_opening_alone_leaves_no_draft(opened, idle, home):
    opened.close()
    assert list((home / "drafts").glob("*.json")) == []
