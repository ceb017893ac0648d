"""Colour that JPEG spreads: narrow dye keeps its hue, a square of colour is no dye."""

import importlib.util
from dataclasses import replace
from pathlib import Path

import cv2
import numpy as np
import pytest

from ptmark.dye.contour import Contour, contours
from ptmark.dye.fine import look_closely
from ptmark.dye.haze import dense_places
from ptmark.dye.judge import Sight, reason_against
from ptmark.dye.same_dye import browner, ends_may_not_show, of_the_same_dye
from ptmark.dye.sheet import Crop, lay_out
from ptmark.dye.suggest import suggest

_SPEC = importlib.util.spec_from_file_location(
    "dye_scenes", Path(__file__).with_name("scenes.py")
)
scenes = importlib.util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(scenes)

SIGHT = Sight(
    least_px=4.0, least_mm=None, photo_width=400, photo_height=400, usual_shift_px=0.4
)
SHAPE = (200, 200)


def contour(contrast, taken, *, width=40.0, left=0.02, shift=0.5, grain=0.002):
    """A bar 160 px long."""
    corners = np.array([[0, 0], [160, 0], [160, width], [0, width]]) + 50.0
    return Contour(
        outline_px=corners,
        shift_px=shift,
        end_shift_px=shift,
        noise_px=0.2,
        contrast=contrast,
        left_outside=left,
        taken_light=np.array(taken),
        area_px=160 * width,
        cut=0.0,
        grain=grain,
    )


@pytest.mark.parametrize(
    ("taken", "called"),
    [
        ((0.045, 0.123, 0.117), True),  # 13 % of full dye
        ((-0.02, 0.058, 0.048), False),  # a square of colour that JPEG left at quality 60
    ],
)
def test_what_is_redder_and_hardly_darker_is_colour_of_jpeg(taken, called):
    why = reason_against(contour(0.13, taken), SIGHT)
    assert why == ("" if called else "not dye-coloured: redder than its surroundings, "
                   "hardly darker")  # fmt: skip


def test_full_dye_in_a_dark_wedge_of_shadows_is_called():
    lit = 1 - np.array([0.35, 0.95, 0.90])  # the light that full dye leaves
    assert reason_against(contour(0.96, 1 - 0.45 * lit), SIGHT) == ""
    blue_ink = 1 - 0.45 * np.array([0.15, 0.2, 0.6])
    assert "darkens red" in reason_against(contour(0.9, blue_ink), SIGHT)


def test_what_is_no_redder_than_a_step_of_the_file_is_too_pale():
    # JPEG's table K.2 at quality 60: 17 * 0.8 / 8 = 1.7 codes; a texture darkens the square
    square = replace(contour(0.15, (0.05, 0.14, 0.10)), red_codes=1.9)
    assert reason_against(square, SIGHT) == ""
    assert "one step" in reason_against(square, replace(SIGHT, colour_step=1.7))
    dye = replace(square, red_codes=3.9)
    assert reason_against(dye, replace(SIGHT, colour_step=1.7)) == ""


@pytest.mark.parametrize(
    ("length", "steps", "called"),
    [(12.0, 1.6, False), (12.0, 2.0, True), (40.0, 1.4, True), (40.0, 0.9, False)],
)
def test_a_dark_stroke_in_a_square_of_colour_is_no_dye(length, steps, called):
    # black strokes of a rule in deep shade at quality 63, and cracks of known truth
    corners = np.array([[0, 0], [length, 0], [length, 3], [0, 3]]) + 50.0
    stroke = replace(contour(0.4, (0.22, 0.36, 0.31)), outline_px=corners, area_px=3 * length)
    step = 17 / 8 * (2 - 63 / 50)
    dark = replace(stroke, red_codes=steps * step)
    assert (reason_against(dark, replace(SIGHT, colour_step=step)) == "") is called
    redder = replace(dark, contrast=0.3)  # its colour alone tells of that much dye
    assert reason_against(redder, replace(SIGHT, colour_step=step)) == ""


def test_violet_ink_takes_more_red_than_blue_and_dye_never_does():
    ink = 1 - np.array([0.20, 0.05, 0.35])
    assert "violet" in reason_against(contour(0.9, ink), SIGHT)
    magenta = 1 - np.array([0.65, 0.05, 0.40])
    assert reason_against(contour(0.9, magenta), SIGHT) == ""


@pytest.mark.parametrize(
    ("hue", "grain", "called"),
    [(0.64, 0.028, False), (0.45, 0.028, True), (0.64, 0.012, True)],
)
def test_what_hardly_clears_the_grain_has_to_be_dye_by_its_hue(hue, grain, called):
    # a pale crease with dye left in it, as at a weld's toe
    taken = 0.18 * np.array([hue, 0.97, 0.90])
    assert (reason_against(contour(0.18, taken, grain=grain), SIGHT) == "") is called


@pytest.mark.parametrize(
    ("dye", "left_by_shade", "called"),
    [
        ((0.55, 0.04, 0.16), 0.75, True),  # purple-red of 46 %, half of it in a toe's shade
        ((0.50, 0.02, 0.05), 0.75, True),
        ((0.55, 0.04, 0.16), 0.45, False),  # so deep that any dull thing may look like it
        ((0.20, 0.10, 0.04), 0.75, False),  # rust
        ((0.15, 0.05, 0.40), 0.75, False),  # violet ink
    ],
)
def test_shade_over_dye_takes_all_colours_and_leaves_its_hue(dye, left_by_shade, called):
    left = left_by_shade * (1 - 0.46 * (1 - np.array(dye)))
    assert (reason_against(contour(0.7, 1 - left, grain=0.03), SIGHT) == "") is called


@pytest.mark.parametrize(
    ("taken", "others", "called"),
    [
        ((0.232, 0.346, 0.292), 3, True),  # 39 % of a dark red dye
        ((0.232, 0.346, 0.292), 1, False),  # too few beside it tell how dull the photo is
        ((0.360, 0.532, 0.455), 2, True),  # full dye of a hairline, much of its colour lost
        ((0.360, 0.532, 0.300), 2, False),  # as violet as ink
        ((0.232, 0.346, 0.400), 3, False),  # as brown as rust
        ((0.30, 0.346, 0.30), 3, False),  # as grey as a scratch
    ],
)
def test_faint_dye_of_a_dull_photo_has_the_hue_of_the_full_one(taken, others, called):
    full = [contour(0.65, (0.46, 0.73, 0.65), grain=0.02) for _ in range(others)]
    faint = contour(0.95 * taken[1], taken, grain=0.02)
    why = reason_against(faint, SIGHT)
    assert why.startswith("not dye-coloured")
    assert (of_the_same_dye([(faint, why)], full, SIGHT) == [faint]) is called


@pytest.mark.parametrize(("width", "called"), [(2.0, True), (8.0, False)])
def test_narrow_dye_may_have_lost_half_of_its_colour(width, called):
    full = [contour(0.65, (0.46, 0.73, 0.65), grain=0.02) for _ in range(2)]
    taken = np.array([0.46, 0.73, 0.65]) * 0.4
    grey = float(np.array([0.299, 0.587, 0.114]) @ taken)
    faint = contour(0.27, grey + 0.55 * (taken - grey), width=width, grain=0.01)
    why = reason_against(faint, SIGHT)
    assert why.startswith("not dye-coloured")
    assert (of_the_same_dye([(faint, why)], full, SIGHT) == [faint]) is called
    assert ends_may_not_show(faint, [faint]) is called


@pytest.mark.parametrize(
    ("taken", "brown"),
    [
        ((0.16, 0.44, 0.50), True),  # a finger in the dark
        ((0.20, 0.40, 0.40), False),  # dye that JPEG turned
        ((0.20, 0.40, 0.33), False),  # as magenta as another dye
    ],
)
def test_what_is_browner_than_the_dye_beside_it_is_no_dye(taken, brown):
    full = [contour(0.65, (0.30, 0.62, 0.58), grain=0.02) for _ in range(2)]
    one = contour(0.45, taken, grain=0.02)
    assert reason_against(one, SIGHT) == ""
    assert (browner([*full, one]) == [one]) is brown
    assert browner([full[0], one]) == []  # which of the two is the dye?


def test_pale_ones_tell_the_dye_where_none_is_full():
    pale = [contour(0.3, (0.15, 0.30, 0.28), grain=0.02) for _ in range(4)]
    lost = contour(0.27, (0.19, 0.27, 0.25), width=2.0, grain=0.01)
    why = reason_against(lost, SIGHT)
    assert why.startswith("not dye-coloured")
    assert of_the_same_dye([(lost, why)], pale, SIGHT) == [lost]
    assert of_the_same_dye([(lost, why)], pale[:3], SIGHT) == []


@pytest.mark.parametrize(
    ("taken", "area", "grain", "called"),
    [
        ((0.14, 0.30, 0.29), 600.0, 0.07, True),
        ((0.14, 0.30, 0.29), 60.0, 0.07, False),  # so few pixels may be grain
        ((0.26, 0.30, 0.29), 600.0, 0.07, False),  # a shadow
        ((0.14, 0.30, 0.42), 600.0, 0.07, False),  # rust
        ((0.36, 0.80, 0.78), 600.0, 0.18, False),  # one of many, as in a cloth's pattern
    ],
)
def test_what_grain_hides_in_each_pixel_stands_out_in_many(taken, area, grain, called):
    full = [contour(0.65, (0.30, 0.62, 0.60), grain=0.02) for _ in range(2)]
    hidden = contour(1.04 * taken[1], taken, width=4.0, grain=grain)
    hidden = replace(hidden, area_px=area)
    why = reason_against(hidden, SIGHT)
    assert why.startswith("too pale")
    assert (of_the_same_dye([(hidden, why)], full, SIGHT) == [hidden]) is called


def on_a_rough_coat(hidden_left):
    """Three bars of full dye, and one that leaves so much light, in a sprayed coat's relief."""
    grains = np.random.RandomState(5).normal(0, 1, (300, 420))  # any seed will do
    rough = 1 + 0.45 * scenes.gaussian_filter(grains, 0.7)
    layers = [(scenes.bar((300, 420), 60, 160, y, 9), scenes.DYE) for y in (60, 150, 240)]
    layers.append((scenes.bar((300, 420), 230, 370, 150, 9), hidden_left))
    return scenes.photo((300, 420), layers, blur=0.8, shade=rough)


def test_a_faint_crack_on_a_rough_coat_is_called_beside_full_dye():
    faint = 1 - 0.38 * (1 - scenes.DYE)
    found = suggest(on_a_rough_coat(faint)).found
    assert sum(one.outline_px[:, 0].mean() > 200 for one in found) == 1
    shadow = suggest(on_a_rough_coat(np.full(3, 0.7))).found
    assert not any(one.outline_px[:, 0].mean() > 200 for one in shadow)


@pytest.mark.parametrize(
    ("area", "clear", "called"), [(20.0, 6.2, False), (20.0, 12.0, True), (40.0, 6.4, True)]
)
def test_a_fleck_that_hardly_clears_the_grain_is_grain(area, clear, called):
    fleck = contour(0.25, (0.13, 0.25, 0.20), width=10.0, grain=0.25 / clear)
    assert (reason_against(replace(fleck, area_px=area), SIGHT) == "") is called


def test_blue_of_a_pale_one_may_be_off_as_jpeg_rounds_it():
    assert reason_against(contour(0.14, (0.05, 0.13, 0.05)), SIGHT) == ""
    assert "violet" in reason_against(contour(0.9, (0.35, 0.86, 0.30)), SIGHT)


@pytest.mark.parametrize(("left", "called"), [(0.3, True), (0.8, False)])
def test_a_narrow_scrap_with_dye_on_both_sides_is_no_line_of_its_own(left, called):
    taken = 0.24 * np.array([0.35, 0.95, 0.90])
    why = reason_against(contour(0.24, taken, width=4.0, left=left, shift=1.0), SIGHT)
    assert (why == "") is called


def hue_of_line(width, colours):
    """Red over green taken by a bar of full dye, saved as JPEG with full or halved colour."""
    bar = scenes.bar(SHAPE, 60, 140, 100.2, width)
    rgb = scenes.photo(SHAPE, [(bar, scenes.DYE)]).rgb
    asked = [cv2.IMWRITE_JPEG_QUALITY, 85, cv2.IMWRITE_JPEG_SAMPLING_FACTOR, colours]
    file = cv2.imencode(".jpg", np.ascontiguousarray(rgb[..., ::-1]), asked)[1]
    rgb = np.ascontiguousarray(cv2.imdecode(file, cv2.IMREAD_COLOR)[..., ::-1])
    y, x = np.mgrid[: SHAPE[0], : SHAPE[1]]
    away = np.maximum(np.abs(x - 100) - 40, np.abs(y - 100))
    near, around, seeds = (mask.astype(np.uint8) for mask in (away < 12, away > 20, away < 2))
    crop = Crop(rgb=rgb, near=near, around=around, seeds=seeds)
    (one,) = contours(look_closely(*lay_out([crop])), 1.3, 4.0)
    return one.taken_light[0] / one.taken_light[1]


@pytest.mark.parametrize("width", [2.5, 3.5, 20.0])
def test_halved_colour_leaves_a_line_its_hue(width):
    # full dye of the scenes takes 0.38 of the red and 0.95 of the green: 0.40
    assert hue_of_line(width, cv2.IMWRITE_JPEG_SAMPLING_FACTOR_420) == pytest.approx(
        0.40, abs=0.06
    )


def test_a_line_that_lost_no_colour_stays_dye():
    # its hue is raised for nothing: redder still, and away from ink and rust
    assert hue_of_line(2.5, cv2.IMWRITE_JPEG_SAMPLING_FACTOR_444) < 0.45


@pytest.mark.parametrize(
    ("contrast", "clear", "held"),
    [
        (0.30, 5.0, True),  # a faint indication of 30 % in much grain
        (0.20, 5.0, False),
        (0.30, 3.5, False),  # no more than mottle
    ],
)
def test_as_much_dye_as_a_faint_one_in_much_grain_is_no_clean_place(contrast, clear, held):
    why = reason_against(
        contour(contrast, (0.0,) * 3, width=4.0, grain=contrast / clear), SIGHT
    )
    assert why.startswith("too pale")
    assert dense_places([why]) == held
