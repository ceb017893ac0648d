"""For every hand and eye: names for screen readers, targets to touch, small screens."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QComboBox, QLineEdit, QWidget


def controls(window):
    """What can have the focus and shows."""
    for one in window.findChildren(QWidget):
        if one.isVisible() and one.focusPolicy() != Qt.FocusPolicy.NoFocus:
            yield one


def spoken(widget):
    """What a screen reader is told as the name (Qt's accessibility tree)."""
    return QAccessible.queryAccessibleInterface(widget).text(QAccessible.Text.Name)


def test_every_control_of_every_step_has_a_name_and_room_to_touch(opened, qtbot):
    # WCAG 2.2, success criteria 4.1.2 (name) and 2.5.8 (24 by 24 CSS px at least).
    looked_at, nameless, small = 0, [], []
    for step in opened.pages:
        opened.session.go(step)
        qtbot.wait(1)
        for one in controls(opened):
            looked_at += 1
            what = f"{step}: {type(one).__name__} in {type(one.parent()).__name__}"
            if not spoken(one).strip():
                nameless.append(what)
            target = isinstance(one, QAbstractButton | QComboBox | QLineEdit)
            inner = isinstance(one.parent(), QComboBox)  # the list around it is the target
            if target and not inner and min(one.width(), one.height()) < 24:
                small.append(f"{what}: {spoken(one)}, {one.width()} x {one.height()}")
    assert looked_at > 150
    assert nameless == []
    assert small == []


def photo_share(window):
    seen = window.view.visibleRegion().boundingRect()
    return seen.width() * seen.height() / (window.width() * window.height())


def resized(qtbot, window, width, height):
    window.resize(width, height)
    qtbot.waitUntil(lambda: window.width() == width and window.height() == height)
    qtbot.wait(20)


def scrolls_sideways(page):
    bar = page.horizontalScrollBar()
    return bar.isVisible() and bar.maximum() > 0


WAYS = {
    (1280, 800): "beside",
    (640, 400): "turns",  # 1280 x 800 at 200 %
    (960, 540): "turns",  # 1920 x 1080 at 200 %
    (800, 1280): "under",
    (1920, 1080): "beside",
}


def test_every_step_has_half_the_window_for_the_photo_and_no_sideways_scroll(opened, qtbot):
    for size, way in WAYS.items():
        resized(qtbot, opened, *size)
        assert (opened.width(), opened.height()) == size  # nothing in it asks for more
        assert opened.arrangement.way == way
        for step, page in opened.pages.items():
            opened.session.go(step)
            opened.arrangement.bring(page)
            qtbot.wait(5)
            assert page.isVisible()
            assert not scrolls_sideways(page), (size, step)
            if way == "turns":
                QTest.keyClick(opened, Qt.Key.Key_F6)
                qtbot.wait(5)
            assert photo_share(opened) >= 0.5, (size, step)


def test_on_a_small_screen_outlines_are_taken_and_dropped_by_touch_on_the_photo(opened, qtbot):
    resized(qtbot, opened, 640, 400)
    opened.session.go("Indications")
    first, second = (m.id for m in opened.session.state.marked[:2])
    opened.session.select(first)
    buttons = {
        b.accessibleName(): b for b in opened.arrangement.bar.findChildren(QAbstractButton)
    }
    for name in ("Take", "Drop", "Page", "Next step"):
        button = buttons[name]
        assert button.visibleRegion().boundingRect() == button.rect()  # whole and in sight
        assert button.height() >= 24
    buttons["Take"].click()
    opened.session.select(second)
    buttons["Drop"].click()
    standing = {m.id: m.standing for m in opened.session.state.marked}
    assert (standing[first], standing[second]) == ("taken", "dropped")
    buttons["Next step"].click()
    assert opened.session.step == "Verdict"
    assert opened.verdict_step.isVisible()  # words, so the page comes first


def test_a_tool_brings_the_photo_and_leaves_it_to_the_page_that_called(opened, qtbot):
    resized(qtbot, opened, 640, 400)
    opened.session.go("Scale")
    assert opened.scale_step.isVisible()
    opened.scale_step.choose("line")
    assert opened.view.isVisible()
    assert not opened.scale_step.isVisible()
    opened.bench.stop()
    assert opened.scale_step.isVisible()


def test_a_window_made_large_again_shows_photo_and_page_side_by_side(opened, qtbot):
    resized(qtbot, opened, 640, 400)
    assert opened.arrangement.bar.isVisible()
    resized(qtbot, opened, 1280, 800)
    opened.session.go("Indications")
    assert opened.view.isVisible()
    assert opened.indications_step.isVisible()
    assert "Ctrl+Z" in opened.photo_row.undo_button.text()
    assert not opened.arrangement.bar.isVisible()
