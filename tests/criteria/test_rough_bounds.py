"""Quick bounds of width and path hold what a closer look finds, or a wrong class may pass."""

import numpy as np
import pytest
import shapely

from ptmark.criteria.inner import inner_radii
from ptmark.criteria.rough import longest_way, measured_closely, roughly

TURN = np.linspace(0, 2 * np.pi, 48, endpoint=False)


def outline(rng):
    """A round, long, bent or jagged outline of random size, turned and shifted."""
    length, slim = rng.uniform(0.5, 8), rng.uniform(1, 9)
    points = np.c_[np.cos(TURN), np.sin(TURN) / slim] * length / 2
    points[:, 1] += rng.choice([0.0, 0.1, 0.4]) * points[:, 0] ** 2 / length
    points *= 1 + rng.choice([0.0, 0.02, 0.08]) * rng.standard_normal((len(TURN), 1))
    deg = rng.uniform(0, 2 * np.pi)
    turn = np.array([[np.cos(deg), np.sin(deg)], [-np.sin(deg), np.cos(deg)]])
    return points @ turn + rng.uniform(-500, 500, 2)


@pytest.mark.truth
def test_bounds_hold_the_inscribed_circle_of_shapely_and_the_traced_way():
    rng = np.random.default_rng(4)
    outlines = [outline(rng) for _ in range(150)]
    bounded = 0
    for points, rough in zip(outlines, roughly(outlines), strict=True):
        shape = shapely.Polygon(points)
        if not shape.is_valid:
            continue
        bounded += 1
        circle = shapely.maximum_inscribed_circle(shape, tolerance=1e-4 * rough.length)
        width, path = 2 * circle.length, measured_closely(points, rough.length)[1]
        assert rough.widths[0] <= width * (1 + 1e-3)  # GEOS finds no more than there is
        assert width <= rough.widths[1]
        assert rough.length <= path <= rough.most_path
    assert bounded > 100


@pytest.mark.truth
def test_bounds_of_a_stadium_by_hand():
    # Bonnesen's inequality is an equality for a stadium; half its perimeter is known
    cap = np.linspace(-np.pi / 2, np.pi / 2, 400)
    right = np.c_[np.cos(cap) + 3.0, np.sin(cap)]
    (rough,) = roughly([np.concatenate([right, -right])])
    assert rough.length == pytest.approx(8.0, abs=1e-4)
    assert rough.widths[0] == pytest.approx(2.0, rel=5e-3)
    assert rough.most_path == rough.length  # nothing is bent: its way is 8 long, as its caliper
    # bent, it could be longer: by its circle, R = 1, 2 R^2 / 2l are off, l = (12 + 2 pi) / 4
    off = 1 / (3 + np.pi / 2)
    most = longest_way(np.array([12 + 2 * np.pi]), np.array([2.0]))
    assert most == pytest.approx(6.0 + np.pi - off)


@pytest.mark.truth
@pytest.mark.parametrize("whole", [True, False])
def test_circles_inside_are_no_larger_than_shapely_s_and_nearly_as_large(whole):
    rng = np.random.default_rng(5)
    outlines = [outline(rng)[: 49 if whole else rng.integers(7, 49)] for _ in range(200)]
    outlines = [points for points in outlines if shapely.Polygon(points).is_valid]
    shares = []
    for points, radius in zip(outlines, inner_radii(outlines), strict=True):
        circle = shapely.maximum_inscribed_circle(shapely.Polygon(points), tolerance=1e-4)
        assert radius <= circle.length + 1e-3  # GEOS may end that much short of the largest
        if radius > 0:
            shares.append(radius / circle.length)
    assert len(shares) > 150
    assert np.median(shares) > (0.99 if whole else 0.97)
    assert inner_radii([np.array([[0.0, 0.0], [4, 4], [4, 0], [0, 4]])]) == [0.0]  # no inside


def test_a_tighter_bound_stays_below_a_stated_width_and_the_upper_one():
    (rough,) = roughly([np.array([[0.0, 0.0], [3, 0], [3, 1], [0, 1]])])
    rough.stated = 0.9985, None  # agrees with the outline's 1, so it goes before it
    rough.tighten(1.0)
    assert rough.least_width == 0.9985
    assert rough.exact()[0] == 0.9985
