"""Close looks at all blobs of a photo: how soft its edges are is known once all were taken."""

from collections.abc import Iterator

import numpy as np
import numpy.typing as npt

from ptmark.dye.contour import Contour, contours
from ptmark.dye.fine import HAIR_THIN, TELLING, CloseLook, look_closely
from ptmark.dye.moved import motion_of
from ptmark.dye.sheet import Crop, grouped, laid

__all__ = ["CloseLooks"]

Array = npt.NDArray[np.float64]
Float = npt.NDArray[np.float32]

DEFAULT_BLUR_PX = 1.5
SURELY_DYE = 0.3  # share of full dye; haze holds less
_MOST_SIDES = 200  # blobs whose edges tell whether the photo moved


class CloseLooks:
    """Close looks at all crops, of which only so many pixels are held at a time.

    ``photo_blur`` is the standard deviation of edges in the photo, px: the median of those that
    tell theirs, ``moved`` how it differs by direction, if it does. Where all are too thin to
    tell, but for pale ones, which may be grain or haze, each is thin beside its blur, and none
    is seen thinner than the blur alone looks: the middle between these bounds, ``blur_doubt``
    from each, or the usual blur where that may be, as much in doubt.
    """

    def __init__(self, crops: list[Crop], most_px: int) -> None:
        self._groups, self._room = grouped(crops), most_px
        self._held: list[CloseLook | None] = []
        self._sides: list[Float] = []
        blurs = np.hstack([np.empty((2, 0)), *map(self._first_look, self._groups)])
        self.moved = motion_of(self._sides)
        told, sure = blurs[0][~np.isnan(blurs[0])], blurs[:, ~np.isnan(blurs[1])]
        least = sure[1] if np.isnan(sure[0]).all() else np.empty(0)
        self.photo_blur, self.blur_doubt = DEFAULT_BLUR_PX, 0.0
        if len(told):
            self.photo_blur = float(np.median(told))
        if len(least):
            low = float(np.percentile(least, 90))
            high = float(np.percentile(least, 10)) * TELLING / HAIR_THIN
            self.blur_doubt = abs(high - low) / 2
            if np.median(least) > DEFAULT_BLUR_PX:
                self.photo_blur = (low + high) / 2

    def _first_look(self, group: tuple[Crop, ...]) -> Array:
        """Each crop's blur, px, and its bound, shape (2, N); held while there is room."""
        close = look_closely(laid(group))
        self._room -= close.amount.size
        self._held.append(close if self._room >= 0 else None)
        least = np.where(close.peak > SURELY_DYE, close.whole_px / TELLING, np.nan)
        steps = np.array([crop.step for crop in group])
        room = _MOST_SIDES - len(self._sides)
        for i in np.flatnonzero(close.peak > SURELY_DYE)[:room]:
            in_photo = np.array([1 / steps[i]] * 2 + [steps[i]] * 3)
            self._sides.append((close.sides[i] * in_photo[:, None]).astype(np.float32))
        return np.array([close.blur_px * steps, least * steps])

    def outlines(self, least_px: float) -> Iterator[list[Contour]]:
        """The outlines of each look, from which on it is not held any more."""
        for at, group in enumerate(self._groups):
            close = self._let_go(at, group)
            yield contours(
                close,
                self.photo_blur,
                least_px,
                trace_pale=False,
                moved=self.moved,
                blur_doubt_px=self.blur_doubt,
            )

    def _let_go(self, at: int, group: tuple[Crop, ...]) -> CloseLook:
        close, self._held[at] = self._held[at], None
        return close if close is not None else look_closely(laid(group))
