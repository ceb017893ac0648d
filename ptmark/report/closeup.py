"""Close-ups: each indication large, with its measured outline as a hairline and a scale bar."""

from dataclasses import dataclass
from typing import Any

import cv2
import numpy as np
import numpy.typing as npt
import shapely
from shapely import Polygon

from ptmark.record import Record
from ptmark.report.marks import draw_line, draw_ring, draw_styled, ring_round
from ptmark.report.palette import SHADE, Ink, ink_of
from ptmark.report.surface_scale import local_bar
from ptmark.report.wording import STRICTEST, called, sized

__all__ = ["CloseUp", "close_ups", "overlays"]

Picture = npt.NDArray[np.uint8]
Array = npt.NDArray[np.float64]

_WIDE, _HIGH = 600, 450  # px of one close-up
_AROUND = 0.35  # free room on each side, as a share of the indication
_LEAST_PX = 24.0  # of the photo, shown at least
_THIN = 16.0  # px of the close-up


@dataclass(frozen=True, slots=True)
class CloseUp:
    """One close-up, shape (450, 600, 3), and the line below it."""

    rgb: Picture
    caption: str


def close_ups(record: Record, rgb: Picture, most: int) -> list[CloseUp]:
    """Close-ups of the indications, those that call for action first; at most ``most``.

    ``rgb`` is the upright photo, not written to. Pixels are enlarged as they are, so that what
    the camera saw and what it did not see can be told apart.
    """
    stands = called(record)
    rank = {verdict: number for number, verdict in enumerate(STRICTEST)}
    order = sorted(record.indications, key=lambda one: rank.get(stands[one["id"]], len(rank)))
    made = []
    for one in order[:most]:
        outline = np.array(one["outline_px"], dtype=float)
        corner, zoom = _view(outline)
        picture = _enlarged(rgb, corner, zoom)
        _draw_outline(picture, (outline - corner + 0.5) * zoom - 0.5, ink_of(stands[one["id"]]))
        size = sized(one, "length")
        caption = f"{one['id']}: {size}, {stands[one['id']] or 'not judged'}"
        bar = local_bar(record, outline.mean(axis=0), 0.3 * _WIDE / zoom)
        if bar is not None:
            _draw_bar(picture, bar[1] * zoom)
            caption += f"; bar {bar[0]:g} mm"
        made.append(CloseUp(picture, caption))
    return made


def overlays(record: Record, review: dict[str, Any], rgb: Picture, most: int) -> list[CloseUp]:
    """The examiner's outline (solid) and the reviewer's (dashed) of each pair, worst first.

    None where the reviewer measured another photo than the record's.
    """
    if review["photo"] != record.photo["sha256"]:
        return []
    own = {one["id"]: np.array(one["outline_px"], dtype=float) for one in record.indications}
    known = [pair for pair in review["pairs"] if pair["first"] in own]
    made = []
    for pair in sorted(known, key=lambda one: float(one["iou"]))[:most]:
        both = own[pair["first"]], np.array(pair["outline_px"], dtype=float)
        corner, zoom = _view(np.concatenate(both))
        picture = _enlarged(rgb, corner, zoom)
        styles = (("rejectable", "solid"), ("", "dashed"))
        for outline, (stands, style) in zip(both, styles, strict=True):
            points = (outline - corner + 0.5) * zoom - 0.5
            ring = np.concatenate([points, points[:1]])
            draw_styled(picture, ring, ink_of(stands), 1.6, style)
        caption = f"{pair['first']} solid, reviewer's {pair['second']} dashed; "
        made.append(CloseUp(picture, f"{caption}overlap {100 * pair['iou']:.0f} %"))
    return made


def _view(outline: Array) -> tuple[Array, float]:
    """Top-left pixel of what is shown, and the enlargement."""
    low, high = outline.min(axis=0), outline.max(axis=0)
    room = np.maximum((high - low) * (1 + 2 * _AROUND), _LEAST_PX)
    zoom = float(min(_WIDE / room[0], _HIGH / room[1]))
    zoom = float(np.floor(zoom)) if zoom > 1 else zoom
    corner = np.floor((low + high) / 2 - np.array([_WIDE, _HIGH]) / zoom / 2)
    return corner, zoom


def _enlarged(rgb: Picture, corner: Array, zoom: float) -> Picture:
    """The part of the photo that starts at a pixel, enlarged; what lies outside is plain."""
    move = np.array(
        [[zoom, 0, zoom * (0.5 - corner[0]) - 0.5], [0, zoom, zoom * (0.5 - corner[1]) - 0.5]]
    )
    (x0, y0) = np.maximum(corner.astype(int) - 1, 0)
    span = np.ceil(np.array([_WIDE, _HIGH]) / zoom).astype(int) + 3
    part = rgb[y0 : max(y0 + span[1], 0), x0 : max(x0 + span[0], 0)]
    if part.size == 0:
        return np.full((_HIGH, _WIDE, 3), SHADE, np.uint8)
    move[:, 2] += zoom * np.array([x0, y0])
    how = cv2.INTER_NEAREST if zoom >= 1 else cv2.INTER_AREA
    shown = cv2.warpAffine(
        np.ascontiguousarray(part), move, (_WIDE, _HIGH), flags=how, borderValue=SHADE
    )
    return np.asarray(shown, np.uint8)


def _draw_outline(picture: Picture, points: Array, ink: Ink) -> None:
    """The outline as a hairline; round the outside where it would hide a thin indication."""
    shape = shapely.make_valid(Polygon(points))
    thickness = 2 * shape.area / max(shape.length, 1e-9)
    if thickness < _THIN:
        draw_ring(picture, ring_round(points, 5.0), ink, 1.6, "solid")
    else:
        draw_line(picture, [np.concatenate([points, points[:1]])], ink, 1.6)


def _draw_bar(picture: Picture, length: float) -> None:
    """A bar in the lower left corner, in the marks' own colours."""
    ink = ink_of("")
    y, x = _HIGH - 14.0, 14.0
    draw_line(picture, [np.array([[x, y], [x + length, y]])], ink, 5.0)
