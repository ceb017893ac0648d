"""The photos of one inspection: their order, what several of them show, their verdict.

Each photo has a surface of its own, and places of different photos cannot be laid over each
other; so the criteria judge each photo by itself. What joins the photos is the letter: an
indication that several show carries one letter in each, and a person says so.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from ptmark.criteria import Evaluation
from ptmark.errors import UsageError
from ptmark.inspection.again import open_again
from ptmark.inspection.at_hand import AtHand
from ptmark.inspection.handing_on import chosen_of
from ptmark.inspection.set_results import Results, results_of
from ptmark.inspection.set_sizes import Sizes
from ptmark.inspection.state import Marked, State, free_letter
from ptmark.measure import Measurement
from ptmark.photo import Photo, PhotoInfo
from ptmark.record import Record

__all__ = ["PhotoSet"]


class PhotoSet:
    """The set that an inspection's photo at hand belongs to; numbers run from 0."""

    def __init__(self, inspection: AtHand) -> None:
        self._inspection = inspection

    def __len__(self) -> int:
        state = self._inspection.state
        return 0 if self._inspection.photo is None else len(state.before) + 1 + len(state.after)

    @property
    def number(self) -> int:
        """The number of the photo at hand."""
        return len(self._inspection.state.before)

    @property
    def infos(self) -> list[PhotoInfo]:
        """The facts of each photo, in order."""
        if self._inspection.photo is None:
            return []
        return [info for one in self._inspection.state.photos if (info := one.info) is not None]

    def opened(self) -> Iterator[Photo]:
        """Every photo in order, opened one at a time; PhotoError where one cannot be."""
        for info in self.infos:
            here = self._inspection.photo
            same = here is not None and here.info.sha256 == info.sha256
            yield here if same and here is not None else open_again(info)

    # -- the set ------------------------------------------------------------------------------
    def add(self, photo: Photo) -> None:
        """Put a photo at the end of the set and turn to it; undoable.

        Raises
        ------
        UsageError
            If the set holds this content already.
        """
        inspection = self._inspection
        if inspection.photo is None:
            inspection.set_photo(photo)
            return
        same = [one.path.name for one in self.infos if one.sha256 == photo.info.sha256]
        if same:
            raise UsageError(
                f"{photo.info.path.name} is in the set already, as {same[0]}",
                mend="add another photo",
            )
        state = inspection.state
        fresh = replace(state.for_another_photo(), info=photo.info)
        photos = (*state.photos, fresh)
        inspection.put(
            f"add {photo.info.path.name}", self._at(len(state.photos), photos), photo
        )

    def turn_to(self, number: int, photo: Photo | None = None) -> None:
        """Take another photo to hand; nothing is decided by it, so there is nothing to undo.

        Raises
        ------
        UsageError
            If there is no such photo.
        PhotoError
            If it cannot be opened.
        """
        self._check(number)
        if number != self.number:
            self._inspection.show(self._inspection.state.at(number), photo)

    def remove(self, number: int, photo: Photo | None = None) -> None:
        """Take a photo out of the set with all its outlines; undoable.

        ``photo`` is the one that comes to hand, where the one at hand goes.
        """
        self._check(number)
        photos = list(self._inspection.state.photos)
        if len(photos) == 1:
            raise UsageError("an inspection keeps one photo", mend="open another one instead")
        gone = photos.pop(number)
        name = "" if gone.info is None else gone.info.path.name
        here = self.number - (number < self.number)
        state = self._at(min(here, len(photos) - 1), photos)
        self._inspection.put(f"remove {name}", state, photo)

    def move(self, number: int, to: int) -> None:
        """Give a photo another place in the order; undoable."""
        self._check(number)
        self._check(to)
        photos = list(self._inspection.state.photos)
        here = photos[self.number].info
        photos.insert(to, photos.pop(number))
        at = next(n for n, one in enumerate(photos) if one.info is here)
        self._inspection.put("order the photos", self._at(at, photos))

    def _at(self, number: int, photos: Sequence[State]) -> State:
        return self._inspection.state.at(number, photos)

    def _check(self, number: int) -> None:
        if not 0 <= number < len(self):
            raise UsageError(f"there is no photo {number + 1} of {len(self)}")

    # -- one indication in several photos -----------------------------------------------------
    def same(self, name: str, as_name: str) -> None:
        """Say that an outline of the photo at hand is an indication of another photo.

        It takes that letter, and what was said of it there. Undoable.

        Raises
        ------
        UsageError
            If no other photo shows that indication, or this one does already.
        """
        self.join({name: as_name})

    def join(self, pairs: Mapping[str, str]) -> None:
        """Say it of several at once, letter here to letter there, as one step; see `same`."""
        marked, there = list(self._inspection.state.marked), self._elsewhere()
        for name, as_name in pairs.items():
            here = self._inspection.marked(name)
            if as_name not in there:
                raise UsageError(f"no other photo shows an indication {as_name}")
            if any(one.id == as_name for one in marked):
                raise UsageError(
                    f"this photo shows {as_name} already", mend="part or delete that one first"
                )
            marked[marked.index(here)] = _joined(here, there[as_name])
        told = ", ".join(f"{name} is {as_name}" for name, as_name in pairs.items())
        self._inspection.change(told, marked=tuple(marked))

    def apart(self, name: str) -> str:
        """Say that an outline of the photo at hand is one of its own; returns its letter."""
        here = self._inspection.marked(name)
        new = replace(here, id=free_letter(self._inspection.state.letters))
        marked = self._inspection.state.marked
        swapped = tuple(new if one is here else one for one in marked)
        self._inspection.change(f"{name} is not the same", marked=swapped)
        return new.id

    def choose(self, name: str, number: int | None) -> None:
        """Take the size of record from this photo; None: from the least uncertain one."""
        chosen = dict(self._inspection.state.sizes_from)
        chosen.pop(name, None)
        if number is not None:
            self._check(number)
            chosen[name] = self.infos[number].sha256
        self._inspection.change(f"take the size of {name}", sizes_from=chosen)

    def candidates(self, name: str) -> list[str]:
        """Letters of other photos that an outline of the photo at hand may be the same as."""
        here = {one.id for one in self._inspection.state.marked}
        return sorted(set(self._elsewhere()) - here - {name}, key=lambda one: (len(one), one))

    def _elsewhere(self) -> dict[str, Marked]:
        state = self._inspection.state
        photos = (*state.before, *state.after)
        return {m.id: m for p in photos for m in p.marked if m.standing != "dropped"}

    # -- what follows -------------------------------------------------------------------------
    def results(self) -> Results:
        """Every photo with its surface and measurements; PhotoError where one is missing."""
        return results_of(self._inspection)

    def sizes(self) -> dict[str, Measurement]:
        """The size of record of each indication that several photos show."""
        return {} if len(self) < 2 else self.results().sizes

    def seen_again(self) -> dict[str, Sizes]:
        """The indications that several photos show, by letter."""
        return {} if len(self) < 2 else self.results().seen_again

    def evaluations(self) -> list[Evaluation | None]:
        """Each photo judged on its own surface; None where it has no scale, or no criteria."""
        return self.results().evaluations(self._inspection)

    def record(self, record_id: str | None = None, created: str | None = None) -> Record:
        """The whole set as one record; of one photo as `build_record` makes it."""
        made = self.results().record(self._inspection, record_id, created)
        state = self._inspection.state
        chosen = chosen_of(state, judged=made.evaluation is not None)
        process = state.process or None
        return replace(made, retest_of=state.retest_of, chosen=chosen, process=process)


def _joined(here: Marked, there: Marked) -> Marked:
    """An outline under the letter that it has in another photo, with what was said there."""
    return replace(
        here,
        id=there.id,
        standing="taken",
        kind=here.kind or there.kind,
        note=here.note or there.note,
        relevance=there.relevance,
        reason=there.reason,
    )
