"""Photos and records that were copied elsewhere are opened by Ctrl+V, as if dropped."""

import pytest
from PySide6.QtCore import QMimeData, Qt, QUrl
from PySide6.QtGui import QGuiApplication, QImage
from PySide6.QtTest import QTest

pytestmark = pytest.mark.gui

CONTROL = Qt.KeyboardModifier.ControlModifier


@pytest.fixture(autouse=True)
def clipboard(qapp):
    yield QGuiApplication.clipboard()
    QGuiApplication.clipboard().clear()


def paste(qtbot, window, *paths, image=False):
    data = QMimeData()
    if paths:
        data.setUrls([QUrl.fromLocalFile(str(path)) for path in paths])
    if image:
        data.setImageData(QImage(40, 30, QImage.Format.Format_RGB32))
    QGuiApplication.clipboard().setMimeData(data)
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    window.setFocus()
    QTest.keyClick(window, Qt.Key.Key_V, CONTROL)


def test_a_copied_photo_is_opened(qtbot, window, idle, scene_file):
    with qtbot.waitSignal(window.looking.suggested):
        paste(qtbot, window, scene_file)
    idle()
    assert window.session.inspection.photo.info.path == scene_file


def test_pixels_without_a_file_are_refused_with_the_mend(qtbot, window, idle):
    paste(qtbot, window, image=True)
    idle()
    said = window.empty.notice.text.text()
    assert "has no file" in said
    assert "Copy the photo's file" in said
    assert window.session.inspection.photo is None


def test_a_file_of_another_kind_is_named(qtbot, window, idle, tmp_path):
    (tmp_path / "notes.odt").touch()
    paste(qtbot, window, tmp_path / "notes.odt")
    idle()
    assert "notes.odt" in window.empty.notice.text.text()


def test_text_that_was_copied_does_nothing_here_and_goes_into_a_field(qtbot, window, idle):
    QGuiApplication.clipboard().setText("DEMO-7")
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    before = window.session.state
    QTest.keyClick(window, Qt.Key.Key_V, CONTROL)
    idle()
    assert window.session.state is before
    edit = window.part_form.fields["part_number"]
    edit.setFocus()
    QTest.keyClick(edit, Qt.Key.Key_V, CONTROL)
    assert edit.text() == "DEMO-7"
