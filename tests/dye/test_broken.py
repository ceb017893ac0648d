"""Pale parts of broken lines that strong JPEG left next to no colour."""

import importlib.util
import io
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from ptmark.dye import suggest
from ptmark.photo import Photo

_SPEC = importlib.util.spec_from_file_location(
    "dye_scenes", Path(__file__).with_name("scenes.py")
)
scenes = importlib.util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(scenes)

SHAPE = (420, 560)
SCRATCH = np.full(3, 0.3)  # share of the white that it leaves, of red, green and blue alike
ENDS = np.maximum(
    scenes.bar(SHAPE, 120, 170, 211.3, 5.0), scenes.bar(SHAPE, 270, 320, 211.3, 5.0)
)
PALE = scenes.bar(SHAPE, 200, 240, 211.3, 2.7)


def through_jpeg(*layers):
    """A grainy photo as quality 70 with 4:2:0 leaves it."""
    taken, held = scenes.photo(SHAPE, layers, grain=0.012), io.BytesIO()
    Image.fromarray(taken.rgb).save(held, "JPEG", quality=70, subsampling=2)
    return Photo.from_array(np.asarray(Image.open(held)), name="line")


@pytest.mark.parametrize("amount", [0.20, 0.24])
def test_a_pale_part_in_the_line_of_two_others_is_called(amount):
    pale = (amount * PALE, scenes.DYE)
    found = suggest(through_jpeg((ENDS, scenes.DYE), pale)).found
    left, between, right = sorted(found, key=lambda one: float(one.outline_px[:, 0].min()))
    assert between.outline_px[:, 0].mean() == pytest.approx(219.5, abs=3)
    assert np.ptp(between.outline_px[:, 0]) == pytest.approx(40, abs=8)
    assert between.confidence < min(left.confidence, right.confidence)
    assert suggest(through_jpeg(pale)).found == ()  # alone it is not told from a shade


def test_a_scratch_in_the_line_of_two_parts_is_not():
    scratch = (0.24 * PALE, SCRATCH)
    assert len(suggest(through_jpeg((ENDS, scenes.DYE), scratch)).found) == 2


def test_rust_in_the_line_of_two_parts_is_not():
    assert len(suggest(through_jpeg((ENDS, scenes.DYE), (0.9 * PALE, scenes.RUST))).found) == 2


def test_a_pale_part_beside_the_line_is_not():
    beside = (0.24 * np.roll(PALE, 60, axis=0), scenes.DYE)
    assert len(suggest(through_jpeg((ENDS, scenes.DYE), beside)).found) == 2


def test_what_goes_on_in_the_line_beyond_the_look_is_let_be():
    """The look ends a little outside the examined area: beyond it there was a crash."""
    beyond = (0.24 * scenes.bar(SHAPE, 365, 405, 211.3, 2.7), scenes.DYE)
    photo = through_jpeg((ENDS, scenes.DYE), beyond)
    area = np.array([[60, 150], [325, 150], [325, 270], [60, 270]], float)
    assert len(suggest(photo, area_px=area).found) == 2
