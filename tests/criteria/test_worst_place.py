"""The worst rectangle, row and stretch against Shapely and against plain sampled searches."""

import itertools
import math

import numpy as np
import pytest
import shapely

from ptmark.criteria import evaluate, load_profile
from ptmark.criteria.geometry import gaps_within, hulls_of
from ptmark.criteria.rows import longest_row
from ptmark.criteria.stretch import heaviest_stretch
from ptmark.criteria.turned import Bounds
from ptmark.criteria.worst import worst_rectangle

BAND = 1e-6


def dots(places):
    """Points as hulls too small to matter."""
    return [np.array([[x, y], [x + 1e-9, y], [x, y + 1e-9]]) for x, y in places]


def discs(places, sizes):
    return hulls_of(shapely.buffer(shapely.points(places), np.asarray(sizes) / 2, quad_segs=6))


def fits(hulls, corners, bounds, members):
    """Whether the rectangle keeps its bounds and each member reaches into it both ways."""
    sides = np.hypot(*np.diff(corners[:3], axis=0).T)
    assert sides.max() <= bounds.long + 3 * BAND
    assert sides.min() <= bounds.short + 3 * BAND
    assert sides.prod() <= bounds.area + 1e-3
    # a side of no length has no direction: the other one tells it
    along = corners[1] - corners[0] if sides[0] > 1e-6 else corners[2] - corners[1]
    if max(sides) <= 1e-6:
        return
    first = along / np.hypot(*along)
    for axis in (first, np.array([-first[1], first[0]])):
        low, high = (corners @ axis).min(), (corners @ axis).max()
        for member in members:
            span = hulls[member] @ axis
            assert span.min() <= high + 1e-5
            assert span.max() >= low - 1e-5


@pytest.mark.truth
@pytest.mark.parametrize("seed", range(40))
def test_window_equals_the_subsets_that_shapely_can_box(seed):
    # Where the side limit does not bind, a set of points fits some rectangle of the area if
    # and only if its smallest enclosing rectangle (Shapely) has no more area. All subsets.
    rng = np.random.RandomState(seed)
    places = rng.uniform(0, 60, (9, 2))
    area = rng.uniform(100, 900)
    best = 1
    for size in range(2, 10):
        for chosen in itertools.combinations(range(9), size):
            box = shapely.minimum_rotated_rectangle(shapely.MultiPoint(places[list(chosen)]))
            if box.area <= area:
                best = size
                break
        else:
            break
    bounds = Bounds(200.0, 200.0, area)
    found = worst_rectangle(dots(places), np.ones(9), bounds, band=BAND)
    assert found.total == best
    assert found.proven
    fits(dots(places), found.corners, bounds, found.members)


@pytest.mark.truth
@pytest.mark.parametrize("seed", range(4))
def test_window_equals_brute_force_on_many_small_scenes(seed):
    # as above, all subsets of seven points at once; more scenes of the same kind are run by
    # tests/benchmarks/criteria_speed.py --worst
    rng = np.random.RandomState(9000 + seed)
    subsets = [c for n in range(2, 8) for c in itertools.combinations(range(7), n)]
    sizes = np.array([len(chosen) for chosen in subsets])
    owner = np.repeat(np.arange(len(subsets)), sizes)
    members = np.concatenate(subsets)
    for _ in range(60):
        places = rng.uniform(0, 40, (7, 2))
        area = rng.uniform(50, 500)
        boxes = shapely.minimum_rotated_rectangle(
            shapely.multipoints(places[members], indices=owner)
        )
        best = max([1, *sizes[shapely.area(boxes) <= area]])
        bounds = Bounds(200.0, 200.0, area)
        found = worst_rectangle(dots(places), np.ones(7), bounds, band=BAND)
        assert found.total == best
        assert found.proven


def sampled(hulls, weights, bounds, turns):
    """Plain search: every turn of a fine fan, every pair of x edges, every y start."""
    best = 0.0
    for turn in np.linspace(0, math.pi, turns, endpoint=False):
        axes = np.array([[math.cos(turn), -math.sin(turn)], [math.sin(turn), math.cos(turn)]])
        low = np.array([(hull @ axes).min(axis=0) for hull in hulls])
        high = np.array([(hull @ axes).max(axis=0) for hull in hulls])
        for left in high[:, 0]:
            for right in low[:, 0]:
                width = max(right - left, 0.0)
                if width > bounds.long:
                    continue
                tall = bounds.short if width == 0 else min(bounds.short, bounds.area / width)
                inside = (high[:, 0] >= left) & (low[:, 0] <= left + width)
                for start in high[:, 1]:
                    reach = inside & (high[:, 1] >= start) & (low[:, 1] <= start + tall)
                    best = max(best, weights[reach].sum())
    return best


@pytest.mark.slow
@pytest.mark.parametrize("seed", range(24))
def test_rectangle_is_no_less_than_a_sampled_search_and_holds_what_it_says(seed):
    rng = np.random.RandomState(1000 + seed)
    count = rng.randint(4, 11)
    hulls = discs(rng.uniform(0, 70, (count, 2)), rng.uniform(0.5, 6, count))
    weights = np.ones(count) if seed % 2 else rng.uniform(0.5, 5, count)
    bounds = (
        Bounds(50.0, 50.0, 500.0),
        Bounds(40.0, 25.0),
        Bounds(30.0, 30.0, 640.0),
    )[seed % 3]
    found = worst_rectangle(hulls, weights, bounds, band=BAND)
    assert found.total >= sampled(hulls, weights, bounds, 40) - 1e-9
    assert found.total == pytest.approx(weights[list(found.members)].sum())
    fits(hulls, found.corners, bounds, found.members)


@pytest.mark.parametrize("seed", range(30))
def test_asking_for_enough_gives_the_same_answer_as_asking_for_all(seed):
    rng = np.random.RandomState(2000 + seed)
    hulls = discs(rng.uniform(0, 90, (16, 2)), rng.uniform(1, 4, 16))
    bounds = Bounds(60.0, 60.0, 900.0)
    most = worst_rectangle(hulls, np.ones(16), bounds, band=BAND).total
    for enough in (most, most + 1):
        found = worst_rectangle(hulls, np.ones(16), bounds, enough=enough, band=BAND)
        assert (found.total >= enough) == (most >= enough)
        assert found.proven


@pytest.mark.truth
def test_rectangle_by_hand():
    # two points 50 apart and a third 10 off their line: 50 x 10 = 500 at the turn of the line
    places = np.array([[0.0, 0.0], [30.0, 40.0], [7.0, 26.0]])  # third: 25 along, 10 across
    off = worst_rectangle(dots(places), np.ones(3), Bounds(60.0, 60.0, 499.9), band=BAND)
    on = worst_rectangle(dots(places), np.ones(3), Bounds(60.0, 60.0, 500.0), band=BAND)
    assert (off.total, on.total) == (2.0, 3.0)


def test_a_search_cut_short_is_never_a_pass(build, monkeypatch):
    rng = np.random.RandomState(11)
    places = rng.uniform(0, 90, (9, 2))
    pores = build.scene(*(build.pore(f"P{k}", *places[k], 2.5) for k in range(9)))
    profile = load_profile("asme-b31.1")

    def window():
        found = evaluate(profile, pores).findings
        return next(one for one in found if one.rule == "window")

    assert window().verdict == "acceptable"
    monkeypatch.setattr("ptmark.criteria.worst._MOST_LOOKS", 0)
    assert window().verdict == "undecided"
    assert "cut short" in window().says


def in_line_by_sampling(hulls, links, number, turns=1440):
    """Whether some connected set of ``number`` has a crossing line at a sampled turn."""
    near = {tuple(pair) for pair in links.tolist()}
    for chosen in itertools.combinations(range(len(hulls)), number):
        left, reached = set(chosen[1:]), {chosen[0]}
        while grown := {b for a in reached for b in left if tuple(sorted((a, b))) in near}:
            reached |= grown
            left -= grown
        if left:
            continue
        t = np.linspace(0, math.pi, turns, endpoint=False)
        normals = np.array([np.cos(t), np.sin(t)])
        low = np.max([(hulls[k] @ normals).min(axis=0) for k in chosen], axis=0)
        high = np.min([(hulls[k] @ normals).max(axis=0) for k in chosen], axis=0)
        if (low <= high).any():
            return True
    return False


@pytest.mark.parametrize("seed", range(100))
def test_row_against_sampled_lines(seed):
    rng = np.random.RandomState(3000 + seed)
    count = rng.randint(5, 10)
    wave = rng.uniform(0.3, 3.0)
    places = np.c_[np.arange(count) * 3.4, rng.uniform(-wave, wave, count)]
    sizes = rng.uniform(1.2, 2.6, count)
    shapes = shapely.buffer(shapely.points(places), sizes / 2, quad_segs=6)
    hulls = hulls_of(shapes)
    pairs, gaps = gaps_within(shapes, np.full(count, 1.5))
    links = pairs[gaps <= 1.5]
    row = longest_row(hulls, links, 4, BAND)
    expected = in_line_by_sampling(hulls, links, 4)
    # sampling can only miss; what it finds must be found
    assert len(row.members) >= 4 or not expected
    line = shapely.LineString(row.line)
    for member in row.members:
        assert shapely.distance(line, shapely.Polygon(hulls[member])) <= 1e-5
    if len(row.members) >= 4 and not expected:
        assert in_line_by_sampling(hulls, links, 4, turns=200_000)


@pytest.mark.truth
@pytest.mark.parametrize(("bow", "expected"), [(1.99, 4), (2.0, 4), (2.01, 3)])
def test_row_needs_one_straight_line_through_all(bow, expected):
    # four circles of diameter 2 on a bow: the line must pass the outer two within their own
    # diameter, so the inner two may stand off by 2 and no more. Square hulls make it exact.
    square = np.array([[-1.0, -1.0], [1.0, -1.0], [1.0, 1.0], [-1.0, 1.0]])
    hulls = [square + place for place in ((0, 0), (3, bow), (6, bow), (9, 0))]
    row = longest_row(hulls, np.array([[0, 1], [1, 2], [2, 3]]), 4, BAND)
    assert len(row.members) == expected


@pytest.mark.truth
def test_row_breaks_where_a_gap_is_too_wide():
    square = np.array([[-1.0, -1.0], [1.0, -1.0], [1.0, 1.0], [-1.0, 1.0]])
    hulls = [square + np.array([3.0 * k, 0.0]) for k in range(5)]
    links = np.array([[0, 1], [1, 2], [3, 4]])  # 2 and 3 are not near enough
    assert longest_row(hulls, links, 4, BAND).members == (0, 1, 2)


@pytest.mark.parametrize("count", [1, 30, 200])
@pytest.mark.parametrize("seed", range(15))
def test_stretch_against_every_start(seed, count):
    rng = np.random.RandomState(4000 + seed)
    low = rng.uniform(0, 100, count)
    high = low + rng.uniform(0, 5, count)
    weights = rng.uniform(0.5, 3, count)
    total, reached = heaviest_stretch(low, high, weights, 25.0)
    starts = np.concatenate([np.linspace(-30, 110, 2801), high])
    brute = max(weights[(high >= s) & (low <= s + 25.0)].sum() for s in starts)
    assert total == pytest.approx(brute)
    assert total == pytest.approx(weights[reached].sum())


def test_wide_scene_is_searched_whole():
    # nine pores in each of many far places, ten in the last: tile by tile none may be missed
    rng = np.random.RandomState(5)
    far = np.array([[700.0 * k, 350.0 * k] for k in range(12)])
    places = [
        f + rng.uniform(0, 60, 2) for k, f in enumerate(far) for _ in range(9 + (k == 11))
    ]
    hulls = discs(np.array(places), np.full(len(places), 2.0))
    bounds = Bounds(150.0, 150.0, 3870.0)
    found = worst_rectangle(hulls, np.ones(len(places)), bounds, enough=10, band=BAND)
    assert found.total == 10
    assert set(found.members) == set(range(len(places) - 10, len(places)))
    fits(hulls, found.corners, bounds, found.members)
    fewer = worst_rectangle(hulls[:-1], np.ones(len(places) - 1), bounds, enough=10, band=BAND)
    assert fewer.total == 9
    assert fewer.proven
