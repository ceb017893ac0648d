"""Dye on the rim of rust or ink is called though the whole blob is none."""

import importlib.util
from pathlib import Path

import numpy as np
import pytest

from ptmark.dye import suggest

_SPEC = importlib.util.spec_from_file_location(
    "dye_scenes", Path(__file__).with_name("scenes.py")
)
scenes = importlib.util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(scenes)

SHAPE = (420, 560)
CRACK = scenes.bar(SHAPE, 250, 300, 200.2, 5.0)
STAIN = scenes.disc(SHAPE, 255, 222, 24.0)


@pytest.mark.parametrize("other", [scenes.RUST, scenes.BLACK])
def test_a_crack_that_touches_something_else_is_called(other):
    crack = (CRACK, 1 - 0.5 * (1 - scenes.DYE))
    seen = suggest(scenes.photo(SHAPE, [(STAIN, other), crack]))
    (one,) = seen.found
    low, high = one.outline_px.min(axis=0), one.outline_px.max(axis=0)
    # its end on the stain may be lost, and the outline says how far off it may be
    assert high[0] == pytest.approx(300, abs=3.5)
    assert low[0] < 275
    assert 3 < high[1] - low[1] < 12


@pytest.mark.parametrize("other", [scenes.RUST, scenes.BLACK, scenes.BLUE_PEN])
def test_nothing_of_what_holds_no_dye_is_called(other):
    assert suggest(scenes.photo(SHAPE, [(STAIN, other)])).found == ()


def test_the_blend_at_the_rim_of_something_large_is_no_part():
    finger = scenes.disc(SHAPE, 280, 430, 190.0)
    skin = np.array([0.62, 0.38, 0.30])
    assert suggest(scenes.photo(SHAPE, [(finger, skin)], blur=6.0)).found == ()


def test_a_part_is_less_sure_of_its_place():
    alone = suggest(scenes.photo(SHAPE, [(CRACK, 1 - 0.5 * (1 - scenes.DYE))])).found[0]
    mixed = scenes.photo(SHAPE, [(STAIN, scenes.RUST), (CRACK, 1 - 0.5 * (1 - scenes.DYE))])
    (part,) = suggest(mixed).found
    assert part.edge.shift_px > alone.edge.shift_px + 0.3
    assert np.isfinite(part.confidence)
