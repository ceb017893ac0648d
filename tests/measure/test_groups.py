"""Gaps with their uncertainty, and chains of neighbours."""

import numpy as np
import pytest

from ptmark.errors import OutlineError
from ptmark.measure import Gap, Quantity, gaps_between, grouped


def row(shapes, *lefts):
    return [shapes["box"](2.0, 1.0) + np.array([left, 0.0]) for left in lefts]


def test_every_pair_once_with_nearest_points(shapes):
    gaps = gaps_between(row(shapes, 0.0, 3.0, 9.0))
    assert [(g.first, g.second) for g in gaps] == [(0, 1), (0, 2), (1, 2)]
    assert [g.gap.value for g in gaps] == pytest.approx([1.0, 7.0, 4.0])
    for gap in gaps:
        assert np.hypot(*np.subtract(*gap.ends_mm)) == pytest.approx(gap.gap.value)
        assert gap.ends_mm[0][0] < gap.ends_mm[1][0]


def test_two_edges_are_independent_and_the_map_is_relative(shapes):
    (gap,) = gaps_between(row(shapes, 0.0, 7.0), [0.03, 0.04], scale_rel_u=0.002)
    assert gap.gap.budget == pytest.approx({"edge": 0.05, "map": 0.01})


def test_far_pairs_are_not_listed(shapes):
    gaps = gaps_between(row(shapes, 0.0, 3.0, 9.0), within_mm=4.0)
    assert [(g.first, g.second) for g in gaps] == [(0, 1), (1, 2)]
    # Boxes nearer than the outlines themselves: a corner pocket.
    hook = np.array([[0, 0], [10, 0], [10, 1], [1, 1], [1, 10], [0, 10]], float)
    spot = shapes["box"](1.0, 1.0) + np.array([7.0, 7.0])
    assert gaps_between([hook, spot], within_mm=3.0) == []
    assert len(gaps_between([hook, spot], within_mm=6.0)) == 1


def test_overlap_is_a_gap_of_zero(shapes):
    (gap,) = gaps_between(row(shapes, 0.0, 1.0))
    assert gap.gap.value == 0.0


def test_few_outlines_have_no_gaps(shapes):
    assert gaps_between([]) == []
    assert gaps_between(row(shapes, 0.0)) == []


def test_edge_uncertainties_must_fit(shapes):
    with pytest.raises(OutlineError, match="3 edge uncertainties for 2 outlines"):
        gaps_between(row(shapes, 0.0, 5.0), [0.1, 0.1, 0.1])


def link(first, second, mm):
    ends = ((0.0, 0.0), (mm, 0.0))
    return Gap(first=first, second=second, gap=Quantity(mm), ends_mm=ends)


@pytest.mark.parametrize(
    ("links", "limit", "groups"),
    [
        ([], 1.5, []),
        ([(0, 1, 1.6)], 1.5, []),
        ([(0, 1, 1.5)], 1.5, [(0, 1)]),  # at the limit counts as near
        ([(0, 3, 1.0), (3, 5, 1.0), (1, 2, 0.5)], 1.5, [(0, 3, 5), (1, 2)]),
        ([(4, 5, 1.0), (0, 1, 1.0), (1, 4, 1.0), (2, 3, 9.0)], 1.5, [(0, 1, 4, 5)]),
    ],
)
def test_chains_of_neighbours(links, limit, groups):
    assert grouped([link(*each) for each in links], limit) == groups
