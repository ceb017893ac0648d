"""The sketches in the report: of findings that join indications, and of no others."""

from dataclasses import replace

import pdfplumber

from ptmark.report import write_pdf
from ptmark.report.pdf_sketches import sketches


def _joined(record, **changes):
    names = [one["id"] for one in record.indications[:2]]
    first = record.evaluation["findings"][0]
    finding = {
        **first,
        "indications": names,
        "verdict": "rejectable",
        "says": "Two of them stand in a row.",
        "sketch_mm": [[0.0, 0.0], [10.0, 4.0]],
        **changes,
    }
    return replace(record, evaluation={**record.evaluation, "findings": [finding]})


def test_a_finding_that_joins_is_drawn_with_its_sentence(weld, tmp_path):
    record, rgb = weld
    path = tmp_path / "report.pdf"
    write_pdf(path, _joined(record), rgb, None)
    with pdfplumber.open(path) as pdf:
        said = " ".join(page.extract_text() for page in pdf.pages)
    assert "What joins them" in said
    assert said.count("Two of them stand in a row.") >= 2  # in the table and under the sketch


def test_findings_of_one_indication_are_not_drawn_again(weld):
    record, _ = weld
    alone = _joined(record, indications=[record.indications[0]["id"]])
    assert sketches(alone, 500) == []
    assert sketches(replace(record, evaluation=None), 500) == []
