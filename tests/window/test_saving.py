"""Saving: one record for all files, told in place when it fails, the old file untouched."""

import json
import shutil
from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtWidgets import QLineEdit

from ptmark.dye import LeftOut
from ptmark.dye.haze import UNEVEN
from ptmark.record import save_record
from ptmark.window import dialogs
from ptmark.window.saved_names import beside

pytestmark = [pytest.mark.gui, pytest.mark.slow]


def save(qtbot, window, paths):
    with qtbot.waitSignal(window.saving.saved):
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
    with qtbot.waitSignal(opened.saving.failed):
        opened.record_step.save_all()
    assert opened.record_step.saved.isVisible()
    assert "taken.json" in opened.record_step.saved.text.text()


def test_no_name_of_three_takes_the_photos_place(
    qtbot, opened, idle, scene_file, tmp_path, monkeypatch
):
    """The record called like the photo: its picture gets another name, and this is said."""
    photo = tmp_path / "weld.png"
    shutil.copy(scene_file, photo)
    other = tmp_path / "two.png"  # a photo of other work, which nobody was asked about
    other.write_bytes(b"not ours")
    with qtbot.waitSignal(opened.looking.suggested):
        opened.open(photo)
    idle()
    before = photo.read_bytes()
    for name in ("weld.json", "two.json", "two.json"):
        monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_, n=name: tmp_path / n)
        opened.session.go("Record")
        with qtbot.waitSignal(opened.saving.saved):
            opened.record_step.save_under()
        stem = name.removesuffix(".json")
        said = opened.record_step.saved.text.text()
        assert f"Saved {stem}.json, {stem}-inspection.png, {stem}-inspection.pdf" in said
        assert f"Left as they were, not being of this record: {stem}.png." in said
    assert photo.read_bytes() == before
    assert other.read_bytes() == b"not ours"
    assert sorted(one.name for one in tmp_path.glob("*-inspection*")) == [
        "two-inspection.pdf", "two-inspection.png",
        "weld-inspection.pdf", "weld-inspection.png",
    ]  # fmt: skip


def test_a_photo_of_the_record_that_lies_there_is_left_too(opened, idle, tmp_path):
    """Saving over the record of other work must not take that work's photo with it."""
    session = opened.session
    record = tmp_path / "other.json"
    there = session.inspection.to_record(record_id="2" * 32)
    there = replace(there, photo={**there.photo, "file": "other.png"})
    save_record(record, there)
    (tmp_path / "other.png").write_bytes(b"an original")
    (tmp_path / "other.pdf").write_bytes(b"its report")
    assert [one.name for one in beside(record, [], [])] == [
        "other-inspection.png", "other-inspection.pdf",
    ]  # fmt: skip
    (tmp_path / "other.png").unlink()
    assert [one.name for one in beside(record, [], [])] == ["other.png", "other.pdf"]


def test_saved_a_second_time_no_name_is_asked_for(qtbot, opened, idle, tmp_path, monkeypatch):
    names = [tmp_path / "one.json", tmp_path / "two.json"]
    monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_: names.pop(0))
    page = opened.record_step
    opened.session.go("Record")
    assert not page.under_button.isVisible()
    decided = []
    for way, decision in ((page.save_all, "refer"), (page.save_all, "reject"),
                          (page.save_under, "accept"), (page.save_all, "refer")):  # fmt: skip
        opened.session.change("decide", decision=decision)
        idle()
        with qtbot.waitSignal(opened.saving.saved):
            way()
        assert page.under_button.isVisible()
        held = [json.loads(one.read_text()) for one in sorted(tmp_path.glob("*.json"))]
        decided.append([one["disposition"]["decision"] for one in held])
    assert decided == [["refer"], ["reject"], ["reject", "accept"], ["reject", "refer"]]
    assert names == []  # asked twice only


def test_what_was_saved_before_a_file_failed_is_said_and_saved_over(
    qtbot, opened, idle, tmp_path, monkeypatch
):
    (tmp_path / "one.pdf").mkdir()  # in the way of the third file
    monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_: tmp_path / "one.json")
    opened.session.go("Verdict")
    with qtbot.waitSignal(opened.saving.failed):
        opened.record_step.save_all()
    said = opened.record_step.saved.text.text()
    assert "one.pdf" in said
    assert "Saved all the same: one.json, one.png." in said
    assert opened.session.step == "Record"  # beside what caused it, wherever it was asked for
    assert opened.record_step.saved.isVisible()
    assert opened.saving.saved_as == tmp_path / "one.json"
    first = json.loads((tmp_path / "one.json").read_text())
    (tmp_path / "one.pdf").rmdir()
    opened.session.change("decide", decision="refer")
    idle()
    save(qtbot, opened, [tmp_path / "one.json"])
    again = json.loads((tmp_path / "one.json").read_text())
    assert (first["id"], first["created"]) == (again["id"], again["created"])


def test_saving_is_told_in_every_step_and_a_later_change_is_told_too(
    qtbot, opened, idle, tmp_path, monkeypatch
):
    session, told = opened.session, opened.record_step.saved.text
    monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_: tmp_path / "one.json")
    session.go("Verdict")
    with qtbot.waitSignal(opened.saving.saved):
        opened.record_step.save_all()
    assert "Saved one.json" in opened.foot.hint.text()
    session.go("Record")
    assert told.text().startswith("Saved one.json")
    session.change("decide", decision="refer")
    assert told.text().startswith("Changed since it was saved. Saved one.json")
    session.undo()
    assert told.text().startswith("Saved one.json")


def test_after_typing_in_a_page_the_keys_of_the_next_one_work(qtbot, opened, idle):
    session, edit = opened.session, opened.part_form.findChildren(QLineEdit)[0]
    session.go("Photo")
    edit.setFocus()
    qtbot.keyClicks(edit, "P 1")
    qtbot.keyClick(edit, Qt.Key.Key_Left, Qt.KeyboardModifier.ControlModifier)
    assert (session.step, edit.cursorPosition()) == ("Photo", 2)  # a word back, as in any line
    for _ in range(2):
        qtbot.keyClick(edit, Qt.Key.Key_Right, Qt.KeyboardModifier.ControlModifier)
    assert session.step == "Scale"  # behind the last word the key of the next step goes on
    assert session.state.fields["part_number"] == "P 1"
    session.go("Photo")
    edit.setFocus()
    session.go("Indications")
    (first,) = session.selected
    qtbot.keyClick(opened.focusWidget(), Qt.Key.Key_Return)
    assert {m.id: m.standing for m in session.state.marked}[first] == "taken"


def test_what_was_typed_last_is_in_the_file(qtbot, opened, idle, tmp_path, monkeypatch):
    """Ctrl+S right after the last key: nothing waits for the pause."""
    edit = opened.record_step.fields["part_number"]
    edit.setFocus()
    qtbot.keyClicks(edit, "LATE-1")
    monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_: tmp_path / "late.json")
    with qtbot.waitSignal(opened.saving.saved):
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
    letter = opened.session.one_selected.id
    assert opened.session.one_selected.standing == "taken"
    assert group.child(0).text(0).endswith(f": taken as {letter}")
    assert list(page.left_out_shown()) == []  # it is an outline of its own now
    opened.session.select()
    page.left_out.tree.itemClicked.emit(group.child(0), 0)  # must not count twice
    assert len(inspection.state.marked) == count + 1
    assert opened.session.selected == (letter,)
    inspection.edit(letter, standing="dropped")
    assert list(page.left_out_shown()) == [0]
    page.left_out.tree.itemClicked.emit(group.child(0), 0)
    assert (len(inspection.state.marked), inspection.marked(letter).standing) == (
        count + 1,
        "taken",
    )
    for _ in range(3):
        opened.session.undo()
    assert len(inspection.state.marked) == count
    assert list(page.left_out_shown()) == [0]
    page.left_out.tree.setCurrentItem(group.child(0))  # as the arrow keys do
    assert opened.view.selected == {"left 0"}


def test_the_whole_area_is_not_taken_back_and_the_mend_is_told(qtbot, opened):
    inspection, page = opened.session.inspection, opened.indications_step
    edge, frame = inspection.state.marked[0].edge, np.array([[0, 0], [1600, 0], [1600, 1200]])
    inspection.left_out = (LeftOut(outline_px=frame.astype(float), edge=edge, reason=UNEVEN),)
    page.refresh()
    page.left_out.switch.click()
    item, before = page.left_out.tree.topLevelItem(0).child(0), inspection.state
    assert "the whole area: mark out a smaller one, or trace by hand" in item.text(0)
    page.left_out.tree.itemActivated.emit(item, 0)
    assert inspection.state is before
    assert "trace the indication by hand" in page.notice.text.text()
    opened.view.mark_clicked.emit(opened.view._mark_at(QPointF(1500.0, 100.0)))
    assert inspection.state is before  # a click beside all indications takes nothing
    assert opened.session.selected == ()


def test_opening_alone_leaves_no_draft(opened, idle, home):
    opened.close()
    assert list((home / "drafts").glob("*.json")) == []


def test_undone_back_to_what_was_saved_leaves_no_draft(opened, idle, home, tmp_path):
    opened.saving.save([tmp_path / "one.json"])
    idle()
    opened.session.change("decide", decision="refer")
    opened.session.undo()
    assert opened.saving.saved_as == tmp_path / "one.json"
    opened.close()
    assert list((home / "drafts").glob("*.json")) == []


def test_a_missing_disposition_is_told_beside_the_signature_and_hinders_nothing(
    qtbot, opened, idle, tmp_path
):
    form = opened.record_step.sign
    assert form.undecided.isHidden()  # what is not saved cannot be signed anyway
    save(qtbot, opened, [tmp_path / "a.json"])
    assert "No disposition is given yet" in form.undecided.text.text()
    assert not form.undecided.isHidden()
    assert form.button.isEnabled()
    opened.session.change("decide", decision="refer")
    save(qtbot, opened, [tmp_path / "a.json"])
    assert form.button.isEnabled()
    assert form.undecided.isHidden()


def test_what_was_written_meanwhile_is_neither_replaced_nor_signed(
    qtbot, opened, idle, tmp_path
):
    path = tmp_path / "a.json"
    save(qtbot, opened, [path])
    save(qtbot, opened, [path])  # its own again
    theirs = path.read_text().replace('"decision": ""', '"decision": "refer"')
    path.write_text(theirs)
    for deed in (
        lambda: opened.saving.save([path, tmp_path / "a.pdf"]),
        lambda: opened.saving.sign("first examiner", "PT level 2, no. 0 (invented)"),
    ):
        with qtbot.waitSignal(opened.saving.failed) as failed:
            deed()
        assert "changed since it was opened or saved here" in str(failed.args[0])
        assert path.read_text() == theirs
    assert not (tmp_path / "a.pdf").exists()
    save(qtbot, opened, [tmp_path / "b.json"])  # under another name it goes
