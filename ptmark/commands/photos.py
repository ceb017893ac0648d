"""The photo that a record belongs to, found again by its content."""

from collections.abc import Iterator
from pathlib import Path

import numpy as np
import numpy.typing as npt

from ptmark.errors import PtmarkError, UsageError
from ptmark.photo import Photo, open_photo
from ptmark.record import Record, find_photo, load_record, revision_hash, revisions

__all__ = ["earlier_of", "photo_of", "photos_of"]


def photos_of(record: Record, beside: Path, folder: Path | None) -> Iterator[Photo]:
    """Each photo of the record in its order, opened one at a time; see `photo_of`."""
    for view in record.views():
        yield photo_of(view, beside, folder)


def photo_of(record: Record, beside: Path, folder: Path | None) -> Photo:
    """Open the record's photo, of a set the first; it lies in ``folder``, else by the record.

    Raises
    ------
    UsageError
        If no file there has the content that the record names.
    """
    name, sha256 = str(record.photo["file"]), str(record.photo["sha256"])
    place = folder or beside.absolute().parent
    path = find_photo(place, name, sha256) or find_photo(place / "photos", name, sha256)
    if path is None:
        raise UsageError(
            f"the photo {name} with SHA-256 {sha256[:12]}… is not there, or was changed",
            where=str(place),
            mend="name its folder with --photos",
        )
    return open_photo(path)


def earlier_of(
    record: Record, beside: Path, folder: Path | None
) -> list[tuple[Record, npt.NDArray[np.uint8] | None]]:
    """The tests before a retest with their photos, oldest first, as far as they lie beside it.

    A file counts only where it holds the very revision that the retest links to.
    """
    found: list[tuple[Record, npt.NDArray[np.uint8] | None]] = []
    link, seen = record.retest_of, {record.id}
    while link is not None and link["id"] not in seen:
        seen.add(link["id"])
        path = beside.absolute().parent / Path(link["file"]).name
        try:
            before = load_record(path)
        except PtmarkError:
            break
        if link["sha256"] not in [revision_hash(one) for one in revisions(before)]:
            break
        try:
            pixels = photo_of(before, path, folder).rgb
        except PtmarkError:
            found.insert(0, (before, None))
        else:
            found.insert(0, (before, pixels))
        link = before.retest_of
    return found
