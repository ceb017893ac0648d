"""A photo that moved during its exposure: it is told, and widths stay within their U."""

import importlib.util
from pathlib import Path

import numpy as np
import pytest
from scipy.ndimage import gaussian_filter, uniform_filter1d

from ptmark.dye import moved_remark, suggest
from ptmark.dye.moved import _box
from ptmark.measure import Conditions, measure_outline
from ptmark.photo import Photo
from ptmark.scale import SurfaceMap

_SPEC = importlib.util.spec_from_file_location(
    "dye_scenes", Path(__file__).with_name("scenes.py")
)
scenes = importlib.util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(scenes)

SHAPE, LONG = (360, 420), 70  # px, as all below
WIDTHS = (6, 10, 14, 24)  # of lines that lie down the photo, square to a motion along it
FLAT = (8, 16)  # and of two that lie along it
FLAT_GROUND = Conditions(relief_mm=0.0)
SQUARE_ON = SurfaceMap(  # 1 mm a px, so that mm are px, and without uncertainty of its own
    h=np.eye(3),
    covariance={},
    reference="card",
    reference_px=np.array([[0.0, 0.0], [400.0, 300.0]]),
    camera_mm=np.array([200.0, 150.0, 4000.0]),
    camera_height_rel_u=0.0,
)


def lines(motion, blur=1.1):
    """Photo of lines under a camera that moved to the side by so many px."""
    light = np.ones((*SHAPE, 3)) * scenes.WHITE
    tall = SHAPE[1], SHAPE[0]
    layers = [
        scenes.bar(tall, 60, 60 + LONG, 60 + 90 * i, wide).T for i, wide in enumerate(WIDTHS)
    ]
    layers += [
        scenes.bar(SHAPE, 60 + 160 * i, 160 + 160 * i, 250, wide) for i, wide in enumerate(FLAT)
    ]
    for coverage in layers:
        light *= 1 - coverage[..., None] * (1 - scenes.DYE)
    if motion:
        light = uniform_filter1d(light, motion, axis=1, mode="nearest")
    light = gaussian_filter(light, (blur, blur, 0))
    light += np.random.RandomState(3).normal(0, 0.004, light.shape)
    return Photo.from_array(np.round(255 * scenes.code(light)).astype(np.uint8))


def widths(photo):
    """Those of the upright lines, from the left, each with its U, px; outlines too."""
    found = suggest(photo).found
    upright = [one for one in found if one.outline_px[:, 1].mean() < 200]
    upright.sort(key=lambda one: one.outline_px[:, 0].mean())
    told = [
        measure_outline(one.outline_px, SQUARE_ON, one.edge, FLAT_GROUND).width
        for one in upright
    ]
    assert len(told) == len(WIDTHS)
    return told, [one.outline_px for one in found]


@pytest.mark.parametrize(("motion", "blur"), [(0, 1.1), (0, 2.5), (9, 1.1), (13, 1.1)])
def test_a_motion_is_told_and_widths_across_it_are_within_their_u(motion, blur):
    photo = lines(motion, blur)
    told, outlines = widths(photo)
    for quantity, true in zip(told, WIDTHS, strict=True):
        assert abs(quantity.value - true) <= quantity.expanded
    remark = moved_remark(photo, None, outlines)
    assert (remark is not None) is bool(motion)
    assert moved_remark(photo, None, outlines[:2]) is None  # too few to be sure


def test_a_sharp_photo_keeps_its_u():
    told, _ = widths(lines(0))
    assert max(one.expanded for one in told) < 1.0


@pytest.mark.parametrize("length", [2.0, 5.0, 12.0])
def test_a_motions_length_from_how_much_softer_its_edge_is(length):
    x = np.arange(-60, 60, 0.01)  # in still blurs
    edge = gaussian_filter(np.clip(x / length + 0.5, 0, 1), 100)
    softer = 1 / (np.gradient(edge, 0.01).max() * np.sqrt(2 * np.pi))
    assert _box(softer) == pytest.approx(length, rel=0.02)
