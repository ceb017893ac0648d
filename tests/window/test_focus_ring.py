"""What has the keyboard, and where a box or field is, can be seen: 3 : 1 (WCAG 2.2, 1.4.11)."""

import numpy as np
import pytest
from PySide6.QtCore import QEvent, QRect, Qt
from PySide6.QtGui import QColor, QImage, QPalette
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QApplication,
    QComboBox,
    QLayout,
    QListWidget,
    QPushButton,
    QScrollArea,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from ptmark.window.bits import Choice
from ptmark.window.edges import Line, ListOf, Notes, OneOf, TableOf, Tick, TreeOf
from ptmark.window.focus_ring import FocusRing
from ptmark.window.keys import KeyButton
from ptmark.window.reading_order import reveal, step_focus
from ptmark.window.step_strip import StepStrip
from ptmark.window.view.photo_view import PhotoView

pytestmark = pytest.mark.gui

MAKES = (QPushButton, QComboBox, QListWidget, Tick, OneOf, Line, Notes, PhotoView)


@pytest.fixture(params=["light", "dark"])
def ground(request, qapp):
    """Qt's own style, on a light and on a dark ground."""
    style, palette = qapp.style().objectName(), qapp.palette()
    qapp.setStyle("Fusion")
    dark = QPalette(QColor(46, 49, 54), QColor(38, 40, 44))
    dark.setColor(QPalette.ColorRole.Base, QColor(30, 32, 35))
    qapp.setPalette(dark if request.param == "dark" else qapp.style().standardPalette())
    yield request.param
    qapp.setStyle(style)
    qapp.setPalette(palette)


def luminance(widget, part=None):
    """Relative luminance of each pixel (WCAG 2.2, definition), shape (H, W)."""
    image = (
        widget.grab(part or widget.rect())
        .toImage()
        .convertToFormat(QImage.Format.Format_RGB888)
    )
    rows = np.frombuffer(image.constBits(), np.uint8).reshape(image.height(), -1)
    rgb = rows[:, : 3 * image.width()].reshape(image.height(), image.width(), 3) / 255
    linear = np.where(rgb <= 0.04045, rgb / 12.92, ((rgb + 0.055) / 1.055) ** 2.4)
    return linear @ (0.2126, 0.7152, 0.0722)


def contrast(one, other):
    return (np.maximum(one, other) + 0.05) / (np.minimum(one, other) + 0.05)


@pytest.fixture
def page(qtbot, qapp, ground):
    """Pieces with and without room round them, under a ring."""
    ring = FocusRing(qapp)
    box = QWidget()
    qtbot.addWidget(box)
    column = QVBoxLayout(box)
    column.setSizeConstraint(QLayout.SizeConstraint.SetNoConstraint)
    box.pieces = [make() for make in MAKES]
    for at, one in enumerate(box.pieces):
        if at % 2:
            column.addWidget(one)
        else:  # it fills what it stands in
            place = QStackedWidget()
            place.addWidget(one)
            column.addWidget(place)
    box.resize(360, 900)
    with qtbot.waitExposed(box):
        box.show()
    box.activateWindow()
    yield box
    qapp.focusChanged.disconnect(ring._follow)
    ring.deleteLater()


def rings_on(page):
    """Rings in sight."""
    found = [one for one in page.findChildren(QWidget) if type(one).__name__ == "_Frame"]
    return [one for one in found if one.isVisible()]


def test_the_focus_is_seen_on_every_piece(page):
    for one in page.pieces:
        one.setFocus(Qt.FocusReason.OtherFocusReason)  # as when code moves it, without a Tab
        QApplication.processEvents()
        assert page.focusWidget() is one
        box = QRect(one.mapTo(page, one.rect().topLeft()), one.size()).adjusted(-2, -2, 2, 2)
        with_focus = luminance(page, box)
        one.clearFocus()
        QApplication.processEvents()
        changed = contrast(with_focus, luminance(page, box)) >= 3
        about = 2 * (one.width() + one.height())
        assert changed.sum() >= about  # as much as a line of one px round it


def test_a_click_brings_no_ring(page):
    button, line = page.pieces[0], page.pieces[5]
    line.setFocus()
    assert len(rings_on(page)) == 1
    where = button.mapTo(page, button.rect().center())
    QTest.mousePress(page.windowHandle(), Qt.MouseButton.LeftButton, pos=where)
    line.clearFocus()
    button.setFocus()
    assert not rings_on(page)
    QTest.mouseRelease(page.windowHandle(), Qt.MouseButton.LeftButton, pos=where)
    line.setFocus()
    assert len(rings_on(page)) == 1


def test_a_page_that_goes_takes_its_ring_along(page):
    line, button = page.pieces[5], page.pieces[0]
    line.setFocus()
    (ring,) = rings_on(page)
    line.setParent(None)
    ring.deleteLater()  # as the parent's end would
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    button.setFocus()
    assert len(rings_on(page)) == 1
    line.deleteLater()


def test_the_ring_follows_its_widget(page):
    field = page.pieces[5]
    field.setFocus()
    page.resize(500, 950)
    QApplication.processEvents()
    (ring,) = [
        w for w in page.findChildren(QWidget) if type(w).__name__ == "_Frame" and w.isVisible()
    ]
    assert ring.geometry() == field.geometry().adjusted(-2, -2, 2, 2)
    field.hide()
    QApplication.processEvents()
    assert not ring.isVisible()


def test_what_gets_the_focus_is_scrolled_into_sight(qtbot):
    """From outside its page too, and in a list to the row that the arrow keys are at."""

    class Window(QWidget):
        def focusNextPrevChild(self, forward):  # noqa: N802
            return step_focus(self, forward=forward)

    window, inner, area, after = Window(), QWidget(), QScrollArea(), QPushButton("after")
    qtbot.addWidget(window)
    for parent, pieces in (
        (inner, [QPushButton() for _ in range(40)]),
        (window, [area, after]),
    ):
        column = QVBoxLayout(parent)
        for one in pieces:
            column.addWidget(one)
    window.layout().setSizeConstraint(QLayout.SizeConstraint.SetNoConstraint)
    rows = QListWidget()
    rows.addItems([str(at) for at in range(20)])
    rows.setMinimumHeight(600)
    inner.layout().addWidget(rows)
    area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    area.setWidgetResizable(True)
    area.setWidget(inner)
    window.resize(300, 300)
    with qtbot.waitExposed(window):
        window.show()
    window.activateWindow()
    after.setFocus()
    qtbot.keyClick(after, Qt.Key.Key_Backtab)
    assert window.focusWidget() is rows

    def in_sight(piece, box):
        at = piece.mapTo(area.viewport(), box.topLeft())
        return area.viewport().rect().contains(QRect(at, box.size()))

    rows.setCurrentRow(19)
    reveal(rows)
    assert in_sight(rows.viewport(), rows.visualItemRect(rows.item(19)))
    rows.setCurrentRow(0)
    reveal(rows)
    assert in_sight(rows.viewport(), rows.visualItemRect(rows.item(0)))
    first = inner.layout().itemAt(0).widget()
    window.layout().itemAt(1).widget().setFocus()
    qtbot.keyClick(after, Qt.Key.Key_Tab)
    assert window.focusWidget() is first
    assert in_sight(first, first.rect())


def test_steps_show_the_focus_themselves(qtbot, ground):
    box = QWidget()
    qtbot.addWidget(box)
    strip = StepStrip(("Photo", "Scale"), box)
    strip.resize(500, 50)
    box.resize(500, 50)
    with qtbot.waitExposed(box):
        box.show()
    box.activateWindow()
    button = strip.buttons["Scale"]
    button.setFocus()
    QApplication.processEvents()
    seen = luminance(strip)
    button.clearFocus()
    QApplication.processEvents()
    assert (contrast(seen, luminance(strip)) >= 3).sum() > 2 * button.width()


@pytest.mark.parametrize(
    "make",
    [
        *(Tick, OneOf, Line, Notes, ListOf, TreeOf, TableOf),
        lambda: KeyButton("", "S"),
        lambda: Choice("one of"),
    ],
)
def test_edges_stand_out_from_the_ground(qtbot, ground, make):
    box = QWidget()
    qtbot.addWidget(box)
    piece = make()
    piece.setParent(box)
    piece.setGeometry(20, 20, 120, 40)
    box.resize(160, 80)
    with qtbot.waitExposed(box):
        box.show()
    seen = luminance(box)
    row = contrast(seen[40, 16:32], seen[4, 4])
    assert row.max() >= 3
