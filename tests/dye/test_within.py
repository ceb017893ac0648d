"""Dye that stands out of haze, a red reflection, rust or paint is called; these alone not."""

import importlib.util
from pathlib import Path

import numpy as np
import pytest
from scipy.ndimage import gaussian_filter

from ptmark.dye import suggest

_SPEC = importlib.util.spec_from_file_location(
    "dye_scenes", Path(__file__).with_name("scenes.py")
)
scenes = importlib.util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(scenes)

SHAPE = (300, 460)
ROWS, COLUMNS = np.mgrid[: SHAPE[0], : SHAPE[1]].astype(float)
CRACK = scenes.bar(SHAPE, 180, 280, 150, 4.0)
DYE = 1 - 0.9 * (1 - scenes.DYE)
AWAY = np.hypot(COLUMNS - 230, 1.3 * (ROWS - 150))
CLOUD = gaussian_filter(np.random.RandomState(3).normal(size=SHAPE), 25)  # any seed will do
HAZE = np.exp(-((AWAY / 110) ** 2)) * (1 + 0.25 * CLOUD / CLOUD.std())
TEETH = 12 * np.abs((ROWS % 40) / 20 - 1)
OTHER = {
    # light that something red throws on the developer: more red, hardly more of the rest
    "reflection": (np.clip((110 - AWAY) / 5, 0, 1), np.array([1.25, 1.02, 1.02])),
    "rust": (np.clip((80 - AWAY) / 10, 0, 1), scenes.RUST),
    "paint": (1.0 * (COLUMNS > 230 + TEETH), np.array([0.45, 0.06, 0.05])),
}


@pytest.mark.parametrize("name", ["haze", *OTHER])
def test_a_crack_in_something_reddish_is_called_as_long_as_it_is(name):
    other = OTHER.get(name, (0.5 * HAZE, scenes.DYE))
    (one,) = suggest(scenes.photo(SHAPE, [other, (CRACK, DYE)])).found
    assert one.edge.ends_unsure
    low, high = one.outline_px.min(axis=0), one.outline_px.max(axis=0)
    seen_to = 230 + TEETH[150, 0] if name == "paint" else 280
    assert low[0] == pytest.approx(180, abs=1)
    assert high[0] == pytest.approx(seen_to, abs=5 if name == "paint" else 1)
    assert high[1] - low[1] == pytest.approx(4, abs=2.5 if name == "paint" else 1.5)


@pytest.mark.parametrize("name", OTHER)
def test_nothing_is_called_where_there_is_no_crack(name):
    seen = suggest(scenes.photo(SHAPE, [OTHER[name]]))
    assert seen.found == ()
    assert seen.left_out
