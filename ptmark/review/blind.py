"""The reviewer's way through one record: blind, then side by side, then a decision."""

from dataclasses import dataclass, replace
from typing import Any

from ptmark.errors import RecordError
from ptmark.record import Record, revision_hash, revisions
from ptmark.record.revisions import time_now
from ptmark.review.compare import Comparison, compare_records

__all__ = ["OUTCOMES", "BlindReview", "Remark", "reviewed"]

OUTCOMES = ("signed", "returned", "new photo asked")


@dataclass(frozen=True, slots=True, kw_only=True)
class Remark:
    """What the reviewer says, pinned to a place in the record's photo (px) where it has one."""

    text: str
    at_px: tuple[float, float] | None = None


class BlindReview:
    """What a reviewer may know before measuring.

    Photo and examined area, and by what criteria it will be judged: none of the first's
    outlines, numbers or verdicts is kept here, so that nothing can show them by mistake.
    ``number``, from 0, says which photo of a set is measured.
    """

    def __init__(self, record: Record, number: int = 0) -> None:
        view, self._number = record.views()[number], number
        self.record_id = record.id
        self.photo_file = str(view.photo["file"])
        self.photo_sha256 = str(view.photo["sha256"])
        self.area_px = None if view.area_px is None else [list(p) for p in view.area_px]
        evaluation = view.evaluation or {}
        self.profile = str(evaluation.get("profile", ""))
        self.decision_rule = str(evaluation.get("decision_rule", "guarded"))
        self._revision = revision_hash(record.to_json())

    def finish(self, first: Record, second: Record) -> Comparison:
        """Lift the blind: the first's record against the reviewer's own.

        Raises
        ------
        RecordError
            If ``first`` is not the revision that the review was begun on, or the reviewer's
            record holds nothing measured.
        """
        if revision_hash(first.to_json()) != self._revision:
            raise RecordError(
                "is not the revision that the review was begun on",
                where=f"record {first.id}",
                mend="begin the review again on the newest revision",
            )
        if second.scale["reference"] is None:
            raise RecordError(
                "the second measurement has no scale",
                where="review",
                mend="pick your own scale reference first",
            )
        return compare_records(first.views()[self._number], second)


def reviewed(
    record: Record,
    comparison: Comparison,
    *more: Comparison,
    reviewer: str,
    outcome: str,
    qualification: str = "",
    remarks: tuple[Remark, ...] = (),
    at: str | None = None,
) -> Record:
    """The record with the review entered; saving it makes the revision.

    Parameters
    ----------
    record : Record
        As the examiner signed it.
    comparison, more : Comparison
        One for each photo that was measured; the remarks go with the first.
    reviewer, qualification : str
    outcome : str
        "signed", "returned" or "new photo asked"; the latter two need a remark.
    remarks : tuple of Remark

    Raises
    ------
    RecordError
        If the examiner has not signed, nobody is named, or the outcome is unknown or lacks
        its reason.
    """
    if not _examined(record):
        raise RecordError(
            "the examiner has not signed this revision",
            where=f"record {record.id}",
            mend="have it signed first: a review belongs to what was signed",
        )
    if outcome not in OUTCOMES or not reviewer.strip():
        raise RecordError(
            f"'{outcome}' by '{reviewer}' is no review",
            where="review",
            mend=f"name the reviewer and one of: {', '.join(OUTCOMES)}",
        )
    if outcome != "signed" and not remarks:
        raise RecordError(
            f"'{outcome}' says nothing to act on", where="review", mend="give a remark"
        )
    head: dict[str, Any] = {
        "reviewer": reviewer.strip(),
        "qualification": qualification.strip(),
        "time": at or time_now(),
        "of": revision_hash(record.to_json()),
        "outcome": outcome,
    }
    told = [
        {"at_px": None if one.at_px is None else list(one.at_px), "text": one.text}
        for one in remarks
    ]
    entries = [{**head, **comparison.to_json(), "remarks": told}]
    entries += [{**head, **one.to_json(), "remarks": []} for one in more]
    return replace(record, reviews=[*record.reviews, *entries], signatures=[])


def _examined(record: Record) -> bool:
    """Whether an examiner signed, and nothing but reviews was added since."""
    for one in reversed(revisions(record)):
        if any(signature["role"] == "examiner" for signature in one.get("signatures", ())):
            return True
        what = (one.get("change") or {"what": ["all"]})["what"]
        if not all(path.split(".")[0] == "reviews" for path in what):
            return False
    return False
