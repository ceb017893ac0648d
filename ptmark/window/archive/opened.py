"""A kept record read beside the window: what it tells, where it was taken, its report."""

from contextlib import ExitStack
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from ptmark.errors import ArchiveError
from ptmark.window.archive.before import told_hit
from ptmark.window.archive.originals import Proof, prove
from ptmark.window.archive.pictures import photo_files
from ptmark.window.indications.kinds import kind_shown
from ptmark.window.words import day, tr

if TYPE_CHECKING:
    from ptmark.archive import Archive, Hit
    from ptmark.photo import Photo
    from ptmark.record import Record
    from ptmark.report.pages.story import Earlier

__all__ = [
    "Opened",
    "earlier_in",
    "photo_before",
    "photo_of",
    "read_hit",
    "told_places",
    "write_report",
]


class Opened(NamedTuple):
    """A record, what it tells in lines, and whether it and its photos are the originals.

    ``before`` is the test that it is a retest of, where that is kept here too.
    """

    record: "Record"
    told: str
    proof: Proof
    before: "Hit | None" = None


def read_hit(archive: "Archive", hit: "Hit", unit: str) -> Opened:
    """Read a record and what the archive knows of it, lengths in ``unit``."""
    from ptmark.archive import Query, find, indications_of, record_of
    from ptmark.window.archive.model import length_text

    now = find(archive, Query(record_id=hit.record_id)).hits  # the list may be some time old
    if not now:
        where = ", ".join(filter(None, (hit.part, hit.serial, day(hit.examined_on))))
        mend = tr("search again: a rule may have let it be deleted meanwhile")
        raise ArchiveError(tr("is not in the archive any more"), where=where, mend=mend)
    hit, record = now[0], record_of(archive, hit.record_id)
    serial = tr(", serial {0}", hit.serial) if hit.serial else ""
    signed = tr(", signed {0}×", hit.signatures) if hit.signatures else tr(", not signed")
    lines = [
        f"{hit.part or tr('no part number')}{serial}",
        *_told_day(hit, record.fields.get("examination_date", "")),
        tr("Revision {0}{1}", hit.revision, signed),
        tr(
            "Verdict: {0}; disposition: {1}",
            tr(hit.verdict or "none"),
            tr(hit.disposition or tr("not decided")),
        ),
    ]
    before = None
    if hit.retest_of:
        before = next(iter(find(archive, Query(record_id=hit.retest_of)).hits), None)
        told = tr("a record that is not kept here") if before is None else told_hit(before)
        lines.append(tr("Retest of {0}", told))
    for row in indications_of(archive, hit.record_id):
        length = length_text(
            row["length_mm"], row["length_u_mm"], unit, least=bool(row["least"])
        )
        kind = kind_shown(row["kind"] or "") or tr(str(row["shape"]))
        lines.append(f"{row['letter']}: {kind}, {length}")
    return Opened(record, "\n".join(lines), prove(archive, hit.record_id), before)


def _told_day(hit: "Hit", given: str) -> list[str]:
    """When it was examined, and by whom; a day that the record does not tell is not claimed."""
    from ptmark.archive.derive import is_day_given

    if is_day_given(given, hit.examined_on):
        by = tr(" by {0}", hit.examiner) if hit.examiner else ""
        return [tr("Examined on {0}", day(hit.examined_on)) + by]
    said = tr("No examination date is given: filed under {0}", day(hit.examined_on))
    if given:
        said = tr(
            "The record's examination date, “{0}”, is no day: it is filed under {1}.",
            given,
            day(hit.examined_on),
        )
    return [said, *([tr("Examiner: {0}", hit.examiner)] if hit.examiner else [])]


def told_places(got: Opened) -> str:
    """What the photos tell, or may tell, of where they were taken; "" for nothing."""
    said = []
    places = [one.place for one in got.proof.photos if one.place]
    noted = [one.name for one in got.proof.photos if one.noted]
    if places:
        said.append(tr("Where it was taken stands in the photo: {0}.", "; ".join(places)))
    if noted:
        said.append(
            tr(
                "The camera's maker left a note of its own, which may hold a place and is not "
                "read, in {0}.",
                ", ".join(noted),
            )
        )
    if said:
        said.append(tr("An export can leave it out; the original keeps it."))
    return " ".join(said)


def photo_of(archive: "Archive", record: "Record", number: int) -> dict[str, object]:
    """The row of one of its photos, counted from 0."""
    from ptmark.archive import photos_of

    sha256 = str(record.views()[number].photo["sha256"])
    for one in photos_of(archive, record.id):
        if one["sha256"] == sha256:
            return one
    raise ArchiveError(tr("a photo of the record is not kept"), where=sha256[:12])


def write_report(archive: "Archive", record: "Record", path: Path) -> None:
    """Write its report as PDF, with the story of a retest as far as the archive has it."""
    from ptmark.photo import open_photo
    from ptmark.report.pages.whole import write_pdf

    rows = [photo_of(archive, record, number) for number in range(len(record.views()))]
    with ExitStack() as held:
        paths = held.enter_context(photo_files(archive, rows))
        first = open_photo(paths[0])
        more = (open_photo(one) for one in paths[1:])
        earlier = earlier_in(archive, record, paths[0], held)
        write_pdf(path, record, first.rgb, paths[0], earlier=earlier, more=more)


def earlier_in(
    archive: "Archive", record: "Record", photo: Path, held: ExitStack
) -> "list[Earlier]":
    """The tests before a retest that are kept; their photos last as long as ``held``."""
    from ptmark.archive import record_of
    from ptmark.inspection.retests import tests_before

    def find(link: dict[str, object]) -> "tuple[Record, Photo | None] | None":
        try:
            before = record_of(archive, str(link["id"]))
        except ArchiveError:
            return None
        try:
            return before, _first_photo(archive, before, held)
        except ArchiveError:
            return before, None

    return tests_before(record, photo, find)


def photo_before(archive: "Archive", link: dict[str, object], held: ExitStack) -> "Photo":
    """The first photo of the record that a retest is of; ArchiveError where it is not kept."""
    from ptmark.archive import record_of

    return _first_photo(archive, record_of(archive, str(link["id"])), held)


def _first_photo(archive: "Archive", record: "Record", held: ExitStack) -> "Photo":
    from ptmark.photo import open_photo

    (place,) = held.enter_context(photo_files(archive, [photo_of(archive, record, 0)]))
    return open_photo(place)
