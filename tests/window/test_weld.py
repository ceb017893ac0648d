"""The weld's course: marked by two points, drawn with its length, moved, taken back."""

import pytest
from PySide6.QtCore import QPointF, Qt

pytestmark = [pytest.mark.gui, pytest.mark.slow]

KEY, LEFT = Qt.Key, Qt.MouseButton.LeftButton


def click(qtbot, window, x, y):
    where = window.view.port.to_widget(QPointF(x, y)).toPoint()
    qtbot.mouseClick(window.view, LEFT, pos=where)


def test_two_clicks_mark_the_weld_and_its_length_is_said(qtbot, opened, idle):
    opened.session.go("Verdict")
    qtbot.keyClick(opened, KEY.Key_W)
    click(qtbot, opened, 200, 600)
    click(qtbot, opened, 1000, 600)
    idle()
    a, b = opened.session.state.weld_px
    # The scene has 8 px for each mm (conftest), and no perspective.
    length = abs(b[0] - a[0]) / 8
    assert length == pytest.approx(100, abs=0.5)
    assert float(opened.view.guides.weld_says.split()[1]) == pytest.approx(length, abs=0.2)
    page = opened.verdict_step
    assert "from the marked line" in page.sizes["weld_length_mm"].placeholderText()
    scene = opened.session.inspection.scene()
    assert scene.weld_length_mm == pytest.approx(length, rel=3e-3)
    # W again takes hold of the same line; the keyboard moves an end; undo is one step each.
    qtbot.keyClick(opened, KEY.Key_W)
    qtbot.keyClick(opened.view, KEY.Key_Tab)
    qtbot.keyClick(opened.view, KEY.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    assert opened.session.state.weld_px[0][0] > a[0]
    qtbot.keyClick(opened.view, KEY.Key_Escape)
    qtbot.keyClick(opened, KEY.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert opened.session.state.weld_px == (a, b)
    page.unmark_button.click()
    assert opened.session.state.weld_px is None
    assert opened.view.guides.weld is None
    assert not page.unmark_button.isEnabled()


def test_a_typed_length_goes_before_the_line_and_the_line_keeps_its_own(qtbot, opened, idle):
    opened.session.change("mark the weld", weld_px=((200.0, 600.0), (1000.0, 600.0)))
    opened.session.change("set the length", weld_length_mm=250.0)
    idle()
    assert opened.session.inspection.scene().weld_length_mm == 250
    assert float(opened.view.guides.weld_says.split()[1]) == pytest.approx(100, abs=0.2)


def test_without_a_scale_the_line_says_so(qtbot, opened):
    opened.session.change("mark the weld", weld_px=((200.0, 600.0), (1000.0, 600.0)))
    opened.session.change("remove the scale", reference=None)
    assert opened.view.guides.weld_says == "weld, no scale yet"


def test_an_area_whose_sides_cross_is_refused_and_told(qtbot, opened):
    told = []
    opened.session.trouble.connect(lambda _, exc: told.append(str(exc)) if exc else None)
    opened.session.go("Photo")
    corners = [(200, 200), (900, 200), (900, 600), (200, 600)]
    for order in ((0, 2, 1, 3), (0, 1, 2, 3)):
        qtbot.keyClick(opened, KEY.Key_A)
        for number in order:
            click(qtbot, opened, *corners[number])
        qtbot.keyClick(opened.view, KEY.Key_Return)
        assert (opened.session.state.area_px is None) is (order != (0, 1, 2, 3))
    assert len(told) == 1
    assert "cross" in told[0]
