import csv
import io
from dataclasses import replace

import openpyxl
import pytest

from ptmark.report.dicom.indications import indications
from ptmark.report.outlines import coco_json, geo_json
from ptmark.report.sheet import sheet_bytes
from ptmark.report.table import columns, csv_bytes, rows
from ptmark.report.verdict_words import nothing_line, verdict_line
from ptmark.report.wording import (
    called,
    criteria_line,
    deciding,
    decision_rule_words,
    disposition_words,
    measured,
    scale_line,
    standing,
    table_note,
)


def judged(record, findings, relevance=None, **members):
    """The record with an evaluation of these (verdict, letters, value, limit)."""
    made = [
        {
            "rule": "size",
            "clause": "",
            "indications": list(letters),
            "value": value,
            "u": 0.1,
            "limit": limit,
            "unit": "mm",
            "verdict": verdict,
            "says": f"{letters} {verdict}",
        }
        for verdict, letters, value, limit in findings
    ]
    changes = {"findings": made, "relevance": relevance or {}, **members}
    return replace(record, evaluation={**record.evaluation, **changes})


@pytest.mark.parametrize(
    ("findings", "relevance", "word"),
    [
        ([("acceptable", "A", 1, 4)], {}, "acceptable"),
        ([("acceptable", "A", 1, 4), ("undecided", "AB", 1, 4)], {}, "undecided"),
        ([("undecided", "A", 1, 4), ("rejectable", "AB", 5, 4)], {}, "rejectable"),
        ([("rejectable", "B", 5, 4)], {}, ""),
        ([("acceptable", "A", 1, 1.5)], {"A": "not relevant: 1.00 mm"}, "non-relevant"),
        # Below the threshold as read, but not with its uncertainty: it stays open.
        ([("undecided", "A", 1.4, 1.5)], {"A": "not relevant: 1.40 mm"}, "undecided"),
        ([("acceptable", "A", 2, 4)], {"A": "relevant: 2.00 mm"}, "acceptable"),
    ],
)
def test_how_one_indication_stands(weld, findings, relevance, word):
    record = judged(weld[0], findings, relevance)
    assert standing(record, record.indications[0]) == word


def test_set_aside_needs_a_reason(weld):
    record = judged(weld[0], [("rejectable", "A", 5, 4)])
    first = {**record.indications[0], "relevance": "false"}
    assert standing(record, {**first, "reason": "fingerprint"}) == "false"
    assert standing(record, {**first, "reason": "  "}) == "rejectable"


def test_no_evaluation_no_word(weld):
    record = replace(weld[0], evaluation=None)
    assert set(called(record).values()) == {"", "non-relevant"}
    assert verdict_line(record)[0] == "no verdict"
    assert deciding(record) == []
    assert decision_rule_words(record) == "—"
    assert criteria_line(record) == "none chosen"


@pytest.mark.parametrize(
    ("value", "u", "unit", "text"),
    [
        (1.0, 0.0, "mm", "1.00 mm"),
        (1.005, 0.01, "mm", "1.00 ± 0.01 mm"),
        (1.0054, 0.0099, "mm", "1.005 ± 0.010 mm"),
        (None, 0.1, "mm", "—"),
        (3.0, 0.0, "1", "3"),
        (2.5, 0.4, "1", "2.50 ± 0.40"),
        (0.0625, 0.012, "in", "0.062 ± 0.012 in"),
        (120.26, 3.1, "mm2", "120.3 ± 3.1 mm²"),
    ],
)
def test_numbers_as_text(value, u, unit, text):
    assert measured(value, u, unit) == text


def test_the_findings_farthest_beyond_come_first(weld):
    found = [("rejectable", "A", 5, 4), ("acceptable", "C", 1, 4), ("rejectable", "B", 12, 4)]
    record = judged(weld[0], found, verdict="rejectable")
    assert [one["says"][0] for one in deciding(record)] == ["B", "A"]


@pytest.mark.parametrize(
    ("verdict", "rule", "says"),
    [
        ("acceptable", "guarded", "also with the measurement uncertainty"),
        ("acceptable", "simple", "as the code reads it"),
        ("rejectable", "guarded", "at least one rule is not met"),
        ("undecided", "guarded", "measure again"),
    ],
)
def test_the_verdict_in_words(weld, verdict, rule, says):
    record = judged(weld[0], [], verdict=verdict, decision_rule=rule)
    word, sentence = verdict_line(record)
    assert word == verdict
    assert says in sentence
    assert sentence.startswith("8 indications;")
    none = replace(record, indications=[])
    assert "No indications" in verdict_line(none)[1]


@pytest.mark.parametrize("marked", [True, False])
def test_what_no_rule_can_judge_is_not_put_down_to_the_uncertainty(weld, marked):
    both = judged(
        weld[0], [("undecided", "", 0, 0), ("undecided", "A", 3.9, 4)], verdict="undecided"
    )
    assert "uncertainty" in verdict_line(both)[1]
    held, _ = both.evaluation["findings"]
    evaluation = {**both.evaluation, "findings": [{**held, "rule": "searched"}]}
    alone = replace(both, evaluation=evaluation)
    if not marked:
        alone = replace(alone, indications=[])
    _, sentence = verdict_line(alone)
    assert sentence.startswith("8 indications;" if marked else "No indications;")
    assert "no rule can judge" in sentence
    assert "uncertainty" not in sentence


def test_nothing_marked_is_nothing_found_only_where_the_photo_could_show_it(weld):
    bare = replace(weld[0], indications=[])
    assert nothing_line(bare) == "No indications were found in the examined area."
    hidden = replace(bare, conditions={**bare.conditions, "colourless": True})
    assert "found" not in nothing_line(hidden)


def test_scale_and_disposition_in_words(weld):
    record = weld[0]
    assert scale_line(record) == (
        "rectangle, 0.0500 mm per pixel at the reference, tilt 3.2°, distance 210 mm"
    )
    unknown = {**record.scale, "tilt_deg": None, "working_distance_mm": None}
    assert "tilt not known" in scale_line(replace(record, scale=unknown))
    assert disposition_words(record) == "reject (beyond the limit)"
    bare = replace(record, disposition={"decision": "", "reason": ""})
    assert disposition_words(bare) == "not decided yet"
    against = replace(record, disposition={"decision": "accept", "reason": ""})
    assert disposition_words(against) == "accept (departs from the verdict; no reason given)"


def test_table_row_of_a_named_kind_that_is_not_sure(weld):
    record = weld[0]
    first = {**record.indications[0], "kind": "crack (100)", "shape_sure": False}
    row = rows(replace(record, indications=[first]))[0]
    assert row[1] == "linear (not sure), crack (100)"
    assert row[-1] == "✗ rejectable"


def test_a_code_in_inches_has_lengths_told_in_inches_too(weld):
    metric = weld[0]
    found = [{**one, "unit": "in"} for one in metric.evaluation["findings"]]
    in_inches = replace(metric, evaluation={**metric.evaluation, "findings": found})
    first = metric.indications[0]
    for record in (metric, in_inches):
        made = [columns(record), *rows(record)]
        assert {len(one) for one in made} == {len(columns(record))}
        assert sum(columns(record).values()) == pytest.approx(1.0)
    assert not any(" in" in head for head in columns(metric))
    told = dict(zip(columns(in_inches), rows(in_inches)[0], strict=True))
    value, u = (float(one) for one in told["Length ± U, in"].split(" ± "))
    # 25.4 mm to the inch: international yard and pound agreement, 1959
    assert value == pytest.approx(first["length_mm"] / 25.4, abs=0.0005)
    assert u == pytest.approx(first["length_u_mm"] / 25.4, abs=0.0005)
    assert told["Length ± U, mm"].startswith(f"{first['length_mm']:.2f} ±")


@pytest.mark.parametrize(
    ("why", "said"),
    [
        ("runs_out", "photo's edge"),
        ("covered", "cover"),
        ("ends_unsure", "may not show in haze, rust, grain, a red reflection, beside paint"),
    ],
    ids=str,
)
def test_what_goes_on_unseen_is_given_as_the_least_it_can_be(weld, why, said):
    record, _ = weld
    cut = {**record.indications[0], why: True}
    again = replace(record, indications=[cut, *record.indications[1:]])
    length = list(columns(record)).index("Length ± U, mm")
    whole, least = rows(record), rows(again)
    assert least[0][length] == f"≥ {whole[0][length]}"
    assert least[1:] == whole[1:]
    assert "≥" not in table_note(record)
    assert said in table_note(again)
    table = list(csv.DictReader(io.StringIO(csv_bytes(again).decode("utf-8-sig"))))
    assert [row[why].lower() == "true" for row in table] == [
        one is cut for one in again.indications
    ]
    sheet = openpyxl.load_workbook(io.BytesIO(sheet_bytes(again)))["Indications"]
    head, *told = sheet.iter_rows(values_only=True)
    assert [row[head.index(why)] for row in told] == [True] + [False] * (len(told) - 1)
    outlines = geo_json(again)["features"], coco_json([again])["annotations"]
    for listed, where in zip(outlines, ("properties", "attributes"), strict=True):
        assert [one[where][why] for one in listed] == [True] + [False] * (len(told) - 1)
    words = [one.IndicationDescription for one in indications(again)]
    assert [said in one for one in words] == [True] + [False] * (len(told) - 1)
