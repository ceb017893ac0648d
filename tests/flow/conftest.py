"""A small photo with the scale card and three indications, drawn anew for each run."""

import cv2
import numpy as np
import pytest

# ISO/IEC 7810 ID-1, 85.60 x 53.98 mm; the markers lie 4 mm in and are 12 mm wide.
PX_PER_MM = 12.0
CARD_AT_MM = (15.0, 70.0)
CARD_MM = (85.60, 53.98)


def _paste_card(light):
    dictionary = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_4X4_50)
    side = round(12 * PX_PER_MM)
    x0, y0 = CARD_AT_MM
    corners = [
        (x0 + 4, y0 + 4),
        (x0 + CARD_MM[0] - 16, y0 + 4),
        (x0 + CARD_MM[0] - 16, y0 + CARD_MM[1] - 16),
        (x0 + 4, y0 + CARD_MM[1] - 16),
    ]
    for name, (x, y) in enumerate(corners):
        marker = cv2.aruco.generateImageMarker(dictionary, name, side) / 255.0
        left, top = round(x * PX_PER_MM), round(y * PX_PER_MM)
        light[top : top + side, left : left + side] = 0.05 + 0.7 * marker[..., None]


@pytest.fixture(scope="session")
def photo_file(tmp_path_factory):
    """A PNG of 130 x 135 mm: a 20 x 1.2 mm line, a 4 mm disc, a 1 mm disc, the card."""
    height, width = round(135 * PX_PER_MM), round(130 * PX_PER_MM)
    light = np.ones((height, width, 3), np.float32) * np.array([0.76, 0.74, 0.73], np.float32)
    y, x = np.mgrid[:height, :width] + 0.5  # from the pixel's corner, as the mm are
    amount = np.zeros((height, width))
    amount[round(30 * PX_PER_MM) : round(31.2 * PX_PER_MM), 240:480] = 1  # 20 to 40 mm along x
    for centre_x, centre_y, radius in ((60, 30, 2.0), (80, 40, 0.5)):
        distance = np.hypot(x - centre_x * PX_PER_MM, y - centre_y * PX_PER_MM)
        amount = np.maximum(amount, np.clip(radius * PX_PER_MM - distance + 0.5, 0, 1))
    amount = amount[..., None]
    light *= 1 - amount * (1 - np.array([0.62, 0.06, 0.1]))
    _paste_card(light)
    light = cv2.GaussianBlur(light.astype(np.float32), (0, 0), 1.2)
    light += np.random.RandomState(3).normal(0, 0.003, light.shape)  # the seed does not matter
    light = np.clip(light, 0, 1)
    coded = np.where(light <= 0.0031308, 12.92 * light, 1.055 * light ** (1 / 2.4) - 0.055)
    path = tmp_path_factory.mktemp("flow") / "weld photo.png"
    ok = cv2.imwrite(str(path), np.round(coded * 255).astype(np.uint8)[..., ::-1])
    assert ok
    return path


@pytest.fixture(scope="session")
def overview_file(photo_file, tmp_path_factory):
    """The same part from farther away: 4.3 px a mm in place of 12."""
    picture = cv2.imread(str(photo_file))
    small = cv2.resize(picture, None, fx=0.36, fy=0.36, interpolation=cv2.INTER_AREA)
    path = tmp_path_factory.mktemp("set") / "overview.png"
    assert cv2.imwrite(str(path), small)
    return path
