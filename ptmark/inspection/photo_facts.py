"""Facts of photos, each worked out once and kept; the photo is opened where one is not."""

from collections.abc import Callable

import numpy as np

from ptmark.dye import kind_unknown, overexposed_share, recognise
from ptmark.dye.corners import is_filtered
from ptmark.dye.distance import is_coarse
from ptmark.dye.quality import holds_no_colour
from ptmark.inspection.compressed import is_compressed
from ptmark.inspection.state import State
from ptmark.photo import Photo, PhotoInfo
from ptmark.scale import SurfaceMap

__all__ = ["PhotoFacts"]

_MOST = 0.5  # of the examined area, overexposed: what it does not show is then not judged


class PhotoFacts:
    """Remembers what makes a photo hide things, by what that hangs on."""

    def __init__(self) -> None:
        self._known: dict[tuple[object, ...], bool] = {}

    def copy(self) -> "PhotoFacts":
        """The same on its own."""
        other = PhotoFacts()
        other._known = dict(self._known)
        return other

    def learn(self, other: "PhotoFacts") -> None:
        """Take over what a copy has worked out."""
        self._known.update(other._known)

    def colourless(self, info: PhotoInfo, photo: Callable[[], Photo]) -> bool:
        """Whether a photo holds no colour; ``photo`` is called where that is not known."""
        return self._fact(("colourless", info.sha256), lambda: holds_no_colour(photo()))

    def overexposed(self, state: State, info: PhotoInfo, photo: Callable[[], Photo]) -> bool:
        """Whether most of a photo's examined area is; ``photo`` is called where not known."""
        area = None if state.area_px is None else np.array(state.area_px, float)
        key = ("overexposed", info.sha256, state.area_px)
        return self._fact(key, lambda: overexposed_share(photo(), area) > _MOST)

    def unknown_kind(self, state: State, info: PhotoInfo, photo: Callable[[], Photo]) -> bool:
        """Whether its kind of penetrant was not chosen and is not told; ``photo`` as above."""
        if state.mode:
            return False
        area = None if state.area_px is None else np.array(state.area_px, float)
        key = ("unknown kind", info.sha256, state.area_px)
        return self._fact(key, lambda: kind_unknown(photo(), area))

    def smoothed(
        self,
        state: State,
        surface: SurfaceMap | None,
        info: PhotoInfo,
        photo: Callable[[], Photo],
    ) -> bool:
        """Whether its card tells that a filter took thin ends away; ``photo`` as above."""
        if surface is None or surface.reference != "card":
            return False
        key = ("smoothed", info.sha256, surface, state.mode)
        return self._fact(key, lambda: _smoothed(photo(), surface, state.mode))

    def compressed(self, state: State, info: PhotoInfo, photo: Callable[[], Photo]) -> bool:
        """Whether its file took colour that faint ones need; ``photo`` as above."""
        if not is_compressed(info):
            return False
        key = ("compressed", info.sha256, state.mode)
        return self._fact(key, lambda: is_compressed(info, state.mode or recognise(photo())))

    def coarse(self, state: State, surface: SurfaceMap | None) -> bool:
        """Whether its pixels are too large for thin and faint indications."""
        area = None if state.area_px is None else np.array(state.area_px, float)
        return self._fact(("coarse", surface, state.area_px), lambda: is_coarse(surface, area))

    def _fact(self, key: tuple[object, ...], asked: Callable[[], bool]) -> bool:
        if key not in self._known:
            self._known[key] = asked()
        return self._known[key]


def _smoothed(photo: Photo, surface: SurfaceMap, mode: str) -> bool:
    """Not told under UV-A, where the card is hardly lit."""
    return (mode or recognise(photo)) != "fluorescent" and is_filtered(photo, surface)
