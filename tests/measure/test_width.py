"""Where the width is judged, and what blur does to the crossing of a crack's arms."""

import numpy as np
import pytest
import shapely
from scipy.ndimage import gaussian_filter

from ptmark.dye import EdgeQuality
from ptmark.measure import Conditions, measure_outline
from ptmark.measure.medial import medial_of
from ptmark.measure.width import (
    FILLED_PER_SHIFT,
    across_width,
    blur_u,
    is_crossing,
    width_chords,
)

FLAT = Conditions(relief_mm=0.0)


def star(arms, reach=6.0, half=0.4):
    """Capsules from one middle, drawn by Shapely."""
    turns = np.linspace(0, 2 * np.pi, arms, endpoint=False)
    lines = [
        shapely.LineString([(0, 0), (reach * np.cos(t), reach * np.sin(t))]) for t in turns
    ]
    rim = shapely.segmentize(shapely.union_all(lines).buffer(half), 0.2).exterior
    return shapely.get_coordinates(rim)[:-1]


@pytest.mark.parametrize("arms", [3, 4, 6])
def test_arms_that_cross_are_told(arms):
    outline = star(arms)
    assert is_crossing(outline, medial_of(outline))


def test_what_has_no_arms_is_no_crossing(shapes):
    bend = shapes["arc"](4.0, 150, 0.6)
    for outline in (shapes["ellipse"](2.0, 1.8), shapes["box"](12.0, 1.5), bend, star(2)):
        assert not is_crossing(outline, medial_of(outline))


@pytest.mark.parametrize(("degrees", "moved"), [(120, 0.45), (90, 0.77), (60, 1.28)])
def test_blur_fills_a_corner_as_far_as_is_said(degrees, moved):
    """SciPy blurs a corner of background; where its bisector reads a half is looked up.

    90 degrees in closed form: a quadrant holds a half where Phi(d / sqrt 2) is sqrt(1 / 2).
    """
    sigma, size = 20.0, 501
    y, x = np.mgrid[:size, :size] - float(size // 2)
    background = np.abs(np.degrees(np.arctan2(y, x))) < degrees / 2
    along = gaussian_filter(background.astype(float), sigma)[size // 2, size // 2 :]
    crossing = np.interp(0.5, along, np.arange(len(along)))
    assert crossing / sigma == pytest.approx(moved, abs=0.04)


@pytest.mark.parametrize(("source", "off"), [("suggested", 1.3), ("snapped", 1.3), ("hand", 0)])
def test_a_crossing_is_corrected_for_half_the_blur_of_six_arms_and_states_it(
    flat_map, source, off
):
    """A Gaussian edge of sigma 1 px moves by 0.2533 px from 50 to 60 % of its height."""
    edge = EdgeQuality(shift_px=0.25, noise_px=0.0, source=source)
    outline = (star(4) + 30) * 20.0
    found = measure_outline(outline, flat_map(), edge, FLAT)
    # Corners of 60 degrees move by 1.28 sigma on either side, as above: from 0 to 2.6 sigma,
    # 1 px of 0.05 mm; a rectangle's middle and its second moment about that, or about 0 where
    # it is not corrected for: JCGM 100:2008, 4.3.7 and F.2.4.5.
    filled = 2.6 * 0.05 / np.sqrt(12 if off else 3)
    plain = 2 * edge.shift_px * 0.05 / np.sqrt(3)
    assert found.width.budget["edge"] == pytest.approx(np.hypot(filled, plain), rel=0.02)
    assert found.length.budget["edge"] == pytest.approx(plain)
    # of four arms 0.8 wide the circle touches the corners, at 0.4 times the root of 2
    assert found.width.value == pytest.approx(0.8 * np.sqrt(2) - off * 0.05, abs=0.005)
    assert pytest.approx(5.186, abs=0.001) == FILLED_PER_SHIFT


def test_no_correction_takes_more_than_half_a_crossing(flat_map):
    edge = EdgeQuality(shift_px=10.0, noise_px=0.0)
    found = measure_outline((star(4) + 30) * 20.0, flat_map(), edge, FLAT)
    assert found.width.value == pytest.approx(0.4 * np.sqrt(2), abs=0.005)


def test_width_is_judged_square_to_length_and_of_round_ones_along_the_sight(shapes):
    foot = np.array([30.0, -40.0])
    long = shapes["box"](12.0, 1.5)
    ends = across_width(medial_of(long), (long[0], long[1]), foot)
    np.testing.assert_allclose(np.abs(ends[1] - ends[0]), [0.0, 1.5], atol=1e-6)
    disc = shapes["ellipse"](2.0, 1.9)
    ends = across_width(medial_of(disc), (disc[0], disc[120]), foot)
    way = (ends[1] - ends[0]) / np.hypot(*(ends[1] - ends[0]))
    np.testing.assert_allclose(np.abs(way), [0.6, 0.8], atol=0.01)


def test_of_what_is_round_both_chords_count(shapes):
    """A map that leans the wrong way stretches one way only: the other chord would hide it."""
    outline = shapes["ellipse"](2.0, 1.9)
    disc = medial_of(outline)
    ends = (outline[0], outline[120])  # along x
    foot = disc.centre + np.array([30.0, 0.0])  # seen along x
    sight, square = width_chords(disc, ends, foot)
    np.testing.assert_allclose(np.abs(np.diff(sight, axis=0))[0, 1], 0.0, atol=1e-6)
    np.testing.assert_allclose(np.abs(np.diff(square, axis=0))[0, 0], 0.0, atol=0.02)
    long = shapes["box"](12.0, 1.5)
    assert len(width_chords(medial_of(long), (long[0], long[1]), foot)) == 1


def test_a_thin_line_states_what_a_wrong_blur_does_to_its_width():
    """A box blurred by SciPy, its true width sought with a blur 5 % too large and too small.

    What stays the same is the width seen at half of the line's own ridge.
    """
    step, blur = 0.01, 2.0
    x = np.arange(-30, 30, step)

    def seen(width, by):
        line = gaussian_filter((np.abs(x) < width / 2).astype(float), by / step)
        ridge = gaussian_filter(line, 0.6 * by / step).max()  # the plateau is smoothed
        return float(np.count_nonzero(line > ridge / 2)) * step

    width = 3.0 * blur
    there = seen(width, blur)
    tried = np.linspace(0.7 * width, 1.3 * width, 61)
    wrong = [np.interp(there, [seen(w, by) for w in tried], tried) for by in (1.9, 2.1)]
    shift = 0.1 * np.sqrt(2 * np.pi) * blur  # from 50 to 60 % of a Gaussian edge
    assert blur_u(width, shift) == pytest.approx((wrong[0] - wrong[1]) / 2, rel=0.1)


def test_a_wide_indication_has_no_part_of_a_wrong_blur():
    assert blur_u(40.0, 0.5) < 0.001
