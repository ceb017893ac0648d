"""Calibrating a camera in the window, and leaving its profile out.

The grid's photos are OpenCV's own projection and warping of the printed grid, so the focal
length they are made with is the truth.
"""

import cv2
import numpy as np
import pytest
from PIL import Image

from ptmark.photo import load_profiles, open_photo
from ptmark.window import dialogs

pytestmark = [pytest.mark.gui, pytest.mark.slow]

FOCAL_PX, SIZE = 620.0, (800, 600)


def grid_photo(path, seed):
    board = np.kron((np.indices((7, 10)).sum(0) % 2) * 255, np.ones((50, 50))).astype(np.uint8)
    board = cv2.copyMakeBorder(board, 60, 60, 60, 60, cv2.BORDER_CONSTANT, value=255)
    random = np.random.default_rng(seed)
    corners = np.array([[0, 0], [620, 0], [620, 470], [0, 470]], np.float32)
    k = np.array([[FOCAL_PX, 0, 399.5], [0, FOCAL_PX, 299.5], [0, 0, 1]])
    aside = [random.uniform(-160, 160), random.uniform(-110, 110), random.uniform(640, 760)]
    flat = np.c_[corners - [310, 235], np.zeros(4)]
    seen, _ = cv2.projectPoints(flat, random.normal(0, 0.3, 3), np.array(aside), k, np.zeros(5))
    h = cv2.getPerspectiveTransform(corners, seen.reshape(4, 2).astype(np.float32))
    grey = cv2.warpPerspective(board, h, SIZE, borderValue=200, flags=cv2.INTER_AREA)
    _save(path, cv2.GaussianBlur(grey, (0, 0), 1.0))
    return path


def _save(path, pixels):
    exif = Image.Exif()
    exif[0x010F], exif[0x0110] = "Shop", "One"
    Image.fromarray(pixels).convert("RGB").save(path, quality=92, exif=exif)


@pytest.fixture
def shots(tmp_path):
    """Six photos of the grid and one of nothing, by one camera."""
    paths = [grid_photo(tmp_path / f"{seed}.jpg", seed) for seed in range(6)]
    _save(tmp_path / "nothing.jpg", np.full(SIZE[::-1], 180, np.uint8))
    return [*paths, tmp_path / "nothing.jpg"]


def test_photos_of_the_grid_become_a_profile_that_is_used_and_left_out(
    qtbot, window, idle, shots, monkeypatch
):
    window.open(shots[0])
    idle()
    form, inspection = window.scale_step.camera, window.session.inspection
    assert "Not calibrated" in form.now.text()
    assert form.use_box.isHidden()
    monkeypatch.setattr(dialogs, "ask_for_photos", lambda *_: shots)
    form.calibrate_button.click()
    assert "Photo 1 of 7" in form.says.text.text()
    qtbot.waitUntil(lambda: not window.session.workers.any_running())
    told = form.says.text.text()
    assert "6 photos fit one lens" in told
    assert "nothing.jpg" in told
    assert load_profiles() == []  # nothing is kept unasked
    form.keep()
    idle()
    (profile,) = load_profiles()
    assert profile.focal_px == pytest.approx(FOCAL_PX, rel=0.02)
    assert inspection.photo.info.calibrated == profile
    assert profile.name in form.now.text()
    assert form.use_box.isChecked()
    form.use_box.click()
    idle()
    assert inspection.photo.info.calibrated is None
    assert "left out" in form.now.text()
    window.session.inspection.undo()
    assert inspection.photo.info.calibrated == profile
    assert form.use_box.isChecked()
    assert open_photo(shots[1]).info.calibrated == profile


def test_what_cannot_be_calibrated_is_said_beside_it(window, idle, shots, monkeypatch):
    window.open(shots[0])
    idle()
    form = window.scale_step.camera
    form.calibrate(shots[:3])
    idle()
    assert "5 are needed" in form.says.text.text()
    broken = shots[0].with_name("broken.jpg")
    broken.write_bytes(b"no picture")
    form.calibrate([shots[0], broken, *shots[1:]])
    idle()
    assert "broken.jpg" in form.says.text.text()
    assert load_profiles() == []


def test_the_grid_is_saved_where_it_is_asked(window, idle, tmp_path, monkeypatch):
    idle()
    form, path = window.scale_step.camera, tmp_path / "grid.pdf"
    monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_: path)
    form.save_grid()
    assert path.read_bytes().startswith(b"%PDF")
    assert "grid.pdf" in form.says.text.text()
    monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_: tmp_path / "none" / "g.pdf")
    form.save_grid()
    assert "done" not in form.says.text.text()
    assert "none" in form.says.text.text()
