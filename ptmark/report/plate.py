"""The photo with its marks: outlines, letters with leaders, examined area, scale bar.

Drawn on a copy in a frame a little larger than the photo, so that letters find room beside
it; no mark covers a pixel of any indication, and the photo given is never written to.
"""

from dataclasses import dataclass, replace

import cv2
import numpy as np
import numpy.typing as npt
import shapely
from shapely.geometry.base import BaseGeometry

from ptmark.errors import ReportError
from ptmark.record import Record
from ptmark.report.foot import foot_band
from ptmark.report.labels import Label, place_labels
from ptmark.report.lettering import plate_picture
from ptmark.report.marks import (
    draw_line,
    draw_ring,
    draw_styled,
    halo_width,
    ring_round,
    uncover,
)
from ptmark.report.palette import CYAN, NAVY, SHADE, Ink, ink_of
from ptmark.report.surface_scale import ScaleBar, photo_px, scale_bar
from ptmark.report.verdict_words import verdict_line
from ptmark.report.wording import VERDICT_SIGN, called, deciding

__all__ = ["Plate", "draw_plate", "frame_size"]

Picture = npt.NDArray[np.uint8]
Array = npt.NDArray[np.float64]

LEAST_PX = 1000  # a smaller photo is shown enlarged, pixel by pixel, so that text finds room
MOST_PX = 6000  # a larger one is shown reduced; the report keeps the original beside it


@dataclass(frozen=True, slots=True)
class Plate:
    """The marked photo, shape (H, W, 3), and the geometry on it, px of that picture.

    ``offset`` and ``zoom`` lead from the photo to it: ``x_plate = offset + zoom * x_photo``
    (pixel centres; see `_fitted`). ``unit`` is the size of ordinary text.
    """

    rgb: Picture
    offset: tuple[float, float]
    zoom: float
    unit: float
    labels: list[Label]
    rings: list[BaseGeometry]


def _fitted(rgb: Picture) -> tuple[Picture, float]:
    """The photo at the size it is shown at, and the zoom that led there.

    Enlarging repeats pixels by a whole number; reducing averages. Neither is written back.
    """
    if rgb.ndim != 3 or rgb.shape[2] != 3 or rgb.dtype != np.uint8 or 0 in rgb.shape:
        raise ReportError(
            f"the picture must be uint8 of shape (H, W, 3), got {rgb.dtype} {rgb.shape}"
        )
    longest = max(rgb.shape[:2])
    if longest < LEAST_PX:
        times = -(-LEAST_PX // longest)
        return rgb.repeat(times, axis=0).repeat(times, axis=1), float(times)
    if longest > MOST_PX:
        zoom = MOST_PX / longest
        size = (max(1, round(rgb.shape[1] * zoom)), max(1, round(rgb.shape[0] * zoom)))
        return np.asarray(cv2.resize(rgb, size, interpolation=cv2.INTER_AREA), np.uint8), zoom
    return rgb, 1.0


def draw_plate(
    record: Record, rgb: Picture, *, text_share: float = 1 / 80, key: bool = True
) -> Plate:
    """Draw the record's marks round a copy of its photo.

    Parameters
    ----------
    record : Record
    rgb : ndarray of shape (H, W, 3), uint8
        The upright photo; not written to.
    text_share : float
        Size of text as a share of the plate's width: 1/80 is 20 px where it is shown 1600 wide.
    key : bool
        Whether the line styles are explained below the photo.

    Raises
    ------
    ReportError
        If the picture is not that of the record.
    """
    if rgb.shape[:2] != (record.photo["height"], record.photo["width"]):
        raise ReportError(
            f"the picture is {rgb.shape[1]} × {rgb.shape[0]} px, the record's photo "
            f"{record.photo['width']} × {record.photo['height']} px",
            where=record.photo["file"],
            mend="give the photo that was measured",
        )
    shown, zoom = _fitted(rgb)
    frame = _frame(shown)
    unit = frame.shape[1] * text_share
    left = (frame.shape[1] - shown.shape[1]) // 2
    top = (frame.shape[0] - shown.shape[0]) // 2
    inner = frame[top : top + shown.shape[0], left : left + shown.shape[1]]
    inner[:] = shown
    half = (zoom - 1) / 2  # the centre of the first pixel moves when pixels grow
    offset = np.array([left + half, top + half])
    plate = Plate(frame, (float(offset[0]), float(offset[1])), zoom, unit, [], [])
    outlines = [_to_plate(plate, one["outline_px"]) for one in record.indications]
    bar = scale_bar(record, 0.2 * frame.shape[1] / zoom)
    rings, labels = _mark(record, plate, outlines, bar)
    uncover(inner, shown, [points - (left, top) for points in outlines])
    foot = foot_band(frame.shape[1], unit, bar, zoom, key=key and bool(record.indications))
    return replace(plate, rgb=np.concatenate([frame, foot]), labels=labels, rings=rings)


def frame_size(rgb: Picture) -> tuple[int, int]:
    """Width and height of the frame that `draw_plate` gives a photo, in proportion."""
    return _frame_size(rgb.shape[1], rgb.shape[0])


def _frame_size(width: int, height: int) -> tuple[int, int]:
    """Room for letters all round; never narrower than text needs."""
    margin = round(0.03 * max(height, width))
    wide = max(width + 2 * margin, round(0.62 * (height + 2 * margin)))
    return wide, height + 2 * margin


def _frame(shown: Picture) -> Picture:
    wide, high = _frame_size(shown.shape[1], shown.shape[0])
    frame = np.empty((high, wide, 3), np.uint8)
    frame[:] = SHADE
    return frame


def _to_plate(plate: Plate, points_px: object) -> Array:
    placed: Array = np.array(points_px, dtype=float) * plate.zoom + np.array(plate.offset)
    return placed


_MOST_GROUPS = 6  # more lines would hide what they show
_FAR = 1e6  # px; what lies beyond is no place in a photo
_STYLES = {"linear": "solid", "rounded": "dashed"}


def _mark(
    record: Record, plate: Plate, outlines: list[Array], bar: ScaleBar | None
) -> tuple[list[BaseGeometry], list[Label]]:
    stands = called(record)
    width = 0.105 * plate.unit
    reach = width / 2 + halo_width(width)
    rings = [ring_round(points, 0.1 * plate.unit + reach) for points in outlines]
    if record.area_px:
        area = _to_plate(plate, record.area_px)
        draw_line(plate.rgb, [np.concatenate([area, area[:1]])], ink_of(""), 0.4 * width)
    groups = _groups(record, plate)
    for line in groups:
        draw_styled(plate.rgb, line, ink_of("rejectable"), 0.5 * width, "long")
    cross = [] if bar is None else [_cross(plate, bar)]
    texts = [f"{n} {VERDICT_SIGN.get(v, '')}".strip() for n, v in stands.items()]
    pictures = [
        plate_picture(text, 1.05 * plate.unit, ink.halo, ink.line)
        for text, ink in zip(texts, map(ink_of, stands.values()), strict=True)
    ]
    labels = place_labels(
        [ring.buffer(reach, quad_segs=4) for ring in rings],
        list(stands),
        [(float(p.shape[1]), float(p.shape[0])) for p in pictures],
        (0.0, 0.0, plate.rgb.shape[1] - 1.0, plate.rgb.shape[0] - 1.0),
        gap=0.28 * plate.unit,
        taken=cross,
        avoid=_rather_free(record, plate, groups),
    )
    for label, verdict in zip(labels, stands.values(), strict=True):
        draw_line(plate.rgb, [np.array(label.leader)], ink_of(verdict), 0.5 * width)
    for one, ring in zip(record.indications, rings, strict=True):
        aside = stands[one["id"]] in {"non-relevant", "false"}
        style = "dotted" if aside else _STYLES.get(one["shape"] or "", "solid")
        draw_ring(plate.rgb, ring, ink_of(stands[one["id"]]), width, style)
    for label, picture in zip(labels, pictures, strict=True):
        x, y = round(label.plate[0]), round(label.plate[1])
        there = plate.rgb[y : y + picture.shape[0], x : x + picture.shape[1]]
        there[:] = picture[: there.shape[0], : there.shape[1]]
    return rings, labels


def _groups(record: Record, plate: Plate) -> list[Array]:
    """Lines and windows, px of the plate, of the groups that kept the verdict from acceptable.

    A finding's sketch is in mm on the surface: two points are a line, more a window's corners.
    """
    if verdict_line(record)[0] == "acceptable":
        return []
    lines = []
    for finding in deciding(record)[:_MOST_GROUPS]:
        sketch = np.array(finding.get("sketch_mm") or [], dtype=float).reshape(-1, 2)
        seen = photo_px(record, sketch)
        if len(finding["indications"]) < 2 or len(sketch) < 2 or seen is None:
            continue
        if not np.isfinite(seen).all():
            continue
        points = _to_plate(plate, seen)
        if np.abs(points).max() < _FAR:
            closed = np.concatenate([points, points[:1]])
            lines.append(points if len(points) == 2 else closed)
    return lines


def _rather_free(record: Record, plate: Plate, groups: list[Array]) -> BaseGeometry:
    """What letters had better not cover: scale reference, examined area's border, groups."""
    parts: list[BaseGeometry] = [shapely.LineString(line) for line in groups]
    if record.scale["reference_px"]:
        points = _to_plate(plate, record.scale["reference_px"])
        parts.append(shapely.MultiPoint(points).convex_hull.buffer(plate.unit))
    if record.area_px:
        parts.append(shapely.LinearRing(_to_plate(plate, record.area_px)))
    return shapely.union_all(parts)


def _cross(plate: Plate, bar: ScaleBar) -> BaseGeometry:
    """A small open cross where the scale bar holds; returns the room it takes."""
    at, arm = _to_plate(plate, bar.at_px), 0.7 * plate.unit
    pieces = [
        np.array([at + way * 0.3 * arm, at + way * arm])
        for way in (np.array(w) for w in ((1, 0), (-1, 0), (0, 1), (0, -1)))
    ]
    draw_line(plate.rgb, pieces, Ink(CYAN, NAVY), 0.08 * plate.unit)
    return shapely.Point(at).buffer(arm)
