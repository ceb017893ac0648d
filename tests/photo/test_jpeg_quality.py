"""Quality of a JPEG's colour, against the quality that independent encoders were asked for."""

import cv2
import numpy as np
import pytest
from PIL import Image

from ptmark.photo import read_info

PIXELS = np.random.default_rng(1).integers(0, 255, (40, 56, 3), np.uint8)


@pytest.mark.parametrize("quality", [5, 20, 50, 75, 95])
def test_it_is_what_was_asked_of_the_encoder(tmp_path, quality):
    # both encoders scale ITU-T T.81's tables K.1 and K.2; steps are whole, at least 1
    Image.fromarray(PIXELS).save(tmp_path / "a.jpg", quality=quality)
    cv2.imwrite(
        str(tmp_path / "b.jpg"),
        PIXELS,
        [cv2.IMWRITE_JPEG_QUALITY, quality, cv2.IMWRITE_JPEG_PROGRESSIVE, 1],
    )
    for name in ("a.jpg", "b.jpg"):
        assert read_info(tmp_path / name).quality == pytest.approx(quality, abs=1)


def test_tables_of_the_cameras_own_count_by_their_steps(tmp_path):
    coarse, fine = [4] * 64, [3] * 64
    Image.fromarray(PIXELS).save(tmp_path / "own.jpg", qtables=[coarse, fine])
    assert read_info(tmp_path / "own.jpg").quality == pytest.approx(94, abs=1)


def test_neither_grey_nor_another_format_has_one(tmp_path):
    Image.fromarray(PIXELS[..., 0]).save(tmp_path / "grey.jpg", quality=30)
    Image.fromarray(PIXELS).save(tmp_path / "a.png")
    assert read_info(tmp_path / "grey.jpg").quality is None
    assert read_info(tmp_path / "a.png").quality is None
