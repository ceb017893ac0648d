"""One line and two lines: scale, and an honest uncertainty of what they cannot tell."""

import numpy as np
import pytest

from ptmark.scale import LineReference, LinesReference, solve


def seen_line(eye, a, b, mm=None):
    ends = eye.project(np.array([a, b], float))
    return tuple(map(tuple, ends)), float(np.hypot(*np.subtract(b, a))) if mm is None else mm


def length(surface, ends):
    a, b = surface.to_mm(ends)
    return float(np.hypot(*(b - a)))


def combined(surface, ends):
    return float(np.sqrt(sum(v**2 for v in surface.distance_u(*ends).values())))


def test_line_is_exact_on_itself_and_square_on(camera):
    eye = camera(turn_deg=20.0)
    ends, mm = seen_line(eye, (0, 0), (80, 10))
    surface = solve(LineReference(ends_px=ends, length_mm=mm), eye.photo())
    assert length(surface, np.array(ends)) == pytest.approx(mm, rel=1e-6)
    other = np.array([[20.0, 30.0], [60.0, 50.0]])
    assert length(surface, eye.project(other)) == pytest.approx(np.hypot(40, 20), rel=1e-6)
    assert surface.tilt_deg is None
    assert surface.working_distance_mm is None
    assert "not the tilt" in surface.cautions[0]
    np.testing.assert_allclose(surface.to_mm(np.array(ends))[0], [0, 0], atol=1e-6)


def test_tilt_weighs_more_across_and_away_than_along(camera):
    eye = camera()
    ends, mm = seen_line(eye, (0, 27), (85, 27))
    surface = solve(LineReference(ends_px=ends, length_mm=mm), eye.photo())

    def tilt(a, b):
        return surface.distance_u(*eye.project(np.array([a, b], float)))["tilt"]

    on_it, across, away = (
        tilt((20, 27), (60, 27)),
        tilt((40, 7), (40, 47)),
        tilt((20, 67), (60, 67)),
    )
    assert on_it < 0.5 * across
    assert on_it < 0.2 * away


@pytest.mark.slow
@pytest.mark.parametrize("kind", ["line", "two lines"])
def test_stated_uncertainty_covers_cameras_held_as_stated(camera, kind):
    """Cameras leaning 10 degrees rms about each axis, picks of 1.2 px: 95 % within 2 u."""
    rng = np.random.default_rng(8)
    inside, total = 0, 0
    for _ in range(60):
        eye = camera(
            lean_deg=tuple(rng.normal(0, 10, 2)),
            turn_deg=rng.uniform(-180, 180),
            focal_px=1450 * np.exp(rng.normal(0, 0.1)),
            distance_mm=rng.uniform(130, 220),
        )

        def picked(a, b, eye=eye):
            ends = eye.project(np.array([a, b], float)) + rng.normal(0, 1.2, (2, 2))
            return tuple(map(tuple, ends))

        if kind == "line":
            reference = LineReference(ends_px=picked((10, 10), (80, 10)), length_mm=70.0)
        else:
            reference = LinesReference(
                first_px=picked((10, 10), (80, 10)),
                first_mm=70.0,
                second_px=picked((20, 15), (20, 55)),
                second_mm=40.0,
            )
        surface = solve(reference, eye.photo())
        for a, b in [((20, 40), (50, 45)), ((60, 30), (62, 50)), ((0, 60), (30, 30))]:
            ends = eye.project(np.array([a, b], float))
            off = length(surface, ends) - np.hypot(*np.subtract(b, a))
            inside += abs(off) <= 2 * combined(surface, ends)
            total += 1
    assert 0.92 <= inside / total <= 1.0


def test_two_lines_tell_the_foreshortening(camera):
    eye = camera(lean_deg=(25.0, 0.0), distance_mm=400.0, focal_px=3600.0)
    first, a_mm = seen_line(eye, (5, 20), (80, 20))
    second, b_mm = seen_line(eye, (30, 0), (30, 54))
    photo = eye.photo(exif=True)
    both = solve(
        LinesReference(first_px=first, first_mm=a_mm, second_px=second, second_mm=b_mm), photo
    )
    one = solve(LineReference(ends_px=first, length_mm=a_mm), photo)
    ends = eye.project(np.array([[60.0, 8.0], [60.0, 48.0]]))
    assert abs(length(both, ends) - 40) < 0.3 * abs(length(one, ends) - 40)
    assert combined(both, ends) < combined(one, ends)


def test_second_line_may_run_either_way(camera):
    """Turned round, the same two lines give the same lengths."""
    eye = camera(lean_deg=(12.0, 7.0))
    first, a_mm = seen_line(eye, (5, 20), (80, 20))
    second, b_mm = seen_line(eye, (30, 0), (30, 54))
    ends = eye.project(np.array([[60.0, 8.0], [70.0, 48.0]]))
    lengths = []
    for back in (second, second[::-1]):
        reference = LinesReference(
            first_px=first, first_mm=a_mm, second_px=back, second_mm=b_mm
        )
        lengths.append(length(solve(reference, eye.photo()), ends))
    assert lengths[0] == pytest.approx(lengths[1], rel=1e-4)


def test_line_of_sight_is_unsure_where_the_tilt_is(camera):
    """Right under the camera the view is square on, unless nobody measured the tilt."""
    eye = camera()
    ends, mm = seen_line(eye, (0, 27), (85, 27))
    surface = solve(LineReference(ends_px=ends, length_mm=mm), eye.photo())
    under = surface.camera_mm[:2] + np.array([[-5.0, 0.0], [5.0, 0.0]])
    # Ten degrees about each axis, as stated for a camera held by hand.
    far = under + np.array([surface.camera_mm[2], 0.0])
    ends = np.array([under, far, under[[0, 0]]])
    below, aside, nowhere = surface.view_slopes(ends)
    assert below == pytest.approx(np.tan(np.radians(10)), rel=0.01)
    assert aside > 1.0
    assert nowhere == 0.0
