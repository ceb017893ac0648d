"""How the photo is seen: surface grid, turned, from above, and the dye's contrast alone."""

from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QTransform

from ptmark.window.session import Session
from ptmark.window.showing import Shown
from ptmark.window.view.levels import PhotoLevels, build_levels
from ptmark.window.view.photo_view import PhotoView
from ptmark.window.words import tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.scale import SurfaceMap

__all__ = ["Seeing", "dye_picture", "from_above"]

_STRIP = 512  # rows at a time, so that the floats stay small
_MOST_PX = 24e6  # of the picture seen from above
_WIDEST = 32_000  # px; cv2.warpPerspective takes no larger source


class Seeing(QObject):
    """Turns ways of seeing on and off; none of them changes what is measured.

    Signals: ``changed()`` when marks and guides are to be painted anew.
    """

    changed = Signal()

    def __init__(self, session: Session, view: PhotoView, shown: Shown) -> None:
        super().__init__(session)
        self._session, self._view, self._shown = session, view, shown
        self.dye = self.above = False
        self._above_of: object = None
        session.photo_shown.connect(self._on_photo)
        session.changed.connect(self._follow)
        session.judged.connect(self._follow_unit)

    @property
    def grid(self) -> bool:
        return self._shown.grid

    @property
    def has_surface(self) -> bool:
        inspection = self._session.inspection
        return inspection is not None and inspection.surface is not None

    @property
    def has_plane(self) -> bool:
        """Whether the surface can be seen from above: a pipe's cannot without bending it."""
        inspection = self._session.inspection
        surface = inspection.surface if inspection is not None else None
        return surface is not None and surface.flat

    def turn(self) -> None:
        """A quarter clockwise."""
        self._view.turn()
        self.changed.emit()

    def turn_grid(self) -> None:
        """Surface grid and scale bar on or off."""
        self._shown.grid = not self._shown.grid
        self.changed.emit()

    def turn_dye(self) -> None:
        """The dye's contrast alone, on or off."""
        self.dye = not self.dye
        self._make()

    def turn_above(self) -> None:
        """The surface seen from above, on or off."""
        self.above = not self.above and self.has_plane
        self._make()

    def _on_photo(self, _levels: PhotoLevels | None) -> None:
        self.dye = self.above = False
        self._session.workers.cancel("seeing")
        self._view.port.turn = 0

    def _follow(self) -> None:
        inspection = self._session.inspection
        if self.above and inspection and inspection.surface is not self._above_of:
            self.above = self.has_plane
            self._make()

    def _follow_unit(self) -> None:
        if self.grid:
            self.changed.emit()

    def _make(self) -> None:
        levels, inspection = self._session.levels, self._session.inspection
        photo = inspection.photo if inspection else None
        self._session.workers.cancel("seeing")
        if levels is None or photo is None or inspection is None:
            return
        surface = inspection.surface if self.above else None
        self._above_of, dye = surface, self.dye
        if surface is None and not dye:
            self._show(levels)
            return

        def work(token: Token) -> PhotoLevels:
            pixels: Any = dye_picture(photo.rgb) if dye else photo.rgb
            token.check()
            if surface is None:
                return build_levels(pixels)
            pixels, bend = from_above(pixels, surface)
            return build_levels(pixels, bend)

        self._session.workers.start(
            tr("Drawing the view"),
            work,
            self._show,
            failed=lambda exc: self._session.say_trouble("photo", exc),
            key="seeing",
        )

    def _show(self, levels: PhotoLevels) -> None:
        self._view.set_levels(levels)
        self.changed.emit()


def dye_picture(rgb: Any) -> Any:  # noqa: ANN401 - ndarray, NumPy loads with the first photo
    """The dye alone: shape (H, W), uint8, dark where dye takes the green light.

    Light and shade fall out, as they change red and green alike (`ptmark.dye.contrast`).
    """
    import numpy as np

    from ptmark.dye.contrast import redness

    step = max(1, max(rgb.shape[:2]) // 800)
    white = np.percentile(redness(np.ascontiguousarray(rgb[::step, ::step])), 20)
    made = np.empty(rgb.shape[:2], np.uint8)
    for top in range(0, rgb.shape[0], _STRIP):
        red = redness(np.ascontiguousarray(rgb[top : top + _STRIP]))
        taken = np.clip(1 - np.exp(white - red), 0, 1)
        made[top : top + _STRIP] = np.round(245 - 225 * taken)
    return made


def from_above(pixels: Any, surface: "SurfaceMap") -> tuple[Any, QTransform]:  # noqa: ANN401
    """The picture with its perspective taken out, and the way to it from the photo.

    The scale is that of the photo at the reference, up stays up, and what lies so far off
    that its scale is over three times coarser is cut away. A lens term is fitted, not bent.
    """
    import cv2
    import numpy as np

    height, width = pixels.shape[:2]
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
    area = float(np.prod(high - low))
    pitch = max(usual, float(np.sqrt(area / _MOST_PX)), float((high - low).max()) / _WIDEST)
    size = np.maximum(2, np.ceil((high - low) / pitch)).astype(int).tolist()
    homography, _ = cv2.findHomography(points, (seen - low) / pitch, 0)
    shrink = max(1, -(-max(width, height) // _WIDEST))
    small = pixels[::shrink, ::shrink]
    to_small = np.diag([shrink, shrink, 1.0])
    ground = 90 if pixels.ndim == 2 else (90, 94, 100)
    warped = cv2.warpPerspective(
        small, homography @ to_small, tuple(size), flags=cv2.INTER_LINEAR, borderValue=ground
    )
    h = homography.T.ravel().tolist()  # Qt multiplies rows from the left
    bend = QTransform.fromTranslate(-0.5, -0.5) * QTransform(*h)
    return warped, bend * QTransform.fromTranslate(0.5, 0.5)
