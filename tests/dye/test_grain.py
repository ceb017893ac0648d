"""A photo whose grain was smoothed away is told; the filters are OpenCV's own."""

import cv2
import numpy as np
import pytest

from ptmark.dye.grain import smoothed_remark
from ptmark.photo import Photo, open_photo
from ptmark.places import sample_images

SHAPE = (480, 640)


def grainy(spread):
    """Mottled white developer with grain of this standard deviation, codes."""
    rng = np.random.default_rng(4)
    mottle = cv2.resize(rng.normal(0, 3, (24, 32)).astype(np.float32), SHAPE[::-1])
    light = 215 + mottle[..., None] + rng.normal(0, spread, (*SHAPE, 3))
    return np.clip(np.round(light), 0, 255).astype(np.uint8)


def smoothed(pixels, way):
    if way == "edges kept":
        once = cv2.bilateralFilter(pixels, 11, 60, 6)
        return cv2.medianBlur(cv2.bilateralFilter(once, 11, 60, 6), 7)
    return cv2.fastNlMeansDenoisingColored(pixels, None, 6, 6, 7, 15)


@pytest.mark.parametrize("spread", [0.8, 2.0])
def test_grain_is_no_fault(spread):
    assert smoothed_remark(Photo.from_array(grainy(spread))) is None


@pytest.mark.parametrize("way", ["edges kept", "means"])
def test_a_smoothed_photo_is_told(way):
    remark = smoothed_remark(Photo.from_array(smoothed(grainy(1.0), way)))
    assert remark is not None
    assert "no grain" in remark.what


@pytest.mark.parametrize("name", ["good", "hard"])
def test_demo_photos_have_grain(name):
    assert smoothed_remark(open_photo(sample_images() / f"{name}.jpg")) is None


def test_what_is_too_small_or_too_bright_to_tell_says_nothing():
    assert smoothed_remark(Photo.from_array(grainy(2.0)[:20, :20])) is None
    assert smoothed_remark(Photo.from_array(np.full((*SHAPE, 3), 255, np.uint8))) is None
