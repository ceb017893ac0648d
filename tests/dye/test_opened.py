"""What goes round is measured as a line, and what lies within it is found: closed forms."""

import importlib.util
from pathlib import Path

import numpy as np
import pytest

from ptmark.dye import refine_outline, suggest
from ptmark.measure.geometry import caliper, inscribed_width, path_length

_SPEC = importlib.util.spec_from_file_location(
    "ring_scenes", Path(__file__).with_name("scenes.py")
)
scenes = importlib.util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(scenes)

SHAPE = (220, 260)
AT = (130.3, 110.6)


def ring(outer, inner):
    return scenes.disc(SHAPE, *AT, outer) - scenes.disc(SHAPE, *AT, inner)


@pytest.mark.parametrize(("outer", "inner"), [(60, 53), (24, 18), (12, 7)])
def test_a_ring_is_as_wide_as_its_band_and_as_long_as_its_way(outer, inner):
    (found,) = suggest(scenes.photo(SHAPE, [(ring(outer, inner), scenes.DYE)])).found
    outline = found.outline_px
    assert caliper(outline)[0] == pytest.approx(2 * outer, abs=1.0)
    assert inscribed_width(outline) == pytest.approx(outer - inner, abs=0.8)
    # all the way round its middle; the cut takes some px, the ways into its corners give some
    assert path_length(outline) == pytest.approx(np.pi * (outer + inner), rel=0.06)


def test_what_lies_within_a_ring_is_called_too():
    layers = [(ring(60, 53), scenes.DYE), (scenes.disc(SHAPE, 120, 100, 14), scenes.DYE)]
    sizes = [caliper(one.outline_px)[0] for one in suggest(scenes.photo(SHAPE, layers)).found]
    assert sorted(sizes) == pytest.approx([28, 120], abs=1.0)


def test_a_net_of_lines_is_opened_and_stays_one():
    lines = np.zeros(SHAPE)
    for k in range(4):
        level = scenes.bar(SHAPE, 57.5, 182.5, 50 + 40 * k, 5)
        upright = scenes.bar(SHAPE[::-1], 47.5, 172.5, 60 + 40 * k, 5).T
        lines = np.maximum(lines, np.maximum(level, upright))
    (found,) = suggest(scenes.photo(SHAPE, [(lines, scenes.DYE)])).found
    assert inscribed_width(found.outline_px) < 9  # crossings of 5 px lines, not cells of 35
    assert caliper(found.outline_px)[0] == pytest.approx(125 * np.sqrt(2), abs=3)


@pytest.mark.parametrize(("left", "radius"), [(0.4, 8), (0.6, 8), (0.75, 8), (0.0, 4)])
def test_a_pale_middle_is_no_hole(left, radius):
    dye = (1 - (1 - left) * scenes.disc(SHAPE, *AT, radius)) * scenes.disc(SHAPE, *AT, 20)
    (found,) = suggest(scenes.photo(SHAPE, [(dye, scenes.DYE)])).found
    assert inscribed_width(found.outline_px) == pytest.approx(40, abs=1.0)


def test_a_ring_drawn_round_by_hand_is_taken_to_its_band():
    photo = scenes.photo(SHAPE, [(ring(60, 53), scenes.DYE)])
    turn = np.linspace(0, 2 * np.pi, 60, endpoint=False)
    drawn = np.array(AT) + 62 * np.column_stack([np.cos(turn), np.sin(turn)])
    outline, edge = refine_outline(photo, drawn)
    assert edge.source == "snapped"
    assert inscribed_width(outline) == pytest.approx(7, abs=0.8)
