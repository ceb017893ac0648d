"""A crack that touches the pale rim of a run; drawn, so that each one's dye is known."""

import importlib.util
from pathlib import Path

import numpy as np
import pytest

from ptmark.dye import is_uneven, suggest, uneven_remark

_SPEC = importlib.util.spec_from_file_location(
    "dye_scenes", Path(__file__).with_name("scenes.py")
)
scenes = importlib.util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(scenes)

SHAPE = (420, 560)
CRACK = scenes.bar(SHAPE, 200, 320, 210, 8)
RIM = scenes.bar(SHAPE[::-1], 20, 400, 196, 8).T


def told(*layers):
    found = suggest(scenes.photo(SHAPE, list(layers))).found
    longest = max(found, key=lambda one: np.ptp(one.outline_px, axis=0).max())
    photo = scenes.photo(SHAPE, list(layers))
    return is_uneven(photo, longest.outline_px), np.ptp(longest.outline_px[:, 1])


@pytest.mark.parametrize(("dye", "uneven"), [(0.45, True), (1.0, False)])
def test_a_crack_on_the_rim_of_a_run_is_told(dye, uneven):
    said, high = told((CRACK, scenes.DYE), (RIM * dye * (1 - CRACK), scenes.DYE))
    assert high > 100  # of the rim too
    assert said is uneven
    assert "Mostly pale" in uneven_remark(["B"]).says


@pytest.mark.parametrize("dye", [1.0, 0.35])
def test_a_crack_that_tapers_is_not(dye):
    rows, columns = np.mgrid[: SHAPE[0], : SHAPE[1]].astype(float)
    half = 6 * np.sqrt(np.clip(1 - ((columns - 280) / 150) ** 2, 0, 1))
    tapers = np.clip(half - np.abs(rows - 210) + 0.5, 0, 1)
    assert not told((tapers * dye, scenes.DYE))[0]
