"""Fluorescent photos: green-yellow light on dark, drawn here at known sizes."""

import importlib.util
from pathlib import Path

import numpy as np
import pytest
from scipy.ndimage import gaussian_filter
from shapely import Polygon

from ptmark.dye.clipped import clipped_remark
from ptmark.dye.fluorescent import find_indications, lighting_remark, refine_in_mode
from ptmark.dye.kind import kind_remark, kind_unknown, recognise
from ptmark.photo import Photo

_SPEC = importlib.util.spec_from_file_location(
    "dye_scenes", Path(__file__).with_name("scenes.py")
)
scenes = importlib.util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(scenes)

SHAPE = (600, 800)
VIOLET = np.array([0.006, 0.003, 0.020])  # what UV lamps leave to the eye
GREEN_YELLOW = np.array([0.42, 0.80, 0.10])
WHITE_LINT = np.array([0.35, 0.45, 0.85])


def dark_photo(layers, *, blur=1.3, grain=0.002, ground=VIOLET):
    """Light of (coverage, colour) layers added to the dark, blurred, coded."""
    light = np.ones((*SHAPE, 3)) * ground
    for coverage, colour in layers:
        light += coverage[..., None] * np.asarray(colour)
    light = gaussian_filter(light, (blur, blur, 0))
    light = light + np.random.RandomState(3).normal(0, grain, light.shape)
    return Photo.from_array(np.round(scenes.code(light.clip(0, 1)) * 255).astype(np.uint8))


@pytest.mark.parametrize("bright", [1.0, 0.3, 0.08])
def test_disc_of_light_is_called_at_its_true_size(bright):
    disc = scenes.disc(SHAPE, 300.4, 250.7, 20.0)
    photo = dark_photo([(disc, bright * GREEN_YELLOW)])
    assert recognise(photo) == "fluorescent"
    found = find_indications(photo, None, None).found
    assert len(found) == 1
    outline = Polygon(found[0].outline_px)
    # closed form; half contrast of a blurred disc's edge stays put to first order
    assert outline.area == pytest.approx(np.pi * 20.0**2, rel=0.04)
    assert np.hypot(outline.centroid.x - 300.4, outline.centroid.y - 250.7) < 0.3


def test_line_of_light_has_its_true_length_beside_a_bright_one():
    layers = [
        (scenes.bar(SHAPE, 100.0, 220.0, 150.0, 7.0), 0.12 * GREEN_YELLOW),
        (scenes.disc(SHAPE, 500, 400, 25), GREEN_YELLOW),
    ]
    found = find_indications(dark_photo(layers), None, None).found
    assert len(found) == 2
    wide = np.ptp(found[0].outline_px, axis=0)
    assert wide[0] == pytest.approx(120.0, abs=1.5)
    assert wide[1] == pytest.approx(7.0, abs=0.8)


def test_a_thin_bright_line_is_no_wider_than_it_is():
    layers = [(scenes.bar(SHAPE, 450.0, 650.0, 400.0, 6.0), 0.5 * GREEN_YELLOW)]
    (found,) = find_indications(dark_photo(layers), None, None).found
    # the bar's own area; half contrast of a blurred line of 4.6 sigma stays put within 5 %
    assert Polygon(found.outline_px).area == pytest.approx(200.0 * 6.0, rel=0.07)


@pytest.mark.parametrize("over", [0.9, 1.8, 3.0, 6.0])
def test_clipped_light_is_told_and_its_u_holds_the_true_size(over):
    disc = scenes.disc(SHAPE, 300.4, 250.7, 20.0)
    photo = dark_photo([(disc, over / 0.8 * GREEN_YELLOW)], blur=2.0)
    (found,) = find_indications(photo, None, None).found
    assert (clipped_remark(photo, [found.outline_px]) is None) == (over < 1.0)
    _, traced = refine_in_mode(photo, found.outline_px)
    for edge in (found.edge, traced):
        # both ends by the shift over root 3, k = 2, as ptmark.measure takes it
        off = np.ptp(found.outline_px[:, 0]) - 40.0
        assert -0.5 < off < 4 * edge.end_shift_px / np.sqrt(3) < 12.0


def test_penetrant_left_all_over_is_recognised():
    layers = [(scenes.disc(SHAPE, 300.4, 250.7, 20.0), GREEN_YELLOW)]
    photo = dark_photo(layers, ground=0.12 * GREEN_YELLOW)
    assert recognise(photo) == "fluorescent"
    assert len(find_indications(photo, None, None).found) == 1


def test_white_and_bluish_light_is_left_alone_with_its_reason():
    layers = [
        (scenes.disc(SHAPE, 200, 200, 15), WHITE_LINT),
        (scenes.disc(SHAPE, 550, 350, 15), GREEN_YELLOW),
    ]
    seen = find_indications(dark_photo(layers), None, None)
    assert [round(one.outline_px[:, 0].mean(), -1) for one in seen.found] == [550]
    assert all("dye" not in one.reason and "pink" not in one.reason for one in seen.left_out)


def test_a_dark_part_without_light_gives_nothing():
    assert find_indications(dark_photo([]), None, None, "fluorescent").found == ()


def test_colour_contrast_is_not_taken_for_fluorescent():
    red = scenes.photo(SHAPE, [(scenes.disc(SHAPE, 250, 200, 22), scenes.DYE)])
    dim = scenes.photo(
        SHAPE, [(scenes.disc(SHAPE, 250, 200, 22), scenes.DYE)], shade=np.full(SHAPE, 0.05)
    )
    assert recognise(red) == "colour contrast"
    assert recognise(dim) == "colour contrast"
    assert len(find_indications(red, None, None).found) == 1


@pytest.mark.parametrize("exposed", [1.0, 4.0, 12.0, 25.0])
def test_violet_that_a_camera_exposed_brightly_is_recognised(exposed):
    disc = scenes.disc(SHAPE, 300.4, 250.7, 20.0)
    photo = dark_photo([(disc, GREEN_YELLOW)], ground=exposed * VIOLET)
    assert recognise(photo) == "fluorescent"
    assert len(find_indications(photo, None, None).found) == 1


@pytest.mark.parametrize(
    ("cast", "violet", "left"),
    [
        ((0.6, 1.0, 2.4), 2, 0.0),
        ((1.7, 1.0, 0.6), 9, 0.08),  # magenta: violet in a warm cast
        ((0.73, 1.0, 0.94), 2, 0.1),
        ((1.7, 1.0, 0.9), 1, 0.1),
        ((0.6, 1.0, 0.5), 5, 0.05),
        ((1.0, 1.0, 3.3), 0.6, 0.2),
    ],
)
def test_odd_white_balance_and_penetrant_left_over_are_recognised(cast, violet, left):
    ground = (violet * VIOLET + left * GREEN_YELLOW) * cast
    layers = [(scenes.disc(SHAPE, 300.4, 250.7, 20.0), GREEN_YELLOW * cast)]
    photo = dark_photo(layers, ground=ground)
    assert recognise(photo) == "fluorescent"
    assert len(find_indications(photo, None, None).found) == 1


@pytest.mark.parametrize("light", [0.04, 0.15, 0.5])
@pytest.mark.parametrize("cast", [(1.0, 0.8, 0.52), (0.8, 0.95, 1.15), (0.85, 1.05, 0.8)])
def test_red_dye_in_coloured_light_with_green_tape_is_not_taken_for_fluorescent(cast, light):
    # the casts are those of the stress set; tape as light as the developer
    white = light * np.array(cast)
    layers = [
        (scenes.disc(SHAPE, 250, 200, 22), white * np.array([-0.1, -0.7, -0.7])),
        (scenes.disc(SHAPE, 600, 400, 40), white * np.array([-0.6, 0.1, -0.9])),
    ]
    assert recognise(dark_photo(layers, ground=white)) == "colour contrast"


def test_violet_glare_hides_nothing():
    y, x = np.mgrid[: SHAPE[0], : SHAPE[1]]
    glare = np.exp(-((x - 400) ** 2 + (y - 300) ** 2) / 2 / 250**2)
    layers = [
        (glare, np.array([0.10, 0.05, 0.45])),
        (scenes.disc(SHAPE, 300.4, 250.7, 20.0), GREEN_YELLOW),
        (scenes.disc(SHAPE, 600, 150, 25), np.full(3, 0.5)),  # a white reflection
    ]
    photo = dark_photo(layers)
    assert recognise(photo) == "fluorescent"
    (found,) = find_indications(photo, None, None).found
    assert Polygon(found.outline_px).area == pytest.approx(np.pi * 20.0**2, rel=0.04)


def test_green_beside_a_lit_white_part_is_not_taken_for_fluorescent():
    white = scenes.bar(SHAPE, 50, 350, 200, 150)
    tape = scenes.disc(SHAPE, 600, 400, 40)
    for bench in (np.array([0.004, 0.012, 0.003]), np.array([0.006, 0.012, 0.05])):
        layers = [(white, np.array([0.75, 0.76, 0.74])), (tape, np.array([0.4, 0.9, 0.05]))]
        assert recognise(dark_photo(layers, ground=bench)) == "colour contrast"


def test_green_tape_in_cool_or_dim_light_is_not_taken_for_fluorescent():
    # blue over green of daylight at 20,000 K is about 1.24 in linear sRGB (from memory)
    for light in (0.1, 0.3):
        cool = light * np.array([0.75, 1.0, 1.24])
        tape = scenes.disc(SHAPE, 300, 250, 40)
        photo = dark_photo([(tape, np.array([0.1, 0.6, 0.1]))], ground=cool)
        assert recognise(photo) == "colour contrast"


def test_a_chosen_mode_goes_before_what_is_recognised():
    photo = dark_photo([(scenes.disc(SHAPE, 300, 250, 20), GREEN_YELLOW)])
    assert find_indications(photo, None, None, "colour contrast").found == ()
    assert len(find_indications(photo, None, None, "fluorescent").found) == 1


def test_lighting_limits_are_told_for_fluorescent_photos_alone():
    assert lighting_remark("colour contrast") is None
    says = lighting_remark("fluorescent").says
    # ASME V T-676.4: 1000 uW/cm2 and 2 fc (secondary source); 10 W/m2 is the same by arithmetic
    assert "1000 uW/cm2" in says
    assert "2 fc" in says


def shining(cast, *, over=1.0, ground=VIOLET, more=()):
    """Six discs of light under one white balance."""
    spots = [(scenes.disc(SHAPE, 120 * n, 250, 12), over * GREEN_YELLOW) for n in range(1, 7)]
    layers = [(share, colour * np.array(cast)) for share, colour in (*spots, *more)]
    return dark_photo(layers, ground=ground * np.array(cast))


PAPER = np.array([0.16, 0.24, 0.80])  # whiteners glow blue: common practice, no source
SHEET = scenes.bar(SHAPE, 100, 700, 500, 120)


@pytest.mark.parametrize(
    ("cast", "more"),
    [
        ((0.4, 1.0, 7.0), ()),  # all blue and violet
        ((1.9, 0.8, 1.7), ()),  # the glow is orange
        ((0.9, 1.0, 0.4), ((SHEET, PAPER),)),  # the paper is white
    ],
)
def test_glow_under_a_cast_that_is_not_told_leaves_the_kind_unknown(cast, more):
    photo = shining(cast, more=more)
    assert recognise(photo) == "colour contrast"
    assert kind_unknown(photo)
    assert kind_remark(photo, "", None) is not None
    assert kind_remark(photo, "fluorescent", None) is None


def test_glow_on_grey_that_a_cast_made_of_penetrant_left_over_leaves_the_kind_unknown():
    photo = shining((1, 1, 1), ground=np.full(3, 0.2))
    assert recognise(photo) == "colour contrast"
    assert kind_unknown(photo)


def test_a_photo_that_shows_its_kind_leaves_none_unknown():
    assert not kind_unknown(shining((1, 1, 1)))
    assert not kind_unknown(shining((1, 1, 1), ground=0.12 * GREEN_YELLOW))
    for share in (1.0, 0.06):
        shade = np.full(SHAPE, share)
        disc = scenes.disc(SHAPE, 250, 200, 22)
        assert not kind_unknown(scenes.photo(SHAPE, [(disc, scenes.DYE)], shade=shade))


def test_green_tape_on_a_dark_bench_leaves_the_kind_unknown_only_where_it_is_examined():
    layers = [
        (scenes.bar(SHAPE, 50, 350, 200, 150), np.array([0.75, 0.76, 0.74])),
        (scenes.disc(SHAPE, 600, 400, 40), np.array([0.4, 0.9, 0.05])),
    ]
    photo = dark_photo(layers, ground=np.full(3, 0.006))
    assert kind_unknown(photo)
    part = np.array([[60.0, 135.0], [340.0, 135.0], [340.0, 265.0], [60.0, 265.0]])
    assert not kind_unknown(photo, part)


def test_a_yellow_tape_measure_on_a_dark_bench_leaves_the_kind_known():
    # yellow paint takes blue away and reflects no more of the rest than white: common practice
    layers = [
        (scenes.bar(SHAPE, 50, 350, 200, 150), np.array([0.75, 0.76, 0.74])),
        (scenes.bar(SHAPE, 100, 700, 450, 50), np.array([0.72, 0.55, 0.04])),
    ]
    assert not kind_unknown(dark_photo(layers, ground=np.full(3, 0.05)))
    glow = (scenes.disc(SHAPE, 600, 250, 20), np.array([0.7, 1.2, 0.04]))
    assert kind_unknown(dark_photo([*layers, glow], ground=np.full(3, 0.05)))


def test_a_lit_part_that_shines_green_leaves_the_kind_unknown():
    # developer in a green light, on a dark bench: far more of it shines than penetrant does
    part = (scenes.bar(SHAPE, 150, 650, 300, 300), np.array([0.5, 0.8, 0.25]))
    photo = dark_photo([part])
    assert recognise(photo) == "fluorescent"
    assert kind_unknown(photo)


def test_red_dye_that_ran_over_a_dark_bench_is_no_glow():
    white = np.array([0.53, 0.54, 0.45])
    layers = [
        (scenes.bar(SHAPE, 50, 350, 200, 150), white),
        (scenes.disc(SHAPE, 600, 400, 12), white * np.array([0.8, 0.08, 0.1])),
    ]
    photo = dark_photo(layers, ground=np.array([0.003, 0.008, 0.03]))
    assert recognise(photo) == "colour contrast"
    assert not kind_unknown(photo)
