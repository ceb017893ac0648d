"""Plane geometry against Shapely, SciPy and scikit-image, and under motion."""

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.spatial import ConvexHull
from scipy.spatial.distance import pdist
from shapely import Polygon
from skimage.draw import polygon2mask
from skimage.measure import label, regionprops

from ptmark.errors import OutlineError
from ptmark.measure import area_mm2, caliper, centroid, inscribed_width, path_length
from ptmark.measure.geometry import as_outline, hull
from ptmark.measure.unfold import sound_medial, sound_medials

CASES = range(12)


@pytest.mark.truth
@pytest.mark.parametrize("seed", CASES)
def test_area_centre_hull_and_caliper_agree_with_shapely_and_scipy(shapes, seed):
    outline = shapes["wobbly"](np.random.default_rng(seed))
    # Shapely (GEOS) and SciPy (Qhull): independent references.
    polygon = Polygon(outline)
    assert area_mm2(outline) == pytest.approx(polygon.area, rel=1e-12)
    assert centroid(outline) == pytest.approx(polygon.centroid.coords[0], rel=1e-9)
    assert Polygon(hull(outline)).area == pytest.approx(ConvexHull(outline).volume, rel=1e-9)
    assert caliper(outline)[0] == pytest.approx(pdist(outline).max(), rel=1e-12)
    # The longest side of the tightest rectangle is never above the largest caliper.
    sides = shapely.get_coordinates(polygon.minimum_rotated_rectangle)
    assert caliper(outline)[0] >= np.hypot(*np.diff(sides, axis=0).T).max() - 1e-9


@pytest.mark.truth
@pytest.mark.parametrize("seed", CASES)
def test_inscribed_circle_agrees_with_shapely(shapes, seed):
    outline = shapes["wobbly"](np.random.default_rng(seed))
    # GEOS "largest empty circle" search, to 1e-5: independent reference.
    radius = shapely.maximum_inscribed_circle(Polygon(outline), tolerance=1e-5).length
    assert inscribed_width(outline) == pytest.approx(2 * radius, abs=1e-3)


@pytest.mark.truth
@pytest.mark.parametrize("seed", range(4))
def test_caliper_agrees_with_scikit_images_feret_diameter(shapes, seed):
    outline = shapes["wobbly"](np.random.default_rng(seed)) * 20 + 200
    mask = polygon2mask((400, 400), outline[:, ::-1])
    # scikit-image feret_diameter_max counts whole pixels: half a pixel at each end.
    feret = regionprops(label(mask))[0].feret_diameter_max
    assert caliper(outline)[0] == pytest.approx(feret, abs=1.5)


@pytest.mark.truth
def test_feret_of_convex_shapes_in_closed_form(shapes):
    """Ellipse 2a, rectangle its diagonal."""
    assert caliper(shapes["ellipse"](5.0, 2.0))[0] == pytest.approx(10.0, rel=1e-9)
    assert caliper(shapes["box"](3.0, 4.0))[0] == pytest.approx(5.0)
    (one, other) = caliper(shapes["box"](3.0, 4.0))[1]
    assert np.hypot(*(one - other)) == pytest.approx(5.0)


@pytest.mark.truth
@pytest.mark.parametrize(
    ("a", "b"), [(5.0, 2.0), (3.0, 2.99), (10.0, 0.4), (1e-3, 4e-4), (4000.0, 900.0)]
)
def test_ellipse_width_is_its_minor_axis_and_path_its_major(shapes, a, b):
    outline = shapes["ellipse"](a, b, 400)
    assert inscribed_width(outline) == pytest.approx(2 * b, rel=1e-3)
    assert path_length(outline) == pytest.approx(2 * a, rel=0.03)
    assert area_mm2(outline) == pytest.approx(np.pi * a * b, rel=1e-3)


@pytest.mark.parametrize(("w", "h"), [(10.0, 1.0), (4.0, 3.9), (5.0, 5.0), (30.0, 0.2)])
def test_rectangle_width_is_its_short_side(shapes, w, h):
    assert inscribed_width(shapes["box"](w, h)) == pytest.approx(h, rel=1e-6)


@pytest.mark.parametrize(
    ("radius", "degrees", "width"),
    [(5.0, 90, 0.5), (3.0, 200, 0.3), (2.0, 300, 0.2), (8.0, 30, 1.0)],
)
def test_bent_crack_has_its_own_width_and_the_length_of_its_line(
    shapes, radius, degrees, width
):
    """Along the middle, both round ends included; the caliper of a C is much shorter."""
    outline = shapes["arc"](radius, degrees, width)
    along = np.radians(degrees) * radius + width
    assert inscribed_width(outline) == pytest.approx(width, rel=5e-3)
    assert path_length(outline) == pytest.approx(along, rel=0.02)


def test_noise_on_the_edge_lengthens_the_path_little(shapes):
    rng = np.random.default_rng(2)
    smooth = shapes["arc"](5.0, 120, 0.6, 400)
    rough = smooth + rng.normal(0, 0.01, smooth.shape)
    assert path_length(rough) == pytest.approx(path_length(smooth), rel=0.03)
    assert inscribed_width(rough) == pytest.approx(0.6, abs=0.05)


def test_star_goes_from_tip_to_tip():
    """Three arms of 3 mm, 0.4 mm wide, at 120 degrees: two of them make the longest way."""
    arms = shapely.unary_union(
        [
            shapely.LineString([(0, 0), (3 * np.cos(t), 3 * np.sin(t))]).buffer(0.2)
            for t in np.radians([90, 210, 330])
        ]
    )
    outline = shapely.get_coordinates(arms.exterior)[:-1]
    assert path_length(outline) == pytest.approx(2 * 3 + 0.4, rel=0.02)
    assert caliper(outline)[0] == pytest.approx(3 * np.sqrt(3) + 0.4, rel=0.01)
    # The middle, where arms at 120 degrees meet, holds a circle that touches the three inner
    # corners: they lie 0.2 / sin(60 deg) from the middle.
    assert inscribed_width(outline) == pytest.approx(2 * 0.2 / np.sin(np.radians(60)), rel=0.01)


motions = st.tuples(
    st.floats(0, 2 * np.pi),
    st.floats(-300, 300),
    st.floats(-300, 300),
    st.floats(0.01, 100),
    st.booleans(),
    st.integers(0, 2**16),
)


@settings(max_examples=40, deadline=None)
@given(motions)
def test_motion_changes_nothing_and_size_goes_with_scale(motion):
    angle, dx, dy, scale, mirrored, seed = motion
    rng = np.random.default_rng(seed)
    t = np.linspace(0, 2 * np.pi, 50, endpoint=False)
    r = 3 + rng.uniform(-1, 1) * np.cos(2 * t) + 0.4 * rng.uniform(-1, 1) * np.cos(5 * t)
    outline = np.column_stack([r * np.cos(t), 0.4 * r * np.sin(t)])
    turn = np.array([[np.cos(angle), np.sin(angle)], [-np.sin(angle), np.cos(angle)]])
    if mirrored:
        turn = turn @ np.diag([1.0, -1.0])
    moved = (outline @ turn * scale + [dx, dy])[::-1]
    assert caliper(moved)[0] == pytest.approx(scale * caliper(outline)[0], rel=1e-7)
    assert area_mm2(moved) == pytest.approx(scale**2 * area_mm2(outline), rel=1e-7)
    assert inscribed_width(moved) == pytest.approx(scale * inscribed_width(outline), rel=2e-3)
    assert path_length(moved) == pytest.approx(scale * path_length(outline), rel=0.03)
    back = (np.array(centroid(moved)) - [dx, dy]) @ turn.T / scale
    assert back == pytest.approx(centroid(outline), abs=1e-5)


@settings(max_examples=60, deadline=None)
@given(
    st.lists(
        st.tuples(st.integers(-40, 40), st.integers(-40, 40)),
        min_size=3,
        max_size=25,
        unique=True,
    )
)
def test_any_closed_line_is_measured_or_refused(points):
    """Hand-drawn outlines cross themselves: never a crash, never a number that is none."""
    try:
        outline = as_outline(np.array(points, float))
    except OutlineError:
        return
    width, path = inscribed_width(outline), path_length(outline)
    assert np.isfinite([width, path]).all()
    assert 0 < width <= caliper(outline)[0] + 1e-9
    assert path > 0
    length = caliper(outline)[0]
    sound = sound_medial(outline, length)
    assert sound.path_length >= length
    assert np.isfinite(sound.path_length)
    assert 0 < 2 * sound.radius <= length + 1e-9


def test_a_strip_that_crosses_itself_keeps_its_way_and_width():
    """Its sides change places for a tenth of its length, which then winds the other way."""
    t = np.linspace(0, 30, 301)
    half = np.where(abs(t - 17.0) < 1.5, -0.2, 0.5)
    strip = np.vstack([np.column_stack([t, half]), np.column_stack([t, -half])[::-1]])
    length = caliper(strip)[0]
    found = sound_medial(strip, length)
    assert path_length(strip) < 0.7 * length  # the trouble this is for
    assert found.path_length == pytest.approx(length, rel=0.03)
    assert 2 * found.radius == pytest.approx(1.0, rel=0.03)


@pytest.mark.parametrize(
    ("points", "says"),
    [
        (np.zeros((5, 3)), r"shape \(N, 2\), got \(5, 3\)"),
        (np.zeros(4), r"shape \(N, 2\), got \(4,\)"),
        ([[0, 0], [1, 1]], "3 different points, got 2"),
        ([[0, 0], [1, 1], [1, 1], [0, 0]], "3 different points, got 2"),
        ([[0, 0], [1, np.nan], [2, 2]], "no number"),
        ([[0, 0], [1, np.inf], [2, 2]], "no number"),
        ([[0, 0], [1, 1], [2, 2], [3, 3]], "encloses no area"),
        (np.zeros((0, 2)), "got 0"),
    ],
)
def test_outlines_that_are_none_are_refused(points, says):
    with pytest.raises(OutlineError, match=says):
        as_outline(points)


def test_closing_point_and_repeats_do_not_count(shapes):
    square = shapes["box"](2.0, 2.0)
    closed = np.vstack([square, square[:1]])
    np.testing.assert_array_equal(as_outline(closed), square)
    np.testing.assert_array_equal(as_outline(np.repeat(square, 3, axis=0)), square)


def test_sliver_has_its_mean_thickness():
    outline = np.array([[0, 0], [1000, 0], [1000, 1e-3], [0, 1e-3]], float)
    assert inscribed_width(outline) == pytest.approx(1e-3, rel=0.05)
    assert path_length(outline) == pytest.approx(1000, rel=1e-3)


@pytest.mark.parametrize("side", [1.5, 2.4, 2.7, 5.0])
def test_corners_do_not_lengthen_the_way_along_a_straight_outline(side):
    outline = np.array([[0, 0], [side, 0], [side, 1], [0, 1.0]])
    length = np.hypot(side, 1)
    assert sound_medial(outline, length).path_length == length
    assert path_length(outline) > 1.02 * length  # the trouble this is for


@pytest.mark.parametrize(("way", "degrees"), [(2.9, 30), (3.1, 45), (3.5, 90), (6, 60)])
def test_a_band_along_an_arc_keeps_its_way(way, degrees):
    # closed form: a band of width 1 with round ends whose middle runs way - 1 along an arc
    t = np.radians(np.linspace(0, degrees, 60))
    arc = (way - 1) / np.radians(degrees) * np.stack([np.cos(t), np.sin(t)], axis=1)
    band = shapely.LineString(arc).buffer(0.5, quad_segs=16)
    outline = shapely.get_coordinates(band.exterior)[:-1]
    length = caliper(outline)[0]
    assert sound_medial(outline, length).path_length == pytest.approx(way, rel=0.005)


def test_straight_and_bent_outlines_together_keep_the_way_of_each_alone():
    # closed form: the straight one has its diagonal, the bent one a way round its corner, where
    # the largest circle has the diameter 2 (2 - sqrt 2)
    straight = np.array([[0, 0], [8, 0], [8, 1], [0, 1.0]])
    bent = np.array([[0, 0], [8, 0], [8, 8], [7, 8], [7, 1], [0, 1.0]])
    both, lengths = [straight, bent, straight], [np.hypot(8, 1), np.hypot(8, 8), np.hypot(8, 1)]
    found = sound_medials(both, lengths, [True, False, True])
    assert [one.path_length for one in found[::2]] == [np.hypot(8, 1)] * 2
    assert found[1].path_length == pytest.approx(15, rel=0.05)
    for one, outline, length in zip(found, both, lengths, strict=True):
        assert one.path_length == sound_medial(outline, length).path_length
        assert 2 * one.radius == pytest.approx(1 if outline is straight else 2 * (2 - 2**0.5))
