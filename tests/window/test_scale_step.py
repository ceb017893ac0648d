"""Picking the scale with the mouse; what is refused is said in place."""

import cv2
import pytest
from PySide6.QtCore import QPointF, Qt

from ptmark.window.card_check import kept_check

pytestmark = [pytest.mark.gui, pytest.mark.slow]

KEY, LEFT = Qt.Key, Qt.MouseButton.LeftButton


@pytest.fixture
def bare(qtbot, window, idle, scene_without_card):
    """The window with a photo that shows no card."""
    with qtbot.waitSignal(window.looking.suggested):
        window.open(scene_without_card)
    idle()
    return window


def click(qtbot, window, x, y):
    where = window.view.port.to_widget(QPointF(x, y)).toPoint()
    qtbot.mouseClick(window.view, LEFT, pos=where)


def fill(qtbot, edit, text):
    edit.setFocus()
    edit.selectAll()
    qtbot.keyClicks(edit, text)


def test_without_a_card_the_scale_step_says_so(bare):
    assert bare.session.step == "Scale"
    assert "No scale card" in bare.scale_step.notice.text.text()
    assert bare.session.inspection.surface is None


def test_a_line_is_picked_and_its_length_typed(qtbot, bare, idle):
    page = bare.scale_step
    page.kinds["line"].click()
    click(qtbot, bare, 200, 180)
    click(qtbot, bare, 1000, 180)
    (x0, y0), (x1, y1) = page._points
    fill(qtbot, page.lengths["line"][0], "100 mm")
    qtbot.keyClick(page.lengths["line"][0], KEY.Key_Return)
    idle()
    surface = bare.session.inspection.surface
    assert surface.reference == "line"
    assert surface.mm_per_px() == pytest.approx(100 / abs(x1 - x0), rel=1e-6)
    assert y0 == pytest.approx(y1)
    # 8 px for each mm were drawn; the widget's pixels are about 2 photo px wide.
    assert surface.mm_per_px() == pytest.approx(1 / 8, rel=4 / 800)


def test_points_picked_in_one_photo_are_no_scale_of_the_next(
    qtbot, bare, idle, scene_without_card, tmp_path
):
    """Nothing is ready to use there, and the length of before is offered to be typed over."""
    page = bare.scale_step
    page.choose("line")
    for x in (200, 1000):
        click(qtbot, bare, x, 180)
    length = page.lengths["line"][0]
    length.setText("100 mm")
    page.use()
    idle()
    assert bare.session.inspection.surface is not None
    other = tmp_path / "other.png"
    cv2.imwrite(str(other), cv2.imread(str(scene_without_card))[::-1])
    with qtbot.waitSignal(bare.looking.suggested):
        bare.open(other)
    idle()
    assert not page.use_button.isEnabled()
    page.choose("line")
    for x in (200, 1000):
        click(qtbot, bare, x, 180)
    assert bare.focusWidget() is length
    assert length.selectedText() == "100 mm"


def test_inches_are_understood(qtbot, bare, idle):
    page = bare.scale_step
    page.kinds["line"].click()
    click(qtbot, bare, 200, 180)
    click(qtbot, bare, 1000, 180)
    fill(qtbot, page.lengths["line"][0], "4 in")
    qtbot.keyClick(page.lengths["line"][0], KEY.Key_Return)
    idle()
    assert bare.session.inspection.state.reference.length_mm == pytest.approx(101.6)


def test_a_refused_reference_is_said_in_place_and_changes_nothing(qtbot, bare, idle):
    page = bare.scale_step
    page.kinds["rectangle"].click()
    for x, y in ((200, 200), (700, 500), (700, 200), (200, 500)):  # crosses itself
        click(qtbot, bare, x, y)
    fill(qtbot, page.lengths["rectangle"][0], "62.5 mm")
    fill(qtbot, page.lengths["rectangle"][1], "37.5 mm")
    page.use_button.click()
    idle()
    assert page.notice.isVisible()
    assert page.notice.text.text()
    assert bare.session.inspection.surface is None
    assert bare.session.inspection.state.reference is None


def test_a_refusal_scrolls_into_view_and_reads_as_sentences(qtbot, bare, idle):
    """On a small screen the button stands far below the title that the refusal is under."""
    page = bare.scale_step
    page.kinds["line"].click()
    click(qtbot, bare, 200, 180)
    click(qtbot, bare, 1000, 180)
    fill(qtbot, page.lengths["line"][0], "long")
    for _ in range(2):  # the same again is shown again
        page.verticalScrollBar().setValue(page.verticalScrollBar().maximum())
        page.use_button.click()
        qtbot.waitUntil(lambda: not page.notice.visibleRegion().isEmpty())
        assert page.notice.visibleRegion().boundingRect().height() == page.notice.height()
    said = page.notice.text.text()
    assert "is not a length. Write a length" in said
    assert said.endswith(".")


def test_a_length_that_is_none_is_said_in_place(qtbot, bare, idle):
    page = bare.scale_step
    page.kinds["line"].click()
    click(qtbot, bare, 200, 180)
    click(qtbot, bare, 1000, 180)
    fill(qtbot, page.lengths["line"][0], "long")
    qtbot.keyClick(page.lengths["line"][0], KEY.Key_Return)
    assert "'long' is not a length" in page.notice.text.text()
    assert bare.session.inspection.surface is None


def test_a_point_is_moved_by_keys_after_it_was_picked(qtbot, bare):
    page = bare.scale_step
    page.kinds["line"].click()
    click(qtbot, bare, 200, 180)
    click(qtbot, bare, 1000, 180)
    before = page._points[1]
    qtbot.keyClick(bare.view, KEY.Key_Right)
    assert page._points[1][0] == pytest.approx(before[0] + 1 / bare.view.port.scale)
    qtbot.keyClick(bare.view, KEY.Key_Backspace)
    assert page._points is None
    assert not page.use_button.isEnabled()


def test_relief_height_widens_or_narrows_nothing_silently(qtbot, opened, idle):
    measured = opened.session.judgement.measured
    name = opened.session.state.marked[0].id
    before = measured[name].length
    opened.session.go("Scale")
    fill(qtbot, opened.scale_step.relief, "0 mm")
    qtbot.keyClick(opened.scale_step.relief, KEY.Key_Return)
    idle()
    after = opened.session.judgement.measured[name].length
    assert opened.session.state.relief_mm == 0.0
    assert after.budget["relief"] < before.budget["relief"]
    fill(qtbot, opened.scale_step.relief, "high")
    qtbot.keyClick(opened.scale_step.relief, KEY.Key_Return)
    assert "'high' is not a length" in opened.scale_step.relief_notice.text.text()
    assert opened.session.state.relief_mm == 0.0


def test_another_reference_is_added_and_taken_away(qtbot, opened, idle):
    opened.session.go("Scale")
    page = opened.scale_step
    assert page.another_button.text() == "Add another reference"
    page.another_button.click()
    page.kinds["line"].click()
    click(qtbot, opened, 200, 180)
    click(qtbot, opened, 1000, 180)
    fill(qtbot, page.lengths["line"][0], "100 mm")
    qtbot.keyClick(page.lengths["line"][0], KEY.Key_Return)
    idle()
    surface = opened.session.inspection.surface
    assert (surface.reference, surface.beside.reference) == ("card", "line")
    assert "Scale from: card and line. They differ by" in page._now.text()
    assert page.another_button.text() == "Use one reference only"
    page.another_button.click()
    idle()
    assert opened.session.inspection.surface.beside is None
    assert page.kind == "card"


def test_a_second_that_contradicts_is_said_and_changes_nothing(qtbot, opened, idle):
    opened.session.go("Scale")
    page, before = opened.scale_step, opened.session.state.reference
    page.another_button.click()
    page.kinds["line"].click()
    click(qtbot, opened, 200, 180)
    click(qtbot, opened, 1000, 180)
    fill(qtbot, page.lengths["line"][0], "110 mm")
    qtbot.keyClick(page.lengths["line"][0], KEY.Key_Return)
    idle()
    assert "contradict each other" in page.notice.text.text()
    assert opened.session.state.reference is before


def test_a_thick_card_is_told_by_its_height(qtbot, opened, idle):
    opened.session.go("Scale")
    page, flat = opened.scale_step, opened.session.inspection.surface.mm_per_px()
    fill(qtbot, page.offset, "3 mm")
    qtbot.keyClick(page.offset, KEY.Key_Return)
    idle()
    assert opened.session.state.reference.offset_mm == 3.0
    assert opened.session.inspection.surface.mm_per_px() > flat
    fill(qtbot, page.offset, "thick")
    qtbot.keyClick(page.offset, KEY.Key_Return)
    assert "'thick' is not a length" in page.notice.text.text()


def test_a_check_length_is_typed_once_and_holds_for_the_next_photo(
    qtbot, window, idle, scene_file, tmp_path
):
    """All lengths follow the print: 80 mm that measure 79.2 mm make them 1 % shorter."""
    with qtbot.waitSignal(window.looking.suggested):
        window.open(scene_file)
    idle()
    page, session = window.scale_step, window.session
    plain = session.inspection.surface.mm_per_px()
    assert "check length was not measured" in page._cautions.text.text()
    fill(qtbot, page.lengths["card"][0], "79.2 mm")
    qtbot.keyClick(page.lengths["card"][0], KEY.Key_Return)
    idle()
    assert session.inspection.surface.mm_per_px() == pytest.approx(0.99 * plain, rel=1e-3)
    assert "check length was not measured" not in page._cautions.text.text()
    other = tmp_path / "next.png"
    other.write_bytes(scene_file.read_bytes() + b"\0")  # another file, so another photo
    with qtbot.waitSignal(window.looking.suggested):
        window.open(other)
    idle()
    assert session.inspection.surface.mm_per_px() == pytest.approx(0.99 * plain, rel=1e-3)
    assert "check length is 79.20 mm, as entered on" in page._now.text()
    page.lengths["card"][0].clear()
    page.use()
    idle()
    assert session.inspection.surface.mm_per_px() == pytest.approx(plain, rel=1e-3)
    assert kept_check() is None


def test_a_check_length_that_is_refused_is_not_kept(qtbot, window, idle, scene_file):
    with qtbot.waitSignal(window.looking.suggested):
        window.open(scene_file)
    idle()
    fill(qtbot, window.scale_step.lengths["card"][0], "8 mm")
    window.scale_step.use()
    idle()
    assert "check length" in window.scale_step.notice.text.text()
    assert kept_check() is None
