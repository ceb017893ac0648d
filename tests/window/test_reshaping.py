"""Split, join, smooth and cut: geometry against plain arithmetic, then by mouse and keys."""

import numpy as np
import pytest
from PySide6.QtCore import QPointF, Qt
from shapely import Polygon

from ptmark.errors import OutlineError
from ptmark.window.indications.reshaping import (
    cut_away,
    join_outlines,
    smooth_outline,
    split_outline,
)

KEY, LEFT = Qt.Key, Qt.MouseButton.LeftButton
BAR = np.array([[0.0, 0.0], [100, 0], [100, 10], [0, 10]])


def area(outline):
    """By the shoelace sum, not by what the code under test uses."""
    x, y = outline.T
    return abs(np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1))) / 2


def test_a_split_keeps_all_of_the_area_the_larger_part_first():
    first, second = split_outline(BAR, [(30.0, -5.0), (30.0, 15.0)])
    assert (area(first), area(second)) == pytest.approx((700, 300))


def test_a_line_that_ends_on_the_edge_splits_too_and_one_beside_it_does_not():
    assert len(split_outline(BAR, [(30.0, 0.0), (30.0, 10.0)])) == 2
    with pytest.raises(OutlineError, match="does not cross"):
        split_outline(BAR, [(30.0, 20.0), (60.0, 20.0)])
    with pytest.raises(OutlineError, match="does not cross"):
        split_outline(BAR, [(30.0, 2.0), (60.0, 5.0)])


def test_joined_neighbours_reach_from_end_to_end_over_the_gap():
    right = BAR + np.array([130.0, 0.0])
    made = join_outlines([BAR, right])
    assert made[:, 0].max() - made[:, 0].min() == 230
    assert area(made) == pytest.approx(2000 + 30 * 2, abs=2)  # a bridge 2 px wide
    assert Polygon(made).is_valid


def test_joined_overlapping_outlines_are_their_union():
    made = join_outlines([BAR, BAR + np.array([50.0, 0.0])])
    assert area(made) == pytest.approx(1500)
    with pytest.raises(OutlineError, match="two or more"):
        join_outlines([BAR])


def test_smoothing_takes_the_wobble_and_keeps_length_and_area():
    turn = np.linspace(0, 2 * np.pi, 360, endpoint=False)
    ellipse = np.column_stack([200 * np.cos(turn), 60 * np.sin(turn)])
    wobble = np.random.RandomState(3).normal(0, 1.5, ellipse.shape)  # any value does
    made = smooth_outline(ellipse + wobble, 12.0)
    assert area(made) == pytest.approx(area(ellipse + wobble), rel=1e-3)
    assert np.ptp(made[:, 0]) == pytest.approx(400, abs=4)
    off = np.abs((made[:, 0] / 200) ** 2 + (made[:, 1] / 60) ** 2 - 1)
    before = ellipse + wobble
    rough = np.abs((before[:, 0] / 200) ** 2 + (before[:, 1] / 60) ** 2 - 1)
    assert off.mean() < 0.6 * rough.mean()
    assert Polygon(made).length < 0.9 * Polygon(before).length
    assert area(smooth_outline(BAR, 12.0)) == pytest.approx(area(BAR), rel=1e-9)


def test_a_cut_takes_off_what_the_loop_holds_and_may_leave_two():
    (left,) = cut_away(BAR, [(80.0, -5.0), (120, -5), (120, 15), (80, 15)])
    assert area(left) == pytest.approx(800)
    pieces = cut_away(BAR, [(40.0, -5.0), (50, -5), (50, 15), (40, 15)])
    assert [area(p) for p in pieces] == pytest.approx([500, 400])


@pytest.mark.parametrize(
    ("loop", "says"),
    [
        ([(-5.0, -5.0), (105, -5), (105, 15), (-5, 15)], "nothing"),
        ([(0.0, 20.0), (50, 20), (50, 30)], "beside"),
        ([(40.0, 3.0), (50, 3), (50, 6), (40, 6)], "hole"),
    ],
)
def test_a_cut_that_makes_no_outline_is_refused_with_the_mend(loop, says):
    with pytest.raises(OutlineError, match=says) as caught:
        cut_away(BAR, loop)
    assert caught.value.mend


def click(qtbot, window, x, y):
    where = window.view.port.to_widget(QPointF(x, y)).toPoint()
    qtbot.mouseClick(window.view, LEFT, pos=where)


@pytest.mark.gui
@pytest.mark.slow
def test_by_mouse_and_keys_each_is_one_step_of_undo(qtbot, opened, idle):
    inspection, session = opened.session.inspection, opened.session
    before = inspection.state
    crack = next(m for m in before.marked if np.ptp(m.outline_px[:, 0]) > 100)
    session.select(crack.id)
    # Split the crack (conftest: from 300, 300 to 460, 330) along a line across it.
    qtbot.keyClick(opened, KEY.Key_S)
    click(qtbot, opened, 390, 260)
    click(qtbot, opened, 370, 370)
    assert len(inspection.state.marked) == 4
    assert inspection.undo_name == f"split {crack.id}"
    names = session.selected
    assert len(names) == 2
    total = sum(area(inspection.marked(name).outline_px) for name in names)
    assert total == pytest.approx(area(crack.outline_px), rel=1e-3)
    # Join the two again; the first letter stays.
    qtbot.keyClick(opened, KEY.Key_J)
    assert len(inspection.state.marked) == 3
    joined = inspection.marked(crack.id)
    assert area(joined.outline_px) == pytest.approx(total, rel=2e-2)
    # Smooth it: it is known a little worse, and hardly changes.
    qtbot.keyClick(opened, KEY.Key_M)
    smooth = inspection.marked(crack.id)
    assert smooth.edge.noise_px > joined.edge.noise_px
    assert not joined.traced_anew
    assert not smooth.traced_anew
    # Kept to 0.01 px, a point lies up to 0.005 px off, and the area by that along the outline.
    steps = np.diff(smooth.outline_px, axis=0, append=smooth.outline_px[:1])
    kept = 0.005 * np.hypot(*steps.T).sum()
    assert area(smooth.outline_px) == pytest.approx(area(joined.outline_px), abs=kept)
    # Cut off its right end.
    qtbot.keyClick(opened, KEY.Key_X)
    for x, y in ((430, 280), (500, 280), (500, 360), (430, 360)):
        click(qtbot, opened, x, y)
    qtbot.keyClick(opened.view, KEY.Key_Return)
    assert inspection.marked(crack.id).outline_px[:, 0].max() == pytest.approx(430, abs=2)
    for name in ("cut", "smooth", "join", "split"):
        assert inspection.undo_name.startswith(name)
        qtbot.keyClick(opened, KEY.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert inspection.state is before


@pytest.mark.gui
@pytest.mark.slow
def test_a_line_beside_the_outline_is_refused_on_the_page_and_changes_nothing(qtbot, opened):
    before = opened.session.state
    opened.session.select(before.marked[0].id)
    qtbot.keyClick(opened, KEY.Key_S)
    click(qtbot, opened, 1000, 100)
    click(qtbot, opened, 1100, 100)
    assert opened.session.state is before
    assert "does not cross" in opened.indications_step.notice.text.text()
