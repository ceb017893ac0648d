"""What a rule's numerals settle that the lengths of its strokes do not.

The rules are drawn and photographed by this folder's conftest (OpenCV's projection and fonts).
"""

from dataclasses import replace

import cv2
import numpy as np
import pytest

from ptmark.errors import ScaleError
from ptmark.scale import LineReference, solve
from ptmark.scale.graduations import likely_graduations
from ptmark.scale.numerals import numeral_period
from ptmark.scale.rule import read_rule
from ptmark.scale.strip import strip_along
from ptmark.scale.strokes import find_strokes

IN = 25.4
# Lengths of strokes in mm by the count they stand at, as in conftest.
HALF = {20: 5.5, 10: 4.6, 2: 3.2, 1: 2.2}
IN_16 = {16: 7.0, 8: 5.6, 4: 4.4, 2: 3.4, 1: 2.5}
IN_32 = {32: 7.0, 16: 5.8, 8: 4.8, 4: 3.9, 2: 3.0, 1: 2.2}


# What is on the rule, its numerals' period in steps, and what it is then: none where all
# strokes are alike and nothing is numbered, or where numerals could mean two graduations.
SERIF = cv2.FONT_HERSHEY_TRIPLEX
RULES_SEEN = {
    "one length, each cm": ({}, 10, "mm"),
    "one length, 10 20 30": ({"by": 10, "font": SERIF}, 10, "mm"),
    "one length, each 5": ({"every_mm": 5.0, "by": 5, "high_mm": 1.7}, 5, "mm"),
    "only tens longer": ({"reach": {1: 2.6, 10: 5.0}}, 10, "mm"),
    "half mm of one length": ({"step_mm": 0.5}, 20, "1/2 mm"),
    "half mm, only fives longer": ({"step_mm": 0.5, "reach": {1: 2.6, 10: 4.6}}, 20, "1/2 mm"),
    "half mm numbered each 5": (
        {"step_mm": 0.5, "reach": HALF, "every_mm": 5.0, "by": 5, "high_mm": 1.7},
        10,
        "1/2 mm",
    ),
    "sixteenths of one length": ({"step_mm": IN / 16, "every_mm": IN}, 16, "1/16 in"),
    "thirty-seconds of one length": ({"step_mm": IN / 32, "every_mm": IN}, 32, "1/32 in"),
    "thirty-seconds, 4 8 12": (
        {"step_mm": IN / 32, "reach": IN_32, "every_mm": IN / 8, "by": 4, "high_mm": 1.2},
        4,
        "1/32 in",
    ),
    "nothing numbered": ({"every_mm": 0.0}, None, ""),
    "only tens longer, nothing numbered": (
        {"reach": {1: 2.6, 10: 5.0}, "every_mm": 0.0},
        None,
        "",
    ),
}


@pytest.fixture
def eye(camera):
    return camera(
        width=2000,
        height=1100,
        focal_px=2600.0,
        distance_mm=165.0,
        aim_mm=(42.0, 5.0),
        lean_deg=(9.0, -12.0),
        turn_deg=-165.0,
    )


def picks(eye, first_mm, last_mm):
    ends = eye.project(np.array([[first_mm, 1.0], [last_mm, 1.0]]))
    return ends + np.random.default_rng(4).normal(0, 1.2, (2, 2))


def line(ends, mm):
    return LineReference(ends_px=tuple(map(tuple, ends)), length_mm=mm)


@pytest.mark.parametrize("name", list(RULES_SEEN))
def test_numerals_settle_what_lengths_leave_open(numbered, eye, name):
    """And a typed half or double is refused, the right length taken without alarm."""
    made, period, kind = RULES_SEEN[name]
    rule = numbered(**made)
    photo = rule.photograph(eye, blur_px=1.0, noise=0.015)
    count = round(60 / rule.step_mm)
    ends = picks(eye, 10 * rule.step_mm, (10 + count) * rule.step_mm)
    strip = strip_along(photo, ends)
    strokes = find_strokes(strip)
    assert numeral_period(photo, strip, strokes) == period
    assert [one.name for one in likely_graduations(strokes, period)] == ([kind] if kind else [])
    right = count * rule.step_mm
    read = read_rule(photo, ends, right)
    assert (read.graduation.name if read.graduation else "") == kind
    if not kind:
        said = solve(line(ends, right), photo)
        assert any("as typed" in caution for caution in said.cautions)
        return
    for wrong in (0.5, 2.0):
        with pytest.raises(ScaleError, match=f"of {kind} between"):
            read_rule(photo, ends, right * wrong)


@pytest.mark.parametrize("share", [0.15, 0.3])
def test_wear_that_hides_the_longer_strokes_makes_nothing_up(numbered, eye, share):
    """Half millimetres numbered at each 5 are never taken for millimetres at each 10."""
    rule = numbered(**RULES_SEEN["half mm numbered each 5"][0], worn=share)
    photo = rule.photograph(eye, blur_px=1.0, noise=0.02)
    read = read_rule(photo, picks(eye, 5.0, 65.0), 60.0)
    assert read is None or read.graduation is None or read.graduation.name == "1/2 mm"


# Ten steps between numerals, and no longer fives: only the digits tell which of the two it is.
TENS = {1: 2.6, 10: 4.6}
HALVES = {"step_mm": 0.5, "every_mm": 5.0, "by": 5, "high_mm": 1.7}
TURNS = {
    "halves 5 10 15": (HALVES, "1/2 mm"),
    "halves 5 10 15 in serifs": (HALVES | {"font": SERIF}, "1/2 mm"),
    "halves 5 10 15, longer fives": (HALVES | {"reach": TENS}, "1/2 mm"),
    "mm 10 20 30": ({"by": 10}, "mm"),
    "mm 10 20 30 in serifs": ({"by": 10, "font": SERIF}, "mm"),
    "mm 10 20 30, longer tens": ({"by": 10, "reach": TENS}, "mm"),
    "mm, cm 1 2 3": ({}, "mm"),
    "mm, cm 1 2 3, longer tens": ({"reach": TENS}, "mm"),
}


@pytest.mark.parametrize("name", list(TURNS))
def test_half_millimetres_numbered_at_fives_are_no_millimetres(numbered, eye, name):
    """Upright, tilted by 16 degrees and soft; the serifs upside down."""
    made, kind = TURNS[name]
    upright = replace(eye, lean_deg=(14.0, 8.0), turn_deg=12.0)
    seen_by = eye if "font" in made else upright
    photo = numbered(**made).photograph(seen_by, blur_px=1.6, noise=0.015)
    ends, right = picks(seen_by, 5.0, 65.0), 60.0
    read = read_rule(photo, ends, right)
    assert [one.name for one in read.likely] == [kind]
    for wrong in (0.5, 2.0):
        with pytest.raises(ScaleError, match=f"of {kind} between"):
            read_rule(photo, ends, right * wrong)


@pytest.mark.parametrize("made", [HALVES, {"by": 10}])
def test_numerals_too_scratched_to_tell_are_asked_about(numbered, eye, made):
    """A scratch through each: both are named, and what neither allows is refused."""

    class Scratched(numbered):
        def _write(self, light, word, at_mm):
            super()._write(light, word, at_mm)
            middle = max(self.reach.values()) + 0.8 + self.high_mm / 2
            self._box(light, at_mm - 1.5, middle, 3.0, 0.2, 25)

    photo = Scratched(**made).photograph(eye, blur_px=1.0, noise=0.015)
    ends = picks(eye, 5.0, 65.0)
    said = solve(line(ends, 60.0), photo)
    asks = [caution for caution in said.cautions if "may be any of mm, 1/2 mm" in caution]
    assert len(asks) == 1
    assert "Check it against the rule's numerals" in asks[0]
    with pytest.raises(ScaleError, match="of mm or 1/2 mm between"):
        read_rule(photo, ends, 48.0)


def test_numerals_that_contradict_the_strokes_are_asked_about(numbered, eye):
    """Strokes of millimetres, numerals at each inch: neither is believed."""
    rule = numbered(reach={1: 2.6, 5: 3.8, 10: 5.0}, every_mm=16.0)
    photo = rule.photograph(eye, blur_px=1.0)
    ends = picks(eye, 10.0, 70.0)
    said = solve(line(ends, 60.0), photo)
    assert said.reading == ""
    assert any("as typed" in caution for caution in said.cautions)


def test_what_few_strokes_leave_open_is_told(numbered, eye):
    """Fourteen sixteenths: no two strokes of a whole inch could be other fractions too."""
    rule = numbered(step_mm=IN / 16, reach=IN_16, every_mm=0.0, length_mm=24.0)
    photo = rule.photograph(eye, blur_px=1.0)
    ends = picks(eye, 0.0, 14 * IN / 16)
    said = solve(line(ends, 14 * IN / 16), photo)
    assert "steps of 1/16 in" in said.reading
    assert any("may be any of 1/16 in, " in caution for caution in said.cautions)


IN_64 = {64: 7.0, 32: 6.0, 16: 5.0, 8: 4.2, 4: 3.4, 2: 2.7, 1: 2.0}


def test_strokes_longer_than_the_strip_is_wide_keep_their_lengths(numbered, eye):
    """Sixty-fourths from near by, picked on a short way: cut, inch and half inch look alike."""
    near = replace(eye, distance_mm=115.0, lean_deg=(0.0, 0.0), turn_deg=5.0)
    rule = numbered(step_mm=IN / 64, reach=IN_64, every_mm=IN, stroke_mm=0.1)
    photo = rule.photograph(near, blur_px=0.8)
    ends = near.project(np.array([[8.0, 1.0], [8.0 + 117 * IN / 64, 1.0]]))
    assert read_rule(photo, ends, 117 * IN / 64).graduation.name == "1/64 in"
    with pytest.raises(ScaleError, match="117 steps of 1/64 in"):
        read_rule(photo, ends, 117 * IN / 32)


def test_strokes_that_leave_the_photo_tell_no_graduation(numbered, eye):
    """The long ones end beyond the photo's rim: all that are left look alike."""
    near = replace(eye, height=500, aim_mm=(42.0, -10.0), lean_deg=(0.0, 0.0), turn_deg=0.0)
    rule = numbered(step_mm=IN / 32, reach=IN_32, every_mm=IN)
    photo = rule.photograph(near, blur_px=1.0)
    low = near.project(np.array([[40.0, 6.5]]))[0, 1]
    assert low > near.height  # where the strokes of a whole inch still go on
    read = read_rule(photo, near.project(np.array([[10.0, 1.0], [10.0 + 2 * IN, 1.0]])), 2 * IN)
    assert read is None or read.graduation is None
