"""A photo in ever smaller levels for the screen, held as QImages over NumPy arrays.

Level arrays have shape (H, W, 3), or (H, W) in grey, uint8, sRGB; ``step`` is photo px per
level px.
"""

from dataclasses import dataclass
from typing import Any

from PySide6.QtGui import QImage, QTransform

__all__ = ["Level", "PhotoLevels", "build_levels", "preview_levels"]

_SMALLEST = 512  # px on the long side; below that another level saves nothing
_FIRST = 4  # the second level has a 16th of the photo's pixels: all levels add 9 % to it


@dataclass(frozen=True)
class Level:
    """One level; the image draws from the array's memory, so both live together."""

    image: QImage
    pixels: Any  # ndarray, named loosely so that NumPy loads with the first photo
    step_x: float
    step_y: float


@dataclass(frozen=True)
class PhotoLevels:
    """Levels from fine to coarse of a photo ``width`` x ``height`` px.

    ``whole`` is False for a reduced picture shown until the photo is decoded; ``bend`` leads
    from the photo, counted from its corner, to this picture, where it is seen from above.
    """

    width: int
    height: int
    levels: tuple[Level, ...]
    whole: bool
    bend: QTransform | None = None

    def coarsest(self) -> "PhotoLevels":
        """The reduced picture alone, to be shown until the whole is decoded again."""
        last = self.levels[-1]
        if len(self.levels) == 1:  # a small photo; its pixels are the photo's own
            last = _level(last.pixels.copy(), last.step_x, last.step_y)
        return PhotoLevels(self.width, self.height, (last,), whole=False)

    def for_scale(self, scale: float) -> Level:
        """The coarsest level that still has a pixel for each screen pixel (30 % slack)."""
        best = self.levels[0]
        for level in self.levels:
            if level.step_x * scale <= 1.3:
                best = level
        return best


def _level(pixels: Any, step_x: float, step_y: float) -> Level:  # noqa: ANN401 - see Level
    height, width = pixels.shape[:2]
    kind = QImage.Format.Format_RGB888 if pixels.ndim == 3 else QImage.Format.Format_Grayscale8
    image = QImage(pixels.data, width, height, pixels.strides[0], kind)
    return Level(image, pixels, step_x, step_y)


def build_levels(
    rgb: Any,  # noqa: ANN401 - see Level
    bend: QTransform | None = None,
    size: tuple[int, int] | None = None,
) -> PhotoLevels:
    """Reduce a decoded photo to a quarter, then by halves to a screenful; run it in a worker.

    ``size`` is the photo's width and height, px, where ``rgb`` is a reduced picture of it.
    """
    import cv2

    width, height = size or (rgb.shape[1], rgb.shape[0])
    levels, pixels = [_level(rgb, width / rgb.shape[1], height / rgb.shape[0])], rgb
    while max(pixels.shape[:2]) > 2 * _SMALLEST:
        by = 2 if len(levels) > 1 else _FIRST
        size = (max(1, pixels.shape[1] // by), max(1, pixels.shape[0] // by))
        pixels = cv2.resize(pixels, size, interpolation=cv2.INTER_AREA)
        levels.append(_level(pixels, width / size[0], height / size[1]))
    return PhotoLevels(width, height, tuple(levels), whole=True, bend=bend)


def preview_levels(rgb: Any, width: int, height: int) -> PhotoLevels:  # noqa: ANN401
    """A reduced picture stretched to the size of the photo it stands for."""
    import numpy as np

    rgb = np.ascontiguousarray(rgb)
    step_x, step_y = width / rgb.shape[1], height / rgb.shape[0]
    return PhotoLevels(width, height, (_level(rgb, step_x, step_y),), whole=False)
