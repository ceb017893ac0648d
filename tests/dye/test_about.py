"""The pixels about an outline are those of the photo, and within it those OpenCV tells."""

import cv2
import numpy as np
import pytest

from ptmark.dye.about import pixels_about, within_outline
from ptmark.photo import Photo

PIXELS = np.random.RandomState(4).randint(0, 256, (60, 90, 3)).astype(np.uint8)
PLACES = {
    "inside": ((20, 30), (41, 37)),
    "over two borders": ((-4, 50), (9, 70)),
    "a pixel": ((12, 13), (12, 13)),
    "beyond": ((200, 10), (210, 14)),
}


@pytest.mark.parametrize("where", PLACES)
@pytest.mark.parametrize("margin", [0, 1, 12])
def test_the_pixels_are_all_within_the_margin(where, margin):
    points = np.add(PLACES[where], (0.3, -0.4))
    (left, top), (right, bottom) = points.min(axis=0), points.max(axis=0)
    seen, low = pixels_about(Photo.from_array(PIXELS), points, margin)
    near = [
        (y, x)
        for y in range(60)
        for x in range(90)
        if np.floor(left) - margin <= x <= np.ceil(right) + margin
        and np.floor(top) - margin <= y <= np.ceil(bottom) + margin
    ]
    if where == "beyond":
        assert not near
        assert min(seen.shape[:2]) == 1  # never empty
    else:
        assert seen.reshape(-1, 3).tolist() == [PIXELS[at].tolist() for at in near]
        assert tuple(low.tolist()) == near[0][::-1]


def test_within_an_outline_is_what_lies_in_it_or_on_its_rim():
    outline = np.array([(3.2, 4.1), (17.6, 2.0), (25.0, 14.4), (9.9, 21.6)])
    inside = within_outline(outline, (24, 28, 3))
    corners = np.round(outline).astype(np.float32)
    far = [
        [cv2.pointPolygonTest(corners, (x, y), measureDist=True) for x in range(28)]
        for y in range(24)
    ]
    assert (inside[np.array(far) >= 0] == 1).all()
    assert (inside[np.array(far) < -0.8] == 0).all()  # a rim is drawn, half a pixel wide
