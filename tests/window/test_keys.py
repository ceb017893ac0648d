"""Keys can be changed: the new one works, the old one does not, and every text says so."""

import json
from threading import Thread

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtTest import QTest

from ptmark.errors import UsageError
from ptmark.files import write_whole
from ptmark.window.keys import HERE, KEYS, Keys
from ptmark.window.keys_page import KeysPage
from ptmark.window.main_window import MainWindow

pytestmark = pytest.mark.gui

KEY, CONTROL = Qt.Key, Qt.KeyboardModifier.ControlModifier


@pytest.fixture(autouse=True)
def usual_keys(home):
    KEYS.load()
    yield
    KEYS.reset_all()


@pytest.fixture
def page(qtbot, window):
    made = KeysPage(window.session, window)
    qtbot.addWidget(made)
    made.show()
    return made


def choose(page, usual):
    row = next(n for n, deed in enumerate(KEYS.deeds()) if deed.usual == usual)
    page.table.selectRow(row)


def press_into(page, key):
    page.edit.setKeySequence(QKeySequence(key))


def test_every_key_is_listed_once_with_what_it_does(page):
    listed = [deed.usual for deed in KEYS.deeds()]
    assert {usual for usual, _ in HERE} <= set(listed)
    assert {"Ctrl+Z", "Ctrl+S", "Ctrl+1", "Ctrl+5", "Ctrl+Left", "G", "Ctrl+Alt+1"} <= set(
        listed
    )
    assert len(listed) == len(set(listed))
    assert all(deed.label and deed.where for deed in KEYS.deeds())
    portable = [QKeySequence(usual).toString() for usual in listed]
    assert portable == listed  # so that what is kept can be found again


def test_f1_lists_the_archive_s_keys_before_it_was_opened(qtbot, window):
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    QTest.keyClick(window, KEY.Key_F1)
    page = next(p for p in window.findChildren(KeysPage) if p.isVisible())
    texts = {page.table.item(row, 2).text() for row in range(page.table.rowCount())}
    assert {"Ctrl+T", "Alt+F", "Ctrl+Z"} <= texts


def test_escape_closes_the_list_but_is_a_key_in_the_field(qtbot, page):
    page.edit.setFocus()
    QTest.keyClick(page.edit, KEY.Key_Escape)
    assert page.isVisible()
    assert page.edit.keySequence().toString() == "Esc"
    for widget in (page.table, page.usual_button, page.use_button):
        page.show()
        widget.setFocus()
        QTest.keyClick(widget, KEY.Key_Escape)
        assert not page.isVisible()
    page.show()
    page.close_button.click()
    assert not page.isVisible()


def test_a_key_of_the_whole_window(qtbot, page, window, home, idle):
    session = window.session
    session.change("one", thickness_mm=5.0)
    choose(page, "Ctrl+Z")
    press_into(page, "Ctrl+J")
    page.use_button.click()
    assert "Ctrl+J" in window.photo_row.undo_button.text()
    assert "Ctrl+J" in window.photo_row.undo_button.toolTip()
    page.hide()
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    QTest.keyClick(window, KEY.Key_Z, CONTROL)
    assert session.state.thickness_mm == 5.0
    QTest.keyClick(window, KEY.Key_J, CONTROL)
    assert session.state.thickness_mm is None
    idle()
    assert json.loads((home / "keys.json").read_text()) == {"Ctrl+Z": "Ctrl+J"}
    KEYS.load()  # as the next start does
    assert KEYS.of("Ctrl+Z") == "Ctrl+J"
    choose(page, "Ctrl+Z")
    page.usual_button.click()
    assert KEYS.of("Ctrl+Z") == "Ctrl+Z"
    assert "Ctrl+Z" in window.photo_row.undo_button.text()


def test_keys_of_photo_and_list(qtbot, opened):
    session, view = opened.session, opened.view
    KEYS.put("Return", "D")
    KEYS.put("F", "Home")
    session.go("Indications")
    session.select(session.order()[0])
    view.setFocus()
    QTest.keyClick(view, KEY.Key_Return)
    assert session.state.marked[0].standing == "suggested"
    QTest.keyClick(view, KEY.Key_D)
    assert session.state.marked[0].standing == "taken"
    QTest.keyClick(opened.indications_step.table, KEY.Key_D)
    assert session.state.marked[1].standing == "taken"
    view.zoom(4.0)
    QTest.keyClick(view, KEY.Key_F)
    assert not view.port.fitted
    QTest.keyClick(view, KEY.Key_Home)
    assert view.port.fitted
    opened.foot.show_step("Indications")
    assert "D takes" in opened.foot.hint.text()
    assert "Home fits it" in opened.foot.hint.text()


def test_a_conflict_is_refused_and_named(page):
    for usual, key in (("Ctrl+Z", "Ctrl+S"), ("G", "F"), ("F", "G"), ("Del", "Shift+Return")):
        choose(page, usual)
        press_into(page, key)
        page.use_button.click()
        assert "is the key of" in page.notice.text.text()
        assert KEYS.of(usual) == usual
    KEYS.put("Ctrl+Z", "Ctrl+J")
    KEYS.put("G", "Ctrl+Z")  # given up, so it is free
    with pytest.raises(UsageError, match="Grid"):
        KEYS.put("Ctrl+Z", "Ctrl+Z")
    page.all_button.click()
    assert (KEYS.of("G"), KEYS.of("Ctrl+Z")) == ("G", "Ctrl+Z")


@pytest.mark.parametrize("text", ["", "[]", '{"Ctrl+Z": "no key at all, or two"}', '{"G": ""}'])
def test_a_broken_file_changes_nothing(qtbot, home, text):
    home.mkdir()
    (home / "keys.json").write_text(text)
    window = MainWindow()
    qtbot.addWidget(window)
    assert all(KEYS.of(deed.usual) == deed.usual for deed in KEYS.deeds())


def test_of_two_savings_at_once_what_was_put_last_is_kept(qapp, home, monkeypatch):
    keys, others = Keys(), []

    def overtaken(path, data):
        if not others:  # the first to write is held up until the next had its chance
            keys.put("F", "End")
            others.append(Thread(target=keys.save))
            others[0].start()
            others[0].join(0.5)
        write_whole(path, data)

    monkeypatch.setattr("ptmark.window.keys.write_whole", overtaken)
    keys.put("F", "Home")
    keys.save()
    others[0].join()
    again = Keys()
    again.load()
    assert again.of("F") == "End"
