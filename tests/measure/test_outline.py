"""One outline measured: values, budget by name, relief, and the class of shape."""

from dataclasses import replace

import numpy as np
import pytest
import shapely

from ptmark.dye import EdgeQuality, refine_outline
from ptmark.errors import OutlineError
from ptmark.measure import Conditions, measure_outline, measure_outlines
from ptmark.photo import Photo

SHARP = EdgeQuality(shift_px=0.0, noise_px=0.0)
FLAT = Conditions(relief_mm=0.0)
PX_PER_MM = 20.0  # of the flat map


def on_photo(outline_mm, at=(40.0, 30.0)):
    return (outline_mm + at) * PX_PER_MM


def test_values_are_those_of_the_shape(flat_map, shapes):
    outline = shapes["box"](12.0, 1.5)
    found = measure_outline(on_photo(outline), flat_map(), SHARP, FLAT)
    assert found.length.value == pytest.approx(np.hypot(12, 1.5))
    assert found.width.value == pytest.approx(1.5)
    assert found.area.value == pytest.approx(18.0)
    assert found.area.unit == "mm2"
    assert found.centre_mm == pytest.approx((46.0, 30.75))
    assert found.ratio.value == pytest.approx(max(found.length.value, found.path.value) / 1.5)
    assert found.shape == "linear"
    assert found.shape_sure
    ends = np.array(found.ends_mm)
    assert np.hypot(*(ends[1] - ends[0])) == pytest.approx(found.length.value)
    np.testing.assert_allclose(found.outline_mm, outline + np.array([40, 30]))


def test_edge_moves_both_ends_and_noise_each_alone(flat_map, shapes):
    edge = EdgeQuality(shift_px=0.6, noise_px=0.4)
    found = measure_outline(on_photo(shapes["box"](12.0, 1.5)), flat_map(), edge, FLAT)
    # Half-width of a rectangular distribution (JCGM 100:2008, 4.3.7), two ends at once.
    assert found.length.budget["edge"] == pytest.approx(2 * 0.6 * 0.05 / np.sqrt(3))
    assert found.width.budget["edge"] == pytest.approx(2 * 0.6 * 0.05 / np.sqrt(3))
    # Two independent ends, each with its noise and a tenth of a pixel of sampling.
    noise = np.hypot(0.4, 0.1)
    assert found.length.budget["sampling"] == pytest.approx(np.sqrt(2) * noise * 0.05)
    # The rim moves by 0.03 mm all round: 27 mm of it.
    assert found.area.budget["edge"] == pytest.approx(27 * 0.6 * 0.05 / np.sqrt(3))
    assert found.length.u == pytest.approx(
        np.sqrt(sum(v**2 for v in found.length.budget.values()))
    )


def test_edges_that_the_photo_moved_move_both_ends_at_once(flat_map, shapes):
    edge = EdgeQuality(shift_px=0.6, noise_px=0.4)
    outline = on_photo(shapes["box"](12.0, 1.5))
    as_taken = measure_outline(outline, flat_map(), edge, FLAT)
    moved = measure_outline(outline, replace(flat_map(), displaced_u_mm=0.04), edge, FLAT)
    # Independent of the edge's own width: in quadrature (JCGM 100:2008, 5.1.2), 27 mm of rim.
    for name, of in (("length", 2.0), ("width", 2.0), ("path", 2.0), ("area", 27.0)):
        was, now = (getattr(one, name) for one in (as_taken, moved))
        assert now.value == was.value
        assert now.budget["edge"] == pytest.approx(np.hypot(was.budget["edge"], of * 0.04))


@pytest.mark.slow
def test_edge_and_noise_are_the_spread_of_outlines_so_disturbed(flat_map, shapes):
    """Disturb the outline as stated 400 times; JCGM 101:2008 against JCGM 100:2008."""
    rng = np.random.default_rng(4)
    edge = EdgeQuality(shift_px=1.5, noise_px=0.0)
    outline = on_photo(shapes["ellipse"](4.0, 1.0, 90))
    step = np.gradient(outline, axis=0)
    normal = np.column_stack([step[:, 1], -step[:, 0]]) / np.hypot(*step.T)[:, None]
    stated = measure_outline(outline, flat_map(), edge, FLAT)
    drawn = []
    for _ in range(400):
        moved = outline + normal * rng.uniform(-1.5, 1.5)
        found = measure_outline(moved, flat_map(), edge, FLAT)
        drawn.append(
            [found.length.value, found.width.value, found.area.value, found.ratio.value]
        )
    spread = np.std(drawn, axis=0)
    quantities = (stated.length, stated.width, stated.area, stated.ratio)
    for seen, quantity in zip(spread, quantities, strict=True):
        assert quantity.budget["edge"] == pytest.approx(seen, rel=0.1)


def test_hand_tracing_counts_as_picking(flat_map, shapes):
    outline = on_photo(shapes["box"](12.0, 1.5))

    def picking(source):
        edge = EdgeQuality(shift_px=0.0, noise_px=0.0, source=source)
        return measure_outline(outline, flat_map(), edge, FLAT).length.budget["picking"]

    assert picking("suggested") == 0.0
    assert 0 < picking("snapped") < picking("hand")
    assert picking("hand") == pytest.approx(np.sqrt(2) * 1.5 * 0.05)


def test_the_hand_on_bare_developer_is_counted_once(flat_map):
    """Two ends that each stray 1.5 px, and nothing of it in the edge's own noise."""
    bare = Photo.from_array(np.full((200, 300, 3), 225, np.uint8), name="bare")
    outline, edge = refine_outline(bare, np.array([[60.0, 60], [160, 70], [150, 90]]))
    budget = measure_outline(outline, flat_map(), edge, FLAT).length.budget
    assert edge.source == "hand"
    assert budget["picking"] == pytest.approx(np.sqrt(2) * 1.5 * 0.05)
    assert budget["sampling"] == pytest.approx(np.sqrt(2) * 0.1 * 0.05)


def test_map_enters_by_its_own_names(flat_map, shapes):
    covariance = np.zeros((9, 9))
    covariance[0, 0] = (0.05 * 0.002) ** 2  # x scale known to 0.2 %
    surface = flat_map({"reference": covariance})
    along = measure_outline(on_photo(shapes["ellipse"](5.0, 1.0)), surface, SHARP, FLAT)
    assert along.length.budget["reference"] == pytest.approx(0.002 * 10.0, rel=1e-3)
    assert along.width.budget["reference"] == pytest.approx(0.0, abs=1e-6)
    assert along.path.budget["reference"] == pytest.approx(0.002 * 10.0, rel=0.03)
    assert along.area.budget["reference"] == pytest.approx(
        2 * 0.002 * along.area.value, rel=0.01
    )


def lifted(outline_mm, height_mm, camera_mm=(50.0, 40.0, 200.0)):
    """Where a pinhole camera sees points that stand over the plane, on the plane, mm."""
    camera = np.array(camera_mm)
    top = np.column_stack([outline_mm, np.full(len(outline_mm), height_mm)])
    rays = top - camera
    return (camera + rays * (camera[2] / (camera[2] - height_mm)))[:, :2]


@pytest.mark.parametrize("height", [1.0, 3.5, -2.0])
def test_given_relief_is_corrected(flat_map, shapes, height):
    outline = shapes["box"](12.0, 1.5) + np.array([40.0, 30.0])
    seen = lifted(outline, height) * PX_PER_MM
    flat = measure_outline(seen, flat_map(), SHARP, FLAT)
    assert flat.length.value / np.hypot(12, 1.5) == pytest.approx(200 / (200 - height))
    found = measure_outline(seen, flat_map(), SHARP, Conditions(relief_mm=height))
    np.testing.assert_allclose(found.outline_mm, outline, atol=1e-9)
    assert found.length.value == pytest.approx(np.hypot(12, 1.5))
    assert found.length.budget["relief"] > 0


def test_unknown_relief_is_not_corrected_but_covered(flat_map, shapes):
    outline = shapes["box"](12.0, 1.5) + np.array([40.0, 30.0])
    for height in (0.0, 1.0, 2.0):
        found = measure_outline(lifted(outline, height) * PX_PER_MM, flat_map(), SHARP)
        off = found.length.value - np.hypot(12, 1.5)
        assert 0 <= off <= found.length.expanded
    # 0 to 2 mm rectangular about no correction: root mean square 2 / sqrt(3) of 200 mm.
    assert found.length.budget["relief"] >= found.length.value * 2 / np.sqrt(3) / 200


def test_flat_ground_has_no_relief(flat_map, shapes):
    found = measure_outline(on_photo(shapes["box"](12.0, 1.5)), flat_map(), SHARP, FLAT)
    assert found.length.budget["relief"] == 0.0


def test_slope_under_an_oblique_view_counts(flat_map, shapes):
    """Seen from the side, ends at different heights read long or short; from above not."""
    outline = on_photo(shapes["ellipse"](2.0, 0.2), at=(50.0, 40.0))
    above = measure_outline(outline, flat_map(), SHARP).length.budget["relief"]
    aside = flat_map(camera_mm=(-50.0, 40.0, 200.0))
    assert measure_outline(outline, aside, SHARP).length.budget["relief"] > 1.5 * above
    across = flat_map(camera_mm=(50.0, -60.0, 200.0))  # the view leans across the length
    level = measure_outline(outline, across, SHARP).length.budget["relief"]
    assert level == pytest.approx(above, rel=0.05)


@pytest.mark.parametrize("height", [np.nan, np.inf, 150.0, -120.0])
def test_absurd_relief_is_refused(flat_map, shapes, height):
    with pytest.raises(OutlineError, match="relief"):
        measure_outline(
            on_photo(shapes["box"](4.0, 1.0)), flat_map(), SHARP, Conditions(relief_mm=height)
        )


@pytest.mark.parametrize(
    ("ratio", "shift_px", "shape", "sure"),
    [
        (2.0, 0.5, "rounded", True),
        (2.9, 0.0, "rounded", True),
        (2.9, 2.0, "linear", False),  # unsure: the stricter class
        (3.1, 2.0, "linear", False),
        (3.3, 0.0, "linear", True),
        (9.0, 2.0, "linear", True),
        # U of 1.6 and 1.9 mm, of 2 mm width: may be 1.8 by 0.4 mm, is at most 19.9 by 3.9 mm
        (1.7, 1.6 / 0.05 * np.sqrt(3) / 4, "linear", False),
        (9.0, 1.9 / 0.05 * np.sqrt(3) / 4, "linear", True),
    ],
)
def test_shape_is_the_stricter_where_unsure(flat_map, shapes, ratio, shift_px, shape, sure):
    outline = on_photo(shapes["ellipse"](ratio, 1.0, 600))
    edge = EdgeQuality(shift_px=shift_px, noise_px=0.0)
    found = measure_outline(outline, flat_map(), edge, FLAT)
    assert found.ratio.value == pytest.approx(ratio, rel=0.02)
    assert (found.shape, found.shape_sure) == (shape, sure)


def test_bent_crack_is_linear_though_its_ends_are_near(flat_map, shapes):
    """A ring that nearly closes: caliper under 3 widths of its box, path far over."""
    found = measure_outline(on_photo(shapes["arc"](1.0, 300, 0.4)), flat_map(), SHARP, FLAT)
    assert found.path.value > 2 * found.length.value
    assert found.shape == "linear"


def test_outline_that_is_none_is_refused(flat_map):
    with pytest.raises(OutlineError, match="3 different points"):
        measure_outline(np.array([[1.0, 1.0], [2.0, 2.0]]), flat_map(), SHARP)


def test_outline_beyond_the_horizon_is_refused(flat_map, shapes):
    level = flat_map()
    h = level.h.copy()
    h[2, 0] = -1 / 3000  # the surface vanishes at x = 3000 px
    aslant = replace(level, h=h)
    measure_outline(on_photo(shapes["box"](4.0, 1.0)), aslant, SHARP, FLAT)
    for at in ((148.0, 30.0), (160.0, 30.0)):  # across it, and beyond it
        with pytest.raises(OutlineError, match="horizon"):
            measure_outline(on_photo(shapes["box"](4.0, 1.0), at), aslant, SHARP, FLAT)


def test_outlines_measured_together_are_those_measured_alone(flat_map, shapes):
    """Of any size and number of points side by side; lengths and areas as Shapely has them."""
    rng = np.random.default_rng(3)
    outlines = [
        on_photo(one, rng.uniform(10, 60, 2))
        for one in (
            shapes["box"](12.0, 1.5),
            shapes["arc"](8.0, 90, 0.7, 300),
            np.array([[0.0, 0.0], [3.0, 0.0], [0.0, 2.0]]),
            *(shapes["wobbly"](rng, count, 2.0) for count in (7, 60, 400)),
        )
    ]
    edges = [EdgeQuality(shift_px=0.2 * i, noise_px=0.1 * i) for i in range(len(outlines))]
    surface = flat_map({"map": 1e-10 * np.eye(9)})
    together = measure_outlines(outlines, surface, edges)
    for found, outline, edge in zip(together, outlines, edges, strict=True):
        alone = measure_outline(outline, surface, edge)
        shape = shapely.Polygon(outline / PX_PER_MM)
        assert found.area.value == pytest.approx(shape.area, rel=1e-9)
        caliper = 2 * shapely.minimum_bounding_radius(shape)
        assert caliper * np.sqrt(3) / 2 - 1e-9 <= found.length.value <= caliper + 1e-9
        assert found.width.value == pytest.approx(
            2 * shapely.length(shapely.maximum_inscribed_circle(shape, 1e-4)), rel=1e-3
        )
        for name in ("length", "path", "width", "area", "ratio"):
            one, other = getattr(found, name), getattr(alone, name)
            assert one.value == pytest.approx(other.value, rel=1e-9)
            assert one.budget == pytest.approx(other.budget, rel=1e-9)
    assert measure_outlines([], surface, []) == []
