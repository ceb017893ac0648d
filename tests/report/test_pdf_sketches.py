"""The sketches in the report: of findings that join indications, and of no others."""

import re
from dataclasses import replace
from types import SimpleNamespace

import numpy as np

from ptmark.report.pages.sketches import sketches
from ptmark.report.pages.whole import write_pdf
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


def test_a_finding_that_joins_is_drawn_with_its_sentence(weld, tmp_path, pages_of):
    record, rgb = weld
    path = tmp_path / "report.pdf"
    write_pdf(path, _joined(record), rgb, None)
    said = " ".join(pages_of(path))
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


def _named(svg):
    """What is written in a sketch, its scale aside: name, x, y; all in ink."""
    found = re.findall(r'<text x="([-\d.]+)" y="([-\d.]+)"[^>]*fill="([^"]+)">([^<]+)<', svg)
    return [(name, float(x), float(y)) for x, y, _, name in found if not name.endswith(" mm")]


def _row(names, step):
    square = np.array([[0, 0], [1, 0], [1, 1], [0, 1.0]])
    outlines = [
        SimpleNamespace(id=name, outline_mm=square + np.array([k * step, 0]))
        for k, name in enumerate(names)
    ]
    row = SimpleNamespace(indications=names, sketch=((0, 0.5), (9, 0.5)), says="row")
    return finding_svg(row, outlines)


def test_letters_lie_over_their_halo_in_every_viewer():
    # paint-order is new in SVG 2: without it a halo drawn with the letter would cover it
    svg = _row(("A", "B"), 5.0)
    assert "paint-order" not in svg
    letters = re.findall(r"<text ([^>]*)>A<", svg)
    assert ["stroke=" in one for one in letters] == [True, False]


def test_long_names_stay_in_the_sketch():
    named = _named(_row(("flange-weld-upper-0", "flange-weld-upper-1"), 8.0))
    assert [name for name, _, _ in named] == ["flange-weld-up..", "flange-weld-up.."]
    # 600 wide; a letter of 16 px takes up to 9 across
    assert all(4 <= x <= 600 - 9 * len(name) for name, x, _ in named)


def test_names_in_a_crowd_do_not_lie_across_each_other():
    named = _named(_row(tuple(f"I{k}" for k in range(60)), 0.3))
    assert 5 < len(named) < 60
    for k, (name, x, y) in enumerate(named):
        for other, ox, oy in named[:k]:
            wide = 9 * len(other if x > ox else name)
            assert abs(x - ox) >= wide or abs(y - oy) >= 16
