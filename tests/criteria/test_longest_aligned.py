"""The longest row by its length: against every subset of a few and many thousand lines."""

import itertools

import numpy as np
import pytest
import shapely

from ptmark.criteria.aligned import longest_aligned
from ptmark.criteria.geometry import caliper_ends, gaps_within, hull_of

BAND = 1e-6


def crossed_by_one_line(hulls):
    """Whether a line crosses all, by the critical directions of all pairs of vertices."""
    points = np.concatenate(hulls)
    pairs = points[:, None] - points[None]
    angles = np.unique(np.arctan2(pairs[..., 0], -pairs[..., 1]) % np.pi)
    between = (angles + np.roll(angles, -1)) / 2
    for angle in np.concatenate([angles, between, angles + 1e-9, angles - 1e-9]):
        normal = np.array([np.cos(angle), np.sin(angle)])
        along = [hull @ normal for hull in hulls]
        if max(a.min() for a in along) <= min(a.max() for a in along) + BAND:
            return True
    return False


def connected(members, links):
    reached, edge = {members[0]}, [members[0]]
    while edge:
        here = edge.pop()
        for a, b in links:
            for one, other in ((a, b), (b, a)):
                if one == here and other in members and other not in reached:
                    reached.add(other)
                    edge.append(other)
    return len(reached) == len(members)


@pytest.mark.parametrize("seed", range(60))
def test_the_longest_row_is_that_of_all_subsets(seed):
    rng = np.random.default_rng(seed)
    count = int(rng.integers(3, 7))
    t = np.arange(8) * np.pi / 4
    hulls = []
    for _ in range(count):
        size = rng.uniform(0.5, 2, 2)
        hulls.append(np.c_[np.cos(t) * size[0], np.sin(t) * size[1]] + rng.uniform(0, 11, 2))
    shapes = np.array([shapely.Polygon(hull) for hull in hulls], dtype=object)
    pairs, gaps = gaps_within(shapes, np.full(count, 3.0))
    links = pairs[gaps <= 3.0]
    best = 0.0
    for number in range(2, count + 1):
        for members in itertools.combinations(range(count), number):
            chosen = [hulls[k] for k in members]
            length, _ = caliper_ends(hull_of(np.concatenate(chosen)))
            if (
                length > best
                and connected(members, links.tolist())
                and crossed_by_one_line(chosen)
            ):
                best = length
    found = longest_aligned(hulls, links, 2, 5.0, BAND)
    assert found.proven
    assert found.length == pytest.approx(best, abs=1e-5)


def test_a_crowd_is_never_passed_unproven():
    t = np.arange(8) * np.pi / 4
    disc = np.c_[np.cos(t), np.sin(t)]
    places = [(2.5 * i, 2.5 * j) for i in range(12) for j in range(12)]
    hulls = [disc + place for place in places]
    shapes = np.array([shapely.Polygon(hull) for hull in hulls], dtype=object)
    pairs, _ = gaps_within(shapes, np.full(len(hulls), 1.0))
    assert not longest_aligned(hulls, pairs, 3, 39.0, BAND).proven  # its diagonal is 40.9
    assert longest_aligned(hulls, pairs, 3, 41.0, BAND).proven
    assert longest_aligned(hulls, pairs, 3, 8.0, BAND).length > 8.0
