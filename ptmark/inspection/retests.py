"""The tests before a retest, and what became of each indication."""

from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from typing import Any

from ptmark.errors import PtmarkError, SeriesError
from ptmark.inspection.draft import draft_of_record, restore_draft
from ptmark.inspection.several import frame_of
from ptmark.inspection.whole import Inspection
from ptmark.measure import Quantity
from ptmark.photo import Photo, open_photo
from ptmark.record import Record, load_record, revision_hash, revisions
from ptmark.report.pages.story import Earlier
from ptmark.report.wording import measured, sized
from ptmark.review import photo_place
from ptmark.series import GONE, Change, compare, register_views

__all__ = ["earlier_of", "tests_before", "what_became"]

Found = tuple[Record, Photo | None]

_MOST = 8  # places told one by one


def earlier_of(
    record: Record, beside: Path, folder: Path | None = None, photo: Path | None = None
) -> list[Earlier]:
    """The tests before a retest, oldest first, as far as they lie beside it.

    Parameters
    ----------
    record : Record
    beside : Path
        Where its file lies, or is to lie.
    folder : Path, optional
        Of the photos; else each lies beside its record.
    photo : Path, optional
        See `tests_before`.
    """

    def find(link: dict[str, Any]) -> Found | None:
        path = beside.absolute().parent / Path(link["file"]).name
        try:
            before = load_record(path)
        except PtmarkError:
            return None
        try:
            return before, open_photo(photo_place(before, path, folder))
        except PtmarkError:
            return before, None

    return tests_before(record, photo, find)


def tests_before(
    record: Record, photo: Path | None, find: Callable[[dict[str, Any]], Found | None]
) -> list[Earlier]:
    """The tests before a retest, oldest first, as far as ``find`` has them.

    A record counts only where it holds the very revision that the retest links to.

    Parameters
    ----------
    record : Record
    photo : Path or None
        Its own photo; with it, what became of the indications of the last test before is told
        too.
    find : callable
        The record that a link (``retest_of``) names, with its first photo where it is at hand.
    """
    found: list[Found] = []
    link, seen = record.retest_of, {record.id}
    while link is not None and link["id"] not in seen:
        seen.add(link["id"])
        got = find(link)
        if got is None or link["sha256"] not in map(revision_hash, revisions(got[0])):
            break
        found.insert(0, got)
        link = got[0].retest_of
    places = [None if one is None else one.info.path for _, one in found] + [photo]
    records = [*(one for one, _ in found), record]
    became = [
        what_became((records[n], places[n]), (records[n + 1], places[n + 1]))
        for n in range(len(found))
    ]
    return [
        Earlier(record=one, rgb=None if opened is None else opened.rgb, became=told)
        for (one, opened), told in zip(found, became, strict=True)
    ]


def what_became(
    before: tuple[Record, Path | None], after: tuple[Record, Path | None]
) -> tuple[str, ...]:
    """What became of the indications of one test in the next, each with its photo, in words.

    Places are matched by laying the photos over each other; where that is refused, this is
    said and nothing is told. Nothing where a photo is not at hand; records of several photos
    are left to the eye.
    """
    (first, first_photo), (second, second_photo) = before, after
    if first_photo is None or second_photo is None:
        return ()
    if first.more_photos or second.more_photos:
        return ("Several photos: compare them by eye.",)
    try:
        one = frame_of(_gone_on(first, first_photo))
        other = frame_of(_gone_on(second, second_photo))
        changes = compare(one, other, register_views(one.view, other.view))
    except SeriesError as exc:
        return (f"Not laid over the photo before, so compare by eye: {exc.what}.",)
    except PtmarkError as exc:
        return (f"Not compared: {exc.what}.",)
    return tuple(_told(changes, first, second))


def _gone_on(record: Record, photo: Path) -> Inspection:
    again = Inspection()
    restore_draft(again, draft_of_record(record, [photo]))
    return again


def _told(changes: Sequence[Change], before: Record, after: Record) -> Iterable[str]:
    gone = [name for one in changes if one.kind == "gone" for name in one.before]
    if gone:
        yield f"Gone: {', '.join(gone)}."
        yield GONE
    others = [one for one in changes if one.kind != "gone"]
    for one in others[:_MOST]:
        was = _size(before, one.before, one.length_before, least=one.least_before)
        now = _size(after, one.after, one.length_after, least=one.least_after)
        if one.kind == "new":
            yield f"New: {now}."
        elif one.kind == "unclear":
            yield f"Cannot be told: {now if one.after else was}; {one.says}."
        else:
            word = "Grown" if one.kind == "grown" else "Remains"
            yield f"{word}: {was}; now {now}; {one.says}."
    if len(others) > _MOST:
        yield f"And {len(others) - _MOST} more."


def _size(
    record: Record, letters: tuple[str, ...], length: Quantity | None, *, least: bool
) -> str:
    """An indication by its letters, with the length that its record gives."""
    rows = {row["id"]: row for row in record.indications}
    size = ""
    if length is not None:
        size = f"{'≥ ' * least}{measured(length.value, length.expanded)}"
    if len(letters) == 1 and rows[letters[0]]["length_mm"] is not None:
        size = sized(rows[letters[0]], "length")
    return f"{' and '.join(letters)}, {size}".rstrip(", ")
