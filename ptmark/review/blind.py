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
    """What the reviewer says, pinned to a place in the record's photo (px) where it has one.

    ``photo`` is the SHA-256 of that photo; "" means the first that was measured.
    """

    text: str
    at_px: tuple[float, float] | None = None
    photo: str = ""


class BlindReview:
    """What a reviewer may know before measuring.

    Photo and examined area, by what criteria it will be judged, and what these ask of the part
    itself (thickness, diameter, the lines they go by): none of the first's outlines, numbers or
    verdicts is kept here, so that nothing can show them by mistake.
    ``number``, from 0, says which photo of a set is measured; ``revision`` is the hash of what
    is reviewed.
    """

    def __init__(self, record: Record, number: int = 0) -> None:
        view, self._number = record.views()[number], number
        self.record_id = record.id
        self.photo_file = str(view.photo["file"])
        self.photo_sha256 = str(view.photo["sha256"])
        self.area_px = None if view.area_px is None else [list(p) for p in view.area_px]
        self.thickness_mm = view.thickness_mm
        self.diameter_mm = view.diameter_mm
        marked = (view.given or {}).get("edges", ())
        self.edges_px = tuple(
            (str(one["name"]), tuple((x, y) for x, y in one["points_px"])) for one in marked
        )
        evaluation = view.evaluation or record.chosen or {}
        self.profile = str(evaluation.get("profile", ""))
        self.decision_rule = str(evaluation.get("decision_rule", "guarded"))
        self.revision = revision_hash(record.to_json())

    def finish(self, first: Record, second: Record) -> Comparison:
        """Lift the blind: the first's record against the reviewer's own.

        Raises
        ------
        RecordError
            If ``first`` is not the revision that the review was begun on, or the reviewer's
            record holds nothing measured.
        """
        self.still_of(first)
        if second.scale["reference"] is None:
            raise RecordError(
                "the second measurement has no scale",
                where="review",
                mend="pick your own scale reference first",
            )
        return compare_records(first.views()[self._number], second)

    def still_of(self, first: Record) -> None:
        """Refuse (RecordError) a record that is not the revision the review was begun on."""
        if revision_hash(first.to_json()) != self.revision:
            raise RecordError(
                "is not the revision that the review was begun on",
                where=f"record {first.id}",
                mend="begin the review again on the newest revision",
            )

    def unmeasured(self) -> Comparison:
        """What goes into a review that ends before anything was measured."""
        return Comparison(
            frame="px",
            pairs=(),
            only_first=(),
            only_second=(),
            verdicts=(None, None),
            photo_sha256=self.photo_sha256,
            scale=None,
        )


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
        One for each photo that was measured; a remark goes with its photo's, else the first.
    reviewer, qualification : str
    outcome : str
        "signed", "returned" or "new photo asked"; the latter two need a remark.
    remarks : tuple of Remark

    Raises
    ------
    RecordError
        If the examiner has not signed, nobody is named, the outcome is unknown or lacks its
        reason, or what was not measured is to be signed: of a set, each of its photos.
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
    every = (comparison, *more)
    if outcome == "signed" and any(one.scale is None for one in every):
        raise RecordError(
            "nothing was measured, so there is nothing to sign",
            where="review",
            mend="measure first, or return the record",
        )
    photos = [view.photo["sha256"] for view in record.views()]
    left = [n for n, sha in enumerate(photos, 1) if sha not in {c.photo_sha256 for c in every}]
    if outcome == "signed" and len(photos) > 1 and left:
        raise RecordError(
            f"photo {left[0]} of {len(photos)} was not measured",
            where="review",
            mend="measure every photo of the set before signing, or return the record",
        )
    head: dict[str, Any] = {
        "reviewer": reviewer.strip(),
        "qualification": qualification.strip(),
        "time": at or time_now(),
        "of": revision_hash(record.to_json()),
        "outcome": outcome,
    }
    entries = [{**head, **one.to_json(), "remarks": []} for one in every]
    shas = [one.photo_sha256 for one in every]
    for one in remarks:
        entry = entries[shas.index(one.photo) if one.photo in shas else 0]
        at_px = None if one.at_px is None else list(one.at_px)
        entry["remarks"].append({"at_px": at_px, "text": one.text})
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
