"""One inspection: the object that holds the flow from photo to record.

Plain Python: the window and the command line are two thin hands on it, so what a script does
and what a click does cannot differ. What a person decides lives in one immutable `State`,
which gives undo, redo and autosave; what follows from it (surface, measurements, evaluation)
is worked out again and never stored on its own.
"""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt

from ptmark.criteria import Evaluation, Profile, Scene, evaluate
from ptmark.criteria.profile import load_profile, profile_stamp
from ptmark.dye import (
    EdgeQuality,
    LeftOut,
    Remark,
    Suggestions,
    find_indications,
    in_colour_contrast,
    refine_outline,
)
from ptmark.errors import OutlineError, PtmarkError, ScaleError, UsageError
from ptmark.handing_on import record_of, scene_of
from ptmark.looking_over import remarks_on
from ptmark.measure import Conditions, Measurement, measure_outline
from ptmark.photo import Photo, open_photo
from ptmark.record import Record
from ptmark.scale import CardReference, Reference, SurfaceMap, solve
from ptmark.state import History, Marked, State, check_outline, free_letter, with_suggested

__all__ = ["Inspection", "Marked", "State"]

Array = npt.NDArray[np.float64]


class Inspection:
    """The flow, held together.

    ``surface`` comes from ``state.reference``; it is None, with ``surface_error``, where that
    was refused. ``left_out`` and ``haze`` are the last look's, as `ptmark.dye` gives them.
    """

    def __init__(self) -> None:
        self.photo: Photo | None = None
        self.state = State()
        self.surface: SurfaceMap | None = None
        self.surface_error: PtmarkError | None = None
        self.left_out: tuple[LeftOut, ...] = ()
        self.haze: float | None = None
        self._history = History()
        self._listeners: list[Callable[[], None]] = []
        self._surface_of: Reference | None = None
        self._solved: dict[tuple[int, int], tuple[Reference, Photo, SurfaceMap]] = {}
        self._measured: dict[tuple[int, float | None], tuple[Marked, Measurement]] = {}
        self._profile: tuple[object, Profile] | None = None  # with what it was loaded from

    def open(self, path: Path) -> None:
        """Open a photo and start afresh; PhotoError where it cannot be opened."""
        self.set_photo(open_photo(path))

    def set_photo(self, photo: Photo) -> None:
        """Start afresh on an opened photo; profile and fields stay, they fit the next too."""
        self.photo = photo
        self._solved = {key: one for key, one in list(self._solved.items()) if one[1] is photo}
        self.state = self.state.for_next_photo()
        self.left_out, self.haze = (), None
        self._history.forget()
        self._measured.clear()
        self._solve(force=True)
        self._tell()

    def take_state(self, state: State) -> None:
        """Take a whole state, as a draft brings it back; undo starts afresh from here."""
        self.state = state
        self._history.forget()
        self._solve(force=True)
        self._tell()

    def listen(self, listener: Callable[[], None]) -> None:
        """Call ``listener`` after every change."""
        self._listeners.append(listener)

    def change(self, what: str, **changes: Any) -> None:  # noqa: ANN401 - members of State
        """Make one undoable change to the state, named for the undo menu."""
        self._history.note(what, self.state)
        self.state = replace(self.state, **changes)
        self._solve()
        self._tell()

    @property
    def undo_name(self) -> str:
        """What undo would take back; "" where there is nothing."""
        return self._history.undo_name

    @property
    def redo_name(self) -> str:
        """What redo would bring back; "" where there is nothing."""
        return self._history.redo_name

    def undo(self) -> None:
        """Step back; nothing happens where there is nothing to take back."""
        self._go(self._history.back(self.state))

    def redo(self) -> None:
        """Step forward again."""
        self._go(self._history.forth(self.state))

    def _go(self, state: State) -> None:
        if state is not self.state:
            self.state = state
            self._solve()
            self._tell()

    def _tell(self) -> None:
        for listener in self._listeners:
            listener()

    def set_reference(self, reference: Reference | None) -> None:
        """Take a scale reference; a refused one raises ScaleError and changes nothing."""
        if reference is not None:
            if self.photo is None:
                raise ScaleError("there is no photo yet", mend="open a photo first")
            self._surface_from(reference, self.photo)
        self.change("set the scale", reference=reference)

    def twin(self) -> "Inspection":
        """The same photo, state and surface on their own, for a worker thread; no undo."""
        other = Inspection()
        other.photo, other.state = self.photo, self.state
        other.surface, other.surface_error = self.surface, self.surface_error
        other.left_out, other.haze = self.left_out, self.haze
        other._surface_of, other._solved = self._surface_of, self._solved
        other._measured, other._profile = dict(self._measured), self._profile
        return other

    def learn(self, other: "Inspection") -> None:
        """Take over what a twin measured, where the surface is still the same."""
        if self.surface is other.surface:
            self._measured.update(other._measured)

    def prepare(self, reference: Reference, photo: Photo) -> SurfaceMap:
        """Solve a reference ahead, in a worker; setting it afterwards costs nothing.

        Raises
        ------
        ScaleError
            If the reference is refused.
        """
        surface = solve(reference, photo)
        self._solved[id(reference), id(photo)] = (reference, photo, surface)
        return surface

    def _surface_from(self, reference: Reference, photo: Photo) -> SurfaceMap:
        kept = self._solved.get((id(reference), id(photo)))
        return kept[2] if kept else self.prepare(reference, photo)

    def look_for_card(self) -> bool:
        """Use the scale card if the photo shows one; tells whether it did."""
        try:
            self.set_reference(CardReference())
        except ScaleError:
            return False
        return True

    def _solve(self, *, force: bool = False) -> None:
        if not force and self.state.reference is self._surface_of:
            return
        self._surface_of = self.state.reference
        self.surface, self.surface_error = None, None
        self._measured.clear()
        if self.photo is not None and self.state.reference is not None:
            try:
                self.surface = self._surface_from(self.state.reference, self.photo)
            except ScaleError as exc:
                self.surface_error = exc

    def look(self) -> Suggestions:
        """Work out suggestions without changing anything; safe in a worker thread."""
        if self.photo is None:
            raise OutlineError("there is no photo yet", mend="open a photo first")
        area = None if self.state.area_px is None else np.array(self.state.area_px, float)
        return find_indications(self.photo, self.surface, area, self.state.mode)

    def set_suggestions(self, found: Suggestions) -> None:
        """Put suggestions in place of those not looked at yet; what a person touched stays."""
        self.left_out, self.haze = found.left_out, found.haze
        self.change("suggest indications", marked=with_suggested(self.state.marked, found))

    def add(self, outline_px: Array, edge: EdgeQuality) -> str:
        """Add an outline drawn by a person; returns its letter."""
        check_outline(outline_px)
        name = free_letter(self.state.marked)
        new = Marked(id=name, outline_px=outline_px, edge=edge, standing="taken")
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
        key = (id(one.outline_px), self.state.relief_mm)
        kept = self._measured.get(key)
        if kept is None or kept[0].edge is not one.edge:
            made = measure_outline(
                one.outline_px,
                self.surface,
                one.edge,
                Conditions(relief_mm=self.state.relief_mm),
            )
            kept = self._measured[key] = (one, made)
        return kept[1]

    @property
    def profile(self) -> Profile | None:
        """The chosen acceptance profile; CriteriaError where it cannot be loaded."""
        if not self.state.profile:
            return None
        key = (self.state.profile, profile_stamp(self.state.profile))
        if self._profile is None or self._profile[0] != key:
            self._profile = (key, load_profile(self.state.profile))
        return self._profile[1]

    def scene(self) -> Scene:
        """The measured indications as the criteria take them."""
        return scene_of(self._measured_now(), self.state, self.surface)

    def _measured_now(self) -> list[tuple[Marked, Measurement | None]]:
        return [(one, self.measurement(one)) for one in self.counted]

    def evaluation(self) -> Evaluation | None:
        """The verdict under the chosen profile; None without a profile or a surface."""
        profile = self.profile
        if profile is None or self.surface is None:
            return None
        return evaluate(profile, self.scene(), decision_rule=self.state.decision_rule)

    def remarks(self) -> tuple[Remark, ...]:
        """What about the photo may spoil the work: cautions, each with its mend."""
        if self.photo is None:
            return ()
        return remarks_on(self.photo, self.state, self.surface, self.haze, self.profile)

    def to_record(self, *, record_id: str | None = None, created: str | None = None) -> Record:
        """The inspection as a record; an open photo is needed, the rest may be missing."""
        if self.photo is None:
            raise UsageError("there is no photo yet", mend="open a photo first")
        return record_of(
            self._measured_now(),
            self.state,
            info=self.photo.info,
            surface=self.surface,
            left_out=self.left_out,
            evaluation=self.evaluation(),
            haze=self.haze,
            remarks=self.remarks(),
            record_id=record_id,
            created=created,
        )
