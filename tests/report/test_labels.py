"""Geometry of letters and leaders, checked with shapely's own predicates pair by pair."""

from itertools import combinations

import numpy as np
import pytest
from shapely import LineString, Point, Polygon, box

from ptmark.report.labels import place_labels
from ptmark.report.plate import draw_plate


def check_free(labels, shapes, bounds, reach=1e-6):
    plates = [box(*label.plate) for label in labels]
    leaders = [LineString(label.leader) for label in labels]
    for i, (plate, leader) in enumerate(zip(plates, leaders, strict=True)):
        assert box(*bounds).covers(plate)
        for j, shape in enumerate(shapes):
            assert not plate.intersects(shape), (i, j)
            if i != j:
                assert not leader.intersects(shape), (i, j)
        # The leader really leads from the outline to the plate.
        assert Point(leader.coords[0]).distance(shapes[i]) <= reach
        assert Point(leader.coords[-1]).distance(plate) < 1e-6
    for i, j in combinations(range(len(labels)), 2):
        assert not plates[i].intersects(plates[j]), (i, j)
        assert not leaders[i].intersects(leaders[j]), (i, j)
        assert not plates[i].intersects(leaders[j]), (i, j)
        assert not plates[j].intersects(leaders[i]), (i, j)
    assert all(label.free for label in labels)


@pytest.mark.parametrize("text_share", [1 / 80, 1 / 68])
@pytest.mark.parametrize("which", ["weld", "crowd"])
def test_letters_hide_nothing_and_leaders_do_not_cross(which, text_share, request):
    record, rgb = request.getfixturevalue(which)
    plate = draw_plate(record, rgb, text_share=text_share)
    shapes = [
        Polygon(np.array(one["outline_px"]) * plate.zoom + plate.offset)
        for one in record.indications
    ]
    for label, ring, shape in zip(plate.labels, plate.rings, shapes, strict=True):
        assert ring.contains(shape), label.id
    bounds = (0, 0, plate.rgb.shape[1], plate.rgb.shape[0])
    # Rings are centre lines; a leader starts at the halo's rim.
    check_free(plate.labels, plate.rings, bounds, reach=0.2 * plate.unit)
    assert [label.id for label in plate.labels] == [one["id"] for one in record.indications]


@pytest.mark.parametrize("seed", range(6))
def test_any_scatter_finds_places(seed):
    rng = np.random.default_rng(seed)
    count = int(rng.integers(1, 40))
    grid = rng.choice(400, count, replace=False)  # cells of 60 px: neighbours never touch
    shapes = [
        Point(60 * (g % 20) + 30, 60 * (g // 20) + 30).buffer(rng.uniform(4, 22)) for g in grid
    ]
    names = [str(i) for i in range(count)]
    bounds = (-60.0, -60.0, 1260.0, 1260.0)
    labels = place_labels(shapes, names, [(34.0, 24.0)] * count, bounds, gap=3.0)
    check_free(labels, shapes, bounds)


def test_places_do_not_depend_on_chance_or_on_an_earlier_call():
    shapes = [Point(50 * i, 40 * (i % 3)).buffer(12) for i in range(12)]
    arguments = (
        shapes,
        [str(i) for i in range(12)],
        [(30.0, 20.0)] * 12,
        (-200, -200, 800, 300),
    )
    assert place_labels(*arguments, gap=2.0) == place_labels(*arguments, gap=2.0)


def test_one_inside_another_is_labelled_all_the_same():
    outer = Point(0, 0).buffer(100).difference(Point(0, 0).buffer(30))
    labels = place_labels(
        [outer, Point(0, 0).buffer(5)],
        ["A", "B"],
        [(40.0, 30.0)] * 2,
        (-300, -300, 300, 300),
        gap=1,
    )
    assert not box(*labels[0].plate).intersects(box(*labels[1].plate))
    assert not box(*labels[1].plate).intersects(outer)


def test_where_no_place_is_free_the_label_says_so_and_stays_in_bounds():
    labels = place_labels(
        [box(0, 0, 100, 100)], ["A"], [(40.0, 30.0)], (0.0, 0.0, 100.0, 100.0), gap=1
    )
    assert labels[0].free is False
    assert box(0, 0, 100, 100).covers(box(*labels[0].plate))


def test_the_scale_reference_is_rather_left_uncovered():
    shape, reference = Point(0, 0).buffer(10), box(12, -200, 300, 200)
    bounds = (-300.0, -300.0, 300.0, 300.0)
    (label,) = place_labels([shape], ["A"], [(40.0, 30.0)], bounds, gap=2, avoid=reference)
    assert not box(*label.plate).intersects(reference)


def test_nothing_to_label():
    assert place_labels([], [], [], (0, 0, 10, 10), gap=1) == []
