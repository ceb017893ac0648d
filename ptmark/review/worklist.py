"""A reviewer's worklist: how each record stands, and where its photos lie."""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from ptmark.errors import PtmarkError, UsageError
from ptmark.record import Record, find_photo, load_record, revisions, verify_file

__all__ = [
    "STANDINGS",
    "PhotoMissingError",
    "WorkItem",
    "photo_place",
    "sound_record",
    "standing_of",
    "work_item",
    "worklist",
]

_AFTER = {"signed": "signed", "returned": "returned", "new photo asked": "needs photo"}
STANDINGS = ("to review", "not signed", "returned", "needs photo", "signed", "not readable")


class PhotoMissingError(UsageError):
    """A record's photo is not where it was looked for; another folder may hold it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkItem:
    """One row of the worklist; it holds nothing that was measured or judged.

    ``standing`` is one of `STANDINGS`; ``says`` is why a file cannot be read.
    """

    path: Path
    standing: str
    part: str = ""
    examiner: str = ""
    says: str = ""


def standing_of(record: Record) -> str:
    """How a record stands with its reviewer, one of `STANDINGS`.

    A review counts as long as nothing but reviews was entered since the revision that it is
    of; a changed record waits for the examiner's signature, then for a review of its own. A
    review with the outcome "signed" counts once the reviewer's signature is there.
    """
    told, before = revisions(record), None
    for one in reversed(told):
        if _signed_by("examiner", one):
            before = len(one.get("reviews", ()))
            break
        if not _only_reviews(one):
            break
    if before is None:
        return "not signed"
    if len(record.reviews) == before:
        return "to review"
    newest = record.reviews[-1]
    if newest["outcome"] == "signed" and not _signed_by("reviewer", told[-1]):
        return "to review"
    return _AFTER[newest["outcome"]]


def _signed_by(role: str, revision: dict[str, Any]) -> bool:
    return any(one["role"] == role for one in revision.get("signatures", ()))


def _only_reviews(revision: dict[str, Any]) -> bool:
    change = revision.get("change")
    return change is not None and all(p.split(".")[0] == "reviews" for p in change["what"])


def work_item(path: Path) -> WorkItem | None:
    """The row of one file; None where it is JSON of another kind."""
    try:
        record = load_record(path)
    except PtmarkError as exc:
        if not _claims_to_be_a_record(path):
            return None
        return WorkItem(path=path, standing="not readable", says=str(exc))
    fields = record.fields
    names = (fields.get("part_number", ""), fields.get("serial_number", ""))
    return WorkItem(
        path=path,
        standing=standing_of(record),
        part=", ".join(name for name in names if name),
        examiner=fields.get("examiner", "") or _last_signer(record),
    )


def _last_signer(record: Record) -> str:
    """Who signed last as its examiner; "" where nobody did."""
    told = [one for revision in revisions(record) for one in revision.get("signatures", ())]
    return next((str(one["name"]) for one in reversed(told) if one["role"] == "examiner"), "")


def _claims_to_be_a_record(path: Path) -> bool:
    try:
        with path.open("rb") as file:
            return b'"ptmark-record/' in file.read(4096)
    except OSError:
        return True  # not even readable: better in the list than overlooked


def worklist(folder: Path) -> Iterator[WorkItem]:
    """The records of a folder, by name; one that cannot be read stops nothing."""
    for path in sorted(folder.glob("*.json")):
        if path.is_file() and (item := work_item(path)) is not None:
            yield item


def sound_record(path: Path) -> Record:
    """Read a record that holds what its seal and signatures say.

    Raises
    ------
    RecordError
        If it cannot be read.
    UsageError
        If it was damaged or changed since it was written.
    """
    record = load_record(path)
    for one in verify_file(path):
        if one.holds is False:
            raise UsageError(
                f"{one.where} {one.says}", where=str(path), mend="take a whole copy of it"
            )
    return record


def photo_place(record: Record, beside: Path, folder: Path | None = None) -> Path:
    """Where the record's photo (of a set the first) lies, found by its content.

    It is looked for in ``folder``, else beside the record, each time in ``photos`` there too.

    Raises
    ------
    PhotoMissingError
        If no file there has the content that the record names; says so where a file of
        that name has another content.
    """
    name, sha256 = Path(str(record.photo["file"])).name, str(record.photo["sha256"])
    place = folder or beside.absolute().parent
    for one in (place, place / "photos"):
        if (path := find_photo(one, name, sha256)) is not None:
            return path
    if any((one / name).is_file() for one in (place, place / "photos")):
        said = f"{name} lies there but is another photo or was changed: its SHA-256 differs"
    else:
        said = f"the photo {name} is not there"
    raise PhotoMissingError(
        f"{said} (the record names {sha256[:12]}…)",
        where=str(place),
        mend="name the folder that holds the photo as it was inspected",
    )
