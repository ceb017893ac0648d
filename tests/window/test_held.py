"""What was shown before is let go of: over a day of photos the window holds no more."""

import gc
import weakref

import numpy as np
from PySide6.QtCore import QPointF, QSizeF
from PySide6.QtGui import QImage, QPainter, QPolygonF

from ptmark.inspection import Inspection
from ptmark.photo import Photo
from ptmark.window.session import Session
from ptmark.window.view.marks import Mark
from ptmark.window.view.overlay import Overlay
from ptmark.window.view.viewport import Viewport


def marks_of_a_photo():
    corners = [QPointF(20, 20), QPointF(60, 22), QPointF(60, 26), QPointF(20, 24)]
    return [Mark(letter, QPolygonF(corners), "taken") for letter in "AB"]


def test_the_rings_of_earlier_photos_are_let_go_of(qapp):
    overlay, port = Overlay(), Viewport()
    port.photo = port.widget = QSizeF(100, 80)
    picture = QImage(100, 80, QImage.Format.Format_RGB32)
    painter = QPainter(picture)
    for _ in range(4):
        marks = marks_of_a_photo()
        overlay.draw(painter, port, marks, frozenset(), 1.0)
        assert len(overlay._rings._kept) == len(marks)
    painter.end()


def test_the_tracer_of_the_photo_before_is_let_go_of(qtbot):
    session, red = Session(), np.full((60, 80, 3), (200, 120, 120), np.uint8)
    session.take_over(Inspection())
    session.inspection.set_photo(Photo.from_array(red))
    before = weakref.ref(session.tracer())
    gc.collect()
    assert before() is not None  # moves of one outline share it
    session.photo_shown.emit(None)
    gc.collect()
    assert before() is None
    session.workers.shut_down()
