import io

import numpy as np
import pytest
from reportlab.platypus import SimpleDocTemplate, Spacer

from ptmark.report.closeup import close_ups
from ptmark.report.pages.rest import measured_pages
from ptmark.report.palette import CYAN, DEEP_BLUE


def test_what_calls_for_action_comes_first(weld):
    record, rgb = weld
    before = rgb.copy()
    made = close_ups(record, rgb, most=3)
    assert [one.caption.split(":")[0] for one in made] == ["A", "H", "B"]
    assert "12.00" not in made[0].caption or "rejectable" in made[0].caption
    assert "rejectable" in made[0].caption
    assert f"{record.indications[0]['length_mm']:.2f} ± 0.10 mm" in made[0].caption
    assert np.array_equal(rgb, before)


def test_pixels_are_enlarged_as_they_are(make):
    """A noise photo: every colour shown away from the marks is one of the photo's own."""
    rgb = np.random.default_rng(3).integers(0, 255, (200, 300, 3), dtype=np.uint8)
    outline = make["ring"](150, 100, 20, 16)
    record = make["record"](300, 200, [make["entry"](0, outline)])
    (one,) = close_ups(record, rgb, most=9)
    own = {tuple(color) for color in rgb.reshape(-1, 3)}
    border = one.rgb[:40].reshape(-1, 3)
    assert {tuple(color) for color in border} <= own


def test_the_hairline_lies_on_the_outline(make):
    """A square of known pixels: its edge and the hairline share their place."""
    rgb = np.full((200, 300, 3), 230, np.uint8)
    rgb[80:120, 130:170] = (190, 40, 60)
    # The pixel frame's (0, 0) is a pixel's centre, so the square's edges lie at halves.
    outline = np.array([[129.5, 79.5], [169.5, 79.5], [169.5, 119.5], [129.5, 119.5]])
    record = make["record"](300, 200, [make["entry"](0, outline)])
    (one,) = close_ups(record, rgb, most=1)
    row = one.rgb[one.rgb.shape[0] // 2].astype(int)
    line = np.flatnonzero((np.abs(row - CYAN) < 60).all(axis=1))
    left, right = line[line < 300].mean(), line[line > 300].mean()
    red = np.flatnonzero((np.abs(row - (190, 40, 60)) < 10).all(axis=1))
    # The line is about 4 px wide with its halo; red begins and ends right behind it.
    assert left < red[0] <= left + 4
    assert right - 4 <= red[-1] < right


def test_a_thin_crack_is_not_hidden_by_its_line(make):
    rgb = np.full((900, 1200, 3), 230, np.uint8)
    outline = np.array([[100.0, 449.5], [1100.0, 449.5], [1100.0, 453.5], [100.0, 453.5]])
    rgb[450:454, 100:1101] = (190, 40, 60)
    record = make["record"](1200, 900, [make["entry"](0, outline)])
    (one,) = close_ups(record, rgb, most=1)
    column = one.rgb[:, one.rgb.shape[1] // 2].astype(int)
    assert (column[:, 0] - column[:, 2] > 60).any()  # its red still shows
    assert (np.abs(column - DEEP_BLUE) < 40).all(axis=1).any()  # between blue lines


@pytest.mark.parametrize("at", [(0, 0), (299, 199), (-40, -40), (500, 100)])
def test_at_and_beyond_the_border(make, at):
    outline = make["ring"](*at, 20, 16)
    record = make["record"](300, 200, [make["entry"](0, outline)])
    (one,) = close_ups(record, np.full((200, 300, 3), 90, np.uint8), most=1)
    assert one.rgb.shape == (450, 600, 3)


def test_none(make):
    assert close_ups(make["record"](30, 20, []), np.zeros((20, 30, 3), np.uint8), most=5) == []


@pytest.mark.parametrize("left", [115, 140])
def test_the_heading_stands_on_the_page_of_its_first_pictures(weld, left, pages_of):
    paper = SimpleDocTemplate(made := io.BytesIO(), pagesize=(512, 612))  # 72 pt of margin
    paper.build([Spacer(1, 456 - left), *measured_pages(*weld, 360)])
    (told,) = [page for page in pages_of(made) if "Close-ups" in page]
    assert "A: " in told.split("Close-ups")[1]
