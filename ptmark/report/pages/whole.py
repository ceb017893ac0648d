"""The PDF report: the record on paper, the same bytes for the same record."""

import io
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from threading import Lock

import numpy as np
import numpy.typing as npt
from reportlab import rl_config
from reportlab.lib.pagesizes import A4, LETTER
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import BaseDocTemplate, Frame, PageTemplate

from ptmark.errors import ReportError
from ptmark.photo import Photo
from ptmark.record import Record, record_text, refuse_original, revision_hash
from ptmark.report.archival import Attached, archival
from ptmark.report.company import company
from ptmark.report.pages.front import front
from ptmark.report.pages.rest import rest
from ptmark.report.pages.set import set_pages
from ptmark.report.pages.story import Earlier
from ptmark.report.pages.style import PLAIN, color, register_fonts
from ptmark.report.palette import QUIET
from ptmark.report.table import save

__all__ = ["report_pdf", "write_pdf"]

PAPERS = {"A4": A4, "Letter": LETTER}
_MARGIN = 15 * mm
_FOOT = 12 * mm
_LOCK = Lock()
_COUNT = "page-count"


def write_pdf(
    path: Path,
    record: Record,
    rgb: npt.NDArray[np.uint8],
    original: Path | None,
    *,
    paper: str = "A4",
    earlier: Sequence[Earlier] = (),
    more: Iterable[Photo] = (),
) -> None:
    """Write the report as PDF, as `report_pdf` makes it.

    Raises
    ------
    ReportError
        As `report_pdf` does, or if the file cannot be written.
    RecordError
        If one of the record's photos lies there.
    """
    refuse_original(path, record)
    made = report_pdf(record, rgb, original, paper=paper, earlier=earlier, more=more)
    save(path, made)


def report_pdf(
    record: Record,
    rgb: npt.NDArray[np.uint8],
    original: Path | None,
    *,
    paper: str = "A4",
    earlier: Sequence[Earlier] = (),
    more: Iterable[Photo] = (),
) -> bytes:
    """The report as PDF/A-3b with the record's own file in it, the same bytes each time.

    The firm's name and logo stand at its head where the user's settings give them.

    Parameters
    ----------
    record : Record
    rgb : ndarray of shape (H, W, 3), uint8
        The upright photo; not written to.
    original : Path or None
        The photo's file. A JPEG goes into the PDF byte for byte, turned by the page's matrix
        where EXIF says so; anything else, and None, as lossless pixels of ``rgb``.
    paper : str
        "A4" or "Letter".
    earlier : sequence of Earlier
        The tests before the rework, oldest first.
    more : iterable of Photo
        The record's further photos, in its order; one at a time is held.

    Raises
    ------
    ReportError
        If the picture or the file is not that of the record, or the paper is unknown.
    """
    if paper not in PAPERS:
        raise ReportError(
            f"'{paper}' is not a paper size", where="paper", mend="choose A4 or Letter"
        )
    register_fonts()
    photos = [view.photo["sha256"] for view in record.views()]
    width, height = PAPERS[paper]
    room = (width - 2 * _MARGIN, height - 2 * _MARGIN - _FOOT)
    out = io.BytesIO()
    with _binary_streams():
        document = BaseDocTemplate(
            out,
            pagesize=(width, height),
            invariant=1,
            pageCompression=1,
            title=f"Penetrant inspection report, record {record.id}",
            subject=", ".join(f"photo SHA-256 {one}" for one in photos),
            creator=record.software,
            author=record.fields.get("examiner", ""),
            lang="en",
            initialFontName=PLAIN,  # so that no page names a font that is not embedded
        )
        frame = Frame(_MARGIN, _MARGIN + _FOOT, *room, 0, 0, 0, 0)
        foot = _footer(record, width)
        document.addPageTemplates(PageTemplate(frames=[frame], onPage=foot))
        if record.more_photos:
            flow = set_pages(record, (rgb, original), more, room, company(), earlier)
        else:
            flow = [*front(record, rgb, room, company())]
            flow += rest(record, rgb, original, room, earlier)
        document.build(flow, canvasmaker=_Counted)
    made = (record.change or {}).get("at") or record.created
    return archival(out.getvalue(), created=made, attached=_own_file(record))


def _own_file(record: Record) -> Attached:
    """The record as its own file holds it, for whoever has only the report in hand."""
    return Attached(
        name="record.json",
        data=record_text(record).encode("utf-8"),
        kind="application/json",
        says=f"The record that this report shows, revision {record.revision}",
    )


@contextmanager
def _binary_streams() -> Iterator[None]:
    """Keep pictures as their own bytes; by default they would be spelt out in letters."""
    with _LOCK:
        before = rl_config.useA85
        rl_config.useA85 = 0
        try:
            yield
        finally:
            rl_config.useA85 = before


class _Counted(Canvas):
    """A canvas that fills in the number of pages, left open on each, when it is done."""

    def save(self) -> None:
        count = self.getPageNumber() - 1  # the page that would come next is counted already
        self.beginForm(_COUNT)
        self.setFont(PLAIN, 8)
        self.setFillColor(color(QUIET))
        self.drawString(0, 0, str(count))
        self.endForm()
        super().save()


def _footer(record: Record, width: float) -> Callable[[Canvas, BaseDocTemplate], None]:
    """What draws the foot of each page: record, photo and page number."""
    lines = (
        f"Record {record.id}, revision {record.revision} · {record.software}",
        f"Record SHA-256 {revision_hash(record.to_json())}",
        f"Photo SHA-256 {record.photo['sha256']}"
        + (f" and {len(record.more_photos)} more" if record.more_photos else ""),
    )

    def draw(canvas: Canvas, document: BaseDocTemplate) -> None:
        canvas.saveState()
        canvas.setFont(PLAIN, 5.5)
        canvas.setFillColor(color(QUIET))
        canvas.setStrokeColor(color(QUIET))
        canvas.setLineWidth(0.4)
        canvas.line(_MARGIN, _MARGIN + 7.5 * mm, width - _MARGIN, _MARGIN + 7.5 * mm)
        for number, line in enumerate(lines):
            canvas.drawString(_MARGIN, _MARGIN + (4.8 - 2.4 * number) * mm, line)
        canvas.setFont(PLAIN, 8)
        count_at = width - _MARGIN - 6 * mm
        canvas.drawRightString(count_at, _MARGIN + 3 * mm, f"page {document.page} of ")
        canvas.translate(count_at, _MARGIN + 3 * mm)
        canvas.doForm(_COUNT)
        canvas.restoreState()

    return draw
