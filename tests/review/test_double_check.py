import pickle
import re
from dataclasses import replace

import numpy as np
import pytest
import shapely

from ptmark.errors import RecordError
from ptmark.record import (
    PHOTO_MEMBERS,
    load_record,
    revision_hash,
    save_record,
    verify_file,
)
from ptmark.review import BlindReview, Remark, compare_records, en_number, reviewed


@pytest.mark.truth
@pytest.mark.parametrize(
    ("first", "second", "en"),
    [  # ISO/IEC 17043:2010, B.3.1.3 e): the formula; the figures are worked by hand
        ((10.0, 0.3), (10.5, 0.4), 1.0),
        ((10.5, 0.4), (10.0, 0.3), 1.0),
        ((7.0, 1.2), (7.65, 0.5), 0.5),
        ((2.0, 0.0), (2.0, 0.1), 0.0),
        ((2.0, 0.0), (2.1, 0.0), None),
    ],
)
def test_en_is_the_difference_over_its_expanded_uncertainty(first, second, en):
    found = en_number(*first, *second)
    assert found == en if en is None else found == pytest.approx(en, abs=1e-12)


@pytest.mark.truth
def test_en_of_ten_laboratories_as_published():
    # The worked example of proficiency scores in the documentation of the R package "measure":
    # ten results against an assigned value of 100, of which it prints mean, deviation and
    # largest of the signed En.
    results = [99.2, 100.5, 98.8, 101.2, 97.5, 100.1, 99.8, 102.3, 100.6, 94.0]
    stated_u = [1.5, 2.0, 1.8, 1.6, 2.2, 1.9, 1.7, 2.1, 1.5, 2.0]
    found = [en_number(*one, 100.0, 0.0) for one in zip(results, stated_u, strict=True)]
    signed = np.copysign(found, np.subtract(results, 100.0))
    assert signed.mean() == pytest.approx(-0.291, abs=0.0005)
    assert signed.std(ddof=1) == pytest.approx(1.16, abs=0.005)
    assert max(found) == pytest.approx(3, abs=0.05)


def test_indications_are_matched_by_place_not_by_letter(first, second):
    found = compare_records(first, second)
    assert found.frame == "px"
    assert [(pair.first, pair.second) for pair in found.pairs] == [("A", "B"), ("B", "A")]
    assert found.only_first == ("C",)
    assert [one["id"] for one in found.only_second] == ["D"]
    crack = found.pairs[0]
    assert crack.length.difference == pytest.approx(6 * 0.05)
    assert crack.length.en == pytest.approx(0.3 / np.hypot(0.1, 0.1))
    assert crack.verdicts == ("rejectable", "undecided")
    # Shapely's own areas of the two rectangles.
    one, other = (shapely.Polygon(r.indications[0]["outline_px"]) for r in (first, second))
    iou = one.intersection(other).area / one.union(other).area
    assert crack.iou == pytest.approx(iou)
    said = "; ".join(found.disagreements)
    for part in (
        "C was found by the first",
        "D was found by the second",
        "length of A: En = 2.12",
    ):
        assert part in said
    assert "verdict of the whole: rejectable, undecided" in said


def test_a_record_agrees_with_itself(first):
    found = compare_records(first, first)
    assert found.disagreements == []
    assert {pair.iou for pair in found.pairs} == {1.0}
    assert all(pair.length.en == 0 for pair in found.pairs)


def test_a_new_photo_is_compared_in_mm(first, second):
    other = {**second.photo, "sha256": "0" * 64}
    rows = [
        {**one, "outline_px": [[x + 50, y] for x, y in one["outline_px"]]}
        for one in second.indications
    ]
    found = compare_records(first, replace(second, photo=other, indications=rows))
    assert found.frame == "mm"
    assert len(found.pairs) == 2


def test_nothing_to_compare_is_no_error(first):
    empty = replace(first, indications=[])
    assert compare_records(empty, first).pairs == ()
    assert compare_records(first, empty).only_first == ("A", "B", "C")
    unmeasured = [{**one, "length_mm": None, "width_mm": None} for one in first.indications]
    found = compare_records(first, replace(first, indications=unmeasured))
    assert {pair.length for pair in found.pairs} == {None}


def test_the_blind_review_keeps_none_of_the_first_numbers(first):
    """Whatever lies in the object, as bytes: photo and area, and not one number more."""
    odd = [{**one, "length_mm": 8.123456 + n} for n, one in enumerate(first.indications)]
    record = replace(first, indications=odd)
    blind = BlindReview(record)
    held = pickle.dumps(vars(blind), protocol=0).decode("latin-1")
    assert record.photo["sha256"] in held
    assert "rejectable" not in held
    for one in odd:
        assert str(one["length_mm"]) not in held
        assert str(one["outline_px"][0][0]) not in re.findall(r"[\d.]+", held)
    assert blind.area_px == record.area_px


def test_the_blind_is_lifted_for_the_same_revision_only(first, second):
    blind = BlindReview(first)
    assert blind.finish(first, second).pairs
    with pytest.raises(RecordError, match="not the revision"):
        blind.finish(replace(first, fields={}), second)
    bare = {**second.scale, "reference": None}
    with pytest.raises(RecordError, match="no scale"):
        blind.finish(first, replace(second, scale=bare))


@pytest.mark.parametrize("outcome", ["signed", "returned", "new photo asked"])
def test_a_review_goes_into_the_record_as_a_revision(signed, second, outcome, tmp_path):
    path = tmp_path / "r.json"
    save_record(path, signed)
    remarks = (Remark(text="blurred here", at_px=(300.0, 200.0)), Remark(text="dwell time?"))
    made = reviewed(
        signed,
        compare_records(signed, second),
        reviewer="second",
        outcome=outcome,
        remarks=remarks,
    )
    save_record(path, made, by="second", why="review")
    kept = load_record(path)
    assert kept.revision == 2
    assert kept.change["what"] == ["reviews"]
    (entry,) = kept.reviews
    assert entry["of"] == kept.previous == revision_hash(signed.to_json())
    assert entry["outcome"] == outcome
    assert entry["remarks"][0] == {"at_px": [300.0, 200.0], "text": "blurred here"}
    assert entry["pairs"][0]["length_mm"]["en"] == pytest.approx(2.1213, abs=1e-4)
    assert all(one.holds is not False for one in verify_file(path))
    # A second reviewer may follow: what the examiner signed is still what is reviewed.
    again = reviewed(kept, compare_records(kept, second), reviewer="third", outcome="signed")
    assert len(again.reviews) == 2


def test_what_is_no_review_is_refused(first, signed, second):
    found = compare_records(first, second)
    with pytest.raises(RecordError, match="examiner has not signed"):
        reviewed(first, found, reviewer="second", outcome="signed")
    with pytest.raises(RecordError, match="no review"):
        reviewed(signed, found, reviewer=" ", outcome="signed")
    with pytest.raises(RecordError, match="no review"):
        reviewed(signed, found, reviewer="second", outcome="waved through")
    with pytest.raises(RecordError, match="nothing to act on"):
        reviewed(signed, found, reviewer="second", outcome="returned")


def test_a_set_is_signed_only_with_every_photo_measured(signed, second):
    # Two pairs of eyes on all of it: common practice, no source.
    other = {**signed.photo, "sha256": "c" * 64, "file": "other.jpg"}
    more = [{**{name: getattr(signed, name) for name in PHOTO_MEMBERS}, "photo": other}]
    verdict = {"verdict": "rejectable", "seen_again": [], "cautions": []}
    both = replace(signed, more_photos=more, together=verdict)
    found = compare_records(signed, second)
    with pytest.raises(RecordError, match="photo 2 of 2 was not measured"):
        reviewed(both, found, found, reviewer="second", outcome="signed")
    rest = replace(found, photo_sha256="c" * 64)
    assert len(reviewed(both, found, rest, reviewer="second", outcome="signed").reviews) == 2
    remarks = (Remark(text="photo 2 is blurred"),)
    reviewed(both, found, reviewer="second", outcome="returned", remarks=remarks)
