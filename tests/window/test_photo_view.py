"""The photo view by mouse and keyboard, with levels made from a small array."""

import numpy as np
import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, QRectF, Qt
from PySide6.QtGui import QPolygonF, QWheelEvent
from PySide6.QtWidgets import QApplication, QLabel

from ptmark.window.foot import Foot
from ptmark.window.keys import HERE
from ptmark.window.tools.points import PickTool
from ptmark.window.view.levels import build_levels, preview_levels
from ptmark.window.view.marks import Mark
from ptmark.window.view.photo_view import PhotoView
from ptmark.window.workers import Workers

LEFT = Qt.MouseButton.LeftButton
SQUARE = QPolygonF([QPointF(10, 10), QPointF(30, 10), QPointF(30, 30), QPointF(10, 30)])


@pytest.fixture
def view(qtbot):
    made = PhotoView()
    qtbot.addWidget(made)
    made.resize(416, 316)
    made.set_levels(build_levels(np.full((300, 400, 3), 200, np.uint8)))
    made.show()
    return made


def at(view, x, y):
    return view.port.to_widget(QPointF(x, y)).toPoint()


def test_a_click_at_four_times_zoom_hits_the_pixels_centre(qtbot, view):
    view.port.zoom(4.0 / view.port.scale, QPointF(0, 0))
    view.port.origin = QPointF(-400, -200)  # whole pixels, so that centres fall between four
    tool = PickTool("line")
    view.set_tool(tool)
    # Pixel (120, 80) covers widget x from 120*4-400 = 80 to 84, its centre is 82.
    qtbot.mousePress(view, LEFT, pos=QPoint(82, 122))
    assert (tool.points[0].x(), tool.points[0].y()) == (120.0, 80.0)
    qtbot.mouseRelease(view, LEFT, pos=QPoint(82, 122))


def test_the_picture_is_painted_where_the_frame_says(qtbot, view):
    pixels = np.full((300, 400, 3), 255, np.uint8)
    pixels[80, 120] = (0, 0, 255)
    view.set_levels(build_levels(pixels))
    view.port.zoom(8.0 / view.port.scale, QPointF(0, 0))
    view.port.origin = QPointF(-800, -500)
    image = view.grab().toImage()
    centre = view.port.to_widget(QPointF(120, 80))
    ratio = image.devicePixelRatio()
    spot = image.pixelColor(int(centre.x() * ratio), int(centre.y() * ratio))
    assert (spot.red(), spot.green(), spot.blue()) == (0, 0, 255)
    beside = image.pixelColor(int((centre.x() + 6) * ratio), int(centre.y() * ratio))
    assert beside.red() == 255


def test_wheel_zooms_about_the_pointer(qtbot, view):
    pointer = QPointF(300, 100)
    before, scale = view.port.to_px(pointer), view.port.scale
    wheel = QWheelEvent(
        pointer, view.mapToGlobal(pointer), QPoint(), QPoint(0, 120),
        Qt.MouseButton.NoButton, Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(view, wheel)
    after = view.port.to_px(pointer)
    assert view.port.scale > scale
    assert (after.x(), after.y()) == pytest.approx((before.x(), before.y()))


def test_dragging_without_a_tool_pans(qtbot, view):
    before = QPointF(view.port.origin)
    qtbot.mousePress(view, LEFT, pos=QPoint(200, 150))
    qtbot.mouseMove(view, QPoint(240, 170))
    qtbot.mouseRelease(view, LEFT, pos=QPoint(240, 170))
    moved = view.port.origin - before
    assert (moved.x(), moved.y()) == pytest.approx((40, 20))


def test_space_and_drag_pans_while_a_tool_is_at_work(qtbot, view):
    tool = PickTool("line")
    view.set_tool(tool)
    before = QPointF(view.port.origin)
    qtbot.keyPress(view, Qt.Key.Key_Space)
    qtbot.mousePress(view, LEFT, pos=QPoint(200, 150))
    qtbot.mouseMove(view, QPoint(230, 150))
    qtbot.mouseRelease(view, LEFT, pos=QPoint(230, 150))
    qtbot.keyRelease(view, Qt.Key.Key_Space)
    assert view.port.origin.x() - before.x() == pytest.approx(30)
    assert tool.points == []


def test_fit_key_undoes_zoom(qtbot, view):
    scale = view.port.scale
    qtbot.keyClick(view, Qt.Key.Key_Plus)
    assert view.port.scale == pytest.approx(1.25 * scale)
    qtbot.keyClick(view, Qt.Key.Key_F)
    assert view.port.scale == pytest.approx(scale)


def test_keys_that_no_window_key_takes_move_the_photo(qtbot, view):
    both = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier
    view.zoom(4.0)
    listed = {usual for usual, _ in HERE}  # so told by the page of keys, and kept apart
    for name, way in {"Left": (1, 0), "Right": (-1, 0), "Up": (0, 1), "Down": (0, -1)}.items():
        before = QPointF(view.port.origin)
        qtbot.keyClick(view, Qt.Key[f"Key_{name}"], both)
        moved = view.port.origin - before
        assert (moved.x(), moved.y()) == pytest.approx((40 * way[0], 40 * way[1]))
        assert f"Ctrl+Shift+{name}" in listed


def test_clicks_name_the_mark_under_the_pointer(qtbot, view):
    big = QPolygonF([QPointF(0, 0), QPointF(90, 0), QPointF(90, 90), QPointF(0, 90)])
    view.show_marks([Mark("A", big, "taken"), Mark("B", SQUARE, "suggested")], frozenset())
    with qtbot.waitSignal(view.mark_clicked) as inner:
        qtbot.mouseClick(view, LEFT, pos=at(view, 20, 20))
    with qtbot.waitSignal(view.mark_clicked) as outer:
        qtbot.mouseClick(view, LEFT, pos=at(view, 70, 70))
    with qtbot.waitSignal(view.mark_clicked) as none:
        qtbot.mouseClick(view, LEFT, pos=at(view, 300, 200))
    assert [inner.args[0], outer.args[0], none.args[0]] == ["B", "A", ""]


def test_a_point_is_picked_by_keys_alone(qtbot, view):
    tool = PickTool("line")
    view.set_tool(tool)
    view.point_at(QPointF(100, 100))
    qtbot.keyClick(view, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    qtbot.keyClick(view, Qt.Key.Key_Down)
    qtbot.keyClick(view, Qt.Key.Key_Space)
    want = view.port.to_px(QPointF(110, 101))
    assert (tool.points[0].x(), tool.points[0].y()) == pytest.approx((want.x(), want.y()))


def test_a_pointer_steered_to_the_rim_brings_the_photo_on_but_not_beyond_its_end(qtbot, view):
    view.set_tool(PickTool("line"))
    view.zoom(4.0)
    rim = QPointF(view.width() - 2, 100)
    view.point_at(rim)
    before = view.port.to_px(rim)
    qtbot.keyClick(view, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    after = view.port.to_px(view.pointer)
    assert (after.x() - before.x()) * view.port.scale == pytest.approx(10)
    assert after.y() == pytest.approx(before.y())
    for _ in range(200):
        qtbot.keyClick(view, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    assert view.port.photo_rect().right() == pytest.approx(view.width() - 2)
    view.fit()
    qtbot.keyClick(view, Qt.Key.Key_Right)
    assert view.port.fitted


def test_marks_are_never_red_pink_or_white(qtbot, view):
    """The marks' own colours, read off the painted picture on a neutral grey ground."""
    view.set_levels(build_levels(np.full((300, 400, 3), 128, np.uint8)))
    shift = (60, 120, 180, 240)
    styles = ("taken", "suggested", "dropped", "left out")
    marks = [
        Mark(name, SQUARE.translated(dx, 40), style)
        for name, dx, style in zip("ABCD", shift, styles, strict=True)
    ]
    view.show_marks(marks, frozenset("B"))
    image = view.grab().toImage()
    box = view.port.photo_rect().adjusted(3, 3, -3, -3).toRect()
    seen = {
        image.pixelColor(x, y).getRgb()[:3]
        for x in range(box.left(), box.right())
        for y in range(box.top(), box.bottom())
    }
    drawn = [rgb for rgb in seen if max(rgb) - min(rgb) > 24 or rgb[0] < 100]
    assert len(drawn) > 20  # something was painted
    assert all(red <= max(green, blue) for red, green, blue in drawn)  # red, pink: red leads
    assert all(min(rgb) < 235 for rgb in seen)  # white


def test_levels_shrink_and_choose_for_the_screen():
    levels = build_levels(np.zeros((3000, 4000, 3), np.uint8))
    assert [round(level.step_x) for level in levels.levels] == [1, 4]
    assert levels.for_scale(1.0).step_x == 1
    assert levels.for_scale(0.25).step_x == 4
    larger = build_levels(np.zeros((6000, 8000, 3), np.uint8))
    assert [round(level.step_x) for level in larger.levels] == [1, 4, 8]
    held = sum(level.pixels.nbytes for level in larger.levels if level.pixels is not None)
    assert held < 1.03 * larger.levels[0].pixels.nbytes
    preview = preview_levels(np.zeros((375, 500, 3), np.uint8), 4000, 3000)
    assert not preview.whole
    assert preview.for_scale(1.0).step_x == 8


def test_the_foot_tells_no_place_once_the_pointer_has_left(qtbot, view):
    foot = Foot(Workers(view))
    qtbot.addWidget(foot)
    view.pointed.connect(foot.say_place)
    qtbot.mouseMove(view, at(view, 120, 80))
    told = [one for one in foot.findChildren(QLabel) if one.text().endswith(" px")]
    assert len(told) == 1
    QApplication.sendEvent(view, QEvent(QEvent.Type.Leave))
    assert told[0].text() == ""


def test_leaving_hides_the_magnifier(qtbot, view):
    view.set_tool(PickTool("line"))
    view.point_at(QPointF(50, 50))
    QApplication.sendEvent(view, QEvent(QEvent.Type.Leave))
    assert view.pointer is None


def test_a_level_made_where_it_is_looked_at_shows_what_the_whole_would():
    """Block means by NumPy; the view moves on, jumps, and comes to the border."""
    pixels = np.random.RandomState(2).randint(0, 256, (1302, 4402, 3), np.uint8)  # any value
    quarter = build_levels(pixels).for_scale(0.25)
    whole = pixels[:1300, :4400].reshape(325, 4, 1100, 4, 3).mean(axis=(1, 3))
    assert (quarter.width, quarter.height, quarter.step_x) == (1101, 326, 4)
    for x, y in ((100, 90), (230, 20), (330, 150), (700, 0), (701, 200), (0, 0)):
        image, source = quarter.seen(QRectF(4 * x, 4 * y, 1200, 400))
        held = np.array(image.bits(), copy=False).reshape(image.height(), -1)
        left, top = int(source.left()), int(source.top())
        part = held[top : top + 100, 3 * left : 3 * (left + 300)].reshape(100, 300, 3)
        assert np.abs(part - whole[y : y + 100, x : x + 300]).max() <= 0.5
        assert quarter.pixels.nbytes < 0.6 * whole.size
    quarter.let_go()
    assert quarter.pixels is None
