"""Tracing the same indication again by mouse: no new one, and the hand's own figure."""

import numpy as np
import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtTest import QTest

from ptmark.measure import caliper

KEY, LEFT = Qt.Key, Qt.MouseButton.LeftButton


def draw(window, idle, right):
    """Round the scene's crack (conftest: from 300, 300 to 460, 330), free hand, in photo px."""
    view = window.view

    def at(x, y):
        return view.port.to_widget(QPointF(x, y)).toPoint()

    corners = [(295, 290), (right, 315), (right, 345), (295, 312)]
    QTest.mousePress(view, LEFT, pos=at(*corners[0]))
    for x, y in corners[1:]:
        QTest.mouseMove(view, at(x, y))
    QTest.mouseRelease(view, LEFT, pos=at(*corners[-1]))
    idle()


@pytest.mark.gui
@pytest.mark.slow
def test_three_traces_of_one_indication_tell_how_far_the_hand_strays(qtbot, opened, idle):
    inspection, page = opened.session.inspection, opened.pages["Indications"]
    before = len(inspection.state.marked)
    qtbot.keyClick(opened, KEY.Key_H)
    draw(opened, idle, 466)
    (name,) = opened.session.selected
    outline = inspection.marked(name).outline_px
    assert inspection.marked(name).edge.operator_px is None
    assert "1.5 px, a stated default" in page.budget.hand.text()
    assert page.again_button.isEnabled()
    qtbot.keyClick(opened, KEY.Key_T, Qt.KeyboardModifier.ShiftModifier)
    for right in (472, 468):
        draw(opened, idle, right)
    made = inspection.marked(name)
    assert len(inspection.state.marked) == before + 1
    assert np.array_equal(made.outline_px, outline)
    assert len(made.edge.traces_px) == 3
    assert made.edge.traces_px[0] == pytest.approx(caliper(outline)[0], abs=1e-3)
    # The spread of three lengths, one end of two, t of JCGM 100:2008, Table G.2 for 2: 4.53.
    one_end = np.std(made.edge.traces_px, ddof=1) / np.sqrt(2)
    assert made.edge.operator_px == pytest.approx(one_end * 4.53 / 2, rel=0.002)
    assert "traced 3 times" in page._numbers.text()
    assert f"{made.edge.operator_px:.2f} px, estimated" in page.budget.hand.text()
    assert "2 degrees of freedom" in page.budget.hand.text()
    opened.session.select(next(m.id for m in inspection.state.marked if m.id != name))
    assert not page.again_button.isEnabled()  # a suggestion has no hand
    assert page.budget.hand.isHidden()
