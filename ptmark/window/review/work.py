"""What a worker does with the file of a record under review: open it, compare, enter."""

from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from ptmark.errors import PtmarkError, RecordError
from ptmark.window.autosave import Draft, left_behind, read_draft
from ptmark.window.engine import load_engine
from ptmark.window.keys import KEYS
from ptmark.window.review.draft import Unfinished
from ptmark.window.words import tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.inspection import Inspection
    from ptmark.record import Record
    from ptmark.review import BlindReview, Comparison, Remark

__all__ = [
    "Decision",
    "Opened",
    "both_beside",
    "enter_review",
    "opened_record",
    "unfinished_record",
]


@dataclass(frozen=True, kw_only=True)
class Opened:
    """A record's file as it may be shown before anything is measured.

    ``told`` are the remarks of the newest review, each with its photo's number and place in
    px or None; empty where there was none, or where it is to be reviewed again. ``begun`` is
    the draft of a review of this revision that was left unfinished.
    """

    path: Path
    standing: str
    part: str
    photos: tuple[Path, ...]
    blinds: "tuple[BlindReview, ...]"
    told: tuple[tuple[str, int, tuple[float, float] | None], ...]
    reviewer: str
    begun: Draft | None = None


@dataclass(frozen=True, kw_only=True)
class Decision:
    """What the reviewer decides, and as whom."""

    outcome: str
    name: str
    qualification: str
    remarks: "tuple[Remark, ...]"


def opened_record(path: Path, folder: Path | None, token: Token) -> Opened:
    """Read a record as it may be shown before anything is measured."""
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
    names = (record.fields.get(key, "") for key in ("part_number", "serial_number"))
    blinds = tuple(BlindReview(record, number) for number in range(len(views)))
    return Opened(
        path=path,
        standing=standing,
        part=", ".join(name for name in names if name),
        photos=photos,
        blinds=blinds,
        told=tuple(told),
        reviewer=reviewer,
        begun=_begun(path, blinds[0].revision),
    )


def _begun(record: Path, revision: str) -> Draft | None:
    """The newest draft of a review of this revision: what was seen of it cannot be unseen."""
    for draft in left_behind():
        if draft.record is not None and draft.record.resolve() == record.resolve():
            with suppress(RecordError):  # a damaged one is told of where drafts are offered
                kept = Unfinished.from_json(
                    read_draft(draft.path)["review"], where=str(draft.path)
                )
                if kept.of == revision:
                    return draft
    return None


def unfinished_record(draft: Path, token: Token) -> tuple[Opened, Unfinished]:
    """The record that a draft's unfinished review is of, and what the draft holds of it.

    Raises
    ------
    RecordError
        If the record cannot be read, or is another revision now.
    """
    load_engine()
    kept = Unfinished.from_json(read_draft(draft)["review"], where=str(draft))
    opened = opened_record(kept.record, kept.photos, token)
    if opened.blinds[0].revision != kept.of:
        raise RecordError(
            tr("was changed since the review was begun"),
            where=str(kept.record),
            mend=tr("open the record and review it anew"),
        )
    return opened, kept


def both_beside(twin: "Inspection", opened: Opened, token: Token) -> tuple[Any, Any]:
    """Lift the blind: the first's outlines and the comparison, of each photo."""
    from ptmark.review import sound_record

    second = {str(one.photo["sha256"]): one for one in twin.to_record().views()}
    token.check()
    first = sound_record(opened.path)
    made = []
    for number, blind in enumerate(opened.blinds):
        if blind.photo_sha256 not in second:
            raise PtmarkError(
                tr("photo {0} of {1} is not measured yet", number + 1, len(opened.blinds)),
                where=blind.photo_file,
                mend=KEYS.told(tr("turn to it (‹Ctrl+PgDown›), or add it again")),
            )
        made.append(blind.finish(first, second[blind.photo_sha256]))
    outlines = tuple(
        tuple((str(one["id"]), one["outline_px"]) for one in view.indications)
        for view in first.views()
    )
    return outlines, tuple(made)


def enter_review(opened: Opened, compared: "tuple[Comparison, ...]", decision: Decision) -> str:
    """Write the review into the record's file; returns what to say of it."""
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
    why = tr("review: {0}", decision.outcome)
    record = save_record(opened.path, made, by=decision.name, why=why)
    said = tr("{0}, revision {1}: {2}", opened.path.name, record.revision, decision.outcome)
    if decision.outcome != "signed":
        return tr("{0}. The examiner sees the remarks on opening the record.", said)
    who = Signer(role="reviewer", name=decision.name, qualification=decision.qualification)
    record = save_record(opened.path, sign_record(record, who, key_of(decision.name)))
    return tr(
        "{0} by {1}; key {2}", said, decision.name, fingerprint(record.signatures[-1]["key"])
    )
