"""Real photos of a chessboard of 25 mm squares, from OpenCV's calibration set.

Debian's package opencv-doc installs them in examples/data: left01.jpg to left14.jpg and
right01.jpg to right14.jpg, 640 x 480 px, of a board of 9 x 6 inner corners, with the camera's
published calibration (left_intrinsics.yml, square_size 0.025 m; intrinsics.yml, M2 and D2, for
the right camera). Corners are found by OpenCV, nothing of this project.
"""

from dataclasses import replace
from pathlib import Path

import cv2
import numpy as np
import pytest

from ptmark.photo import Camera, Photo
from ptmark.scale import RectangleReference, solve
from ptmark.scale.calibrate import View, fit_lens
from ptmark.scale.camera import profile_of

DATA = Path("/usr/share/doc/opencv-doc/examples/data")
SQUARE_MM, COLUMNS, ROWS = 25.0, 9, 6
SUBPIX_U_PX = 0.1  # cornerSubPix on sharp corners; common practice, no source
NEEDS_DATA = pytest.mark.skipif(
    not (DATA / "left01.jpg").exists(),
    reason="the chessboard photos of Debian's opencv-doc are not installed",
)


def published_lens(side):
    """Camera matrix and distortion as OpenCV publishes them with the photos."""
    name = "left_intrinsics.yml" if side == "left" else "intrinsics.yml"
    held = cv2.FileStorage(str(DATA / name), cv2.FILE_STORAGE_READ)
    nodes = ("camera_matrix", "distortion_coefficients") if side == "left" else ("M2", "D2")
    return tuple(held.getNode(node).mat() for node in nodes)


def seen(path, lens):
    """The photo freed of its lens, and its corners (6, 9, 2), x to the right on the board."""
    grey = cv2.imread(str(path), cv2.IMREAD_GRAYSCALE)
    straight = cv2.undistort(grey, *lens)
    found, corners = cv2.findChessboardCorners(straight, (COLUMNS, ROWS))
    if not found:
        return None
    corners = cv2.cornerSubPix(straight, corners, (5, 5), (-1, -1), (3, 40, 1e-3))
    corners = corners.reshape(ROWS, COLUMNS, 2).astype(float)
    across, down = corners[0, -1] - corners[0, 0], corners[-1, 0] - corners[0, 0]
    if across[0] * down[1] < across[1] * down[0]:
        corners = corners[:, ::-1]
    rgb = np.ascontiguousarray(np.repeat(straight[..., None], 3, axis=2))
    return Photo.from_array(rgb, name=path.name), corners


def squares_off(photo, corners, block):
    """Error and expanded uncertainty, mm, of every square's side and diagonal."""
    top, left, low, right = block
    picked = [corners[at] for at in ((top, left), (top, right), (low, right), (low, left))]
    reference = RectangleReference(
        corners_px=tuple((float(x), float(y)) for x, y in picked),
        width_mm=SQUARE_MM * (right - left),
        height_mm=SQUARE_MM * (low - top),
    )
    surface = solve(reference, photo)
    for row in range(ROWS):
        for column in range(COLUMNS):
            for down, across in ((0, 1), (1, 0), (1, 1)):
                if row + down >= ROWS or column + across >= COLUMNS:
                    continue
                ends = np.array([corners[row, column], corners[row + down, column + across]])
                a, b = surface.to_mm(ends)
                u = [
                    *surface.distance_u(*ends).values(),
                    np.sqrt(2) * SUBPIX_U_PX * surface.mm_per_px(ends.mean(axis=0)),
                ]
                true = SQUARE_MM * np.hypot(down, across)
                yield np.hypot(*(b - a)) - true, 2 * np.hypot.reduce(u)


@NEEDS_DATA
@pytest.mark.truth
@pytest.mark.parametrize("side", ["left", "right"])
@pytest.mark.parametrize("block", [(1, 2, 4, 6), (0, 0, 2, 3)], ids=["middle", "corner"])
def test_a_board_measures_its_own_squares_within_what_is_stated(side, block):
    """JCGM 100:2008, 6.3.3: k = 2 is to cover 95 %."""
    lens = published_lens(side)
    off = []
    for path in sorted(DATA.glob(f"{side}[0-9][0-9].jpg"))[::3]:
        photo = seen(path, lens)
        if photo is not None:
            off += squares_off(*photo, block)
    error, stated = np.array(off).T
    assert len(error) >= 300
    assert np.mean(np.abs(error) <= stated) >= 0.95
    assert np.median(np.abs(error)) <= 0.01 * SQUARE_MM


@NEEDS_DATA
@pytest.mark.truth
@pytest.mark.slow
@pytest.mark.parametrize("side", ["left", "right"])
def test_with_a_profile_of_half_the_photos_the_others_measure_their_squares(side):
    """Bent as they are, 12 % at the corner; k = 2 covers 95 % (JCGM 100:2008, 6.3.3)."""
    plain = (published_lens(side)[0], np.zeros(5))
    bent = [seen(path, plain) for path in sorted(DATA.glob(f"{side}[0-9][0-9].jpg"))]
    bent = [one for one in bent if one is not None]
    x, y = np.meshgrid(np.arange(COLUMNS), np.arange(ROWS))
    board = np.column_stack([x.ravel(), y.ravel()]) * SQUARE_MM
    fit = fit_lens([View(c.reshape(-1, 2), board) for _, c in bent[::2]], 640, 480)
    camera = Camera(make="OpenCV's", model=side)
    profile = profile_of(fit, camera, side, (640, 480), len(bent[::2]))
    off = []
    for photo, corners in bent[1::2]:
        known = Photo(replace(photo.info, calibrated=profile), photo.rgb.copy())
        off += squares_off(known, corners, (1, 2, 4, 6))
    error, stated = np.array(off).T
    assert len(error) >= 300
    assert np.mean(np.abs(error) <= stated) >= 0.95
    assert np.median(np.abs(error)) <= 0.01 * SQUARE_MM
