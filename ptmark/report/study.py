"""The page and the table of a study: how far examiner and reviewer agree over many records."""

import io
from pathlib import Path
from typing import Any

from reportlab.graphics.shapes import Circle, Drawing, Line, String
from reportlab.lib.pagesizes import A4, LETTER
from reportlab.lib.units import mm
from reportlab.platypus import Flowable, SimpleDocTemplate, Spacer

from ptmark.files import csv_text
from ptmark.report.archival import archival
from ptmark.report.pages.style import PLAIN, color, grid, heading, register_fonts, text
from ptmark.report.palette import DEEP_BLUE, INK, QUIET
from ptmark.report.table import save
from ptmark.review import Agreement, Study

__all__ = ["write_study_csv", "write_study_pdf"]

_WIDE, _HIGH = 480.0, 220.0  # points
_LEFT, _FOOT = 46.0, 34.0


def write_study_csv(path: Path, study: Study) -> None:
    """Write the pairs and the levels as CSV (RFC 4180), lengths in mm.

    Raises
    ------
    ReportError
        If the file cannot be written.
    """
    pairs = [
        [number, first, second, round((first + second) / 2, 6), round(second - first, 6)]
        for number, (first, second) in enumerate(study.pairs, 1)
    ]
    levels = [[*row[:4], *(round(v, 6) for v in row[4:])] for row in study.rows]
    each = [
        [one.name, one.indications, one.results, round(one.repeatability, 6)]
        for one in study.operators
    ]
    table: list[list[Any]] = [
        ["pair", "first_mm", "second_mm", "mean_mm", "difference_mm"],
        *pairs,
        [],
        ["photo", "indication", "operators", "results", "mean_mm", "s_r_mm", "s_R_mm"],
        *levels,
        [],
        ["who", "indications", "results", "s_r_mm"],
        *each,
    ]
    save(path, csv_text(table).encode("utf-8-sig"))


def write_study_pdf(path: Path, study: Study, *, paper: str = "A4") -> None:
    """Write the study as PDF, the same bytes for the same study.

    Raises
    ------
    ReportError
        If the file cannot be written.
    """
    register_fonts()
    out = io.BytesIO()
    size = LETTER if paper == "Letter" else A4
    page = SimpleDocTemplate(
        out,
        pagesize=size,
        leftMargin=15 * mm,
        rightMargin=15 * mm,
        topMargin=15 * mm,
        bottomMargin=15 * mm,
        invariant=1,
        title="Agreement of length measurements",
        lang="en",
        initialFontName=PLAIN,
    )
    width = size[0] - 30 * mm
    page.build([*_agreement(study), *_precision(study, width), *_each(study, width), *_basis()])
    save(path, archival(out.getvalue()))


def _agreement(study: Study) -> list[Flowable]:
    made: list[Flowable] = [
        text("Agreement of length measurements", 17, bold=True),
        Spacer(1, 4),
        text(f"{study.records} records, {len(study.pairs)} indications measured twice."),
        *heading("Differences against means"),
    ]
    found = study.agreement
    if found is None:
        return [*made, text("Fewer than two indications were measured twice.")]
    said = (
        f"The second measurement reads {found.mean:+.3f} mm against the first on average, "
        f"with a standard deviation of {found.sd:.3f} mm. Of 100 such differences about 95 lie "
        f"between {found.lower:+.3f} and {found.upper:+.3f} mm (limits of agreement)."
    )
    other = (
        f"Beyond their own uncertainties (En above 1): {study.en_above_1} of "
        f"{len(study.pairs)}. Found by one of the two only: {study.missed}."
    )
    return [*made, text(said), text(other), Spacer(1, 6), _plot(study, found)]


def _plot(study: Study, found: Agreement) -> Drawing:
    points = [((a + b) / 2, b - a) for a, b in study.pairs]
    low_x, high_x = _range([x for x, _ in points])
    low_y, high_y = _range([*(y for _, y in points), found.lower, found.upper, 0.0])

    def x(value: float) -> float:
        return _LEFT + (value - low_x) / (high_x - low_x) * (_WIDE - _LEFT - 90)

    def y(value: float) -> float:
        return _FOOT + (value - low_y) / (high_y - low_y) * (_HIGH - _FOOT - 10)

    made = Drawing(_WIDE, _HIGH)
    for value, name, dash in (
        (found.upper, "mean + 1.96 SD", (4, 3)),
        (found.mean, "mean", ()),
        (found.lower, "mean − 1.96 SD", (4, 3)),
    ):
        line = Line(_LEFT, y(value), _WIDE - 90, y(value), strokeColor=color(DEEP_BLUE))
        if dash:
            line.strokeDashArray = dash
        made.add(line)
        made.add(_word(_WIDE - 86, y(value) - 2.5, f"{name} {value:+.3f}"))
    made.add(Line(_LEFT, _FOOT, _LEFT, _HIGH - 10, strokeColor=color(QUIET)))
    made.add(Line(_LEFT, _FOOT, _WIDE - 90, _FOOT, strokeColor=color(QUIET)))
    for value in (low_x, (low_x + high_x) / 2, high_x):
        made.add(_word(x(value) - 8, _FOOT - 11, f"{value:.2f}"))
    for value in (low_y, 0.0, high_y):
        made.add(_word(6, y(value) - 2.5, f"{value:+.2f}"))
    made.add(_word(_LEFT + 90, 6, "mean of the two lengths, mm (up: second minus first, mm)"))
    for across, up in points:
        dot = Circle(x(across), y(up), 2.2, fillColor=None, strokeColor=color(INK))
        made.add(dot)
    return made


def _word(x: float, y: float, said: str) -> String:
    return String(x, y, said, fontName=PLAIN, fontSize=7, fillColor=color(INK))


def _range(values: list[float]) -> tuple[float, float]:
    low, high = min(values), max(values)
    room = 0.08 * (high - low) or 0.5
    return low - room, high + room


def _precision(study: Study, width: float) -> list[Flowable]:
    made = heading("Repeatability and reproducibility")
    if study.pooled is None:
        said = "No indication was measured by two examiners, one of them twice."
        return [*made, text(said)]
    within, all_ = study.pooled
    made.append(
        text(
            f"The same examiner measuring again: standard deviation {within:.3f} mm; another "
            f"examiner: {all_:.3f} mm, over {len(study.levels)} indications."
        )
    )
    rows: list[list[Any]] = [
        ["Photo", "Indication", "Examiners", "Results", "Mean, mm", "s_r, mm", "s_R, mm"]
    ]
    rows += [[*row[:4], *(f"{value:.3f}" for value in row[4:])] for row in study.rows]
    shares = (0.28, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12)
    return [*made, Spacer(1, 4), grid(rows, [width * share for share in shares])]


def _each(study: Study, width: float) -> list[Flowable]:
    """Examiners, reviewers and the program, each alone."""
    made = heading("Each one measuring again")
    if not study.operators:
        return [*made, text("Nobody measured an indication of one photo twice.")]
    rows: list[list[Any]] = [["Who", "Indications", "Results", "s_r, mm"]]
    rows += [
        [one.name, one.indications, one.results, f"{one.repeatability:.3f}"]
        for one in study.operators
    ]
    said = "The program finds the same outlines in the same photo; what differs is the scale."
    return [
        *made,
        grid(rows, [width * share for share in (0.55, 0.15, 0.15, 0.15)]),
        text(said, 7, quiet=True),
    ]


def _basis() -> list[Flowable]:
    said = (
        "Limits of agreement: mean difference ± 1.96 standard deviations. Repeatability s_r "
        "and reproducibility s_R: analysis of variance by ISO 5725-2:1994, 7.4.5, pooled "
        "over the indications. En: ISO/IEC 17043:2010, B.3.1.3. Two measurements in one "
        "photo share some causes of error: good agreement does not show that both are right."
    )
    return [Spacer(1, 8), text(said, 7, quiet=True)]
