"""For every hand and eye: names for screen readers, targets to touch, small screens."""

import pytest
from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QAbstractButton, QComboBox, QLineEdit, QWidget

from ptmark.window.main_window import MainWindow
from ptmark.window.small_screen import NEEDED, SmallScreen, shell_for


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


@pytest.mark.parametrize(("width", "scrolls"), [(1280, False), (640, True)])
def test_a_screen_of_1280_by_800_at_200_percent_shows_the_window_by_scrolling(
    qtbot, width, scrolls
):
    window = MainWindow()
    shell = shell_for(window, QSize(width, width * 10 // 16))
    qtbot.addWidget(shell)
    shell.show()
    assert isinstance(shell, SmallScreen) is scrolls
    assert window.width() >= NEEDED.width()
    assert shell.width() <= max(width, NEEDED.width())
    if scrolls:
        last = window.photo_row.findChildren(QAbstractButton)[-1]
        shell.ensureWidgetVisible(last)
        assert not last.visibleRegion().isEmpty()
        assert last.width() >= last.sizeHint().width()  # not squeezed
        shell.close()
        assert not window.isVisible()
