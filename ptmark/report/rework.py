"""Before and after rework: both photos side by side with their marks, and the lists below."""

from collections.abc import Sequence
from typing import Any

import cv2
import numpy as np
import numpy.typing as npt
import shapely

from ptmark.measure import Quantity
from ptmark.report.growth_data import laid_over, registration_json
from ptmark.report.labels import place_labels
from ptmark.report.lettering import Band, plate_picture
from ptmark.report.marks import (
    draw_line,
    draw_ring,
    draw_styled,
    halo_width,
    ring_round,
    uncover,
)
from ptmark.report.palette import CYAN, DEEP_BLUE, NAVY, PALE, QUIET, SHADE, Ink
from ptmark.report.wording import AID
from ptmark.series import GONE, KINDS, Change, Frame, Registration

__all__ = ["change_words", "rework_json", "rework_picture"]

Picture = npt.NDArray[np.uint8]
Array = npt.NDArray[np.float64]

COMPARED = (
    "Gone means that the photo after shows nothing that was called: it does not prove the "
    f"repair. {GONE} Bleed-out grows with time: compare photos taken at the same time since "
    "the developer."
)
_EACH, _UNIT, _GAP = 1400, 26.0, 24
_ACT, _REST = Ink(DEEP_BLUE, PALE), Ink(CYAN, NAVY)
_INKS = {"new": _ACT, "grown": _ACT, "unclear": _ACT, "stayed": _REST, "gone": _REST}
_STYLES = {
    "new": "solid",
    "grown": "long",
    "stayed": "dashed",
    "unclear": "dotted",
    "gone": "dash and dot",
}
_SIGNS = {"new": "+", "grown": "↑", "stayed": "=", "unclear": "?", "gone": "×"}  # by the letter
_TITLES = {
    "new": "New",
    "grown": "Grown",
    "stayed": "Stayed",
    "unclear": "Unclear",
    "gone": "Gone",
}


def rework_json(
    changes: Sequence[Change], before: Frame, after: Frame, lead: Registration
) -> dict[str, Any]:
    """The comparison as JSON-ready data; lengths in mm, ``…_u_…`` expanded, k = 2."""
    return {
        "before": {"file": before.name, "minutes": before.minutes},
        "after": {"file": after.name, "minutes": after.minutes},
        "registration": registration_json(lead, before, after),
        **{kind: [_json(one) for one in changes if one.kind == kind] for kind in KINDS},
        "cautions": [*lead.cautions, COMPARED, *AID],
    }


def _json(one: Change) -> dict[str, Any]:
    def rounded(value: float | None) -> float | None:
        return None if value is None else round(value, 4)

    was, now = one.length_before, one.length_after
    return {
        "before": list(one.before),
        "after": list(one.after),
        "length_before_mm": None if was is None else round(was.value, 4),
        "length_before_u_mm": None if was is None else round(was.expanded, 4),
        "length_before_is_least": one.least_before,
        "length_after_mm": None if now is None else round(now.value, 4),
        "length_after_u_mm": None if now is None else round(now.expanded, 4),
        "length_after_is_least": one.least_after,
        "difference_mm": rounded(one.difference_mm),
        "difference_u_mm": rounded(one.difference_u_mm),
        "ratio": rounded(one.ratio),
        "says": one.says,
    }


def rework_picture(
    changes: Sequence[Change],
    before: tuple[Frame, Picture],
    after: tuple[Frame, Picture],
    lead: Registration,
) -> Picture:
    """Both photos, marked, with the lists; shape (H, W, 3).

    Parameters
    ----------
    changes : sequence of Change
    before, after : (Frame, ndarray of shape (H, W, 3), uint8)
        The frames that were compared with their upright photos, which are not written to.
    lead : Registration
        From the photo before to the one after.
    """
    left = _marked(before, [(one.before, one) for one in changes])
    right = _marked(after, [(one.after, one) for one in changes])
    high = max(left.shape[0], right.shape[0])
    wide = left.shape[1] + _GAP + right.shape[1]
    both = np.empty((high, wide, 3), np.uint8)
    both[:] = SHADE
    both[: left.shape[0], : left.shape[1]] = left
    both[: right.shape[0], left.shape[1] + _GAP :] = right
    head = _head(wide, left.shape[1] + _GAP, before[0], after[0])
    return np.concatenate([head, both, _lists(changes, wide, lead)])


def _marked(
    shown: tuple[Frame, Picture], wanted: Sequence[tuple[tuple[str, ...], Change]]
) -> Picture:
    frame, rgb = shown
    zoom = min(1.0, _EACH / max(rgb.shape[1], 1))
    size = (max(1, round(rgb.shape[1] * zoom)), max(1, round(rgb.shape[0] * zoom)))
    photo = np.asarray(cv2.resize(rgb, size, interpolation=cv2.INTER_AREA), np.uint8)
    picture, width = photo.copy(), 0.11 * _UNIT
    reach = width / 2 + halo_width(width)
    kinds = {letter: one.kind for letters, one in wanted for letter in letters}
    seen = [one for one in frame.seen if one.id in kinds]
    outlines = [(one.outline_px + 0.5) * zoom - 0.5 for one in seen]
    rings = [ring_round(points, 0.12 * _UNIT + reach) for points in outlines]
    plates_say = [f"{one.id} {_SIGNS[kinds[one.id]]}" for one in seen]
    plates = [
        plate_picture(words, 0.95 * _UNIT, _INKS[kinds[one.id]].halo, _INKS[kinds[one.id]].line)
        for one, words in zip(seen, plates_say, strict=True)
    ]
    labels = place_labels(
        [shapely.make_valid(ring.buffer(reach, quad_segs=4)) for ring in rings],
        [one.id for one in seen],
        [(float(p.shape[1]), float(p.shape[0])) for p in plates],
        (0.0, 0.0, size[0] - 1.0, size[1] - 1.0),
        gap=0.25 * _UNIT,
    )
    for one, label, ring in zip(seen, labels, rings, strict=True):
        ink, kind = _INKS[kinds[one.id]], kinds[one.id]
        draw_line(picture, [np.array(label.leader)], ink, 0.5 * width)
        draw_ring(picture, ring, ink, width, _STYLES[kind])
    uncover(picture, photo, outlines)
    for label, plate in zip(labels, plates, strict=True):
        x, y = round(label.plate[0]), round(label.plate[1])
        there = picture[y : y + plate.shape[0], x : x + plate.shape[1]]
        there[:] = plate[: there.shape[0], : there.shape[1]]
    return picture


def _head(wide: int, second: int, before: Frame, after: Frame) -> Picture:
    band = Band(wide, _UNIT, NAVY)
    band.skip(0.6)
    for x, word, frame in ((0.0, "Before", before), (float(second), "After", after)):
        time = "" if frame.minutes is None else f", {frame.minutes:g} min after the developer"
        band.put(
            band.pad + x, band.y, f"{word}: {frame.name}{time}", size=1.2, bold=True, color=PALE
        )
    band.skip(2.2)
    return band.picture()


def _lists(changes: Sequence[Change], wide: int, lead: Registration) -> Picture:
    """The lists, each under its sign and a piece of its ring: the legend of the photos."""
    band, rings = Band(wide, _UNIT), []
    band.skip(0.6)
    for kind in KINDS:
        members = [one for one in changes if one.kind == kind]
        rings.append((kind, band.y + 0.7 * _UNIT))
        ring = {"long": "in long dashes"}.get(_STYLES[kind], _STYLES[kind])
        head = f"{_SIGNS[kind]}  {_TITLES[kind]} ({len(members)}), ring {ring}"
        band.paragraph(head, x=band.pad + 4.5 * _UNIT, size=1.1, bold=True)
        for one in members:
            band.paragraph(change_words(one), x=band.pad + _UNIT, size=0.95)
        band.skip(0.3)
    band.paragraph(f"{laid_over(lead)} {lead.card}".strip(), size=0.9)
    for text in (*lead.cautions, COMPARED, *AID):
        band.paragraph(text, size=0.85, color=QUIET)
    band.skip(0.5)
    picture = band.picture()
    for kind, y in rings:
        line = np.array([[band.pad, y], [band.pad + 3.6 * _UNIT, y]])
        draw_styled(picture, line, _INKS[kind], 0.11 * _UNIT, _STYLES[kind])
    return picture


def change_words(one: Change) -> str:
    """A change in one sentence: letters and lengths before and after, and what is to say."""
    was, now = "+".join(one.before), "+".join(one.after)
    sizes = " → ".join(
        f"{name}: {'≥ ' * least}{_size(length)}"
        for name, length, least in (
            (was, one.length_before, one.least_before),
            (now, one.length_after, one.least_after),
        )
        if length is not None
    )
    if one.difference_mm is not None and one.difference_u_mm is not None:
        sizes += f", difference {one.difference_mm:+.2f} ± {one.difference_u_mm:.2f} mm"
    return f"{sizes}; {one.says}."


def _size(length: Quantity) -> str:
    return f"{length.value:.2f} ± {length.expanded:.2f} mm"
