"""Pink that lies in a crease is left out and holds the verdict open; a crack there is called.

Dye and shade are mixed in linear light as a photo mixes them (`scenes`). That residue in
creases and toes is cleaned and looked at again, and not evaluated as it is: from memory.
"""

import importlib.util
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from scipy.ndimage import gaussian_filter

from ptmark.dye import dense_places, suggest
from ptmark.dye.contour import Contour
from ptmark.dye.crease import in_creases
from ptmark.dye.haze import IN_CREASE
from ptmark.photo import Photo, srgb_to_linear

_SPEC = importlib.util.spec_from_file_location(
    "dye_scenes", Path(__file__).with_name("scenes.py")
)
scenes = importlib.util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(scenes)

SHAPE = (200, 520)
ROWS, COLUMNS = np.mgrid[: SHAPE[0], : SHAPE[1]].astype(float)
MIDDLE = 100.4
AWAY = (ROWS - MIDDLE) / 3.0
CREASE = 1 - 0.3 * np.exp(-(AWAY**2))
PINK = 0.16 * np.exp(-(AWAY**2))
ASIDE = np.r_[86:92, 109:115]


def crack(*ends):
    return 0.3 * scenes.bar(SHAPE, *ends, MIDDLE, 4.0)


def photo(*layers, shade=CREASE):
    return scenes.photo(SHAPE, [(each, scenes.DYE) for each in layers], shade=shade)


def called(taken, left, right):
    """A call in the crease, with the light that its middle takes from the developer beside."""
    light = srgb_to_linear(taken.rgb[:, left + 15 : right - 15])
    core, beside = (np.median(light[rows], axis=(0, 1)) for rows in (slice(100, 102), ASIDE))
    along = np.linspace(0, 2 * np.pi, 240, endpoint=False)
    length, middle = right - left, (left + right) / 2
    return Contour(
        outline_px=np.c_[middle + length / 2 * np.cos(along), MIDDLE + 3 * np.sin(along)],
        shift_px=0.5,
        end_shift_px=0.5,
        noise_px=0.2,
        contrast=0.3,
        left_outside=0.05,
        taken_light=1 - core / beside,
        area_px=4.7 * length,
        cut=0.0,
        grain=0.01,
    )


def coloured(base, codes, box):
    """Codes of JPEG's Cr (JFIF 1.02) added in a box, as its quantising leaves them there."""
    held = np.zeros(SHAPE)
    held[box] = codes
    red = gaussian_filter(held, 2.0)[..., None] * np.array([1.402, -0.714, 0.0])
    return Photo.from_array(np.clip(np.round(base.rgb + red), 0, 255).astype(np.uint8))


def test_colour_that_jpeg_left_on_a_crease_is_no_call_and_holds_the_verdict_open():
    looked = suggest(coloured(photo(), 9, np.s_[96:112, 240:256]))
    assert looked.found == ()
    (one,) = (one for one in looked.left_out if one.reason == IN_CREASE)
    assert one.outline_px.mean(axis=0) == pytest.approx([248, 104], abs=4)
    assert dense_places(one.reason for one in looked.left_out) == 1


@pytest.mark.parametrize("shade", [None, CREASE], ids=["flat", "in a crease"])
def test_a_faint_crack_is_called(shade):
    (one,) = suggest(photo(crack(200, 300), shade=shade)).found
    assert one.outline_px[:, 0].min() == pytest.approx(200, abs=4)
    assert one.outline_px[:, 0].max() == pytest.approx(300, abs=4)


def test_the_parts_of_a_faint_broken_crack_in_a_crease_are_called():
    parts = (crack(at, at + 40) for at in (150, 200, 250))
    assert len(suggest(photo(*parts)).found) == 3


def test_pink_that_goes_on_is_in_a_crease_and_a_crack_is_not():
    pink = photo(PINK)
    one = called(pink, 200, 300)
    assert in_creases(pink, [one]) == [one]
    dye = photo(crack(200, 300))
    assert in_creases(dye, [called(dye, 200, 300)]) == []
    # faint ones read too long in shade: the ends of the call lie in the crease alone
    assert in_creases(dye, [called(dye, 180, 320)]) == []


def test_what_a_line_or_the_border_hides_may_be_the_rest_of_a_crack():
    pink = photo(PINK)
    rest, part, far = (called(pink, *ends) for ends in ((170, 250), (255, 305), (10, 509)))
    assert in_creases(pink, [part]) == [part]
    assert in_creases(pink, [replace(rest, contrast=0.6), part]) == []
    assert in_creases(pink, [far]) == []


def test_the_parts_of_one_crease_are_found_and_those_of_one_crack_stand():
    ends = [(at, at + 40) for at in (150, 200, 250)]
    pink, dye = photo(PINK), photo(crack(150, 290))
    parts = [called(pink, *each) for each in ends]
    assert set(map(id, in_creases(pink, parts))) == set(map(id, parts))
    assert in_creases(dye, [called(dye, *each) for each in ends]) == []
