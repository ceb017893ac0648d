"""An examiner's own hand: pooled from repeat traces, kept, and used for the next outlines."""

import json
from dataclasses import replace

import numpy as np
import pytest

from ptmark.__main__ import main
from ptmark.dye import EdgeQuality
from ptmark.errors import RecordError
from ptmark.inspection import Inspection
from ptmark.measure import Hand, keep_hands, kept_hands, pooled_hand, with_own_hand
from ptmark.photo import Photo
from ptmark.record import save_record
from ptmark.review import hands_in
from ptmark.scale import RectangleReference

# Bland and Altman, Lancet 1986, i, 307-310: 17 people twice by one meter (from memory).
ONE = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427]
TWO = [490, 397, 512, 401, 470, 611, 415, 431, 638, 429, 420, 633, 275, 492, 165, 372, 421]


@pytest.fixture(autouse=True)
def own_folder(tmp_path, monkeypatch):
    monkeypatch.setenv("PTMARK_HOME", str(tmp_path / "own"))


@pytest.mark.truth
def test_repeats_pool_as_published():
    """Ibid.: within-subject standard deviation 15.3; t for 17 degrees of freedom 2.16.

    JCGM 100:2008, Table G.2, 95.45 %: 17 degrees of freedom, 2.16 (from memory; 16: 2.17).
    """
    found = pooled_hand(list(zip(ONE, TWO, strict=True)))
    assert found.free == 17
    assert found.px * np.sqrt(2) == pytest.approx(15.3 * 2.16 / 2, rel=0.005)


def test_what_was_traced_once_tells_nothing():
    with pytest.raises(RecordError, match="4 repeats"):
        pooled_hand([[10.0, 11.0, 12.0], [5.0, 6.0, 5.5], [7.0]])


def again(record, number, rng, source="hand", spread=2.0):
    """The same record made again: each end of each outline strays by ``spread`` px."""
    rows = []
    for one in record.indications:
        points = np.array(one["outline_px"], float)
        ends = np.where(points[:, 0] > points[:, 0].mean(), *rng.normal(0, spread, 2))
        points[:, 0] += ends
        rows.append({**one, "outline_px": points.round(2).tolist(), "source": source})
    return replace(record, id=f"{record.id[:-2]}{number:02d}", indications=rows)


def test_the_spread_of_the_ends_comes_back(first):
    rng = np.random.default_rng(8)
    wide = [{**one} for one in first.indications if one["id"] != "C"]
    records = [again(replace(first, indications=wide), n, rng) for n in range(40)]
    hand = hands_in(records)["first"]["hand"]
    assert hand.free == 78
    assert hand.px == pytest.approx(2.0, rel=0.25)  # 3 standard errors of 78 degrees


def test_other_people_and_suggestions_are_no_repeats(first):
    rng = np.random.default_rng(8)
    other = replace(first, fields={**first.fields, "examiner": "second"})
    with pytest.raises(RecordError, match="traced"):
        hands_in([again(first, 1, rng), again(other, 2, rng)])
    with pytest.raises(RecordError, match="traced"):
        hands_in([again(first, n, rng, "suggested") for n in range(8)])


def test_hands_are_kept_beside_each_other():
    keep_hands({"first": {"hand": Hand(0.8, 9)}})
    keep_hands({"second": {"hand": Hand(1.1, 6), "snapped": Hand(0.2, 6)}})
    assert kept_hands()["first"]["hand"] == Hand(0.8, 9)
    edge = EdgeQuality(shift_px=1.0, noise_px=0.0, source="snapped")
    own = with_own_hand(edge, {"examiner": "second"})
    assert (own.operator_px, own.operator_free) == (0.2, 6)
    assert with_own_hand(edge, {"examiner": "first"}).operator_px is None
    found = replace(edge, source="suggested")
    assert with_own_hand(found, {"examiner": "second"}) is found


def test_a_broken_file_is_named(tmp_path):
    (tmp_path / "own").mkdir()
    (tmp_path / "own" / "hands.json").write_text("[1]")
    with pytest.raises(RecordError, match=r"hands\.json"):
        kept_hands()


def test_command_keeps_and_the_next_trace_uses_it(first, tmp_path, capsys):
    rng = np.random.default_rng(8)
    files = []
    for number in range(6):
        files.append(tmp_path / f"{number}.json")
        save_record(files[-1], again(first, number, rng))
    assert main(["agreement", *map(str, files), "--keep-hand"]) == 0
    said = capsys.readouterr().out
    px = json.loads((tmp_path / "own" / "hands.json").read_text())["first"]["hand"]["px"]
    assert f"first, free hand: {px:.2f} px an end" in said

    bare = Photo.from_array(np.full((1200, 1600, 3), 225, np.uint8), name="bare")
    inspection = Inspection()
    inspection.set_photo(bare)
    corners = ((100.0, 100.0), (1500.0, 100.0), (1500.0, 1100.0), (100.0, 1100.0))
    inspection.set_reference(
        RectangleReference(corners_px=corners, width_mm=70.0, height_mm=50.0)
    )
    inspection.change("fields", fields={"examiner": "first"})
    traced = np.array([[600.0, 500], [700, 510], [690, 530]])
    edge = EdgeQuality(shift_px=1.0, noise_px=0.0, source="hand")
    one = inspection.marked(inspection.add(traced, edge))
    plain = EdgeQuality(shift_px=1.0, noise_px=0.0, source="hand", operator_px=0.0)
    budget = inspection.measurement(one).length.budget
    inspection.edit(one.id, edge=replace(plain, source="suggested"))
    scale = inspection.measurement(inspection.marked(one.id)).length.budget["picking"]
    own = np.sqrt(budget["picking"] ** 2 - scale**2)
    assert own == pytest.approx(np.sqrt(2) * px * 0.05, rel=0.01)  # 0.05 mm a px, two ends
