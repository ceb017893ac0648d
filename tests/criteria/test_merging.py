"""Neighbours that count as one (ISO 23277; the rule is from memory)."""

import itertools

import numpy as np
import pytest
import shapely

from ptmark.criteria import evaluate, load_profile
from ptmark.criteria.geometry import gaps_within
from ptmark.criteria.merge import merged
from ptmark.criteria.rules import Merge

RULE = Merge(id="merge", clause="5", sure="memory", operator="<", factor=1.0)


def clusters(shapes, lengths):
    return merged(
        np.array(shapes, dtype=object), np.array(lengths), np.zeros(len(shapes)), RULE, "mm"
    )


@pytest.mark.parametrize(
    ("gap", "verdict"), [(1.49, "rejectable"), (1.5, "acceptable"), (1.51, "acceptable")]
)
def test_gap_against_the_smaller_length(gap, verdict, build):
    # level 2: 1.5 and 2.0 long pass 4 mm each, 1.5 + gap + 2.0 does not
    pair = build.scene(build.bar("A", 0, 0, 1.5, 0.2), build.bar("B", 1.75 + gap, 0, 2.0, 0.2))
    assert evaluate(load_profile("iso-23277-2"), pair).verdict == verdict


def test_merged_length_is_end_to_end(build):
    pair = build.scene(build.bar("A", 0, 0, 3, 0.2), build.bar("B", 4, 0, 3, 0.2))
    result = evaluate(load_profile("iso-23277-3"), pair)
    found = next(finding for finding in result.findings if finding.rule == "linear")
    assert found.indications == ("A", "B")
    assert found.value == pytest.approx(7.0)
    assert "end to end" in result.shape["A"]


def test_merging_goes_on_until_nothing_merges(build):
    # B and C merge first (gap 0.9 of 1.0); only the pair, 2.9 long, reaches A (gap 2.5)
    a = build.bar("A", 0, 0, 3.0, 0.1)
    b = build.bar("B", 1.5 + 2.5 + 0.5, 0, 1.0, 0.1)
    c = build.bar("C", 1.5 + 2.5 + 1.0 + 0.9 + 0.5, 0, 1.0, 0.1)
    result = evaluate(load_profile("iso-23277-3"), build.scene(a, b, c))
    found = next(finding for finding in result.findings if finding.rule == "linear")
    assert found.indications == ("A", "B", "C")
    assert found.value == pytest.approx(8.4)


def test_two_round_ones_merge_to_a_round_one_and_three_to_a_line(build):
    # width stays that of the widest: 3 + 0.4 + 3 is 2.1 times 3, three of them 3.3 times
    pores = [build.pore(f"P{k}", 3.4 * k, 0, 3.0) for k in range(3)]
    two = evaluate(load_profile("iso-23277-3"), build.scene(*pores[:2]))
    assert two.shape["P0"].startswith("rounded")
    assert two.verdict == "acceptable"  # 6.4 <= 8
    three = evaluate(load_profile("iso-23277-3"), build.scene(*pores))
    assert three.shape["P0"].startswith("linear")
    assert three.verdict == "rejectable"  # 9.8 > 8


def one_by_one(shapes, lengths, order):
    """Plain merging of the first pair found, in a given order of looking."""
    parts = [({k}, shapes[k], lengths[k]) for k in order]
    while True:
        for (i, a), (j, b) in itertools.combinations(enumerate(parts), 2):
            if shapely.distance(a[1], b[1]) < min(a[2], b[2]) - 1e-6:
                whole = shapely.MultiPolygon(
                    [*shapely.get_parts(a[1]), *shapely.get_parts(b[1])]
                )
                hull = shapely.get_coordinates(whole.convex_hull)
                length = np.hypot(*(hull[:, None] - hull[None]).transpose(2, 0, 1)).max()
                parts = [part for k, part in enumerate(parts) if k not in {i, j}]
                parts.append((a[0] | b[0], whole, length))
                break
        else:
            return sorted(tuple(sorted(part[0])) for part in parts)


@pytest.mark.parametrize("few", [0, 32])  # of which all pairs are looked at once
@pytest.mark.parametrize("seed", range(40))
def test_order_does_not_matter_and_plain_merging_agrees(seed, few, monkeypatch):
    monkeypatch.setattr("ptmark.criteria.merge._FEW", few)
    rng = np.random.RandomState(seed)
    count = rng.randint(3, 14)
    places = rng.uniform(0, 40, (count, 2))
    ends = places + rng.normal(0, rng.uniform(0.5, 4), (count, 2))
    shapes = [
        shapely.LineString([a, b]).buffer(0.2, quad_segs=2)
        for a, b in zip(places, ends, strict=True)
    ]
    lengths = []
    for shape in shapes:
        hull = shapely.get_coordinates(shape)
        lengths.append(np.hypot(*(hull[:, None] - hull[None]).transpose(2, 0, 1)).max())
    expected = clusters(shapes, lengths)
    for _ in range(3):
        order = rng.permutation(count)
        assert one_by_one(shapes, lengths, order) == expected
        again = clusters([shapes[k] for k in order], [lengths[k] for k in order])
        assert sorted(tuple(sorted(order[list(part)])) for part in again) == expected


COUNTING = """\
name = "counting"
title = "Neighbours as one, then counted"
edition = "1"
unit = "mm"
source = "drawing"
governs = "The contract governs."

[shape]
linear = "> 3"
clause = "1"
sure = "verified"

[merge]
gap = "< 1"
clause = "2"
sure = "verified"

[[rule]]
id = "number"
kind = "frame"
of = "any"
what = "number"
reject = "> 1"
sides = ["50 mm", "50 mm"]
clause = "3"
sure = "verified"
"""


@pytest.mark.parametrize(
    ("gap", "verdict"), [(1.95, "undecided"), (1.0, "acceptable"), (2.3, "rejectable")]
)
def test_a_count_that_rests_on_doubtful_merging_is_open(build, tmp_path, gap, verdict):
    # 2 mm pores, U 0.2 mm: a gap of 1.95 mm merges them as measured, and may not in truth
    path = tmp_path / "counting.toml"
    path.write_text(COUNTING)
    pores = [build.pore(name, x, 0, 2, length_u=0.2) for name, x in (("A", 0), ("B", 2 + gap))]
    judged = evaluate(load_profile(path), build.scene(*pores))
    (found,) = (finding for finding in judged.findings if finding.rule == "number")
    assert judged.verdict == found.verdict == verdict
    assert found.indications == ("A", "B")
    told = "A and B may count as one or apart (a gap of 1.95 mm ± 0.20 mm"
    assert (told in found.says) == (verdict == "undecided")


@pytest.mark.parametrize("seed", range(20))
def test_going_on_from_shorter_ones_farther_apart_ends_at_the_same_clusters(seed):
    rng = np.random.RandomState(seed)
    count = rng.randint(3, 60)
    places = rng.uniform(0, 9 * np.sqrt(count), (count, 2))
    sizes, u = rng.uniform(0.5, 4.0, count), rng.choice([0.0, 0.3], count)
    shapes = np.array(
        [
            shapely.Point(place).buffer(size / 2)
            for place, size in zip(places, sizes, strict=True)
        ],
        dtype=object,
    )
    plain = merged(shapes, sizes, np.zeros(count), RULE, "mm")
    owner = np.empty(count, dtype=np.int64)
    for name, cluster in enumerate(plain):
        owner[list(cluster)] = 100 - name  # any numbers will do
    grown = (shapes, sizes + u, u / 2, RULE, "mm")
    assert merged(*grown, owner) == merged(*grown)
    for cluster in plain:  # none of them is parted again
        assert any(set(cluster) <= set(larger) for larger in merged(*grown))


def test_gaps_up_to_a_reach_are_those_of_all_pairs():
    rng = np.random.RandomState(3)
    shapes = np.array(
        [
            shapely.Point(p).buffer(r)
            for p, r in zip(rng.uniform(0, 30, (60, 2)), rng.uniform(0.2, 3, 60), strict=True)
        ]
    )
    reach = rng.uniform(0, 4, 60)
    pairs, gaps = gaps_within(shapes, reach)
    every = [
        (i, j)
        for i, j in itertools.combinations(range(60), 2)
        if shapely.distance(shapes[i], shapes[j]) <= max(reach[i], reach[j])
    ]
    assert [tuple(pair) for pair in pairs.tolist()] == every
    assert np.array_equal(gaps, shapely.distance(*shapes[pairs].T))
