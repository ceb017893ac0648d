"""The coarse look's picture is the photo made smaller; its background is a median."""

import importlib

import numpy as np
import pytest
from scipy import ndimage
from skimage.measure import block_reduce

from ptmark.dye import background, cards, coarse, haze
from ptmark.dye.reduced import shrunk
from ptmark.photo import Photo

suggest = importlib.import_module("ptmark.dye.suggest")  # the package has one of its name
LINES = np.array([[460, 330, 559, 335], [620, 470, 739, 473]]) - [0.5, 0.5, -0.5, -0.5]


@pytest.mark.parametrize(("height", "width"), [(640, 400), (648, 408), (72, 80), (70, 81)])
@pytest.mark.parametrize("factor", [2, 4, 8])
def test_shrunk_by_halves_is_within_a_code_of_the_mean(height, width, factor):
    # scikit-image's block mean; each halving rounds by half a code at most
    pixels = np.random.default_rng(5).integers(0, 256, (height, width, 3), dtype=np.uint8)
    photo = Photo.from_array(pixels)
    size = (-(-width // factor), -(-height // factor))
    small = shrunk(photo, factor, (0, 0, *size))
    whole = pixels[: height // factor * factor, : width // factor * factor]
    expected = block_reduce(whole, (factor, factor, 1), np.mean)
    high, wide = expected.shape[:2]
    assert small.shape == (-(-height // factor), -(-width // factor), 3)
    off = small[:high, :wide] - expected
    assert np.abs(off).max() <= 1.5
    assert abs(off.mean()) < 0.5
    part = shrunk(photo, factor, (3, 2, 8, 7))
    assert np.array_equal(part, small[2:7, 3:8])


@pytest.mark.parametrize("changed", [(0, 0), (7, 20), (39, 59), (30, 0)])
def test_a_median_is_brought_up_to_date_as_far_as_a_change_reaches(changed):
    # SciPy's median of the whole
    before = np.random.RandomState(3).randint(0, 256, (40, 60)).astype(np.uint8)
    after = before.copy()
    y, x = changed
    after[max(y - 2, 0) : y + 3, max(x - 3, 0) : x + 4] ^= 255
    got = ndimage.median_filter(before, 13, mode="nearest")
    background._take_again(got, before, after, 13)
    assert np.array_equal(got, ndimage.median_filter(after, 13, mode="nearest"))


def test_warm_light_on_one_side_and_a_blue_bench_are_not_red():
    # the ratio that the developer has is known: cold light left, warm right, dye in both, and
    # a bench beyond the examined area
    across = 0.45 / (1 + np.exp((600 - np.arange(960)) / 60))
    light = np.tile(across.astype(np.float32), (640, 1))
    ratio = light.copy()
    ratio[:100] = -1.2
    for left in (120, 480, 800):
        ratio[300:340, left : left + 60] += 0.9
    inside = np.zeros(ratio.shape, np.uint8)
    inside[120:] = 1
    red = np.full(ratio.shape, 200, np.uint8)
    told = background.twice_background(ratio, red, 17, coarse.SEED, inside)
    off = told - block_reduce(light, (8, 8), np.mean)
    assert np.abs(off[15:-4, 4:-4]).max() < coarse.SEED
    bleed_out = np.zeros_like(light)  # a quarter of the area, soft over some 20 px
    bleed_out[200:520, 300:700] = 0.9
    bleed_out = ndimage.gaussian_filter(bleed_out, 10)
    told = background.twice_background(bleed_out, red, 17, coarse.SEED, inside)
    assert np.abs(told[30:60, 42:82]).max() < coarse.REACH


@pytest.mark.parametrize("bench", [(150, 40, 40), (190, 60, 50)])
def test_a_red_bench_about_a_small_part_is_no_light_that_tints_it(bench):
    # where the two lines of dye lie is known; nine tenths of the photo are bench
    rgb = np.full((800, 1200, 3), bench, np.uint8)
    rgb[260:540, 420:780] = 215
    rgb[330:336, 460:560] = rgb[470:474, 620:740] = 200, 90, 95
    found = suggest.suggest(Photo.from_array(rgb)).found
    ends = [[*one.outline_px.min(axis=0), *one.outline_px.max(axis=0)] for one in found]
    assert np.abs(ends - LINES).max() < 1.5


def test_paint_over_half_of_the_photo_is_no_grain():
    # two reds beside the developer: the spread of all that is no grain
    rgb = np.full((800, 1200, 3), 215, np.uint8)
    rgb[:, :140] = 170, 80, 70
    rgb[:, 700:] = 150, 40, 40
    rgb[330:336, 460:560] = rgb[470:474, 520:640] = 200, 90, 95
    looked = suggest.suggest(Photo.from_array(rgb))
    ends = [[*o.outline_px.min(axis=0), *o.outline_px.max(axis=0)] for o in looked.found]
    assert np.abs(ends - (LINES - [[0] * 4, [100, 0, 100, 0]])).max() < 1.5
    assert len(looked.left_out) == 2


def test_mottled_paint_over_most_of_the_photo_is_no_grain():
    # pale lines, on developer that takes a third of the photo
    grain = np.random.default_rng(3).normal(0, 1, (800, 1200, 1))
    mottle = ndimage.gaussian_filter(grain, (6, 6, 0))
    rgb = np.repeat(215 + grain, 3, axis=2)
    paint = (150, 90, 70) + 20 * mottle / mottle.std() * (1, 0.9, 0.8) + 2 * grain
    rgb[:, :140], rgb[:, 560:] = paint[:, :140], paint[:, 560:]
    rgb[330:336, 460:520] = rgb[470:474, 400:520] = 205, 130, 134
    found = suggest.suggest(Photo.from_array(rgb.clip(0, 255).astype(np.uint8))).found
    ends = [[*one.outline_px.min(axis=0), *one.outline_px.max(axis=0)] for one in found]
    lines = [[460, 330, 519, 335], [400, 470, 519, 473]]
    assert np.abs(ends - np.array(lines)).max() < 1


def test_red_light_beside_dark_metal_is_still_light():
    # developer lit so that it is (215, 92, 92), and metal too dark to show the light
    rgb = np.full((800, 1200, 3), (215, 92, 92), np.uint8)
    rgb[:, 1040:] = 6, 6, 6
    rgb[330:336, 460:560] = 205, 40, 42
    (one,) = suggest.suggest(Photo.from_array(rgb)).found
    assert (
        np.abs([*one.outline_px.min(axis=0), *one.outline_px.max(axis=0)] - LINES[0]).max()
        < 1.5
    )


def test_what_goes_round_the_scale_card_is_not_on_it():
    # a red bench round the part, which a crack at the part's edge joins, and a marker's fringe
    look = coarse.CoarseLook(
        blobs=(),
        reach=np.zeros((200, 300), np.uint8),
        seeds=np.zeros((200, 300), np.uint8),
        factor=2,
        origin=(10, 0),
        haze=0.0,
    )
    card = np.array([[240, 160], [380, 160], [380, 240], [240, 240]], np.float32)
    for corners, on_card in (
        ([[0, 0], [299, 0], [299, 199], [0, 199]], False),
        ([[140, 90], [150, 90], [150, 100], [140, 100]], True),
        ([[170, 90], [260, 90], [260, 100], [170, 100]], False),  # goes on beyond the card
    ):
        rim = np.array(corners, np.int32)[:, None]
        box = (*rim.min(axis=0)[0].tolist(), *(rim.max(axis=0)[0] + 1).tolist())
        blob = coarse.Blob(rim=rim, box=box, peak=1.0)
        assert cards.on_card(blob, look, [(card, 10.0)]) is on_card


def test_where_the_colour_is_too_uneven_for_faint_dye_this_is_said():
    # mottle of a tenth in the log of red over green: five of that are twice what 30 % dye makes
    mottle = ndimage.gaussian_filter(np.random.default_rng(4).normal(0, 1, (700, 900)), 4)
    rgb = np.full((700, 900, 3), 190.0)
    rgb[..., 0] *= 1 + 0.05 * mottle / mottle.std()
    uneven = suggest.suggest(Photo.from_array(rgb.clip(0, 255).astype(np.uint8)))
    (told,) = (one for one in uneven.left_out if one.reason == haze.UNEVEN)
    assert np.ptp(told.outline_px, axis=0).tolist() == [900, 700]
    assert haze.dense_places([told.reason]) == 1
    even = suggest.suggest(Photo.from_array(np.full((700, 900, 3), 190, np.uint8)))
    assert even.left_out == ()
