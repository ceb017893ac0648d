"""How the photo is seen: surface grid, turned, from above, and the dye's contrast alone."""

from PySide6.QtCore import QObject, Signal

from ptmark.window.session import Session
from ptmark.window.showing import Shown
from ptmark.window.view.levels import PhotoLevels
from ptmark.window.view.photo_view import PhotoView
from ptmark.window.view.seen_as import dye_levels, from_above, white_of
from ptmark.window.words import tr
from ptmark.window.workers import Token

__all__ = ["Seeing"]


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
            made = dye_levels(levels, white_of(photo.rgb)) if dye else levels
            token.check()
            return made if surface is None else from_above(made, surface)

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
