"""What many indications are read and merged by at once gives what one by one gives."""

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from scipy.sparse import coo_array
from scipy.sparse.csgraph import connected_components

from ptmark.criteria import scene_from_json
from ptmark.criteria.crowd import united
from ptmark.criteria.merge import merged
from ptmark.criteria.outlines import read_at_once
from ptmark.criteria.rules import Merge
from ptmark.errors import CriteriaError
from ptmark.measure.geometry import as_outline

WHOLE = st.integers(-3, 3)
POINTS = st.lists(st.lists(WHOLE, min_size=2, max_size=2), max_size=7)


@given(st.lists(POINTS, min_size=1, max_size=6))
def test_outlines_at_once_are_those_one_by_one(listed):
    # few places, so that repeated neighbours, flat outlines and single points come often
    for points, outline in zip(listed, read_at_once(listed), strict=True):
        if outline is not None:
            assert (outline == as_outline(points)).all()
            assert len(outline) >= 3
        elif points:
            with pytest.raises(Exception, match="outline"):
                as_outline(points)


@pytest.mark.parametrize(
    ("bad", "says"),
    [
        ([[0, 0], [1, 1], [2, 2]], "no area"),
        ([[0, 0], [1, 1], [float("inf"), 0]], "no number"),
        ([[0, 0], [1, 1, 1]], r"list of \[x, y\]"),
        ([[0, 0], [2e7, 1], [2, 2]], "10 km"),
        ("ABC", r"list of \[x, y\]"),
    ],
)
def test_one_bad_outline_among_many_is_named_and_the_first_error_is_told(bad, says):
    square = [[0, 0], [1, 0], [1, 1], [0, 1]]
    listed = [{"id": str(k), "outline_mm": square} for k in range(400)]
    listed[7]["outline_mm"] = bad
    with pytest.raises(CriteriaError, match=says) as caught:
        scene_from_json({"indications": listed})
    assert caught.value.where == "indication 7, outline_mm"
    listed[3]["length_u_mm"] = -1.0
    with pytest.raises(CriteriaError, match="zero or more"):
        scene_from_json({"indications": listed})


@pytest.mark.truth
@given(
    st.integers(2, 40).flatmap(
        lambda n: st.tuples(
            st.just(n),
            st.lists(st.tuples(st.integers(0, n - 1), st.integers(0, n - 1)), max_size=60),
        )
    )
)
def test_united_are_the_connected_components_of_scipy(made):
    count, listed = made
    pairs = np.array(listed, dtype=np.int64).reshape(-1, 2)
    owner = united(np.arange(count), pairs)
    ones = coo_array((np.ones(len(pairs)), (pairs[:, 0], pairs[:, 1])), shape=(count, count))
    _, label = connected_components(ones, directed=False)
    assert ((owner[:, None] == owner) == (label[:, None] == label)).all()
    assert all(owner[k] == np.flatnonzero(label == label[k])[0] for k in range(count))


@pytest.mark.parametrize("way", ["on a circle", "on a line", "on a grid", "in few places"])
def test_neighbours_become_one_wherever_a_triangulation_is_not_one(way):
    # ISO 23277: a gap below the smaller one's length; here it is half of it, or none
    k = np.arange(400)
    middle = {
        "on a circle": np.c_[np.cos(k * np.pi / 200), np.sin(k * np.pi / 200)] * 90,
        "on a line": np.c_[1.5 * k, 0 * k],
        "on a grid": np.c_[1.5 * (k % 20), 1.5 * (k // 20)],
        "in few places": np.c_[1.5 * (k % 5), 0 * k],
    }[way]
    shapes = shapely.buffer(shapely.points(middle), 0.5)
    rule = Merge(id="m", clause="", sure="verified", operator="<", factor=1.0)
    assert merged(shapes, np.ones(400), np.zeros(400), rule, "mm") == [tuple(range(400))]
