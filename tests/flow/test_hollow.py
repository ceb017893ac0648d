"""An outline drawn by hand round a ring is told: filled, a ring crack passes as rounded."""

import cv2
import numpy as np
import pytest
from PIL import Image

from ptmark.dye import EdgeQuality
from ptmark.inspection import Inspection

WHITE, DYE, PALE = (214, 211, 208), (190, 40, 70), (206, 168, 172)
# ISO 3059 asks for UV-A on a dark part: green-yellow light on it
DARK, LIGHT = (18, 12, 36), (170, 228, 90)


def circle(radius, centre=(450, 300)):
    angle = np.linspace(0, 2 * np.pi, 72, endpoint=False)
    return np.array(centre) + radius * np.column_stack([np.cos(angle), np.sin(angle)])


def picture(tmp_path, ground, dye, *, radius=60, thick=10, seed=1):
    rgb = np.full((600, 900, 3), ground, np.uint8)
    cv2.circle(rgb, (450, 300), radius, dye, thick, cv2.LINE_AA)
    grain = np.random.default_rng(seed).normal(0, 3, rgb.shape)
    seen = cv2.GaussianBlur(rgb.astype(np.float32), (0, 0), 1.2) + grain
    path = tmp_path / "seen.png"
    Image.fromarray(np.clip(np.round(seen), 0, 255).astype(np.uint8)).save(path)
    return path


def said(path, outline, source="hand"):
    inspection = Inspection()
    inspection.open(path)
    edge = EdgeQuality(shift_px=0.5, noise_px=0.2, source=source)
    inspection.add(outline, edge)
    return [one for one in inspection.to_record().cautions if one.startswith("Hollow: A.")]


@pytest.mark.parametrize(("ground", "dye"), [(WHITE, DYE), (WHITE, PALE), (DARK, LIGHT)])
def test_a_ring_filled_by_hand_is_told(tmp_path, ground, dye):
    path = picture(tmp_path, ground, dye)
    assert said(path, circle(66))
    assert said(path, circle(66), source="snapped")
    assert not said(path, circle(66), source="suggested")


@pytest.mark.parametrize(("ground", "dye"), [(WHITE, DYE), (WHITE, PALE), (DARK, LIGHT)])
def test_what_is_filled_with_dye_is_not(tmp_path, ground, dye):
    path = picture(tmp_path, ground, dye, thick=-1)
    assert not said(path, circle(60))
    assert not said(path, circle(70))  # drawn loosely
    assert not said(path, circle(50))  # and too tightly


def test_a_ring_drawn_along_its_dye_is_not(tmp_path):
    path = picture(tmp_path, WHITE, DYE)
    along = np.concatenate([circle(66)[:-2], circle(54)[:-2][::-1]])
    assert not said(path, along)


def test_clean_developer_has_no_middle(tmp_path):
    path = picture(tmp_path, WHITE, DYE)
    assert not said(path, circle(60, centre=(200, 300)))
