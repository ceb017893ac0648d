"""Suggested outlines: what a trained eye would call, and why the rest was left out."""

from dataclasses import dataclass
from typing import Any

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.coarse import Blob, CoarseLook, look_coarsely
from ptmark.dye.contour import Contour, contours, edge_of
from ptmark.dye.edge import EdgeQuality
from ptmark.dye.fine import Crop, look_closely
from ptmark.dye.judge import Sight, confidence, reason_against
from ptmark.photo import Photo
from ptmark.scale import SurfaceMap

__all__ = ["LeftOut", "Suggestion", "Suggestions", "suggest"]

Array = npt.NDArray[np.float64]

LEAST_PX = 4.0  # across; below it an outline is a guess
LEAST_MM = 0.3  # well under any code's relevance threshold (1.5 mm and up)
DEFAULT_BLUR_PX = 1.5
_SHIFT_PER_BLUR = 0.253  # half the way of a Gaussian edge from 40 to 60 %, in sigma
_MARGIN = 8  # coarse px of developer taken round a blob
_FIVE, _SEVEN = np.ones((5, 5), np.uint8), np.ones((7, 7), np.uint8)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Suggestion:
    """One suggested outline, shape (N, 2) px at half contrast; confidence 0 to 1.

    ``contrast`` is the amount of dye of its core, 1 for full dye.
    """

    outline_px: Array
    edge: EdgeQuality
    confidence: float
    contrast: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class LeftOut:
    """A blob that was not called, with its reason in words."""

    outline_px: Array
    edge: EdgeQuality
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Suggestions:
    """All that one look gives; ``haze`` is the background pinkness, 0 (white) to 1 (dye)."""

    found: tuple[Suggestion, ...]
    left_out: tuple[LeftOut, ...]
    haze: float | None = None


def suggest(
    photo: Photo, surface: SurfaceMap | None = None, area_px: Array | None = None
) -> Suggestions:
    """Look for indications.

    Parameters
    ----------
    photo : Photo
    surface : SurfaceMap, optional
        Tells the least size in mm and where the scale card lies, which is never called.
    area_px : ndarray of shape (N, 2), optional
        Examined area, px; what lies outside is not called. An indication that crosses its
        border is called whole where at least half of it lies inside.

    Returns
    -------
    Suggestions
        In reading order: by the row of their top, then from left to right.
    """
    look = look_coarsely(photo, area_px)
    reach = np.asarray(cv2.dilate(look.reach, _FIVE), np.uint8)
    seen = [
        made
        for blob in look.blobs
        if not _on_card(blob, look, surface) and (made := _crop(photo, look, blob, reach))
    ]
    blurs = [crop.blur_px for crop, *_ in seen if crop.blur_px is not None]
    photo_blur = float(np.median(blurs)) if blurs else DEFAULT_BLUR_PX
    sight = _sight(photo, surface, photo_blur)
    found: list[Suggestion] = []
    left_out: list[LeftOut] = []
    for crop, rgb, seeds in seen:
        for one in contours(crop, rgb, seeds, photo_blur, LEAST_PX / 2):
            if area_px is not None and not _mostly_inside(one, area_px):
                continue
            why = reason_against(one, sight, crop.grain)
            edge = edge_of(one, "suggested")
            if why:
                left_out.append(LeftOut(outline_px=one.outline_px, edge=edge, reason=why))
            else:
                found.append(
                    Suggestion(
                        outline_px=one.outline_px,
                        edge=edge,
                        confidence=confidence(one, crop.grain),
                        contrast=one.contrast,
                    )
                )
    found.sort(key=lambda s: tuple(s.outline_px.min(axis=0)[::-1]))
    left_out.sort(key=lambda s: tuple(s.outline_px.min(axis=0)[::-1]))
    return Suggestions(found=tuple(found), left_out=tuple(left_out), haze=look.haze)


def _sight(photo: Photo, surface: SurfaceMap | None, photo_blur_px: float) -> Sight:
    least_px = LEAST_PX
    if surface is not None:
        least_px = max(LEAST_PX, LEAST_MM / surface.mm_per_px())
    return Sight(
        least_px=least_px,
        least_mm=None if surface is None else least_px * surface.mm_per_px(),
        photo_width=photo.info.width,
        photo_height=photo.info.height,
        usual_shift_px=_SHIFT_PER_BLUR * photo_blur_px,
    )


def _crop(
    photo: Photo, look: CoarseLook, blob: Blob, reach: npt.NDArray[np.uint8]
) -> tuple[Crop, npt.NDArray[np.uint8], npt.NDArray[np.bool_]] | None:
    """The blob's box at full resolution, first look included."""
    height, width = look.reach.shape
    margin = _MARGIN
    for _ in range(3):
        x0, y0 = max(blob.box[0] - margin, 0), max(blob.box[1] - margin, 0)
        x1, y1 = min(blob.box[2] + margin, width), min(blob.box[3] + margin, height)
        around = reach[y0:y1, x0:x1] == 0
        if np.count_nonzero(around) >= 30:
            break
        margin *= 3
    else:
        return None
    factor = look.factor
    own = np.zeros((y1 - y0, x1 - x0), np.uint8)
    cv2.drawContours(own, [blob.rim], 0, 1, cv2.FILLED, offset=(-x0, -y0))
    own_near = (cv2.dilate(own, _SEVEN) > 0) & ((own > 0) | (look.reach[y0:y1, x0:x1] == 0))
    left, top = (x0 + look.origin[0]) * factor, (y0 + look.origin[1]) * factor
    rgb = photo.rgb[top : top + (y1 - y0) * factor, left : left + (x1 - x0) * factor]
    near, bare, seeds = (
        _to_full(one, factor, rgb.shape) for one in (own_near, around, look.seeds[y0:y1, x0:x1])
    )
    crop = look_closely(rgb, (left, top), near, bare)
    return None if crop is None else (crop, rgb, seeds)


def _to_full(
    mask: npt.NDArray[Any], factor: int, shape: tuple[int, ...]
) -> npt.NDArray[np.bool_]:
    """A coarse mask at full size, cut to the crop: coarse sizes are rounded up."""
    size = (mask.shape[1] * factor, mask.shape[0] * factor)
    full = cv2.resize(mask.astype(np.uint8), size, interpolation=cv2.INTER_NEAREST)
    return full[: shape[0], : shape[1]] > 0


def _on_card(blob: Blob, look: CoarseLook, surface: SurfaceMap | None) -> bool:
    """Whether the blob's middle lies on the scale card, 6 mm beyond its markers included."""
    if surface is None or surface.reference != "card":
        return False
    x = ((blob.box[0] + blob.box[2]) / 2 + look.origin[0]) * look.factor
    y = ((blob.box[1] + blob.box[3]) / 2 + look.origin[1]) * look.factor
    hull = cv2.convexHull(surface.reference_px.astype(np.float32))
    beyond = 4.0 / surface.mm_per_px()
    return cv2.pointPolygonTest(hull, (float(x), float(y)), measureDist=True) > -beyond


def _mostly_inside(one: Contour, area_px: Array) -> bool:
    polygon = area_px.astype(np.float32).reshape(-1, 1, 2)
    step = max(1, len(one.outline_px) // 40)
    points = one.outline_px[::step]
    inside = sum(
        cv2.pointPolygonTest(polygon, (float(x), float(y)), measureDist=False) >= 0
        for x, y in points
    )
    return inside >= 0.5 * len(points)
