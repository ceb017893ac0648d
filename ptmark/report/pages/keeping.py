"""What became of the record: revisions, signatures, reviews; lines to sign on paper."""

from collections.abc import Sequence
from math import hypot
from typing import Any

import numpy as np
import numpy.typing as npt
from reportlab.lib.units import mm
from reportlab.platypus import Flowable, KeepTogether, Spacer

from ptmark.record import Record, fingerprint, path_label, revisions
from ptmark.report.closeup import CloseUp, overlays
from ptmark.report.pages.photo import jpeg_picture
from ptmark.report.pages.style import grid, heading, text
from ptmark.report.wording import EMPTY, measured

__all__ = ["Overlays", "keeping", "review_overlays"]

Pixels = npt.NDArray[np.uint8]
Overlays = Sequence[Sequence[CloseUp]]

_MOST = 12  # changed fields named
_OVERLAYS = 3


def keeping(record: Record, shown: Overlays, width: float) -> list[Flowable]:
    """The flowables; ``width`` is the page's free width in points."""
    return [
        *_revisions(record, width),
        *(
            part
            for one, over in zip(record.reviews, shown, strict=True)
            for part in _review(record, over, one, width)
        ),
        *_signatures(record, width),
    ]


def review_overlays(record: Record, rgb: Pixels) -> Overlays:
    """Both outlines of the worst pairs of each review of this photo; none for another's."""
    return [overlays(record, one, rgb, _OVERLAYS) for one in record.reviews]


def _revisions(record: Record, width: float) -> list[Flowable]:
    if not record.history:
        return []
    rows: list[list[Any]] = [["Revision", "At", "By", "Why", "Changed", "Signed by"]]
    for one in revisions(record):
        change = one.get("change") or {
            "at": record.created,
            "by": EMPTY,
            "why": EMPTY,
            "what": [],
        }
        what = ", ".join(map(path_label, change["what"][:_MOST])) or EMPTY
        more = len(change["what"]) - _MOST
        what += f" and {more} more" if more > 0 else ""
        signed = ", ".join(s["name"] for s in one.get("signatures", ())) or EMPTY
        row = [
            one["revision"],
            _minute(change["at"]),
            change["by"],
            change["why"],
            what,
            signed,
        ]
        rows.append(row)
    shares = (0.09, 0.16, 0.14, 0.19, 0.27, 0.15)
    return [*heading("Revisions"), grid(rows, [width * s for s in shares], size=7)]


def _review(
    record: Record, shown: Sequence[CloseUp], one: dict[str, Any], width: float
) -> list[Flowable]:
    place = "in the same photo" if one["frame"] == "px" else "in a photo of their own"
    photos = [view.photo["sha256"] for view in record.views()]
    if len(photos) > 1 and one["photo"] in photos:
        place = f"in photo {photos.index(one['photo']) + 1}"
    verdicts = " against ".join(verdict or "no verdict" for verdict in one["verdicts"])
    made = [
        *heading(f"Review by {one['reviewer']}, {one['time'][:10]}: {one['outcome']}"),
        text(
            f"Measured blind {place}, scale from {one['scale']}; the examiner's verdict "
            f"against the reviewer's: {verdicts}. En up to 1: the two agree within "
            "their uncertainties (ISO/IEC 17043)."
        ),
    ]
    if _by_the_examiner(record, one["reviewer"]):
        made.append(text(_SAME_NAME, bold=True))
    rows: list[list[Any]] = [
        [
            "Examiner",
            "Reviewer",
            "Overlap",
            "Lengths ± U, mm",
            "Difference",
            "En",
            "Widths ± U, mm",
            "En",
        ]
    ]
    for pair in one["pairs"]:
        length, wide = _two(pair["length_mm"]), _two(pair["width_mm"])
        head = [pair["first"], pair["second"], f"{100 * pair['iou']:.0f} %"]
        rows.append([*head, *length, wide[0], wide[2]])
    rows += [[name, "not found", *[EMPTY] * 6] for name in one["only_first"]]
    rows += [["not found", other["id"], *[EMPTY] * 6] for other in one["only_second"]]
    shares = (0.11, 0.11, 0.1, 0.18, 0.17, 0.08, 0.17, 0.08)
    if len(rows) > 1:
        made += [Spacer(1, 3), grid(rows, [width * s for s in shares], size=7.5)]
    if shown:
        each = (width / 3 - 6, width / 4)
        cells: list[Any] = [[jpeg_picture(o.rgb, each), text(o.caption, 7)] for o in shown]
        row = [*cells, *[""] * 3][:3]
        made += [Spacer(1, 3), grid([row], [width / 3] * 3, head=0)]
    for remark in one["remarks"]:
        at = remark["at_px"]
        where = "" if at is None else f" (at {at[0]:.0f}, {at[1]:.0f} px)"
        made.append(text(f"• {remark['text']}{where}"))
    return made


_SAME_NAME = (
    "Examiner and reviewer bear one name: this is no review by a second person, unless two "
    "people have it."
)


def _by_the_examiner(record: Record, reviewer: str) -> bool:
    signed = [one for told in revisions(record) for one in told.get("signatures", ())]
    names = {one["name"] for one in signed if one["role"] == "examiner"}
    return _same(reviewer) in map(_same, {*names, record.fields.get("examiner", "")})


def _same(name: str) -> str:
    return " ".join(name.split()).casefold()


def _minute(stamp: str) -> str:
    """A time stamp to the minute, as people write it."""
    return f"{stamp[:10]} {stamp[11:16]} UTC"


def _two(two: dict[str, Any] | None) -> list[str]:
    """The examiner's value over the reviewer's, their difference and En."""
    if two is None:
        return [EMPTY] * 3
    en = EMPTY if two["en"] is None else f"{two['en']:.2f}"
    first, second = (measured(two[name], two[f"{name}_u"], "") for name in ("first", "second"))
    u = hypot(two["first_u"], two["second_u"])  # what En is the share of
    return [f"{first}\n{second}", f"{two['difference']:+.2f} ± {u:.2f}", en]


def _signatures(record: Record, width: float) -> list[Flowable]:
    blank = Spacer(1, 11 * mm)
    rows: list[list[Any]] = [["", "Name and certificate", "Date", "Signature"]]
    done = set()
    for revision in revisions(record):
        newest = revision["revision"] == record.revision
        of = "" if newest else f", of revision {revision['revision']}"
        for one in revision.get("signatures", ()):
            if newest:
                done.add(one["role"])
            who = ", ".join(part for part in (one["name"], one["qualification"]) if part)
            key = f"Ed25519, key {fingerprint(one['key'])}"
            rows.append([f"{one['role'].capitalize()}{of}", who, _minute(one["time"]), key])
    for who in ("Examiner", "Reviewer", "Customer or inspection body"):
        if who.lower() not in done:
            rows.append([who, blank, "", ""])
    shares = (0.2, 0.35, 0.15, 0.3)
    return [KeepTogether([*heading("Signatures"), grid(rows, [width * s for s in shares])])]
