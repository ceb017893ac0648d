"""The photo that a record belongs to, found again by its content."""

from collections.abc import Iterator
from pathlib import Path

from ptmark.errors import UsageError
from ptmark.photo import Photo, open_photo
from ptmark.record import Record, find_photo

__all__ = ["photo_of", "photos_of"]


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
