"""The window on a screen that is no larger than itself."""

import pytest
from PySide6.QtCore import QSize
from PySide6.QtWidgets import QWidget

from ptmark.window.app import fit
from ptmark.window.main_window import MainWindow

pytestmark = pytest.mark.gui

OWN = QSize(1280, 800)
FRAMED = QSize(1290, 830)  # with a title bar of 25 px and edges of 5 px round it


@pytest.mark.parametrize(
    ("room", "fills"),
    [
        (QSize(1280, 720), True),  # a small laptop
        (QSize(1280, 800), True),
        (QSize(960, 540), True),  # 1920 x 1080 at 200 %
        (QSize(1920, 1080), False),
    ],
)
def test_it_fills_a_screen_that_it_does_not_fit_on_with_its_frame(qtbot, room, fills):
    made = QWidget()
    qtbot.addWidget(made)
    made.resize(OWN)
    fit(made, room)
    assert made.isMaximized() is fills
    assert fills is (FRAMED.boundedTo(room) != FRAMED)  # what does not fit, by hand


def test_before_it_has_begun_the_keyboard_is_where_work_begins(qtbot):
    made = MainWindow(rest_later=True)
    qtbot.addWidget(made)
    assert made.focusWidget() is made.empty.open_button
    made.show()
    assert made.focusWidget() is made.empty.open_button
    made.build_rest()
    assert made.focusWidget() is made.empty.open_button


def test_put_back_from_filling_it_lies_within_the_screen(qtbot):
    made, room = QWidget(), QSize(1280, 720)
    qtbot.addWidget(made)
    made.resize(OWN)
    fit(made, room)
    assert made.normalGeometry().size().boundedTo(room) == made.normalGeometry().size()
