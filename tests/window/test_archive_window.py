"""The archive in the window: kept at the Record step, found again, opened, tested again."""

import json
import shutil
from datetime import date

import pytest
from PySide6.QtCore import Qt

from ptmark.archive import (
    Query,
    apply_rules,
    find,
    keep_for,
    open_archive,
    photos_of,
    verify,
)
from ptmark.archive.small import small_picture
from ptmark.window import dialogs
from ptmark.window.archive.model import HEADS
from ptmark.window.archive.pictures import glance

pytestmark = [pytest.mark.gui, pytest.mark.slow]


@pytest.fixture
def keep(qtbot, opened, idle, tmp_path, monkeypatch):
    """Fill the part in, save and keep; the record's path."""

    def work(part="P-17", serial="S-1", name="one"):
        session = opened.session
        fields = {**session.state.fields, "part_number": part, "serial_number": serial}
        session.change("fill in", fields=fields, profile="iso-23277-2")
        idle()
        path = tmp_path / f"{name}.json"
        monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_: path)
        session.go("Record")
        with qtbot.waitSignal(opened.record_step.archive.kept):
            opened.record_step.archive.keep_button.click()
        idle()
        return path

    return work


def look(window, idle, text=""):
    window.archive.open()
    window.archive.found.bar.line.setText(text)
    idle()


def test_kept_and_found_again(qtbot, opened, idle, keep):
    path = keep()
    form = opened.record_step.archive
    assert form.said.isVisible()
    assert "P-17" in form.said.text.text()
    assert "S-1" in form.said.text.text()
    assert "revision 1" in form.said.text.text()
    with open_archive() as archive:
        assert [hit.part for hit in find(archive, Query(part="P-17")).hits] == ["P-17"]
        assert verify(archive).problems == []
    look(opened, idle, "p-1")
    found = opened.archive.found
    assert found.isVisible()
    assert not opened.view.isVisible()
    assert [hit.record_id for hit in found.model.hits] == [json.loads(path.read_text())["id"]]
    assert found.count.text() == "1 record whose part number begins with p-1, newest first."
    qtbot.keyClick(
        found,
        "T",
        modifier=__import__("PySide6.QtCore").QtCore.Qt.KeyboardModifier.ControlModifier,
    )


def test_small_pictures_of_what_another_deleted_go_when_the_archive_is_opened(
    opened, idle, keep
):
    keep()
    with open_archive() as archive:
        (hit,) = find(archive, Query()).hits
        assert glance(archive, hit).picture is not None
        (photo,) = photos_of(archive, hit.record_id)
        small = small_picture(photo["sha256"])
        looked_at = small.read_bytes()
        keep_for(archive, "one", Query(), 1, "invented law")
        assert len(apply_rules(archive, date(2100, 1, 1))) == 1
    assert not small.exists()
    small.write_bytes(looked_at)  # as if another user's cache
    opened.archive.door.close()
    look(opened, idle)
    assert not small.exists()


def test_an_empty_archive_teaches(window, idle):
    look(window, idle)
    found = window.archive.found
    assert found.views.currentWidget() is found.empty
    assert "Keep in the archive" in found.empty.widget().text()
    look(window, idle, "X")
    assert found.views.currentWidget() is not found.empty
    assert found.count.text().startswith("No record")


def test_every_save_is_kept_once_ticked(qtbot, opened, idle, tmp_path):
    form = opened.record_step.archive
    form.always.setChecked(True)
    idle()
    path = tmp_path / "auto.json"
    for decision in ("refer", "reject"):  # saved twice: the second takes the first's place
        opened.session.change("decide", decision=decision)
        idle()
        with qtbot.waitSignal(form.kept):
            opened.saving.save([path])
        idle()
    with open_archive() as archive:
        (hit,) = find(archive, Query()).hits
        assert (hit.disposition, hit.part) == ("reject", "")
    assert "Without a part number" in form.said.text.text()

    from ptmark.window.main_window import MainWindow

    again = MainWindow()
    qtbot.addWidget(again)
    qtbot.waitUntil(again.record_step.archive.always.isChecked)
    again.close()


def test_anothers_state_is_not_replaced_unasked(qtbot, opened, idle, keep, tmp_path):
    path = keep()
    theirs = json.loads(path.read_text())
    form = opened.record_step.archive
    form._mine.clear()  # as after a new start
    opened.session.change("decide", decision="reject")
    idle()
    with qtbot.waitSignal(opened.saving.saved):
        opened.saving.save([path])
    idle()
    form.keep()
    idle()
    assert "another state" in form.said.text.text()
    with open_archive() as archive:
        assert find(archive, Query()).hits[0].disposition == theirs["disposition"]["decision"]
    (mine,) = form.said.findChildren(type(form.keep_button))
    with qtbot.waitSignal(form.kept):
        mine.click()
    with open_archive() as archive:
        assert find(archive, Query()).hits[0].disposition == "reject"


def test_a_record_is_looked_at_judged_again_and_tested_again(
    qtbot, opened, idle, keep, scene_file, tmp_path, pages_of
):
    path = keep()
    before = path.read_bytes()
    look(opened, idle, "P-17")
    desk = opened.archive
    desk.found.opened.emit(desk.found.model.hits[0])
    idle()
    page = desk.record
    assert page.isVisible()
    assert page.view.levels is not None
    assert "P-17, serial S-1" in page.facts.text()
    row = page.criteria.findData("iso-23277-1")
    choice = page.window().verdict_step.criteria.box  # called there as here
    assert page.criteria.itemText(row) == choice.itemText(choice.findData("iso-23277-1"))
    assert "iso-23277-1" in page.criteria.itemData(row, Qt.ItemDataRole.ToolTipRole)
    assert row > 0
    page.criteria.setCurrentIndex(row)
    page.judge()
    idle()
    assert page.changes.rowCount() == 1 + len(page.record.indications)
    assert page.changes.item(0, 0).text() == "verdict"
    with qtbot.waitSignal(opened.looking.suggested):
        desk.begin_retest(page.record, scene_file)
    idle()
    assert not desk.pages.isVisible()
    assert opened.view.isVisible()
    state = opened.session.state
    first = json.loads(before)
    assert state.retest_of["id"] == first["id"]
    assert state.fields["part_number"] == "P-17"
    opened.two_photos.turn()  # what was seen before lies over it, nobody is asked for a file
    idle()
    was = f"{first['created'][:10]}, {first['evaluation']['verdict']}"
    assert opened.two_photos.choice.currentText() == f"The test before: {was}"
    assert opened.view.curtain.levels is not None
    opened.two_photos.turn()
    again = tmp_path / "again.json"
    with qtbot.waitSignal(opened.saving.saved):
        opened.saving.save([again, again.with_suffix(".pdf")])
    said = " ".join(pages_of(again.with_suffix(".pdf")))
    assert "First test" in said
    assert said.count("Remains:") == 3  # the same photo again: nothing has gone
    second = json.loads(again.read_text())
    assert second["id"] != first["id"]
    assert second["retest_of"]["id"] == first["id"]
    assert path.read_bytes() == before
    line = opened.record_step.archive.retest
    verdict, on = first["evaluation"]["verdict"], first["created"][:10]
    assert line.says.text() == f"Retest of P-17, serial S-1, tested on {on}: {verdict}."
    opened.record_step.archive.keep()
    idle()
    look(opened, idle, "P-17")
    model = desk.found.model
    ids = [hit.record_id for hit in model.hits]
    tip = model.index(ids.index(second["id"]), len(HEADS) - 1).data(Qt.ItemDataRole.ToolTipRole)
    assert tip == f"Retest of P-17, serial S-1, tested on {on}: {verdict}"
    desk.found.opened.emit(model.hits[ids.index(second["id"])])
    idle()
    assert f"Retest of P-17, serial S-1, tested on {on}: {verdict}" in desk.record.facts.text()
    desk.leave()
    line.unlink_button.click()
    assert opened.session.state.retest_of is None
    assert not line.isVisibleTo(opened.record_step.archive)


def test_a_retest_of_a_record_that_lies_beside_its_photo(opened, idle, keep, scene_file):
    """Where no archive keeps it, the record's own file tells; where that is gone, its name."""
    session, line = opened.session, opened.record_step.archive.retest
    link = {"id": "3" * 32, "revision": 1, "sha256": "0" * 64, "file": "before.json"}
    session.change("link", retest_of=link)
    idle()
    assert line.says.text() == "Retest of a record that is not at hand (before.json)."
    session.change("link", retest_of=None)
    beside = session.state.info.path.with_name("before.json")
    shutil.copy(keep(), beside)
    try:
        session.change("link", retest_of=link)
        idle()
        assert line.says.text().startswith("Retest of P-17, serial S-1, tested on ")
        opened.two_photos.turn()
        idle()
        on = json.loads(beside.read_text())["created"][:10]
        assert opened.two_photos.choice.itemText(0).startswith(f"The test before: {on}, ")
    finally:
        beside.unlink()


def test_each_way_back_gives_the_keyboard_to_what_had_it(opened, idle, keep):
    keep()
    opened.session.go("Record")
    field = opened.record_step.fields["part_number"]
    field.setFocus()
    look(opened, idle, "P-17")
    desk = opened.archive
    desk.show_record(desk.found.model.hits[0])
    idle()
    desk.record.part_button.setFocus()
    desk.record.part_button.click()
    idle()
    assert desk.history.isAncestorOf(opened.focusWidget())
    desk.back()
    idle()
    assert opened.focusWidget() is desk.record.part_button
    desk.leave()
    assert opened.focusWidget() is field
    desk.open()
    field.setEnabled(False)  # nothing to come back to
    desk.leave()
    assert opened.focusWidget() is opened.view


def test_history_of_a_part(opened, idle, keep):
    keep()
    look(opened, idle, "P-17")
    desk = opened.archive
    desk.show_history("P-17", "")
    idle()
    assert desk.history.model.rowCount() == 1
    count = desk.history.model.hits[0].indications
    assert f"1 inspections, {count} indications" in desk.history.plot.describe()
    desk.back()
    assert desk.found.isVisible()
    desk.leave()
    assert opened.view.isVisible()
