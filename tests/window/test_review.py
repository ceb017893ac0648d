"""The reviewer in the window, by mouse and keyboard: blind, side by side, decided."""

import json
import shutil
from dataclasses import replace

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QApplication, QLabel

from ptmark.__main__ import main
from ptmark.inspection import Inspection
from ptmark.inspection.draft import draft_to_json
from ptmark.photo import open_photo
from ptmark.record import Signer, key_of, load_record, save_record, sign_record
from ptmark.review import WorkItem, standing_of
from ptmark.scale import CardReference
from ptmark.window import app, dialogs
from ptmark.window.autosave import left_behind, read_draft
from ptmark.window.draft_offer import DraftOffer
from ptmark.window.review.list import ReviewList

pytestmark = [pytest.mark.gui, pytest.mark.slow]

KEY, MOD, LEFT = Qt.Key, Qt.KeyboardModifier, Qt.MouseButton.LeftButton


@pytest.fixture(scope="session")
def inspected_record(scene_file):
    """The scene as an examiner measured it; the crack drawn 12 px too far, so En is above 1."""
    inspection = Inspection()
    inspection.open(scene_file)
    inspection.set_reference(CardReference())
    inspection.set_suggestions(inspection.look())
    crack = max(inspection.state.marked, key=lambda one: len(one.outline_px))
    outline = crack.outline_px.copy()
    outline[outline[:, 0].argmax()] += (12.0, 2.0)
    inspection.edit(crack.id, outline_px=outline)
    for one in inspection.state.marked:
        inspection.edit(one.id, standing="taken")
    inspection.change("choose the criteria", profile="iso-23277-2")
    fields = {"part_number": "DEMO-7", "examiner": "first examiner"}
    inspection.change("fill in", fields=fields)
    return inspection.to_record()


@pytest.fixture
def folder(home, tmp_path, scene_file, inspected_record):
    """A folder with a signed record, its photo beside it."""
    made = tmp_path / "records"
    made.mkdir()
    shutil.copy(scene_file, made)
    who = Signer(role="examiner", name="first examiner")
    record = save_record(made / "a.json", inspected_record)
    save_record(made / "a.json", sign_record(record, who, key_of(who.name)))
    return made


def press(qtbot, window, key, modifiers=MOD.ControlModifier):
    qtbot.keyClick(window.focusWidget() or window, key, modifiers)


def click(qtbot, button):
    assert button.isEnabled(), button.text()
    qtbot.mouseClick(button, LEFT, pos=QPoint(8, 8))


def until_phase(qtbot, window, idle, phase):
    qtbot.waitUntil(lambda: window.review.case.phase == phase)
    idle()


@pytest.fixture
def blind(qtbot, window, idle, folder):
    """The record opened and under review, nothing looked at yet."""
    window.open(folder / "a.json")
    until_phase(qtbot, window, idle, "told")
    with qtbot.waitSignal(window.looking.suggested):
        press(qtbot, window, KEY.Key_B)
    idle()
    return window


def measure(qtbot, window, idle):
    """Take what was found and say that this is all."""
    window.session.go("Indications")
    window.view.setFocus()
    for _ in range(len(window.session.state.marked)):
        qtbot.keyClick(window.view, KEY.Key_Return)
    press(qtbot, window, KEY.Key_D)
    until_phase(qtbot, window, idle, "beside")


def test_blind_nothing_of_the_first_is_in_sight_or_in_reach(blind, folder):
    case, state = blind.review.case, blind.session.state
    assert case.phase == "blind"
    assert (case.compared, case.firsts) == ((), ())
    assert blind.view.beside == []
    assert not blind.review.page.both.isVisibleTo(blind.review.page)
    assert state.profile == "iso-23277-2"
    assert state.fields == {}
    first = load_record(folder / "a.json")
    number = f"{max(one['length_mm'] for one in first.indications):.2f}"
    blind.session.go("Record")
    texts = [label.text() for label in blind.findChildren(QLabel) if label.isVisible()]
    assert texts
    assert not any(number in text for text in texts)


def test_what_the_reviewer_did_not_look_at_is_told_beside_both(qtbot, blind, idle):
    blind.session.go("Indications")
    blind.view.setFocus()
    count = len(blind.session.state.marked)
    qtbot.keyClick(blind.view, KEY.Key_Return)
    press(qtbot, blind, KEY.Key_D)
    until_phase(qtbot, blind, idle, "beside")
    assert f"Of your {count} outlines you took 1:" in blind.review.page.says.text()


def test_side_by_side_marks_what_differs_by_more_than_both_u(qtbot, blind, idle, folder):
    measure(qtbot, blind, idle)
    assert "you took" not in blind.review.page.says.text()
    table = blind.review.page.table
    assert table.rowCount() == 3
    first = {one["id"]: one for one in load_record(folder / "a.json").indications}
    (compared,) = blind.review.case.compared
    for row, pair in enumerate(compared.pairs):
        assert f"{first[pair.first]['length_mm']:.2f} ± " in table.item(row, 1).text()
        # En by ISO/IEC 17043:2010, B.3.1.3 e), written out
        two = pair.length
        en = abs(two.first - two.second) / (two.first_u**2 + two.second_u**2) ** 0.5
        over = en > 1
        assert table.item(row, 4).text() == f"{en:.2f}{' above 1' if over else ''}"
        assert table.item(row, 4).icon().isNull() is not over
    assert any("above 1" in table.item(row, 4).text() for row in range(3))
    # A row brings its place into sight.
    blind.view.zoom(8.0)
    table.setFocus()
    press(qtbot, blind, KEY.Key_End, MOD.ControlModifier)
    name = f"first {compared.pairs[-1].first}"
    (outline,) = (mark.outline for mark in blind.view.beside if mark.name == name)
    centre = blind.view.port.transform().map(outline.boundingRect().center())
    assert blind.view.rect().contains(centre.toPoint())
    styles = {mark.style for mark in (*blind.view.marks, *blind.view.beside)}
    assert styles == {"taken", "first"}


def test_signed_with_name_and_key(qtbot, blind, idle, folder):
    measure(qtbot, blind, idle)
    page = blind.review.page
    press(qtbot, blind, KEY.Key_S, MOD.AltModifier)
    assert "not named" in page.unnamed.text.text()
    assert page.who.name.hasFocus()
    qtbot.waitUntil(lambda: page.unnamed.visibleRegion().boundingRect() == page.unnamed.rect())
    qtbot.keyClicks(page.who.name, "second examiner")
    qtbot.keyClicks(page.who.qualification, "PT level 2, no. 0 (invented)")
    with qtbot.waitSignal(blind.review.case.decided):
        press(qtbot, blind, KEY.Key_S, MOD.AltModifier)
    idle()
    record = load_record(folder / "a.json")
    assert standing_of(record) == "signed"
    (signature,) = record.signatures
    assert (signature["role"], signature["name"]) == ("reviewer", "second examiner")
    assert signature["qualification"].startswith("PT level 2")
    assert record.reviews[0]["pairs"]
    assert "key" in page.said.text.text()


def test_returned_with_a_remark_at_its_place_and_seen_by_the_examiner(
    qtbot, blind, idle, folder
):
    page, view = blind.review.page, blind.view
    blind.session.go("Record")
    press(qtbot, blind, KEY.Key_M)
    at = view.port.transform().map(QPointF(380.0, 315.0)).toPoint()
    qtbot.mouseClick(view, LEFT, pos=at)
    assert page.text.hasFocus()
    qtbot.keyClicks(page.text, "trace the right end again")
    qtbot.keyClick(page.text, KEY.Key_Return)
    assert [mark.name for mark in view.beside] == ["remark 1"]
    qtbot.keyClicks(page.who.name, "second examiner")
    with qtbot.waitSignal(blind.review.case.decided):
        press(qtbot, blind, KEY.Key_R, MOD.AltModifier)
    idle()
    record = load_record(folder / "a.json")
    assert standing_of(record) == "returned"
    (remark,) = record.reviews[0]["remarks"]
    assert remark["at_px"] == pytest.approx([380.0, 315.0], abs=4)

    # The examiner: what to do, the remark at its place, and the work itself again.
    blind.open(folder / "a.json")
    until_phase(qtbot, blind, idle, "told")
    bar = blind.review.bar
    assert "was returned" in bar.says.text()
    assert "trace the right end again" in bar.told.item(0).text()
    with qtbot.waitSignal(blind.looking.opened):
        click(qtbot, bar.buttons["Go on with it as its examiner"])
    idle()
    assert [mark.name for mark in view.beside] == ["remark 1"]
    now = blind.session.inspection.to_record()
    before = {one["id"]: one["length_mm"] for one in record.indications}
    assert {one["id"]: one["length_mm"] for one in now.indications} == pytest.approx(
        before, abs=0.02
    )
    assert blind.saving.propose() == folder / "a.json"

    # Answered: a revision of the examiner's own, not a change under the reviewer's name.
    blind.session.go("Record")
    fields = {**blind.session.state.fields, "remarks": "right end traced again"}
    blind.session.change("fill in", fields=fields)
    with qtbot.waitSignal(blind.saving.asked):
        blind.saving.save([folder / "a.json"])
    idle()
    form = blind.record_step.revision
    assert "remarks" in form.what.text()
    assert blind.focusWidget() is form.why
    qtbot.keyClicks(form.why, "remark 1 answered")
    with qtbot.waitSignal(blind.saving.saved):
        qtbot.keyClick(form.why, KEY.Key_Return)
    idle()
    with qtbot.waitSignal(blind.saving.signed):
        click(qtbot, blind.record_step.sign.button)
    idle()
    answered = load_record(folder / "a.json")
    assert answered.history[:2] == [*record.history, answered.history[1]]
    assert answered.history[1]["reviews"] == record.reviews
    assert answered.change["by"] == "first examiner"
    assert answered.change["what"] == ["fields.remarks"]
    assert standing_of(answered) == "to review"
    assert "waits for a review" in bar.says.text()
    assert not bar.told.isVisible()

    # The reviewer once more.
    blind.open(folder / "a.json")
    until_phase(qtbot, blind, idle, "told")
    with qtbot.waitSignal(blind.looking.suggested):
        press(qtbot, blind, KEY.Key_B)
    idle()
    measure(qtbot, blind, idle)
    with qtbot.waitSignal(blind.review.case.decided):
        press(qtbot, blind, KEY.Key_S, MOD.AltModifier)
    idle()
    assert standing_of(load_record(folder / "a.json")) == "signed"


def test_on_a_small_screen_every_way_on_can_be_read(qtbot, window, idle, folder):
    window.resize(640, 400)  # 1280 x 800 at 200 %
    window.open(folder)
    qtbot.waitUntil(lambda: len(window.review.list.items) == 1)
    with qtbot.waitSignal(window.looking.suggested):
        press(qtbot, window, KEY.Key_Return, MOD.NoModifier)
    idle()
    bar = window.review.bar
    shown = [one for one in bar.buttons.values() if one.isVisible()]
    assert {one.accessibleName() for one in shown} >= {"Done measuring", "Next record"}
    assert all(one.width() >= one.sizeHint().width() for one in shown)
    assert bar.says.height() >= bar.says.heightForWidth(bar.says.width())


def test_a_new_photo_can_be_asked_for_before_measuring(qtbot, blind, idle, folder):
    page = blind.review.page
    assert blind.session.step != "Record"
    page.text.setText("typed before")  # the key from another page only leads here
    press(qtbot, blind, KEY.Key_N, MOD.AltModifier)
    assert (blind.session.step, blind.review.case.phase) == ("Record", "blind")
    assert page.text.text() == "typed before"
    page.text.clear()
    assert not page.outcomes["signed"].isEnabled()
    qtbot.keyClicks(page.who.name, "second examiner")
    click(qtbot, page.outcomes["new photo asked"])
    # Beside the line that it is about, which is ready to type in, and told there alone.
    assert page.missing.isVisible()
    assert "Say here what is to be done" in page.missing.text.text()
    assert page.notice.text.text() == ""
    assert not load_record(folder / "a.json").reviews
    assert blind.focusWidget() is page.text
    qtbot.keyClicks(page.text, "glare over the weld toe")
    with qtbot.waitSignal(blind.review.case.decided):
        click(qtbot, page.outcomes["new photo asked"])
    assert standing_of(load_record(folder / "a.json")) == "needs photo"


def test_a_changed_photo_is_refused_and_another_folder_asked_for(
    qtbot, window, idle, folder, scene_file, monkeypatch
):
    photo = folder / scene_file.name
    photo.write_bytes(photo.read_bytes() + b"x")
    window.open(folder / "a.json")
    notice = window.review.bar.notice
    qtbot.waitUntil(lambda: "another photo or was changed" in notice.text.text())
    assert window.review.case.phase == ""
    assert window.focusWidget().text() == "Folder of the photos …"
    monkeypatch.setattr(dialogs, "ask_for_folder", lambda *_: scene_file.parent)
    window.review._ask_photos()
    until_phase(qtbot, window, idle, "told")


def test_a_folder_is_worked_through_by_keys(
    qtbot, window, idle, home, folder, inspected_record
):
    who = Signer(role="examiner", name="first examiner")
    again = replace(inspected_record, id="again")
    save_record(folder / "b.json", sign_record(again, who, key_of(who.name)))
    save_record(folder / "c.json", replace(inspected_record, id="open"))
    (folder / "d.json").write_text('{"schema": "ptmark-record/3", ')
    window.open(folder)
    rows = window.review.list
    qtbot.waitUntil(lambda: len(rows.items) == 4)
    assert [one.standing for one in rows.items] == [
        "to review",
        "to review",
        "not signed",
        "not readable",
    ]
    assert rows.isVisible()
    # As after the first record of the day: the name is there already. Then seven keys.
    window.review.page.who.name.setText("second examiner")
    with qtbot.waitSignal(window.looking.suggested):
        press(qtbot, window, KEY.Key_Return, MOD.NoModifier)
    idle()
    case = window.review.case
    assert (case.phase, case.opened.path.name) == ("blind", "a.json")
    for _ in range(3):
        press(qtbot, window, KEY.Key_Return, MOD.NoModifier)
    press(qtbot, window, KEY.Key_D)
    until_phase(qtbot, window, idle, "beside")
    press(qtbot, window, KEY.Key_S, MOD.AltModifier)
    until_phase(qtbot, window, idle, "decided")
    assert standing_of(load_record(folder / "a.json")) == "signed"
    assert [one.standing for one in rows.items][:2] == ["signed", "to review"]
    said = window.review.bar.says.text()  # in sight, however far the page is scrolled
    assert said.startswith("a.json, revision 2: signed by second examiner")
    assert said.endswith("1 of 4 wait for a review.")
    with qtbot.waitSignal(window.looking.suggested):
        press(qtbot, window, KEY.Key_PageDown, MOD.AltModifier)
    idle()
    assert (case.phase, case.opened.path.name) == ("blind", "b.json")
    press(qtbot, window, KEY.Key_R, MOD.AltModifier)  # with nothing said: asked for, once
    assert "Say here what is to be done" in window.review.page.missing.text.text()
    assert not window.review.page.notice.text.text()
    press(qtbot, window, KEY.Key_L)
    assert rows.isVisible()
    assert not (folder / "b.json").read_bytes().count(b"reviewer")
    click(qtbot, window.review.bar.buttons["Leave"])
    window.session.go("Photo")
    press(qtbot, window, KEY.Key_S, MOD.AltModifier)  # there is no review to sign
    assert window.session.step == "Photo"
    assert window.empty.isVisible()
    assert not window.session.has_photo
    assert list((home / "drafts").glob("*.json")) == []


def test_the_examiner_signs_and_a_later_change_asks_why(
    qtbot, opened, idle, tmp_path, monkeypatch
):
    target = tmp_path / "r.json"
    monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_: target)
    opened.session.go("Record")
    page = opened.record_step
    assert not page.sign.button.isEnabled()
    qtbot.keyClicks(page.fields["examiner"], "first examiner")
    with qtbot.waitSignal(opened.saving.saved):
        click(qtbot, page.buttons["record"])
    idle()
    assert page.sign.who.name.text() == "first examiner"
    qtbot.keyClicks(page.sign.who.qualification, "PT level 2, no. 0 (invented)")
    with qtbot.waitSignal(opened.saving.signed):
        click(qtbot, page.sign.button)
    idle()
    assert load_record(target).signatures[0]["role"] == "examiner"
    assert not page.sign.button.isEnabled()
    assert page.sign.hint.text().startswith("Signed as it stands.")

    signed = target.read_bytes()
    page.decision.setCurrentIndex(page.decision.findData("refer"))
    page.decision.activated.emit(page.decision.currentIndex())
    idle()
    with qtbot.waitSignal(opened.saving.asked):
        click(qtbot, page.buttons["record"])
    idle()
    assert target.read_bytes() == signed
    assert "the inspector's decision (disposition.decision)" in page.revision.what.text()
    click(qtbot, page.revision.button)
    assert page.revision.missing.isVisible()
    qtbot.keyClicks(page.revision.why, "the customer decides")
    with qtbot.waitSignal(opened.saving.saved):
        click(qtbot, page.revision.button)
    idle()
    document = json.loads(target.read_text())
    assert (document["revision"], document["change"]["by"]) == (2, "first examiner")
    assert document["change"]["why"] == "the customer decides"
    assert "disposition.decision" in document["change"]["what"]


def test_every_photo_of_a_set_is_measured_before_both_are_shown(
    qtbot, window, idle, tmp_path, scene_file
):
    inspection = Inspection()
    inspection.open(scene_file)
    inspection.set_reference(CardReference())
    inspection.set_suggestions(inspection.look())
    other = tmp_path / "other.png"
    other.write_bytes(scene_file.read_bytes() + b"another file, the same picture")
    inspection.photos.add(open_photo(other))
    inspection.set_reference(CardReference())
    inspection.set_suggestions(inspection.look())
    shutil.copy(scene_file, tmp_path)
    who = Signer(role="examiner", name="first examiner")
    path = tmp_path / "set.json"
    save_record(path, sign_record(inspection.to_record(), who, key_of(who.name)))
    window.open(path)
    until_phase(qtbot, window, idle, "told")
    press(qtbot, window, KEY.Key_B)
    turning = window.turning
    qtbot.waitUntil(lambda: len(window.session.inspection.photos) == 2 and not turning.busy)
    qtbot.waitUntil(lambda: len(window.session.state.marked) == 3)
    idle()
    press(qtbot, window, KEY.Key_D)
    until_phase(qtbot, window, idle, "beside")
    assert [one.photo_sha256 for one in window.review.case.compared] == [
        view.photo["sha256"] for view in load_record(path).views()
    ]
    assert window.review.page.table.item(0, 0).text().startswith("photo 1: ")
    assert window.review.page.table.rowCount() == 6


def test_a_dropped_record_and_a_word_on_the_command_line_open_it(
    qtbot, window, idle, folder, monkeypatch
):
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(folder / "a.json"))])
    how = (Qt.DropAction.CopyAction, data, LEFT, MOD.NoModifier)
    enter = QDragEnterEvent(QPoint(300, 300), *how)
    QApplication.sendEvent(window, enter)
    assert enter.isAccepted()
    drop = QDropEvent(QPointF(300, 300), *how)
    QApplication.sendEvent(window, drop)
    until_phase(qtbot, window, idle, "told")
    assert "waits for a review" in window.review.bar.says.text()

    shown = []
    monkeypatch.setattr(app, "run", lambda path: shown.append(path) or 0)
    assert main([str(folder / "a.json")]) == main([f"{folder}/"]) == 0
    assert shown == [folder / "a.json", folder]


# -- broken off: it comes back as a review, blind as before, or lifted for good ----------------
def break_off(qtbot, window, idle):
    """Leave in the middle; what is left on disk."""
    click(qtbot, window.review.bar.buttons["Leave"])
    idle()
    assert not window.session.has_photo
    (draft,) = left_behind()
    return draft


def take_up(qtbot, window, idle, phase):
    qtbot.waitUntil(lambda: window.empty.draft_buttons() != [])
    assert (
        "Unfinished review of a.json: scene.png"
        in window.empty.findChild(DraftOffer).text.text()
    )
    window.empty.draft_buttons()[0].click()
    qtbot.waitUntil(lambda: window.session.has_photo)
    until_phase(qtbot, window, idle, phase)


def test_broken_off_while_blind_it_comes_back_blind(qtbot, blind, idle, folder):
    case = blind.review.case
    blind.session.go("Indications")
    blind.view.setFocus()
    qtbot.keyClick(blind.view, KEY.Key_Return)
    case.remark("look at the toe", (380.0, 315.0))
    kept = draft_to_json(blind.session.inspection)
    draft = break_off(qtbot, blind, idle)
    assert draft.record == folder / "a.json"
    # nothing of the first's results stands in the draft
    first = load_record(folder / "a.json")
    text = draft.path.read_text()
    assert not any(str(one["length_mm"]) in text for one in first.indications)
    assert "taken" in text

    take_up(qtbot, blind, idle, "blind")
    assert draft_to_json(blind.session.inspection) == kept
    assert [one.text for one in case.remarks] == ["look at the toe"]
    assert (case.compared, case.firsts) == ((), ())
    assert [mark.name for mark in blind.view.beside] == ["remark 1"]
    assert not blind.review.page.both.isVisibleTo(blind.review.page)

    measure(qtbot, blind, idle)
    blind.review.page.who.name.setText("second examiner")
    with qtbot.waitSignal(case.decided):
        press(qtbot, blind, KEY.Key_S, MOD.AltModifier)
    idle()
    assert standing_of(load_record(folder / "a.json")) == "signed"
    assert left_behind() == []


def test_once_both_were_shown_it_never_comes_back_blind(qtbot, blind, idle, folder):
    measure(qtbot, blind, idle)
    case = blind.review.case
    compared = [one.to_json() for one in case.compared]
    path = blind.session.autosave.path
    assert read_draft(path)["review"]["lifted"] is True
    # What is changed now, with the first's outlines in sight, is no blind measurement.
    for one in blind.session.state.marked:
        blind.session.inspection.remove(one.id)
    case.remark("seen", None)
    draft = break_off(qtbot, blind, idle)
    assert len(read_draft(draft.path)["marked"]) == 3

    take_up(qtbot, blind, idle, "beside")
    assert [one.to_json() for one in case.compared] == compared
    assert [one.text for one in case.remarks] == ["seen"]


def test_of_a_record_that_was_changed_meanwhile_it_is_refused(qtbot, blind, idle, folder):
    qtbot.keyClick(blind.view, KEY.Key_Return)
    draft = break_off(qtbot, blind, idle)
    record = load_record(folder / "a.json")
    fields = {**record.fields, "remarks": "wiped once more"}
    save_record(folder / "a.json", replace(record, fields=fields), by="first", why="forgotten")
    blind.review.take_draft(draft)
    notice = blind.review.bar.notice
    qtbot.waitUntil(lambda: "was changed since" in notice.text.text())
    idle()
    assert blind.review.case.phase == ""
    assert not blind.session.has_photo
    assert draft.path.exists()  # the reviewer's work is not thrown away


def test_the_reviewer_is_told_the_thickness_and_no_more(
    qtbot, window, idle, folder, inspected_record
):
    given = {"relief_mm": 1.5, "haze": None}
    told = replace(
        inspected_record, id="thick", thickness_mm=12.7, weld_length_mm=88.0, conditions=given
    )
    who = Signer(role="examiner", name="first examiner")
    save_record(folder / "t.json", sign_record(told, who, key_of(who.name)))
    window.open(folder / "t.json")
    until_phase(qtbot, window, idle, "told")
    with qtbot.waitSignal(window.looking.suggested):
        press(qtbot, window, KEY.Key_B)
    idle()
    state = window.session.state
    assert state.thickness_mm == 12.7
    assert (state.relief_mm, state.weld_length_mm) == (None, None)


def test_a_draft_with_a_damaged_review_says_so(qtbot, blind, idle, folder):
    qtbot.keyClick(blind.view, KEY.Key_Return)
    draft = break_off(qtbot, blind, idle)
    document = read_draft(draft.path)
    del document["review"]["of"]
    draft.path.write_text(json.dumps(document))
    blind.review.take_draft(draft)
    notice = blind.review.bar.notice
    qtbot.waitUntil(lambda: "does not fit" in notice.text.text())


def test_going_on_with_what_is_not_signed_says_no_more_that_it_cannot_be_reviewed(
    qtbot, window, idle, folder, inspected_record
):
    save_record(folder / "c.json", replace(inspected_record, id="open"))
    window.open(folder / "c.json")
    until_phase(qtbot, window, idle, "told")
    bar = window.review.bar
    assert "cannot be reviewed" in bar.says.text()
    with qtbot.waitSignal(window.looking.opened):
        click(qtbot, bar.buttons["Go on with it as its examiner"])
    idle()
    assert "sign it when it is done" in bar.says.text()


def test_a_very_long_part_number_leaves_room_for_the_examiner(qtbot, tmp_path):
    shown = ReviewList()
    qtbot.addWidget(shown)
    shown.resize(900, 300)
    part = "PART-" + "0123456789-" * 12
    row = WorkItem(path=tmp_path / "a.json", standing="to review", part=part, examiner="A.")
    shown.show_items([row], tmp_path)
    shown.grab()  # lays it out
    table = shown.table
    assert table.columnViewportPosition(3) + 100 < table.viewport().width()
    assert part in table.item(0, 2).toolTip()


# -- the list, and back from it ----------------------------------------------------------------
def listed(qtbot, window, idle, folder):
    """The folder's list, and its record under review from there."""
    window.open(folder)
    qtbot.waitUntil(lambda: len(window.review.list.items) == 1)
    idle()
    with qtbot.waitSignal(window.looking.suggested):
        press(qtbot, window, KEY.Key_Return, MOD.NoModifier)
    idle()


def test_beside_the_list_stands_no_page_of_the_examiners_work(qtbot, window, idle, folder):
    window.open(folder)
    qtbot.waitUntil(window.review.list.isVisible)
    assert not window.photo_step.isVisible()
    assert not window.next_button.isVisible()
    window.resize(1280, 720)
    window.resize(900, 1200)  # another arrangement of both
    assert window.arrangement.way == "under"
    assert not window.photo_step.isVisible()
    click(qtbot, window.review.bar.buttons["Leave"])
    assert window.photo_step.isVisible()
    assert window.empty.isVisible()


def test_from_the_list_one_comes_back_to_the_photo_with_all_that_was_done(
    qtbot, window, idle, folder
):
    listed(qtbot, window, idle, folder)
    window.session.go("Indications")
    window.view.setFocus()
    qtbot.keyClick(window.view, KEY.Key_Return)
    held = window.session.inspection
    taken = [one.id for one in window.session.state.marked if one.standing == "taken"]
    assert taken
    for back in (
        lambda: press(qtbot, window, KEY.Key_Return, MOD.NoModifier),
        lambda: press(qtbot, window, KEY.Key_PageDown, MOD.AltModifier),  # the only one of all
        lambda: window.strip.chosen.emit("Indications"),
        lambda: press(qtbot, window, KEY.Key_Left),
    ):
        press(qtbot, window, KEY.Key_L)
        assert window.review.list.isVisible()
        back()
        idle()
        assert window.view.isVisible()
        assert window.session.inspection is held
    assert window.review.case.phase == "blind"
    assert [one.id for one in held.state.marked if one.standing == "taken"] == taken


def test_a_record_seen_beside_is_not_measured_blind_on_opening_it_anew(
    qtbot, window, idle, folder
):
    listed(qtbot, window, idle, folder)
    measure(qtbot, window, idle)
    compared = [one.to_json() for one in window.review.case.compared]
    window.review.leave()
    idle()
    window.open(folder)
    qtbot.waitUntil(lambda: window.review.list.isVisible() and window.review.list.items != [])
    idle()
    press(qtbot, window, KEY.Key_Return, MOD.NoModifier)
    until_phase(qtbot, window, idle, "beside")
    assert [one.to_json() for one in window.review.case.compared] == compared
    assert "goes on where it was left" in window.review.bar.notice.text.text()
    assert len(list((window.session.autosave.path.parent).glob("*.json"))) == 1
