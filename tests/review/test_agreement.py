import csv
import io
from dataclasses import replace

import pdfplumber
import pytest

from ptmark.errors import RecordError
from ptmark.report.study import write_study_csv, write_study_pdf
from ptmark.review import compare_records, limits_of_agreement, precision, reviewed, study_of
from ptmark.review.study import PROGRAM

# Bland and Altman, Lancet 1986, i, 307-310: peak expiratory flow of 17 people, l/min, twice
# by each of two meters (figures from memory; the published results below hold for them).
LARGE = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427]
LARGE_2 = [490, 397, 512, 401, 470, 611, 415, 431, 638, 429, 420, 633, 275, 492, 165, 372, 421]
MINI = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451]
MINI_2 = [525, 415, 508, 444, 500, 625, 460, 390, 642, 432, 420, 605, 227, 467, 268, 370, 443]


@pytest.mark.truth
def test_limits_of_agreement_of_the_published_example():
    # Ibid.: mean difference (large minus mini) -2.1, SD 38.8 l/min (from memory).
    found = limits_of_agreement(list(zip(MINI, LARGE, strict=True)))
    assert found.mean == pytest.approx(-2.1, abs=0.05)
    assert found.sd == pytest.approx(38.8, abs=0.05)
    assert found.lower == pytest.approx(-2.1176 - 1.96 * 38.7651, abs=1e-3)
    assert found.upper == pytest.approx(-2.1176 + 1.96 * 38.7651, abs=1e-3)


@pytest.mark.truth
@pytest.mark.parametrize(("one", "two", "sd"), [(LARGE, LARGE_2, 15.3), (MINI, MINI_2, 19.9)])
def test_repeatability_of_the_published_example(one, two, sd):
    # Ibid.: within-subject standard deviation by one-way analysis of variance (from memory).
    people = {str(n): pair for n, pair in enumerate(zip(one, two, strict=True))}
    assert precision(people).repeatability == pytest.approx(sd, abs=0.05)


@pytest.mark.truth
def test_precision_of_the_standards_own_example():
    # ISO 5725-2:1994, B.1, sulfur in coal, level 1, eight laboratories of 3 to 5 results:
    # m = 0.690, s_r = 0.015, s_R = 0.026 (data and results from memory).
    level = [
        [0.71, 0.71, 0.70, 0.71],
        [0.69, 0.67, 0.68],
        [0.66, 0.65, 0.69],
        [0.67, 0.65, 0.66],
        [0.70, 0.69, 0.66, 0.71, 0.69],
        [0.73, 0.74, 0.73],
        [0.71, 0.71, 0.69],
        [0.70, 0.65, 0.68],
    ]
    found = precision({str(n): row for n, row in enumerate(level)})
    assert found.mean == pytest.approx(0.690, abs=5e-4)
    assert found.repeatability == pytest.approx(0.015, abs=5e-4)
    assert found.reproducibility == pytest.approx(0.026, abs=5e-4)
    assert (found.operators, found.results) == (8, 27)


@pytest.mark.truth
def test_variance_components_of_a_textbook_example():
    # Montgomery, Design and Analysis of Experiments, the looms of the random effects chapter:
    # variances 1.90 within and 6.96 between (from memory).
    looms = [[98, 97, 99, 96], [91, 90, 93, 92], [96, 95, 97, 95], [95, 96, 99, 98]]
    found = precision({str(n): row for n, row in enumerate(looms)})
    assert found.repeatability**2 == pytest.approx(1.90, abs=0.005)
    assert found.between**2 == pytest.approx(6.96, abs=0.005)


def test_equal_operators_show_no_spread_between():
    found = precision({"first": [1.0, 3.0], "second": [1.0, 3.0]})
    assert found.between == 0
    assert found.reproducibility == found.repeatability == pytest.approx(2**0.5)


@pytest.mark.parametrize(
    "groups", [{}, {"a": [1, 2]}, {"a": [1], "b": [2]}, {"a": [1, 2], "b": []}]
)
def test_too_little_for_a_precision_is_refused(groups):
    with pytest.raises(RecordError, match="give no precision"):
        precision(groups)


def test_too_little_for_an_agreement_is_refused():
    with pytest.raises(RecordError, match="tell nothing"):
        limits_of_agreement([(1.0, 2.0)])


@pytest.fixture
def records(signed, second):
    """One reviewed record, the reviewer's own, and each measured again a little differently."""
    found = compare_records(signed, second)
    first = reviewed(signed, found, reviewer="second", outcome="signed")

    def again(record, name, more):
        rows = [{**one, "length_mm": one["length_mm"] + more} for one in record.indications]
        return replace(record, id=name, indications=rows)

    return [first, second, again(signed, "r-3", 0.02), again(second, "r-4", 0.06)]


def test_a_study_gathers_reviews_and_repeats(records):
    study = study_of(records)
    assert study.pairs == ((8.0, 8.3), (2.0, 2.0))
    assert study.agreement.mean == pytest.approx(0.15)
    assert study.missed == 2
    assert study.en_above_1 == 1
    crack, pore = study.levels
    assert (crack.letter, crack.precision.operators, crack.precision.results) == ("A", 2, 4)
    by_hand = precision({"first": [8.0, 8.02], "second": [8.3, 8.36]})
    for name in ("mean", "repeatability", "reproducibility"):
        assert getattr(crack.precision, name) == pytest.approx(getattr(by_hand, name))
    spread = [one.precision.repeatability**2 for one in (crack, pore)]
    assert study.pooled[0] ** 2 == pytest.approx(sum(spread) / 2)
    with pytest.raises(RecordError, match="neither a review nor"):
        study_of(records[1:2])


def test_each_ones_own_spread_reviewer_and_program_included(records):
    """By hand: two results that differ by d have the standard deviation d / sqrt(2)."""
    found = {one.name: one for one in study_of(records).operators}
    # A, B and C in two records each; the second did not see C.
    assert (found["first"].indications, found["first"].results) == (3, 6)
    assert found["first"].repeatability == pytest.approx(0.02 / 2**0.5)
    # The review in r-1 and the reviewer's own record tell of one measurement.
    assert found["second"].results == 4
    assert found["second"].repeatability == pytest.approx(0.06 / 2**0.5)
    program = found.pop(PROGRAM)
    assert program.results == 10
    assert set(found) == {"first", "second"}
    alone = study_of([records[0], records[2]])  # the reviewer's results from the review only
    assert [one.name for one in alone.operators] == ["first", PROGRAM]
    traced = [
        replace(one, indications=[{**row, "source": "hand"} for row in one.indications])
        for one in records
    ]
    assert PROGRAM not in {one.name for one in study_of(traced).operators}


def test_every_photo_of_a_reviewed_set_counts(records):
    """A review has an entry for each photo; none may hide another."""
    first = records[0]
    other = "c" * 64
    entry = {**first.reviews[0], "photo": other}
    both = replace(first, reviews=[*first.reviews, entry])
    assert len(study_of([both]).pairs) == 2 * len(study_of([first]).pairs)


def test_the_study_says_the_same_on_paper_and_in_the_table(records, tmp_path, pages_of):
    study = study_of(records)
    write_study_pdf(tmp_path / "s.pdf", study)
    write_study_pdf(tmp_path / "t.pdf", study)
    assert (tmp_path / "s.pdf").read_bytes() == (tmp_path / "t.pdf").read_bytes()
    said = " ".join(pages_of(tmp_path / "s.pdf")).replace("\n", " ")
    found = study.agreement
    for value in (found.mean, found.lower, found.upper):
        assert f"{value:+.3f}" in said
    assert f"{study.pooled[0]:.3f} mm" in said
    write_study_csv(tmp_path / "s.csv", study)
    text = (tmp_path / "s.csv").read_text("utf-8-sig")
    rows = list(csv.reader(io.StringIO(text)))
    assert rows[1] == ["1", "8.0", "8.3", "8.15", "0.3"]
    head = rows.index(["who", "indications", "results", "s_r_mm"])
    assert rows[head - 2][:2] == [study.levels[-1].photo, "B"]
    assert rows[head + 1] == ["first", "3", "6", "0.014142"]  # 0.02 / sqrt(2), by hand
    assert "Each one measuring again" in said
    for one in study.operators:
        assert f"{one.name} {one.indications} {one.results} {one.repeatability:.3f}" in said


def test_a_study_without_repeats_or_with_one_pair_says_so(records, tmp_path):
    write_study_pdf(tmp_path / "s.pdf", study_of(records[:1]), paper="Letter")
    with pdfplumber.open(tmp_path / "s.pdf") as pdf:
        assert "by two examiners" in pdf.pages[0].extract_text()
        assert pdf.pages[0].width == 612
