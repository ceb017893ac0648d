"""Edge attraction for tracing by hand: the line keeps to the dye's edge, the hand decides."""

import threading
from dataclasses import dataclass

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.about import pixels_about, within_outline
from ptmark.dye.contour import Contour, contours, edge_of
from ptmark.dye.contrast import redness
from ptmark.dye.edge import EdgeQuality
from ptmark.dye.fine import look_closely
from ptmark.dye.sheet import Crop, lay_out
from ptmark.errors import OutlineError
from ptmark.photo import Photo

__all__ = ["DyeTracer", "refine_outline"]

Array = npt.NDArray[np.float64]
Float = npt.NDArray[np.float32]
Point = tuple[float, float]

WINDOW_PX = 200  # half size of the window in which a path is sought; a map of it takes 30 ms
HAND_SHIFT_PX = 1.0  # free hand under a magnifier; common practice, no source
_REACH_PX = 12
_BLUR_PX = 1.5
_CLOSES = np.ones((9, 9), np.uint8)  # what `opened` cuts, with the blur on both sides


@dataclass(frozen=True, slots=True)
class _Ways:
    """The ways from one point to all others in the window of this size at ``origin``."""

    scissors: cv2.segmentation.IntelligentScissorsMB
    origin: tuple[int, int]
    size: tuple[int, int]


class DyeTracer:
    """Draws a line to the dye's edge while the pointer moves; works in a window round it.

    Points are ``(x, y)`` in photo px.
    """

    def __init__(self, photo: Photo) -> None:
        self._photo = photo
        self._ways: dict[Point, _Ways] = {}  # the newest last
        self._lock = threading.Lock()

    def snap(self, at_px: Point, radius_px: float = 12.0) -> Point:
        """The strongest edge of the dye near a point; the point itself where there is none."""
        reach = max(2, round(radius_px))
        contrast, (left, top) = self._contrast(at_px, reach + 2)
        if not contrast.size:  # beyond the photo
            return at_px
        right = cv2.Sobel(contrast, cv2.CV_32F, 1, 0, scale=1 / 8)
        down = cv2.Sobel(contrast, cv2.CV_32F, 0, 1, scale=1 / 8)
        steep = cv2.magnitude(right, down)
        y, x = np.indices(steep.shape)
        distance = np.hypot(x - (at_px[0] - left), y - (at_px[1] - top))
        steep = np.where(distance <= radius_px, steep, 0) * (1 - 0.4 * distance / radius_px)
        if steep.max() < 0.01:  # flat: 1 % of light a px is grain
            return at_px
        row, column = np.unravel_index(int(steep.argmax()), steep.shape)
        low_y, low_x = max(int(row) - 1, 0), max(int(column) - 1, 0)
        near = steep[low_y : row + 2, low_x : column + 2] ** 2
        rows, columns = np.indices(near.shape)
        total = float(near.sum())
        return (
            left + low_x + float((near * columns).sum()) / total,
            top + low_y + float((near * rows).sum()) / total,
        )

    def path(self, start_px: Point, end_px: Point) -> Array:
        """The line along the dye's edge from start to end, both included, shape (N, 2), px.

        What lies beyond the window round the start is joined straight.
        """
        ways = self._ways.get(start_px) or self.prepare(start_px)
        left, top = ways.origin
        width, height = ways.size
        x = int(np.clip(round(end_px[0]) - left, 1, width - 2))
        y = int(np.clip(round(end_px[1]) - top, 1, height - 2))
        try:
            chain = ways.scissors.getContour((x, y)).reshape(-1, 2).astype(np.float64)
        except cv2.error:  # flat through and through, its map has loops: straight then
            chain = np.empty((0, 2))
        middle = chain[1:-1] + np.array([left, top])
        return np.vstack([[start_px], middle, [end_px]])

    def ready(self, start_px: Point) -> bool:
        """Whether paths from a point take no longer than a move of the pointer may."""
        return start_px in self._ways

    def prepare(self, start_px: Point) -> _Ways:
        """Make paths from a point ready, which takes some 90 ms; safe in another thread.

        Raises
        ------
        OutlineError
            If the point lies outside the photo.
        """
        contrast, origin = self._contrast(start_px, WINDOW_PX)
        size = (contrast.shape[1], contrast.shape[0])
        if min(size) < 4:
            raise OutlineError(
                f"the point ({start_px[0]:.0f}, {start_px[1]:.0f}) lies outside the photo",
                mend="start the outline inside it",
            )
        coded = np.clip(contrast * 200 + 30, 0, 255).astype(np.uint8)
        scissors = cv2.segmentation.IntelligentScissorsMB()
        scissors.setEdgeFeatureCannyParameters(8, 24)
        scissors.setGradientMagnitudeMaxLimit(120)
        scissors.applyImage(coded)
        x = int(np.clip(round(start_px[0]) - origin[0], 1, size[0] - 2))
        y = int(np.clip(round(start_px[1]) - origin[1], 1, size[1] - 2))
        scissors.buildMap((x, y))
        made = _Ways(scissors, origin, size)
        with self._lock:  # the point before stays: Backspace goes to it
            before = list(self._ways.items())[-1:]
            self._ways = {**dict(before), start_px: made}
        return made

    def _contrast(self, at_px: Point, reach: int) -> tuple[Float, tuple[int, int]]:
        height, width = self._photo.rgb.shape[:2]
        left, top = max(round(at_px[0]) - reach, 0), max(round(at_px[1]) - reach, 0)
        right, bottom = min(round(at_px[0]) + reach + 1, width), round(at_px[1]) + reach + 1
        crop = self._photo.rgb[top : min(bottom, height), left:right]
        if crop.size == 0:
            return np.zeros((0, 0), np.float32), (left, top)
        red = redness(np.ascontiguousarray(crop))
        # how much green the red lacks, against the window's white: near linear in the dye
        taken = 1 - np.exp(np.percentile(red[::2, ::2], 20) - red)
        smooth = cv2.GaussianBlur(taken.astype(np.float32), (0, 0), 0.8)
        return np.asarray(smooth, np.float32), (left, top)


def refine_outline(photo: Photo, outline_px: Array) -> tuple[Array, EdgeQuality]:
    """Move a closed outline to the half-contrast edge of the dye it surrounds.

    Parameters
    ----------
    photo : Photo
    outline_px : ndarray of shape (N, 2), N >= 3
        Drawn by hand, px.

    Returns
    -------
    outline_px : ndarray of shape (M, 2)
        At the edge; where there is no dye or it does not fit what was drawn, as it was drawn.
    edge : EdgeQuality
        Source "snapped" or, where it stayed, "hand".
    """
    # How far the hand strays is counted once, with the operator's points, by `measure`.
    by_hand = outline_px, EdgeQuality(shift_px=HAND_SHIFT_PX, noise_px=0.0, source="hand")
    rgb, low = pixels_about(photo, outline_px, 2 * _REACH_PX + 4)
    if min(rgb.shape[:2]) < 8:
        return by_hand
    drawn = within_outline(outline_px - low, rgb.shape)
    kernel = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (2 * _REACH_PX + 1,) * 2)
    near = np.asarray(cv2.dilate(drawn, kernel), np.uint8)
    around = near == 0
    if np.count_nonzero(around) < 30:
        return by_hand
    left, top = low.tolist()
    crop = Crop(
        rgb=rgb, near=near, around=around.view(np.uint8), seeds=drawn, origin=(left, top)
    )
    best, share = None, 0.4
    for one in contours(look_closely(*lay_out([crop])), _BLUR_PX, 2.0):
        overlap = _common_share(one, drawn, (left, top))
        if overlap > share:
            best, share = one, overlap
    if best is None:
        return by_hand
    edge = edge_of(best, "snapped")
    return best.outline_px, edge


def _common_share(one: Contour, drawn: npt.NDArray[np.uint8], origin: tuple[int, int]) -> float:
    """Intersection over union of a contour with what was drawn.

    A ring of dye is cut open: drawn round its outer rim, it is compared closed again.
    """
    filled = within_outline(one.outline_px - origin, drawn.shape)
    whole = cv2.morphologyEx(filled, cv2.MORPH_CLOSE, _CLOSES)
    rims, _ = cv2.findContours(whole, cv2.RETR_EXTERNAL, cv2.CHAIN_APPROX_NONE)
    cv2.drawContours(whole, rims, -1, 1, cv2.FILLED)
    return max(_share(filled, drawn), _share(np.asarray(whole, np.uint8), drawn))


def _share(filled: npt.NDArray[np.uint8], drawn: npt.NDArray[np.uint8]) -> float:
    both = np.count_nonzero(filled & drawn)
    return float(both) / max(1, int(np.count_nonzero(filled | drawn)))
