"""What a record's picture and PDF are called, so that they take nobody's place."""

from collections.abc import Iterator
from itertools import count
from pathlib import Path

from ptmark.errors import PtmarkError

__all__ = ["beside"]

_ENDINGS = (".png", ".pdf")


def beside(record: Path, photos: list[Path], before: list[Path]) -> list[Path]:
    """The names of picture and PDF for a record's file: its own, where these are free.

    A photo is never among them, neither of this record nor of one that lies there already.

    Parameters
    ----------
    record : Path
        Where the record is to lie.
    photos : list of Path
        Of the inspection.
    before : list of Path
        What they were called when this record was saved last; none where it never was.
    """
    mine = record.exists()  # else nobody was asked whether to replace what lies beside it
    photos = [*photos, *_photos_of(record)]
    if before and not any(_is_one_of(name, photos) for name in before):
        return before
    for stem in _stems(record.stem):
        names = [record.with_name(stem + ending) for ending in _ENDINGS]
        if not any(_is_one_of(name, photos) or (name.is_file() and not mine) for name in names):
            return names
    raise AssertionError  # names do not end


def _stems(stem: str) -> Iterator[str]:
    yield stem
    yield f"{stem}-inspection"
    yield from (f"{stem}-inspection-{number}" for number in count(2))


def _is_one_of(name: Path, photos: list[Path]) -> bool:
    """Whether this name leads to a photo, also by a link or in another case of its letters."""
    return name.exists() and any(one.exists() and name.samefile(one) for one in photos)


def _photos_of(record: Path) -> list[Path]:
    """The photos that a record lying there names, where they lie beside it."""
    if not record.is_file():
        return []
    from ptmark.record import load_record

    try:
        views = load_record(record).views()
    except PtmarkError:  # no record: saving itself says whether it may go
        return []
    return [record.with_name(one.photo["file"]) for one in views]
