"""Bleed-out over time on paper: the plot, every measured point, the cautions."""

import io
from pathlib import Path

from reportlab.lib.pagesizes import A4, LETTER, landscape
from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Image, SimpleDocTemplate, Spacer

from ptmark.report.archival import archival
from ptmark.report.encoding import encoded
from ptmark.report.growth import growth_picture
from ptmark.report.growth_data import growth_json, laid_over
from ptmark.report.pages.style import PLAIN, grid, heading, register_fonts, text
from ptmark.report.table import save
from ptmark.series import Growth

__all__ = ["write_growth_pdf"]

_PAPERS = {"A4": A4, "Letter": LETTER}
_MARGIN = 14 * mm
_COLUMNS = ("", "Photo", "Minutes", "Parts", "Length ± U, mm", "Area ± U, mm²")
_SHARES = (0.08, 0.32, 0.1, 0.14, 0.18, 0.18)


def write_growth_pdf(path: Path, growth: Growth, *, paper: str = "A4") -> None:
    """Write plot and table on pages laid crosswise, the same bytes each time.

    Raises
    ------
    ReportError
        If the file cannot be written.
    KeyError
        If the paper is neither "A4" nor "Letter".
    """
    register_fonts()
    width, height = landscape(_PAPERS[paper])
    room = width - 2 * _MARGIN
    out = io.BytesIO()
    document = SimpleDocTemplate(
        out,
        pagesize=(width, height),
        leftMargin=_MARGIN,
        rightMargin=_MARGIN,
        topMargin=_MARGIN,
        bottomMargin=_MARGIN,
        invariant=1,
        title="Bleed-out over time",
        lang="en",
        initialFontName=PLAIN,
    )
    document.build(_story(growth, room, height - 2 * _MARGIN))
    save(path, archival(out.getvalue()))


def _story(growth: Growth, room: float, high: float) -> list[Flowable]:
    picture, data = growth_picture(growth), growth_json(growth)
    zoom = min(room / picture.shape[1], 0.97 * high / picture.shape[0])
    size = (picture.shape[1] * zoom, picture.shape[0] * zoom)
    story: list[Flowable] = [
        Image(io.BytesIO(encoded(picture, ".png")), width=size[0], height=size[1])
    ]
    story += heading("Measured points")
    rows = [
        (
            curve["id"],
            one["file"],
            f"{one['minutes']:g}",
            "+".join(one["parts"]),
            f"{'≥ ' * one['is_least']}{one['length_mm']:.2f} ± {one['length_u_mm']:.2f}",
            f"{'≥ ' * one['is_least']}{one['area_mm2']:.2f} ± {one['area_u_mm2']:.2f}",
        )
        for curve in data["indications"]
        for one in curve["readings"]
    ]
    story.append(grid([_COLUMNS, *rows], [share * room for share in _SHARES]))
    missing = [
        f"{curve['id']}: no point in {gap['file']}: {gap['reason']}."
        for curve in data["indications"]
        for gap in curve["missing"]
    ]
    told = [f"{one['file']} is left out: {one['reason']}." for one in data["left_out"]]
    for said in (*missing, *told, *_registrations(growth), *data["cautions"]):
        story += [Spacer(1, 3), text(said)]
    return story


def _registrations(growth: Growth) -> list[str]:
    return [
        f"{frame.name} over {growth.frames[growth.base].name}: {laid_over(lead)} "
        f"{lead.card}".rstrip()
        for frame, lead in zip(growth.frames, growth.to_base, strict=True)
        if lead is not None
    ]
