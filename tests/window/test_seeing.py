"""Ways of seeing: turned, from above, the dye alone, and the grid that lies on the surface."""

from dataclasses import dataclass

import cv2
import numpy as np
import pytest
from PySide6.QtCore import QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import QPolygonF

from ptmark.scale.surface import SurfaceMap
from ptmark.window.view.levels import build_levels
from ptmark.window.view.rings import Rings
from ptmark.window.view.seen_as import dye_picture, from_above, white_of
from ptmark.window.view.surface_grid import SurfaceGrid, round_step
from ptmark.window.view.viewport import Viewport

KEY = Qt.Key


def tilted() -> SurfaceMap:
    """A surface seen at an angle: four px corners of a 100 x 60 mm rectangle."""
    corners = np.array([[200, 150], [820, 120], [900, 560], [120, 600]], np.float32)
    mm = np.array([[0, 0], [100, 0], [100, 60], [0, 60]], np.float32)
    h = cv2.getPerspectiveTransform(corners, mm)
    return SurfaceMap(
        h=h, covariance={}, reference="rectangle", reference_px=corners.astype(float)
    )


def seen_from_above(pixels, surface):
    """The whole picture, and the way to it from the photo."""
    seen = from_above(build_levels(pixels), surface)
    return seen.levels[0].part((0, 0, seen.width, seen.height)), seen.bend


@pytest.mark.parametrize("turn", range(4))
def test_a_turned_view_leads_there_and_back(turn):
    port = Viewport()
    port.photo, port.widget, port.turn = QSizeF(400, 300), QSizeF(800, 700), turn
    port.fit()
    port.zoom(2.5, QPointF(300, 200))
    for px in (QPointF(0, 0), QPointF(399, 299), QPointF(17.5, 200)):
        back = port.to_px(port.to_widget(px))
        assert (back.x(), back.y()) == pytest.approx((px.x(), px.y()), abs=1e-6)


def test_a_quarter_turn_brings_the_top_left_to_the_top_right():
    port = Viewport()
    port.photo, port.widget, port.turn = QSizeF(400, 300), QSizeF(800, 800), 1
    port.fit()
    rect, corner = port.photo_rect(), port.to_widget(QPointF(-0.5, -0.5))
    assert rect.height() > rect.width()
    assert (corner.x(), corner.y()) == pytest.approx((rect.right(), rect.top()))


def test_from_above_a_rectangle_is_a_rectangle_again():
    surface = tilted()
    pixels = np.full((700, 1000, 3), 200, np.uint8)
    picture, bend = seen_from_above(pixels, surface)
    corners = [bend.map(QPointF(x + 0.5, y + 0.5)) for x, y in surface.reference_px]
    sides = [corners[i] - corners[i - 1] for i in range(4)]
    lengths = [np.hypot(s.x(), s.y()) for s in sides]
    assert lengths[1] / lengths[0] == pytest.approx(100 / 60, rel=1e-4)  # it is 100 x 60 mm
    assert lengths[3] / lengths[1] == pytest.approx(1, rel=1e-4)
    assert QPointF.dotProduct(sides[0], sides[1]) == pytest.approx(0, abs=1e-3 * lengths[0])
    assert sides[1].x() > 0  # up stays up, right stays right
    assert sides[2].y() > 0
    assert picture.shape[0] < 4000


def test_from_above_the_picture_and_its_marks_fit():
    surface, pixels = tilted(), np.full((700, 1000, 3), 230, np.uint8)
    cv2.circle(pixels, (500, 400), 3, (20, 20, 20), -1)
    picture, bend = seen_from_above(pixels, surface)
    at = bend.map(QPointF(500.5, 400.5)) - QPointF(0.5, 0.5)
    spot = cv2.getRectSubPix(picture, (5, 5), (at.x(), at.y()))
    assert spot.mean() < 60


def test_the_dye_picture_darkens_dye_and_leaves_shade_out():
    pixels = np.full((60, 90, 3), (220, 218, 216), np.uint8)
    pixels[:, 30:60] = (110, 109, 108)  # the same white in the shade
    pixels[20:40, 70:80] = (186, 24, 58)  # dye
    made = dye_picture(pixels, white_of(pixels))
    assert abs(int(made[30, 10]) - int(made[30, 45])) <= 6
    assert made[30, 75] < 60
    assert made[30, 10] > 200


def test_a_ring_stands_round_its_outline_in_every_view():
    line = QPolygonF([QPointF(x, y) for x, y in ((100, 99), (200, 99), (200, 101), (100, 101))])
    port = Viewport()
    port.photo, port.widget, port.turn = QSizeF(400, 300), QSizeF(800, 800), 1
    _, port.bend = seen_from_above(np.zeros((300, 400), np.uint8), tilted())
    port.fit()
    ring, shape = Rings().path(line, port.transform()), port.transform().map(line)
    box, core = ring.boundingRect(), shape.boundingRect()
    assert box.contains(core)
    assert core.adjusted(-12, -12, 12, 12).contains(box)


@dataclass
class Paper:
    """Keeps what is drawn, in place of a painter."""

    lines: list

    def __getattr__(self, name):
        return lambda *_, **__: None

    def drawPolyline(self, shape):  # noqa: N802
        self.lines.append(shape)


def test_grid_lines_lie_at_whole_steps_on_the_surface():
    surface, port, paper = tilted(), Viewport(), Paper([])
    port.photo, port.widget = QSizeF(1000, 700), QSizeF(1000, 700)
    port.fit()
    grid = SurfaceGrid(surface, "mm")
    grid.paint(paper, port)
    assert grid.step_mm == 10
    for shape in paper.lines[::2]:
        px = [port.to_px(p) for p in shape.toList()]
        mm = surface.to_mm(np.array([[p.x(), p.y()] for p in px])) / grid.step_mm
        off = np.abs(mm - np.round(mm)).max(axis=0)
        assert off.min() < 1e-4  # one of x and y is a whole number of steps all along


def test_in_inches_the_steps_are_round_in_inches():
    port, paper = Viewport(), Paper([])
    port.photo, port.widget = QSizeF(1000, 700), QSizeF(1000, 700)
    port.fit()
    grid = SurfaceGrid(tilted(), "in")
    grid.paint(paper, port)
    assert grid.step_mm / 25.4 == pytest.approx(0.5)


def test_steps_are_one_two_five():
    assert [round_step(v) for v in (1, 1.01, 2.5, 6, 0.03)] == pytest.approx(
        [1, 2, 5, 10, 0.05]
    )


@pytest.mark.gui
@pytest.mark.slow
def test_each_way_of_seeing_is_one_key_and_tools_still_hit_the_dye(qtbot, opened, idle):
    view, seeing = opened.view, opened.seeing
    plain = view.levels
    for key in (KEY.Key_G, KEY.Key_R, KEY.Key_V, KEY.Key_C):
        qtbot.keyClick(opened, key)
        idle()
    assert (seeing.grid, seeing.above, seeing.dye, view.port.turn) == (True, True, True, 1)
    assert view.guides.grid is not None
    assert view.levels is not plain
    view.grab()
    # A click on the big dot (conftest: centre 900, 420) selects it, turned and from above.
    at = view.port.to_widget(QPointF(900, 420)).toPoint()
    assert QRectF(view.rect()).contains(QPointF(at))
    qtbot.mouseClick(view, Qt.MouseButton.LeftButton, pos=at)
    (name,) = opened.session.selected
    centre = opened.session.inspection.marked(name).outline_px.mean(axis=0)
    assert centre == pytest.approx((900, 420), abs=2)
    for key in (KEY.Key_G, KEY.Key_V, KEY.Key_C):
        qtbot.keyClick(opened, key)
        idle()
    assert view.levels is plain
    assert view.guides.grid is None


@pytest.mark.gui
@pytest.mark.slow
def test_the_next_photo_starts_plain_and_a_lost_scale_ends_the_view_from_above(
    qtbot, opened, idle, scene_without_card
):
    opened.seeing.turn_above()
    idle()
    opened.session.change("remove the scale", reference=None)
    idle()
    assert not opened.seeing.above
    assert opened.view.levels.bend is None
    opened.seeing.turn_dye()
    idle()
    with qtbot.waitSignal(opened.looking.suggested):
        opened.open(scene_without_card)
    idle()
    assert not opened.seeing.dye
    assert opened.view.levels is opened.session.levels
