"""The tools on their own: what they make of points, moves and keys, with no window."""

from contextlib import suppress

import numpy as np
import pytest
from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QImage, QKeyEvent, QPainter, QTransform

from ptmark.dye import DyeTracer
from ptmark.errors import OutlineError
from ptmark.photo import Photo
from ptmark.window.tools.edit import EditTool
from ptmark.window.tools.points import AreaTool, PickTool
from ptmark.window.tools.trace import TraceTool

pytestmark = pytest.mark.usefixtures("qapp")


def key(which, modifiers=Qt.KeyboardModifier.NoModifier):
    return QKeyEvent(QEvent.Type.KeyPress, which, modifiers)


def tap(tool, x, y):
    tool.press(QPointF(x, y))
    tool.release(QPointF(x, y))


class Rails:
    """A tracer whose edge is the line y = 50: snaps to it and runs along it pixel by pixel."""

    def snap(self, at_px, radius_px=12.0):
        return (at_px[0], 50.0) if abs(at_px[1] - 50) <= radius_px else at_px

    def ready(self, start_px):
        return True

    def path(self, start_px, end_px):
        steps = np.linspace(start_px[0], end_px[0], 11)
        return np.column_stack([steps, np.full(11, 50.0)])


def test_picking_hands_over_when_all_points_are_there(qtbot):
    tool = PickTool("rectangle")
    corners = [(10, 10), (90, 10), (90, 60), (10, 60)]
    for x, y in corners[:3]:
        tap(tool, x, y)
    with qtbot.waitSignal(tool.finished) as caught:
        tap(tool, *corners[3])
    assert caught.args[0] == corners
    with qtbot.waitSignal(tool.finished) as caught:  # a drag hands over again
        tool.press(QPointF(12, 11))
        tool.move(QPointF(14, 13), held=True)
        tool.release(QPointF(14, 13))
    assert caught.args[0][0] == (14, 13)


def test_a_fifth_click_picks_nothing():
    tool = PickTool("lines")
    for x in range(0, 500, 100):
        tap(tool, x, 0)
    assert len(tool.points) == 4


def test_hints_name_the_next_point():
    tool = PickTool("line")
    assert "first end" in tool.hint()
    tap(tool, 0, 0)
    assert "second end" in tool.hint()


def test_tab_goes_through_the_points_and_arrows_move_one():
    tool = PickTool("line", [QPointF(0, 0), QPointF(50, 0)])
    tool.px_per_screen = 0.25
    assert tool.key(key(Qt.Key.Key_Tab))
    assert tool.key(key(Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier))
    assert (tool.points[0].x(), tool.points[0].y()) == (2.5, 0)  # ten screen px
    tool.key(key(Qt.Key.Key_Tab))
    tool.key(key(Qt.Key.Key_Up))
    assert (tool.points[1].x(), tool.points[1].y()) == (50, -0.25)


def test_an_area_given_is_gone_on_with(qtbot):
    given = [(0.0, 0.0), (100.0, 0.0), (100.0, 100.0), (0.0, 100.0)]
    tool = AreaTool(given=given)
    tool.press(QPointF(1, 1))  # takes hold of the corner, and closes nothing
    tool.move(QPointF(-20, -20), held=True)
    tool.release(QPointF(-20, -20))
    tool.press(QPointF(130, 50))  # one more, on the right side
    tool.release(QPointF(130, 50))
    with qtbot.waitSignal(tool.finished) as got:
        tool.accept()
    assert got.args[0] == [(-20, -20), (100, 0), (130, 50), (100, 100), (0, 100)]
    for _ in range(3):
        tool.back()
    assert "Points: 2 of at least three" in tool.hint()


def test_an_area_closes_on_its_first_corner_and_not_before_three(qtbot):
    tool = AreaTool()
    tap(tool, 0, 0)
    tap(tool, 200, 0)
    with qtbot.assertNotEmitted(tool.finished):
        tool.accept()
    tap(tool, 200, 100)
    with qtbot.waitSignal(tool.finished) as caught:
        tool.press(QPointF(2, 1))
    assert caught.args[0] == [(0, 0), (200, 0), (200, 100)]


def test_the_line_goes_to_the_edge_while_the_pointer_moves(qtbot):
    tool = TraceTool("edge", Rails)
    tap(tool, 10, 46)
    assert tool.anchors == [QPointF(10, 50)]
    with qtbot.waitSignal(tool.changed):
        tool.move(QPointF(40, 80), held=False)
    drawn = tool.outline_now()
    assert len(drawn) == 11
    assert all(y == 50 for _, y in drawn)


def test_a_place_is_made_ready_by_the_click_before_anything_moves(qtbot):
    asked = []

    class Noting(Rails):
        def ready(self, start_px):
            return start_px in asked

        def prepare(self, start_px):
            asked.append(start_px)

    tracer = Noting()
    tool = TraceTool("edge", lambda: tracer)
    tap(tool, 10, 46)
    qtbot.waitUntil(lambda: asked == [(10, 50)])
    assert tool.outline_now() == [(10, 50)]


def test_the_line_is_straight_until_the_place_is_ready_and_then_follows_by_itself(qtbot):
    waiting, asked = [], []

    class Slow(Rails):
        def ready(self, start_px):
            return start_px in asked

        def prepare(self, start_px):
            asked.append(start_px)

    tracer = Slow()
    tool = TraceTool("edge", lambda: tracer, lambda *calls: waiting.append(calls))
    tap(tool, 10, 46)
    with qtbot.waitSignal(tool.changed):
        tool.move(QPointF(40, 80), held=False)
    assert tool.outline_now() == [(10, 50), (40, 80)]
    ((work, then),) = waiting
    work()
    then()
    assert len(tool.outline_now()) == 11
    assert all(y == 50 for _, y in tool.outline_now())


def test_an_edge_trace_begun_beyond_the_photo_goes_straight(qtbot):
    photo = Photo.from_array(np.full((60, 80, 3), 230, np.uint8))
    tracer = DyeTracer(photo)

    def beside(work, then):
        with suppress(OutlineError):
            work()
        then()

    tool = TraceTool("edge", lambda: tracer, beside)
    tap(tool, 900, 900)
    tap(tool, 40, 30)
    assert tool.outline_now() == [(900, 900), (40, 30)]


def test_an_edge_trace_closes_along_the_edge(qtbot):
    tool = TraceTool("edge", Rails)
    for x in (0, 50, 100):
        tap(tool, x, 50)
    with qtbot.waitSignal(tool.finished) as caught:
        tool.accept()
    outline = caught.args[0]
    assert outline[0] == (0, 50)
    assert len(outline) == 1 + 10 + 10 + 9  # there in two parts, and back without the start
    assert tool.anchors == []  # ready for the next


def test_free_hand_takes_what_is_drawn(qtbot):
    tool = TraceTool("free", Rails)
    tool.press(QPointF(0, 0))
    for x, y in ((20, 0), (20, 20), (0, 20)):
        tool.move(QPointF(x, y), held=True)
    with qtbot.waitSignal(tool.finished) as caught:
        tool.release(QPointF(0, 10))
    assert caught.args[0] == [(0, 0), (20, 0), (20, 20), (0, 20)]


def test_free_hand_takes_points_too_as_keys_set_them(qtbot):
    tool = TraceTool("free", Rails)
    assert "Space sets a point, Enter closes, Esc leaves" in tool.by_keys
    for x, y in ((0, 0), (60, 0), (60, 30)):
        tool.move(QPointF(x, y), held=False)
        with qtbot.assertNotEmitted(tool.finished):
            tap(tool, x, y)
    assert "Points: 3" in tool.hint()
    tool.back()
    tap(tool, 60, 40)
    with qtbot.waitSignal(tool.finished) as caught:
        tool.accept()
    assert caught.args[0] == [(0, 0), (60, 0), (60, 40)]
    assert tool.anchors == []


def test_free_hand_what_is_drawn_takes_no_point_of_a_stray_click_along(qtbot):
    tool = TraceTool("free", Rails)
    tap(tool, 200, 200)
    tool.press(QPointF(210, 0))  # a click of a hand that is not quite still
    for x in (212, 214, 213):
        tool.move(QPointF(x, 1), held=True)
    with qtbot.assertNotEmitted(tool.finished):
        tool.release(QPointF(213, 1))
    assert tool.anchors == [QPointF(200, 200), QPointF(210, 0)]
    drawn = [(0, 0), (20, 0), (20, 20), (0, 20)]
    tool.press(QPointF(0, 0))
    for x, y in drawn[1:]:
        tool.move(QPointF(x, y), held=True)
    assert tool.outline_now() == drawn
    with qtbot.waitSignal(tool.finished) as caught:
        tool.release(QPointF(0, 10))
    assert caught.args[0] == drawn
    assert tool.anchors == []


def test_back_takes_one_point_and_then_leaves_the_tool(qtbot):
    tool = TraceTool("points", Rails)
    tap(tool, 0, 0)
    tap(tool, 50, 0)
    tool.back()
    assert tool.line() == [QPointF(0, 0)]
    tool.back()
    with qtbot.waitSignal(tool.stopped):
        tool.back()


CIRCLE = [
    (100 + 50 * np.cos(t), 100 + 50 * np.sin(t)) for t in np.linspace(0, 2 * np.pi, 200)[:-1]
]


def test_handles_stand_apart_and_neighbours_follow_softly(qtbot):
    tool = EditTool(CIRCLE)
    handles = tool.handles()
    assert 8 < len(handles) < 30
    grabbed = handles[3]
    start = QPointF(tool.points[grabbed])
    before = [QPointF(p) for p in tool.points]
    with qtbot.waitSignal(tool.finished):
        tool.press(start)
        tool.move(start + QPointF(6, 0), held=True)
        tool.release(start + QPointF(6, 0))
    shift = [tool.points[i].x() - before[i].x() for i in range(len(before))]
    assert shift[grabbed] == pytest.approx(6)
    assert shift[handles[2]] == pytest.approx(0)  # the neighbouring handles stay
    assert shift[handles[4]] == pytest.approx(0)
    between = shift[grabbed + 1 : handles[4]]
    assert all(0 < s < 6 for s in between)
    assert between == sorted(between, reverse=True)


def test_a_handle_is_removed_with_the_stretch_it_holds(qtbot):
    tool = EditTool(CIRCLE)
    handles, count = tool.handles(), len(tool.points)
    tool.active = handles[5]
    with qtbot.waitSignal(tool.finished):
        tool.back()
    assert len(tool.points) == count - (handles[6] - handles[4] - 1)


def test_a_point_is_added_on_the_nearest_stretch(qtbot):
    tool = EditTool([(0, 0), (100, 0), (100, 100), (0, 100)])
    with qtbot.waitSignal(tool.finished) as caught:
        tool.add(QPointF(50, 3))
    assert caught.args[0] == [(0, 0), (50, 3), (100, 0), (100, 100), (0, 100)]


def test_a_triangle_keeps_its_three_points(qtbot):
    tool = EditTool([(0, 0), (100, 0), (50, 80)])
    tool.active = 0
    with qtbot.assertNotEmitted(tool.finished):
        tool.back()


def test_editing_by_keys_alone(qtbot):
    tool = EditTool([(0, 0), (100, 0), (100, 100), (0, 100)])
    tool.key(key(Qt.Key.Key_Tab))
    with qtbot.waitSignal(tool.finished) as caught:
        tool.key(key(Qt.Key.Key_Left))
    assert caught.args[0][0] == (-1, 0)


def test_the_line_to_the_second_end_shows_before_it_is_picked():
    """A split cuts where the line runs, so the line is seen before the click that cuts."""
    tool = PickTool("split")
    tool.press(QPointF(10, 20))
    tool.release(QPointF(10, 20))
    blank = painted(tool)
    tool.move(QPointF(90, 20), held=False)
    changed = np.nonzero(np.any(painted(tool) != blank, axis=2))
    assert changed[1].max() >= 85  # columns, as far as the pointer
    assert np.abs(changed[0] - 20).max() <= 4  # rows, nothing beside the line
    assert tool.points == [QPointF(10, 20)]


def painted(tool):
    picture = QImage(100, 40, QImage.Format.Format_RGB32)
    picture.fill(Qt.GlobalColor.white)
    painter = QPainter(picture)
    tool.paint(painter, QTransform())
    painter.end()
    return np.array(picture.constBits()).reshape(40, 100, 4)
