"""Cracks beside what is no developer: blue tape, and a bench beyond the edge of the part."""

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

SHAPE = (500, 700)
BLUE_TAPE = np.array([0.09, 0.28, 0.77])  # blue masking tape over white; from memory


def test_a_crack_along_blue_tape_is_called():
    layers = [
        (scenes.bar(SHAPE, -1, 701, 350, 200), BLUE_TAPE),  # from y = 250 on
        (scenes.bar(SHAPE, 300, 400, 244, 5), scenes.DYE),
    ]
    (found,) = suggest(scenes.photo(SHAPE, layers)).found
    assert np.ptp(found.outline_px[:, 0]) == pytest.approx(100, abs=4)


def test_a_faint_crack_along_the_edge_of_the_part_is_called():
    dye = 1 - 0.4 * (1 - scenes.DYE)
    layers = [
        (scenes.bar(SHAPE, -1, 701, 350, 200), np.array([0.035, 0.035, 0.04])),  # a dark bench
        (scenes.bar(SHAPE, 300, 400, 245, 5), dye),
    ]
    (found,) = suggest(scenes.photo(SHAPE, layers)).found
    assert np.ptp(found.outline_px[:, 0]) == pytest.approx(100, abs=4)
