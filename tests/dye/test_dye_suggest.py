"""What is called, what is left alone, and with which reason."""

import importlib.util
import sys
from pathlib import Path

import numpy as np
import pytest
from shapely import Polygon

from ptmark.dye import dull_remark, suggest, unseen_remark
from ptmark.photo import Photo, ends_at_border

_SPEC = importlib.util.spec_from_file_location(
    "dye_scenes", Path(__file__).with_name("scenes.py")
)
scenes = importlib.util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(scenes)

SHAPE = (420, 560)


def test_white_developer_gives_nothing():
    shade = np.linspace(0.4, 1.2, SHAPE[1])[None, :] * np.ones(SHAPE)  # light 3:1 across
    found = suggest(scenes.photo(SHAPE, [], shade=shade))
    assert found.found == ()


@pytest.mark.parametrize("strength", [1.0, 0.6, 0.3])
def test_disc_is_called_at_its_true_size(strength):
    left = 1 - strength * (1 - scenes.DYE)
    found = suggest(scenes.photo(SHAPE, [(scenes.disc(SHAPE, 250.3, 200.6, 22.0), left)]))
    assert len(found.found) == 1
    outline = Polygon(found.found[0].outline_px)
    # a disc's area and centre, closed form; half contrast of a blurred edge stays put to r/R
    assert outline.area == pytest.approx(np.pi * 22.0**2, rel=0.03)
    assert np.hypot(outline.centroid.x - 250.3, outline.centroid.y - 200.6) < 0.25


@pytest.mark.parametrize("shade_to", [1.0, 0.4])
def test_shade_does_not_move_the_edge(shade_to):
    shade = np.linspace(1.2, 1.2 * shade_to, SHAPE[1])[None, :] * np.ones(SHAPE)
    photo = scenes.photo(SHAPE, [(scenes.disc(SHAPE, 280, 210, 30), scenes.DYE)], shade=shade)
    outline = Polygon(suggest(photo).found[0].outline_px)
    assert outline.area == pytest.approx(np.pi * 900, rel=0.03)


@pytest.mark.parametrize("blur", [1.0, 3.0, 4.0, 5.0, 7.0])
def test_thin_lines_out_of_focus_are_called_where_nothing_else_tells_the_blur(blur):
    # drawn 160 px long; with the blur taken for 1.5 px they were held for haze
    bars = [(scenes.bar(SHAPE, 150, 310, y, 6), scenes.DYE) for y in (80.3, 210.3, 340.3)]
    found = suggest(scenes.photo(SHAPE, bars, blur=blur)).found
    assert [np.ptp(one.outline_px[:, 0]) for one in found] == pytest.approx([160] * 3, abs=3.0)


def test_hard_shadow_edge_is_no_indication_and_hides_none():
    shade = np.where(np.arange(SHAPE[1]) < 280, 1.2, 0.4)[None, :] * np.ones(SHAPE)
    layers = [
        (scenes.disc(SHAPE, 140, 200, 15), scenes.DYE),
        (scenes.disc(SHAPE, 420, 200, 15), scenes.DYE),
    ]
    found = suggest(scenes.photo(SHAPE, layers, shade=shade)).found
    assert sorted(round(float(f.outline_px[:, 0].mean()), -1) for f in found) == [140, 420]


def test_a_crack_close_to_a_hard_shadow_edge_is_called_whole():
    # light of 1:10 beside it: far from the fitted white the amount of dye must not run away
    shade = np.where(np.arange(SHAPE[1]) < 280, 0.12, 1.2)[None, :] * np.ones(SHAPE)
    crack = scenes.bar(SHAPE, 240, 270, 200.2, 4.0)
    (one,) = suggest(scenes.photo(SHAPE, [(crack, scenes.DYE)], shade=shade)).found
    low, high = one.outline_px.min(axis=0), one.outline_px.max(axis=0)
    assert high[0] - low[0] == pytest.approx(30.0, abs=1.0)
    assert abs(high[1] + low[1]) / 2 == pytest.approx(200.2, abs=0.5)


@pytest.mark.parametrize(
    ("left", "word"),
    [
        (scenes.RUST, "rust"),
        (scenes.BLUE_PEN, "ink"),
        (scenes.BLACK, "ink"),
    ],
)
def test_what_is_not_dye_is_left_alone(left, word):
    photo = scenes.photo(SHAPE, [(scenes.disc(SHAPE, 250, 200, 20), left)])
    found = suggest(photo)
    assert found.found == ()
    assert all("dye" in one.reason or "pale" in one.reason for one in found.left_out)
    said = " ".join(one.reason for one in found.left_out)
    assert not said or word in said or "pale" in said


def test_haze_without_an_edge_is_left_out_with_its_reason():
    rows, columns = np.mgrid[: SHAPE[0], : SHAPE[1]]
    cloud = 0.13 * np.exp(-(((columns - 280) / 70) ** 2 + ((rows - 210) / 14) ** 2))
    found = suggest(scenes.photo(SHAPE, [(cloud, scenes.DYE)]))
    assert found.found == ()


@pytest.mark.parametrize(
    ("x0", "x1"), [(-50, 140), (440, 700), (-50, 700)], ids=["left", "right", "right through"]
)
def test_dye_that_runs_out_of_the_photo_is_called_up_to_its_edge(x0, x1):
    photo = scenes.photo(SHAPE, [(scenes.bar(SHAPE, x0, x1, 200, 8), scenes.DYE)])
    (one,) = suggest(photo).found
    low, high = one.outline_px.min(axis=0), one.outline_px.max(axis=0)
    # half contrast lies at the bar's ends, the photo's sides at -0.5 and its width less 0.5
    assert low[0] == pytest.approx(max(x0, -0.5), abs=1)
    assert high[0] == pytest.approx(min(x1, SHAPE[1] - 0.5), abs=1)


def test_what_is_wide_and_reaches_in_from_outside_is_left_out_with_its_reason():
    # a hand or a cloth: half a disc has 2 area / rim of 0.61 radii
    found = suggest(scenes.photo(SHAPE, [(scenes.disc(SHAPE, 0, 200, 60), scenes.DYE)]))
    assert found.found == ()
    assert [one.reason for one in found.left_out if "glove" in one.reason]
    bleed_out = suggest(scenes.photo(SHAPE, [(scenes.disc(SHAPE, 0, 200, 20), scenes.DYE)]))
    assert len(bleed_out.found) == 1


def test_examined_area_bounds_the_calls():
    layers = [
        (scenes.disc(SHAPE, 100, 200, 15), scenes.DYE),
        (scenes.disc(SHAPE, 400, 200, 15), scenes.DYE),
    ]
    photo = scenes.photo(SHAPE, layers)
    area = np.array([[300, 100], [500, 100], [500, 300], [300, 300]], float)
    found = suggest(photo, None, area)
    assert [round(float(f.outline_px[:, 0].mean())) for f in found.found] == [400]
    nowhere = np.array([[700, 700], [800, 700], [800, 800]], float)
    assert suggest(photo, None, nowhere).found == ()


@pytest.mark.parametrize("right", [150, 250, 400])
def test_what_crosses_the_border_of_the_examined_area_is_called_whole(right):
    photo = scenes.photo(SHAPE, [(scenes.bar(SHAPE, 140, 420, 200.2, 6.0), scenes.DYE)])
    area = np.array([[20, 180], [right, 180], [right, 220], [20, 220]], float)
    (one,) = suggest(photo, None, area).found
    low, high = one.outline_px.min(axis=0), one.outline_px.max(axis=0)
    assert (low[0], high[0]) == pytest.approx((140, 420), abs=0.5)


def test_parts_of_a_broken_line_are_called_apart():
    layers = [
        (scenes.bar(SHAPE, 100, 180, 200, 8), scenes.DYE),
        (scenes.bar(SHAPE, 192, 300, 200, 8), scenes.DYE),
    ]
    found = suggest(scenes.photo(SHAPE, layers)).found
    assert len(found) == 2


def test_red_wider_than_the_background_window_is_called_whole():
    photo = scenes.photo(SHAPE, [(scenes.disc(SHAPE, 280, 210, 110), scenes.DYE)])
    found = suggest(photo).found
    assert len(found) == 1
    assert Polygon(found[0].outline_px).area == pytest.approx(np.pi * 110**2, rel=0.02)


def test_what_is_too_much_to_look_at_is_told_and_counted(monkeypatch):
    discs = [scenes.disc(SHAPE, 60 + 90 * n, 200, 12) for n in range(5)]
    photo = scenes.photo(SHAPE, [(disc, scenes.DYE) for disc in discs])
    whole = suggest(photo)
    assert len(whole.found) == 5
    assert unseen_remark(whole.left_out) is None
    monkeypatch.setattr(sys.modules["ptmark.dye.suggest"], "MOST_LOOKS", 3)
    some = suggest(photo)
    assert (len(some.found), len(some.left_out)) == (3, 2)
    assert unseen_remark(some.left_out).says.startswith("Too many red places: 2 of them")


def test_confidence_falls_with_contrast():
    strong = suggest(scenes.photo(SHAPE, [(scenes.disc(SHAPE, 280, 210, 20), scenes.DYE)]))
    pale_left = 1 - 0.2 * (1 - scenes.DYE)
    pale = suggest(scenes.photo(SHAPE, [(scenes.disc(SHAPE, 280, 210, 20), pale_left)]))
    assert 0 < pale.found[0].confidence < strong.found[0].confidence <= 1


@pytest.mark.parametrize("share", [0.05, 0.15, 0.25])
def test_haze_is_the_share_of_full_dye_in_the_pink_over_the_white(share):
    columns = np.arange(SHAPE[1])[None, :] * np.ones(SHAPE)
    pink = np.where(columns < 280, share, 0.0) * 1.0
    haze = suggest(scenes.photo(SHAPE, [(pink, scenes.DYE)])).haze
    assert haze == pytest.approx(share, rel=0.2, abs=0.01)  # this dye stops a little less light
    assert suggest(scenes.photo(SHAPE, [])).haze < 0.02


@pytest.mark.parametrize("side", range(4))
@pytest.mark.parametrize(("gap", "reaches"), [(-20, True), (5, False)])
def test_where_dye_reaches_the_photo_is_the_same_at_each_of_its_sides(side, gap, reaches):
    size, beyond = 240, 20  # the lens blurs in what lies beyond the photo
    bar = scenes.bar((size, size + beyond), beyond - 0.5 + gap, 150, 120, 4.0)
    rgb = np.rot90(scenes.photo(bar.shape, [(bar, scenes.DYE)]).rgb[:, beyond:], side)
    (one,) = suggest(Photo.from_array(np.ascontiguousarray(rgb))).found
    assert ends_at_border(one.outline_px, size, size) is reaches


@pytest.mark.parametrize("saturation", [0.5, 0.7])
@pytest.mark.parametrize(("left", "called"), [(scenes.DYE, 1), (scenes.RUST, 0)])
def test_dye_is_told_from_rust_in_a_photo_of_dull_colours(saturation, left, called):
    # what a phone's muted style does to all colours: common practice, no source
    vivid = scenes.photo((200, 300), [(scenes.bar((200, 300), 60, 240, 100, 12), left)])
    code = vivid.rgb.astype(float)
    grey = code.mean(axis=2, keepdims=True)
    dull = np.round(grey + saturation * (code - grey)).astype(np.uint8)
    assert len(suggest(Photo(vivid.info, dull)).found) == called


@pytest.mark.parametrize("light", [(1.0, 0.12, 0.1), (0.2, 1.0, 1.0)])
def test_pale_dye_is_called_in_light_that_shows_the_developer_in_one_colour(light):
    # a red lamp, and a white balance that was set on the red
    size = (200, 300)
    line, disc = scenes.bar(size, 60, 240, 60, 6), scenes.disc(size, 150, 130, 15)
    dye, shade = 0.4 * (line + disc), np.ones((*size, 3)) * light
    found = suggest(scenes.photo(size, [(dye, scenes.DYE)], shade=shade)).found
    assert len(found) == 2
    assert np.ptp(found[0].outline_px[:, 0]) == pytest.approx(180, abs=1.5)


@pytest.mark.parametrize(
    ("left", "saturation", "told"),
    [
        (scenes.DYE, 0.3, True),
        (scenes.DYE, 0.2, True),
        ((0.20, 0.03, 0.05), 1.0, True),  # a dark, maroon dye
        (scenes.DYE, 1.0, False),  # called
        (scenes.RUST, 0.3, False),
        (scenes.BLACK, 0.3, False),
    ],
)
def test_what_only_its_dull_colour_keeps_from_being_called_is_told(left, saturation, told):
    size = (200, 300)
    cover = scenes.bar(size, 60, 240, 60, 12) + scenes.disc(size, 150, 130, 15)
    vivid = scenes.photo(size, [(cover, left)])
    code = vivid.rgb.astype(float)
    grey = code.mean(axis=2, keepdims=True)
    dull = np.round(grey + saturation * (code - grey)).astype(np.uint8)
    seen = suggest(Photo(vivid.info, dull))
    remark = dull_remark(one.reason for one in seen.left_out)
    assert (remark is not None) is told
    if remark is not None:
        assert f" dull colour alone: {2 - len(seen.found)}. " in remark.says
