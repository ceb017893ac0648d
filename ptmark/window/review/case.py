"""One record under review: opened, measured blind, laid side by side, decided.

Until the reviewer is done measuring, the window holds nothing of the first's outlines,
numbers or verdict: a worker reads the record, makes its `BlindReview` and lets go of it.
"""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject, Signal

from ptmark.window.review.draft import Unfinished
from ptmark.window.review.work import (
    Decision,
    Opened,
    both_beside,
    enter_review,
    opened_record,
    unfinished_record,
)
from ptmark.window.session import Session
from ptmark.window.words import tr

if TYPE_CHECKING:
    from ptmark.review import Comparison, Remark

__all__ = ["ReviewCase"]


class ReviewCase(QObject):
    """Holds what the window knows of one record under review.

    ``phase`` is "" (nothing open), "told" (open, not being reviewed), "mending" (its examiner
    goes on with it), "blind", "beside" or "decided".

    Signals: ``changed()``; ``failed(object)`` an error to be shown in place; ``decided(str)``
    once a review is in its file, with what to say.
    """

    changed = Signal()
    failed = Signal(object)
    decided = Signal(str)

    def __init__(self, session: Session) -> None:
        super().__init__(session)
        self._session = session
        self.phase = ""
        self.opened: Opened | None = None
        self.compared: tuple[Comparison, ...] = ()
        self.firsts: tuple[tuple[tuple[str, Any], ...], ...] = ()  # outlines of each photo
        self.remarks: tuple[Remark, ...] = ()
        self.lifted = False  # both were shown: never measured again
        self._prepared: set[str] = set()
        session.autosave.about.append(self._about)

    def open(self, path: Path, folder: Path | None = None) -> None:
        """Read a record; its photos lie in ``folder``, else beside it."""

        def done(got: Opened) -> None:
            self._hold(got)
            self._to("told")

        self._session.workers.start(
            tr("Opening {0}", path.name),
            lambda token: opened_record(path, folder, token),
            done,
            failed=self.failed.emit,
            key="review",
        )

    def _hold(self, opened: Opened | None) -> None:
        self.opened, self.compared, self.firsts, self.remarks = opened, (), (), ()
        self.lifted = False
        self._prepared.clear()

    def resume(self, draft: Path, then: Callable[[], None]) -> None:
        """Open the record that a draft's unfinished review is of, blind; then go on."""

        def done(got: tuple[Opened, Unfinished]) -> None:
            opened, kept = got
            self._hold(opened)
            self.remarks, self.lifted = kept.remarks, kept.lifted
            self._prepared = {one.photo_sha256 for one in opened.blinds}
            self._to("blind")
            then()

        self._session.workers.start(
            tr("Opening the record under review"),
            lambda token: unfinished_record(draft, token),
            done,
            failed=self.failed.emit,
            key="review",
        )

    def close(self) -> None:
        """Let go of the record."""
        self._session.workers.cancel("review")
        self._hold(None)
        self._to("")

    def begin(self) -> None:
        """Measure blind from now on."""
        self._hold(self.opened)
        self._to("blind")

    def go_on(self) -> None:
        """The examiner goes on with the record, the remarks in sight."""
        self._to("mending")

    def settle(self) -> None:
        """The examiner has signed what was mended: it waits for a review of its own."""
        if self.opened is not None and self.phase == "mending":
            self.opened = replace(self.opened, standing="to review", told=())
            self.changed.emit()

    def reviews(self, path: Path) -> bool:
        """Whether this record is being reviewed, and not decided on yet."""
        at_hand = self.opened is not None and self.opened.path == path
        return at_hand and self.phase in {"blind", "beside"}

    def prepare(self) -> None:
        """Give the photo at hand the record's area, and the work its criteria and no names."""
        inspection, opened = self._session.inspection, self.opened
        if inspection is None or inspection.photo is None or opened is None:
            return
        sha256 = inspection.photo.info.sha256
        blind = next((one for one in opened.blinds if one.photo_sha256 == sha256), None)
        if blind is None or sha256 in self._prepared or self.phase != "blind":
            return
        self._prepared.add(sha256)
        state = inspection.state
        fresh = type(state)(reference=state.reference, info=state.info, marked=state.marked)
        area = None if blind.area_px is None else tuple((x, y) for x, y in blind.area_px)
        fresh = replace(
            fresh,
            area_px=area,
            profile=blind.profile,
            decision_rule=blind.decision_rule,
            thickness_mm=blind.thickness_mm,
            diameter_mm=blind.diameter_mm,
            edges_px=blind.edges_px,
            before=state.before,
            after=state.after,
        )
        self._session.by_itself(lambda: inspection.take_state(fresh))

    def finish(self) -> None:
        """Done measuring: lay both side by side, and never measure again."""
        inspection, opened = self._session.inspection, self.opened
        blind = self.phase == "blind"
        if inspection is None or inspection.photo is None or opened is None or not blind:
            return
        twin = inspection.twin()

        def done(got: tuple[Any, Any]) -> None:
            self.lifted = True
            self._session.autosave.hold(twin)  # on disk before anything is shown
            self.firsts, self.compared = got
            self._to("beside")

        self._session.workers.start(
            tr("Laying both side by side"),
            lambda token: both_beside(twin, opened, token),
            done,
            failed=self.failed.emit,
            key="review",
        )

    def remark(self, text: str, at: tuple[float, float] | None) -> None:
        """Note a remark, at a place of the photo at hand where one is given."""
        from ptmark.review import Remark

        inspection = self._session.inspection
        photo = inspection.photo.info.sha256 if inspection and inspection.photo else ""
        self.remarks = (*self.remarks, Remark(text=text.strip(), at_px=at, photo=photo))
        self._remarked()

    def unsay(self, number: int) -> None:
        """Take a remark back, numbered from 0."""
        self.remarks = self.remarks[:number] + self.remarks[number + 1 :]
        self._remarked()

    def _remarked(self) -> None:
        if (inspection := self._session.inspection) is not None and inspection.begun:
            self._session.autosave.note(inspection)
        self.changed.emit()

    def _about(self) -> dict[str, Any]:
        """What the draft of the work at hand holds of the review that it is for."""
        opened = self.opened
        if opened is None or self.phase not in {"blind", "beside"}:
            return {}
        kept = Unfinished(
            record=opened.path,
            photos=opened.photos[0].parent,
            of=opened.blinds[0].revision,
            lifted=self.lifted,
            remarks=self.remarks,
        )
        return {"review": kept.to_json()}

    def decide(self, decision: Decision) -> None:
        """Enter the review into the record's file, and sign it where it is signed."""
        opened, compared = self.opened, self.compared
        if opened is None:
            return

        def done(said: str) -> None:
            self._to("decided")
            self.decided.emit(said)

        self._session.workers.start(
            tr("Entering the review into {0}", opened.path.name),
            lambda _token: enter_review(opened, compared, decision),
            done,
            failed=self.failed.emit,
            key="review",
        )

    def _to(self, phase: str) -> None:
        self.phase = phase
        self._session.reviewing = phase in {"blind", "beside", "decided"}
        self.changed.emit()
