"""A pipe's edges picked with the mouse, its diameter typed; what does not fit a pipe is off."""

import pytest
from PySide6.QtCore import QPointF, Qt

from ptmark.scale import PipeMap
from ptmark.window.photo_row import PhotoRow

pytestmark = [pytest.mark.gui, pytest.mark.slow]

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def bare(qtbot, window, idle, scene_without_card):
    """The window with a photo that shows no card."""
    with qtbot.waitSignal(window.looking.suggested, timeout=20_000):
        window.open(scene_without_card)
    idle()
    return window


def test_diameter_and_two_edges_are_all_it_takes(qtbot, bare, idle):
    page = bare.scale_step
    page.kinds["pipe"].click()
    for x, y in ((200, 100), (1000, 100), (200, 700), (1000, 700)):
        where = bare.view.port.to_widget(QPointF(x, y)).toPoint()
        qtbot.mouseClick(bare.view, LEFT, pos=where)
    assert len(page._points) == 4
    edit = page.lengths["pipe"][0]
    edit.setFocus()
    qtbot.keyClicks(edit, "168.3 mm")
    qtbot.keyClick(edit, Qt.Key.Key_Return)
    idle()
    surface = bare.session.inspection.surface
    assert isinstance(surface, PipeMap)
    assert surface.cylinder.radius == pytest.approx(168.3 / 2)
    # Edges 600 px apart are nearer together than 168.3 mm: the limb is not the axis plane.
    assert surface.mm_per_px() < 168.3 / 600
    assert "focal length" in page._cautions.text.text()
    row = bare.findChild(PhotoRow)
    assert not row.ways["above"].isEnabled()
    assert row.ways["grid"].isEnabled()
    row.ways["grid"].click()  # painted along the cylinder
    bare.view.grab()
    assert bare.session.inspection.state.reference.diameter_mm == pytest.approx(168.3)
