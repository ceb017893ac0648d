"""Thin lines of which the file's colours left pieces are called whole, as long as may be."""

import importlib.util
from pathlib import Path

import numpy as np
import pytest

from ptmark.dye import suggest
from ptmark.dye.contour import Contour
from ptmark.dye.judge import Sight
from ptmark.dye.pieces import made_whole

_SPEC = importlib.util.spec_from_file_location(
    "dye_scenes", Path(__file__).with_name("scenes.py")
)
scenes = importlib.util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(scenes)

SHAPE = (420, 560)
LINE = (0.5 * scenes.bar(SHAPE, 120, 220, 211.3, 3.0), scenes.DYE)
LOST = np.array([0.4, 0.22, 0.22])  # share of the white that dye leaves which has little colour
GREY = np.full(3, 0.3)


def rest(start, y=211.3, width=3.0, colour=LOST):
    return 0.5 * scenes.bar(SHAPE, start, start + 40, y, width), colour


def looked_at(*layers):
    return suggest(scenes.photo(SHAPE, layers))


def ends(one):
    return one.outline_px[:, 0].min(), one.outline_px[:, 0].max()


def u_px(one):
    """U of the length by its ends, k = 2, rectangular (JCGM 100:2008, 4.3.7)."""
    return 4 / np.sqrt(3) * one.edge.end_shift_px


def test_what_has_lost_its_colour_is_not_called_alone():
    assert looked_at(rest(222)).found == ()


@pytest.mark.parametrize("start", [222, 223])
def test_it_is_called_where_a_thin_line_goes_on_in_it_and_may_be_longer(start):
    made = looked_at(LINE, rest(start))
    (one,) = made.found
    assert ends(one) == pytest.approx((119.5, start + 39.5), abs=1.5)
    assert not one.edge.ends_unsure
    assert 10.0 < u_px(one) < 15.0
    assert made.left_out == ()


def test_a_line_alone_has_sure_ends():
    (one,) = looked_at(LINE).found
    assert not one.edge.ends_unsure


@pytest.mark.parametrize(
    "other",
    [
        rest(240),  # with developer between
        rest(232),
        rest(222, y=222.3),  # beside it
        rest(222, width=9.0),  # not as narrow
    ],
)
def test_what_is_no_part_of_it_is_not_joined(other):
    one = min(looked_at(LINE, other).found, key=ends)
    assert ends(one) == pytest.approx((119.5, 219.5), abs=1.5)
    assert not one.edge.ends_unsure


def test_what_goes_on_as_dark_between_two_that_are_called_is_one_line():
    other = (0.5 * scenes.bar(SHAPE, 235, 300, 211.3, 3.0), scenes.DYE)
    between = (0.5 * scenes.bar(SHAPE, 220, 235, 211.3, 3.0), GREY)
    (one,) = looked_at(LINE, between, other).found
    assert ends(one) == pytest.approx((119.5, 299.5), abs=1.5)
    assert 10.0 < u_px(one) < 15.0
    assert len(looked_at(LINE, other).found) == 2


def piece(start, end):
    along = np.linspace(start, end, 40)
    sides = [np.column_stack([along, np.full(40, y)]) for y in (209.8, 212.8)]
    outline = np.concatenate([sides[0], sides[1][::-1]])
    return Contour(
        outline_px=outline,
        shift_px=0.4,
        end_shift_px=0.4,
        noise_px=0.1,
        contrast=0.5,
        left_outside=0.0,
        taken_light=0.5 * (1 - scenes.DYE),
        area_px=3.0 * (end - start),
        cut=0.0,
        grain=0.01,
    )


def test_a_piece_between_two_is_joined_with_them():
    photo = scenes.photo(SHAPE, [(0.5 * scenes.bar(SHAPE, 120, 300, 211.3, 3.0), scenes.DYE)])
    sight = Sight(
        least_px=4.0, least_mm=None, photo_width=560, photo_height=420, usual_shift_px=0.4
    )
    pieces = [piece(120, 220), piece(233, 300), piece(222, 231)]
    (whole,), least, left_out = made_whole(photo, pieces, [], sight)
    assert (least, left_out) == ([], [])
    assert np.ptp(whole.outline_px[:, 0]) == pytest.approx(180, abs=0.5)


def test_what_lost_its_colour_in_line_with_a_part_is_called_apart():
    one, two = sorted(looked_at(LINE, rest(260)).found, key=ends)
    assert (*ends(one), *ends(two)) == pytest.approx((119.5, 219.5, 259.5, 299.5), abs=1.5)
    assert (one.edge.ends_unsure, two.edge.ends_unsure) == (False, False)
    assert u_px(one) < 5.0
    assert 10.0 < u_px(two) < 15.0
    far = looked_at(LINE, rest(345))  # as far off as no part is long
    assert len(far.found) == 1


def grey(start, end, y=211.3):
    return 0.5 * scenes.bar(SHAPE, start, end, y, 3.0), GREY


@pytest.mark.parametrize("end", [250, 262])
def test_the_end_of_a_grey_line_that_goes_on_lies_within_u(end):
    (one,) = looked_at(LINE, grey(222, end)).found
    assert ends(one) == pytest.approx((119.5, 219.5), abs=1.5)
    assert not one.edge.ends_unsure
    assert end - 220 < u_px(one) < 1.155 * (end - 220) + 16


@pytest.mark.parametrize("end", [290, 330])
def test_a_grey_line_of_most_of_the_lines_length_makes_it_the_least(end):
    (one,) = looked_at(LINE, grey(222, end)).found
    assert ends(one) == pytest.approx((119.5, 219.5), abs=1.5)
    assert one.edge.ends_unsure
    assert u_px(one) < 5.0


def test_what_goes_on_dark_to_another_line_may_be_one_with_it():
    far, line = rest(290), grey(222, 289)
    one, two = sorted(looked_at(LINE, line, far).found, key=ends)
    assert one.edge.ends_unsure
    assert two.edge.ends_unsure


def test_a_grey_line_apart_leaves_the_end_sure():
    (one,) = looked_at(LINE, grey(243, 283)).found
    assert not one.edge.ends_unsure
    assert u_px(one) < 5.0


def test_a_grey_line_beside_the_end_leaves_it_sure():
    (one,) = looked_at(LINE, rest(222, y=224.3, colour=GREY)).found
    assert not one.edge.ends_unsure


def test_two_parts_with_developer_between_stay_two():
    other = 0.5 * scenes.bar(SHAPE, 231, 280, 211.3, 3.0)
    assert len(looked_at(LINE, (other, scenes.DYE)).found) == 2


def test_a_line_in_three_pieces_that_goes_on_both_ways_is_one():
    between = 0.2 * scenes.bar(SHAPE, 260, 268, 211.3, 3.0), LOST
    end = rest(268)
    (one,) = looked_at(LINE, rest(78), rest(222), between, end).found
    assert ends(one) == pytest.approx((77.5, 307.5), abs=1.5)
