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
    # at its ends: alone, nothing tells the blur, and that leaves its flanks in doubt as well
    assert part.edge.end_shift_px > alone.edge.end_shift_px + 0.3
    assert np.isfinite(part.confidence)


@pytest.mark.parametrize(("at", "unsure"), [((310, 205), True), ((275, 226), False)])
def test_a_part_may_go_on_where_its_end_lies_in_rust(at, unsure):
    crack = (CRACK, 1 - 0.5 * (1 - scenes.DYE))
    stain = (scenes.disc(SHAPE, *at, 24.0), scenes.RUST)
    (one,) = suggest(scenes.photo(SHAPE, [stain, crack])).found
    assert one.edge.ends_unsure is unsure


WIDE = (260, 420)
FAINT = 1 - 0.35 * (1 - scenes.DYE)


def rows(at, across):
    """Share from 0 to 1 by rows: a Gaussian crease about a line."""
    return np.exp(-(((np.arange(WIDE[0]) - at) / across) ** 2))[:, None] * np.ones(WIDE[1])


def spans(one):
    return one.outline_px[:, 0].min(), one.outline_px[:, 0].max()


def test_faint_dye_in_the_crease_of_a_toe_is_called():
    crack = (scenes.bar(WIDE, 100, 300, 130, 4.0), FAINT)
    toe = 1 - 0.28 * rows(130, 5.0)  # steel's toe in the light from one side
    (one,) = suggest(scenes.photo(WIDE, [crack], shade=toe)).found
    low, high = spans(one)
    assert low < 101.5
    assert high > 298.5


def test_a_crease_of_a_toe_without_dye_is_not_called():
    part = scenes.bar(WIDE, 100, 300, 130, 4.0)[..., None]
    shade = (1 - 0.28 * rows(130, 5.0))[..., None] * (1 - 0.3 * part) * np.ones(3)
    assert suggest(scenes.photo(WIDE, [], shade=shade)).found == ()


def test_a_crack_out_of_a_line_of_pale_dye_is_called():
    # dye that seeps out of an edge fades away as haze does, and the line of it ends softly
    along = np.clip((190 - np.abs(np.arange(WIDE[1]) - 210)) / 20, 0, 1)
    seeped = (0.3 * rows(60, 9.0) * along, scenes.DYE)
    crack = (scenes.bar(WIDE[::-1], 60, 130, 200, 3.0).T, scenes.DYE)
    (one,) = suggest(scenes.photo(WIDE, [seeped, crack])).found
    assert one.outline_px[:, 1].max() == pytest.approx(130, abs=1.5)
