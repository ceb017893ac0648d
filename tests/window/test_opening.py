"""Opening and dropping photos; what cannot be opened is said in place; nothing blocks."""

import shutil

import cv2
import numpy as np
import pytest
from PIL import Image
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QApplication

from ptmark.dye import EdgeQuality
from ptmark.window.dialogs import PHOTOS
from ptmark.window.glyphs import glyph_pixmap
from ptmark.window.step_state import step_states

EDGE = EdgeQuality(shift_px=0.5, noise_px=0.2)

pytestmark = [pytest.mark.gui, pytest.mark.slow]


def drop(window, url):
    """Drag something over the window, which takes it, and let it go."""
    mime = QMimeData()
    mime.setUrls([url])
    buttons, keys = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    copy = Qt.DropAction.CopyAction
    enter = QDragEnterEvent(QPoint(300, 300), copy, mime, buttons, keys)
    QApplication.sendEvent(window, enter)
    assert enter.isAccepted()
    QApplication.sendEvent(window, QDropEvent(QPointF(300, 300), copy, mime, buttons, keys))


def test_a_dropped_photo_opens(qtbot, window, scene_file):
    with qtbot.waitSignal(window.looking.suggested):
        drop(window, QUrl.fromLocalFile(str(scene_file)))
    assert window.session.inspection.photo.info.path == scene_file
    assert window.view.isVisible()


def test_an_avif_is_offered_dropped_and_opened(qtbot, window, scene_file, tmp_path):
    path = tmp_path / "sent.avif"
    with Image.open(scene_file) as scene:
        scene.convert("RGB").save(path, quality=90)
    assert "*.avif" in PHOTOS
    with qtbot.waitSignal(window.looking.suggested):
        drop(window, QUrl.fromLocalFile(str(path)))
    assert window.session.inspection.photo.info.format == "AVIF"


@pytest.mark.parametrize(
    ("url", "told"),
    [
        ("https://example.org/crack.jpg", "no original"),
        ("file:///somewhere/drawing.pdf", "drawing.pdf: neither a photo nor a record"),
    ],
)
def test_what_cannot_be_used_is_said_when_it_is_dropped(window, url, told):
    drop(window, QUrl(url))
    assert told in window.photo_step.notice.text.text()
    assert window.session.inspection is None or window.session.inspection.photo is None


def test_a_folder_dropped_on_the_archive_is_seen(window, idle, tmp_path):
    idle()
    window.archive.open()
    assert window.archive.pages.isVisible()
    drop(window, QUrl.fromLocalFile(str(tmp_path)))
    idle()
    assert "no record in it" in window.review.list.says.text()
    assert window.review.list.isVisible()


def test_a_reduced_picture_stands_before_the_whole(qtbot, window, idle, scene_file):
    seen = []
    window.session.photo_shown.connect(lambda levels: seen.append(levels.whole))
    with qtbot.waitSignal(window.looking.opened):
        window.open(scene_file)
    assert seen == [False, True]


def test_a_broken_photo_is_said_in_place_and_the_window_goes_on(qtbot, window, tmp_path, idle):
    broken = tmp_path / "broken.jpg"
    broken.write_bytes(b"\xff\xd8\xff\xe0 no picture")
    window.open(broken)
    qtbot.waitUntil(window.empty.notice.isVisible)
    assert "broken.jpg" in window.empty.notice.text.text()
    assert window.photo_step.notice.isVisible()


def test_a_broken_photo_leaves_the_open_one_alone(qtbot, opened, tmp_path, idle):
    before = opened.session.state
    broken = tmp_path / "broken.png"
    broken.write_bytes(b"")
    opened.open(broken)
    qtbot.waitUntil(opened.photo_step.notice.isVisible)
    assert opened.session.state is before
    assert opened.view.levels.whole


def test_a_photo_without_colour_passes_no_part(qtbot, opened, idle, scene_file, tmp_path):
    """Where dye cannot show, nothing found is not nothing there; nor is it acceptable."""
    grey = tmp_path / "grey.png"
    cv2.imwrite(str(grey), cv2.imread(str(scene_file), cv2.IMREAD_GRAYSCALE))
    session = opened.session
    opened.view.zoom(4.0)
    assert not opened.view.port.fitted
    with qtbot.waitSignal(opened.looking.opened):
        opened.open(grey)
    idle()
    assert opened.view.port.fitted  # another part is seen whole
    session.change("choose the criteria", profile="iso-23277-2")
    idle()
    assert session.judgement.verdict == "undecided"
    assert any("no colour" in one.says for one in session.judgement.evaluation.findings)
    assert session.inspection.to_record().evaluation["verdict"] == "undecided"
    sign, line = step_states(session)["Indications"]
    assert (sign, line) == ("look", "not looked for")
    assert "They were not looked for." in opened.indications_step._says.text()
    session.inspection.add(np.array([[300.0, 300], [316, 300], [316, 316], [300, 316]]), EDGE)
    idle()
    assert session.judgement.verdict == "acceptable"  # a dot traced by hand is judged as any


def test_the_next_photo_of_the_folder_by_one_key(qtbot, window, idle, scene_file, tmp_path):
    """By name, past what has a record already and past the pictures saved with one."""
    for number in (1, 2, 3, 4):
        shutil.copy(scene_file, tmp_path / f"IMG_{number}.png")
        with (tmp_path / f"IMG_{number}.png").open("ab") as file:
            file.write(bytes([number]))
    for name in ("IMG_2-inspection.json", "IMG_1-inspection.json", "IMG_3-marked.json"):
        (tmp_path / name).write_text("{}")
    for name in ("IMG_2-inspection.png", "IMG_3-marked.png", "IMG_3-marked.pdf", "IMG_3.txt"):
        (tmp_path / name).write_bytes(b"saved")
    with qtbot.waitSignal(window.looking.suggested):
        window.open(tmp_path / "IMG_1.png")
    idle()
    (tmp_path / "IMG_2-inspection.pdf").write_bytes(b"saved")
    for name in ("IMG_3.png", "IMG_4.png"):
        with qtbot.waitSignal(window.looking.suggested):
            qtbot.keyClick(window.focusWidget(), Qt.Key.Key_O, Qt.KeyboardModifier.AltModifier)
        idle()
        assert window.session.inspection.photo.info.path == tmp_path / name
    qtbot.keyClick(window.focusWidget(), Qt.Key.Key_O, Qt.KeyboardModifier.AltModifier)
    assert "No further photo without a record" in window.foot.hint.text()
    assert window.session.inspection.photo.info.path == tmp_path / "IMG_4.png"


def test_cancelling_while_opening_brings_no_photo(qtbot, window, idle, scene_file):
    window.open(scene_file)
    window.foot.cancel_button.click()
    idle()
    assert window.session.inspection.photo is None
    assert window.empty.isVisible()


def test_every_step_says_what_is_missing_before_a_photo_is_open(window):
    lines = {name: button.line for name, button in window.strip.buttons.items()}
    assert set(lines.values()) == {"none yet"}


def test_any_step_can_be_visited_without_a_photo(qtbot, window):
    for number in range(1, 6):
        qtbot.keyClick(
            window, getattr(Qt.Key, f"Key_{number}"), Qt.KeyboardModifier.ControlModifier
        )
        assert window.strip.buttons[window.session.step].isChecked()
    assert window.session.step == "Record"
    assert not window.record_step.all_button.isEnabled()


def test_signs_differ_in_shape_not_only_in_colour(window):
    """Each sign painted in black and white is another picture."""
    seen = set()
    for name in ("acceptable", "rejectable", "undecided", "look", ""):
        image = glyph_pixmap(name, window.palette(), 20, 1.0).toImage()
        size = range(image.width())
        seen.add(
            tuple(image.pixelColor(QPoint(x, y)).alpha() > 100 for x in size for y in size)
        )
    assert len(seen) == 5


def test_every_control_has_a_name_for_a_screen_reader(window):
    from PySide6.QtWidgets import QAbstractButton, QComboBox, QLineEdit, QListWidget, QTableView

    nameless = [
        widget
        for kind in (QLineEdit, QComboBox, QListWidget, QTableView, QAbstractButton)
        for widget in window.findChildren(kind)
        if not widget.accessibleName()
        and not (isinstance(widget, QAbstractButton) and widget.text())
        and not isinstance(widget.parent(), (QComboBox, QTableView))
    ]
    assert nameless == []
