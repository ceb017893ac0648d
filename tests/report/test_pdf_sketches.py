"""The sketches in the report: of findings that join indications, and of no others."""

import re
from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pdfplumber

from ptmark.report import write_pdf
from ptmark.report.pages.sketches import sketches
from ptmark.report.sketch import finding_svg


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


def test_a_letter_keeps_off_the_lines_that_join():
    """The row's line runs through the corner where the letter would stand by itself."""

    def square(name, x):
        ring = np.array([[x, 0.0], [x + 2, 0.0], [x + 2, 2.0], [x, 2.0]])
        return SimpleNamespace(id=name, outline_mm=ring)

    row = SimpleNamespace(indications=("A", "B"), sketch=((0.0, 2.1), (6.0, 2.1)), says="row")
    svg = finding_svg(row, [square("A", 0.0), square("B", 4.0)])
    places = {
        name: (float(x), float(y))
        for x, y, name in re.findall(r'<text x="([\d.]+)" y="([\d.]+)"[^>]*>([AB])<', svg)
    }
    thick = re.findall(r'points="([^"]+)"[^>]*stroke-width="4"', svg)
    line_y = float(thick[0].split()[0].split(",")[1])
    for _, y in places.values():
        assert not y - 16 < line_y < y + 4  # letters are 16 units high
