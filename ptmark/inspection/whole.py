"""One inspection: the object that holds the flow from photo to record.

Plain Python: the window and the command line are two thin hands on it, so what a script does
and what a click does cannot differ. What a person decides lives in one immutable `State`,
which gives undo, redo and autosave; what follows from it (surface, measurements, evaluation)
is worked out again and never stored on its own.
"""

from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt

from ptmark.criteria import Evaluation, Profile, Scene
from ptmark.criteria.profile import load_profile, profile_stamp
from ptmark.dye import (
    CoarseLook,
    EdgeQuality,
    LeftOut,
    Remark,
    Suggestions,
    find_indications,
    in_colour_contrast,
    refine_outline,
)
from ptmark.errors import OutlineError, PtmarkError, ScaleError, UsageError
from ptmark.inspection.changing import Changing
from ptmark.inspection.handing_on import evaluation_of, scene_of
from ptmark.inspection.photo_set import PhotoSet
from ptmark.inspection.state import Marked, State, check_outline, free_letter, with_suggested
from ptmark.inspection.workings import Workings, open_again
from ptmark.measure import Measurement, with_own_hand
from ptmark.photo import CameraProfile, Photo, open_photo
from ptmark.record import Record
from ptmark.scale import Reference, SurfaceMap

__all__ = ["Inspection", "Marked", "State"]

Array = npt.NDArray[np.float64]


class Inspection(Changing):
    """The flow, held together.

    ``surface`` comes from ``state.reference``; it is None, with ``surface_error``, where that
    was refused. ``left_out`` and ``haze`` are the last look's, as `ptmark.dye` gives them.
    All of these are of the photo at hand; ``photos`` holds the set that it belongs to.
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

    def twin(self) -> "Inspection":
        """The same photo, state and surface on their own, for a worker thread; no undo."""
        other = Inspection()
        other.photo, other.state = self.photo, self.state
        other.surface, other.surface_error = self.surface, self.surface_error
        other.left_out, other.haze = self.left_out, self.haze
        other._surface_of = self._surface_of
        other.workings = self.workings.copy()
        return other

    def learn(self, other: "Inspection") -> None:
        """Take over what a twin has worked out."""
        self.workings.learn(other.workings)

    def prepare(self, reference: Reference, photo: Photo) -> SurfaceMap:
        """Solve a reference ahead, in a worker; setting it afterwards costs nothing.

        Raises
        ------
        ScaleError
            If the reference is refused.
        """
        return self.workings.solve(reference, photo)

    @property
    def photos(self) -> PhotoSet:
        """The set; made anew each time, so that no circle keeps a photo in memory."""
        return PhotoSet(self)

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

    def look(self, ahead: CoarseLook | None = None) -> Suggestions:
        """Work out suggestions without changing anything; safe in a worker thread."""
        if self.photo is None:
            raise OutlineError("there is no photo yet", mend="open a photo first")
        area = None if self.state.area_px is None else np.array(self.state.area_px, float)
        return find_indications(self.photo, self.surface, area, self.state.mode, ahead)

    def set_suggestions(self, found: Suggestions) -> None:
        """Put suggestions in place of those not looked at yet; what a person touched stays."""
        self.left_out, self.haze = found.left_out, found.haze
        self.change("suggest indications", marked=with_suggested(self.state, found))

    def add(self, outline_px: Array, edge: EdgeQuality) -> str:
        """Add an outline drawn by a person; returns its letter."""
        check_outline(outline_px)
        name = free_letter(self.state.letters)
        own = with_own_hand(edge, self.state.fields, [m.edge for m in self.state.marked])
        new = Marked(id=name, outline_px=outline_px, edge=own, standing="taken")
        self.change(f"trace {name}", marked=(*self.state.marked, new))
        return name

    def take_left_out(self, index: int) -> str:
        """Take back a blob that the suggestions left out; returns its letter."""
        if self.photo is None:
            raise OutlineError("there is no photo yet", mend="open a photo first")
        picture = in_colour_contrast(self.photo, self.state.mode)
        return self.add(*refine_outline(picture, self.left_out[index].outline_px))

    def edit(self, name: str, what: str = "edit", **changes: Any) -> None:  # noqa: ANN401
        """Change members of one `Marked`: outline_px, edge, standing, kind, note, relevance…"""
        if "outline_px" in changes:
            check_outline(changes["outline_px"])
        if "edge" in changes:
            others = [m.edge for m in self.state.marked if m.id != name]
            changes["edge"] = with_own_hand(changes["edge"], self.state.fields, others)
        self.marked(name)
        marked = tuple(replace(m, **changes) if m.id == name else m for m in self.state.marked)
        self.change(f"{what} {name}", marked=marked)

    def remove(self, name: str) -> None:
        """Delete an outline; undo brings it back."""
        self.marked(name)
        kept = tuple(m for m in self.state.marked if m.id != name)
        self.change(f"delete {name}", marked=kept)

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
        if self.surface is None:
            return None
        beside = self.state.marked
        return self.workings.measurement(one, self.surface, self.state.relief_mm, beside)

    @property
    def profile(self) -> Profile | None:
        """The chosen acceptance profile; CriteriaError where it cannot be loaded."""
        if not self.state.profile:
            return None
        return _loaded(self.state.profile, profile_stamp(self.state.profile))

    def scene(self) -> Scene:
        """The measured indications as the criteria take them."""
        return scene_of(self._measured(), self.state, self.surface, self.photos.sizes())

    def evaluation(self) -> Evaluation | None:
        """The verdict under the chosen profile; None without a profile or a surface."""
        profile = self.profile
        photo = self.photo
        if profile is None or self.surface is None or photo is None:
            return None
        measured, rule = self._measured(), self.state.decision_rule
        grey = not measured and self.workings.colourless(photo.info, lambda: photo)
        return evaluation_of(profile, self.scene(), measured, rule, colourless=grey)

    def _measured(self) -> list[tuple[Marked, Measurement | None]]:
        surface, relief, counted = self.surface, self.state.relief_mm, self.counted
        if surface is None:
            return [(one, None) for one in counted]
        of = self.workings.measurement_in_view
        return [(one, of(one, surface, relief, counted)) for one in counted]

    def remarks(self) -> tuple[Remark, ...]:
        """What about the photo may spoil the work: cautions, each with its mend."""
        if self.photo is None:
            return ()
        look, photo = (self.left_out, self.haze), self.photo
        return self.workings.remarks(
            self.state, self.surface, look, self.profile, lambda: photo
        )

    def to_record(self, *, record_id: str | None = None, created: str | None = None) -> Record:
        """The inspection, all its photos, as a record; what else is missing stays empty.

        Raises
        ------
        UsageError
            If there is no photo yet.
        PhotoError
            If another photo of the set is needed again and cannot be opened.
        """
        if self.photo is None:
            raise UsageError("there is no photo yet", mend="open a photo first")
        return self.photos.record(record_id, created)


@lru_cache(maxsize=8)
def _loaded(name: str, _stamp: object) -> Profile:
    """A profile in one state on disk, loaded once for all inspections."""
    return load_profile(name)
