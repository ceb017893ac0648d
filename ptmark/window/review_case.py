"""One record under review: opened, measured blind, laid side by side, decided.

Until the reviewer is done measuring, the window holds nothing of the first's outlines,
numbers or verdict: a worker reads the record, makes its `BlindReview` and lets go of it.
"""

from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject, Signal

from ptmark.errors import PtmarkError
from ptmark.window.engine import load_engine
from ptmark.window.session import Session
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.inspection import Inspection
    from ptmark.record import Record
    from ptmark.review import BlindReview, Comparison, Remark

__all__ = ["Decision", "Opened", "ReviewCase"]


@dataclass(frozen=True, kw_only=True)
class Opened:
    """A record's file as it may be shown before anything is measured.

    ``told`` are the remarks of the newest review, each with its photo's number and place in
    px or None; empty where there was none, or where it is to be reviewed again.
    """

    path: Path
    standing: str
    part: str
    photos: tuple[Path, ...]
    blinds: "tuple[BlindReview, ...]"
    told: tuple[tuple[str, int, tuple[float, float] | None], ...]
    reviewer: str


@dataclass(frozen=True, kw_only=True)
class Decision:
    """What the reviewer decides, and as whom."""

    outcome: str
    name: str
    qualification: str
    remarks: "tuple[Remark, ...]"


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
        self._prepared: set[str] = set()

    def open(self, path: Path, folder: Path | None = None) -> None:
        """Read a record; its photos lie in ``folder``, else beside it."""

        def done(got: Opened) -> None:
            self.opened, self.compared, self.firsts, self.remarks = got, (), (), ()
            self._to("told")

        self._session.workers.start(
            f"Opening {path.name}",
            lambda token: _opened(path, folder, token),
            done,
            failed=self.failed.emit,
            key="review",
        )

    def close(self) -> None:
        """Let go of the record."""
        self._session.workers.cancel("review")
        self.opened, self.compared, self.firsts, self.remarks = None, (), (), ()
        self._to("")

    def begin(self) -> None:
        """Measure blind from now on."""
        self.remarks = ()
        self._prepared.clear()
        self._to("blind")

    def go_on(self) -> None:
        """The examiner goes on with the record, the remarks in sight."""
        self._to("mending")

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
        area = None if blind.area_px is None else tuple((x, y) for x, y in blind.area_px)
        state = replace(
            inspection.state,
            area_px=area,
            profile=blind.profile,
            decision_rule=blind.decision_rule,
            fields={},
        )
        if len(inspection.photos) == 1:
            state = replace(state, relief_mm=None, thickness_mm=None, weld_length_mm=None)
        self._session.by_itself(lambda: inspection.take_state(state))

    def finish(self) -> None:
        """Done measuring: lay both side by side, and never measure again."""
        inspection, opened = self._session.inspection, self.opened
        blind = self.phase == "blind"
        if inspection is None or inspection.photo is None or opened is None or not blind:
            return
        twin = inspection.twin()

        def done(got: tuple[Any, Any]) -> None:
            self.firsts, self.compared = got
            self._to("beside")

        self._session.workers.start(
            "Laying both side by side",
            lambda token: _beside(twin, opened, token),
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
        self.changed.emit()

    def unsay(self, number: int) -> None:
        """Take a remark back, numbered from 0."""
        self.remarks = self.remarks[:number] + self.remarks[number + 1 :]
        self.changed.emit()

    def decide(self, decision: Decision) -> None:
        """Enter the review into the record's file, and sign it where it is signed."""
        opened, compared = self.opened, self.compared
        if opened is None:
            return

        def done(said: str) -> None:
            self._to("decided")
            self.decided.emit(said)

        self._session.workers.start(
            f"Entering the review into {opened.path.name}",
            lambda _token: _enter(opened, compared, decision),
            done,
            failed=self.failed.emit,
            key="review",
        )

    def _to(self, phase: str) -> None:
        self.phase = phase
        self._session.reviewing = phase in {"blind", "beside", "decided"}
        self.changed.emit()


def _opened(path: Path, folder: Path | None, token: Token) -> Opened:
    load_engine()
    from ptmark.review import BlindReview, photo_place, sound_record, standing_of

    record = sound_record(path)
    token.check()
    views = record.views()
    photos = tuple(photo_place(view, path, folder) for view in views)
    standing = standing_of(record)
    told: list[tuple[str, int, tuple[float, float] | None]] = []
    reviewer = ""
    if standing in {"returned", "needs photo", "signed"}:
        newest = record.reviews[-1]
        reviewer = str(newest["reviewer"])
        shas = [view.photo["sha256"] for view in views]
        for one in record.reviews:
            same = (one["reviewer"], one["time"]) == (newest["reviewer"], newest["time"])
            number = shas.index(one["photo"]) if one["photo"] in shas else 0
            for remark in one["remarks"] if same else ():
                at = remark["at_px"]
                told.append((remark["text"], number, None if at is None else (at[0], at[1])))
    fields = record.fields
    return Opened(
        path=path,
        standing=standing,
        part=fields.get("part_number", ""),
        photos=photos,
        blinds=tuple(BlindReview(record, number) for number in range(len(views))),
        told=tuple(told),
        reviewer=reviewer,
    )


def _beside(twin: "Inspection", opened: Opened, token: Token) -> tuple[Any, Any]:
    from ptmark.review import sound_record

    second = {str(one.photo["sha256"]): one for one in twin.to_record().views()}
    token.check()
    first = sound_record(opened.path)
    made = []
    for number, blind in enumerate(opened.blinds):
        if blind.photo_sha256 not in second:
            raise PtmarkError(
                f"photo {number + 1} of {len(opened.blinds)} is not measured yet",
                where=blind.photo_file,
                mend="turn to it (Ctrl+PgDown), or add it again",
            )
        made.append(blind.finish(first, second[blind.photo_sha256]))
    outlines = tuple(
        tuple((str(one["id"]), one["outline_px"]) for one in view.indications)
        for view in first.views()
    )
    return outlines, tuple(made)


def _enter(opened: Opened, compared: "tuple[Comparison, ...]", decision: Decision) -> str:
    from ptmark.record import Signer, fingerprint, key_of, save_record, sign_record
    from ptmark.review import reviewed, sound_record

    record: Record = sound_record(opened.path)
    for blind in opened.blinds:
        blind.still_of(record)
    entries = compared or tuple(one.unmeasured() for one in opened.blinds)
    made = reviewed(
        record,
        *entries,
        reviewer=decision.name,
        qualification=decision.qualification,
        outcome=decision.outcome,
        remarks=decision.remarks,
    )
    why = f"review: {decision.outcome}"
    record = save_record(opened.path, made, by=decision.name, why=why)
    said = f"{opened.path.name}, revision {record.revision}: {decision.outcome}"
    if decision.outcome != "signed":
        return f"{said}. The examiner sees the remarks on opening the record."
    who = Signer(role="reviewer", name=decision.name, qualification=decision.qualification)
    record = save_record(opened.path, sign_record(record, who, key_of(decision.name)))
    return f"{said} by {decision.name}; key {fingerprint(record.signatures[-1]['key'])}"
