"""The PDF of several photos: a page for each, what joins them, then each in detail."""

import io
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt
from reportlab.platypus import Flowable, Image, KeepTogether, PageBreak, Spacer

from ptmark.errors import PtmarkError, ReportError
from ptmark.photo import Photo
from ptmark.record import Record
from ptmark.report.company import Company
from ptmark.report.encoding import encoded
from ptmark.report.pages.basis import basis
from ptmark.report.pages.front import front, photo_page
from ptmark.report.pages.keeping import keeping, review_overlays
from ptmark.report.pages.rest import cautions, filled_in, measured_pages, unmarked
from ptmark.report.pages.story import Earlier, story
from ptmark.report.pages.style import grid, heading, text
from ptmark.report.set_growth import bleedout, times_of
from ptmark.report.set_words import photo_title
from ptmark.report.wording import EMPTY, VERDICT_SIGN, scale_line, sized

__all__ = ["set_pages"]

Pixels = npt.NDArray[np.uint8]


def set_pages(
    record: Record,
    first: tuple[Pixels, Path | None],
    more: Iterable[Photo],
    room: tuple[float, float],
    firm: Company | None,
    earlier: Sequence[Earlier] = (),
) -> list[Flowable]:
    """All flowables of a record of several photos.

    Parameters
    ----------
    record : Record
    first : (ndarray of shape (H, W, 3), Path or None)
        The first photo's upright pixels and its file.
    more : iterable of Photo
        The others, in the record's order; one at a time is held.
    room : (float, float)
        The page's free width and height in points.
    firm : Company or None
    earlier : sequence of Earlier
        As `report_pdf` takes it.

    Raises
    ------
    ReportError
        If a photo is missing or not the record's.
    """
    width, views = room[0], record.views()
    pages = [*front(record, first[0], room, firm)]
    detail, last, over = [], [], [list(one) for one in review_overlays(views[0], first[0])]
    for number, (rgb, path) in enumerate(_all(views, first, more)):
        view = views[number]
        if number:
            pages += [PageBreak(), *photo_page(record, number, rgb, room)]
            found = review_overlays(view, rgb)
            over = [[*a, *b] for a, b in zip(over, found, strict=True)]
        title = [text(photo_title(record, number), 12, bold=True)]
        detail += [PageBreak(), *title, *measured_pages(view, rgb, width), *basis(view, width)]
        last += [PageBreak(), *unmarked(view, rgb, path, room)]
    return [
        *pages,
        PageBreak(),
        *_by_photo(views, width),
        *_seen_again(record, width),
        *_grown(record, width),
        *cautions(record),
        *detail,
        PageBreak(),
        *filled_in(record, width),
        *keeping(record, over, width),
        *story(record, first[0], earlier, room),
        *last,
    ]


def _all(
    views: Sequence[Record], first: tuple[Pixels, Path | None], more: Iterable[Photo]
) -> Iterator[tuple[Pixels, Path | None]]:
    """Each photo's pixels and file; ReportError where they are not the record's."""
    yield first
    others = iter(more)
    for view in views[1:]:
        photo = next(others, None)
        if photo is None or photo.info.sha256 != view.photo["sha256"]:
            raise ReportError(
                "is not among the photos given for the report",
                where=view.photo["file"],
                mend="give every photo of the record, in its order",
            )
        yield photo.rgb, photo.info.path


def _by_photo(views: Sequence[Record], width: float) -> list[Flowable]:
    rows: list[list[Any]] = [["", "Photo", "Taken", "Scale", "Indications", "Verdict"]]
    for number, view in enumerate(views, 1):
        letters = ", ".join(one["id"] for one in view.indications) or "none"
        verdict = view.verdict or "not judged"
        sign = VERDICT_SIGN.get(verdict, "")
        taken = str((view.photo.get("camera") or {}).get("taken") or EMPTY)
        rows.append(
            [
                str(number),
                view.photo["file"],
                taken.replace("T", " "),
                scale_line(view),
                letters,
                f"{sign} {verdict}".strip(),
            ]
        )
    shares = (0.05, 0.22, 0.14, 0.27, 0.15, 0.17)
    return [
        *heading("The photos of this inspection", top=0),
        grid(rows, [width * s for s in shares], size=7.5),
    ]


def _seen_again(record: Record, width: float) -> list[Flowable]:
    """The indications that several photos show, with every size and how well they agree."""
    seen = (record.together or {"seen_again": ()})["seen_again"]
    if not seen:
        return []
    shown = record.rows()
    rows: list[list[Any]] = [["", "Photo", "Length ± U, mm", "Width ± U, mm", "En", "Size"]]
    for one in seen:
        how = _why_of_record(record, one)
        for size in one["sizes"]:
            held = size["photo"] == one["of_record"]
            rows.append(
                [
                    one["id"],
                    str(size["photo"]),
                    sized(shown[size["photo"], one["id"]], "length", named=False),
                    sized(shown[size["photo"], one["id"]], "width", named=False),
                    EMPTY if size["en"] is None else f"{size['en']:.2f}",
                    f"of record, {how}" if held else "",
                ]
            )
    shares = (0.07, 0.09, 0.22, 0.22, 0.1, 0.3)
    said = (
        "One indication, one letter. Every photo is judged with the size of record; places, "
        "gaps and rows are each photo's own. En up to 1: the lengths agree within their "
        "uncertainties (ISO/IEC 17043)."
    )
    return [
        *heading("Seen in several photos"),
        grid(rows, [width * s for s in shares], size=8),
        Spacer(1, 2),
        text(said, 7, quiet=True),
    ]


def _why_of_record(record: Record, one: Mapping[str, Any]) -> str:
    """Why the size of one photo counts, of those that show an indication."""
    if one["chosen"]:
        return "chosen by the inspector"
    with suppress(PtmarkError):
        times = times_of(record)
        held = one["of_record"]
        if times.is_series and held is not None:
            due = times.choice.index == held - 1
            rest = "as the photo to be evaluated shows less, or not all of it"
            return "in the photo to be evaluated" if due else rest
    apart = any((size["en"] or 0) > 1 for size in one["sizes"])
    return "longest, as they do not agree" if apart else "least uncertain"


def _grown(record: Record, width: float) -> list[Flowable]:
    """Bleed-out over the photos' times; a line says why where it cannot be plotted."""
    if not (record.together or {"seen_again": ()})["seen_again"]:
        return []
    made = bleedout(record)
    if made.picture is None:
        return [Spacer(1, 3), text(made.says, 7, quiet=True)]
    high, wide = made.picture.shape[:2]
    image = Image(io.BytesIO(encoded(made.picture, ".png")), width, width * high / wide)
    said = text(made.says, 7, quiet=True)
    return [KeepTogether([*heading("Bleed-out over time"), image, said])]
