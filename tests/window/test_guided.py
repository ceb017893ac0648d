"""The guided pass leads over the sample, waits, goes on by itself, and can be left."""

import json

import pytest
from PySide6.QtCore import QPoint, QRect, QSize, Qt

from ptmark.window.first_pass import PIECES
from ptmark.window.guided import place_beside
from ptmark.window.main_window import MainWindow

pytestmark = pytest.mark.gui


@pytest.fixture
def led(qtbot, window, idle):
    """A window on the sample at the first piece."""
    assert window.guided.button.isVisible()
    with qtbot.waitSignal(window.looking.suggested):
        window.guided.button.click()
    idle()
    window.guided.go(-1)  # the way through puts its own step in front; the pass begins at 1
    return window


def text_of(window):
    return window.guided.card._text.text()


def at_piece(window, number):
    window.guided.go(number - window.guided.at)


@pytest.mark.slow
def test_each_piece_stands_beside_what_it_speaks_of(qtbot, led):
    guided = led.guided
    for number, piece in enumerate(PIECES):
        at_piece(led, number)
        qtbot.waitUntil(guided.card.isVisible)
        assert led.session.step == piece.step
        assert "‹" not in text_of(led)  # keys are told as they are now
        assert guided.card.accessibleName() == text_of(led)
        beside = piece.beside(led)
        assert beside.isVisible()
        assert led.rect().contains(guided.card.geometry())
        there = QRect(beside.mapTo(led, QPoint(0, 0)), beside.size())
        qtbot.waitUntil(lambda at=there: guided._ring.geometry().intersects(at))
        ringed = guided._ring.geometry()
        held = QRect(guided.card.geometry())
        assert not held.intersects(ringed) or beside is led.view


@pytest.mark.slow
def test_it_goes_on_by_itself_and_is_kept(qtbot, led, idle, home):
    guided, session = led.guided, led.session
    number = next(n for n, piece in enumerate(PIECES) if "Return" in piece.says)
    at_piece(led, number)
    while any(one.standing == "suggested" for one in session.state.marked):
        qtbot.keyClick(led.view, Qt.Key.Key_Return)
    assert guided.at == number + 1
    assert session.step == "Verdict"
    session.change("choose", profile="iso-23277-2")
    assert guided.at == number + 2
    guided.card.leave_button.click()
    assert not guided.card.isVisible()
    assert not guided._ring.isVisible()
    assert "Shift+F1" in led.foot.hint.text()
    idle()
    assert json.loads((home / "guided.json").read_text()) == {"at": number + 2}
    again = MainWindow()
    qtbot.addWidget(again)
    assert str(number + 3) in again.guided.button.text()
    guided.turn()
    assert guided.at == number + 2
    at_piece(led, len(PIECES) - 1)
    guided.card.next_button.click()
    assert guided.at is None


def test_nothing_is_blocked_meanwhile(qtbot, window):
    guided = window.guided
    guided.at = 1
    guided._show()
    window.session.go("Record")
    assert window.session.step == "Record"
    window.strip.buttons["Scale"].click()
    assert window.session.step == "Scale"


@pytest.mark.parametrize("text", ["", "[]", '{"at": "x"}', '{"at": 999}', '{"at": -1}'])
def test_a_broken_file_begins_afresh(qtbot, home, text):
    home.mkdir()
    (home / "guided.json").write_text(text)
    window = MainWindow()
    qtbot.addWidget(window)
    assert window.guided.button.text().startswith("Guided pass on a sample, three minutes")


def test_a_card_finds_room_beside_a_box():
    within, size = QRect(0, 0, 1280, 800), QSize(340, 150)
    for box in (
        QRect(820, 60, 430, 40),  # the panel
        QRect(0, 0, 1280, 48),  # the strip
        QRect(0, 50, 800, 640),  # the photo
        QRect(820, 700, 430, 40),
    ):
        card = QRect(place_beside(box, size, within), size)
        assert within.contains(card)
        assert not card.intersects(box)
    whole = QRect(place_beside(within, size, within), size)
    assert within.contains(whole)
