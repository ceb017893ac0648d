"""Penetrant left over, and what shines in other colours, in drawn photos under UV-A."""

import importlib.util
from pathlib import Path

import numpy as np
import pytest

from ptmark.dye import dense_places, glow_remark
from ptmark.dye.fluorescent import find_indications
from ptmark.dye.glow import background_glow
from ptmark.dye.haze import GLOW, ODD_LIGHT

_SPEC = importlib.util.spec_from_file_location(
    "fluorescent_scenes", Path(__file__).with_name("test_fluorescent.py")
)
drawn = importlib.util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(drawn)
scenes, SHAPE = drawn.scenes, drawn.SHAPE

PINK_INK = np.array([0.85, 0.15, 0.25])
LAMPS = {"violet": drawn.VIOLET, "white": np.array([0.02, 0.02, 0.019])}


def disc(x=300.4, y=250.7, radius=20.0):
    return scenes.disc(SHAPE, x, y, radius)


def cloud(x, y, sigma):
    down, right = np.mgrid[: SHAPE[0], : SHAPE[1]]
    return np.exp(-((right - x) ** 2 + (down - y) ** 2) / 2 / sigma**2)


@pytest.mark.parametrize("lamp", LAMPS)
@pytest.mark.parametrize("share", [0.0, 0.05, 0.12, 0.3])
def test_glow_of_the_background_is_its_share_of_the_brightest(lamp, share):
    ground = LAMPS[lamp] + share * drawn.GREEN_YELLOW
    photo = drawn.dark_photo([(disc(), (1 - share) * drawn.GREEN_YELLOW)], ground=ground)
    # drawn so; a little of the lamp's light passes for glow
    assert background_glow(photo, None) == pytest.approx(share, abs=0.03)


def test_bright_violet_hides_half_of_the_glow_at_most():
    ground = 8 * drawn.VIOLET + 0.3 * drawn.GREEN_YELLOW
    photo = drawn.dark_photo([(disc(), 0.7 * drawn.GREEN_YELLOW)], ground=ground)
    assert 0.15 < background_glow(photo, None) < 0.33


def test_glow_is_that_of_the_examined_area():
    half = (np.arange(SHAPE[1]) < 400) * np.ones(SHAPE)
    layers = [(disc(600), drawn.GREEN_YELLOW), (half, 0.2 * drawn.GREEN_YELLOW)]
    photo = drawn.dark_photo(layers)
    clean = np.array([[460.0, 20.0], [780.0, 20.0], [780.0, 580.0], [460.0, 580.0]])
    assert background_glow(photo, None) == pytest.approx(0.2, abs=0.03)
    assert background_glow(photo, clean) < 0.01
    assert find_indications(photo, None, clean).haze < 0.01


def test_a_dark_photo_has_no_glow():
    assert background_glow(drawn.dark_photo([]), None) == 0.0


def test_glow_is_told_by_how_much_it_hides():
    assert glow_remark(None) is None
    assert glow_remark(0.02) is None
    assert "can hide" in glow_remark(0.5).what
    assert "remove" not in glow_remark(0.5).what
    assert "developer anew" in glow_remark(0.5).mend


def test_a_cloud_of_glow_beside_indications_is_left_out_and_holds_the_verdict_open():
    layers = [
        (disc(200, 150), drawn.GREEN_YELLOW),
        (scenes.bar(SHAPE, 100.0, 220.0, 480.0, 7.0), 0.3 * drawn.GREEN_YELLOW),
        (cloud(560, 330, 22.0), 0.3 * drawn.GREEN_YELLOW),
    ]
    seen = find_indications(drawn.dark_photo(layers), None, None)
    assert len(seen.found) == 2  # the faint one with an edge is called
    (cloudy,) = [one for one in seen.left_out if one.reason == GLOW]
    assert cloudy.outline_px.mean(axis=0) == pytest.approx([560, 330], abs=4)
    assert dense_places(one.reason for one in seen.left_out) == 1


def test_a_cloud_as_bright_as_the_indications_is_called():
    layers = [
        (disc(200, 150), drawn.GREEN_YELLOW),
        (cloud(560, 330, 22.0), 0.8 * drawn.GREEN_YELLOW),
    ]
    assert len(find_indications(drawn.dark_photo(layers), None, None).found) == 2


@pytest.mark.parametrize(
    ("light", "says"),
    [
        (drawn.WHITE_LINT, "bluish or white"),
        (0.3 * drawn.WHITE_LINT, "bluish or white"),
        (PINK_INK, "orange, pink or red"),
        (np.array([0.9, 0.35, 0.03]), "orange, pink or red"),
    ],
)
def test_what_shines_in_another_colour_is_listed_at_its_true_size(light, says):
    layers = [
        (disc(), drawn.GREEN_YELLOW),
        (scenes.bar(SHAPE, 450.0, 650.0, 420.0, 9.0), light),
    ]
    seen = find_indications(drawn.dark_photo(layers), None, None)
    assert [round(one.outline_px[:, 0].mean(), -1) for one in seen.found] == [300]
    (other,) = seen.left_out
    assert says in other.reason
    assert np.ptp(other.outline_px, axis=0) == pytest.approx([200, 9], abs=1.5)


def test_hot_pixels_and_the_lamps_violet_are_not_listed():
    rng = np.random.RandomState(5)
    hot = np.zeros(SHAPE)
    hot[rng.randint(0, SHAPE[0], 60), rng.randint(0, SHAPE[1], 60)] = 3.0
    layers = [
        (disc(), drawn.GREEN_YELLOW),
        (hot, np.array([0.0, 0.0, 1.0])),
        (cloud(500, 300, 200.0), np.array([0.10, 0.05, 0.45])),
    ]
    seen = find_indications(drawn.dark_photo(layers), None, None)
    assert len(seen.found) == 1
    assert not any("green-yellow" in one.reason for one in seen.left_out)


def test_a_wide_glow_from_the_photos_edge_holds_the_verdict_open():
    layers = [
        (disc(500, 400), drawn.GREEN_YELLOW),
        (disc(0, 0, 130.0), 0.4 * drawn.GREEN_YELLOW),
    ]
    seen = find_indications(drawn.dark_photo(layers), None, None)
    assert len(seen.found) == 1
    assert [one.reason for one in seen.left_out] == [GLOW]


def test_a_cloud_cut_off_by_the_photos_edge_has_no_edge_there():
    layers = [
        (disc(200, 150), drawn.GREEN_YELLOW),
        (cloud(795, 330, 22.0), 0.3 * drawn.GREEN_YELLOW),
    ]
    seen = find_indications(drawn.dark_photo(layers), None, None)
    assert len(seen.found) == 1
    assert [one.reason for one in seen.left_out] == [GLOW]


@pytest.mark.parametrize("cast", [(0.3, 1.0, 7.0), (1.8, 0.5, 0.2)])
def test_indications_of_another_colour_by_white_balance_hold_the_verdict_open(cast):
    layers = [(disc(x), drawn.GREEN_YELLOW * cast) for x in (200, 400, 600)]
    seen = find_indications(drawn.dark_photo(layers), None, None, "fluorescent")
    assert seen.found == ()
    assert [one.reason for one in seen.left_out] == [ODD_LIGHT] * 3
    assert dense_places(one.reason for one in seen.left_out) == 3
