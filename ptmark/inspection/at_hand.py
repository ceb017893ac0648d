"""What an inspection has at hand: one photo with its state, and the surface that follows.

The set that the photo belongs to (`photo_set`) and the whole flow (`whole`) build on this.
"""

from dataclasses import replace
from functools import lru_cache
from pathlib import Path

from ptmark.criteria import Profile
from ptmark.criteria.by_name import load_profile, profile_stamp
from ptmark.dye import LeftOut, Remark
from ptmark.errors import PtmarkError, ScaleError, UsageError
from ptmark.inspection.again import open_again
from ptmark.inspection.changing import Changing
from ptmark.inspection.state import Marked, State
from ptmark.inspection.workings import Look, Workings
from ptmark.measure import Measurement
from ptmark.photo import CameraProfile, Photo, PhotoInfo, open_photo
from ptmark.scale import Reference, SurfaceMap

__all__ = ["AtHand"]


class AtHand(Changing):
    """A photo, what a person has decided of it, and its scale.

    ``surface`` comes from ``state.reference``; it is None, with ``surface_error``, where that
    was refused. ``left_out`` and ``haze`` are the last look's, as `ptmark.dye` gives them.
    """

    def __init__(self) -> None:
        super().__init__()
        self.surface: SurfaceMap | None = None
        self.surface_error: PtmarkError | None = None
        self.left_out: tuple[LeftOut, ...] = ()
        self.haze: float | None = None
        self.workings = Workings()
        self._surface_of: tuple[Reference | None, Photo | None] = (None, None)

    def open(self, path: Path) -> None:
        """Open a photo and start afresh; PhotoError where it cannot be opened."""
        self.set_photo(open_photo(path))

    def set_photo(self, photo: Photo) -> None:
        """Start afresh on an opened photo.

        What was entered before the first photo is of the same part and stays; of a photo's own
        part only what `State.for_next_part` names.
        """
        state = self.state if self.photo is None else self.state.for_next_part()
        self.photo = photo
        self.workings.begin(photo.info.sha256)
        self.state = replace(state, info=photo.info)
        self._afresh()

    def next_part(self) -> None:
        """Put the photo away and start afresh on the next part, of which there is none yet."""
        self.photo = None
        self.state = self.state.for_next_part()
        self._afresh()

    def _afresh(self) -> None:
        self.left_out, self.haze = (), None
        self._history.forget()
        self._solve()
        self._tell()

    def take_state(self, state: State) -> None:
        """Take a whole state, as a draft brings it back; undo starts afresh from here."""
        self.state = state
        if self.photo is not None:
            self.state = replace(state, info=self.photo.info)
        self._history.forget()
        self._solve()
        self._tell()

    def _enter(self, state: State, photo: Photo | None) -> None:
        info, here = state.info, self.photo
        if info is not None and here is not None and info.sha256 != here.info.sha256:
            if photo is None or photo.info.sha256 != info.sha256:
                photo = open_again(info)
            self.remarks()  # as long as its pixels are at hand
            self.workings.keep_look(here.info, (self.left_out, self.haze))
            self.photo = photo
            self.left_out, self.haze = self.workings.look_of(info)
        if info is not None and self.photo is not None:
            self.photo = self.photo.with_lens(info.calibrated)
        self.state = state
        self._solve()

    def use_lens(self, profile: CameraProfile | None) -> None:
        """Take another profile of the camera's lens for the photo at hand, or none; undoable.

        Raises
        ------
        UsageError
            If there is no photo yet.
        """
        if self.photo is None:
            raise UsageError("there is no photo yet", mend="open a photo first")
        what = "use the camera's profile" if profile else "leave the camera's profile out"
        self.change(what, info=self.photo.with_lens(profile).info)

    def set_reference(self, reference: Reference | None) -> None:
        """Take a scale reference; a refused one raises ScaleError and changes nothing."""
        if reference is not None:
            if self.photo is None:
                raise ScaleError("there is no photo yet", mend="open a photo first")
            self.workings.surface(reference, self.photo.info, self.photo)
        self.change("set the scale", reference=reference)

    def _solve(self) -> None:
        reference, photo = self.state.reference, self.photo
        if reference is self._surface_of[0] and photo is self._surface_of[1]:
            return
        self._surface_of = (reference, photo)
        self.surface, self.surface_error = None, None
        if photo is not None and reference is not None:
            try:
                self.surface = self.workings.surface(reference, photo.info, photo)
            except ScaleError as exc:
                self.surface_error = exc

    # -- any photo of the set: what is at hand of it, else what is kept or opened again
    def _has_at_hand(self, info: PhotoInfo) -> bool:
        return self.photo is not None and self.photo.info.sha256 == info.sha256

    def photo_of(self, info: PhotoInfo) -> Photo:
        """A photo of the set; PhotoError where it cannot be opened again."""
        here = self.photo
        return here if here is not None and self._has_at_hand(info) else open_again(info)

    def surface_of(self, state: State, info: PhotoInfo) -> SurfaceMap | None:
        """The surface of a photo of the set; None where it has no scale, or a refused one."""
        if self._has_at_hand(info):
            return self.surface
        if state.reference is None:
            return None
        try:
            return self.workings.surface(state.reference, info, None)
        except ScaleError:
            return None

    def look_of(self, info: PhotoInfo) -> Look:
        """What the last look at a photo of the set left out, and its haze."""
        if self._has_at_hand(info):
            return self.left_out, self.haze
        return self.workings.look_of(info)

    # -- the photo at hand
    def marked(self, name: str) -> Marked:
        """The outline with this letter."""
        for one in self.state.marked:
            if one.id == name:
                return one
        raise UsageError(f"there is no indication {name}")

    @property
    def counted(self) -> tuple[Marked, ...]:
        """The outlines that the verdict counts: all but the dropped ones."""
        return tuple(m for m in self.state.marked if m.standing != "dropped")

    def measurement(self, one: Marked) -> Measurement | None:
        """Measured values of an outline, kept until it changes; None without a surface."""
        photo = self.photo
        if self.surface is None or photo is None:
            return None
        return self.workings.measurement(
            one, self.surface, self.state.relief_mm, lambda: photo, self.state.marked
        )

    @property
    def profile(self) -> Profile | None:
        """The chosen acceptance profile; CriteriaError where it cannot be loaded."""
        if not self.state.profile:
            return None
        return _loaded(self.state.profile, profile_stamp(self.state.profile))

    def remarks(self) -> tuple[Remark, ...]:
        """What about the photo may spoil the work: cautions, each with its mend."""
        if self.photo is None:
            return ()
        look, photo = (self.left_out, self.haze), self.photo
        return self.workings.remarks(
            self.state, self.surface, look, self.profile, lambda: photo
        )


@lru_cache(maxsize=8)
def _loaded(name: str, _stamp: object) -> Profile:
    """A profile in one state on disk, loaded once for all inspections."""
    return load_profile(name)
