"""A photo in ever smaller levels for the screen, held as QImages over NumPy arrays.

Pixels have shape (H, W, 3), or (H, W) in grey, uint8, sRGB; ``step`` is photo px per level px.
Boxes are (x0, y0, x1, y1) in level px, half open.
"""

from collections.abc import Callable
from dataclasses import dataclass
from math import ceil, floor
from typing import Any

from PySide6.QtCore import QRectF
from PySide6.QtGui import QImage, QTransform

__all__ = ["Box", "Level", "MadeLevel", "PhotoLevels", "build_levels", "preview_levels"]

_SMALLEST = 512  # px on the long side; below that another level saves nothing
_FIRST = 4  # the second level has a 16th of the photo's pixels
_STRIP = 16  # rows of a level that are reduced at a time, so that little is held
_AROUND = 32  # level px round what is seen that are made with it

Box = tuple[int, int, int, int]


class Level:
    """A level that is there as a whole; its image draws from the array's memory."""

    def __init__(self, pixels: Any, step_x: float, step_y: float) -> None:  # noqa: ANN401 - NumPy loads with the first photo
        self.pixels, self.step_x, self.step_y = pixels, step_x, step_y
        self.height, self.width = pixels.shape[:2]
        self.image = _image(pixels)

    def part(self, box: Box) -> Any:  # noqa: ANN401 - see above
        """Pixels of a box within the level."""
        x0, y0, x1, y1 = box
        return self.pixels[y0:y1, x0:x1]

    def seen(self, part: QRectF) -> tuple[QImage, QRectF]:
        """An image that holds a part, told in photo px, and the part's place in the image."""
        return self.image, _in_level(part, self)

    def let_go(self) -> None:
        """Let go of what was made to be seen: here nothing."""


class MadeLevel:
    """A level made only where it is looked at, so that a large one takes little memory.

    ``make`` gives the pixels of a box within ``width`` x ``height`` level px. What was made
    last is kept with its surroundings, so that panning adds a strip now and then.
    """

    def __init__(
        self, make: Callable[[Box], Any], width: int, height: int, step: float
    ) -> None:
        self.part = make
        self.width, self.height, self.step_x, self.step_y = width, height, step, step
        self.pixels: Any = None
        self._box: Box = (0, 0, 0, 0)
        self.image = QImage()

    def seen(self, part: QRectF) -> tuple[QImage, QRectF]:
        """An image that holds a part, told in photo px, and the part's place in the image."""
        source = _in_level(part, self)
        needed = self._around(source, 1)
        if self.pixels is None or not _within(needed, self._box):
            self._move_to(self._around(source, _AROUND))
        x0, y0, _, _ = self._box
        return self.image, source.translated(-x0, -y0)

    def let_go(self) -> None:
        """Let go of what was made to be seen."""
        self.pixels, self._box, self.image = None, (0, 0, 0, 0), QImage()

    def _around(self, source: QRectF, by: int) -> Box:
        """The whole px of a part and so many more on each side, within the level."""
        x0 = min(max(floor(source.left()) - by, 0), self.width - 1)
        y0 = min(max(floor(source.top()) - by, 0), self.height - 1)
        x1 = max(min(ceil(source.right()) + by, self.width), x0 + 1)
        y1 = max(min(ceil(source.bottom()) + by, self.height), y0 + 1)
        return x0, y0, x1, y1

    def _move_to(self, box: Box) -> None:
        """Hold another box: what both share is copied, the rest is made."""
        import numpy as np

        old, old_box = self.pixels, self._box
        x0, y0, x1, y1 = box
        left, top = max(x0, old_box[0]), max(y0, old_box[1])
        right, bottom = min(x1, old_box[2]), min(y1, old_box[3])
        if old is None or left >= right or top >= bottom:
            self.pixels = np.ascontiguousarray(self.part(box))
        else:
            new = np.empty((y1 - y0, x1 - x0, *old.shape[2:]), np.uint8)
            ox, oy = old_box[:2]
            shared = old[top - oy : bottom - oy, left - ox : right - ox]
            new[top - y0 : bottom - y0, left - x0 : right - x0] = shared
            for one in (
                (x0, y0, x1, top),
                (x0, bottom, x1, y1),
                (x0, top, left, bottom),
                (right, top, x1, bottom),
            ):
                a, b, c, d = one
                if a < c and b < d:
                    new[b - y0 : d - y0, a - x0 : c - x0] = self.part(one)
            self.pixels = new
        self._box, self.image = box, _image(self.pixels)


@dataclass(frozen=True)
class PhotoLevels:
    """Levels from fine to coarse of a photo ``width`` x ``height`` px.

    ``whole`` is False for a reduced picture shown until the photo is decoded; ``bend`` leads
    from the photo, counted from its corner, to this picture, where it is seen from above.
    """

    width: int
    height: int
    levels: tuple[Level | MadeLevel, ...]
    whole: bool
    bend: QTransform | None = None

    def coarsest(self) -> "PhotoLevels":
        """The reduced picture alone, to be shown until the whole is decoded again."""
        last = self.levels[-1]
        if len(self.levels) == 1:  # a small photo; its pixels are the photo's own
            last = Level(last.pixels.copy(), last.step_x, last.step_y)
        return PhotoLevels(self.width, self.height, (last,), whole=False)

    def for_scale(self, scale: float) -> Level | MadeLevel:
        """The coarsest level that still has a pixel for each screen pixel (30 % slack)."""
        best = self.levels[0]
        for level in self.levels:
            if level.step_x * scale <= 1.3:
                best = level
        return best

    def show_only(self, shown: Level | MadeLevel | None) -> None:
        """Let the levels that are not shown let go of what they made."""
        for level in self.levels:
            if level is not shown:
                level.let_go()


def _in_level(part: QRectF, level: Level | MadeLevel) -> QRectF:
    """A part of the photo in px of a level."""
    x, y = level.step_x, level.step_y
    return QRectF(part.x() / x, part.y() / y, part.width() / x, part.height() / y)


def _image(pixels: Any) -> QImage:  # noqa: ANN401 - see Level
    height, width = pixels.shape[:2]
    kind = QImage.Format.Format_RGB888 if pixels.ndim == 3 else QImage.Format.Format_Grayscale8
    return QImage(pixels.data, width, height, pixels.strides[0], kind)


def _within(box: Box, other: Box) -> bool:
    return (
        box[0] >= other[0] and box[1] >= other[1] and box[2] <= other[2] and box[3] <= other[3]
    )


def build_levels(
    rgb: Any,  # noqa: ANN401 - see Level
    bend: QTransform | None = None,
    size: tuple[int, int] | None = None,
    reduced: Callable[[int], Any] | None = None,
) -> PhotoLevels:
    """Reduce a decoded photo to a quarter, then by halves to a screenful; run it in a worker.

    ``size`` is the photo's width and height, px, where ``rgb`` is a reduced picture of it.
    ``reduced`` gives levels that the photo keeps for other uses, too (`Photo.reduced`). The
    quarter, which would add 6 % to the photo's memory, is made where it is looked at unless it
    is the smallest.
    """
    width, height = size or (rgb.shape[1], rgb.shape[0])
    finest = Level(rgb, width / rgb.shape[1], height / rgb.shape[0])
    levels: list[Level | MadeLevel] = [finest]
    if max(rgb.shape[:2]) <= 2 * _SMALLEST:
        return PhotoLevels(width, height, tuple(levels), whole=True, bend=bend)
    quarter = _made_smaller(finest, _FIRST)
    by = _FIRST
    if max(quarter.width, quarter.height) > 2 * _SMALLEST:
        levels.append(quarter)
        by *= 2
    pixels = reduced(by) if reduced else _in_strips(quarter, by // _FIRST)
    levels.append(Level(pixels, by * finest.step_x, by * finest.step_y))
    while max(pixels.shape[:2]) > 2 * _SMALLEST:
        by *= 2
        pixels = _reduced(pixels, 2)
        levels.append(Level(pixels, by * finest.step_x, by * finest.step_y))
    return PhotoLevels(width, height, tuple(levels), whole=True, bend=bend)


def _made_smaller(level: Level, by: int) -> MadeLevel:
    """A level that many times smaller, made of another where it is looked at."""

    def make(box: Box) -> Any:  # noqa: ANN401 - see Level
        x0, y0, x1, y1 = (by * side for side in box)
        return _reduced(level.part((x0, y0, min(x1, level.width), min(y1, level.height))), by)

    made = MadeLevel(make, -(-level.width // by), -(-level.height // by), by)
    made.step_x, made.step_y = by * level.step_x, by * level.step_y
    return made


def _in_strips(level: MadeLevel, by: int) -> Any:  # noqa: ANN401 - see Level
    """A whole made level, reduced once more."""
    import numpy as np

    step = _STRIP * by
    return np.concatenate(
        [
            _reduced(level.part((0, top, level.width, min(top + step, level.height))), by)
            for top in range(0, level.height, step)
        ]
    )


def _reduced(pixels: Any, by: int) -> Any:  # noqa: ANN401 - see Level
    """Block means; what a block lacks at the right and bottom border is its neighbour's."""
    import cv2

    if by == 1:
        return pixels
    height, width = pixels.shape[:2]
    if width % by or height % by:
        below, beside = -height % by, -width % by
        pixels = cv2.copyMakeBorder(pixels, 0, below, 0, beside, cv2.BORDER_REPLICATE)
    size = (pixels.shape[1] // by, pixels.shape[0] // by)
    return cv2.resize(pixels, size, interpolation=cv2.INTER_AREA)


def preview_levels(rgb: Any, width: int, height: int) -> PhotoLevels:  # noqa: ANN401
    """A reduced picture stretched to the size of the photo it stands for."""
    import numpy as np

    rgb = np.ascontiguousarray(rgb)
    step_x, step_y = width / rgb.shape[1], height / rgb.shape[0]
    return PhotoLevels(width, height, (Level(rgb, step_x, step_y),), whole=False)
