"""Where only a part of a line is surely dye: whether the rest of the line is called with it."""

import importlib.util
from pathlib import Path

import numpy as np
import pytest

from ptmark.dye.coarse import look_coarsely
from ptmark.dye.contour import Contour
from ptmark.dye.part import whole_lines

_SPEC = importlib.util.spec_from_file_location(
    "dye_scenes", Path(__file__).with_name("scenes.py")
)
scenes = importlib.util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(scenes)

SHAPE = (240, 360)
LONG = 220.0  # px, of which the first 100 are the part that is called


def outlined(end, half=4.0):
    """The outline of the line from x = 60 on, as wide as it is drawn."""
    x = np.linspace(60, end, 40)
    outline = np.concatenate([np.c_[x, x * 0 + 120 - half], np.c_[x, x * 0 + 120 + half][::-1]])
    return Contour(
        outline_px=outline,
        shift_px=0.5,
        end_shift_px=0.5,
        noise_px=0.1,
        contrast=0.5,
        left_outside=0.0,
        taken_light=np.array([0.2, 0.5, 0.5]),
        area_px=2 * half * (end - 60),
        cut=0.0,
        grain=0.01,
    )


@pytest.mark.parametrize(
    ("rest", "stripe", "half", "whole"),
    [
        (0.6, 1.0, 4.0, True),
        (0.6, 0.6, 4.0, True),  # developer beside the rest that is thin, and darker so
        (0.15, 1.0, 4.0, False),  # pale: a seepage's line
        (0.6, 1.0, 9.0, False),  # wider: the part lies in something else
    ],
)
def test_a_line_is_called_whole_where_it_is_dye_all_along(rest, stripe, half, whole):
    part = scenes.bar(SHAPE, 60, 160, 120, 8)
    more = scenes.bar(SHAPE, 160, LONG + 60, 120, 2 * half)
    shade = np.where(np.arange(SHAPE[1]) < 180, 1.0, stripe) * np.ones(SHAPE)
    layers = [(0.6 * part, scenes.DYE), (rest * more, scenes.DYE)]
    photo = scenes.photo(SHAPE, layers, shade=shade)
    one, called = outlined(LONG + 60, half), outlined(160)
    found = whole_lines(photo, look_coarsely(photo, None), [one], [called])
    assert found == ([one] if whole else [called])
    assert whole_lines(photo, look_coarsely(photo, None), [one], []) == []
