"""Haze that goes on where the look ends is told from dye that ends in an edge."""

from dataclasses import replace

import cv2
import numpy as np
import pytest
from shapely import Point, Polygon

from ptmark.dye.contour import Contour, contours
from ptmark.dye.fine import look_closely
from ptmark.dye.haze import DENSE_HAZE
from ptmark.dye.judge import NO_EDGE, Sight, reason_against
from ptmark.dye.sheet import Crop, lay_out

SIGHT = Sight(
    least_px=4.0, least_mm=None, photo_width=400, photo_height=400, usual_shift_px=0.6
)


def pink_disc(radius, blur, amount):
    """A disc of pale dye on white, 8 bit sRGB: green and blue taken, red left."""
    y, x = np.mgrid[:200, :200]
    disc = (np.hypot(x - 100, y - 100) < radius).astype(np.float32)
    dye = amount * cv2.GaussianBlur(disc, (0, 0), blur)
    codes = 255 * (0.8 * (1 - dye[..., None] * np.array([0.35, 0.95, 0.90]))) ** (1 / 2.2)
    return np.round(codes).astype(np.uint8)


def seen(rgb, look_radius, **ways):
    """The contours of the middle of a crop, looked at within a radius only."""
    y, x = np.mgrid[:200, :200]
    away = np.hypot(x - 100, y - 100)
    near, around, seeds = (
        mask.astype(np.uint8) for mask in (away < look_radius, away > 92, away < 5)
    )
    crop = Crop(rgb=rgb, near=near, around=around, seeds=seeds, origin=(100, 100))
    return contours(look_closely(*lay_out([crop])), 1.0, 4.0, **ways)


def contour(**changes):
    """A pale contour whose edge would do."""
    made = {
        "outline_px": np.array([[50.0, 50.0], [150.0, 50.0], [150.0, 150.0], [50.0, 150.0]]),
        "shift_px": 0.6,
        "end_shift_px": 0.6,
        "noise_px": 0.3,
        "contrast": 0.18,
        "left_outside": 0.02,
        "taken_light": np.array([0.05, 0.17, 0.16]),
        "area_px": 10_000.0,
        "cut": 0.0,
        "grain": 0.002,
    }
    return Contour(**(made | changes))


@pytest.mark.parametrize("fading", [{"left_outside": 3.0}, {"cut": 0.6}])
def test_haze_as_dense_as_a_faint_indication_is_told(fading):
    # 30 % of full dye is the stress set's faint indication
    light = np.array([0.14, 0.38, 0.36])
    dense = reason_against(contour(contrast=0.4, taken_light=light, **fading), SIGHT)
    assert dense == DENSE_HAZE
    pale = reason_against(contour(contrast=0.3, taken_light=0.75 * light, **fading), SIGHT)
    assert pale.startswith(NO_EDGE)
    assert pale != DENSE_HAZE


def test_an_edge_within_the_look_is_not_cut():
    (one,) = seen(pink_disc(30, 1.0, 0.4), 70)
    assert one.cut == 0.0


def test_dye_that_goes_on_where_the_look_ends_is_cut():
    (one,) = seen(pink_disc(60, 20.0, 0.2), 35)
    assert one.cut > 0.9
    assert "no edge" in reason_against(one, SIGHT)


@pytest.mark.parametrize(
    ("contrast", "cut", "called"),
    [
        (0.18, 0.0, True),
        (0.18, 0.2, False),
        (0.30, 0.10, True),
        (0.9, 0.5, True),
    ],
)
def test_the_paler_the_less_may_be_cut(contrast, cut, called):
    taken = contrast * np.array([0.35, 0.95, 0.90])
    one = contour(contrast=contrast, cut=cut, taken_light=taken)
    assert (reason_against(one, SIGHT) == "") is called


def test_what_takes_no_green_is_no_dye_though_red_is_raised():
    one = contour(taken_light=np.array([-0.05, 0.03, 0.03]), contrast=0.11)
    assert "too pale" in reason_against(one, SIGHT)


@pytest.mark.parametrize(("shift", "called"), [(0.65, True), (1.5, False)])
def test_colour_spread_outside_a_sharp_edge_is_no_haze(shift, called):
    # as strong JPEG leaves it round pale cracks of the stress set; haze is 3 times as soft
    taken = 0.3 * np.array([0.35, 0.95, 0.90])
    one = contour(contrast=0.3, shift_px=shift, left_outside=0.6, taken_light=taken)
    assert (reason_against(one, SIGHT) == "") is called


def stripe(width, **changes):
    """A contour 60 px long."""
    box = np.array([[50.0, 50.0], [110.0, 50.0], [110.0, 50.0 + width], [50.0, 50.0 + width]])
    return contour(outline_px=box, area_px=60 * width, **changes)


@pytest.mark.parametrize(("width", "called"), [(2.4, True), (8.0, False)])
def test_a_hue_that_would_be_brown_may_be_a_narrow_blobs_lost_colour(width, called):
    # as JPEG of quality 70 left a crack of 0.7 of full dye, of known truth, in warm light
    taken = np.array([0.221, 0.359, 0.383])
    one = stripe(width, contrast=0.42, grain=0.022, taken_light=taken)
    assert (reason_against(one, SIGHT) == "") is called


@pytest.mark.parametrize(("left", "called"), [(0.0, True), (0.3, False)])
def test_a_soft_hairline_with_nothing_left_outside_is_no_haze(left, called):
    taken = np.array([0.069, 0.134, 0.137])
    one = stripe(2.3, contrast=0.13, shift_px=0.9, cut=0.06, left_outside=left)
    assert (reason_against(replace(one, taken_light=taken), SIGHT) == "") is called


def test_what_is_too_pale_is_shown_where_it_was_drawn_without_being_traced():
    pale = pink_disc(20, 1.0, 0.08)
    (one,), (traced,) = (seen(pale, 60, trace_pale=each) for each in (False, True))
    told = [reason_against(each, SIGHT) for each in (one, traced)]
    assert told == ["too pale: 8 % of full dye"] * 2
    disc, outline = Point(200, 200).buffer(20), Polygon(one.outline_px)
    assert outline.intersection(disc).area > 0.9 * outline.union(disc).area
    assert one.area_px == pytest.approx(disc.area, rel=0.08)


def test_what_may_be_called_is_traced_either_way():
    clear = pink_disc(20, 1.0, 0.6)
    (one,), (other,) = (seen(clear, 60, trace_pale=each) for each in (False, True))
    assert np.array_equal(one.outline_px, other.outline_px)
    assert reason_against(one, SIGHT) == ""
