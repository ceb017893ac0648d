"""The whole way with a rule in the photo by keyboard alone: no mouse event is ever made."""

import numpy as np
import pytest
from PySide6.QtCore import QEvent, QObject, QPointF, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from ptmark.record import load_record
from ptmark.window import dialogs

pytestmark = [pytest.mark.gui, pytest.mark.slow]

KEY, CONTROL = Qt.Key, Qt.KeyboardModifier.ControlModifier
SHIFT = Qt.KeyboardModifier.ShiftModifier
_MOUSE = {QEvent.Type.MouseButtonPress, QEvent.Type.MouseButtonDblClick, QEvent.Type.Wheel}


class NoMouse(QObject):
    def __init__(self):
        super().__init__()
        self.seen = 0

    def eventFilter(self, _watched, event):  # noqa: N802
        self.seen += event.type() in _MOUSE
        return False


class Hands:
    """Keys go to what has the focus; only Tab and arrow keys bring the focus anywhere."""

    def __init__(self, window):
        self.window = window

    def key(self, key, modifiers=Qt.KeyboardModifier.NoModifier):
        QTest.keyClick(self.window.focusWidget() or self.window, key, modifiers)

    def tab_to(self, widget, most=150):
        for _ in range(most):
            if self.window.focusWidget() is widget:
                return
            self.key(KEY.Key_Tab)
        raise AssertionError(f"Tab does not lead to {widget.accessibleName()!r}")

    def point_at(self, x, y):
        """Steer the pointer to a place in the photo: coarse with Shift, then by single px."""
        view = self.window.view
        for _ in range(1500):
            here = view.pointer if view.pointer else view.rect().center().toPointF()
            there = view.port.to_widget(QPointF(x, y))
            dx, dy = there.x() - here.x(), there.y() - here.y()
            if max(abs(dx), abs(dy)) <= 0.5:
                return
            far = abs(dx) if abs(dx) >= abs(dy) else abs(dy)
            if abs(dx) >= abs(dy):
                key = KEY.Key_Right if dx > 0 else KEY.Key_Left
            else:
                key = KEY.Key_Down if dy > 0 else KEY.Key_Up
            self.key(key, SHIFT if far > 10 else Qt.KeyboardModifier.NoModifier)
        raise AssertionError("the pointer cannot be steered there")

    def type(self, text):
        QTest.keyClicks(self.window.focusWidget(), text)


def test_from_photo_to_report(qtbot, window, idle, scene_without_card, tmp_path, monkeypatch):
    watch = NoMouse()
    QApplication.instance().installEventFilter(watch)
    hands, session = Hands(window), window.session
    monkeypatch.setattr(dialogs, "ask_for_photo", lambda *_: scene_without_card)
    monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_: tmp_path / "out.json")
    with qtbot.waitSignal(window.looking.suggested):
        hands.key(KEY.Key_O, CONTROL)
    idle()

    step = window.scale_step
    assert session.step == "Scale"  # there is no card, so this is what is missing
    hands.tab_to(step.kinds["card"])
    for _ in range(len(step.kinds)):
        if step.kinds["line"].isChecked():
            break
        hands.key(KEY.Key_Down)
    assert step.kinds["line"].isChecked()
    hands.key(KEY.Key_P)
    assert window.focusWidget() is window.view
    for x in (200, 1000):  # 800 px, at 8 px a mm 100 mm
        hands.point_at(x, 180)
        hands.key(KEY.Key_Space)
        if x == 200:
            assert "Tab frees them" in window.foot.hint.text()
            hands.key(KEY.Key_Tab)
    assert window.focusWidget() is step.lengths["line"][0]
    hands.type("100 mm")
    hands.key(KEY.Key_Return)
    idle()
    per_px = session.inspection.surface.mm_per_px()
    assert per_px == pytest.approx(1 / 8, rel=0.01)

    hands.key(KEY.Key_Right, CONTROL)
    assert session.step == "Indications"
    while any(one.standing == "suggested" for one in session.state.marked):
        hands.key(KEY.Key_Return)
    hands.key(KEY.Key_Right, CONTROL)
    assert session.step == "Verdict"
    box = window.verdict_step.profile
    hands.tab_to(box)
    for _ in range(box.count()):
        if box.currentData() == "iso-23277-2":
            break
        hands.key(KEY.Key_Down)
    assert session.state.profile == "iso-23277-2"
    idle()

    hands.key(KEY.Key_Right, CONTROL)
    assert session.step == "Record"
    hands.tab_to(window.record_step.decision)
    for _ in range(2):
        hands.key(KEY.Key_Down)
    assert session.state.decision == "reject"
    hands.tab_to(window.record_step.fields["examiner"], most=400)
    hands.type("N. N.")
    with qtbot.waitSignal(window.saving.saved):
        hands.key(KEY.Key_S, CONTROL)
    record = load_record(tmp_path / "out.json")
    assert record.fields["examiner"] == "N. N."
    assert record.disposition["decision"] == "reject"
    assert record.evaluation["verdict"] == "rejectable"
    assert {one["standing"] for one in record.indications} == {"taken"}
    assert (tmp_path / "out.pdf").is_file()
    assert watch.seen == 0


def test_an_outline_is_traced_free_hand_by_keys_alone(qtbot, opened, idle):
    """Free hand: arrows steer, Space sets a point, Backspace takes one back, Enter closes."""
    watch = NoMouse()
    QApplication.instance().installEventFilter(watch)
    hands, session, view = Hands(opened), opened.session, opened.view
    session.go("Indications")
    hands.tab_to(opened.indications_step.trace_buttons["free"])
    hands.key(KEY.Key_Space)
    assert opened.focusWidget() is view
    assert "Space sets a point, Enter closes, Esc leaves" in opened.foot.hint.text()
    corners, count = [(300, 700), (420, 700), (420, 760), (300, 760)], len(session.state.marked)
    for corner in (*corners[:3], (600, 900)):
        hands.point_at(*corner)
        hands.key(KEY.Key_Space)
    hands.key(KEY.Key_Backspace)
    hands.point_at(*corners[3])
    hands.key(KEY.Key_Space)
    hands.key(KEY.Key_Return)
    qtbot.waitUntil(lambda: len(session.state.marked) == count + 1)
    outline = session.state.marked[-1].outline_px
    most = 1.0 / view.port.scale  # the pointer stands on whole px of the screen
    assert np.abs(outline - corners).max() <= most
    hands.point_at(500, 500)
    hands.key(KEY.Key_Space)
    hands.key(KEY.Key_Escape)  # leaves, and takes nothing of it
    assert view.tool is None
    hands.key(KEY.Key_Z, CONTROL)
    idle()
    assert len(session.state.marked) == count
    assert watch.seen == 0
