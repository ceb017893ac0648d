"""Opening a photo, finding its scale card and its indications, all beside the window."""

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject, Signal

from ptmark.errors import PtmarkError
from ptmark.memory import give_memory_back
from ptmark.window.autosave import read_draft
from ptmark.window.card_check import kept_check
from ptmark.window.engine import load_engine, load_photo_room
from ptmark.window.session import STEPS, Session
from ptmark.window.view.levels import PhotoLevels, build_levels, preview_levels
from ptmark.window.words import tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.inspection import Inspection
    from ptmark.photo import Photo
    from ptmark.scale import Reference

__all__ = ["Looking", "open_with_levels"]


class Looking(QObject):
    """Brings photos in.

    Signals: ``opened()`` once the whole photo is there; ``card_looked_for(bool)`` tells
    whether a card was found; ``suggested()`` once suggestions are in place.
    """

    opened = Signal()
    card_looked_for = Signal(bool)
    suggested = Signal()

    def __init__(self, session: Session) -> None:
        super().__init__(session)
        self._session = session
        self._tidy = False  # whether measuring what was found leaves memory to give back
        session.judged.connect(self._give_back)

    def _give_back(self) -> None:
        if self._tidy:
            self._tidy = False
            self._session.workers.start("", give_memory_back)

    def open(self, path: Path) -> None:
        """Open a photo: a reduced picture first, then the whole, its card, its indications."""
        session = self._session
        session.trouble.emit("photo", None)

        def done(got: "tuple[Photo, PhotoLevels]") -> None:
            photo, levels = got
            session.when_ready(lambda: self._take_photo(photo, levels))

        def failed(exc: Exception) -> None:
            self._show(session.levels)
            session.say_trouble("photo", exc)

        session.workers.start(
            tr("Opening {0}", path.name),
            lambda token: open_with_levels(path, token),
            done,
            failed=failed,
            partial=session.photo_shown.emit,
            key="open",
        )

    def _show(self, levels: PhotoLevels | None) -> None:
        self._session.levels = levels
        self._session.photo_shown.emit(levels)

    def _take_photo(self, photo: "Photo", levels: PhotoLevels) -> None:
        session = self._session
        if session.inspection is None:
            return
        session.workers.cancel("look")
        session.workers.cancel("scale")
        inspection = session.inspection
        if inspection.photo is not None:  # what was entered before the first one belongs to it
            session.autosave.begin()
            session.touched = False
        self._show(levels)
        session.select()
        session.by_itself(lambda: inspection.set_photo(photo))
        self.opened.emit()
        self.find_card()

    def next_part(self) -> None:
        """Put the work at hand away and begin with the next part; its draft stays on disk."""
        session, inspection = self._session, self._session.inspection
        if inspection is None:
            return
        for key in ("open", "look", "scale"):
            session.workers.cancel(key)
        session.autosave.begin()
        self._show(None)
        session.select()
        session.by_itself(inspection.next_part)
        session.touched = False
        session.go("Photo")
        self.opened.emit()

    def go_on(self, draft: Path, then: Callable[[], None] = lambda: None) -> None:
        """Take up a draft that was left behind; ``then`` follows."""
        self.bring_back(lambda: read_draft(draft), draft, then)

    def bring_back(
        self,
        read: Callable[[], dict[str, Any]],
        draft: Path | None = None,
        then: Callable[[], None] = lambda: None,
    ) -> None:
        """Take up work that ``read``, called in a worker, gives as a draft's document.

        Without the ``draft`` that it stands in, it gets one of its own. It opens at the step
        where it was left, if that is told; ``then`` follows.
        """
        session = self._session

        def work(token: Token) -> "tuple[Inspection, PhotoLevels | None, object]":
            restored = load_engine()()
            from ptmark.inspection.draft import restore_draft

            document = read()
            restore_draft(restored, document)
            token.check()
            photo = restored.photo
            levels = None if photo is None else build_levels(photo.rgb, reduced=photo.reduced)
            return restored, levels, document.get("step")

        def done(got: "tuple[Inspection, PhotoLevels | None, object]") -> None:
            restored, levels, left_at = got
            session.workers.cancel("look")
            session.workers.cancel("scale")
            if draft is None:
                session.autosave.begin()
            else:
                session.autosave.adopt(draft)
            self._show(levels)
            session.select()
            session.take_over(restored)
            restored.take_state(restored.state)  # tells everyone, and keeps the draft alive
            self.opened.emit()
            if left_at in STEPS:
                session.go(str(left_at))
            then()

        session.workers.start(
            tr("Bringing the work back"),
            work,
            done,
            failed=lambda exc: session.say_trouble("photo", exc),
            key="open",
        )

    # -- scale --------------------------------------------------------------------------------
    def find_card(self) -> None:
        """Look for the scale card, then for indications whether there is one or not."""
        from ptmark.scale import CardReference

        def then(*, found: bool) -> None:
            self.card_looked_for.emit(found)
            self.suggest()

        card = CardReference(check_mm=kept_check())
        self._prepare(card, tr("Looking for the scale card"), quiet=True, then=then)

    def set_reference(self, reference: "Reference") -> None:
        """Take a scale reference; a refused one is told at the scale step."""
        self._prepare(
            reference, tr("Working out the scale"), quiet=False, then=lambda **_: None
        )

    def _prepare(self, reference: "Reference", name: str, *, quiet: bool, then: Any) -> None:  # noqa: ANN401
        session, inspection = self._session, self._session.inspection
        if inspection is None or inspection.photo is None:
            session.say_trouble(
                "scale",
                PtmarkError(tr("there is no photo yet"), mend=tr("Open a photo first.")),
            )
            return
        photo = inspection.photo

        def done(_surface: object) -> None:
            def take() -> None:
                inspection.set_reference(reference)

            if session.attempt("scale", lambda: session.by_itself(take) if quiet else take()):
                then(found=True)

        def failed(exc: Exception) -> None:
            if not quiet or not isinstance(exc, PtmarkError):
                session.say_trouble("scale", exc)
            then(found=False)

        session.workers.start(
            name,
            lambda _token: inspection.prepare(reference, photo),
            done,
            failed=failed,
            key="scale",
        )

    # -- indications --------------------------------------------------------------------------
    def suggest(self) -> None:
        """Look for indications; what a person has touched stays."""
        session, inspection = self._session, self._session.inspection
        if inspection is None or inspection.photo is None:
            return
        twin, sha256 = inspection.twin(), inspection.photo.info.sha256
        session.unseen.add(sha256)

        def work(token: Token) -> object:
            found = twin.look()
            give_memory_back()  # what looking held: measuring takes other pieces again
            token.check()
            return found

        def done(found: Any) -> None:  # noqa: ANN401 - Suggestions
            session.trouble.emit("indications", None)
            session.unseen.discard(sha256)
            session.by_itself(lambda: inspection.set_suggestions(found))
            self.suggested.emit()
            self._tidy = True

        session.workers.start(
            tr("Looking for indications"),
            work,
            done,
            failed=lambda exc: session.say_trouble("indications", exc),
            key="look",
        )


def open_with_levels(path: Path, token: Token) -> "tuple[Photo, PhotoLevels]":
    """Open a photo in a worker; its reduced picture is handed over first."""
    load_photo_room()
    from ptmark.photo import open_photo, read_info, read_preview

    info = read_info(path)
    token.partial(preview_levels(read_preview(path, 1600), info.width, info.height))
    photo = open_photo(path)
    token.check()
    levels = build_levels(photo.rgb, reduced=photo.reduced)
    give_memory_back()  # what decoding held: looking takes other pieces
    return photo, levels
