"""Other pictures of a photo, made where they are looked at: the dye alone, and from above.

Nothing as large as the photo is held for them, and all of its pixels can be seen.
"""

from typing import TYPE_CHECKING, Any

from PySide6.QtGui import QTransform

from ptmark.window.view.levels import Box, Level, MadeLevel, PhotoLevels

if TYPE_CHECKING:
    from ptmark.scale import SurfaceMap

__all__ = ["dye_levels", "dye_picture", "from_above", "white_of"]

_STRIP = 64  # rows at a time, so that the floats stay small
_SMALLEST = 512  # px on the long side of the coarsest level, about
_MOST_PX = 250e6  # of the picture seen from above
_WIDEST = 32_000  # px; cv2.warpPerspective takes no larger source
_GROUND = (90, 94, 100)  # where the photo shows nothing


def white_of(rgb: Any) -> float:  # noqa: ANN401 - ndarray, NumPy loads with the first photo
    """How red the developer is, as the log ratio of red to green light."""
    import numpy as np

    from ptmark.dye.contrast import redness

    step = max(1, max(rgb.shape[:2]) // 800)
    return float(np.percentile(redness(np.ascontiguousarray(rgb[::step, ::step])), 20))


def dye_picture(rgb: Any, white: float) -> Any:  # noqa: ANN401 - see above
    """The dye alone: shape (H, W), uint8, dark where dye takes the green light.

    Light and shade fall out, as they change red and green alike (`ptmark.dye.contrast`);
    ``white`` is that of the whole photo.
    """
    import cv2
    import numpy as np

    from ptmark.dye.contrast import redness

    made = np.empty(rgb.shape[:2], np.uint8)
    for top in range(0, rgb.shape[0], _STRIP):
        red = redness(np.ascontiguousarray(rgb[top : top + _STRIP]))
        left = np.minimum(cv2.exp(white - red), 1)  # of the green light
        made[top : top + _STRIP] = np.round(20 + 225 * left)
    return made


def dye_levels(levels: PhotoLevels, white: float) -> PhotoLevels:
    """The dye alone, in the levels of the photo."""

    def made(level: Level | MadeLevel) -> MadeLevel:
        def make(box: Box) -> Any:  # noqa: ANN401 - see above
            return dye_picture(level.part(box), white)

        return MadeLevel(make, level.width, level.height, level.step_x)

    shown = tuple(made(level) for level in levels.levels)
    return PhotoLevels(levels.width, levels.height, shown, whole=True)


def from_above(levels: PhotoLevels, surface: "SurfaceMap") -> PhotoLevels:
    """The picture with its perspective taken out.

    The scale is that of the photo at the reference, up stays up, and what lies so far off
    that its scale is over three times coarser is cut away. A lens term is fitted, not bent.
    """
    homography, (width, height) = _way_up(levels.width, levels.height, surface)
    made: list[Level | MadeLevel] = []
    step = 1
    while not made or max(width, height) / step > _SMALLEST:
        made.append(_warped(levels, homography, (-(-width // step), -(-height // step)), step))
        step *= 2
    h = homography.T.ravel().tolist()  # Qt multiplies rows from the left
    bend = QTransform.fromTranslate(-0.5, -0.5) * QTransform(*h)
    bend *= QTransform.fromTranslate(0.5, 0.5)
    return PhotoLevels(width, height, tuple(made), whole=True, bend=bend)


def _way_up(width: int, height: int, surface: "SurfaceMap") -> tuple[Any, tuple[int, int]]:
    """Homography from photo px to px of the picture seen from above, and its size."""
    import cv2
    import numpy as np

    xs, ys = np.linspace(0, width - 1, 33), np.linspace(0, height - 1, 33)
    points = np.stack(np.meshgrid(xs, ys), -1).reshape(-1, 2)
    usual = surface.mm_per_px()
    usable = np.array(
        [surface.in_view(p[None]) and surface.mm_per_px(p) < 3 * usual for p in points]
    )
    points = points[usable]
    mm = surface.to_mm(points)
    at = surface.reference_px.mean(axis=0)
    way = surface.jacobian(at[None])[0]
    right = way[:, 0] / np.linalg.norm(way[:, 0])
    side = np.sign(np.linalg.det(way))
    upright = np.array([right, side * np.array([-right[1], right[0]])])
    seen = mm @ upright.T
    low, high = seen.min(axis=0), seen.max(axis=0)
    pitch = max(usual, float(np.sqrt(np.prod(high - low) / _MOST_PX)))
    wide, high_px = np.maximum(2, np.ceil((high - low) / pitch)).astype(int).tolist()
    homography, _ = cv2.findHomography(points, (seen - low) / pitch, 0)
    return homography, (wide, high_px)


def _warped(
    levels: PhotoLevels,
    homography: Any,  # noqa: ANN401 - see above
    size: tuple[int, int],
    step: int,
) -> MadeLevel:
    """A level of the picture seen from above."""
    import cv2
    import numpy as np

    source = levels.for_scale(1 / step)
    back = np.linalg.inv(_grown(source.step_x, source.step_y)) @ np.linalg.inv(homography)
    back = back @ _grown(step, step)
    middle = np.array([(size[0] - 1) / 2, (size[1] - 1) / 2, 1.0])
    back *= np.sign((back @ middle)[2])

    def make(box: Box) -> Any:  # noqa: ANN401 - see above
        x0, y0, x1, y1 = box
        own = back @ np.array([[1, 0, x0], [0, 1, y0], [0, 0, 1.0]])
        x, y, far_x, far_y = _reached(own, (x1 - x0, y1 - y0), (source.width, source.height))
        shrink = max(1, -(-max(far_x - x, far_y - y) // _WIDEST))
        part = source.part((x, y, far_x, far_y))[::shrink, ::shrink]
        own = np.diag([1 / shrink, 1 / shrink, 1]) @ np.array([
            [1, 0, -x], [0, 1, -y], [0, 0, 1.0]
        ]) @ own  # fmt: skip
        return cv2.warpPerspective(
            np.ascontiguousarray(part),
            own,
            (x1 - x0, y1 - y0),
            flags=cv2.INTER_LINEAR | cv2.WARP_INVERSE_MAP,
            borderValue=_GROUND if part.ndim == 3 else _GROUND[:1],
        )

    return MadeLevel(make, *size, step)


def _grown(step_x: float, step_y: float) -> Any:  # noqa: ANN401 - see above
    """From px of a level to px of the whole, both from pixel centres."""
    import numpy as np

    shift_x, shift_y = (step_x - 1) / 2, (step_y - 1) / 2
    return np.array([[step_x, 0, shift_x], [0, step_y, shift_y], [0, 0, 1.0]])


def _reached(back: Any, size: tuple[int, int], source: tuple[int, int]) -> Box:  # noqa: ANN401
    """The part of a source that a picture of this size shows, with 2 px around."""
    import numpy as np

    xs, ys = np.linspace(0, size[0] - 1, 17), np.linspace(0, size[1] - 1, 17)
    grid = np.stack(np.meshgrid(xs, ys), -1).reshape(-1, 2)
    x, y, w = back @ np.vstack([grid.T, np.ones(len(grid))])
    wide, high = source
    if (w <= 1e-9).any():  # the horizon runs through
        return 0, 0, wide, high
    x0, x1 = np.clip([np.floor((x / w).min()) - 2, np.ceil((x / w).max()) + 3], 0, wide)
    y0, y1 = np.clip([np.floor((y / w).min()) - 2, np.ceil((y / w).max()) + 3], 0, high)
    x0, y0 = min(int(x0), wide - 1), min(int(y0), high - 1)
    return x0, y0, max(int(x1), x0 + 1), max(int(y1), y0 + 1)
