"""The way between widget and photo: pixel centres, zoom to the pointer, what stays in sight."""

import pytest
from PySide6.QtCore import QPointF, QRectF, QSizeF

from ptmark.window.view.viewport import Viewport


@pytest.fixture
def port():
    made = Viewport()
    made.photo, made.widget = QSizeF(400, 300), QSizeF(816, 616)
    made.fit()
    return made


def test_fit_leaves_air_and_keeps_the_middle(port):
    assert port.scale == pytest.approx(2.0)
    assert port.photo_rect() == QRectF(8, 8, 800, 600)


def test_pixel_centres_map_half_a_pixel_in(port):
    # Qt counts from the pixel's corner: the centre of pixel (0, 0) lies scale / 2 inside.
    assert port.to_widget(QPointF(0, 0)) == QPointF(9, 9)
    assert port.to_px(QPointF(9, 9)) == QPointF(0, 0)


def test_transform_is_the_same_way_as_to_widget(port):
    port.zoom(3.7, QPointF(100, 50))
    for px in (QPointF(0, 0), QPointF(12.25, 90.5), QPointF(399, 299)):
        one, other = port.transform().map(px), port.to_widget(px)
        assert (one.x(), one.y()) == pytest.approx((other.x(), other.y()))


def test_zoom_keeps_the_place_under_the_pointer(port):
    pointer = QPointF(333, 222)
    before = port.to_px(pointer)
    port.zoom(4.0, pointer)
    after = port.to_px(pointer)
    assert (after.x(), after.y()) == pytest.approx((before.x(), before.y()))


def test_zoom_has_ends(port):
    port.zoom(1e9, QPointF(0, 0))
    assert port.scale == 64
    port.zoom(1e-9, QPointF(0, 0))
    assert port.scale == pytest.approx(1.0)  # half of what fits


def test_panning_never_loses_the_photo(port):
    port.pan(QPointF(1e6, -1e6))
    assert port.photo_rect().intersects(QRectF(0, 0, 816, 616))


def test_show_brings_a_far_corner_into_sight(port):
    port.zoom(16.0, QPointF(8, 8))
    port.show(QRectF(380, 280, 10, 10))
    seen = port.transform().mapRect(QRectF(380, 280, 10, 10))
    assert QRectF(0, 0, 816, 616).contains(seen)
