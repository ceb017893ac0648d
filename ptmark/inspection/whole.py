"""One inspection: the object that holds the flow from photo to record.

Plain Python: the window and the command line are two thin hands on it, so what a script does
and what a click does cannot differ. What a person decides lives in one immutable `State`,
which gives undo, redo and autosave; what follows from it (surface, measurements, evaluation)
is worked out again and never stored on its own.
"""

from dataclasses import replace
from typing import Any

import numpy as np
import numpy.typing as npt

from ptmark.criteria import Evaluation, Scene, evaluate
from ptmark.dye import (
    CoarseLook,
    EdgeQuality,
    LeftOut,
    Suggestions,
    find_indications,
    refine_in_mode,
)
from ptmark.dye.haze import UNEVEN
from ptmark.errors import OutlineError, UsageError
from ptmark.inspection.at_hand import AtHand
from ptmark.inspection.handing_on import Worked, distances_of, scene_of
from ptmark.inspection.hiding import hidden_in
from ptmark.inspection.photo_set import PhotoSet
from ptmark.inspection.state import Marked, State, check_outline, free_letter, with_suggested
from ptmark.measure import Measurement, with_own_hand
from ptmark.photo import Photo
from ptmark.record import Record
from ptmark.record.plain import OUTLINE_DIGITS
from ptmark.scale import Reference, SurfaceMap

__all__ = ["Inspection", "Marked", "State"]

Array = npt.NDArray[np.float64]


class Inspection(AtHand):
    """The flow, held together: the photo at hand, and in ``photos`` the set it belongs to."""

    def __init__(self) -> None:
        super().__init__()
        # blobs that were taken back, each with the outline it was given then
        self._refined: dict[int, tuple[LeftOut, Array]] = {}

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

    def look(self, ahead: CoarseLook | None = None) -> Suggestions:
        """Work out suggestions without changing anything; safe in a worker thread."""
        if self.photo is None:
            raise OutlineError("there is no photo yet", mend="open a photo first")
        area = None if self.state.area_px is None else np.array(self.state.area_px, float)
        return find_indications(self.photo, self.surface, area, self.state.mode, ahead)

    def set_suggestions(self, found: Suggestions) -> None:
        """Put suggestions in place of those not looked at yet; what a person touched stays."""
        self.left_out, self.haze = found.left_out, found.haze
        if self.photo is not None:
            called = bool(found.found)
            self.workings.searched.note(self.photo.info.sha256, self.state, called=called)
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
        """Take back a blob that the suggestions left out; returns its letter.

        What was taken back before keeps its letter: it must not count twice.

        Raises
        ------
        OutlineError
            If there is no photo, or it stands for the whole area and is no outline of dye.
        """
        if self.photo is None:
            raise OutlineError("there is no photo yet", mend="open a photo first")
        blob = self.left_out[index]
        if self.is_whole_area(blob):
            raise OutlineError(
                "this is the whole area looked at, not the outline of an indication",
                mend="Mark out a smaller area where the colour is even and look again, or "
                "trace the indication by hand.",
            )
        outline_px, edge = refine_in_mode(self.photo, blob.outline_px, self.state.mode)
        self._refined[id(blob)] = (blob, np.round(outline_px, OUTLINE_DIGITS))
        before = self._taken_back(blob)
        if before is None:
            return self.add(outline_px, edge)
        if before.standing == "dropped":
            self.edit(before.id, "take", standing="taken")
        return before.id

    @staticmethod
    def is_whole_area(blob: LeftOut) -> bool:
        """Whether what was left out stands for all that was looked at, as too uneven."""
        return blob.reason == UNEVEN

    def taken_back(self) -> dict[int, str]:
        """The letters of what was taken back of `left_out` and stands, by its number."""
        found = ((n, self._taken_back(blob)) for n, blob in enumerate(self.left_out))
        return {n: one.id for n, one in found if one and one.standing != "dropped"}

    def _taken_back(self, blob: LeftOut) -> Marked | None:
        kept = self._refined.get(id(blob))
        if kept is None or kept[0] is not blob:
            return None
        marked = self.state.marked
        return next((m for m in marked if np.array_equal(m.outline_px, kept[1])), None)

    def edit(self, name: str, what: str = "edit", **changes: Any) -> None:  # noqa: ANN401
        """Change members of one `Marked`: outline_px, edge, standing, kind, note, relevance…"""
        if "outline_px" in changes:
            check_outline(changes["outline_px"])
        if "edge" in changes:
            others = [m.edge for m in self.state.marked if m.id != name]
            changes["edge"] = with_own_hand(changes["edge"], self.state.fields, others)
            # Who moves a few points of a suggestion has not traced where it ends.
            unsure = self.marked(name).edge.ends_unsure
            changes["edge"] = replace(changes["edge"], ends_unsure=unsure)
        self.marked(name)
        marked = tuple(replace(m, **changes) if m.id == name else m for m in self.state.marked)
        self.change(f"{what} {name}", marked=marked)

    def remove(self, name: str) -> None:
        """Delete an outline; undo brings it back."""
        self.marked(name)
        kept = tuple(m for m in self.state.marked if m.id != name)
        self.change(f"delete {name}", marked=kept)

    def scene(self) -> Scene:
        """The indications of the photo at hand as the criteria take them."""
        photo, measured = self.photo, tuple(self._measured())
        if photo is None:
            return Scene(indications=(), unmeasured=tuple(one.id for one, _ in measured))
        here = Worked(
            state=self.state, info=photo.info, surface=self.surface, measured=measured
        )
        sizes, known = self.photos.sizes(), distances_of(here)
        return scene_of(here, sizes, known=known, hidden=hidden_in(here, self))

    def evaluation(self) -> Evaluation | None:
        """The verdict under the chosen profile; None without a profile or a surface."""
        profile = self.profile
        if profile is None or self.surface is None or self.photo is None:
            return None
        return evaluate(profile, self.scene(), self.state.decision_rule)

    def _measured(self) -> list[tuple[Marked, Measurement | None]]:
        surface, relief, counted = self.surface, self.state.relief_mm, self.counted
        photo = self.photo
        if surface is None or photo is None:
            return [(one, None) for one in counted]
        of = self.workings.measurement_in_view
        return [(one, of(one, surface, relief, lambda: photo, counted)) for one in counted]

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
