"""Edge attraction for tracing by hand."""

import numpy as np
import numpy.typing as npt

from ptmark.dye.edge import EdgeQuality
from ptmark.photo import Photo

__all__ = ["DyeTracer", "refine_outline"]

Array = npt.NDArray[np.float64]


class DyeTracer:
    """Draws a line to the dye's edge while the pointer moves; works in a window round it."""

    def __init__(self, photo: Photo) -> None:
        self._photo = photo

    def snap(self, at_px: tuple[float, float], radius_px: float = 12.0) -> tuple[float, float]:
        """The strongest edge of the dye near a point; the point itself where there is none."""
        raise NotImplementedError

    def path(self, start_px: tuple[float, float], end_px: tuple[float, float]) -> Array:
        """The line along the dye's edge from start to end, both included, shape (N, 2), px."""
        raise NotImplementedError


def refine_outline(photo: Photo, outline_px: Array) -> tuple[Array, EdgeQuality]:
    """Move a closed outline to the half-contrast edge; what has no edge stays where it is."""
    raise NotImplementedError
