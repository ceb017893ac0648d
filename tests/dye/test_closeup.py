"""How closely blobs of large photos are looked at, against edges of closed form."""

import cv2
import numpy as np
import pytest
from scipy.special import erf

from ptmark.dye import suggest
from ptmark.dye.closeup import close_up
from ptmark.dye.coarse import look_coarsely
from ptmark.dye.contrast import DYE_STOPS
from ptmark.photo import Photo, ends_at_border, linear_to_srgb

RADIUS = 60.0
SHARP, SOFT = (800, 700), (2200, 1500)  # centres; standard deviations of their edges below
SIGMAS = {SHARP: 1.0, SOFT: 4.0}


@pytest.fixture(scope="module")
def large() -> Photo:
    """37 megapixels of developer with two round indications, their edges Gaussian."""
    rgb = np.full((5200, 7200, 3), linear_to_srgb(np.array([0.8]))[0] * 255, np.uint8)
    for (x, y), sigma in SIGMAS.items():
        reach = 120
        across = np.arange(-reach, reach + 1)
        away = np.hypot(across, across[:, None]) - RADIUS
        amount = 0.5 * (1 - erf(away / (np.sqrt(2) * sigma)))
        light = 0.8 * (1 - amount[..., None] * DYE_STOPS)
        own = rgb[y - reach : y + reach + 1, x - reach : x + reach + 1]
        own[...] = np.rint(linear_to_srgb(light) * 255)
    return Photo.from_array(rgb)


def test_soft_blobs_of_a_large_photo_are_looked_at_on_fewer_pixels(large):
    look = look_coarsely(large, None)
    crops = [close_up(large, look, blob) for blob in look.blobs]
    steps = {crop.origin[0] * crop.step < 1500: crop.step for crop in crops}
    assert steps == {True: 1, False: 2}


def test_their_outlines_keep_the_place_of_half_contrast(large):
    found = suggest(large).found
    assert len(found) == 2
    for one, at in zip(found, (SHARP, SOFT), strict=True):
        radii = np.hypot(*(one.outline_px - at).T)
        assert radii.mean() == pytest.approx(RADIUS, abs=0.2)
        area = cv2.contourArea(one.outline_px.astype(np.float32))
        assert area == pytest.approx(np.pi * RADIUS**2, rel=0.01)


@pytest.mark.parametrize("axis", [0, 1])
def test_what_a_large_photo_cuts_off_ends_at_its_border(large, axis):
    """Also where its sides hold no whole number of the pixels that are looked at."""
    by = large.rgb.shape[axis] - 10 - SOFT[1 - axis]
    rolled = np.roll(large.rgb, by, axis=axis)
    cut = Photo.from_array(np.ascontiguousarray(rolled[:-1] if axis == 0 else rolled[:, :-1]))
    sides = np.array(cut.rgb.shape[1::-1])
    assert sides[1 - axis] % 4 == 3
    found = suggest(cut).found
    outermost = max(one.outline_px.max(axis=0)[1 - axis] for one in found)
    beyond = outermost + 0.5 - sides[1 - axis]  # a side lies half a px beyond a centre
    assert -0.2 < beyond < 1.2  # at most the px that fills up the block of two
    at_border = [ends_at_border(one.outline_px, *sides.tolist()) for one in found]
    assert at_border.count(True) == 2  # the rest of it came in on the other side
