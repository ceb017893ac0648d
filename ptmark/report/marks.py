"""Lines and plates drawn on a copy of the photo: halo first, then the line.

Coordinates are px of the picture drawn on, (0, 0) the centre of its top-left pixel.
"""

from collections.abc import Iterable

import cv2
import numpy as np
import numpy.typing as npt
import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from ptmark.report.palette import Ink

__all__ = ["draw_line", "draw_ring", "draw_styled", "ring_round", "uncover"]

Picture = npt.NDArray[np.uint8]
Array = npt.NDArray[np.float64]

# Dash and space by turns, in line widths; () is solid.
DASHES: dict[str, tuple[float, ...]] = {
    "solid": (),
    "dashed": (4.2, 3.6),
    "dotted": (0.4, 3.2),
    "long": (14.0, 6.0),
    "dash and dot": (7.0, 3.0, 0.4, 3.0),
}
_BEYOND = 50.0  # px outside the picture where a line may be cut off unseen
_SHIFT = 4  # cv2 takes fixed-point coordinates: 1/16 px


def ring_round(outline: Array, clearance: float) -> BaseGeometry:
    """The line that runs round an outline at a distance, so that it hides nothing of it."""
    shape = shapely.make_valid(Polygon(outline))
    return shape.buffer(clearance, quad_segs=6).simplify(0.2)


def draw_ring(picture: Picture, ring: BaseGeometry, ink: Ink, width: float, style: str) -> None:
    """Draw the outer boundary of a ring in a line style, in place."""
    height, wide = picture.shape[:2]
    seen = shapely.box(-_BEYOND, -_BEYOND, wide + _BEYOND, height + _BEYOND)
    for part in getattr(ring, "geoms", [ring]):
        if isinstance(part, Polygon):
            line = part.exterior
            shown = [line] if seen.contains(line) else shapely.get_parts(seen & line)
            for points in map(shapely.get_coordinates, shown):
                if len(points) > 1:
                    draw_styled(picture, points, ink, width, style)


def draw_styled(picture: Picture, points: Array, ink: Ink, width: float, style: str) -> None:
    """Draw one line of shape (N, 2) in a line style, in place."""
    dash = tuple(part * width for part in DASHES[style])
    draw_line(picture, _dashes(points, dash) if dash else [points], ink, width)


def draw_line(picture: Picture, pieces: Iterable[Array], ink: Ink, width: float) -> None:
    """Draw open lines, each of shape (N, 2): all halos first, so that no line is cut by one."""
    fixed = [np.round(p * 2**_SHIFT).astype(np.int32).reshape(-1, 1, 2) for p in pieces]
    for color, wide in ((ink.halo, width + 2 * halo_width(width)), (ink.line, width)):
        thick = max(1, round(wide))
        cv2.polylines(picture, fixed, False, color, thick, cv2.LINE_AA, _SHIFT)  # noqa: FBT003


def halo_width(width: float) -> float:
    """How far the halo reaches beyond a line, px."""
    return max(1.0, 0.45 * width)


def _dashes(points: Array, dash: tuple[float, ...]) -> list[Array]:
    """Cut a line into dashes, stretched a little so that they fill it evenly."""
    step = np.linalg.norm(np.diff(points, axis=0), axis=1)
    along = np.concatenate([[0.0], np.cumsum(step)])
    length = float(along[-1])
    count = max(3, round(length / sum(dash)))
    bounds = np.concatenate([[0.0], np.cumsum(dash)]) * (length / count / sum(dash))
    pieces = []
    for start in np.arange(count) * (length / count):
        for first, last in zip(bounds[:-1:2] + start, bounds[1::2] + start, strict=True):
            inner = along[(along > first) & (along < last)]
            at = np.concatenate([[first], inner, [last]])
            pieces.append(
                np.stack([np.interp(at, along, points[:, k]) for k in (0, 1)], axis=1)
            )
    return pieces


def uncover(picture: Picture, photo: Picture, outlines: Iterable[Array]) -> None:
    """Put the photo's own pixels back wherever an indication lies, in place."""
    height, width = photo.shape[:2]
    for outline in outlines:
        low = np.maximum(np.floor(outline.min(axis=0)).astype(int) - 2, 0)
        high = np.minimum(np.ceil(outline.max(axis=0)).astype(int) + 3, (width, height))
        if (high <= low).any():
            continue
        (x0, y0), (x1, y1) = low, high
        mask = np.zeros((y1 - y0, x1 - x0), np.uint8)
        fixed = np.round((outline - low) * 2**_SHIFT).astype(np.int32).reshape(-1, 1, 2)
        cv2.fillPoly(mask, [fixed], 1, cv2.LINE_8, _SHIFT)
        inside = mask.astype(bool)
        picture[y0:y1, x0:x1][inside] = photo[y0:y1, x0:x1][inside]
