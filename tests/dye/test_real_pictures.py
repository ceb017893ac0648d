"""Real pictures that packages carry: what holds no dye is left alone, red print is found."""

from pathlib import Path

import cv2
import numpy as np
import pytest
import skimage
from skimage import color, measure

from ptmark.dye import suggest
from ptmark.photo import open_photo

CARRIED = Path(skimage.__file__).parent / "data"
CARDS = Path("/usr/share/doc/opencv-doc/examples/data/cards.png")


@pytest.mark.parametrize(
    ("name", "most"),
    [
        ("astronaut.png", 1),  # an orange suit seen between white straps
        ("chelsea.png", 0),  # a ginger cat
        ("coffee.png", 0),  # a red-brown table
        ("hubble_deep_field.jpg", 0),  # red dots on black
        ("ihc.png", 0),  # brown and violet stains on white
        ("rocket.jpg", 0),  # flames
    ],
)
def test_what_holds_no_dye_is_left_alone(name, most):
    # scikit-image's own pictures; that none shows dye is plain to see
    assert len(suggest(open_photo(CARRIED / name)).found) <= most


@pytest.mark.skipif(not CARDS.is_file(), reason="Debian's opencv-doc is not installed")
def test_red_print_on_white_cards_is_found_and_little_else():
    # truth by scikit-image: regions of a* over 25 (CIE L*a*b*), 25 px and larger
    photo = open_photo(CARDS)
    red = color.rgb2lab(photo.rgb)[..., 1] > 25
    marks = [one for one in measure.regionprops(measure.label(red)) if one.area >= 25]
    assert len(marks) > 80
    called = np.zeros(red.shape, np.uint8)
    stray = 0
    for one in suggest(photo).found:
        own = np.zeros(red.shape, np.uint8)
        cv2.fillPoly(own, [np.round(one.outline_px).astype(np.int32)], 1)
        called |= own
        # a corner of print that shows over a card's edge is called with a part of that line
        stray += red[own > 0].mean() < 0.15
    shares = [called[tuple(mark.coords.T)].mean() for mark in marks]
    assert min(shares) > 0.3
    assert stray == 0
