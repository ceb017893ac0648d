"""What the picture's bands say, and that no text runs out of them."""

from collections import defaultdict
from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest

from ptmark.report.annotate import annotated_image
from ptmark.report.lettering import Band, font, wrap
from ptmark.report.palette import INK, NAVY, PALE, PAPER, QUIET, SHADE, contrast


@pytest.fixture
def set_lines(monkeypatch):
    """Every line of text set in a band: (text, x of its end, band's width, band, x, y)."""
    lines = []
    put = Band.put

    def spy(self, x, y, text, **options):
        end = put(self, x, y, text, **options)
        lines.append((text, end, self.width, self, x, y))
        return end

    monkeypatch.setattr(Band, "put", spy)
    return lines


def test_the_picture_says_all_that_a_reader_needs(set_lines, weld):
    record, rgb = weld
    annotated_image(record, rgb)
    said = " ".join(line[0] for line in set_lines)
    crack = f"{record.indications[0]['length_mm']:.2f}"
    for text in (
        "INVENTED-17",
        "S-0042",
        "W21",
        "2026-01-02",
        "invented.jpg (abababababab)",
        "0.0500 mm per pixel",
        "Invented criteria, 2026, invented",
        "✗ REJECTABLE",
        "guarded acceptance",
        f"Indication A is {crack} mm long; limit 4 mm. (invented table 1)",
        "reject (beyond the limit)",
        "! The rectangle is small: set a larger one.",
        "certified inspector decide",
        "along the photo's width at the +",
        "linear",
        "rejectable or undecided",
        record.photo["sha256"],
    ):
        assert text in said, text
    for one in record.indications:
        assert f"{one['length_mm']:.2f} ± 0.10" in said
        assert f"{one['width_mm']:.2f} ± 0.06" in said


@pytest.mark.parametrize(("width", "height"), [(1200, 900), (500, 1600), (1600, 300), (30, 30)])
@pytest.mark.parametrize("count", [0, 3, 20])
def test_no_text_runs_out_of_its_band(set_lines, make, width, height, count):
    outlines = [
        make["ring"](width * (0.1 + 0.04 * i), height / 2, width / 80, height / 90)
        for i in range(count)
    ]
    entries = [make["entry"](i, outline) for i, outline in enumerate(outlines)]
    for one in entries[:1]:
        one |= {"kind": "a kind of a very long name without end", "shape_sure": False}
    record = make["record"](width, height, entries)
    fields = {**record.fields, "part_number": "X" * 90, "weld_number": "long words " * 12}
    evaluation = {**record.evaluation, "title": "a title that goes on " * 12}
    record = replace(record, fields=fields, evaluation=evaluation, cautions=["words " * 200])
    annotated_image(record, np.full((height, width, 3), 200, np.uint8))
    assert len(set_lines) > 30
    rows = defaultdict(list)
    for text, end, band_width, band, x, y in set_lines:
        assert end <= band_width, text
        rows[id(band), round(y)].append((x, end, text))
    for row in rows.values():
        for left, right in pairwise(sorted(row)):
            assert left[1] <= right[0], (left, right)


def test_wrapping_keeps_every_letter_and_the_width():
    said = "some words and_one_word_that_is_far_too_long_for_any_line_at_all\n\nlast"
    lines = wrap(said, 120, 14)
    assert "".join(lines).replace(" ", "") == said.replace(" ", "").replace("\n", "")
    assert all(font(14).getlength(line) <= 120 for line in lines)
    assert "" in lines  # the empty line between paragraphs stays
    assert wrap("", 100, 14) == [""]


@pytest.mark.parametrize(
    ("ink", "ground"),
    [(INK, PAPER), (INK, SHADE), (QUIET, PAPER), (QUIET, SHADE), (PALE, NAVY)],
)
def test_text_is_readable(ink, ground):
    assert contrast(ink, ground) >= 4.5  # WCAG 2.2, 1.4.3 (AA)
