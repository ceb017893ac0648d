"""The coarse look's picture is the photo made smaller; its background is a median."""

import numpy as np
import pytest
from scipy import ndimage
from skimage.measure import block_reduce

from ptmark.dye import background
from ptmark.dye.reduced import shrunk
from ptmark.photo import Photo


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
