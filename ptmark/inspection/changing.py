"""Undoable changes to a state, and who is told of them."""

from abc import ABC, abstractmethod
from collections.abc import Callable
from dataclasses import replace
from typing import Any

from ptmark.inspection.state import State
from ptmark.inspection.way_back import History
from ptmark.photo import Photo, PhotoInfo

__all__ = ["Changing"]


class Changing(ABC):
    """Holds a photo and the state that a person has made of it, with the way back."""

    def __init__(self) -> None:
        self.photo: Photo | None = None
        self.state = State()
        self._history = History()
        self._listeners: list[Callable[[], None]] = []

    @abstractmethod
    def _enter(self, state: State, photo: Photo | None) -> None:
        """Take a state with all that hangs on it; change nothing where that fails."""

    def listen(self, listener: Callable[[], None]) -> None:
        """Call ``listener`` after every change."""
        self._listeners.append(listener)

    def show(self, state: State, photo: Photo | None = None) -> None:
        """Take a state of the same set, at whichever of its photos, without a way back.

        Parameters
        ----------
        state : State
        photo : Photo, optional
            The state's, where it was opened ahead; else it is opened here.

        Raises
        ------
        PhotoError
            If the photo cannot be opened; then nothing changes.
        """
        self._enter(state, photo)
        self._tell()

    def change(self, what: str, **changes: Any) -> None:  # noqa: ANN401 - members of State
        """Make one undoable change to the state, named for the undo menu."""
        self.put(what, replace(self.state, **changes))

    def put(self, what: str, state: State, photo: Photo | None = None) -> None:
        """Put a whole state in place of the present one, undoable; see `show`."""
        before = self.state
        self._enter(state, photo)
        self._history.note(what, before)
        self._tell()

    @property
    def begun(self) -> bool:
        """Whether there is anything to lose: a photo, or a field filled in before it."""
        return self.photo is not None or bool(self.state.fields.keys() - self.state.carried)

    @property
    def undo_name(self) -> str:
        """What undo would take back; "" where there is nothing."""
        return self._history.undo_name

    @property
    def redo_name(self) -> str:
        """What redo would bring back; "" where there is nothing."""
        return self._history.redo_name

    @property
    def needed(self) -> tuple[PhotoInfo | None, PhotoInfo | None]:
        """The photos that undo and redo would turn to; None where it is the one at hand."""
        here = None if self.photo is None else self.photo.info.sha256
        infos = [None if one is None else one.info for one in self._history.leads]
        back, forth = (None if i is None or i.sha256 == here else i for i in infos)
        return back, forth

    def undo(self, photo: Photo | None = None) -> None:
        """Step back, to another photo of the set where the change was made there; see `show`.

        Nothing happens where there is nothing to take back.
        """
        if (state := self._history.leads[0]) is not None:
            before = _turned(self.state, state.info)
            self._enter(state, photo)
            self._history.back(before)
            self._tell()

    def redo(self, photo: Photo | None = None) -> None:
        """Step forward again."""
        if (state := self._history.leads[1]) is not None:
            before = _turned(self.state, state.info)
            self._enter(state, photo)
            self._history.forth(before)
            self._tell()

    def _tell(self) -> None:
        for listener in self._listeners:
            listener()


def _turned(state: State, info: PhotoInfo | None) -> State:
    """The state at the photo that a step leads to, so that the way back ends there too."""
    if state.info is info:
        return state
    photos = state.photos
    shas = [None if one.info is None else one.info.sha256 for one in photos]
    there = None if info is None else info.sha256
    return state.at(shas.index(there), photos) if there in shas else state
