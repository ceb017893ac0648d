"""Several photos in one window: added, turned to, put in order, joined, undone, kept."""

import json

import cv2
import pytest
from PySide6.QtCore import QMimeData, QModelIndex, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QApplication

from ptmark.record import load_record
from ptmark.window import dialogs
from ptmark.window.autosave import left_behind
from ptmark.window.draft_offer import DraftOffer
from ptmark.window.photos.strip import photo_lines

pytestmark = [pytest.mark.gui, pytest.mark.slow]

KEY = Qt.Key
CONTROL = Qt.KeyboardModifier.ControlModifier
SHIFT = Qt.KeyboardModifier.ShiftModifier


@pytest.fixture(scope="module")
def far_file(scene_file, tmp_path_factory):
    """The scene from twice as far."""
    picture = cv2.imread(str(scene_file))
    small = cv2.resize(picture, None, fx=0.5, fy=0.5, interpolation=cv2.INTER_AREA)
    path = tmp_path_factory.mktemp("far") / "far.png"
    assert cv2.imwrite(str(path), small)
    return path


@pytest.fixture
def pair(qtbot, opened, idle, far_file, monkeypatch):
    """The scene, and the far photo added by keyboard, which is at hand."""
    monkeypatch.setattr(dialogs, "ask_for_photos", lambda *_: [far_file])
    with qtbot.waitSignal(opened.looking.suggested):
        qtbot.keyClick(opened, KEY.Key_O, CONTROL | SHIFT)
    idle()
    return opened


def names(window):
    return [info.path.name for info in window.session.inspection.photos.infos]


def turn(qtbot, window, idle, key):
    with qtbot.waitSignal(window.turning.turned):
        qtbot.keyClick(window, key, CONTROL)
    idle()


def crack(inspection):
    """The letter of the longest outline at hand."""
    size = {m.id: inspection.measurement(m).length.value for m in inspection.counted}
    return max(size, key=size.get)


def test_a_single_photo_shows_no_strip(opened):
    assert not opened.photos_strip.isVisible()


def test_an_added_photo_is_looked_at_and_each_tells_what_it_lacks(qtbot, pair, idle):
    inspection = pair.session.inspection
    assert names(pair) == ["scene.png", "far.png"]
    assert inspection.photos.number == 1
    assert pair.session.levels.width == 800
    assert pair.photos_strip.isVisible()
    assert inspection.surface.reference == "card"
    here, there = inspection.state.photos[1].marked, inspection.state.photos[0].marked
    assert not {m.id for m in here} & {m.id for m in there}
    assert photo_lines(pair.session) == [
        "3 to look at, 0 taken",
        f"{len(here)} to look at, 0 taken",
    ]
    pair.session.change("no scale", reference=None)
    assert photo_lines(pair.session)[1] == "scale missing"
    assert "scale missing" in pair.photos_strip.list.item(1).text()
    assert not pair.photos_strip.list.item(0).icon().isNull()


def test_turning_by_key_and_click_brings_photo_marks_and_levels(qtbot, pair, idle):
    far = [m.id for m in pair.session.inspection.state.marked]
    turn(qtbot, pair, idle, KEY.Key_PageUp)
    assert pair.session.inspection.photo.info.path.name == "scene.png"
    assert pair.session.levels.width == 1600
    assert [m.name for m in pair.view.marks] == ["A", "B", "C"]
    assert pair.session.inspection.surface.mm_per_px() == pytest.approx(1 / 8, rel=2e-3)
    rect = pair.photos_strip.list.visualItemRect(pair.photos_strip.list.item(1))
    with qtbot.waitSignal(pair.turning.turned):
        qtbot.mouseClick(
            pair.photos_strip.list.viewport(), Qt.MouseButton.LeftButton, pos=rect.center()
        )
    idle()
    assert [m.id for m in pair.session.inspection.state.marked] == far
    assert pair.photos_strip.list.currentRow() == 1


def test_undo_by_key_turns_back_to_where_the_change_was_made(qtbot, pair, idle):
    inspection = pair.session.inspection
    name = inspection.state.marked[0].id
    pair.session.select(name)
    pair.hands.drop()
    turn(qtbot, pair, idle, KEY.Key_PageUp)
    turn(qtbot, pair, idle, KEY.Key_Z)  # to the far photo again
    assert inspection.photo.info.path.name == "far.png"
    assert inspection.state.marked[0].standing == "suggested"
    for _ in range(4):  # suggestions, scale, the photo itself
        qtbot.keyClick(pair, KEY.Key_Z, CONTROL)
        idle()
    assert "far.png" not in names(pair)
    assert not pair.photos_strip.isVisible()


def test_order_by_dragging_and_taking_out(qtbot, pair, idle):
    model = pair.photos_strip.list.model()
    assert model.moveRow(QModelIndex(), 1, QModelIndex(), 0)  # what a drag ends in
    assert names(pair) == ["far.png", "scene.png"]
    assert pair.photos_strip.list.item(0).text().startswith("1  far.png")
    turn(qtbot, pair, idle, KEY.Key_Backspace)
    assert names(pair) == ["scene.png"]
    assert pair.session.inspection.photo.info.path.name == "scene.png"
    turn(qtbot, pair, idle, KEY.Key_Z)
    assert names(pair) == ["far.png", "scene.png"]
    assert pair.session.inspection.photo.info.path.name == "far.png"


def test_one_indication_in_both_photos_is_joined_and_its_size_chosen(qtbot, pair, idle):
    inspection = pair.session.inspection
    far = crack(inspection)
    turn(qtbot, pair, idle, KEY.Key_PageUp)
    near = crack(inspection)
    pair.session.go("Indications")
    pair.session.select(near)
    same = pair.indications_step.same_as
    assert same.isVisibleTo(pair.indications_step)
    row = same.letter.findData(far)
    assert row > 0
    same.letter.setCurrentIndex(row)
    same.letter.activated.emit(row)
    idle()
    assert pair.session.selected == (far,)
    found = pair.session.judgement.seen_again[far]
    u = {number: made.length.expanded for number, made in found.shown}
    assert found.of_record == min(u, key=u.get)  # the surer one
    other = 1 - found.of_record
    assert f"Photo {other + 1} agrees" in same._agrees.text()
    row = same.counts.findData(other)
    same.counts.setCurrentIndex(row)
    same.counts.activated.emit(row)
    idle()
    assert pair.session.judgement.seen_again[far].of_record == other
    pair.session.undo()
    same.letter.setCurrentIndex(0)
    same.letter.activated.emit(0)
    idle()
    assert pair.session.judgement.seen_again == {}


def test_verdict_and_files_are_those_of_the_set(qtbot, pair, idle, tmp_path, monkeypatch):
    pair.session.change("choose", profile="iso-23277-2")
    idle()
    assert pair.session.judgement.by_photo == ("rejectable", "rejectable")
    assert pair.session.judgement.verdict == "rejectable"
    assert "All photos together: rejectable" in pair.verdict_step._whole.text()
    target = tmp_path / "set.json"
    monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_: target)
    with qtbot.waitSignal(pair.saving.saved):
        pair.record_step.save_all()
    idle()
    record = load_record(target)
    assert [view.photo["file"] for view in record.views()] == ["scene.png", "far.png"]
    assert {p.name for p in tmp_path.glob("set*")} == {
        "set.json",
        "set.png",
        "set-2.png",
        "set.pdf",
    }
    turn(qtbot, pair, idle, KEY.Key_PageUp)
    with qtbot.waitSignal(pair.saving.saved):
        pair.record_step.save_all()
    assert load_record(target).id == record.id  # one inspection, whichever photo is at hand


def test_several_dropped_photos_are_one_inspection(qtbot, window, idle, scene_file, far_file):
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(p)) for p in (scene_file, far_file)])
    buttons, keys = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    copy = Qt.DropAction.CopyAction
    enter = QDragEnterEvent(QPoint(300, 300), copy, mime, buttons, keys)
    drop = QDropEvent(QPointF(300, 300), copy, mime, buttons, keys)
    QApplication.sendEvent(window, enter)
    assert enter.isAccepted()
    QApplication.sendEvent(window, drop)
    qtbot.waitUntil(lambda: len(names(window)) == 2 and not window.turning.busy)
    idle()
    assert names(window) == ["far.png", "scene.png"]  # by name
    assert all(one.marked for one in window.session.inspection.state.photos)


def test_what_cannot_be_added_is_told_and_the_rest_goes_on(
    qtbot, opened, idle, far_file, tmp_path
):
    broken = tmp_path / "broken.jpg"
    broken.write_bytes(b"no picture")
    told = []
    opened.session.trouble.connect(lambda place, exc: told.append((place, exc)))
    same = opened.session.inspection.photo.info.path
    opened.turning.add([broken, same, far_file])
    qtbot.waitUntil(lambda: len(names(opened)) == 2 and not opened.turning.busy)
    idle()
    said = " ".join(str(exc) for place, exc in told if place == "photo" and exc is not None)
    assert "broken.jpg" in said
    assert "in the set already" in said
    assert names(opened) == ["scene.png", "far.png"]


def test_a_photo_that_has_gone_is_told_and_the_one_at_hand_stays(
    qtbot, opened, idle, far_file, tmp_path
):
    copy = tmp_path / "copy.png"
    copy.write_bytes(far_file.read_bytes())
    opened.turning.add([copy])
    qtbot.waitUntil(lambda: len(names(opened)) == 2 and not opened.turning.busy)
    idle()
    with qtbot.waitSignal(opened.turning.turned):
        opened.turning.turn_to(0)
    idle()
    copy.unlink()
    told = []
    opened.session.trouble.connect(lambda place, exc: told.append(exc))
    opened.turning.turn_to(1)
    idle()
    assert any("copy.png" in str(exc) for exc in told)
    assert opened.session.inspection.photo.info.path.name == "scene.png"
    assert opened.session.levels.width == 1600
    assert len(opened.view.marks) == 3


def test_the_draft_brings_the_set_back(qtbot, pair, idle, home):
    from ptmark.window.main_window import MainWindow

    pair.session.autosave.flush()
    kept = json.loads(pair.session.autosave.path.read_text("utf-8"))
    assert [one["photo"]["path"].endswith("scene.png") for one in kept["before"]] == [True]
    pair.session.autosave._release()
    (draft,) = left_behind()
    other = MainWindow()
    qtbot.addWidget(other)
    other.show()
    other.begin(None)
    qtbot.waitUntil(lambda: other.empty.findChildren(DraftOffer) != [])
    (offer,) = other.empty.findChildren(DraftOffer)
    assert "far.png and 1 more photo, 6 indications" in offer.text.text()  # 3 in each
    with qtbot.waitSignal(other.looking.opened):
        other.looking.go_on(draft.path)
    qtbot.waitUntil(lambda: not other.session.workers.any_running())
    assert names(other) == ["scene.png", "far.png"]
    assert other.photos_strip.isVisible()
    with qtbot.waitSignal(other.turning.turned):
        other.turning.step(-1)
    qtbot.waitUntil(lambda: not other.session.workers.any_running())
    assert [m.name for m in other.view.marks] == ["A", "B", "C"]


def test_only_the_photo_at_hand_is_held_whole(qtbot, window, idle, scene_file, tmp_path):
    import gc

    from ptmark.photo import Photo

    paths = [tmp_path / f"own {number}.png" for number in range(3)]
    picture = cv2.imread(str(scene_file))
    for number, path in enumerate(paths):
        picture[0, number] = 0  # each has its own content
        assert cv2.imwrite(str(path), picture)
    window.turning.add(paths)
    qtbot.waitUntil(lambda: len(names(window)) == 3 and not window.turning.busy)
    idle()
    gc.collect()
    held = [one.info.path for one in gc.get_objects() if isinstance(one, Photo)]
    assert [path.name for path in held if path.parent == tmp_path] == ["own 2.png"]
    for kept in window.turning.previews.values():
        assert sum(level.pixels.nbytes for level in kept.levels) <= 1024 * 1024 * 3
    with qtbot.waitSignal(window.looking.suggested):
        window.open(scene_file)  # a day has many inspections: nothing stays of those before
    idle()
    assert set(window.turning.previews) == {window.session.inspection.photo.info.sha256}


def test_growth_over_the_photos_is_plotted_or_says_what_is_missing(
    qtbot, pair, idle, monkeypatch
):
    inspection = pair.session.inspection
    far = crack(inspection)
    turn(qtbot, pair, idle, KEY.Key_PageUp)
    inspection.photos.same(crack(inspection), far)
    growth = pair.photos_strip.buttons[2]
    qtbot.mouseClick(growth, Qt.MouseButton.LeftButton)
    idle()
    page = pair.photos_strip.growth_page
    assert page.isVisible()
    assert "does not say when the developer was dry" in page.says.text()
    assert "Press “Developer dry” in the process log" in page.says.text()
    assert page.plot.picture is None
    qtbot.keyClick(page, KEY.Key_Escape)
    assert not page.isVisible()
    # these files tell no time of day: give each one, as a camera would
    times = iter(["2026-01-15T10:05:00", "2026-01-15T10:25:00"])
    made = inspection.to_record()
    for view in (made.photo, made.more_photos[0]["photo"]):
        view["camera"] = {**(view["camera"] or {}), "taken": next(times)}
    made.fields["developer_dry_at"] = "10:00"
    monkeypatch.setattr(type(inspection), "to_record", lambda _: made)
    qtbot.mouseClick(growth, Qt.MouseButton.LeftButton)
    idle()
    assert page.plot.isVisible()
    assert page.plot.picture.width() == 1600
    assert page.screen().availableGeometry().contains(page.frameGeometry())
    # 25 min, within the 10 to 60 min of ASME V, T-676.1
    assert "Press" not in page.says.text()
    assert page.says.text().startswith(
        f"To evaluate: {made.more_photos[0]['photo']['file']}, taken at 25 min"
    )
    page.close()
