"""Ends of indications that something covers; drawn, so that what is hidden is known."""

import importlib.util
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from scipy.ndimage import gaussian_filter

from ptmark.dye import (
    covered_remark,
    ends_covered,
    find_indications,
    reach_card,
    suggest,
)
from ptmark.photo import Photo
from ptmark.scale import RectangleReference, solve

_SPEC = importlib.util.spec_from_file_location(
    "dye_scenes", Path(__file__).with_name("scenes.py")
)
scenes = importlib.util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(scenes)

SHAPE = (420, 560)
STEEL, TAPE, CARD = (0.45, 0.46, 0.48), (0.9, 0.7, 0.1), (0.12, 0.12, 0.12)


def crack(angle_deg=0.0):
    """A tapering crack of 300 x 10 px about the middle, turned; its coverage."""
    rows, columns = np.mgrid[: SHAPE[0], : SHAPE[1]].astype(float)
    a = np.radians(angle_deg)
    x, y = columns - 280, rows - 210
    along, across = x * np.cos(a) + y * np.sin(a), -x * np.sin(a) + y * np.cos(a)
    half = 5.0 * np.sqrt(np.clip(1 - (along / 150) ** 2, 0, 1))
    return np.clip(half - np.abs(across) + 0.5, 0, 1)


def slab(low, high):
    """Something that lies over all between two columns."""
    columns = np.arange(SHAPE[1])
    return (
        np.clip(columns - low, 0, 1)[None, :]
        * np.clip(high - columns, 0, 1)
        * np.ones((SHAPE[0], 1))
    )


def told(layers, **more):
    photo = scenes.photo(SHAPE, layers, **more)
    found = suggest(photo).found
    longest = max(found, key=lambda one: np.ptp(one.outline_px[:, 0]))
    return ends_covered(photo, [longest.outline_px])[0], longest


def covering(angle_deg, colour, low):
    """The crack with something opaque on it: what it leaves of the light is its own colour."""
    lies = slab(low, 700)
    seen = crack(angle_deg) * (1 - lies)
    return [(seen, scenes.DYE), (lies, np.array(colour))]


@pytest.mark.parametrize(
    "colour", [STEEL, TAPE, CARD], ids=["steel rule", "tape", "black card"]
)
@pytest.mark.parametrize("angle_deg", [0, 30, -40])
def test_a_crack_that_goes_on_beneath_something_is_told(angle_deg, colour):
    covered, one = told(covering(angle_deg, colour, 340))
    assert np.ptp(one.outline_px[:, 0]) < 250  # the part beneath is not in the outline
    assert covered
    assert "A, C. What lies beyond is not measured" in covered_remark(["A", "C"]).says


@pytest.mark.parametrize("angle_deg", [0, 30, 75])
@pytest.mark.parametrize("beside", [None, 440], ids=["bare", "a rule beside it"])
def test_a_crack_that_is_seen_whole_is_not(angle_deg, beside):
    layers = [(crack(angle_deg), scenes.DYE)]
    if beside:  # the crack ends at 430 px at most
        layers.append((slab(beside + 20, 700), np.array(STEEL)))
    assert not told(layers)[0]


@pytest.mark.parametrize("angle_deg", [0, 30])
def test_neither_a_shadow_nor_the_toe_of_a_weld_covers_it(angle_deg):
    columns = np.arange(SHAPE[1])
    shadow = np.where(columns < 360, 1.0, 0.5)[None, :] * np.ones(SHAPE)
    assert not told([(crack(angle_deg), scenes.DYE)], shade=shadow)[0]
    toe = 1 - 0.4 * np.exp(-(((columns - 435) / 5.0) ** 2))[None, :] * np.ones(SHAPE)
    assert not told([(crack(angle_deg), scenes.DYE)], shade=toe)[0]


@pytest.mark.parametrize(
    ("low", "seed"), [(340, 3), (700, 3), (700, 11)], ids=["covered", "whole", "grainy"]
)
def test_of_dye_that_glows_only_what_is_darker_is_a_cover(low, seed):
    # green-yellow light on violet, as a camera shows it under UV-A
    grain = 0.002 if seed == 3 else 0.012
    lies, glow = slab(low, 700)[..., None], crack(20)[..., None] * [0.42, 0.80, 0.10]
    light = (np.array([0.07, 0.04, 0.24]) + glow) * (1 - 0.8 * lies)
    light = gaussian_filter(light, (1.3, 1.3, 0))
    light += np.random.RandomState(seed).normal(0, grain, light.shape)
    photo = Photo.from_array(np.round(scenes.code(light) * 255).astype(np.uint8))
    found = find_indications(photo, None, None, "fluorescent").found
    longest = max(found, key=lambda one: np.ptp(one.outline_px[:, 0]))
    assert ends_covered(photo, [longest.outline_px]) == [low == 340]


@pytest.mark.parametrize(
    ("light", "angle_deg", "ticks"),
    [(1.0, 30, True), (0.8, 15, False), (1.0, 15, False)],
    ids=["white", "four fifths", "without strokes"],
)
def test_a_rule_nearly_as_light_as_the_developer_is_told_by_its_edge(light, angle_deg, ticks):
    layers = covering(angle_deg, (light,) * 3, 340)
    if ticks:  # 2 px wide, 13 px apart, as of a rule's mm
        rows = np.arange(SHAPE[0])[:, None] % 13
        layers.append((slab(342, 372) * (rows < 2), scenes.BLACK))
    assert told(layers, grain=0.01)[0] is (ticks or light < 1)


def test_neither_a_soft_shade_nor_marks_all_about_are_a_rules_edge():
    columns, rows = np.arange(SHAPE[1]), np.arange(SHAPE[0])[:, None]
    soft = 1 - 0.3 / (1 + np.exp(-(columns - 425) / 12.0))[None, :] * np.ones(SHAPE)
    assert not told([(crack(30), scenes.DYE)], shade=soft)[0]
    marks = (rows % 13 < 2) & (np.abs(rows - 210) > 40)  # scratches from end to end
    layers = [(crack(0), scenes.DYE), (marks * np.ones(SHAPE), np.full(3, 0.6))]
    assert not told(layers)[0]


def test_arms_of_a_star_and_pores_are_not_taken_for_covers():
    star = np.max([crack(angle) for angle in (10, 70, 130)], axis=0)
    assert not told([(star, scenes.DYE)])[0]
    assert not told([(scenes.disc(SHAPE, 280, 210, 25), scenes.DYE)])[0]


@pytest.mark.parametrize("colour", [scenes.BLUE_PEN, scenes.BLACK], ids=["blue", "black"])
@pytest.mark.parametrize("wide", [10, 18])
def test_a_crack_that_goes_on_beyond_a_stroke_is_told(wide, colour):
    lies = slab(340, 340 + wide)
    covered, one = told([(crack(10) * (1 - lies), scenes.DYE), (lies, colour)])
    assert np.ptp(one.outline_px[:, 0]) < 250  # the part beyond is not in the outline
    assert covered


@pytest.mark.parametrize(
    ("end_px", "reaches"),
    [((400, 558), True), ((400, 545), False), ((146, 800), True), ((120, 800), False)],
)
def test_a_crack_that_comes_up_to_the_white_card_is_told(end_px, reaches):
    # a card of ISO/IEC 7810 ID-1's size, 10 px a mm, its top left corner at (150, 560)
    corners = ((150.0, 560.0), (1006.0, 560.0), (1006.0, 1099.8), (150.0, 1099.8))
    photo = Photo.from_array(np.full((1200, 1600, 3), 200, np.uint8))
    card = RectangleReference(corners_px=corners, width_mm=85.6, height_mm=53.98)
    rectangle = solve(card, photo)
    far, near = np.array([60.0, 400.0]), np.array(end_px, float)
    outline = np.stack([far, near, np.array([64.0, 406.0])])
    assert reach_card(replace(rectangle, reference="card"), [outline]) == [reaches]
    assert reach_card(rectangle, [outline]) == [False]  # it may be marked on what is drawn on
