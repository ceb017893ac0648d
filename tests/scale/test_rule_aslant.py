"""A rule seen far aslant: its strokes tell the plane, or what they leave open is in U."""

import numpy as np
import pytest

from ptmark.scale import LineReference, solve


def line(ends, mm):
    return LineReference(ends_px=tuple(map(tuple, ends)), length_mm=mm)


def length(surface, ends):
    a, b = surface.to_mm(ends)
    return float(np.hypot(*(b - a)))


def aslant(camera, lean_deg, **changes):
    usual = {"focal_px": 1500.0, "distance_mm": 120.0, "aim_mm": (42.0, 5.0), "turn_deg": 20.0}
    return camera(width=2000, height=1100, lean_deg=lean_deg, **(usual | changes))


def off_and_u(eye, surface):
    """Errors of three lengths that lie about a rule, and their stated U, each by the length."""
    pairs = np.array([[[40, -25], [40, -5]], [[40, 20], [40, 35]], [[20, -15], [60, -15]]])
    true = np.hypot(*(pairs[:, 1] - pairs[:, 0]).T)
    seen_px = [eye.project(one.astype(float)) for one in pairs]
    off = np.array([length(surface, ends) for ends in seen_px]) - true
    u = [np.hypot.reduce(list(surface.distance_u(*ends).values())) for ends in seen_px]
    return np.abs(off) / true, 2 * np.array(u) / true


def test_fine_strokes_that_lean_are_followed(camera, rule):
    """By a third of a step from one band to the next: none were seen, lengths 40 % off."""
    eye = aslant(camera, (-30, -34), distance_mm=100.0, aim_mm=(38.0, -5.0), turn_deg=40.0)
    photo = rule(kind="1/64 in", stroke_mm=0.1).photograph(eye, blur_px=0.7)
    surface = solve(line(eye.project(np.array([[12.7, 1.0], [63.5, 1.0]])), 50.8), photo)
    assert "128.0 steps of 1/64 in" in surface.reading
    assert off_and_u(eye, surface)[0].max() < 0.03


def test_a_line_drawn_aslant_over_a_rule_finds_the_common_ends(camera, rule):
    """By their spread across the line, the side of the long and the short was taken."""
    eye = aslant(camera, (35, -20))
    photo = rule(stroke_mm=0.2).photograph(eye, blur_px=0.8)
    surface = solve(line(eye.project(np.array([[15.0, 12.0], [75.0, 1.0]])), 60.0), photo)
    assert surface.tilt_deg == pytest.approx(40.3, abs=2.0)
    assert off_and_u(eye, surface)[0].max() < 0.03


@pytest.mark.parametrize("lean_deg", [(30, 10), (-30, 25), (10, 42)])
def test_strokes_of_no_known_unit_tell_the_tilt_all_the_same(camera, numbered, lean_deg):
    """All of one length, no numerals: the typed length gives their step."""
    eye = aslant(camera, lean_deg)
    photo = numbered(reach={1: 3.0}, every_mm=0.0, stroke_mm=0.2).photograph(eye, blur_px=0.8)
    surface = solve(line(eye.project(np.array([[15.0, 1.0], [75.0, 1.0]])), 60.0), photo)
    assert surface.reading == ""
    assert any("taken as typed" in caution for caution in surface.cautions)
    off, u = off_and_u(eye, surface)
    assert (off < u).all()
    assert off.max() < 0.03


@pytest.mark.parametrize("focal_px", [1150.0, 1500.0, 1800.0])
def test_an_unknown_focal_length_is_in_the_uncertainty_of_a_rule_aslant(camera, rule, focal_px):
    """It trades for tilt: taken as held square, lengths were 30 % off at U of 10 %."""
    eye = aslant(camera, (30, 10), focal_px=focal_px, distance_mm=0.08 * focal_px)
    photo = rule(stroke_mm=0.2).photograph(eye, blur_px=0.8)
    ends = eye.project(np.array([[15.0, 1.0], [75.0, 1.0]]))
    unknown = solve(line(ends, 60.0), photo)
    off, u = off_and_u(eye, unknown)
    assert (off < u + 0.002).all()
    known = solve(line(ends, 60.0), rule(stroke_mm=0.2).photograph(eye, blur_px=0.8, exif=True))
    assert known.tilt_deg is not None
    off, sure = off_and_u(eye, known)
    assert (off < sure + 0.002).all()
    assert sure[0] < u[0] / 2
