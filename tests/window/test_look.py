"""How it looks: contrast, marks that hide nothing, marks that panning only moves."""

import numpy as np
import pytest
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPalette, QPolygonF, QTransform

from ptmark.window.bits import CommitEdit
from ptmark.window.palette import CYAN, CYAN_PALE, DEEP_BLUE, HALO, tone
from ptmark.window.view import overlay
from ptmark.window.view.crowd import Crowd
from ptmark.window.view.levels import build_levels
from ptmark.window.view.marks import Mark
from ptmark.window.view.overlay import Overlay
from ptmark.window.view.photo_view import PhotoView
from ptmark.window.view.rings import Rings


def luminance(color: QColor) -> float:
    """Relative luminance, WCAG 2.2 (W3C Recommendation), glossary "relative luminance"."""
    parts = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4
             for c in (color.redF(), color.greenF(), color.blueF())]  # fmt: skip
    return 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2]


def contrast(one: QColor, other: QColor) -> float:
    """Contrast ratio, WCAG 2.2 glossary: (L1 + 0.05) / (L2 + 0.05)."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_the_contrast_formula_gives_its_published_ends():
    # WCAG 2.2: ratios range from 1 to 21.
    assert contrast(QColor("black"), QColor("white")) == pytest.approx(21)
    assert contrast(QColor("#777"), QColor("#777")) == 1


@pytest.mark.parametrize("ground", ["#efefef", "#ffffff", "#2e3136", "#26282c", "#000000"])
@pytest.mark.parametrize("name", ["acceptable", "rejectable", "undecided", "quiet", "accent"])
def test_tones_reach_aa_on_light_and_dark_grounds(name, ground):
    # WCAG 2.2, success criterion 1.4.3: 4.5 to 1 for text.
    palette = QPalette(QColor(ground))
    palette.setColor(QPalette.ColorRole.Window, QColor(ground))
    assert contrast(tone(name, palette), QColor(ground)) >= 4.5


@pytest.mark.parametrize("ground", ["#ffffff", "#1e2023"])
def test_hints_in_fields_reach_aa(qtbot, qapp, ground):
    # WCAG 2.2, success criterion 1.4.3; Qt's own hint is half clear and reaches 4.0 only.
    before = qapp.palette()
    qapp.setPalette(QPalette(QColor(ground)))
    edit = CommitEdit()
    qtbot.addWidget(edit)
    palette = edit.palette()
    qapp.setPalette(before)
    assert contrast(palette.color(QPalette.ColorRole.PlaceholderText), QColor(ground)) >= 4.5


def test_letters_reach_aa_on_their_labels():
    assert contrast(CYAN_PALE, HALO) >= 4.5
    assert contrast(CYAN_PALE, DEEP_BLUE) >= 4.5


def test_a_mark_shows_on_white_developer_and_on_dark_metal():
    # WCAG 2.2, success criterion 1.4.11: 3 to 1 for graphics; line or halo must reach it.
    for ground in (QColor(236, 234, 232), QColor(70, 70, 74)):
        assert max(contrast(CYAN, ground), contrast(HALO, ground)) >= 3


def line(width):
    """A strip 200 px long."""
    half = width / 2
    corners = [(100, 100 - half), (300, 100 - half), (300, 100 + half), (100, 100 + half)]
    return QPolygonF([QPointF(x, y) for x, y in corners])


def test_a_thin_indication_is_ringed_at_a_distance_so_that_it_stays_in_sight():
    thin = line(4)
    path = Rings().path(thin, QTransform(1, 0, 0, 1, 0.5, 0.5))
    box = path.boundingRect()
    assert box.top() == pytest.approx(98.5 - 5, abs=0.6)
    assert box.left() == pytest.approx(100.5 - 5, abs=0.6)
    assert not path.intersects(QRectF(101, 99, 198, 3).translated(0, 20))
    # No part of the ring's line lies on the dye.
    ring = path.toSubpathPolygons()[0]
    assert all(abs(p.y() - 100.5) > 5 or not 100 < p.x() < 300 for p in ring.toList())


def test_a_wide_indication_is_outlined_itself():
    path = Rings().path(line(60), QTransform(1, 0, 0, 1, 0.5, 0.5))
    assert path.boundingRect() == QRectF(100.5, 70.5, 200, 60)


@pytest.fixture
def view(qtbot):
    made = PhotoView()
    qtbot.addWidget(made)
    made.resize(616, 416)
    made.set_levels(build_levels(np.full((300, 450, 3), 128, np.uint8)))
    made.show_marks([Mark("A", line(60), "taken")], frozenset())
    made.setFocusPolicy(Qt.FocusPolicy.NoFocus)  # the ring of the focus is no mark
    made.show()
    qtbot.waitExposed(made)
    made.grab()
    return made


def marked_columns(view):
    """Where the mark's bright line crosses the middle row of the strip, widget px."""
    image = view.grab().toImage()
    ratio = image.devicePixelRatio()
    row = int(view.port.to_widget(QPointF(0, 100)).y() * ratio)
    return [x for x in range(image.width()) if image.pixelColor(x, row).blue() > 200]


def test_panning_moves_the_marks_without_painting_them_anew(view):
    painted, before = view.overlay.painted, marked_columns(view)
    view.pan(QPointF(37, 11))
    after = marked_columns(view)
    assert view.overlay.painted == painted
    assert [x + 37 for x in before] == after
    ends = (
        view.port.to_widget(QPointF(100, 100)).x(),
        view.port.to_widget(QPointF(300, 100)).x(),
    )
    assert after[0] == pytest.approx(ends[0], abs=2)
    assert after[-1] == pytest.approx(ends[1], abs=2)


def test_a_long_drag_never_shows_less_than_a_fresh_picture(view):
    """The picture ahead is painted in pieces; what is shown is always whole."""
    view.show_marks(many_marks(), frozenset())
    view.grab()
    ahead, widest = view.overlay.ahead, 0
    for step in range(90):
        view.pan(QPointF(-17 if step < 60 else 23, 5 if step % 2 else -5))
        if step % 10:
            view.grab()
            continue
        shown = view.grab().toImage()
        kept, view.overlay = view.overlay, Overlay()
        fresh = view.grab().toImage()
        view.overlay = kept
        widest = max(widest, _unlike(shown, fresh))
    assert view.overlay.ahead > ahead + 4  # tiles that were painted ahead came into sight
    assert widest <= 0.02  # letters may choose another free place


def test_what_a_far_pan_brings_is_painted_over_the_next_frames(qtbot, view, monkeypatch):
    monkeypatch.setattr(overlay, "_IN_SIGHT_S", 0.0)  # a piece a frame
    view.show_marks(many_marks(), frozenset())
    view.grab()
    view.pan(QPointF(-420, 0))
    view.repaint()
    assert view.overlay.rests
    qtbot.waitUntil(lambda: not view.overlay.rests)  # nobody asks for it
    shown = view.grab().toImage()
    view.overlay = Overlay()
    assert _unlike(shown, view.grab().toImage()) <= 0.02  # letters may choose another place


def many_marks():
    box = QPolygonF([QPointF(0, 0), QPointF(40, 0), QPointF(40, 40), QPointF(0, 40)])
    return [
        Mark(f"{x}", box.translated(90.0 * x - 900, 60.0 * (x % 4)), "taken") for x in range(30)
    ]


def _unlike(one, other):
    """The share of pixels that differ."""
    seen = [
        one.pixel(x, y) != other.pixel(x, y)
        for x in range(0, one.width(), 3)
        for y in range(0, one.height(), 3)
    ]
    return sum(seen) / len(seen)


def test_guides_move_along_and_a_change_of_one_is_seen(view):
    view.guides.weld = QPolygonF([QPointF(50, 40), QPointF(350, 40)])
    view.guides.weld_says = "one"
    view.grab()
    painted = view.overlay.painted
    view.pan(QPointF(37, 11))
    view.grab()
    assert view.overlay.painted == painted
    view.guides.weld_says = "two"
    view.grab()
    assert view.overlay.painted == painted + 1
    view.show_marks([], frozenset())
    bare = view.grab().toImage()
    view.guides.weld = None
    assert view.grab().toImage() != bare  # painted though there is no mark


def test_zoom_selection_and_a_far_pan_paint_anew(view):
    for change in (
        lambda: view.zoom(1.3),
        lambda: view.show_marks(view.marks, frozenset("A")),
        lambda: view.pan(QPointF(430, 0)),
    ):
        painted = view.overlay.painted
        change()
        view.grab()
        assert view.overlay.painted == painted + 1


def test_a_crowd_knows_what_is_taken_across_cells():
    crowd = Crowd()
    crowd.add(QRectF(60, 60, 10, 10))
    assert not crowd.free(QRectF(69, 69, 100, 5))
    assert crowd.free(QRectF(71, 60, 10, 10))
    assert not crowd.free(QRectF(-50, -50, 200, 200))
