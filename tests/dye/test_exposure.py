"""Overexposed developer: drawn, so that the true size of what lies on it is known."""

import importlib.util
from pathlib import Path

import numpy as np
import pytest
from shapely import Polygon

from ptmark.dye import is_overexposed, overexposed_share, suggest

_SPEC = importlib.util.spec_from_file_location(
    "dye_scenes", Path(__file__).with_name("scenes.py")
)
scenes = importlib.util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(scenes)

SHAPE = (300, 400)
RADIUS = 25.0


def exposed(times, cast=(1, 1, 1)):
    """A disc of dye under light so many times that of the set, clipped as a sensor does."""
    light = times * np.array(cast) * np.ones((*SHAPE, 3))
    amount = scenes.disc(SHAPE, 200, 150, RADIUS)
    layers = [(amount, scenes.DYE)]
    return scenes.photo(SHAPE, layers, blur=2.5, shade=light)


def diameter_off(photo):
    """Error of the disc's diameter by the area of its outline, px."""
    (one,) = suggest(photo).found
    return 2 * np.sqrt(Polygon(one.outline_px).area / np.pi) - 2 * RADIUS, one.outline_px


@pytest.mark.parametrize("cast", [(1, 1, 1), (1.2, 1, 0.7), (0.8, 1, 1.1)])
def test_dye_on_clipped_developer_measures_too_small_and_that_is_told(cast):
    usual, outline = diameter_off(exposed(1.0, cast))
    assert not is_overexposed(exposed(1.0, cast), outline)
    short, outline = diameter_off(exposed(3.0, cast))
    assert is_overexposed(exposed(3.0, cast), outline)
    assert short < usual - 1.0


def test_red_that_is_clipped_alone_hides_nothing():
    off, outline = diameter_off(exposed(1.0, (1.5, 1, 1)))
    assert not is_overexposed(exposed(1.0, (1.5, 1, 1)), outline)
    assert abs(off) < 1.0


@pytest.mark.parametrize("turned", [False, True])
def test_a_clipped_patch_beside_it_is_not_all_round_it(turned):
    columns = np.arange(SHAPE[1])
    bright = np.where(columns < 200, 3.0, 1.0)[None, :, None] * np.ones((*SHAPE, 3))
    layers = [(scenes.disc(SHAPE, 200, 150, RADIUS), scenes.DYE)]
    photo = scenes.photo(SHAPE, layers, shade=bright[:, ::-1] if turned else bright)
    angles = np.linspace(0, 2 * np.pi, 60, endpoint=False)
    ring = np.c_[200 + RADIUS * np.cos(angles), 150 + RADIUS * np.sin(angles)]
    assert not is_overexposed(photo, ring)
    assert not is_overexposed(photo, ring[::-1])
    far = ring - (110, 0)
    assert is_overexposed(photo, far) is not turned
    assert is_overexposed(photo, far[::-1]) is not turned


def test_the_share_of_the_area_that_is_clipped():
    columns = np.arange(SHAPE[1])
    bright = np.where(columns < 100, 3.0, 1.0)[None, :, None] * np.ones((*SHAPE, 3))
    photo = scenes.photo(SHAPE, [], blur=0.5, shade=bright)
    assert overexposed_share(photo, None) == pytest.approx(0.25, abs=0.01)
    left = np.array([[0, 0], [150, 0], [150, 299], [0, 299]], float)
    assert overexposed_share(photo, left) == pytest.approx(2 / 3, abs=0.02)
