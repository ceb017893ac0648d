"""Find the printed scale card in a photo and measure its markers' corners."""

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.scale.layout import (
    CARD_HEIGHT_MM,
    CARD_WIDTH_MM,
    MARKER_IDS,
    SETS,
    marker_corners_mm,
    set_ids,
)
from ptmark.scale.marker_edges import refine_corners
from ptmark.scale.plane import apply_homography, fit_homography

if TYPE_CHECKING:
    from ptmark.photo import Photo

__all__ = [
    "CARD_HEIGHT_MM",
    "CARD_WIDTH_MM",
    "FoundCard",
    "find_card",
    "find_cards",
]

Array = npt.NDArray[np.float64]

# Widths to look at, px: in the first a marker of a card that spans a third of the picture is
# some 50 px a side, in the last the smallest that can still be measured.
_LOOK_WIDTHS = (1100, 2200, 4400)
# Windows of the local threshold, px, from and to: one finds what lies in the open, and takes a
# third of the time of all that OpenCV tries.
_QUICK_WINDOWS, _ALL_WINDOWS = (23, 23), (3, 23)
# In a closer look a marker is some 100 px a side; under 24 px nothing is found.
_CLOSE_SIDE_PX, _SMALLEST_PX = 100, 24
# A corner whose edges are less clear than this is covered or shaded.
CLEAR_PX = 0.3


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
    mirrored : bool
        Whether the picture is: then it is told as the card that a mirror shows, whose markers
        have changed places in pairs, so that its frame lies as that of any card.
    """

    ids: tuple[int, ...]
    corners_px: Array
    u_px: Array
    mirrored: bool = False

    @property
    def number(self) -> int:
        """Set of the card, from 1."""
        return self.ids[0] // len(MARKER_IDS) + 1

    @property
    def clear(self) -> npt.NDArray[np.bool_]:
        """Which corners have two clear edges, shape (M, 4)."""
        return self.u_px < CLEAR_PX

    @property
    def sides_px(self) -> Array:
        """Mean side of each marker, px, shape (M,)."""
        steps = np.roll(self.corners_px, -1, axis=1) - self.corners_px
        return np.asarray(np.hypot(steps[..., 0], steps[..., 1]).mean(axis=1))


def find_card(photo: "Photo") -> FoundCard | None:
    """The card of the lowest set; None where none is found. See `find_cards`."""
    return next(iter(find_cards(photo)), None)


def find_cards(photo: "Photo") -> tuple[FoundCard, ...]:
    """Find every card of which two markers or more are seen that fit together, by set.

    Two prints of one set are two cards.

    Looks at reduced pictures first; the corners of what is found are then measured in the
    full picture, on the edges of the black squares. Corners that are covered or shaded stay
    in the list with a large uncertainty. Where there is none, the picture may be mirrored, as
    front cameras write it: that is looked at too, but for the smallest markers.
    """
    steps = sorted({max(1, round(photo.info.width / w)) for w in _LOOK_WIDTHS}, reverse=True)
    if found := _seen(photo.rgb, steps):
        return tuple(_measured(photo.rgb, one) for one in found)
    width = photo.rgb.shape[1]
    found = [_as_seen(one, width) for one in _seen(photo.rgb[:, ::-1], steps[:2])]
    return tuple(replace(_measured(photo.rgb, one), mirrored=True) for one in found)


def _seen(rgb: npt.NDArray[np.uint8], steps: list[int]) -> list[dict[int, Array]]:
    """Markers of each card at the first of the steps, coarsest first, that shows one."""
    whole = len(MARKER_IDS)
    for step, windows in [(steps[0], _QUICK_WINDOWS), *((one, _ALL_WINDOWS) for one in steps)]:
        seen = _by_set(_look(rgb, step, windows=windows))
        sets = [card for one in seen for card in _apart(one)]
        if windows == _QUICK_WINDOWS and any(len(one) < whole for one in sets):
            continue
        if any(len(one) >= 2 for one in sets):
            return [one for one in (_completed(rgb, one) for one in sets) if len(one) >= 2]
    return []


def _as_seen(found: dict[int, Array], width: int) -> dict[int, Array]:
    """What a mirrored picture of that width shows, as the card that lies so in the picture.

    Left and right markers change places; the layout is as wide on both sides.
    """
    there = np.array([width - 1, 0.0])
    return {
        marker ^ 1: np.asarray(there + [-1.0, 1.0] * quad[[1, 0, 3, 2]])
        for marker, quad in found.items()
    }


def _by_set(seen: dict[int, list[Array]]) -> list[dict[int, list[Array]]]:
    """Marker candidates apart by set, the lowest first, of the sets that are seen."""
    sets = [
        {marker: seen[marker] for marker in set_ids(number) if marker in seen}
        for number in range(1, SETS + 1)
    ]
    return [one for one in sets if one]


def _apart(found: dict[int, list[Array]]) -> list[dict[int, Array]]:
    """Cards of one set, so two prints of one file: each the largest set of markers left."""
    cards = [_fitting(found)]
    while len(cards[-1]) >= 2:
        found = {
            marker: [quad for quad in quads if not _same_place(quad, cards[-1].get(marker))]
            for marker, quads in found.items()
        }
        rest = _fitting({marker: quads for marker, quads in found.items() if quads})
        if len(rest) < 2:
            break
        cards.append(rest)
    return cards


def _same_place(quad: Array, taken: Array | None) -> bool:
    """Whether two quads are one marker, found twice or once."""
    if taken is None:
        return False
    side = float(np.hypot(*(taken[1] - taken[0])))
    return float(np.hypot(*(quad.mean(axis=0) - taken.mean(axis=0)))) < side


def _completed(rgb: npt.NDArray[np.uint8], best: dict[int, Array]) -> dict[int, Array]:
    if len(best) == len(MARKER_IDS):
        return best
    return _fitting(_look_closer(rgb, best))


def _measured(rgb: npt.NDArray[np.uint8], best: dict[int, Array]) -> FoundCard:
    ids = tuple(sorted(best))
    corners, u_px = refine_corners(rgb, np.array([best[i] for i in ids]))
    return FoundCard(ids, corners, u_px)


def _look(
    rgb: npt.NDArray[np.uint8],
    step: int,
    origin: tuple[int, int] = (0, 0),
    windows: tuple[int, int] = _ALL_WINDOWS,
) -> dict[int, list[Array]]:
    """Marker candidates by id in every ``step``-th pixel's green, corners in full px.

    ``origin`` is where ``rgb`` begins in the full picture, x and y.
    """
    # Green: sharpest of the three in a JPEG with halved colour, and dark for red dye.
    first = step // 2
    green = np.ascontiguousarray(rgb[first::step, first::step, 1])
    if min(green.shape) < _SMALLEST_PX:
        return {}
    dictionary = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_4X4_50)
    settings = cv2.aruco.DetectorParameters()
    settings.adaptiveThreshWinSizeMin, settings.adaptiveThreshWinSizeMax = windows
    # Modules of a small or soft marker run into each other: read their middles, finely.
    settings.perspectiveRemovePixelPerCell = 8
    settings.perspectiveRemoveIgnoredMarginPerCell = 0.25
    corners, ids, _ = cv2.aruco.ArucoDetector(dictionary, settings).detectMarkers(green)
    found: dict[int, list[Array]] = {}
    if ids is not None:
        for quad, marker in zip(corners, np.asarray(ids).ravel(), strict=True):
            if int(marker) < SETS * len(MARKER_IDS):
                at = np.asarray(quad, float).reshape(4, 2) * step + first + origin
                found.setdefault(int(marker), []).append(at)
    return found


def _look_closer(rgb: npt.NDArray[np.uint8], seen: dict[int, Array]) -> dict[int, list[Array]]:
    """What was seen, and what a closer look finds where the other markers should lie."""
    found = {marker: [quad] for marker, quad in seen.items()}
    plane = np.vstack([marker_corners_mm(marker) for marker in seen])
    h = fit_homography(plane, np.vstack(list(seen.values())))
    height, width = rgb.shape[:2]
    number = min(seen) // len(MARKER_IDS) + 1
    for marker in set(set_ids(number)) - set(seen):
        there = apply_homography(h, marker_corners_mm(marker))
        side = float(np.ptp(there, axis=0).max())
        low = np.clip(there.min(axis=0) - side, 0, [width, height]).astype(int)
        high = np.clip(there.max(axis=0) + side, 0, [width, height]).astype(int)
        if (high - low < _SMALLEST_PX).any():
            continue
        step = max(1, round(side / _CLOSE_SIDE_PX))
        crop = rgb[low[1] : high[1], low[0] : high[0]]
        closer = _look(crop, step, (int(low[0]), int(low[1])))
        found.setdefault(marker, []).extend(closer.get(marker, []))
    return {marker: quads for marker, quads in found.items() if quads}


def _fitting(found: dict[int, list[Array]]) -> dict[int, Array]:
    """The largest set of markers, one of each id, that lie where one card has them."""
    best: dict[int, Array] = {}
    for marker, quads in found.items():
        for quad in quads:
            fits = _beside(marker, quad, found)
            if len(fits) > len(best):
                best = fits
            if len(best) == len(MARKER_IDS):
                return best
    return best


def _beside(marker: int, quad: Array, found: dict[int, list[Array]]) -> dict[int, Array]:
    """One marker and those of the others that lie where it says."""
    h = fit_homography(marker_corners_mm(marker), quad)
    steps = np.roll(quad, -1, axis=0) - quad
    side = float(np.hypot(steps[:, 0], steps[:, 1]).mean())
    fits = {marker: quad}
    for other, quads in found.items():
        if other == marker:
            continue
        there = apply_homography(h, marker_corners_mm(other)).mean(axis=0)
        off = [float(np.hypot(*(each.mean(axis=0) - there))) for each in quads]
        nearest = int(np.argmin(off))
        # One marker's own homography is rough at the card's far end: allow two sides.
        if off[nearest] < 2 * side:
            fits[other] = quads[nearest]
    return fits
