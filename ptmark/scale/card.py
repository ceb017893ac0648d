"""The printed scale card: its geometry, and finding it in a photo.

Card frame: mm, x right and y down from the card's top-left corner. ISO/IEC 7810 ID-1 size.
Markers are OpenCV's DICT_4X4_50, ids 0 to 3 clockwise from the top left.
"""

from dataclasses import dataclass
from typing import TYPE_CHECKING

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.scale.marker_edges import refine_corners
from ptmark.scale.plane import apply_homography, fit_homography

if TYPE_CHECKING:
    from ptmark.photo import Photo

__all__ = [
    "CARD_HEIGHT_MM",
    "CARD_WIDTH_MM",
    "MARKER_INSET_MM",
    "MARKER_MM",
    "FoundCard",
    "find_card",
    "marker_corners_mm",
]

Array = npt.NDArray[np.float64]

CARD_WIDTH_MM = 85.60  # ISO/IEC 7810, ID-1
CARD_HEIGHT_MM = 53.98  # ISO/IEC 7810, ID-1
MARKER_MM = 12.00
MARKER_INSET_MM = 4.00
MARKER_IDS = (0, 1, 2, 3)
CHECK_MM = 80.0  # the printed length that callipers check

# Widths to look at, px: markers of a card that fills a tenth of the picture are some 12 px a
# side in the first, which a 6-module square needs; the later ones are for small or soft cards.
_LOOK_WIDTHS = (1100, 2200, 4400)


@dataclass(frozen=True, slots=True, eq=False)
class FoundCard:
    """Corners of the markers that were seen.

    Attributes
    ----------
    ids : tuple of int
    corners_px : ndarray of shape (M, 4, 2)
        Clockwise from each marker's own top left, px.
    u_px : ndarray of shape (M, 4)
        Standard uncertainty of each corner, each coordinate.
    """

    ids: tuple[int, ...]
    corners_px: Array
    u_px: Array


def marker_corners_mm(marker: int) -> Array:
    """Outer corners of one marker, clockwise from its top left, shape (4, 2), card frame.

    Examples
    --------
    >>> marker_corners_mm(2)[2].tolist()
    [81.6, 49.98]
    """
    right, low = marker in (1, 2), marker in (2, 3)
    x = CARD_WIDTH_MM - MARKER_INSET_MM - MARKER_MM if right else MARKER_INSET_MM
    y = CARD_HEIGHT_MM - MARKER_INSET_MM - MARKER_MM if low else MARKER_INSET_MM
    square = np.array([[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]])
    return np.asarray(np.array([x, y]) + MARKER_MM * square)


def find_card(photo: "Photo") -> FoundCard | None:
    """Find the card's markers; None where fewer than two are seen that fit together.

    Looks at reduced pictures first; the corners of what is found are then measured in the
    full picture, on the edges of the black squares.
    """
    best: dict[int, Array] = {}
    tried: set[int] = set()
    for width in _LOOK_WIDTHS:
        step = max(1, round(photo.info.width / width))
        if step in tried:
            continue
        tried.add(step)
        seen = _fitting(_look(photo.rgb, step))
        if len(seen) > len(best):
            best = seen
        if len(best) == len(MARKER_IDS):
            break
    if len(best) < 2:
        return None
    ids = tuple(sorted(best))
    refined = [refine_corners(photo.rgb, best[i], MARKER_MM, MARKER_INSET_MM) for i in ids]
    return FoundCard(
        ids, np.array([corners for corners, _ in refined]), np.array([u for _, u in refined])
    )


def _look(rgb: npt.NDArray[np.uint8], step: int) -> dict[int, list[Array]]:
    """Marker candidates by id in every ``step``-th pixel's green, corners in full px."""
    # Green: sharpest of the three in a JPEG with halved colour, and dark for red dye.
    green = np.ascontiguousarray(rgb[step // 2 :: step, step // 2 :: step, 1])
    dictionary = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_4X4_50)
    corners, ids, _ = cv2.aruco.ArucoDetector(dictionary).detectMarkers(green)
    found: dict[int, list[Array]] = {}
    if ids is not None:
        for quad, marker in zip(corners, np.asarray(ids).ravel(), strict=True):
            if int(marker) in MARKER_IDS:
                at = np.asarray(quad, float).reshape(4, 2) * step + step // 2
                found.setdefault(int(marker), []).append(at)
    return found


def _fitting(found: dict[int, list[Array]]) -> dict[int, Array]:
    """The largest set of markers, one of each id, that lie where one card has them."""
    best: dict[int, Array] = {}
    for marker, quads in found.items():
        for quad in quads:
            h = fit_homography(marker_corners_mm(marker), quad)
            side = float(np.sqrt(abs(cv2.contourArea(quad.astype(np.float32)))))
            fits = {marker: quad}
            for other, others in found.items():
                if other == marker:
                    continue
                # One marker's own homography is rough at the far end of the card: allow 2 sides.
                there = apply_homography(h, marker_corners_mm(other)).mean(axis=0)
                off = [float(np.hypot(*(o.mean(axis=0) - there))) for o in others]
                nearest = int(np.argmin(off))
                if off[nearest] < 2 * side:
                    fits[other] = others[nearest]
            if len(fits) > len(best):
                best = fits
    return best
