"""The photo that a record belongs to, found again by its content."""

from collections.abc import Iterator
from pathlib import Path

from ptmark.errors import UsageError
from ptmark.photo import Photo, open_photo
from ptmark.record import Record

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
    from ptmark.review import PhotoMissingError, photo_place

    try:
        return open_photo(photo_place(record, beside, folder))
    except PhotoMissingError as exc:
        mend = "name its folder with --photos"
        raise UsageError(exc.what, where=exc.where, mend=mend) from exc
