"""The photos of one inspection in the window: added, turned to, taken out, one decoded.

Only the photo at hand is held at full size; of the others a reduced picture, which is shown
until the whole is there.
"""

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from ptmark.window.looking import Looking, open_with_levels
from ptmark.window.session import Session
from ptmark.window.view.levels import PhotoLevels, build_levels
from ptmark.window.words import tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.photo import Photo, PhotoInfo

__all__ = ["Turning"]

_WORK = ("open", "scale", "look")


class Turning(QObject):
    """Turns from photo to photo.

    Signals: ``turned()`` when another photo has come to hand; ``starts()`` before that, for
    tools to be put away.
    """

    turned = Signal()
    starts = Signal()

    def __init__(self, session: Session, looking: Looking) -> None:
        super().__init__(session)
        self._session, self._looking = session, looking
        self.previews: dict[str, PhotoLevels] = {}  # by SHA-256
        self._queue: list[Path] = []
        self._looked: set[str] = set()
        session.turner = self.with_photo
        session.changed.connect(self._keep_preview)
        # Not at once: what a job's end leads to must have begun.
        self._soon = QTimer(self, singleShot=True, interval=0)
        self._soon.timeout.connect(self._go_on)
        session.workers.changed.connect(self._soon.start)
        looking.suggested.connect(self._note_look)

    # -- adding -------------------------------------------------------------------------------
    def add(self, paths: Sequence[Path]) -> None:
        """Add photos to the set, one after the other, each with its card and indications."""
        self._queue += paths
        self._soon.start()

    def take(self, paths: Sequence[Path]) -> None:
        """Take dropped photos: one is a new inspection, several are the photos of one."""
        if len(paths) == 1:
            self.starts.emit()
            self._looking.open(paths[0])
        else:
            self.add(paths)

    @property
    def busy(self) -> bool:
        """Whether photos are still to be added."""
        return bool(self._queue)

    def _go_on(self) -> None:
        session = self._session
        if not self._queue or any(session.workers.busy(key) for key in _WORK):
            return
        path = self._queue.pop(0)
        if not session.has_photo:
            self._looking.open(path)
            return
        self.starts.emit()

        def done(got: "tuple[Photo, PhotoLevels]") -> None:
            photo, levels = got
            inspection = session.inspection
            if inspection is None:
                return

            def put() -> None:
                inspection.photos.add(photo)

            before = session.levels
            self._show(levels)
            if session.attempt("photo", put):
                self.turned.emit()
                self._looking.find_card()
            else:
                self._show(before)

        session.workers.start(
            tr("Adding {0}", path.name),
            lambda token: open_with_levels(path, token),
            done,
            failed=lambda exc: session.say_trouble("photo", exc),
            key="open",
        )

    # -- turning ------------------------------------------------------------------------------
    def turn_to(self, number: int) -> None:
        """Take the photo with this number, from 0, to hand."""
        inspection = self._session.inspection
        if inspection is None or self.busy:
            return
        infos = inspection.photos.infos
        if 0 <= number < len(infos) and number != inspection.photos.number:
            sha256 = infos[number].sha256

            def then(photo: "Photo | None") -> None:
                now = [one.sha256 for one in inspection.photos.infos]
                if sha256 in now:
                    inspection.photos.turn_to(now.index(sha256), photo)

            self.with_photo(infos[number], lambda p: self._session.by_itself(lambda: then(p)))

    def step(self, by: int) -> None:
        """The next photo, or the one before; round at the ends."""
        inspection = self._session.inspection
        if inspection is not None and len(inspection.photos) > 1:
            self.turn_to((inspection.photos.number + by) % len(inspection.photos))

    def remove(self, number: int) -> None:
        """Take a photo out of the set; undo brings it back."""
        inspection = self._session.inspection
        if inspection is None or self.busy:
            return
        photos, infos = inspection.photos, inspection.photos.infos

        def take(photo: "Photo | None") -> None:
            self._session.attempt("photo", lambda: photos.remove(number, photo))

        if number != photos.number or len(infos) < 2:
            take(None)
        else:
            rest = infos[:number] + infos[number + 1 :]
            self.with_photo(rest[min(number, len(rest) - 1)], take)

    def remove_this(self) -> None:
        """Take the photo at hand out of the set."""
        if self._session.inspection is not None:
            self.remove(self._session.inspection.photos.number)

    def with_photo(self, info: "PhotoInfo", then: "Callable[[Photo | None], None]") -> None:
        """Decode a photo beside the window, show it, and go on with it."""
        session, before = self._session, self._session.levels
        self.starts.emit()
        for key in ("scale", "look"):
            session.workers.cancel(key)
        if (preview := self.previews.get(info.sha256)) is not None:
            session.photo_shown.emit(preview)

        def work(token: Token) -> "tuple[Photo, PhotoLevels]":
            from ptmark.inspection.again import open_again

            photo = open_again(info)
            token.check()
            return photo, build_levels(photo.rgb, reduced=photo.reduced)

        def done(got: "tuple[Photo, PhotoLevels]") -> None:
            photo, levels = got
            self._show(levels)
            session.select()
            if not session.attempt("photo", lambda: then(photo)):
                self._show(before)
                return
            self.turned.emit()
            self._look_first()

        def failed(exc: Exception) -> None:
            self._show(before)
            session.changed.emit()  # its marks come back
            session.say_trouble("photo", exc)

        session.workers.start(
            tr("Turning to {0}", info.path.name), work, done, failed=failed, key="open"
        )

    def _show(self, levels: PhotoLevels | None) -> None:
        self._session.levels = levels
        self._session.photo_shown.emit(levels)

    def _look_first(self) -> None:
        """Look for card and indications where nobody has yet, as after adding a photo."""
        inspection = self._session.inspection
        if inspection is None or inspection.photo is None:
            return
        state, sha256 = inspection.state, inspection.photo.info.sha256
        if state.reference is None and not state.marked and sha256 not in self._looked:
            self._looking.find_card()

    def _note_look(self) -> None:
        inspection = self._session.inspection
        if inspection is not None and inspection.photo is not None:
            self._looked.add(inspection.photo.info.sha256)

    def _keep_preview(self) -> None:
        """Keep the coarsest level of what is shown; it holds no pixels of the whole."""
        inspection, levels = self._session.inspection, self._session.levels
        if inspection is None or inspection.photo is None or levels is None:
            return
        here = {one.sha256 for one in inspection.photos.infos}
        for other in self.previews.keys() - here:  # of the inspections before
            del self.previews[other]
        info = inspection.photo.info
        fits = levels.whole and (levels.width, levels.height) == (info.width, info.height)
        if fits and levels.bend is None and info.sha256 not in self.previews:
            self.previews[info.sha256] = levels.coarsest()
