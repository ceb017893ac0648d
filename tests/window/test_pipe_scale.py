"""A pipe's edges picked with the mouse, its diameter typed; what does not fit a pipe is off."""

import pytest
from PySide6.QtCore import QPointF, Qt

from ptmark.errors import PtmarkError
from ptmark.scale import LinesReference, PipeMap, PipeReference, RectangleReference
from ptmark.units import parse_length
from ptmark.window.photos.row import PhotoRow
from ptmark.window.references import (
    build_reference,
    paired,
    parted,
    take_apart,
    takes_another,
)

pytestmark = [pytest.mark.gui, pytest.mark.slow]

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def bare(qtbot, window, idle, scene_without_card):
    """The window with a photo that shows no card."""
    with qtbot.waitSignal(window.looking.suggested):
        window.open(scene_without_card)
    idle()
    return window


def pick(qtbot, view, *places):
    for x, y in places:
        qtbot.mouseClick(view, LEFT, pos=view.port.to_widget(QPointF(x, y)).toPoint())


def test_a_rule_along_a_pipe_takes_two_clicks_and_is_shown_again(qtbot, bare, idle):
    page = bare.scale_step
    page.kinds["pipe rule"].click()
    pick(qtbot, bare.view, (200, 400), (1000, 410))
    for edit, text in zip(page.lengths["pipe rule"], ("168.3 mm", "60 mm"), strict=True):
        edit.setText(text)
    page.use()
    idle()
    inspection = bare.session.inspection
    assert inspection.surface.reference == "line on a pipe"
    assert inspection.state.reference.on.length_mm == 60
    assert page.kind == "pipe rule"
    assert [edit.text() for edit in page.lengths["pipe rule"]] == ["168.3 mm", "60 mm"]


def test_a_line_along_what_shows_no_edges_is_refused_in_place(qtbot, bare, idle):
    page = bare.scale_step
    page.kinds["pipe axis"].click()
    pick(qtbot, bare.view, (200, 400), (1000, 410))
    page.lengths["pipe axis"][0].setText("168.3 mm")
    page.use()
    idle()
    assert bare.session.inspection.surface is None
    assert "not clear" in page.notice.text.text()


@pytest.mark.parametrize(
    ("kind", "count", "texts"),
    [
        ("pipe", 4, ["168.3mm"]),
        ("pipe axis", 2, ["6in"]),
        ("pipe rule", 2, ["168.3mm", "50mm"]),
        ("pipe card", 2, ["168.3mm"]),
        ("pipe rectangle", 6, ["168.3mm", "85.6mm", "53.98mm"]),
    ],
)
def test_what_was_picked_and_typed_comes_back(kind, count, texts):
    points = [(10.0 * i, 7.0 * i) for i in range(count)]
    shown, back, sizes = take_apart(build_reference(kind, points, texts))
    assert (shown, back) == (kind, points)
    assert sizes == [parse_length(text, where="") for text in texts]


def test_diameter_and_two_edges_are_all_it_takes(qtbot, bare, idle):
    page = bare.scale_step
    page.kinds["pipe"].click()
    pick(qtbot, bare.view, (200, 100), (1000, 100), (200, 700), (1000, 700))
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


PLACES = ((200.0, 100.0), (1000.0, 100.0), (200.0, 700.0), (1000.0, 700.0))
EDGES = {"edges_px": PLACES, "diameter_mm": 168.3}
RECTANGLE = RectangleReference(
    corners_px=((0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 3.0)), width_mm=40.0, height_mm=30.0
)


@pytest.mark.parametrize("pipe_first", [True, False])
def test_edges_and_what_lies_on_the_pipe_are_one_reference(pipe_first):
    edges = PipeReference(**EDGES)
    both = paired(edges, RECTANGLE) if pipe_first else paired(RECTANGLE, edges)
    assert both == PipeReference(**EDGES, on=RECTANGLE)
    assert parted(both) == (edges, RECTANGLE)
    assert paired(*parted(both)) == both  # used again it loses nothing
    assert not takes_another(both)


def test_what_does_not_go_with_a_pipe_is_refused():
    edges, axis = (
        PipeReference(**EDGES),
        PipeReference(axis_px=((0, 0), (9, 0)), diameter_mm=60),
    )
    lines = LinesReference(
        first_px=((0, 0), (9, 0)), first_mm=9, second_px=((0, 0), (0, 9)), second_mm=9
    )
    for first, second in ((axis, RECTANGLE), (edges, axis), (edges, lines), (edges, edges)):
        with pytest.raises(PtmarkError, match="two outer edges"):
            paired(first, second)


def test_a_record_of_both_shows_both_again_and_keeps_them(qtbot, bare, idle):
    page, session = bare.scale_step, bare.session
    both = PipeReference(**EDGES, on=RECTANGLE)
    session.inspection.change("as a record has it", reference=both)
    idle()
    assert page.kind == "rectangle"
    assert "one reference" in page.another_button.text()
    page.another_button.click()  # the edges alone
    idle()
    assert session.inspection.state.reference == PipeReference(**EDGES)
    assert page.kind == "pipe"
    assert page.another_button.isEnabled()
    page.another_button.click()  # and again with another one
    assert "second reference" in page.notice.text.text()
